"""The printed sheet: page one for the family, then what the practitioner needs, as a tagged PDF."""

from __future__ import annotations

import dataclasses
import json
import math
import re
from collections.abc import Iterable, Iterator
from functools import cache
from itertools import chain
from pathlib import Path
from typing import Any, get_args

from stickwright.catalogue import book, speaking
from stickwright.codes.family import Family
from stickwright.codes.layout_pages import LayoutPages
from stickwright.codes.message import Name, message
from stickwright.codes.reports import Reports
from stickwright.codes.sheets import Heading, Keyword, Sheets
from stickwright.model.mounting import SiteMount
from stickwright.model.plan import Plan
from stickwright.report.family import first_page, main_site, trouble
from stickwright.report.mount_page import mount_page, mounted, other_lines, switch_rows, unmounted_lines
from stickwright.report.paper import font_folder
from stickwright.report.settings import SETTINGS
from stickwright.report.technical import technical_pages
from stickwright.report.tell import named, tell
from stickwright.report.what_if import what_if_mark
from stickwright.report.who import who_page
from stickwright.report.why_so import why_so
from stickwright.report.wiring_page import wiring_page

__all__ = ["sheet_content", "sheet_pages", "sheet_pdf"]

_PAGE, _PAGES = "\ue000", "\ue001"
"""Signs of no script: the template puts the page's number and the number of pages in their place."""
MOST_PAGES = 4
MOST_PAGES_SHARED = 8
MOST_PAGES_MOUNTED = 15
_TEMPLATE = str(Path(__file__).with_name("templates") / "sheet.typ")
_FIRST = (
    (104.0, 12.0), (96.0, 12.0), (88.0, 12.0), (80.0, 12.0), (88.0, 11.5), (80.0, 11.5), (88.0, 11.0), (80.0, 11.0), (72.0, 11.0),
    (64.0, 11.0), (56.0, 11.0), (50.0, 11.0), (44.0, 11.0),
)  # fmt: skip
"""Height of the picture and type of page one: the picture gives way first, the type never below 11."""
_BODY = (
    (104.0, 12.0, False), (92.0, 12.0, False), (80.0, 12.0, False), (72.0, 12.0, False), (72.0, 11.5, False), (64.0, 11.5, False),
    (62.0, 11.0, False), (62.0, 11.0, True), (52.0, 11.0, True),
)  # fmt: skip
"""The same for the page of controls, and whether its table leaves the parts' names to the picture."""
_LARGE_PT = 16.0
"""Large type: the family's pages run on as far as they must."""
_MOUNT = ((11.0, 99), (10.0, 99), (9.5, 99), (9.0, 99), (8.5, 99), (8.5, 3), (8.5, 1), (8.0, 1))
"""Type of the words about a mount, and how many of the other ways to mount it are told: its drawing has a page, its words the next."""
_MOUNT_PAGES = 2
_WIRING = ((1.0, 10.0, True), (0.9, 10.0, True), (0.9, 9.0, True), (0.86, 9.0, True), (0.86, 9.0, False))
"""Size of the wiring's drawing, type of its tables, and whether the contacts are told. Where none of these keeps it on
one page, the drawing and the cables have a page, and steps and parts the next."""


def sheet_content(plan: Plan, level: int = 0) -> dict[str, Any]:
    """All that is printed, as the template reads it.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    level : int, default 0
        How close the technical pages are set, a place in `stickwright.report.settings.SETTINGS`: 0 is roomy.

    Returns
    -------
    dict
        JSON-ready texts, tables and figures.
    """
    date = re.fullmatch(r"(\d{4})-(\d{2})-(\d{2})", plan.made_on)
    return {
        "only": "all",
        "date": [int(part) for part in date.groups()] if date else None,
        "mark": what_if_mark(plan.wishes),
        "lang": book().language,
        "right_to_left": book().writer.right_to_left,
        "words": _words(plan),
        "family": _first(plan, _FIRST[0]),
        "who": _who(plan, _BODY[0]),
        "wiring": _wiring(plan, _WIRING[0]),
        "mounts": [mount_page(plan, one) | {"text_pt": _MOUNT[0][0]} for one in mounted(plan)],
        "unmounted": unmounted_lines(plan),
        "switches": switch_rows(plan),
        "why": why_so(plan),
        "technical": technical_pages(plan),
    } | _setting(level)


