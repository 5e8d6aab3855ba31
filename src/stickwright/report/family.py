"""The words of page one: for whoever sets the stick up tonight, in the order the hands need them."""

from __future__ import annotations

from dataclasses import replace
from typing import Any, Literal, get_args

from stickwright.catalogue import book, say
from stickwright.codes.family import Cause, Family, Heading
from stickwright.codes.message import Message, Name, message
from stickwright.model.fit import Caution, Fit
from stickwright.model.mounting import Pose
from stickwright.model.plan import Plan, SitePlan
from stickwright.model.sharing import Placement, Sharing, Wire
from stickwright.report.between_games import set_in_each_game
from stickwright.report.device_words import (
    crosswise_step,
    holding_steps,
    mode_steps,
    mode_trouble,
    order_words,
    setting_step,
)
from stickwright.report.drawings import setup_alt, setup_drawing
from stickwright.report.paper import width_mm
from stickwright.report.printed import base_turned, sentence
from stickwright.report.sharing_words import socket_name
from stickwright.report.tables import limiting_sentence
from stickwright.report.tell import named, tell
from stickwright.report.tuned import set_in_game, set_unrecorded, tuned_elsewhere, tuning_of_choice

__all__ = [
    "as_shared", "cautions_for", "first_page", "further_set_up", "main_site", "on_page_one", "pose_at",
    "second_sticks", "trouble", "wire_of",
]  # fmt: skip

_STOP_KEYS = ("session", "site", "kit")
_SMALL_DRAWING_MM = (76.0, 48.0)
CAUSES: tuple[Cause, ...] = ("unplugged", "socket", "standby", "touched", "moved")


def trouble(turned: bool = False) -> list[list[str]]:
    """The five usual causes, in the order in which they are quickest to rule out, each with what to do.

    Parameters
    ----------
    turned : bool, default False
        Whether step 2 turns the base.
    """
    return [[tell(Family.cause, cause=one), tell(Family.remedy, cause=one, turned=turned)] for one in CAUSES]


def main_site(plan: Plan) -> SitePlan:
    """The site that page one is about: the first with a choice, otherwise the first.

    Parameters
    ----------
    plan : Plan
        A finished plan with at least one site.
    """
    return next((site for site in plan.sites if site.choice is not None), plan.sites[0])


def cautions_for(plan: Plan, site: SitePlan, keys: tuple[str, ...] | None = None) -> tuple[Caution, ...]:
    """Cautions of one site, those that hold for every site among them.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    site : SitePlan
        The site asked about.
    keys : tuple of str, optional
        Only cautions about these numbers.
    """
    return tuple(
        caution
        for caution in plan.cautions
        if caution.site in (None, site.name) and (keys is None or caution.about in keys)
    )


def as_shared(plan: Plan) -> Plan:
    """The plan with each site's stick as the sharing places it: what nobody plugs in is not set up.

    Parameters
    ----------
    plan : Plan
        A finished plan; without a sharing, or with one that places no stick, it stays as it is.
    """
    sticks = {one.site: one for one in _sticks(plan.sharing)}
    if not sticks:
        return plan
    sites = tuple(
        replace(site, choice=(sticks[site.name].fit or site.choice) if site.name in sticks else None)
        for site in plan.sites
    )
    return replace(plan, sites=sites) if any(site.choice is not None for site in sites) else plan


def _sticks(sharing: Sharing | None) -> tuple[Placement, ...]:
    placements = sharing.placements if sharing is not None else ()
    return tuple(one for one in placements if one.how == "site" and one.kind == "stick")


def _without_stick(plan: Plan) -> bool:
    """Whether everything is done by switches, controllers and people: nothing for the drawing of a stick."""
    shared = plan.sharing is not None and any(one.how == "site" for one in plan.sharing.placements)
    return shared and not _sticks(plan.sharing)


def wire_of(plan: Plan, site: SitePlan) -> Wire | None:
    """The cable of a site's chosen stick, when the wiring knows it.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    site : SitePlan
        One of its sites.
    """
    wiring = plan.sharing.wiring if plan.sharing is not None else None
    if wiring is None or site.choice is None:
        return None
    named = (wire for wire in wiring.wires if wire.at == (site.name,) and wire.device == site.choice.stick)
    return next(named, None)


def first_page(plan: Plan, drawing_height_mm: float = 78.0) -> dict[str, Any]:
    """Everything printed on page one.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    drawing_height_mm : float, default 78
        Paper height of the drawing.

    Returns
    -------
    dict
        Texts and one drawing, for the template.
    """
    plan = as_shared(plan)
    ends = {"words": _headings(), "date": _dated(plan.made_on), "player": plan.player}
    stops = [say(one.text) for one in on_page_one(plan)]
    if _without_stick(plan):
        return _switches_only(plan) | ends | {"stop": stops}
    if not plan.sites:
        return _nothing_planned(plan) | ends | {"stop": stops}
    site = main_site(plan)
    page = _set_up(plan, site, site.choice, drawing_height_mm) if site.choice is not None else _nothing_fits(plan, site)
    return page | ends | {"stop": stops}


