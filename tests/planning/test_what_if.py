"""What-if from the command line, and half-described or odd cases through the whole plan: a sentence, never a traceback."""

from __future__ import annotations

import json
import shutil
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader
from random_cases import random_case, random_wishes
from small_cases import action, broken_rules, case, hub, site, stick, switch

from said import said
from stickwright.cli import main
from stickwright.codes.message import message_of
from stickwright.errors import BadInput
from stickwright.files.folder import case_and_queries, read_case
from stickwright.files.results import plan_json
from stickwright.model.case import Case
from stickwright.model.plan import Plan
from stickwright.model.wishes import Wishes
from stickwright.planning.plan import plan
from stickwright.report.document import sheet_pdf
from stickwright.report.technical import technical_pages
from stickwright.report.why_words import why_words
from stickwright.report.words import plan_words

DEMO = Path(__file__).parents[2] / "examples" / "demo"
READING = [{"direction_deg": deg, "force_n": [1.0, 1.1], "reach_mm": [14, 15]} for deg in (0, 90, 180, 270)]


def run(*words: str | Path, capsys: pytest.CaptureFixture[str]) -> tuple[int, str, str]:
    status = main([str(word) for word in words])
    out, err = capsys.readouterr()
    return status, " ".join(out.split()), " ".join(err.split())


def planned(this: Case, wishes: Wishes | None = None, why: str | None = None) -> Plan:
    """The plan, with everything that is printed of it made once."""
    found = plan(this, draws=20, wishes=wishes, why=why)
    assert plan_words(found)
    assert plan_json(found)
    if found.sharing is not None:
        assert len(found.sharing.placements) == len(this.game.action)
        for one in this.game.action:
            assert one.name[:20].split()[0] in why_words(found.sharing, one.name)
    return found


def _told(this: Case, wishes: Wishes | None, why: str) -> Plan | BadInput:
    try:
        return planned(this, wishes, why)
    except BadInput as refused:
        return refused


class TestOddCases:
    """Half described, tiny, huge, and oddly named."""

    @pytest.mark.parametrize("number", range(36))
    def test_whatever_the_files_hold_there_is_a_plan_or_a_sentence(self, number: int) -> None:
        """Invented cases with things missing and odd names: a plan that keeps every rule, or what to put right."""
        this = random_case(number, left=0.6)
        wishes = random_wishes(number, this) if number % 3 == 0 else None
        why = this.game.action[number % len(this.game.action)].name
        told = _told(this, wishes, why)
        if isinstance(told, BadInput):
            assert told.problems
            assert all(one.found and one.expected for one in told.problems)
            return
        found = told
        assert found.sharing is not None
        assert broken_rules(this, found.sharing, wishes) == []
        if number % 12 == 0:
            assert sheet_pdf(found).startswith(b"%PDF")

    @pytest.mark.parametrize(
        "this",
        [
            pytest.param(case([site("left index")], [action("jump")], switches=[switch("pip")]), id="press only, one action"),
            pytest.param(case([site("left index")], [action("jump")]), id="no switch, no helper, no hub"),
            pytest.param(case([site("chin", "chin", press=None)], [action("jump")]), id="nothing read"),
            pytest.param(
                case([site("left index", press=None, reading=READING)], [action("walk", "two-axis"),
                      action("all", "chord", of=["walk", "jump"]),
                      action("jump", option="auto")]), id="chord of a stick and an option"),
            pytest.param(case([site("left index")], [action(f"action {n}", drop_price=0) for n in range(24)],
                              switches=[switch("pip", in_stock=3)], hubs=[hub()]), id="24 actions"),
            pytest.param(case([site("left index")], 
                              [action('say "hé" «now»'), action("x" * 80), action("a\\b\tc"), action("#$%&_{}~^")],
                              switches=[switch("pip", in_stock=4)]), id="odd names"),
            pytest.param(case([site("pip"), site("jump", "foot")], [action("jump"), action("pip")],
                              switches=[switch("pip"), switch("jump")], hubs=[hub("pip")]), id="one name for everything"),
            pytest.param(case([site("left thumb", "thumb", reaches=["bottom button in right cluster"])],
                              [action("jump"), action("walk", "two-axis")],
                              controllers=[{"name": "pad", "sticks": [], "buttons": []}]), id="a controller without anything"),
            pytest.param(case([site("left index")], [action("jump")], switches=[switch("pip")],
                              hubs=[{"name": "Pier"}]), id="a hub without sockets"),
            pytest.param(case([site("left index")], [action("jump")], switches=[switch("pip")],
                              hubs=[{"name": "Pier", "socket": [{"name": "b1", "takes": "2-conductor"}]}]), id="a socket without a role"),
            pytest.param(case([site("left index")], [action("jump")], switches=[switch("pip", in_stock=0)],
                              sticks=[stick("ash", in_stock=0)]), id="nothing in stock"),
            pytest.param(case([site("left index")], 
                              [action("jump", importance=0, helper=True, helper_price=0),
                               action("fire", importance=10, option="auto", option_price=10)],
                              switches=[switch("pip", in_stock=2)],
                              helpers=[{"name": "sister", "most_actions": 0}]), id="prices of 0 and 10"),
        ],
    )  # fmt: skip
    def test_a_plan_or_a_useful_half(self, this: Case) -> None:
        """Each gives a plan that says what is missing, with its sheet."""
        found = planned(this, why=this.game.action[0].name)
        assert found.sharing is not None
        assert broken_rules(this, found.sharing) == []
        assert sheet_pdf(found).startswith(b"%PDF")
        if any(one.how == "dropped" for one in found.sharing.placements) and found.sharing.clash:
            assert found.sharing.clash.ways_out


