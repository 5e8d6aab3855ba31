"""A visit as a case folder, and a case folder as a visit: byte for byte, whatever lies in it.

A name that cannot be the name of a document (bytes that are not UTF-8, control characters, a backslash, ...) is kept under
`ODD` with its bytes written as in a web address, and comes out again as it was.
"""

from __future__ import annotations

import datetime
import os
import re
import tomllib
from collections.abc import Container, Iterator, Mapping, Sequence
from dataclasses import replace
from pathlib import Path, PurePosixPath
from urllib.parse import quote_from_bytes, unquote_to_bytes

import sqlalchemy as sa

from stickwright.codes.case_folders import CaseFolders
from stickwright.codes.entries import Entries
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.trail import Trail
from stickwright.codes.versions import Versions
from stickwright.errors import BadInput, Problem
from stickwright.files.editing import at_path, with_fields
from stickwright.files.folder import case_and_queries
from stickwright.files.held import HeldFile, HeldPlace
from stickwright.files.recordings import recording_csv
from stickwright.files.toml_lines import read_toml
from stickwright.files.writing import make_folder, write_whole
from stickwright.model.case import Case, ForceRead
from stickwright.model.recorded import Finding
from stickwright.store.documents import Document, documents, remove_document, save_document
from stickwright.store.opening import Store, new_id, note_act
from stickwright.store.players import (
    VisitRow,
    add_player,
    add_visit,
    player_named,
    readings_through_time,
    visit,
    visits,
)
from stickwright.store.recording_model import recording_of
from stickwright.store.recordings import RecordingRow, recordings
from stickwright.store.schema import player
from stickwright.store.schema import visit as visit_table

__all__ = [
    "case_files", "case_name", "case_of", "export_case", "held_files", "import_case", "name_of_file", "tree_of",
]  # fmt: skip

LiveRecording = tuple[RecordingRow, int | None]
"""A recording, and how many of its samples count; None for all."""

ODD = "~/"
LARGEST_BYTES = 64 * 2**20
MOST_FILES = 5000
_CODE = re.compile(rb"""(?m)^\s*code\s*=\s*["']([^"'\r\n]+)["']""")
_DATE = re.compile(rb"""(?m)^\s*visit\s*=\s*["']?(\d{4}-\d\d-\d\d)""")


def tree_of(store: Store, visit_id: int) -> dict[str, bytes]:
    """A visit as the files of a case folder.

    Returns
    -------
    dict of bytes
        Every document as it stands. Without a ``kit.toml`` of the visit's own, the shelf's kit and its bench readings. Live
        recordings that are not set aside as ``recordings/<name>.csv``, listed in ``player.toml`` for their site.
    """
    files, live = _standing(store, visit_id)
    tree = {file_of_name(name): one.body for name, one in files.items()}
    listed = tree.get("player.toml", b"")
    for file, row, upto in _counted(tree, live):
        tree[file] = recording_csv(recording_of(store, row.id, upto=upto))
        listed = _listed(listed, row, file)
    if listed:
        tree["player.toml"] = listed
    return tree


def case_files(store: Store, visit_id: int) -> dict[str, HeldFile]:
    """A visit as the files of a case folder, for reading it; see `tree_of` and `held_files`."""
    files, live = _standing(store, visit_id)
    return held_files(store, {name: one.says for name, one in files.items()}, live)


def held_files(store: Store, files: Mapping[str, HeldFile], live: Sequence[LiveRecording]) -> dict[str, HeldFile]:
    """The files of a case for reading it: live recordings are there as their samples, and never become text.

    Parameters
    ----------
    store : Store
    files : mapping
        Name of a document -> what it says, or its bytes.
    live : sequence of (RecordingRow, int or None)
        Recordings, each with how many of its samples count; None for all.
    """
    held: dict[str, HeldFile] = {file_of_name(name): body for name, body in files.items()}
    for file, row, upto in _counted(held, live):
        held[file] = recording_of(store, row.id, upto=upto)
        if "player.toml" in held:
            held["player.toml"] = _told_of(held["player.toml"], row, file)
    return held


def _standing(store: Store, visit_id: int) -> tuple[dict[str, Document], tuple[LiveRecording, ...]]:
    """Documents and live recordings of a visit as they stand, with the kit of the shelf where it has none of its own."""
    own = documents(store, visit_id)
    shelf = {} if "kit.toml" in own else documents(store, None)
    return {**shelf, **own}, tuple((row, None) for row in recordings(store, visit_id))


