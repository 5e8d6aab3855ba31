"""What is wrong with a recording that was read from a file, and what is noted of it."""

from __future__ import annotations

from abc import abstractmethod

from stickwright.codes.message import Name, Text, Topic

__all__ = ["RecordingFaults"]


class RecordingFaults(Topic):
    """Noun phrases for what was found and expected, sentences for what to do and for notes; options are those of the command line."""

    @abstractmethod
    def split(self) -> str:
        """Sentence: a recording is too long for one file."""

    @abstractmethod
    def no_lines(self) -> str:
        """A file that holds no text."""

    @abstractmethod
    def csv(self) -> str:
        """What a recording is kept as."""

    @abstractmethod
    def mixed_headers(self) -> str:
        """A header that cannot be taken apart."""

    @abstractmethod
    def mixed_cells(self) -> str:
        """A row that cannot be taken apart."""

    @abstractmethod
    def mixed_rows(self) -> str:
        """A file that cannot be taken apart."""

    @abstractmethod
    def empty_line(self) -> str:
        """The first row is empty."""

    @abstractmethod
    def header_first(self) -> str:
        """Sentence: the header stands in the first row."""

    @abstractmethod
    def say_columns(self) -> str:
        """Sentence: how columns are named on the command line."""

    @abstractmethod
    def one_cue(self) -> str:
        """One of two columns of a target."""

    @abstractmethod
    def both_cues(self) -> str:
        """Both of them, or neither."""

    @abstractmethod
    def other_cue(self) -> str:
        """Sentence: about them."""

    @abstractmethod
    def no_rate(self) -> str:
        """Times are counted in frames, and it is not known how long one lasts."""

    @abstractmethod
    def rate(self, *, rate_hz: float) -> str:
        """A rate that cannot be one."""

    @abstractmethod
    def frames_a_second(self) -> str:
        """The rate of a recording."""

    @abstractmethod
    def say_rate(self) -> str:
        """Sentence: how it is named."""

    @abstractmethod
    def full_scale(self, *, typed: Name) -> str:
        """A value at full output that cannot be one."""

    @abstractmethod
    def say_full_scale(self) -> str:
        """Sentence: values at full output; the sign of an axis is changed otherwise."""

    @abstractmethod
    def scale_and_unit(self) -> str:
        """Both were named."""

    @abstractmethod
    def leave_out_unit(self) -> str:
        """Sentence: about them."""

    @abstractmethod
    def no_centre(self) -> str:
        """Where the stick rests is not a number."""

    @abstractmethod
    def centre(self) -> str:
        """Where the stick rests."""

    @abstractmethod
    def say_centre(self) -> str:
        """Sentence: how it is named."""

    @abstractmethod
    def earlier(self, *, count: int, total: int) -> str:
        """So many rows have an earlier time than the row before."""

    @abstractmethod
    def sample_times(self) -> str:
        """What a time column holds."""

    @abstractmethod
    def say_movements(self) -> str:
        """Sentence: it may be a column of durations, and the file a table of movements."""

    @abstractmethod
    def after(self, *, later: Name, earlier: Name) -> str:
        """A time and the one of the row before it, as numbers."""

    @abstractmethod
    def forward(self) -> str:
        """Times in order."""

    @abstractmethod
    def one_recording(self) -> str:
        """Sentence: why times may run backwards."""

    @abstractmethod
    def same_time(self, *, count: int) -> str:
        """All rows have one time."""

    @abstractmethod
    def say_no_time(self) -> str:
        """Sentence: what may be the reason, and how a recording without times is read."""

    @abstractmethod
    def between(self, *, low_in_unit: float, high_in_unit: float) -> str:
        """The least and the greatest value of a column."""

    @abstractmethod
    def full_output(self) -> str:
        """The value that stands for full output."""

    @abstractmethod
    def say_scale_or_unit(self) -> str:
        """Sentence: how it is named."""

    @abstractmethod
    def shares(self) -> str:
        """Values as shares of full output."""

    @abstractmethod
    def check_scale(self) -> str:
        """Sentence: shares are far too large."""

    @abstractmethod
    def if_counts(self) -> str:
        """Sentence: shares are far too large in a file of our own."""

    @abstractmethod
    def always(self, *, down: bool) -> str:
        """A column of a button that is down in every row, or in none."""

    @abstractmethod
    def button(self) -> str:
        """What a column of selections holds."""

    @abstractmethod
    def leave_out_select(self) -> str:
        """Sentence: about such a column."""

    @abstractmethod
    def widths(self, *, typed: Name) -> str:
        """Targets of several widths, with commas."""

    @abstractmethod
    def one_width(self) -> str:
        """Targets of one width."""

    @abstractmethod
    def recording_each(self) -> str:
        """Sentence: about several widths."""

    @abstractmethod
    def leave_out_unknown(self) -> str:
        """Sentence: something need not be given."""

    @abstractmethod
    def foreign(self, *, unit: Name) -> str:
        """A recording in a unit of another device."""

    @abstractmethod
    def read_with_scale(self) -> str:
        """Sentence: it is to be read again."""

    @abstractmethod
    def sample_a_row(self) -> str:
        """What rows of a recording are."""

    @abstractmethod
    def stopped(self) -> str:
        """Sentence: a recording is empty."""

    @abstractmethod
    def open_quote(self) -> str:
        """A quote without its partner."""

    @abstractmethod
    def no_quotes(self) -> str:
        """Numbers as they should be."""

    @abstractmethod
    def delete_quote(self) -> str:
        """Sentence: about the quote."""

    @abstractmethod
    def this_time(self) -> str:
        """What a cell of a time column holds."""

    @abstractmethod
    def not_read(self, *, columns: tuple[Name, ...]) -> str:
        """Note: these columns were not read."""

    @abstractmethod
    def same_stamps(self, *, count: int) -> str:
        """Note: so many samples have the time of the one before."""

    @abstractmethod
    def gaps(self, *, count: int, total: int) -> str:
        """Note: so many samples have an empty cell."""

    @abstractmethod
    def cut_short(self, *, samples: int) -> str:
        """Note: the program ended while it was recorded, after so many samples."""

    @abstractmethod
    def target_widths(self) -> str:
        """Note: its targets are of several widths."""

    @abstractmethod
    def cue(self, *, cue: int, samples: int) -> str:
        """Clause: a number in a recording's column of cues, and how many samples have it."""

    @abstractmethod
    def unknown_cues(self, *, cues: tuple[Text, ...]) -> str:
        """Note: such numbers that this version does not know."""

    @abstractmethod
    def one_axis(self) -> str:
        """Note: one axis was recorded."""
