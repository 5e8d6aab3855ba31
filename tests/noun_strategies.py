"""Invented nouns for property tests, drawn from what each declared field takes."""

from __future__ import annotations

import string
from typing import Any

from hypothesis import strategies as st

from stickwright.files.fields import FieldShape, fields_of
from stickwright.model.case import Case
from stickwright.model.game import Action, Game
from stickwright.model.hub import ROLES, Hub
from stickwright.model.kit import Controller, Fastener, Kit, Lead, Mount, Stick, StickSetting, Switch
from stickwright.model.measured import Measured
from stickwright.model.player import Helper, Player, Together
from stickwright.model.room import Edge, KeepOut, Landmark, Place, Room, Surface, Tape, Tube

WORDS = st.text(max_size=12)
PLUGS = st.sampled_from(["USB", "USB-C", "4-conductor", "6.3 mm 2-conductor", "USB or 4-conductor"])
NAMES = st.text(string.ascii_letters + " -_'\"\\é", min_size=1, max_size=12)


def _item(shape: FieldShape) -> st.SearchStrategy[Any]:
    if shape.model is not None:
        return nouns(shape.model)
    if shape.kind == "number":
        return st.floats(shape.low, shape.high, allow_nan=False, allow_subnormal=False)
    if shape.kind == "whole":
        return st.integers(int(shape.low or 0), int(shape.high or 100))
    if shape.kind == "yes-no":
        return st.booleans()
    if shape.kind == "choice":
        return st.sampled_from(shape.choices)
    return st.text(min_size=shape.shortest or 0, max_size=min(shape.longest or 12, 12))


def _field(shape: FieldShape) -> st.SearchStrategy[Any]:
    if shape.count is not None:
        return st.tuples(*[_item(shape)] * shape.count)
    if shape.many:
        return st.lists(_item(shape), min_size=shape.shortest or 0, max_size=min(shape.longest or 3, 3)).map(tuple)
    return st.none() | _item(shape) if shape.or_none else _item(shape)


def nouns(model: type[Measured]) -> st.SearchStrategy[Any]:
    """Any valid noun of this class; what may be missing sometimes is."""
    needed = {name for name, field in model.model_fields.items() if field.is_required()}
    shapes = fields_of(model)
    return st.fixed_dictionaries(
        {name: _field(shape) for name, shape in shapes.items() if name in needed},
        optional={name: _field(shape) for name, shape in shapes.items() if name not in needed},
    ).map(model.model_validate)


def _some(draw: st.DrawFn, model: type[Measured], **said: Any) -> tuple[Any, ...]:
    """Up to two of a kind, with names that differ."""
    kind = model.__name__.lower()
    found = draw(st.lists(nouns(model), max_size=2))
    return tuple(one.model_copy(update={"name": f"{kind} {place}", **said}) for place, one in enumerate(found))


def _setting(one: StickSetting, number: int) -> StickSetting:
    """One without a contradiction, under a name of its own."""
    return one.model_copy(
        update={
            "name": f"setting {number}",
            "full_force_n": max(one.start_force_n, one.full_force_n),
            "bench_readings": None,
            "start_force_interval_n": None,
            "full_force_interval_n": None,
            "friction_force_interval_n": None,
        }
    )


def _controller(one: Controller) -> Controller:
    """One whose settings have names of their own."""
    settings = tuple(_setting(setting, number) for number, setting in enumerate(one.setting))
    return one.model_copy(update={"set_as": "as bought", "setting": settings})


def _kit(draw: st.DrawFn) -> Kit:
    sticks = [
        stick.model_copy(
            update={
                "name": f"stick {place}",
                "full_force_n": max(stick.start_force_n, stick.full_force_n),
                "contact_height_m": None,
                "bench_readings": None,
                "start_force_interval_n": None,
                "full_force_interval_n": None,
                "friction_force_interval_n": None,
                "plug": draw(PLUGS),
                "fixed_to": "",
                "turns_output": "" if stick.crosswise is False else stick.turns_output,
                "set_as": "as bought",
                "setting": tuple(_setting(one, number) for number, one in enumerate(stick.setting)),
            }
        )
        for place, stick in enumerate(draw(st.lists(nouns(Stick), min_size=1, max_size=2)))
    ]
    return Kit(
        stick=tuple(sticks),
        switch=_some(draw, Switch, plug=draw(PLUGS)),
        controller=tuple(_controller(one) for one in _some(draw, Controller, plug=draw(PLUGS))),
        mount=_some(draw, Mount, tube_m=(0.01, 0.04), edge_m=None, tilts_rad=(-0.1, 0.5), release_n=(5.0, 20.0)),
        fastener=_some(draw, Fastener),
        lead=_some(draw, Lead, plug=draw(PLUGS), sockets=(draw(PLUGS), draw(PLUGS))),
        tilt_rad=draw(st.tuples(st.floats(-1, 1))),
    )


