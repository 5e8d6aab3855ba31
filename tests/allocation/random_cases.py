"""Small invented cases drawn from a seed: real nouns, odd names, things missing, and wishes."""

from __future__ import annotations

from typing import Any

import numpy as np
from small_cases import case, fit

from stickwright.model.case import Case
from stickwright.model.fit import Fit
from stickwright.model.hub import BUTTON_ROLES, STICK_ROLES
from stickwright.model.wishes import Keep, Wishes

__all__ = ["random_case", "random_ranking", "random_wishes"]

NAMES = (
    "jump", "fire", "dïg «deep»", 'a "quoted" thing', "steer", "look", "right index", "pip", "x" * 70, "menu", "Ω",
    "sprint", "brake: hard", "a/b", "option", "helper", "map", "crouch", "reload", "swap", "use", "kick", "throw", "wave",
    "emote", "pause", "heal", "build",
)  # fmt: skip
SITES = ("right index", "left thumb", "chin", "left foot", "pip", "jump", "knee", "head side", "right elbow", "ash")
PARTS = ("fingertip", "thumb", "hand", "foot", "knee", "chin", "head", "cheek", "elbow")
PLUGS = ("2-conductor", "2-conductor", "USB", "4-conductor", "USB-C", "6.3 mm 2-conductor", "USB or 4-conductor", "")


class _Draw:
    def __init__(self, seed: int, what: int) -> None:
        self.rng = np.random.default_rng([seed, what])

    def one(self, *values: Any) -> Any:
        return values[int(self.rng.integers(len(values)))]

    def chance(self, share: float) -> bool:
        return bool(self.rng.random() < share)

    def between(self, low: float, high: float) -> float:
        return round(float(self.rng.uniform(low, high)), 3)

    def some(self, share: float, **values: Any) -> dict[str, Any]:
        return {name: value for name, value in values.items() if self.chance(share)}


def random_case(seed: int, *, most_actions: int = 24, left: float = 0.25) -> Case:
    """A case that any folder could hold.

    Parameters
    ----------
    seed : int
    most_actions : int, default 24
    left : float, default 0.25
        Share of actions that may be left out at a price.
    """
    d = _Draw(seed, 7)
    sites = _sites(d)
    names = [one["name"] for one in sites]
    together = [
        {"sites": [one, other], "says": d.one("yes", "slows", "no")}
        for n, one in enumerate(names)
        for other in names[:n]
        if d.chance(0.3)
    ]
    helpers = [{"name": d.one("sister", "carer", "jump"), **d.some(0.5, most_actions=d.one(0, 1, 3))}]
    return case(
        sites, _actions(d, most_actions, left), switches=_switches(d), sticks=_sticks(d), controllers=_controllers(d),
        leads=_leads(d), hubs=[_hub(d, n) for n in range(d.one(0, 0, 1, 1, 2))], together=together,
        helpers=helpers if d.chance(0.6) else [], game={"remaps": d.chance(0.7), "swaps_sticks": d.chance(0.3)},
        **d.some(0.5, independence=d.one(0, 3, 10)),
    )  # fmt: skip


def _sites(d: _Draw) -> list[dict[str, Any]]:
    out: list[dict[str, Any]] = []
    for n in range(d.one(1, 2, 3, 4, 5)):
        name = d.one(*SITES)
        site: dict[str, Any] = {"name": name if name not in [one["name"] for one in out] else f"{name} {n}"}
        site["part"] = d.one(*PARTS)
        if site["part"] in ("chin", "cheek", "head"):
            site["cleared"] = d.one("yes", "yes", "ask", "no")
        if d.chance(0.4):
            force = 10 ** d.between(-1, 1)
            site["reading"] = [
                {"direction_deg": deg, "force_n": [force, 1.1 * force], "reach_mm": [d.between(2, 30)]}
                for deg in (0, 90, 180, 270)
            ]
        press = d.some(
            0.6, force_n=[10 ** d.between(-0.5, 1)], rate_per_s=[d.between(0.5, 4)], hold_s=[d.between(0.5, 30)],
            release_s=[0.2], landing_mm=d.between(1, 12), travel_mm=d.between(1, 20), reaction_s=[0.4],
            most_switches=d.one(1, 2, 3, 6),
        )  # fmt: skip
        if press and d.chance(0.9):
            site["press"] = press
        site |= d.some(0.3, minds=d.one(2, 10), setup_min=d.one(3, 60), side=d.one("left", "right", "middle"))
        site |= d.some(0.3, reaches=[d.one(*BUTTON_ROLES) for _ in range(d.one(1, 2, 5))])
        out.append(site)
    return out


def _actions(d: _Draw, most: int, left: float) -> list[dict[str, Any]]:
    out: list[dict[str, Any]] = []
    roles: list[str] = list(BUTTON_ROLES)
    sticks: list[str] = list(STICK_ROLES)
    for n in d.rng.permutation(len(NAMES))[: min(most, d.one(1, 1, 2, 3, 4, 5, 6, 8, 12, 24))]:
        kind = d.one("two-axis", "one-axis", "trigger", "press", "press", "press", "hold", "repeat")
        one: dict[str, Any] = {"name": NAMES[n], "kind": kind, "importance": d.one(*range(11)), "helper": d.chance(0.4)}
        if len(out) > 1 and d.chance(0.15):
            one |= {"kind": "chord", "of": [out[0]["name"], out[1]["name"]]}
        if out and d.chance(0.3):
            one["together"] = [out[int(d.rng.integers(len(out)))]["name"]]
        one |= d.some(
            0.3, option="auto", option_price=d.one(0, 10, 3.5), toggle="once", helper_price=d.one(0, 10, 1),
            longest_hold_s=d.between(0, 20), busy_presses_per_min=d.between(0, 30), duty_share=d.between(0, 1),
            reaction_ms=d.between(100, 900), levels=d.one(2, 4, 16),
        )  # fmt: skip
        if d.chance(left):
            one["drop_price"] = d.one(0, 10, 1)
        mine = sticks if one["kind"] in ("two-axis", "one-axis") else roles
        if d.chance(0.3) and mine:
            one["input"] = mine.pop(0)
        out.append(one)
    return out


