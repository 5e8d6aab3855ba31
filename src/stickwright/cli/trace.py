"""``stickwright trace``: what a recording tells."""

from __future__ import annotations

import argparse

from stickwright.cli.telling import progress

TYPE_CHECKING = False  # spelt out: importing typing would cost the help text a third of its time
if TYPE_CHECKING:
    from stickwright.model.recorded import TableReport
    from stickwright.model.recording import Recording

__all__ = ["options", "run"]


def options(command: argparse.ArgumentParser) -> None:
    """What may be typed after the command.

    Parameters
    ----------
    command : argparse.ArgumentParser
    """
    command.add_argument(
        "recording",
        metavar="FILE.csv",
        help="own format: time_s,x,y and if wanted cue, cue_x, cue_y, cue_width, select, stroke, z",
    )
    command.add_argument(
        "--task",
        choices=("rest", "still", "rim", "push", "hold", "aim", "follow", "play"),
        default="play",
        help="what was done, when there is no cue column (default play)",
    )
    foreign = command.add_argument_group("a file from elsewhere: name its columns")
    foreign.add_argument("--time", metavar="COLUMN", help="time; 'none' with --rate when there is none")
    foreign.add_argument(
        "--time-unit", choices=("s", "ms", "min", "frame"), help="when the column's name does not end in it"
    )
    foreign.add_argument("--rate", type=float, metavar="HZ", help="rows or frames a second")
    foreign.add_argument("--x", metavar="COLUMN", help="sideways")
    foreign.add_argument("--y", metavar="COLUMN", help="forward; 'none' for one axis")
    foreign.add_argument(
        "--z",
        metavar="COLUMN",
        help="third axis of a sensor: tremor is told from all three together, along the line on which it is strongest",
    )
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
    foreign.add_argument(
        "--select", metavar="COLUMN", help="button or event that selects a target: empty or 0 while there is none"
    )
    foreign.add_argument("--stroke", metavar="COLUMN", help="number of each stroke of a drawing")
    _table_options(command)
    command.add_argument("--svg", metavar="OUT.svg", help="draw the recording")
    command.add_argument("--json", metavar="OUT.json", help="everything, for other programs")


def _table_options(command: argparse.ArgumentParser) -> None:
    movements = command.add_argument_group("a table of aimed movements, one a row (in place of a recording)")
    for name, what in (
        ("--start", "where each movement began; 'none' for Y on one line"),
        ("--target", "centre of its target"),
        ("--selected-at", "where the target was selected"),
    ):
        movements.add_argument(name, nargs=2, metavar=("X", "Y"), help=what)
    movements.add_argument("--target-width", metavar="COLUMN", help="diameter of the target")
    movements.add_argument(
        "--width-times", type=float, metavar="FACTOR", help="one unit of the width in the unit of the places (px a mm)"
    )
    movements.add_argument("--duration", metavar="COLUMN", help="how long each movement took")
    movements.add_argument("--begin", metavar="COLUMN", help="when it began, in place of the duration")
    movements.add_argument("--end", metavar="COLUMN", help="when the target was selected")
    movements.add_argument("--hit", metavar="COLUMN", help="1 for a hit, 0 for a miss")
    presses = command.add_argument_group("a table of presses, one a row (in place of a recording)")
    presses.add_argument("--presses", metavar="COLUMN", help="when each press began")
    presses.add_argument("--released", metavar="COLUMN", help="when it ended")
    presses.add_argument("--event", metavar="COLUMN", help="what happened, when there is a row for each event")
    presses.add_argument("--down", metavar="CELL", help="the cell of that column that stands for a press")
    command.add_argument(
        "--only", action="append", default=[], metavar="COLUMN=CELL", help="these rows of a table alone (person=4)"
    )


def run(options: argparse.Namespace) -> int:
    """Do it; 0 done, 2 something to put right.

    Parameters
    ----------
    options : argparse.Namespace
    """
    from pathlib import Path

    table = _table(options)
    if table is not None:
        return _tell_table(options, table)

    from stickwright.sheet.words import trace_words
    from stickwright.trace.report import trace_report

    tell, close = progress()
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
            from stickwright.records.results import as_json

            write_whole(Path(options.json), as_json(report))
            print(f"Everything: {options.json}")
    return 0


def _table(options: argparse.Namespace) -> TableReport | None:
    """What a table of movements or presses tells; None when the file is a recording."""
    from pathlib import Path

    from stickwright.errors import BadInput, Problem
    from stickwright.records.trial_tables import TapColumns, TrialColumns, kind_of_table, read_taps, read_trials
    from stickwright.trace.tables import taps_report, trials_report

    path = Path(options.recording)
    wrong = [each for each in options.only if not all(each.partition("="))]
    if wrong:
        raise BadInput(Problem("--only", wrong[0], "a column and a cell, as in --only person=4"))
    only = tuple((name, cell) for name, _, cell in (each.partition("=") for each in options.only))
    foreign = options.time is not None or options.x is not None
    kind = "" if foreign else kind_of_table(path)
    if options.presses or kind == "taps":
        if options.event and not options.down:
            raise BadInput(Problem("--event", "no --down", "the cell that stands for a press, as in --down 0"))
        named = TapColumns(
            options.presses or "down_s", options.released, options.event, options.down or "", options.time_unit, only
        )
        return taps_report(read_taps(path, named if options.presses else None, only=only))
    pairs = {"--start": options.start, "--target": options.target, "--selected-at": options.selected_at}
    if not any(pairs.values()):
        return trials_report(read_trials(path, only=only)) if kind == "trials" else None
    missing = [name for name, pair in pairs.items() if not pair]
    if missing:
        raise BadInput(
            Problem("the columns", f"no {' and no '.join(missing)}", "start, target and selection of each movement",
                    "Name all three; where the start is not recorded, name the target before as the start.")
        )  # fmt: skip
    start, target, select = ((x, None if y in ("none", "-") else y) for x, y in pairs.values())
    chosen = TrialColumns(
        start, target, select, width=options.target_width, width_times=options.width_times, duration=options.duration,
        begin=options.begin, end=options.end, time_unit=options.time_unit, hit=options.hit, only=only,
    )  # fmt: skip
    return trials_report(read_trials(path, chosen))


def _tell_table(options: argparse.Namespace, table: TableReport) -> int:
    from pathlib import Path

    from stickwright.errors import BadInput, Problem
    from stickwright.sheet.words import table_words

    if options.svg:
        raise BadInput(Problem("--svg", "a table", "a recording: a table has no path to draw", "Leave out --svg."))
    print(table_words(table))
    if options.json:
        from stickwright.records.results import as_json
        from stickwright.records.writing import write_whole

        write_whole(Path(options.json), as_json(table))
        print(f"Everything: {options.json}")
    return 0


def _recording(options: argparse.Namespace) -> Recording:
    from pathlib import Path

    from stickwright.records.recordings import ColumnChoice, read_recording

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
