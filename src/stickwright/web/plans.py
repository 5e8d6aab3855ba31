"""Plans of a visit: made with wishes, read with their reasons, compared, drawn, printed."""

from __future__ import annotations

import io
import secrets
import threading
import zipfile
from collections import OrderedDict
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from functools import partial, wraps
from typing import Any

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import BaseRoute, Route

from stickwright.catalogue import FAMILY_LANGUAGES, own_name, say
from stickwright.codes.body_drawings import BodyDrawings
from stickwright.codes.doing import Doing
from stickwright.codes.message import Name, Text, message
from stickwright.codes.plans_page import PlansPage
from stickwright.errors import BadInput, Problem
from stickwright.files.results import UnreadPlan
from stickwright.model.plan import Plan
from stickwright.model.response import Tuning
from stickwright.model.wishes import Keep, Wishes
from stickwright.planning.plan import DRAWS, SEED
from stickwright.report.body import body_drawing
from stickwright.report.document import sheet_content, sheet_pages, sheet_pdf
from stickwright.report.gather import report_of
from stickwright.report.mount_dxf import all_dxf
from stickwright.report.mount_scene import scene_html
from stickwright.report.printed import sentence
from stickwright.report.view import PictureBlock, Report
from stickwright.report.what_if import wishes_words
from stickwright.store.plans import (
    PlanRow,
    make_again,
    make_plan,
    plan_changes,
    plan_kept,
    plan_text,
    plans,
    program,
    told_apart,
    wishes_asked,
)
from stickwright.web.issues import noticed_about, on_pages
from stickwright.web.plan_differences import differences
from stickwright.web.render import download, form, number_in, page
from stickwright.web.request_context import At, at_visit

__all__ = ["ROUTES", "Making", "Shelf", "plan_page", "plans_page", "tunings_here", "wishes_of"]

KEPT_PLANS = 6
_BODY_MM = (112.0, 84.0)
SCENE_POLICY = (
    "sandbox allow-scripts; default-src 'none'; script-src 'unsafe-inline'; style-src 'unsafe-inline'; img-src data:; "
    "frame-ancestors 'self'"
)
"""The scene is one file with its script inside: it runs shut off from everything of ours, and may ask for nothing."""


_BEGINNING = message(Doing.beginning)


@dataclass
class Making:
    """A plan that is being made.

    `share` goes from 0 to 1; `row` or `refused` is there when it has ended.
    """

    place: tuple[str, int]
    doing: Text = _BEGINNING
    share: float = 0.0
    row: PlanRow | None = None
    refused: BadInput | None = None
    failed: bool = False
    wishes: Mapping[str, str] = field(default_factory=dict)
    again: int | None = None
    """Number of the plan that is worked out again."""


@dataclass
class ShownPlan:
    """A plan with its pages, worked out once."""

    plan: Plan
    content: dict[str, Any]
    report: Report
    pdf: dict[str, bytes] = field(default_factory=dict)
    """By the language of the family's pages."""
    pages: dict[str, tuple[str, ...]] = field(default_factory=dict)


@dataclass
class Shelf:
    """Plans that are being made, and those looked at lately."""

    making: OrderedDict[str, Making] = field(default_factory=OrderedDict)
    shown: OrderedDict[tuple[str, int], ShownPlan] = field(default_factory=OrderedDict)
    lock: threading.Lock = field(default_factory=threading.Lock)


def _shelf(request: Request) -> Shelf:
    state = request.app.state
    if not hasattr(state, "plans"):
        state.plans = Shelf()
    shelf: Shelf = state.plans
    return shelf


def plans_page(here: At, typed: Mapping[str, str] | None = None) -> dict[str, Any]:
    """What stands in the way of a plan, the wishes, and the plans made so far.

    Parameters
    ----------
    here : At
    typed : mapping, optional
        Wishes as typed.
    """
    made = plans(here.store, here.visit_id)
    return {
        "title": message(PlansPage.title),
        "noticed": noticed_about(here),
        "plans": tuple(
            (row.number, here.url(f"plans/{row.number}"), row.at, row.who, _asked_words(row)) for row in reversed(made)
        ),
        "pairs": len(made) > 1,
        "typed": dict(typed or {}),
        "writes": here.writes,
    }


