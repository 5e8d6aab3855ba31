"""Case folders as ZIP files: packed alike every time, unpacked only within bounds.

A ZIP file can name files outside of its folder, name one twice, or unpack to a thousand times its size. Nothing here trusts
what it says of itself: names are checked, and bytes are counted while they come out [zip-appnote].
"""

from __future__ import annotations

import io
import zipfile
import zlib
from collections.abc import Mapping
from pathlib import Path, PurePosixPath

from stickwright.codes.import_page import ImportPage
from stickwright.codes.message import Message, Name, message
from stickwright.errors import BadInput, Problem

__all__ = ["MOST_BYTES", "MOST_FILES", "folder_tree", "packed", "unpacked"]

MOST_BYTES = 256 * 2**20
MOST_FILES = 2000
LONGEST_NAME = 200


def packed(tree: Mapping[str, bytes]) -> bytes:
    """Files as one ZIP file; the same files give the same bytes."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        for name in sorted(tree):
            archive.writestr(zipfile.ZipInfo(name), tree[name], zipfile.ZIP_DEFLATED)
    return out.getvalue()


def unpacked(body: bytes, *, most_bytes: int = MOST_BYTES, most_files: int = MOST_FILES) -> dict[str, bytes]:
    """The files in a ZIP file, named from the folder that holds ``player.toml``.

    Parameters
    ----------
    body : bytes
    most_bytes, most_files : int
        What it may hold.

    Raises
    ------
    BadInput
        Not a ZIP file, damaged, locked with a password, too large, or with names that lead outside of its folder.
    """
    try:
        with zipfile.ZipFile(io.BytesIO(body)) as archive:
            entries = [entry for entry in archive.infolist() if not entry.is_dir() and not _is_clutter(entry.filename)]
            if len(entries) > most_files:
                raise _refused(message(ImportPage.too_many, files=len(entries), most=most_files))
            tree: dict[str, bytes] = {}
            left = most_bytes
            for entry in entries:
                name = _checked(entry, tree)
                with archive.open(entry) as file:
                    tree[name] = file.read(left + 1)
                left -= len(tree[name])
                if left < 0:
                    raise _refused(message(ImportPage.too_large, most_mb=most_bytes // 2**20))
    except BadInput:  # ours, from inside
        raise
    except (
        zipfile.BadZipFile,
        zlib.error,
        EOFError,
        RuntimeError,
        OSError,
        ValueError,
    ):  # RuntimeError: a password, a method unknown
        raise _refused(message(ImportPage.damaged)) from None
    return _from_player(tree)


def folder_tree(folder: Path, *, most_bytes: int = MOST_BYTES, most_files: int = MOST_FILES) -> dict[str, bytes]:
    """The files of a folder on this machine, by name from it.

    Parameters
    ----------
    folder : Path
    most_bytes, most_files : int
        What it may hold.

    Raises
    ------
    BadInput
        No such folder, no ``player.toml`` in it, or too much in it.
    """
    if not folder.is_dir():
        raise _wrong_folder(message(ImportPage.no_folder, folder=Name(str(folder))))
    if not (folder / "player.toml").is_file():
        raise _wrong_folder(message(ImportPage.no_player, folder=Name(str(folder))))
    tree: dict[str, bytes] = {}
    size = 0
    for path in sorted(folder.rglob("*")):
        name = path.relative_to(folder).as_posix()
        if path.is_symlink() or not path.is_file() or _is_clutter(name):
            continue
        size += path.stat().st_size
        if size > most_bytes or len(tree) == most_files:
            most_mb = most_bytes // 2**20
            raise _wrong_folder(
                message(ImportPage.folder_too_large, folder=Name(str(folder)), most_files=most_files, most_mb=most_mb)
            )
        tree[name] = path.read_bytes()
    return tree


def _checked(entry: zipfile.ZipInfo, tree: Mapping[str, bytes]) -> str:
    name = entry.filename
    path = PurePosixPath(name)
    if (
        "\\" in name
        or ":" in name
        or path.is_absolute()
        or ".." in path.parts
        or not name.isprintable()
        or len(name) > LONGEST_NAME
    ):
        raise _refused(message(ImportPage.bad_name, name=Name(repr(name[:LONGEST_NAME]))))
    if name in tree:
        raise _refused(message(ImportPage.twice, name=Name(name)))
    return name


def _from_player(tree: Mapping[str, bytes]) -> dict[str, bytes]:
    """Names from the folder of the one ``player.toml``: people pack the folder or what is in it."""
    players = [PurePosixPath(name) for name in tree if PurePosixPath(name).name == "player.toml"]
    if not players:
        raise _refused(message(ImportPage.no_player_in_zip))
    top = min(players, key=lambda path: len(path.parts)).parent
    prefix = "" if top == PurePosixPath(".") else f"{top}/"
    return {name.removeprefix(prefix): body for name, body in tree.items() if name.startswith(prefix)}


def _is_clutter(name: str) -> bool:
    """What file managers leave behind."""
    parts = PurePosixPath(name).parts
    return bool(parts) and (parts[0] == "__MACOSX" or parts[-1] in (".DS_Store", "Thumbs.db", "desktop.ini"))


def _refused(words: Message) -> BadInput:
    return BadInput(Problem(message(ImportPage.file), "", "", words))


def _wrong_folder(words: Message) -> BadInput:
    return BadInput(Problem(message(ImportPage.folder), "", "", words))