@pytest.fixture
def demo(tmp_path: Path) -> Path:
    """The demo case without its recordings' weight: a copy that may be changed."""
    return Path(shutil.copytree(DEMO, tmp_path / "demo"))


def planned_by(demo: Path, *words: str, capsys: pytest.CaptureFixture[str]) -> tuple[int, str, str]:
    return run("plan", demo, "--draws", "20", "--no-pdf", *words, capsys=capsys)


@pytest.mark.usefixtures("each_plan_once")
class TestCommandLine:
    """What-if without editing a file."""

    def test_a_plan_without_a_part(self, demo: Path, capsys: pytest.CaptureFixture[str]) -> None:
        """Without the left foot its action goes elsewhere."""
        status, out, _ = planned_by(demo, "--without", "left foot", capsys=capsys)
        assert status == 0
        assert "swap tool left foot" not in out

    def test_a_what_if_leaves_the_sheet_alone_and_is_marked_everywhere(
        self, demo: Path, capsys: pytest.CaptureFixture[str]
    ) -> None:
        """The case's sheet stays byte for byte; the what-if has its own file, marked on each page, on screen and in JSON."""
        (demo / "sheet.pdf").write_bytes(b"the case's own sheet")
        out = demo / "what-if.json"
        words = ("--without", "left foot", "--max-parts", 6, "--draws", 20, "--json", out)
        status, told, _ = run("plan", demo, *words, capsys=capsys)
        assert status == 0
        assert (demo / "sheet.pdf").read_bytes() == b"the case's own sheet"
        mark = "WHAT IF: without left foot; with at most 6 devices"
        assert told.startswith(mark)
        pages = PdfReader(demo / "sheet-what-if.pdf").pages
        assert len(pages) > 6
        assert all("".join(mark.split()) in "".join(page.extract_text().split()) for page in pages)
        data = json.loads(out.read_text(encoding="utf-8"))
        assert (data["what_if"], data["wishes"]["without"], data["wishes"]["most_parts"]) == (True, ["left foot"], 6)
        status, _, err = run("plan", demo, *words, "--pdf", demo / "." / "sheet.pdf", capsys=capsys)
        assert status == 2
        assert "This is the sheet of the case itself. Give the what-if another name" in err
        assert (demo / "sheet.pdf").read_bytes() == b"the case's own sheet"

    def test_json_to_the_screen_is_json_and_nothing_else(self, demo: Path, capsys: pytest.CaptureFixture[str]) -> None:
        """--json - for another program's input: one document on standard output; the sheet is written all the same."""
        assert main(["plan", str(demo), "--draws", "20", "--json", "-"]) == 0
        data = json.loads(capsys.readouterr().out)
        assert (data["player"], data["what_if"]) == ("K7", False)
        assert (demo / "sheet.pdf").read_bytes().startswith(b"%PDF")
        assert not (demo / "-").exists()

    def test_anything_of_the_kit_can_be_done_without(self, demo: Path, capsys: pytest.CaptureFixture[str]) -> None:
        """A mount, a fastener, a topper, an extension, a lead: the plan is made without them, and its parts name none."""
        kit = read_case(demo).kit
        gone = [kit.mount[0].name, kit.topper[0].name, kit.extension[0].name, *(one.name for one in kit.fastener[1:3])]
        gone += [one.name for one in kit.lead if one.kind == "extension"][:2]
        words = [word for name in gone for word in ("--without", name)]
        status, _, err = run("plan", demo, "--draws", 20, "--no-pdf", "--json", demo / "o.json", *words, capsys=capsys)
        assert (status, err) == (0, "")
        data = json.loads((demo / "o.json").read_text(encoding="utf-8"))
        parts = {one["name"] for one in (*data["sharing"]["wiring"]["parts"], *data["mount_parts"])}
        assert parts
        assert not parts & set(gone)

    def test_names_are_listed_once_and_only_names(self, demo: Path, capsys: pytest.CaptureFixture[str]) -> None:
        """A controller is a stick too, and still one thing of the kit; words that are no names are not in the list."""
        status, _, err = planned_by(demo, "--without", "qqqqqqqq", capsys=capsys)
        assert status == 2
        names = err.partition("Known: ")[2].rstrip(".").split(", ")
        assert len(names) == len(set(names)) > 20
        assert {*_all_names(demo), "cousin", "chin"} <= set(names)
        assert not {"helper", "option", "dropped"} & set(names)

    def test_what_cannot_be_kept_is_a_clash_with_its_way_out(
        self, demo: Path, capsys: pytest.CaptureFixture[str]
    ) -> None:
        """Nobody pressed with the chin: said, with what to give up, and the plan is given all the same, under an exit code of its own."""
        status, out, _ = planned_by(demo, "--keep", "swap tool=chin", capsys=capsys)
        assert status == 3
        assert "Swap tool is to stay with chin, which is not possible (no press was tried at the chin)" in out
        assert "let swap tool go elsewhere than chin" in out
        assert "Some requests cannot be met." in out

    @pytest.mark.parametrize(
        ("words", "told"),
        [
            (["--without", "chinn"], ['--without: found "chinn"', "Did you mean 'chin'?"]),
            (
                ["--keep", "dig"],
                ["--keep: dig needs an equals sign between what and where", "For example: --keep 'look=chin'."],
            ),
            (["--keep", "dig", "--keep", "=chin"], ["2 problems to fix:", "--keep: =chin needs an equals sign"]),
            (["--keep", "dig=chn"], ['--keep: found "dig=chn"', "Did you mean 'chin'?"]),
            (["--keep", "dg=chin"], ['--keep: found "dg=chin"', "Did you mean 'dig'?"]),
            (["--budget=-3"], ["--budget: found -3, expected 0 or more"]),
            (["--max-parts=-1"], ["--max-parts: found -1, expected 0 or more"]),
            (["--without", "chinn", "--budget=-3", "--keep", "dig=chn"], ["3 problems to fix:"]),
        ],
    )
    def test_a_wrong_wish_is_a_sentence(
        self, words: list[str], told: list[str], capsys: pytest.CaptureFixture[str]
    ) -> None:
        """Exit 2, what was found, what would do; all at once."""
        status, out, err = run("plan", DEMO, "--draws", "20", *words, capsys=capsys)
        assert (status, out) == (2, "")
        for part in told:
            assert part in err

    def test_wrong_wishes_are_told_even_where_nothing_is_shared_out(
        self, demo: Path, capsys: pytest.CaptureFixture[str]
    ) -> None:
        """A game without actions: a name that is not there is still a mistake."""
        _without_actions(demo)
        status, _, err = planned_by(demo, "--without", "chinn", capsys=capsys)
        assert status == 2
        assert "Did you mean 'chin'?" in err

    def test_what_the_files_left_unsaid_is_said_with_the_plan(
        self, demo: Path, capsys: pytest.CaptureFixture[str]
    ) -> None:
        """No hub.toml, no action: the plan is not to be taken for more than it is."""
        status, out, _ = planned_by(demo, capsys=capsys)
        assert status == 0
        assert "Noted: There is no hub.toml" not in " ".join(out.split())
        (demo / "hub.toml").unlink()
        _without_actions(demo, 'archetype = "racing"\n')
        status, out, _ = planned_by(demo, capsys=capsys)
        assert status == 0
        out = " ".join(out.split())
        assert "Noted: There is no hub.toml: controls are assigned, but no sockets are chosen" in out
        assert "Noted: game.toml lists no actions: the usual ones for racing are used" in out

    def test_warnings_about_typed_figures_stand_in_the_plan_in_full(
        self, demo: Path, capsys: pytest.CaptureFixture[str]
    ) -> None:
        """Repeats of 0.5 to 5.9 N for one push: the whole question stands on screen, in JSON and on the sheet, before any note."""
        typed = (demo / "player.toml").read_text(encoding="utf-8")
        assert "force_n = [1.13, 1.34, 1.11]" in typed
        typed = typed.replace("force_n = [1.13, 1.34, 1.11]", "force_n = [0.52, 1.34, 5.91]")
        (demo / "player.toml").write_text(typed, encoding="utf-8")
        (question,) = [said(one.text) for one in case_and_queries(demo)[1] if one.level == "query"]
        _, out, _ = planned_by(demo, capsys=capsys)
        assert f"Please check: {question}" in " ".join(out.split())
        assert "look odd" not in out
        _, out, _ = planned_by(demo, "--json", "-", capsys=capsys)
        assert said(message_of(json.loads(out)["findings"][0]["text"])) == question
        made = plan(read_case(demo), draws=20)
        level, text = technical_pages(made)["findings"][0]
        assert (level, text.startswith(question)) == ("Please check", True)


