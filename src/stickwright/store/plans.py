"""Plans with the very inputs that they came from, so that each can be worked out again years later.

What is kept of a plan: which versions of which documents, which recordings and how many of their samples, what of the kit was
with other players, draws, seed, wishes and date, the program, and the plan itself as JSON.
"""

from __future__ import annotations

import dataclasses
import functools
import hashlib
import json
import platform
import zlib
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from importlib.metadata import version as installed
from pathlib import Path
from typing import Any

import sqlalchemy as sa

import stickwright
from stickwright.codes.entries import Entries
from stickwright.codes.kept_plans import KeptPlans
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.player_records import PlayerRecords
from stickwright.codes.problems import Problems
from stickwright.codes.records_file import RecordsFile
from stickwright.codes.trail import Trail
from stickwright.errors import BadInput, Problem
from stickwright.files.folder import case_and_queries
from stickwright.files.held import HeldFile
from stickwright.files.results import plan_from_json, plan_json, read_json
from stickwright.files.typed_document import read_document
from stickwright.model.case import Case, ForceRead
from stickwright.model.plan import Plan
from stickwright.model.wishes import Keep, Wishes
from stickwright.planning.plan import DRAWS, SEED, plan
from stickwright.store.cases import case_name, forces_up_to, held_files
from stickwright.store.documents import documents
from stickwright.store.loans import loans, with_others, without_stock
from stickwright.store.opening import Store, new_id, note_act
from stickwright.store.players import visit
from stickwright.store.recordings import recording_named, recordings
from stickwright.store.schema import document, plan_input, version
from stickwright.store.schema import plan as plan_table

__all__ = [
    "PlanRow", "make_again", "make_plan", "plan_again", "plan_changes", "plan_kept", "plan_result", "plan_text", "plans", "program",
    "reproduce", "told_apart", "wishes_asked",
]  # fmt: skip

_LIBRARIES = ("numpy", "scipy", "ortools", "pydantic", "polars")


@dataclass(frozen=True)
class PlanRow:
    """A plan in a list.

    Parameters
    ----------
    id, visit_id, number : int
        The number counts the visit's plans from 1.
    at, who : str
    program : str
        Version of stickwright, with a digest of its source.
    asked : mapping
        ``draws``, ``seed``, ``made_on``, ``wishes``, ``away`` (kit that was with others), ``name``, ``libraries``.
    digest : str
        SHA-256 of the plan's JSON.
    """

    id: int
    visit_id: int
    number: int
    at: str
    who: str
    program: str
    asked: Mapping[str, Any]
    digest: str


@functools.cache
def program() -> str:
    """The version of stickwright and a digest of its source: two programs of one name are told apart."""
    folder = Path(stickwright.__file__).parent
    whole = hashlib.sha256()
    for path in sorted(folder.rglob("*.py")):
        whole.update(b"%s\0%s" % (path.relative_to(folder).as_posix().encode(), path.read_bytes()))
    return f"{stickwright.__version__} ({whole.hexdigest()[:12]})"


def make_plan(
    store: Store, visit_id: int, *, who: str, wishes: Wishes | None = None, draws: int = DRAWS, seed: int = SEED,
    made_on: str = "", progress: Callable[[Text, float], None] | None = None,
) -> PlanRow:  # fmt: skip
    """Plan a visit as it stands, and keep the plan with its inputs.

    Parameters
    ----------
    store : Store
    visit_id : int
    who : str
    wishes : Wishes, optional
    draws, seed : int
    made_on : str
        Date to print, YYYY-MM-DD.
    progress : callable, optional
        As `stickwright.planning.plan` calls it.

    Raises
    ------
    BadInput
        All that keeps the visit from being planned; nothing is then kept.
    """
    with store.write(who, ""):  # nobody changes anything in between: what is kept as input is what was read
        own = documents(store, visit_id)
        used = dict(own) if "kit.toml" in own else {**documents(store, None), **own}
        live = [(row, row.samples) for row in recordings(store, visit_id) if not row.aside and row.samples]
        row, rows, name = visit(store, visit_id), loans(store), case_name(store, visit_id)
        forces = forces_up_to(store, visit_id)
    files = held_files(store, {file: one.says for file, one in used.items()}, live)
    case = case_and_queries(files, made_on, name=name)[0]
    away = with_others(case.kit, rows, row.player_id)
    asked = {
        "draws": draws, "seed": seed, "made_on": made_on, "name": name, "wishes": _wishes_data(wishes), "away": away,
        "forces_read": [dataclasses.asdict(one) for one in forces],
        "libraries": _libraries(),
    }  # fmt: skip
    made = plan(_lent(_with_forces(case, asked), away), draws=draws, seed=seed, wishes=wishes, progress=progress)
    inputs: list[dict[str, int | None]] = [
        {"version_id": one.version_id, "recording_id": None, "samples": None} for one in used.values()
    ]
    inputs += [{"version_id": None, "recording_id": one.id, "samples": many} for one, many in live]
    return _keep(store, visit_id, made, asked, inputs, who)


