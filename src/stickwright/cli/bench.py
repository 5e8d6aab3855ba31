"""``stickwright bench``: a stick from bench readings."""

from __future__ import annotations

import argparse

from stickwright.cli.help_texts import help_text

__all__ = ["options", "run"]


def options(command: argparse.ArgumentParser) -> None:
    """What may be typed after the command."""
    command.add_argument(
        "readings",
        metavar="READINGS.csv",
        help=help_text("bench.readings"),
    )
    command.add_argument("--name", required=True, help=help_text("bench.name"))
    command.add_argument(
        "--height-mm",
        type=float,
        metavar="MM",
        help=help_text("bench.height-mm"),
    )
    command.add_argument("--stop-deg", type=float, metavar="DEG", help=help_text("bench.stop-deg"))
    command.add_argument("--stop-mm", type=float, metavar="MM", help=help_text("bench.stop-mm"))
    command.add_argument("--gauge-step-gf", type=float, metavar="GF", help=help_text("bench.gauge-step-gf"))
    command.add_argument("--kit", metavar="KIT.toml", help=help_text("bench.kit"))
    command.add_argument("--svg", metavar="OUT.svg", help=help_text("bench.svg"))
    command.add_argument("--json", metavar="OUT.json", help=help_text("json"))


def run(options: argparse.Namespace) -> int:
    """Do it; 0 done, 2 something to put right."""
    from dataclasses import replace
    from pathlib import Path

    from stickwright.catalogue import say
    from stickwright.codes.case_files import CaseFiles
    from stickwright.codes.message import Name, message
    from stickwright.codes.terminal import Terminal
    from stickwright.files.benches import append_stick, read_bench, stick_in_kit
    from stickwright.files.writing import write_whole
    from stickwright.mechanics.bench import bench_stick, to_stick_fields, wear_findings
    from stickwright.report.figures import bench
    from stickwright.report.words import bench_words
    from stickwright.units import to_si

    def si(value: float | None, ending: str) -> float | None:
        return None if value is None else to_si(value, ending)

    path = Path(options.readings)
    read = read_bench(path)
    if options.height_mm is not None and not 2 <= options.height_mm <= 500:
        from stickwright.errors import BadInput, Problem

        raise BadInput(
            Problem("--height-mm", "", "", message(Terminal.height_range, typed=Name(f"{options.height_mm:g}")))
        )
    height = read.height_m if read.height_m is not None else si(options.height_mm, "mm")
    if height is None:
        from stickwright.errors import BadInput, Problem

        raise BadInput(Problem((Name(str(path)),), "", "", message(Terminal.no_height)))
    result = bench_stick(
        read.force_n, name=options.name, height_m=height, angle_rad=read.angle_rad, travel_m=read.travel_m,
        output_share=read.output_share, direction_rad=read.direction_rad, outward=read.outward,
        max_angle_rad=si(options.stop_deg, "deg"), max_travel_m=si(options.stop_mm, "mm"),
        gauge_step_n=si(options.gauge_step_gf, "gf"),
    )  # fmt: skip
    earlier = stick_in_kit(Path(options.kit), options.name) if options.kit else None
    if earlier is not None and earlier.start_force_n is not None and earlier.contact_height_m is not None:
        worn = wear_findings(result, earlier.start_force_n, earlier.contact_height_m)
        result = replace(result, findings=(*result.findings, *worn))
    print(bench_words(result))
    drawing = Path(options.svg) if options.svg else path.with_suffix(".svg")
    write_whole(drawing, bench(result))
    print(say(message(Terminal.file, kind="bench", path=Name(str(drawing)))))
    if options.json:
        from stickwright.files.results import as_json

        write_whole(Path(options.json), as_json(result))
        print(say(message(Terminal.file, kind="data", path=Name(options.json))))
    if options.kit:
        inside = path.resolve().is_relative_to(Path(options.kit).resolve().parent)
        fields = to_stick_fields(result)
        note = Name(str(fields["benched"])) if fields.get("benched") else None
        stick = append_stick(Path(options.kit), fields, path, comment=say(message(CaseFiles.benched, note=note)))
        print(say(message(Terminal.added_to_kit, stick=Name(stick.name), kit=Name(options.kit))))
        if not inside:
            copied = Path(options.kit).parent / str(stick.bench_readings)
            print(say(message(Terminal.readings_copied, path=Name(str(copied)))))
    return 0
