"""Case folders in and out of ZIP files, and the ones that mean harm."""

from __future__ import annotations

import io
import zipfile
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stickwright.errors import BadInput
from stickwright.web.demo import demo_case
from stickwright.web.packing import folder_tree, packed, unpacked


def named(files: list[tuple[str, bytes]]) -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, body in files:
            archive.writestr(zipfile.ZipInfo(name), body, zipfile.ZIP_DEFLATED)
    return out.getvalue()


def test_round_trip_and_equal_bytes() -> None:
    tree = demo_case()
    assert unpacked(packed(tree)) == tree
    assert packed(tree) == packed(dict(reversed(tree.items())))


def test_the_folder_itself_may_be_packed_with_what_file_managers_add() -> None:
    body = named([("visit/player.toml", b"a"), ("visit/readings/x.csv", b"b"), ("__MACOSX/visit/._player.toml", b"c")])
    assert unpacked(body) == {"player.toml": b"a", "readings/x.csv": b"b"}


@pytest.mark.parametrize(
    "name", ["../player.toml", "/etc/player.toml", "a\\..\\player.toml", "c:player.toml", "a/../../player.toml"]
)
def test_names_that_lead_outside_are_refused(name: str) -> None:
    with pytest.raises(BadInput, match="is not allowed"):
        unpacked(named([("player.toml", b""), (name, b"x")]))


def test_one_that_unpacks_to_far_more_than_it_is() -> None:
    """Ten megabyte of zeros pack to ten kilobyte; the bytes are counted as they come out, whatever the file says of itself."""
    body = named([("player.toml", b""), ("zeros", bytes(10 * 2**20))])
    assert len(body) < 2**15
    with pytest.raises(BadInput, match="more than 1 MB unzipped"):
        unpacked(body, most_bytes=2**20)


def test_too_many_files_and_none_that_counts() -> None:
    with pytest.raises(BadInput, match="4 files; 3 are allowed"):
        unpacked(named([(f"{number}", b"") for number in range(4)]), most_files=3)
    with pytest.raises(BadInput, match=r"no player\.toml"):
        unpacked(named([("kit.toml", b"")]))


@pytest.mark.filterwarnings("ignore:Duplicate name")
def test_one_name_twice() -> None:
    with pytest.raises(BadInput, match=r"two files named player\.toml"):
        unpacked(named([("player.toml", b"a"), ("player.toml", b"b")]))


@given(st.binary(max_size=400), st.integers(0, 200))
def test_any_bytes_give_files_or_a_sentence(noise: bytes, at: int) -> None:
    """Law: damage of any kind is a person's mistake with a sentence, never an error of ours."""
    good = named([("player.toml", b"code = 'K1'\n" * 9)])
    for body in (noise, good[:at], good[:at] + noise + good[at + len(noise) :]):
        try:
            tree = unpacked(body)
        except BadInput:
            continue
        assert "player.toml" in tree


@pytest.mark.parametrize("flag, method", [(1, 8), (0, 99)], ids=["a password", "an unknown way of packing"])
def test_what_nobody_here_can_unpack_is_refused_in_a_sentence(flag: int, method: int) -> None:
    """Flag and method as they stand in the headers of a ZIP file [zip-appnote]: local at 6 and 8, central at 8 and 10."""
    body = bytearray(packed({"player.toml": b'code = "K1"'}))
    central = body.index(b"PK\x01\x02")
    for at in (6, central + 8):
        body[at] = flag
    for at in (8, central + 10):
        body[at] = method
    with pytest.raises(BadInput, match="This ZIP file is damaged, has a password"):
        unpacked(bytes(body))


def test_a_folder_of_this_machine(tmp_path: Path) -> None:
    with pytest.raises(BadInput, match="There is no folder"):
        folder_tree(tmp_path / "none")
    with pytest.raises(BadInput, match=r"has no player\.toml"):
        folder_tree(tmp_path)
    (tmp_path / "player.toml").write_bytes(b"x")
    (tmp_path / "readings").mkdir()
    (tmp_path / "readings" / "a.csv").write_bytes(b"y")
    (tmp_path / "elsewhere").symlink_to("/etc/hostname")
    assert folder_tree(tmp_path) == {"player.toml": b"x", "readings/a.csv": b"y"}
