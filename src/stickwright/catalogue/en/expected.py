"""What would have been accepted, in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.expected import Contents, Expected
from stickwright.codes.message import Name

__all__ = ["Texts"]

_CONTENTS: dict[Contents, str] = {
    "player": "the player", "kit": "the kit", "game": "the game", "further-game": "a further game", "hub": "the hub",
    "room": "the seating and environment", "recording": "a recording", "gauge": "gauge readings",
    "bench": "bench readings", "movements": "movements", "presses": "presses",
}  # fmt: skip


class Texts(Expected):
    """Noun phrases."""

    w: English

    def number(self, *, unit: Name | None) -> str:
        return "a number" if unit is None else f"a number in {'degrees' if unit == '°' else unit}"

    def number_alone(self, *, unit: Name | None) -> str:
        return f"{self.number(unit=unit)}, alone"

    def number_with_point(self, *, unit: Name | None) -> str:
        return f"{self.number(unit=unit)} with a decimal point"

    def number_unquoted(self) -> str:
        return "a number without quotes"

    def number_or_list(self) -> str:
        return "a number or a list of numbers"

    def number_measurable(self) -> str:
        return "a number that can be measured"

    def clear_comma(self) -> str:
        return "to know whether the comma separates two numbers or is a decimal comma"

    def whole_number(self) -> str:
        return "a whole number"

    def numbers(self, *, count: int, spaced: bool) -> str:
        told = self.w.plural(count, one="1 number", other=f"{count} numbers")
        return f"{told}, separated by spaces" if spaced else told

    def number_list(self, *, count: int) -> str:
        return f"a list of {self.numbers(count=count, spaced=False)}"

    def range(self, *, low_in_unit: float, high_in_unit: float, unit: Name | None, unsigned: bool) -> str:
        ends = f"{self.w.limit(low_in_unit)} to {self.w.limit(high_in_unit)}"
        told = self.w.labelled(ends, unit) if unit is not None else ends
        return f"{told}, without a sign" if unsigned else told

    def share(self, *, low_share: float, high_share: float) -> str:
        return f"{self.w.limit(low_share)} to {self.w.limit(high_share)} (a share: 1 is all, 0.5 is half)"

    def above_zero(self) -> str:
        return "a number above 0"

    def one_of(self, *, names: tuple[Name, ...], more: int) -> str:
        others = (f"{more} more",) if more else ()
        some = (*(self.w.name(one) for one in names), *others)
        return some[0] if len(some) == 1 else f"{'one of ' if len(some) > 2 else ''}{self.w.any_of(some)}"

    def one_of_or_empty(self, *, names: tuple[Name, ...]) -> str:
        return f"{self.one_of(names=names, more=0)}, or an empty cell"

    def one_of_two(self) -> str:
        return "only one of the two"

    def text(self, *, in_list: bool) -> str:
        return "text in quotes, in a list" if in_list else "text in quotes"

    def a_word(self) -> str:
        return "a word or two"

    def true_or_false(self) -> str:
        return "true or false"

    def yes_or_no(self) -> str:
        return "yes or no"

    def date(self) -> str:
        return "a date as YYYY-MM-DD"

    def at_most(self, *, characters: int) -> str:
        return f"at most {self.w.whole(characters)} characters"

    def values(self, *, count: int) -> str:
        return self.w.plural(count, one="1 value", other=f"{count} values")

    def file_with(self, *, contents: Contents) -> str:
        return f"a file with {_CONTENTS[contents]}"

    def at_most_rows(self, *, contents: Contents, rows: int) -> str:
        return f"{_CONTENTS[contents]}, at most {self.w.whole(rows)} rows"

    def at_most_bytes(self, *, contents: Contents, millions: int) -> str:
        return f"{_CONTENTS[contents]}, at most {self.w.whole(millions)} MB"

    def one_a_row(self, *, contents: Contents) -> str:
        return f"{_CONTENTS[contents]}, one row each"

    def utf8(self) -> str:
        return "text in UTF-8"

    def case_folder(self) -> str:
        return "a case folder, which holds player.toml and kit.toml"

    def file_inside(self) -> str:
        return "a file inside the case folder, e.g. readings/right-index.csv"

    def new_folder(self) -> str:
        return "a new or an empty folder"

    def writable(self) -> str:
        return "a folder that exists, can be written to and is not full"

    def none(self) -> str:
        return "none"

    def own_name(self) -> str:
        return "a name of its own"