def _counted(tree: Container[str], live: Sequence[LiveRecording]) -> Iterator[tuple[str, RecordingRow, int | None]]:
    """Recordings that count, each with its file."""
    for row, upto in live:
        file = f"recordings/{row.name}.csv"
        # one that is in the folder already was taken in again with the folder that it was written to
        if not row.aside and row.samples and upto != 0 and file not in tree:
            yield file, row, upto


def _said_of(row: RecordingRow, file: str) -> dict[str, str | bool]:
    """What ``player.toml`` says of a recording."""
    said = {"file": file, "task": row.task, "stick": row.stick, "topper": row.topper, "extension": row.extension}
    said["condition"] = row.condition
    filled: dict[str, str | bool] = {key: value for key, value in said.items() if value}
    if row.simulated:
        filled["simulated"] = True
    if row.replayed:
        filled["replayed"] = True
    return filled


def _told_of(player: HeldFile, row: RecordingRow, file: str) -> HeldFile:
    """``player.toml``, read, with a recording among those of its site; as it was where it cannot be read or has no such site."""
    try:
        read = read_toml(HeldPlace({"player.toml": player}, "player.toml"), "player.toml", "player")
    except BadInput:
        return player
    listed = read.data.get("site")
    sites = listed if isinstance(listed, list) else []
    for number, site in enumerate(sites):
        if not isinstance(site, dict) or site.get("name") != row.site:
            continue
        listed = site.get("recording")
        known = listed if isinstance(listed, list) else []
        if any(isinstance(one, dict) and one.get("file") == file for one in known):
            return read
        told = {**site, "recording": [*known, _said_of(row, file)]}
        return replace(read, data={**read.data, "site": [*sites[:number], told, *sites[number + 1 :]]})
    return read


def _listed(body: bytes, row: RecordingRow, file: str) -> bytes:
    """``player.toml`` with a recording listed for its site; as it was where it cannot be read or has no such site."""
    try:
        text = body.decode("utf-8")
        sites = tomllib.loads(text).get("site", [])
    except (UnicodeDecodeError, tomllib.TOMLDecodeError):
        return body
    for number, site in enumerate(sites if isinstance(sites, list) else []):
        if not isinstance(site, dict) or site.get("name") != row.site:
            continue
        listed = at_path(text, ("site", number, "recording"))
        known = listed if isinstance(listed, list) else []
        if any(isinstance(one, dict) and one.get("file") == file for one in known):
            return body
        path = ("site", number, "recording", len(known))
        return with_fields(text, path, _said_of(row, file), name="player.toml").encode()
    return body


def case_name(store: Store, visit_id: int) -> str:
    """What a case is called in a plan: the player's code, then the date or number of the visit."""
    row = visit(store, visit_id)
    return f"{_code_of(store, row.player_id)} {row.on_date or row.number}"


def _code_of(store: Store, player_id: int) -> str:
    with store.read() as connection:
        return str(connection.execute(sa.select(player.c.code).where(player.c.id == player_id)).scalar_one())


def case_of(store: Store, visit_id: int, *, made_on: str = "") -> tuple[Case, tuple[Finding, ...]]:
    """A visit as a case, and what was noticed. Nothing is written to the disk.

    Parameters
    ----------
    store : Store
    visit_id : int
    made_on : str
        Date to print, YYYY-MM-DD.

    Raises
    ------
    BadInput
        All that cannot be read, in the words of the case folder.
    """
    case, noticed = case_and_queries(case_files(store, visit_id), made_on, name=case_name(store, visit_id))
    return replace(case, forces_read=forces_up_to(store, visit_id)), noticed


def forces_up_to(store: Store, visit_id: int) -> tuple[ForceRead, ...]:
    """Forces of a player at a visit and at those before it, the oldest first; visits without a date are left out."""
    here = visit(store, visit_id)
    return tuple(
        ForceRead(row.on_date, row.site, row.direction_rad, tuple(row.repeats))
        for row in readings_through_time(store, here.player_id)
        if row.kind == "force" and row.direction_rad is not None and row.on_date and row.on_date <= here.on_date
    )


