"""Small written cases for the sharing-out, and every rule of it checked in plain loops.

The loops know nothing of ways, columns or groups: they go from the case and the placements alone.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Mapping, Sequence
from itertools import combinations
from typing import Any

from said import said
from stickwright.allocation.allocate import allocate
from stickwright.allocation.concurrency import limb_of, pairs_of
from stickwright.allocation.pressing import Pressed, press_fit, spasms_per_s
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Message, Text
from stickwright.model.case import Case
from stickwright.model.fit import DirectionFit, Fit
from stickwright.model.game import Action, Game
from stickwright.model.hub import BUTTON_ROLES, STICK_ROLES, Hub, Socket, roles_of
from stickwright.model.kit import Kit
from stickwright.model.player import Player, Site
from stickwright.model.plugs import is_usb, plugs_of
from stickwright.model.sharing import Placement, Sharing
from stickwright.model.wishes import Keep, Wishes

__all__ = [
    "action", "broken_rules", "case", "fit", "hub", "offers_of", "shared", "site", "stick", "switch", "ways_of",
]  # fmt: skip

USUAL_PRESS = {"force_n": [1.0], "rate_per_s": [2.0], "hold_s": [20.0], "release_s": [0.2], "travel_mm": 10}


def site(name: str, part: str = "fingertip", press: dict[str, Any] | None = USUAL_PRESS, **more: Any) -> dict[str, Any]:
    """A part that presses well, unless said otherwise."""
    return {"name": name, "part": part, **({} if press is None else {"press": {**USUAL_PRESS, **press}}), **more}


def action(name: str, kind: str = "press", importance: int = 5, **more: Any) -> dict[str, Any]:
    """An action that nobody else may do, pressed now and then, unless said otherwise."""
    often = {"busy_presses_per_min": 6} if kind in ("press", "repeat") and "busy_presses_per_min" not in more else {}
    return {"name": name, "kind": kind, "importance": importance, "helper": False, **often, **more}


def switch(name: str, force_n: float = 0.2, **more: Any) -> dict[str, Any]:
    """A light switch, one in the kit."""
    return {"name": name, "force_n": force_n, "travel_mm": 2, "face_mm": [40], "plug": "2-conductor", **more}


def stick(name: str, **more: Any) -> dict[str, Any]:
    """A small stick of half force."""
    return {
        "name": name, "contact_height_mm": 16, "start_force_n": 0.24, "full_force_n": 0.52, "travel_mm": 6.5,
        "plug": "4-conductor", **more,
    }  # fmt: skip


def hub(name: str = "Pier", switches: int = 4, sticks: Sequence[str] = STICK_ROLES, **more: Any) -> dict[str, Any]:
    """So many sockets for switches, and one for each of these sticks."""
    sockets = [{"name": f"b{n}", "takes": "2-conductor", "role": "assignable"} for n in range(1, switches + 1)]
    sockets += [{"name": f"s{n}", "takes": "4-conductor", "role": role} for n, role in enumerate(sticks, start=1)]
    return {"name": name, "socket": sockets, **more}


def case(
    sites: Sequence[dict[str, Any]],
    actions: Sequence[dict[str, Any]],
    *,
    switches: Sequence[dict[str, Any]] = (),
    sticks: Sequence[dict[str, Any]] = (),
    controllers: Sequence[dict[str, Any]] = (),
    leads: Sequence[dict[str, Any]] = (),
    hubs: Sequence[dict[str, Any]] = (),
    helpers: Sequence[dict[str, Any]] = (),
    together: Sequence[dict[str, Any]] = (),
    game: dict[str, Any] | None = None,
    **player: Any,
) -> Case:
    """A case of these nouns, as typed in the files."""
    kit = {
        "stick": list(sticks) or [stick("spare stick")], "switch": list(switches), "controller": list(controllers),
        "lead": list(leads),
    }  # fmt: skip
    person = {"code": "x", "site": list(sites), "helper": list(helpers), "together": list(together), **player}
    return Case(
        "small", Player.model_validate(person), Kit.model_validate(kit),
        Game.model_validate({"name": "g", "action": list(actions), **(game or {})}),
        hubs=tuple(Hub.model_validate(one) for one in hubs),
    )  # fmt: skip


def fit(
    at: str,
    device: str,
    *,
    bits: float = 3.0,
    effort: float = 0.3,
    false_per_min: float = 0.0,
    fails: Sequence[str] = (),
) -> Fit:
    """A stick as set up at a site, with the figures that decide where it goes."""

    def known(value: float) -> Estimate:
        return Estimate(value, value, value, 0.95, 1)

    one = DirectionFit(0.0, known(0.9), known(0.006), 0.5, 0.5, 0.2, 2.0, known(effort), known(bits))
    return Fit(
        site=at, stick=device, topper=None, extension=None, tilt_rad=0.0, contact_height_m=0.016, lever_ratio=1.0,
        start_force_n=0.24, full_force_n=0.52, travel_m=0.0065, stiffness_n_per_m=43.0, returns_share=0.0,
        directions=(one,), weakest_rad=0.0, weakest_share=known(0.9), mean_share=0.9, bits=known(bits),
        effort_share=known(effort), duty_effort_limit=0.5, hold_s=known(60.0), hold_model="own", dead_zone_share=0.1,
        false_per_min=known(false_per_min), rest_deflection_share=0.0, probability_best=0.9,
        verdict="does not fit" if fails else "fits", fails=tuple(fails), limit=fails[0] if fails else "nothing", help="",
    )  # fmt: skip


def offers_of(this: Case, ranking: Mapping[str, Sequence[Fit]]) -> dict[tuple[str, str], Sequence[Fit]]:
    """The same set-ups at a site for every stick action of the game."""
    actions = [one.name for one in this.game.action if one.kind in ("two-axis", "one-axis")]
    return {(at, name): fits for at, fits in ranking.items() for name in actions}


def shared(this: Case, ranking: Mapping[str, Sequence[Fit]] | None = None, **named: Any) -> Sharing:
    """The actions of a small case shared out."""
    found = allocate(this, offers_of(this, ranking or {}), **named)
    assert found is not None
    return found


def ways_of(found: Sharing) -> dict[str, str]:
    """Action -> where, as a practitioner would note it."""
    return {one.action: f"{one.site} on {one.device}" if one.how == "site" else one.how for one in found.placements}


# ---- every rule in plain loops


def broken_rules(this: Case, found: Sharing, wishes: Wishes | None = None) -> list[str]:
    """What a plan breaks; nothing when it keeps all. Where something else than an action is given up for the cheapest way
    out, nothing is held against it."""
    wishes = wishes or Wishes()
    left_out: tuple[Text, ...] = ()
    if found.clash is not None:
        left_out = found.clash.ways_out[0].gives_up if found.clash.ways_out else ("",)
        if not all(isinstance(one, Message) and one.text == "leave_out" for one in left_out):
            return []
    mine = [one for one in found.placements if one.how == "site"]
    return [
        *([] if left_out else _everything_once(this, found)), *_together(this, found), *_at_sites(this, mine),
        *_presses(this, mine),
        *_controllers(this, mine), *_stock_and_money(this, found, wishes), *_sockets(this, mine),
        *_paired(this, found), *_helpers(this, found), *_wished(found, wishes),
    ]  # fmt: skip


def _everything_once(this: Case, found: Sharing) -> list[str]:
    out = []
    if [one.action for one in found.placements] != [one.name for one in this.game.action]:
        out.append("not every action once, in the order of the game")
    placed = {one.action: one for one in found.placements}
    for one in this.game.action:
        how = placed[one.name].how
        allowed = {
            "site": True, "option": bool(one.option), "dropped": one.drop_price is not None,
            "helper": one.helper and placed[one.name].helper in {helper.name for helper in this.player.helper},
            "chord": one.kind == "chord" and all(placed[part].how == "site" for part in one.of),
        }  # fmt: skip
        if not allowed[how]:
            out.append(f"{one.name}: {how} is not allowed")
        if placed[one.name].toggle and not one.toggle:
            out.append(f"{one.name}: toggled, and the game has no toggle for it")
    return out


def _pairs_asked(this: Case, placed: Mapping[str, Placement]) -> list[tuple[str, str]]:
    asked = [(one.name, other) for one in this.game.action for other in one.together]
    for one in this.game.action:
        if one.kind == "chord" and placed[one.name].how == "chord":
            asked += list(combinations(one.of, 2))
    return asked


def _together(this: Case, found: Sharing) -> list[str]:
    says = {frozenset(pair.sites): pair for pair in pairs_of(this.player)}
    placed = {one.action: one for one in found.placements}
    out = []
    for names in _pairs_asked(this, placed):
        one, other = (placed[name] for name in names)
        if one.how != "site" or other.how != "site" or one.toggle or other.toggle:
            continue
        if one.site == other.site:
            out.append(f"{names} together at {one.site}")
        elif says[frozenset((str(one.site), str(other.site)))].says == "no":
            out.append(f"{names} together at {one.site} and {other.site}, which cannot")
        elif (pair := says[frozenset((str(one.site), str(other.site)))]).says == "slows" and pair.assumed is None:
            for which in (one, other):
                if which.press is not None and _pressed_there(this, which, pair.slowed_share):
                    out.append(f"{which.action} is too slow beside the other part")
    return out


def _pressed_there(this: Case, one: Placement, slowed_share: float = 0.0) -> tuple[str, ...]:
    part = next(part for part in this.player.site if part.name == one.site)
    asked = next(asked for asked in this.game.action if asked.name == one.action)
    if one.kind == "switch":
        pressed = Pressed.of_switch(next(two for two in this.kit.switch if two.name == one.device))
    else:
        pad = next(two for two in this.kit.controller if two.name == one.device)
        pressed = Pressed.of_button(pad, one.control)  # type: ignore[arg-type]
    return press_fit(
        part, pressed, asked, toggle=one.toggle, slowed_share=slowed_share,
        player_spasms_per_s=spasms_per_s(this.player),
    ).fails  # fmt: skip


def _at_sites(this: Case, mine: Sequence[Placement]) -> list[str]:
    out = []
    for part in this.player.site:
        here = [one for one in mine if one.site == part.name]
        if len({one.kind for one in here}) > 1:
            out.append(f"{part.name}: two kinds of device")
        if sum(one.kind == "stick" for one in here) > 1:
            out.append(f"{part.name}: two sticks")
        most = 2 if part.press is None else part.press.most_switches
        if sum(one.kind == "switch" for one in here) > most:
            out.append(f"{part.name}: more than {most} switches")
        if part.cleared == "no" and here:
            out.append(f"{part.name}: not cleared")
        for one in here:
            if one.kind == "stick" and part.action not in (None, one.action):
                out.append(f"{part.name} is kept for {part.action}")
    return out


def _presses(this: Case, mine: Sequence[Placement]) -> list[str]:
    out = [
        f"{one.action} at {one.site}: {said(fails)}"
        for one in mine
        if one.press is not None
        for fails in _pressed_there(this, one)
    ]
    for part in this.player.site:
        here = [one for one in mine if one.site == part.name and one.press is not None]
        several = len([one for one in here if one.kind == "switch"]) > 1
        busy = 0.0
        for one in here:
            assert one.press is not None
            read = one.press.cycle_s if one.press.sure_cycle_s is None else one.press.sure_cycle_s
            cycle = read + (one.press.move_s if several else 0.0)
            busy += one.press.presses_per_min * cycle
        if busy > 0.6 * 60 + 0.01:
            out.append(f"{part.name}: presses fill {busy:.1f} of 60 s")
    return out


def _place(this: Case, name: str | None) -> str:
    limb = limb_of(next(part for part in this.player.site if part.name == name))
    return "hands" if limb.endswith("arm") else limb


def _controllers(this: Case, mine: Sequence[Placement]) -> list[str]:
    parts: dict[str, Site] = {part.name: part for part in this.player.site}
    pads = {one.name: one for one in this.kit.controller}
    held: dict[str, set[tuple[str | None, str]]] = {}
    out, taken = [], set()
    for one in mine:
        if one.kind != "controller":
            continue
        place = _place(this, one.site)
        held.setdefault(place, set()).add((one.device, one.connection))
        if (place, one.control) in taken:
            out.append(f"{one.control} does two actions")
        taken.add((place, one.control))
        pad = pads[str(one.device)]
        if one.control not in (*pad.buttons, *pad.sticks):
            out.append(f"{one.device} has no {one.control}")
        if one.control in BUTTON_ROLES and one.control not in parts[str(one.site)].reaches:
            out.append(f"{one.site} does not reach {one.control}")
    return out + [f"{place}: two controllers" for place, devices in held.items() if len(devices) > 1]


def _devices(this: Case, mine: Sequence[Placement]) -> list[tuple[str, str]]:
    """Each device that stands there: its name and where."""
    out = [(str(one.device), f"{one.site}, {one.action}") for one in mine if one.kind in ("stick", "switch")]
    return out + list(dict.fromkeys((str(o.device), _place(this, o.site)) for o in mine if o.kind == "controller"))


def _gear(this: Case) -> dict[str, Any]:
    pads = {one.name for one in this.kit.controller}
    sticks = [one for one in this.kit.stick if one.name not in pads]
    return {one.name: one for one in (*sticks, *this.kit.switch, *this.kit.controller, *this.kit.lead)}


def _sockets_by_name(this: Case) -> dict[tuple[str, str], tuple[Hub, Socket]]:
    return {(box.name, socket.name): (box, socket) for box in this.hubs for socket in box.socket}


def _joined(this: Case, mine: Sequence[Placement]) -> list[tuple[Any, Hub, Socket, str]]:
    """Each plugged device once: the thing itself, hub, socket and the socket's full name."""
    gear, sockets = _gear(this), _sockets_by_name(this)
    seen: dict[tuple[str, str], tuple[Any, Hub, Socket, str]] = {}
    for one in mine:
        if one.connection == "socket":
            name = str(one.socket).split("/")[0]
            box, socket = sockets[str(one.hub), name]
            seen[box.name, str(one.socket)] = (gear[str(one.device)], box, socket, str(one.socket))
    return list(seen.values())


