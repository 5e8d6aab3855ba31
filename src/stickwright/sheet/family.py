"""The words of page one: for whoever sets the stick up tonight, in the order the hands need them."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from stickwright.catalogue import say
from stickwright.model.mounting import Pose
from stickwright.model.plan import Caution, Fit, Plan, SitePlan
from stickwright.model.sharing import Placement, Sharing, Wire
from stickwright.sheet.between_games import set_in_each_game
from stickwright.sheet.device_words import (
    crosswise_step,
    holding_steps,
    mode_steps,
    mode_trouble,
    order_words,
    setting_step,
)
from stickwright.sheet.drawings import setup_alt, setup_drawing
from stickwright.sheet.paper import width_mm
from stickwright.sheet.printed import base_turned, plain, sentence
from stickwright.sheet.sharing_words import socket_name
from stickwright.sheet.tables import limiting_sentence
from stickwright.sheet.tuned import set_in_game, set_unrecorded, tuned_elsewhere, tuning_of_choice

__all__ = [
    "as_shared", "cautions_for", "first_page", "further_set_up", "main_site", "on_page_one", "pose_at",
    "second_sticks", "wire_of",
]  # fmt: skip

_STOP_KEYS = ("session", "site", "kit")
_SMALL_DRAWING_MM = (76.0, 48.0)
_SOCKET = "Wrong socket?"
_SLIPPED_TURNED = "Put it back as drawn, turned as in step 2."

TROUBLE = (
    ("Unplugged?", "Push the plug home, at both ends of the lead."),
    (_SOCKET, "Compare with the socket written above."),
    ("Asleep?", "Wake the console or computer, then wait."),
    ("Leaned on at start-up?", "Unplug, hands off the stick, plug in again."),
    ("Slipped?", "Put it back as drawn."),
)
"""The five usual causes, in the order in which they are quickest to rule out; where step 2 turns the base, the last says so."""


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
    named = (wire for wire in wiring.wires if wire.at == site.name and wire.device == site.choice.stick)
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
    ends = {"date": plan.made_on or "not dated", "player": plan.player}
    stops = [say(one.text) for one in on_page_one(plan)]
    if _without_stick(plan):
        return _switches_only(plan) | ends | {"stop": stops}
    if not plan.sites:
        return _nothing_planned(plan) | ends | {"stop": stops}
    site = main_site(plan)
    page = _set_up(plan, site, site.choice, drawing_height_mm) if site.choice is not None else _nothing_fits(plan, site)
    return page | ends | {"stop": stops}


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
    plugged = f"{_plug(site.choice)} Socket: {_socket(wire)}" if wire is not None else _plug(site.choice)
    turn = _turn_rad(site, pose)
    drawing = setup_drawing(site.choice, _SMALL_DRAWING_MM, turn_rad=turn, side_only=True)
    words = _turn_words(f"Turn its base {base_turned(turn)}") if base_turned(turn) else ""
    lines = [_seat(site), _place(site, site.choice, words), plugged, _game_settings(site)]
    alt = setup_alt(site.choice, turn, side_only=True)
    return {
        "drawing": {"svg": drawing, "alt": alt, "width_mm": width_mm(drawing)},
        "lines": [line for line in lines if line],
    }


def _set_up(plan: Plan, site: SitePlan, fit: Fit, drawing_height_mm: float) -> dict[str, Any]:
    turn = _turn_rad(site, pose_at(plan, site))
    drawing = setup_drawing(fit, (184.0, drawing_height_mm), turn_rad=turn)
    turned = base_turned(turn)
    game = f", to play: {plan.game}" if plan.game else ""
    return {
        "fits": True,
        "title": f"Stick set-up for player {plan.player}",
        "lead": f"For the {site.name}{game}.{_compromise(fit)}",
        "drawing": {"svg": drawing, "alt": setup_alt(fit, turn), "width_mm": width_mm(drawing)},
        "steps": _steps(
            site,
            fit,
            _turn_words(f"As drawn, its base is turned {turned}") if turned else "",
            [*holding_steps(plan), *mode_steps(plan)],
        ),
        "plug": _plug(fit),
        "socket": _socket(wire_of(plan, site)),
        "game": set_in_each_game(plan, site.name) or _game_settings(site),
        "trouble": [
            *(list(pair) for pair in TROUBLE[:-1]),
            [TROUBLE[-1][0], _SLIPPED_TURNED if turned else TROUBLE[-1][1]],
            *mode_trouble(plan),
        ],
        "also": [*(_second_stick(other) for other in second_sticks(plan)), *_next_page(plan, site)],
    }


def _compromise(fit: Fit) -> str:
    """A stick that is used though it breaks a rule of practice, since none keeps them all."""
    if fit.verdict != "does not fit":
        return ""
    return (
        f" {fit.stick} comes nearest but breaks a rule of practice: it will be coarse or tiring. Try it together with the "
        "practitioner first."
    )


def _turn_rad(site: SitePlan, pose: Pose | None) -> float:
    """How the base is to stand, from straight ahead: as the room and the recordings say, or the recordings alone."""
    if pose is not None:
        return pose.turn_rad
    return site.base_turn_rad.number if site.base_turn_rad is not None else 0.0


def _turn_words(said: str) -> str:
    return f"{said} from straight ahead, seen from above."


def _steps(site: SitePlan, fit: Fit, turned: str, modes: list[str]) -> list[str]:
    """Three steps: the person, the stick, the plug."""
    return [
        _seat(site),
        _place(site, fit, turned),
        " ".join(
            [
                "Nobody touches the stick: plug it in and start the game.",
                *modes,
                "Then try forward, right, back and left.",
            ]
        ),
    ]


def _seat(site: SitePlan) -> str:
    support = f" Support: {site.support}." if site.support else ""
    return f"Settle the player as for playing.{support}"


def _place(site: SitePlan, fit: Fit, turned: str) -> str:
    """What goes on the stick, how the base is raised, where it is placed and how it is turned (a sentence, or nothing)."""
    parts = [f"Put the {part} on {fit.stick}." for part in (_on_stick(fit),) if part] or [f"Take {fit.stick}."]
    parts += [setting_step(fit), crosswise_step(fit)]
    if abs(fit.built_tilt_rad) > 1e-9:
        edge = "far" if fit.built_tilt_rad > 0 else "near"
        parts.append(f"Raise the {edge} edge of the base by {plain(abs(fit.built_tilt_rad), 'deg')}.")
    touch = "touches the middle of the surface" if fit.kind == "touch" else "rests on its top without pushing it over"
    parts.append(f"Place it as drawn, so that the {site.name} {touch}.")
    return " ".join(part for part in (*parts, turned) if part)


def _on_stick(fit: Fit) -> str:
    extension = f"extension {fit.extension}" if fit.extension else ""
    return " and the ".join(part for part in (extension, fit.topper or "") if part)


def _plug(fit: Fit) -> str:
    return f"Plug: {fit.plug}." if fit.plug else "Plug: see the lead."


def _next_page(plan: Plan, site: SitePlan) -> list[str]:
    """That there is more to set up than this stick."""
    placements = plan.sharing.placements if plan.sharing is not None else ()
    others = [one for one in placements if one.how in ("site", "helper") and one.site != site.name]
    return ["What all other parts and people press stands on the next page."] if others else []


def _socket(wire: Wire | None) -> str:
    return f"{socket_name(wire.socket)} on {wire.hub} (cable {wire.tag})." if wire is not None else ""


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
        "title": f"No stick fits yet: player {plan.player}",
        "lead": "This page is not a set-up instruction. It says what was found and what would help.",
        "found": f"Of {site.tried} set-ups of the sticks in this kit, not one fits the {site.name} yet.",
        "nearest": f"{nearest.label}. {limiting_sentence(nearest, with_help=False)}"
        if nearest
        else "No set-up was computed.",
        "help": sentence(nearest.help)
        if nearest and nearest.help
        else "No single change of stick, topper, extension or tilt helps.",
        "order": order_words(site.to_order) if site.to_order is not None else "",
        "next": say(plan.next_reading.sentence),
        "others": [f"{other.name}: {say(other.sentence)}" for other in plan.sites if other is not site],
    }


def _is_second_stick(other: SitePlan, site: SitePlan) -> bool:
    """Whether another site has a stick of its own for another action, to be set up as well."""
    return other is not site and other.choice is not None and other.demand.action != site.demand.action


def _second_stick(other: SitePlan) -> str:
    label = other.choice.label if other.choice is not None else ""
    return f"And for the {other.name}: {label}, drawn further on."


def _switches_only(plan: Plan) -> dict[str, Any]:
    """Page one of a set-up without a stick of its own: the pages that follow hold the rest."""
    wired = plan.sharing is not None and plan.sharing.wiring is not None
    sockets_told = "Compare with the page Wiring." if wired else "Compare with the marks on the leads."
    sockets = "each into the socket that the page Wiring names" if wired else "each into its socket"
    return {
        "fits": True,
        "title": f"Set-up for player {plan.player}",
        "lead": f"{f'To play: {plan.game}. ' if plan.game else ''}Nothing here has a stick of its own: what each part "
        "works stands on the next page.",
        "drawing": None,
        "steps": [
            "Settle the player as for playing.",
            "Place each switch and controller where the picture on the next page has its number.",
            " ".join(
                [
                    f"Nobody touches them: plug them in, {sockets}, and start the game.",
                    *holding_steps(plan),
                    *mode_steps(plan),
                    "Then press each one once.",
                ]
            ),
        ],
        "plug": "",
        "socket": "",
        "game": "",
        "trouble": [
            *([cause, sockets_told if cause == _SOCKET else do] for cause, do in TROUBLE),
            *mode_trouble(plan),
        ],
        "also": [],
    }


def _nothing_planned(plan: Plan) -> dict[str, Any]:
    return {
        "fits": False,
        "title": f"No plan yet: player {plan.player}",
        "lead": "This page is not a set-up instruction. It says what is still to be measured.",
        "found": say(plan.sentence),
        "nearest": "",
        "help": "",
        "next": say(plan.next_reading.sentence),
        "others": [],
    }
