"""How soon the command line answers: `stickwright --help` against an interpreter that does nothing, and the demo.

Medians of many starts, taken in turn so that a busy machine slows both alike.
"""

from __future__ import annotations

import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).parents[1]
COMMAND = Path(sys.executable).with_name("stickwright")
STARTS = 40


def seconds(*command: str | Path) -> float:
    begun = time.perf_counter()
    subprocess.run([str(part) for part in command], check=True, stdout=subprocess.DEVNULL, cwd=ROOT)
    return time.perf_counter() - begun


def main() -> None:
    helps, nothings = [], []
    for _ in range(STARTS):
        helps.append(seconds(COMMAND, "--help"))
        nothings.append(seconds(sys.executable, "-c", "pass"))
    nothing = statistics.median(nothings)
    print(f"python -c pass {1e3 * nothing:.1f} ms; stickwright --help {1e3 * statistics.median(helps):.1f} ms")
    print(f"ratio {statistics.median(helps) / nothing:.2f} (wanted: within 3)")
    with tempfile.TemporaryDirectory() as folder:
        demo = ("plan", "examples/demo", "--pdf", f"{folder}/sheet.pdf")
        seconds(COMMAND, *demo)  # compile, or load from the cache
        warm = min(seconds(COMMAND, *demo) for _ in range(3))
    print(f"the demo with its sheet, warm: {warm:.1f} s, {warm / nothing:.0f} times an empty start")


if __name__ == "__main__":
    main()
