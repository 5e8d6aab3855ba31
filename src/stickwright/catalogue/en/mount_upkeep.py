"""What to check each month, and what to photograph, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.catalogue.en.joint_settings import numbered
from stickwright.codes.joint_settings import JointName
from stickwright.codes.message import Name
from stickwright.codes.mount_upkeep import MountUpkeep

__all__ = ["Texts"]


class Texts(MountUpkeep):
    """Checks: clauses; photographs: labels."""

    w: English

    def clamp(self) -> str:
        return "the clamp does not turn or slide when pulled by hand, and the tape mark beside it is still in line"

    def joints(self) -> str:
        return "the tape marks across the joints are still in line: an arm that sags can look like a faulty stick"

    def fastener(self, *, fastener: Name) -> str:
        return f"the {self.w.name(fastener)} is clean, no corner lifts, and both halves grip over the whole patch"

    def worn(self, *, fastener: Name, openings: int, once: Name | None, twice: Name | None) -> str:
        half = f"the {self.w.name(fastener)} is not worn: it is half as strong after {self.w.whole(openings)} openings"
        if once is None or twice is None:
            return f"{half}; replace it before then"
        return (
            f"{half}, so replace it by {self.w.date(once)} if it is opened once a day ({self.w.assumed}), by {self.w.date(twice)} if "
            "twice"
        )

    def slides(self) -> str:
        return "it does not slide when pushed as hard as in play"

    def anti_slip(self, *, sheet: Name) -> str:
        return f"the {self.w.name(sheet)} is washed and dry: dust makes it slip"

    def breakaway(self, *, coupling: Name) -> str:
        return f"the breakaway coupling ({self.w.name(coupling)}) lets go by hand as it did on the first day"

    def distances(self) -> str:
        return "the distances in the table are still right"

    def from_above(self) -> str:
        return "from straight above"

    def from_right(self) -> str:
        return "from the player's right, at seat height"

    def clamp_close(self) -> str:
        return "the clamp close up, with a tape along the tube"

    def joint_straight(self, *, number: int, joint: JointName) -> str:
        return f"{numbered(self.w, joint, number)}, straight on"

    def halves(self) -> str:
        return "both halves of the fastener, before they are joined"
