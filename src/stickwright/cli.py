"""The command line: parse, one call, print. Heavy imports wait inside the command that needs them."""

from __future__ import annotations

import argparse
import sys

TYPE_CHECKING = False  # spelt out: importing typing would cost the help text a third of its time
if TYPE_CHECKING:
    from collections.abc import Callable, Sequence
    from pathlib import Path

    from stickwright.model.recorded import Finding
    from stickwright.model.recording import Recording
    from stickwright.model.wishes import Wishes

__all__ = ["COMMANDS", "command_parser", "main", "parser"]

_ABOUT = "Fits an analogue stick to a disabled player: from measured movement to a chosen, tuned, documented set-up."
_FOOT = (
    "Everything stays on this machine. Not a medical device: local rules, the seating clinic and the treating team "
    "come first."
)


def parser(only: str | None = None) -> argparse.ArgumentParser:
    """All commands and options.

    Parameters
    ----------
    only : str, optional
        The one command whose options are wanted; the help of all commands is then quicker to make.
    """
    top = argparse.ArgumentParser(prog="stickwright", description=_ABOUT, epilog=_FOOT)
    top.add_argument("--version", action="store_true", help="print the version")
    commands = top.add_subparsers(dest="command", metavar="COMMAND")
    for name, (short, long, options) in COMMANDS.items():
        command = commands.add_parser(name, help=short, description=long)
        if only is None or only == name:
            options(command)
    return top


def command_parser(name: str) -> argparse.ArgumentParser:
    """One command with its options, as the help page shows it.

    Parameters
    ----------
    name : str
        One of `COMMANDS`.
    """
    _, long, options = COMMANDS[name]
    command = argparse.ArgumentParser(prog=f"stickwright {name}", description=long)
    options(command)
    return command


def _plan_options(plan: argparse.ArgumentParser) -> None:
    plan.add_argument("case", metavar="CASE", help="case folder")
    plan.add_argument(
        "--pdf", metavar="OUT.pdf", help="where to write the sheet (CASE/sheet.pdf unless another output is asked for)"
    )
    plan.add_argument("--json", metavar="OUT.json", help="everything, for other programs")
    plan.add_argument("--svg-dir", metavar="FOLDER", help="each figure as SVG")
    plan.add_argument("--dxf", metavar="FOLDER", help="each mount for a drawing program, in millimetre (needs ezdxf)")
    plan.add_argument("--scene", metavar="OUT.html", help="the mounts as one page that can be turned, without network")
    plan.add_argument("--draws", type=int, default=500, metavar="N", help="draws behind every interval (default 500)")
    plan.add_argument("--seed", type=int, metavar="N", help="seed of the draws, to repeat a plan exactly")
    plan.add_argument("--date", metavar="YYYY-MM-DD", help="date to print (today)")
    _wish_options(plan)


def _wish_options(command: argparse.ArgumentParser) -> None:
    """What-if, without editing a file."""
    wishes = command.add_argument_group("what if")
    wishes.add_argument(
        "--without", action="append", default=[], metavar="NAME",
        help="do without this stick, switch, controller, lead, site, socket or helper; may be said again",
    )  # fmt: skip
    wishes.add_argument(
        "--keep", action="append", default=[], metavar="WHAT=WHERE",
        help="a choice that is to stay: an action at a site, on a device, left to option, helper or dropped, or a "
        "device at a site ('look=chin', 'chin=larch'); may be said again",
    )  # fmt: skip
    wishes.add_argument("--only-kit", action="store_true", help="only what is in stock")
    wishes.add_argument("--budget", type=float, metavar="MONEY", help="most that may be spent on what is not in stock")
    wishes.add_argument("--max-parts", type=int, metavar="N", help="most devices that may stand around")


def _wishes(options: argparse.Namespace, alternatives: int = 5) -> Wishes:
    from stickwright.errors import BadInput, Problem
    from stickwright.model.wishes import Keep, Wishes

    keep, problems = [], []
    for text in options.keep:
        what, equals, where = (part.strip() for part in text.partition("="))
        if equals and what and where:
            keep.append(Keep(what, where))
        else:
            remedy = "For example: --keep 'look=chin'."
            problems.append(Problem("--keep", f'"{text}"', "WHAT=WHERE, an equals sign between the two", remedy))
    if problems:
        raise BadInput(problems)
    return Wishes(
        without=tuple(name.strip() for name in options.without),
        only_kit=options.only_kit,
        budget=options.budget,
        most_parts=options.max_parts,
        keep=tuple(keep),
        alternatives=alternatives,
    )


