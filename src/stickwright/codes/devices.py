"""Sticks, controllers and switches as they are plugged in: their axes and buttons, and what happens to them."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Text, Topic

__all__ = ["ButtonPlace", "Devices"]

ButtonPlace = Literal[0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16]
"""Place of a button in the W3C standard mapping [w3c-gamepad]."""


class Devices(Topic):
    """A device's own name is a `Name`, or `nameless`."""

    @abstractmethod
    def nameless(self) -> str:
        """A stick that gives no name; inside a sentence too."""

    @abstractmethod
    def axis(self, *, stick: Literal["left", "right"], axis: Literal["horizontal", "vertical"]) -> str:
        """An axis of the standard mapping."""

    @abstractmethod
    def numbered_axis(self, *, number: int) -> str:
        """An axis of a device whose mapping is not known, from 1."""

    @abstractmethod
    def button(self, *, place: ButtonPlace) -> str:
        """A button of the standard mapping, by its position: no letters, symbols or colours."""

    @abstractmethod
    def numbered_button(self, *, number: int) -> str:
        """A button of a device whose mapping is not known, from 1."""

    @abstractmethod
    def stick(self, *, side: Literal["left", "right"]) -> str:
        """The left or right stick of a controller, on a button of the page."""

    @abstractmethod
    def axes_of(self, *, device: Text, axes: tuple[Text, ...]) -> str:
        """A stick by its device and axes, inside a sentence."""

    @abstractmethod
    def plug_in(self) -> str:
        """No stick is plugged in: plug it in now."""

    @abstractmethod
    def wake(self) -> str:
        """The same where a browser reads the stick: it shows one only when a button is pressed or the stick moves."""

    @abstractmethod
    def move_round(self) -> str:
        """A stick is there: move the one that is to be measured."""

    @abstractmethod
    def found(self, *, switch: bool) -> str:
        """The stick is found; `switch`: so is a confirm switch, otherwise one can be pressed now."""

    @abstractmethod
    def confirm_switch(self, *, button: Text, device: Text) -> str:
        """This button of this device is the confirm switch."""

    @abstractmethod
    def plugged_in(self, *, device: Text, main: bool) -> str:
        """A device was plugged in; `main`: it is the one that is measured."""

    @abstractmethod
    def unplugged(self, *, which: Literal["main", "other", "before"]) -> str:
        """The stick that is measured was unplugged and the task waits; another one was; one was before the task began."""