def _all_names(demo: Path) -> set[str]:
    kit = read_case(demo).kit
    return {
        one.name for part in (kit.stick, kit.controller, kit.topper, kit.mount, kit.fastener, kit.lead) for one in part
    }


def _without_actions(folder: Path, more: str = "") -> None:
    (folder / "game.toml").write_text(f'name = "a game"\n{more}', encoding="utf-8")
    player = (folder / "player.toml").read_text(encoding="utf-8").splitlines()
    kept = [line for line in player if not line.startswith("action")]
    (folder / "player.toml").write_text("\n".join(kept), encoding="utf-8")


def test_a_press_only_player_needs_no_stick_in_stock() -> None:
    """Where no part was read on a stick, the sticks of the van are nobody's concern."""
    this = case([site("left index")], [action("jump")], switches=[switch("pip")], sticks=[stick("ash", in_stock=0)])
    found = plan(this, draws=20)
    assert found.sharing is not None
    assert [one.how for one in found.sharing.placements] == ["site"]


def test_wishes_change_nothing_in_the_case() -> None:
    """What-if is asked of a plan; the case stays as it was."""
    this: Any = case([site("left index"), site("right index")], [action("jump")], switches=[switch("pip")])
    before = replace(this)
    plan(this, draws=20, wishes=Wishes(without=("left index",)))
    assert (this.player, this.kit, this.game) == (before.player, before.kit, before.game)
