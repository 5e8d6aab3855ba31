"""What a recording tells of a stick that is left alone."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.cleaning import Axis
from stickwright.codes.message import Text, Topic

__all__ = ["Resting"]


class Resting(Topic):
    """Findings about rest, and clauses why something of it is not known."""

    @abstractmethod
    def one_release(self) -> str:
        """The stick was left alone once; whether it self-centres shows after several releases."""

    @abstractmethod
    def unsettled(self, *, unsettled: int, asked: int) -> str:
        """Some of the rests asked for, or all, never settled."""

    @abstractmethod
    def zero_throughout(self, *, live: bool) -> str:
        """Why: the rest is exactly zero throughout; whether anything else of the recording is not."""

    @abstractmethod
    def fixed(self) -> str:
        """Why: the rest is at one value throughout."""

    @abstractmethod
    def partly_zero(self, *, zero_share: float) -> str:
        """Why: so much of the rest is exactly zero."""

    @abstractmethod
    def own_unit(self) -> str:
        """No rest was asked for, and the unit has no known centre."""

    @abstractmethod
    def one_axis(self, *, recorded: Axis) -> str:
        """Rest cannot be told from one axis alone."""

    @abstractmethod
    def no_rest(self, *, least_s: float) -> str:
        """No rest that is long enough."""

    @abstractmethod
    def not_recorded(self, *, axis: Axis) -> str:
        """Why a figure is not known: that axis was not recorded."""

    @abstractmethod
    def leaned_on_first(self, *, x: Text, y: Text, later_s: float) -> str:
        """The first rest lies far from zero and all later ones elsewhere."""

    @abstractmethod
    def leaned_on(self, *, x: Text, y: Text) -> str:
        """The rest lies far from zero."""

    @abstractmethod
    def held_near_centre(self, *, held: int, stretches: int, apart: Text) -> str:
        """Of the quiet stretches, some lie away from the others: taken as held."""

    @abstractmethod
    def return_scatter(self, *, scatter: Text, rests: int, farthest: Text) -> str:
        """The stick returns to a different place after each release: standard deviation, number of rests, the farthest."""

    @abstractmethod
    def no_drift(self) -> str:
        """Why drift is not known."""

    @abstractmethod
    def drift(self, *, drift: Text, low: Text, high: Text, within: bool) -> str:
        """The centre drifts so much a minute (with its interval), within the rests or from one to the next."""

    @abstractmethod
    def offset(self, *, axes: tuple[Text, ...]) -> str:
        """The stick rests off its centre on one axis or both (`axis_offset`)."""

    @abstractmethod
    def axis_offset(self, *, axis: Axis, offset: Text, low: Text, high: Text) -> str:
        """In a list: offset on one axis, with its interval."""

    @abstractmethod
    def let_go(self, *, times: int, away_s: float) -> str:
        """The stick was let go while something was asked; how often, how long in all."""
