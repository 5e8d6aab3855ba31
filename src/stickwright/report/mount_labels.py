"""Names in a drawing where they cover least: each beside what it names, never over another name."""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from stickwright.report.ink import LINE_MM, fitted, text_mm

__all__ = ["Labels"]

Spot = tuple[float, float]
Grid = NDArray[np.float64]
_STEP_MM = 1.0
_AWAY, _OVER, _FAR_MM = 1.0, 0.55, 60.0  # cost of a millimetre's distance, and of a millimetre of line that is covered
_TAKEN = 1e6


class Labels:
    """Room for names inside a frame, in millimetre of paper.

    Parameters
    ----------
    left, top, width, height : float
        Of the frame.
    """

    def __init__(self, left: float, top: float, width: float, height: float) -> None:
        self._corner, self._size = (left, top), (width, height)
        self._cost = np.zeros((max(1, int(height / _STEP_MM)), max(1, int(width / _STEP_MM))))

    def draw_over(self, *spots: Spot, weight: float = 1.0) -> None:
        """Note a line, so that names keep off it.

        Parameters
        ----------
        *spots : tuple of float
            Points that it runs through.
        weight : float, default 1
            How much it matters.
        """
        for start, end in itertools.pairwise(spots):
            steps = max(1, int(math.dist(start, end) / _STEP_MM))
            for step in range(steps + 1):
                share = step / steps
                x, y = (a + share * (b - a) for a, b in zip(start, end, strict=True))
                column, row = int((x - self._corner[0]) / _STEP_MM), int((y - self._corner[1]) / _STEP_MM)
                if 0 <= row < self._cost.shape[0] and 0 <= column < self._cost.shape[1]:
                    self._cost[row, column] = max(self._cost[row, column], weight)

    def place(
        self, text: str, anchors: Sequence[Spot], room_mm: float = 30.0, bold: bool = False
    ) -> tuple[tuple[str, ...], Spot, Spot] | None:
        """The best free place for a name: its lines, its top left corner, and the anchor that it belongs to.

        Parameters
        ----------
        text : str
            The name.
        anchors : sequence of tuple of float
            Points of what it names; the nearest counts.
        room_mm : float, default 30
            Width of its longest line.
        bold : bool, default False
            Whether it is printed bold.

        Returns
        -------
        tuple or None
            None when no place is left that covers no other name.
        """
        lines = tuple(fitted(text, room_mm, 5, bold))
        wide = max(text_mm(line, bold) for line in lines) + 1.0
        high = len(lines) * LINE_MM + 0.6
        columns, rows = math.ceil(wide / _STEP_MM), math.ceil(high / _STEP_MM)
        if rows > self._cost.shape[0] or columns > self._cost.shape[1] or not anchors:
            return None
        totals = np.zeros((self._cost.shape[0] + 1, self._cost.shape[1] + 1))
        totals[1:, 1:] = self._cost.cumsum(0).cumsum(1)
        covered = (
            totals[rows:, columns:] - totals[:-rows, columns:] - totals[rows:, :-columns] + totals[:-rows, :-columns]
        )
        top, left = np.mgrid[0 : covered.shape[0], 0 : covered.shape[1]] * _STEP_MM
        away = np.min([self._away(anchor, left, top, (wide, high)) for anchor in anchors], axis=0)
        cost = np.round(_OVER * covered + _AWAY * away, 6)
        row, column = np.unravel_index(int(np.argmin(cost)), cost.shape)
        if cost[row, column] >= _TAKEN or away[row, column] > _FAR_MM:
            return None
        self._cost[row : row + rows, column : column + columns] = _TAKEN * 10
        corner = (self._corner[0] + column * _STEP_MM, self._corner[1] + row * _STEP_MM)
        middle = (corner[0] + wide / 2, corner[1] + high / 2)
        return lines, corner, min(anchors, key=lambda anchor: math.dist(anchor, middle))

    def _away(self, anchor: Spot, left: Grid, top: Grid, size: Spot) -> Grid:
        """Distance from an anchor to the nearest side of the name, a little gap being best."""
        x, y = anchor[0] - self._corner[0], anchor[1] - self._corner[1]
        beside = np.maximum(0.0, np.maximum(left - x, x - (left + size[0])))
        above = np.maximum(0.0, np.maximum(top - y, y - (top + size[1])))
        return np.asarray(np.abs(np.hypot(beside, above) - 2.0), dtype=np.float64)
