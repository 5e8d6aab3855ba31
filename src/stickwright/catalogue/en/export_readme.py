"""The page that explains an exported player, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.export_readme import Exported, ExportReadme
from stickwright.codes.message import Name

__all__ = ["Texts"]

_PARTS: dict[Exported, str] = {
    "player": "the code, and when it was added",
    "consents": "what was agreed to, until when, in what role, and whether it was withdrawn",
    "loans": "kit that is or was with the player",
    "trail": "who did what, and when",
    "visits": "one folder for each visit, with its number and date:",
    "case": "the visit as a case folder, as it is now; stickwright reads it (stickwright check, stickwright plan)",
    "versions": "every version of every file of the visit; versions.csv says when, by whom and why",
    "recordings": "every recording made live, with all its samples; recordings.csv says what they are",
    "columns": "time_s: seconds; x, y: share of full output, right and forward; cue_...: what was asked",
    "plans": "every plan with what was asked of it",
}


class Texts(ExportReadme):
    """A heading, what it is, a line for each part, what else to know."""

    w: English

    def heading(self) -> str:
        return "What this file holds"

    def whole(self, *, code: Name, at: Name) -> str:
        return f"Everything that stickwright holds about the player with the code {self.w.name(code)}, on {self.w.name(at)} (UTC)."

    def part(self, *, part: Exported) -> str:
        return _PARTS[part]

    def unread(self, *, file: Name) -> str:
        named = f"Whatever could not be read any more is named in {self.w.name(file)}."
        return f"{named} This file is not encrypted: whoever has it can read it."

    def tables(self) -> str:
        return "Tables are CSV in UTF-8, with headers. Directions: 0 degrees is right, 90 forward."
