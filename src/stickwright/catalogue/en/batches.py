"""Why a message of the measuring page is refused, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.batches import Batches, BatchKind, ExpectedBatch, FoundBatch
from stickwright.codes.message import Name

__all__ = ["Texts"]

_FOUND: dict[FoundBatch, str] = {
    "large_number": "a number too large for its place",
    "other_letters": "bytes that do not begin with swcb",
    "bad_time": "a sample without a time, or later than it was sent",
    "unknown_buttons": "buttons that the device does not have",
    "bad_axis": "an axis that is not a number or far out of range",
    "bad_text": "a device name that is not text",
}
_EXPECTED: dict[ExpectedBatch, str] = {
    "table": "numbers as the table of messages says",
    "page": "a message of the measuring page",
    "milliseconds": "milliseconds from 0",
    "milliseconds_to_sent": "milliseconds from 0 to sent_ms",
    "axis": "-1 to 1",
    "utf8": "UTF-8",
}


class Texts(Batches):
    """Parts of a problem."""

    w: English

    def where(self) -> str:
        return "message from the page"

    def remedy(self) -> str:
        return "Reload the page. If it happens again, the page and the program are different versions."

    def found(self, *, what: FoundBatch) -> str:
        return _FOUND[what]

    def expected(self, *, what: ExpectedBatch) -> str:
        return _EXPECTED[what]

    def length(self, *, count: int) -> str:
        return f"{count} {self.w.plural(count, one='byte', other='bytes')}"

    def lengths(self, *, least: int, most: int) -> str:
        return f"{least} to {most} bytes"

    def version(self, *, version: int) -> str:
        return f"version {version}"

    def kind(self, *, kind: int) -> str:
        return f"kind {kind}"

    def kinds(self, *, least: int, most: int) -> str:
        return f"kind {least} to {most}"

    def body(self, *, count: int) -> str:
        return f"{self.length(count=count)} after the head"

    def body_expected(self, *, count: int) -> str:
        return f"{count}, as the head says"

    def field(self, *, key: Name, value: int, kind: BatchKind) -> str:
        return f'{self.w.name(key)} {value} in a message of kind "{kind}"'

    def limits(self, *, least: int, most: int) -> str:
        return f"{least} to {most}"

    def clock(self, *, key: Name, value: Name) -> str:
        return f"{self.w.name(key)} {self.w.name(value)}"

    def mask(self, *, buttons: int) -> str:
        return f"a whole number below 2 to the power of {buttons}"
