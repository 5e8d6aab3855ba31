"""Pictures of a kit: all its sticks beside each other, and one stick's readings from the bench."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, NamedTuple

from stickwright import units
from stickwright.codes.message import Text, message
from stickwright.codes.tables_page import TablesPage
from stickwright.errors import BadInput
from stickwright.files.benches import read_bench
from stickwright.files.held import HeldPlace
from stickwright.files.toml_lines import parse_toml
from stickwright.files.validation_errors import validated
from stickwright.mechanics.bench import bench_stick
from stickwright.model.kit import Kit
from stickwright.report.figures_bench import bench
from stickwright.report.figures_kit import kit_forces, kit_forces_alt
from stickwright.report.tables import bench as bench_table

__all__ = ["KitPicture", "kit_picture", "stick_picture"]


class KitPicture(NamedTuple):
    """A drawing with its words and, where there is one, its table."""

    svg: str
    alt: str
    caption: Text = ""
    columns: tuple[str, ...] = ()
    rows: tuple[tuple[str, ...], ...] = ()


def kit_picture(text: str) -> KitPicture | None:
    """All sticks of a kit; None while the file has something to put right.

    Parameters
    ----------
    text : str
        Of kit.toml.
    """
    try:
        kit, _ = validated(Kit, parse_toml(text, "kit.toml"))
    except BadInput:  # its own page lists what is wrong
        return None
    return None if kit is None else KitPicture(kit_forces(kit), kit_forces_alt(kit))


def stick_picture(stick: Mapping[str, Any], files: Mapping[str, bytes]) -> KitPicture | None:
    """Force against travel of one stick, from its readings on the bench; None where there are none.

    Parameters
    ----------
    stick : mapping
        Its table in kit.toml.
    files : mapping
        Files beside kit.toml.
    """
    name = stick.get("bench_readings")
    if not isinstance(name, str) or name not in files:
        return None
    height_m = next(
        (units.to_si(float(value), key.rsplit("_", 1)[1]) for key, value in stick.items()
         if key.startswith("contact_height_") and isinstance(value, int | float)), None
    )  # fmt: skip
    try:
        read = read_bench(HeldPlace(files, name), name)
        height = read.height_m if read.height_m is not None else height_m
        if height is None:
            return KitPicture("", "", message(TablesPage.bench_no_height))
        result = bench_stick(
            read.force_n, name=str(stick.get("name", "")), height_m=height,
            angle_rad=read.angle_rad, travel_m=read.travel_m, output_share=read.output_share,
            direction_rad=read.direction_rad, outward=read.outward,
        )  # fmt: skip
    except BadInput as refused:
        return KitPicture("", "", message(TablesPage.bench_refused, why=str(refused)))
    table = bench_table(result)
    return KitPicture(bench(result), table.alt, table.caption, table.columns, table.rows)
