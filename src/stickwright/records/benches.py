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
from stickwright.codes.file_places import FilePlaces
from stickwright.codes.message import message
from stickwright.errors import BadInput, Problem
from stickwright.model.kit import Kit, Stick
from stickwright.model.measured import Measured
from stickwright.records.fields import fields_of
from stickwright.records.held import Place
from stickwright.records.nouns_text import table_text
from stickwright.records.plain_text import read_text, shortened
from stickwright.records.refusals import validated
from stickwright.records.tables import Cell, Table, known_header, read_table, told_briefly
from stickwright.records.toml_lines import parse_toml
from stickwright.records.writing import make_folder, write_whole

__all__ = ["BenchReadings", "append_stick", "read_bench"]

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


def read_bench(path: Place, shown: str | None = None) -> BenchReadings:
    """Read bench readings of one stick.

    Columns: ``force_...`` and how far the stick was, ``angle_...`` or ``travel_...``; ``output_share`` beside it
    tells where the output is full, or alone stands for it; if wanted ``way`` (out or back), ``direction_...`` and
    ``height_...``. Units by the ending of the header.

    Parameters
    ----------
    path : Place
        CSV file.
    shown : str, optional
        Its name in sentences; the file's own name otherwise.

    Raises
    ------
    BadInput
        Not readable, wrong headers, bad or empty cells (row as in a spreadsheet).
    """
    shown = shown or path.name
    table = read_table(path, shown, "bench readings", HEADER, known_header(_STEMS, ("output_share", "way")))
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
                problems.append(Problem(where, "an empty cell", "a number", "Fill it in, or delete the row."))
        if "way" in by_stem:
            text = cells[table.columns.index("way")].lower()
            if text in _WAYS:
                ways.append(_WAYS[text])
            else:
                found = f'"{shortened(text)}"' if text else "an empty cell"
                problems.append(Problem(table.where(number, "way"), found, "out (pushing out) or back (letting back)"))
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


def _by_stem(table: Table) -> dict[str, str]:
    """Stem -> header; BadInput when a needed one is missing or given twice."""
    where = f"{table.name}, row 1"
    by_stem: dict[str, str] = {}
    problems = []
    for column in table.columns:
        stem = "output" if column == "output_share" else (units.split_key(column) or (column,))[0]
        if stem in by_stem:
            problems.append(
                Problem(where, f"{by_stem[stem]} and {column}", f"one {stem} column", "Delete the one not measured.")
            )
        by_stem.setdefault(stem, column)
    if "force" not in by_stem:
        problems.append(Problem(where, "no force column", f"headers such as {HEADER}", "Add force_n or force_gf."))
    given = [by_stem[stem] for stem in _POSITIONS if stem in by_stem]
    if len(given) > 1:
        problems.append(Problem(where, " and ".join(given), "one of the two", "Keep the one that was read off."))
    elif not given and "output" not in by_stem:
        problems.append(
            Problem(where, "no column that says how far", "angle_deg or travel_mm (or output_share alone)",
                    "Add the one that was read off; output_share may stand beside it.")
        )  # fmt: skip
    if problems:
        raise BadInput(problems)
    return by_stem


def _checked(cell: Cell, stem: str, table: Table, problems: list[Problem]) -> float:
    low, high = _RANGES[stem]
    factor = 1.0 if stem == "output" else units.to_si(1.0, units.ending_of(cell.column))
    value = cell.value if stem == "output" else units.to_si(cell.value, units.ending_of(cell.column))
    if not low <= value <= high:
        quantity = units.quantity_of(cell.column)
        label = quantity.unit(units.ending_of(cell.column)).label if quantity and stem != "output" else "(a share)"
        remedy = "Check the unit in the header."
        if stem == "force" and value < 0:
            remedy = "Left is a direction, not a minus; letting back is way = back."
        elif stem == "output":
            remedy = "A share without sign: 1 is full output, 50 % is 0.5."
        problems.append(
            Problem(table.where(cell.row, cell.column), cell.text, f"{low / factor:.4g} to {high / factor:.4g} {label}",
                    remedy)
        )  # fmt: skip
    return value


def append_stick(kit_path: Path, stick_fields: Mapping[str, Any], readings_path: Path | None = None) -> Stick:
    """Add a stick to the end of a kit file; nothing that stands there is touched.

    Parameters
    ----------
    kit_path : Path
        The ``kit.toml`` of a case folder.
    stick_fields : mapping
        Fields of a stick, in SI or in any unit by the key's ending.
    readings_path : Path, optional
        Bench readings the figures come from; copied into the folder `bench` of the case when they lie outside it.

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
    text = read_text(kit_path, shown, "the kit")
    _, problems = validated(Kit, parse_toml(text, shown))
    if problems:
        raise BadInput(problems)
    before = Kit.model_validate(tomllib.loads(text))
    stick = _new_stick(dict(stick_fields), readings_path, kit_path.parent)
    if any(known.name.casefold() == stick.name.casefold() for known in before.stick):
        raise BadInput(
            Problem(shown, f'a stick "{stick.name}" that is there already', "a name that is not in the kit",
                    "Choose another name, or edit the file.")
        )  # fmt: skip
    if "stick" not in _tables_of_arrays(text):
        raise BadInput(
            Problem(shown, "sticks in one list, stick = [...]", "one [[stick]] table for each stick", "Rewrite it so.")
        )
    whole = _with_stick(text, before, stick)
    start = b"\xef\xbb\xbf" if kit_path.read_bytes().startswith(b"\xef\xbb\xbf") else b""
    if readings_path is not None:
        name, data = _place_in_case(readings_path, kit_path.parent)
        if data is not None:
            make_folder((kit_path.parent / name).parent)
            write_whole(kit_path.parent / name, data)
    write_whole(kit_path, start + whole.encode("utf-8"))
    return Kit.model_validate(tomllib.loads(whole)).stick[-1]


def _with_stick(text: str, before: Kit, stick: Stick) -> str:
    """The kit's text with the stick at its end, read back before it may replace the old one."""
    end = "\r\n" if "\r\n" in text else "\n"
    gap = "" if text.endswith("\n") else end
    benched = f" {stick.benched}" if stick.benched.isprintable() and stick.benched else ""
    for exact in (False, True):  # first as people write it; bit for bit where twelve digits would leave a range
        table = table_text(stick, "[[stick]]", exact=exact)
        added = ["", f"# Benched{benched}: forces at the contact point, pushing out.", *table]
        whole = text + gap + end.join(added) + end
        try:
            after = Kit.model_validate(tomllib.loads(whole))
        except ValidationError:
            continue
        if after.stick[:-1] == before.stick and _are_close(after.stick[-1], stick):
            return whole
    raise RuntimeError("the kit with the new stick does not read back as it was meant; nothing was written")


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
        raise BadInput(
            Problem(str(readings_path), f"other readings in {there} already", "a name that is free in the case",
                    "Rename the file, so that nothing is written over.")
        )  # fmt: skip
    return name, data


def _new_stick(fields: dict[str, Any], readings_path: Path | None, folder: Path) -> Stick:
    if readings_path is not None:
        fields["bench_readings"] = _place_in_case(readings_path, folder)[0]
    # Through the same door as a kit file, so that a refusal has the same words.
    lines = parse_toml("", "the new stick")
    stick, problems = validated(Stick, type(lines)(lines.name, fields, lines.lines))
    if stick is None:
        first = message(FilePlaces.line, number=1)  # of a file that there is not
        raise BadInput(
            Problem(
                tuple(step for step in problem.where if step != first),
                problem.found,
                problem.expected,
                problem.remedy,
            )
            for problem in problems
        )
    return stick
