"""Several games in one plan: the whole way from the case to the page. The cases are invented."""

from __future__ import annotations

import json
from dataclasses import replace
from functools import lru_cache
from pathlib import Path

import pytest

from said import said
from stickwright.allocation.replugging import plugged_for_all, replugs_of, sockets_kept
from stickwright.catalogue import say
from stickwright.errors import BadInput
from stickwright.files.folder import read_case
from stickwright.files.results import plan_json
from stickwright.model.game import Game
from stickwright.model.plan import Plan
from stickwright.model.wishes import Keep, Wishes
from stickwright.planning.games_together import MUCH_SHARE, _loses_much, _much, weights_of
from stickwright.planning.plan import plan
from stickwright.report.document import sheet_content
from stickwright.report.games_words import games_page
from stickwright.report.gather import report_of
from stickwright.report.technical import technical_pages
from stickwright.report.who import who_page
from stickwright.report.wiring_page import wiring_page
from stickwright.report.words import plan_words
from stickwright.tuning.another_game import settings_in

DEMO = Path(__file__).parents[2] / "examples" / "demo"
DRAWS = 20
RACE = Game.model_validate({
    "name": "evening race", "hours_per_week": 3,
    "action": [
        {"name": "drive", "kind": "two-axis", "importance": 9},
        {"name": "boost", "kind": "press", "importance": 5, "busy_presses_per_min": 20, "drop_price": 2},
    ],
})  # fmt: skip


def demo():
    """The demo without room and recordings, which other tests are about."""
    return replace(read_case(DEMO), room=None, recordings=())


@lru_cache
def alone() -> Plan:
    return plan(demo(), draws=DRAWS)


@lru_cache
def with_race() -> Plan:
    return plan(replace(demo(), further_games=(RACE,)), draws=DRAWS)


def done(sharing):
    return [(one.action, one.how, one.site, one.label, one.socket, one.points) for one in sharing.placements]


def test_what_is_assumed_of_the_hours_stands_on_paper_too():
    """How much each game is played was not said: the sheet's list and the report's are the same, with that in it."""
    made = with_race()
    assert made.together is not None
    assert made.together.assumptions
    (table,) = report_of(made).tables("assumed")
    rows = [[say(cell) for cell in row] for row in table.rows]
    assert technical_pages(made)["assumptions"] == rows
    assert all(say(one.why) in [row[2] for row in rows] for one in made.together.assumptions)


def test_the_same_game_twice_only_adds_a_column():
    """Nothing else of the plan changes, and both columns are equal."""
    one = demo()
    again = one.game.model_copy(update={"name": "the same once more"})
    twice = plan(replace(one, further_games=(again,), further_usual_prices=(one.usual_prices,)), draws=DRAWS)
    words, before = plan_words(twice), plan_words(alone())
    start, end = words.index("-" * 80), words.index("-" * 80, words.index("-" * 80) + 80)
    rest = words[:start] + words[end:]
    assumed = [line for line in rest.splitlines() if line not in before.splitlines()]
    assumed = [
        line for line in assumed if not line.startswith("Controls at a glance: ")
    ]  # of several games it says of which
    assert len(assumed) <= 3  # that nobody gave hours
    assert done(twice.sharing) == done(alone().sharing)
    assert [done(layout.sharing) for layout in twice.layouts] == [done(alone().sharing)] * 2
    assert [(one.name, one.count, one.buy) for one in twice.parts] == [(p.name, p.count, p.buy) for p in alone().parts]
    assert all(cells[2] == cells[3] for cells in games_page(twice, {})["rows"])
    assert twice.together.points == twice.together.points_alone == pytest.approx(alone().sharing.points)
    assert [layout.cost for layout in twice.layouts] == [0, 0]
    assert not twice.layouts[1].replugs


def test_one_game_has_no_columns():
    """A plan of one game is as it was."""
    assert alone().layouts == ()
    assert alone().together is None
    assert who_page(alone())["games"] is None


