"""What to do about a file or a field that cannot be read."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["Instrument", "Remedies"]

Instrument = Literal["gauge", "tape", "angle", "clock", "count", "other"]
"""What a number was read off."""


class Remedies(Topic):
    """Whole sentences: instructions, or a question that leads to one."""

    @abstractmethod
    def add(self, *, names: tuple[Name, ...]) -> str:
        """Something is missing: add one of these keys or columns; just add it where none is named."""

    @abstractmethod
    def add_in_unit(self) -> str:
        """A number is missing, and its key may end in several units."""

    @abstractmethod
    def add_unit(self) -> str:
        """A key has no unit."""

    @abstractmethod
    def change_unit(self) -> str:
        """A key ends in a unit of another kind."""

    @abstractmethod
    def unit_in_key(self) -> str:
        """A unit stands behind a number."""

    @abstractmethod
    def unit_in_header(self) -> str:
        """A unit stands behind a number of a table."""

    @abstractmethod
    def check_unit(self) -> str:
        """A number does not fit the unit in the header."""

    @abstractmethod
    def words_in_note(self) -> str:
        """Words stand behind a number."""

    @abstractmethod
    def write(self, *, typed: Name) -> str:
        """How it is written instead, as it would be typed."""

    @abstractmethod
    def leave_out_key(self, *, or_value: bool) -> str:
        """Nothing was measured: no key; `or_value`: or no value within a list."""

    @abstractmethod
    def leave_cell_empty(self, *, comma: bool) -> str:
        """Nothing was measured: an empty cell; `comma`: which keeps its comma."""

    @abstractmethod
    def cell_comma(self) -> str:
        """A decimal comma may have made one number into two cells."""

    @abstractmethod
    def fill_or_delete_row(self) -> str:
        """A row lacks something."""

    @abstractmethod
    def delete_row(self) -> str:
        """A row says nothing."""

    @abstractmethod
    def delete_other_unit(self) -> str:
        """The same number is given in two units."""

    @abstractmethod
    def delete_unmeasured(self) -> str:
        """Two columns, or two keys, of which one was measured."""

    @abstractmethod
    def left_not_minus(self, *, keyed: bool) -> str:
        """A minus was typed for a direction: how left is said, by its key in a file (`keyed`) or in a column."""

    @abstractmethod
    def no_minus(self) -> str:
        """A minus makes no sense here."""

    @abstractmethod
    def decimal_point(self) -> str:
        """A number is far too large or too small."""

    @abstractmethod
    def digits(self) -> str:
        """A number is larger than anything that is measured."""

    @abstractmethod
    def share(self) -> str:
        """A percentage was typed where a share is asked for."""

    @abstractmethod
    def rename_key(
        self, *, read_off: Instrument, units: tuple[Name, ...], keys: tuple[Name, ...], in_list: bool
    ) -> str:
        """A number would fit another unit: if the instrument shows one of these units, its key is to be named so; as many
        keys as units."""

    @abstractmethod
    def short_code(self) -> str:
        """The code of a player is too long."""

    @abstractmethod
    def shorter(self) -> str:
        """A text is too long."""

    @abstractmethod
    def repeats_only(self) -> str:
        """One field holds the repeats of one reading, and far more was typed."""

    @abstractmethod
    def called_on_sheet(self) -> str:
        """A name is empty."""

    @abstractmethod
    def spaces_between(self) -> str:
        """Several numbers in one field of a form."""

    @abstractmethod
    def say_comma(self, *, several: Name, count: int, one: Name) -> str:
        """A comma could stand between numbers or before decimals: how each is typed."""

    @abstractmethod
    def example_date(self) -> str:
        """A date as an example."""

    @abstractmethod
    def check_spelling(self) -> str:
        """A file is named that is not there."""

    @abstractmethod
    def name_file_inside(self) -> str:
        """A folder was named in place of a file."""

    @abstractmethod
    def name_folder(self) -> str:
        """A file was named in place of its folder."""

    @abstractmethod
    def saved(self) -> str:
        """A file is empty."""

    @abstractmethod
    def rights(self) -> str:
        """The system does not open a file."""

    @abstractmethod
    def as_recording(self, *, table: Text) -> str:
        """A table is far too long to have been typed."""

    @abstractmethod
    def save_utf8(self) -> str:
        """A text is in another encoding."""

    @abstractmethod
    def export_csv(self) -> str:
        """A table cannot be taken apart into rows and cells."""

    @abstractmethod
    def export_as_csv(self) -> str:
        """A file is no table at all."""

    @abstractmethod
    def first_ones(self) -> str:
        """There are many problems of a kind."""

    @abstractmethod
    def another_name(self) -> str:
        """A name is taken; nothing was changed."""

    @abstractmethod
    def name_or_edit(self) -> str:
        """A name is taken in a file."""

    @abstractmethod
    def rename_file(self) -> str:
        """A file of that name would be replaced."""

    @abstractmethod
    def free_space(self) -> str:
        """A place cannot be written to; nothing was changed."""

    @abstractmethod
    def another_folder(self, *, or_delete: bool) -> str:
        """A folder cannot be used; `or_delete`: or the file that is in the way is deleted by hand."""

    @abstractmethod
    def copy_inside(self) -> str:
        """A file outside the case folder was named."""

    @abstractmethod
    def open_again(self) -> str:
        """A page is out of date."""

    @abstractmethod
    def edit_as_text(self) -> str:
        """A file is written in a way that a form cannot change."""

    @abstractmethod
    def new_case(self) -> str:
        """How a case is begun from the command line."""

    @abstractmethod
    def choose_name(self) -> str:
        """A name cannot be used."""

    @abstractmethod
    def game_columns(self) -> str:
        """Two games have one name: each has a column on the sheet."""

    @abstractmethod
    def rename_to(self, *, file: Name, to: Name) -> str:
        """A file should have another name."""

    @abstractmethod
    def right_column(self) -> str:
        """A column does not hold what it should."""

    @abstractmethod
    def list_recordings(self) -> str:
        """Recordings and their list do not agree."""
