"""Looking round with an invented player: everything filled in, nothing kept, no hardware needed."""

from __future__ import annotations

from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path
from typing import Any, get_args

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from stickwright.codes.demo_page import DemoPage, Job
from stickwright.codes.message import message
from stickwright.codes.visit_page import VisitPage
from stickwright.store.cases import import_case
from stickwright.store.opening import memory_store
from stickwright.store.players import players, visits
from stickwright.web.render import page
from stickwright.web.request_context import At, RequestContext, desk_of, session_of

__all__ = ["ROUTES", "begin", "demo", "demo_case", "demo_page", "set_out"]


JOBS: tuple[Job, ...] = get_args(Job)


def demo_case() -> dict[str, bytes]:
    """The files of the demo case, by name from its folder.

    They are packed beside the pages when the program is built, and lie among the examples of a checkout.
    """
    packed = files("stickwright.web") / "demo"
    folder: Traversable = packed if packed.is_dir() else Path(__file__).parents[3] / "examples" / "demo"
    return dict(_below(folder, ""))


def _below(folder: Traversable, name: str) -> list[tuple[str, bytes]]:
    found: list[tuple[str, bytes]] = []
    for entry in sorted(folder.iterdir(), key=lambda entry: entry.name):
        if entry.is_dir():
            found += _below(entry, f"{name}{entry.name}/")
        else:
            found.append((f"{name}{entry.name}", entry.read_bytes()))
    return found


def set_out(desk: RequestContext) -> None:
    """Lay the demo out in memory, unless it lies there already."""
    with desk.guard:
        if desk.demo is None:
            store = memory_store(desk.clock)
            import_case(store, demo_case(), who="stickwright")
            desk.demo = store


def begin(request: Request) -> Response:
    """Lay the demo out, and show it."""
    set_out(desk_of(request))
    return RedirectResponse("/demo", 303)


def demo_page(here: At) -> dict[str, Any]:
    """The jobs that can be tried, in the order of a visit.

    Parameters
    ----------
    here : At
        The visit of the demo.
    """
    return {
        "first": here.url("measure"),
        "jobs": tuple(
            (
                here.kit_url if step == "kit" else here.url(step),
                message(VisitPage.title, step=step),
                message(DemoPage.job, step=step),
            )
            for step in JOBS
        ),
    }


def demo(request: Request) -> Response:
    """The first page of the demo."""
    desk, session = desk_of(request), session_of(request)
    if desk.demo is None:
        return RedirectResponse("/start", 303)
    found = [(row, visits(desk.demo, row.id)) for row in players(desk.demo).rows]
    row, rows = next(((row, rows) for row, rows in found if rows), (None, ()))
    if row is None:  # somebody tried out the erasing
        with desk.guard:
            desk.demo = None
        set_out(desk)
        return RedirectResponse("/demo", 303)
    first = rows[-1]
    here = At(desk=desk, key="d", store=desk.demo, who=session.who, writes=True, player=row, visit=first)
    return page(request, "demo.html", demo_page(here), here=At(desk, "d", desk.demo, session.who, True, row))


ROUTES = (Route("/demo", demo), Route("/demo", begin, methods=["POST"]))
