"""What pytest does beside testing while mutants are tried: learn which test runs which line; run those first.

``make_mutants.py`` loads it into the runs it starts (``-p mutant_tests``) and says what to do in two variables of the environment.
"""

from __future__ import annotations

import json
import os
from collections.abc import Iterator
from pathlib import Path

import hypothesis
import pytest

LEARN = os.environ.get("MUTANTS_LEARN")
"""File to write down what each test runs."""
FIRST = os.environ.get("MUTANTS_FIRST")
"""File with the tests to run first, in their order."""

if LEARN:
    import coverage

    watch = coverage.Coverage(data_file=None, source_pkgs=["stickwright"], config_file=False)
    watch.start()
seconds: dict[str, float] = {}


def pytest_configure() -> None:
    """An example that fails is not made smaller: that it fails is enough."""
    phases = [hypothesis.Phase.explicit, hypothesis.Phase.generate]
    hypothesis.settings.register_profile("mutants", hypothesis.settings(), phases=phases, database=None)
    hypothesis.settings.load_profile("mutants")


@pytest.hookimpl(trylast=True)
def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """The tests that run the changed line come first."""
    if FIRST:
        order = {name: place for place, name in enumerate(json.loads(Path(FIRST).read_text(encoding="utf-8")))}
        items.sort(key=lambda item: order.get(item.nodeid, len(order)))


@pytest.hookimpl(wrapper=True)
def pytest_runtest_protocol(item: pytest.Item) -> Iterator[None]:
    """Lines run from here on are this test's."""
    if LEARN:
        watch.switch_context(item.nodeid)
    return (yield)  # type: ignore[return-value]


def pytest_runtest_logreport(report: pytest.TestReport) -> None:
    """How long each test takes, what is set up for it included."""
    seconds[report.nodeid] = seconds.get(report.nodeid, 0.0) + report.duration


def pytest_sessionfinish() -> None:
    """Write down what was learnt."""
    if LEARN:
        watch.stop()
        data = watch.get_data()
        lines = {
            Path(file).as_posix().rpartition("/stickwright/")[2]: {
                line: [test for test in tests if test] for line, tests in data.contexts_by_lineno(file).items()
            }
            for file in data.measured_files()
        }
        Path(LEARN).write_text(json.dumps({"lines": lines, "seconds": seconds}), encoding="utf-8")