def _stock_and_money(this: Case, found: Sharing, wishes: Wishes) -> list[str]:
    mine = [one for one in found.placements if one.how == "site"]
    gear = _gear(this)
    need = Counter(name for name, _ in _devices(this, mine))
    out = []
    if wishes.most_parts is not None and sum(need.values()) > wishes.most_parts:
        out.append(f"{sum(need.values())} devices")
    spent = 0.0
    for name, count in need.items():
        short = max(0, count - gear[name].in_stock)
        if short and (gear[name].price is None or wishes.only_kit):
            out.append(f"{count} of {name}, in stock {gear[name].in_stock}")
        spent += short * (gear[name].price or 0.0)
    if wishes.budget is not None and spent > wishes.budget + 1e-6:
        out.append(f"{spent} spent")
    return out


def _sockets(this: Case, mine: Sequence[Placement]) -> list[str]:
    if not this.hubs:
        return [f"{one.action}: a socket without a hub" for one in mine if one.socket]
    out = [f"{one.action}: not connected" for one in mine if not one.connection]
    by_socket: dict[tuple[str, str], set[tuple[str | None, str]]] = {}
    for one in mine:
        if one.connection != "socket":
            continue
        box, socket = _sockets_by_name(this)[str(one.hub), str(one.socket).split("/")[0]]
        plug = plugs_of(socket.takes)[0]
        roles = roles_of(socket, plug)
        where = _place(this, one.site) if one.kind == "controller" else one.action
        by_socket.setdefault((box.name, str(one.socket)), set()).add((one.device, where))
        feeds = STICK_ROLES if one.fit is not None else BUTTON_ROLES
        passed = one.kind == "controller" and one.fit is None  # a controller keeps its own buttons
        if not passed and (one.role not in roles if one.role else not set(roles) & set(feeds)):
            out.append(f"{one.action}: {one.socket} does not feed {one.role}")
        adapters = [lead for lead in this.kit.lead if lead.kind == "adapter" and plugs_of(lead.plug)[0] == plug]
        takes = {plug, *(fits for lead in adapters for text in lead.sockets for fits in plugs_of(text))}
        if not takes & set(plugs_of(_gear(this)[str(one.device)].plug)):
            out.append(f"{one.device} does not go into {one.socket}")
    out += [f"{name}: {len(devices)} devices" for (_, name), devices in by_socket.items() if len(devices) > 1]
    return out + _electrics(this, mine)


