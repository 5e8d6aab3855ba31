"""How many wrong formulas the tests would notice: a seeded sample of mutants of each room, made and run by mutmut.

    make mutants                                      every room, 20 mutants each
    python docs/make_mutants.py --rooms tuning --each 40 --seed 7

Each room is tried in a copy of its own (nothing here is touched) with the tests of that room alone. Not sampled: mutants that change
a text only, decorated functions (mutmut leaves those out, compiled kernels among them), and modules that write sentences.
"""

from __future__ import annotations

import argparse
import ast
import json
import math
import random
import shutil
import subprocess
import sys
from collections import Counter
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
WORDS = ("*/explain.py", "*words.py", "*/questions.py", "*/fit_kernel.py", "*/__init__.py")
ROOMS: dict[str, tuple[list[str], list[str]]] = {
    "mechanics": (["mechanics/*"], ["mechanics", "published/test_lever.py", "published/test_endurance.py"]),
    "trace": (["trace/*"], ["trace", *(f"published/test_{name}.py" for name in ("tremor", "pointing", "smoothness", "circular"))]),
    "tuning": (["tuning/*"], ["tuning", *(f"published/test_{name}.py" for name in ("filters", "dead_zone", "curve"))]),
    "allocation": (["allocation/*"], ["allocation", *(f"published/test_{name}.py" for name in ("pressing", "moving", "usb"))]),
    "mounting": (
        ["mounting/*"],
        ["mounting", *(f"published/test_{name}.py" for name in ("arm", "natural_frequency", "neck", "statics"))],
    ),
    "figures": (
        ["sheet/figures*", "sheet/drawings.py", "sheet/body.py", "capture/pictures.py"],
        [*(f"sheet/test_{name}.py" for name in ("drawn_data", "figures", "figures_kit", "drawings", "body")), "capture/test_tasks.py"],
    ),
}  # fmt: skip
"""Of each room: its modules, and the tests that count as its own."""
SURVIVED, UNTESTED = (0,), (5, 33)
KILLED, TIMEOUT = (1, 3), (36, 24, -24, 152, 255)


def wilson(share_of: int, total: int, z: float = 1.959964) -> tuple[float, float]:
    """The 95 % interval of a share by Wilson's score.

    Examples
    --------
    >>> [round(end, 3) for end in wilson(9, 10)]
    [0.596, 0.982]
    """
    if not total:
        return 0.0, 1.0
    share, spread = share_of / total, z**2 / total
    middle = (share + spread / 2) / (1 + spread)
    half = z / (1 + spread) * math.sqrt(share * (1 - share) / total + spread / (4 * total))
    return max(0.0, middle - half), min(1.0, middle + half)


def copied(room: str, work: Path) -> Path:
    """A copy of the project for one room, set up for mutmut."""
    place = work / room
    if place.exists():
        shutil.rmtree(place)
    hidden = shutil.ignore_patterns(".*", "__pycache__", "out", "mutants")
    shutil.copytree(ROOT, place, ignore=hidden)
    modules, tests = ROOMS[room]
    lines = {
        "source_paths": ["src"],
        "only_mutate": [f"src/stickwright/{pattern}" for pattern in modules],
        "do_not_mutate": list(WORDS),
        "also_copy": sorted(one.name for one in place.iterdir() if one.name not in ("src", "tests")),
        "pytest_add_cli_args": ["-p", "no:cacheprovider"],
        "pytest_add_cli_args_test_selection": [f"tests/{path}" for path in tests],
    }
    with (place / "pyproject.toml").open("a", encoding="utf-8") as project:
        project.write("\n[tool.mutmut]\n" + "".join(f"{key} = {json.dumps(value)}\n" for key, value in lines.items()))
    return place


def mutmut(place: Path, *names: str) -> None:
    """One run of mutmut in the copy."""
    command = [sys.executable, "-m", "mutmut", "run", "--max-children", "1", *names]
    with (place / "mutmut.log").open("a", encoding="utf-8") as log:
        subprocess.run(command, cwd=place, stdout=log, stderr=subprocess.STDOUT, check=False)


def results(place: Path) -> dict[str, int | None]:
    """Exit status of each mutant, None where it was not run."""
    found: dict[str, int | None] = {}
    for meta in sorted((place / "mutants" / "src").rglob("*.py.meta")):
        found |= json.loads(meta.read_text(encoding="utf-8"))["exit_code_by_key"]
    return found


