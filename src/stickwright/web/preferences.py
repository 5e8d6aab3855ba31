"""How the app looks and behaves on this machine: kept in a small file beside the records, which says nothing about a player."""

from __future__ import annotations

import tomllib
from dataclasses import asdict, dataclass, fields, replace
from pathlib import Path
from typing import Literal

from stickwright.codes.message import message
from stickwright.codes.settings_page import SettingsPage
from stickwright.errors import BadInput, Problem
from stickwright.units import QUANTITIES

__all__ = [
    "FORCE_UNITS",
    "IDLE_MINUTES",
    "LABELS",
    "LIGHTS",
    "SIZES",
    "Preferences",
    "keep_preferences",
    "own_preferences",
    "preferences_at",
]

LIGHTS: tuple[Literal["auto", "light", "dark", "contrast"], ...] = ("auto", "light", "dark", "contrast")
SIZES: tuple[Literal["usual", "larger"], ...] = ("usual", "larger")
LONGEST_WHO = 40
LABELS = {
    "light": message(SettingsPage.light),
    "size": message(SettingsPage.size),
    "who": message(SettingsPage.who),
    "force": message(SettingsPage.force),
    "idle_minutes": message(SettingsPage.idle, team=False),
}
"""Of each preference, as its page calls it."""
FORCE_UNITS = tuple((unit.ending, unit.label) for unit in QUANTITIES["force"].units)
IDLE_MINUTES = (5, 10, 20, 40, 90)


@dataclass(frozen=True)
class Preferences:
    """What may be set.

    `who` is written beside every change: a role or initials. `force` is the unit of the force gauge, `idle_minutes` how long
    nobody may touch the app before it locks.
    """

    light: str = "auto"
    size: str = "usual"
    who: str = "practitioner"
    force: str = "n"
    idle_minutes: int = 20

    def changed(self, **values: str) -> Preferences:
        """The same with other values, as typed.

        Parameters
        ----------
        **values : str
            By name of the preference.
        """
        problems = []
        taken: dict[str, str | int] = {}
        for name, value in values.items():
            known = _KNOWN.get(name)
            if name == "who":
                taken[name] = value.strip() or "practitioner"
                if len(value.strip()) > LONGEST_WHO:
                    problems.append(Problem(LABELS[name], "", "", message(SettingsPage.too_long, most=LONGEST_WHO)))
            elif known is not None and value not in known:
                problems.append(Problem(LABELS[name], "", "", message(SettingsPage.choose)))
            else:
                taken[name] = int(value) if name == "idle_minutes" else value
        if problems:
            raise BadInput(problems)
        return replace(self, **taken)  # type: ignore[arg-type]


_KNOWN = {
    "light": LIGHTS,
    "size": SIZES,
    "force": tuple(key for key, _ in FORCE_UNITS),
    "idle_minutes": tuple(str(minutes) for minutes in IDLE_MINUTES),
}


def preferences_at(file: Path) -> Preferences:
    """What was set before; the usual where nothing was, or where the file cannot be understood."""
    try:
        read = tomllib.loads(file.read_text(encoding="utf-8"))
        names = {field.name for field in fields(Preferences)}
        return Preferences().changed(**{name: str(value) for name, value in read.items() if name in names})
    except (OSError, ValueError):  # no file yet, or one that somebody edited: looks are no reason not to start
        return Preferences()


def keep_preferences(file: Path, preferences: Preferences) -> None:
    """Write what is set."""
    import tomlkit

    from stickwright.files.writing import write_whole

    file.parent.mkdir(parents=True, exist_ok=True)
    write_whole(file, tomlkit.dumps(asdict(preferences)))


def own_preferences(account: str) -> str:
    """Under what name the preferences of an account stand among the settings of a team's records."""
    return f"preferences of {account}"[:80]
