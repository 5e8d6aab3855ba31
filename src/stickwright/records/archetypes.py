"""Ten kinds of game to start from: usual actions with middle-of-the-road figures from general knowledge.

They are data, in ``starter/games``, meant to be written over; none is a particular game.
"""

from __future__ import annotations

from importlib import resources

from stickwright.errors import BadInput, Problem, did_you_mean
from stickwright.model.game import Game
from stickwright.records.refusals import validated
from stickwright.records.toml_lines import parse_toml

__all__ = ["ARCHETYPES", "archetype", "archetype_named", "archetype_text"]

ARCHETYPES: tuple[str, ...] = (
    "football", "racing", "platform", "third-person-adventure", "first-person-shooter", "turn-based-strategy",
    "flight", "fighting", "rhythm", "puzzle",
)  # fmt: skip
"""Names, as they are typed."""


def archetype_named(text: str) -> str | None:
    """The archetype that a text names, letter case and hyphens aside; None when it names none of them.

    Examples
    --------
    >>> archetype_named("Third-person adventure"), archetype_named("third person, own pace") is None
    ('third-person-adventure', True)
    """
    folded = "-".join(text.casefold().replace("-", " ").replace("_", " ").split())
    return folded if folded in ARCHETYPES else None


def archetype_text(name: str) -> str:
    """The game file of an archetype, with its comments.

    Parameters
    ----------
    name : str
        One of `ARCHETYPES`.

    Raises
    ------
    BadInput
        No such archetype; the nearest is offered.
    """
    known = archetype_named(name)
    if known is None:
        raise BadInput(
            Problem("kind of game", f'"{name}"', "one of the ten that 'stickwright games' lists",
                    did_you_mean(name, ARCHETYPES))
        )  # fmt: skip
    return (resources.files("stickwright.records") / "starter" / "games" / f"{known}.toml").read_text(encoding="utf-8")


def archetype(name: str) -> Game:
    """An archetype as a game.

    Parameters
    ----------
    name : str
        One of `ARCHETYPES`.

    Raises
    ------
    BadInput
        No such archetype; the nearest is offered.

    Examples
    --------
    >>> [action.name for action in archetype("racing").action][:3]
    ['steer', 'accelerate', 'brake']
    """
    game, problems = validated(Game, parse_toml(archetype_text(name), f"{name}.toml"))
    if game is None:
        raise BadInput(problems)
    return game
