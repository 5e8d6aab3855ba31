"""A figure with its interval as it is said to people at the table, and what would make it surer."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from stickwright.model.estimate import Estimate
from stickwright.model.recorded import Finding
from stickwright.units import figures

__all__ = ["Better", "Line", "More", "Progress", "Unit", "Verdict", "counted", "more_of", "no_lines", "said"]

Verdict = Literal["nothing yet", "not enough", "nearly", "enough"]
Unit = Literal["share", "s", "bit/s", "per s", "share/s", "deg"]
Better = Literal["more", "less", ""]

MOST_AT_ONCE = 3
_NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")


@dataclass(frozen=True)
class Line:
    """One figure with its interval.

    Parameters
    ----------
    label : str
        What it is: 'reach forward-left'.
    estimate : Estimate
        In the unit named.
    wanted : float
        Half-width of the interval that is good enough; NaN where nothing is wanted of it.
    ask : (str, str)
        What more of it is called, one and several: ('more at left', 'more at left').
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

    label: str
    estimate: Estimate
    wanted: float = math.nan
    ask: tuple[str, str] = ("more", "more")
    steps: tuple[int, ...] = ()
    least: int = 3
    unit: Unit = "share"
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
    def words(self) -> str:
        """The figure with its interval, or with the reason for none."""
        if math.isfinite(self.at_least):
            return _figure(self.estimate.number, self.unit)
        return said(self.estimate, self.unit)

    @property
    def wanted_words(self) -> str:
        """The half-width wanted, or the least figure, as people read it."""
        if math.isfinite(self.at_least):
            return f"at least {_figure(self.at_least, self.unit)}"
        return f"± {_figure(self.wanted, self.unit)}" if math.isfinite(self.wanted) else ""


@dataclass(frozen=True)
class More:
    """What to ask for once more.

    Parameters
    ----------
    words : str
        'three more at back-left'.
    count : int
        How many.
    steps : tuple of int
        Steps of the task to hand to `task.Repeat`; empty for the whole task.
    """

    words: str
    count: int
    steps: tuple[int, ...] = ()


@dataclass(frozen=True)
class Progress:
    """What is known so far.

    Parameters
    ----------
    verdict : {"nothing yet", "not enough", "nearly", "enough"}
        In one or two words.
    sentence : str
        The verdict with its reason and what to do.
    lines : tuple of Line
        Figures.
    more : tuple of More
        What to ask for.
    doubts : tuple of Finding
        What looks wrong and can be put right now.
    """

    verdict: Verdict
    sentence: str
    lines: tuple[Line, ...] = ()
    more: tuple[More, ...] = ()
    doubts: tuple[Finding, ...] = ()


def no_lines(sentence: str, doubts: tuple[Finding, ...] = ()) -> Progress:
    """Nothing yet, and why.

    Parameters
    ----------
    sentence : str
        The reason.
    doubts : tuple of Finding
        What was noticed all the same.
    """
    return Progress("nothing yet", sentence, doubts=doubts)


def counted(count: int, one: str, several: str) -> str:
    """A count in words: ``counted(3, 'push', 'pushes')`` is 'three pushes'.

    Parameters
    ----------
    count : int
        0 or more.
    one, several : str
        What is counted.

    Examples
    --------
    >>> counted(1, "more lap", "more laps"), counted(20, "more target", "more targets")
    ('one more lap', '20 more targets')
    """
    number = _NUMBERS[count] if count < len(_NUMBERS) else str(count)
    return f"{number} {one if count == 1 else several}"


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
    >>> more_of(Line("reach left", Estimate(0.6, 0.48, 0.72, n=3), 0.1, ("more at left", "more at left"), (2,)))
    More(words='two more at left', count=2, steps=(2, 2))
    """
    n = line.estimate.n
    if math.isfinite(line.excess):
        missing = math.ceil(n * line.excess**2 - 1e-9) - n
    else:
        missing = line.least - n
    count = max(1, min(line.most, missing))
    return More(counted(count, *line.ask), count, line.steps * count)


def said(estimate: Estimate, unit: Unit = "share") -> str:
    """A figure with its interval in words; without an interval the reason.

    Parameters
    ----------
    estimate : Estimate
        In `unit`.
    unit : str
        Of the estimate.

    Examples
    --------
    >>> said(Estimate(0.723, 0.65, 0.79)), said(Estimate(0.21, 0.18, 0.24), "s")
    ('72 % (65 to 79 %)', '0.21 s (0.18 to 0.24 s)')
    """
    if estimate.value is None:
        return f"not known ({(estimate.why or 'too little was recorded').rstrip('.')})"
    value = _figure(estimate.value, unit)
    if estimate.has_interval:
        return f"{value} ({_figure(estimate.lower, unit, bare=True)} to {_figure(estimate.upper, unit)})"
    return f"{value}, no interval ({(estimate.why or 'too little was recorded').rstrip('.')})"


_LABELS = {"s": " s", "bit/s": " bit/s", "per s": " presses a second", "share/s": " % a second", "deg": "°"}


def _figure(value: float, unit: Unit, *, bare: bool = False) -> str:
    if unit in ("share", "share/s"):
        percent = 100 * value
        text = f"{percent:.0f}" if abs(percent) >= 9.95 else figures(percent, 2)
        return text if bare else text + (" %" if unit == "share" else _LABELS[unit])
    text = f"{value:.0f}" if unit == "deg" else figures(value, 2) if abs(value) < 10 else f"{value:.0f}"
    return text if bare else text + _LABELS[unit]
