"""An invented player for practice: goes, late and trembling, to where a running task asks.

Nobody's measurement: numbers are plausible, not a person's. It serves to learn the program without a stick, since a
recording made earlier cannot know what is asked now.
"""

from __future__ import annotations

import math
from collections import deque
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from stickwright.measure.virtual import VirtualStickState

__all__ = ["PretendPlayer", "Traits"]

_STEP_S = 0.001
_LONGEST_S = 0.25  # A longer time between two looks is a pause, not a movement.


@dataclass(frozen=True)
class Traits:
    """What the invented player is like.

    Parameters
    ----------
    reach : tuple of float
        Farthest to the right, forward, left and back, shares of full output; an ellipse between.
    rest_xy : tuple of float
        Where the stick lies when nothing is asked.
    reaction_s : float
        Between what is asked and the movement.
    quickness_rad_per_s : float
        Natural frequency of the critically damped way there.
    tremor_hz, tremor_share : float
        Rhythm and size (amplitude) of the tremor.
    noise_share : float
        Standard deviation of what is left, per look.
    """

    reach: tuple[float, float, float, float] = (0.85, 0.9, 0.7, 0.6)
    rest_xy: tuple[float, float] = (0.03, -0.02)
    reaction_s: float = 0.28
    quickness_rad_per_s: float = 9.0
    tremor_hz: float = 5.2
    tremor_share: float = 0.012
    noise_share: float = 0.003


class PretendPlayer:
    """A feed for `stickwright.measure.virtual.VirtualStick` that follows what is asked.

    Parameters
    ----------
    asked : callable
        Where the player is asked to be now (x right, y forward, shares of full output), None when nothing is asked;
        called on the reading thread.
    traits : Traits
    seed : int
        Of the noise and the tremor: the same looks at the same times give the same movement.

    Examples
    --------
    >>> player = PretendPlayer(lambda: (0.0, 0.5), Traits(tremor_share=0.0, noise_share=0.0))
    >>> states = [player(0.01 * number) for number in range(300)]
    >>> [round(share, 3) for share in states[20].axes[:2]], [round(share, 3) for share in states[-1].axes[:2]]
    ([0.03, 0.02], [0.0, -0.5])
    """

    def __init__(
        self, asked: Callable[[], tuple[float, float] | None], traits: Traits | None = None, seed: int = 0
    ) -> None:  # fmt: skip
        self.asked = asked
        self.traits = traits or Traits()
        self._rng = np.random.default_rng(seed)
        self._phases = self._rng.uniform(0.0, 2.0 * math.pi, 2)
        self._at = [*self.traits.rest_xy]
        self._speed = [0.0, 0.0]
        self._heard: deque[tuple[float, tuple[float, float]]] = deque()
        self._goal = self.traits.rest_xy
        self._before_s: float | None = None

    def __call__(self, now_s: float) -> VirtualStickState:
        before_s = now_s if self._before_s is None else self._before_s
        self._before_s = now_s
        wanted = self.asked()
        self._heard.append((now_s, self.traits.rest_xy if wanted is None else self._within_reach(*wanted)))
        while self._heard and self._heard[0][0] <= now_s - self.traits.reaction_s:
            self._goal = self._heard.popleft()[1]
        for _ in range(round(min(now_s - before_s, _LONGEST_S) / _STEP_S)):
            self._move()
        x, y = (self._at[axis] + self._tremble(axis, now_s) for axis in range(2))
        return VirtualStickState((x, -y, 0.0, 0.0))

    def _within_reach(self, x: float, y: float) -> tuple[float, float]:
        right, forward, left, back = self.traits.reach
        across, along = right if x >= 0.0 else left, forward if y >= 0.0 else back
        far = math.hypot(x / across, y / along)
        return (x, y) if far <= 1.0 else (x / far, y / far)

    def _move(self) -> None:
        pace = self.traits.quickness_rad_per_s
        for axis in range(2):
            push = pace * pace * (self._goal[axis] - self._at[axis]) - 2.0 * pace * self._speed[axis]
            self._speed[axis] += push * _STEP_S
            self._at[axis] += self._speed[axis] * _STEP_S

    def _tremble(self, axis: int, now_s: float) -> float:
        traits = self.traits
        wave = math.sin(2.0 * math.pi * traits.tremor_hz * now_s + float(self._phases[axis]))
        return traits.tremor_share * wave + traits.noise_share * float(self._rng.standard_normal())
