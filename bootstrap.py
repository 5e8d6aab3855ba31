"""Set up the project's own environment with nothing but Python, then do one thing in it.

    python3 bootstrap.py demo     the main job on the demo case
    python3 bootstrap.py test     all tests, of long sweeps of random cases a share
    python3 bootstrap.py sweeps   the rest of those random cases
    python3 bootstrap.py lint     style, types, import order
    python3 bootstrap.py versions the tests of the core rooms by newer Pythons, where this machine has them
    python3 bootstrap.py bench    what is timed, each against a named peer
    python3 bootstrap.py coverage how often the intervals hold the truth; writes docs/coverage.md (takes five minutes)
    python3 bootstrap.py mutants  how many wrong formulas the tests would notice (takes an hour or more)
    python3 bootstrap.py api      pages of every public function from its docstring, in out/api
    python3 bootstrap.py run ...  any command of the environment

The environment is .venv; it is made anew only when the lock file or the project file changes. On Windows
write ``py`` for ``python3``.
"""

from __future__ import annotations

import hashlib
import importlib.util
import os
import shutil
import subprocess
import sys
import venv
from pathlib import Path

ROOT = Path(__file__).resolve().parent
ENVIRONMENT = ROOT / ".venv"
BIN = ENVIRONMENT / ("Scripts" if os.name == "nt" else "bin")
PYTHON = BIN / ("python.exe" if os.name == "nt" else "python")
LOCK = ROOT / "requirements.lock"
NEWER = ("3.12", "3.13")
CORE_ROOMS = ("model", "mechanics", "trace", "tuning", "allocation", "files")
COVERAGE = "coverage==7.17.5"  # not in the lock file: nothing but `mutants` needs it
STAMP = ENVIRONMENT / "set-up-from"


def run(*command: str | Path, cwd: Path = ROOT, check: bool = True) -> int:
    """Run a command of the environment; end with its status when it fails."""
    done = subprocess.run([str(part) for part in command], cwd=cwd, check=False)
    if check and done.returncode:
        sys.exit(done.returncode)
    return done.returncode


def fingerprint() -> str:
    """Of what the environment is made from."""
    text = LOCK.read_bytes() + (ROOT / "pyproject.toml").read_bytes() + sys.version.encode() + str(ROOT).encode()
    return hashlib.sha256(text).hexdigest()


def has_postgres() -> bool:
    """Whether a PostgreSQL server is installed: Debian keeps it off the path."""
    return bool(shutil.which("initdb")) or any(Path("/usr/lib/postgresql").glob("*/bin/initdb"))


def has_chromium() -> bool:
    """Whether a browser that the tests can drive is on the path."""
    return any(shutil.which(name) for name in ("chromium", "chromium-browser", "google-chrome", "chrome"))


def from_the_system(what: str, *, pages: bool = False) -> None:
    """Install what Python's packages cannot bring, where that may be done; else end with the one line to type.

    Parameters
    ----------
    what : str
        The command that needs it.
    pages : bool
        Whether a browser and a database server are needed too.
    """
    missing = [] if importlib.util.find_spec("ensurepip") else ["python3-venv"]
    if pages:
        missing += [] if has_chromium() else ["chromium"]
        missing += [] if has_postgres() else ["postgresql"]
    if not missing:
        return
    install = ["apt-get", "install", "-y", "-qq", "--no-install-recommends", *missing]
    is_root = hasattr(os, "geteuid") and os.geteuid() == 0
    by = [] if is_root else ["sudo", "-n"]
    if not shutil.which("apt-get"):
        sys.exit(f"{what} needs {' and '.join(missing)}, or what your system calls it: install that, then try again.")
    if not is_root and not (shutil.which("sudo") and quietly([*by, "true"])):
        sys.exit(f"{what} needs {' and '.join(missing)}. Type this once, then try again: sudo {' '.join(install)}")
    print(f"installing {' and '.join(missing)} with apt-get (the first time takes a minute)", file=sys.stderr)
    quietly([*by, "apt-get", "update", "-qq"])
    if not quietly([*by, *install]):
        sys.exit(f"apt-get could not install {' and '.join(missing)}: install it another way, then try again.")


def quietly(command: list[str]) -> bool:
    """Run a command of the system, its errors alone shown; whether it went well."""
    surroundings = os.environ | {"DEBIAN_FRONTEND": "noninteractive"}
    return subprocess.run(command, stdout=subprocess.DEVNULL, env=surroundings, check=False).returncode == 0


