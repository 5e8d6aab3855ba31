"""A figure with its interval as it is said to people at the table, and what would make it surer."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from stickwright.codes.estimate import Estimate
from stickwright.codes.live_figures import FigureUnit, LiveFigures, Repeatable, Verdict
from stickwright.codes.message import Message, Text, message
from stickwright.codes.ways import Way
from stickwright.model.recorded import Finding

__all__ = ["Better", "Line", "More", "Progress", "more_of", "no_lines"]

Better = Literal["more", "less", ""]

MOST_AT_ONCE = 3


@dataclass(frozen=True)
class Line:
    """One figure with its interval.

    Parameters
    ----------
    label : Message
        What it is; lines of one label are of one figure.
    estimate : Estimate
        In the unit named.
    wanted : float
        Half-width of the interval that is good enough; NaN where nothing is wanted of it.
    ask : str
        What is asked for to know it better: 'push'.
    way : str or None
        In which direction.
    steps : tuple of int
        Steps of the task that give one more.
    least : int
        So many are needed for any interval.
    unit : str
        Of the estimate.
    better : {"more", "less", ""}
        Which way is better when two sticks or settings are compared; '' when neither is.
    most : int
        So many are asked for at once.
    at_least : float
        The figure itself must be so large (a time to watch, say); NaN where that does not matter.
    """

    label: Message
    estimate: Estimate
    wanted: float = math.nan
    ask: Repeatable = "repeat"
    way: Way | None = None
    steps: tuple[int, ...] = ()
    least: int = 3
    unit: FigureUnit = "share"
    better: Better = ""
    most: int = MOST_AT_ONCE
    at_least: float = math.nan

    @property
    def decides(self) -> bool:
        """Whether anything is wanted of it."""
        return math.isfinite(self.wanted) or math.isfinite(self.at_least)

    @property
    def excess(self) -> float:
        """Half-width over what is wanted; infinite where there is no interval and there should be."""
        if self.estimate.value is None:
            return math.inf
        if math.isfinite(self.at_least):
            return 0.0 if self.estimate.value >= self.at_least else math.inf
        if self.estimate.has_interval:
            return (self.estimate.upper - self.estimate.lower) / 2 / self.wanted
        # Enough of them and still no interval: all alike, at the edge of what the stick gives.
        return 0.0 if self.estimate.n >= self.least else math.inf

    @property
    def enough(self) -> bool:
        """Whether it is known as well as is wanted."""
        return self.excess <= 1.0

    @property
    def words(self) -> Message:
        """The figure with its interval, or with the reason for none."""
        text = LiveFigures.figure_alone if math.isfinite(self.at_least) else LiveFigures.figure
        return message(text, value=self.estimate, unit=self.unit)

    @property
    def wanted_words(self) -> Message:
        """The half-width wanted, or the least figure; of a line that decides."""
        if math.isfinite(self.at_least):
            return message(LiveFigures.at_least, least_s=self.at_least)
        if self.unit == "s":
            return message(LiveFigures.within_time, half_width_s=self.wanted)
        if self.unit == "bit/s":
            return message(LiveFigures.within_bits, half_width_per_s=self.wanted)
        if self.unit == "per-s":
            return message(LiveFigures.within_presses, half_width_per_s=self.wanted)
        return message(LiveFigures.within_share, half_width_share=self.wanted)


@dataclass(frozen=True)
class More:
    """What to ask for once more.

    Parameters
    ----------
    what : str
        'push', 'rest'.
    count : int
        How many.
    way : str or None
        In which direction.
    steps : tuple of int
        Steps of the task to hand to `task.Repeat`; empty for the whole task.
    """

    what: Repeatable
    count: int
    way: Way | None = None
    steps: tuple[int, ...] = ()

    @property
    def text(self) -> Message:
        """The same, to be said."""
        return message(LiveFigures.more, count=self.count, what=self.what, way=self.way)


@dataclass(frozen=True)
class Progress:
    """What is known so far.

    Parameters
    ----------
    verdict : {"nothing-yet", "not-enough", "nearly", "enough"}
        In one word.
    sentence : Message
        The verdict with its reason and what to do.
    lines : tuple of Line
        Figures.
    more : tuple of More
        What to ask for.
    doubts : tuple of Finding
        What looks wrong and can be put right now.
    """

    verdict: Verdict
    sentence: Text
    lines: tuple[Line, ...] = ()
    more: tuple[More, ...] = ()
    doubts: tuple[Finding, ...] = ()


def no_lines(sentence: Text, doubts: tuple[Finding, ...] = ()) -> Progress:
    """Nothing yet, and why.

    Parameters
    ----------
    sentence : Message or str
        The reason.
    doubts : tuple of Finding
        What was noticed all the same.
    """
    return Progress("nothing-yet", sentence, doubts=doubts)


def more_of(line: Line) -> More:
    """How many more would bring a line's interval to the width wanted, as many as can be asked for at once.

    Parameters
    ----------
    line : Line
        Not yet known well enough.

    Notes
    -----
    A half-width goes with 1/sqrt(n), so n (half-width/wanted)^2 are needed in all.

    Examples
    --------
    >>> reach = message(LiveFigures.reach, way="left")
    >>> more_of(Line(reach, Estimate(0.6, 0.48, 0.72, n=3), 0.1, "push", "left", (2,)))
    More(what='push', count=2, way='left', steps=(2, 2))
    """
    n = line.estimate.n
    if math.isfinite(line.excess):
        missing = math.ceil(n * line.excess**2 - 1e-9) - n
    else:
        missing = line.least - n
    count = max(1, min(line.most, missing))
    return More(line.ask, count, line.way, line.steps * count)
