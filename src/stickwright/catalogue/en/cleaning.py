"""What is wrong with a recording, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.cleaning import Axis, Cleaning
from stickwright.codes.message import Name, Text
from stickwright.codes.ways import Way

__all__ = ["Texts"]


class Texts(Cleaning):
    """Findings of a recording, each with its figures and what to do."""

    w: English

    def rows(self, *, runs: tuple[tuple[int, int], ...], more: int) -> str:
        named = [
            self.w.whole(first) if first == last else f"{self.w.whole(first)}-{self.w.whole(last)}"
            for first, last in runs
        ]
        one = not more and len(runs) == 1 and runs[0][0] == runs[0][1]
        rest = f" and {self.w.whole(more)} more" if more else ""
        return f"{'row' if one else 'rows'} {', '.join(named)}{rest}"

    def nothing_moves(self) -> str:
        return "The value never changes. The stick was not touched, is not plugged in, or another stick was moved."

    def one_axis(self, *, recorded: Axis) -> str:
        return f"Only {recorded} was recorded. Directions, the area covered and the rotation of the base cannot be worked out."

    def empty_cells(self, *, lost: int, samples: int, rows: Text) -> str:
        are = self.w.plural(lost, one="It is", other="They are")
        hold = self.w.plural(lost, one="holds", other="hold")
        return (
            f"{self.w.whole(lost)} of {self.w.whole(samples)} samples {hold} no number ({self.clause(rows)}). {are} left out, "
            "not filled in. Check whether the recorder stalled."
        )

    def coarse_clock(self, *, repeated: int, clock_step_s: float, interval_s: float) -> str:
        return (
            f"{self._repeated(repeated)}, because the clock counts in steps of {self.w.trimmed_amount(clock_step_s, 'ms', 3)}. All "
            f"fit an even interval of {self.w.trimmed_amount(interval_s, 'ms', 3)}, so even times are used."
        )

    def same_time(self, *, repeated: int, rows: Text) -> str:
        return (
            f"{self._repeated(repeated)} ({self.clause(rows)}). Only the first at each time is used. If there are many, the "
            "clock is too coarse for the sampling rate."
        )

    def unknown_task(self, *, task: Name, known: Text) -> str:
        return f"The task '{self.w.name(task)}' is not known, so the recording is read as free play. {self.say(known)}"

    def unknown_cue(self, *, cue: Name, rows: Text, known: Text) -> str:
        return (
            f"The cue '{self.w.name(cue)}' ({self.clause(rows)}) is not known. It is read as no cue. {self.say(known)}"
        )

    def too_large(self, *, largest_factor: float) -> str:
        return (
            f"Values reach {self.w.number(largest_factor, 3)}, more than a share of full output can be. Are they counts or "
            "per cent? Name the unit, or give the count that is full output."
        )

    def milliseconds(self, *, interval_s: float) -> str:
        return (
            f"There is one sample every {self.w.trimmed_amount(interval_s, 's', 3)}. If the times are in milliseconds, name their "
            "column time_ms."
        )

    def uneven_time(self, *, interval_s: float, longest_s: float, trusted_hz: float) -> str:
        return (
            f"The time steps are uneven: median {self.w.trimmed_amount(interval_s, 'ms', 3)}, one in a hundred over "
            f"{self.w.trimmed_amount(longest_s, 'ms', 3)}. Tremor above {self.w.amount(trusted_hz, 'hz')} cannot be trusted."
        )

    def slow_sampling(self, *, rate_hz: float, interval_s: float, longest_s: float, trusted_hz: float) -> str:
        return (
            f"There are {self.w.trimmed(rate_hz, 3)} samples a second (mean step {self.w.trimmed_amount(interval_s, 'ms', 3)}, one in "
            f"a hundred over {self.w.trimmed_amount(longest_s, 'ms', 3)}). Tremor above {self.w.amount(trusted_hz, 'hz')} cannot be "
            "trusted. Record at 50 or more samples a second."
        )

    def gaps(self, *, gaps: int, limit_s: float, missing_share: float, longest_s: float, at_s: float) -> str:
        return (
            f"There {self.w.plural(gaps, one='is 1 gap', other=f'are {self.w.whole(gaps)} gaps')} of more than "
            f"{self.w.trimmed_amount(limit_s, 'ms', 3)}, {self.w.share(missing_share)} of the time. The longest lasts "
            f"{self.w.trimmed_amount(longest_s, 's', 3)}, at {self.w.trimmed_amount(at_s, 's', 3)}. Nothing is filled in. Recorders that "
            "write only changes leave such gaps while the stick is still."
        )

    def lost_while_away(self, *, at_s: float, more: int, missing_s: float) -> str:
        again = self.w.plural(more, one="once more", other=f"{self.w.whole(more)} more times")
        also = f" (and {again})" if more else ""
        return (
            f"At {self.w.trimmed_amount(at_s, 's', 3)}{also}, samples are missing for {self.w.trimmed_amount(missing_s, 's', 3)} while the "
            "stick is away from its centre, and then it is somewhere else. Was it unplugged, or did the player let go? The "
            "parts before and after are kept apart."
        )

    def before_start(self, *, samples: int, start_s: float, stop_s: float) -> str:
        return (
            f"The first {self.w.whole(samples)} samples ({self._span(start_s, stop_s)}) are exactly 0 on both axes and then "
            "jump. They are left out, because the stick was not touched yet."
        )

    def zeros(self, *, start_s: float, stop_s: float, jump: Text) -> str:
        return (
            f"Both axes are exactly 0 {self._span(start_s, stop_s)}, after a jump from {self.clause(jump)}. The stick was "
            "probably unplugged, so this part is left out. Plug it in with hands off and repeat the part."
        )

    def frozen(self, *, x: Text, y: Text, start_s: float, stop_s: float, cue_moves: bool) -> str:
        still = f"The value stands still at ({self.clause(x)}, {self.clause(y)}) {self._span(start_s, stop_s)}"
        if cue_moves:
            return f"{still} while the cue moves, so this part is left out. Was the stick in standby? Wake it and repeat the part."
        return f"{still}. This part is kept. Was the stick held there, or was it in standby?"

    def coarse_steps(self, *, step: Text, steps: int, of_travel: bool) -> str:
        across = "across the travel, 8 bits or fewer" if of_travel else "across all that was recorded"
        return (
            f"The output moves in steps of {self.clause(step)} ({self.w.whole(steps)} steps {across}). Movement and tremor "
            "smaller than one step do not show."
        )

    def dead_zone(
        self, *, size: Text, kind: Literal["square", "radial"], steps: int | None, step: Text | None, near: int | None
    ) -> str:
        kind_of = {
            "square": "on each axis separately (square), so diagonal pushes are pulled to the nearer axis",
            "radial": "by distance from the centre (radial)",
        }[kind]
        counted = (
            f" ({self.w.whole(steps)} steps of {self.clause(step)})" if steps is not None and step is not None else ""
        )
        doubt = (
            ""
            if near is None
            else f" Only {self.w.whole(near)} {self.w.plural(near, one='sample lies', other='samples lie')} near its edge, so it may be "
            "smaller."
        )
        return (
            f"This recording already has a dead zone: there is no value between 0 and {self.clause(size)}{counted}, {kind_of}. "
            f"Noise at rest, offset and small movements are lost. Record the raw output for tuning.{doubt}"
        )

    def rest_cleaned(self, *, zero_share: float, longest_s: float, widest_share: float | None, sure: bool) -> str:
        wide = (
            ""
            if widest_share is None
            else f" The output goes up to {self.w.share(widest_share)} of full output, further than a stick does."
        )
        source = "The output is emulated, or" if sure else "The rest is quieter than one step, or"
        return (
            f"{self.w.share(zero_share)} of the samples near the centre are exactly 0, for up to "
            f"{self.w.amount(longest_s, 's')} at a stretch.{wide} {source} other software cleaned it. Offset, noise and dead "
            "zone cannot be taken from this rest. Record the raw output."
        )

    def clipping(self, *, edge: bool, limits: tuple[Text, ...]) -> str:
        return (
            f"Of {'the edge and push samples' if edge else 'all samples'}, "
            f"{self.w.all_of(tuple(self.clause(one) for one in limits))}. How far the push would have gone is not known. To see "
            "it, widen the output range or use a firmer stick."
        )

    def limit(self, *, clipped_share: float, limit: Text, way: Way) -> str:
        return f"{self.w.share(clipped_share)} are at the limit {self.clause(limit)} ({way})"

    def _repeated(self, repeated: int) -> str:
        have = self.w.plural(repeated, one="sample has", other="samples have")
        return f"{self.w.whole(repeated)} {have} the same time as the one before"

    def _span(self, start_s: float, stop_s: float) -> str:
        return f"from {self.w.trimmed(start_s, 3)} to {self.w.trimmed_amount(stop_s, 's', 3)}"
