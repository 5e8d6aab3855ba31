"""A case that lies in memory reads as it would from a folder."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings

from noun_strategies import cases
from stickwright.errors import BadInput
from stickwright.files.folder import case_and_queries, check_case, read_case, write_case
from stickwright.files.held import HeldPlace

DEMO = Path(__file__).parents[2] / "examples" / "demo"


def held(folder):
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_the_demo_reads_alike_from_memory():
    """Player, kit, game, hub, room, recordings and what was noticed: the same as from disk, to the last bit."""
    case, noticed = case_and_queries(held(DEMO), "2026-03-01", name="demo")
    other, told = case_and_queries(DEMO, "2026-03-01")
    assert noticed == told
    assert (case.name, case.player, case.kit, case.game, case.hubs, case.room) == (
        other.name, other.player, other.kit, other.game, other.hubs, other.room,
    )  # fmt: skip
    assert len(case.recordings) == len(other.recordings) > 0
    for one, two in zip(case.recordings, other.recordings, strict=True):
        assert (one.name, one.site, one.task, one.notes) == (two.name, two.site, two.task, two.notes)
        assert np.array_equal(one.xy, two.xy, equal_nan=True)
        assert np.array_equal(one.times_s, two.times_s)


def test_without_a_name_it_is_called_by_the_players_code():
    """A case in memory has no folder to be named after."""
    case = read_case(held(DEMO))
    assert case.name == case.player.code


@given(case=cases())
@settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))
def test_any_case_reads_alike_from_memory(tmp_path_factory, case):
    """Law: where the files lie changes nothing of what they say."""
    folder = tmp_path_factory.mktemp("case")
    write_case(case, folder)
    again, other = read_case(held(folder)), read_case(folder)
    assert (again.player, again.kit, again.game, again.hubs, again.room) == (
        other.player, other.kit, other.game, other.hubs, other.room,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("name", "old", "new"),
    [
        ("player.toml", b'gauge_readings = "readings/right-index.csv"', b'gauge_readings = "../x.csv"'),
        ("player.toml", b'gauge_readings = "readings/right-index.csv"', b'gauge_readings = "readings"'),
        ("player.toml", b'gauge_readings = "readings/right-index.csv"', b'gauge_readings = "readings/none.csv"'),
        ("player.toml", b'file = "recordings/rest.csv"', b'file = "recordings/none.csv"'),
        ("readings/right-index.csv", b"\n0,", b"\n0;,"),
        ("recordings/rest.csv", b"\n0.1", b"\nx0.1"),
        ("recordings/rest.csv", b"\n0.1", b"\n0.1\xe9"),
    ],
)
def test_what_is_wrong_is_told_in_the_same_words(tmp_path, name, old, new):
    """The same sentences, files, lines and rows."""
    files = held(DEMO)
    assert old in files[name], name
    files[name] = files[name].replace(old, new, 1)
    for place, body in files.items():
        (tmp_path / place).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / place).write_bytes(body)
    told = check_case(files)
    assert told[0]
    assert told == check_case(tmp_path)
    with pytest.raises(BadInput) as refused:
        read_case(files)
    assert refused.value.problems == told[0]


def test_a_place_in_memory_behaves_as_on_a_disk():
    """A file, a folder, and neither."""
    place = HeldPlace({"a/b.csv": b"12"})
    assert [(place / name).exists() for name in ("a", "a/b.csv", "a/./b.csv", "b.csv", "a/b")] == [
        True,
        True,
        True,
        False,
        False,
    ]
    assert (place / "a" / "b.csv").stat().st_size == 2
    assert (place / "a/b.csv").open("rb").read() == b"12"
    with pytest.raises(FileNotFoundError):
        (place / "a").read_bytes()
