"""The control layout as a whole: how good it is, who does how much, what is to be looked at, which sites act together."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.inputs import Role
from stickwright.codes.message import Name, Text, Topic

__all__ = ["Layouts"]


class Layouts(Topic):
    """Sentences, unless said otherwise."""

    @abstractmethod
    def not_found(self) -> str:
        """Neither a layout nor a proof that there is none was found in time: what to do."""

    @abstractmethod
    def impossible(self) -> str:
        """No layout is possible, whatever is given up."""

    @abstractmethod
    def proven(self, *, score_points: float, clashed: bool) -> str:
        """No other layout scores higher; `clashed`: once the way out that costs least is taken."""

    @abstractmethod
    def unproven(self, *, score_points: float, bound_points: float, gap_points: float) -> str:
        """The best found in time, not proven: none can score higher than the bound."""

    @abstractmethod
    def done_by(self, *, actions: int, player: int, game: int, others: int, left_out: int, clashed: bool) -> str:
        """How many actions the player, the game and others do, and how many are left out; `clashed`: some requests cannot be met."""

    @abstractmethod
    def nobody_can(self, *, number: int, action: Name, nearest: Text | None) -> str:
        """The game's action of that number can be done by nobody: what to do."""

    @abstractmethod
    def same_stick(self, *, actions: tuple[Name, ...], role: Role) -> str:
        """Two actions would arrive as the same stick."""

    @abstractmethod
    def coarse(self, *, action: Name, site: Name, setup: Text, precision_bits: float) -> str:
        """Direction will be coarse: what to do instead."""

    @abstractmethod
    def try_together(self, *, first: Name, second: Name, first_site: Name, second_site: Name, why: Text) -> str:
        """Two actions that are needed at the same time, at sites that nobody tried together."""

    @abstractmethod
    def busy_site(self, *, site: Name, confirm: Text, busy_share: float, most_share: float) -> str:
        """Presses at an assumed rate would fill too much of the busiest minute at a site: what to measure."""

    @abstractmethod
    def clicks_unwanted(self, *, switches: tuple[Name, ...]) -> str:
        """Switches click although quiet is wanted."""

    @abstractmethod
    def clicks(self, *, switches: tuple[Name, ...]) -> str:
        """Switches click: whom that may disturb."""

    @abstractmethod
    def press_notes(self, *, site: Name, notes: tuple[Text, ...]) -> str:
        """What was not tried at a site that presses."""

    @abstractmethod
    def cables(self) -> str:
        """Caution: where cables run."""

    @abstractmethod
    def two_controllers(self) -> str:
        """Caution: two controllers act as one player."""

    @abstractmethod
    def stays_on(self, *, action: Name) -> str:
        """Caution: an action stays on until it is pressed again."""

    @abstractmethod
    def many_presses(self, *, action: Name, count_per_min: float) -> str:
        """Caution: many presses in the busiest minute."""

    @abstractmethod
    def same_limb(self, *, slowed_share: float) -> str:
        """Why two sites are taken to slow each other: same limb, not tried. A clause."""

    @abstractmethod
    def side_unsaid(self, *, sites: tuple[Name, ...]) -> str:
        """Why two sites are taken to act together: their side is not recorded. A clause."""

    @abstractmethod
    def different_limbs(self) -> str:
        """Why two sites are taken to act together: different limbs, not tried. A clause."""

    @abstractmethod
    def slows_unknown(self, *, slowed_share: float) -> str:
        """Said to slow each other; by how much was not counted. A clause."""

    @abstractmethod
    def load(self, *, why: Text, lost_share: float | None) -> str:
        """What strains a site most, and the share of force it lost over the visit. A clause."""

    @abstractmethod
    def load_unknown(self) -> str:
        """Nothing tells how soon the site tires. A clause."""

    @abstractmethod
    def load_busy(self, *, busy_share: float) -> str:
        """Presses fill such a share of the busiest minute. A clause."""

    @abstractmethod
    def load_press(self, *, action: Name, effort_share: float, count_per_min: float) -> str:
        """A press needs such a share of comfortable force, so often in the busiest minute. A clause."""

    @abstractmethod
    def load_stick(self, *, effort_share: float, duty_share: float) -> str:
        """A stick needs such a share of comfortable force for such a share of the time. A clause."""

    @abstractmethod
    def load_hold(self, *, action: Name, held_s: float, limit_s: float) -> str:
        """An action needs holds of such a length; the limit. A clause."""

    @abstractmethod
    def busy_basis(self, *, parts: tuple[Text, ...], busy_s: float) -> str:
        """What the busy share of a minute adds up from. A clause."""

    @abstractmethod
    def busy_held(self, *, action: Name, duty_share: float) -> str:
        """An action is held for such a share of the time. A clause."""

    @abstractmethod
    def busy_pressed(self, *, action: Name, count_per_min: float, cycle_s: float, move_s: float | None) -> str:
        """So many presses of such a time, and the time to get there. A clause."""

    @abstractmethod
    def at_once(self, *, sites: tuple[Name, ...]) -> str:
        """Name of an assumed answer: whether two sites can act at the same time."""

    @abstractmethod
    def pair_says(self, *, says: Literal["yes", "slows", "no"]) -> str:
        """Whether they can."""

    @abstractmethod
    def pair_confirm(self) -> str:
        """What replaces it: a test of both at once. A clause."""