def set_up() -> None:
    """Make or refresh the environment from the lock file, hashes checked."""
    if STAMP.exists() and STAMP.read_text() == fingerprint():
        return
    print("setting up .venv from requirements.lock (the first time takes a minute)", file=sys.stderr)
    if not PYTHON.exists():
        venv.create(ENVIRONMENT, with_pip=True)
    pip = (PYTHON, "-m", "pip", "install", "--quiet", "--disable-pip-version-check")
    uv = BIN / ("uv.exe" if os.name == "nt" else "uv")
    locked = ("--require-hashes", "-r", LOCK)
    # uv is quicker; pip does the same where uv cannot be had or its registry differs
    with_uv = run(*pip, "uv", check=False) == 0
    by_uv = (uv, "pip", "install", "--quiet", "--compile-bytecode", "--python", PYTHON, *locked)
    if not (with_uv and run(*by_uv, check=False) == 0):
        run(*pip, *locked)
    run(*pip, "--no-deps", "--no-build-isolation", "-e", ROOT)
    # compiled once here, so that every later start is quick even where Python may not write its caches
    run(PYTHON, "-m", "compileall", "-q", ROOT / "src")
    STAMP.write_text(fingerprint())


def demo() -> None:
    """The main job on the demo case."""
    out = ROOT / "out" / "demo"
    out.mkdir(parents=True, exist_ok=True)
    run(
        BIN / "stickwright",
        "plan",
        "examples/demo",
        "--pdf",
        "out/demo/sheet.pdf",
        "--json",
        "out/demo/plan.json",
        "--svg-dir",
        "out/demo/figures",
    )


def test(*more: str) -> None:
    """All tests but the sweeps."""
    on_both_cores("-m", "not sweep", *more)


def sweeps(*more: str) -> None:
    """Laws on all the random cases of which the tests take a share."""
    on_both_cores("-m", "sweep", *more)


def on_both_cores(*more: str) -> None:
    """Tests, on both cores: one thread in each of the two workers, for more would only wait for each other."""
    for library in ("OMP", "OPENBLAS", "NUMBA"):
        os.environ.setdefault(f"{library}_NUM_THREADS", "1")
    run(PYTHON, "-m", "pytest", "-n", "2", "--dist", "worksteal", *more)


def versions() -> None:
    """The tests of the core rooms by every newer Python of this machine that we say we run on."""
    found = {version: python for version in NEWER if (python := python_named(version)) is not None}
    for version, python in found.items():
        print(f"Python {version}", flush=True)
        place = ENVIRONMENT / f"python{version}"
        by = place / BIN.name / PYTHON.name
        if not by.exists():
            run(python, "-m", "venv", place)
        pip = (by, "-m", "pip", "install", "--quiet", "--disable-pip-version-check")
        run(*pip, "--require-hashes", "-r", LOCK)
        run(*pip, "--no-deps", "--no-build-isolation", "-e", ROOT)
        run(by, "-m", "pytest", *(ROOT / "tests" / room for room in CORE_ROOMS))
    missing = [version for version in NEWER if version not in found]
    print(f"tried: {', '.join(found) or 'none'}; not on this machine: {', '.join(missing) or 'none'}")


def python_named(version: str) -> str | None:
    """Where a Python of this version is: on the path, or among those that pyenv keeps; None when there is none."""
    kept = sorted(Path.home().glob(f".pyenv/versions/{version}.*/bin/python"))
    return shutil.which(f"python{version}") or (str(kept[-1]) if kept else None)


def lint() -> None:
    """Style, types, import order."""
    run(BIN / "ruff", "check", ".")
    run(BIN / "ruff", "format", "--check", ".")
    run(BIN / "mypy")
    run(BIN / "lint-imports")


def bench() -> None:
    """Every benchmark, one after the other."""
    for script in sorted((ROOT / "benchmarks").glob("*.py")):
        print(f"\n{script.name}", flush=True)
        run(PYTHON, script)


def coverage() -> None:
    """How often the intervals hold the truth."""
    run(PYTHON, ROOT / "docs" / "make_coverage.py")


def api(*more: str) -> None:
    """Pages of every public function from its docstring; a warning is an error."""
    run(PYTHON, ROOT / "docs" / "make_api.py", *more)


def mutants(*more: str) -> None:
    """A sample of wrong formulas, each tried on the tests of its room; coverage is fetched when first asked for."""
    missing = "import importlib.util, sys; sys.exit(importlib.util.find_spec('coverage') is None)"
    if run(PYTHON, "-c", missing, check=False):
        run(PYTHON, "-m", "pip", "install", "--quiet", "--disable-pip-version-check", COVERAGE)
    run(PYTHON, ROOT / "docs" / "make_mutants.py", *more)


def main(arguments: list[str]) -> None:
    """Set up, then do what is asked."""
    if not arguments or arguments[0] in ("-h", "--help"):
        print(__doc__)
        return
    what, *more = arguments
    doings = {"demo": demo, "lint": lint, "bench": bench, "coverage": coverage, "versions": versions}
    with_more = {"test": test, "sweeps": sweeps, "mutants": mutants, "api": api}
    if what not in (*doings, *with_more, "run"):
        sys.exit(
            f"bootstrap.py: found '{what}', "
            "expected demo, test, sweeps, lint, versions, bench, coverage, mutants, api or run"
        )
    from_the_system(f"bootstrap.py {what}", pages=what == "test")
    set_up()
    if what == "run":
        run(BIN / more[0], *more[1:])
    elif what in with_more:
        with_more[what](*more)
    else:
        doings[what]()


if __name__ == "__main__":
    main(sys.argv[1:])
