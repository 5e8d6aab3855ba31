"""How a number is printed: display unit, interval beside it, assumption marked, and a sentence when there is none.

Rules of the page: an estimate is never printed without its interval or the reason why it has none, unless both
ends are the value itself; a number nobody measured carries the word `ASSUMED`; not-a-number and infinity are
never printed; an interval that is a spread between published models says so.
"""

from __future__ import annotations

import math
import re
import textwrap
from collections.abc import Iterable
from dataclasses import replace

from stickwright import units
from stickwright.catalogue import say
from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Text, message
from stickwright.codes.printed_figures import PrintedFigures, Side
from stickwright.report.tell import tell

__all__ = [
    "ASSUMED", "base_turned", "centre_words", "clause", "clipped", "decimals_for", "folded", "in_unit", "label_of", "listed",
    "percent", "plain", "printed_pair", "sentence", "share", "shown", "sided", "wrapped",
]  # fmt: skip

ASSUMED = "assumed"
"""The mark of a number nobody measured; set in italics on the sheet."""

_NAMED = {"": "", "foreign": "", "percent": "%", "a_minute": "/min"}
"""Numbers that `units.py` does not convert: bare numbers, a recording's own unit, shares, counts a minute."""
_ALWAYS_PER_MIN = 1e5  # above that nobody counts: the stick is never at rest
_WITHIN = 0.001  # share of full output: what a tenth of a per cent can show
_RARE_PER_MIN = 0.01  # once in a hundred minutes: more digits of a rate say nothing to anybody


def in_unit(value_si: float, ending: str) -> float:
    """An SI number in the unit people read, for an axis.

    Parameters
    ----------
    value_si : float
        SI value; NaN stays NaN.
    ending : str
        Unit ending of `stickwright.units`; ``"percent"`` for a share, ``"a_minute"`` for a count a minute, ``""`` for
        a bare number.

    Examples
    --------
    >>> in_unit(0.012, "mm"), in_unit(0.25, "percent")
    (12.0, 25.0)
    """
    if ending == "percent":
        return value_si * 100.0
    if ending in _NAMED:
        return value_si
    return value_si / units.to_si(1.0, ending)


def label_of(ending: str) -> str:
    """How a unit stands beside a number or on an axis.

    Examples
    --------
    >>> label_of("a_minute"), label_of("percent"), label_of("deg")
    ('/min', '%', '°')
    """
    if ending in _NAMED:
        return _NAMED[ending]
    quantity = units.quantity_of(f"x_{ending}")
    if quantity is None:
        raise KeyError(f"{ending} is no unit ending")
    return quantity.unit(ending).label


def decimals_for(value: float, digits: int = 2) -> int:
    """Decimals that show `value` with so many significant digits (at most four decimals).

    Examples
    --------
    >>> decimals_for(0.26), decimals_for(12.3), decimals_for(104.0), decimals_for(0.0)
    (2, 0, 0, 2)
    """
    if value == 0 or not math.isfinite(value):
        return digits
    return min(4, max(0, digits - 1 - math.floor(math.log10(abs(value)) + 1e-9)))


def _percent_decimals(value: float) -> int:
    return 0 if abs(value) >= 2 or value == 0 else 1


def _number(value: float, decimals: int) -> str:
    text = f"{value:.{decimals}f}"
    return text[1:] if text.startswith("-") and float(text) == 0 else text


def _with_unit(text: str, label: str) -> str:
    if not label:
        return text
    return f"{text}{label}" if label in ("°", "%") else f"{text} {label}"


def plain(value_si: float, ending: str, digits: int = 2, unknown: str | None = None) -> str:
    """A single number in its display unit; a sentence part when it is not finite.

    Examples
    --------
    >>> plain(0.0123, "mm"), plain(float("nan"), "n"), plain(6e7, "a_minute"), plain(0.424, "percent")
    ('12 mm', 'not known', 'always on', '42%')
    """
    if math.isnan(value_si):
        return tell(PrintedFigures.not_known) if unknown is None else unknown
    if math.isinf(value_si):
        return tell(PrintedFigures.always_on) if ending == "a_minute" else tell(PrintedFigures.without_end)
    if ending == "a_minute" and value_si >= _ALWAYS_PER_MIN:
        return tell(PrintedFigures.always_on)
    value = in_unit(value_si, ending)
    if ending == "a_minute" and 0 <= value < _RARE_PER_MIN:
        return tell(PrintedFigures.under, most=f"{_RARE_PER_MIN} {label_of(ending)}")
    decimals = _percent_decimals(value) if ending == "percent" else decimals_for(value, digits)
    if ending == "a_minute":
        decimals = min(2, decimals)
    if value == 0:
        decimals = 0
    return _with_unit(_number(value, decimals), label_of(ending))


