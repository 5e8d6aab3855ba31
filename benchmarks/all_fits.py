"""All fits in one call against a straightforward Python loop over the same formulas, in the same run.

200 sticks x 8 toppers (none included) x 6 extensions (none included) x 6 sites x 500 draws x 8 directions. The loop is
timed on a sample of the set-ups and scaled. Prints both times, their ratio, the largest difference and the
memory that the chunks add.
"""

from __future__ import annotations

import math
import resource
import time

import numpy as np

from plain_fits import plain_fit, random_site
from stickwright.mechanics.fit import detail, evaluate
from stickwright.mechanics.setups import SetupArrays, setups_of
from stickwright.mechanics.site_inputs import Rules
from stickwright.model.kit import Kit

STICKS, TOPPERS, EXTENSIONS, SITES, DRAWS = 200, 7, 5, 6, 500
SAMPLE = 12


def big_kit(rng: np.random.Generator) -> Kit:
    """An invented kit of the size of a loan library."""
    heights = rng.uniform(12, 60, STICKS)
    starts = np.exp(rng.uniform(math.log(0.03), math.log(3.0), STICKS))
    sticks = [
        {
            "name": f"stick {k}", "contact_height_mm": float(h), "start_force_n": float(f), "full_force_n": float(f * 2.2),
            "travel_mm": float(h * rng.uniform(0.2, 0.42)),
        }
        for k, (h, f) in enumerate(zip(heights, starts, strict=True))
    ]  # fmt: skip
    toppers = [{"name": f"topper {k}", "form": "ball", "height_mm": 2 * k, "mass_g": 0.2 * k} for k in range(TOPPERS)]
    rods = [{"name": f"+{8 * k}", "length_mm": 8 * k, "mass_g": 0.3 * k} for k in range(1, EXTENSIONS + 1)]
    return Kit.model_validate({"stick": sticks, "topper": toppers, "extension": rods})


def largest_difference(setups: SetupArrays, zones: np.ndarray, places: np.ndarray, sites: list) -> tuple[float, float]:
    """Seconds of the plain loop on the sample, and the largest relative difference from the compiled draws."""
    rules, worst, spent = Rules(), 0.0, 0.0
    for number, site in enumerate(sites):
        some = setups.take(places)
        drawn = detail(some, site, zones[number][places], rules)
        for row, place in enumerate(places):
            begun = time.process_time()
            plain = plain_fit(int(place), float(zones[number][place]), setups, site, rules)
            spent += time.process_time() - begun
            for name in ("weighted_bits", "weakest", "most_effort", "false_rate", "utility"):
                ours, theirs = getattr(drawn, name)[row], np.asarray(getattr(plain, name))
                worst = max(worst, float(np.max(np.abs(ours - theirs) / np.maximum(1.0, np.abs(theirs)))))
    return spent, worst


def main() -> None:
    rng = np.random.default_rng(7)
    setups = setups_of(big_kit(rng))
    sites = [random_site(rng, DRAWS, setups) for _ in range(SITES)]
    evaluate(setups.take(range(4)), sites[0])  # compile, or load from the cache
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    begun, busy = time.perf_counter(), time.process_time()
    found = [evaluate(setups, site) for site in sites]
    fast, cpu = time.perf_counter() - begun, time.process_time() - busy
    memory = (resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before) / 1024
    places = rng.choice(len(setups), SAMPLE, replace=False)
    spent, worst = largest_difference(setups, [f.dead_zone for f in found], places, sites)  # type: ignore[arg-type]
    plain = spent * len(setups) / SAMPLE
    fits = len(setups) * SITES
    print(
        f"set-ups {len(setups)} x sites {SITES} x draws {DRAWS} x directions 8: {fits * DRAWS * 8 / 1e6:.0f} million crossings"
    )
    print(f"one call: {fast:.2f} s by the clock, {cpu:.2f} s of processor, {memory:.0f} MB more than before")
    print(f"plain loop: {plain:.0f} s of processor (scaled from {SAMPLE * SITES} of {fits} fits)")
    print(
        f"ratio {plain / fast:.0f} by the clock on all cores (wanted: at least 100), {plain / cpu:.0f} per second of processor"
    )
    print(f"largest difference {worst:.1e} (wanted: below 1e-9)")


if __name__ == "__main__":
    main()