def _asked_words(row: PlanRow) -> Text:
    return wishes_words(wishes_asked(row)) or message(PlansPage.no_wishes)


def wishes_of(sent: Mapping[str, str]) -> Wishes:
    """Wishes as a form sends them.

    Parameters
    ----------
    sent : mapping
        ``without`` and ``keep`` line by line (``look = chin``), ``only_kit``, ``budget``, ``most_parts``.

    Raises
    ------
    BadInput
        All fields that cannot be read.
    """
    problems: list[Problem] = []
    keep = []
    for line in _lines(sent.get("keep", "")):
        what, equals, where = (part.strip() for part in line.partition("="))
        if equals and what and where:
            keep.append(Keep(what, where))
        else:
            problems.append(Problem("keep", "", "", message(PlansPage.keep_line, typed=Name(line))))
    budget = _number(sent.get("budget", ""), "budget", problems)
    parts = _number(sent.get("most_parts", ""), "most_parts", problems)
    if parts is not None and not parts.is_integer():
        problems.append(Problem("most_parts", "", "", message(PlansPage.whole_number)))
    if problems:
        raise BadInput(problems)
    return Wishes(
        without=tuple(_lines(sent.get("without", ""))), only_kit=bool(sent.get("only_kit")), budget=budget,
        most_parts=None if parts is None else int(parts), keep=tuple(keep),
    )  # fmt: skip


def as_typed_here(refused: BadInput) -> BadInput:
    """Problems of wishes by the fields of the page, which the same words are typed into on a command line."""
    problems = []
    for one in refused.problems:
        option = say(one.field)
        field = option.removeprefix("--").replace("-", "_")
        mine = option.startswith("--") and field in ("without", "keep", "only_kit", "budget", "most_parts")
        problems.append(Problem(field, one.found, one.expected, one.remedy) if mine else one)
    return BadInput(problems)


def _lines(text: str) -> list[str]:
    return [line.strip() for line in text.splitlines() if line.strip()]


def _number(text: str, name: str, problems: list[Problem]) -> float | None:
    if not text.strip():
        return None
    try:
        number = float(text.strip().replace(",", "."))
    except ValueError:
        number = -1.0
    if not 0 <= number < 1e9:
        problems.append(Problem(name, "", "", message(PlansPage.not_negative)))
        return None
    return number


def show_plans(request: Request) -> Response:
    """The plans of a visit, and wishes for the next."""
    here = at_visit(request)
    return page(request, "plans.html", plans_page(here), here=here)


def start_plan(request: Request) -> Response:
    """Begin a plan; its page says how far it is."""
    here = at_visit(request)
    typed = {key: str(value) for key, value in form(request).items()}
    try:
        wishes = wishes_of(typed)
    except BadInput as refused:
        return page(request, "plans.html", plans_page(here, typed), here=here, refused=refused)
    return _begin(request, here, Making((here.key, here.visit_id), wishes=typed), partial(_new_plan, here, wishes))


def again(request: Request) -> Response:
    """Begin a new plan of the very inputs of one that is kept; then the two stand side by side."""
    here = at_visit(request)
    row = _row(here, _number_of(request))
    make = partial(make_again, here.store, row.id, who=here.who)
    return _begin(request, here, Making((here.key, here.visit_id), again=row.number), make)


def _new_plan(here: At, wishes: Wishes, *, progress: Callable[[Text, float], None]) -> PlanRow:
    return make_plan(
        here.store, here.visit_id, who=here.who, wishes=wishes, draws=DRAWS, seed=SEED,
        made_on=here.desk.today().isoformat(), progress=progress,
    )  # fmt: skip


