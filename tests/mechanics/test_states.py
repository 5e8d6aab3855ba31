"""A site read in several states: supported and not, fresh and tired. All players are invented."""

from __future__ import annotations

import math
from dataclasses import fields, replace
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from said import said
from stickwright.errors import BadInput
from stickwright.mechanics.fit import Evaluated
from stickwright.mechanics.states import played, states_of, worst_of
from stickwright.model.case import Case
from stickwright.model.game import Game
from stickwright.model.kit import Kit
from stickwright.model.plan import SitePlan
from stickwright.model.player import Player, Site
from stickwright.planning.plan import plan
from stickwright.planning.states import play_block_s

DRAWS = 40
LIGHT = {"name": "elm", "contact_height_mm": 16, "start_force_n": 0.1, "full_force_n": 0.25, "travel_mm": 4}
FIRM = {"name": "oak", "contact_height_mm": 16, "start_force_n": 0.5, "full_force_n": 1.0, "travel_mm": 4}


def readings(force_n: float, reach_mm: float = 8.0, of: tuple[int, ...] = (0, 90, 180, 270)) -> list[dict[str, Any]]:
    return [
        {"direction_deg": deg, "force_n": [force_n, 1.02 * force_n, 0.98 * force_n], "reach_mm": [reach_mm]}
        for deg in of
    ]


def thumb(*under: dict[str, Any], force_n: float = 3.0, **more: Any) -> dict[str, Any]:
    return {
        "name": "left thumb", "part": "thumb", "reading": readings(force_n), "rest": [{"force_n": [0.01, 0.012, 0.011]}],
        "involuntary_force_n": 0.04, "crossing_hz": 1.5, "under": list(under), **more,
    }  # fmt: skip


def planned(site: dict[str, Any], **kit: Any) -> SitePlan:
    case = Case(
        name="invented",
        player=Player.model_validate({"code": "Q1", "site": [site]}),
        kit=Kit.model_validate({"stick": [FIRM, LIGHT], **kit}),
        game=Game.model_validate(
            {"name": "a road", "action": [{"name": "steer", "kind": "two-axis", "importance": 5}]}
        ),
    )
    (made,) = plan(case, draws=DRAWS).sites
    return made


class TestWhatAStateHolds:
    def test_own_readings_first_and_the_rest_carried_over(self) -> None:
        """One direction read again at 0.6 of its force: the other three are taken at 0.6 too, and that is said."""
        site = Site.model_validate(
            thumb(
                {
                    "condition": "tired",
                    "kind": "tiredness",
                    "reading": readings(1.8, of=(90,)),
                    "involuntary_force_n": 0.3,
                }
            )
        )
        own, tired = states_of(site)
        assert own.site is site
        forces = {round(math.degrees(one.direction_rad)): one.force_n[0] for one in tired.site.reading}
        assert forces == pytest.approx({0: 1.8, 90: 1.8, 180: 1.8, 270: 1.8})
        assert tired.site.involuntary_force_n == 0.3
        assert tired.site.rest == site.rest
        (assumed,) = tired.assumptions
        assert assumed.value.param("force_share") == pytest.approx(0.6)

    @given(
        factor=st.floats(0.1, 3.0),
        read=st.lists(st.sampled_from([0, 90, 180, 270]), min_size=1, max_size=4, unique=True),
    )
    def test_a_state_that_changes_all_alike_is_known_from_any_direction(self, factor: float, read: list[int]) -> None:
        """Law: where all directions change by one factor, it does not matter which of them are read again."""
        again = {"condition": "tired", "reading": readings(3.0 * factor, of=tuple(read))}
        _, state = states_of(Site.model_validate(thumb(again)))
        assert sorted(round(math.degrees(one.direction_rad)) for one in state.site.reading) == [0, 90, 180, 270]
        for one in state.site.reading:
            assert one.force_n[0] == pytest.approx(3.0 * factor)

    def test_a_direction_that_was_never_read_is_refused(self) -> None:
        """States can be compared only where both were read."""
        site = Site.model_validate(thumb({"condition": "tired", "reading": readings(2.0, of=(45,))}))
        with pytest.raises(BadInput, match="forward-right"):
            states_of(site)

    def test_who_plays_decides(self) -> None:
        """Readings without the support that the player always has do not count; with nothing else, they do."""
        unsupported = {"condition": "no support", "kind": "support", "plays": False, "reading": readings(1.0)}
        assert [state.name for state in played(Site.model_validate(thumb(unsupported)))] == [""]
        first = thumb({"condition": "wedge", "kind": "support", "reading": readings(3.0)}, plays_so=False)
        assert [state.name for state in played(Site.model_validate(first))] == ["wedge"]
        alone = thumb(unsupported, plays_so=False)
        assert [state.name for state in played(Site.model_validate(alone))] == [""]


