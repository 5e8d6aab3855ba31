"""``stickwright plan``: choose, explain and tune, and write the sheet."""

from __future__ import annotations

import argparse

from stickwright.cli.help_texts import help_text
from stickwright.cli.telling import progress
from stickwright.cli.wishes import wish_options, wishes

TYPE_CHECKING = False  # spelt out: importing typing would cost the help text a third of its time
if TYPE_CHECKING:
    from collections.abc import Callable, Mapping
    from pathlib import Path

    from stickwright.codes.message import Text
    from stickwright.errors import BadInput
    from stickwright.model.plan import Plan
    from stickwright.model.wishes import Wishes

__all__ = ["UNMET", "options", "run"]

UNMET = 3
"""Exit code of a plan that could not meet every request."""


def options(command: argparse.ArgumentParser) -> None:
    """What may be typed after the command."""
    command.add_argument("case", metavar="CASE", help=help_text("case"))
    command.add_argument(
        "--pdf",
        metavar="OUT.pdf",
        help=help_text("plan.pdf"),
    )
    command.add_argument("--no-pdf", action="store_true", help=help_text("plan.no-pdf"))
    command.add_argument("--full", action="store_true", help=help_text("plan.full"))
    command.add_argument("--quiet", action="store_true", help=help_text("plan.quiet"))
    command.add_argument("--json", metavar="OUT.json", help=help_text("plan.json"))
    command.add_argument("--svg-dir", metavar="FOLDER", help=help_text("plan.svg-dir"))
    command.add_argument("--dxf", metavar="FOLDER", help=help_text("plan.dxf"))
    command.add_argument("--scene", metavar="OUT.html", help=help_text("plan.scene"))
    command.add_argument("--draws", type=int, default=500, metavar="N", help=help_text("plan.draws"))
    command.add_argument("--seed", type=int, metavar="N", help=help_text("plan.seed"))
    command.add_argument("--date", metavar="YYYY-MM-DD", help=help_text("plan.date"))
    command.add_argument("--language", default="en", choices=("en", "de", "ar"), help=help_text("plan.language"))
    command.add_argument("--large-type", action="store_true", help=help_text("plan.large-type"))
    wish_options(command)


def run(options: argparse.Namespace) -> int:
    """Do it; 0 done, 2 something to put right, 3 done but some requests cannot be met."""
    from datetime import date
    from pathlib import Path

    from stickwright.codes.message import message
    from stickwright.codes.terminal import Terminal
    from stickwright.files.folder import read_case

    if options.full and options.quiet:
        raise _one_of_two("--quiet", "--full")
    asked = wishes(options)
    pdf = _sheet_path(options, asked)
    tell, close = progress()
    try:
        tell(message(Terminal.doing, what="reading_case"), 0.02)
        made_on = options.date or date.today().isoformat()
        case = read_case(Path(options.case), made_on)
        from stickwright.planning.plan import SEED, plan

        result = plan(
            case,
            draws=options.draws,
            seed=SEED if options.seed is None else options.seed,
            wishes=asked,
            progress=lambda what, share: tell(what, 0.05 + 0.75 * share),
        )
        written = _written(options, result, pdf, tell)
    finally:
        close()
    if options.json == "-":
        from stickwright.files.results import plan_json

        print(plan_json(result), end="")
    elif options.quiet:
        for path in written:
            print(path)
    else:
        _told(options, result, written)
    return UNMET if _unmet(result) else 0


def _told(options: argparse.Namespace, result: Plan, written: list[Path]) -> None:
    """One screen, or everything; then where the files are."""
    from stickwright.catalogue import say
    from stickwright.codes.message import Name, message
    from stickwright.codes.plan_report import PlanReport
    from stickwright.codes.terminal import FileKind, Terminal

    if options.full:
        from stickwright.report.words import plan_words

        print(plan_words(result))
    else:
        from stickwright.report.gather import report_of
        from stickwright.report.to_terminal import screen_words

        print(screen_words(report_of(result)))
    for path in written:
        kinds: dict[str, FileKind] = {".pdf": "sheet", ".html": "scene"}
        kind: FileKind = "drawings" if path.is_dir() else kinds.get(path.suffix, "data")
        print(say(message(Terminal.file, kind=kind, path=Name(str(path)))))
    if not options.full:
        print(say(message(PlanReport.everything, case=Name(options.case))))


def _unmet(result: Plan) -> bool:
    """Whether some requests could not be met, in any of the games."""
    sharings = [result.sharing, *(layout.sharing for layout in result.layouts)]
    return any(one is not None and one.clash is not None for one in sharings)


def _one_of_two(option: str, other: str) -> BadInput:
    from stickwright.codes.message import Name, message
    from stickwright.codes.terminal import Terminal
    from stickwright.errors import BadInput, Problem

    return BadInput(Problem(option, "", "", message(Terminal.one_of_two, other=Name(other))))


def _sheet_path(options: argparse.Namespace, asked: Wishes) -> Path | None:
    """Where the sheet goes; None when none is wanted. A what-if leaves the case's own sheet alone."""
    from pathlib import Path

    from stickwright.codes.message import message
    from stickwright.codes.terminal import Terminal
    from stickwright.errors import BadInput, Problem

    if options.no_pdf:
        if options.pdf:
            raise _one_of_two("--no-pdf", "--pdf")
        return None
    own = Path(options.case) / "sheet.pdf"
    if not asked.what_if:
        return Path(options.pdf) if options.pdf else own
    if options.pdf and Path(options.pdf).resolve() == own.resolve():
        raise BadInput(Problem("--pdf", "", "", message(Terminal.own_sheet)))
    return Path(options.pdf) if options.pdf else own.with_name("sheet-what-if.pdf")


def _written(
    options: argparse.Namespace, result: Plan, pdf: Path | None, tell: Callable[[Text, float], None]
) -> list[Path]:
    """Every file that was asked for."""
    from pathlib import Path

    from stickwright.codes.message import message
    from stickwright.codes.terminal import Terminal
    from stickwright.files.writing import write_whole

    written: list[Path] = []

    def into(folder: str, files: Mapping[str, str], ending: str) -> None:
        Path(folder).mkdir(parents=True, exist_ok=True)
        for name, text in files.items():
            write_whole(Path(folder) / f"{name}.{ending}", text)
        written.append(Path(folder))

    if pdf is not None:
        from stickwright.report.document import sheet_pdf

        tell(message(Terminal.doing, what="drawing_sheet"), 0.85)
        write_whole(pdf, sheet_pdf(result, large_type=options.large_type, language=options.language))
        written.append(pdf)
    if options.svg_dir:
        from stickwright.report.figures import all_figures

        tell(message(Terminal.doing, what="drawing_figures"), 0.95)
        into(options.svg_dir, all_figures(result), "svg")
    if options.dxf:
        from stickwright.report.mount_dxf import all_dxf

        into(options.dxf, all_dxf(result), "dxf")
    if options.scene:
        from stickwright.report.mount_scene import scene_html

        write_whole(Path(options.scene), scene_html(result))
        written.append(Path(options.scene))
    if options.json and options.json != "-":
        from stickwright.files.results import plan_json

        write_whole(Path(options.json), plan_json(result))
        written.append(Path(options.json))
    return written
