"""The files that a visit begins with: what still holds from an earlier one, and none of what was measured then."""

from __future__ import annotations

import datetime
import json
from collections.abc import Mapping
from typing import Any

import tomlkit
from tomlkit.exceptions import TOMLKitError

from stickwright.catalogue import say
from stickwright.codes.case_files import CaseFiles
from stickwright.codes.message import message
from stickwright.codes.player_records import PlayerRecords
from stickwright.errors import BadInput, Problem
from stickwright.units import split_key

__all__ = ["begun", "carried_over"]

_STAYS_OF_SITE = frozenset({
    "name", "part", "support", "action", "toppers", "liked", "can_lift", "room", "movement_tilt", "cleared", "release_limit",
    "side", "reaches", "minds", "setup", "to_hub", "tilt_slack",
})  # fmt: skip
"""Keys of a site that are no measurement, without their units. All else is measured anew, also what a later version adds."""
_MEASURED = frozenset({"together"})


def begun(code: str, day: datetime.date) -> bytes:
    """player.toml of a player about whom nothing is known yet."""
    return (
        f"code = {json.dumps(code, ensure_ascii=False)}\n"
        f'visit = "{day.isoformat()}"\n\n'
        f"# {say(message(CaseFiles.begun))}\n"
    ).encode()


def carried_over(files: Mapping[str, bytes], code: str, day: datetime.date) -> dict[str, bytes]:
    """Files of the next visit.

    Parameters
    ----------
    files : mapping
        Of the earlier visit: name -> body.
    code : str
    day : date
        Of the new visit.

    Raises
    ------
    BadInput
        The earlier player.toml cannot be read.
    """
    if "player.toml" not in files:
        player, measured = begun(code, day), frozenset[str]()
    else:
        player, measured = _player(files["player.toml"], day)
    rest = {
        name: body
        for name, body in files.items()
        if name not in measured and name != "player.toml" and not name.startswith("recordings/")
    }
    return {"player.toml": player, **rest}


def _player(body: bytes, day: datetime.date) -> tuple[bytes, frozenset[str]]:
    try:
        document = tomlkit.parse(body.decode("utf-8"))
        sites: Any = document.get("site", [])
        measured = set()
        for site in sites:
            measured |= {str(site["gauge_readings"])} if "gauge_readings" in site else set()
            measured |= {str(one["file"]) for one in site.get("recording", ()) if "file" in one}
            for key in [key for key in site if (split_key(key) or (key,))[0] not in _STAYS_OF_SITE]:
                del site[key]
        for key in _MEASURED & set(document):
            del document[key]
        document["visit"] = day.isoformat()
        return tomlkit.dumps(document).encode("utf-8"), frozenset(measured)
    except (UnicodeDecodeError, TOMLKitError, AttributeError, TypeError) as error:
        raise BadInput(
            Problem(
                message(PlayerRecords.earlier_player),
                message(PlayerRecords.unreadable),
                message(PlayerRecords.readable_sites),
                message(PlayerRecords.correct_or_new),
            )
        ) from error
