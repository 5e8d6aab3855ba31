"""A recording made in a state of the player tells of that state, and of no other. The demo player, invented."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache
from pathlib import Path

import numpy as np
import pytest

from said import place, said
from stickwright.errors import BadInput
from stickwright.files.folder import check_case, read_case
from stickwright.model.case import Case
from stickwright.model.player import SiteUnder
from stickwright.planning.site_planning import KnownSite, known_site, with_controllers

DEMO = Path(__file__).parents[2] / "examples" / "demo"
TIRED = "tired, after 40 min"
STILL = "still.csv"


@lru_cache
def demo() -> Case:
    """The demo with a state in which nothing was read, so that only recordings can tell it apart."""
    case = read_case(DEMO)
    site = case.player.site[0].model_copy(update={"under": (SiteUnder(condition=TIRED, kind="tiredness"),)})
    player = case.player.model_copy(update={"site": (site, *case.player.site[1:])})
    return replace(case, player=player, kit=with_controllers(case.kit), room=None)


def known(conditions: Sequence[tuple[str, str]] = ()) -> KnownSite:
    """The first site, with some recordings made in a state."""
    case, told = demo(), dict(conditions)
    made = tuple(replace(one, condition=told.get(Path(one.name).name, "")) for one in case.recordings)
    one = known_site(replace(case, recordings=made), case.player.site[0], np.random.default_rng(1), 20, [])
    assert one is not None
    return one


def test_unsteadiness_goes_to_its_state() -> None:
    """Made as usual, the recording of keeping still gives the usual involuntary force, and nothing of the state; made tired, it
    gives that of the state, and the usual one is assumed."""
    usual, tired = known(), known([(STILL, TIRED)])
    assert STILL in said(usual.ability.report.involuntary_force_n.assumed)
    assert STILL not in said(usual.states[1].ability.report.involuntary_force_n.assumed)
    assert STILL not in said(tired.ability.report.involuntary_force_n.assumed)
    recorded = tired.states[1].ability.report.involuntary_force_n
    assert STILL in said(recorded.assumed)
    assert recorded.value == pytest.approx(usual.ability.report.involuntary_force_n.value, rel=1e-9)
    assert any(said(one.text).startswith(f"{TIRED}: Involuntary force taken from") for one in tired.heard)


def test_such_a_recording_tunes_nothing_and_is_still_told() -> None:
    """What is tuned and compared with the readings is the usual state; what the recording itself tells is printed with the rest."""
    usual, tired = known(), known([(STILL, TIRED)])
    assert [one.name for one in tired.recordings] == [
        one.name for one in usual.recordings if Path(one.name).name != STILL
    ]
    assert [Path(one.name).name for one in tired.in_states] == [STILL]


def test_a_state_that_is_not_there() -> None:
    """Refused, in the file with its line and by whoever has no file."""
    with pytest.raises(BadInput, match="a state of"):
        known([(STILL, "asleep")])
    files = {path.relative_to(DEMO).as_posix(): path.read_bytes() for path in DEMO.rglob("*") if path.is_file()}
    text = files["player.toml"].decode().replace("[[site.recording]]", '[[site.recording]]\ncondition = "asleep"', 1)
    problems, _ = check_case(files | {"player.toml": text.encode()})
    assert any('found "asleep"' in str(one) and "condition" in place(one) for one in problems)
