"""Small invented questions with every feature switched on and off, for tests that try all plans."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeVar

import numpy as np
from hypothesis import strategies as st

from stickwright.allocation.problem import (
    Connection,
    Gear,
    PlayingSite,
    Question,
    SocketGroup,
    Splitter,
    TogetherNeed,
    Way,
)

__all__ = ["FEATURES", "alike_devices", "small_question", "small_questions"]

USB, FOUR, TWO = "USB-A", "3.5 mm 4-conductor", "3.5 mm 2-conductor"
LEFT, RIGHT = "left stick", "right stick"
FIRST, SECOND = "bottom button in right cluster", "right button in right cluster"
PLUGS = ((USB,), (USB,), (FOUR,), (TWO,), (USB, FOUR))
FEATURES = (
    "hub", "current", "hub limits", "exclusion", "adapters", "splitters", "controllers", "helper", "toggles", "alone",
    "together", "slowed", "chord", "presses", "buying", "budget", "parts", "keep", "without", "helper limit", "ties",
)  # fmt: skip

T = TypeVar("T")


class Draw:
    """Draws from a seed, and knows which features are on."""

    def __init__(self, seed: int, on: frozenset[str]) -> None:
        self.rng = np.random.default_rng([seed, 41])
        self.on = on

    def one(self, *values: T) -> T:
        return values[int(self.rng.integers(len(values)))]

    def some(self, values: Sequence[T], most: int) -> tuple[T, ...]:
        count = min(int(self.rng.integers(0, most + 1)), len(values))
        return tuple(values[int(n)] for n in self.rng.choice(len(values), count, replace=False)) if count else ()

    def chance(self, share: float, feature: str = "") -> bool:
        said = bool(self.rng.random() < share)
        return said and (not feature or feature in self.on)

    def points(self, most: float = 10.0) -> float:
        """In thousandths; in halves where ties are wanted."""
        return round(2 * most * self.rng.random()) / 2 if "ties" in self.on else round(most * self.rng.random(), 3)


def small_question(seed: int, on: frozenset[str]) -> Question:
    """2 to 5 actions, 1 to 4 sites, 1 to 4 devices, 1 to 5 sockets.

    Parameters
    ----------
    seed : int
    on : frozenset of str
        Which of `FEATURES`.
    """
    d = Draw(seed, on)
    actions = tuple(f"action {n}" for n in range(d.one(2, 3, 3, 4, 4, 5)))
    sites = tuple(
        PlayingSite(f"site {n}", d.one(0.0, 0.3), d.one(1, 2, 2, 3), d.one("hands", f"site {n}"))
        for n in range(d.one(1, 2, 3, 3, 4))
    )
    kinds = ["stick", "switch", "switch"] + (["controller"] if "controllers" in on else [])
    devices = [(_gear(d, f"device {n}", d.one(*PLUGS)), d.one(*kinds)) for n in range(d.one(2, 3, 4, 4))]
    adapters: tuple[Connection, ...] = ()
    if "adapters" in on:
        adapters = d.one(
            (Connection("adapter a", FOUR, USB, d.one(0.0, 0.02)),),
            (Connection("adapter b", TWO, FOUR), Connection("adapter c", TWO, USB, d.one(0.0, 0.05))),
        )
    splitters: tuple[Splitter, ...] = ()
    if "splitters" in on:
        splitters = d.one(
            (Splitter("splitter a", 2, USB, 0.02, 0.1, False),),
            (Splitter("splitter a", 2, USB, 0.0, 0.05, False), Splitter("splitter b", 3, USB, 0.02, 0.1, True)),
        )
    sockets = _sockets(d) if "hub" in on else ()
    chords = ((actions[-1], d.some(actions[:-1], 2) or actions[:1]),) if "chord" in on else ()
    ways = [way for action in actions for way in _ways(d, action, sites, devices, [chord for chord, _ in chords])]
    return Question(
        actions, tuple(10.0 for _ in actions), tuple(ways),
        (*(gear for gear, _ in devices), *(_gear(d, one.name, ()) for one in (*adapters, *splitters))),
        sites, _together(d, actions, sites, [chord for chord, _ in chords]), chords, sockets, "hub" in on,
        tuple((hub, d.one(None, 0.1, 0.16, 0.3), d.one(None, 2, 3)) for hub in ("hub", "other hub")) if "hub limits" in on else (),
        d.one(0, 1, 1, 2), adapters, splitters, part_points=d.one(0.0, 0.2, 1.25), buy_points=d.one(0.0, 0.5),
        budget=d.one(0.0, 10.0, 20.0) if "budget" in on else None, most_parts=d.one(1, 2, 3) if "parts" in on else None,
        at_most=(("aide", d.one(0, 1, 2), tuple(n for n, w in enumerate(ways) if w.how == "helper")),) if "helper limit" in on else (),
        keep=tuple(("kept", f"place {n}", d.some(range(len(ways)), 4)) for n in range(d.one(1, 2))) if "keep" in on else (),
        without=(("thing", d.some(range(len(ways)), 3)),) if "without" in on else (),
    )  # fmt: skip


def _gear(d: Draw, name: str, plugs: tuple[str, ...]) -> Gear:
    current = d.one(0.0, 0.04, 0.05, 0.06, 0.1) if plugs and "current" in d.on else 0.0
    return Gear(name, plugs, current, d.one(0, 1, 1, 2, 2), d.one(10.0, 4.5, None) if "buying" in d.on else None)


def _sockets(d: Draw) -> tuple[SocketGroup, ...]:
    left = d.one(2, 3, 4, 5, 5)
    out: list[SocketGroup] = []
    while left:
        count = min(left, d.one(1, 1, 2, 3))
        left -= count
        every = (LEFT, RIGHT, FIRST, SECOND)
        roles = d.one(every, every, every, (LEFT, FIRST), (RIGHT,), (FIRST, SECOND), (FIRST,), ())
        limit = d.one(None, 0.1, 0.12, 0.25) if "current" in d.on else None
        names = tuple(f"s{left + n}" for n in range(count))
        out.append(SocketGroup(names, d.one("hub", "hub", "other hub"), d.one(USB, USB, USB, FOUR, TWO), roles, limit))
    single = [k for k, group in enumerate(out) if len(group.sockets) == 1]
    if "exclusion" in d.on and len(single) > 1:
        first = out[single[0]]
        out[single[0]] = SocketGroup(first.sockets, first.hub, first.plug, first.roles, first.limit_a, (single[-1],))
    return tuple(out)


def _ways(
    d: Draw, action: str, sites: Sequence[PlayingSite], devices: Sequence[tuple[Gear, str]], chords: Sequence[str]
) -> list[Way]:
    stick = d.chance(0.35)
    role = d.one(LEFT, RIGHT, None) if stick else d.one(None, None, FIRST, SECOND)
    busy = 0.0 if stick or "presses" not in d.on else d.one(9.0, 12.0, 18.0, round(float(d.rng.uniform(0, 40)), 3))
    out = [Way(action, "chord", d.points())] if action in chords else []
    useful = [(gear, kind) for gear, kind in devices if kind in ("stick" if stick else "switch", "controller")]
    for _ in range(d.one(2, 3, 4, 4) if useful else 0):
        gear, kind = d.one(*useful)
        site, toggle = d.one(*sites).name, not stick and d.chance(0.3, "toggles")
        if kind == "controller":
            control = d.one(LEFT, RIGHT) if stick else d.one(FIRST, SECOND)
            paired = d.chance(0.5)
            asked = role if stick and not paired else control
            out.append(
                Way(
                    action,
                    "site",
                    d.points(),
                    site,
                    gear.name,
                    "controller",
                    control,
                    paired,
                    asked,
                    toggle,
                    busy,
                    busy,
                )
            )
        else:
            near, alone = round(busy * d.one(1.0, 1.4), 3), not stick and d.chance(0.2, "alone")
            hand = "stick" if stick else "switch"
            out.append(
                Way(action, "site", d.points(), site, gear.name, hand, None, False, role, toggle, busy, near, alone)
            )
    if d.chance(0.3):
        out.append(Way(action, "option", d.points(4)))
    if d.chance(0.4, "helper"):
        out.append(Way(action, "helper", d.points(4)))
    if d.chance(0.4) or not out:
        out.append(Way(action, "dropped", 0.0))
    return out


def _together(
    d: Draw, actions: Sequence[str], sites: Sequence[PlayingSite], chords: Sequence[str]
) -> tuple[TogetherNeed, ...]:
    if "together" not in d.on:
        return ()
    pairs = [(a, b) for a in actions for b in actions if a != b]
    met = [(a.name, b.name) for a in sites for b in sites if a != b]
    return tuple(
        TogetherNeed(
            first, second, d.one(None, *chords), frozenset(d.some(met, 3)),
            tuple((a, b, d.points(2)) for a, b in d.some(met, 3)) if "slowed" in d.on else (),
        )
        for first, second in d.some(pairs, 3)
    )  # fmt: skip


small_questions = st.builds(
    small_question,
    st.integers(0, 10**9),
    st.lists(st.sampled_from(FEATURES), max_size=14, unique=True).map(lambda on: frozenset(on) | {"hub"})
    | st.just(frozenset()),
)
"""Features are drawn one by one, so that a failing question is told with as few of them as it takes."""


def alike_devices(seed: int) -> Question:
    """Few actions and many devices of one sort: some are better than others in everything.

    Parameters
    ----------
    seed : int
    """
    d = Draw(seed, frozenset({"current", "buying"}))
    actions = tuple(f"action {n}" for n in range(d.one(1, 2, 2, 3)))
    sites = tuple(PlayingSite(f"site {n}", 0.3, d.one(1, 2), f"site {n}") for n in range(d.one(1, 1, 1, 2)))
    gear = tuple(
        Gear(
            f"switch {n}",
            d.one((TWO,), (TWO,), (TWO, USB), (USB,)),
            d.one(0.0, 0.0, 0.0, 0.1),
            d.one(0, 1, 2, 2),
            d.one(None, 5.0),
        )
        for n in range(d.one(4, 5, 6))
    )
    ways = []
    for action in actions:
        for one in gear:
            if d.chance(0.85):
                busy = d.one(5.0, 5.0, 5.0, 20.0)
                ways.append(
                    Way(action, "site", d.one(5.0, 6.0, 6.5), d.one(*sites).name, one.name, "switch", busy_s=busy,
                        near_s=1.4 * busy, alone=d.chance(0.1))
                )  # fmt: skip
        if d.chance(0.5):
            ways.append(Way(action, "dropped", 0.0))
    sockets = (
        SocketGroup(("k1", "k2"), "hub", TWO, (FIRST, SECOND)),
        SocketGroup(("u1",), "hub", USB, (FIRST, SECOND), d.one(0.1, 0.05)),
    )
    return Question(
        actions, tuple(7.0 for _ in actions), tuple(ways), gear, sites, sockets=sockets, wired=True,
        budget=d.one(None, 5.0), keep=(("kept", "place", d.some(range(len(ways)), 2)),) if d.chance(0.2) else (),
        without=(("thing", d.some(range(len(ways)), 2)),) if d.chance(0.2) else (),
    )  # fmt: skip
