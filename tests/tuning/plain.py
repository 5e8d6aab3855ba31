"""The fast kernels once more in plain Python, line by line as their sources state them: to find faults of
compiling, not of the formulas."""

import math


def one_euro(xy, times_s, min_cutoff_hz, beta, derivative_cutoff_hz):
    """Casiez, Roussel and Vogel 2012, each axis alone; empty samples stay empty and are stepped over."""

    def alpha(cutoff_hz, step_s):
        return 1.0 / (1.0 + 1.0 / (2 * math.pi * cutoff_hz) / step_s)

    out, before, speed, time_s = [], None, [0.0, 0.0], 0.0
    for row, now_s in zip(xy, times_s, strict=True):
        if any(math.isnan(value) for value in row):
            out.append((math.nan, math.nan))
            continue
        if before is None:
            before = list(row)
        else:
            step_s = now_s - time_s
            for axis in range(2):
                share = alpha(derivative_cutoff_hz, step_s)
                speed[axis] = share * (row[axis] - before[axis]) / step_s + (1 - share) * speed[axis]
                weight = alpha(min_cutoff_hz + beta * abs(speed[axis]), step_s)
                before[axis] = weight * row[axis] + (1 - weight) * before[axis]
        time_s = now_s
        out.append(tuple(before))
    return out


def low_pass(xy, times_s, cutoff_hz):
    """First-order low-pass, exact for a held sample."""
    out, before, time_s = [], None, 0.0
    for row, now_s in zip(xy, times_s, strict=True):
        if any(math.isnan(value) for value in row):
            out.append((math.nan, math.nan))
            continue
        weight = 1.0 if before is None else 1.0 - math.exp(-2 * math.pi * cutoff_hz * (now_s - time_s))
        before = tuple(
            weight * value + (1 - weight) * old for value, old in zip(row, before or (0.0, 0.0), strict=True)
        )
        time_s = now_s
        out.append(before)
    return out


def shaped(xy, dead_zone, inner_jump, curve_ratio):
    """Radial dead zone and curve, by the formula; beyond full deflection along the last slope."""
    out = []
    for x, y in xy:
        if math.isnan(x) or math.isnan(y):
            out.append((math.nan, math.nan))
            continue
        length = math.hypot(x, y)
        if length <= dead_zone:
            out.append((0.0, 0.0))
            continue
        u = (length - dead_zone) / (1 - dead_zone)
        straight = curve_ratio == 0
        slope = 1.0 if straight else curve_ratio / (1 + curve_ratio) / math.log(1 + curve_ratio)
        if u > 1:
            g = 1 + slope * (u - 1)
        else:
            g = u if straight else math.log(1 + curve_ratio * u) / math.log(1 + curve_ratio)
        new = inner_jump + (1 - inner_jump) * g
        out.append((x / length * new, y / length * new))
    return out


def limited(xy, outer_limit):
    """Drawn back onto the circle."""
    out = []
    for x, y in xy:
        length = math.hypot(x, y)
        over = length > outer_limit
        out.append((x / length * outer_limit, y / length * outer_limit) if over else (x, y))
    return out
