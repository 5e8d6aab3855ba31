"""What is slow to load is loaded when it is asked for, and answers as it would otherwise."""

from __future__ import annotations

import re
import subprocess
import sys

import pytest
from starlette.routing import Route, WebSocketRoute

from stickwright.web.app import SLOW
from stickwright.web.later import Later


@pytest.mark.parametrize("topic", SLOW)
def test_every_address_of_a_topic_is_in_its_pattern(topic: str) -> None:
    """A route that the pattern left out would never answer."""
    later = Later(f"stickwright.web.{topic}", SLOW[topic])
    for route in later.routes():
        assert isinstance(route, Route | WebSocketRoute)
        path = re.sub(r"\{[^}]*\}", "7", route.path)
        assert later.addresses.fullmatch(path), f"{topic}: {path}"


def test_the_app_comes_up_without_what_is_slow_to_load() -> None:
    """Planning, figures and tables of numbers wait until they are needed."""
    code = (
        "import sys; from pathlib import Path; from stickwright.web.app import make_app; from stickwright.web.desk import Desk;"
        "make_app(Desk(Path('nowhere.db')));"
        "print(*[m for m in ('stickwright.planning', 'numba', 'scipy', 'matplotlib', 'polars', 'typst', 'ortools') if m in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == ""