def _hubs(draw: st.DrawFn) -> tuple[Hub, ...]:
    hubs = []
    for place, hub in enumerate(draw(st.lists(nouns(Hub), max_size=2))):
        sockets = tuple(
            socket.model_copy(
                update={
                    "name": f"socket {number}",
                    "takes": draw(PLUGS),
                    "role": socket.role or "assignable",
                    "excludes": ("socket 0",) if number else (),
                }
            )
            for number, socket in enumerate(hub.socket)
        )
        hubs.append(hub.model_copy(update={"name": f"hub {place}", "plug": draw(PLUGS), "socket": sockets}))
    return tuple(hubs)


def _room(draw: st.DrawFn, sites: int) -> Room:
    """A room without a contradiction: ends apart, boxes the right way round, a floor far below, sites and landmarks known."""
    landmarks = _some(draw, Landmark)
    tape = tuple(Tape(landmark=one.name, distance_m=draw(st.floats(0, 3))) for one in landmarks)
    places = tuple(
        draw(nouns(Place)).model_copy(update={"site": f"site {place}", "at_m": (0.1, 0.2, 0.3), "tape": tape})
        for place in range(draw(st.integers(0, sites)))
    )
    low, high = draw(st.floats(-3, -0.1)), draw(st.floats(0.1, 3))
    room: Room = draw(nouns(Room))
    rear, front = room.rear_wheel_m, room.front_wheel_m
    return room.model_copy(
        update={
            "tilt_to_rad": max(room.tilt_from_rad, room.tilt_to_rad),
            "front_wheel_m": None if rear is not None and front is not None and front <= rear else front,
            "tube": _some(draw, Tube, from_m=(low, low, low), to_m=(high, low, high)),
            "edge": _some(draw, Edge, from_m=(low, high, high), to_m=(low, low, high)),
            "surface": _some(draw, Surface, corner_m=(-1.5, -1.5, -3.0), size_m=(draw(st.floats(0.1, 3)), 3.0)),
            "keep_out": _some(draw, KeepOut, low_m=(low, low, -0.2), high_m=(high, high, 0.2)),
            "landmark": landmarks,
            "place": places,
        }
    )


def _action(place: int, action: Action) -> Action:
    """Chords are made of the first two actions, which are none; inputs differ."""
    kind = "press" if action.kind == "chord" and place < 2 else action.kind
    return action.model_copy(
        update={
            "name": f"action {place}",
            "kind": kind,
            "together": ("action 0",) if place else (),
            "of": ("action 0", "action 1") if kind == "chord" else (),
            "input": ROLES[place] if action.input else None,
        }
    )


def _together(draw: st.DrawFn, player: Player) -> tuple[Together, ...]:
    if len(player.site) < 2:
        return ()
    says = Together(sites=("site 0", "site 1"), says=draw(st.sampled_from(["yes", "slows", "no"])))
    rates = Together(sites=("site 1", "site 0"), alone_per_s=draw(st.floats(0, 20)), both_per_s=draw(st.floats(0, 20)))
    return draw(st.sampled_from([(), (says,), (rates,), (says, rates)]))


@st.composite
def cases(draw: st.DrawFn) -> Case:
    """Cases without a contradiction: names are unique and known, figures agree, directions differ."""
    game = draw(nouns(Game))
    actions = tuple(_action(place, action) for place, action in enumerate(game.action))
    before = tuple(one.model_copy(update={"stick": "stick 0"}) for one in game.settings_before[:1])
    player = draw(nouns(Player))
    sites = []
    for place, site in enumerate(player.site):
        directions = [0.0, 1.5707963267948966, 3.0, -1.0]
        reading = tuple(
            one.model_copy(update={"direction_rad": directions[number]}) for number, one in enumerate(site.reading)
        )
        on_stick = tuple(
            one.model_copy(update={"stick": "stick 0", "topper": None, "extension": None}) for one in site.on_stick
        )
        sites.append(
            site.model_copy(
                update={
                    "name": f"site {place}", "part": "trunk", "reading": reading, "on_stick": on_stick,
                    "recording": (), "toppers": ("dish",), "liked": ("stick 0",),
                    "action": "action 0" if actions else None,
                    "gauge_readings": draw(st.sampled_from([None, f"readings/{place}.csv"])),
                }
            )
        )  # fmt: skip
    player = player.model_copy(
        update={
            "site": tuple(sites),
            "visit": "2026-03-01",
            "together": _together(draw, player),
            "helper": _some(draw, Helper),
        }
    )
    room = _room(draw, len(sites)) if draw(st.booleans()) else None
    return Case(
        "invented",
        player,
        _kit(draw),
        game.model_copy(update={"action": actions, "settings_before": before}),
        hubs=_hubs(draw),
        room=room,
    )
