"""The equal-precision curve against values worked out from its formula by hand: no outside source."""

import numpy as np
import pytest

from stickwright.tuning.curve import curve_table, equal_precision
from stickwright.tuning.shaping import shaped

# ln(1 + b x / a) / ln(1 + b / a) for a = 0.02, b = 0.10, six digits, worked out apart from the program.
LEVELS = np.array([0.10, 0.25, 0.50, 0.75, 0.90])
OUTPUTS = np.array([0.226294, 0.452589, 0.699180, 0.869617, 0.951438])


def test_equal_precision_values():
    """Scatter 2 % at the centre, growing by 10 % over the range: output at five levels."""
    assert equal_precision(LEVELS, a=0.02, b=0.10) == pytest.approx(OUTPUTS, abs=0.5e-6)


def test_response_uses_the_same_curve():
    """The fast response gives the tabulated outputs, too, beyond a dead zone and above a jump."""
    line = np.column_stack([0.2 + 0.8 * LEVELS, np.zeros(5)])
    out = shaped(line, dead_zone=0.2, inner_jump=0.1, curve_ratio=5.0)
    assert out[:, 0] == pytest.approx(0.1 + 0.9 * OUTPUTS, abs=0.5e-6)


def test_table_of_the_curve():
    """The printed table passes through the tabulated outputs."""
    curve_in, curve_out = curve_table(5.0, points=21)
    assert np.interp(LEVELS, curve_in, curve_out) == pytest.approx(OUTPUTS, abs=0.5e-6)
