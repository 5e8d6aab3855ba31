"""Every set-up against every draw: the compiled kernel, the false input, the laws."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import worked_cases
from plain_fits import plain_fit, random_site
from stickwright.errors import BadInput
from stickwright.mechanics.fit import ALWAYS, detail, evaluate, false_per_min, spasms_above_per_min
from stickwright.mechanics.setups import SetupArrays, at_contact, setups_of
from stickwright.mechanics.site_inputs import Rules, SiteInputs, central
from stickwright.model.kit import Kit

LEVERS = worked_cases.kit(toppers=False)


def site(force: list[float], reach_mm: list[float], **more: object) -> SiteInputs:
    """One draw, eight directions, steady hand."""
    weight = np.full(8, 1 / 8)
    plain = {
        "force_n": np.array([force]), "reach_m": np.array([reach_mm]) / 1e3, "weight": weight, "needed": weight > 0,
        "plane": np.ones((1, 8)), "level_share": 1.0, "rest_n": np.zeros(1), "involuntary_n": np.full(1, 0.01),
        "crossing_hz": np.full(1, 1.5), "limb_n_per_m": np.full(1, 50.0), "noise_share": 0.05, "fall_off": 1.0,
        "spasm_per_min": 0.0, "spasm_peak_n": (), "false_limit_per_min": 1.0,
    }  # fmt: skip
    return SiteInputs(**{**plain, **more})  # type: ignore[arg-type]


def levers_only() -> SetupArrays:
    every = setups_of(worked_cases.kit())
    return every.take(np.flatnonzero(~every.touch))


@pytest.mark.parametrize("seed", range(4))
def test_kernel_equals_a_plain_loop(seed: int) -> None:
    """The compiled, chunked fits against the same formulas one number at a time: equal to 1e-9. A plain copy of the formulas:
    it finds faults of compiling and chunking, not of the formulas."""
    rng = np.random.default_rng(seed)
    setups, rules = levers_only(), Rules()
    where = random_site(rng, 30, setups)
    found = evaluate(setups, where, rules, chunk=7)
    places = rng.choice(len(setups), 6, replace=False)
    drawn = detail(setups.take(places), where, found.dead_zone[places], rules)
    for row, place in enumerate(places):
        plain = plain_fit(int(place), float(found.dead_zone[place]), setups, where, rules)
        for name in ("weighted_bits", "weakest", "most_effort", "false_rate", "utility"):
            assert np.allclose(getattr(drawn, name)[row], getattr(plain, name), rtol=1e-9, atol=1e-9), name
        assert found.mean_utility[place] == pytest.approx(np.mean(plain.utility), rel=1e-9)
        assert found.utility[place] == pytest.approx(plain.utility[0], rel=1e-9)


def test_chunks_change_nothing() -> None:
    """Memory is bounded by chunks; the answer does not depend on them."""
    setups = levers_only()
    where = random_site(np.random.default_rng(1), 40, setups)
    small, large = evaluate(setups, where, chunk=3), evaluate(setups, where, chunk=10_000)
    assert np.array_equal(small.utility, large.utility)
    assert np.array_equal(small.stick_utility, large.stick_utility)


def test_the_best_single_figures_alone_give_the_same_figures() -> None:
    """Law: one draw of everything drawn, the first, and what is told of it is what all draws tell of the
    best single figures at the same dead zone."""
    setups = levers_only()
    where = replace(random_site(np.random.default_rng(2), 25, setups), static=None, static_doubt=None, stick_scale=None)
    one = central(where)
    drawn = ("force_n", "reach_m", "rest_n", "involuntary_n", "crossing_hz", "limb_n_per_m")
    assert [len(getattr(one, name)) for name in drawn] == [1] * 6
    every, alone = evaluate(setups, where), evaluate(setups, one)
    alike = every.dead_zone == alone.dead_zone  # it is chosen over all draws
    assert alike.mean() > 0.8
    for name in ("reach_share", "effort", "bits", "false_rate"):
        assert np.array_equal(getattr(every, name)[alike], getattr(alone, name)[alike]), name


# Reach and effort of the worked cases, as printed there (small angles, no toppers): stick, weakest share, mean share
TABLES = [
    ("tove", "ash", 0.00, 0.00), ("tove", "birch", 0.03, 0.18), ("tove", "cedar", 0.19, 0.38), ("tove", "dew", 0.42, 0.66),
    ("tove", "oak", 0.04, 0.11), ("rune", "ash", 0.32, None), ("rune", "birch", 0.79, None), ("rune", "cedar", 1.00, None),
    ("rune", "dew", 1.00, None), ("joss", "hazel", 1.00, None), ("joss", "elm", 1.00, None), ("joss", "larch", 0.72, None),
]  # fmt: skip


@pytest.mark.parametrize("name,stick,weakest,mean", TABLES)
def test_reach_of_the_worked_cases(name: str, stick: str, weakest: float, mean: float | None) -> None:
    """The worked cases print the share reached by the small-angle form; the exact lever is within 0.015 of it.

    Source: the worked cases (invented people, figures computed apart from this code)."""
    readings = worked_cases.PLAYERS[name]["site"][0]["reading"]
    force = [r["force_n"][1] for r in readings]
    reach = [r["reach_mm"][1] for r in readings]
    setups = setups_of(LEVERS)
    found = evaluate(setups, site(force, reach))
    place = [s.name for s in LEVERS.stick].index(stick)
    (row,) = np.flatnonzero(setups.stick == place)
    assert found.weakest[row] == pytest.approx(weakest, abs=0.015)
    if mean is not None:
        assert found.reach_share[row].mean() == pytest.approx(mean, abs=0.015)


def test_false_input_of_the_sway_examples() -> None:
    """Sway 0.07 N, 1.2 Hz: start force 0.24 N crosses 1.7 times a minute, with 10 % dead zone 0.45; 0.16 N 30 and 17.

    Source: Rice 1944-45, envelope form (from memory; figures computed apart and checked by simulation)."""
    edges = np.array([0.24, 0.24 + 0.1 * 0.28, 0.16, 0.16 + 0.1 * 0.19])
    rates = false_per_min(edges, np.zeros(4), np.full(4, 0.07), np.full(4, 1.2))
    assert rates == pytest.approx([1.7, 0.45, 30, 17], rel=0.05)


@pytest.mark.parametrize("u,m", [(2.5, 0.0), (2.5, 1.0), (3.0, 1.0)])
def test_false_input_against_simulation(u: float, m: float) -> None:
    """An independent route: count how often simulated 1 to 3 Hz noise about a resting force leaves the circle."""
    rng = np.random.default_rng(17)
    rate, seconds = 100.0, 6000
    n = int(rate * seconds)
    spectrum = np.fft.rfftfreq(n, 1 / rate)
    band = (spectrum > 1) & (spectrum < 3)
    noise = []
    for _ in range(2):
        z = np.zeros(len(spectrum), dtype=complex)
        z[band] = rng.standard_normal(band.sum()) + 1j * rng.standard_normal(band.sum())
        x = np.fft.irfft(z, n)
        noise.append(x / x.std())
    f0 = math.sqrt(np.mean(spectrum[band] ** 2))
    outside = np.hypot(noise[0] + m, noise[1]) > u
    counted = np.sum(outside[1:] & ~outside[:-1]) / seconds * 60
    told = float(false_per_min(np.array(u), np.array(m), np.array(1.0), np.array(f0)))
    assert told == pytest.approx(counted, rel=0.06)


@pytest.mark.parametrize("times", [0.03, 0.4, 5.0])
def test_false_input_goes_by_shares_of_the_sway(times: float) -> None:
    """Law: threshold, resting force and sway all so many times as large cross as often; at twice the frequency, twice as often."""
    u, m = np.array([2.5, 2.5, 3.0]), np.array([0.0, 1.0, 1.0])
    once = false_per_min(u, m, np.array(1.0), np.array(1.5))
    assert false_per_min(times * u, times * m, np.array(times), np.array(1.5)) == pytest.approx(once, rel=1e-12)
    assert false_per_min(u, m, np.array(1.0), np.array(3.0)) == pytest.approx(2 * once, rel=1e-12)


def test_resting_on_the_stick_is_always_on() -> None:
    """A resting force beyond the edge of the dead zone is input all the time, not a rare crossing."""
    assert float(false_per_min(np.array(0.2), np.array(0.35), np.array(0.01), np.array(1.5))) == ALWAYS
    assert float(false_per_min(np.array(0.2), np.array(0.1), np.array(0.0), np.array(1.5))) == 0.0


def test_spasms_by_their_peaks() -> None:
    """Four a minute, peaks 5, 10, 20 N: a third passes 15 N. One peak only is the highest seen."""
    assert spasms_above_per_min(np.array([15.0]), 4.0, (5.0, 10.0, 20.0)) == pytest.approx([4 / 3], rel=1e-12)
    assert spasms_above_per_min(np.array([0.0, 42.5, 90.0]), 4.0, (85.0,)) == pytest.approx([4, 2, 0], rel=1e-12)
    assert spasms_above_per_min(np.array([1.0]), 0.0, (85.0,)) == pytest.approx([0.0])


@settings(max_examples=40, deadline=None)
@given(turn=st.integers(1, 7), seed=st.integers(0, 50))
def test_turning_player_and_game_together_changes_nothing(turn: int, seed: int) -> None:
    """Law: the same player, turned, with the game's needs turned with them, gets the same bits from every stick."""
    rng = np.random.default_rng(seed)
    setups = setups_of(LEVERS)
    force, reach = np.exp(rng.normal(0, 0.5, 8)), 12 * np.exp(rng.normal(0, 0.3, 8))
    weight = rng.dirichlet(np.full(8, 2.0))
    one = evaluate(setups, site(list(force), list(reach), weight=weight, needed=weight > 0.05))
    other = evaluate(
        setups,
        site(
            list(np.roll(force, turn)),
            list(np.roll(reach, turn)),
            weight=np.roll(weight, turn),
            needed=np.roll(weight > 0.05, turn),
        ),
    )
    assert other.weighted_bits == pytest.approx(one.weighted_bits, rel=1e-12, abs=1e-12)
    assert np.array_equal(one.weakest, other.weakest)


