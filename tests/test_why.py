"""Why an action is where it is, and why not elsewhere, from the command line."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from stickwright.cli import main

DEMO = Path(__file__).parents[1] / "examples" / "demo"
pytestmark = pytest.mark.usefixtures("each_plan_once")


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo without its recordings and its room: no answer here hangs on them, and they take most of a plan's time."""
    place = tmp_path_factory.mktemp("why") / "demo"
    shutil.copytree(DEMO, place, ignore=shutil.ignore_patterns("recordings", "room.toml", "*.pdf"))
    player = place / "player.toml"
    paragraphs = player.read_text(encoding="utf-8").split("\n\n")
    kept = [one for one in paragraphs if "[[site.recording]]" not in one]
    player.write_text("\n\n".join(kept), encoding="utf-8")
    return place


def asked(*words: str | Path, case: Path, capsys: pytest.CaptureFixture[str]) -> tuple[int, str, str]:
    status = main(["why", str(case), *[str(word) for word in words], "--draws", "20"])
    out, err = capsys.readouterr()
    assert all(len(line) <= 80 for line in out.splitlines())
    return status, " ".join(out.split()), " ".join(err.split())


def test_why_here_what_second_and_every_other_place(demo: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The place taken with its points, the second best, every other place priced or refused with its reason."""
    status, out, _ = asked("dig", case=demo, capsys=capsys)
    assert status == 0
    assert out.startswith("dig: left thumb on ")
    assert "8 importance" in out
    assert "Second best: " in out
    assert "Other places" in out
    for place in ("right index: ", "chin: not possible: no press was tried at the chin.", "left foot: not possible: "):
        assert place in out
    assert "No other layout scores higher (proven" in out


def test_capitals_and_spaces_do_not_matter(demo: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """As somebody types in a hurry."""
    assert asked(" Dig ", case=demo, capsys=capsys)[1] == asked("dig", case=demo, capsys=capsys)[1]


def test_why_not_there(demo: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Only the place asked about is told: the foot can neither hold so long nor press so often."""
    status, out, _ = asked("dig", "--at", "Left foot", case=demo, capsys=capsys)
    assert status == 0
    assert "left foot: not possible:" in out
    assert "needs holds of 6.0 s" in out
    assert "with press on, press off" in out
    assert "chin:" not in out


def test_what_stands_in_the_way_is_named(demo: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Looking with the right index would leave nobody to move, or the index is kept for moving: either is said."""
    status, out, _ = asked("look", "--at", "right index", case=demo, capsys=capsys)
    assert status == 0
    assert "move" in out.split("right index: not possible:")[1]


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["digg"], ['action: found "digg", expected an action of game.toml', "Did you mean 'dig'?"]),
        (["dig", "--at", "left thum"], ['place for dig: found "left thum"', "Did you mean 'left thumb'?"]),
        (["dig", "--at", "the moon"], ['place for dig: found "the moon"', "right index"]),
        (["digg", "--without", "chinn"], ["2 problems to fix:", "Did you mean 'dig'?", "Did you mean 'chin'?"]),
        (["dig", "--keep", "dig"], ["needs an equals sign between what and where"]),
    ],
)
def test_a_wrong_name_is_a_sentence(
    demo: Path, words: list[str], told: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    """Exit 2, and the nearest right name."""
    status, out, err = asked(*words, case=demo, capsys=capsys)
    assert (status, out) == (2, "")
    for part in told:
        assert part in err


def test_what_if_goes_with_why(demo: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Without the left thumb somebody else digs, or nobody: the answer is for that plan."""
    status, out, _ = asked("dig", "--without", "left thumb", case=demo, capsys=capsys)
    assert status == 0
    assert not out.startswith("dig: left thumb")


def test_a_game_without_actions(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Nothing to ask about: a sentence that says what to add."""
    case = Path(shutil.copytree(DEMO, tmp_path / "demo"))
    (case / "game.toml").write_text('name = "a game"\n', encoding="utf-8")
    player = (case / "player.toml").read_text(encoding="utf-8").splitlines()
    (case / "player.toml").write_text(
        "\n".join(line for line in player if not line.startswith("action")), encoding="utf-8"
    )
    status, out, err = asked("dig", case=case, capsys=capsys)
    assert (status, out) == (2, "")
    assert "game.toml names none. Add an [[action]] for each thing that the player wants to do." in err


def test_a_folder_that_is_not_there(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """As everywhere: check the name."""
    status, _, err = asked("dig", case=tmp_path / "nowhere", capsys=capsys)
    assert status == 2
    assert "no such folder" in err
