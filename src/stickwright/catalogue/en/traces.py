"""What one recording, a table of trials or a bench tells, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Name, Text
from stickwright.codes.traces import Heading, Traces

__all__ = ["Texts"]

_HEADINGS: dict[Heading, str] = {
    "findings": "Findings",
    "rest": "Rest",
    "reach": "Reach",
    "direction": "Direction",
    "tremor": "Tremor",
    "bursts": "Sudden movements",
    "holds": "Holds",
    "aiming": "Aiming",
    "following": "Following",
    "smoothness": "Smoothness",
    "presses": "Presses",
    "contact_point": "At the contact point, all directions",
    "by_direction": "By direction",
}
_STOOD = {
    1: ("a quarter turn clockwise", "to the player's right", "a quarter turn anticlockwise"),
    2: ("half a turn round", "towards the player", "half a turn"),
    3: ("a quarter turn anticlockwise", "to the player's left", "a quarter turn clockwise"),
}


class Texts(Traces):
    """A recording, a table or a bench in the terminal."""

    w: English

    def _size(self, value: Estimate, unit: Name | None) -> str:
        if unit is None:
            return f"{self.w.share_estimate(value)}{self.because(value.why)}"
        in_unit = f" {self.w.name(unit)}" if value.value is not None else ""
        return f"{self.w.bare_estimate(value)}{in_unit}{self.because(value.why)}"

    def _output(self, value: Estimate, unit: Name | None) -> str:
        of = " of full output" if unit is None and value.value is not None else ""
        return f"{self._size(value, unit)}{of}"

    def heading(self, *, part: Heading) -> str:
        return _HEADINGS[part]

    def recording(
        self, *, recording: Name, task: Name, time_s: float, samples: int, rate_hz: float, unit: Name | None
    ) -> str:
        in_unit = f", in {self.w.name(unit)}" if unit else ""
        many = f"{samples} {self.w.plural(samples, one='sample', other='samples')}"
        rate = self.w.amount(rate_hz, "hz")
        return f"{self.w.name(recording)}: {self.w.name(task)}, {self.w.amount(time_s, 's')}, {many} at {rate}{in_unit}"

    def table(self, *, table: Name, kind: Literal["trials", "taps"], rows: int) -> str:
        what = {"trials": "aimed movements", "taps": "presses"}[kind]
        return f"{self.w.name(table)}: table of {what}, {rows} {self.w.plural(rows, one='row', other='rows')}"

    def bench(self, *, stick: Name, benched_on: Name | None) -> str:
        return f"Bench of {self.w.name(stick)}{f', {self.w.date(benched_on)}' if benched_on else ''}"

    def no_centre(self, *, unit: Name) -> str:
        return (
            f"No rest was asked for, and where the centre lies is not known in {self.w.name(unit)}: rest, reach and rotation "
            "cannot be told. Record 10 s of rest."
        )

    def centre(self, *, told: Text) -> str:
        return f"centre: {self.clause(told)}"

    def noise_unknown(self) -> str:
        return "noise and drift: not known, for the same reason"

    def noise_and_drift(self, *, value: Estimate, unit: Name | None) -> str:
        return f"noise and drift: {self._size(value, unit)}"

    def noise(self, *, within: Estimate, between: Estimate | None, pooled: Estimate | None, unit: Name | None) -> str:
        told = [f"within a rest {self._size(within, unit)}"]
        if between is not None:
            told.append(f"between rests {self._size(between, unit)} (how far the centre changes from one to the next)")
        if pooled is not None:
            told.append(f"over all rests {self._size(pooled, unit)}")
        of = ", of full output" if unit is None else ""
        return f"noise, rms (typical size) per axis{of}: {'; '.join(told)}"

    def drift(self, *, drift: Estimate, unit: Name | None) -> str:
        per = "" if drift.value is None else " a minute"
        return f"drift of the centre {self._size(drift, unit)}{per}"

    def reach(self, *, direction_rad: float, reach: Estimate, unit: Name | None) -> str:
        return f"{self.w.direction(direction_rad)}: {self._size(reach, unit)}"

    def reach_unknown(self, *, directions_rad: tuple[float, ...], why: Text | None) -> str:
        ways = ", ".join(self.w.direction(one) for one in directions_rad)
        return f"{ways}: {self.w.unknown}{self.because(why)}"

    def least_reach(self, *, direction_rad: float, area: Estimate) -> str:
        of = "" if area.value is None else " of the disc"
        return f"least {self.w.direction(direction_rad)}; covered area {self.w.share_estimate(area)}{self.because(area.why)}{of}"

    def rotation(self, *, turn: Estimate, resultant_share: float) -> str:
        return (
            f"comes out rotated by {self.w.turn_estimate(turn)}{self.because(turn.why)} from what was asked; agreement of the pushes "
            f"{self.w.fixed(resultant_share)} of 1"
        )

    def cross_talk(self, *, cross_talk: Estimate) -> str:
        of = "" if cross_talk.value is None else " of that along it"
        return f"movement across the asked direction: {self.w.share_estimate(cross_talk)}{self.because(cross_talk.why)}{of}"

    def mirrored(self) -> str:
        return "mirrored: one axis runs backwards"

    def base_stood(self, *, quarter_turns: Literal[1, 2, 3]) -> str:
        how, faces, cure = _STOOD[quarter_turns]
        return f"the base stood {how}, its own forward {faces}: turn it {cure}"

    def tremor_size(self, *, told: Text) -> str:
        return f"rms (typical size), violent stretches included, all axes together: {self.clause(told)}"

    def tremor_line(self, *, axis: Text, power_share: float, low_hz: float | None, high_hz: float | None) -> str:
        peak = low_hz is None or high_hz is None
        where = "the peak" if peak else f"{self.w.trimmed(low_hz or 0.0)} to {self.w.amount(high_hz, 'hz')}"
        return f"strongest along one line, {self.say(axis)}: {self.w.share(power_share)} of the power of {where}"

    def crossing(self, *, frequency: Estimate, low_hz: float, high_hz: float) -> str:
        band = "" if frequency.value is None else f", from {self.w.trimmed(low_hz)} to {self.w.amount(high_hz, 'hz')}"
        return f"zero-crossing frequency {self.w.estimate(frequency, 'hz')}{self.because(frequency.why)}{band}"

    def no_bursts(self, *, rate: Estimate) -> str:
        return f"none seen; {self.w.rate(rate, one='burst', many='bursts', why=self.say(rate.why or ''))}"

    def bursts(self, *, length: Estimate, why: Text | None) -> str:
        largest = f"; {self.clause(why)}" if why is not None else ""
        return f"each lasting {self.w.estimate(length, 's')}{self.because(length.why)}{largest}"

    def hold(
        self,
        *,
        direction_rad: float,
        level: Estimate,
        time_s: float,
        scatter: Estimate,
        slope: Estimate,
        unit: Name | None,
    ) -> str:
        per = "" if slope.value is None else " of it a second"
        return (
            f"{self.w.direction(direction_rad)}: {self._output(level, unit)} for {self.w.amount(time_s, 's')}, scatter "
            f"{self._output(scatter, unit)}, changing by {self.w.share_estimate(slope)}{self.because(slope.why)}{per}"
        )

    def following(self, *, error: Estimate, without_lag: Estimate, unit: Name | None) -> str:
        return f"error, rms (typical size) {self._output(error, unit)}; with the lag taken off {self._output(without_lag, unit)}"

    def following_gain(self, *, gain: Estimate, lag: Estimate) -> str:
        return f"gain {self.w.bare_estimate(gain)}{self.because(gain.why)}; late by {self.w.estimate(lag, 's')}{self.because(lag.why)}"

    def figure(self, *, what: Text, told: Text) -> str:
        return f"{self.say(what)}: {self.say(told)}"

    def bench_direction(self, *, direction_rad: float | None, start: Estimate, full: Estimate) -> str:
        way = "all" if direction_rad is None else self.w.direction(direction_rad)
        return (
            f"{way}: actuation force {self.w.estimate(start, 'n')}{self.because(start.why)}, at full travel {self.w.estimate(full, 'n')}"
            f"{self.because(full.why)}"
        )

    def readings_used(self, *, used: int, readings: int, scatter_share: float, allowed: Text) -> str:
        of = f"{readings} {self.w.plural(readings, one='reading', other='readings')}"
        return f"{used} of {of} used; scatter of one reading {self.w.share(scatter_share)} of the middle force. {self.say(allowed)}"
