"""Writes docs/coverage.md: how often the 95 % intervals hold the truth. ``python docs/make_coverage.py [number]``.

1,000 benches or players of each kind when no number is given; takes five minutes on each of two cores.
"""

from __future__ import annotations

import sys
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(ROOT / "tests"))

from coverage_runs import runs  # noqa: E402 - found through the path above

PAGE = Path(__file__).with_name("coverage.md")

HEAD = """# How often the intervals hold the truth

*Made by docs/make_coverage.py (`make coverage`); change the runs in tests/coverage_runs.py, not this page.*

Every figure has a 95% interval. Here sticks and players whose truth is known are simulated ({number} of each kind), and the
share of intervals that hold the truth is counted. The rule: 90% at least in every line, and 93 to 97% where nothing is
wrong but what the model assumes (marked; friction and actuation force may lie above).

What the intervals are of:

- A stick's forces: those of the stick as it was on the bench, at the first reading. The interval allows for a gauge held
  off square (assumed: sd 11 degrees), drift, a curved spring and directions that read apart. It is therefore longer
  upwards, and it holds the truth more often than 95% when the gauge was held square.
- "fresh force, that day": the player's comfortable force on the day of the visit, at the first repeat. This is what the
  table of the sheet shows.
- "force on another day": the same on a day that was not measured. The ranking of the sticks counts on this one, and the
  sheet says so. Its spread (17% sd) is assumed, from published strength read twice [chamorro-2017]; readings on another
  day replace it.
- "noise within a rest", "all rests pooled": the rms at rest of a stick that was let go of several times.

A stick read out and back once, in one direction only, is given a wider interval (by an eighth for friction): a gauge whose
zero creeps reads there as if there were more or less friction, and nothing in the readings tells the two apart. A second
direction, or the first point read again at the end, does.

Bench: four readings out and four back in each direction, 3% scatter. Player: three pushes a direction, 15% scatter.

| simulated | figure | holds the truth | nothing else is wrong |
|---|---|---|---|
"""


def lines(place: int, number: int) -> list[str]:
    """The lines of one kind."""
    run = runs()[place]
    mark = "yes" if run.holds_model else ""
    shares = run.shares(number)
    return [f"| {run.name} | {figure} | {100 * share:.1f}% | {mark} |" for figure, share in shares.items()]


def main(number: int) -> None:
    """Write the page."""
    places = range(len(runs()))
    with ProcessPoolExecutor() as pool:
        parts = list(pool.map(lines, places, [number] * len(places)))
    text = HEAD.format(number=f"{number:,}") + "\n".join(line for part in parts for line in part) + "\n"
    PAGE.write_text(text, encoding="utf-8", newline="\n")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 1000)
