"""``stickwright trace``: what a recording tells."""

from __future__ import annotations

import argparse

from stickwright.cli.help_texts import help_text
from stickwright.cli.telling import progress

TYPE_CHECKING = False  # spelt out: importing typing would cost the help text a third of its time
if TYPE_CHECKING:
    from stickwright.model.recorded import TableReport
    from stickwright.model.recording import Recording

__all__ = ["options", "run"]


def options(command: argparse.ArgumentParser) -> None:
    """What may be typed after the command."""
    command.add_argument(
        "recording",
        metavar="FILE.csv",
        help=help_text("trace.recording"),
    )
    command.add_argument(
        "--task",
        choices=("rest", "still", "rim", "push", "hold", "aim", "follow", "play"),
        default="play",
        help=help_text("trace.task"),
    )
    foreign = command.add_argument_group(help_text("trace.foreign"))
    foreign.add_argument("--time", metavar="COLUMN", help=help_text("trace.time"))
    foreign.add_argument("--time-unit", choices=("s", "ms", "min", "frame"), help=help_text("trace.time-unit"))
    foreign.add_argument("--rate", type=float, metavar="HZ", help=help_text("trace.rate"))
    foreign.add_argument("--x", metavar="COLUMN", help=help_text("trace.x"))
    foreign.add_argument("--y", metavar="COLUMN", help=help_text("trace.y"))
    foreign.add_argument(
        "--z",
        metavar="COLUMN",
        help=help_text("trace.z"),
    )
    foreign.add_argument("--full-scale", type=float, metavar="VALUE", help=help_text("trace.full-scale"))
    foreign.add_argument("--unit", help=help_text("trace.unit"))
    foreign.add_argument("--centre", type=float, nargs=2, metavar=("X", "Y"), help=help_text("trace.centre"))
    foreign.add_argument("--flip-x", action="store_true", help=help_text("trace.flip-x"))
    foreign.add_argument("--flip-y", action="store_true", help=help_text("trace.flip-y"))
    foreign.add_argument("--cue", metavar="COLUMN", help=help_text("trace.cue"))
    foreign.add_argument("--cue-x", metavar="COLUMN", help=help_text("trace.cue-x"))
    foreign.add_argument("--cue-y", metavar="COLUMN", help=help_text("trace.cue-y"))
    foreign.add_argument("--cue-width", metavar="COLUMN", help=help_text("trace.cue-width"))
    foreign.add_argument("--select", metavar="COLUMN", help=help_text("trace.select"))
    foreign.add_argument("--stroke", metavar="COLUMN", help=help_text("trace.stroke"))
    _table_options(command)
    command.add_argument("--svg", metavar="OUT.svg", help=help_text("svg.trace"))
    command.add_argument("--json", metavar="OUT.json", help=help_text("json"))


def _table_options(command: argparse.ArgumentParser) -> None:
    movements = command.add_argument_group(help_text("trace.movements"))
    for name in ("start", "target", "selected-at"):
        movements.add_argument(f"--{name}", nargs=2, metavar=("X", "Y"), help=help_text(f"trace.{name}"))
    movements.add_argument("--target-width", metavar="COLUMN", help=help_text("trace.target-width"))
    movements.add_argument("--width-times", type=float, metavar="FACTOR", help=help_text("trace.width-times"))
    movements.add_argument("--duration", metavar="COLUMN", help=help_text("trace.duration"))
    movements.add_argument("--begin", metavar="COLUMN", help=help_text("trace.begin"))
    movements.add_argument("--end", metavar="COLUMN", help=help_text("trace.end"))
    movements.add_argument("--hit", metavar="COLUMN", help=help_text("trace.hit"))
    presses = command.add_argument_group(help_text("trace.presses"))
    presses.add_argument("--presses", metavar="COLUMN", help=help_text("trace.presses-began"))
    presses.add_argument("--released", metavar="COLUMN", help=help_text("trace.released"))
    presses.add_argument("--event", metavar="COLUMN", help=help_text("trace.event"))
    presses.add_argument("--down", metavar="CELL", help=help_text("trace.down"))
    command.add_argument("--only", action="append", default=[], metavar="COLUMN=CELL", help=help_text("trace.only"))


