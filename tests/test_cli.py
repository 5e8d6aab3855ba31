"""The command line as a person meets it: sentences, exit status, files written whole."""

from __future__ import annotations

import json
import shutil
import subprocess
import sys
from pathlib import Path

import make_commands
import pytest
from sample_sharing import clashing_plan, shared_plan

from stickwright.cli import COMMANDS, help_texts, main, parser

ROOT = Path(__file__).parents[1]
DEMO = ROOT / "examples" / "demo"


def run(*words: str | Path, capsys: pytest.CaptureFixture[str]) -> tuple[int, str, str]:
    status = main([str(word) for word in words])
    out, err = capsys.readouterr()
    return status, out, err


def test_commands_page_is_fresh() -> None:
    """docs/commands.md is what the help texts say (python docs/make_commands.py writes it)."""
    assert make_commands.PAGE.read_text(encoding="utf-8") == make_commands.page()


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_has_help(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        main([name, "--help"])
    assert ended.value.code == 0
    assert len(capsys.readouterr().out) > 100


def test_every_help_text_is_used_and_there(monkeypatch: pytest.MonkeyPatch) -> None:
    """The file of help texts is read as it stands: no key is missing, and none is left over."""
    asked = set()

    class Noting(dict[str, str]):
        def __getitem__(self, key: str) -> str:
            asked.add(key)
            return super().__getitem__(key)

    texts = help_texts.read(help_texts.FILE)
    monkeypatch.setattr(help_texts, "_held", Noting(texts))
    parser()
    assert not asked ^ texts.keys()


def test_help_imports_nothing_heavy() -> None:
    """`stickwright --help` must feel instant: no numpy, pydantic, scipy, numba, matplotlib, polars, typst."""
    heavy = "{'numpy', 'pydantic', 'scipy', 'numba', 'matplotlib', 'polars', 'typst', 'typing', 'tqdm'}"
    code = (
        "import sys\nfrom stickwright.cli import parser\nparser('')\n"
        f"assert not {heavy} & set(sys.modules), {heavy} & set(sys.modules)"
    )
    subprocess.run(
        [sys.executable, "-S", "-c", f"import sys; sys.path.insert(0, {str(ROOT / 'src')!r})\n{code}"], check=True
    )


def test_new_case_checks_clean_and_plans(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The starter case is a case: it checks without a problem, and the plan comes with its sheet."""
    case = tmp_path / "visit"
    assert run("new", case, capsys=capsys)[0] == 0
    status, out, _ = run("check", case, capsys=capsys)
    assert (status, "no problems" in out) == (0, True)
    status, out, _ = run("plan", case, "--draws", 60, "--date", "2026-01-02", capsys=capsys)
    assert status == 0
    sheet = case / "sheet.pdf"
    assert f"Sheet: {sheet}" in out
    assert sheet.read_bytes().startswith(b"%PDF")


def test_new_overwrites_nothing(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    case = tmp_path / "visit"
    run("new", case, capsys=capsys)
    before = {path: path.read_bytes() for path in case.rglob("*") if path.is_file()}
    status, _, err = run("new", case, capsys=capsys)
    assert status == 2
    assert "found" in err
    assert before == {path: path.read_bytes() for path in case.rglob("*") if path.is_file()}


def test_games_to_start_from(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """All ten beside each other, one by its actions, a slip of the pen in one sentence, a case begun with one."""
    status, out, _ = run("games", capsys=capsys)
    assert status == 0
    assert [line.split()[0] for line in out.splitlines()[2:] if line[:1].strip()][:4] == [
        "football", "racing", "platform", "third-person-adventure",
    ]  # fmt: skip
    status, out, _ = run("games", "racing", capsys=capsys)
    assert (status, "accelerate" in out) == (0, True)
    assert "from general knowledge" in out
    status, out, _ = run("games", "--all", capsys=capsys)
    assert (status, out.count("importance: 0 to 10.")) == (0, 10)
    status, _, err = run("games", "racin", capsys=capsys)
    assert (status, "Did you mean 'racing'?" in err) == (2, True)
    status, _, err = run("new", tmp_path / "case", "--game", "racin", capsys=capsys)
    assert (status, (tmp_path / "case").exists()) == (2, False)
    assert run("new", tmp_path / "case", "--game", "racing", capsys=capsys)[0] == 0
    assert 'archetype = "racing"' in (tmp_path / "case" / "game.toml").read_text(encoding="utf-8")
    assert run("check", tmp_path / "case", capsys=capsys)[0] == 0


@pytest.mark.usefixtures("each_plan_once")
def test_plan_writes_json_and_figures(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """--json with everything, --svg-dir with each figure; the sheet too, unless --no-pdf says otherwise."""
    out = tmp_path / "plan.json"
    figures = tmp_path / "figures"
    status, text, _ = run("plan", DEMO, "--json", out, "--svg-dir", figures, "--no-pdf", "--draws", 20, capsys=capsys)
    assert status == 0
    told = json.loads(out.read_text(encoding="utf-8"))
    assert told["player"] == "K7"
    assert told["sites"][0]["fits"][0]["stick"] in text
    assert len(list(figures.glob("*.svg"))) >= 4
    assert not list(tmp_path.glob("*.pdf"))


def test_one_screen_everything_or_paths_alone(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """One screen unless --full asks for everything; --quiet prints where the files are; unmet requests have a code of their own."""

    made = [shared_plan()]
    monkeypatch.setattr("stickwright.planning.plan.plan", lambda *_args, **_more: made[-1])
    data = tmp_path / "plan.json"
    words = ("plan", DEMO, "--no-pdf", "--json", data)
    status, screen, _ = run(*words, capsys=capsys)
    assert (status, f"All data: {data}" in screen, screen.rstrip().endswith("--full")) == (0, True, True)
    assert "Next best layouts" not in screen
    status, whole, _ = run(*words, "--full", capsys=capsys)
    assert (status, "Next best layouts" in whole, "Assumed, not measured" in whole) == (0, True, True)
    assert len(screen.splitlines()) < 70 < len(whole.splitlines())
    assert run(*words, "--quiet", capsys=capsys)[:2] == (0, f"{data}\n")
    made.append(clashing_plan())
    assert run(*words, "--quiet", capsys=capsys)[:2] == (3, f"{data}\n")
    assert run(*words, "--quiet", "--full", capsys=capsys)[0] == 2


def test_same_case_same_plan(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The draws are seeded: the same case gives the same bytes."""
    texts = []
    for name in ("a.json", "b.json"):
        run("plan", DEMO, "--json", tmp_path / name, "--no-pdf", "--draws", 20, "--date", "2026-01-02", capsys=capsys)
        texts.append((tmp_path / name).read_bytes())
    assert texts[0] == texts[1]


class TestBadInput:
    """A tired person on a bad day: one clear sentence each, status 2, nothing written over."""

    def broken(self, tmp_path: Path, file: str, find: str, put: str) -> Path:
        case = tmp_path / "case"
        shutil.copytree(DEMO, case)
        path = case / file
        text = path.read_text(encoding="utf-8")
        assert find in text
        path.write_text(text.replace(find, put, 1), encoding="utf-8")
        return case

    @pytest.mark.parametrize(
        "file,find,put,words",
        [
            (
                "player.toml",
                "force_n = [1.13, 1.34, 1.11]",
                "force_n = [400, 1.34, 1.11]",
                ["player.toml, line", "force_n", "400"],
            ),
            ("player.toml", "force_n = [1.13, 1.34, 1.11]", "force_n = [-1.13, 1.34, 1.11]", ["-1.13"]),
            ("player.toml", "force_n = [1.13, 1.34, 1.11]", "force_n = [nan, 1.34, 1.11]", ["nan"]),
            ("player.toml", "force_n = [1.13, 1.34, 1.11]", "froce_n = [1.13]", ["force_n"]),
            ("player.toml", 'part = "chin"', 'part = "chim"', ["chin"]),
            (
                "player.toml",
                'stick = "light stick 5 mm"',
                'stick = "light stik 5 mm"',
                ["Did you mean 'light stick 5 mm'"],
            ),
            ("player.toml", 'action = "look"', 'action = "lok"', ["Did you mean 'look'"]),
            ("player.toml", 'code = "K7"', 'code = "K7', ["player.toml, line"]),
            ("kit.toml", "[[stick]]", "[[stik]]", ["stick"]),
            ("game.toml", "usual_level_share = 0.8", "usual_level_share = 80", ["usual_level_share", "80"]),
        ],
    )
    def test_a_slip_of_the_pen(
        self, tmp_path: Path, capsys: pytest.CaptureFixture[str], file: str, find: str, put: str, words: list[str]
    ) -> None:
        """Each slip is named with file, line and field, and the sheet that was there stays."""
        case = self.broken(tmp_path, file, find, put)
        (case / "sheet.pdf").write_bytes(b"last month's sheet")
        status, out, err = run("plan", case, capsys=capsys)
        assert status == 2
        for word in words:
            assert word in err
        assert "Traceback" not in err + out
        assert (case / "sheet.pdf").read_bytes() == b"last month's sheet"

    def test_all_problems_at_once(self, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
        case = self.broken(tmp_path, "player.toml", 'part = "chin"', 'part = "chim"')
        game = case / "game.toml"
        game.write_text(
            game.read_text(encoding="utf-8").replace("duty_share = 0.55", "duty_share = 55"), encoding="utf-8"
        )
        status, _, err = run("check", case, capsys=capsys)
        assert status == 2
        assert "player.toml" in err
        assert "game.toml" in err

    @pytest.mark.parametrize(
        "content,words",
        [
            (b"", ["empty"]),
            (b"time_s,x,y\n", ["row"]),
            (b"time_s,x,y\n0.0,0.1,0.2\n", ["one"]),
            (b"a,b,c\n1,2,3\n2,3,4\n", ["--time", "--x"]),
            (b"time_s,x,y\n0,0.1,0\n0.01,oops,0\n0.02,0,0\n", ["row 3", "oops"]),
            (b"time_s,x,y\n0,0.1,0\n0.02,0.1,0\n0.01,0,0\n", ["row 4"]),
            (b"time_s;x;y\n0;0,1;0\n", [";"]),
            (b"time_s,x,y\n0,\xff\xfe,0\n0.1,0,0\n", ["UTF-8"]),
        ],
    )
    def test_recordings_that_cannot_be_read(
        self, tmp_path: Path, capsys: pytest.CaptureFixture[str], content: bytes, words: list[str]
    ) -> None:
        path = tmp_path / "trace.csv"
        path.write_bytes(content)
        status, out, err = run("trace", path, capsys=capsys)
        assert status == 2, out
        for word in words:
            assert word in err
        assert "Traceback" not in err

    @pytest.mark.parametrize("command", [("trace",), ("bench", "--name", "s", "--height-mm", "16")])
    def test_a_folder_instead_of_a_file(
        self, tmp_path: Path, capsys: pytest.CaptureFixture[str], command: tuple[str, ...]
    ) -> None:
        status, _, err = run(command[0], tmp_path, *command[1:], capsys=capsys)
        assert status == 2
        assert "folder" in err

    def test_a_case_that_is_not_there(self, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
        status, _, err = run("plan", tmp_path / "nobody", capsys=capsys)
        assert status == 2
        assert "nobody" in err


def test_bench_fits_draws_and_appends(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """From readings to the kit: figures with intervals, a drawing beside the readings, the stick appended."""
    case = tmp_path / "visit"
    run("new", case, capsys=capsys)
    kit = (case / "kit.toml").read_text(encoding="utf-8")
    readings = case / "bench" / "yew.csv"
    readings.parent.mkdir(exist_ok=True)
    rows = ["angle_deg,force_gf,way"]
    rows += [
        f"{angle},{25 + 2 * angle + (4 if way == 'out' else -4)},{way}"
        for way in ("out", "back")
        for angle in (5, 10, 15, 20)
    ]
    readings.write_text("\n".join(rows) + "\n", encoding="utf-8")
    status, out, err = run(
        "bench",
        readings,
        "--name",
        "yew",
        "--height-mm",
        20,
        "--stop-deg",
        20,
        "--kit",
        case / "kit.toml",
        capsys=capsys,
    )
    assert (status, err) == (0, "")
    assert readings.with_suffix(".svg").read_text(encoding="utf-8").startswith("<svg")
    assert "yew was added" in out
    after = (case / "kit.toml").read_text(encoding="utf-8")
    assert after.startswith(kit.rstrip())
    assert run("check", case, capsys=capsys)[0] == 0
    # start force by hand: (25 + 4) gf = 0.284 N
    assert "0.28 N" in out
    told = tmp_path / "yew.json"
    assert (
        run("bench", readings, "--name", "yew", "--height-mm", 20, "--stop-deg", 20, "--json", told, capsys=capsys)[0]
        == 0
    )
    assert json.loads(told.read_text(encoding="utf-8"))["name"] == "yew"


def test_the_starter_plans_as_it_stands(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A new case gives a plan without an edit, and no wish of its own text is left unmet."""
    assert run("new", tmp_path / "case", capsys=capsys)[0] == 0
    status, out, _ = run("plan", tmp_path / "case", "--draws", 60, "--no-pdf", capsys=capsys)
    assert status == 0
    assert "Controls at a glance" in out
    assert "NOT EVERYTHING" not in out


def test_bench_copies_readings_into_the_case(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Readings that lie outside the case travel with it from then on; other readings of that name are never written over."""
    case, readings = tmp_path / "case", tmp_path / "yew.csv"
    assert run("new", case, capsys=capsys)[0] == 0
    rows = ["force_gf,travel_mm,way"]
    rows += [
        f"{25 + 5 * mm + (2 if way == 'out' else -2)},{mm},{way}" for way in ("out", "back") for mm in (1, 2, 3, 4)
    ]
    readings.write_text("\n".join(rows) + "\n", encoding="utf-8")
    words = ("bench", readings, "--height-mm", 16, "--kit", case / "kit.toml", "--name")
    status, out, err = run(*words, "yew", capsys=capsys)
    assert (status, err) == (0, "")
    assert (case / "bench" / "yew.csv").read_bytes() == readings.read_bytes()
    assert f"The readings were copied to {case / 'bench' / 'yew.csv'}" in out
    assert run("check", case, capsys=capsys)[0] == 0
    readings.write_text("\n".join(rows[:-1]) + "\n", encoding="utf-8")
    status, _, err = run(*words, "yew two", capsys=capsys)
    assert status == 2
    assert "already" in err
    assert (case / "bench" / "yew.csv").read_text(encoding="utf-8") == "\n".join(rows) + "\n"


def test_bench_tells_a_worn_spring_of_a_stick_in_the_kit(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Benched again under its name, the kit stays as it is, and a start force that fell by more than a fifth is told."""
    case = tmp_path / "case"
    assert run("new", case, capsys=capsys)[0] == 0

    def benched_with(start_gf: float) -> tuple[int, str, str]:
        readings = tmp_path / f"{start_gf}.csv"
        rows = [
            f"{start_gf + 5 * mm + (2 if way == 'out' else -2)},{mm},{way}"
            for way in ("out", "back")
            for mm in (1, 2, 3, 4)
        ]
        readings.write_text("\n".join(["force_gf,travel_mm,way", *rows]) + "\n", encoding="utf-8")
        words = ("bench", readings, "--height-mm", 16, "--kit", case / "kit.toml", "--name", "yew")
        return run(*words, capsys=capsys)

    assert benched_with(25)[0] == 0
    kit = (case / "kit.toml").read_bytes()
    status, out, err = benched_with(24)
    assert (status, "there already" in err, "has fallen" in out) == (2, True, False)
    status, out, _ = benched_with(15)
    assert status == 2
    assert "The force to leave the centre has fallen by 3" in " ".join(out.split())
    assert (case / "kit.toml").read_bytes() == kit


def test_trace_reads_a_foreign_file_by_naming_its_columns(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A real thumbstick at 60 Hz in raw counts of 80; from one axis, rest cannot be told from a push along the other."""
    path = next((ROOT / "tests" / "data" / "thumbstick").glob("play*.csv"))
    drawing, told = tmp_path / "trace.svg", tmp_path / "trace.json"
    status, out, _ = run(
        "trace",
        path,
        "--x",
        "raw_x_count",
        "--y",
        "none",
        "--full-scale",
        80,
        "--svg",
        drawing,
        "--json",
        told,
        capsys=capsys,
    )
    assert status == 0
    assert "a push straight forward or back looks the same" in " ".join(out.split())
    assert drawing.read_text(encoding="utf-8").startswith("<svg")
    report = json.loads(told.read_text(encoding="utf-8"))
    assert report["rest"] is None
    assert report["reach"] is not None


def test_an_unforeseen_fault_is_ours(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Never a traceback on the screen: the report lies in a file, and the person is told that nothing was lost."""
    import stickwright.files.folder

    def broken(*_: object, **__: object) -> None:
        raise ZeroDivisionError("made for this test")

    monkeypatch.setattr(stickwright.files.folder, "check_case", broken)
    status, _, err = run("check", tmp_path, capsys=capsys)
    assert status == 1
    assert "not your mistake" in err
    report = Path(err.strip().rsplit(" ", 1)[1])
    assert "made for this test" in report.read_text(encoding="utf-8")
    report.unlink()


@pytest.mark.parametrize(
    "words,says",
    [
        (("plan", DEMO, "--draws", 0), "draws: found 0, expected 2 to 20,000"),
        (("plan", DEMO, "--draws", 10**9), "draws: found 1000000000, expected 2 to 20,000"),
        (("plan", DEMO, "--date", "yesterday"), 'date of the plan: found "yesterday"'),
        (
            ("plan", DEMO, "--draws", 20, "--pdf", "/nowhere/at/all/sheet.pdf"),
            "/nowhere/at/all/sheet.pdf: found a place",
        ),
        (("bench", DEMO / "bench", "--name", "x", "--height-mm", 16), "folder"),
        (("bench", "nothing.csv", "--name", "x", "--height-mm", 16), "nothing.csv: found no such file"),
    ],
)
@pytest.mark.usefixtures("each_plan_once")
def test_options_that_cannot_be(words: tuple[str | Path, ...], says: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Options are refused like files: found, expected, remedy; status 2."""
    status, _, err = run(*words, capsys=capsys)
    assert status == 2
    assert says in err


def test_bench_says_a_wrong_height_once(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    readings = tmp_path / "yew.csv"
    readings.write_text("angle_deg,force_gf\n5,10\n10,20\n15,31\n20,40\n", encoding="utf-8")
    status, _, err = run("bench", readings, "--name", "yew", "--height-mm", "-16", capsys=capsys)
    assert (status, err.strip()) == (
        2,
        "--height-mm: -16 is out of range. Give 2 to 500 mm, from the pivot to the contact point.",
    )


CLICKS = ROOT / "tests" / "data" / "pointing" / "reciprocal-person-4.csv"
CLICK_COLUMNS = (
    "--start", "press1_x_px", "press1_y_px", "--target", "target_x_px", "target_y_px", "--selected-at", "press2_x_px",
    "press2_y_px", "--hit", "hit", "--duration",
)  # fmt: skip


def test_trace_reads_a_table_of_movements(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Real clicks of a mouse: throughput with what is usual beside it, what was left out, and all of it as JSON."""
    told = tmp_path / "told.json"
    status, out, _ = run("trace", CLICKS, *CLICK_COLUMNS, "press2_ms", "--json", told, capsys=capsys)
    words = " ".join(out.split())
    assert status == 0
    assert "166 movements, timed as the table says" in words
    assert "usual for an unaffected adult" in words
    assert "left out: rows " in words
    assert json.loads(told.read_text(encoding="utf-8"))["pointing"]["movements"] == 166


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        ((*CLICK_COLUMNS, "press2"), "Did you mean 'press2_ms'?"),
        ((*CLICK_COLUMNS, "press2_ms", "--svg", "a.svg"), "A table has no path to draw."),
        ((*CLICK_COLUMNS, "press2_ms", "--only", "row"), "row needs a column and a cell, as in --only person=4"),
        (("--target", "target_x_px", "target_y_px"), "Add --start and --selected-at."),
        (("--presses", "press2_ms", "--event", "hit"), "Name the cell that stands for a press"),
        (("--presses", "press2_ms"), "Is it the time of each press, not how long it lasted?"),
        ((), "with --start, --target and --selected-at, or with --presses"),
        (("--time", "press2_ms", "--x", "press2_x_px", "--unit", "px"), "Is it how long each row took?"),
    ],
)
def test_trace_says_what_is_wrong_with_a_table(
    typed: tuple[str, ...], words: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """One clear sentence for each mistake in naming columns."""
    status, _, wrong = run("trace", CLICKS, *typed, capsys=capsys)
    assert status == 2
    assert words in wrong
    assert len(wrong.strip().splitlines()) == 1


def test_trace_reads_presses(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Our own header of presses needs no option."""
    path = tmp_path / "presses.csv"
    path.write_text("down_s\n" + "".join(f"{0.2 * k + 0.01 * (k % 3)}\n" for k in range(40)), encoding="utf-8")
    status, out, _ = run("trace", path, capsys=capsys)
    assert status == 0
    assert "40 presses: 5.0 " in " ".join(out.split())
    assert "4.5 to 6 taps a second" in " ".join(out.split())
