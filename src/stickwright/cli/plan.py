"""``stickwright plan``: choose, explain and tune, and write the sheet."""

from __future__ import annotations

import argparse

from stickwright.cli.telling import progress
from stickwright.cli.wishes import wish_options, wishes

TYPE_CHECKING = False  # spelt out: importing typing would cost the help text a third of its time
if TYPE_CHECKING:
    from collections.abc import Sequence
    from pathlib import Path

    from stickwright.model.recorded import Finding

__all__ = ["options", "run"]


def options(command: argparse.ArgumentParser) -> None:
    """What may be typed after the command.

    Parameters
    ----------
    command : argparse.ArgumentParser
    """
    command.add_argument("case", metavar="CASE", help="case folder")
    command.add_argument(
        "--pdf", metavar="OUT.pdf", help="where to write the sheet (CASE/sheet.pdf unless another output is asked for)"
    )
    command.add_argument("--json", metavar="OUT.json", help="everything, for other programs")
    command.add_argument("--svg-dir", metavar="FOLDER", help="each figure as SVG")
    command.add_argument(
        "--dxf", metavar="FOLDER", help="each mount for a drawing program, in millimetre (needs ezdxf)"
    )
    command.add_argument(
        "--scene", metavar="OUT.html", help="the mounts as one page that can be turned, without network"
    )
    command.add_argument(
        "--draws", type=int, default=500, metavar="N", help="draws behind every interval (default 500)"
    )
    command.add_argument("--seed", type=int, metavar="N", help="seed of the draws, to repeat a plan exactly")
    command.add_argument("--date", metavar="YYYY-MM-DD", help="date to print (today)")
    wish_options(command)


def run(options: argparse.Namespace) -> int:
    """Do it; 0 done, 2 something to put right.

    Parameters
    ----------
    options : argparse.Namespace
    """
    from datetime import date
    from pathlib import Path

    from stickwright.records.folder import case_and_queries
    from stickwright.records.writing import write_whole

    tell, close = progress()
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
            wishes=wishes(options),
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
