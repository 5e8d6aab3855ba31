"""Written whole, then renamed."""

from __future__ import annotations

import os

import pytest

from stickwright.errors import BadInput
from stickwright.files.writing import write_whole


def test_replaced_whole_and_nothing_left_over(tmp_path):
    """The new text stands in place of the old one; no temporary file stays."""
    path = tmp_path / "a.txt"
    path.write_text("old")
    write_whole(path, "new é\n")
    assert path.read_bytes() == "new é\n".encode()
    assert os.listdir(tmp_path) == ["a.txt"]


def test_a_crash_before_the_rename_leaves_the_old_file(tmp_path, monkeypatch):
    """Whatever happens before the rename, the old file is whole and no part file stays."""
    path = tmp_path / "a.txt"
    path.write_text("old")

    def full(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(BadInput, match="found a place that cannot be written"):
        write_whole(path, "new")
    assert path.read_text() == "old"
    assert os.listdir(tmp_path) == ["a.txt"]


def test_a_missing_folder_is_a_sentence(tmp_path):
    """No folder: told, not raised as a fault of the program."""
    with pytest.raises(BadInput, match="expected a folder that exists, can be written to and is not full"):
        write_whole(tmp_path / "none" / "a.txt", b"x")
