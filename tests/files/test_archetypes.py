"""Ten kinds of game to start from: each a whole game in plain action words, each raising no doubt."""

from __future__ import annotations

from itertools import combinations

import pytest

from said import said
from stickwright.errors import BadInput
from stickwright.files.archetypes import ARCHETYPES, archetype, archetype_named, archetype_text
from stickwright.files.folder import check_case, new_case, read_case
from stickwright.files.game_warnings import game_warnings
from stickwright.files.toml_lines import parse_toml

TOGETHER: dict[str, list[tuple[str, str]]] = {
    "football": [("move", "sprint"), ("move", "pass"), ("sprint", "pass")],
    "racing": [("steer", "accelerate"), ("steer", "brake")],
    "platform": [("move", "jump"), ("move", "run"), ("jump", "run")],
    "third-person-adventure": [("move", "look")],
    "first-person-shooter": list(combinations(("look", "move", "fire", "aim"), 2)),
    "turn-based-strategy": [],
    "flight": [("pitch and roll", "throttle")],
    "fighting": [("move", "light blow"), ("move", "heavy blow"), ("move", "special move")],
    "rhythm": list(combinations(("lane 1", "lane 2", "lane 3", "lane 4"), 2)),
    "puzzle": [],
}
"""What each needs at the same moment at the least; empty where nothing is."""
PRESSES = {
    "football": (12, 30), "racing": (3, 10), "platform": (25, 60), "third-person-adventure": (10, 25),
    "first-person-shooter": (20, 60), "turn-based-strategy": (10, 15), "flight": (5, 15), "fighting": (60, 150),
    "rhythm": (60, 200), "puzzle": (20, 60),
}  # fmt: skip
"""Presses a minute, on average and in the busiest minute, pausing left out."""
KEPT = {
    "football": {"sprint"}, "racing": {"accelerate", "brake"}, "platform": {"run"},
    "third-person-adventure": {"aim", "sprint"}, "first-person-shooter": {"aim"}, "puzzle": {"soft drop"},
}  # fmt: skip
"""Holds that stand apart from those presses."""
SHORTEST_S = {
    "football": 0.3, "racing": 0.4, "platform": 0.2, "third-person-adventure": 0.5, "first-person-shooter": 0.25,
    "flight": 0.4, "puzzle": 0.5,
}  # fmt: skip


def test_ten():
    """The ten that are promised, each in a file of its own name."""
    assert sorted(ARCHETYPES) == sorted(TOGETHER)
    assert len(set(ARCHETYPES)) == 10


@pytest.mark.parametrize("name", ARCHETYPES)
def test_each_is_a_whole_game(name):
    """Read without a problem, checked without a question, six to twelve actions, said to be from general knowledge."""
    text = archetype_text(name)
    assert game_warnings(parse_toml(text, "game.toml")) == []
    game = archetype(name)
    assert game.archetype == name
    assert 6 <= len(game.action) <= 12
    assert "# From general knowledge, no source: write over them." in text
    assert all(action.input in (None, "left stick", "right stick") for action in game.action)


@pytest.mark.parametrize("name", ARCHETYPES)
def test_what_is_needed_together(name):
    """The pairs without which it is another game, named from either side; none where nothing is."""
    named = {frozenset((action.name, other)) for action in archetype(name).action for other in action.together}
    assert {frozenset(pair) for pair in TOGETHER[name]} <= named
    assert bool(named) == bool(TOGETHER[name])


@pytest.mark.parametrize("name", ARCHETYPES)
def test_presses_add_up(name):
    """General knowledge, no source: presses a minute of all actions together, on average and in the busiest minute."""
    counted = [
        action
        for action in archetype(name).action
        if action.presses_per_s is not None
        and action.name not in KEPT.get(name, ())
        and (action.name not in ("pause", "menu") or name == "turn-based-strategy")
    ]
    usual, busy = PRESSES[name]
    assert sum(action.presses_per_s for action in counted) * 60 == pytest.approx(usual, abs=0.01)
    assert sum(action.busy_presses_per_s for action in counted) * 60 == pytest.approx(busy, abs=0.01)


@pytest.mark.parametrize("name", ARCHETYPES)
def test_the_shortest_reaction(name):
    """General knowledge, no source; where the beat or a combination decides, there is nothing to answer within."""
    asked = [action.reaction_s for action in archetype(name).action if action.reaction_s is not None]
    if name in SHORTEST_S:
        assert min(asked) == pytest.approx(SHORTEST_S[name], rel=1e-9)
    if name in ("rhythm", "turn-based-strategy"):
        assert asked == []


