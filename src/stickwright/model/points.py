"""Points on the player's own scale of 0 to 10, as everything that prints them rounds them: to a tenth, and in one way."""

from __future__ import annotations

__all__ = ["counted", "points", "tenths", "tenths_words"]


def tenths(value: float) -> int:
    """Points in tenths, from the thousandths in which they are reckoned.

    Parameters
    ----------
    value : float

    Examples
    --------
    >>> tenths(33.849), tenths(-0.05)
    (338, 0)
    """
    return round(round(value * 1000) / 100)


def tenths_words(number: int) -> str:
    """So many tenths of a point, a whole number where it is one.

    Examples
    --------
    >>> tenths_words(80), tenths_words(9), tenths_words(-12)
    ('8', '0.9', '−1.2')
    """
    text = f"{abs(number) // 10}.{abs(number) % 10}".removesuffix(".0")
    return f"−{text}" if number < 0 else text


def points(value: float) -> str:
    """Points on the player's own scale of 0 to 10, a whole number where it is one.

    Parameters
    ----------
    value : float

    Examples
    --------
    >>> points(8.0), points(0.94), points(-1.25)
    ('8', '0.9', '−1.2')
    """
    return tenths_words(tenths(value))


def counted(value: float) -> str:
    """So many points, with their name.

    Parameters
    ----------
    value : float

    Examples
    --------
    >>> counted(1.0), counted(0.8)
    ('1 point', '0.8 points')
    """
    text = points(value)
    return f"{text} point{'' if text.lstrip('−') == '1' else 's'}"