def share(value: float) -> str:
    """A share as per cent.

    Examples
    --------
    >>> share(0.424)
    '42%'
    """
    return plain(value, "percent")


def _narrow(value: float, low: float, high: float) -> bool:
    """Whether a percentage under 10 is known so well that whole numbers would hide it."""
    return abs(value) < 10 and high - low < 2


def _interval(estimate: Estimate, ending: str, decimals: int) -> tuple[str, str, str]:
    """Value, low and high with the same decimals, one more where all three would look alike."""
    value, low, high = (in_unit(number, ending) for number in (estimate.number, estimate.lower, estimate.upper))
    texts = tuple(_number(number, decimals) for number in (value, low, high))
    while texts[1] == texts[2] and low != high and decimals < 4:
        decimals += 1
        texts = tuple(_number(number, decimals) for number in (value, low, high))
    return texts[0], texts[1], texts[2]


def printed_pair(estimate: Estimate, ending: str, digits: int = 2) -> tuple[str, str]:
    """The value with its unit, and its interval or the sentence that says why there is none.

    Parameters
    ----------
    estimate : Estimate
        SI or dimensionless.
    ending : str
        As for `in_unit`.
    digits : int, default 2
        Significant digits of the value.

    Returns
    -------
    tuple of str
        Value; interval in brackets, or the reason, or what makes an interval needless.

    Examples
    --------
    >>> printed_pair(Estimate(0.26, 0.21, 0.32), "n")
    ('0.26 N', '(0.21 to 0.32)')
    >>> printed_pair(Estimate.unbounded(0.26, "one reading only"), "n")
    ('0.26 N', '(no interval: one reading only)')
    """
    value, low, high = estimate.number, estimate.lower, estimate.upper
    if math.isnan(value):
        return tell(PrintedFigures.not_known), f"({_reason(estimate)})" if estimate.why else ""
    if not math.isfinite(value):
        return plain(value, ending), _or_more(plain(low, ending)) if math.isfinite(low) else ""
    if ending == "a_minute" and value >= _ALWAYS_PER_MIN:
        surely = low >= _ALWAYS_PER_MIN or math.isnan(low)
        return tell(PrintedFigures.always_on), "" if surely else _or_more(plain(low, ending))
    if math.isnan(low) or math.isnan(high):
        return plain(value, ending, digits), _no_interval(estimate)
    if not math.isfinite(low) or high == -math.inf:
        return plain(value, ending, digits), f"({tell(PrintedFigures.no_interval, why=None)})"
    if ending == "a_minute" and (math.isinf(high) or high >= _ALWAYS_PER_MIN or 0 <= low < _RARE_PER_MIN):
        return _rate_pair(value, low, high)
    if math.isinf(high):
        return plain(value, ending, digits), _or_more(_number(in_unit(low, ending), 1))
    decimals = decimals_for(in_unit(value or high, ending), digits)
    if ending == "percent":
        decimals = _percent_decimals(in_unit(value or high, ending))
        if low != high and _narrow(*(in_unit(number, ending) for number in (value, low, high))):
            decimals = max(1, decimals)
    if ending in ("", "a_minute"):
        decimals = min(2, decimals)
    text, low_text, high_text = _interval(estimate, ending, decimals)
    shown_value = _with_unit(text, label_of(ending))
    if text == low_text == high_text:
        return shown_value, ""
    ends = tell(PrintedFigures.interval, low=low_text, high=high_text, of_models=estimate.level is None)
    return shown_value, f"({ends})"


def _or_more(least: str) -> str:
    return f"({tell(PrintedFigures.or_more, least=least)})"


def _no_interval(estimate: Estimate) -> str:
    """That there is none, and why where that is known."""
    return f"({tell(PrintedFigures.no_interval, why=_reason(estimate) if estimate.why else None)})"