def make_again(
    store: Store, plan_id: int, *, who: str, progress: Callable[[Text, float], None] | None = None
) -> PlanRow:
    """A new plan from the very inputs of one that is kept, by the program as it is now; the other stays as it is.

    Parameters
    ----------
    store : Store
    plan_id : int
    who : str
    progress : callable, optional
        As `stickwright.planning.plan` calls it.

    Raises
    ------
    BadInput
        The program no longer accepts the inputs; nothing is then kept.
    """
    with store.read() as connection:
        row = _one(connection, plan_id)
        columns = (plan_input.c.version_id, plan_input.c.recording_id, plan_input.c.samples)
        rows = connection.execute(sa.select(*columns).where(plan_input.c.plan_id == plan_id).order_by(plan_input.c.id))
        inputs = [dict(one) for one in rows.mappings()]
    made = plan_again(store, plan_id, progress)
    asked = {**row.asked, "libraries": _libraries(), "again": row.number}
    return _keep(store, row.visit_id, made, asked, inputs, who)


def _libraries() -> dict[str, str]:
    return {one: installed(one) for one in _LIBRARIES} | {"python": platform.python_version()}


def _keep(
    store: Store, visit_id: int, made: Plan, asked: Mapping[str, Any], inputs: Sequence[Mapping[str, int | None]], who: str
) -> PlanRow:  # fmt: skip
    """Keep a plan with what it came from, numbered after the visit's others."""
    text = plan_json(made).encode()
    row = visit(store, visit_id)
    with store.write(who, "") as connection:
        last = sa.select(sa.func.max(plan_table.c.number)).where(plan_table.c.visit_id == visit_id)
        number = (connection.execute(last).scalar() or 0) + 1
        values = {
            "at": store.at(), "who": who, "visit_id": visit_id, "number": number,
            "program": program(), "asked": asked, "result": zlib.compress(text, 9), "digest": hashlib.sha256(text).hexdigest(),
        }  # fmt: skip
        plan_id = new_id(connection, sa.insert(plan_table).values(values))
        connection.execute(sa.insert(plan_input), [{"plan_id": plan_id, **one} for one in inputs])
        note_act(store, connection, who, message(Trail.plan_made, visit=row.number, plan=number), row.player_id)
        return _rows(connection, plan_table.c.id == plan_id)[0]


def _lent(case: Case, away: Mapping[str, int]) -> Case:
    return dataclasses.replace(case, kit=without_stock(case.kit, dict(away)))


def _with_forces(case: Case, asked: Mapping[str, Any]) -> Case:
    """The case with the forces of other visits as they were when the plan was made."""
    read = [ForceRead(**one | {"force_n": tuple(one["force_n"])}) for one in asked.get("forces_read", ())]
    return dataclasses.replace(case, forces_read=tuple(read))


def _wishes_data(wishes: Wishes | None) -> dict[str, Any]:
    wishes = wishes or Wishes()
    data: dict[str, Any] = json.loads(json.dumps(dataclasses.asdict(wishes)))
    return data


def wishes_asked(row: PlanRow) -> Wishes:
    """The wishes with which a plan was made."""
    return _wishes(row.asked.get("wishes") or _wishes_data(None))


def _wishes(data: Mapping[str, Any]) -> Wishes:
    said = dict(data)
    return Wishes(
        **said | {"without": tuple(said["without"]), "keep": tuple(Keep(**one) for one in said["keep"])},
    )  # fmt: skip


def plans(store: Store, visit_id: int) -> tuple[PlanRow, ...]:
    """The plans of a visit, in the order made."""
    with store.read() as connection:
        return _rows(connection, plan_table.c.visit_id == visit_id)


def _rows(connection: sa.Connection, matches: sa.ColumnElement[bool]) -> tuple[PlanRow, ...]:
    names = [field.name for field in dataclasses.fields(PlanRow)]
    wanted = sa.select(*(plan_table.c[name] for name in names)).where(matches).order_by(plan_table.c.id)
    return tuple(PlanRow(**row) for row in connection.execute(wanted).mappings())


def _one(connection: sa.Connection, plan_id: int) -> PlanRow:
    found = _rows(connection, plan_table.c.id == plan_id)
    if not found:
        raise BadInput(
            Problem(
                "plan",
                message(Entries.number, number=plan_id),
                message(PlayerRecords.a_plan),
                message(Entries.reload),
            )
        )
    return found[0]


