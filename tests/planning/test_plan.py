"""The whole plan: the same answer from the same case, gaps told instead of crashed on, and laws."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import lru_cache
from typing import Any

import numpy as np
import pytest

import worked_cases
from said import place, said
from stickwright.catalogue import say
from stickwright.codes.message import Name, message
from stickwright.codes.next_readings import NextReadings
from stickwright.codes.setups import Setups
from stickwright.codes.stand_ins import StandIns
from stickwright.errors import BadInput
from stickwright.mechanics.site_inputs import Rules
from stickwright.model.case import Case
from stickwright.model.fit import Fit
from stickwright.model.game import Game
from stickwright.model.kit import Kit
from stickwright.model.plan import Plan
from stickwright.model.player import Player
from stickwright.model.recording import Recording
from stickwright.planning.plan import plan
from stickwright.planning.site_planning import judged_for, known_site

DRAWS = 60


def case(name: str = "rune", *, sites: list[dict[str, Any]] | None = None, game: dict[str, Any] | None = None) -> Case:
    """A worked case, or one with other sites or another game."""
    data = worked_cases.PLAYERS[name]
    return Case(
        name=name,
        player=Player.model_validate(data if sites is None else {**data, "site": sites}),
        kit=worked_cases.kit(toppers=False),
        game=Game.model_validate(game or worked_cases.GAMES[name]),
    )


def site(of: str = "rune", **changed: Any) -> dict[str, Any]:
    return {**worked_cases.PLAYERS[of]["site"][0], **changed}


@lru_cache
def rune() -> Plan:
    return plan(case(), draws=DRAWS)


def turned(data: dict[str, Any], degrees: float) -> dict[str, Any]:
    """Every direction that stands anywhere in it, turned."""
    out: dict[str, Any] = {}
    for key, value in data.items():
        if key == "direction_deg":
            out[key] = (value + degrees) % 360
        elif isinstance(value, dict):
            out[key] = turned(value, degrees)
        elif isinstance(value, list) and value and isinstance(value[0], dict):
            out[key] = [turned(one, degrees) for one in value]
        else:
            out[key] = value
    return out


class TestTheSameCaseGivesTheSamePlan:
    def test_twice(self) -> None:
        """Seeded: word for word and figure for figure."""
        again = plan(case(), draws=DRAWS)
        assert again == rune()

    def test_another_seed_differs_in_its_draws_only(self) -> None:
        """Another seed moves intervals and chances; the best single figures and the order stay."""
        other = plan(case(), draws=DRAWS, seed=7)
        assert other.seed == 7
        for one, two in zip(rune().sites[0].fits, other.sites[0].fits, strict=True):
            assert one.named == two.named
            assert one.bits.value == two.bits.value
        assert rune().sites[0].fits[0].bits.low != other.sites[0].fits[0].bits.low

    def test_the_order_of_directions_in_the_file_does_not_matter(self) -> None:
        """Read clockwise or anticlockwise, the player is the same."""
        mixed = site(reading=worked_cases.PLAYERS["rune"]["site"][0]["reading"][::-1])
        assert plan(case(sites=[mixed]), draws=DRAWS) == rune()


class TestLaws:
    @pytest.mark.parametrize("name", ["tove", "marit"])
    def test_turning_player_and_game_together_changes_nothing(self, name: str) -> None:
        """Player, resting force and game turned by 45 degrees: the same order, the same bits, the weakest direction turned."""
        straight = plan(case(name), draws=50).sites[0]
        data, game = turned(site(name), 45), turned(worked_cases.GAMES[name], 45)
        other = plan(case(name, sites=[data], game=game), draws=50).sites[0]
        assert [fit.named for fit in straight.fits] == [fit.named for fit in other.fits]
        for one, two in zip(straight.fits, other.fits, strict=True):
            assert two.bits.value == pytest.approx(one.bits.value, abs=1e-6)  # angles are kept to a microradian
            assert two.verdict == one.verdict
            assert two.dead_zone_share == one.dead_zone_share
        first, second = straight.fits[0], other.fits[0]
        assert math.remainder(second.weakest_rad - first.weakest_rad - math.pi / 4, 2 * math.pi) == pytest.approx(
            0, abs=1e-6
        )

    def test_a_larger_world_gets_the_same_answer(self) -> None:
        """Player, sticks and rooms three times as large and as strong: bits and effort are the same. (The rule of 3 mm of
        real travel is the one thing that does not grow, so a case is taken that does not lean on it.)"""

        def larger(data: Any, factor: float) -> Any:
            if isinstance(data, dict):
                lengths = ("_n", "_mm", "_m")
                return {
                    key: (
                        _scaled(value, factor)
                        if key.endswith(lengths) and not key.endswith(("_n_per_mm", "_n_per_m"))
                        else larger(value, factor)
                    )
                    for key, value in data.items()
                }
            return [larger(one, factor) for one in data] if isinstance(data, list) else data

        def _scaled(value: Any, factor: float) -> Any:
            return [v * factor for v in value] if isinstance(value, (list, tuple)) else value * factor

        kit = {
            "stick": [
                {
                    "name": name,
                    "contact_height_mm": h,
                    "start_force_n": start,
                    "full_force_n": full,
                    "travel_mm": travel,
                }
                for name, h, start, full, travel, *_ in worked_cases._STICKS[:4]
            ]
        }
        answers = []
        for factor in (1.0, 3.0):
            who = Player.model_validate({**worked_cases.PLAYERS["rune"], "site": [larger(site(), factor)]})
            some = Case("c", who, Kit.model_validate(larger(kit, factor)), case().game)
            answers.append(plan(some, draws=50).sites[0])
        small, large = answers
        assert [fit.stick for fit in small.fits] == [fit.stick for fit in large.fits]
        for one, two in zip(small.fits, large.fits, strict=True):
            assert two.bits.value == pytest.approx(one.bits.value, abs=0.02)  # the prior of a fingertip does not grow
            assert two.effort_share.value == pytest.approx(one.effort_share.value, rel=0.02)


class TestGaps:
    def test_a_site_the_team_has_not_cleared_is_left_out_and_said(self) -> None:
        """The treating team's no: not planned, and a note that says why."""
        chin = site("marit", cleared="no")
        told = plan(case(sites=[site(), chin]), draws=DRAWS)
        assert [one.name for one in told.sites] == ["right index"]
        (note,) = (finding for finding in told.findings if finding.about == "not_cleared")
        assert note.text == message(Setups.refused_by_team, site=Name("chin"))

    def test_with_no_site_left_nothing_is_asked_of_the_player(self) -> None:
        """All sites refused by the team: no plan, no reading asked for, no crash."""
        told = plan(case(sites=[site("marit", cleared="no")]), draws=DRAWS)
        assert told.sites == ()
        assert told.next_reading.sentence == message(NextReadings.no_site)
        assert told.next_reading.site is None
        assert told.sentence == message(Setups.nothing_planned)

    def test_a_site_that_is_still_to_be_cleared_is_planned_with_a_query(self) -> None:
        """Asked but not answered: planned, and the question stands beside it."""
        for cleared, asked in (("ask", True), (None, False)):
            told = plan(case("marit", sites=[site("marit", cleared=cleared)]), draws=DRAWS).sites[0]
            (query,) = (finding for finding in told.findings if finding.about == "clearance")
            assert query.level == "query"
            assert query.text == message(Setups.clearance, site=Name("chin"), asked=asked)

    def test_a_site_without_any_reading_is_a_fault_and_names_the_first_reading(self) -> None:
        """Nobody measured: the plan says so, and asks for four directions."""
        bare = {"name": "left foot", "part": "foot"}
        told = plan(case(sites=[bare]), draws=DRAWS)
        assert told.sites == ()
        (fault,) = told.findings
        assert (fault.level, fault.about) == ("fault", "no_force")
        assert fault.text == message(Setups.nothing_read, site=Name("left foot"))
        assert told.next_reading.what == "force"
        assert told.next_reading.site == "left foot"
        assert "at the left foot forward, right, left and back" in said(told.next_reading.sentence)

    def test_one_bare_site_does_not_stop_the_other(self) -> None:
        """The measured site is planned as if alone, the bare one is a fault."""
        told = plan(case(sites=[site(), {"name": "left foot", "part": "foot"}]), draws=DRAWS)
        assert told.sites == rune().sites
        assert [finding.about for finding in told.findings] == ["no_force"]

    def test_a_game_without_actions_asks_all_alike_and_marks_it(self) -> None:
        told = plan(case(game={"name": "anything"}), draws=DRAWS)
        assert told.sites[0].demand.action == ""
        assert any(one.why == message(StandIns.no_action_named) for one in told.assumptions)

    def test_nothing_fits_is_said_with_the_nearest_and_never_a_choice(self) -> None:
        """Idris: no choice, the nearest named with its reasons, coarse steering said, and no reading asked for."""
        told = plan(case("idris"), draws=DRAWS)
        (one,) = told.sites
        assert one.choice is None
        assert said(told.sentence).startswith("No stick in the kit fits the right fist. The nearest is rowan: ")
        assert all(fit.verdict == "does not fit" for fit in one.fits)
        assert any(finding.about == "coarse" for finding in one.findings)
        assert told.next_reading.enough
        assert "would not make a stick in this kit fit" in said(told.next_reading.sentence)
        assert "chosen stick" not in said(told.next_reading.sentence)

    def test_a_stick_that_stays_where_it_is_pushed_never_stands_first(self) -> None:
        """The best in bits, but worn: it stays at half its throw. The next one is chosen, not nothing."""
        kit = case().kit
        worn = [s.model_copy(update={"friction_force_n": 0.30}) if s.name == "cedar" else s for s in kit.stick]
        lighter = kit.stick[2].model_copy(update={"name": "cedar two", "start_force_n": 0.17})
        told = plan(replace(case(), kit=kit.model_copy(update={"stick": (*worn, lighter)})), draws=DRAWS).sites[0]
        assert told.choice is not None
        assert told.choice.stick == "cedar two"
        (cedar,) = (fit for fit in told.fits if fit.stick == "cedar")
        assert any(reason.text == "stays_off_centre" for reason in cedar.fails)
        assert cedar.probability_best == 0


