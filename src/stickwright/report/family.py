"""The words of page one: for whoever sets everything up tonight, in the order the hands need them."""

from __future__ import annotations

from collections.abc import Sequence
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
from stickwright.report.setup_picture import items_of, setup_picture
from stickwright.report.sharing_words import socket_name
from stickwright.report.tables import limiting_sentence
from stickwright.report.tell import named, names, tell
from stickwright.report.tuned import set_in_game, set_unrecorded, tuned_elsewhere, tuning_of_choice
from stickwright.report.who import marks_of

__all__ = [
    "as_shared", "cautions_for", "first_page", "further_set_up", "main_site", "on_page_one", "pose_at",
    "second_sticks", "trouble", "wire_of",
]  # fmt: skip

_STOP_KEYS = ("session", "site", "kit")
_SMALL_DRAWING_MM = (76.0, 48.0)
CAUSES: tuple[Cause, ...] = ("unplugged", "socket", "standby", "touched", "moved")


def trouble(plan: Plan) -> list[list[str]]:
    """The five usual causes, in the order in which they are quickest to rule out, each with what to do; then modes.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    """
    turned = any(base_turned(_turn_rad(site, pose_at(plan, site))) for site, _ in _sticks_set_up(as_shared(plan)))
    wired = plan.sharing is not None and plan.sharing.wiring is not None
    usual = [
        [tell(Family.cause, cause=one), tell(Family.remedy, cause=one, turned=turned, wired=wired)] for one in CAUSES
    ]
    return [*usual, *mode_trouble(plan)]


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


def first_page(plan: Plan, drawing_height_mm: float = 92.0) -> dict[str, Any]:
    """Everything printed on page one.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    drawing_height_mm : float, default 92
        Paper height of the picture.

    Returns
    -------
    dict
        Texts and one picture, for the template.
    """
    plan = as_shared(plan)
    ends = {"words": _headings(), "date": _dated(plan.made_on), "player": plan.player}
    stops = [say(one.text) for one in on_page_one(plan)]
    if not _without_stick(plan) and not plan.sites:
        return _nothing_planned(plan) | ends | {"stop": stops}
    if not _without_stick(plan) and main_site(plan).choice is None:
        return _nothing_fits(plan, main_site(plan)) | ends | {"stop": stops}
    return _set_up(plan, drawing_height_mm) | ends | {"stop": stops}


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
    lines = [_seat(site.support), _place(site, site.choice, words), say(plugged), _game_settings(site)]
    alt = setup_alt(site.choice, turn, side_only=True)
    return {
        "drawing": {"svg": drawing, "alt": alt, "width_mm": width_mm(drawing)},
        "lines": [line for line in lines if line],
    }


def _set_up(plan: Plan, height_mm: float) -> dict[str, Any]:
    """All devices in one picture, one list of steps, and a box for each stick."""
    sticks = _sticks_set_up(plan)
    numbers = _numbers(plan, sticks)
    turned = {site.name: _turn_rad(site, pose_at(plan, site)) for site, _ in sticks}
    items = items_of(plan, numbers, [(site.name, fit, turned[site.name]) for site, fit in sticks])
    coarse = next((fit.stick for _, fit in sticks if fit.verdict == "does not fit"), None)
    return {
        "fits": True,
        "title": tell(Family.title, player=Name(plan.player)),
        "lead": tell(Family.lead, games=_games(plan), sticks=len(sticks), coarse=named(coarse)),
        "picture": setup_picture(plan, items, (height_mm, height_mm)),
        "steps": _steps(plan, sticks, numbers, turned),
        "boxes": [_box(plan, site, fit, numbers[site.name]) for site, fit in sticks],
    }


def _sticks_set_up(plan: Plan) -> list[tuple[SitePlan, Fit]]:
    """The main stick, then those for other actions; none where everything is done by switches."""
    if _without_stick(plan) or not plan.sites:
        return []
    return [(site, site.choice) for site in (main_site(plan), *second_sticks(plan)) if site.choice is not None]


def _games(plan: Plan) -> tuple[Name, ...]:
    return names([layout.game for layout in plan.layouts] or ([plan.game] if plan.game.strip() else []))


def _numbers(plan: Plan, sticks: Sequence[tuple[SitePlan, Fit]]) -> dict[str, str]:
    """Number of each control site: as on the page of controls, where there is one."""
    known = [mark.site for mark in marks_of(plan)] if plan.sharing is not None else []
    sites = dict.fromkeys([*known, *(site.name for site, _ in sticks)])
    return {site: str(number) for number, site in enumerate(sites, start=1)}


def _box(plan: Plan, site: SitePlan, fit: Fit, number: str) -> dict[str, str]:
    """What is set in the game for one stick; its plug and a line for the socket where no wiring names it."""
    wired = wire_of(plan, site) is not None
    return {
        "title": tell(Family.stick_box, number=Name(number), stick=Name(fit.stick), site=Name(site.name)),
        "plug": "" if wired else say(_plug(fit)),
        "game": set_in_each_game(plan, site.name) or _game_settings(site) or tell(Family.no_settings),
    }