def _headings() -> dict[str, str]:
    """Fixed words of the page, for the template."""
    parts: tuple[Heading, ...] = get_args(Heading)
    return {part: tell(Family.heading, part=part) for part in parts}


def _dated(made_on: str) -> str:
    return book().writer.date(made_on) if made_on else tell(Family.undated)


def on_page_one(plan: Plan) -> tuple[Caution, ...]:
    """Cautions that page one gives: those for everybody, and what concerns the place of each stick set up.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    """
    if not plan.sites:
        return tuple(one for one in plan.cautions if one.site is None or one.about in _STOP_KEYS)
    site = main_site(plan)
    second = {other.name for other in second_sticks(plan)}
    return tuple(
        one
        for one in plan.cautions
        if one.site is None
        or (one.site == site.name and one.about in _STOP_KEYS)
        or (one.site in second and one.about == "site")
    )


def second_sticks(plan: Plan) -> tuple[SitePlan, ...]:
    """Sites that have a stick of their own for another action, to be set up as well.

    Parameters
    ----------
    plan : Plan
        A finished plan with at least one site.
    """
    site = main_site(plan)
    return tuple(other for other in plan.sites if _is_second_stick(other, site))


def pose_at(plan: Plan, site: SitePlan) -> Pose | None:
    """Where the chosen stick of a site goes and how it is turned; None when the room does not tell.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    site : SitePlan
        One of its sites.
    """
    if site.choice is None or plan.room is None:
        return None
    stick = site.choice.stick
    return next((one.pose for one in plan.mounts if (one.site, one.device) == (site.name, stick)), None)


def further_set_up(site: SitePlan, wire: Wire | None = None, pose: Pose | None = None) -> dict[str, Any] | None:
    """A small drawing and the lines to set up a further stick by; None where nothing was chosen.

    Parameters
    ----------
    site : SitePlan
        One site of the plan.
    wire : Wire, optional
        Its stick's cable, when the wiring knows it.
    pose : Pose, optional
        How it stands, when the room tells.
    """
    if site.choice is None:
        return None
    plug, socket = _plug(site.choice), _socket(wire)
    plugged = plug if socket is None else message(Family.plug_into, plug=plug, socket=socket)
    turn = _turn_rad(site, pose)
    drawing = setup_drawing(site.choice, _SMALL_DRAWING_MM, turn_rad=turn, side_only=True)
    words = tell(Family.turn_base, turn_rad=turn) if base_turned(turn) else ""
    lines = [_seat(site), _place(site, site.choice, words), say(plugged), _game_settings(site)]
    alt = setup_alt(site.choice, turn, side_only=True)
    return {
        "drawing": {"svg": drawing, "alt": alt, "width_mm": width_mm(drawing)},
        "lines": [line for line in lines if line],
    }


def _set_up(plan: Plan, site: SitePlan, fit: Fit, drawing_height_mm: float) -> dict[str, Any]:
    turn = _turn_rad(site, pose_at(plan, site))
    drawing = setup_drawing(fit, (184.0, drawing_height_mm), turn_rad=turn)
    turned = base_turned(turn)
    coarse = Name(fit.stick) if fit.verdict == "does not fit" else None
    return {
        "fits": True,
        "title": tell(Family.stick_title, player=Name(plan.player)),
        "lead": tell(Family.lead, site=Name(site.name), game=named(plan.game), coarse=coarse),
        "drawing": {"svg": drawing, "alt": setup_alt(fit, turn), "width_mm": width_mm(drawing)},
        "steps": _steps(
            site,
            fit,
            tell(Family.drawn_turned, turn_rad=turn) if turned else "",
            [*holding_steps(plan), *mode_steps(plan)],
        ),
        "plug": say(_plug(fit)),
        "socket": say(_socket(wire_of(plan, site)) or ""),
        "game": set_in_each_game(plan, site.name) or _game_settings(site),
        "trouble": [
            *trouble(bool(turned)),
            *mode_trouble(plan),
        ],
        "also": [*(_second_stick(other) for other in second_sticks(plan)), *_next_page(plan, site)],
    }


def _turn_rad(site: SitePlan, pose: Pose | None) -> float:
    """How the base is to stand, from straight ahead: as the room and the recordings say, or the recordings alone."""
    if pose is not None:
        return pose.turn_rad
    return site.base_turn_rad.number if site.base_turn_rad is not None else 0.0


def _steps(site: SitePlan, fit: Fit, turned: str, modes: list[str]) -> list[str]:
    """Three steps: the person, the stick, the plug."""
    return [
        _seat(site),
        _place(site, fit, turned),
        " ".join(
            [
                tell(Family.plug_in_stick),
                *modes,
                tell(Family.try_stick),
            ]
        ),
    ]


