"""What is drawn for the player: a few plain shapes with their words, which a page turns into a picture.

Coordinates go from -1 to 1, x right and y up (forward), so that a page flips y once. Every picture carries a text that says
the same. A shape says what it is for (`role`), never a colour: the page's own style decides, dark, light or high contrast.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import asdict, dataclass, replace
from typing import Literal

from stickwright.codes.message import Text as Words

__all__ = ["Arrow", "Circle", "Dot", "Path", "Picture", "Ring", "Role", "Shape", "Text", "plain_picture"]

Role = Literal["edge", "asked", "next", "player", "quiet", "words"]
"""The edge of the field; what is asked now; what comes next; where the player is; what may be overlooked; words."""


@dataclass(frozen=True)
class Circle:
    """A filled disc.

    Parameters
    ----------
    x, y : float
        Middle, share of the field's half-width.
    radius : float
        Share of the field's half-width.
    role : Role
        What it is for.
    """

    x: float
    y: float
    radius: float
    role: Role = "asked"


@dataclass(frozen=True)
class Ring:
    """A circle's outline.

    Parameters
    ----------
    x, y : float
        Middle, share of the field's half-width.
    radius : float
        Share of the field's half-width.
    role : Role
        What it is for.
    """

    x: float
    y: float
    radius: float
    role: Role = "asked"


@dataclass(frozen=True)
class Dot:
    """A small mark of a size that the page chooses.

    Parameters
    ----------
    x, y : float
        Middle, share of the field's half-width.
    role : Role
        What it is for.
    """

    x: float
    y: float
    role: Role = "player"


@dataclass(frozen=True)
class Arrow:
    """From one place to another.

    Parameters
    ----------
    x, y : float
        Beginning, share of the field's half-width.
    to_x, to_y : float
        Tip, share of the field's half-width.
    role : Role
        What it is for.
    """

    x: float
    y: float
    to_x: float
    to_y: float
    role: Role = "asked"


@dataclass(frozen=True)
class Path:
    """A line through places in order.

    Parameters
    ----------
    points : tuple of (float, float)
        Places, shares of the field's half-width.
    role : Role
        What it is for.
    arrow : bool
        Whether it has a head at its end.
    """

    points: tuple[tuple[float, float], ...]
    role: Role = "quiet"
    arrow: bool = False


@dataclass(frozen=True)
class Text:
    """A word or number, centred on its place.

    Parameters
    ----------
    x, y : float
        Middle, share of the field's half-width.
    words : Message or str
        What it says; a count as it is.
    size : {"large", "small"}
        Of the letters.
    role : Role
        What it is for.
    """

    x: float
    y: float
    words: Words
    size: Literal["large", "small"] = "large"
    role: Role = "words"


Shape = Circle | Ring | Dot | Arrow | Path | Text


@dataclass(frozen=True)
class Picture:
    """Shapes in the order in which they are laid on, and the same in words.

    Parameters
    ----------
    shapes : tuple of Shape
        First one lowest.
    words : Message
        One or two short sentences that say what the picture asks.
    """

    shapes: tuple[Shape, ...]
    words: Words


def plain_picture(picture: Picture, say: Callable[[Words], str]) -> dict[str, object]:
    """A picture as plain lists and numbers, ready for JSON or a template.

    Parameters
    ----------
    picture : Picture
    say : callable
        Puts a message into words.

    Returns
    -------
    dict
        ``{"words": ..., "shapes": [{"kind": "ring", "x": ..., "role": ...}, ...]}``.

    Examples
    --------
    >>> plain_picture(Picture((Dot(0.0, 0.5),), "Push forward."), str)["shapes"]
    [{'kind': 'dot', 'x': 0.0, 'y': 0.5, 'role': 'player'}]
    """
    said = [replace(each, words=say(each.words)) if isinstance(each, Text) else each for each in picture.shapes]
    shapes = [{"kind": type(each).__name__.lower(), **asdict(each)} for each in said]
    return {"words": say(picture.words), "shapes": shapes}
