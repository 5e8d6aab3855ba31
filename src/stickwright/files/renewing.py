"""A case of an earlier version of the program, written anew in the form of today: the old folder stays as it is."""

from __future__ import annotations

from pathlib import Path

from stickwright.errors import BadInput
from stickwright.files.editing import with_fields
from stickwright.files.folder import check_case
from stickwright.files.game_files import FURTHER_GAMES
from stickwright.files.retired_keys import retired_paths
from stickwright.files.starting import written_new
from stickwright.files.toml_lines import FieldPath, parse_toml
from stickwright.model.game import Game
from stickwright.model.hub import Hubs
from stickwright.model.kit import Kit
from stickwright.model.measured import Measured
from stickwright.model.player import Player
from stickwright.model.room import Room

__all__ = ["renewed_case"]

_MADE = ("sheet.pdf", "sheet-what-if.pdf")
"""Made from a case, and no part of it."""
_NOUNS: dict[str, type[Measured]] = {
    "player.toml": Player, "kit.toml": Kit, "game.toml": Game, "hub.toml": Hubs, "room.toml": Room,
    **dict.fromkeys(FURTHER_GAMES, Game),
}  # fmt: skip


def renewed_case(folder: Path, old: Path) -> tuple[tuple[Path, ...], int]:
    """Write a case that an earlier version of the program understood, without the keys that nothing uses any more.

    Comments, order and all that was typed otherwise stay as they are; readings and recordings are copied byte for byte.

    Parameters
    ----------
    folder : Path
        To make, or one that holds none of the files yet.
    old : Path
        The case folder; nothing in it is changed.

    Returns
    -------
    written : tuple of Path
        The files written.
    left_out : int
        Number of keys left out.

    Raises
    ------
    BadInput
        The old case has problems, which are told as `stickwright check` tells them; or the new folder cannot be written.
    """
    problems, _ = check_case(old)
    if problems:
        raise BadInput(problems)
    texts, left_out = {}, 0
    for path in sorted(path for path in old.rglob("*") if path.is_file() and path.name not in _MADE):
        name = path.relative_to(old).as_posix()
        texts[name], keys = _renewed(name, path.read_bytes())
        left_out += keys
    return written_new(folder, texts), left_out


def _renewed(name: str, body: bytes) -> tuple[bytes, int]:
    model = _NOUNS.get(name)
    if model is None:
        return body, 0
    text = body.decode("utf-8-sig")
    retired = list(retired_paths(model, parse_toml(text, name).data))
    for path in retired:
        text = _without(text, path, name)
    return text.encode(), len(retired)


def _without(text: str, path: FieldPath, name: str) -> str:
    return with_fields(text, path[:-1], {str(path[-1]): None}, name=name)