def _words(plan: Plan) -> dict[str, Any]:
    """Fixed words around the pages, for the template."""
    return {
        "player": tell(Sheets.player, player=Name(plan.player)),
        "made_by": tell(Sheets.made_by, version=Name(plan.version), made_on=named(plan.made_on)),
        "page": tell(Sheets.page, page=Name(_PAGE), pages=Name(_PAGES)),
        "keywords": [tell(Sheets.keyword, word=one) for one in get_args(Keyword)],
        "caution": tell(Sheets.caution),
        "assumed": book().writer.assumed,
        "practitioner": tell(Sheets.practitioner, site=Name(main_site(plan).name)) if plan.sites else "",
        "second": tell(LayoutPages.heading, part="second"),
        "assumptions": tell(Reports.heading, part="assumed"),
        **{part: tell(Sheets.heading, part=part) for part in get_args(Heading)},
    }


def sheet_pdf(plan: Plan, *, large_type: bool = False, language: str = "en") -> bytes:
    """The sheet as PDF, written as PDF/UA-1 [iso-14289-1] with embedded type; the same bytes for the same plan.

    The family's two pages keep 11 point and give up drawing size first; the page on the wiring gives up drawing size, then type;
    of what holds a stick the drawing has a page of its own, and the words on the next give up type; the other pages give up room,
    then small print, then what the SVG and JSON files hold as well.

    Parameters
    ----------
    plan : Plan
        A finished plan; its `made_on` is the document's date.
    large_type : bool, default False
        Whether the family's pages are set in 16 point, on as many pages as that takes.
    language : str, default "en"
        Of the family's pages, one of `stickwright.catalogue.FAMILY_LANGUAGES`; the practitioner's stay English.

    Returns
    -------
    bytes
        A4, at most four pages, eight when all actions are shared out, fifteen when it is said what holds the sticks,
        unless the closest setting still needs more.
    """
    return _compiled(_fitted(plan, large_type, language))


def sheet_pages(plan: Plan, *, large_type: bool = False, language: str = "en") -> tuple[str, ...]:
    """The same pages as pictures, for looking at them where no PDF is shown.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    large_type : bool, default False
        As for `sheet_pdf`.
    language : str, default "en"
        As for `sheet_pdf`.

    Returns
    -------
    tuple of str
        SVG, one for each A4 page.
    """
    import typst

    pages = typst.compile(_TEMPLATE, format="svg", **_settings(_fitted(plan, large_type, language)))
    return tuple(bytes(one).decode("utf-8") for one in (pages if isinstance(pages, list) else [pages]))


def _fitted(plan: Plan, large_type: bool, language: str) -> dict[str, Any]:
    """The content, set as close as it has to be."""
    content = sheet_content(plan)
    with speaking(language):
        content |= _family_pages(plan, content, large_type)
    if content["wiring"] is not None:
        apart = (_wiring(plan, way, apart=True) for way in (_WIRING[-2], _WIRING[0]))
        ways = chain((_wiring(plan, way) for way in _WIRING), apart)
        content |= {"wiring": _on_one_page(content, "wiring", ways)}
    if content["mounts"]:
        pages = [
            _on_one_page(content, "mounts", _mount_ways(one, told), _MOUNT_PAGES)
            for one, told in zip(mounted(plan), content["mounts"], strict=True)
        ]
        content |= {"mounts": [page for one in pages for page in one or ()]}
    if large_type:
        return content | _setting(0)
    most = MOST_PAGES_MOUNTED if plan.mounts else MOST_PAGES if plan.sharing is None else MOST_PAGES_SHARED
    for level in range(len(SETTINGS)):
        content |= _setting(level)
        if _pages_of(content, "all") <= most:
            break
    return content


