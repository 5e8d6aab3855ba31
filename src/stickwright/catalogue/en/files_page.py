"""The files of a visit as text, and their versions; in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.files_page import FilesPage, Why
from stickwright.codes.message import Name, Text

__all__ = ["Texts"]

_REASONS: dict[Why, str] = {
    "typed-as-text": "edited as text",
    "usual-actions": "usual actions of a game type",
    "own-kit": "own kit for this visit",
    "game-added": "game added",
    "game-deleted": "game deleted",
    "readings": "readings",
    "readings-copied": "readings copied from a file",
    "shelf": "copied from the shelf",
    "shelf-deleted": "deleted from the shelf",
}


class Texts(FilesPage):
    """The files of a visit as text, and their versions."""

    w: English

    def title(self) -> str:
        return "Files of this visit"

    def lead(self) -> str:
        return (
            "Everything that was entered is stored in these files. You can edit each as text; every earlier "
            "version is kept."
        )

    def file(self) -> str:
        return "File"

    def version(self) -> str:
        return "Version"

    def saved(self) -> str:
        return "Saved"

    def by(self) -> str:
        return "By"

    def back(self) -> str:
        return "Back to the files"

    def not_text(self) -> str:
        return "This file is not text, or is too long to show here."

    def download(self) -> str:
        return "Download"

    def text(self) -> str:
        return "Text"

    def versions(self) -> str:
        return "Versions"

    def version_line(self, *, at: str, who: Name, why: Text) -> str:
        told = f"{self.w.moment(at)}, {self.w.name(who)}"
        return f"{told}: {self.say(why)}" if why else told

    def reason(self, *, why: Why) -> str:
        return _REASONS[why]

    def changes(self) -> str:
        return "Changes"

    def in_version(self, *, number: int) -> str:
        return f"in version {self.w.whole(number)}"

    def removed(self) -> str:
        return "deleted"

    def not_shown(self) -> str:
        return "binary content changed"

    def more_lines(self, *, lines: int) -> str:
        return f"... and {self.w.whole(lines)} more {self.w.plural(lines, one='line', other='lines')}"

    def too_long(self, *, most: int) -> str:
        return f"The text is too long: at most {self.w.whole(most)} characters. Import it as a file."

    def file_saved(self, *, name: Name) -> str:
        return f"{self.w.name(name)} saved."