def test_rhythm_is_chords_without_a_stick():
    """No stick at all; two and four lanes at once."""
    game = archetype("rhythm")
    assert not [action for action in game.action if action.kind in ("two-axis", "one-axis")]
    assert [len(action.of) for action in game.action if action.kind == "chord"] == [2, 4]


def test_names_as_people_type_them():
    """Letter case, blanks and hyphens do not matter; free words name none; a slip is offered the nearest."""
    assert archetype_named("First person shooter") == "first-person-shooter"
    assert archetype_named("third person, own pace") is None
    assert archetype("Third-Person Adventure") == archetype("third-person-adventure")
    with pytest.raises(BadInput) as refused:
        archetype("fotball")
    assert str(refused.value) == (
        "game type: found \"fotball\", expected one of the types that 'stickwright games' lists. "
        "Did you mean 'football'?"
    )


@pytest.mark.parametrize("name", ARCHETYPES)
def test_a_case_begun_with_it(tmp_path, name):
    """The starter with this game passes the check: its sites name stick actions that there are."""
    new_case(tmp_path / "k", name)
    assert check_case(tmp_path / "k", "2026-03-02") == ((), ())
    assert read_case(tmp_path / "k").game == archetype(name)


def test_a_case_begun_with_an_unknown_game(tmp_path):
    """Nothing is written."""
    with pytest.raises(BadInput, match="Did you mean 'racing'"):
        new_case(tmp_path / "k", "rracing")
    assert not (tmp_path / "k").exists()


@pytest.fixture
def begun(tmp_path):
    """A starter case whose sites name no action."""
    new_case(tmp_path / "k", "rhythm")
    return tmp_path / "k"


def test_an_archetype_stands_in_for_actions(begun):
    """No action, one of the ten: its actions are used, and that is said; the game's own lines stay."""
    (begun / "game.toml").write_text('name = "our cup"\narchetype = "Racing"\nsession_min = 20\n', encoding="utf-8")
    problems, (noted,) = check_case(begun)
    assert problems == ()
    assert (noted.level, noted.about) == ("note", "game")
    assert "game.toml lists no actions: the usual ones for racing are used until you add your own" in said(noted.text)
    game = read_case(begun).game
    assert (game.name, game.session_s, game.action) == ("our cup", 1200.0, archetype("racing").action)


def test_sites_may_name_the_actions_that_stand_in(begun):
    """steer is known, drive is not."""
    (begun / "game.toml").write_text('name = "our cup"\narchetype = "racing"\n', encoding="utf-8")
    player = begun / "player.toml"
    text = player.read_text(encoding="utf-8")
    player.write_text(text.replace('# action = "move"', 'action = "steer"', 1), encoding="utf-8")
    assert check_case(begun)[0] == ()
    player.write_text(text.replace('# action = "move"', 'action = "ster"', 1), encoding="utf-8")
    (problem,) = check_case(begun)[0]
    assert "Did you mean 'steer'?" in str(problem)


@pytest.mark.parametrize(
    ("kind", "offer"), [("", "lists."), ("own pace, nothing hurries", "lists."), ("fliht", "Did you mean 'flight'?")]
)
def test_no_action_and_no_archetype(begun, kind, offer):
    """As any empty game: read, with one question; a slip of the pen is offered the nearest of the ten."""
    (begun / "game.toml").write_text(f'name = "g"\narchetype = "{kind}"\n', encoding="utf-8")
    problems, (asked,) = check_case(begun)
    assert (problems, asked.level) == ((), "query")
    assert said(asked.text).startswith("game.toml lists no actions, so there is nothing to assign. Add an [[action]]")
    assert said(asked.text).endswith(offer)
    assert read_case(begun).game.action == ()


def test_own_actions_stand(begun):
    """An archetype beside own actions changes nothing."""
    text = 'name = "g"\narchetype = "racing"\n[[action]]\nname = "go"\nkind = "two-axis"\nimportance = 5\n'
    (begun / "game.toml").write_text(text, encoding="utf-8")
    assert check_case(begun) == ((), ())
    assert [action.name for action in read_case(begun).game.action] == ["go"]
