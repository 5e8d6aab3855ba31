"""What is written in and about the pictures of a mount, in English."""

from __future__ import annotations

import math
from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.message import Message, Name, Text
from stickwright.codes.mount_drawings import FreeKind, MountDrawings, Picture, SceneHead, Thing
from stickwright.codes.mount_poses import Along, End

__all__ = ["Texts"]

_TITLES: dict[Picture, str] = {
    "above": "From above: forward is up", "right": "From the player's right: forward is right",
    "device": "Device square on", "place": "Place, from the right",
    "overview": "Overview",
}  # fmt: skip
_VIEWS = {"above": "from above: forward is up", "right": "from the player's right: forward is right"}
_FREE: dict[FreeKind, str] = {
    "face": "face", "neck": "neck", "chest": "chest", "chair control": "the chair's own control",
    "transfer side": "transfer side", "door": "door", "tubing": "tubing", "screen": "sight of the screen",
    "helper": "helper's place", "other": "",
}  # fmt: skip
_KINDS: dict[Thing, str] = {
    "tube": "tube", "edge": "edge", "surface": "surface", "keep_free": "keep free", "landmark": "landmark", "mount": "mount",
    "stick": "device", "cable": "cable",
}  # fmt: skip
_HEADS: dict[SceneHead, str] = {
    "what": "what", "name": "name", "right": "right, mm", "forward": "forward, mm", "up": "up, mm", "note": "note",
    "from": "from", "to": "to", "distance": "distance",
}  # fmt: skip