class TestSites:
    def test_two_sites_for_one_action_are_ranked(self) -> None:
        """Weaker thumb after stronger index, in whatever order they were read; both are to do the same."""
        weak = [{**r, "force_n": [0.2 * f for f in r["force_n"]]} for r in site()["reading"]]
        thumb = site(name="left thumb", part="thumb", reading=weak)
        for sites in ([site(), thumb], [thumb, site()]):
            told = plan(case(sites=sites), draws=DRAWS)
            assert [one.name for one in told.sites] == ["right index", "left thumb"]
            assert {one.demand.action for one in told.sites} == {"pointer"}

    def test_sites_with_actions_of_their_own(self) -> None:
        """Move here, look there: each its own demand."""
        game = {
            "name": "g",
            "action": [
                {"name": "move", "kind": "two-axis", "duty_share": 0.6},
                {"name": "steer", "kind": "one-axis", "duty_share": 0.2},
            ],
        }
        told = plan(case(sites=[site(action="move"), site(name="left index", action="steer")], game=game), draws=DRAWS)
        demand = {one.name: one.demand for one in told.sites}
        assert demand["right index"].action == "move"
        assert demand["left index"].action == "steer"
        assert sum(weight > 0 for weight in demand["left index"].direction_weights) == 2

    def test_a_liked_stick_that_fits_is_named(self) -> None:
        """The player's word counts, and is repeated where it did not win."""
        told = plan(case(sites=[site(liked=["dew"])]), draws=DRAWS)
        assert "The player likes dew" in said(told.sentence)
        assert "does not fit" in said(told.sentence)
        assert "The player's wish counts" in said(told.sentence)

    def test_tilts_are_compared_only_when_the_slope_of_the_movement_is_known(self) -> None:
        """Without it the most level base is taken, wherever it stands in the list."""
        kit = case().kit.model_copy(update={"tilt_rad": (0.35, 0.0, 0.17)})
        level = plan(replace(case(), kit=kit), draws=DRAWS).sites[0]
        assert {fit.tilt_rad for fit in level.fits} == {0.0}
        sloped = plan(replace(case(sites=[site(movement_tilt_deg=60)]), kit=kit), draws=DRAWS).sites[0]
        assert sloped.tried == 3 * level.tried
        assert sloped.fits[0].tilt_rad == 0.35


