"""What is wrong with a table, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.codes.message import Name
from stickwright.codes.table_faults import TableFaults

__all__ = ["Texts"]


class Texts(TableFaults):
    """Tables of readings, movements and presses."""

    w: English

    def separated(self, *, by: Literal["semicolons", "tabs"], header: Name) -> str:
        return f"columns separated by {by}: {self.w.name(header)}"

    def commas(self) -> str:
        return "columns separated by commas, numbers with a decimal point"

    def save_with_commas(self, *, by: Literal["semicolons", "tabs"]) -> str:
        return f"Save it as 'CSV (comma separated)' in English number format, or first replace ',' with '.', then {by} with commas."

    def no_table(self, *, reason: Name) -> str:
        return f"text that is not a table ({self.w.name(reason)})"

    def rows_such_as(self, *, example: Name) -> str:
        return f"rows such as {self.w.name(example)}"

    def headers_such_as(self, *, example: Name) -> str:
        return f"headers such as {self.w.name(example)}"

    def headers(self, *, names: Name) -> str:
        return f"the headers {self.w.name(names)}"

    def numbers_first(self, *, typed: Name) -> str:
        return f"numbers: {self.w.name(typed)}"

    def add_below(self) -> str:
        return "Add the readings below it."

    def put_headers(self) -> str:
        return "Put a row with the headers above the numbers."

    def column(self, *, name: Name) -> str:
        return f'the column "{self.w.name(name)}"'

    def no_header(self) -> str:
        return "a column without a header"

    def column_twice(self, *, name: Name) -> str:
        return f'the column "{self.w.name(name)}" twice'

    def each_once(self) -> str:
        return "each column once"

    def rename_or_delete(self) -> str:
        return "Delete or rename one of them."

    def write_header(self, *, names: tuple[Name, ...]) -> str:
        return f"Write {self.w.any_of(tuple(self.w.name(one) for one in names))}."

    def delete_column(self) -> str:
        return "Delete the column, or correct its header."

    def cells(self, *, count: int, header: Name) -> str:
        return f"{count} ({self.w.name(header)})"

    def neither(self) -> str:
        return "neither force nor reach"

    def one_column(self, *, stem: Name) -> str:
        return f"only one {self.w.name(stem)} column"

    def no_column(self, *, stem: Name) -> str:
        return f"no {self.w.name(stem)} column"

    def nothing_measured(self) -> str:
        return "a direction and nothing measured"

    def force_or_reach(self) -> str:
        return "a force or a reach"

    def directions(self) -> str:
        return "0 is right, 90 forward, 180 left."

    def no_position(self) -> str:
        return "no column for the deflection"

    def position(self) -> str:
        return "angle_deg or travel_mm (or output_share alone)"

    def add_position(self) -> str:
        return "Add the one that was read off; output_share may stand beside it."

    def way(self) -> str:
        return "out (pushing out) or back (letting back)"

    def letting_back(self) -> str:
        return "Left is a direction, not a minus; letting back is way = back."

    def no_row_with(self, *, typed: Name, seen: Name) -> str:
        return f'no row with "{self.w.name(typed)}" (there are {self.w.name(seen)})'

    def press_cell(self) -> str:
        return "the cell that stands for a press"

    def say_down(self) -> str:
        return "Give one of them with --down."

    def rows_to_read(self) -> str:
        return "rows to read"

    def say_only(self) -> str:
        return "Give one of them with --only."

    def no_duration(self) -> str:
        return "no column with the duration of each movement"

    def duration(self) -> str:
        return "a duration, or the times of its start and end"

    def say_duration(self) -> str:
        return "Add --duration COLUMN, or --begin COLUMN and --end COLUMN."

    def two_lengths(self, *, width: Name, places: Name) -> str:
        return f"a width in {self.w.name(width)} and positions in {self.w.name(places)}"

    def one_length(self) -> str:
        return "one unit of length"

    def say_width_times(self, *, width: Name, places: Name) -> str:
        return f"Add --width-times with the number of {self.w.name(places)} in one {self.w.name(width)}."

    def columns(self, *, names: Name) -> str:
        return f"the columns {self.w.name(names)}"

    def name_columns(self) -> str:
        return "Name the columns that hold them."

    def hit_or_miss(self) -> str:
        return "1 for a hit, 0 for a miss"

    def no_time_unit(self) -> str:
        return "times without a unit"

    def time_ending(self) -> str:
        return "a name that ends in _s, _ms or _min"

    def say_time_unit(self, *, or_frames: bool) -> str:
        return f"Add --time-unit s, ms or min{', or frame with --rate' if or_frames else ''}."

    def gaps(self, *, count: int, total: int) -> str:
        return f"{count} of {total} rows {self._have(count)} an empty cell and {self._do(count)} not count."

    def no_press_times(self, *, count: int, total: int) -> str:
        return f"{count} of {total} rows {self._have(count)} no time of press and {self._do(count)} not count."

    def _have(self, count: int) -> str:
        return self.w.plural(count, one="has", other="have")

    def _do(self, count: int) -> str:
        return self.w.plural(count, one="does", other="do")
