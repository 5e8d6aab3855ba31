"""A simulated player at a guided task: the truth is known because it was put in."""

import numpy as np

from stickwright.measure.task import KeepEvent, SamplesEvent, Start, StepEvent, Tick, advance, begin


def played_rows(task, stick_at, *, rate_hz=250.0, longest_s=400.0, second=None, confirm=None):
    """Samples kept of a task that is run to its end by a player whose stick stands at `stick_at(step, resting, into_s)`."""
    state, effects = advance(begin(task), Start(0.0))
    rows = []
    shown, since_s = effects[-1], 0.0
    step_s = 1 / rate_hz
    time_s = 0.0
    while state.phase != "done" and time_s < longest_s:
        time_s += step_s
        row = np.full((1, 7), np.nan)
        row[0, 0] = time_s
        row[0, 1:3] = stick_at(shown.step, shown.resting, time_s - since_s)
        row[0, 3:5] = second(time_s) if second else np.nan
        row[0, 5:] = confirm(shown.step, shown.resting, time_s - since_s) if confirm else 0.0, 0.0
        state, effects = advance(state, SamplesEvent(row))
        for each in effects:
            if isinstance(each, KeepEvent):
                rows.append(each.rows)
            if isinstance(each, StepEvent):
                shown, since_s = each, each.at_s
    state, effects = advance(state, Tick(time_s + 1e-6))
    return np.concatenate(rows), state
