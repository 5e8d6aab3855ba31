"""Kinds of control site: keys of files and codes."""

from __future__ import annotations

from typing import Literal

__all__ = ["Part"]

Part = Literal[
    "fingertip", "thumb", "hand", "forearm", "elbow", "shoulder", "chin", "lip", "cheek", "tongue", "head", "knee",
    "thigh", "foot", "toe", "trunk",
]  # fmt: skip
