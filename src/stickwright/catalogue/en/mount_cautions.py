"""The usual cautions for one mount, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Message
from stickwright.codes.mount_cautions import MountCautions

__all__ = ["Texts"]

_ASK = (
    "ask the wheelchair service about stability and width before the chair moves or stands on a slope, and take the mount off for "
    "transport."
)


class Texts(MountCautions):
    """Each whole sentences."""

    w: English

    def face(self) -> str:
        return (
            "Near the face: soft parts only, nothing rigid towards eye or throat. The mount moves with the head support. The player "
            "can get clear alone, or somebody stays with them. Never use it while travelling."
        )

    def release(self, *, setting: Message | None) -> str:
        words = "Test at every set-up that it lets go." if setting is None else self.say(setting)
        return f"Release: {words} The treating team agrees the limit."

    def skin(self) -> str:
        return (
            "Skin: no edge, knob or tube against it. Check after 10 minutes, then after 30, where the control site rests and where it "
            "might slip to."
        )

    def pinch(self, *, low_m: float, high_m: float, found_m: tuple[float, ...]) -> str:
        found = self.w.all_of(tuple(self.w.amount(gap, "mm") for gap in found_m))
        cover = f" Found: {found}; cover it." if found_m else ""
        return (
            f"Fingers: no gap of {self.w.amount(low_m, 'mm')} to {self.w.amount(high_m, 'mm')} at joints, clamps or the stick's slot; "
            f"cover what opens and closes.{cover}"
        )

    def cable(self, *, head: bool, slack_m: float | None) -> str:
        near = "; none across neck, chest or tubing, and near the head a lead that pulls apart" if head else ""
        slack = f"; leave {self.w.amount(slack_m, 'mm')} to spare for tilting" if slack_m is not None else ""
        return f"Cables: tie them along the mount, with no loops and none across a walkway{near}{slack}."

    def stability(self, *, mass_kg: float, out_m: float, added_nm: float) -> str:
        return (
            f"Stability of the chair: {self.w.amount(mass_kg, 'kg')} at {self.w.amount(out_m, 'mm')} outside the frame add "
            f"{self.w.amount(added_nm, 'nm')}; {_ASK}"
        )

    def stability_known(self, *, known: Message) -> str:
        return f"Stability of the chair: {self.clause(known)}. Whatever this says, {_ASK}"

    def transfer(self, *, swings: bool, time_s: float | None, assumed: bool, aim_s: float, slow: bool) -> str:
        how = "swings aside and comes back to its mark" if swings else "comes off"
        time = "" if time_s is None else f" in {'about ' if assumed else ''}{self.w.amount(time_s, 's')}"
        mark = " (assumed; time it)" if assumed and time_s is not None else ""
        aim = self.w.amount(aim_s, "s")
        longer = (
            f" That is longer than the {aim} acceptable in an emergency (common practice, no measured source): agree with the team how "
            "the player gets clear meanwhile, or use something that comes off faster."
            if slow
            else ""
        )
        return (
            f"Transfers and emergencies: it {how}{time}{mark}. Show everybody who helps how, aim for under {aim} with one hand, and keep "
            f"the transfer side free.{longer}"
        )

    def startle(self) -> str:
        return "Pad edges and knobs within reach of a spasm; nothing heavy at head height; tighten and test before each session."

    def upkeep(self) -> str:
        return "Follow the maker's manual and the local rules for anything fixed to a chair; check clamps and fasteners every month."
