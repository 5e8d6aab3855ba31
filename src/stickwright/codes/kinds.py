"""Kinds of things that files describe: each may have a name."""

from __future__ import annotations

from typing import Literal

__all__ = ["Kind"]

Kind = Literal[
    "site", "helper", "stick", "switch", "controller", "lead", "mount", "fastener", "topper", "extension", "setting", "hub",
    "socket", "action", "tube", "edge", "surface", "keep_out", "landmark",
]  # fmt: skip
