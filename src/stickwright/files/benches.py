"""Bench readings of a stick (CSV), and a stick added to the kit from them."""

from __future__ import annotations

import math
import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray
from pydantic import ValidationError

from stickwright import units
from stickwright.codes.case_files import CaseFiles
from stickwright.codes.expected import Expected
from stickwright.codes.found import Found
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.remedies import Remedies
from stickwright.codes.table_faults import TableFaults
from stickwright.errors import BadInput, Problem
from stickwright.files.fields import fields_of
from stickwright.files.held import FilePlace
from stickwright.files.nouns_text import table_text
from stickwright.files.plain_text import read_text, shortened
from stickwright.files.tables import Cell, TypedTable, header_row, known_header, read_table, told_briefly, two_columns
from stickwright.files.toml_lines import parse_toml
from stickwright.files.validation_errors import validated
from stickwright.files.writing import make_folder, write_whole
from stickwright.model.kit import Kit, Stick
from stickwright.model.measured import Measured

__all__ = ["BenchReadings", "append_stick", "read_bench", "stick_in_kit"]

HEADER = "force_n,travel_mm,way"
_STEMS = {"force": "force", "angle": "angle", "travel": "length", "direction": "angle", "height": "length"}
_POSITIONS = ("angle", "travel")
_WAYS = {"out": True, "back": False}
_RANGES = {  # SI; typing limits, wider than any stick
    "force": (0.0, 100.0), "angle": (-1.6, 1.6), "travel": (-0.3, 0.3), "output": (0.0, 1.0),
    "direction": (-6.2833, 6.2833), "height": (0.002, 0.5),
}  # fmt: skip


@dataclass(frozen=True, eq=False)
class BenchReadings:
    """Readings of one stick on the bench, one row each, in SI.

    Parameters
    ----------
    force_n : array, shape (n,)
        Force at the contact point.
    angle_rad, travel_m : array, shape (n,), or None
        How far the stick was; at most one of the two was read.
    output_share : array, shape (n,), or None
        Output read at the same time; stands for the position when neither angle nor travel was read. NaN where it
        was not read beside one of them.
    outward : array of bool, shape (n,), or None
        True pushing out, False letting back; None when there is no `way` column.
    direction_rad : array, shape (n,), or None
        Direction of each reading.
    height_m : array, shape (n,), or None
        Height of the gauge above the pivot.
    """

    force_n: NDArray[np.float64]
    angle_rad: NDArray[np.float64] | None = None
    travel_m: NDArray[np.float64] | None = None
    output_share: NDArray[np.float64] | None = None
    outward: NDArray[np.bool_] | None = None
    direction_rad: NDArray[np.float64] | None = None
    height_m: NDArray[np.float64] | None = None


def read_bench(path: FilePlace, shown: str | None = None) -> BenchReadings:
    """Read bench readings of one stick.

    Columns: ``force_...`` and how far the stick was, ``angle_...`` or ``travel_...``; ``output_share`` beside it
    tells where the output is full, or alone stands for it; if wanted ``way`` (out or back), ``direction_...`` and
    ``height_...``. Units by the ending of the header.

    Parameters
    ----------
    path : FilePlace
        CSV file.
    shown : str, optional
        Its name in sentences; the file's own name otherwise.

    Raises
    ------
    BadInput
        Not readable, wrong headers, bad or empty cells (row as in a spreadsheet).
    """
    shown = shown or path.name
    table = read_table(path, shown, "bench", HEADER, known_header(_STEMS, ("output_share", "way")))
    by_stem = _by_stem(table)
    problems: list[Problem] = []
    numbers: dict[str, list[float]] = {stem: [] for stem in by_stem if stem != "way"}
    beside = any(stem in by_stem for stem in _POSITIONS)  # the output need not be read at every place then
    ways: list[bool] = []
    for number, cells in table.rows:
        for stem in numbers:
            cell = table.number(number, cells, by_stem[stem], problems)
            if cell is not None:
                numbers[stem].append(_checked(cell, stem, table, problems))
            elif stem == "output" and beside and not cells[table.columns.index(by_stem[stem])]:
                numbers[stem].append(math.nan)
            elif not cells[table.columns.index(by_stem[stem])]:
                where = table.where(number, by_stem[stem])
                problems.append(_empty(where, message(Expected.number, unit=None)))
        if "way" in by_stem:
            text = cells[table.columns.index("way")].lower()
            if text in _WAYS:
                ways.append(_WAYS[text])
            else:
                found = f'"{shortened(text)}"' if text else message(Found.empty_cell)
                problems.append(Problem(table.where(number, "way"), found, message(TableFaults.way)))
    if problems:
        raise BadInput(told_briefly(problems, shown))
    arrays = {stem: np.array(values, dtype=np.float64) for stem, values in numbers.items()}
    return BenchReadings(
        arrays["force"],
        angle_rad=arrays.get("angle"),
        travel_m=arrays.get("travel"),
        output_share=arrays.get("output"),
        outward=np.array(ways, dtype=np.bool_) if "way" in by_stem else None,
        direction_rad=arrays.get("direction"),
        height_m=arrays.get("height"),
    )


