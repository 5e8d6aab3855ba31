"""What is wrong with a table of a file: its separators, headers and rows."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Topic

__all__ = ["TableFaults"]


class TableFaults(Topic):
    """Noun phrases for what was found and expected, sentences for what to do; columns by their names in the file."""

    @abstractmethod
    def separated(self, *, by: Literal["semicolons", "tabs"], header: Name) -> str:
        """Columns are not separated by commas; the header as typed."""

    @abstractmethod
    def commas(self) -> str:
        """How columns and numbers are written."""

    @abstractmethod
    def save_with_commas(self, *, by: Literal["semicolons", "tabs"]) -> str:
        """Sentence: how to come from these separators to commas."""

    @abstractmethod
    def no_table(self, *, reason: Name) -> str:
        """A text that cannot be taken apart, with the reader's own reason."""

    @abstractmethod
    def rows_such_as(self, *, example: Name) -> str:
        """Rows as in the example."""

    @abstractmethod
    def headers_such_as(self, *, example: Name) -> str:
        """Headers as in the example."""

    @abstractmethod
    def headers(self, *, names: Name) -> str:
        """These headers, with commas, as they are typed."""

    @abstractmethod
    def numbers_first(self, *, typed: Name) -> str:
        """The first row holds numbers, as typed, where headers should stand."""

    @abstractmethod
    def add_below(self) -> str:
        """Sentence: a table has a header alone."""

    @abstractmethod
    def put_headers(self) -> str:
        """Sentence: headers are missing."""

    @abstractmethod
    def column(self, *, name: Name) -> str:
        """A column with a header that is not known."""

    @abstractmethod
    def no_header(self) -> str:
        """A column without a header."""

    @abstractmethod
    def column_twice(self, *, name: Name) -> str:
        """Two columns have the same header."""

    @abstractmethod
    def each_once(self) -> str:
        """Every column once."""

    @abstractmethod
    def rename_or_delete(self) -> str:
        """Sentence: of two columns."""

    @abstractmethod
    def write_header(self, *, names: tuple[Name, ...]) -> str:
        """Sentence: headers with a unit that would be known."""

    @abstractmethod
    def delete_column(self) -> str:
        """Sentence: a header is not known and nothing like it is."""

    @abstractmethod
    def cells(self, *, count: int, header: Name) -> str:
        """As many cells as columns; their headers."""

    @abstractmethod
    def neither(self) -> str:
        """A table of a gauge without anything measured."""

    @abstractmethod
    def one_column(self, *, stem: Name) -> str:
        """One column of a kind, by its name without the unit."""

    @abstractmethod
    def no_column(self, *, stem: Name) -> str:
        """No column of a kind, by its name without the unit."""

    @abstractmethod
    def nothing_measured(self) -> str:
        """A row with a direction alone."""

    @abstractmethod
    def force_or_reach(self) -> str:
        """What a row of a gauge holds beside its direction."""

    @abstractmethod
    def directions(self) -> str:
        """Sentence: how a direction is given as an angle."""

    @abstractmethod
    def no_position(self) -> str:
        """A table of a bench without how far the stick was deflected."""

    @abstractmethod
    def position(self) -> str:
        """Columns that give the deflection of a stick."""

    @abstractmethod
    def add_position(self) -> str:
        """Sentence: which of those to add."""

    @abstractmethod
    def way(self) -> str:
        """The words of the column `way`."""

    @abstractmethod
    def letting_back(self) -> str:
        """Sentence: a force with a minus on the bench."""

    @abstractmethod
    def no_row_with(self, *, typed: Name, seen: Name) -> str:
        """No row has this cell in the column; those that there are."""

    @abstractmethod
    def press_cell(self) -> str:
        """The cell that stands for a press."""

    @abstractmethod
    def say_down(self) -> str:
        """Sentence: how the cell is named on the command line."""

    @abstractmethod
    def rows_to_read(self) -> str:
        """Rows that are to be read."""

    @abstractmethod
    def say_only(self) -> str:
        """Sentence: how rows are chosen on the command line."""

    @abstractmethod
    def no_duration(self) -> str:
        """A table of movements without their durations."""

    @abstractmethod
    def duration(self) -> str:
        """What gives a duration."""

    @abstractmethod
    def say_duration(self) -> str:
        """Sentence: how those columns are named on the command line."""

    @abstractmethod
    def two_lengths(self, *, width: Name, places: Name) -> str:
        """The width of targets in one unit, their positions in another."""

    @abstractmethod
    def one_length(self) -> str:
        """One unit of length for both."""

    @abstractmethod
    def say_width_times(self, *, width: Name, places: Name) -> str:
        """Sentence: how one unit is told in the other on the command line."""

    @abstractmethod
    def columns(self, *, names: Name) -> str:
        """Columns of a file, or those that were asked for, with commas."""

    @abstractmethod
    def name_columns(self) -> str:
        """Sentence: columns that were asked for are not there."""

    @abstractmethod
    def hit_or_miss(self) -> str:
        """What a column of hits holds."""

    @abstractmethod
    def no_time_unit(self) -> str:
        """A column of times without its unit."""

    @abstractmethod
    def time_ending(self) -> str:
        """How the header of a time column ends."""

    @abstractmethod
    def say_time_unit(self, *, or_frames: bool) -> str:
        """Sentence: how the unit of times is named on the command line; `or_frames`: or times are counted in frames."""

    @abstractmethod
    def gaps(self, *, count: int, total: int) -> str:
        """Sentence: so many rows of a table have an empty cell."""

    @abstractmethod
    def no_press_times(self, *, count: int, total: int) -> str:
        """Sentence: so many rows of a table have no time of a press."""
