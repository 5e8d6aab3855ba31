"""How many wrong formulas the tests would notice: a seeded sample of mutants of each room, each tried on the tests.

    make mutants                                      every room, 60 mutants each
    python docs/make_mutants.py --rooms tuning --each 80 --seed 7

All is done in a copy (nothing here is touched), one mutant at a time. The tests of a room are run once with `coverage`, to learn which
of them run which line. A mutant is then tried on those tests, the quickest first, and on the rest of their files; a change of what is
made when a module is loaded (a constant), or of what is compiled, is tried on all tests of the room. Of the held figures, which have
nothing to do with each other, only those are worked out that run the module. The first test that fails ends it.
"""

from __future__ import annotations

import argparse
import hashlib
import importlib.util
import json
import math
import multiprocessing
import os
import shutil
import sys
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import mutant_changes

ROOT = Path(__file__).resolve().parent.parent
HELD = "held/test_held_figures.py"
WORDS = ("*/explain.py", "*words.py", "*/questions.py", "*/__init__.py")
ROOMS: dict[str, tuple[list[str], list[str]]] = {
    "mechanics": (["mechanics/*.py"], ["mechanics", "published/test_lever.py", "published/test_endurance.py", HELD]),
    "trace": (["trace/*.py"], ["trace", *(f"published/test_{name}.py" for name in ("tremor", "pointing", "smoothness", "circular")), HELD]),
    "tuning": (
        ["tuning/*.py"],
        ["tuning", *(f"published/test_{name}.py" for name in ("filters", "dead_zone", "curve")), "trace/test_let_go.py", HELD],
    ),
    "allocation": (["allocation/*.py"], ["allocation", *(f"published/test_{name}.py" for name in ("pressing", "moving", "usb")), HELD]),
    "mounting": (
        ["mounting/*.py"],
        ["mounting", *(f"published/test_{name}.py" for name in ("arm", "natural_frequency", "neck", "statics")), HELD],
    ),
    "figures": (
        ["report/figures*.py", "report/drawings.py", "report/body.py", "measure/pictures.py"],
        [
            *(f"report/test_{name}.py" for name in ("drawn_data", "figures", "figures_kit", "drawings", "body", "mount_drawing")),
            "measure/test_tasks.py",
        ],
    ),
}  # fmt: skip
"""Of each room: its modules, and the tests that count as its own."""
PAGE = ROOT / "docs" / "mutants.md"
LISTED = ("- equivalent: `", "- looks: `")
"""How lines of that page begin that take a mutant out of the share: no result is another; only how a thing looks is."""
EXAMPLES = ("--doctest-modules", "-o", "doctest_optionflags=NORMALIZE_WHITESPACE")
"""The examples in the docstrings of a room are tests of it too."""
WARM = multiprocessing.get_context("forkserver" if "forkserver" in multiprocessing.get_all_start_methods() else "spawn")
"""Where it can be, what is large and never changed is loaded once for all runs."""
WARM.set_forkserver_preload(["pytest", "scipy.signal", "scipy.stats", "scipy.optimize", "matplotlib.pyplot", "numba"])


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


def pytest_here(place: Path, command: list[str], told: dict[str, str], said: Path) -> None:
    """In a process of its own: pytest in the copy, what it says written to a file."""
    os.chdir(place)
    os.environ.update({"CI": "true", "PYTEST_DISABLE_PLUGIN_AUTOLOAD": "1", "PYTHONPATH": str(place / "src")} | told)
    sys.path[:0] = [str(place / "src"), str(place / "docs")]
    with said.open("w", encoding="utf-8") as text:
        os.dup2(text.fileno(), 1)
        os.dup2(text.fileno(), 2)
    import pytest

    sys.exit(int(pytest.main(command)))


