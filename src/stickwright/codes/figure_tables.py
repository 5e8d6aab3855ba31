"""The figures of a sheet as tables and sentences: for those who cannot see them."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic
from stickwright.codes.reports import Verdict

__all__ = ["Benched", "Column", "FigureTables", "RangeFrom", "Status", "Step"]

Column = Literal[
    "direction", "comfortable_force", "movement_range", "sufficient", "readings", "setup", "actuation_force", "full_force",
    "player_has", "meet", "of_travel", "verdict", "weakest", "effort", "unintended", "bits", "best", "limit", "step", "setting",
    "deflection", "output", "recording", "sideways", "fore_and_aft", "what", "value",
]  # fmt: skip
Status = Literal["enough", "nearly", "not enough", "not measured"]
"""How well the force in a direction is known."""
Step = Literal["centre", "rotation", "range", "dead_zone", "curve", "filter", "outer_limit"]
RangeFrom = Literal["rim", "push", ""]
"""What the reach was recorded in: the task along the edge, full pushes, or not stated."""
Benched = Literal[
    "actuation_force", "full_force", "friction", "travel", "contact_height", "angle", "full_output", "dead_travel",
]  # fmt: skip


class FigureTables(Topic):
    """Captions, heads of columns, cells, and each figure in a sentence. Figures are told already, with their intervals."""

    @abstractmethod
    def column(self, *, column: Column) -> str:
        """Head of a column. `sufficient`: whether the readings of force suffice; `readings`: how many of force and of
        movement range; `meet`: where the player's force and the stick's meet, predicted; `of_travel`: that as a share of
        travel; `unintended`: predicted unintended activations a minute at a dead zone; `best`: chance to be best or as
        good."""

    @abstractmethod
    def direction(self, *, direction_rad: float) -> str:
        """A direction, in a cell."""

    @abstractmethod
    def best_note(self, *, tie_bits: float) -> str:
        """What the chance beside each stick means, and by how much another has to be better."""

    @abstractmethod
    def rested(self) -> str:
        """Which day the forces are of."""

    @abstractmethod
    def other_day(self, *, direction_rad: float, low: Text, high: Text, own: bool) -> str:
        """The same, and what the weakest force may be on another day (95% interval); `own`: by the player's own visits, not
        assumed."""

    @abstractmethod
    def status(self, *, status: Status) -> str:
        """Whether the readings of force in a direction suffice."""

    @abstractmethod
    def counts(self, *, force: int, reach: int) -> str:
        """How many readings of force and of movement range."""

    @abstractmethod
    def ability(self, *, site: Name) -> str:
        """Caption: force and movement range at a site."""

    @abstractmethod
    def ability_alt(
        self, *, site: Name, directions: int, weakest_rad: float, force: Text, reach: Text, strongest_rad: float, strongest: Text
    ) -> str:  # fmt: skip
        """The two polar charts: weakest direction with its force and range, strongest with its force."""

    @abstractmethod
    def none_computed(self, *, site: Name) -> str:
        """In place of a figure's sentence: there is no set-up."""

    @abstractmethod
    def reach(self, *, site: Name) -> str:
        """Caption: predicted share of travel reached."""

    @abstractmethod
    def reach_alt(
        self, *, setup: Text, site: Name, weakest_rad: float, weakest: Text, mean_share: float, second: Text | None
    ) -> str:
        """The polygon of travel reached: the best set-up, where it is weakest, its mean, the second set-up."""

    @abstractmethod
    def meets(self, *, travel: Text, force: Text) -> str:
        """A cell: at which travel, with which force."""

    @abstractmethod
    def crossing(self, *, site: Name) -> str:
        """Caption: where the player's force and the stick's meet."""

    @abstractmethod
    def crossing_alt(self, *, site: Name, directions_rad: tuple[float, ...], best: Text | None) -> str:
        """Force against travel: what the lines mean; then `best_crossing`."""

    @abstractmethod
    def best_crossing(self, *, direction_rad: float, setup: Text, reached: Text, travel: Text, force: Text) -> str:
        """Where they meet on the best set-up, of how much travel, with which force."""

    @abstractmethod
    def ranking(self, *, site: Name) -> str:
        """Caption: the sticks ranked."""

    @abstractmethod
    def verdict(self, *, verdict: Verdict, confirm: bool) -> str:
        """Whether a set-up fits; `confirm`: only at figures nobody measured."""

    @abstractmethod
    def weakest(self, *, direction_rad: float, share: Text) -> str:
        """A cell: weakest direction, and the share of travel reached there."""

    @abstractmethod
    def at_dead_zone(self, *, rate: Text, dead_zone_share: float) -> str:
        """A cell: unintended activations a minute at a dead zone."""

    @abstractmethod
    def chance(self, *, chance_share: float) -> str:
        """A cell: a chance."""

    @abstractmethod
    def ranking_alt(
        self, *, sticks: int, site: Name, first: Text, bits: Text, chance_share: float, second: Text | None
    ) -> str:
        """The bars of precision: the first, its bits and chance; then `second`."""

    @abstractmethod
    def second(self, *, setup: Text, bits: Text) -> str:
        """Clause: the second in the ranking, with its bits."""

    @abstractmethod
    def more_than_all(self) -> str:
        """Effort: more than all of the comfortable force."""

    @abstractmethod
    def tuning(self, *, stick: Name, site: Name) -> str:
        """Caption: the whole tuning."""

    @abstractmethod
    def tuning_alt(self, *, stick: Name, site: Name) -> str:
        """That table in a sentence."""

    @abstractmethod
    def step(self, *, step: Step) -> str:
        """A step of the tuning; `range`: the sensitivity by direction; `outer_limit`: the outer dead zone."""

    @abstractmethod
    def centre(self, *, centre: Text) -> str:
        """Where the stick rests; that is taken off."""

    @abstractmethod
    def no_rotation(self, *, base: Text) -> str:
        """The output is not turned; what to do with the base."""

    @abstractmethod
    def rotation(self, *, turned: Text, until_turned: bool, base: Text) -> str:
        """How far the output is turned (`until_turned`: until the base is); what to do with the base."""

    @abstractmethod
    def dead_zone(self, *, radius: Text, starts_share: float, game_share: float | None) -> str:
        """Radius; where the output starts, just above the dead zone of the game's own (None: not because of that)."""

    @abstractmethod
    def radius(self, *, radius: Text, why: Text | None) -> str:
        """Radius of the dead zone as a share of full output, and what set it."""

    @abstractmethod
    def sensitivity(self, *, recorded: RangeFrom, parts: tuple[Text, ...]) -> str:
        """In what the reach was recorded; `widened` for some directions, `others` for the rest."""

    @abstractmethod
    def sensitivity_unknown(self) -> str:
        """Not set: reach is not known in every direction."""

    @abstractmethod
    def widened(self, *, direction_rad: float, reached: Text, gain_factor: float) -> str:
        """How far a direction reached, and its sensitivity."""

    @abstractmethod
    def others(self, *, all_round: bool, least_share: float, most_share: float, gain_factor: float) -> str:
        """How far the other (or all) directions reached, and their sensitivity at most."""

    @abstractmethod
    def curve(self, *, stick: Name) -> str:
        """Caption: the response curve."""

    @abstractmethod
    def curve_alt(self, *, stick: Name, dead_zone: Text, starts_share: float, told: Text) -> str:
        """The response curve: from the dead zone outwards, where the output starts, and why it is as it is."""

    @abstractmethod
    def stage(self, *, stage: Literal["before", "after"]) -> str:
        """Before or after the tuning: in a cell, above a chart."""

    @abstractmethod
    def before_after(self, *, recording: Name) -> str:
        """Caption: a recording before and after the tuning."""

    @abstractmethod
    def before_after_alt(self, *, recording: Name, stick: Name, target: bool) -> str:
        """The chart of that, with the target where there was one."""

    @abstractmethod
    def rest(self) -> str:
        """Label of a row: where the stick rests."""

    @abstractmethod
    def reach_in(self, *, direction_rad: float) -> str:
        """Label of a row: deflection reached in a direction."""

    @abstractmethod
    def recording(self, *, recording: Name) -> str:
        """Caption: a recording."""

    @abstractmethod
    def recording_alt(self, *, recording: Name, time_s: float, weakest: Text | None) -> str:
        """The chart of a recording, then `weakest_reach`; None where no task shows reach."""

    @abstractmethod
    def weakest_reach(self, *, direction_rad: float, reached: Text) -> str:
        """Clause: the weakest direction, and how far the stick got there."""

    @abstractmethod
    def bench(self, *, stick: Name) -> str:
        """Caption: a benched stick."""

    @abstractmethod
    def benched(self, *, figure: Benched) -> str:
        """Label of a figure of the bench: `angle` of the shaft at the end stop; `full_output`: where the output is full;
        `dead_travel`: how far it moves without output."""

    @abstractmethod
    def of_travel(self, *, share: Text) -> str:
        """A share of travel."""

    @abstractmethod
    def bench_alt(self, *, stick: Name, used: int, readings: int, start: Text, full: Text, returns: Text) -> str:
        """The chart of a bench: readings used, actuation force, force at full travel, whether it returns to centre."""
