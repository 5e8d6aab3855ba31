"""The order in which targets round a circle are asked, against the published drawing of it."""

import numpy as np
import pytest

from stickwright.measure.targets import ring_of_targets


@pytest.mark.parametrize(
    "count, order",
    [
        (9, [1, 6, 2, 7, 3, 8, 4, 9, 5, 1]),
        (13, [1, 8, 2, 9, 3, 10, 4, 11, 5, 12, 6, 13, 7, 1]),
    ],
)
def test_the_drawn_order(count, order):
    """ISO 9241-411, multi-directional tapping, as drawn there and in Soukoreff & MacKenzie 2004 (drawing from memory): from the
    top target across to the one just past the opposite side, back to the neighbour of the first, and so on round the circle;
    targets counted clockwise from the top."""
    places = np.array(ring_of_targets(count, 1.0))
    clockwise = np.degrees(np.arctan2(places[:, 0], places[:, 1])) % 360
    assert (np.rint(clockwise * count / 360).astype(int) % count + 1).tolist() == order
    assert places[0] == pytest.approx((0.0, 0.5 / np.cos(np.pi / (2 * count))), abs=1e-12)