class TestRecordings:
    @staticmethod
    def still() -> Recording:
        """Half a minute of keeping still on cedar: slow sway of 2 % of full output."""
        times = np.arange(1500) / 50
        noise = np.random.default_rng(1).standard_normal((1500 + 50, 2))
        sway = np.stack([np.convolve(noise[:, k], np.hanning(50), mode="same")[:1500] for k in (0, 1)], axis=1)
        xy = 0.02 * sway / sway.std(axis=0)
        return Recording("still.csv", times, xy, site="right index", stick="cedar", task="still")

    def test_what_was_recorded_is_not_asked_for_again(self) -> None:
        """Nobody typed the involuntary force: holding still is among the readings offered until it was recorded."""
        unread = {key: value for key, value in site().items() if key != "involuntary_force_n"}
        before = plan(case(sites=[unread]), draws=DRAWS)
        after = plan(replace(case(sites=[unread]), recordings=(self.still(),)), draws=DRAWS)
        assert "recording" in {what for _, _, what, _ in before.next_reading.ranked}
        assert "recording" not in {what for _, _, what, _ in after.next_reading.ranked}

    def test_an_assumed_limb_widens_the_force_that_was_recorded(self) -> None:
        """Force is movement times stick and limb together: with the limb's stiffness typed the interval is narrower, and
        without it the note says that it was not measured."""
        typed = {key: value for key, value in site().items() if key != "involuntary_force_n"}
        guessed = {key: value for key, value in typed.items() if key != "limb_stiffness_n_per_mm"}
        width, said = [], []
        for one in (typed, guessed):
            told = plan(replace(case(sites=[one]), recordings=(self.still(),)), draws=DRAWS).sites[0]
            force = told.capability.involuntary_force_n
            width.append(force.high / force.low)
            said.append(any(f.text.param("limb_assumed") for f in told.findings if f.about == "involuntary_force"))
        assert width[1] > 1.5 * width[0]
        assert said == [False, True]


