"""What every test shares."""

import os
from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import settings

import stickwright.catalogue  # noqa: F401  (refusals are told in its words)
from browser import chromium, visit  # noqa: F401  (one browser for all that open pages)
from kept import each_plan_once, kept_folder  # noqa: F401  (plans worked out once for all)
from stickwright.codes.message import Message
from stickwright.errors import Problem

# No clock decides over a test: machines are shared, and compiled code is slow the first time. Where a run decides
# whether work lands, the examples are the same every time; on a desk they differ, and find what nobody thought of.
settings.register_profile("calm", deadline=None, derandomize="CI" in os.environ)
settings.load_profile("calm")


@pytest.fixture(autouse=True, scope="session")
def every_refusal_is_told() -> Iterator[None]:
    """Law, in every test that meets a refusal: where, what was found, what was expected and what to do are texts, never nothing."""
    with pytest.MonkeyPatch.context() as patch:
        plain = Problem.__init__

        def told(self: Problem, *given: Any, **named: Any) -> None:
            plain(self, *given, **named)
            parts = (*self.where, self.found, self.expected, self.remedy)
            assert all(isinstance(part, str | Message) for part in parts), parts

        patch.setattr(Problem, "__init__", told)
        yield
