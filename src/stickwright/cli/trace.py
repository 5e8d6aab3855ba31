"""``stickwright trace``: what a recording tells."""

from __future__ import annotations

import argparse

from stickwright.cli.telling import progress

TYPE_CHECKING = False  # spelt out: importing typing would cost the help text a third of its time
if TYPE_CHECKING:
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
        help="own format: time_s,x,y and if wanted cue, cue_x, cue_y, cue_width, select, stroke",
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
    command.add_argument("--svg", metavar="OUT.svg", help="draw the recording")
    command.add_argument("--json", metavar="OUT.json", help="everything, for other programs")


def run(options: argparse.Namespace) -> int:
    """Do it; 0 done, 2 something to put right.

    Parameters
    ----------
    options : argparse.Namespace
    """
    from pathlib import Path

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
            from stickwright.sheet.serial import as_json

            write_whole(Path(options.json), as_json(report))
            print(f"Everything: {options.json}")
    return 0


def _recording(options: argparse.Namespace) -> Recording:
    from pathlib import Path

    from stickwright.records.recordings import ColumnChoice, read_recording

    named = (
        options.time, options.x, options.y, options.full_scale, options.unit, options.cue, options.cue_x, options.cue_y,
        options.cue_width, options.rate, options.select, options.stroke, options.time_unit,
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
        )
    return read_recording(Path(options.recording), columns=columns, task=options.task)