def test_each_game_has_its_column_and_the_json_holds_all():
    """Every action of every game stands in its own column; the JSON has the layouts with their hours and their cost."""
    found = with_race()
    page = who_page(found)["games"]
    assert page["columns"] == [demo().game.name, "evening race"]
    for column, layout in enumerate(found.layouts, start=2):
        told = " ".join(row[column] for row in page["rows"])
        assert all(one.action in told for one in layout.sharing.placements)
    data = json.loads(plan_json(found))
    assert [one["game"] for one in data["layouts"]] == page["columns"]
    assert data["layouts"][1]["hours_per_week"] == 3
    assert data["together"]["outcome"] == "common"
    for layout in found.layouts:
        assert layout.points <= layout.points_alone + 1e-9


def test_the_order_of_the_files_changes_nothing():
    """The second game first: the same devices and the same points for each."""
    one = demo()
    back = plan(
        replace(one, game=RACE, usual_prices=frozenset(), further_games=(one.game,), further_usual_prices=(one.usual_prices,)),
        draws=DRAWS,
    )  # fmt: skip
    found = {layout.game: layout.points for layout in with_race().layouts}
    assert {layout.game: layout.points for layout in back.layouts} == pytest.approx(found)
    assert back.together.points == pytest.approx(with_race().together.points)


def test_a_wish_may_name_an_action_of_any_game():
    """What is to stay, and the action asked about, are looked for in all games."""
    case = replace(demo(), further_games=(RACE,))
    kept = plan(case, draws=DRAWS, wishes=Wishes(keep=(Keep("boost", "dropped"),)), why="drive")
    assert {one.action: one.how for one in kept.layouts[1].sharing.placements}["boost"] == "dropped"
    assert any(one.cost is not None for one in dict(kept.layouts[1].sharing.elsewhere)["drive"])
    with pytest.raises(BadInput):
        plan(demo(), draws=DRAWS, why="boost")


def test_weights_are_the_hours():
    """Whole and small; a game without hours counts as the mean of the others, and that is listed."""
    case = demo()

    def of(*hours):
        first, *others = [
            case.game.model_copy(update={"name": str(n), "hours_per_week": h}) for n, h in enumerate(hours)
        ]
        return weights_of(replace(case, game=first, further_games=tuple(others)))

    assert of(None, None) == ((1, 1), of(None, None)[1])
    assert len(of(None, None)[1]) == 1
    assert of(6, 2) == ((3, 1), ())
    assert of(6, 2, None)[0] == (3, 1, 2)
    assert of(2.5, 5)[0] == (1, 2)
    assert of(100, 0.1)[0] == (100, 1)


def test_a_device_keeps_its_socket():
    """Sockets that are alike change places so that nothing is plugged in again; what cannot stay is told."""
    first = with_race().layouts[0].sharing
    plugged = [one for one in first.placements if one.kind == "switch"]
    assert len(plugged) >= 2
    swap = {plugged[0].socket: plugged[1].socket, plugged[1].socket: plugged[0].socket}
    other = replace(
        first, placements=tuple(replace(one, socket=swap.get(one.socket, one.socket)) for one in first.placements)
    )
    case = demo()
    assert replugs_of(first, other) or plugged[0].device == plugged[1].device
    _, kept = sockets_kept((first, other), (case, case), Wishes())
    assert {(one.site, one.device, one.socket) for one in kept.placements} == {
        (one.site, one.device, one.socket) for one in first.placements
    }
    assert replugs_of(first, kept) == ()