def _why_options(why: argparse.ArgumentParser) -> None:
    why.add_argument("case", metavar="CASE", help="case folder")
    why.add_argument("action", metavar="ACTION", help="an action of game.toml, in the player's own words")
    why.add_argument("--at", metavar="PLACE", help="why not there: a site, or option, helper, dropped")
    why.add_argument("--draws", type=int, default=500, metavar="N", help="draws behind every interval (default 500)")
    _wish_options(why)


def _bench_options(bench: argparse.ArgumentParser) -> None:
    bench.add_argument(
        "readings",
        metavar="READINGS.csv",
        help="columns: a force, one of angle_deg, travel_mm and output_share; if taken way, direction_deg, height_mm",
    )
    bench.add_argument("--name", required=True, help="name of the stick")
    bench.add_argument(
        "--height-mm",
        type=float,
        metavar="MM",
        help="contact point above the pivot, unless the file has a height column",
    )
    bench.add_argument("--stop-deg", type=float, metavar="DEG", help="angle at the stop")
    bench.add_argument("--stop-mm", type=float, metavar="MM", help="travel at the stop")
    bench.add_argument("--gauge-step-gf", type=float, metavar="GF", help="step of the gauge in gram-force")
    bench.add_argument("--kit", metavar="KIT.toml", help="append the stick to this kit")
    bench.add_argument("--svg", metavar="OUT.svg", help="where to draw force against travel (READINGS.svg)")
    bench.add_argument("--json", metavar="OUT.json", help="everything, for other programs")


def _trace_options(trace: argparse.ArgumentParser) -> None:
    trace.add_argument(
        "recording", metavar="FILE.csv", help="own format: time_s,x,y and if wanted cue, cue_x, cue_y, cue_width"
    )
    trace.add_argument(
        "--task",
        choices=("rest", "still", "rim", "push", "hold", "aim", "follow", "play"),
        default="play",
        help="what was done, when there is no cue column (default play)",
    )
    foreign = trace.add_argument_group("a file from elsewhere: name its columns")
    foreign.add_argument("--time", metavar="COLUMN", help="time; 'none' with --rate when there is none")
    foreign.add_argument(
        "--time-unit", choices=("s", "ms", "min", "frame"), help="when the column's name does not end in it"
    )
    foreign.add_argument("--rate", type=float, metavar="HZ", help="rows or frames a second")
    foreign.add_argument("--x", metavar="COLUMN", help="sideways")
    foreign.add_argument("--y", metavar="COLUMN", help="forward; 'none' for one axis")
    foreign.add_argument(
        "--full-scale", type=float, metavar="VALUE", help="value of full output, from the centre (80 counts, 127, 1)"
    )
    foreign.add_argument("--unit", help="name of the unit when there is no full output (px, m/s2)")
    foreign.add_argument("--centre", type=float, nargs=2, metavar=("X", "Y"), help="values at rest, when not 0 0")
    foreign.add_argument("--flip-x", action="store_true", help="the file's x grows to the left")
    foreign.add_argument("--flip-y", action="store_true", help="the file's y grows backwards or down")
    foreign.add_argument("--cue", metavar="COLUMN", help="words for what was asked")
    foreign.add_argument("--cue-x", metavar="COLUMN", help="where the player was asked to be")
    foreign.add_argument("--cue-y", metavar="COLUMN", help="the same, forward")
    foreign.add_argument("--cue-width", metavar="COLUMN", help="width of aimed targets")
    trace.add_argument("--svg", metavar="OUT.svg", help="draw the recording")
    trace.add_argument("--json", metavar="OUT.json", help="everything, for other programs")


def _check_options(check: argparse.ArgumentParser) -> None:
    check.add_argument("case", metavar="CASE", help="case folder")


def _new_options(new: argparse.ArgumentParser) -> None:
    new.add_argument("case", metavar="CASE", help="folder to make")
    new.add_argument("--game", metavar="NAME", help="kind of game to start from, as 'stickwright games' lists them")


def _games_options(games: argparse.ArgumentParser) -> None:
    games.add_argument("name", metavar="NAME", nargs="?", help="kind of game whose actions are wanted")
    games.add_argument("--all", action="store_true", help="the actions of all ten")