def _rate_pair(value: float, low: float, high: float) -> tuple[str, str]:
    """A rate that may be nothing, or all the time: so small a figure never stands without what it could be as well."""
    label = label_of("a_minute")
    if high >= _ALWAYS_PER_MIN:
        if value < _RARE_PER_MIN:
            return tell(PrintedFigures.not_known), f"({tell(PrintedFigures.anything)})"
        least = plain(low, "a_minute").removesuffix(f" {label}")
        return plain(value, "a_minute"), f"({tell(PrintedFigures.to_always_on, least=least)})"
    if high < _RARE_PER_MIN:
        return plain(value, "a_minute"), ""
    most = _number(high, min(2, decimals_for(high)))
    if value < _RARE_PER_MIN:
        return tell(PrintedFigures.up_to, most=f"{most} {label}"), ""
    return plain(value, "a_minute"), f"({tell(PrintedFigures.up_to, most=most)})"


def _reason(estimate: Estimate) -> str:
    """Why something is missing, as it stands inside a sentence."""
    why = clause(estimate.why or "")
    return f"{why[0].lower()}{why[1:]}" if why[1:2].islower() or why[1:2] == " " else why


def shown(estimate: Estimate, ending: str, digits: int = 2) -> str:
    """An estimate as it stands on a page: value, interval or reason, and the mark of an assumption.

    Examples
    --------
    >>> shown(Estimate(0.26, 0.21, 0.32), "n")
    '0.26 N (0.21 to 0.32)'
    >>> shown(Estimate(0.42, 0.31, 0.55), "percent")
    '42% (31 to 55)'
    >>> shown(Estimate(30.0, 15.0, 60.0, assumed="usual for a finger"), "n_per_m")
    '30 N/m (15 to 60), assumed'
    """
    value, beside = printed_pair(estimate, ending, digits)
    text = f"{value} {beside}" if beside else value
    return f"{text}, {ASSUMED}" if estimate.assumed else text


def percent(estimate: Estimate) -> str:
    """A share with its interval, as per cent.

    Examples
    --------
    >>> percent(Estimate(0.42, 0.31, 0.55))
    '42% (31 to 55)'
    """
    return shown(estimate, "percent")


def sided(estimate: Estimate, ending: str, plus: Side, minus: Side) -> str:
    """A signed number with the name of its side instead of the sign.

    Parameters
    ----------
    estimate : Estimate
        SI or dimensionless.
    ending : str
        As for `in_unit`.
    plus, minus : {"right", "left", "forward", "back", "anticlockwise", "clockwise"}
        What the two signs mean.

    Examples
    --------
    >>> sided(Estimate(-0.022, -0.03, -0.014), "percent", "forward", "back")
    '2.2% (1.4 to 3.0) back'
    >>> sided(Estimate(0.01, -0.004, 0.024), "percent", "right", "left")
    '1.0% right (0.4 left to 2.4 right)'
    """
    if estimate.value is None:
        return tell(PrintedFigures.either_side, plus=plus, minus=minus, told=shown(estimate, ending))
    side, low, high = plus if estimate.number >= 0 else minus, estimate.lower, estimate.upper
    if low < 0 < high:
        decimals = 1 if ending == "percent" else decimals_for(in_unit(max(abs(low), abs(high)), ending))
        value, least, most = (_number(abs(in_unit(one, ending)), decimals) for one in (estimate.number, low, high))
        mark = f", {ASSUMED}" if estimate.assumed else ""
        here = tell(PrintedFigures.on_side, told=_with_unit(value, label_of(ending)), side=side)
        ends = (message(PrintedFigures.on_side, told=one, side=way) for one, way in ((least, minus), (most, plus)))
        low_end, high_end = ends
        return f"{here} ({tell(PrintedFigures.interval, low=low_end, high=high_end, of_models=False)}){mark}"
    if ending == "percent" and estimate.has_interval:
        value, least, most = (f"{abs(in_unit(one, ending)):.1f}" for one in (estimate.number, low, high))
        least, most = (most, least) if estimate.number < 0 else (least, most)
        ends_told = tell(PrintedFigures.interval, low=least, high=most, of_models=False)
        there = tell(PrintedFigures.on_side, told=f"{_with_unit(value, label_of(ending))} ({ends_told})", side=side)
        return f"{there}{f', {ASSUMED}' if estimate.assumed else ''}"
    if estimate.number < 0:
        estimate = replace(estimate, value=-estimate.number, low=-high, high=-low)
    return tell(PrintedFigures.on_side, told=shown(estimate, ending), side=side)