def without_text(function: ast.AST) -> str:
    """What a function does, its texts left out."""
    for node in ast.walk(function):
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            node.value = ""
        if isinstance(node, ast.FunctionDef):
            node.name = ""
    return ast.dump(function)


def of_sums(place: Path, names: list[str]) -> list[str]:
    """The mutants that change more than a text."""
    kept: list[str] = []
    by_file: dict[str, dict[str, str]] = {}
    for name in names:
        module, function = name.rsplit(".", 1)
        if module not in by_file:
            path = place / "mutants" / "src" / f"{module.replace('.', '/')}.py"
            tree = ast.parse(path.read_text(encoding="utf-8"))
            defined = [
                node for node in ast.walk(tree) if isinstance(node, ast.FunctionDef) and "__mutmut_" in node.name
            ]
            by_file[module] = {called: without_text(node) for called, node in [(node.name, node) for node in defined]}
        told = by_file[module]
        if told.get(function) != told.get(function.rsplit("__mutmut_", 1)[0] + "__mutmut_orig"):
            kept.append(name)
    return kept


def listed_equivalent() -> set[str]:
    """Mutants that docs/mutants.md lists by hand as no different in any result."""
    text = (ROOT / "docs" / "mutants.md").read_text(encoding="utf-8") if (ROOT / "docs" / "mutants.md").exists() else ""
    return {line.split("`")[1] for line in text.splitlines() if line.startswith("- equivalent: `")}


def tried(room: str, each: int, seed: int, work: Path) -> Counter[str]:
    """Counts of one room; the survivors are printed with what they change."""
    place = copied(room, work)
    mutmut(place, "none.such")  # makes the mutants and learns which test runs which function
    everything = of_sums(place, sorted(results(place)))
    sample = sorted(random.Random(f"{seed} {room}").sample(everything, min(each, len(everything))))
    mutmut(place, *sample)
    codes, equal = results(place), listed_equivalent()
    count: Counter[str] = Counter(of=len(everything), sample=len(sample))
    for name in sample:
        code = codes[name]
        kind = (
            "killed"
            if code in KILLED
            else "timeout"
            if code in TIMEOUT
            else "equivalent"
            if name in equal
            else "survived"
        )
        if code is None:
            kind = "not run"
        elif code in UNTESTED and kind == "survived":
            count["untested"] += 1
        count[kind] += 1
        if kind in ("survived", "not run"):
            shown = subprocess.run(
                [sys.executable, "-m", "mutmut", "show", name], cwd=place, capture_output=True, text=True, check=False
            )
            changed = [
                line for line in shown.stdout.splitlines() if line[:1] in "+-" and line[:3] not in ("+++", "---")
            ]
            print(f"{kind}: {name}", *changed, sep="\n    ", flush=True)
    return count


def main() -> None:
    """Try the rooms asked for and print the table."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--rooms", nargs="+", choices=list(ROOMS), default=list(ROOMS))
    parser.add_argument("--each", type=int, default=20, help="mutants of each room (default: %(default)s)")
    parser.add_argument("--seed", type=int, default=1, help="of the sample (default: %(default)s)")
    parser.add_argument(
        "--work", type=Path, default=ROOT / "out" / "mutants", help="where the copies go (default: out/mutants)"
    )
    asked = parser.parse_args()
    rows, total = [], Counter[str]()
    for room in asked.rooms:
        count = tried(room, asked.each, asked.seed, asked.work.resolve())
        rows.append((room, count))
        total += count
    print(
        "\n| Room | Mutants | Sample | Killed | Timeouts | Equivalent | Survived | Of them untested | Noticed, 95 % interval |"
    )
    print("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | --- |")
    for room, count in [*rows, ("all", total)]:
        noticed, judged = count["killed"] + count["timeout"], count["sample"] - count["equivalent"] - count["not run"]
        low, high = wilson(noticed, judged)
        kinds = ("of", "sample", "killed", "timeout", "equivalent", "survived", "untested")
        cells = [room, *(str(count[kind]) for kind in kinds)]
        print(
            f"| {' | '.join(cells)} | {100 * noticed / max(1, judged):.0f} % ({100 * low:.0f} to {100 * high:.0f} %) |"
        )


if __name__ == "__main__":
    main()
