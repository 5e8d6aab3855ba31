"""A task from its start to its end."""

import numpy as np

from stickwright.capture.task import Keep, Samples, Start, advance, begin
from stickwright.capture.tasks import play_task


def test_samples_are_kept_with_what_was_asked():
    """Every sample of a running task comes out once, with the cue that was on the screen."""
    state, _ = advance(begin(play_task(lasts_s=10.0)), Start(0.0))
    rows = np.column_stack([np.arange(1, 6) * 0.1, np.zeros((5, 2)), np.full((5, 2), np.nan), np.zeros((5, 2))])
    _, effects = advance(state, Samples(rows))
    kept = np.concatenate([each.rows for each in effects if isinstance(each, Keep)])
    np.testing.assert_array_equal(kept[:, 0], rows[:, 0])
    np.testing.assert_array_equal(kept[:, 6], 8.0)
