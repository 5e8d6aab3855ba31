"""The sharing in the terminal, as data and as files: who does what, why, JSON, pictures."""

from __future__ import annotations

import json
import re
from dataclasses import replace

import pytest
from sample_plan import sample_plan
from sample_sharing import SHARED, clashing_plan, shared_plan, sharing, unwired_plan
from test_results import refuse, same

from said import said
from stickwright.errors import BadInput
from stickwright.files.results import plan_json
from stickwright.model.sharing import Elsewhere
from stickwright.report.figures import all_figures
from stickwright.report.gather import report_of
from stickwright.report.sharing_lines import sharing_blocks
from stickwright.report.why_so import NO_HUB
from stickwright.report.why_words import why_words
from stickwright.report.words import plan_words


def flat(text: str) -> str:
    return re.sub(r"\s+", " ", text)


@pytest.mark.parametrize("name", SHARED)
def test_eighty_columns(name: str) -> None:
    """No line is longer than 80, nothing unprintable, and every action and its place are there."""
    plan = SHARED[name]()
    assert plan.sharing is not None
    text = plan_words(plan)
    assert max(map(len, text.splitlines())) <= 80
    assert not {"nan", "inf", "None"} & set(re.findall(r"[A-Za-z]+", text))
    told = [plan.sharing.solved, plan.sharing.sentence, *(one.text for one in plan.sharing.cautions)]
    for words in told:
        assert flat(words) in flat(text)


def test_table_of_who_does_what() -> None:
    """One row an action: part, device with how it is pressed, socket with the tag of its cable."""
    table = sharing_blocks(shared_plan(), report_of(shared_plan()))[0].splitlines()
    assert table[1] == "Controls at a glance"
    assert re.fullmatch(r"  action +by +with +socket", table[2])
    rows = {line.split("  ")[1]: flat(line) for line in table[3:] if not line.startswith("     ")}
    assert rows["move"] == " move right index finger dew + low dish + base raised u1 on quay (A1)"
    assert rows["map"].startswith(" map sister second controller; the")
    assert "left out the player: “I never use it”" in rows["photo mode"]
    assert all(line.startswith("  ") for line in table[2:])


def test_who_does_what_comes_first() -> None:
    """The order in which a practitioner needs them: who does what, proof, next plans, cables, sites, next reading."""
    text = plan_words(clashing_plan())
    order = ["Controls at a glance", "SOME REQUESTS CANNOT BE MET", "Resolve by one of, cheapest first",
             "Not proven", "Next best layouts", "Wiring\n", "Parts\n", "To order", "left thumb (thumb)",
             "Next reading"]  # fmt: skip
    places = [text.index(words) for words in order]
    assert places == sorted(places)
    wiring = flat(text)
    assert "A1: dew (right index finger) -> USB extension 1 m -> u1 on quay, acts as the left stick" in wiring
    assert "MISSING: an adapter from a 6.3 mm mono jack (TS) plug to a 3.5 mm mono jack (TS) socket" in wiring
    assert "1. Attack at the lower lip, so that the left hand rests." in wiring


def test_plan_without_a_sharing_says_nothing_of_it() -> None:
    """Nothing shared out, nothing said; no hub: one sentence."""
    assert sharing_blocks(sample_plan(), report_of(sample_plan())) == []
    assert "Controls at a glance" not in plan_words(sample_plan())
    assert said(NO_HUB) in flat(plan_words(unwired_plan()))


def test_why_tells_the_place_and_all_others() -> None:
    """The place with its sum, then the others: cheapest first, those that cannot be last with their reason."""
    text = flat(why_words(sharing(), "Attack"))
    order = ["attack: left index finger on pip", "Score: 6.6 = 8 importance", "Second best: Lower lip on pip",
             "lower lip: ", "a helper: ",
             "right index finger: not possible: it must move at the same moment.", "Proven best"]  # fmt: skip
    places = [text.index(words) for words in order]
    assert places == sorted(places)
    assert max(map(len, why_words(sharing(), "attack").splitlines())) <= 80


def test_why_not_there() -> None:
    """Asked for one place, only that one is told besides the place taken."""
    text = flat(why_words(sharing(), "move", "left thumb"))
    assert "left thumb: not possible: reaches 17 % of the throw forward." in text
    assert "helper" not in text
    here = why_words(sharing(), "move", "right index finger")
    assert "not possible" not in here
    dear = replace(sharing(), elsewhere=(("move", (Elsewhere("left thumb", 2.0, "Costs 2 points: it is weak"),)),))
    assert "left thumb: Costs 2 points: it is weak." in flat(why_words(dear, "move", "left thumb"))


def test_why_refuses_what_is_not_there() -> None:
    """An unknown action or place is named with those that there are."""
    with pytest.raises(BadInput, match='action: found "sprint", expected an action of the game: move, look, attack'):
        why_words(sharing(), "sprint")
    with pytest.raises(BadInput, match='found "knee", expected one of: right index finger, left thumb or helper'):
        why_words(sharing(), "move", "knee")


@pytest.mark.parametrize("name", SHARED)
def test_json_holds_the_whole_sharing(name: str) -> None:
    """Placements, terms, wires, hubs, everything reads back; not-a-number reads back as null."""
    plan = SHARED[name]()
    data = json.loads(plan_json(plan), parse_constant=refuse)
    assert plan.sharing is not None
    bare = replace(plan.sharing, wiring=replace(plan.sharing.wiring, hubs=())) if plan.sharing.wiring else plan.sharing
    told = data["sharing"]
    hubs = told["wiring"].pop("hubs") if told["wiring"] else []
    if told["wiring"]:
        told["wiring"]["hubs"] = []
    same(bare, told)
    assert [hub["name"] for hub in hubs] == ([one.name for one in plan.sharing.wiring.hubs] if hubs else [])
    if name == "shared":
        assert hubs[0]["socket"][2] == {"name": "q1", "takes": "4-conductor", "role": "left stick", "roles": [],
                                        "current_a": None, "excludes": ["u1"]}  # fmt: skip
        assert told["placements"][2]["press"]["hold_limit_s"] is None


def test_pictures_of_the_sharing_are_files_of_their_own() -> None:
    """Body and wiring are among the figures when there are any."""
    assert {"body", "wiring"} <= all_figures(shared_plan()).keys()
    unwired = all_figures(unwired_plan())
    assert "body" in unwired
    assert "wiring" not in unwired
    assert not {"body", "wiring"} & all_figures(sample_plan()).keys()
