"""What one recording cannot tell, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.cleaning import Axis
from stickwright.codes.message import Text
from stickwright.codes.trace_notes import Part, TraceNotes

__all__ = ["Texts"]

_PARTS: dict[Part, str] = {
    "tremor": "Tremor is",
    "smoothness": "Smoothness is",
    "pointing": "Pointing is",
    "tracking": "Following is",
}


class Texts(TraceNotes):
    """Findings about a whole recording, and about free play."""

    w: English

    def third_axis(self, *, flat: tuple[Axis, ...]) -> str:
        return (
            f"{self.w.all_of((*flat, 'z'))} were recorded. Tremor is taken from all of them, along the line on which it is "
            f"strongest. Everything else is taken from {self.w.all_of(flat)}."
        )

    def unknown(self, *, part: Part, why: Text) -> str:
        return f"{_PARTS[part]} not known from this recording. {self.say(why)}"

    def from_a_part(self, *, part: Part, start_s: float, stop_s: float, longest_s: float, asked_s: float) -> str:
        return (
            f"{_PARTS[part]} taken from {self.w.trimmed(start_s, 3)} to {self.w.trimmed_amount(stop_s, 's', 3)}, the longest stretch "
            f"without a gap (at most {self.w.minutes(longest_s)}), of {self.w.trimmed_amount(asked_s, 's', 3)} in all."
        )

    def no_still_stretch(self) -> str:
        return "Tremor is not known, because there is no stretch of 5 s without a gap. Record 20 s of keeping still."

    def tremor_zeroed(self) -> str:
        return "Tremor is not known, because the rest was set to zero before recording."

    def tremor_while_moving(self) -> str:
        return (
            "Tremor was looked for while the stick was moving, where quick voluntary movements hide it. Record 20 s of "
            "keeping still, and 20 s of holding out."
        )

    def targets_unknown(self, *, missing: Literal["places", "widths"]) -> str:
        return (
            f"Throughput is not known, because the recording does not say {'where' if missing == 'places' else 'how wide'} "
            "the targets were. Name the columns cue_x, cue_y and cue_width, or record with the guided task."
        )

    def target_unknown(self) -> str:
        return "Following is not known, because the recording does not say where the target was. Record with the guided task."

    def play(self, *, played_s: float, full_share: float, longest_s: float, flicks: int, flicks_per_min: float) -> str:
        return (
            f"In {self.w.amount(played_s, 's')} of play, the stick was at full travel {self.w.share(full_share)} of the time, "
            f"for up to {self.w.amount(longest_s, 's')} at a stretch. There "
            f"{self.w.plural(flicks, one='was 1 flick', other=f'were {self.w.whole(flicks)} flicks')} out and back within 0.2 "
            f"s ({self.w.trimmed(flicks_per_min)} a minute)."
        )

    def spring_back(self, *, releases: int, past: Text, one_in_ten: Text) -> str:
        return (
            f"After {self.w.whole(releases)} quick releases, the stick springs past its centre by {self.clause(past)} (median; "
            f"one in ten by {self.clause(one_in_ten)} or more). With a smaller dead zone, that goes through as a wrong direction."
        )
