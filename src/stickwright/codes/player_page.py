"""The page of one player: visits, plans, force over time, consent, loans, and everything that is held."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Topic

__all__ = ["PlayerPage"]


class PlayerPage(Topic):
    """The page of one player: visits, plans, force over time, consent, loans, and everything that is held."""

    @abstractmethod
    def no_visit(self) -> str:
        """Under the heading: there is no visit yet."""

    @abstractmethod
    def visits_so_far(self, *, visits: int, last_on: str) -> str:
        """Under the heading; `last_on` may be ''."""

    @abstractmethod
    def first_visit(self) -> str:
        """Button."""

    @abstractmethod
    def to_players(self) -> str:
        """Button."""

    @abstractmethod
    def ask_again(self) -> str:
        """Button: there is no valid consent."""

    @abstractmethod
    def today(self) -> str:
        """Button: open the visit of today."""

    @abstractmethod
    def open_visit(self, *, number: int) -> str:
        """Button: open the latest visit."""

    @abstractmethod
    def visits(self) -> str:
        """Heading."""

    @abstractmethod
    def visits_caption(self, *, visits: int) -> str:
        """Caption of the table."""

    @abstractmethod
    def visit(self) -> str:
        """Column: number and date."""

    @abstractmethod
    def sites(self) -> str:
        """Column: control sites."""

    @abstractmethod
    def game(self) -> str:
        """Column."""

    @abstractmethod
    def recordings(self) -> str:
        """Column: how many."""

    @abstractmethod
    def plans(self) -> str:
        """Column and heading."""

    @abstractmethod
    def problems(self) -> str:
        """Column: how many problems there are in what was entered."""

    @abstractmethod
    def visit_on(self, *, number: int, on_date: str) -> str:
        """A visit with its date; `on_date` may be ''."""

    @abstractmethod
    def new_date(self) -> str:
        """Label: the day of a new visit."""

    @abstractmethod
    def like(self) -> str:
        """Label: which earlier visit sites, game, hub and room are copied from."""

    @abstractmethod
    def like_visit(self, *, number: int, on_date: str) -> str:
        """Choice: an earlier visit; `on_date` may be ''."""

    @abstractmethod
    def like_nothing(self) -> str:
        """Choice: nothing is copied."""

    @abstractmethod
    def begin(self) -> str:
        """Button."""

    @abstractmethod
    def begun(self, *, number: int) -> str:
        """Message after a visit was added."""

    @abstractmethod
    def plan_of(self, *, visit: int, plan: int) -> str:
        """Link to a plan."""

    @abstractmethod
    def made(self, *, on_date: str, who: Name) -> str:
        """Beside the link to a plan; `who` may be ''."""

    @abstractmethod
    def force(self) -> str:
        """Heading: drawings of the comfortable force at all visits."""

    @abstractmethod
    def force_more(self, *, unit: Name) -> str:
        """Under the heading."""

    @abstractmethod
    def force_at(self, *, site: Name, unit: Name) -> str:
        """Caption of the table with the same figures."""

    @abstractmethod
    def consent(self) -> str:
        """Heading."""

    @abstractmethod
    def view_consent(self) -> str:
        """Link to the page 'Consent'."""

    @abstractmethod
    def record_consent(self) -> str:
        """Link to the page 'Consent': there is none yet."""

    @abstractmethod
    def loans(self) -> str:
        """Heading."""

    @abstractmethod
    def held(self) -> str:
        """Heading: what can be done with all data about the player."""

    @abstractmethod
    def download(self, *, code: Name) -> str:
        """Link."""

    @abstractmethod
    def download_more(self) -> str:
        """Beside the link."""

    @abstractmethod
    def import_case(self) -> str:
        """Link."""

    @abstractmethod
    def erase(self, *, code: Name) -> str:
        """Link to the page that erases."""

    @abstractmethod
    def erase_more(self) -> str:
        """Beside the link."""
