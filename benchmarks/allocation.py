"""The whole controller shared out with proof, against HiGHS [highs] on the same rows in the same run.

12 actions x 8 sites x 40 devices x 16 sockets, 20 questions like real ones and 20 nasty ones: leaving needless ways out, building,
proving; five other plans; the smallest clash of a question that cannot be had. Then the same with ever more of everything.
Prints worst and median by the clock, the solver's own deterministic effort, and whether a second run gives equal answers.
"""

from __future__ import annotations

import os
import statistics
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from plain_highs import highs_best
from sharing_instances import nasty, real_like
from stickwright.allocation.dominance import pruned
from stickwright.allocation.infeasible_core import smallest_clash
from stickwright.allocation.problem import Question
from stickwright.allocation.solve import Answer, Solver

QUESTIONS = 20
SIZES = ((12, 8, 40, 16), (16, 9, 80, 20), (20, 10, 140, 26), (24, 12, 200, 32))
PEER_S = 20.0
"""Time that the peer is given for one question."""
Kind = Callable[..., Question]


@dataclass(frozen=True)
class Timed:
    """One question, by the clock."""

    question: Question
    solver: Solver
    answer: Answer
    prune_s: float
    build_s: float
    prove_s: float
    busy_s: float
    """Of processor, in all."""

    @property
    def whole_s(self) -> float:
        return self.prune_s + self.build_s + self.prove_s


def timed(question: Question) -> Timed:
    """Prune, build and prove."""
    busy, begun = time.process_time(), time.perf_counter()
    few = pruned(question)
    pruned_at = time.perf_counter()
    solver = Solver(few)
    built_at = time.perf_counter()
    answer = solver.best()
    done = time.perf_counter()
    return Timed(
        few, solver, answer, pruned_at - begun, built_at - pruned_at, done - built_at, time.process_time() - busy
    )


def others(found: Timed) -> float:
    """Seconds for five other plans: the best without one of the ways taken, for five of them."""
    begun = time.perf_counter()
    for number in list(found.answer.chosen(found.question).values())[:5]:
        found.solver.best(forbid=[number])
    return time.perf_counter() - begun


def clash(found: Timed) -> float:
    """Seconds for the smallest clash of a question that cannot be had."""
    begun = time.perf_counter()
    assert smallest_clash(found.solver)
    return time.perf_counter() - begun


def peer(found: Timed) -> float:
    """Seconds of HiGHS on the same rows; its points must be the same."""
    begun = time.perf_counter()
    try:
        points = highs_best(found.solver.model, limit_s=PEER_S)
    except TimeoutError:
        return PEER_S
    spent = time.perf_counter() - begun
    assert (points is None) is (found.answer.possible is False)
    assert points is None or abs(points - found.answer.points) < 5e-4
    return spent


def spread(seconds: Sequence[float]) -> str:
    return f"median {statistics.median(seconds):.3f} s, worst {max(seconds):.3f} s"


def equal(one: Timed, other: Timed) -> bool:
    """The same plan, column by column, found with the same effort."""
    mine, its = one.answer, other.answer
    return (mine.values.tolist(), mine.effort, mine.possible) == (its.values.tolist(), its.effort, its.possible)


def compare(name: str, kind: Kind) -> None:
    """One kind of question: we, the peer, other plans, clashes."""
    found = [timed(kind(seed)) for seed in range(QUESTIONS)]
    again = [timed(kind(seed)) for seed in range(QUESTIONS)]
    theirs = [peer(one) for one in found]
    ours = [one.whole_s for one in found]
    ratios = [them / us for us, them in zip(ours, theirs, strict=True)]
    efforts = [one.answer.effort for one in found]
    with_plan = [one for one in found if one.answer.possible]
    without = [one for one in found if one.answer.possible is False]
    same = "equal" if all(map(equal, found, again)) else "DIFFERENT"
    print(f"{name}: {QUESTIONS} questions, {len(without)} of them without a plan")
    print(f"  prune, build and prove: {spread(ours)} (wanted: worst below 0.5)")
    print(f"  of processor: {spread([one.busy_s for one in found])}")
    print(f"  again: {spread([one.whole_s for one in again])}; answers {same}")
    print(f"  of it prune {spread([one.prune_s for one in found])}; build {spread([one.build_s for one in found])}")
    print(f"  effort: median {statistics.median(efforts):.3f}, worst {max(efforts):.3f}")
    print(f"  all proven: {all(one.answer.proven for one in found)}")
    print(f"  HiGHS, proof alone: {spread(theirs)}, {sum(t >= PEER_S for t in theirs)} given up after {PEER_S:g} s")
    print(
        f"  HiGHS to ours: median {statistics.median(ratios):.1f}, least {min(ratios):.1f}, of the totals {sum(theirs) / sum(ours):.1f}"
    )
    print(f"  five other plans: {spread([others(one) for one in with_plan])} (wanted: below 2)")
    if without:
        print(f"  smallest clash: {spread([clash(one) for one in without])} (wanted: below 2)")


def grow() -> None:
    """What more of everything costs: nasty questions."""
    print(
        "actions x sites x devices x sockets: ways, of them kept; prune, build, prove in s (worst of three), effort; HiGHS on the first, s"
    )
    for actions, sites, devices, sockets in SIZES:
        questions = [nasty(seed, actions=actions, sites=sites, devices=devices, sockets=sockets) for seed in range(3)]
        found = [timed(question) for question in questions]
        worst = max(found, key=lambda one: one.whole_s)
        them = peer(found[0])
        print(
            f"{actions:3d} x {sites:2d} x {devices:3d} x {sockets:2d}: {len(questions[0].ways):6d} {len(found[0].question.ways):6d}   "
            f"{worst.prune_s:6.3f} {worst.build_s:6.3f} {worst.prove_s:6.2f}  {worst.answer.effort:6.2f}   "
            f"{'more than ' if them >= PEER_S else ''}{them:.2f} to ours {found[0].prove_s:.2f}"
        )


def main() -> None:
    print(f"load {os.getloadavg()[0]:.1f} on {os.cpu_count()} cores before it began")
    timed(real_like(0))  # load the solver
    compare("like real ones", real_like)
    compare("nasty", nasty)
    grow()
    print(f"load {os.getloadavg()[0]:.1f} at the end")


if __name__ == "__main__":
    main()