def plan_result(store: Store, plan_id: int) -> dict[str, Any]:
    """A plan as it was made, as JSON data.

    Raises
    ------
    BadInput
        No such plan, or kept bytes that are no longer those that were kept.
    """
    return read_json(plan_text(store, plan_id))


def plan_text(store: Store, plan_id: int) -> bytes:
    """The JSON of a plan, byte for byte as it was kept."""
    with store.read() as connection:
        row = _one(connection, plan_id)
        body = connection.execute(sa.select(plan_table.c.result).where(plan_table.c.id == plan_id)).scalar_one()
    try:
        text = zlib.decompress(body)
    except zlib.error:
        text = b""
    if hashlib.sha256(text).hexdigest() != row.digest:
        raise BadInput(
            Problem(
                (store.place, message(RecordsFile.plan_of, number=row.number)),
                message(RecordsFile.changed_bytes),
                message(RecordsFile.saved_bytes),
                message(PlayerRecords.restore_or_replan),
            )
        )
    return text


def plan_kept(store: Store, plan_id: int) -> Plan:
    """A plan as it was made: read from what was kept, never worked out anew.

    Raises
    ------
    UnreadPlan
        It was kept by a version that wrote plans otherwise.
    BadInput
        No such plan, or kept bytes that are no longer those that were kept.
    """
    return plan_from_json(plan_text(store, plan_id))


def plan_again(store: Store, plan_id: int, progress: Callable[[Text, float], None] | None = None) -> Plan:
    """A plan worked out again from its very inputs, by the program as it is now.

    Parameters
    ----------
    store : Store
    plan_id : int
    progress : callable, optional
        As `stickwright.planning.plan` calls it.
    """
    with store.read() as connection:
        row = _one(connection, plan_id)
        files = connection.execute(
            sa.select(document.c.name, version.c.body, version.c.digest, version.c.typed)
            .join(version, version.c.id == plan_input.c.version_id)
            .join(document, document.c.id == version.c.document_id)
            .where(plan_input.c.plan_id == plan_id)
        ).all()
        live = connection.execute(
            sa.select(plan_input.c.recording_id, plan_input.c.samples)
            .where(plan_input.c.plan_id == plan_id, plan_input.c.recording_id.is_not(None))
            .order_by(plan_input.c.id)
        ).all()
    bodies = {name: zlib.decompress(body) for name, body, _, _ in files}
    changed = [name for name, _, digest, _ in files if hashlib.sha256(bodies[name]).hexdigest() != digest]
    if changed:
        raise BadInput(
            Problem(
                (store.place, changed[0]),
                message(RecordsFile.changed_bytes),
                message(RecordsFile.saved_bytes),
                message(RecordsFile.restore_backup),
            )
        )
    says: dict[str, HeldFile] = {
        name: bodies[name] if typed is None else read_document(zlib.decompress(typed), name, bodies[name])
        for name, _, _, typed in files
    }
    rows = tuple((dataclasses.replace(recording_named(store, one), aside=False), many) for one, many in live)
    asked = row.asked
    case = case_and_queries(held_files(store, says, rows), asked["made_on"], name=asked["name"])[0]
    return plan(
        _lent(_with_forces(case, asked), asked["away"]),
        draws=asked["draws"],
        seed=asked["seed"],
        wishes=_wishes(asked["wishes"]),
        progress=progress,
    )


def reproduce(store: Store, plan_id: int) -> tuple[bool, Message]:
    """Work a plan out again from its very inputs and compare.

    Returns
    -------
    same : bool
        Whether it is the same to the last digit.
    told : Message
        One or two sentences: that it is the same; or what changed in the program, and what differs.
    """
    with store.read() as connection:
        row = _one(connection, plan_id)
    before = plan_text(store, plan_id)
    try:
        after = plan_json(plan_again(store, plan_id)).encode()
    except BadInput as refused:
        told = message(KeptPlans.inputs_refused, problem=refused.problems[0].sentence)
        return False, message(Problems.sentences, parts=(_changed(row), told))
    if after == before:
        return True, message(KeptPlans.made_again)
    told = _difference(read_json(before), read_json(after))
    return False, message(Problems.sentences, parts=(_changed(row), told))


