"""Random questions for the solvers: like real ones, and nasty ones (ties everywhere, stock of one, tight limits)."""

from __future__ import annotations

import numpy as np

from stickwright.allocation.problem import Gear, PlayingSite, Question, SocketGroup, TogetherNeed, Way, rounded
from stickwright.model.hub import BUTTON_ROLES, STICK_ROLES

__all__ = ["nasty", "real_like"]

_USB, _FOUR, _TWO = "USB-A", "3.5 mm 4-conductor", "3.5 mm 2-conductor"


def _sockets(count: int) -> tuple[SocketGroup, ...]:
    usb = max(2, count // 5)
    jacks = count - usb - 2
    return (
        SocketGroup(tuple(f"u{n}" for n in range(1, usb + 1)), "hub", _USB, (*STICK_ROLES, *BUTTON_ROLES), 0.1),
        SocketGroup(("q1",), "hub", _FOUR, ("left stick",)),
        SocketGroup(("q2",), "hub", _FOUR, ("right stick",)),
        SocketGroup(tuple(f"k{n}" for n in range(1, jacks + 1)), "hub", _TWO, BUTTON_ROLES),
    )


def _gear(rng: np.random.Generator, devices: int, stock: int) -> tuple[list[Gear], list[str], list[str], str]:
    sticks, switches = [], []
    gear = []
    for number in range(devices - 1):
        if number % 5 < 2:
            plugs = [(_USB,), (_FOUR,), (_USB, _FOUR)][int(rng.integers(3))]
            name = f"stick {number}"
            current = float(rng.choice([0.04, 0.06, 0.09]))
            sticks.append(name)
        else:
            plugs, name, current = (_TWO,), f"switch {number}", 0.0
            switches.append(name)
        price = float(rng.integers(5, 60)) if rng.random() < 0.2 else None
        gear.append(Gear(name, plugs, current, int(rng.integers(1, stock + 1)), price))
    gear.append(Gear("pad", (_USB,), 0.1, 1, None))
    return gear, sticks, switches, "pad"


def _question(
    rng: np.random.Generator, *, actions: int, sites: int, devices: int, sockets: int, hard: bool, strict: bool = False
) -> Question:
    gear, sticks, switches, pad = _gear(rng, devices, 1 if hard else 3)
    names = [f"action {n}" for n in range(actions)]
    stick_actions = names[: 3 if hard and actions > 12 else 2]
    places = [f"site {n}" for n in range(sites)]
    skill = rng.uniform(0.5, 1.0, sites)
    stick_sites = places[: max(2, sites // 2 if hard else sites // 3)]
    ways: list[Way] = []
    importance = rng.integers(3, 11, actions).astype(float)
    for a, action in enumerate(names):
        stick = action in stick_actions
        busy = 0.0 if stick else rounded(float(rng.uniform(6.0 if strict else 0.5, 15.0 if hard else 9.0)))
        for s, site in enumerate(places):
            if stick and site not in stick_sites:
                continue
            if not stick and not hard and rng.random() < 0.3:
                continue
            for device in sticks if stick else switches:
                if rng.random() < (0.1 if hard else 0.4):
                    continue
                quality = round(float(rng.random()), 1 if hard else 6)
                points = rounded(importance[a] * (0.6 + 0.4 * skill[s] * quality) - 0.2)
                if hard:
                    points = round(2 * points) / 2
                role = STICK_ROLES[stick_actions.index(action) % 2] if stick else None
                ways.append(
                    Way(
                        action, "site", points, site, device, "stick" if stick else "switch", role=role,
                        busy_s=busy, near_s=0.0 if stick else rounded(1.4 * busy), alone=bool(not stick and rng.random() < 0.1),
                    )
                )  # fmt: skip
            if s < 2:
                control = STICK_ROLES[stick_actions.index(action) % 2] if stick else BUTTON_ROLES[a % 12]
                for paired in (False, True):
                    if stick and not paired and control != "left stick":
                        continue
                    ways.append(
                        Way(action, "site", rounded(0.7 * importance[a]), site, pad, "controller", control, paired,
                            role=control, busy_s=busy, near_s=busy)
                    )  # fmt: skip
        if rng.random() < ((0.05 if strict else 0.2) if hard else 0.4):
            ways.append(Way(action, "option", rounded(importance[a] - float(rng.integers(1, 6)))))
        if rng.random() < (0.2 if strict else 0.6):
            ways.append(Way(action, "helper", rounded(importance[a] - float(rng.integers(3, 9)))))
        if not strict or rng.random() < 0.1:
            ways.append(Way(action, "dropped", 0.0 if not hard else -float(rng.integers(0, 5))))
    never = {
        (places[i], places[j]) for i in range(sites) for j in range(sites) if i != j and (i + j) % (2 if hard else 4) == 3 % 2
        and abs(i - j) == 1
    }  # fmt: skip
    pairs = {(names[0], names[1])} | {(names[0], names[int(k)]) for k in rng.integers(2, actions, 4)}
    if hard:
        pairs |= {(names[int(i)], names[int(j)]) for i, j in rng.integers(0, actions, (8, 2)) if i < j}
    together = tuple(
        TogetherNeed(a, b, never=frozenset(never), slowed=((places[0], places[-1], 0.5), (places[-1], places[0], 0.5)))
        for a, b in sorted(pairs)
    )
    return Question(
        tuple(names), tuple(float(i) for i in importance), tuple(ways), tuple(gear),
        tuple(PlayingSite(site, rounded(float(rng.uniform(0, 0.5))), 2 if not hard else 3, "hands" if n < 2 else site)
              for n, site in enumerate(places)),
        together, sockets=_sockets(sockets), wired=True, hub_limits=(("hub", 0.3, sockets),), paired=1,
        budget=40.0 if hard else None, most_parts=(actions // 3 if strict else actions - 3) if hard else None,
    )  # fmt: skip


def real_like(seed: int, *, actions: int = 12, sites: int = 8, devices: int = 40, sockets: int = 16) -> Question:
    """A question like those of a visit."""
    rng = np.random.default_rng([seed, 1])
    return _question(rng, actions=actions, sites=sites, devices=devices, sockets=sockets, hard=False)


def nasty(seed: int, *, actions: int = 12, sites: int = 8, devices: int = 40, sockets: int = 16) -> Question:
    """A question with ties everywhere, stock of one, many demands for the same moment, tight budget and parts.

    In every fourth nearly everything has to be played by hand with few parts: some of these cannot be had.
    """
    rng = np.random.default_rng([seed, 2])
    return _question(
        rng, actions=actions, sites=sites, devices=devices, sockets=sockets, hard=True, strict=seed % 4 == 3
    )