def test_the_worst_state_is_taken_set_up_by_set_up() -> None:
    """By hand: the first set-up is worse in the second state, the second in the first; a stick in a draw has the least."""

    def found(mean: list[float], stick: list[list[float]]) -> Evaluated:
        figures = {field.name: np.zeros(2) for field in fields(Evaluated)}
        return Evaluated(**figures | {"mean_utility": np.array(mean), "stick_utility": np.array(stick)})

    one, two = found([2.0, 1.0], [[2.0, 3.0], [1.0, 0.5]]), found([1.5, 1.8], [[1.5, 3.5], [1.8, 0.2]])
    both, worst = worst_of([one, two])
    assert worst.tolist() == [1, 0]
    assert both.mean_utility.tolist() == [1.5, 1.0]
    assert both.stick_utility.tolist() == [[1.5, 3.0], [1.0, 0.2]]
    alone, first = worst_of([one])
    assert alone is one
    assert first.tolist() == [0, 0]


class TestThePlan:
    def test_the_state_that_the_player_will_play_in_decides(self) -> None:
        """A thumb of 3 N chooses the firm stick; tired at 0.6 N it could not push it, so the light one is chosen for both."""
        tired = {"condition": "tired", "kind": "tiredness", "after_min": 40, "reading": readings(0.6)}
        fresh, both = planned(thumb()), planned(thumb(tired))
        assert fresh.choice is not None
        assert both.choice is not None
        assert fresh.choice.stick == "oak"
        assert both.choice.stick == "elm"
        never = planned(thumb({**tired, "plays": False}))
        assert never.choice is not None
        assert never.choice.stick == "oak"
        assert any("does not fit" in said(one.text) for one in never.findings if one.about == "state")

    def test_a_state_that_changes_nothing_changes_nothing(self) -> None:
        """Law: the same readings once more under another name leave the choice and its figures."""
        same = {"condition": "after food", "kind": "food", "reading": readings(3.0)}
        once, twice = planned(thumb()), planned(thumb(same))
        assert once.choice is not None
        assert twice.choice is not None
        assert twice.choice.named == once.choice.named
        assert twice.choice.weakest_share.value == pytest.approx(once.choice.weakest_share.value)
        (own, again) = twice.states
        assert again.force_change_share == pytest.approx(0.0, abs=1e-9)
        assert again.fit.bits.value == pytest.approx(own.fit.bits.value)

    def test_what_support_brings_is_told_in_steps_and_per_cent(self) -> None:
        """From 1.0 N without to 3.0 N with the wedge: two hundred per cent more, in steps that can be told apart."""
        wedge = {
            "condition": "wedge under the hand",
            "kind": "support",
            "reading": readings(3.0),
            "involuntary_force_n": 0.05,
        }
        made = planned(thumb(wedge, force_n=1.0, condition="no support", plays_so=False))
        (text,) = [told for one in made.findings if one.about == "state" and "steps" in (told := said(one.text))]
        assert text.startswith("Wedge under the hand: 200% more force than no support")
        assert "steps that can be told apart" in text

    def test_no_force_above_the_ceiling_is_counted_on(self) -> None:
        """Law: a strong thumb under a ceiling of 0.6 N is judged like a thumb of 0.6 N in its choice, and is warned."""
        capped = planned(thumb(force_ceiling_n=0.6, force_ceiling_why="the hand closes"))
        assert capped.choice is not None
        assert capped.choice.stick == "elm"
        assert all(one.available_force_n <= 0.6 + 1e-9 for one in capped.choice.directions)

    def test_a_forbidden_topper_is_never_offered(self) -> None:
        """Neither by name nor by form."""
        toppers = {
            "topper": [
                {"name": "ball", "form": "ball", "height_mm": 0},
                {"name": "dish", "form": "dish", "height_mm": 0},
            ]
        }
        for word in ("ball", "dish"):
            made = planned(thumb(forbidden_toppers=[word]), **toppers)
            assert all(fit.topper_form != word for fit in (*made.fits, *made.alternatives))


@pytest.mark.parametrize(
    ("change", "after_min", "block_min"),
    [(-0.19, 40, 20), (-0.10, 30, 30), (-0.9, 10, 5), (-0.01, 60, 45), (0.05, 30, None), (-0.2, 0, None)],
)
def test_play_blocks_by_hand(change: float, after_min: float, block_min: float | None) -> None:
    """0.81 is 0.9 squared: a tenth is lost in half of the 40 minutes. Ends of 5 and 45 minutes: common practice, no source."""
    block_s = play_block_s(change, 60.0 * after_min)
    assert (None if block_s is None else block_s / 60) == (None if block_min is None else pytest.approx(block_min))


def test_cautions_name_the_ceiling_and_the_grip() -> None:
    """Both stand on page one and beside the force, in the words that were typed."""
    site = thumb(
        force_ceiling_n=1.5, force_ceiling_why="the hand closes", forbidden_grip="pinch between thumb and finger"
    )
    case = Case(
        name="invented", player=Player.model_validate({"code": "Q1", "site": [site], "note": "Ask about the new splint."}),
        kit=Kit.model_validate({"stick": [LIGHT]}), game=Game.model_validate({"name": "a road"}),
    )  # fmt: skip
    made = plan(replace(case), draws=DRAWS)
    told = " ".join(said(one.text) for one in made.cautions)
    assert "No more than 1.5 N at the left thumb (the hand closes)." in told
    assert "Not at the left thumb: pinch between thumb and finger." in told
    assert any(one.text == "Ask about the new splint." for one in made.findings)
