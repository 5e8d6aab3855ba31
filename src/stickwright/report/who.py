"""Page two: controls at a glance, for the family."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any, get_args

from stickwright.catalogue import say
from stickwright.codes.glance import Glance, Heading
from stickwright.codes.message import Message, Name, message
from stickwright.model.fit import Caution
from stickwright.model.plan import Plan
from stickwright.model.sharing import Placement, Sharing
from stickwright.report.body import BodyMark, body_alt, body_drawing, part_named, side_named
from stickwright.report.games_words import all_placements, games_page
from stickwright.report.paper import width_mm
from stickwright.report.printed import sentence
from stickwright.report.sharing_words import device_words, done_by, given_up, introductions
from stickwright.report.tell import names, tell

__all__ = ["for_the_cables", "for_the_family", "for_the_numbers", "marks_of", "who_page"]

_NUMBERS = ("effort", "hold", "force", "false_input", "press", "rate", "dead zone", "load", "reach")
"""Cautions about these stand beside their numbers on the practitioner's pages."""
_CABLES = ("cable", "wiring", "power", "current", "plug", "socket", "hub", "trip", "electrical")


def who_page(plan: Plan, height_mm: float = 84.0, short: bool = False) -> dict[str, Any]:
    """Everything printed on the page 'Controls at a glance'.

    Parameters
    ----------
    plan : Plan
        A finished plan with its sharing.
    height_mm : float, default 84
        Paper height of the body picture.
    short : bool, default False
        Whether the table leaves the parts' names to the picture, whose numbers it gives.

    Returns
    -------
    dict
        Texts, one table and one drawing, for the template.
    """
    sharing = _shared(plan)
    marks = marks_of(plan)
    numbers = {mark.site: str(mark.number) for mark in marks}
    paired = _paired(sharing.placements)
    drawing = body_drawing(marks, (184.0, height_mm)) if marks else ""
    figure = {"svg": drawing, "alt": body_alt(marks), "width_mm": width_mm(drawing)} if marks else None
    return {
        "words": _headings(),
        "title": tell(Glance.title, player=Name(plan.player)),
        "lead": _lead(plan),
        "games": games_page(plan, numbers),
        "clash": _clash(sharing),
        "drawing": figure,
        "rows": [
            [numbers.get(one.site or "", ""), one.action, done_by(one, with_site=not short)]
            for one in sharing.placements
        ],
        "order": [say(one) for one in introductions(sharing.placements)],
        "paired": paired,
        "cautions": [say(one.text) for one in for_the_family(plan) if one.about != "sharing" or not paired],
    }


def marks_of(plan: Plan) -> tuple[BodyMark, ...]:
    """The parts in use, numbered in the order in which the actions name them.

    Parameters
    ----------
    plan : Plan
        A finished plan with its sharing.
    """
    sharing = _shared(plan)
    placements = all_placements(plan)
    used = dict.fromkeys(one.site for one in placements if one.how == "site" and one.site)
    loads = [*(one for layout in plan.layouts if layout.sharing for one in layout.sharing.loads), *sharing.loads]
    parts = {site.name: site.part for site in plan.sites} | {one.site: one.part for one in loads if one.part}
    sides = {one.site: one.side for one in loads if one.side}
    return tuple(
        BodyMark(number, site, parts.get(site) or part_named(site), sides.get(site) or side_named(site),
             _devices(placements, site))
        for number, site in enumerate(used, start=1)
    )  # fmt: skip


def _headings() -> dict[str, str]:
    """Fixed words of the page, for the template."""
    parts: tuple[Heading, ...] = get_args(Heading)
    return {part: tell(Glance.heading, part=part) for part in parts}


def _lead(plan: Plan) -> str:
    games = [layout.game for layout in plan.layouts] or ([plan.game] if plan.game else [])
    return tell(Glance.lead, games=names(games)) if games else ""


def for_the_family(plan: Plan) -> tuple[Caution, ...]:
    """Cautions of the sharing that belong to no number and no cable, and that page one has not given.

    Parameters
    ----------
    plan : Plan
        A finished plan with its sharing.
    """
    before = {one.text for one in plan.cautions}
    told = (one for one in _shared(plan).cautions if one.text not in before)
    return tuple(one for one in told if not _about(one, (*_NUMBERS, *_CABLES)))


def for_the_cables(plan: Plan) -> tuple[Caution, ...]:
    """Cautions of the sharing about cables, current and plugs."""
    before = {one.text for one in plan.cautions}
    return tuple(one for one in _shared(plan).cautions if one.text not in before and _about(one, _CABLES))


def for_the_numbers(plan: Plan) -> tuple[Caution, ...]:
    """Cautions of the sharing about numbers, that the sites' own pages have not given."""
    before = {one.text for one in plan.cautions}
    return tuple(one for one in _shared(plan).cautions if one.text not in before and _about(one, _NUMBERS))


def _about(caution: Caution, keys: Iterable[str]) -> bool:
    return any(caution.about.startswith(key) for key in keys)


def _shared(plan: Plan) -> Sharing:
    if plan.sharing is None:
        raise ValueError("the plan shares out no actions")
    return plan.sharing


def _devices(placements: Iterable[Placement], site: str) -> Message:
    here = (one for one in placements if one.how == "site" and one.site == site)
    found = dict.fromkeys(Name(one.device or "") if one.kind == "controller" else device_words(one) for one in here)
    return message(Glance.devices, devices=tuple(found))


def _clash(sharing: Sharing) -> list[str]:
    """What could not all be had, and what was given up."""
    if sharing.clash is None:
        return []
    together = sentence(sharing.clash.sentence) or tell(Glance.not_all, requests=sharing.clash.wishes)
    given = given_up(sharing.clash)
    return [part for part in (together, say(given or "")) if part]


def _paired(placements: Iterable[Placement]) -> str:
    """What is to be agreed when two people play as one."""
    helpers = dict.fromkeys(one.helper for one in placements if one.how == "helper")
    return tell(Glance.agree, helpers=names(one for one in helpers if one)) if helpers else ""