@settings(max_examples=40, deadline=None)
@given(seed=st.integers(0, 200), more=st.floats(1.0, 3.0))
def test_a_stronger_player_reaches_no_less_on_any_stick(seed: int, more: float) -> None:
    """Law: more force never lowers reach, whatever the set-up."""
    rng = np.random.default_rng(seed)
    force, reach = np.exp(rng.normal(0, 0.8, 8)), 12 * np.exp(rng.normal(0, 0.4, 8))
    setups = levers_only()
    weak, strong = (evaluate(setups, site(list(f), list(reach))) for f in (force, more * force))
    assert np.all(strong.reach_share >= weak.reach_share - 1e-9)


def test_bent_fall_off_meets_the_same_balance() -> None:
    """With readings along the reach the fall-off may bend: power 1 by the general route equals the straight one."""
    setups = setups_of(LEVERS)
    force, reach = [0.9, 0.5, 1.4, 3.0, 0.3, 0.7, 1.0, 2.0], [12.0] * 8
    straight = evaluate(setups, site(force, reach))
    bent = evaluate(setups, site(force, reach, fall_off=1.0 + 1e-9))
    assert bent.reach_share == pytest.approx(straight.reach_share, abs=1e-7)
    kept = evaluate(setups, site(force, reach, fall_off=2.0))
    assert np.all(kept.reach_share >= straight.reach_share - 1e-9)


