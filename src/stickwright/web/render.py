"""How a page is put together: template, messages, problems beside their fields, downloads."""

from __future__ import annotations

import base64
from collections.abc import Callable, Mapping, Sequence
from functools import lru_cache, partial
from typing import Any
from urllib.parse import quote

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup
from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import HTMLResponse, RedirectResponse, Response

from stickwright.catalogue import book, say
from stickwright.codes.commands import Commands
from stickwright.codes.message import Message, Name, Text, message
from stickwright.errors import BadInput, Problem
from stickwright.report.printed import sentence
from stickwright.store.documents import undo_document
from stickwright.web.request_context import At, Session, desk_of
from stickwright.web.steps import STEPS, step_after, step_of

__all__ = [
    "done",
    "download",
    "form",
    "not_a_date",
    "number_in",
    "page",
    "problems_of",
    "put_right",
    "svg_image",
    "undo_of",
]


def page(
    request: Request,
    name: str,
    data: Mapping[str, Any],
    *,
    here: At | None = None,
    refused: BadInput | None = None,
    fields: Mapping[Text, str] | None = None,
    status: int | None = None,
    policy: str | None = None,
) -> HTMLResponse:
    """A page from a template.

    Parameters
    ----------
    request : Request
    name : str
        Template.
    data : mapping
        What the template shows, built by a named function.
    here : At, optional
        Where the page is; draws the way back to visit and player, and says when nothing is kept.
    refused : BadInput, optional
        What was wrong with the form: shown on top and beside the fields. The status is then 422.
    fields : mapping, optional
        Steps of a problem's `where` (labels or keys) to the name of the field that it belongs to, '' for all others; without
        it the innermost step is the field's own name.
    status : int, optional
    policy : str, optional
        Content policy, when another than the usual (`guard.policy`).
    """
    desk = desk_of(request)
    session: Session | None = getattr(request.state, "session", None)
    messages = _take_messages(session)
    problems = problems_of(refused, fields or {})
    beside = _beside(refused, problems)
    context = {
        "here": here,
        "desk": desk,
        "session": session,
        "look": desk.preferences_of(session),
        "steps": STEPS,
        "step_here": step_of(request.url.path),
        "next_step": step_after(request.url.path),
        "path": request.url.path,
        "messages": messages,
        "problems": problems,
        "problem_of": lambda field: beside.get(field, ""),
        "csrf": session.csrf if session else desk.login_csrf,
        "csrf_field": Markup('<input type="hidden" name="csrf" value="{}">').format(
            session.csrf if session else desk.login_csrf
        ),
        **data,
    }
    html = _templates().get_template(name).render(context)
    headers = {"content-security-policy": policy} if policy else None
    return HTMLResponse(html, status or (422 if refused else 200), headers)


def put_right(label: Message, words: Message) -> Problem:
    """A problem with a field of a page.

    Parameters
    ----------
    label : Message
        Of the field.
    words : Message
        What to do, in a sentence.
    """
    return Problem(label, "", "", words)


def told_beside(problem: Problem) -> str:
    """A problem where its field is seen: without its place."""
    words = say(problem.without_place)
    return words[:1].upper() + words[1:]


def not_a_date(typed: str) -> Message:
    """What to do where a date was to be typed.

    Parameters
    ----------
    typed : str
        Stands there; may be ''.
    """
    return message(Commands.not_a_date, typed=Name(typed[:40])) if typed else message(Commands.date_missing)


def done(request: Request, to: str, words: Text, *, undo: Callable[[], object] | None = None) -> RedirectResponse:
    """Go on to a page that says what was done, with a button to take it back.

    Parameters
    ----------
    request : Request
    to : str
        Address of the next page.
    words : Message or str
        One sentence.
    undo : callable, optional
        Takes the change back; called again it brings it again, as undoing a document does.
    """
    request.state.session.say(words, undo, to)
    return RedirectResponse(to, 303)


def undo_of(here: At, name: str) -> Callable[[], object]:
    """Takes the last change of a document back; called again it brings it again.

    Parameters
    ----------
    here : At
        The visit, or the shelf.
    name : str
        Of the document.
    """
    return partial(undo_document, here.store, here.visit.id if here.visit else None, name, who=here.who)


def form(request: Request) -> FormData:
    """What was sent: read, bounded and checked by the guard."""
    sent = request.state.form
    assert isinstance(sent, FormData)
    return sent


def number_in(text: str) -> int | None:
    """A whole number as an address or a form sends it; None for anything else.

    Examples
    --------
    >>> number_in("12"), number_in("-1"), number_in("²"), number_in("9" * 30)
    (12, None, None, None)
    """
    return int(text) if text.isascii() and text.isdigit() and len(text) < 10 else None


def problems_of(refused: BadInput | None, fields: Mapping[Text, str]) -> list[tuple[str, str]]:
    """Every problem as (field, sentence); the field is '' when the problem belongs to none.

    Parameters
    ----------
    refused : BadInput or None
    fields : mapping
        A step of a problem's `where` to the name of a field.
    """
    if refused is None:
        return []
    return [(_field_of(problem, fields), str(problem)) for problem in refused.problems]


def _beside(refused: BadInput | None, problems: Sequence[tuple[str, str]]) -> dict[str, str]:
    """What stands beside each field: the same words, without the name of the field that stands there already."""
    told: dict[str, str] = {}
    for (field, _), problem in zip(problems, refused.problems if refused else (), strict=True):
        words = told_beside(problem)
        told[field] = f"{told[field]} {words}" if field in told else words
    return told


def _field_of(problem: Problem, fields: Mapping[Text, str]) -> str:
    if not fields:
        return say(problem.field)
    return next((fields[step] for step in reversed(problem.where) if step in fields), fields.get("", ""))


def download(body: bytes, name: str, media_type: str) -> Response:
    """A file to keep.

    Parameters
    ----------
    body : bytes
    name : str
        Proposed file name.
    media_type : str
    """
    plain = "".join(c if c.isascii() and (c.isalnum() or c in "-_. ") else "_" for c in name)
    disposition = f"attachment; filename=\"{plain}\"; filename*=UTF-8''{quote(name)}"
    return Response(body, media_type=media_type, headers={"content-disposition": disposition})


def svg_image(svg: str | bytes) -> str:
    """A drawing as address of an image: its own styles then stay inside it."""
    raw = svg.encode() if isinstance(svg, str) else svg
    return "data:image/svg+xml;base64," + base64.b64encode(raw).decode("ascii")


def _take_messages(session: Session | None) -> Sequence[tuple[Text, str]]:
    if session is None:
        return ()
    messages, session.messages = session.messages, []
    return messages


def _begun(words: Text) -> str:
    """As a heading begins: with a capital letter."""
    said = say(words)
    return said[:1].upper() + said[1:]


class _Topics:
    """What templates call ``t``: ``t.consent_page.title()`` is a text of a topic, in the language that is spoken."""

    def __getattr__(self, module: str) -> Any:
        return book().topic(module)


def _said(value: Any) -> Any:
    """A message is printed in the words of the language that is spoken."""
    return say(value) if isinstance(value, Message) else value


@lru_cache(maxsize=1)
def _templates() -> Environment:
    templates = Environment(
        loader=PackageLoader("stickwright.web", "templates"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        finalize=_said,
    )
    templates.filters["svg_image"] = svg_image
    templates.filters["sentence"] = sentence
    templates.filters["day"] = lambda iso: book().writer.date(iso)
    templates.filters["moment"] = lambda iso: book().writer.moment(iso)
    templates.filters["begun"] = _begun
    templates.globals["t"] = _Topics()
    return templates
