"""The files of a visit as text, with everything that was ever written: for those who would rather type, and for putting right."""

from __future__ import annotations

from difflib import unified_diff
from functools import partial
from typing import Any, get_args
from urllib.parse import quote

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from stickwright.catalogue import say
from stickwright.codes.files_page import FilesPage, Why
from stickwright.codes.message import Message, Name, Text, message
from stickwright.errors import BadInput
from stickwright.store.documents import Document, documents, history, save_document, undo_document
from stickwright.web.issues import noticed_about
from stickwright.web.render import done, download, form, number_in, page, put_right
from stickwright.web.request_context import At, at_visit

__all__ = ["ROUTES", "file_page", "files_page"]

LARGEST_SHOWN = 400_000
"""Characters of a file that a page holds; beyond, it is downloaded."""
MOST_LINES = 40
REASONS: dict[str, Why] = {one: one for one in get_args(Why)}
"""Reasons of a version as these pages write them; others are told as they stand."""


def files_page(here: At) -> dict[str, Any]:
    """All files of a visit, with who wrote them last."""
    return {
        "title": message(FilesPage.title),
        "files": tuple(
            (name, here.url(f"files/{quote(name)}"), f"{document.number}", document.at, document.who)
            for name, document in sorted(documents(here.store, here.visit_id).items())
        ),
        "noticed": noticed_about(here, as_files=True),
    }


def file_page(here: At, name: str, typed: str | None = None) -> dict[str, Any]:
    """One file as text, and its versions with what each changed.

    Parameters
    ----------
    here : At
    name : str
        From the case folder.
    typed : str, optional
        What was sent and refused.
    """
    versions = history(here.store, here.visit_id, name)
    if not versions:
        raise HTTPException(404)
    now = versions[-1]
    text = _text(now)
    return {
        "title": name,
        "name": name,
        "address": here.url(f"files/{quote(name)}"),
        "text": typed if typed is not None else text,
        "editable": text is not None and here.writes,
        "based_on": now.number,
        "versions": tuple(
            (version.number, _line(version), _changed(before, version))
            for before, version in reversed(list(zip((None, *versions), versions, strict=False)))
        ),
        "noticed": noticed_about(here, name, as_files=True),
    }


def files(request: Request) -> Response:
    """The files."""
    here = at_visit(request)
    return page(request, "files.html", files_page(here), here=here)


def file(request: Request) -> Response:
    """One file."""
    here = at_visit(request)
    return page(request, "file.html", file_page(here, _name(request)), here=here)


def save_file(request: Request) -> Response:
    """One file written as typed; half a sentence is kept too, and told."""
    here, name = at_visit(request), _name(request)
    sent = form(request)
    text = str(sent.get("text", "")).replace("\r\n", "\n")
    number = str(sent.get("based_on", ""))
    try:
        if len(text) > LARGEST_SHOWN:
            raise BadInput(put_right(message(FilesPage.text), message(FilesPage.too_long, most=LARGEST_SHOWN)))
        save_document(
            here.store, here.visit_id, name, text.encode("utf-8"), who=here.who, why="typed-as-text",
            based_on=number_in(number),
        )  # fmt: skip
    except BadInput as refused:
        return page(
            request, "file.html", file_page(here, name, text), here=here, refused=refused,
            fields={message(FilesPage.text): "text"},
        )  # fmt: skip
    return done(
        request, here.url(f"files/{quote(name)}"), message(FilesPage.file_saved, name=Name(name)),
        undo=partial(undo_document, here.store, here.visit_id, name, who=here.who),
    )  # fmt: skip


def fetch_file(request: Request) -> Response:
    """One file to keep, byte for byte."""
    here, name = at_visit(request), _name(request)
    document = documents(here.store, here.visit_id).get(name)
    if document is None:
        raise HTTPException(404)
    return download(document.body, name.rsplit("/", 1)[-1], "application/octet-stream")


def _name(request: Request) -> str:
    return str(request.path_params["name"])


def _text(version: Document) -> str | None:
    try:
        text = version.body.decode("utf-8")
    except UnicodeDecodeError:
        return None
    return text if len(text) <= LARGEST_SHOWN else None


def _line(version: Document) -> Message:
    reason: Text = version.why
    if isinstance(reason, str):
        why = REASONS.get(reason)
        reason = Name(reason) if why is None else message(FilesPage.reason, why=why)
    return message(FilesPage.version_line, at=version.at, who=Name(version.who), why=reason)


def _changed(before: Document | None, after: Document) -> str:
    """The lines that went and came."""
    old, new = _text(before) if before is not None and not before.removed else "", _text(after)
    if after.removed:
        return say(message(FilesPage.removed))
    if old is None or new is None:
        return say(message(FilesPage.not_shown))
    lines = unified_diff(old.splitlines(), new.splitlines(), n=0, lineterm="")
    told = [line for line in lines if not line.startswith(("---", "+++", "@@"))]
    more = [say(message(FilesPage.more_lines, lines=len(told) - MOST_LINES))] if len(told) > MOST_LINES else []
    return "\n".join((*told[:MOST_LINES], *more))


ROUTES = (
    Route("/visits/{id}/files", files),
    Route("/visits/{id}/fetch/{name:path}", fetch_file),
    Route("/visits/{id}/files/{name:path}", file),
    Route("/visits/{id}/files/{name:path}", save_file, methods=["POST"]),
)