def _family_pages(plan: Plan, content: dict[str, Any], large_type: bool) -> dict[str, Any]:
    """The family's two pages: each on one, or in large type on as many as it takes."""
    if large_type:
        return {
            "family": _first(plan, (_FIRST[0][0], _LARGE_PT)),
            "who": _who(plan, (_BODY[0][0], _LARGE_PT, False)),
        }
    out = {"family": _on_one_page(content, "family", (_first(plan, way) for way in _FIRST))}
    if plan.sharing is not None:
        out["who"] = _on_one_page(content, "who", (_who(plan, way) for way in _BODY))
    return out


def _first(plan: Plan, way: tuple[float, float]) -> dict[str, Any]:
    height_mm, text_pt = way
    return first_page(plan, height_mm) | _spoken() | {"text_pt": text_pt, "trouble": trouble(plan)}


def _spoken() -> dict[str, Any]:
    """The language of a page, its direction, and that a speaker is to check it."""
    opened = book()
    return {
        "lang": opened.language,
        "right_to_left": opened.writer.right_to_left,
        "translated": opened.writer.translated,
    }


def _who(plan: Plan, way: tuple[float, float, bool]) -> dict[str, Any] | None:
    height_mm, text_pt, short = way
    if plan.sharing is None:
        return None
    page = who_page(plan, height_mm, short)
    words = page["words"] | {"trouble": tell(Family.heading, part="trouble")}
    return page | _spoken() | {"text_pt": text_pt, "trouble": trouble(plan), "words": words}


def _wiring(plan: Plan, way: tuple[float, float, bool], *, apart: bool = False) -> dict[str, Any] | None:
    shrink_share, text_pt, conductors = way
    page = wiring_page(plan, shrink_share, conductors)
    return page | {"text_pt": text_pt, "apart": apart} if page is not None else None


def _mount_ways(mount: SiteMount, page: dict[str, Any]) -> Iterator[list[dict[str, Any]]]:
    """The pages of a mount, its words set closer and closer; the drawing is the same in all."""
    for text_pt, most_others in _MOUNT:
        yield [page | {"text_pt": text_pt, "others": other_lines(mount, most_others)}]


def _on_one_page(content: dict[str, Any], name: str, ways: Iterable[Any], most: int = 1) -> Any:
    """The first way to set a page that keeps it on one page, or on so many; where none does, the last of those that take fewest."""
    best, fewest = None, math.inf
    for page in ways:
        pages = _pages_of(content | {name: page}, name)
        if pages <= fewest:
            best, fewest = page, pages
        if pages <= most:
            break
    return best


def _setting(level: int) -> dict[str, Any]:
    """How close it is set, and a sentence on what is not printed so, and where it is."""
    setting = SETTINGS[level]
    parts = tuple(message(Sheets.part, part=one) for one in setting.left_out)
    told = tell(Sheets.left_out, parts=parts) if parts else ""
    return {"setting": dataclasses.asdict(setting), "left_out": told}


@cache
def _fonts() -> Any:
    """The type of the sheet, read once: this machine's own fonts never matter."""
    import typst

    return typst.Fonts(include_system_fonts=False, font_paths=[font_folder()])


def _settings(content: dict[str, Any]) -> dict[str, Any]:
    """What every run of the typesetter is given."""
    data = json.dumps(content, ensure_ascii=False, allow_nan=False)
    return {"sys_inputs": {"data": data}, "font_paths": _fonts(), "ignore_system_fonts": True}


def _pages_of(content: dict[str, Any], only: str) -> int:
    """How many pages one part of the sheet takes by itself, or all of it."""
    import typst

    told = typst.query(_TEMPLATE, "<pages>", field="value", one=True, **_settings(content | {"only": only}))
    return int(told)


def _compiled(content: dict[str, Any]) -> bytes:
    import typst

    return bytes(typst.compile(_TEMPLATE, format="pdf", pdf_standards=["ua-1"], **_settings(content)))
