"""Accounts of a team, consents, choices."""

import datetime

import pytest

from said import place
from stickwright.codes.message import Name, message
from stickwright.codes.player_records import PlayerRecords
from stickwright.codes.trail import Trail
from stickwright.errors import BadInput
from stickwright.store.accounts import accounts, add_account, check_password, close_account
from stickwright.store.audit_log import trail
from stickwright.store.consents import consent_of, give_consent, may_keep, withdraw
from stickwright.store.opening import memory_store
from stickwright.store.players import add_player, players
from stickwright.store.settings import choose, settings

PASSWORD = "nine quiet otters"


@pytest.fixture
def team(clock):
    store = memory_store(clock)
    add_account(store, "Ann  Berg", role="practitioner", password=PASSWORD, who="setup")
    yield store
    store.close()


def refusal(store, name, password):
    with pytest.raises(BadInput) as refused:
        check_password(store, name, password)
    return str(refused.value)


def test_a_right_password_opens(team):
    """Capitals and blanks of a name make no difference; the trail says who signed in; the password is nowhere in clear."""
    assert check_password(team, " ann berg", PASSWORD).role == "practitioner"
    assert (trail(team).rows[0].who, trail(team).rows[0].what) == (
        "ann berg",
        message(Trail.signed_in, name=Name("ann berg")),
    )
    with team.read() as connection:
        (held,) = connection.exec_driver_sql("SELECT password FROM account").scalars()
    assert held.startswith("$argon2id$v=19$m=65536,t=3,p=4$")


def test_nobody_learns_who_works_here(team):
    """A wrong password, a name that nobody has, a closed account: the same words; also after too many of them."""
    add_account(team, "ben", role="reader", password=PASSWORD, who="ann")
    close_account(team, "ben", who="ann")
    for _ in range(5):
        said = {
            refusal(team, name, password)
            for name, password in (("ann berg", "wrong"), ("zoe", "wrong"), ("ben", PASSWORD))
        }
        assert said == {
            "sign in: found a name and password that do not match, expected those of an open account. Enter both again."
        }
    said = {refusal(team, name, PASSWORD) for name in ("ann berg", "zoe", "ben")}
    assert len(said) == 1
    assert "Wait 15 minutes" in said.pop()
    assert not any("zoe" in repr(one) for one in trail(team).rows)


def test_a_locked_account_opens_again(team, clock):
    """After a quarter of an hour the right password opens; four refusals and a success begin the count anew."""
    for _ in range(5):
        refusal(team, "ann berg", "wrong")
    assert "a pause" in refusal(team, "ann berg", PASSWORD)
    clock.time += datetime.timedelta(minutes=16)
    for _ in range(2):
        for _ in range(4):
            refusal(team, "ann berg", "wrong")
        check_password(team, "ann berg", PASSWORD)


def test_accounts_are_versions(team):
    """A new password replaces the old; a closed account can be opened again."""
    add_account(team, "ann berg", role="reader", password="seven loud otters", who="ben")
    assert "do not match" in refusal(team, "ann berg", PASSWORD)
    assert [(one.name, one.role, one.closed) for one in accounts(team)] == [("ann berg", "reader", False)]
    close_account(team, "ann berg", who="ben")
    with pytest.raises(BadInput, match="found ann berg, expected an open account"):
        close_account(team, "ann berg", who="ben")
    with pytest.raises(BadInput, match=r"role: found chief.*\n.*password: found 3 letters, expected 12 or more"):
        add_account(team, "zoe", role="chief", password="abc", who="ann")


GIVEN = {"given_on": "2026-03-01", "until": "2026-03-31", "given_by": "the player, an adult"}


def test_consent_counts_until_its_last_day(store):
    """The last word counts: given, over the day after, taken back; without 'keep' nothing may be kept."""
    player_id = add_player(store, "K7", who="ot").id
    assert consent_of(store, player_id, datetime.date(2026, 3, 14)) is None
    given = give_consent(store, player_id, **GIVEN, scope=["keep", "measure", "keep"], who="ot")
    assert given.scope == ("measure", "keep")
    days = [datetime.date(2026, 3, 31), datetime.date(2026, 4, 1)]
    assert [may_keep(store, player_id, day) for day in days] == [True, False]
    assert players(store).rows[0].consent_words == message(PlayerRecords.until, date=Name("2026-03-31"), keep=True)
    withdraw(store, player_id, who="ot")
    assert not may_keep(store, player_id, days[0])
    assert players(store).rows[0].consent_words == message(PlayerRecords.withdrawn)
    with pytest.raises(BadInput, match="found none that could be withdrawn"):
        withdraw(store, player_id, who="ot")
    give_consent(store, player_id, **GIVEN, scope=["measure"], who="ot")
    assert not may_keep(store, player_id, days[0])
    assert [one.what for one in trail(store, player_id=player_id).rows] == [
        message(one)
        for one in (Trail.consent_recorded, Trail.consent_withdrawn, Trail.consent_recorded, Trail.player_added)
    ]


def test_a_consent_that_says_too_little_is_refused(store):
    """All that is wrong at once."""
    player_id = add_player(store, "K7", who="ot").id
    with pytest.raises(BadInput) as refused:
        give_consent(
            store, player_id, given_on="2026-03-01", until="2026-02-01", given_by=" ", scope=["keeps"], who="ot"
        )
    assert [place(problem) for problem in refused.value.problems] == ["scope", "until", "given_by"]
    assert "Did you mean 'keep'?" in str(refused.value)


def test_choices_keep_their_last_word(store):
    """A choice made twice stands as made last."""
    for value in ("n", "gf"):
        choose(store, "force unit", value, who="ot")
    choose(store, "look", {"contrast": True, "zoom": 1.5}, who="ot")
    assert settings(store) == {"force unit": "gf", "look": {"contrast": True, "zoom": 1.5}}
