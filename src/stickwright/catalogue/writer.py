"""How a language forms what sentences are filled with: numbers with units, plurals, lists, dates, names.

Rules and symbols of languages come from Unicode's CLDR by Babel [babel]; labels of units are those of the SI
[si-brochure] in every language, joined to the number by a space that does not break.
"""

from __future__ import annotations

import datetime as dt
import math
from decimal import Decimal
from typing import ClassVar

from babel import Locale
from babel.dates import format_date
from babel.lists import format_list
from babel.numbers import format_decimal, format_percent

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Name
from stickwright.model.points import tenths
from stickwright.units import figures, unit_named

__all__ = ["GAP", "MINUS", "Writer"]

GAP = "\N{NO-BREAK SPACE}"
MINUS = "\N{MINUS SIGN}"
_FIRST_STRONG, _LEFT_TO_RIGHT, _POP = (
    "\N{FIRST STRONG ISOLATE}",
    "\N{LEFT-TO-RIGHT ISOLATE}",
    "\N{POP DIRECTIONAL ISOLATE}",
)


class Writer:
    """What all languages share. A language gives its locale, its own `plural` and the words of `Words`."""

    tag: ClassVar[str]
    """Of the language, as HTML's ``lang``: ``en-GB``."""
    unknown: ClassVar[str]
    """Said where a number is not known."""
    up_to: ClassVar[str]
    """Between the ends of an interval: ``0.3 to 0.4``."""
    assumed: ClassVar[str]
    """Behind a figure that nobody measured."""

    translated: ClassVar[str] = ""
    """Printed on each page that was translated by the program's authors: that a speaker is to check it."""
    english: ClassVar[str] = "English"
    """The name of English, behind a text that this language does not have."""

    def __init__(self) -> None:
        self.locale = Locale.parse(self.tag, sep="-")
        self.right_to_left = self.locale.text_direction == "rtl"

    def number(self, value: float, digits: int = 2) -> str:
        """A bare number with so many significant digits; larger ones are whole."""
        return self._quantity(self._decimal(figures(value, digits)))

    def whole(self, value: float) -> str:
        """A number rounded to a whole one."""
        return self._quantity(self._decimal(f"{value:.0f}"))

    def trimmed(self, value: float, digits: int = 2) -> str:
        """A bare number without idle zeros behind its decimal sign: ``8``, ``2.5``."""
        text = figures(value, digits)
        return self._quantity(self._decimal(text.rstrip("0").rstrip(".") if "." in text else text))

    def limit(self, value: float) -> str:
        """An end of what is accepted: three significant digits, whatever its size, without idle zeros."""
        return self.trimmed(float(f"{value:.3g}"), 3)

    def labelled(self, number: str, label: str) -> str:
        """A number that is told already, with the symbol of its unit."""
        return self._with_unit(number, label)

    def fixed(self, value: float, places: int = 2) -> str:
        """A factor of a product, with so many places behind its decimal sign."""
        return self._quantity(self._decimal(f"{value:.{places}f}"))

    def score(self, value_points: float) -> str:
        """A score, or a part of one: to a tenth, a whole number where it is one."""
        number = tenths(value_points)
        text = self._decimal(f"{abs(number) // 10}.{abs(number) % 10}".removesuffix(".0"))
        return self._quantity(f"{MINUS}{text}" if number < 0 else text)

    def amount(self, value_si: float | None, ending: str, digits: int = 2) -> str:
        """An SI number in the unit that people read: ``amount(0.012, "mm")`` is ``12 mm``."""
        if value_si is None or not math.isfinite(value_si):
            return self.unknown
        unit = unit_named(ending)
        return self._with_unit(self._decimal(figures(value_si / unit.factor, digits)), unit.label)

    def trimmed_amount(self, value_si: float, ending: str, digits: int = 2) -> str:
        """As `amount`, without idle zeros behind the decimal sign: a limit, a tolerance."""
        unit = unit_named(ending)
        text = figures(value_si / unit.factor, digits)
        return self._with_unit(self._decimal(text.rstrip("0").rstrip(".") if "." in text else text), unit.label)

    def millimetres(self, length_m: float) -> str:
        """A length in whole millimetres: what a tape can tell."""
        return self.sizes((length_m,)) if math.isfinite(length_m) else self.unknown

    def centimetres(self, length_m: float) -> str:
        """A length in metres, to the centimetre: what a tape along a cable can tell."""
        return self._with_unit(self._decimal(f"{length_m:.2f}"), unit_named("m").label)

    def factor(self, value: float, required: float) -> str:
        """A safety factor, never rounded up to the one required: 1.97 of 2 is 1.9."""
        text = f"{value:.1f}" if value < 10 else f"{value:.0f}"
        if value < required <= float(text):
            text = f"{math.floor(value * 10) / 10:.1f}"
        return self._quantity(self._decimal(text))

    def limits(self, low_si: float, high_si: float, ending: str) -> str:
        """From one limit to another: ``0.1 to 5 N``."""
        low = self.trimmed(low_si / unit_named(ending).factor, 3)
        return self._quantity(f"{low} {self.up_to} {self.trimmed_amount(high_si, ending, 3)}")

    def sizes(self, sides_m: tuple[float, ...]) -> str:
        """Length by width in whole millimetres: ``150 × 110 mm``."""
        unit = unit_named("mm")
        sides = (self._decimal(f"{side / unit.factor:.0f}") for side in sides_m)
        return self._with_unit(f"{GAP}\N{MULTIPLICATION SIGN}{GAP}".join(sides), unit.label)

    def share(self, value: float | None) -> str:
        """A share, 0 to 1, in whole per cent."""
        if value is None or not math.isfinite(value):
            return self.unknown
        return self._quantity(format_percent(Decimal(f"{value:.2f}"), locale=self.locale))

    def fine_share(self, value: float) -> str:
        """A share in whole per cent; a small one with a decimal, so that it keeps two significant figures."""
        number = Decimal(f"{value:.2f}" if value >= 0.095 else f"{value:.3f}")
        return self._quantity(format_percent(number, locale=self.locale, decimal_quantization=False))

    def fine_share_figures(self, value: float, digits: int = 2) -> str:
        """A share in per cent with so many significant figures, as small as it may be: ``0.40%``."""
        number = Decimal(figures(100 * value, digits)) / 100
        return self._quantity(format_percent(number, locale=self.locale, decimal_quantization=False))

    def sides(self, sides_si: tuple[float, ...], ending: str) -> str:
        """Length by width (by height) in one unit: ``110 × 90 mm``."""
        unit = unit_named(ending)
        return self._with_unit(" × ".join(self._decimal(figures(one / unit.factor)) for one in sides_si), unit.label)

    def tenth_share(self, value: float) -> str:
        """A share in per cent with one decimal, for small ones and for two that are compared."""
        pattern = self.locale.percent_formats[None].pattern.replace("0", "0.0")
        return self._quantity(format_percent(Decimal(f"{value:.3f}"), format=pattern, locale=self.locale))

    def estimate(self, value: Estimate, ending: str, digits: int = 2) -> str:
        """A number with its interval, and marked where it was not measured."""
        text, ends = self.amount(value.value, ending, digits), value.interval
        if value.value is not None and ends is not None:
            unit = unit_named(ending)
            low, high = (self._decimal(figures(end / unit.factor, digits)) for end in ends)
            text = f"{text} ({self._quantity(f'{low} {self.up_to} {high}')})"
        return f"{text}, {self.assumed}" if value.assumed else text

    def share_estimate(self, value: Estimate) -> str:
        """A share in per cent with its interval; small ones that are well known with a decimal."""
        if value.value is None or not math.isfinite(value.value):
            return self.unknown
        ends = value.interval
        fine = abs(value.value) < 0.1 and (ends is None or ends[1] - ends[0] < 0.02)
        text = self.tenth_share(value.value) if fine else self.share(value.value)
        if ends is not None and ends[0] != ends[1]:
            low, high = (self._decimal(f"{100 * end:.{int(fine)}f}") for end in ends)
            text = f"{text} ({self._quantity(f'{low} {self.up_to} {high}')})"
        return f"{text}, {self.assumed}" if value.assumed else text

    def bare_estimate(self, value: Estimate, digits: int = 2) -> str:
        """A number without a unit, with its interval."""
        if value.value is None or not math.isfinite(value.value):
            return self.unknown
        text, ends = self.number(value.value, digits), value.interval
        if ends is not None and ends[0] != ends[1]:
            low, high = (self._decimal(figures(end, digits)) for end in ends)
            text = f"{text} ({self._quantity(f'{low} {self.up_to} {high}')})"
        return f"{text}, {self.assumed}" if value.assumed else text

    @staticmethod
    def capital(text: str) -> str:
        """A text with a capital at its start, where the script has capitals."""
        return f"{text[:1].upper()}{text[1:]}"

    def date(self, iso: str) -> str:
        """A day, from YYYY-MM-DD; anything else as it was typed."""
        try:
            day = dt.date.fromisoformat(iso)
        except ValueError:
            return self.name(Name(iso))
        return format_date(day, format="medium", locale=self.locale)

    def moment(self, iso: str, *, seconds: bool = False) -> str:
        """A day with its time, from YYYY-MM-DDThh:mm:ss; anything else as it was typed."""
        try:
            at = dt.datetime.fromisoformat(iso)
        except ValueError:
            return self.name(Name(iso))
        return f"{self.date(at.date().isoformat())}, {at:%H:%M:%S}" if seconds else f"{self.date(iso[:10])}, {at:%H:%M}"

    def name(self, typed: str) -> str:
        """What a person typed, as it stands: where scripts of two directions may meet, it is set apart."""
        return f"{_FIRST_STRONG}{typed}{_POP}" if self.right_to_left else typed

    def pieces(self, count: int, typed: str) -> str:
        """A device, with how many of it: ``2 × disc``."""
        many = f"{self.whole(count)}{GAP}\N{MULTIPLICATION SIGN} " if count != 1 else ""
        return f"{many}{self.name(typed)}"

    def names(self, typed: tuple[str, ...]) -> str:
        """Names in a list."""
        return self.all_of(tuple(self.name(one) for one in typed))

    def all_of(self, parts: tuple[str, ...]) -> str:
        """A, B and C."""
        return format_list(parts, style="standard", locale=self.locale)

    def any_of(self, parts: tuple[str, ...]) -> str:
        """A, B or C."""
        return format_list(parts, style="or", locale=self.locale)

    def form(self, count: float) -> str:
        """CLDR's plural category of a count, as it is printed."""
        return self.locale.plural_form(count if isinstance(count, int) else Decimal(figures(count)))

    def typed(self, text: str) -> str:
        """A note that a person typed, as part of a sentence: without its full stop."""
        return self.name(text.strip().rstrip("."))

    @staticmethod
    def clause(text: str) -> str:
        """A text as part of a sentence: without its full stop."""
        return text.strip().rstrip(".")

    def in_english(self, text: str) -> str:
        """A text that this language has only in English, marked as that."""
        return f"{self.name(text)} [{self.english}]"

    def _decimal(self, text: str) -> str:
        places = len(text.partition(".")[2])
        return format_decimal(
            Decimal(text), format="#,##0" + ("." + "0" * places if places else ""), locale=self.locale
        )

    def _with_unit(self, number: str, label: str) -> str:
        return self._quantity(f"{number}{label}" if label == "°" else f"{number}{GAP}{label}")

    def _quantity(self, text: str) -> str:
        return f"{_LEFT_TO_RIGHT}{text}{_POP}" if self.right_to_left else text