def run(options: argparse.Namespace) -> int:
    """Do it; 0 done, 2 something to put right."""
    from pathlib import Path

    table = _table(options)
    if table is not None:
        return _tell_table(options, table)

    from stickwright.catalogue import say
    from stickwright.codes.message import Name, message
    from stickwright.codes.terminal import Terminal
    from stickwright.report.words import trace_words
    from stickwright.trace.report import trace_report

    tell, close = progress()
    try:
        tell(message(Terminal.doing, what="reading_recording"), 0.1)
        recording = _recording(options)
        tell(message(Terminal.doing, what="analysing"), 0.4)
        report = trace_report(recording)
    finally:
        close()
    print(trace_words(report))
    if options.svg or options.json:
        from stickwright.files.writing import write_whole

        if options.svg:
            from stickwright.report.figures import trace_overview

            write_whole(Path(options.svg), trace_overview(report, recording.times_s, recording.xy))
            print(say(message(Terminal.file, kind="drawing", path=Name(options.svg))))
        if options.json:
            from stickwright.files.results import as_json

            write_whole(Path(options.json), as_json(report))
            print(say(message(Terminal.file, kind="data", path=Name(options.json))))
    return 0


def _table(options: argparse.Namespace) -> TableReport | None:
    """What a table of movements or presses tells; None when the file is a recording."""
    from pathlib import Path

    from stickwright.codes.message import Name, message
    from stickwright.codes.terminal import Terminal
    from stickwright.errors import BadInput, Problem
    from stickwright.files.trial_tables import TapColumns, TrialColumns, kind_of_table, read_taps, read_trials
    from stickwright.trace.tables import taps_report, trials_report

    path = Path(options.recording)
    wrong = [each for each in options.only if not all(each.partition("="))]
    if wrong:
        raise BadInput(Problem("--only", "", "", message(Terminal.only, typed=Name(wrong[0]))))
    only = tuple((name, cell) for name, _, cell in (each.partition("=") for each in options.only))
    foreign = options.time is not None or options.x is not None
    kind = "" if foreign else kind_of_table(path)
    if options.presses or kind == "taps":
        if options.event and not options.down:
            raise BadInput(Problem("--event", "", "", message(Terminal.no_down)))
        named = TapColumns(
            options.presses or "down_s", options.released, options.event, options.down or "", options.time_unit, only
        )
        return taps_report(read_taps(path, named if options.presses else None, only=only))
    pairs = {"--start": options.start, "--target": options.target, "--selected-at": options.selected_at}
    if not any(pairs.values()):
        return trials_report(read_trials(path, only=only)) if kind == "trials" else None
    missing = [name for name, pair in pairs.items() if not pair]
    if missing:
        names = tuple(Name(name) for name in missing)
        raise BadInput(Problem(message(Terminal.columns), "", "", message(Terminal.columns_missing, names=names)))
    start, target, select = ((x, None if y in ("none", "-") else y) for x, y in pairs.values())
    chosen = TrialColumns(
        start, target, select, width=options.target_width, width_times=options.width_times, duration=options.duration,
        begin=options.begin, end=options.end, time_unit=options.time_unit, hit=options.hit, only=only,
    )  # fmt: skip
    return trials_report(read_trials(path, chosen))


def _tell_table(options: argparse.Namespace, table: TableReport) -> int:
    from pathlib import Path

    from stickwright.catalogue import say
    from stickwright.codes.message import Name, message
    from stickwright.codes.terminal import Terminal
    from stickwright.errors import BadInput, Problem
    from stickwright.report.words import table_words

    if options.svg:
        raise BadInput(Problem("--svg", "", "", message(Terminal.no_path)))
    print(table_words(table))
    if options.json:
        from stickwright.files.results import as_json
        from stickwright.files.writing import write_whole

        write_whole(Path(options.json), as_json(table))
        print(say(message(Terminal.file, kind="data", path=Name(options.json))))
    return 0


def _recording(options: argparse.Namespace) -> Recording:
    from pathlib import Path

    from stickwright.files.recordings import ColumnChoice, read_recording

    named = (
        options.time, options.x, options.y, options.full_scale, options.unit, options.cue, options.cue_x, options.cue_y,
        options.cue_width, options.rate, options.select, options.stroke, options.time_unit,
        options.z,
    )  # fmt: skip
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
            select=options.select,
            stroke=options.stroke,
            z=options.z,
        )
    return read_recording(Path(options.recording), columns=columns, task=options.task)
