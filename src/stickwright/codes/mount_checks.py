"""Whether something holds: load against limit, with the safety factor there is and the one required."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Message, Name, Topic

__all__ = ["CheckName", "MountChecks", "Side", "Thing"]

Thing = Name | Literal["base", "tray", "lap_tray"]
"""What slides or tips: by its own name, or what it is."""
Side = Literal["right", "left", "forward", "back"]
CheckName = Literal[
    "joint", "neck_foot", "neck_bow", "clamp", "sliding", "tipping", "fastener_shear", "fastener_tension", "fastener_peel",
    "rating", "release", "tray", "lap_tray", "stability", "give", "level", "edge", "reach", "tilt", "width",
]  # fmt: skip
"""What is checked."""


class MountChecks(Topic):
    """One check each."""

    @abstractmethod
    def named(self, *, what: CheckName, number: int) -> str:
        """A check as the label of a row; `number` counts the joints from the clamp, 0 where there is only one."""

    @abstractmethod
    def joint(
        self, *, what: CheckName, number: int, load_nm: float, push_n: float, held_nm: float, safety_factor: float | None,
        required_factor: float, lets_go: bool,
    ) -> str:  # fmt: skip
        """A joint under weight and push; factor None: nothing loads it; `lets_go`: it fails, and is meant to."""

    @abstractmethod
    def clamp(
        self, *, load_nm: float, held_nm: float, safety_factor: float | None, required_factor: float, lets_go: bool
    ) -> str:
        """A clamp that could turn on its tube; `lets_go`: it does, on purpose."""

    @abstractmethod
    def lacks_clamp(self) -> str:
        """Clause: at what moment a clamp turns is not known."""

    @abstractmethod
    def sliding(
        self, *, thing: Thing, load_n: float, grip_n: float, safety_factor: float | None, required_factor: float
    ) -> str:
        """Push against friction."""

    @abstractmethod
    def tipping(
        self, *, thing: Thing, push_n: float, height_m: float, load_nm: float, kept_nm: float, safety_factor: float | None,
        required_factor: float,
    ) -> str:  # fmt: skip
        """Moment of the push against that of the weight."""

    @abstractmethod
    def fastener(
        self, *, mode: Literal["fastener_shear", "fastener_tension"], fastener: Name, push_n: float, height_m: float, long_m: float,
        short_m: float, load_pa: float, strength_pa: float, safety_factor: float | None, required_factor: float,
        larger: Message | None,
    ) -> str:  # fmt: skip
        """Stress in a patch of fastener against its strength; `larger`, a sentence: the patch that it would take."""

    @abstractmethod
    def fastener_standing(
        self, *, fastener: Name, standing_n: float, long_m: float, short_m: float, load_pa: float, strength_pa: float,
        safety_factor: float | None, required_factor: float,
    ) -> str:  # fmt: skip
        """The weight on a slope, that never ends, against a tenth of the strength."""

    @abstractmethod
    def peel(
        self, *, fastener: Name, push_n: float, height_m: float, long_m: float, short_m: float, load_n_per_m: float,
        strength_n_per_m: float, safety_factor: float | None, required_factor: float, larger: Message | None,
    ) -> str:  # fmt: skip
        """Pull at the edge of a patch, for each unit of its length."""

    @abstractmethod
    def larger_patch(
        self, *, long_m: float, short_m: float, base_long_m: float | None, base_short_m: float | None, fits: bool
    ) -> str:
        """Which patch a push would take, and whether the base has room for it. A sentence."""

    @abstractmethod
    def fastened(self, *, thing: Thing) -> str:
        """A tray that is clamped or bolted: nothing to calculate."""

    @abstractmethod
    def rating(self, *, thing: Thing, carried_kg: float, rated_kg: float) -> str:
        """Mass carried against the maker's rating."""

    @abstractmethod
    def lap_tray(self, *, limit_n: float, hardest_n: float) -> str:
        """A tray on the lap takes light pushes only."""

    @abstractmethod
    def unknown(
        self, *, what: CheckName, number: int, load_nm: float | None, load_n: float | None, load_pa: float | None, push_n: float,
        lacks: Message, light: bool,
    ) -> str:  # fmt: skip
        """A limit that nobody knows: one of the loads is given, the push, what is not known; `light`: the push is small enough anyway."""

    @abstractmethod
    def lacks_friction(self) -> str:
        """Clause: friction is not known, and how to find out."""

    @abstractmethod
    def lacks_mass(self, *, thing: Thing) -> str:
        """Clause: a loose tray was not weighed."""

    @abstractmethod
    def lacks_lap_mass(self) -> str:
        """Clause: the tray on the lap was not weighed."""

    @abstractmethod
    def lacks_stand(self, *, mount: Name) -> str:
        """Clause: size or mass of a stand or board is not known."""

    @abstractmethod
    def lacks_strength(self, *, fastener: Name) -> str:
        """Clause: nobody read the label of a fastener."""

    @abstractmethod
    def lacks_joint(self) -> str:
        """Clause: what a joint holds is not known."""

    @abstractmethod
    def release_ask(self, *, low_nm: float) -> str:
        """The clinic has not agreed a release force; the least moment."""

    @abstractmethod
    def release_none(self, *, low_nm: float, limit_n: float, high_nm: float) -> str:
        """No setting of the release both carries its load and lets go at the clinic's limit."""

    @abstractmethod
    def release_between(self, *, low_nm: float, high_nm: float, limit_n: float, against_n: float | None) -> str:
        """Between what moments to set the release; `against_n`: what a push against the weight needs even so, where that is too much."""

    @abstractmethod
    def release_too_weak(self, *, most_n: float, needed_n: float) -> str:
        """The coupling cannot be set high enough to carry its load."""

    @abstractmethod
    def release_too_strong(self, *, least_n: float, allowed_n: float) -> str:
        """The coupling cannot be set low enough."""

    @abstractmethod
    def stability(self, *, side: Side, added_nm: float, keeps_nm: float) -> str:
        """Clause: the moment that a mount adds, of the one that keeps the chair from tipping to a side."""
