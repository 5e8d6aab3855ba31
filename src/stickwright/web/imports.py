"""Taking in a case folder: packed and uploaded, or from a folder of this machine."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from starlette.datastructures import FormData, UploadFile
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from stickwright.codes.import_page import ImportPage
from stickwright.codes.message import Message, Text, message
from stickwright.errors import BadInput
from stickwright.store.cases import import_case
from stickwright.web.packing import MOST_BYTES, folder_tree, unpacked
from stickwright.web.render import done, form, page, put_right
from stickwright.web.request_context import At, Key, RequestContext, desk_of, session_of

__all__ = ["ROUTES", "ask", "import_page", "take_in"]

FIELDS: dict[Text, str] = {message(ImportPage.folder): "folder", message(ImportPage.file): "file"}


def import_page(desk: RequestContext, *, into: str = "", folder: str = "") -> dict[str, Any]:
    """What is asked.

    Parameters
    ----------
    desk : RequestContext
    into : str
        Into which records: kept, or not.
    folder : str
        As typed so far.
    """
    choices: tuple[tuple[Message | str, ...], ...] = (("d", message(ImportPage.into_demo)),)
    if desk.store is not None:
        choices = (
            ("", message(ImportPage.into_kept), message(ImportPage.into_kept_hint)),
            ("m", message(ImportPage.into_unkept), message(ImportPage.into_unkept_hint)),
        )
    return {"into_choices": choices, "into": into, "folder": folder, "most_mb": MOST_BYTES // 2**20}


def ask(request: Request) -> Response:
    """The form."""
    return page(request, "import.html", import_page(desk_of(request), into=request.query_params.get("in", "")))


def take_in(request: Request) -> Response:
    """A case folder becomes a visit."""
    desk, session, typed = desk_of(request), session_of(request), form(request)
    into, folder = str(typed.get("into", "")), str(typed.get("folder", "")).strip()
    key: Key = "m" if into == "m" else "d" if into == "d" else ""
    try:
        row = import_case(desk.at(key), _tree(desk, typed, folder), who=session.who)
    except BadInput as refused:
        data = import_page(desk, into=into, folder=folder)
        return page(request, "import.html", data, refused=refused, fields=FIELDS)
    address = At(desk, key, desk.at(key), session.who, True).visit_url(row.id)
    return done(request, address, message(ImportPage.done))


def _tree(desk: RequestContext, typed: FormData, folder: str) -> dict[str, bytes]:
    file = typed.get("file")
    if isinstance(file, UploadFile) and file.filename:
        return unpacked(file.file.read())
    if folder and not desk.team:  # a folder of the server is none of a team's business
        return folder_tree(Path(folder).expanduser())
    raise BadInput(put_right(message(ImportPage.file), message(ImportPage.no_file)))


ROUTES = (Route("/import", ask), Route("/import", take_in, methods=["POST"]))
