"""Records of an earlier version open today with all that they held, compared field by field with what that version told."""

from __future__ import annotations

import hashlib
import json
import lzma
from collections.abc import Iterator
from pathlib import Path

import pytest

from stickwright.files.results import UnreadPlan
from stickwright.store.opening import Store, open_store
from stickwright.store.plans import make_again, plan_kept, plan_text, plans
from stickwright.store.players import player_named, visits
from told_records import told_by

DATA = Path(__file__).parents[1] / "data" / "records"
EARLIER = sorted(path.name.removesuffix(".db.xz") for path in DATA.glob("*.db.xz"))


@pytest.fixture(params=EARLIER)
def earlier(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[tuple[Store, str]]:
    """The records, opened by the program of today, and their date."""
    place = tmp_path / "records.db"
    place.write_bytes(lzma.decompress((DATA / f"{request.param}.db.xz").read_bytes()))
    store = open_store(place)
    yield store, request.param
    store.close()


def test_nothing_is_lost(earlier: tuple[Store, str]) -> None:
    """Two players, ten visits: every version of every file, consents, loans, readings, samples, plans and the trail."""
    store, date = earlier
    told = json.loads((DATA / f"{date}.json").read_text(encoding="utf-8"))
    now = told_by(store)
    assert sum(len(one["visits"]) for one in told["players"].values()) == 10
    assert list(_lost(told, now)) == []


def test_plans_are_kept_to_the_byte_and_can_be_worked_out_again(earlier: tuple[Store, str]) -> None:
    """A plan that was written otherwise says so; its inputs are still there, so that the plan of today can be made beside it."""
    store, _ = earlier
    kept = [one for visit in visits(store, player_named(store, "K7").id) for one in plans(store, visit.id)]
    assert kept
    for one in kept:
        assert hashlib.sha256(plan_text(store, one.id)).hexdigest() == one.digest
        with pytest.raises(UnreadPlan):
            plan_kept(store, one.id)
    again = make_again(store, kept[0].id, who="ot")
    assert plan_kept(store, again.id).sites[0].name == "right index"
    assert plan_text(store, kept[0].id)


def _lost(told: object, now: object, path: str = "") -> Iterator[str]:
    """Where something that was told is not told any more, or otherwise; what is told besides is new."""
    if isinstance(told, dict) and isinstance(now, dict):
        for key, value in told.items():
            yield from _lost(value, now.get(key), f"{path}/{key}")
    elif isinstance(told, list) and isinstance(now, list) and len(told) == len(now):
        for number, (one, other) in enumerate(zip(told, now, strict=True)):
            yield from _lost(one, other, f"{path}[{number}]")
    elif told != now:
        yield f"{path}: {told!r} -> {now!r}"
