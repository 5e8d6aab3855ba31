"""Units: one factor for each, and numbers as people read them."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stickwright.catalogue import book
from stickwright.catalogue.writer import GAP
from stickwright.units import QUANTITIES, ending_of, quantity_of, split_key, to_si, units_of


@pytest.mark.parametrize(
    "value,ending,si",
    [
        (1.0, "gf", 9.80665e-3),
        (1.0, "kgf", 9.80665),
        (1.0, "lb", 4.4482216152605),
        (1.0, "oz", 0.27801385095378125),
        (1.0, "inch", 0.0254),
        (180.0, "deg", math.pi),
        (1.0, "mn", 0.001),
        (250.0, "ms", 0.25),
        (30.0, "per_min", 0.5),
        (1.0, "gf_per_mm", 9.80665),
        (1.0, "oz_per_inch", 10.945427202904),
        (2.0, "mnm_per_rad", 0.002),
        (500.0, "ma", 0.5),
    ],
)
def test_factors(value: float, ending: str, si: float) -> None:
    """Standard gravity 9.80665 m/s2 (3rd CGPM 1901), pound 0.45359237 kg and inch 25.4 mm (1959), all exact; the products
    worked out apart to as many digits as are printed."""
    assert to_si(value, ending) == pytest.approx(si, rel=1e-12)


def test_every_quantity_shows_a_unit_that_it_has_and_counts_in_si() -> None:
    """No quantity without its SI unit, none shown in a unit that is not its own, no ending twice."""
    endings = [unit.ending for quantity in QUANTITIES.values() for unit in quantity.units]
    assert len(endings) == len(set(endings))
    for quantity in QUANTITIES.values():
        assert quantity.unit(quantity.si).factor == 1.0
        assert quantity.unit(quantity.shown).label


@given(value=st.floats(1e-6, 1e6), ending=st.sampled_from(["gf", "oz", "mm", "deg", "per_min", "n_per_mm"]))
def test_converting_is_a_plain_factor(value: float, ending: str) -> None:
    """Law: twice the number is twice the quantity, and nothing is nothing."""
    assert to_si(2 * value, ending) == pytest.approx(2 * to_si(value, ending), rel=1e-12)
    assert to_si(0.0, ending) == 0.0


def test_the_longest_ending_counts() -> None:
    """stiffness_n_per_mm is not millimetres, and rate_per_min is not minutes."""
    assert split_key("stiffness_n_per_mm") == ("stiffness", "n_per_mm")
    assert split_key("presses_per_min") == ("presses", "per_min")
    assert split_key("limb_stiffness_mnm_per_rad") == ("limb_stiffness", "mnm_per_rad")
    assert quantity_of("presses_per_min") is QUANTITIES["rate"]
    assert quantity_of("archetype") is None
    assert units_of("archetype") == ("archetype",)
    assert "force_gf" in units_of("force_oz")


def test_a_key_without_a_unit_has_no_ending() -> None:
    """Asked for the unit of a name, the package says so."""
    with pytest.raises(KeyError, match="name ends in no unit"):
        ending_of("name")


@pytest.mark.parametrize(
    "value,ending,words",
    [
        (0.26, "n", "0.26 N"),
        (0.0266, "n", "0.027 N"),
        (104.2, "n", "104 N"),
        (0.0, "n", "0 N"),
        (-0.034, "n", "-0.034 N"),
        (0.0123, "mm", "12 mm"),
        (0.0038, "mm", "3.8 mm"),
        (math.pi / 4, "deg", "45°"),
    ],
)
def test_numbers_as_people_read_them(value: float, ending: str, words: str) -> None:
    """Two digits that matter, and the unit beside them."""
    assert book().writer.amount(value, ending).replace(GAP, " ") == words


@given(value=st.floats(1e-4, 1e4))
def test_numbers_said_are_near_what_is_meant(value: float) -> None:
    """Law: what is printed is within half a step of its second digit, five per cent at most, of what was worked out."""
    assert float(book().writer.amount(value, "n").split()[0].replace(",", "")) == pytest.approx(value, rel=0.0501)
