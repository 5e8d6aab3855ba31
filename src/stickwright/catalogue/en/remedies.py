"""What to do, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.message import Name, Text
from stickwright.codes.remedies import Instrument, Remedies

__all__ = ["Texts"]

_SHOWS: dict[Instrument, str] = {
    "gauge": "the gauge shows", "tape": "the tape shows", "angle": "the angle app shows", "clock": "the clock shows",
    "count": "you counted", "other": "the instrument shows",
}  # fmt: skip


class Texts(Remedies):
    """Sentences."""

    w: English

    def add(self, *, names: tuple[Name, ...]) -> str:
        return f"Add {self.w.any_of(tuple(self.w.name(one) for one in names))}." if names else "Add it."

    def add_in_unit(self) -> str:
        return "Add it in the unit that you measured in."

    def add_unit(self) -> str:
        return "Add the unit."

    def change_unit(self) -> str:
        return "Change the ending to the unit that you measured in."

    def unit_in_key(self) -> str:
        return "Put the unit in the key, e.g. force_gf = 45."

    def unit_in_header(self) -> str:
        return "Type the number only; the unit goes in the header."

    def check_unit(self) -> str:
        return "Check the unit in the header."

    def words_in_note(self) -> str:
        return "Put words after a #, or in note."

    def write(self, *, typed: Name) -> str:
        return f"Write {self.w.name(typed)}."

    def leave_out_key(self, *, or_value: bool) -> str:
        return f"Leave out the key{', or this one value,' if or_value else ''} if it was not measured."

    def leave_cell_empty(self, *, comma: bool) -> str:
        return f"Leave the cell empty{', with its comma,' if comma else ''} if nothing was measured."

    def cell_comma(self) -> str:
        return "A decimal comma makes two cells out of one number: use a point."

    def fill_or_delete_row(self) -> str:
        return "Fill it in, or delete the row."

    def delete_row(self) -> str:
        return "Delete the row."

    def delete_other_unit(self) -> str:
        return "They give the same number: delete the one that is not in the unit of your gauge."

    def delete_unmeasured(self) -> str:
        return "Delete the one that was not measured."

    def left_not_minus(self, *, keyed: bool) -> str:
        how = "direction_deg = 180" if keyed else "180 in the direction column"
        return f"Left is a direction, not a minus: give {how} and the number without its sign."

    def no_minus(self) -> str:
        return "Leave out the minus sign."

    def decimal_point(self) -> str:
        return "Check the decimal point."

    def digits(self) -> str:
        return "Check for digits typed twice."

    def share(self) -> str:
        return f"{self.w.share(0.5)} is 0.5."

    def rename_key(
        self, *, read_off: Instrument, units: tuple[Name, ...], keys: tuple[Name, ...], in_list: bool
    ) -> str:
        thing = "list" if in_list else "key"
        pairs = list(zip(units, keys, strict=False))
        first = f"If {_SHOWS[read_off]} {self._unit(pairs[0][0])}, name the {thing} {self.w.name(pairs[0][1])}"
        others = (f"if {self._unit(unit)}, name it {self.w.name(key)}" for unit, key in pairs[1:])
        return f"{'; '.join((first, *others))}."

    def short_code(self) -> str:
        return "Use a short code, never a name."

    def shorter(self) -> str:
        return "Make it shorter."

    def repeats_only(self) -> str:
        return "Type the repeats of one reading only."

    def called_on_sheet(self) -> str:
        return "This is its name on the sheet."

    def spaces_between(self) -> str:
        return "Separate several numbers with spaces: 41 45 38."

    def say_comma(self, *, several: Name, count: int, one: Name) -> str:
        numbers = self.w.plural(count, one="1 number", other=f"{count} numbers")
        return f"Type {self.w.name(several)} for {numbers}, or {self.w.name(one)} for one."

    def example_date(self) -> str:
        return "For example 2026-03-01."

    def check_spelling(self) -> str:
        return "Check the spelling and the folder, or take the name out."

    def name_file_inside(self) -> str:
        return "Name the file inside it."

    def name_folder(self) -> str:
        return "Name the folder that it is in."

    def saved(self) -> str:
        return "Was it saved before it was copied?"

    def rights(self) -> str:
        return "Check its name, and whether you may open it."

    def as_recording(self, *, table: Text) -> str:
        return f"This looks like a recording: enter it as {self.clause(table)}."

    def save_utf8(self) -> str:
        return "Save the file again with the encoding 'UTF-8' or 'CSV UTF-8'."

    def export_csv(self) -> str:
        return "Export it as CSV again."

    def export_as_csv(self) -> str:
        return "Export the recording as CSV first."

    def first_ones(self) -> str:
        return "Correct the first ones, then check again."

    def another_name(self) -> str:
        return "Nothing was changed. Choose another name."

    def name_or_edit(self) -> str:
        return "Choose another name, or edit the file."

    def rename_file(self) -> str:
        return "Rename the file, so that nothing is replaced."

    def free_space(self) -> str:
        return "Nothing was changed. Choose another folder, or free some space, and try again."

    def another_folder(self, *, or_delete: bool) -> str:
        return f"Choose another folder{', or delete the file by hand' if or_delete else ''}."

    def copy_inside(self) -> str:
        return "Copy it into the case folder and give its name from there."

    def open_again(self) -> str:
        return "Open the page again."

    def edit_as_text(self) -> str:
        return "Correct it as text, on the page 'Files'."

    def new_case(self) -> str:
        return "Check the name, or start a case with 'stickwright new'."

    def choose_name(self) -> str:
        return "Choose another name."

    def game_columns(self) -> str:
        return "Give one of the two another name: the sheet has a column for each."

    def rename_to(self, *, file: Name, to: Name) -> str:
        return f"Rename {self.w.name(file)} to {self.w.name(to)}."

    def right_column(self) -> str:
        return "Is it the right column?"

    def list_recordings(self) -> str:
        return "List each recording at its site."

    def _unit(self, label: Name) -> str:
        return {"°": "degrees", "/s": "per second", "/min": "per minute"}.get(label, label)
