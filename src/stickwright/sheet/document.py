"""The printed sheet: page one for the family, then what the practitioner needs, as a tagged PDF."""

from __future__ import annotations

import dataclasses
import json
import re
from functools import cache
from pathlib import Path
from typing import Any

from stickwright.model.plan import Plan
from stickwright.sheet.family import first_page
from stickwright.sheet.paper import font_folder
from stickwright.sheet.settings import SETTINGS
from stickwright.sheet.technical import technical_pages

__all__ = ["sheet_content", "sheet_pdf"]

MOST_PAGES = 4
_TEMPLATE = str(Path(__file__).with_name("templates") / "sheet.typ")
_DRAWING_MM = (84.0, 72.0, 60.0, 54.0, 48.0, 42.0)


def sheet_content(plan: Plan, level: int = 0, drawing_height_mm: float = _DRAWING_MM[0]) -> dict[str, Any]:
    """All that is printed, as the template reads it.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    level : int, default 0
        How close the technical pages are set, a place in `stickwright.sheet.settings.SETTINGS`: 0 is roomy.
    drawing_height_mm : float, default 84
        Paper height of the drawing on page one.

    Returns
    -------
    dict
        JSON-ready texts, tables and figures.
    """
    date = re.fullmatch(r"(\d{4})-(\d{2})-(\d{2})", plan.made_on)
    return {
        "first_page_whole": True,
        "date": [int(part) for part in date.groups()] if date else None,
        "footer": f"stickwright {plan.version}, {plan.made_on}".rstrip(", "),
        "family": first_page(plan, drawing_height_mm),
        "technical": technical_pages(plan),
    } | _setting(level)


def sheet_pdf(plan: Plan) -> bytes:
    """The sheet as PDF, written as PDF/UA-1 [iso-14289-1] with embedded type; the same bytes for the same plan.

    Page one keeps its large type and gives up drawing size first; the other pages give up room, then small
    print, then what the SVG and JSON files hold as well.

    Parameters
    ----------
    plan : Plan
        A finished plan; its `made_on` is the document's date.

    Returns
    -------
    bytes
        A4, at most four pages unless the closest setting still needs more.
    """
    content = sheet_content(plan)
    for height_mm in _DRAWING_MM:
        content |= {"family": first_page(plan, height_mm), "first_page_whole": True}
        content["first_page_whole"] = _asked(content, "<first>") <= 1
        if content["first_page_whole"]:
            break
    for level in range(len(SETTINGS)):
        content |= _setting(level)
        if _asked(content, "<pages>") <= MOST_PAGES:
            break
    return _compiled(content)


def _setting(level: int) -> dict[str, Any]:
    """How close it is set, and a sentence on what is not printed so, and where it is."""
    setting = SETTINGS[level]
    left_out = f"Left out here for length: {setting.left_out}; see the SVG and JSON files of this plan."
    return {"setting": dataclasses.asdict(setting), "left_out": left_out if setting.left_out else ""}


@cache
def _fonts() -> Any:
    """The type of the sheet, read once: this machine's own fonts never matter."""
    import typst

    return typst.Fonts(include_system_fonts=False, font_paths=[font_folder()])


def _settings(content: dict[str, Any]) -> dict[str, Any]:
    """What every run of the typesetter is given."""
    data = json.dumps(content, ensure_ascii=False, allow_nan=False)
    return {"sys_inputs": {"data": data}, "font_paths": _fonts(), "ignore_system_fonts": True}


def _asked(content: dict[str, Any], label: str) -> int:
    """A page number that the template notes down under `label`."""
    import typst

    return int(typst.query(_TEMPLATE, label, field="value", one=True, **_settings(content)))


def _compiled(content: dict[str, Any]) -> bytes:
    import typst

    return bytes(typst.compile(_TEMPLATE, format="pdf", pdf_standards=["ua-1"], **_settings(content)))
