"""What a machine lacks is installed where that may be done; elsewhere one line says what to type, before anything else is begun."""

from __future__ import annotations

import importlib.util
import re
import shutil
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
_spec = importlib.util.spec_from_file_location("bootstrap", ROOT / "bootstrap.py")
assert _spec is not None
assert _spec.loader is not None
bootstrap = importlib.util.module_from_spec(_spec)
_spec.loader.exec_module(bootstrap)


class Machine:
    """A machine of which the test says what it has; what it would run is written down."""

    def __init__(
        self, patch: pytest.MonkeyPatch, *programs: str, root: bool, sudo: bool = False, works: bool = True
    ) -> None:
        self.ran: list[list[str]] = []
        self._sudo, self._works = sudo, works
        patch.setattr(bootstrap.shutil, "which", lambda name: f"/usr/bin/{name}" if name in programs else None)
        patch.setattr(bootstrap, "has_postgres", lambda: "initdb" in programs)
        patch.setattr(bootstrap.os, "geteuid", lambda: 0 if root else 1000)
        patch.setattr(bootstrap, "quietly", self._quietly)

    def _quietly(self, command: list[str]) -> bool:
        if command == ["sudo", "-n", "true"]:
            return self._sudo
        self.ran.append(command)
        return self._works or "update" in command


def test_nothing_is_done_where_all_is_there(monkeypatch: pytest.MonkeyPatch) -> None:
    """Also for a command that opens no page."""
    machine = Machine(monkeypatch, "chromium-browser", "initdb", "apt-get", root=True)
    bootstrap.from_the_system("make test", pages=True)
    assert machine.ran == []
    bare = Machine(monkeypatch, "apt-get", root=True)
    bootstrap.from_the_system("make demo")
    assert bare.ran == []


@pytest.mark.parametrize(("root", "before"), [(True, []), (False, ["sudo", "-n"])])
def test_what_is_missing_is_installed_where_it_may(
    monkeypatch: pytest.MonkeyPatch, root: bool, before: list[str]
) -> None:
    """As root, or with a sudo that asks nothing; said in one line."""
    machine = Machine(monkeypatch, "apt-get", "sudo", root=root, sudo=True)
    bootstrap.from_the_system("make test", pages=True)
    (update, install) = machine.ran
    assert update == [*before, "apt-get", "update", "-qq"]
    assert install == [*before, "apt-get", "install", "-y", "-qq", "--no-install-recommends", "chromium", "postgresql"]


def test_elsewhere_one_line_says_what_to_type(monkeypatch: pytest.MonkeyPatch) -> None:
    """Without the right to install, without apt-get, and where apt-get fails: it ends at once, and nothing was begun."""
    machine = Machine(monkeypatch, "apt-get", "sudo", "initdb", root=False)
    with pytest.raises(
        SystemExit, match=r"needs chromium\. Type this once, then try again: sudo apt-get install .* chromium$"
    ):
        bootstrap.from_the_system("make test", pages=True)
    other = Machine(monkeypatch, "sudo", root=True)
    with pytest.raises(SystemExit, match="chromium and postgresql, or what your system calls it"):
        bootstrap.from_the_system("make test", pages=True)
    assert machine.ran == other.ran == []
    Machine(monkeypatch, "apt-get", root=True, works=False)
    with pytest.raises(SystemExit, match="could not install chromium and postgresql"):
        bootstrap.from_the_system("make test", pages=True)


def test_each_hook_before_a_commit_is_a_tool_of_the_environment() -> None:
    """Every hook of .pre-commit-config.yaml is local and calls a program that the lock file's environment has, and together they
    are what `make lint` runs."""
    text = (ROOT / ".pre-commit-config.yaml").read_text(encoding="utf-8")
    assert set(re.findall(r"repo: (\S+)", text)) == {"local"}
    assert text.count("- id:") == text.count("language: system") == text.count("entry:")
    programs = re.findall(r"entry: \.venv/bin/(\S+)(?: (check|format))?", text)
    assert programs == [("ruff", "check"), ("ruff", "format"), ("mypy", ""), ("lint-imports", "")]
    assert [name for name, _ in programs if shutil.which(name, path=Path(sys.executable).parent) is None] == []


def test_a_newer_python_is_found_on_the_path_or_where_pyenv_keeps_it(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    """The newest of a version; on the path before any other; none where there is none."""
    monkeypatch.setattr(bootstrap.shutil, "which", lambda _name: None)
    monkeypatch.setattr(bootstrap.Path, "home", lambda: tmp_path)
    for one in ("3.12.1", "3.12.4", "3.11.7"):
        python = tmp_path / ".pyenv" / "versions" / one / "bin" / "python"
        python.parent.mkdir(parents=True)
        python.touch()
    assert bootstrap.python_named("3.12") == str(tmp_path / ".pyenv" / "versions" / "3.12.4" / "bin" / "python")
    assert bootstrap.python_named("3.13") is None
    monkeypatch.setattr(bootstrap.shutil, "which", lambda name: f"/usr/bin/{name}")
    assert bootstrap.python_named("3.13") == "/usr/bin/python3.13"


def test_the_core_rooms_that_newer_pythons_try_have_tests() -> None:
    """Each is a folder of tests."""
    assert [room for room in bootstrap.CORE_ROOMS if not list((ROOT / "tests" / room).glob("test_*.py"))] == []
