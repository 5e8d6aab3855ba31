"""Why each action is done as it is: the control layout for the practitioner, on the sheet and in the terminal."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.estimate import Estimate
from stickwright.codes.inputs import Role
from stickwright.codes.message import Name, Text, Topic

__all__ = ["Heading", "LayoutPages", "Left"]

Heading = Literal[
    "reasons", "requests", "ways_out", "loads", "together", "alternatives", "elsewhere", "order", "press", "second", "socket",
    "site", "actions", "busy", "tires", "why", "action", "by", "with", "plugged",
]  # fmt: skip
Left = Literal["option", "helper", "dropped"]


class LayoutPages(Topic):
    """Labels, table cells and sentences; a clause has no full stop."""

    @abstractmethod
    def heading(self, *, part: Heading) -> str:
        """Headings of the part on reasons, requests that clash, ways out of a clash, load of each site, simultaneous use,
        next best layouts, other places for an action, order of introduction; labels in front of a press, a second best,
        a socket; heads of columns: site, actions, share of the busiest minute, fatigue order, why, action, by whom,
        with what, in which socket."""

    @abstractmethod
    def no_hub(self) -> str:
        """No hub is described, so nothing is said of sockets and cables."""

    @abstractmethod
    def clash(self, *, told: Text, given_up: Text | None) -> str:
        """In the terminal: some requests cannot be met, what clashes, and what was given up (sentences)."""

    @abstractmethod
    def requests(self, *, requests: tuple[Text, ...]) -> str:
        """Requests that cannot all be met, behind the heading `requests`."""

    @abstractmethod
    def way_out(self, *, told: Text, cost_points: float, taken: bool) -> str:
        """One way out of a clash and its cost to the player; `taken`: this layout takes it."""

    @abstractmethod
    def action(self, *, place: Text, socket: Text | None, role: Role | None) -> str:
        """Behind the name of an action: who does it with what, where that is plugged in, and what it acts as in the game."""

    @abstractmethod
    def plugged(self, *, socket: Text, role: Role | None) -> str:
        """Where a device is plugged in, and what it acts as in the game."""

    @abstractmethod
    def total(self, *, sum: Text) -> str:
        """The score of the whole layout as a sum."""

    @abstractmethod
    def rounded(self) -> str:
        """Under that sum."""

    @abstractmethod
    def sum(self, *, total_points: float, terms: tuple[Text, ...]) -> str:
        """A score as the sum of its terms; none: the score alone."""

    @abstractmethod
    def term(self, *, term_points: float, first: bool, what: Text, why: Text | None) -> str:
        """A term of a sum: its size with its sign (none in front of the first, where it is plus), what it is, and why."""

    @abstractmethod
    def once(self, *, what: Text) -> str:
        """A term that belongs to no single action, in a sum."""

    @abstractmethod
    def basis(self, *, why: Text, basis: Text) -> str:
        """Why a term has its size, and the product that gives it."""

    @abstractmethod
    def pair(
        self,
        *,
        sites: tuple[Name, ...],
        says: Literal["yes", "slows", "no"],
        slowed_share: float | None,
        assumed: Text | None,
    ) -> str:
        """Whether two sites can act at the same time, by how much one slows the other, and what is assumed where nobody
        tried."""

    @abstractmethod
    def pairs(self, *, pairs: tuple[Text, ...]) -> str:
        """All of these in one paragraph, behind the heading `together`."""

    @abstractmethod
    def load(
        self,
        *,
        site: Name,
        actions: tuple[Name, ...],
        busy_share: float | None,
        basis: Text | None,
        tires: int | None,
        why: Text | None,
    ) -> str:
        """What a site does, how much of the busiest minute that fills (and what it adds up from), its place in the fatigue
        order, and why."""

    @abstractmethod
    def tires(self, *, rank: int) -> str:
        """Place of a site in the fatigue order, in a table."""

    @abstractmethod
    def busy(self, *, busy_share: float) -> str:
        """Share of the busiest minute, in a table."""

    @abstractmethod
    def busy_basis(self, *, busy_share: float, basis: Text) -> str:
        """What that share adds up from."""

    @abstractmethod
    def load_why(self, *, why: Text) -> str:
        """What strains a site, in a table."""

    @abstractmethod
    def press(self, *, parts: tuple[Text, ...]) -> str:
        """The figures of a press; also behind the heading `press`."""

    @abstractmethod
    def press_force(
        self, *, force_n: float, comfortable: Estimate, effort_share: float | None, limit_share: float
    ) -> str:
        """Activation force against comfortable force, and the effort against its limit (None: not known)."""

    @abstractmethod
    def press_hits(self, *, hit_share: float, assumed: bool) -> str:
        """Share of presses that land on the switch; at the usual scatter, where landing was not measured."""

    @abstractmethod
    def press_rate(self, *, count_per_min: float, sustained_per_min: float | None) -> str:
        """Presses in the busiest minute, and how many can be kept up."""

    @abstractmethod
    def press_hold(self, *, hold_s: float, limit_s: float | None) -> str:
        """The longest hold that the game needs, and its limit (None: nobody took one)."""

    @abstractmethod
    def press_face(self, *, face_m: float) -> str:
        """How large a switch would have to be to catch 95 of 100 presses."""

    @abstractmethod
    def press_assumed(self, *, told: tuple[Text, ...]) -> str:
        """What is assumed of a press."""

    @abstractmethod
    def assumed_above(self) -> str:
        """The same, where it stands at a press further up already."""

    @abstractmethod
    def elsewhere(self, *, where: Text, told: Text) -> str:
        """Another place for an action, and how much lower the layout would score there."""

    @abstractmethod
    def not_possible(self, *, where: Text, why: Text) -> str:
        """A place where an action cannot be done, and why."""

    @abstractmethod
    def way(self, *, how: Left) -> str:
        """In place of a site: the game, a helper, or leaving the action out."""

    @abstractmethod
    def done(self, *, action: Name, place: Text) -> str:
        """In the terminal: an action and who does it with what."""

    @abstractmethod
    def no_action(self, *, actions: tuple[Name, ...]) -> str:
        """Refusal: an action that the game does not name was asked for; what was expected."""

    @abstractmethod
    def asked_action(self) -> str:
        """Refusal: what was asked for, an action."""

    @abstractmethod
    def asked_place(self, *, action: Name) -> str:
        """Refusal: what was asked for, a place for this action."""

    @abstractmethod
    def places(self, *, places: tuple[Name, ...]) -> str:
        """Refusal: the places that were expected."""

    @abstractmethod
    def as_in_file(self, *, kind: Literal["game", "player"]) -> str:
        """Refusal: write the name as the game's or the player's file does."""
