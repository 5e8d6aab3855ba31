"""The technical pages: the answer first, then what it rests on."""

from __future__ import annotations

from abc import abstractmethod
from typing import Literal

from stickwright.codes.message import Name, Text, Topic

__all__ = ["Figure", "TechnicalPages"]

Figure = Literal[
    "demand", "size", "force", "effort", "hold", "unintended", "rest", "extension", "resting_force", "involuntary_force",
    "crossing", "stiffness", "push_scatter", "reading_scatter", "force_lost",
]  # fmt: skip


class TechnicalPages(Topic):
    """Labels, cells and sentences. Figures with intervals are told already."""

    @abstractmethod
    def chosen(self, *, fits: bool) -> str:
        """Label: the set-up chosen, or the nearest, which does not fit."""

    @abstractmethod
    def labelled(self, *, label: Text, setup: Text) -> str:
        """A label in front of a set-up."""

    @abstractmethod
    def headline(self, *, setup: Text, site: Name, verdict: Text) -> str:
        """Which set-up at which site, and whether it fits."""

    @abstractmethod
    def none_computed(self) -> str:
        """In its place: there is no set-up."""

    @abstractmethod
    def second(self, *, setup: Text, verdict: Text, limit: Text) -> str:
        """The second best, whether it fits, what limits it."""

    @abstractmethod
    def figure(self, *, figure: Figure) -> str:
        """Label of a figure. Of a set-up: what the game asks, size, force, predicted effort, longest hold, unintended
        activations, deflection at rest, shaft extension. Of a site: resting force, involuntary force, how often it crosses
        its mean, limb stiffness, scatter of a steady push and of a reading of force, force lost from first to last reading."""

    @abstractmethod
    def size(
        self, *, contact: Text | None, travel: Text, base_m: tuple[float, ...], crosswise: bool, mass: Text | None,
        plug: Name | None, current: Text | None,
    ) -> str:  # fmt: skip
        """Height of the contact point above the pivot (None: a touch surface), travel each way, base (empty: not measured),
        mass, plug, current."""

    @abstractmethod
    def force(self, *, start: Text, full: Text) -> str:
        """Actuation force, and force at full travel."""

    @abstractmethod
    def effort(self, *, effort: Text, all_of_it: bool, limit_share: float) -> str:
        """Effort as a share of comfortable force (`all_of_it`: more than there is), and the limit for this share of time."""

    @abstractmethod
    def hold(self, *, hold: Text, model: Text) -> str:
        """How long it can be held, by which curve or reading."""

    @abstractmethod
    def unintended(self, *, rate: Text, dead_zone_share: float) -> str:
        """Unintended activations a minute with a dead zone."""

    @abstractmethod
    def at_rest(self, *, deflected_share: float, stays_share: float) -> str:
        """How far the limb's resting force holds it off centre, and how far it stays off centre when let go (0: not at all)."""

    @abstractmethod
    def demand(
        self, *, action: Name | None, duty_share: float, level_share: float, hold: Text | None, limit_per_min: float
    ) -> str:
        """What the game asks: action (None: any), share of the time, usual deflection, longest hold, unintended activations allowed."""

    @abstractmethod
    def asks(self, *, demand: Text, weakest_rad: float) -> str:
        """What the game asks of a further site, as a sentence, and where that site is weakest."""

    @abstractmethod
    def predicted_reach(self, *, rank: int) -> str:
        """Head of a column: predicted share of travel on the set-up of that rank."""

    @abstractmethod
    def resting_force(self, *, direction_rad: float | None) -> str:
        """Label: the limb's resting force, and where it pulls."""

    @abstractmethod
    def crossing_caption(self) -> str:
        """Under the chart of force against travel: what the crossings mean; the numbers are ranks."""

    @abstractmethod
    def ranking_caption(self) -> str:
        """Under the bars of precision: interval, hatching."""

    @abstractmethod
    def tried(self, *, setups: int) -> str:
        """How many set-ups were computed; shown is the best of each stick."""

    @abstractmethod
    def fit_line(
        self,
        *,
        setup: Text,
        verdict: Text,
        weakest_rad: float,
        weakest: Text,
        bits: Text,
        rate: Text,
        helps: Text | None,
    ) -> str:
        """A set-up in a line: verdict, predicted travel in the weakest direction, bits, unintended activations, what helps."""

    @abstractmethod
    def extensions(self, *, parts: tuple[Text, ...]) -> str:
        """The best length of the lever for reach alone, by `extension`."""

    @abstractmethod
    def extension(self, *, direction_rad: float, length_m: float, longer: bool) -> str:
        """Clause: for a direction, so much longer or shorter."""

    @abstractmethod
    def enough(self, *, enough: bool) -> str:
        """Heading: enough is measured for this choice, or the next reading."""

    @abstractmethod
    def reading(self, *, what: Text, direction_rad: float | None, site: Name, chance_share: float) -> str:
        """A reading that could be taken, and the chance of the best choice after it."""

    @abstractmethod
    def no_tuning(self) -> str:
        """There is no recording to tune from; what to record."""

    @abstractmethod
    def numbers_of(self, *, game: Name) -> str:
        """With several games: where what to type stands, and of which game the figures here are."""

    @abstractmethod
    def no_recording(self) -> str:
        """No recording was made at this site."""

    @abstractmethod
    def recording(self, *, recording: Name, task: Name, time_s: float, rate_hz: float, stick: Name | None) -> str:
        """A recording: name, task, length, samples a second, stick."""

    @abstractmethod
    def facts(self, *, facts: tuple[Text, ...]) -> str:
        """What a recording told, in a line."""

    @abstractmethod
    def least_reach(self, *, direction_rad: float, area: Text) -> str:
        """Clause: where it got least far, and the area covered."""

    @abstractmethod
    def tremor(self, *, told: Text, size: Text | None, axis: Text | None) -> str:
        """Clause: a tremor with its size (rms); `axis`: the line along which it is strongest, of three axes."""

    @abstractmethod
    def late(self, *, lag: Text) -> str:
        """Clause: how late it follows a target."""

    @abstractmethod
    def throughput(self, *, throughput: Text) -> str:
        """Clause: throughput in aiming, bits a second."""

    @abstractmethod
    def unused(self) -> str:
        """Headline of a site where a stick fits, but this plan uses none."""

    @abstractmethod
    def site_headline(self, *, setup: Text, verdict: Text) -> str:
        """Headline of a further site."""

    @abstractmethod
    def made(
        self,
        *,
        made_on: Name | None,
        version: Name,
        case: Name,
        visit: Name | None,
        simulations: int,
        seed: int,
        mark: Text,
    ) -> str:
        """Last lines: day, version, case, visit, simulations, confidence, mark of what was not measured, who comes first."""
