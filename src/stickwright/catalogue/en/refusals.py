"""Pages and short answers that say why something could not be done; in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name
from stickwright.codes.refusals import Refusals

__all__ = ["Texts"]


class Texts(Refusals):
    """Pages and short answers that say why something could not be done."""

    w: English

    def title(self) -> str:
        return "This could not be done"

    def not_found(self) -> str:
        return "Page not found"

    def not_found_more(self) -> str:
        return "There is no page at this address. It may have been erased, or it was not saved."

    def only_to_look(self) -> str:
        return "This page can only be viewed."

    def our_fault(self) -> str:
        return "A fault in the program"

    def our_fault_more(self, *, report: Name) -> str:
        return (
            "This was not your mistake. Nothing that was saved is lost. A report of the fault is in "
            f"{self.w.name(report)}."
        )

    def start_again(self) -> str:
        return "Go to the first page"

    def too_large(self, *, most_mb: int) -> str:
        return f"That is more than {self.w.whole(most_mb)} MB. Send a smaller file."

    def damaged(self) -> str:
        return "The form arrived damaged. Go back and send it again."

    def earlier_start(self) -> str:
        return "This form is from an earlier start of the app. Go back, reload the page and send it again."

    def stranger(self) -> str:
        return "This address works only in the browser that stickwright opened. Use the address that it printed."

    def reader(self) -> str:
        return "Your account can view everything and change nothing. Ask a practitioner to make this change."

    def other_address(self) -> str:
        return "This is not the address of the app."

    def other_page(self) -> str:
        return "The request came from another website."

    def no_origin(self) -> str:
        return "The request does not say which page it came from."

    def no_consent(self) -> str:
        return (
            "There is no valid consent to keep new entries. Record consent, or work without saving: both are on "
            "the consent page."
        )

    def no_consent_live(self) -> str:
        return "There is no valid consent to keep this recording."

    def undo_too_late(self) -> str:
        return (
            "This change has already been undone or is too old to undo. Open the page concerned to see how it stands."
        )