COMMANDS: dict[str, tuple[str, str, Callable[[argparse.ArgumentParser], None]]] = {
    "plan": (
        "choose, explain and tune: the main job",
        "Choose the stick for each site, explain the choice, tune the stick that was tried, and write the sheet.",
        _plan_options,
    ),
    "why": (
        "why an action is where it is, and why not elsewhere",
        "Why an action is done where it is, what comes second, and what every other place would cost the whole plan, or why "
        "it cannot be there.",
        _why_options,
    ),
    "check": (
        "say everything that is wrong with a case",
        "Read a case and say all problems at once; nothing is changed.",
        _check_options,
    ),
    "new": (
        "write a starter case",
        "Write a commented starter case to fill in with a text editor.",
        _new_options,
    ),
    "games": (
        "show ten kinds of game to start from",
        "Show what ten kinds of game usually ask: actions, how often, how long, what together, and what the game itself "
        "can do. From general knowledge, to be written over.",
        _games_options,
    ),
    "bench": (
        "work out a stick from bench readings",
        "Work out preload, stiffness, friction and travel of a stick from gauge readings, with intervals.",
        _bench_options,
    ),
    "trace": (
        "say what a recording tells",
        "Say what a recording of a stick tells: rest, reach, direction, tremor, holds, aiming, following, and what is "
        "wrong with it.",
        _trace_options,
    ),
}


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; 0 done, 2 something for the person to put right, 1 our fault.

    Parameters
    ----------
    arguments : sequence of str, optional
        As typed; from the command line when not given.
    """
    typed = sys.argv[1:] if arguments is None else list(arguments)
    top = parser(next((word for word in typed if word in COMMANDS), ""))
    options = top.parse_args(typed)
    if options.version:
        from stickwright import __version__

        print(f"stickwright {__version__}")
        return 0
    if options.command is None:
        top.print_help()
        return 0
    command: Callable[[argparse.Namespace], int] = {
        "plan": _plan,
        "why": _why,
        "check": _check,
        "new": _new,
        "games": _games,
        "bench": _bench,
        "trace": _trace,
    }[options.command]
    return _run(command, options)


def _run(command: Callable[[argparse.Namespace], int], options: argparse.Namespace) -> int:
    from stickwright.errors import BadInput

    try:
        return command(options)
    except BadInput as refused:
        _say_problems([str(problem) for problem in refused.problems])
        return 2
    except KeyboardInterrupt:
        print("\nStopped; nothing was written.", file=sys.stderr)
        return 130
    except BrokenPipeError:  # the reader of our output closed it: not an error of anybody's
        sys.stderr.close()
        return 0
    except OSError as refused:
        where = refused.filename or "a file"
        _say_problems([f"{where}: {refused.strerror or refused}. Choose another place or free it, then try again."])
        return 2
    except Exception:  # the outermost edge: anything else is our defect, told with its report kept in a file
        return _our_fault()


def _say_problems(sentences: Sequence[str]) -> None:
    if len(sentences) > 1:
        print(f"{len(sentences)} things to put right:", file=sys.stderr)
    for sentence in sentences:
        print(f"{'- ' if len(sentences) > 1 else ''}{sentence}", file=sys.stderr)


def _our_fault() -> int:
    import tempfile
    import traceback

    with tempfile.NamedTemporaryFile(
        "w", prefix="stickwright-report-", suffix=".txt", delete=False, encoding="utf-8"
    ) as report:
        traceback.print_exc(file=report)
    print(
        "This is a fault of the program, not yours. Nothing was lost; your files are as they were. "
        f"The report is in {report.name}",
        file=sys.stderr,
    )
    return 1


def _progress() -> tuple[Callable[[str, float], None], Callable[[], None]]:
    """A bar on the terminal; silent when the output goes elsewhere."""
    from tqdm import tqdm

    bar = tqdm(
        total=100,
        leave=False,
        disable=not sys.stderr.isatty(),
        bar_format="{desc:<28.28}|{bar:40}| {percentage:3.0f} %",
    )

    def tell(what: str, share: float) -> None:
        bar.set_description_str(what)
        bar.update(round(100 * share) - bar.n)

    return tell, bar.close


def _plan(options: argparse.Namespace) -> int:
    from datetime import date
    from pathlib import Path

    from stickwright.records.folder import case_and_queries
    from stickwright.records.writing import write_whole

    tell, close = _progress()
    try:
        tell("reading the case", 0.02)
        made_on = options.date or date.today().isoformat()
        case, queries = case_and_queries(Path(options.case), made_on)
        from stickwright.planning import SEED, plan
        from stickwright.sheet.words import plan_words

        seed = SEED if options.seed is None else options.seed
        result = plan(
            case,
            draws=options.draws,
            seed=seed,
            wishes=_wishes(options),
            progress=lambda what, share: tell(what, 0.05 + 0.75 * share),
        )
        written: list[Path] = []
        wants_sheet = options.pdf or not (options.json or options.svg_dir or options.dxf or options.scene)
        if wants_sheet:
            from stickwright.sheet.document import sheet_pdf

            tell("drawing the sheet", 0.85)
            pdf = Path(options.pdf) if options.pdf else Path(options.case) / "sheet.pdf"
            write_whole(pdf, sheet_pdf(result))
            written.append(pdf)
        if options.svg_dir:
            from stickwright.sheet.figures import all_figures

            tell("drawing figures", 0.95)
            folder = Path(options.svg_dir)
            folder.mkdir(parents=True, exist_ok=True)
            for name, svg in all_figures(result).items():
                write_whole(folder / f"{name}.svg", svg)
            written.append(folder)
        if options.dxf:
            from stickwright.sheet.mount_dxf import all_dxf

            files, folder = all_dxf(result), Path(options.dxf)
            folder.mkdir(parents=True, exist_ok=True)
            for name, text in files.items():
                write_whole(folder / f"{name}.dxf", text)
            written.append(folder)
        if options.scene:
            from stickwright.sheet.mount_scene import scene_html

            write_whole(Path(options.scene), scene_html(result))
            written.append(Path(options.scene))
        if options.json:
            from stickwright.sheet.serial import plan_json

            write_whole(Path(options.json), plan_json(result))
            written.append(Path(options.json))
    finally:
        close()
    print(plan_words(result))
    _say_noticed(queries, options.case)
    for path in written:
        kind = {".pdf": "The sheet", ".html": "The mounts, to turn"}.get(path.suffix, "Everything")
        print(f"{'Drawings' if path.is_dir() else kind}: {path}")
    return 0


def _say_noticed(queries: Sequence[Finding], case: str) -> None:
    """What the reader did without, and that more looks odd."""
    for query in queries:
        if query.level == "note" or query.about == "game":
            print(f"Noted: {query.text}")
    odd = sum(query.level != "note" and query.about != "game" for query in queries)
    if odd:
        print(
            f"{odd} thing{'s look' if odd > 1 else ' looks'} odd in the files: 'stickwright check {case}' says which."
        )


def _why(options: argparse.Namespace) -> int:
    from pathlib import Path

    from stickwright.records.folder import read_case

    tell, close = _progress()
    try:
        tell("reading the case", 0.02)
        case = read_case(Path(options.case))
        from stickwright.planning import plan
        from stickwright.sheet.why_words import why_words

        result = plan(
            case, draws=options.draws, wishes=_wishes(options, 0), why=options.action,
            progress=lambda what, share: tell(what, 0.05 + 0.9 * share),
        )  # fmt: skip
    finally:
        close()
    assert result.sharing is not None  # plan refuses an action that the game does not name
    print(why_words(result.sharing, options.action, options.at))
    return 0


def _check(options: argparse.Namespace) -> int:
    from pathlib import Path

    from stickwright.records.folder import check_case

    problems, queries = check_case(Path(options.case))
    _say_problems([str(problem) for problem in problems])
    for query in queries:
        print(f"? {query.text}")
    if problems:
        return 2
    look = f", {len(queries)} to look at" if queries else ""
    print(f"{options.case}: no problems{look}. Next: stickwright plan {options.case}")
    return 0


def _new(options: argparse.Namespace) -> int:
    from pathlib import Path

    from stickwright.records.folder import new_case

    for path in new_case(Path(options.case), options.game):
        print(f"wrote {path}")
    print(f"Fill in player.toml, kit.toml, game.toml, hub.toml and room.toml, then: stickwright check {options.case}")
    return 0


def _games(options: argparse.Namespace) -> int:
    from stickwright.records.archetypes import ARCHETYPES, archetype
    from stickwright.sheet.game_words import game_words, games_words

    if options.name or options.all:
        names = ARCHETYPES if options.all else (options.name,)
        print("\n".join(game_words(archetype(name)) for name in names), end="")
    else:
        print(games_words({name: archetype(name) for name in ARCHETYPES}), end="")
        print("\nThe actions of one: stickwright games racing. To start from it: stickwright new CASE --game racing")
    print("Usual figures from general knowledge, no source: write over them with what you see.")
    return 0


def _bench(options: argparse.Namespace) -> int:
    from pathlib import Path

    from stickwright.mechanics.bench import bench_stick, to_stick_fields
    from stickwright.records.benches import append_stick, read_bench
    from stickwright.records.writing import write_whole
    from stickwright.sheet.figures import bench
    from stickwright.sheet.words import bench_words
    from stickwright.units import to_si

    def si(value: float | None, ending: str) -> float | None:
        return None if value is None else to_si(value, ending)

    path = Path(options.readings)
    read = read_bench(path)
    if options.height_mm is not None and not 2 <= options.height_mm <= 500:
        from stickwright.errors import BadInput, Problem

        raise BadInput(
            Problem(
                "--height-mm", f"{options.height_mm:g}", "2 to 500 mm", "Measure from the pivot to the contact point."
            )
        )
    height = read.height_m if read.height_m is not None else si(options.height_mm, "mm")
    if height is None:
        from stickwright.errors import BadInput, Problem

        raise BadInput(
            Problem(
                str(path),
                "no height_mm column and no --height-mm",
                "the height of the contact point above the pivot",
                "Add --height-mm 16, say.",
            )
        )
    result = bench_stick(
        read.force_n, name=options.name, height_m=height, angle_rad=read.angle_rad, travel_m=read.travel_m,
        output_share=read.output_share, direction_rad=read.direction_rad, outward=read.outward,
        max_angle_rad=si(options.stop_deg, "deg"), max_travel_m=si(options.stop_mm, "mm"),
        gauge_step_n=si(options.gauge_step_gf, "gf"),
    )  # fmt: skip
    print(bench_words(result))
    drawing = Path(options.svg) if options.svg else path.with_suffix(".svg")
    write_whole(drawing, bench(result))
    print(f"Force against travel: {drawing}")
    if options.json:
        from stickwright.sheet.serial import as_json

        write_whole(Path(options.json), as_json(result))
        print(f"Everything: {options.json}")
    if options.kit:
        stick = append_stick(Path(options.kit), to_stick_fields(result), path)
        print(f"{stick.name} was added to {options.kit}")
    return 0


def _trace(options: argparse.Namespace) -> int:
    from pathlib import Path

    from stickwright.sheet.words import trace_words
    from stickwright.trace.report import trace_report

    tell, close = _progress()
    try:
        tell("reading the recording", 0.1)
        recording = _recording(options)
        tell("working out what it tells", 0.4)
        report = trace_report(recording)
    finally:
        close()
    print(trace_words(report))
    if options.svg or options.json:
        from stickwright.records.writing import write_whole

        if options.svg:
            from stickwright.sheet.figures import trace_overview

            write_whole(Path(options.svg), trace_overview(report, recording.times_s, recording.xy))
            print(f"Drawing: {options.svg}")
        if options.json:
            from stickwright.sheet.serial import as_json

            write_whole(Path(options.json), as_json(report))
            print(f"Everything: {options.json}")
    return 0


def _recording(options: argparse.Namespace) -> Recording:
    from pathlib import Path

    from stickwright.records.recordings import ColumnChoice, read_recording

    named = (options.time, options.x, options.y, options.full_scale, options.unit, options.cue_x, options.rate)
    columns = None
    if any(value is not None for value in named) or options.flip_x or options.flip_y or options.centre:
        none = {"none": None, "-": None}
        columns = ColumnChoice(
            time=none.get(options.time, options.time) if options.time else ("time_s" if options.rate is None else None),
            x=options.x or "x",
            y=none.get(options.y, options.y) if options.y else (None if options.x else "y"),
            time_unit=options.time_unit,
            rate_hz=options.rate,
            full_scale=options.full_scale if options.full_scale is not None or options.unit else 1.0,
            unit=options.unit,
            centre=tuple(options.centre) if options.centre else (0.0, 0.0),
            flip_x=options.flip_x,
            flip_y=options.flip_y,
            cue=options.cue,
            cue_x=options.cue_x,
            cue_y=options.cue_y,
            cue_width=options.cue_width,
        )
    return read_recording(Path(options.recording), columns=columns, task=options.task)


if __name__ == "__main__":
    sys.exit(main())
