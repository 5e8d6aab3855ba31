"""How the trials of two set-ups, A and B, are put in order by lot, and every order that the lot could have given.

The order that was drawn says later which differences chance could have made (`stickwright.evidence.randomisation`), so a design
counts its own orders: by the restrictions that practice needs there are fewer of them than it seems.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

from stickwright.codes.evidence import Evidence
from stickwright.codes.message import message
from stickwright.errors import BadInput, Problem

__all__ = ["Alternating", "Design", "Pairs", "Phases", "Starts", "smallest_p"]

Orders = NDArray[np.bool_]
"""Orders of trials, shape (orders, trials): True is B. Of several players, one player's trials after the other's."""


class Design(Protocol):
    """What every design can do."""

    @property
    def trials(self) -> int:
        """How many trials there are in all."""

    @property
    def mirrored(self) -> bool:
        """Whether each order with A and B changed is another one."""

    def count(self) -> int:
        """How many orders the lot can give, all equally likely."""

    def orders(self) -> Iterator[tuple[bool, ...]]:
        """Every one of them, always in the same order."""

    def drawn(self, rng: np.random.Generator, many: int = 1) -> Orders:
        """As many of them as asked, each by lot."""


def smallest_p(design: Design, *, two_sided: bool = True) -> float:
    """The smallest chance that a trial by this design can ever show, to be said before it begins.

    Parameters
    ----------
    design : Design
    two_sided : bool, default True
        Whether a difference in the other direction would count as well. Where A and B change places in every order (as in
        `Alternating` with as many of each), two orders are then equally extreme; otherwise one.

    Notes
    -----
    [edgington-onghena-2007].

    Examples
    --------
    >>> smallest_p(Alternating(3, 3)), round(smallest_p(Alternating(4, 4)), 4)
    (0.1, 0.0286)
    """
    return min(1.0, (2 if two_sided and design.mirrored else 1) / design.count())


@dataclass(frozen=True)
class Alternating:
    """Single trials in any order, with at most so many of one set-up in a row.

    Parameters
    ----------
    a, b : int
        How many trials of each.
    alike : int, optional
        Most of one in a row; None for no limit.
    """

    a: int
    b: int
    alike: int | None = None

    def __post_init__(self) -> None:
        """No design without an order."""
        if min(self.a, self.b) < 1 or (self.alike is not None and self.alike < 1) or self.count() == 0:
            raise BadInput([Problem(message(Evidence.design), message(Evidence.alternating_of, a=self.a, b=self.b, alike=self.alike),
                                    message(Evidence.an_order_at_all), message(Evidence.allow_more_alike))])  # fmt: skip

    @property
    def trials(self) -> int:
        """How many trials there are in all."""
        return self.a + self.b

    @property
    def mirrored(self) -> bool:
        """Whether each order with A and B changed is another one."""
        return self.a == self.b

    def count(self) -> int:
        """How many orders the lot can give."""
        return _ways(self.a, self.b, self.alike or self.trials, None, 0)

    def orders(self) -> Iterator[tuple[bool, ...]]:
        """Every order, A first."""
        most = self.alike or self.trials

        def onward(so_far: tuple[bool, ...], left: tuple[int, int], run: int) -> Iterator[tuple[bool, ...]]:
            if not any(left):
                yield so_far
            for is_b in (False, True):
                again = run + 1 if so_far and so_far[-1] == is_b else 1
                if left[is_b] and again <= most:
                    yield from onward((*so_far, is_b), (left[0] - (not is_b), left[1] - is_b), again)

        return onward((), (self.a, self.b), 0)

    def drawn(self, rng: np.random.Generator, many: int = 1) -> Orders:
        """Trial by trial, each set-up with the share of the orders that go on with it, so that all orders are equally likely."""
        most = self.alike or self.trials
        found = np.empty((many, self.trials), dtype=np.bool_)
        for row in found:
            left, last, run = [self.a, self.b], None, 0
            for place in range(self.trials):
                ways = [_ways_after(left[0], left[1], most, last, run, is_b) for is_b in (False, True)]
                is_b = bool(rng.integers(sum(ways)) >= ways[0])
                run = run + 1 if is_b == last else 1
                left[is_b] -= 1
                row[place] = last = is_b
        return found


@cache
def _ways(a: int, b: int, most: int, last: bool | None, run: int) -> int:
    """Orders of what is left, after `run` trials of `last`."""
    if a == b == 0:
        return 1
    return sum(_ways_after(a, b, most, last, run, is_b) for is_b in (False, True))


def _ways_after(a: int, b: int, most: int, last: bool | None, run: int, is_b: bool) -> int:
    again = run + 1 if is_b == last else 1
    left = (a, b - 1) if is_b else (a - 1, b)
    return _ways(*left, most, is_b, again) if min(left) >= 0 and again <= most else 0


@dataclass(frozen=True)
class Pairs:
    """Pairs of one trial of each set-up; which comes first is drawn in every pair.

    Parameters
    ----------
    pairs : int
        How many.
    """

    pairs: int

    def __post_init__(self) -> None:
        """At least one pair."""
        if self.pairs < 1:
            raise BadInput([Problem(message(Evidence.design), message(Evidence.pairs_of, count=self.pairs),
                                    message(Evidence.at_least_pairs, count=1))])  # fmt: skip

    mirrored = True
    """Each order with A and B changed is another one."""

    @property
    def trials(self) -> int:
        """How many trials there are in all."""
        return 2 * self.pairs

    def count(self) -> int:
        """How many orders the lot can give."""
        return int(2**self.pairs)

    def orders(self) -> Iterator[tuple[bool, ...]]:
        """Every order, A first."""
        for firsts in itertools.product((False, True), repeat=self.pairs):
            yield tuple(is_b for first in firsts for is_b in (first, not first))

    def drawn(self, rng: np.random.Generator, many: int = 1) -> Orders:
        """A coin for every pair."""
        first = rng.integers(0, 2, (many, self.pairs)).astype(np.bool_)
        return np.stack([first, ~first], axis=2).reshape(many, self.trials)


@dataclass(frozen=True)
class Phases:
    """Phases of A and B in turn (A, B or A, B, A, B and so on), where the moments of change are drawn.

    Parameters
    ----------
    trials : int
        Of all phases.
    phases : int, default 2
        How many phases.
    shortest : int, default 3
        Fewest trials of a phase.
    """

    trials: int
    phases: int = 2
    shortest: int = 3

    def __post_init__(self) -> None:
        """Every phase has room."""
        if self.phases < 2 or self.shortest < 1 or self.trials < self.phases * self.shortest:
            raise BadInput([Problem(message(Evidence.design), message(Evidence.phases_of, phases=self.phases, trials=self.trials),
                                    message(Evidence.phases_need, phases=self.phases, trials=self.phases * self.shortest))])  # fmt: skip

    mirrored = False
    """A comes first in every order."""

    @property
    def free(self) -> int:
        """Trials beyond the fewest of each phase."""
        return self.trials - self.phases * self.shortest

    def count(self) -> int:
        """How many orders the lot can give."""
        return math.comb(self.free + self.phases - 1, self.phases - 1)

    def orders(self) -> Iterator[tuple[bool, ...]]:
        """Every order, the first change earliest first."""
        for bars in itertools.combinations(range(self.free + self.phases - 1), self.phases - 1):
            yield self._order(bars)

    def drawn(self, rng: np.random.Generator, many: int = 1) -> Orders:
        """The free trials shared among the phases, every sharing equally likely."""
        slots = self.free + self.phases - 1
        bars = [sorted(rng.choice(slots, self.phases - 1, replace=False).tolist()) for _ in range(many)]
        return np.array([self._order(tuple(one)) for one in bars], dtype=np.bool_)

    def _order(self, bars: tuple[int, ...]) -> tuple[bool, ...]:
        ends = (-1, *bars, self.free + self.phases - 1)
        lengths = [self.shortest + after - before - 1 for before, after in itertools.pairwise(ends)]
        return tuple(bool(phase % 2) for phase, length in enumerate(lengths) for _ in range(length))


@dataclass(frozen=True)
class Starts:
    """Several players (or tasks) side by side, each from A to B once, who changes at which of the given trials is drawn.

    Parameters
    ----------
    trials_each : int
        Of one player.
    starts : tuple of int
        Trial, from 0, with which B begins: one for each player, in order of time. None alike.
    """

    trials_each: int
    starts: tuple[int, ...]

    def __post_init__(self) -> None:
        """Every player has some of each."""
        inside = all(0 < start < self.trials_each for start in self.starts)
        if len(self.starts) < 2 or not inside or len(set(self.starts)) < len(self.starts):
            raise BadInput([Problem(message(Evidence.design), message(Evidence.starts_of, count=len(self.starts)),
                                    message(Evidence.starts_need))])  # fmt: skip

    @property
    def trials(self) -> int:
        """How many trials there are in all."""
        return self.trials_each * len(self.starts)

    mirrored = False
    """A comes first in every order."""

    def count(self) -> int:
        """How many orders the lot can give [wampold-worsham-1986]."""
        return math.factorial(len(self.starts))

    def orders(self) -> Iterator[tuple[bool, ...]]:
        """Every order, as given first."""
        for starts in itertools.permutations(self.starts):
            yield self._order(starts)

    def drawn(self, rng: np.random.Generator, many: int = 1) -> Orders:
        """The starts shuffled among the players."""
        return np.array(
            [self._order(tuple(rng.permutation(self.starts).tolist())) for _ in range(many)], dtype=np.bool_
        )

    def _order(self, starts: tuple[int, ...]) -> tuple[bool, ...]:
        return tuple(trial >= start for start in starts for trial in range(self.trials_each))