def plan_changes(store: Store, first: PlanRow, second: PlanRow) -> tuple[Message, ...]:
    """Why two plans of a visit may differ: program, libraries, seed, draws, wishes, and what they were made from.

    Returns
    -------
    tuple of Message
        One sentence each; one that nothing differs where that is so.
    """
    then, now = first.asked, second.asked
    libraries = [
        message(KeptPlans.library, name=Name(one), first=Name(then["libraries"].get(one, "")), second=Name(version))
        for one, version in now["libraries"].items()
        if then["libraries"].get(one) != version
    ]
    found: list[Message] = []
    if first.program != second.program:
        found.append(message(KeptPlans.programs, first=Name(first.program), second=Name(second.program)))
    found += libraries
    if then["seed"] != now["seed"]:
        found.append(message(KeptPlans.seeds, first=then["seed"], second=now["seed"]))
    if then["draws"] != now["draws"]:
        found.append(message(KeptPlans.draws, first=then["draws"], second=now["draws"]))
    if wishes_asked(first) != wishes_asked(second):
        found.append(message(KeptPlans.wishes))
    inputs = _other_inputs(store, first, second)
    if inputs:
        found.append(message(KeptPlans.inputs, names=tuple(map(Name, inputs))))
    beside = ["away", "name", "made_on"]
    if "player.toml" not in inputs:  # else the forces of this very visit differ
        beside.append("forces_read")
    if any(then.get(key) != now.get(key) for key in beside):
        found.append(message(KeptPlans.beside))
    return tuple(found) or (message(KeptPlans.nothing),)


def _other_inputs(store: Store, first: PlanRow, second: PlanRow) -> tuple[str, ...]:
    """Names of documents and recordings that two plans did not both read alike."""
    with store.read() as connection:
        one, other = (_inputs(connection, row.id) for row in (first, second))
    names = {number: recording_named(store, number).name for number in {*one, *other} if isinstance(number, int)}
    return tuple(
        names[key] if isinstance(key, int) else key
        for key in dict.fromkeys([*one, *other])
        if one.get(key) != other.get(key)
    )


def _inputs(connection: sa.Connection, plan_id: int) -> dict[str | int, str | int]:
    """Digest of each document by its name, samples of each recording by its number."""
    files = connection.execute(
        sa.select(document.c.name, version.c.digest)
        .join(version, version.c.document_id == document.c.id)
        .join(plan_input, version.c.id == plan_input.c.version_id)
        .where(plan_input.c.plan_id == plan_id)
    )
    live = connection.execute(
        sa.select(plan_input.c.recording_id, plan_input.c.samples)
        .where(plan_input.c.plan_id == plan_id, plan_input.c.recording_id.is_not(None))
    )  # fmt: skip
    found: dict[str | int, str | int] = {row[0]: row[1] for row in (*files, *live)}
    return found


def told_apart(before: bytes, after: bytes) -> Text:
    """What differs between two plans as they were kept, of whatever format, in one sentence.

    Parameters
    ----------
    before, after : bytes
        JSON as `plan_text` gives it.
    """
    return message(KeptPlans.same) if before == after else _difference(read_json(before), read_json(after))


def _changed(row: PlanRow) -> Message:
    """What is not as it was when the plan was made."""
    now = {one: installed(one) for one in row.asked["libraries"] if one != "python"} | {
        "python": platform.python_version()
    }
    other = tuple(
        message(KeptPlans.library_now, name=Name(one), then=Name(then), now=Name(now[one]))
        for one, then in row.asked["libraries"].items()
        if then != now[one]
    )
    if row.program != program():
        other = (message(KeptPlans.program_now, then=Name(row.program), now=Name(program())), *other)
    return message(KeptPlans.program_changed, parts=other) if other else message(KeptPlans.same_program)


def _difference(before: Any, after: Any) -> Message:
    """In one sentence: what is chosen where, if that differs; else how many figures do, and the first."""
    chosen = tuple(
        message(KeptPlans.choice, site=Name(site), then=Name(then) if then else None, now=Name(now) if now else None)
        for site, then, now in _choices(before, after)
        if then != now
    )
    if chosen:
        return message(KeptPlans.other_choices, sites=chosen)
    places = _unlike(before, after, "")
    place, then, now = places[0]
    return message(KeptPlans.other_figures, count=len(places), place=Name(place), then=Name(then), now=Name(now))


def _choices(before: Any, after: Any) -> list[tuple[str, str, str]]:
    then, now = (
        {one["name"]: (one["choice"] or {}).get("label", "") for one in data["sites"]} for data in (before, after)
    )
    return [(site, then.get(site, ""), now.get(site, "")) for site in dict.fromkeys([*then, *now])]


def _unlike(one: Any, other: Any, place: str) -> list[tuple[str, str, str]]:
    """Place, before and now of each entry that differs."""
    if isinstance(one, dict) and isinstance(other, dict):
        keys = dict.fromkeys([*one, *other])
        return [found for key in keys for found in _unlike(one.get(key), other.get(key), f"{place}.{key}".lstrip("."))]
    if isinstance(one, list) and isinstance(other, list) and len(one) == len(other):
        return [
            found for at, pair in enumerate(zip(one, other, strict=True)) for found in _unlike(*pair, f"{place}[{at}]")
        ]
    return [] if one == other else [(place, _short(one), _short(other))]


def _short(value: Any) -> str:
    text = json.dumps(value, ensure_ascii=False)
    return text if len(text) <= 40 else text[:37] + "..."
