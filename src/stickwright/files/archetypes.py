"""Ten kinds of game to start from: usual actions with middle-of-the-road figures from general knowledge.

They are data, in ``starter/games``, meant to be written over; none is a particular game.
"""

from __future__ import annotations

from importlib import resources

from stickwright.codes.game_warnings import GameWarnings
from stickwright.codes.message import message
from stickwright.errors import BadInput, Problem, did_you_mean
from stickwright.files.toml_lines import parse_toml
from stickwright.files.validation_errors import validated
from stickwright.model.game import Game

__all__ = ["ARCHETYPES", "archetype", "archetype_named", "archetype_text", "usual_prices"]

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
        where, expected = message(GameWarnings.game_type), message(GameWarnings.a_known_type)
        raise BadInput(Problem(where, f'"{name}"', expected, did_you_mean(name, ARCHETYPES)))
    return (resources.files("stickwright.files") / "starter" / "games" / f"{known}.toml").read_text(encoding="utf-8")


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


_PRICES = {"option": "option_price", "helper": "helper_price", "dropped": "drop_price", "toggle": "toggle_price"}


def usual_prices(game: Game) -> frozenset[tuple[str, str]]:
    """Prices of a game that are those of its kind, action by action: nobody is known to have stated them.

    Examples
    --------
    >>> sorted(usual_prices(archetype("racing")))[:2]
    [('accelerate', 'helper'), ('accelerate', 'option')]
    """
    kind = archetype_named(game.archetype)
    if kind is None:
        return frozenset()
    usual = {action.name: action for action in archetype(kind).action}
    return frozenset(
        (action.name, how)
        for action in game.action
        if action.name in usual
        for how, field in _PRICES.items()
        if getattr(action, field) is not None and getattr(action, field) == getattr(usual[action.name], field)
    )
