"""Hold the figures of today, or say how they differ from those held: see `test_held_figures`."""

from __future__ import annotations

import json
import sys
from pathlib import Path

sys.path[:0] = [str(Path(__file__).parents[1]), str(Path(__file__).parents[1] / "allocation")]

from held_numbers import differences, figures  # noqa: E402
from held_results import ALL  # noqa: E402


def main(write: bool) -> None:
    """Work all of them out; write them, or print the differences."""
    for name, made in ALL.items():
        path = Path(__file__).with_name(f"{name}.json")
        held = json.loads(path.read_text(encoding="utf-8")) if path.exists() else {}
        today = {one: figures(result()) for one, result in made.items()}
        for one, found in today.items():
            for line in differences(held.get(one, {}), found) if not write else ():
                print(f"{name}, {one}{line}")
        if write:
            kept = {
                one: {key: float(f"{total:.7g}") for key, (total, _) in found.items()} for one, found in today.items()
            }
            path.write_text(json.dumps(kept, indent=0) + "\n", encoding="utf-8")
            print(f"{path.name}: {sum(map(len, kept.values()))} figures of {len(kept)} results")


if __name__ == "__main__":
    main("--write" in sys.argv[1:])