class TestProgressAndRefusals:
    def test_progress_never_goes_back(self) -> None:
        """From 0 to 1, however many sites, and each is named."""
        told: list[tuple[str, float]] = []
        many = [{"name": f"site {k}", "part": "hand"} for k in range(40)]
        plan(case(sites=[site(), *many]), draws=DRAWS, progress=lambda what, share: told.append((what, share)))
        shares = [share for _, share in told]
        assert shares == sorted(shares)
        assert shares[0] == 0.0
        assert shares[-1] == 1.0
        assert told[0][0] == "right index"

    def test_all_problems_at_once(self) -> None:
        """Two sites, four names mistyped and one weight missing: one refusal with all of them, none twice."""
        wrong = site(
            action="pionter", toppers=["ducsh"],
            on_stick=[{"stick": "brich", "direction_deg": 0, "reached_share": 0.5}, {"stick": "oka", "tremor_mm": 0.2}],
        )  # fmt: skip
        with pytest.raises(BadInput) as refused:
            plan(case(sites=[wrong, site(name="left index", action="lok")]), draws=DRAWS)
        places = [(place(problem), problem.found) for problem in refused.value.problems]
        assert len(places) == len(set(places)) == 5
        assert ('player.toml, site "right index", on_stick, stick', '"brich"') in places
        assert ('player.toml, site "left index", action', '"lok"') in places
        assert "Did you mean 'birch'?" in str(refused.value)
        assert "Did you mean 'pointer'?" in str(refused.value)

    def test_a_recording_on_a_stick_that_the_kit_lacks_names_its_file(self) -> None:
        recording = Recording(
            "push.csv", np.arange(10) / 10, np.zeros((10, 2)), site="right index", stick="cedra", task="push"
        )  # fmt: skip
        with pytest.raises(BadInput, match="Did you mean 'cedar'") as refused:
            plan(replace(case(), recordings=(recording,)), draws=DRAWS)
        assert place(refused.value.problems[0]) == "push.csv, stick"

    def test_too_few_draws_are_refused(self) -> None:
        with pytest.raises(BadInput, match="expected 2 to 20,000"):
            plan(case(), draws=1)


