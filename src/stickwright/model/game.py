"""What the game asks, in the player's own action names."""

from __future__ import annotations

from typing import Annotated, Literal, get_args

from pydantic import Field

from stickwright.model.hub import Role
from stickwright.model.measured import Measured, Plausible

__all__ = ["DEAD_ZONE", "SENSITIVITY", "Action", "DirectionNeed", "Game", "Offer", "SettingsBefore"]

Offer = Literal["dead zone", "sensitivity", "curve", "rotation", "range"]
"""A setting that a game or console lets one change, as its file says it."""
DEAD_ZONE: Offer
SENSITIVITY: Offer
DEAD_ZONE, SENSITIVITY = get_args(Offer)[:2]

Share = Annotated[float, Plausible(0.0, 1.0)]
Price = Annotated[float, Field(ge=0, le=10)]


class DirectionNeed(Measured):
    """How much a direction matters, relative to the others."""

    direction_rad: Annotated[float, Plausible(-6.2832, 6.2832)]
    weight: Annotated[float, Plausible(0.0, 100.0)]


class Action(Measured):
    """One thing the player wants to do in the game."""

    name: str = Field(min_length=1)
    kind: Literal["two-axis", "one-axis", "trigger", "press", "hold", "repeat", "chord"]
    importance: Annotated[int, Field(ge=0, le=10)] = 5
    """What doing it is worth to the player, 0 to 10: the scale used for all costs."""
    duty_share: Share = 0.5
    """Share of the time in use."""
    usual_level_share: Share = 1.0
    """Usual deflection as a share of what the player can reach: 1 to run, 0.5 to walk."""
    longest_hold_s: Annotated[float, Plausible(0.0, 3600.0)] | None = None
    presses_per_s: Annotated[float, Plausible(0.0, 20.0)] | None = None
    """On average over play."""
    busy_presses_per_s: Annotated[float, Plausible(0.0, 20.0)] | None = None
    """In the busiest minute."""
    reaction_s: Annotated[float, Plausible(0.0, 60.0)] | None = None
    false_input_costly: bool = False
    levels: Annotated[int, Field(ge=2, le=100)] | None = None
    direction: tuple[DirectionNeed, ...] = ()
    """Weights; directions not named count as much as the nearest one named, all alike when none is."""
    together: tuple[str, ...] = ()
    """Actions that must be possible at the same time."""
    of: tuple[str, ...] = ()
    """The actions that a chord is made of."""
    input: Role | None = None
    """What the game listens to, in the words of the W3C Gamepad standard mapping; any when not said."""
    option: str | None = None
    """How the game itself can take all of it over."""
    option_price: Price | None = None
    option_words: str = ""
    toggle: str | None = None
    """How the game lets a press stand for a hold: once to start, once to stop."""
    toggle_price: Price | None = None
    helper: bool = True
    """Whether somebody else may do it."""
    helper_price: Price | None = None
    """What it costs the player, on the scale of importance; the player's independence when not said."""
    helper_words: str = ""
    """In the player's own words: "I want to steer myself"."""
    drop_price: Price | None = None
    """What going without costs, besides its importance; without a price it is not dropped."""
    drop_words: str = ""


class SettingsBefore(Measured):
    """What was set in the game for one stick before anything was changed, as read from its menu: what to undo to."""

    stick: str = Field(min_length=1)
    dead_zone_share: Share | None = None
    sensitivity_share: Annotated[float, Plausible(0.01, 10.0)] | None = None
    """1 is the 100 % of most menus."""
    words: str = ""
    """What else was set: "curve: linear"."""


class Game(Measured):
    """The game as this player wants to play it."""

    name: str = Field(min_length=1)
    """The player's word for it, not a title."""
    archetype: str = ""
    hours_per_week: Annotated[float, Plausible(0.1, 168.0)] | None = None
    """How long the player wishes to play it: the weight of this game among several."""
    session_s: Annotated[float, Plausible(60.0, 36000.0)] | None = None
    """How long this game is to be played in one go."""
    own_dead_zone_share: Share | None = None
    """Dead zone inside the game, share of the stick's output."""
    swaps_sticks: bool = False
    """Whether the game can exchange left and right stick."""
    remaps: bool = True
    """Whether game or console lets any button stand for any action."""
    offers: tuple[Offer, ...] = ()
    """Settings that the game or console lets you change."""
    settings_before: tuple[SettingsBefore, ...] = ()
    lag_budget_s: Annotated[float, Plausible(0.0, 1.0)] = 0.06
    action: tuple[Action, ...] = ()
