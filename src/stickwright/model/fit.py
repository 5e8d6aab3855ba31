"""How one set-up fits one site, and what stands beside such a figure: what was assumed, doubted, or is to be minded."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from stickwright.codes.estimate import Estimate
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.setups import Setups
from stickwright.codes.to_confirm import ToConfirm

__all__ = ["Assumption", "Caution", "DirectionFit", "Doubt", "Fit"]


@dataclass(frozen=True)
class Assumption:
    """A number nobody measured, marked up to the printed page."""

    what: Text
    value: Text
    why: Text
    replace_by: Text
    """Which reading would replace it."""


@dataclass(frozen=True)
class Doubt:
    """A rule that is broken at figures nobody measured: it refuses nothing, and is to be confirmed."""

    rule: str
    """Which rule: 'reach', 'effort', 'unintended', 'touch', 'size', 'strength', 'force', 'landing', 'travel', 'busy'."""
    confirm: Text
    """What to measure or try."""
    text: Text
    """What the assumed figures say."""

    @property
    def sentence(self) -> Message:
        """Both, as a clause."""
        return message(ToConfirm.doubt, confirm=self.confirm, assumed=self.text)


@dataclass(frozen=True)
class Caution:
    """A usual caution, beside the number it belongs to."""

    about: str
    """Key of the number: 'effort', 'hold', 'force', 'site', 'false_input', 'session', 'dead zone'."""
    site: str | None
    text: Text


@dataclass(frozen=True)
class DirectionFit:
    """One set-up in one direction."""

    direction_rad: float
    reach_share: Estimate
    reach_travel_m: Estimate
    force_used_n: float
    """Push at the point reached."""
    needed_force_n: float
    """Push at the stop."""
    start_force_n: float
    available_force_n: float
    """The player's comfortable force at the centre."""
    effort_share: Estimate
    """Force at the game's usual level over comfortable force."""
    bits: Estimate
    """What can be told apart in this direction."""
    firm_force_n: float | None = None
    """The same force on something firm, where `available_force_n` is felt through a mount that flexes."""
    gain: float | None = None
    """To be set in this direction where the set-up fits with its range widened: worked out from the readings."""


@dataclass(frozen=True)
class Fit:
    """One set-up at one site: stick, topper, extension, tilt."""

    site: str
    stick: str
    topper: str | None
    extension: str | None
    tilt_rad: float
    contact_height_m: float
    lever_ratio: float
    start_force_n: float
    full_force_n: float
    travel_m: float
    stiffness_n_per_m: float
    returns_share: float
    """Share of the throw at which it stays by itself (0: comes home)."""
    directions: tuple[DirectionFit, ...]
    weakest_rad: float
    """The weakest of the directions that the game needs: its reach decides whether the set-up fits."""
    weakest_share: Estimate
    """Reach in that direction."""
    mean_share: float
    bits: Estimate
    """Weighted over directions, dead zone taken off."""
    effort_share: Estimate
    """At the game's usual level, in the direction of those it needs that asks the most."""
    duty_effort_limit: float
    """What tiring is counted against: acceptable share of comfortable force at the game's duty (Potvin 2012), and at least
    15 % of the largest force (Rohmert 1973)."""
    hold_s: Estimate
    hold_model: Text | None
    """Where the expected hold comes from; None where nothing tells it."""
    dead_zone_share: float
    """Of the throw: the smallest that keeps false input within the limit, or the largest allowed."""
    false_per_min: Estimate
    rest_deflection_share: float
    probability_best: float
    """Chance that this stick is the right one here: share of the draws in which it keeps every limit and is best or ties with
    the best."""
    verdict: Literal["fits", "fits with its range widened", "does not fit"]
    fails: tuple[Text, ...]
    """Each broken rule."""
    limit: Text
    """What limits it."""
    help: Text | None
    """The one change that would make it fit, with its figures; None when none does or none is needed."""
    kind: Literal["lever", "touch"] = "lever"
    base_m: tuple[float, float, float] | None = None
    """Length, width, height of the base."""
    mass_kg: float | None = None
    plug: str = ""
    current_a: float | None = None
    topper_form: str = ""
    single_player: bool = False
    """A part that touches face or mouth, kept for one player."""
    built_tilt_rad: float = 0.0
    """What is built under the base; `tilt_rad` counts the stick's own slope too."""
    impossible: bool = False
    """Whether no tuning could make it work here: the place is too small, a finger cannot lift, it does not come home."""
    doubts: tuple[Doubt, ...] = ()
    """Each rule that is broken only at figures nobody measured."""
    lever_note: Text | None = None
    """What a longer lever would do in the weakest direction, by the closed form."""
    setting: str = ""
    """How the stick is set, where it can be set in several ways."""
    how_to_set: str = ""
    crosswise: bool = False
    """Whether the base stands crosswise: its front to the player's left, its output turned a quarter turn anticlockwise."""
    crosswise_assumed: bool = False
    """Whether nobody has said that it can."""
    turns_output: str = ""
    """What turns the output then: "itself", "hub", "game", or words; empty when nobody has said."""
    fixed_to: str = ""
    """The controller to whose grip it is fixed."""
    worst_in: str = ""
    """The state of the player that these figures are of, where several were read: the one it does worst in."""

    @property
    def full_name(self) -> str:
        """The stick, with its setting in brackets where it can be set in several ways."""
        return f"{self.stick} ({self.setting})" if self.setting else self.stick

    @property
    def stands_m(self) -> tuple[float, float, float] | None:
        """The base as it stands: forward, across, height."""
        if self.base_m is None or not self.crosswise:
            return self.base_m
        return self.base_m[1], self.base_m[0], self.base_m[2]

    @property
    def weakest_of_all(self) -> DirectionFit:
        """The direction that reaches least, whether the game needs it or not."""
        return min(self.directions, key=lambda one: (round(one.reach_share.number, 9), one.available_force_n))

    @property
    def named(self) -> Message:
        """The set-up as a message: stick, then what is on it."""
        return message(
            Setups.named,
            stick=Name(self.full_name),
            topper=Name(self.topper) if self.topper else None,
            extension=Name(self.extension) if self.extension else None,
            raised_rad=self.built_tilt_rad,
        )
