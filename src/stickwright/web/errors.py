"""What goes wrong, as a page: a person's mistake in its own sentences, a fault of ours with its report kept in a file."""

from __future__ import annotations

import tempfile
import traceback
from collections.abc import Mapping
from typing import Any
from urllib.parse import quote

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.refusals import Refusals
from stickwright.errors import BadInput
from stickwright.web.guard import HEADERS
from stickwright.web.render import page
from stickwright.web.request_context import Locked, NotHere, session_of

__all__ = ["HANDLERS", "bad_input", "locked", "not_found", "our_fault"]


def bad_input(request: Request, refused: Exception) -> Response:
    """A mistake that no page showed beside its field."""
    assert isinstance(refused, BadInput)
    data = {"title": message(Refusals.title), "sentences": [str(problem) for problem in refused.problems]}
    return page(request, "refused.html", data, status=422)


def not_found(request: Request, refused: Exception) -> Response:
    """An address without a page, or a way of asking that it does not know."""
    assert isinstance(refused, HTTPException)
    title: Message = message(Refusals.title)
    sentence: Text = str(refused.detail)
    if refused.status_code == 404:
        title = message(Refusals.not_found)
        sentence = refused.words if isinstance(refused, NotHere) else message(Refusals.not_found_more)
    elif refused.status_code == 405:
        sentence = message(Refusals.only_to_look)
    return page(request, "refused.html", {"title": title, "sentences": [sentence]}, status=refused.status_code)


def locked(request: Request, closed: Exception) -> Response:
    """The records are closed: ask for the passphrase, and keep what was typed until it is given."""
    assert isinstance(closed, Locked)
    if request.method == "POST":
        sent = [(name, value) for name, value in request.state.form.multi_items() if isinstance(value, str)]
        session_of(request).pending = (request.url.path, [(name, value) for name, value in sent if name != "csrf"])
        return RedirectResponse("/start", 303)
    return RedirectResponse(f"/start?then={quote(request.url.path)}", 303)


def our_fault(request: Request, fault: Exception) -> Response:
    """A defect of the program: nothing of it is shown, all of it is kept in a file on this machine."""
    with tempfile.NamedTemporaryFile(
        "w", prefix="stickwright-report-", suffix=".txt", delete=False, encoding="utf-8"
    ) as report:
        traceback.print_exception(fault, file=report)
    data = {
        "title": message(Refusals.our_fault),
        "sentences": [message(Refusals.our_fault_more, report=Name(report.name))],
    }
    answer = page(request, "refused.html", data, status=500)
    for name, value in HEADERS.items():  # this answer is given outside of the guard
        answer.headers.setdefault(name, value)
    return answer


HANDLERS: Mapping[Any, Any] = {BadInput: bad_input, HTTPException: not_found, Locked: locked, Exception: our_fault}
