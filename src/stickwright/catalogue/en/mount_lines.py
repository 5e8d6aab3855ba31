"""What holds a device, with its numbers, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.catalogue.en.mount_checks import capital
from stickwright.codes.message import Message, Name, Text
from stickwright.codes.mount_lines import Head, MountLines, Push, Result, Row
from stickwright.codes.mount_rules import DeviceKind

__all__ = ["Texts"]

_PUSHES: dict[Push, str] = {
    "working": "working push", "involuntary": "strongest involuntary push", "weight": "weight"
}  # fmt: skip
_ROWS: dict[Row, str] = {
    "part": "Parts", "fastener": "Fastener", "clamp": "Clamp", "breakaway": "Breakaway", "other_places": "Other places",
    "place": "Position", "turn": "Rotation",
}  # fmt: skip
_HEADS: dict[Head, str] = {
    "fixed_points": "Check from fixed points", "from": "from", "to": "to", "distance": "distance",
    "set_joints": "Set the joints (clock seen from above, 12 straight ahead of the player)",
    "monthly": "Every month, check that", "photos": "Photographs to take on the first day",
    "strength": "For the practitioner: strength, with safety factors", "what": "what", "push": "push", "load": "load",
    "limit": "limit", "factor": "safety factor", "required": "required", "result": "result",
    "others": "Other ways to mount it", "switches": "Mounting of the switches", "switch": "switch", "held_by": "held by",
    "least": "least to spare", "unmounted": "Mounting of the other devices",
}  # fmt: skip
_RESULTS: dict[Result, str] = {"pass": "pass", "confirm": "to confirm", "fail": "FAIL"}
_MARKS: dict[Result, str] = {"pass": "", "confirm": "TO CONFIRM: ", "fail": "FAILS: "}


class Texts(MountLines):
    """Each a sentence, except where the topic says otherwise."""

    w: English

    def heading(self, *, device: Name, site: Name) -> str:
        return f"Mounting: {self.w.name(device)} at the {self.w.name(site)}"

    def block(self, *, site: Name) -> str:
        return f"Mounting: {self.w.name(site)}"

    def of_player(self, *, player: Name) -> str:
        return f"Mounting: player {self.w.name(player)}"

    def device_at(self, *, device: Name, pieces: int, site: Name) -> str:
        return f"{self.w.pieces(pieces, device)} at the {self.w.name(site)}"

    def head(self, *, head: Head) -> str:
        return _HEADS[head]

    def row(self, *, row: Row) -> str:
        return _ROWS[row]

    def caution_in_line(self, *, text: Text) -> str:
        return f"Caution: {self.say(text)}"

    def for_sites(self, *, sites: tuple[Name, ...], text: Text) -> str:
        return f"{capital(self.w.names(sites))}: {self.say(text)}"

    def assumed(self, *, text: Text) -> str:
        return f"{self.w.assumed}: {self.clause(text)}."

    def assumed_head(self) -> str:
        return "Assumed"

    def all_assumed(self, *, texts: tuple[Text, ...]) -> str:
        return f"{capital('; '.join(self.clause(one) for one in texts))}."

    def clock_head(self) -> str:
        return "Clock"

    def held_by(self, *, mount: Name, on: Name | None, fixed: Text | None, along: Text | None) -> str:
        where = f", on the {self.w.name(on)}" if on is not None else ""
        more = "".join(f"; {self.clause(one)}" for one in (fixed, along) if one)
        return f"Held by: {self.w.name(mount)}{where}{more}."

    def patch(self, *, fastener: Name, long_m: float, short_m: float) -> str:
        return f"{self.w.name(fastener)}, a patch of {self.w.sizes((long_m, short_m))}"

    def parts(self, *, parts: tuple[Text, ...]) -> str:
        return self.w.all_of(tuple(self.say(one) for one in parts))

    def release(
        self, *, coupling: Name, low_nm: float, high_nm: float | None, low_n: float | None, high_n: float | None, agreed: bool
    ) -> str:  # fmt: skip
        low = self.w.amount(low_nm, "nm")
        ends = f"at {low} or more" if high_nm is None else f"between {low} and {self.w.amount(high_nm, 'nm')}"
        tip = ""
        if low_n is not None and high_n is not None:
            tip = f" ({self.w.amount(low_n, 'n')} to {self.w.amount(high_n, 'n')} along with the weight, at the contact point)"
        ask = "" if agreed else " The clinic has not agreed the upper end: ask before it is used."
        return f"Set the breakaway coupling ({self.w.name(coupling)}) to let go {ends} at the clamp{tip}.{ask}"

    def counted(self, *, times_factor: float) -> str:
        return (
            f"A working push is the hardest comfortable push, counted {self.w.trimmed(times_factor)} times, because people push "
            "harder in play."
        )

    def lever(self, *, device_m: float, under_m: float | None) -> str:
        if under_m is None:
            return f"Lever: {self.w.amount(device_m, 'mm')}, from the contact point to the underside."
        return (
            f"Lever: {self.w.amount(device_m + under_m, 'mm')}, which is {self.w.amount(device_m, 'mm')} from the contact point to "
            f"the underside and {self.w.amount(under_m, 'mm')} from there to what it stands on."
        )

    def cable(self, *, whole_m: float, slack_m: float | None) -> str:
        whole = self.w.amount(whole_m, "mm")
        if slack_m is None:
            return f"Cable along the mount: {whole}."
        return (
            f"Cable along the mount: {self.w.amount(whole_m - slack_m, 'mm')} + {self.w.amount(slack_m, 'mm')} for the joints to "
            f"move = {whole}."
        )

    def clearance(self, *, clear_m: float, nearest: Name) -> str:
        return f"Minimum clearance: {self.w.amount(clear_m, 'mm')} ({self.w.name(nearest)}), over the whole tilt."

    def comes_off(self, *, time_s: float) -> str:
        return f"Comes off in {self.w.trimmed_amount(time_s, 's')}."

    def push(self, *, push: Push) -> str:
        return push

    def result(self, *, result: Result) -> str:
        return _RESULTS[result]

    def check(
        self, *, name: Message, push: Push | None, result: Result, told: Text, why: Text | None, confirm: tuple[Text, ...],
        assumed: Text | None,
    ) -> str:  # fmt: skip
        load = f", {_PUSHES[push]}" if push is not None else ""
        reason = f"; {self.clause(why)}" if why else ""
        measure = f"; {'; '.join(self.clause(one) for one in confirm)}" if confirm else ""
        mark = f" ({self.w.assumed}: {self.clause(assumed)})" if assumed else ""
        return f"{_MARKS[result]}{self.say(name)}{load}: {self.clause(told)}{reason}{measure}{mark}."

    def check_cell(self, *, name: Message, why: Text | None, confirm: tuple[Text, ...], assumed: Text | None) -> str:
        beside = []
        if confirm:
            beside.append(f"to confirm: {'; '.join(self.clause(one) for one in confirm)}")
        if assumed:
            beside.append(f"{self.w.assumed}: {self.clause(assumed)}")
        mark = f" ({'; '.join(beside)})" if beside else ""
        return f"{self.say(name)}{mark}{f': {self.clause(why)}' if why else ''}"

    def load_of(self, *, load: Text, limit: Text, factor: Message) -> str:
        return f"{self.say(load)} of {self.say(limit)}, {self.say(factor)}"

    def factor(self, *, safety_factor: float | None, unloaded: bool, required_factor: float) -> str:
        there = self.factor_cell(safety_factor=safety_factor, unloaded=unloaded, required_factor=required_factor)
        return f"{'' if unloaded else 'safety factor '}{there}, required {self.w.trimmed(required_factor)}"

    def factor_cell(self, *, safety_factor: float | None, unloaded: bool, required_factor: float) -> str:
        if unloaded:
            return self.unloaded()
        return self.w.unknown if safety_factor is None else self.w.factor(safety_factor, required_factor)

    def unloaded(self) -> str:
        return "nothing loads it"

    def not_known(self) -> str:
        return self.w.unknown

    def least(self, *, name: Message, factor: Message) -> str:
        return f"{capital(self.clause(name))}: {self.clause(factor)}."

    def flex_unknown(self) -> str:
        return "How much travel its flex takes is not known: hang a kilogram on it and measure the drop."

    def flex(self, *, lost_share: float, kind: DeviceKind) -> str:
        push = "when it is pressed" if kind == "switch" else "at full push"
        return f"Its flex takes {self.w.share(lost_share)} of the travel {push}."

    def sags(self, *, droop_m: float, droop_rad: float) -> str:
        return f"It sags {self.w.amount(droop_m, 'mm')} and {self.w.amount(droop_rad, 'deg')} under its load."

    def natural(self, *, natural_hz: float, least_hz: float, slow: bool) -> str:
        knock = (
            f"; that is below {self.w.trimmed_amount(least_hz, 'hz')}, so a knock on the chair can come through as input"
            if slow
            else ""
        )
        return f"Natural frequency about {self.w.amount(natural_hz, 'hz')}, with the arm's own mass{knock}."

    def also_passes(
        self, *, way: Message, spare_factor: float | None, lost_share: float | None, taken_by: tuple[Name, ...],
        confirm: tuple[Text, ...],
    ) -> str:  # fmt: skip
        spare = f", {self.w.factor(spare_factor, 1.0)} times what is required" if spare_factor is not None else ""
        lost = f"; its flex takes {self.w.share(lost_share)} of the travel" if lost_share is not None else ""
        taken = f"; but what it needs is used for {self.w.names(taken_by)}" if taken_by else ""
        asked = "".join(f" {self.say(one)}" for one in confirm)
        return f"{'May also pass' if confirm else 'Also passes'}: {self.clause(way)}{spare}{lost}{taken}.{asked}"

    def fails(self, *, way: Message, refused: bool, why: tuple[Text, ...], change: Text | None) -> str:
        told = "".join(f" {capital(self.clause(one))}." for one in why)
        smallest = f" Smallest change: {self.say(change)}" if change else ""
        return f"{'REFUSED' if refused else 'Fails'}: {self.clause(way)}.{told}{smallest}"

    def more(self, *, count: int) -> str:
        return f"{self.w.whole(count)} more, ranked below these: see the plan's JSON file."
