"""Buttons of a controller by their position, in the order of the W3C standard mapping [w3c-gamepad]."""

from __future__ import annotations

__all__ = ["BUTTONS"]

BUTTONS = (
    "bottom face button",
    "right face button",
    "left face button",
    "top face button",
    "left shoulder button",
    "right shoulder button",
    "left trigger",
    "right trigger",
    "view button",
    "menu button",
    "left stick press",
    "right stick press",
    "D-pad up",
    "D-pad down",
    "D-pad left",
    "D-pad right",
    "centre button",
)
