"""What to measure or try before figures that nobody measured are trusted."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Text, Topic

__all__ = ["ToConfirm"]


class ToConfirm(Topic):
    """Readings that would replace assumed figures: a noun after "measure", or a question after "try whether" and "note"."""

    @abstractmethod
    def doubt(self, *, confirm: Text, assumed: Text) -> str:
        """As a clause: what to confirm, and what the assumed figures say."""

    @abstractmethod
    def steps(self, *, trials: tuple[Text, ...], readings: tuple[Text, ...]) -> str:
        """As a clause: what to try, and what to measure; one of the two may be empty."""

    @abstractmethod
    def hold_still(self) -> str:
        """A reading: holding still on a stick of known stiffness."""

    @abstractmethod
    def resting_force(self) -> str:
        """A reading: the limb at rest on a scale or gauge."""

    @abstractmethod
    def movement_range(self) -> str:
        """A reading: how far the player moves in the main directions."""

    @abstractmethod
    def other_directions(self) -> str:
        """A reading: force and movement range where they were not read."""

    @abstractmethod
    def half_way_force(self) -> str:
        """A reading: force at half the movement range."""

    @abstractmethod
    def usual_deflection(self) -> str:
        """A reading: how far the game needs the stick pushed."""

    @abstractmethod
    def time_in_use(self) -> str:
        """A reading: how much of the time the stick is in use."""

    @abstractmethod
    def comfortable_share(self) -> str:
        """A reading: the treating team's figure for comfortable over largest force."""

    @abstractmethod
    def spasm_peaks(self) -> str:
        """A reading: the peaks of ten spasms."""

    @abstractmethod
    def lifts_off(self) -> str:
        """A trial: whether the control site lifts off by itself."""

    @abstractmethod
    def stays_on(self) -> str:
        """A trial: whether the control site stays on the part."""

    @abstractmethod
    def resting_weight(self) -> str:
        """A reading: the control site at rest on the gauge where the switch will be."""

    @abstractmethod
    def rest_steadiness(self) -> str:
        """A reading: unsteadiness while resting there."""

    @abstractmethod
    def press_force(self) -> str:
        """A reading: a press that can be repeated without strain."""

    @abstractmethod
    def press_rate(self) -> str:
        """A reading: as many presses as are comfortable."""

    @abstractmethod
    def landing(self) -> str:
        """A reading: where presses land."""

    @abstractmethod
    def press_count(self) -> str:
        """A reading: presses in the busiest minute of play."""

    @abstractmethod
    def rests_clear(self) -> str:
        """A trial: whether the control site rests clear of the switch."""

    @abstractmethod
    def button_force(self) -> str:
        """A reading: force of the controller's buttons."""

    @abstractmethod
    def bench(self) -> str:
        """A reading: the stick's forces and travel on the bench."""