def _begin(request: Request, here: At, making: Making, make: Callable[..., PlanRow]) -> Response:
    shelf = _shelf(request)
    key = secrets.token_urlsafe(12)
    with shelf.lock:
        shelf.making[key] = making
        while len(shelf.making) > 20:
            shelf.making.popitem(last=False)
    thread = threading.Thread(target=_make, args=(making, make), name="plan", daemon=True)
    thread.start()
    thread.join(0.8)  # a plan that is quick needs no page of its own
    return RedirectResponse(here.url(f"making/{key}"), 303)


def _make(making: Making, make: Callable[..., PlanRow]) -> None:
    def tell(doing: Text, share: float) -> None:
        making.doing, making.share = doing, share

    try:
        making.row = make(progress=tell)
    except BadInput as refused:
        making.refused = refused
    finally:
        making.failed = making.row is None and making.refused is None


def making_plan(request: Request) -> Response:
    """How far a plan is; goes on to it when it is made."""
    here, shelf = at_visit(request), _shelf(request)
    making = shelf.making.get(str(request.path_params["key"]))
    if making is None or making.place != (here.key, here.visit_id):
        raise HTTPException(404)
    if making.row is not None and making.again is not None:
        return RedirectResponse(here.url(f"compare?a={making.again}&b={making.row.number}"), 303)
    if making.row is not None:
        return RedirectResponse(here.url(f"plans/{making.row.number}"), 303)
    if making.refused is not None:
        data = plans_page(here, making.wishes)
        return page(request, "plans.html", data, here=here, refused=as_typed_here(making.refused))
    if making.failed:
        raise RuntimeError(say(making.doing))
    data = {"title": message(PlansPage.making), "doing": making.doing, "percent": round(100 * making.share)}
    answer = page(request, "making.html", data, here=here)
    answer.headers["refresh"] = "1"
    return answer


def _row(here: At, number: int) -> PlanRow:
    row = next((one for one in plans(here.store, here.visit_id) if one.number == number), None)
    if row is None:
        raise HTTPException(404)
    return row


def _shown(request: Request, here: At, row: PlanRow) -> ShownPlan:
    """A plan as it was made: read from what was kept when it is not at hand."""
    shelf, key = _shelf(request), (here.key, row.id)
    with shelf.lock:
        if key not in shelf.shown:
            plan = plan_kept(here.store, row.id)
            findings = tuple(replace(one, text=on_pages(one.text)) for one in plan.findings)
            told = replace(plan, findings=findings)
            shelf.shown[key] = ShownPlan(plan, sheet_content(told), report_of(told))
            while len(shelf.shown) > KEPT_PLANS:
                shelf.shown.popitem(last=False)
        shelf.shown.move_to_end(key)
        return shelf.shown[key]


def tunings_here(request: Request, here: At, site: str) -> tuple[Tuning, ...]:
    """What the latest plan of a visit would set for a site; none without a plan."""
    made = plans(here.store, here.visit_id)
    if not made:
        return ()
    try:
        sites = _shown(request, here, made[-1]).plan.sites
    except UnreadPlan:
        return ()
    found = next((one for one in sites if one.name == site), None)
    return found.tunings if found is not None else ()


def _number_of(request: Request) -> int:
    return int(request.path_params["number"])


def plan_page(here: At, row: PlanRow, shown: ShownPlan) -> dict[str, Any]:
    """Everything that the sheet holds, as a page."""
    return {
        "title": message(PlansPage.number, number=row.number),
        "row": row,
        "asked": _asked_words(row),
        "content": shown.content,
        "report": shown.report,
        "body": _body(shown.report),
        "columns": ("mark", "action", "control", "chance", "effort"),
        "mount_cautions": len({caution.text for mount in shown.plan.mounts for caution in mount.cautions}),
        "base": here.url(f"plans/{row.number}"),
        "mounts": len(shown.content["mounts"]),
        "others": [one.number for one in plans(here.store, here.visit_id) if one.number != row.number],
        "now": program(),
    }


