"""What a game listens to, in the words of the standard mapping: keys of files and codes."""

from __future__ import annotations

from typing import Literal

__all__ = ["Role", "StickRole", "role_named"]

StickRole = Literal["left stick", "right stick"]
Role = Literal[
    "left stick", "right stick",
    "bottom button in right cluster", "right button in right cluster", "left button in right cluster",
    "top button in right cluster", "top left front button", "top right front button", "bottom left front button",
    "bottom right front button", "left button in center cluster", "right button in center cluster",
    "left stick pressed button", "right stick pressed button", "top button in left cluster",
    "bottom button in left cluster", "left button in left cluster", "right button in left cluster",
    "center button in center cluster",
]  # fmt: skip


def role_named(words: str | None) -> Role | None:
    """A role by the words of the standard mapping; None for anything else."""
    roles: tuple[Role, ...] = Role.__args__  # type: ignore[attr-defined]
    return next((one for one in roles if one == words), None)