def test_extension_divides_force_and_multiplies_travel() -> None:
    """Law: twice the height, half the force, at the same angle; a massless extension keeps the work."""
    kit = Kit.model_validate(
        {
            "stick": [
                {"name": "s", "contact_height_mm": 20, "start_force_n": 0.4, "full_force_n": 1.0, "travel_mm": 8}
            ],
            "extension": [{"name": "+20", "length_mm": 20}],
        }
    )
    setups = setups_of(kit)
    assert setups.start_force_n[1] == pytest.approx(setups.start_force_n[0] / 2, rel=1e-12)
    assert setups.full_force_n[1] == pytest.approx(setups.full_force_n[0] / 2, rel=1e-12)
    assert setups.travel_m[1] == pytest.approx(2 * setups.travel_m[0], rel=1e-12)


def test_heavy_topper_sags_a_light_stick() -> None:
    """A topper's weight pulls outwards by m g h sin(theta): taken off the spring (statics)."""
    kit = worked_cases.kit()
    bare, topped = at_contact(kit, "dew", None, None), at_contact(kit, "dew", "peg", None)
    ratio = 57 / 45
    spring = (bare.full_force_n - bare.start_force_n) / ratio
    sag = 0.006 * 9.80665 * (0.045 + 0.006) * math.asin(9 / 45) / 0.057
    assert topped.full_force_n - topped.start_force_n == pytest.approx(spring - sag, rel=1e-9)