def _body(report: Report) -> dict[str, str] | None:
    """The picture of the player, sized so that its writing can be read on a telephone."""
    controls = report.section("controls")
    found = [one for one in controls.blocks if isinstance(one, PictureBlock)] if controls is not None else []
    if not found:
        return None
    view = say(message(BodyDrawings.label, label="front"))
    return {"svg": body_drawing(found[0].marks, _BODY_MM), "alt": say(found[0].alt), "caption": sentence(view)}


Page = Callable[[Request], Response]


def if_read(answer: Page) -> Page:
    """Answer from a kept plan; where it cannot be read, say so, and offer what there is.

    Parameters
    ----------
    answer : callable
        Page or file of a plan.
    """

    @wraps(answer)
    def or_say_so(request: Request) -> Response:
        try:
            return answer(request)
        except UnreadPlan as unread:
            here = at_visit(request)
            row = _row(here, _number_of(request)) if "number" in request.path_params else _latest(request, here)
            base = here.url(f"plans/{row.number}") if row is not None else ""
            data = {
                "title": message(PlansPage.number, number=row.number if row else 0),
                "row": row,
                "why": say(unread.why),
                "base": base,
            }
            return page(request, "plan_unread.html", data, here=here)

    return or_say_so


@if_read
def show_plan(request: Request) -> Response:
    """One plan, with its reasons."""
    here = at_visit(request)
    row = _row(here, _number_of(request))
    return page(request, "plan.html", plan_page(here, row, _shown(request, here, row)), here=here)


def _latest(request: Request, here: At) -> PlanRow | None:
    asked = request.query_params.get("plan", "")
    made = plans(here.store, here.visit_id)
    if (number := number_in(asked)) is not None:
        return next((one for one in made if one.number == number), None)
    return made[-1] if made else None


@if_read
def mounts(request: Request) -> Response:
    """Where everything goes and what holds it."""
    here = at_visit(request)
    row = _latest(request, here)
    shown = _shown(request, here, row) if row is not None else None
    data = {
        "title": message(PlansPage.mounts),
        "row": row,
        "content": shown.content if shown else None,
        "base": here.url(f"plans/{row.number}") if row else "",
        "room": shown is not None and shown.plan.room is not None,
    }
    return page(request, "mounts.html", data, here=here)


@if_read
def sheet(request: Request) -> Response:
    """The sheet page by page, to look at and to print."""
    here = at_visit(request)
    row = _latest(request, here)
    count = len(_pages(request, here, row)) if row is not None else 0
    data = {
        "title": message(PlansPage.sheet),
        "row": row,
        "base": here.url(f"plans/{row.number}") if row else "",
        "count": count,
        "language": _language(request),
        "languages": {one: own_name(one) for one in FAMILY_LANGUAGES},
    }
    return page(request, "sheet.html", data, here=here)


def _pages(request: Request, here: At, row: PlanRow) -> tuple[str, ...]:
    shown = _shown(request, here, row)
    language = _language(request)
    if language not in shown.pages:
        shown.pages[language] = sheet_pages(shown.plan, language=language)
    return shown.pages[language]


def _language(request: Request) -> str:
    """Of the family's pages, as chosen on the page of the sheet: English where nothing, or none that there is, was chosen."""
    asked = request.query_params.get("language", "")
    return asked if asked in FAMILY_LANGUAGES else FAMILY_LANGUAGES[0]


@if_read
def sheet_page(request: Request) -> Response:
    """One page of the sheet as a picture."""
    here = at_visit(request)
    pages = _pages(request, here, _row(here, _number_of(request)))
    place = int(request.path_params["page"])
    if not 1 <= place <= len(pages):
        raise HTTPException(404)
    return Response(pages[place - 1], media_type="image/svg+xml",
                    headers={"content-security-policy": "default-src 'none'; style-src 'unsafe-inline'; img-src data:"})  # fmt: skip


@if_read
def sheet_file(request: Request) -> Response:
    """The sheet as PDF."""
    here = at_visit(request)
    row = _row(here, _number_of(request))
    shown = _shown(request, here, row)
    language = _language(request)
    if language not in shown.pdf:
        shown.pdf[language] = sheet_pdf(shown.plan, language=language)
    return download(shown.pdf[language], _name(here, row, "pdf"), "application/pdf")


