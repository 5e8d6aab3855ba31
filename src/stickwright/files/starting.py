"""A case begun: the commented starter files, with the game that was asked for."""

from __future__ import annotations

import re
from collections.abc import Mapping
from importlib import resources
from pathlib import Path

from stickwright.codes.case_files import CaseFiles
from stickwright.codes.expected import Expected
from stickwright.codes.message import Name, message
from stickwright.codes.remedies import Remedies
from stickwright.errors import BadInput, Problem
from stickwright.files.archetypes import archetype, archetype_text
from stickwright.files.writing import make_folder, write_whole

__all__ = ["new_case", "written_new"]

_STARTER = (
    "player.toml", "kit.toml", "game.toml", "hub.toml", "room.toml", "readings/right-index.csv", "readings/bench-small-stick-0.5-N.csv",
)  # fmt: skip
_SITE_ACTION = re.compile(r'(?m)^action = "[^"]*"')


def new_case(folder: Path | str, game: str | None = None) -> tuple[Path, ...]:
    """Write a commented starter case.

    Parameters
    ----------
    folder : Path or str
        Folder to make, or one that holds none of the starter's files yet.
    game : str, optional
        The archetype to write as game.toml; the starter's own game when not said.

    Returns
    -------
    tuple of Path
        The files written.

    Raises
    ------
    BadInput
        No such archetype; any of the files is there already, or the place cannot be written. Nothing is then written.
    """
    return written_new(Path(folder), _texts(game))


def written_new(folder: Path, texts: Mapping[str, bytes]) -> tuple[Path, ...]:
    """Write the files of a new case.

    Parameters
    ----------
    folder : Path
        To make, or one that holds none of the files yet.
    texts : mapping of str to bytes
        By name from the folder on.

    Raises
    ------
    BadInput
        Any of the files is there already, or the place cannot be written. Nothing is then written.
    """
    if _is_there(folder) and not folder.is_dir():
        found, wanted = message(CaseFiles.file_of_name), message(CaseFiles.folder_to_make)
        raise BadInput(Problem((str(folder),), found, wanted, message(Remedies.choose_name)))
    there = [name for name in texts if _is_there(folder / name)]
    if there:
        found, wanted = message(CaseFiles.there, names=tuple(map(Name, there))), message(Expected.new_folder)
        raise BadInput(Problem((str(folder),), found, wanted, message(Remedies.another_name)))
    written = []
    for name, data in texts.items():
        path = folder / name
        make_folder(path.parent)
        write_whole(path, data)
        written.append(path)
    return tuple(written)


def _texts(game: str | None) -> dict[str, bytes]:
    source = resources.files("stickwright.files") / "starter"
    texts = {name: (source / name).read_bytes() for name in _STARTER}
    if game is not None:
        texts["game.toml"] = archetype_text(game).encode()
        texts["player.toml"] = _with_actions_of(game, texts["player.toml"].decode()).encode()
    return texts


def _with_actions_of(game: str, player: str) -> str:
    """The starter's sites given stick actions of another game, in order; a site too many does without."""
    sticks = iter([action.name for action in archetype(game).action if action.kind in ("two-axis", "one-axis")])

    def named(match: re.Match[str]) -> str:
        name = next(sticks, None)
        return f'action = "{name}"' if name else f"# {match.group()}"

    return _SITE_ACTION.sub(named, player)


def _is_there(path: Path) -> bool:
    try:
        return path.exists()
    except (OSError, ValueError):  # a name that no file can have
        return False