def _seat(site: SitePlan) -> str:
    return tell(Family.seat, support=named(site.support))


def _place(site: SitePlan, fit: Fit, turned: str) -> str:
    """What goes on the stick, how the base is raised, where it is placed and how it is turned (a sentence, or nothing)."""
    parts = [
        tell(Family.fit_parts, stick=Name(fit.stick), extension=named(fit.extension), topper=named(fit.topper)),
        setting_step(fit),
        crosswise_step(fit),
    ]
    if abs(fit.built_tilt_rad) > 1e-9:
        edge: Literal["far", "near"] = "far" if fit.built_tilt_rad > 0 else "near"
        parts.append(tell(Family.raise_edge, edge=edge, angle_rad=abs(fit.built_tilt_rad)))
    parts.append(tell(Family.place_stick, site=Name(site.name), touch=fit.kind == "touch"))
    return " ".join(part for part in (*parts, turned) if part)


def _plug(fit: Fit) -> Message:
    return message(Family.plug, plug=named(fit.plug))


def _next_page(plan: Plan, site: SitePlan) -> list[str]:
    """That there is more to set up than this stick."""
    placements = plan.sharing.placements if plan.sharing is not None else ()
    others = [one for one in placements if one.how in ("site", "helper") and one.site != site.name]
    return [tell(Family.other_controls)] if others else []


def _socket(wire: Wire | None) -> Message | None:
    if wire is None:
        return None
    return message(Family.socket, socket=socket_name(wire.socket), hub=Name(wire.hub), tag=Name(wire.tag))


def _game_settings(site: SitePlan) -> str:
    """What to type in the game, and that it was found on another set-up where it was."""
    tuning = tuning_of_choice(site)
    if tuning is None:
        return set_unrecorded(site.choice) if site.choice is not None else ""
    if tuning.faults:
        return set_in_game(tuning)
    return f"{set_in_game(tuning)} {tuned_elsewhere(site.choice, tuning)}".strip()


def _nothing_fits(plan: Plan, site: SitePlan) -> dict[str, Any]:
    nearest = site.fits[0] if site.fits else None
    return {
        "fits": False,
        "title": tell(Family.none_fits_title, player=Name(plan.player)),
        "lead": tell(Family.not_instructions, measured=True),
        "found": tell(Family.none_fits, setups=site.tried, site=Name(site.name)),
        "nearest": tell(Family.comes_nearest, setup=nearest.named, why=limiting_sentence(nearest, with_help=False))
        if nearest
        else tell(Family.nothing_tried),
        "help": sentence(nearest.help) if nearest and nearest.help else tell(Family.nothing_helps),
        "order": order_words(site.to_order) if site.to_order is not None else "",
        "next": say(plan.next_reading.sentence),
        "others": [
            tell(Family.other_site, site=Name(other.name), told=other.sentence)
            for other in plan.sites
            if other is not site
        ],
    }


def _is_second_stick(other: SitePlan, site: SitePlan) -> bool:
    """Whether another site has a stick of its own for another action, to be set up as well."""
    return other is not site and other.choice is not None and other.demand.action != site.demand.action


def _second_stick(other: SitePlan) -> str:
    setup = other.choice.named if other.choice is not None else ""
    return tell(Family.further_stick, site=Name(other.name), setup=setup)


def _switches_only(plan: Plan) -> dict[str, Any]:
    """Page one of a set-up without a stick of its own: the pages that follow hold the rest."""
    wired = plan.sharing is not None and plan.sharing.wiring is not None
    return {
        "fits": True,
        "title": tell(Family.title, player=Name(plan.player)),
        "lead": tell(Family.switches_lead, game=named(plan.game)),
        "drawing": None,
        "steps": [
            tell(Family.seat, support=None),
            tell(Family.place_switches),
            " ".join(
                [
                    tell(Family.plug_in_switches, wiring_page=wired),
                    *holding_steps(plan),
                    *mode_steps(plan),
                    tell(Family.try_switches),
                ]
            ),
        ],
        "plug": "",
        "socket": "",
        "game": "",
        "trouble": [
            *(
                [tell(Family.cause, cause=one), tell(Family.check_sockets, wiring_page=wired)]
                if one == "socket"
                else [tell(Family.cause, cause=one), tell(Family.remedy, cause=one, turned=False)]
                for one in CAUSES
            ),
            *mode_trouble(plan),
        ],
        "also": [],
    }


def _nothing_planned(plan: Plan) -> dict[str, Any]:
    return {
        "fits": False,
        "title": tell(Family.no_plan_title, player=Name(plan.player)),
        "lead": tell(Family.not_instructions, measured=False),
        "found": say(plan.sentence),
        "nearest": "",
        "help": "",
        "next": say(plan.next_reading.sentence),
        "others": [],
    }
