"""The first page of the demo: an invented player."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Topic

__all__ = ["DemoPage", "Job"]

Job = Literal["readings", "measure", "kit", "game", "plan", "mounts", "sheet"]


class DemoPage(Topic):
    """The first page of the demo: an invented player."""

    @abstractmethod
    def title(self) -> str:
        """Title of the window."""

    @abstractmethod
    def meet(self, *, code: Name) -> str:
        """Heading."""

    @abstractmethod
    def lead(self, *, code: Name) -> str:
        """First paragraph."""

    @abstractmethod
    def start(self) -> str:
        """Button: to the page where things are measured."""

    @abstractmethod
    def or_go(self) -> str:
        """Heading of the list of pages."""

    @abstractmethod
    def job(self, *, step: Job) -> str:
        """What can be tried on a page."""
