"""Plans and sheets that many tests look at, worked out once in a run: kept in a folder that the workers share.

A plan is the same for the same case and wishes (tests/test_cli.py holds that), so that a test of what is shown, written or kept
of it need not work it out again. Each asker gets a copy of its own. A test of the planning itself asks for the plan directly.
"""

from __future__ import annotations

import dataclasses
import hashlib
import os
import pickle
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any, cast

import numpy as np
import pytest
from pydantic import BaseModel

from stickwright.model.case import Case
from stickwright.model.plan import Plan
from stickwright.planning.plan import plan
from stickwright.report.document import sheet_pdf

_folder: list[Path] = []


@pytest.fixture(autouse=True, scope="session")
def kept_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of this run, one for all workers."""
    base = tmp_path_factory.getbasetemp()
    place = (base.parent if "PYTEST_XDIST_WORKER" in os.environ else base) / "kept"
    place.mkdir(exist_ok=True)
    _folder[:] = [place]
    return place


def planned(case: Case, **asked: Any) -> Plan:
    """The plan of a case, as `stickwright.planning.plan.plan` makes it; what it tells on its way is not told again."""
    asked.pop("progress", None)
    return cast(Plan, _once(plan, case, **asked))


def printed(made: Plan, **asked: Any) -> bytes:
    """The sheet of a plan, as `stickwright.report.document.sheet_pdf` makes it."""
    return cast(bytes, _once(sheet_pdf, made, **asked))


@contextmanager
def plans_kept() -> Iterator[None]:
    """The program itself, commands and pages, takes plans and sheets from those that are kept."""
    with pytest.MonkeyPatch.context() as patch:
        for place in ("planning.plan", "store.plans"):
            patch.setattr(f"stickwright.{place}.plan", planned)
        for place in ("report.document", "web.plans"):
            patch.setattr(f"stickwright.{place}.sheet_pdf", printed)
        yield


@pytest.fixture
def each_plan_once() -> Iterator[None]:
    """For the whole of a test: `plans_kept`."""
    with plans_kept():
        yield


def _once(make: Callable[..., Any], *given: Any, **named: Any) -> Any:
    if not _folder:  # outside a run of tests
        return make(*given, **named)
    told = repr((make.__qualname__, _flat(given), _flat(named)))
    file = _folder[0] / hashlib.sha256(told.encode()).hexdigest()
    if not file.exists():
        part = file.with_suffix(f".{os.getpid()}")
        part.write_bytes(pickle.dumps(make(*given, **named)))
        part.replace(file)
    return pickle.loads(file.read_bytes())


def _flat(value: Any) -> Any:
    """All that a value holds, written the same in every process."""
    if isinstance(value, BaseModel):
        fields = [(name, _flat(getattr(value, name))) for name in type(value).model_fields]
        return type(value).__name__, sorted(value.model_fields_set), fields
    if dataclasses.is_dataclass(value):
        fields = [(one.name, _flat(getattr(value, one.name))) for one in dataclasses.fields(value)]
        return type(value).__name__, fields
    if isinstance(value, np.ndarray):
        return value.dtype.str, value.shape, hashlib.sha256(np.ascontiguousarray(value).tobytes()).hexdigest()
    if isinstance(value, dict):
        return [(key, _flat(one)) for key, one in value.items()]
    if isinstance(value, (set, frozenset)):
        return sorted(repr(_flat(one)) for one in value)
    return [_flat(one) for one in value] if isinstance(value, (tuple, list)) else value