def latest_sheet(request: Request) -> Response:
    """The sheet of the latest plan as PDF."""
    here = at_visit(request)
    row = _latest(request, here)
    if row is None:
        raise HTTPException(404)
    return RedirectResponse(here.url(f"plans/{row.number}/sheet.pdf"), 303)


def plan_data(request: Request) -> Response:
    """Everything, for other programs."""
    here = at_visit(request)
    row = _row(here, _number_of(request))
    return download(plan_text(here.store, row.id), _name(here, row, "json"), "application/json")


@if_read
def scene(request: Request) -> Response:
    """The mounts as a room that can be turned."""
    here = at_visit(request)
    shown = _shown(request, here, _row(here, _number_of(request)))
    if shown.plan.room is None or not shown.plan.mounts:
        raise HTTPException(404)
    return Response(scene_html(shown.plan), media_type="text/html", headers={"content-security-policy": SCENE_POLICY})


@if_read
def drawings(request: Request) -> Response:
    """The mounts for a drawing program."""
    here = at_visit(request)
    row = _row(here, _number_of(request))
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, text in all_dxf(_shown(request, here, row).plan).items():
            archive.writestr(f"{name}.dxf", text)
    return download(packed.getvalue(), _name(here, row, "zip"), "application/zip")


def _name(here: At, row: PlanRow, ending: str) -> str:
    code = here.player.code if here.player else "player"
    return f"{code}-visit-{here.visit.number if here.visit else 0}-plan-{row.number}.{ending}"


def compare(request: Request) -> Response:
    """Two plans beside each other: what differs, and what it costs."""
    here = at_visit(request)
    made = plans(here.store, here.visit_id)
    numbers = [one.number for one in made]
    asked = [request.query_params.get(name, "") for name in ("a", "b")]
    chosen = [number if (number := number_in(one)) in numbers else None for one in asked]
    first, second = chosen[0] or (numbers[-2] if len(numbers) > 1 else 0), chosen[1] or (numbers[-1] if numbers else 0)
    data: dict[str, Any] = {
        "title": message(PlansPage.compare_two),
        "choices": tuple(
            (str(row.number), message(PlansPage.choice, number=row.number, wishes=_asked_words(row))) for row in made
        ),
        "a": str(first),
        "b": str(second),
        "told": None,
        "why": (),
        "unread": (),
    }
    if first and second:
        one, other = (_row(here, number) for number in (first, second))
        data["why"] = tuple(map(say, plan_changes(here.store, one, other)))
        try:
            data["told"] = differences(*(_shown(request, here, row).plan for row in (one, other)))
        except UnreadPlan as unread:
            apart = told_apart(*(plan_text(here.store, row.id) for row in (one, other)))
            data["unread"] = (say(unread.why), say(apart))
    return page(request, "compare.html", data, here=here)


ROUTES: tuple[BaseRoute, ...] = (
    Route("/visits/{id}/plan", show_plans),
    Route("/visits/{id}/plan", start_plan, methods=["POST"]),
    Route("/visits/{id}/making/{key}", making_plan),
    Route("/visits/{id}/plans/{number:int}", show_plan),
    Route("/visits/{id}/plans/{number:int}/again", again, methods=["POST"]),
    Route("/visits/{id}/plans/{number:int}/sheet.pdf", sheet_file),
    Route("/visits/{id}/plans/{number:int}/page-{page:int}.svg", sheet_page),
    Route("/visits/{id}/plans/{number:int}/plan.json", plan_data),
    Route("/visits/{id}/plans/{number:int}/scene.html", scene),
    Route("/visits/{id}/plans/{number:int}/drawings.zip", drawings),
    Route("/visits/{id}/mounts", mounts),
    Route("/visits/{id}/sheet", sheet),
    Route("/visits/{id}/sheet.pdf", latest_sheet),
    Route("/visits/{id}/compare", compare),
)
