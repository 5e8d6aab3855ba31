"""The report of a plan: headings and cells that terminal, page and sheet share."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Name, Text, Topic

__all__ = ["ColumnCode", "PlanReport", "SectionCode"]

SectionCode = Literal[
    "answer", "controls", "order", "settings", "to_order", "to_check", "cautions", "clash", "alternatives", "loads",
    "together", "parts", "current", "assumed",
]  # fmt: skip
ColumnCode = Literal[
    "mark", "action", "control", "by", "with", "socket", "chance", "effort", "quantity", "value", "why", "confirm",
    "part", "kind", "needed", "in_stock", "to_order", "price", "note",
]  # fmt: skip


class PlanReport(Topic):
    """Headings, heads of columns and cells of the report."""

    @abstractmethod
    def section(self, *, section: SectionCode) -> str:
        """Heading of a part of the report: the answer, controls at a glance, order of introduction, settings, what to order,
        what to check before playing, cautions, requests that clash, next best layouts, what each site does, simultaneous use,
        parts, current, what is assumed."""

    @abstractmethod
    def column(self, *, column: ColumnCode) -> str:
        """Head of a column: number in the picture, action, how it is done, by whom, with what, socket, chance, effort;
        quantity, value, why, how to confirm; of the parts list: part, kind, how many are needed, in stock, to order, price,
        note."""

    @abstractmethod
    def controls_of(self, *, game: Name) -> str:
        """Caption of the controls of one game, where there are several."""

    @abstractmethod
    def best_stick(self, *, chance_share: float) -> str:
        """A cell: chance that no other stick is better."""

    @abstractmethod
    def effort(self, *, effort: Estimate, all_of_it: bool) -> str:
        """A cell: force as a share of the comfortable force; or that it takes more than the player has."""

    @abstractmethod
    def effort_note(self) -> str:
        """Under the table: what effort means."""

    @abstractmethod
    def cautions_elsewhere(self, *, count: int) -> str:
        """How many more cautions stand beside the figures and mounts that they belong to."""

    @abstractmethod
    def nothing_to_order(self) -> str:
        """There is no parts list."""

    @abstractmethod
    def everything(self, *, case: Name) -> str:
        """The command that prints everything."""

    @abstractmethod
    def to_confirm(self, *, action: Name, doubt: Text) -> str:
        """What is to be confirmed about the device of an action."""
