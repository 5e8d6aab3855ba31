"""Pushes, laps, holds and sudden movements, in English."""

from __future__ import annotations

import math
from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Text
from stickwright.codes.movements import Movements, Tried
from stickwright.codes.ways import Way

__all__ = ["Texts"]

_TRIED: dict[Tried, tuple[str, str]] = {"lap": ("lap", "laps"), "play": ("stretch of play", "stretches of play")}


class Texts(Movements):
    """Findings, and sentences why a figure is not known or has no interval."""

    w: English

    def centre_unknown(self) -> str:
        return "Reach is not known, because the centre is not known in this unit. Record 10 s of rest."

    def nothing_asked(self) -> str:
        return "Reach is not known, because no movement was asked for. Record two laps along the edge."

    def hardly_moved(self) -> str:
        return "Reach is not known, because the stick hardly left its centre."

    def one_push_each(self) -> str:
        return "There is one push in each direction. Repeat each twice for an interval."

    def at_limit(self) -> str:
        return "All end at the same limit of the output, so the reach is at least this."

    def no_full_output(self) -> str:
        return "The unit has no known full output. Give the count that is full."

    def one_axis_only(self) -> str:
        return "Only one axis was recorded."

    def not_all_tried(self) -> str:
        return "Not all directions were tried, so there is no area."

    def few_reached(self, *, tried: Tried) -> str:
        return f"Fewer than three {_TRIED[tried][1]} reached some direction."

    def not_tried(self) -> str:
        return "This direction was not tried."

    def few_came(self, *, count: int, tried: Tried) -> str:
        return f"Only {self.w.whole(count)} {self.w.plural(count, one=_TRIED[tried][0], other=_TRIED[tried][1])} came this way."

    def reach_in_play(self, *, least: Text, way: Way) -> str:
        return (
            f"Reach is taken from play, so it is what was used, not what is possible. The least is {self.clause(least)} ({way}). "
            "Record two laps along the edge before you set a range."
        )

    def no_movement_toward(self, *, ways: tuple[Way, ...]) -> str:
        return f"There was no movement {self.w.any_of(ways)}. Was it not asked for, or not possible?"

    def direction_unknown(self, *, why: Literal["centre", "one-axis", "one-line"]) -> str:
        reason = {
            "centre": "the centre is not known",
            "one-axis": "only one axis was recorded",
            "one-line": "fewer than two cued directions lie off one line",
        }[why]
        ask = " Ask for pushes." if why == "one-line" else ""
        return f"Whether the stick is turned or mirrored is not known, because {reason}.{ask}"

    def one_push_way(self) -> str:
        return "There is one push in each direction."

    def pushes_alike(self) -> str:
        return "All pushes are the same to the last digit."

    def mirror_undone(self) -> str:
        return "after a mirrored forward axis was corrected"

    def few_directions(self) -> str:
        return "There are too few directions for an interval."

    def directions_agree(self) -> str:
        return "All directions agree exactly."

    def directions_disagree(self) -> str:
        return "The directions disagree too much for an interval."

    def none_along(self) -> str:
        return "There was no movement along the direction asked for."

    def few_pushes(self) -> str:
        return "There are fewer than three pushes."

    def direction_unclear(self, *, resultant_share: float) -> str:
        return (
            f"The pushes hardly follow their cues (resultant length {self.w.number(resultant_share)}, where 1 means that all "
            "are off by the same angle), so no rotation can be set. Was the cue understood? Ask again slowly."
        )

    def some_askew(self, *, ways: tuple[Text, ...]) -> str:
        return (
            f"Only some directions come out off their cue ({', '.join(self.clause(one) for one in ways)}). That is missing "
            "reach, not a turned stick. Do not turn the base. Look at support, height or a lighter stick."
        )

    def askew(self, *, way: Way, error_rad: float) -> str:
        return f"{way} by {self.w.turn(error_rad)}"

    def turned(self, *, turn_rad: float, low_rad: float | None, high_rad: float | None) -> str:
        ends = (
            "" if low_rad is None or high_rad is None else sorted(abs(math.degrees(end)) for end in (low_rad, high_rad))
        )
        interval = f" ({ends[0]:.0f} to {ends[1]:.0f}°)" if ends else ""
        return (
            f"In all directions, movements come out {self.w.turn(turn_rad)} of their cue{interval}. Turn the base "
            f"{self.w.turn(turn_rad)}, then record again. Use software only for what is left."
        )

    def mirrored_and_turned(self, *, mirror: Text, left_rad: float) -> str:
        return f"{self.say(mirror)} Besides that, {math.degrees(left_rad):.0f}° of rotation are left."

    def turned_far(self, *, turn_rad: float) -> str:
        return (
            f"The output comes out {self.w.turn(turn_rad)} of the cues: more than a turned base, and no quarter turn. Check "
            "how the stick is mounted, and whether the cue was understood."
        )

    def tiring_hold(
        self,
        *,
        direction_rad: float,
        level: Text,
        loss_per_s: float,
        low_per_s: float,
        high_per_s: float,
        lost_share: float,
        held_s: float,
    ) -> str:
        return (
            f"The hold {self.w.direction(direction_rad)} at {self.clause(level)} sinks by "
            f"{self.w.fine_share_figures(loss_per_s)} of its level a second ({self.w.fine_share_figures(low_per_s)} to "
            f"{self.w.fine_share_figures(high_per_s)}), {self.w.share(lost_share)} over {self.w.amount(held_s, 's')}. The "
            "player tires: plan shorter holds, or a lighter stick."
        )

    def short_holds(self, *, holds: int, least_s: float) -> str:
        return (
            f"{self.w.whole(holds)} {self.w.plural(holds, one='hold lasts', other='holds last')} less than "
            f"{self.w.trimmed_amount(least_s, 's', 3)}: too short, and left out."
        )

    def nothing_held(self) -> str:
        return "The level is 0, so nothing was held."

    def bursts_may_be_meant(self) -> str:
        return (
            "Involuntary movements cannot be told from voluntary ones, because nothing quiet was asked for and flicks may be "
            "meant. Record 20 s of rest or of holding to count sudden movements."
        )

    def too_short_for_bursts(self) -> str:
        return "Less than a second of rest, stillness or holding was asked for: too short to look for sudden movements."

    def bursts(self, *, count: int, watched_s: float, rate: Estimate, peak: Text, following: bool) -> str:
        what = self.w.plural(count, one="sudden movement", other="sudden movements")
        low, high = self.w.number(rate.lower), self.w.number(rate.upper)
        doubt = " Some may be the player's own quick corrections." if following else ""
        return (
            f"There {self.w.plural(count, one='was', other='were')} {self.w.whole(count)} {what} in "
            f"{self.w.amount(watched_s, 's')} ({self.w.number(rate.number)} a minute, {low} to {high}), the largest "
            f"{self.clause(peak)}. They count as unintended input, not as voluntary movement.{doubt}"
        )

    def no_burst(self) -> str:
        return "No sudden movement was seen."

    def largest_seen(self, *, count: int) -> str:
        return f"It is the largest of {self.w.whole(count)}. A larger one may come on another day."