class TestWords:
    """What a tired practitioner reads, over the five worked cases."""

    @staticmethod
    @lru_cache
    def texts(name: str) -> tuple[str, ...]:
        told = plan(case(name), draws=DRAWS)
        out = [told.sentence, told.next_reading.sentence]
        out += [caution.text for caution in told.cautions]
        out += [part for one in told.assumptions for part in (one.what, one.value, one.why, one.replace_by)]
        for one in told.sites:
            out += [one.sentence, *(finding.text for finding in (*one.findings, *one.capability.findings))]
            fits: tuple[Fit, ...] = (*one.fits, *one.alternatives)
            out += [text for fit in fits for text in (*fit.fails, fit.limit, fit.help, fit.lever_note)]
        return tuple(say(text) for text in out if text)

    @pytest.mark.parametrize("name", worked_cases.PLAYERS)
    def test_no_number_without_sense(self, name: str) -> None:
        """No 'nan', no infinity, no '100 %' sure, no bare per cent sign, no doubled stop."""
        for text in self.texts(name):
            for wrong in ("nan", "inf ", "None", "..", " ;", "  ", "by all the way", "chance of 100 %"):
                assert wrong not in text, (wrong, text)

    @pytest.mark.parametrize("name", worked_cases.PLAYERS)
    def test_what_nobody_measured_is_among_the_assumptions(self, name: str) -> None:
        """Half of maximal, straight fall-off, full throw at the usual level: in every one of the five, marked."""
        (action,) = worked_cases.GAMES[name]["action"]
        unsaid = {key: value for key, value in action.items() if key != "usual_level_share"}
        game = {**worked_cases.GAMES[name], "action": [unsaid]}
        whats = {one.what.text for one in plan(case(name, game=game), draws=DRAWS).assumptions}
        assert whats >= {"comfortable_share", "fall_off", "action_use"}

    def test_the_second_best_stands_beside_the_answer(self) -> None:
        """Joss: larch and hazel within a tie, said as such."""
        told = plan(case("joss"), draws=DRAWS)
        assert "Second choice: hazel" in said(told.sentence)
        assert "the same precision" in said(told.sentence) or "counts as equal" in said(told.sentence)

    def test_false_input_is_never_said_to_be_none(self) -> None:
        """A rate too small to print is still not 'none': the answer carries the upper end of its interval."""
        most = rune().sites[0].fits[0].false_per_min.high
        assert ("less than one unintended activation an hour" in said(rune().sentence)) == (60 * most < 0.5)
        assert "no unintended activation" not in " ".join(self.texts("rune"))


class TestTheWeakestOfAll:
    """A direction that the game hardly asks for: it does not decide, and it is told and can be read next."""

    @staticmethod
    @lru_cache
    def told(back: float) -> Plan:
        """A player who hardly moves back, and a game that hardly asks for it."""
        forces = {0: 1.6, 90: 1.5, 180: 1.6, 270: 0.3}
        readings = [
            {"direction_deg": phi, "force_n": [force, 1.1 * force], "reach_mm": [4 if phi == 270 else 14]}
            for phi, force in forces.items()
        ]
        one = case(sites=[site(reading=readings)], game=TestTheWeakestOfAll.lanes(back))
        return plan(one, draws=DRAWS)

    @staticmethod
    def lanes(back: float) -> dict[str, Any]:
        needs = [{"direction_deg": phi, "weight": back if phi == 270 else 1.0} for phi in (0, 90, 180, 270)]
        action = {"name": "pointer", "kind": "two-axis", "duty_share": 0.2, "direction": needs}
        return {"name": "lanes", "action": [action]}

    def test_it_is_told_in_the_answer(self) -> None:
        """By hand: every direction but back reaches further than back does; the answer names back with its share."""
        for weight, how in ((0.05, "hardly uses"), (0.0, "does not use")):
            best = self.told(weight).sites[0].fits[0]
            back = min(best.directions, key=lambda one: one.reach_share.value)
            assert back.direction_rad == pytest.approx(1.5 * math.pi)
            assert best.weakest_rad != back.direction_rad
            words = f"{100 * back.reach_share.value:.0f}% back, which the game {how}"
            assert words in said(self.told(weight).sites[0].sentence)

    def test_what_the_game_needs_decides_and_what_it_uses_can_be_read_next(self) -> None:
        """Weights 1, 1, 1 and a little: back decides no verdict; a reading there is worked out unless its weight is 0."""
        for weight, used in ((0.05, True), (0.0, False)):
            one = case(sites=[site()], game=self.lanes(weight))
            known = known_site(one, one.player.site[0], np.random.default_rng(1), 20, [])
            assert known is not None
            judged = judged_for(one, known, "pointer", Rules())
            back = int(np.argmin(np.abs(known.ability.direction_rad - 1.5 * math.pi)))
            assert not judged.inputs.needed[back]
            assert judged.used[back] == used


