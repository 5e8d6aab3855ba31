"""Records to test with: the four places, a clock that can be set, and a real PostgreSQL server."""

import datetime
import itertools
import os
import pwd
import shutil
import socket
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

PASSPHRASE = "heron under the bridge"
KINDS = ("encrypted", "plain", "memory", "postgresql")


@dataclass
class SetClock:
    """A clock that goes on by a second with each look at it, and can be set."""

    time: datetime.datetime = field(default=datetime.datetime(2026, 3, 14, 10, 0, tzinfo=datetime.UTC))

    def now(self) -> datetime.datetime:
        self.time += datetime.timedelta(seconds=1)
        return self.time


def found_program(name: str) -> str:
    """A program of PostgreSQL; fails in words where it is not installed."""
    on_path = shutil.which(name)
    held = [on_path] if on_path else sorted(map(str, Path("/usr/lib/postgresql").glob(f"*/bin/{name}")))
    assert held, f"{name} not found: install PostgreSQL (apt-get install postgresql) to test records on a server"
    return held[-1]


@dataclass
class Server:
    """A running PostgreSQL that only this run of the tests knows."""

    port: int
    numbers: Iterator[int] = field(default_factory=itertools.count)

    def url(self, database: str) -> str:
        return f"postgresql://tester@127.0.0.1:{self.port}/{database}"

    def empty(self) -> str:
        """Address of a new database without tables."""
        return self._made("template1")

    def laid_down(self) -> str:
        """Address of a new database that has the tables already: copied, which is quicker."""
        from stickwright.store.opening import open_store

        if not hasattr(self, "_pattern"):
            self._pattern = self._made("template1")
            open_store(self._pattern).close()
        return self._made(self._pattern.rpartition("/")[2])

    def _made(self, pattern: str) -> str:
        import psycopg

        name = f"records{next(self.numbers)}"
        with psycopg.connect(self.url("postgres"), autocommit=True) as connection:
            connection.execute(f"CREATE DATABASE {name} TEMPLATE {pattern}")
        return self.url(name)


@contextmanager
def running_server() -> Iterator[Server]:
    """A server of its own in a folder of its own, gone afterwards. It refuses to run as root, so root hands it to `postgres`."""
    as_owner = ["runuser", "-u", "postgres", "--"] if os.geteuid() == 0 else []
    folder = Path(tempfile.mkdtemp(prefix="records-server-"))
    try:
        if as_owner:
            owner = pwd.getpwnam("postgres")
            os.chown(folder, owner.pw_uid, owner.pw_gid)
        with socket.socket() as free:
            free.bind(("127.0.0.1", 0))
            port = free.getsockname()[1]
        _run(
            [
                *as_owner,
                found_program("initdb"),
                "-D",
                str(folder / "data"),
                "-U",
                "tester",
                "-A",
                "trust",
                "-E",
                "UTF8",
                "--no-sync",
            ]
        )
        options = f"-p {port} -c listen_addresses=127.0.0.1 -c unix_socket_directories={folder} -c fsync=off"
        control = [*as_owner, found_program("pg_ctl"), "-D", str(folder / "data"), "-w"]
        _run([*control, "-o", options, "-l", str(folder / "log"), "start"])
        try:
            yield Server(port)
        finally:
            _run([*control, "-m", "immediate", "stop"])
    finally:
        shutil.rmtree(folder)


def _run(command: list[str]) -> None:
    done = subprocess.run(command, cwd="/", capture_output=True, text=True, check=False)
    assert done.returncode == 0, f"{' '.join(command)}\n{done.stdout}{done.stderr}"
