"""Wilks' tolerance limit against its published and tabulated sample sizes.

Source: S. S. Wilks, Determination of sample sizes for setting tolerance limits, Ann. Math. Statist. 12 (1941),
91-96 (59 read on a page that quotes it; the rest worked out from the binomial formula printed there).
"""

import pytest

from stickwright.tuning.dead_zone import largest_rank, smallest_sample


@pytest.mark.parametrize(
    "coverage, confidence, smallest",
    [
        (0.95, 0.95, (59, 93, 124, 153, 181, 208)),
        (0.90, 0.95, (29, 46, 61)),
        (0.99, 0.95, (299, 473)),
        (0.95, 0.90, (45, 77)),
        (0.95, 0.99, (90, 130)),
    ],
)
def test_wilks_smallest_samples(coverage, confidence, smallest):
    """Wilks 1941: fewest samples whose r-th largest covers a share of rest at a confidence, r = 1, 2, ..."""
    found = tuple(smallest_sample(coverage, confidence, rank=rank) for rank in range(1, len(smallest) + 1))
    assert found == smallest


@pytest.mark.parametrize("n, rank", [(58, 0), (59, 1), (100, 2), (200, 5), (500, 17), (1000, 39)])
def test_wilks_rank_allowed(n, rank):
    """Wilks 1941: which sample from the top may be the limit at 95 % coverage and 95 % confidence."""
    assert largest_rank(n) == rank