def _empty(where: tuple[Text, ...], wanted: Message) -> Problem:
    return Problem(where, message(Found.empty_cell), wanted, message(Remedies.fill_or_delete_row))


def _by_stem(table: TypedTable) -> dict[str, str]:
    """Stem -> header; BadInput when a needed one is missing or given twice."""
    where = header_row(table.name)
    by_stem: dict[str, str] = {}
    problems = []
    for column in table.columns:
        stem = "output" if column == "output_share" else (units.split_key(column) or (column,))[0]
        if stem in by_stem:
            problems.append(two_columns(table.name, by_stem[stem], column, stem))
        by_stem.setdefault(stem, column)
    if "force" not in by_stem:
        found, wanted = (
            message(TableFaults.no_column, stem=Name("force")),
            message(TableFaults.headers_such_as, example=Name(HEADER)),
        )
        add = message(Remedies.add, names=(Name("force_n"), Name("force_gf")))
        problems.append(Problem(where, found, wanted, add))
    given = [by_stem[stem] for stem in _POSITIONS if stem in by_stem]
    if len(given) > 1:
        found = message(Found.both, first=Name(given[0]), second=Name(given[1]))
        problems.append(Problem(where, found, message(Expected.one_of_two), message(Remedies.delete_unmeasured)))
    elif not given and "output" not in by_stem:
        found, wanted = message(TableFaults.no_position), message(TableFaults.position)
        problems.append(Problem(where, found, wanted, message(TableFaults.add_position)))
    if problems:
        raise BadInput(problems)
    return by_stem


def _checked(cell: Cell, stem: str, table: TypedTable, problems: list[Problem]) -> float:
    low, high = _RANGES[stem]
    factor = 1.0 if stem == "output" else units.to_si(1.0, units.ending_of(cell.column))
    value = cell.value if stem == "output" else units.to_si(cell.value, units.ending_of(cell.column))
    if not low <= value <= high:
        quantity = units.quantity_of(cell.column)
        if stem == "output" or quantity is None:
            wanted, remedy = message(Expected.share, low_share=low, high_share=high), message(Remedies.share)
        else:
            unit = Name(quantity.unit(units.ending_of(cell.column)).label)
            wanted = message(
                Expected.range, low_in_unit=low / factor, high_in_unit=high / factor, unit=unit, unsigned=False
            )
            back = stem == "force" and value < 0
            remedy = message(TableFaults.letting_back) if back else message(Remedies.check_unit)
        problems.append(Problem(table.where(cell.row, cell.column), cell.text, wanted, remedy))
    return value


def append_stick(
    kit_path: Path, stick_fields: Mapping[str, Any], readings_path: Path | None = None, *, comment: str = ""
) -> Stick:
    """Add a stick to the end of a kit file; nothing that stands there is touched.

    Parameters
    ----------
    kit_path : Path
        The ``kit.toml`` of a case folder.
    stick_fields : mapping
        Fields of a stick, in SI or in any unit by the key's ending.
    readings_path : Path, optional
        Bench readings the figures come from; copied into the folder `bench` of the case when they lie outside it.
    comment : str
        One line above the stick, for whoever reads the file.

    Returns
    -------
    Stick
        As it was read back from the new text before that was put in place; numbers to twelve digits.

    Raises
    ------
    BadInput
        No kit file, a kit that cannot be read, a name that is there already, figures that are
        refused, other readings of that name in the case. The files are then unchanged.
    """
    kit_path = Path(kit_path)
    shown = kit_path.name
    text = read_text(kit_path, shown, "kit")
    _, problems = validated(Kit, parse_toml(text, shown))
    if problems:
        raise BadInput(problems)
    before = Kit.model_validate(tomllib.loads(text))
    stick = _new_stick(dict(stick_fields), readings_path, kit_path.parent)
    if any(known.name.casefold() == stick.name.casefold() for known in before.stick):
        found = message(CaseFiles.stick_there, name=Name(stick.name))
        raise BadInput(Problem((shown,), found, message(CaseFiles.new_name), message(Remedies.name_or_edit)))
    if "stick" not in _tables_of_arrays(text):
        found, wanted = message(CaseFiles.sticks_in_list), message(CaseFiles.table_each)
        raise BadInput(Problem((shown,), found, wanted, message(CaseFiles.rewrite)))
    whole = _with_stick(text, before, stick, comment)
    start = b"\xef\xbb\xbf" if kit_path.read_bytes().startswith(b"\xef\xbb\xbf") else b""
    if readings_path is not None:
        name, data = _place_in_case(readings_path, kit_path.parent)
        if data is not None:
            make_folder((kit_path.parent / name).parent)
            write_whole(kit_path.parent / name, data)
    write_whole(kit_path, start + whole.encode("utf-8"))
    return Kit.model_validate(tomllib.loads(whole)).stick[-1]