def import_case(store: Store, folder: Path | Mapping[str, bytes], *, who: str) -> VisitRow:
    """A case folder becomes a visit: all of it, also what cannot be read (`VisitRow.problems` counts that).

    The player is found by the code in ``player.toml`` and added where new; the visit by its date. Where that visit is there,
    its files get further versions, and those that are not in the folder are taken away: all of it can be undone.

    Parameters
    ----------
    store : Store
    folder : Path, or mapping of str to bytes
        On disk, or its files under their names from the folder on.
    who : str

    Raises
    ------
    BadInput
        No such folder; nothing in it; no ``player.toml`` or no code in it; files too large or with too long a name. Nothing
        has then been taken in.
    """
    files = dict(folder) if isinstance(folder, Mapping) else _read(Path(folder))
    _refuse(files, message(CaseFolders.the_folder) if isinstance(folder, Mapping) else str(folder))
    named = {name_of_file(name): body for name, body in files.items()}
    code, on_date = _who_and_when(files["player.toml"])
    with store.write(who, "") as connection:
        try:
            player_id = player_named(store, code).id
        except BadInput:
            player_id = add_player(store, code, who=who).id
        there = [row for row in visits(store, player_id) if row.on_date == on_date] if on_date else []
        if there:
            visit_id, before = there[-1].id, tree_of(store, there[-1].id)
        else:
            visit_id, before = _new_visit(store, player_id, on_date, who), {}
        held = documents(store, visit_id)
        for name, body in named.items():
            if before.get(file_of_name(name)) != body:  # else as it was written out
                save_document(store, visit_id, name, body, who=who, why=message(Versions.imported))
        for name in held.keys() - named.keys():
            remove_document(store, visit_id, name, who=who, why=message(Versions.not_imported))
        note_act(store, connection, who, message(Trail.case_imported, files=len(named)), player_id)
    return visit(store, visit_id)


def _new_visit(store: Store, player_id: int, on_date: str, who: str) -> int:
    """A visit; without a readable date it has none."""
    if on_date:
        return add_visit(store, player_id, on_date, who=who).id
    with store.write(who, "") as connection:
        last = sa.select(sa.func.max(visit_table.c.number)).where(visit_table.c.player_id == player_id)
        number = (connection.execute(last).scalar() or 0) + 1
        row = sa.insert(visit_table).values(at=store.at(), who=who, player_id=player_id, number=number)
        return new_id(connection, row)


def _who_and_when(body: bytes) -> tuple[str, str]:
    """Code and date, also of a file that cannot be read as a whole."""
    code = date = ""
    try:
        said = tomllib.loads(body.decode("utf-8-sig"))
        code, date = said.get("code", ""), str(said.get("visit", ""))[:10]
    except (UnicodeDecodeError, tomllib.TOMLDecodeError):
        found, when = _CODE.search(body), _DATE.search(body)
        code = found.group(1).decode("utf-8", "replace") if found else ""
        date = when.group(1).decode() if when else ""
    if not isinstance(code, str) or not code.strip():
        raise BadInput(
            Problem(
                "player.toml",
                message(CaseFolders.no_code),
                message(CaseFolders.a_code),
                message(CaseFolders.write_code),
            )
        )
    return code.strip(), date if _is_date(date) else ""


def _is_date(text: str) -> bool:
    try:
        datetime.date.fromisoformat(text)
    except ValueError:
        return False
    return True


def _read(folder: Path) -> dict[str, bytes]:
    if not folder.is_dir():
        found = message(CaseFolders.a_file) if folder.exists() else message(CaseFolders.no_folder)
        expected, remedy = message(CaseFolders.a_case_folder), message(CaseFolders.choose_folder)
        raise BadInput(Problem((str(folder),), found, expected, remedy))
    problems: list[Problem] = []
    files: dict[str, bytes] = {}
    for around, _, names in os.walk(folder, onerror=lambda error: problems.append(_closed(folder, error))):
        for name in names:
            path = Path(around) / name
            shown = path.relative_to(folder).as_posix()
            try:
                if path.is_symlink():
                    problems.append(_no_file(shown, message(CaseFolders.a_link), message(CaseFolders.copy_file)))
                elif not path.is_file():
                    found = message(CaseFolders.no_ordinary_file)
                    problems.append(_no_file(shown, found, message(CaseFolders.take_out)))
                elif path.stat().st_size > LARGEST_BYTES:
                    problems.append(_too_large(shown, path.stat().st_size))
                else:
                    files[shown] = path.read_bytes()
            except OSError as error:
                problems.append(_closed(path, error))
    if problems:
        raise BadInput(problems)
    return files


