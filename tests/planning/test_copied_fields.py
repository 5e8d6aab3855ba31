"""What one noun says as another does goes over whole: a field that both have, and that nobody copies, is found here."""

from __future__ import annotations

from dataclasses import fields, replace
from typing import Any

import numpy as np

from one_site import fitting, stick
from stickwright.mechanics.verdict import AS_LISTED, WORKED_OUT, fits_of
from stickwright.model.fit import Fit
from stickwright.model.kit import Controller, HousingFlat, Kit, Stick, StickSetting
from stickwright.model.player import Site
from stickwright.planning.site_planning import OF_THE_CONTROLLER, with_controllers
from stickwright.trace.sensing import FiniteSamples

CONTROLLER: dict[str, Any] = {
    "name": "wren", "contact_height_m": 0.014, "start_force_n": 0.2, "full_force_n": 0.7, "travel_m": 0.005,
    "friction_force_n": 0.03, "base_m": (0.16, 0.1, 0.05), "mass_kg": 0.31, "plug": "USB-C", "current_a": 0.2,
    "heaviest_topper_kg": 0.004, "in_stock": 3, "note": "worn", "cable_m": 1.9, "price": 40.0, "setup_s": 60.0,
    "takes_toppers": True, "mode": "plain", "mode_sign": "one light", "mode_back": "hold both", "set_as": "soft",
    "set_how": "the short springs", "setting": (StickSetting(name="firm", start_force_n=0.4, full_force_n=1.1),),
    "flat": HousingFlat(at_m=(0.0, 0.02, 0.05), size_m=(0.04, 0.03)),
}  # fmt: skip
"""Every field that a controller has in common with a stick, none as it is when nobody says."""


def test_the_sticks_of_a_controller_are_as_the_controller_says() -> None:
    """Each field that both have, but what is counted once for the whole controller."""
    both = Stick.model_fields.keys() & Controller.model_fields.keys()
    assert both == CONTROLLER.keys(), "a further field in common: say here what it is"
    controller = Controller(**CONTROLLER)
    silent = {name for name in both if getattr(controller, name) == Controller.model_fields[name].default}
    assert not silent
    _, made = with_controllers(Kit.model_validate({"stick": [stick()], "controller": [controller]})).stick
    assert {name for name in both if getattr(made, name) != getattr(controller, name)} == OF_THE_CONTROLLER


def test_a_fit_says_of_its_stick_what_the_kit_does() -> None:
    """Each field that both have, but what is worked out for the set-up."""
    both = {one.name for one in fields(Fit)} & Stick.model_fields.keys()
    assert both == {*AS_LISTED, *WORKED_OUT}
    listed = {
        "base_mm": (54, 50, 30), "mass_g": 90, "plug": "round jack", "current_ma": 30, "fixed_to": "wren",
    }  # fmt: skip
    made = fitting([stick(**listed)])
    (fit,) = fits_of([0], made.here, Site(name="here", part="fingertip"), [None])
    (own,) = made.setups.kit.stick
    assert {name: getattr(fit, name) for name in AS_LISTED} == {name: getattr(own, name) for name in AS_LISTED}
    assert own.mass_kg == 0.09
    assert own.fixed_to == "wren"


def test_a_mask_takes_every_column_of_the_samples() -> None:
    """Each column that has a value for each sample, and nothing of what holds for all of them."""
    samples = FiniteSamples(
        times_s=np.arange(4.0), xy=np.arange(8.0).reshape(4, 2), cue=np.arange(4, dtype=np.int8),
        cue_xy=np.arange(8.0).reshape(4, 2), recorded=(True, True), scale=2.0, unit="share",
        selected=np.array([True, False, True, False]), stroke=np.arange(4), z=np.arange(4.0),
    )  # fmt: skip
    kept = samples.kept(np.array([False, True, False, True]))
    columns = [one.name for one in fields(samples) if isinstance(getattr(samples, one.name), np.ndarray)]
    assert len(columns) == 7
    for name in columns:
        np.testing.assert_array_equal(getattr(kept, name), getattr(samples, name)[[1, 3]])
    assert (kept.recorded, kept.scale, kept.unit) == ((True, True), 2.0, "share")
    bare = replace(samples, cue_xy=None, selected=None, stroke=None, z=None).kept(np.array([True] * 4))
    assert (bare.cue_xy, bare.selected, bare.stroke, bare.z) == (None, None, None, None)
