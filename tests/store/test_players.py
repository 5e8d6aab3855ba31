"""Players under codes, their visits, and what is looked up about them."""

import pytest

from stickwright.errors import BadInput
from stickwright.store.documents import documents, save_document
from stickwright.store.players import add_player, add_visit, player_named, players, readings_through_time, visit, visits

PLAYER = b"""code = "K7"
visit = "2026-03-14"
[[site]]
name = "chin"
part = "chin"
to_hub_mm = 1500   # down the back of the chair
crossing_hz = 1.1
gauge_readings = "readings/chin.csv"
  [[site.rest]]
  force_gf = [2.0, 1.50]
  direction_deg = 270
  [[site.reading]]
  direction_deg = 180
  force_n = [1.07, 1.27]
  reach_mm = 10.9
"""
GAUGE = b"direction_deg,force_n\n0,0.34\n0,0.36\n90,0.5\n"


@pytest.fixture
def player_id(store):
    return add_player(store, "K7", who="ot").id


@pytest.mark.parametrize(
    "code, found",
    [
        ("Anna Berg", "looks like a name"),
        ("anna@example.org", "e-mail"),
        ("1999-02-28", "date of birth"),
        ("280299-K", "280299-K"),
        ("", "nothing"),
        ("K" * 25, "K" * 25),
        ("<b>", '"<b>"'),
    ],
)
def test_what_tells_who_somebody_is_is_refused(store, code, found):
    """A code, never a name: what looks like a name, an address or a date of birth is refused, and nothing is kept."""
    if code == "280299-K":
        assert add_player(store, code, who="ot").code == code  # six digits may be any number
        return
    with pytest.raises(BadInput, match=f"code: found .*{found}.*expected up to 24 letters, digits"):
        add_player(store, code, who="ot")
    assert players(store).total == 0


def test_a_code_is_taken_once(store, player_id):
    """Capitals do not make two players of one; the nearest code is offered for one that nobody has."""
    with pytest.raises(BadInput, match="Open 'K7'"):
        add_player(store, "k7", who="ot")
    assert player_named(store, " k7 ").id == player_id
    with pytest.raises(BadInput, match=r"found K77, expected the code of a player\. Did you mean 'K7'"):
        player_named(store, "K77")


def test_a_first_visit_holds_nothing_invented(store, player_id):
    """A visit of a player of whom nothing is known says code and date, and has no readings."""
    row = add_visit(store, player_id, "2026-03-14", who="ot")
    assert (row.number, row.on_date, row.sites, row.problems) == (1, "2026-03-14", (), 0)
    assert list(documents(store, row.id)) == ["player.toml"]
    with pytest.raises(BadInput, match="visit date: found 14 March, expected a date such as 2026-03-14"):
        add_visit(store, player_id, "14 March", who="ot")
    assert len(visits(store, player_id)) == 1


def test_a_next_visit_keeps_the_place_and_measures_anew(store, player_id):
    """Sites, game and comments are carried over; readings, gauge files and rates are not."""
    first = add_visit(store, player_id, "2026-03-14", who="ot")
    for name, body in (("player.toml", PLAYER), ("readings/chin.csv", GAUGE), ("game.toml", b'name = "kites"\n')):
        save_document(store, first.id, name, body, who="ot")
    second = add_visit(store, player_id, "2026-05-02", who="ot", like=first.id)
    assert (second.number, second.on_date, second.game, second.sites) == (2, "2026-05-02", "kites", ("chin",))
    files = documents(store, second.id)
    assert sorted(files) == ["game.toml", "player.toml"]
    text = files["player.toml"].body.decode()
    assert "to_hub_mm = 1500   # down the back of the chair" in text
    assert not any(word in text for word in ("force", "reach", "crossing", "gauge", "rest", "reading"))
    assert [row.visit_id for row in readings_through_time(store, player_id)] == [first.id] * 5


def test_readings_are_looked_up_in_si_and_as_typed(store, player_id):
    """2.0 gf are 0.0196 N by the standard fall 9.80665 m/s2; what was typed stays beside it."""
    first = add_visit(store, player_id, "2026-03-14", who="ot")
    save_document(store, first.id, "readings/chin.csv", GAUGE, who="ot")
    save_document(store, first.id, "player.toml", PLAYER, who="ot")
    rows = {(row.kind, round(row.direction_rad, 3)): row for row in readings_through_time(store, player_id)}
    rest = rows["rest", 4.712]
    assert rest.repeats == pytest.approx((2.0 * 9.80665e-3, 1.5 * 9.80665e-3), rel=1e-12)
    assert rest.typed == "force_gf = 2.0, 1.50"
    assert rows["reach", 3.142].repeats == pytest.approx((0.0109,), rel=1e-12)
    assert rows["force", 0.0].repeats == (0.34, 0.36)
    assert rows["force", 0.0].typed == "force_n = 0.34, 0.36"


def test_half_typed_text_is_kept_and_counted(store, player_id):
    """A file that cannot be read yet is saved all the same, and the visit says that something is open."""
    first = add_visit(store, player_id, "2026-03-14", who="ot")
    half = PLAYER[:-20]
    save_document(store, first.id, "player.toml", half, who="ot")
    assert documents(store, first.id)["player.toml"].body == half
    row = visit(store, first.id)
    assert (row.problems, row.on_date) == (1, "2026-03-14")  # and it keeps its place in the list
    save_document(store, first.id, "player.toml", PLAYER + b"[[site]]\n", who="ot")
    assert (visit(store, first.id).problems, visit(store, first.id).sites) == (2, ("chin",))


def test_players_seen_last_come_first(store):
    """Pages of players by the date of their last visit; a page past the end is the last; search by part of a code."""
    for number in range(5):
        row = add_player(store, f"P{number}", who="ot")
        if number != 3:
            add_visit(store, row.id, f"2026-01-{10 + number}", who="ot")
    page = players(store, page=1, per_page=2)
    assert ([row.code for row in page.rows], page.total, page.pages) == (["P4", "P2"], 5, 3)
    last = players(store, page=99, per_page=2)
    assert ([(row.code, row.visits, row.last_visit) for row in last.rows], last.number) == ([("P3", 0, "")], 3)
    assert [row.code for row in players(store, search="p1").rows] == ["P1"]
    assert players(store, search="%").total == 0
