"""Why a set-up does not fit, in words and figures that can be worked out by hand; and changes that really help."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from one_site import EIGHT, Fitting, fitting, stick
from said import said
from stickwright.mechanics.explain import best_extensions, extension_note, weakest_place
from stickwright.mechanics.fit import evaluate


def fits_when(made: Fitting, **changed: object) -> bool:
    """Whether the first set-up keeps every rule with this changed."""
    inputs = replace(made.inputs, **changed)  # type: ignore[arg-type]
    return bool(evaluate(made.setups.take([0]), inputs, made.rules).shortfall[0] <= 0)


def said_extension(made: Fitting, place: int = 0) -> str:
    """What a longer lever would do, in words."""
    note = extension_note(made.setups, place, made.found, made.inputs, EIGHT)
    assert note is not None
    return said(note)


class TestTooStiff:
    def test_does_not_start(self) -> None:
        """0.24 N to start against 0.20 N forward."""
        made = fitting([stick()], force=[2, 2, 0.20, 2, 2, 2, 2, 2])
        assert made.fails().startswith(
            "too stiff forward: it takes 0.24 N to leave the centre, and the player has 0.20 N"
        )

    def test_does_not_get_there(self) -> None:
        """0.26 N and 5 mm forward against 0.35 N at the stop: x = (0.26 - 0.16)/(0.26/5 + 0.19/6.5) = 1.23 mm of 6.5,
        19 % by hand."""
        cedar = stick(start_force_n=0.16, full_force_n=0.35)
        made = fitting([cedar], force=[2, 2, 0.26, 2, 2, 2, 2, 2], reach_mm=[15, 15, 5, 15, 15, 15, 15, 15])
        text = made.fails()
        assert "too stiff forward: it takes 0.16 N to leave the centre and 0.35 N at full travel" in text
        assert "the player has 0.26 N at the centre and none at 5.0 mm" in text
        assert "so reaches 19% of its travel" in text

    def test_other_directions_are_named(self) -> None:
        """All but two too weak: named; all too weak: said in one; only four needed: 'needed' is said."""
        two = fitting([stick()], force=[0.2, 2, 0.2, 2, 0.2, 2, 2, 2])
        assert "; it also falls short forward and left" in two.fails()
        every = fitting([stick()], force=0.2)
        assert "it also falls short in every other direction" in every.fails()
        four = fitting([stick()], force=0.2, needed=(0, 2, 4, 6))
        assert "it also falls short in every other direction needed" in four.fails()

    def test_the_weakest_of_those_that_do_not_start_is_the_weakest_in_force(self) -> None:
        """None starts: the one to name is the one with the least force, not the first of the list."""
        made = fitting([stick()], force=[0.20, 0.19, 0.05, 0.2, 0.2, 0.2, 0.2, 0.2])
        assert made.fails().startswith(
            "too stiff forward: it takes 0.24 N to leave the centre, and the player has 0.050 N"
        )
        assert weakest_place(range(8), made.found.reach_share[0], made.inputs) == 2

    def test_a_softer_version_would_fit(self) -> None:
        """What is proposed is tried: the stick with the forces of the sentence keeps every rule, the stick itself not."""
        made = fitting([stick(start_force_n=0.48, full_force_n=1.05)], force=0.6, reach_mm=14)
        text = made.help()
        assert text.startswith("a softer version of this stick would fit: about ")
        start, full = (float(part.split(" N")[0].split()[-1]) for part in text.split("about ")[1].split(" and "))
        lighter = fitting([stick(start_force_n=start, full_force_n=full)], force=0.6, reach_mm=14)
        assert made.found.shortfall[0] > 0
        assert lighter.found.shortfall[0] <= 0.02
        nearly = fitting([stick(start_force_n=1.15 * start, full_force_n=1.15 * full)], force=0.6, reach_mm=14)
        assert nearly.found.shortfall[0] > 0.05  # no lighter than need be


class TestTravelTooLong:
    def test_reach_not_force_limits(self) -> None:
        """Strong and short: 5 mm of reach against a stop at 24 mm."""
        long = stick(contact_height_mm=60, travel_mm=24)
        made = fitting([long], force=5.0, reach_mm=5)
        text = made.fails()
        assert text.startswith("travel too long ")
        assert (
            "full travel is 24 mm, and the player gets to 4.7 mm (19%); movement range is the limit, not force" in text
        )
        assert "too stiff" not in text

    def test_a_longer_lever_would_lower_it(self) -> None:
        """The closed form, by hand: L* = Fs/F + sqrt((Fs/F)^2 + (Ff - Fs) d/(F T)) = 0.048 + sqrt(0.0023 + 0.0117) = 0.17."""
        made = fitting([stick(contact_height_mm=60, travel_mm=24)], force=5.0, reach_mm=5)
        text = said_extension(made)
        assert "a longer lever would reduce the travel reached" in text
        assert "best lever ratio 0.17" in text

    def test_a_longer_lever_is_called_neither_better_nor_worse_where_it_hardly_matters(self) -> None:
        """Best ratio between 1.00 and 1.05: no claim either way."""
        for reach in np.linspace(6, 12, 61):
            made = fitting([stick(full_force_n=0.9)], force=0.75, reach_mm=float(reach))
            text = said_extension(made)
            (_, ratio, _), *_ = best_extensions(made.setups, 0, made.inputs, EIGHT)
            if ratio <= 1:
                assert "would reduce" in text
            elif ratio <= 1.05:
                assert "would hardly change" in text
            else:
                assert "extension" in text

    def test_what_is_added_to_an_extension_is_called_further(self) -> None:
        """With 8 mm on already, the best extension is one more."""
        made = fitting([stick()], force=0.5, reach_mm=25, extension=[{"name": "+8", "length_mm": 8}])
        plain, longer = (said_extension(made, k) for k in (0, 1))
        assert "the best shaft extension" in plain
        assert "the best further shaft extension" in longer


class TestTooTiring:
    def test_effort_over_half(self) -> None:
        """0.52 N of 0.9 N is 58 %, with the time in use beside it."""
        text = fitting([stick()], force=0.9, reach_mm=60, duty=0.9).fails()
        assert "too tiring" in text
        assert "it needs 58% of comfortable force (limit 50%)" in text
        assert "uses the stick 90% of the time" in text

    def test_just_over_the_limit_is_not_printed_as_the_limit(self) -> None:
        """50.2 % against 50 % would read as a contradiction."""
        text = fitting([stick()], force=0.52 / 0.502, reach_mm=60).fails()
        assert "it needs just over 50% of comfortable force (limit 50%)" in text

    def test_what_does_not_start_is_too_stiff_and_not_too_tiring(self) -> None:
        """0.24 N to start, 0.2 N to give: said once, whatever the time in use, 0 % of it as well."""
        for duty in (0.0, 0.6):
            text = fitting([stick()], force=0.2, reach_mm=60, duty=duty).fails()
            assert "too stiff right: it takes 0.24 N to leave the centre, and the player has 0.20 N" in text
            assert "tiring" not in text
            assert "of the time" not in text

    def test_half_the_usual_level_asks_less(self) -> None:
        """Walking, not running: (0.24 + 0.14)/0.9 = 42 % is allowed."""
        assert fitting([stick()], force=0.9, reach_mm=60, level=0.5).fails() == ""


class TestTooLight:
    def test_involuntary_movement_passes(self) -> None:
        """Sway of 0.1 N on a stick of 0.24 to 0.52 N: some pass the largest dead zone, edge 0.24 + 0.4 * 0.28 = 0.352 N."""
        made = fitting([stick()], involuntary=0.12)
        assert "too light: involuntary movement (0.12 N rms) gets past a dead zone of 40% (0.35 N)" in made.fails()
        assert "times a minute (limit 1)" in made.fails()

    def test_halving_it_would_help_and_does(self) -> None:
        """The support that halves the movement, tried."""
        made = fitting([stick()], involuntary=0.12)
        assert made.help() == "a support at the nearer joint that halves the involuntary movement would make it fit"
        assert fits_when(made, involuntary_n=made.inputs.involuntary_n / 2)
        assert not fits_when(made)

    def test_as_strong_as_the_stick_is_always_on(self) -> None:
        text = fitting([stick()], involuntary=0.5).fails()
        assert "is about as strong as the stick even with a dead zone of 40% (0.35 N), so it would always be on" in text

    def test_a_resting_limb_keeps_it_deflected(self) -> None:
        """Rest 0.060 N on 0.025 N to start and 9.4 N/m: (0.060 - 0.025)/0.00944 = 3.7 mm, 41 % of 9 mm."""
        dew = stick(contact_height_mm=45, start_force_n=0.025, full_force_n=0.11, travel_mm=9)
        made = fitting([dew], rest=0.060, involuntary=0.008)
        assert "the resting force (0.060 N) holds it 3.7 mm off centre (41% of its travel)" in made.fails()
        assert made.help() == "a support that takes the limb's weight (resting force 0.060 N now) would make it fit"
        assert fits_when(made, rest_n=np.zeros(1))

    def test_a_supported_limb_needs_more_support(self) -> None:
        dew = stick(contact_height_mm=45, start_force_n=0.025, full_force_n=0.11, travel_mm=9)
        assert "more of the limb's weight" in fitting([dew], rest=0.060, involuntary=0.008, supported=True).help()

    def test_a_heavy_limb_lies_at_the_stop(self) -> None:
        """Rest beyond the full force: all the way, and grammatical."""
        assert "holds it at full travel" in fitting([stick()], rest=0.9).fails()

    def test_a_stiffer_version_would_fit(self) -> None:
        """Where no support does: a firmer stick, as firm as the sentence says, keeps the rules."""
        made = fitting([stick(start_force_n=0.10, full_force_n=0.20)], force=8.0, reach_mm=40, involuntary=0.1)
        text = made.help()
        assert text.startswith("a stiffer version of this stick would fit: about ")
        start, full = (float(part.split(" N")[0].split()[-1]) for part in text.split("about ")[1].split(" and "))
        firmer = fitting([stick(start_force_n=start, full_force_n=full)], force=8.0, reach_mm=40, involuntary=0.1)
        assert firmer.found.shortfall[0] <= 0.1

    def test_spasms_are_told_apart_from_sway(self) -> None:
        """Spasms of 20 N pass every dead zone, three a minute; a quiet hand otherwise. A software gate is what helps."""
        made = fitting([stick()], spasm_per_min=3.0, spasm_peak_n=(15.0, 20.0, 25.0))
        assert "spasms get past a dead zone of 40% (0.35 N) 3.0 times a minute" in made.fails()
        assert made.help() == "a filter in the software that fades out spasms would make it fit"
        assert fits_when(made, spasm_per_min=0.0)

    def test_spasms_too_weak_to_pass_are_not_blamed(self) -> None:
        """Spasms of 0.1 N stay inside the dead zone: what passes is the sway."""
        text = fitting([stick()], involuntary=0.12, spasm_per_min=60.0, spasm_peak_n=(0.05, 0.1)).fails()
        assert "spasms" not in text
        assert "involuntary movement" in text


class TestWhatNothingMends:
    PAD = {"name": "slate", "kind": "touch", "start_force_n": 0.02, "full_force_n": 0.02, "travel_mm": 20}  # noqa: RUF012

    @pytest.mark.parametrize("can_lift,words", [(False, "cannot lift off"), (None, "nobody has tried whether")])
    def test_touch(self, can_lift: bool | None, words: str) -> None:
        """A touch surface needs a finger that lifts, and somebody who has seen it."""
        made = fitting([self.PAD], can_lift=can_lift, reach_mm=40)
        assert made.fails().startswith("touch surface: ")
        assert words in made.fails()
        assert fitting([self.PAD], can_lift=True, reach_mm=40).fails() == ""

    def test_base_too_large(self) -> None:
        """54 x 50 mm on 60 x 45 mm: no, either way round; on 50 x 60 it goes turned."""
        assert "too large: its base is 54 × 50 mm, the free space 60 × 45 mm" in fitting(
            [stick()], room_m=(0.060, 0.045)
        ).fails()  # fmt: skip
        assert fitting([stick()], room_m=(0.050, 0.060)).fails() == ""
        cannot = fitting([stick(crosswise=False)], room_m=(0.050, 0.060)).fails()
        assert "too large: its base is 54 × 50 mm, the free space 50 × 60 mm" in cannot

    def test_does_not_come_home(self) -> None:
        """Friction 0.2 N over preload 0.04 N, spring 0.28 N over the throw: it stays at 0.16/0.28 = 57 %."""
        made = fitting([stick(friction_force_n=0.20)])
        assert "does not return to centre: left alone, it stays at 57% of its travel" in made.fails()


def test_a_set_up_that_fits_has_no_failures_and_needs_no_help() -> None:
    made = fitting([stick()], force=2.0, reach_mm=15)
    assert made.fails() == ""
    assert made.help() == ""


def test_directions_the_game_could_do_without() -> None:
    """Nothing mends a short reach back on a stick that cannot be lighter; the game without back would do, tried."""
    made = fitting(
        [stick(contact_height_mm=60, travel_mm=24, start_force_n=0.3, full_force_n=0.9)],
        force=3.0, reach_mm=[60, 60, 60, 60, 60, 60, 4, 60],
    )  # fmt: skip
    assert made.help() == "it would fit if the game did not need back"
    needed = made.inputs.needed.copy()
    needed[6] = False
    assert fits_when(made, needed=needed)


def test_effort_to_the_left_is_not_effort_left_over() -> None:
    """Which way is said with a verb, so that 'effort left' cannot be misread."""
    made = fitting([stick()], force=[3, 3, 3, 3, 1.2, 3, 3, 3], reach_mm=60)
    assert made.limit() == "effort: pushing left needs 43% of comfortable force at the game's usual deflection"


def test_what_limits_a_widened_set_up_names_the_widening() -> None:
    """Half the throw: widened 2.0 times, in the tuning."""
    made = fitting([stick(full_force_n=0.4)], force=3.0, reach_mm=[15, 15, 3.7, 15, 15, 15, 15, 15])
    assert made.fails() == ""
    assert "forward" in made.limit()
    assert "set the sensitivity in that direction to " in made.limit()


class TestBehindAMount:
    def test_both_forces_are_named_where_a_mount_flexes(self) -> None:
        """0.76 N read, 0.66 N felt through the mount: the table's figure and the one judged by stand together."""
        made = fitting([stick(start_force_n=0.36, full_force_n=0.69, travel_mm=18)], force=0.66, reach_mm=6.4)
        made = replace(made, inputs=replace(made.inputs, firm_force_n=np.full(8, 0.76)))
        assert "the player has 0.66 N through the flex of its mount (0.76 N without it) at the centre" in made.fails()
        heavy = fitting([stick(start_force_n=0.70, full_force_n=0.99)], force=0.66, reach_mm=6.4)
        heavy = replace(heavy, inputs=replace(heavy.inputs, firm_force_n=np.full(8, 0.76)))
        assert "the player has 0.66 N through the flex of its mount (0.76 N without it)" in heavy.fails()

    def test_a_flex_too_small_to_show_is_not_told(self) -> None:
        """Both print as 0.20 N: one figure."""
        made = fitting([stick()], force=0.20)
        made = replace(made, inputs=replace(made.inputs, firm_force_n=np.full(8, 0.2001)))
        assert "flex" not in made.fails()
