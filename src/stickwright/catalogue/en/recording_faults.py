"""What is wrong with a recording, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name, Text
from stickwright.codes.recording_faults import RecordingFaults

__all__ = ["Texts"]


class Texts(RecordingFaults):
    """Recordings as files."""

    w: English

    def split(self) -> str:
        return "Split it into parts of a few hours each."

    def no_lines(self) -> str:
        return "no lines of text"

    def csv(self) -> str:
        return "a CSV file with a header"

    def mixed_headers(self) -> str:
        return "headers that cannot be separated"

    def mixed_cells(self) -> str:
        return "cells that cannot be separated"

    def mixed_rows(self) -> str:
        return "rows that cannot be separated"

    def empty_line(self) -> str:
        return "an empty line"

    def header_first(self) -> str:
        return "Put the header in the first row."

    def say_columns(self) -> str:
        return (
            "Name them with --time, --x, --y, or rename the headers. For a table of movements or presses, name its columns with "
            "--start, --target and --selected-at, or with --presses."
        )

    def one_cue(self) -> str:
        return "only one of cue_x and cue_y"

    def both_cues(self) -> str:
        return "both or neither"

    def other_cue(self) -> str:
        return "Name the other one, or leave both out."

    def no_rate(self) -> str:
        return "frames and no rate"

    def rate(self, *, rate_hz: float) -> str:
        return f"a rate of {self.w.number(rate_hz)} a second"

    def frames_a_second(self) -> str:
        return "the number of frames a second"

    def say_rate(self) -> str:
        return "Add --rate, e.g. --rate 60."

    def full_scale(self, *, typed: Name) -> str:
        return f"a full scale of {self.w.name(typed)}"

    def say_full_scale(self) -> str:
        return "For example 127, 32767 or 1; change the sign with --flip-x or --flip-y."

    def scale_and_unit(self) -> str:
        return "both a full scale and a unit"

    def leave_out_unit(self) -> str:
        return "Leave out --unit if full output is known."

    def no_centre(self) -> str:
        return "a centre that is not a number"

    def centre(self) -> str:
        return "x and y at rest"

    def say_centre(self) -> str:
        return "For example --centre 128 128."

    def earlier(self, *, count: int, total: int) -> str:
        return f"{self.w.whole(count)} of {self.w.whole(total)} rows earlier than the row before"

    def sample_times(self) -> str:
        return "the time of each sample, which runs forward"

    def say_movements(self) -> str:
        return (
            "Is it how long each row took? Then this is a table of movements: name its columns with --start, --target, "
            "--selected-at and --duration."
        )

    def after(self, *, later: Name, earlier: Name) -> str:
        return f"{self.w.name(later)} after {self.w.name(earlier)}"

    def forward(self) -> str:
        return "time that runs forward"

    def one_recording(self) -> str:
        return "Two recordings in one file, or a clock that was set back? Keep one recording in each file."

    def same_time(self, *, count: int) -> str:
        return f"{self.w.whole(count)} rows that all have the same time"

    def say_no_time(self) -> str:
        return "Is it the right column? If there are no times, give --time none and --rate."

    def between(self, *, low_in_unit: float, high_in_unit: float) -> str:
        return f"values from {self.w.limit(low_in_unit)} to {self.w.limit(high_in_unit)}"

    def full_output(self) -> str:
        return "the value at full output"

    def say_scale_or_unit(self) -> str:
        return "Add --full-scale (1 if these are shares already), or name the unit with --unit, e.g. px."

    def shares(self) -> str:
        return "shares of full output, -1 to 1"

    def check_scale(self) -> str:
        return "Check --full-scale and --centre."

    def if_counts(self) -> str:
        return "If these are counts, read them with --full-scale, and --centre if rest is not 0."

    def always(self, *, down: bool) -> str:
        return "the same in every row" if down else "only empty cells and zeros"

    def button(self) -> str:
        return "a button that goes down and up, or an event in some rows"

    def leave_out_select(self) -> str:
        return "Is it the right column? If targets were selected by staying on them, leave the column out."

    def widths(self, *, typed: Name) -> str:
        return f"several widths: {self.w.name(typed)}"

    def one_width(self) -> str:
        return "one target width"

    def recording_each(self) -> str:
        return "Make one recording for each width."

    def leave_out_unknown(self) -> str:
        return "If it is not known, leave the key out."

    def foreign(self, *, unit: Name) -> str:
        return f"a recording in {self.w.name(unit)}"

    def read_with_scale(self) -> str:
        return "Read it with a full scale before it goes into a case folder."

    def sample_a_row(self) -> str:
        return "one sample in each row"

    def stopped(self) -> str:
        return "Was the recording stopped straight away?"

    def open_quote(self) -> str:
        return "a quote that is not closed"

    def no_quotes(self) -> str:
        return "numbers without quotes"

    def delete_quote(self) -> str:
        return "Delete the quote."

    def this_time(self) -> str:
        return "the time of this sample"

    def not_read(self, *, columns: tuple[Name, ...]) -> str:
        return f"columns not read: {self.w.names(columns)}"

    def same_stamps(self, *, count: int) -> str:
        return f"{self._samples(count)} {self.w.plural(count, one='has', other='have')} the same time as the one before"

    def gaps(self, *, count: int, total: int) -> str:
        return f"{self.w.whole(count)} of {self.w.whole(total)} samples {self.w.plural(count, one='has', other='have')} an empty cell"

    def cut_short(self, *, samples: int) -> str:
        return f"cut short: the program ended while it was recorded, after {self._samples(samples)}"

    def target_widths(self) -> str:
        return "targets of several widths: no one width holds for all"

    def cue(self, *, cue: int, samples: int) -> str:
        return f"cue {cue} ({self._samples(samples)})"

    def unknown_cues(self, *, cues: tuple[Text, ...]) -> str:
        told = self.w.all_of(tuple(self.say(one) for one in cues))
        be, them = self.w.plural(len(cues), one="is", other="are"), self.w.plural(len(cues), one="it", other="them")
        return f"{told} {be} not known to this version of stickwright: read as nothing asked; a later version may know {them}"

    def one_axis(self) -> str:
        return "one axis only: y was not recorded"

    def _samples(self, count: int) -> str:
        return self.w.plural(count, one="1 sample", other=f"{self.w.whole(count)} samples")
