"""The report of a plan, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Name, Text
from stickwright.codes.plan_report import ColumnCode, PlanReport, SectionCode

__all__ = ["Texts"]

_SECTIONS: dict[SectionCode, str] = {
    "answer": "Answer",
    "controls": "Controls at a glance",
    "order": "Order of introduction",
    "settings": "Settings",
    "to_order": "To order",
    "to_check": "To check",
    "cautions": "Cautions",
    "clash": "Some requests cannot be met",
    "alternatives": "Next best layouts",
    "loads": "What each control site does",
    "together": "Simultaneous use",
    "parts": "Parts",
    "current": "Current",
    "assumed": "Assumed, not measured",
}
_COLUMNS: dict[ColumnCode, str] = {
    "mark": "no.",
    "action": "action",
    "control": "control",
    "by": "by",
    "with": "with",
    "socket": "socket",
    "chance": "chance",
    "effort": "effort",
    "quantity": "quantity",
    "value": "value",
    "why": "reason",
    "confirm": "to confirm",
    "part": "part",
    "kind": "kind",
    "needed": "needed",
    "in_stock": "in stock",
    "to_order": "to order",
    "price": "price",
    "note": "note",
}


class Texts(PlanReport):
    """The report of a plan."""

    w: English

    def section(self, *, section: SectionCode) -> str:
        return _SECTIONS[section]

    def column(self, *, column: ColumnCode) -> str:
        return _COLUMNS[column]

    def controls_of(self, *, game: Name) -> str:
        return f"Controls at a glance: {self.w.name(game)}"

    def best_stick(self, *, chance_share: float) -> str:
        return f"{self.w.chance(chance_share)} best or as good"

    def effort(self, *, effort: Estimate, all_of_it: bool) -> str:
        if all_of_it:
            return "more than the player has"
        return f"{self.w.share_estimate(effort)}{self.because(effort.why)}"

    def effort_note(self) -> str:
        return "Effort: force needed as a share of comfortable force (95% interval)."

    def cautions_elsewhere(self, *, count: int) -> str:
        cautions = self.w.plural(count, one="caution stands", other="cautions stand")
        return f"{count} more {cautions} beside the figures and mounts."

    def nothing_to_order(self) -> str:
        return "No hub is described, so there is no parts list."

    def everything(self, *, case: Name) -> str:
        return f"Everything, with reasons and figures: stickwright plan {self.w.name(case)} --full"

    def to_confirm(self, *, action: Name, doubt: Text) -> str:
        return f"{self.w.capital(self.w.name(action))}: {self.say(doubt)}"