class TestEnough:
    """What a chance compares with what, and whose it is."""

    @staticmethod
    def only(*names: str, **more: Any) -> Case:
        one = case(**more)
        kept = tuple(stick for stick in one.kit.stick if stick.name in names)
        return replace(one, kit=one.kit.model_copy(update={"stick": kept}))

    def test_one_stick_in_the_kit_is_not_called_the_right_choice(self) -> None:
        """Nothing was compared with it: what has a chance is that it keeps every limit."""
        told = plan(self.only("birch"), draws=400)
        (fit,) = told.sites[0].fits
        fits = f"birch at the right index {'keeps every limit' if fit.verdict != 'does not fit' else ''}"
        assert fits in said(told.next_reading.sentence)
        assert "right one" not in said(told.next_reading.sentence)
        assert told.next_reading.chance_now == fit.probability_best

    def test_the_chance_says_what_was_compared(self) -> None:
        """Two sticks at one site: said as two, and the chance is the one that the ranking prints."""
        told = plan(self.only("birch", "cedar"), draws=DRAWS)
        assert "the right one of 2 sticks" in said(told.next_reading.sentence)
        assert told.next_reading.chance_now == told.sites[0].fits[0].probability_best

    def test_the_reading_is_for_the_site_in_question(self) -> None:
        """A sure thumb steers and a doubtful index looks: the answer is about the index, whatever comes first."""
        many = [{**one, "force_n": one["force_n"] * 6, "reach_mm": one["reach_mm"] * 3} for one in site()["reading"]]
        sure = site(name="left thumb", part="thumb", action="steer", reading=many)
        few = [{"direction_deg": 90, "force_n": [0.7], "reach_mm": [13]}]
        doubtful = site(reading=few, action="look", again_force_n=[])
        game = {"name": "two", "action": [{"name": "steer", "kind": "two-axis", "importance": 9, "duty_share": 0.2},
                                          {"name": "look", "kind": "two-axis", "importance": 2, "duty_share": 0.2}]}  # fmt: skip
        told = plan(case(sites=[sure, doubtful], game=game), draws=DRAWS)
        assert told.sites[0].name == "left thumb"
        assert "right index" in said(told.next_reading.sentence)
        assert "left thumb" not in said(told.next_reading.sentence)


class TestWhatSuits:
    """Toppers that suit the part, and the site for what the player wants most."""

    def test_a_chin_cup_is_not_offered_to_a_finger(self) -> None:
        """Common practice: cups are for chins and limbs. The plan says which forms were tried."""
        made = plan(worked_cases.case("tove"), draws=20)
        tried = {fit.topper_form for fit in (*made.sites[0].fits, *made.sites[0].alternatives)}
        assert "cup" not in tried
        assert "bar" not in tried
        assert any(one.what == message(StandIns.toppers, sites=(Name("right index"),)) for one in made.assumptions)

    def test_a_named_topper_is_offered_whatever_the_part(self) -> None:
        case = worked_cases.case("tove")
        site = case.player.site[0].model_copy(update={"toppers": ("soft cup",)})
        named = replace(case, player=case.player.model_copy(update={"site": (site,)}))
        made = plan(named, draws=20)
        levers = [fit for fit in made.sites[0].fits if fit.kind == "lever"]
        assert {fit.topper for fit in levers} == {"soft cup"}

    def test_the_site_of_the_more_wanted_action_comes_first(self) -> None:
        """A menu stick that fits better does not push the moving stick to the second page."""
        case = worked_cases.case("rune")
        site = case.player.site[0]
        strong = site.model_copy(update={"name": "left index", "action": "menu"})
        actions = (
            case.game.action[0].model_copy(update={"importance": 9}),
            case.game.action[0].model_copy(update={"name": "menu", "importance": 2, "direction": ()}),
        )
        both = replace(
            case,
            player=case.player.model_copy(update={"site": (strong, site.model_copy(update={"action": "pointer"}))}),
            game=case.game.model_copy(update={"action": actions}),
        )
        assert [one.name for one in plan(both, draws=20).sites] == ["right index", "left index"]