def test_a_game_that_pays_much_is_told_first():
    """More than a tenth of its own points: the headline names the game, what it would have by itself, and what that takes."""
    found = with_race()
    layout = replace(
        found.layouts[1], points=10.0, points_alone=14.0, cost=4.0, separate=("elm at chin",), separate_price=25.0
    )
    assert _much(layout)
    assert not _much(replace(layout, points=14 * (1 - MUCH_SHARE), cost=14 * MUCH_SHARE))
    told = said(_loses_much(layout))
    assert all(part in told for part in ("evening race", "scores 10", "14", "elm at chin", "25"))
    shown = replace(found, together=replace(found.together, headlines=(told,)))
    assert told.split(",")[0] in " ".join(plan_words(shown).split())[:300]
    assert who_page(shown)["games"]["headlines"] == [told]


def test_each_game_has_its_own_settings():
    """The same stick and hand: a game that offers a sensitivity alone is told no dead zone, a game that may not be late
    keeps the filter off, and what nobody recorded is not changed. In the JSON, on the page and in the terminal."""
    race = RACE.model_copy(update={"own_dead_zone_share": 0.2, "offers": ("sensitivity",), "lag_budget_s": 0.001})
    found = plan(replace(read_case(DEMO), room=None, further_games=(race,)), draws=DRAWS)
    first, second = (layout.settings for layout in found.layouts)
    (here,) = [one for one in second if one.simple is not None]
    (there,) = [one for one in first if (one.site, one.stick) == (here.site, here.stick)]
    site = next(one for one in found.sites if one.name == here.site)
    tuning = next(one for one in site.tunings if one.stick == here.stick)
    assert there.simple == tuning.simple
    assert there.settable == ("dead zone", "sensitivity")
    assert (here.settable, here.own_dead_zone_share, here.inner_jump) == (("sensitivity",), 0.2, pytest.approx(0.22))
    assert here.simple.dead_zone_percent == 0
    chosen = replace(tuning.filter.chosen, lag_s=replace(tuning.filter.chosen.lag_s, value=0.05))
    slow = {site.name: [replace(tuning, filter=replace(tuning.filter, chosen=chosen))]}
    late = [
        settings_in(layout.sharing, slow, game)[0].too_late_s
        for layout, game in zip(found.layouts, (demo().game, race), strict=True)
    ]
    assert late == [None, 0.05]
    unrecorded = [one for one in first if one.simple is None]
    assert all("nothing was recorded" in said(one.why) for one in unrecorded)
    page = games_page(found, {})["settings"]
    assert page["columns"][1:] == [layout.game for layout in found.layouts]
    told = {row[0]: row[1:] for row in page["rows"]}
    numbers = f"sensitivity {here.simple.sensitivity_percent:.0f}%, no dead zone offered"
    assert told[f"{here.stick} ({here.site}): to set"][1] == numbers
    assert f"evening race: {numbers}" in json.dumps(sheet_content(found)["family"]["boxes"])
    assert f"sensitivity {here.simple.sensitivity_percent:.0f}%, no" in plan_words(found)
    assert json.loads(plan_json(found))["layouts"][1]["settings"][0]["settable"] == ["sensitivity"]


def test_the_wiring_page_is_for_all_games():
    """A cable says what it does in each game, what only one game uses stands with the others, and the current is of all."""
    found = with_race()
    wiring = found.sharing.wiring
    used = {
        (one.site, one.device)
        for layout in found.layouts
        for one in layout.sharing.placements
        if one.connection == "socket"
    }
    assert used <= {(site, wire.device) for wire in wiring.wires for site in wire.at}
    assert all(
        {one.action for layout in found.layouts for one in layout.sharing.placements if one.socket == wire.socket}
        == {*wire.actions}
        for wire in wiring.wires
        if wire.at == ("right index",)
    )
    page = wiring_page(found)
    assert page["changes"] == games_page(found, {})["changes"]
    assert len(page["cables"]["rows"]) == len(wiring.wires)
    moved = replace(found.layouts[1].sharing.placements[0], socket="USB 2")
    other = replace(found.layouts[1].sharing, placements=(moved,), wiring=None)
    assert plugged_for_all((found.layouts[0].sharing, other), demo()).placements == found.layouts[0].sharing.placements