def _switches(d: _Draw) -> list[dict[str, Any]]:
    out = []
    for n in range(d.one(0, 1, 2, 3, 5)):
        one = {"name": d.one("pip", "leaf", "dome", "jump", "right index") + (f" {n}" if n else "")}
        one |= {"in_stock": d.one(0, 1, 1, 2, 3), "plug": d.one(*PLUGS), **d.some(0.3, price=d.one(0, 10, 25.5))}
        one |= {"kind": "proximity", "senses_at_mm": 6} if d.chance(0.15) else {"force_n": 10 ** d.between(-1.3, 0)}
        one |= d.some(0.4, face_mm=[d.between(5, 90)], travel_mm=d.between(1, 8), current_ma=round(d.between(0, 120)))
        out.append(one)
    return out


def _sticks(d: _Draw) -> list[dict[str, Any]]:
    out = []
    for name in ("ash", "elm", "oak")[: d.one(1, 2, 3)]:
        force = 10 ** d.between(-1, 0.5)
        out.append({
            "name": name, "start_force_n": force / 2, "full_force_n": force, "travel_mm": d.between(3, 20),
            "contact_height_mm": 16, "plug": d.one(*PLUGS), "in_stock": d.one(0, 1, 1, 2),
            **d.some(0.35, price=30, current_ma=60),
        })  # fmt: skip
    return out


def _controllers(d: _Draw) -> list[dict[str, Any]]:
    out = []
    for n in range(d.one(0, 0, 1, 2)):
        one = {"name": f"pad {n}", "in_stock": d.one(0, 1, 2), "pairs": d.chance(0.7), "usb_buttons": d.chance(0.7)}
        if d.chance(0.6):
            one |= {"contact_height_mm": 16, "start_force_n": 0.4, "full_force_n": 1, "travel_mm": 6}
        one |= d.some(0.6, press_force_n=0.8)
        one |= d.some(
            0.2, sticks=d.one([], ["left stick"]), buttons=[], plug=d.one("USB-C", ""), price=40, current_ma=100
        )
        out.append(one)
    return out


def _leads(d: _Draw) -> list[dict[str, Any]]:
    adapter = {"name": "adapt", "kind": "adapter", "plug": "2-conductor", "sockets": ["6.3 mm 2-conductor"]}
    fork = {"name": "fork", "kind": "splitter", "plug": "USB", "sockets": ["USB", "USB"]}
    out = [adapter | {"in_stock": d.one(0, 1, 2)}] if d.chance(0.3) else []
    return out + ([fork | d.some(0.4, port_current_ma=500)] if d.chance(0.3) else [])


def _hub(d: _Draw, number: int) -> dict[str, Any]:
    sockets = []
    for n in range(d.one(0, 1, 3, 6, 10)):
        takes = d.one("2-conductor", "2-conductor", "2-conductor", "USB", "4-conductor", "USB-C")
        one = {"name": f"s{n}", "takes": takes}
        one |= d.some(0.9, role=d.one("assignable", "assignable", "assignable", *STICK_ROLES, *BUTTON_ROLES[:4]))
        if takes.startswith("USB"):
            one |= d.some(0.3, current_ma=d.one(50, 100, 500))
        if n:
            one |= d.some(0.1, excludes=["s0"])
        sockets.append(one)
    hub = {"name": f"Pier {number}", "socket": sockets, "paired": d.one(0, 0, 1, 2), "plug": "USB"}
    return hub | d.some(0.2, current_ma=d.one(50, 200, 500), most_devices=d.one(1, 3, 8), in_stock=0)


def random_ranking(seed: int, this: Case) -> dict[str, list[Fit]]:
    """Sticks as set up at each site that may have one, best first."""
    d = _Draw(seed, 8)
    out: dict[str, list[Fit]] = {}
    for site in this.player.site:
        names = [one.name for one in this.kit.stick if (one.in_stock or one.price is not None) and d.chance(0.7)]
        names += [pad.name for pad in this.kit.controller if pad.sticks and d.chance(0.3)]
        if site.cleared == "no" or not d.chance(0.6):
            continue
        out[site.name] = [
            fit(site.name, name, bits=d.between(0, 6), effort=d.between(0, 1.2), false_per_min=d.between(0, 3),
                fails=["too heavy right"] if d.chance(0.3) else ())
            for name in names
        ]  # fmt: skip
    return out


def random_wishes(seed: int, this: Case) -> Wishes:
    """What somebody may try."""
    d = _Draw(seed, 9)
    sites = [one.name for one in this.player.site]
    actions = [one.name for one in this.game.action]
    devices = [one.name for part in (this.kit.stick, this.kit.switch, this.kit.controller) for one in part]
    keep = (Keep(d.one(*actions), d.one(*sites, "option", "helper", "dropped", *devices)),) if d.chance(0.3) else ()
    return Wishes(
        without=(d.one(*sites, *devices),) if d.chance(0.4) else (), only_kit=d.chance(0.2), keep=keep,
        budget=d.one(None, None, 0, 20.0), most_parts=d.one(None, None, None, 1, 2), alternatives=d.one(0, 5),
    )  # fmt: skip
