"""What is doubtful of a player, in English."""

from __future__ import annotations

from typing import Literal

from stickwright.catalogue.en import English
from stickwright.catalogue.writer import GAP
from stickwright.codes.message import Name, Text
from stickwright.codes.player_warnings import PlayerWarnings

__all__ = ["Texts"]


class Texts(PlayerWarnings):
    """Questions behind their place in the file."""

    w: English

    def age_band(self, *, typed: Text) -> str:
        return (
            f"{self.clause(typed)} does not say whether the player is a child or an adult, so the cautions for children are left "
            'out. Enter "child", "teenager", "adult" or ages in years ("6-11"), not a date of birth.'
        )

    def visit_in_future(self, *, visit: Name, today: Name) -> str:
        return f"the visit ({self.w.name(visit)}) is after today ({self.w.name(today)}). Is the computer's clock wrong?"

    def first_again(self, *, key: Name, file: Text) -> str:
        return f"{self.w.name(key)}, and the first direction repeated at the end of {self.clause(file)}"

    def first_once(self) -> str:
        return "the repeated first direction in one place"

    def nothing_measured(self, *, reading: Text, on_stick: Text) -> str:
        return (
            f"nothing has been measured here yet. Add {self.clause(reading)}, or what was reached on a stick "
            f"({self.clause(on_stick)}); four directions are enough to begin with."
        )

    def empty_reading(self) -> str:
        return "neither force nor movement range. If this direction was not measured, delete it."

    def direction_again(self, *, typed: Name, unit: Literal["deg", "rad"], line: int | None, file: Text | None) -> str:
        first = f"in {self.clause(file)}" if file is not None else f"line {self.w.whole(line or 0)}"
        return f"the direction {self.w.name(typed)}{'°' if unit == 'deg' else f'{GAP}rad'} a second time (the first: {first})"

    def direction_once(self) -> str:
        return "each direction once"

    def one_list(self) -> str:
        return "Put all repeats of a direction into one list."

    def holds_what(self) -> str:
        return (
            "how long the hand holds an object is given, but not its mass. Add holds_g, the mass that was held comfortably for "
            "that time."
        )

    def no_controller(self) -> str:
        return (
            "buttons within reach are given, but kit.toml has no [[controller]], so none is used. Add the controller that was "
            "tried."
        )

    def site_twice(self, *, site: Name) -> str:
        return f'"{self.w.name(site)}" twice'

    def two_sites(self) -> str:
        return "two sites"

    def which_first(self) -> str:
        return "Name the site that holds first and the site that presses second."

    def pair_again(self, *, one: Name, other: Name, line: int) -> str:
        return f'"{self.w.name(one)}" with "{self.w.name(other)}" a second time (the first: line {self.w.whole(line)})'

    def pair_once(self) -> str:
        return "each pair once in this order"

    def word_beside_rates(self, *, word: Text) -> str:
        return f"says = {self.clause(word)} together with press rates"

    def word_or_rates(self) -> str:
        return "either the word or the two rates, as only one can be used"

    def delete_word(self) -> str:
        return "If the rates were counted, delete the word."

    def empty_pair(self) -> str:
        return (
            "neither a word nor press rates, so this says nothing. Try both at once for 20 s, then enter "
            'says = "yes", "slows" or "no", or alone_per_s and both_per_s.'
        )

    def one_rate(self, *, given: Name, missing: Name) -> str:
        return (
            f"{self.w.name(given)} without {self.w.name(missing)}, so the two cannot be compared. Count the other as well, 20 s "
            "each."
        )

    def no_press_alone(self) -> str:
        return "the second site made no press even alone, so the two cannot be compared. Can this site press?"

    def more_while_holding(self, *, both: Text, alone: Text) -> str:
        return (
            f"more presses while the first site holds ({self.clause(both)}) than without ({self.clause(alone)}). Were they "
            "swapped, or did the player warm up in between?"
        )

    def empty_press(self) -> str:
        return (
            "nothing was measured of the press. Add force_n (repeatable ten times without strain) and rate_per_s (as many as "
            "comfortable in 10 s)."
        )

    def slow_rate(self, *, typed: Name) -> str:
        return (
            f"{self.w.name(typed)} a minute is very slow for pressing. If it was a second, name the key rate_per_s. Nothing was "
            "converted."
        )

    def too_quick(self, *, typed: Name, unit: Literal["ms", "s"], key: Name) -> str:
        return (
            f"{self.w.name(typed)}{GAP}{unit} is faster than anyone can be. If it was seconds, name the key {self.w.name(key)}. "
            "Nothing was converted."
        )