@dataclass(frozen=True)
class Copy:
    """A copy of the project in which mutants are tried."""

    place: Path

    @classmethod
    def made(cls, place: Path) -> Copy:
        """The copy, made new."""
        shutil.rmtree(place, ignore_errors=True)
        hidden = shutil.ignore_patterns(".*", "__pycache__", "out")
        shutil.copytree(ROOT, place, ignore=hidden)
        return cls(place)

    def source(self, module: str) -> Path:
        """A module of the copy."""
        return self.place / "src" / "stickwright" / module

    def tested(self, tests: list[str], seconds: float | None = None, **told: str) -> tuple[int | None, str]:
        """Exit status of pytest in the copy, None when its time ran out, and what it said."""
        said = self.place / "said.txt"
        command = ["-x", "-q", "--tb=line", "-p", "mutant_tests", "-p", "no:cacheprovider", *EXAMPLES, *tests]
        child = WARM.Process(target=pytest_here, args=(self.place, command, told, said))
        child.start()
        child.join(seconds)
        if child.exitcode is None:
            child.kill()
            child.join()
            return None, "its time ran out"
        return child.exitcode, said.read_text(encoding="utf-8", errors="replace")

    def learnt(self, tests: list[str]) -> Learnt:
        """Which test runs which line, from one run with nothing changed."""
        notes = self.place / "learnt.json"
        status, said = self.tested(tests, MUTANTS_LEARN=str(notes))
        if status != 0:
            sys.exit(f"The tests must pass before anything is changed; they end with:\n{said[-2000:]}")
        return Learnt(**json.loads(notes.read_text(encoding="utf-8")))


@dataclass(frozen=True)
class Learnt:
    """Which tests run which line of which module, and how long each test takes."""

    lines: dict[str, dict[str, list[str]]]
    seconds: dict[str, float]

    def tests_of(self, module: str, mutant: mutant_changes.Mutant) -> tuple[list[str], bool]:
        """The tests to run first, quickest first, and whether those of the whole room follow, or only the rest of their files.

        Those that run the changed lines; those that run any line of the module where nothing sees which do: the lines are run when the
        module is loaded, or are compiled.
        """
        lines = self.lines.get(module, {})
        ran = [lines.get(str(line)) for line in range(mutant.first, mutant.last + 1)]
        found = {test for tests in ran for test in tests or ()}
        unseen = not found and (mutant.compiled or any(tests is not None for tests in ran))
        if unseen:
            found = {test for tests in lines.values() for test in tests}
        return sorted(found, key=lambda test: self.seconds.get(test, 0.0)), unseen

    def without_idle(self, module: str, files: list[str]) -> list[str]:
        """The same files, but of the held figures only those that run any line of the module: each is worked out by itself."""
        held = f"tests/{HELD}"
        if held not in files:
            return files
        ran = {test for tests in self.lines.get(module, {}).values() for test in tests if test.startswith(f"{held}::")}
        return [*(file for file in files if file != held), *sorted(ran)]


def mutants_of(room: str, copy: Copy) -> Iterator[tuple[str, mutant_changes.Mutant]]:
    """Every mutant of a room with the module it is of."""
    root = copy.source("")
    for path in sorted({path for pattern in ROOMS[room][0] for path in root.glob(pattern)}):
        if not any(path.match(pattern) for pattern in WORDS):
            module = path.relative_to(root).as_posix()
            for mutant in mutant_changes.mutants(path.read_text(encoding="utf-8")):
                yield module, mutant


Named = tuple[str, mutant_changes.Mutant]
"""A mutant with the module it is of."""


def drawn(everything: list[Named], each: int, seed: int) -> list[Named]:
    """A sample by its seed, in which a mutant stays as long as its own formula does, whatever else is changed in the room."""

    def lot(one: Named) -> bytes:
        return hashlib.sha256(f"{seed} {one[0]} {one[1].name}".encode()).digest()

    return sorted(sorted(everything, key=lot)[:each], key=lambda one: (one[0], one[1].first))


def listed() -> dict[str, str]:
    """Mutants that docs/mutants.md lists by hand as no wrong figure, and of which kind they are."""
    lines = [line for line in PAGE.read_text(encoding="utf-8").splitlines() if line.startswith(LISTED)]
    return {line.split("`")[1]: line[2:].partition(":")[0] for line in lines}