def _turn_rad(site: SitePlan, pose: Pose | None) -> float:
    """How the base is to stand, from straight ahead: as the room and the recordings say, or the recordings alone."""
    if pose is not None:
        return pose.turn_rad
    return site.base_turn_rad.number if site.base_turn_rad is not None else 0.0


def _steps(
    plan: Plan, sticks: Sequence[tuple[SitePlan, Fit]], numbers: dict[str, str], turned: dict[str, float]
) -> list[dict[str, Any]]:
    """One list for all devices: the player, each stick, the switches, the cables, the game. Each step may have rows."""
    return [
        _step(_seat(sticks[0][0].support if sticks else "")),
        *(_step(_stick_step(site, fit, numbers[site.name], turned[site.name])) for site, fit in sticks),
        *(_step(told) for told in _other_devices(plan)),
        *(_step(say(told)) for told in holding_steps(plan)),
        _plug_in(plan, sticks),
        *(_step(say(told)) for told in mode_steps(plan)),
        _step(tell(Family.start_game), *_try(plan, len(sticks))),
    ]


def _stick_step(site: SitePlan, fit: Fit, number: str, turn_rad: float) -> str:
    """One stick: what goes on it, how it is set, where it stands and how it is turned."""
    turn = tell(Family.turn_base, turn_rad=turn_rad) if base_turned(turn_rad) else ""
    return _place(site, fit, turn, number)


def _other_devices(plan: Plan) -> list[str]:
    """Switches and controllers besides the sticks; arms, whose joints stand on pages of their own."""
    placements = plan.sharing.placements if plan.sharing is not None else ()
    kinds = {one.kind for one in placements if one.how == "site"}
    controllers = "controller" in kinds
    told = [tell(Family.place_switches, controllers=controllers)] if controllers or "switch" in kinds else []
    arms = any(one.choice is not None and one.choice.arm is not None for one in plan.mounts)
    return [" ".join([*told, *([tell(Family.set_arms)] if arms else [])])] if told or arms else []


def _plug_in(plan: Plan, sticks: Sequence[tuple[SitePlan, Fit]]) -> dict[str, Any]:
    """Every cable into its socket, a row each; what is not wired by its plug."""
    wiring = plan.sharing.wiring if plan.sharing is not None else None
    if wiring is None:
        told = [tell(Family.plug_in_stick, stick=Name(fit.stick)) for _, fit in sticks]
        return _step(tell(Family.hands_off), *told, *([tell(Family.plug_in_others)] if _switched(plan) else []))
    cables = [wire for wire in wiring.wires if wire.socket and not wire.paired]
    others = [tell(Family.switch_on, device=Name(wire.device)) for wire in wiring.wires if wire not in cables]
    hubs = names(dict.fromkeys(wire.hub for wire in cables))
    told = [tell(Family.plug_cables, hubs=hubs)] if cables else []
    several = len(hubs) > 1
    return _step(tell(Family.hands_off), *others, *told) | {"rows": [_cable(wire, several) for wire in cables]}


def _cable(wire: Wire, several: bool) -> str:
    return tell(
        Family.cable, tag=Name(wire.tag), device=Name(wire.device), socket=socket_name(wire.socket),
        hub=named(wire.hub) if several else None,
    )  # fmt: skip


def _step(*sentences: str) -> dict[str, Any]:
    return {"text": " ".join(one for one in sentences if one), "rows": []}


def _switched(plan: Plan) -> bool:
    placements = plan.sharing.placements if plan.sharing is not None else ()
    return any(one.how == "site" and one.kind == "switch" for one in placements)


def _try(plan: Plan, sticks: int) -> list[str]:
    told = [tell(Family.try_sticks, sticks=sticks)] if sticks else []
    return [*told, *([tell(Family.try_switches)] if _switched(plan) else [])]


def _seat(support: str) -> str:
    return tell(Family.seat, support=named(support))


def _place(site: SitePlan, fit: Fit, turned: str, number: str | None = None) -> str:
    """What goes on the stick, how the base is raised, where it is placed and how it is turned (a sentence, or nothing)."""
    parts = [
        tell(Family.fit_parts, stick=Name(fit.stick), extension=named(fit.extension), topper=named(fit.topper)),
        say(setting_step(fit) or ""),
        say(crosswise_step(fit) or ""),
    ]
    if abs(fit.built_tilt_rad) > 1e-9:
        edge: Literal["far", "near"] = "far" if fit.built_tilt_rad > 0 else "near"
        parts.append(tell(Family.raise_edge, edge=edge, angle_rad=abs(fit.built_tilt_rad)))
    place = named(number)
    parts.append(tell(Family.place_stick, site=Name(site.name), number=place, touch=fit.kind == "touch"))
    return " ".join(part for part in (*parts, turned) if part)


def _plug(fit: Fit) -> Message:
    return message(Family.plug, plug=named(fit.plug))


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
