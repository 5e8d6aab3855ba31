"""Readings entry: one site at a time, direction by direction, in the unit of the gauge at hand."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import partial
from typing import Any, NamedTuple

import numpy as np
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from stickwright import units
from stickwright.catalogue import say
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.problems import Problems
from stickwright.codes.readings_page import AlsoTaken, ReadingsPage
from stickwright.errors import BadInput, Problem
from stickwright.files.editing import Numeral, with_fields, without_table
from stickwright.files.entry import typed_numbers
from stickwright.files.folder import case_and_queries
from stickwright.files.gauge import gauge_of
from stickwright.mechanics.ability import ENOUGH
from stickwright.model.case import Case
from stickwright.model.plan import Capability
from stickwright.planning.site_planning import known_site, with_controllers
from stickwright.report.ability_words import readings_behind
from stickwright.report.figures_ability import capability_polar
from stickwright.report.printed import plain
from stickwright.report.printed import shown as printed
from stickwright.report.tables import capability_polar as tables_of_figure
from stickwright.report.tables import day_note
from stickwright.store.cases import case_files, forces_up_to
from stickwright.store.documents import documents, save_document, undo_document
from stickwright.web.issues import noticed_about
from stickwright.web.noun_views import plain_tables
from stickwright.web.readings_rose import Petal, rose
from stickwright.web.render import done, form, number_in, page, told_beside
from stickwright.web.request_context import At, at_visit

__all__ = ["ROUTES", "DirectionRow", "ability_here", "readings_page", "rows_of", "taken_over", "with_readings"]

FILE = "player.toml"
EIGHT_DEG = (90, 45, 0, 315, 270, 225, 180, 135)
"""Clockwise from straight ahead, as one goes round a clock."""
SAME_DEG = 1.0
DRAWS = 300


class AbleHere(NamedTuple):
    """A site that is still being measured, with what is known of it."""

    name: str
    capability: Capability


class DirectionRow(NamedTuple):
    """One direction of the form.

    `place` is that of its table in the file, -1 when there is none yet; units are endings.
    """

    degrees: str
    words: str
    place: int
    force: str
    force_unit: str
    reach: str
    reach_unit: str


def rows_of(site: Mapping[str, Any], force_unit: str, reach_unit: str) -> tuple[DirectionRow, ...]:
    """The rows of the form: the eight directions, and any other that was read.

    Parameters
    ----------
    site : mapping
        The site's table as it stands in the file.
    force_unit, reach_unit : str
        Endings for what is not typed yet.
    """
    read = [(place, one, _degrees_of(one)) for place, one in enumerate(_tables(site.get("reading")))]
    rows = []
    for degrees in EIGHT_DEG:
        found = next((one for one in read if one[2] is not None and _same(one[2], degrees)), None)
        if found is not None:
            read.remove(found)
        rows.append(_row(str(degrees), found[0] if found else -1, found[1] if found else {}, force_unit, reach_unit))
    for place, one, other in read:
        rows.append(_row("" if other is None else f"{other:g}", place, one, force_unit, reach_unit))
    return tuple(rows)


def _row(degrees: str, place: int, table: Mapping[str, Any], force_unit: str, reach_unit: str) -> DirectionRow:
    force, reach = _typed(table, "force", force_unit), _typed(table, "reach", reach_unit)
    words = say(_towards(math.radians(float(degrees))) if degrees else message(ReadingsPage.no_direction))
    return DirectionRow(degrees, words, place, *force, *reach)


def _towards(direction_rad: float) -> Message:
    return message(ReadingsPage.towards, direction_rad=direction_rad)


def _typed(table: Mapping[str, Any], stem: str, unit: str) -> tuple[str, str]:
    for key, value in table.items():
        parts = units.split_key(key)
        if parts is not None and parts[0] == stem:
            values = value if isinstance(value, list) else [value]
            return " ".join(str(one) for one in values), parts[1]
    return "", unit


def _degrees_of(table: Mapping[str, Any]) -> float | None:
    for key, value in table.items():
        parts = units.split_key(key)
        if parts is not None and parts[0] == "direction" and isinstance(value, int | float):
            try:
                towards = math.degrees(units.to_si(float(value), parts[1])) % 360
            except OverflowError:  # no such direction; among what was noticed
                return None
            return towards if math.isfinite(towards) else None
    return None


def _same(one: float, other: float) -> bool:
    return abs((one - other + 180) % 360 - 180) < SAME_DEG


def _tables(value: Any) -> list[Mapping[str, Any]]:
    return [one for one in value if isinstance(one, Mapping)] if isinstance(value, list) else []


def with_readings(text: str, place: int, sent: Mapping[str, str], *, name: str) -> str:
    """The player's file with what a readings form holds.

    Parameters
    ----------
    text : str
        As it stands.
    place : int
        Of the site in the file.
    sent : mapping
        ``direction.N``, ``force.N``, ``reach.N``, ``force_unit.N``, ``reach_unit.N``; ``again`` and ``again_unit``.
    name : str
        Of the site, for sentences.

    Raises
    ------
    BadInput
        Every field that cannot be read; `where` ends in the field's name.
    """
    problems: list[Problem] = []
    rows: list[tuple[str, dict[str, Any]]] = []
    numbers = sorted({int(key[10:]) for key in sent if key.startswith("direction.") and key[10:].isdigit()})
    for number in numbers[:60]:
        fields: dict[str, Any] = {}
        for stem in ("force", "reach"):
            values = _numbers(sent, f"{stem}.{number}", name, problems)
            unit = _unit(sent.get(f"{stem}_unit.{number}", ""), stem)
            for key in units.units_of(f"{stem}_{'n' if stem == 'force' else 'm'}"):
                fields[key] = None
            if values:
                fields[f"{stem}_{unit}"] = values
        direction = sent[f"direction.{number}"].strip()
        if any(value for value in fields.values()):
            angle = _numbers({"x": direction}, "x", name, problems, shown=f"direction.{number}")
            if len(angle) == 1:
                rows.append((direction, {"direction_rad": None, "direction_deg": angle[0], **fields}))
            elif not angle:
                problems.append(Problem((name, f"direction.{number}"), "", "", message(ReadingsPage.direction_missing)))
        else:
            rows.append((direction, {}))
    again = _numbers(sent, "again", name, problems)
    if problems:
        raise BadInput(problems)
    for direction, fields in rows:
        text = _with_row(text, place, direction, fields)
    keys: dict[str, Any] = dict.fromkeys(units.units_of("again_force_n"))
    if again:
        keys[f"again_force_{_unit(sent.get('again_unit', ''), 'force')}"] = again
    return with_fields(text, ("site", place), keys, name=FILE)


def _with_row(text: str, place: int, direction: str, fields: dict[str, Any]) -> str:
    listed = _tables(_site(plain_tables(text.encode(), FILE), place).get("reading"))
    try:
        degrees: float | None = float(direction) % 360
    except ValueError:
        degrees = None
    degrees = degrees if degrees is not None and math.isfinite(degrees) else None
    found = next(
        (at for at, one in enumerate(listed)
         if degrees is not None and (other := _degrees_of(one)) is not None and _same(other, degrees)), None
    )  # fmt: skip
    if fields:
        return with_fields(text, ("site", place, "reading", len(listed) if found is None else found), fields, name=FILE)
    return text if found is None else without_table(text, ("site", place, "reading", found), name=FILE)


def _numbers(
    sent: Mapping[str, str], key: str, name: str, problems: list[Problem], *, shown: str = ""
) -> list[Numeral]:
    try:
        return list(typed_numbers(sent.get(key, "")))
    except BadInput as refused:
        problems.extend(refused.inside((name, shown or key)).problems)
        return []


def _unit(text: str, stem: str) -> str:
    quantity = units.QUANTITIES["force" if stem == "force" else "length"]
    return text if text in {unit.ending for unit in quantity.units} else quantity.shown


def readings_page(
    here: At, asked: str = "", *, typed: Mapping[str, str] | None = None, refused: BadInput | None = None
) -> dict[str, Any]:
    """What the readings page of one site shows.

    Parameters
    ----------
    here : At
    asked : str
        Place of the site; the first when ''.
    typed : mapping, optional
        What was sent and refused.
    refused : BadInput, optional
        Why.
    """
    document = documents(here.store, here.visit_id).get(FILE)
    tables = plain_tables(document.says, FILE) if document else {}
    sites = _tables(tables.get("site"))
    place = int(asked) if asked.isascii() and asked.isdigit() and int(asked) < len(sites) else 0
    common = {
        "title": message(ReadingsPage.title),
        "sites": tuple((str(number), _called(one, number)) for number, one in enumerate(sites)),
        "site_here": str(place),
        "noticed": noticed_about(here, FILE),
        "writes": here.writes,
        "based_on": document.number if document else 0,
    }
    if not sites:
        return common | {"site": None}
    site = sites[place]
    force_unit, reach_unit = _units(here, site)
    rows = rows_of(site, force_unit, reach_unit)
    if typed is not None:
        rows = tuple(_retyped(row, number, typed) for number, row in enumerate(rows))
    told = {say(problem.field): told_beside(problem) for problem in refused.problems} if refused else {}
    ability = ability_here(here, place)
    petals = [Petal(row.degrees, row.words, f"force.{number}", bool(row.force), bool(row.reach))
              for number, row in enumerate(rows) if row.degrees]  # fmt: skip
    return common | {
        "site": str(site.get("name", "")),
        "rows": rows,
        "told": told,
        "units": {stem: _choices(stem) for stem in ("force", "reach")},
        "unit": {"force": force_unit, "reach": reach_unit},
        "again": (typed or {}).get("again", _typed(site, "again_force", force_unit)[0]),
        "again_unit": _typed(site, "again_force", force_unit)[1],
        "rose": rose(petals),
        "from_file": _from_file(here, site),
        "ability": None if ability is None else ability_rows(ability),
        "also": [(message(ReadingsPage.also, what=what), here.url(f"sites/edit/site/{place}/{key}"), _count(site.get(what)))
                 for key, what in ALSO],
    }  # fmt: skip


ALSO: tuple[tuple[str, AlsoTaken], ...] = (
    ("rest/new", "rest"), ("hold/new", "hold"), ("press", "press"), ("spasm", "spasm"),
    ("along/new", "along"), ("on_stick/new", "on_stick"),
)  # fmt: skip


def _called(site: Mapping[str, Any], number: int) -> Text:
    return str(site["name"]) if "name" in site else message(ReadingsPage.site_number, number=number + 1)


def _count(value: Any) -> Message:
    if isinstance(value, Mapping):
        return message(ReadingsPage.entered)
    return message(ReadingsPage.entered_count, count=len(_tables(value)))


def _units(here: At, site: Mapping[str, Any]) -> tuple[str, str]:
    """Units of the first reading; of the preferences where there is none."""
    force, reach = here.desk.preferences.force, "mm"
    for one in _tables(site.get("reading")):
        force, reach = _typed(one, "force", force)[1], _typed(one, "reach", reach)[1]
    return force, reach


def _choices(stem: str) -> tuple[tuple[str, str], ...]:
    quantity = units.QUANTITIES["force" if stem == "force" else "length"]
    return tuple((unit.ending, unit.label) for unit in quantity.units)


def _retyped(row: DirectionRow, number: int, typed: Mapping[str, str]) -> DirectionRow:
    return row._replace(
        force=typed.get(f"force.{number}", row.force),
        reach=typed.get(f"reach.{number}", row.reach),
        force_unit=typed.get(f"force_unit.{number}", row.force_unit),
        reach_unit=typed.get(f"reach_unit.{number}", row.reach_unit),
    )


def _from_file(here: At, site: Mapping[str, Any]) -> tuple[str, tuple[tuple[str, str, str], ...]] | None:
    """Readings that lie in a file of their own: they count too."""
    name = site.get("gauge_readings")
    found = documents(here.store, here.visit_id).get(name) if isinstance(name, str) else None
    if not isinstance(name, str) or found is None:
        return None
    try:
        gauge = gauge_of(found.body.decode("utf-8"), name)
    except (BadInput, UnicodeDecodeError):  # told among what was noticed, with row and column
        return name, ()
    return name, tuple(
        (
            say(_towards(one.direction_rad)),
            " ".join(plain(force, "n") for force in one.force_n),
            " ".join(plain(reach, "mm") for reach in one.reach_m),
        )
        for one in gauge.reading
    )


def ability_here(here: At, place: int) -> AbleHere | None:
    """What the readings so far tell of a site; None while they tell nothing, or the files cannot be read yet.

    Parameters
    ----------
    here : At
    place : int
        Of the site.
    """
    try:
        case: Case = case_and_queries(case_files(here.store, here.visit_id))[0]
        if place >= len(case.player.site):
            return None
        site = case.player.site[place]
        quiet = replace(
            case, kit=with_controllers(case.kit), recordings=(), forces_read=forces_up_to(here.store, here.visit_id)
        )
        known = known_site(quiet, site, np.random.default_rng([20260101, place]), DRAWS, [])
    except BadInput:  # the page itself says what is wrong, among what was noticed
        return None
    return None if known is None else AbleHere(site.name, known.ability.report)


def ability_rows(site: AbleHere) -> dict[str, Any]:
    """What the player can do in each direction, in words and figures, and whether that is known well enough."""
    able, table = site.capability, tables_of_figure(site)
    rows = tuple(
        (
            _towards(one.direction_rad),
            printed(one.force_n, "n"),
            printed(one.reach_m, "mm"),
            message(ReadingsPage.enough, state=one.status),
            message(ReadingsPage.taken, force=len(one.measured_force_n), reach=len(one.measured_reach_m)),
        )
        for one in able.directions
    )
    return {
        "rows": rows,
        "svg": capability_polar(site),
        "alt": table.alt,
        "sentence": message(Problems.sentences, parts=(*_summary(able), day_note(able))),
        "read": readings_behind(able),
        "findings": tuple(finding.text for finding in able.findings),
    }


def _summary(able: Capability) -> Iterator[Message]:
    """The weakest direction, where more would help most, and what is estimated from other directions."""
    yield message(ReadingsPage.weakest, direction_rad=able.weakest_rad)
    short = tuple(one.direction_rad for one in able.directions if one.status in ("not enough", "nearly"))
    if short:
        yield message(ReadingsPage.more_at, directions_rad=short[:3])
    else:
        yield message(ReadingsPage.known_within, share_share=ENOUGH)
    unread = tuple(one.direction_rad for one in able.directions if one.status == "not measured")
    if unread:
        yield message(ReadingsPage.unread, directions_rad=unread)
    others = tuple(one.direction_rad for one in able.directions if not one.measured_reach_m)
    if len(others) == len(able.directions):
        yield message(ReadingsPage.no_range)
    elif others:
        yield message(ReadingsPage.unread_range, directions_rad=others)


def _site(tables: Mapping[str, Any], place: int) -> Mapping[str, Any]:
    sites = _tables(tables.get("site"))
    if not 0 <= place < len(sites):
        raise HTTPException(404)
    return sites[place]


def readings(request: Request) -> Response:
    """The readings of one site."""
    here = at_visit(request)
    return page(request, "readings.html", readings_page(here, request.query_params.get("site", "")), here=here)


def save_readings(request: Request) -> Response:
    """Readings written; what cannot be read stays in the form."""
    here, sent = at_visit(request), form(request)
    typed = {key: str(value) for key, value in sent.items()}
    asked = typed.get("site", "")
    document = documents(here.store, here.visit_id).get(FILE)
    if document is None or not (asked.isascii() and asked.isdigit() and len(asked) < 4):
        raise HTTPException(404)
    place = int(asked)
    name = str(_site(plain_tables(document.says, FILE), place).get("name", "site"))
    number = typed.get("based_on", "")
    try:
        text = with_readings(document.body.decode("utf-8"), place, typed, name=name)
        save_document(
            here.store, here.visit_id, FILE, text.encode("utf-8"), who=here.who, why="readings",
            based_on=number_in(number),
        )  # fmt: skip
    except BadInput as refused:
        fields: dict[Text, str] = {problem.field: say(problem.field) for problem in refused.problems}
        data = readings_page(here, asked, typed=typed, refused=refused)
        return page(request, "readings.html", data, here=here, refused=refused, fields=fields)
    return done(
        request, here.url(f"readings?site={place}"), message(ReadingsPage.saved, site=Name(name)),
        undo=partial(undo_document, here.store, here.visit_id, FILE, who=here.who),
    )  # fmt: skip


def take_over(request: Request) -> Response:
    """Readings of a file become readings of the form: typed on, corrected, each by itself."""
    here, sent = at_visit(request), form(request)
    asked = str(sent.get("site", ""))
    files = documents(here.store, here.visit_id)
    if FILE not in files or not (asked.isascii() and asked.isdigit() and len(asked) < 4):
        raise HTTPException(404)
    site = _site(plain_tables(files[FILE].says, FILE), int(asked))
    name = str(site.get("gauge_readings", ""))
    if name not in files:
        raise HTTPException(404)
    try:
        gauge = files[name].body.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise BadInput(Problem(name, "", "", message(ReadingsPage.not_utf8))) from None
    text = taken_over(files[FILE].body.decode("utf-8"), int(asked), gauge, name)
    save_document(here.store, here.visit_id, FILE, text.encode("utf-8"), who=here.who, why="readings-copied")
    return done(
        request, here.url(f"readings?site={asked}"), message(ReadingsPage.copied, file=Name(name)),
        undo=partial(undo_document, here.store, here.visit_id, FILE, who=here.who),
    )  # fmt: skip


def taken_over(text: str, place: int, gauge: str, name: str) -> str:
    """The player's file with the readings of a gauge file in it, and no longer naming that file.

    Parameters
    ----------
    text : str
        player.toml.
    place : int
        Of the site.
    gauge : str
        CSV.
    name : str
        Of the CSV file.

    Raises
    ------
    BadInput
        The gauge file cannot be read.
    """
    read = gauge_of(gauge, name)
    for one in read.reading:
        degrees = Numeral(f"{math.degrees(one.direction_rad) % 360:.6g}")
        fields: dict[str, Any] = {"direction_rad": None, "direction_deg": degrees}
        for stem, values, quantity in (("force", one.force_n, "force"), ("reach", one.reach_m, "length")):
            column = next((typed.key for typed in read.lists if typed.key.startswith(f"{stem}_")), "")
            unit = column.removeprefix(f"{stem}_") or units.QUANTITIES[quantity].shown
            factor = units.QUANTITIES[quantity].unit(unit).factor
            if values:
                fields[f"{stem}_{unit}"] = [Numeral(f"{value / factor:.10g}") for value in values]
        text = _with_row(text, place, str(degrees), fields)
    again: dict[str, Any] = {"gauge_readings": None}
    if read.again_force_n:
        again["again_force_n"] = [Numeral(f"{force:.10g}") for force in read.again_force_n]
    return with_fields(text, ("site", place), again, name=FILE)


ROUTES = (
    Route("/visits/{id}/readings/take", take_over, methods=["POST"]),
    Route("/visits/{id}/readings", readings),
    Route("/visits/{id}/readings", save_readings, methods=["POST"]),
)