def put(path: Path, source: str) -> None:
    """Write a module, and take away what was compiled from the one before."""
    path.write_text(source, encoding="utf-8")
    Path(importlib.util.cache_from_source(str(path))).unlink(missing_ok=True)


def fate(copy: Copy, module: str, mutant: mutant_changes.Mutant, learnt: Learnt, own: list[str]) -> tuple[str, str]:
    """What became of a mutant, and which test noticed it."""
    first, all_follow = learnt.tests_of(module, mutant)
    if not first and not all_follow:
        return "untested", ""
    files = own if all_follow else sorted({test.partition("::")[0] for test in first})
    usual = sum(took for test, took in learnt.seconds.items() if all_follow or test.partition("::")[0] in files)
    path, order = copy.source(module), copy.place / "first.json"
    plain = path.read_text(encoding="utf-8")
    order.write_text(json.dumps(first), encoding="utf-8")
    (wrong,) = (one for one in mutant_changes.mutants(plain, {mutant.name}) if one.source)
    try:
        put(path, wrong.source)
        tests = learnt.without_idle(module, files)
        for patience in (1, 4):  # once more with more time: a crowded machine is no test that notices
            status, said = copy.tested(tests, patience * (60 + 5 * usual), MUTANTS_FIRST=str(order))
            if status is not None:
                break
    finally:
        put(path, plain)
    if status is None:
        return "timeout", ""
    if status == 0:
        return "survived", ""
    failed = [line for line in said.splitlines() if line.startswith(("FAILED", "ERROR"))]
    return "noticed", failed[0] if failed else said.strip()[-200:]


def tried(room: str, asked: argparse.Namespace) -> Counter[str]:
    """Counts of one room; what became of each mutant is printed."""
    copy = Copy.made(asked.work.resolve() / room)
    everything = list(mutants_of(room, copy))
    modules = sorted({f"src/stickwright/{module}" for module, _ in everything})
    own = [*(f"tests/{path}" for path in ROOMS[room][1]), *modules]
    sample, judged = drawn(everything, asked.each, asked.seed), listed()
    count = Counter(of=len(everything), sample=len(sample))
    if asked.only:
        only = set(asked.only.read_text(encoding="utf-8").splitlines())
        sample = [(module, one) for module, one in everything if f"{module} {one.name}" in only]
    learnt = copy.learnt(own)
    for module, mutant in sample:
        name = f"{module} {mutant.name}"
        kind, by = (judged[name], "") if name in judged else fate(copy, module, mutant, learnt, own)
        count[kind] += 1
        print(f"{kind}: {name}  [line {mutant.first}] {by}", flush=True)
    return count


def main() -> None:
    """Try the rooms asked for and print the table."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--rooms", nargs="+", choices=list(ROOMS), default=list(ROOMS))
    parser.add_argument("--each", type=int, default=60, help="mutants of each room (default: %(default)s)")
    parser.add_argument("--seed", type=int, default=1, help="of the sample (default: %(default)s)")
    parser.add_argument("--only", type=Path, help="instead of a sample, the mutants named in this file, one a line")
    parser.add_argument(
        "--work", type=Path, default=ROOT / "out" / "mutants", help="where the copies go (default: out/mutants)"
    )
    asked = parser.parse_args()
    rows = [(room, tried(room, asked)) for room in asked.rooms]
    rows.append(("all", sum((count for _, count in rows), Counter[str]())))
    print(
        "\n| Room | Mutants | Sample | Noticed | Timeouts | Equivalent | Looks | Survived | Untested | Share noticed, 95 % interval |"
    )
    print("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | --- |")
    for room, count in rows:
        noticed = count["noticed"] + count["timeout"]
        judged = noticed + count["survived"] + count["untested"]
        low, high = wilson(noticed, judged)
        kinds = ("of", "sample", "noticed", "timeout", "equivalent", "looks", "survived", "untested")
        cells = " | ".join(str(count[kind]) for kind in kinds)
        print(f"| {room} | {cells} | {100 * noticed / max(1, judged):.0f} % ({100 * low:.0f} to {100 * high:.0f} %) |")


if __name__ == "__main__":
    main()
