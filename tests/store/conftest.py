"""Records in each of the four places."""

import shutil

import pytest

from stickwright.store.opening import create_store, memory_store, open_store
from stores import KINDS, PASSPHRASE, SetClock, running_server


@pytest.fixture(scope="session")
def server():
    with running_server() as running:
        yield running


@pytest.fixture(scope="session")
def empty_files(tmp_path_factory):
    """A file without players of each kind, to copy: quicker than making one for each test."""
    folder = tmp_path_factory.mktemp("empty")
    for kind, passphrase in (("encrypted", PASSPHRASE), ("plain", None)):
        create_store(folder / kind, passphrase=passphrase).close()
    return folder


@pytest.fixture
def clock():
    return SetClock()


@pytest.fixture(params=KINDS)
def store(request, tmp_path, clock):
    """Empty records: the same test for each of the four places."""
    if request.param == "memory":
        made = memory_store(clock)
    elif request.param == "postgresql":
        made = open_store(request.getfixturevalue("server").laid_down(), clock=clock)
    else:
        passphrase = PASSPHRASE if request.param == "encrypted" else None
        place = tmp_path / "records.db"
        shutil.copy(request.getfixturevalue("empty_files") / request.param, place)
        made = open_store(place, passphrase=passphrase, clock=clock)
    yield made
    made.close()