def test_tilt_costs_what_lies_out_of_the_plane() -> None:
    """Forward push on a stick turned 60 degrees out of the limb's plane: half the force, half the reach."""
    setups = setups_of(LEVERS)
    plane = np.ones((1, 8))
    plane[0, 2] = 0.5
    tilted = evaluate(setups, site([1.0] * 8, [12.0] * 8, plane=plane))
    halved = evaluate(setups, site([1.0, 1.0, 0.5, *[1.0] * 5], [12.0, 12.0, 6.0, *[12.0] * 5]))
    assert tilted.reach_share == pytest.approx(halved.reach_share, rel=1e-9)


def test_unknown_names_offer_the_nearest() -> None:
    """A name typed with a slip is answered with the nearest one."""
    kit = worked_cases.kit()
    with pytest.raises(BadInput, match="Did you mean 'birch'"):
        at_contact(kit, "brich", None, None)
    with pytest.raises(BadInput, match="Did you mean 'soft cup'"):
        setups_of(kit, toppers=("softcup",), site="chin")


def test_nothing_in_stock_is_said() -> None:
    """An empty van is a sentence, not a crash."""
    kit = Kit.model_validate(
        {
            "stick": [
                {
                    "name": "s",
                    "contact_height_mm": 20,
                    "start_force_n": 0.4,
                    "full_force_n": 1.0,
                    "travel_mm": 8,
                    "in_stock": 0,
                }
            ]
        }
    )
    with pytest.raises(BadInput, match="no stick in stock"):
        setups_of(kit)


def test_static_shortfall_keeps_a_set_up_out() -> None:
    """What no tuning mends (a finger that cannot lift) is never outvoted by bits."""
    setups = setups_of(LEVERS)
    static = np.where(setups.stick == 0, 20.0, 0.0)
    where = site([3.0] * 8, [20.0] * 8)
    free, barred = evaluate(setups, where), evaluate(setups, replace(where, static=static))
    assert free.utility[0] > 0
    assert barred.utility[0] < -1
    assert np.array_equal(free.utility[1:], barred.utility[1:])


def test_scaled_bessel_is_scipys() -> None:
    """The compiled series against scipy.special.i0e, from 0 far beyond what any stick asks: to 1e-12."""
    from scipy.special import i0e

    from stickwright.mechanics.fit_kernel import scaled_bessel

    x = np.concatenate([np.linspace(0, 8, 400), np.geomspace(8.0001, 1e5, 400)])
    assert np.array([scaled_bessel(one) for one in x]) == pytest.approx(i0e(x), rel=1e-12)


def test_a_stick_whose_output_is_full_half_way_need_only_be_pushed_half_way() -> None:
    """Electrical range used up at half the throw: as a stick with half the throw and the same spring."""
    whole = {"name": "s", "contact_height_mm": 20, "start_force_n": 0.4, "full_force_n": 1.0, "travel_mm": 8}
    stop = math.asin(8 / 20)
    half = {**whole, "full_force_n": 0.7, "travel_mm": 20 * math.sin(stop / 2)}
    early, short = (
        setups_of(Kit.model_validate({"stick": [stick]})) for stick in ({**whole, "full_output_share": 0.5}, half)
    )
    assert early.stop_rad == pytest.approx(short.stop_rad, rel=1e-12)
    assert early.full_force_n == pytest.approx(short.full_force_n, rel=1e-12)
    where = site([0.9] * 8, [9.0] * 8)
    assert evaluate(early, where).bits == pytest.approx(evaluate(short, where).bits, rel=1e-12)