class Texts(MountDrawings):
    """Each a label, except where the topic says sentence."""

    w: English

    def view(self, *, view: Picture, one_to: int) -> str:
        return f"{_TITLES[view]}, 1:{self.w.whole(one_to)}"

    def part(self, *, name: Text, setting: Text) -> str:
        return f"{self.say(name)}: {self.clause(setting)}"

    def list_head(self, *, column: Literal["part", "setting"]) -> str:
        return {"part": "Parts", "setting": "Setting"}[column]

    def clock(self) -> str:
        return "Directions from above"

    def noon(self) -> str:
        return "12 = straight ahead"

    def link(self, *, number: int, of: int) -> str:
        return "upper link" if number == of == 2 else f"link {self.w.whole(number)}"

    def long(self, *, length_m: float) -> str:
        return f"{self.w.whole(1000 * length_m)} long"

    def long_and_set(self, *, length_m: float, setting: Text) -> str:
        return f"{self.long(length_m=length_m)}, {self.clause(setting)}"

    def neck(self) -> str:
        return "gooseneck"

    def neck_length(self, *, length_m: float) -> str:
        return f"{self.w.whole(1000 * length_m)} long along its curve"

    def band(self) -> str:
        return "thick dash-dot line"

    def front(self) -> str:
        return "arrow on the base"

    def measure_from(self) -> str:
        return "measure from here"

    def at_tilt(self, *, tilt_rad: float) -> str:
        return f"seat tilted {self._degrees(tilt_rad)}"

    def sign(self) -> str:
        return "schematic"

    def view_of(self, *, device: Name, site: Name, view: Literal["above", "right"]) -> str:
        return f"{self.w.name(device)} at the {self.w.name(site)}, {_VIEWS[view]}"

    def foot(self, *, one_to: Text, tilt_rad: float | None) -> str:
        tilted = f" Also drawn with the seat tilted {self._degrees(tilt_rad)}." if tilt_rad is not None else ""
        return (
            f"Scale 1 to {self.clause(one_to)}, all lengths in mm. Print at 100%. Hatched: keep free. Dotted: cable. Thin dashes: hidden. "
            f"Sizes of clamp, joints, links, plate, player and seat are schematic; the seat is level.{tilted}"
        )

    def alt(
        self, *, device: Name, site: Name, mount: Name | None, on: Name | None, along: Text | None, distances: tuple[Message, ...],
        free: tuple[Name, ...],
    ) -> str:  # fmt: skip
        on_what = f", {self.w.name(on)}" if on is not None else ""
        held = f"on {self.w.name(mount)}{on_what}" if mount is not None else "held by nothing yet"
        told = [
            f"View from above and from the player's right of {self.w.name(device)} at the {self.w.name(site)}, {held}."
        ]
        if along:
            told.append(f"The clamp sits {self.clause(along)}.")
        told += [self.say(one) for one in distances]
        if free:
            told.append(f"Hatched, to keep free: {self.w.names(free)}.")
        return " ".join(told)

    def forward(self) -> str:
        return "player's forward"

    def clamp_range(self) -> str:
        return "where the clamp may sit"

    def cable(self) -> str:
        return "cable"

    def cable_to_foot(self, *, length_m: float | None) -> str:
        return (
            f"{self.w.amount(length_m, 'mm')} from device to foot" if length_m is not None else "length not calculated"
        )

    def distance_along(self, *, to: End, distance_m: float, along: Along) -> str:
        return f"{to} {self.w.millimetres(distance_m)} {along}"

    def measured(self, *, to: End | Literal["along"]) -> str:
        return f"{to} <>"

    def keep_free(self, *, name: Name, kind: FreeKind) -> str:
        why, typed = _FREE[kind], name.casefold()
        told = not why or typed == kind or why.casefold() in typed or typed in why.casefold()
        return f"keep free: {self.w.name(name)}" if told else f"keep free: {self.w.name(name)} ({why})"

    def with_note(self, *, name: Text, note: Text) -> str:
        return f"{self.say(name)}, {self.say(note)}"

    def mattress(self) -> str:
        return "mattress"

    def seat(self) -> str:
        return "seat"

    def backrest(self) -> str:
        return "back of the seat"

    def no_clamp(self) -> str:
        return "no clamp here"

    def thick(self, *, thick_m: float) -> str:
        return f"{self.w.amount(thick_m, 'mm')} thick"

    def floor(self) -> str:
        return "floor"

    def fastened(self) -> str:
        return "fastened"

    def clamp_of(self, *, mount: Name) -> str:
        return f"clamp of the {self.w.name(mount)}"

    def base_unmeasured(self) -> str:
        return "base not measured"

    def under_base(self, *, fastener: Name | None) -> str:
        return f"{self.w.name(fastener) if fastener is not None else 'fastener'} under the base"

    def contact(self) -> str:
        return "contact point"

    def kind(self, *, kind: Thing) -> str:
        return _KINDS[kind]

    def span(self, *, low_m: float, high_m: float) -> str:
        low, high = (self.w.whole(round(1000 * at) + 0.0) for at in (low_m, high_m))
        return low if low == high else f"{low} {self.w.up_to} {high}"

    def head(self, *, head: SceneHead) -> str:
        return _HEADS[head]

    def show(self) -> str:
        return "Show"

    def caution_mark(self) -> str:
        return "Caution:"

    def joints(self) -> str:
        return "Joints"

    def fixed_points(self, *, site: Name) -> str:
        return f"Check from fixed points: {self.w.name(site)}"

    def strength(self) -> str:
        return "Strength"

    def others(self) -> str:
        return "Other ways to mount it"

    def positions(self, *, device: Name, site: Name) -> str:
        return f"Positions around {self.w.name(device)} at the {self.w.name(site)}, from the seat reference point"

    def scene_foot(self, *, mark: Text, version: Name, made_on: Name) -> str:
        before = f"{self.say(mark)} " if mark else ""
        return (
            f"{before}stickwright {self.w.name(version)}, {self.w.date(made_on)}. Not a medical device: local rules, the seating "
            "clinic and the treating team come first."
        )

    def _degrees(self, angle_rad: float) -> str:
        return f"{self.w.whole(math.degrees(angle_rad))}°"