def centre_words(x: Estimate, y: Estimate, ending: str) -> str:
    """Where a stick rests: sideways, then fore and aft, with the same digits; one reason said once.

    Parameters
    ----------
    x, y : Estimate
        Output at rest, plus is right and forward.
    ending : str
        As for `in_unit`.

    Examples
    --------
    >>> centre_words(Estimate(0.035, 0.034, 0.036), Estimate(-0.022, -0.0221, -0.0219), "percent")
    '3.5% right, 2.2% back, each to within 0.1%'
    """
    both: _Sides = ((x, "right", "left"), (y, "forward", "back"))
    if ending != "percent" or not (x.has_interval and y.has_interval):
        if x.why == y.why and not math.isnan(x.number + y.number):
            bare = (
                tell(
                    PrintedFigures.on_side,
                    told=plain(abs(one.number), ending),
                    side=plus if one.number >= 0 else minus,
                )
                for one, plus, minus in both
            )
            return f"{', '.join(bare)} {_no_interval(x)}" if x.why else _sides(both, ending)
        return _sides(both, ending)
    if all(one.upper - one.lower < _WITHIN * 2 for one in (x, y)):
        exact = tuple(
            message(
                PrintedFigures.on_side,
                told=_with_unit(f"{in_unit(abs(one.number), ending):.1f}", label_of(ending)),
                side=plus if one.number >= 0 else minus,
            )
            for one, plus, minus in both
        )
        return tell(PrintedFigures.within, sides=exact, within_share=_WITHIN)
    return _sides(both, ending)


_Sides = tuple[tuple[Estimate, Side, Side], ...]


def _sides(both: _Sides, ending: str) -> str:
    return ", ".join(sided(one, ending, plus, minus) for one, plus, minus in both)


def base_turned(turn_rad: float) -> str:
    """How far a base is turned, the same on every page; empty when it is straight.

    Parameters
    ----------
    turn_rad : float
        From straight ahead, anticlockwise seen from above.

    Examples
    --------
    >>> base_turned(0.4), base_turned(-0.2), base_turned(0.004)
    ('23° anticlockwise', '11° clockwise', '')
    """
    return "" if abs(in_unit(turn_rad, "deg")) < 0.5 else tell(PrintedFigures.turned, turn_rad=turn_rad)


def listed(parts: Iterable[str]) -> str:
    """Names or numbers in one row: commas, and the last after 'and'.

    Examples
    --------
    >>> listed(["rest.csv", "rim.csv", "aim.csv"])
    'rest.csv, rim.csv and aim.csv'
    """
    return tell(PrintedFigures.listed, parts=tuple(parts))


def clause(text: Text) -> str:
    """A sentence, or a message's words, as they stand before a comma or semicolon: without the full stop.

    Examples
    --------
    >>> clause("reach, not force, limits. ")
    'reach, not force, limits'
    """
    return say(text).strip().rstrip(".")


def sentence(text: Text) -> str:
    """Text with a capital at the start and one full stop at the end; nothing stays nothing.

    Examples
    --------
    >>> sentence("too heavy forward")
    'Too heavy forward.'
    """
    text = say(text).strip().rstrip(".")
    return f"{text[0].upper()}{text[1:]}." if text else ""


def clipped(text: str, most: int) -> str:
    """A name cut to what a chart has room for; the table beside it has the whole.

    Examples
    --------
    >>> clipped("a long name of a stick", 12)
    'a long name…'
    """
    return text if len(text) <= most else text[: most - 1].rstrip() + "…"


def folded(text: str, width: int, lines: int = 2) -> str:
    """A name on as many lines as a chart has room for, broken between words; cut only where even that is too little.

    Examples
    --------
    >>> folded("1 long one + tall peg + extension plus 25", 26)
    '1 long one + tall peg +\\nextension plus 25'
    """
    whole = re.sub(r"(\d) (mm|N)", "\\1\u00a0\\2", text)  # a number keeps its unit
    rows = [row.replace("\u00a0", " ") for row in textwrap.wrap(whole, width, break_on_hyphens=False)]
    if len(rows) > lines:
        rows = [*rows[: lines - 1], clipped(" ".join(rows[lines - 1 :]), width)]
    return "\n".join(rows)


def wrapped(texts: Iterable[str], width: int = 80, first: str = "", rest: str = "") -> str:
    """Paragraphs wrapped for a terminal, each opened by `first` and continued by `rest`."""
    return "\n".join(
        textwrap.fill(text, width, initial_indent=first, subsequent_indent=rest, break_on_hyphens=False)
        for text in texts
        if text
    )
