"""What to set for a stick in a game or a hub, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Name, Text
from stickwright.codes.stick_settings import StickSettings

__all__ = ["Texts"]

_TASKS = {"rim": " in the task Around the edge", "push": " in full pushes", "": ""}


class Texts(StickSettings):
    """What to set, how the numbers come about, how to undo them."""

    w: English

    def in_game(self, *, stick: Name, numbers: Text) -> str:
        return f"Set in the game for {self.w.name(stick)}: {self.clause(numbers)}."

    def in_each_game(self, *, sticks: tuple[Name, ...], games: tuple[Name, ...], numbers: tuple[Text, ...]) -> str:
        told = "; ".join(f"{self.w.name(game)}: {self.clause(one)}" for game, one in zip(games, numbers, strict=False))
        return f"Set in each game for {self.w.names(sticks)}: {told}."

    def nothing_yet(self) -> str:
        return "Do not change any settings in the game yet. They still have to be measured."

    def change_nothing(self, *, why: Text) -> str:
        return f"change nothing yet: {self.clause(why)}"

    def numbers(self, *, dead_zone_share: float, sensitivity_share: float) -> str:
        return f"dead zone {self.w.share(dead_zone_share)}, sensitivity {self.w.share(sensitivity_share)}"

    def numbers_offered(self, *, dead_zone_share: float | None, sensitivity_share: float | None) -> str:
        told = [] if dead_zone_share is None else [f"dead zone {self.w.share(dead_zone_share)}"]
        told += [] if sensitivity_share is None else [f"sensitivity {self.w.share(sensitivity_share)}"]
        told += ["no dead zone offered"] if dead_zone_share is None else []
        told += ["no sensitivity offered"] if sensitivity_share is None else []
        return ", ".join(told)

    def set_for(self, *, stick: Name, numbers: Text) -> str:
        return f"In the game, for {self.w.name(stick)}: {self.clause(numbers)}."

    def gains(self, *, stick: Name, directions_rad: tuple[float, ...], gains_factor: tuple[float, ...]) -> str:
        told = tuple(
            f"{self.w.number(gain)} {self.w.direction(way)}"
            for way, gain in zip(directions_rad, gains_factor, strict=False)
        )
        return (
            f"Set the sensitivity of {self.w.name(stick)} in the hub or the game: {self.w.all_of(told)} (assumed from the readings, not "
            f"recorded). To confirm: record rest, edge and pushes on {self.w.name(stick)}."
        )

    def gains_basis(
        self, *, directions_rad: tuple[float, ...], reach_share: tuple[float, ...], limit_factor: float
    ) -> str:
        told = tuple(
            f"1 ÷ {self.w.share(reach)} {self.w.direction(way)}"
            for way, reach in zip(directions_rad, reach_share, strict=False)
        )
        return (
            f"Each sensitivity is 1 ÷ the share of travel that the readings predict, at most {self.w.trimmed(limit_factor)}: "
            f"{self.w.all_of(told)}."
        )

    def other_stick(self, *, tuned: Name, stick: Name) -> str:
        return f"Tuned on {self.w.name(tuned)}, not on {self.w.name(stick)}: record and tune again."

    def other_setup(self, *, without: tuple[Text, ...], having: tuple[Text, ...]) -> str:
        told = [f"without {self.w.all_of(tuple(self.say(one) for one in without))}"] if without else []
        told += [f"with {self.w.all_of(tuple(self.say(one) for one in having))}"] if having else []
        return f"Tuned {', '.join(told)}: tune again." if told else "Tune again."

    def extension(self, *, extension: Name) -> str:
        return f"extension {self.w.name(extension)}"

    def zone_basis(
        self,
        *,
        dead_zone_share: float,
        off_centre_share: float,
        radius_share: float,
        how: Literal["none", "rounded_up", "nearest"],
    ) -> str:
        least = self.w.tenth_share(off_centre_share + radius_share)
        needs = (
            f"{self.w.tenth_share(off_centre_share)} by which rest is off centre + {self.w.tenth_share(radius_share)} radius of rest = "
            f"{least} of full output"
        )
        told = {
            "none": f"the game offers none; rest needs {needs}",
            "rounded_up": f"{needs}, rounded up to a whole per cent",
            "nearest": f"comes nearest to the full response; rest needs at least {needs}",
        }
        return f"Dead zone {self.w.share(dead_zone_share)}: {told[how]}."

    def sensitivity_basis(
        self, *, sensitivity_share: float, low_share: float, high_share: float, task: Literal["rim", "push", ""]
    ) -> str:
        low, high = self.w.share(low_share), self.w.share(high_share)
        reach = low if low == high else f"{low} to {high}"
        return (
            f"Sensitivity {self.w.share(sensitivity_share)}: the whole per cent that comes nearest to the full response (least "
            f"squares) over the player's reach of {reach}{_TASKS[task]}, with output = sensitivity × (deflection − dead zone) ÷ "
            f"({self.w.share(1.0)} − dead zone)."
        )

    def no_settings(self, *, faults: tuple[Text, ...]) -> str:
        return " ".join(("No settings are given yet.", *(self.say(one) for one in faults)))

    def undo(self, *, dead_zone_share: float | None, sensitivity_share: float | None, others: Name | None) -> str:
        known = [f"dead zone {self.w.share(dead_zone_share)}"] if dead_zone_share is not None else []
        known += [f"sensitivity {self.w.share(sensitivity_share)}"] if sensitivity_share is not None else []
        known += [self.w.typed(others)] if others else []
        unread = ["dead zone"] if dead_zone_share is None else []
        unread += ["sensitivity"] if sensitivity_share is None else []
        if not unread:
            return ", ".join(known)
        it = self.w.plural(len(unread), one="it", other="them")
        note = f"note the {' and '.join(unread)} set now before you change {it}"
        return f"{', '.join(known)}; {note}" if known else note

    def to_undo(self, *, told: Text) -> str:
        return f"To undo: {self.clause(told)}."

    def which_zone(
        self, *, counted_share: float | None, corrected_share: float, typed_share: float, off_centre_share: float | None
    ) -> str:
        counted = (
            f"{self.w.share(counted_share)} of travel is what the choice of the stick counts on against unintended activations; "
            if counted_share is not None
            else ""
        )
        why = (
            f", because rest lies {self.w.tenth_share(off_centre_share)} off centre and the game does not correct that"
            if off_centre_share is not None
            else ""
        )
        return (
            f"Which dead zone is which: {counted}{self.w.fine_share(corrected_share)} of the range is for software that corrects the "
            f"centre first; {self.w.share(typed_share)} is the one to set in the game{why}."
        )

    def in_short(self, *, stick: Name, dead_zone: Estimate, rotation: Text, numbers: Text) -> str:
        return (
            f"{self.w.name(stick)}: dead zone {self.w.share_estimate(dead_zone)}{self.because(dead_zone.why)}, "
            f"rotation {self.say(rotation)}; in the game: {self.clause(numbers)}."
        )

    def in_short_none(self, *, stick: Name, told: Text) -> str:
        return f"{self.w.name(stick)}: {self.say(told)}"

    def rotation(self, *, turn: Estimate) -> str:
        return f"{self.w.turn_estimate(turn)}{self.because(turn.why)}"

    def tuning_of(self, *, setup: Text) -> str:
        return f"Tuning of {self.say(setup)}"

    def settings_of(self, *, stick: Name) -> str:
        return f"Settings of {self.w.name(stick)}"

    def found_in(self, *, recordings: tuple[Name, ...]) -> str:
        return f"From {self.w.names(recordings)}, in this order:"

    def found_in_many(self, *, recordings: int, setup: Text) -> str:
        return f"From {recordings} {self.w.plural(recordings, one='recording', other='recordings')} on {self.say(setup)}, in this order:"

    def own_recording(self, *, recording: Name) -> str:
        return f"The player's own {self.w.name(recording)}."

    def row(self, *, part: Literal["deflection", "output"]) -> str:
        return {"deflection": "deflection", "output": "output"}[part]

    def of_stick(self, *, stick: Name, site: Name, what: Literal["to_set", "to_undo", "jump", "filter"]) -> str:
        told = {
            "to_set": "to set",
            "to_undo": "to undo",
            "jump": "in the hub, output starts at",
            "filter": "in the hub, filter",
        }
        return f"{self.w.name(stick)} ({self.w.name(site)}): {told[what]}"

    def setting(self) -> str:
        return "setting"

    def profiles(self) -> str:
        return "Keep one profile for each game on the hub, if it has profiles."

    def unused(self) -> str:
        return "not used"

    def output_start(self, *, start_share: float | None) -> str:
        return self.w.unknown if start_share is None else self.w.share(start_share)

    def filter_stays(self, *, late_s: float | None) -> str:
        return "as found" if late_s is None else f"off: {self.w.amount(late_s, 'ms')} is too late for this game"
