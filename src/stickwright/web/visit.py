"""One visit: its steps in order, how far each is, and the one thing to do next."""

from __future__ import annotations

from collections import Counter
from typing import Any

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from stickwright.errors import BadInput
from stickwright.store.cases import case_of, tree_of
from stickwright.store.documents import documents
from stickwright.store.plans import plans
from stickwright.store.recordings import recordings
from stickwright.web.packing import packed
from stickwright.web.render import download, page
from stickwright.web.request_context import At, at_visit
from stickwright.web.state import Done, next_step, step_states

__all__ = ["ROUTES", "as_files", "show", "visit_page"]


def visit_page(here: At) -> dict[str, Any]:
    """What is shown of a visit."""
    assert here.visit is not None
    held = documents(here.store, here.visit_id)
    tree = {name: document.says for name, document in held.items()}
    shelf = documents(here.store, None)
    tree |= {name: document.says for name, document in shelf.items() if name not in tree}
    live = Counter(row.site for row in recordings(here.store, here.visit_id))
    made = plans(here.store, here.visit_id)
    last = max(made, key=lambda plan: plan.number, default=None)
    changed = max((document.at for document in held.values()), default="")
    states = step_states(tree, Done(live, last.number if last else None, last is not None and changed > last.at))
    return {
        "states": states,
        "next_state": next_step(states),
        "documents": len(held),
        "problems_here": _problems(here) if here.visit.problems else [],
    }


def _problems(here: At) -> list[str]:
    try:
        case_of(here.store, here.visit_id)
    except BadInput as refused:
        return [str(problem) for problem in refused.problems]
    return []


def show(request: Request) -> Response:
    """The visit's page."""
    here = at_visit(request)
    return page(request, "visit.html", visit_page(here), here=here)


def as_files(request: Request) -> Response:
    """The visit as a case folder, packed."""
    here = at_visit(request)
    assert here.player is not None
    assert here.visit is not None
    name = f"{here.player.code}-{here.visit.on_date or here.visit.number}.zip"
    return download(packed(tree_of(here.store, here.visit_id)), name, "application/zip")


ROUTES = (Route("/visits/{id}", show), Route("/visits/{id}/case.zip", as_files))
