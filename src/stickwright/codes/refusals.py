"""Pages and short answers that say why something could not be done."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Topic

__all__ = ["Refusals"]


class Refusals(Topic):
    """Pages and short answers that say why something could not be done."""

    @abstractmethod
    def title(self) -> str:
        """Heading: a request could not be carried out."""

    @abstractmethod
    def not_found(self) -> str:
        """Heading: there is no page at this address."""

    @abstractmethod
    def not_found_more(self) -> str:
        """There is no page at this address, with the likely reasons."""

    @abstractmethod
    def only_to_look(self) -> str:
        """Heading and sentence: the address takes no entries."""

    @abstractmethod
    def our_fault(self) -> str:
        """Heading: a fault of the program."""

    @abstractmethod
    def our_fault_more(self, *, report: Name) -> str:
        """Nothing was lost; where the report of the fault is."""

    @abstractmethod
    def start_again(self) -> str:
        """Button to the first page."""

    @abstractmethod
    def too_large(self, *, most_mb: int) -> str:
        """An upload is larger than this many megabytes."""

    @abstractmethod
    def damaged(self) -> str:
        """A form arrived incomplete."""

    @abstractmethod
    def earlier_start(self) -> str:
        """A form was opened before the app was started anew."""

    @abstractmethod
    def stranger(self) -> str:
        """A browser without a session."""

    @abstractmethod
    def reader(self) -> str:
        """An account that may only look tried to change something."""

    @abstractmethod
    def other_address(self) -> str:
        """The request names another server."""

    @abstractmethod
    def other_page(self) -> str:
        """The request came from another website."""

    @abstractmethod
    def no_origin(self) -> str:
        """The request does not name the page that it comes from."""

    @abstractmethod
    def no_consent(self) -> str:
        """Nothing can be added: there is no valid consent to keep it."""

    @abstractmethod
    def no_consent_live(self) -> str:
        """The same, where a measurement was to begin."""

    @abstractmethod
    def undo_too_late(self) -> str:
        """Undo was pressed for a change that was already undone, or is too old."""
