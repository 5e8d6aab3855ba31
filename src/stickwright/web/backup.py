"""Backup to one file and back: each read again and counted before it is called good."""

from __future__ import annotations

import tempfile
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from stickwright.codes.backup_page import BackupPage
from stickwright.codes.counts import Counted, Counts
from stickwright.codes.message import Message, Name, Text, message
from stickwright.errors import BadInput
from stickwright.store.backup import back_up, restore
from stickwright.web.render import download, form, page, put_right
from stickwright.web.request_context import RequestContext, desk_of

__all__ = ["ROUTES", "backup_page", "bring_back", "make", "show"]

FIELDS: dict[Text, str] = {
    "passphrase": "passphrase",
    message(BackupPage.place): "place",
    message(BackupPage.from_file): "from",
    "": "file",
}


def backup_page(
    desk: RequestContext, *, report: dict[str, Any] | None = None, file: str = "", from_file: str = "", place: str = ""
) -> dict[str, Any]:
    """What is shown.

    Parameters
    ----------
    desk : RequestContext
    report : dict, optional
        What was just done.
    file, from_file, place : str
        As typed so far.
    """
    name = f"stickwright-{desk.today().isoformat()}.backup"
    beside = desk.place.with_name("restored.db") if isinstance(desk.place, Path) else Path("restored.db")
    return {
        "report": report,
        "name": name,
        "file": file,
        "from_file": from_file,
        "place": place or str(beside),
    }


def show(request: Request) -> Response:
    """The page."""
    desk = desk_of(request)
    desk.kept()
    return page(request, "backup.html", backup_page(desk))


def make(request: Request) -> Response:
    """A backup, to a file of this machine or as a download."""
    desk, typed = desk_of(request), str(form(request).get("file", "")).strip()
    store = desk.kept()
    try:
        if typed:
            counts = back_up(store, _whole_path(typed, message(BackupPage.file)))
            report = {
                "title": message(BackupPage.complete),
                "sentence": message(BackupPage.complete_more, file=Name(typed)),
                "counts": _counts(counts),
            }
            return page(request, "backup.html", backup_page(desk, report=report))
        with tempfile.TemporaryDirectory(prefix="stickwright-") as folder:
            file = Path(folder) / "records.backup"
            back_up(store, file)
            return download(file.read_bytes(), str(backup_page(desk)["name"]), "application/octet-stream")
    except BadInput as refused:
        return page(request, "backup.html", backup_page(desk, file=typed), refused=refused, fields=FIELDS)


def bring_back(request: Request) -> Response:
    """Records from a backup, at a new place."""
    desk, typed = desk_of(request), form(request)
    desk.kept()
    file, place, passphrase = (str(typed.get(name, "")) for name in ("from", "place", "passphrase"))
    try:
        problems = [
            put_right(message(label), message(words))
            for label, value, words in (
                (BackupPage.from_file, file, BackupPage.choose_file),
                (BackupPage.place, place, BackupPage.choose_place),
            )
            if not value.strip()
        ]
        if problems:
            raise BadInput(problems)
        source = _whole_path(file, message(BackupPage.from_file))
        counts = restore(source, _whole_path(place, message(BackupPage.place)), passphrase=passphrase or None)
    except BadInput as refused:
        data = backup_page(desk, from_file=file, place=place)
        return page(request, "backup.html", data, refused=refused, fields=FIELDS)
    report = {
        "title": message(BackupPage.restored),
        "sentence": message(BackupPage.restored_more, place=Name(place.strip())),
        "counts": _counts(counts),
    }
    return page(request, "backup.html", backup_page(desk, report=report))


def _counts(counts: Mapping[Counted, int]) -> tuple[tuple[Message, int], ...]:
    return tuple((message(Counts.label, what=what), count) for what, count in counts.items())


def _whole_path(typed: str, label: Message) -> Path:
    """A file named from the top of this machine: a name alone would lie wherever the app happened to be started."""
    path = Path(typed.strip()).expanduser()
    if not path.is_absolute():
        home = Path.home() / "stickwright.backup"
        full = message(BackupPage.full_path, typed=Name(typed.strip()[:80]), example=Name(str(home)))
        raise BadInput(put_right(label, full))
    return path


ROUTES = (
    Route("/backup", show),
    Route("/backup", make, methods=["POST"]),
    Route("/backup/restore", bring_back, methods=["POST"]),
)
