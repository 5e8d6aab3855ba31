"""Invented nouns for property tests, drawn from what each declared field takes."""

from __future__ import annotations

import string
from typing import Any

from hypothesis import strategies as st

from stickwright.model.case import Case
from stickwright.model.game import Game
from stickwright.model.kit import Kit, Stick
from stickwright.model.measured import Measured
from stickwright.model.player import Player
from stickwright.records.fields import Shape, fields_of

WORDS = st.text(max_size=12)
NAMES = st.text(string.ascii_letters + " -_'\"\\é", min_size=1, max_size=12)


def _item(shape: Shape) -> st.SearchStrategy[Any]:
    if shape.model is not None:
        return nouns(shape.model)
    if shape.kind == "number":
        return st.floats(shape.low, shape.high, allow_nan=False, allow_subnormal=False)
    if shape.kind == "whole number":
        return st.integers(int(shape.low or 0), int(shape.high or 100))
    if shape.kind == "yes or no":
        return st.booleans()
    if shape.kind == "choice":
        return st.sampled_from(shape.choices)
    return st.text(min_size=shape.shortest or 0, max_size=min(shape.longest or 12, 12))


def _field(shape: Shape) -> st.SearchStrategy[Any]:
    if shape.count is not None:
        return st.tuples(*[_item(shape)] * shape.count)
    if shape.many:
        return st.lists(_item(shape), min_size=shape.shortest or 0, max_size=3).map(tuple)
    return _item(shape)


def nouns(model: type[Measured]) -> st.SearchStrategy[Any]:
    """Any valid noun of this class; what may be missing sometimes is."""
    needed = {name for name, field in model.model_fields.items() if field.is_required()}
    shapes = fields_of(model)
    return st.fixed_dictionaries(
        {name: _field(shape) for name, shape in shapes.items() if name in needed},
        optional={name: _field(shape) for name, shape in shapes.items() if name not in needed},
    ).map(model.model_validate)


@st.composite
def cases(draw: st.DrawFn) -> Case:
    """Cases without a contradiction: names are unique and known, figures agree, directions differ."""
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
            }
        )
        for place, stick in enumerate(draw(st.lists(nouns(Stick), min_size=1, max_size=2)))
    ]
    kit = Kit(stick=tuple(sticks), tilt_rad=draw(st.tuples(st.floats(-1, 1))))
    game = draw(nouns(Game))
    actions = tuple(
        action.model_copy(update={"name": f"action {place}", "together": ("action 0",)})
        for place, action in enumerate(game.action)
    )
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
    player = player.model_copy(update={"site": tuple(sites), "visit": "2026-03-01"})
    return Case("invented", player, kit, game.model_copy(update={"action": actions}))
