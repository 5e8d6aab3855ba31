"""Random work on records, held against a plain model in memory: nothing lost, nothing invented, whatever the order."""

import datetime
import shutil
import tempfile
from pathlib import Path

import hypothesis.strategies as st
import pytest
from hypothesis import HealthCheck, settings
from hypothesis.stateful import Bundle, RuleBasedStateMachine, invariant, precondition, rule, run_state_machine_as_test

from stickwright.errors import BadInput
from stickwright.store.consents import SCOPES, consent_of, give_consent, may_keep, withdraw
from stickwright.store.documents import Conflict, documents, history, remove_document, save_document, undo_document
from stickwright.store.opening import faults_in, open_store
from stickwright.store.players import add_player, add_visit, players, visits
from stores import SetClock

NAMES = st.sampled_from(["player.toml", "game.toml", "readings/chin.csv"])
CODES = st.sampled_from(["K1", "k1", "K2", "B-7", "M.3"])
DAYS = st.dates(datetime.date(2026, 1, 1), datetime.date(2026, 12, 31))
VALUES = st.integers(0, 9)


class Records(RuleBasedStateMachine):
    """Each file is modelled as its list of (body or None when removed); each player as visits and a last consent."""

    pattern: Path
    some_visits = Bundle("some_visits")

    def __init__(self):
        super().__init__()
        self.folder = Path(tempfile.mkdtemp(prefix="records-machine-"))
        self.place = self.folder / "records.db"
        shutil.copy(self.pattern, self.place)
        self.clock = SetClock()
        self.store = open_store(self.place, clock=self.clock)
        self.players: dict[str, int] = {}
        self.visits: dict[int, list[int]] = {}
        self.consents: dict[int, tuple[str, tuple[str, ...]] | None] = {}
        self.files: dict[tuple[int, str], list[bytes | None]] = {}

    def teardown(self):
        assert faults_in(self.store) == ()
        self.store.close()
        shutil.rmtree(self.folder)

    def standing(self, key):
        past = self.files.get(key, [])
        return past[-1] if past else None

    @rule(code=CODES)
    def add_a_player(self, code):
        if code.casefold() in self.players:
            with pytest.raises(BadInput, match="a code that no player has yet"):
                add_player(self.store, code, who="ot")
            return
        player_id = add_player(self.store, code, who="ot").id
        self.players[code.casefold()] = player_id
        self.visits[player_id] = []

    @precondition(lambda self: self.players)
    @rule(target=some_visits, day=DAYS, which=st.integers(0, 9))
    def add_a_visit(self, day, which):
        player_id = list(self.visits)[which % len(self.visits)]
        row = add_visit(self.store, player_id, day.isoformat(), who="ot")
        self.visits[player_id].append(row.id)
        self.files[row.id, "player.toml"] = [documents(self.store, row.id)["player.toml"].body]
        assert row.number == len(self.visits[player_id])
        return row.id

    @rule(visit_id=some_visits, name=NAMES, body=st.binary(max_size=40))
    def save(self, visit_id, name, body):
        save_document(self.store, visit_id, name, body, who="ot")
        if self.standing((visit_id, name)) != body:
            self.files.setdefault((visit_id, name), []).append(body)

    @rule(visit_id=some_visits, name=NAMES, mine=st.tuples(VALUES, VALUES), theirs=st.tuples(VALUES, VALUES))
    def two_windows(self, visit_id, name, mine, theirs):
        """Both begin from a file with two values a and b; the second to save gets what both changed, or a refusal."""
        key, base = (visit_id, name), b"a = 5\n\nb = 5\n"
        self.save(visit_id, name, base)
        seen = len(self.files[key])
        there, here = (b"a = %d\n\nb = %d\n" % pair for pair in (theirs, mine))
        self.save(visit_id, name, there)
        both, clash = [], False
        for other, own in zip(theirs, mine, strict=True):
            both.append(own if own != 5 else other)
            clash = clash or (own != 5 and other != 5 and own != other)
        if not name.endswith(".toml"):
            clash = there not in (base, here) and here != base
        if clash:
            with pytest.raises(Conflict) as refused:
                save_document(self.store, visit_id, name, here, who="ben", based_on=seen)
            assert (refused.value.theirs.body, refused.value.mine) == (there, here)
            return
        save_document(self.store, visit_id, name, here, who="ben", based_on=seen)
        wanted = b"a = %d\n\nb = %d\n" % tuple(both)
        if self.standing(key) != wanted:
            self.files[key].append(wanted)

    @rule(visit_id=some_visits, name=NAMES)
    def remove(self, visit_id, name):
        key = (visit_id, name)
        if self.standing(key) is None:
            with pytest.raises(BadInput, match="found no such file"):
                remove_document(self.store, visit_id, name, who="ot")
            return
        remove_document(self.store, visit_id, name, who="ot")
        self.files[key].append(None)

    @rule(visit_id=some_visits, name=NAMES)
    def undo(self, visit_id, name):
        past = self.files.get((visit_id, name), [])
        if not past:
            with pytest.raises(BadInput, match="found no such file"):
                undo_document(self.store, visit_id, name, who="ot")
            return
        undo_document(self.store, visit_id, name, who="ot")
        past.append(past[-2] if len(past) > 1 else None)

    @precondition(lambda self: self.players)
    @rule(which=st.integers(0, 9), days=st.tuples(DAYS, DAYS).map(sorted), scope=st.sets(st.sampled_from(SCOPES)))
    def agree(self, which, days, scope):
        player_id = list(self.visits)[which % len(self.visits)]
        first, last = (day.isoformat() for day in days)
        give_consent(self.store, player_id, given_on=first, until=last, given_by="adult", scope=scope, who="ot")
        self.consents[player_id] = (last, tuple(word for word in SCOPES if word in scope))

    @precondition(lambda self: self.players)
    @rule(which=st.integers(0, 9))
    def take_back(self, which):
        player_id = list(self.visits)[which % len(self.visits)]
        if self.consents.get(player_id) is None:
            with pytest.raises(BadInput, match="none that could be withdrawn"):
                withdraw(self.store, player_id, who="ot")
            return
        withdraw(self.store, player_id, who="ot")
        self.consents[player_id] = None

    @rule(seconds=st.integers(-10_000_000, 10_000_000))
    def set_the_clock(self, seconds):
        """Forwards (the laptop slept) or backwards."""
        self.clock.time += datetime.timedelta(seconds=seconds)
        if not 2020 < self.clock.time.year < 2035:
            self.clock.time = SetClock().time

    @rule()
    def close_and_open(self):
        self.store.close()
        self.store = open_store(self.place, clock=self.clock)

    @invariant()
    def files_stand_as_modelled(self):
        for ids in self.visits.values():
            for visit_id in ids:
                held = {name: one.body for name, one in documents(self.store, visit_id).items()}
                wanted = {name: past[-1] for (owner, name), past in self.files.items() if owner == visit_id}
                assert held == {name: body for name, body in wanted.items() if body is not None}

    @invariant()
    def history_is_whole(self):
        for (visit_id, name), past in self.files.items():
            held = history(self.store, visit_id, name)
            assert [None if one.removed else one.body for one in held] == past
            assert [one.number for one in held] == list(range(1, len(past) + 1))

    @invariant()
    def players_stand_as_modelled(self):
        rows = players(self.store).rows
        assert {row.id: row.visits for row in rows} == {owner: len(ids) for owner, ids in self.visits.items()}
        today = datetime.date(2026, 6, 1)
        for player_id in self.visits:
            last = self.consents.get(player_id)
            expected = last is not None and last[0] >= today.isoformat() and "keep" in last[1]
            assert may_keep(self.store, player_id, today) is expected
            now = consent_of(self.store, player_id, today)
            assert (now is None or now.withdrawn) is (last is None)
            assert sorted(row.id for row in visits(self.store, player_id)) == self.visits[player_id]


def test_records_stand_as_a_plain_model(empty_files):
    """Players, visits, files, undo, conflicts, consents, a jumping clock and reopening, in any order."""
    Records.pattern = empty_files / "plain"
    run_state_machine_as_test(
        Records,
        settings=settings(
            max_examples=15, stateful_step_count=20, deadline=None, suppress_health_check=[HealthCheck.too_slow]
        ),
    )
