"""What a measuring task tells while the player is still there: figures, whether they are enough, and what to ask for."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Text, Topic
from stickwright.codes.ways import Way

__all__ = ["FigureUnit", "LiveFigures", "Reason", "Repeatable", "Verdict"]

FigureUnit = Literal["share", "s", "bit/s", "per-s", "share/s", "rad"]
"""Share of travel; seconds; bits of pointing, presses, shares of travel a second; an angle."""

Repeatable = Literal["rest", "edge", "push", "hold", "circle", "following", "presses", "repeat"]
"""What can be asked for once more."""

Reason = Literal[
    "not-tried", "counted", "one-hold", "one-press", "alike", "few-released", "few-on-the-beat", "too-little"
]  # fmt: skip
"""Why a figure is not known, or has no interval."""

Verdict = Literal["nothing-yet", "not-enough", "nearly", "enough"]


class LiveFigures(Topic):
    """Labels are row headings of a table and also begin a sentence that goes on with a colon."""

    @abstractmethod
    def reach(self, *, way: Way) -> str:
        """Label: how far the player gets the stick in a direction."""

    @abstractmethod
    def centre(self, *, axis: Literal["sideways", "forward"]) -> str:
        """Label: where the stick rests against its electrical centre; plus is right, or forward."""

    @abstractmethod
    def rest_time(self) -> str:
        """Label: for how long rest was watched."""

    @abstractmethod
    def rest_noise(self) -> str:
        """Label: movement of the stick within a rest, rms."""

    @abstractmethod
    def area(self) -> str:
        """Label: area that the player covers, of the area of full travel."""

    @abstractmethod
    def turned(self) -> str:
        """Label: by how much pushes are turned against the direction asked, all alike."""

    @abstractmethod
    def hold_scatter(self, *, way: Way, level_share: float) -> str:
        """Label: scatter while a part of the travel is held in a direction."""

    @abstractmethod
    def level_held(self) -> str:
        """Label: deflection at which the stick was held."""

    @abstractmethod
    def level_change(self) -> str:
        """Label: by how much the held deflection rises or sinks."""

    @abstractmethod
    def held_for(self) -> str:
        """Label: how long it was held."""

    @abstractmethod
    def throughput(self) -> str:
        """Label: throughput of pointing, bits a second; explained in a few words."""

    @abstractmethod
    def missed(self) -> str:
        """Label: share of targets missed."""

    @abstractmethod
    def off_target(self) -> str:
        """Label: rms distance from the moving target."""

    @abstractmethod
    def lag(self) -> str:
        """Label: by how much the movement is late."""

    @abstractmethod
    def off_without_lag(self) -> str:
        """Label: distance from the moving target if the movement were not late."""

    @abstractmethod
    def gain(self) -> str:
        """Label: size of the movement against the target's."""

    @abstractmethod
    def away(self) -> str:
        """Label: share of the time in play with the stick away from its centre."""

    @abstractmethod
    def full(self) -> str:
        """Label: share of the time in play at full travel."""

    @abstractmethod
    def press_rate(self) -> str:
        """Label: presses a second."""

    @abstractmethod
    def press_held(self) -> str:
        """Label: how long the switch is held down."""

    @abstractmethod
    def behind_beat(self) -> str:
        """Label: how late presses are to the beat."""

    @abstractmethod
    def figure(self, *, value: Estimate, unit: FigureUnit) -> str:
        """A figure with its interval; without one the reason."""

    @abstractmethod
    def figure_alone(self, *, value: Estimate, unit: FigureUnit) -> str:
        """A figure of which no interval is wanted."""

    @abstractmethod
    def within_share(self, *, half_width_share: float) -> str:
        """What is wanted of a figure: an interval of at most so much on either side."""

    @abstractmethod
    def within_time(self, *, half_width_s: float) -> str:
        """The same of a time."""

    @abstractmethod
    def within_bits(self, *, half_width_per_s: float) -> str:
        """The same of throughput, bits a second."""

    @abstractmethod
    def within_presses(self, *, half_width_per_s: float) -> str:
        """The same of presses a second."""

    @abstractmethod
    def at_least(self, *, least_s: float) -> str:
        """What is wanted of a figure: so much time."""

    @abstractmethod
    def more(self, *, count: int, what: Repeatable, way: Way | None) -> str:
        """What to ask for once more, and how often; also after "Ask for" on a button. `way` for pushes."""

    @abstractmethod
    def reason(self, *, reason: Reason) -> str:
        """Why a figure is not known or has no interval: in brackets behind it."""

    @abstractmethod
    def few_presses(self, *, presses: int) -> str:
        """Why there is no interval: so few presses."""

    @abstractmethod
    def counted_play(self, *, time_s: float) -> str:
        """Why there is no interval: counted over the whole play."""

    @abstractmethod
    def nothing_recorded(self, *, task: Text) -> str:
        """No samples of a task yet."""

    @abstractmethod
    def nothing_told(self, *, task: Text) -> str:
        """Samples, but no figure can be had of them yet."""

    @abstractmethod
    def seen(self) -> str:
        """Verdict of a task whose figures would not get surer: nothing more is asked for."""

    @abstractmethod
    def enough(self, *, label: Text, value: Text, wanted: Text) -> str:
        """Verdict: enough, with the figure that is least sure and what was wanted of it."""

    @abstractmethod
    def not_enough(self, *, nearly: bool, more: tuple[Text, ...], label: Text, value: Text, wanted: Text) -> str:
        """Verdict: not enough, or nearly; what to ask for, and the figure that is least sure."""

    @abstractmethod
    def so_far(self, *, verdict: Literal["not-enough", "nearly", "enough"], steps: int) -> str:
        """Verdict while the task runs, and how many steps are still to come."""

    @abstractmethod
    def known(self, *, line: Literal["information", "enough", "more"]) -> str:
        """Table cell: the figure decides nothing, is sure enough, or is not."""