def _electrics(this: Case, mine: Sequence[Placement]) -> list[str]:
    out = []
    joined = _joined(this, mine)
    used = {(box.name, socket.name) for _, box, socket, _ in joined}
    for _, box, socket, _ in joined:
        out += [f"{socket.name} with {other}" for other in socket.excludes if (box.name, other) in used]
    for box in this.hubs:
        here = [(one, socket) for one, at, socket, _ in joined if at.name == box.name]
        if box.most_devices is not None and len(here) > box.most_devices:
            out.append(f"{box.name}: {len(here)} devices")
        split = any(lead.kind == "splitter" and lead.port_current_a is not None for lead in this.kit.lead)
        if split:  # what a powered splitter feeds is not the hub's: not checked here
            continue
        if box.current_a is not None and math.fsum(one.current_a or 0.0 for one, _ in here) > box.current_a + 1e-6:
            out.append(f"{box.name}: too much current")
        for socket in box.socket:
            drawn = math.fsum(one.current_a or 0.0 for one, at in here if at.name == socket.name)
            if socket.current_a is not None and is_usb(plugs_of(socket.takes)[0]) and drawn > socket.current_a + 1e-6:
                out.append(f"{socket.name}: too much current")
    return out


def _paired(this: Case, found: Sharing) -> list[str]:
    if not this.hubs:
        return []
    on_air = {
        (o.device, _place(this, o.site)) for o in found.placements if o.how == "site" and o.connection == "paired"
    }
    count = len(on_air) + any(one.how == "helper" for one in found.placements)
    most = sum(box.paired for box in this.hubs)
    return [f"{count} paired controllers, {most} taken"] if count > most else []


def _helpers(this: Case, found: Sharing) -> list[str]:
    counts = Counter(one.helper for one in found.placements if one.how == "helper")
    return [
        f"{helper.name} does {counts[helper.name]}"
        for helper in this.player.helper
        if helper.most_actions is not None and counts[helper.name] > helper.most_actions
    ]


def _wished(found: Sharing, wishes: Wishes) -> list[str]:
    out = []
    for name in wishes.without:
        for one in found.placements:
            if name in (one.site, one.device, one.socket, one.hub, one.helper, one.how if one.how != "site" else None):
                out.append(f"{one.action} uses {name}")
    for keep in wishes.keep:
        if not any(_keeps(one, keep) for one in found.placements):
            out.append(f"{keep.what} is not kept at {keep.where}")
    return out


def _keeps(one: Placement, keep: Keep) -> bool:
    if one.action == keep.what:
        return keep.where in (one.site, one.device, one.how, one.control, one.helper)
    return one.site == keep.what and one.device == keep.where


def wanted(this: Case, name: str) -> Action:
    """An action of the game by its name."""
    return next(one for one in this.game.action if one.name == name)