def stick_in_kit(kit_path: Path, name: str) -> Stick | None:
    """The stick of that name as it stands in a kit file; None when there is none, or the kit cannot be read.

    Parameters
    ----------
    kit_path : Path
    name : str
        In small letters or capitals.
    """
    kit_path = Path(kit_path)
    if not kit_path.is_file():
        return None
    try:
        kit = Kit.model_validate(tomllib.loads(read_text(kit_path, kit_path.name, "kit")))
    except (BadInput, tomllib.TOMLDecodeError, ValidationError):
        return None  # `append_stick` says what is wrong with it
    return next((stick for stick in kit.stick if stick.name.casefold() == name.casefold()), None)


def _with_stick(text: str, before: Kit, stick: Stick, comment: str) -> str:
    """The kit's text with the stick at its end, read back before it may replace the old one."""
    end = "\r\n" if "\r\n" in text else "\n"
    gap = "" if text.endswith("\n") else end
    above = [f"# {comment}"] if comment.isprintable() and comment else []
    for exact in (False, True):  # first as people write it; bit for bit where twelve digits would leave a range
        table = table_text(stick, "[[stick]]", exact=exact)
        added = ["", *above, *table]
        whole = text + gap + end.join(added) + end
        try:
            after = Kit.model_validate(tomllib.loads(whole))
        except ValidationError:
            continue
        if after.stick[:-1] == before.stick and _are_close(after.stick[-1], stick):
            return whole
    raise RuntimeError(f"{stick.name}: unreadable")  # a defect; nothing was written


def _are_close(one: Measured, other: Measured) -> bool:
    """Equal in words, and in numbers to twelve digits."""
    return all(
        _same(shape.kind, mine, yours)
        for name, shape in fields_of(type(one)).items()
        for mine, yours in [(getattr(one, name), getattr(other, name))]
        if mine is not None or yours is not None
    )


def _same(kind: str, mine: Any, yours: Any) -> bool:
    if kind == "number" and mine is not None:
        return bool(np.allclose(mine, yours, rtol=1e-11, atol=0.0))
    if kind == "table" and isinstance(mine, tuple):
        return len(mine) == len(yours) and all(_are_close(*pair) for pair in zip(mine, yours, strict=True))
    return bool(mine == yours)


def _tables_of_arrays(text: str) -> set[str]:
    return {match.group(1) for match in re.finditer(r"(?m)^\s*\[\[\s*([A-Za-z_]+)\s*\]\]", text)}


def _place_in_case(readings_path: Path, folder: Path) -> tuple[str, bytes | None]:
    """Where readings lie in a case folder, and what is to be copied there when they lie outside it."""
    given = Path(readings_path).resolve()
    if given.is_relative_to(folder.resolve()):
        return given.relative_to(folder.resolve()).as_posix(), None
    name, data = f"bench/{given.name}", given.read_bytes()
    there = folder / name
    if there.exists() and there.read_bytes() != data:
        found = message(CaseFiles.readings_there, file=Name(str(there)))
        wanted = message(CaseFiles.free_name)
        raise BadInput(Problem((str(readings_path),), found, wanted, message(Remedies.rename_file)))
    return name, data


def _new_stick(fields: dict[str, Any], readings_path: Path | None, folder: Path) -> Stick:
    if readings_path is not None:
        fields["bench_readings"] = _place_in_case(readings_path, folder)[0]
    # Through the same door as a kit file, so that a refusal has the same words.
    lines = parse_toml("", "kit.toml")
    stick, problems = validated(Stick, type(lines)(lines.name, fields, lines.lines))
    if stick is None:
        raise BadInput(
            Problem(
                (message(CaseFiles.new_stick), *problem.where[2:]),  # without file and line, which there are not
                problem.found,
                problem.expected,
                problem.remedy,
            )
            for problem in problems
        )
    return stick