def _no_file(name: str, found: Message, remedy: Message) -> Problem:
    return Problem((_plain(name),), found, message(CaseFolders.a_file), remedy)


def _refuse(files: Mapping[str, bytes], shown: Text) -> None:
    problems = []
    if "player.toml" not in files:
        problems.append(
            Problem(
                (shown,),
                message(CaseFolders.no_player_file),
                message(CaseFolders.a_case_folder),
                message(CaseFolders.choose_folder_unchanged),
            )
        )
    if len(files) > MOST_FILES:
        found, expected = message(CaseFolders.files, count=len(files)), message(CaseFolders.at_most, count=MOST_FILES)
        problems.append(Problem((shown,), found, expected, message(CaseFolders.right_folder)))
    for name, body in files.items():
        if len(body) > LARGEST_BYTES:
            problems.append(_too_large(name, len(body)))
        elif len(name_of_file(name)) > 200:
            problems.append(
                Problem(
                    (f"{_plain(name)[:80]}...",),
                    message(CaseFolders.long_name),
                    message(CaseFolders.letters_at_most, count=200),
                    message(CaseFolders.shorter_name),
                )
            )
        elif ".." in PurePosixPath(name).parts or name.startswith("/") or not name:
            found, expected = message(CaseFolders.outside), message(CaseFolders.inside)
            problems.append(Problem((_plain(name),), found, expected, message(CaseFolders.leave_out)))
    if problems:
        raise BadInput(problems)


def _closed(path: Path, error: OSError) -> Problem:
    reason = Name(error.strerror.lower()) if error.strerror else None
    return _no_file(str(path), message(CaseFolders.cannot_open, reason=reason), message(CaseFolders.check_rights))


def _too_large(name: str, size: int) -> Problem:
    found, expected = message(Entries.megabytes, count=size // 2**20), message(Entries.small_file)
    return Problem((_plain(name),), found, expected, message(CaseFolders.leave_out_videos))


def _plain(name: str) -> str:
    return os.fsencode(name).decode("utf-8", "replace")


def name_of_file(name: str) -> str:
    """Name of the document for a file of a case folder.

    Parameters
    ----------
    name : str
        From the folder on, as Python gives it (bytes that are not UTF-8 as surrogates).

    Examples
    --------
    >>> name_of_file("readings/chin.csv"), name_of_file("a\\\\b.csv")
    ('readings/chin.csv', '~/a%5Cb.csv')
    >>> file_of_name("~/a%5Cb.csv") == "a\\\\b.csv"
    True
    """
    steps = name.split("/")
    odd = name.startswith(ODD) or "\\" in name or ":" in steps[0] or any(step in ("", ".", "..") for step in steps)
    if odd or any(ord(letter) < 32 or "\ud800" <= letter <= "\udfff" for letter in name):
        return ODD + quote_from_bytes(os.fsencode(name), safe="/ ")
    return name


def file_of_name(name: str) -> str:
    """File of a case folder for the name of a document; the way back from `name_of_file`."""
    return os.fsdecode(unquote_to_bytes(name.removeprefix(ODD))) if name.startswith(ODD) else name


def export_case(store: Store, visit_id: int, folder: Path) -> tuple[Path, ...]:
    """A visit written out as a case folder.

    Parameters
    ----------
    store : Store
    visit_id : int
    folder : Path
        New or empty.

    Returns
    -------
    tuple of Path
        The files written.

    Raises
    ------
    BadInput
        Something lies in the folder, or it cannot be written. No file of somebody else is replaced.
    """
    folder = Path(folder)
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise BadInput(
            Problem(
                (str(folder),),
                message(CaseFolders.something_there),
                message(CaseFolders.empty_folder),
                message(CaseFolders.rename_unwritten),
            )
        )
    make_folder(folder)
    written = []
    for name, body in tree_of(store, visit_id).items():
        path = folder / name
        make_folder(path.parent)
        write_whole(path, body)
        written.append(path)
    return tuple(written)
