"""What a finding is about: keys by which others look for it, merge it or leave it out. They are never printed."""

from __future__ import annotations

from typing import Literal

__all__ = ["Matter"]

Matter = Literal[
    "age_band", "arm", "base_turn", "before_the_start", "bench_readings", "body_size", "both_sticks", "bursts",
    "bursts_not_told", "busy", "cable", "chair", "chord", "clamp", "clearance", "clipping", "clock", "coarse",
    "coarse_clock", "coarse_gauge", "coarse_steps", "conductors", "controller", "crosswise", "cue", "current",
    "curve_limited", "curved_spring", "date", "dead_centre", "dead_zone", "direction_not_told", "direction_unclear",
    "directions_not_compared", "drift", "duty", "empty_cells", "empty_press", "empty_reading", "end_of_the_gauge",
    "excluded", "far_away", "fastener", "filter", "flat", "force_off", "foreign_unit", "friction_not_known",
    "frozen", "frozen_rest", "full_early", "gain_limit", "game", "games", "gap", "gauge_against_stick",
    "gauge_zero", "give", "goals", "grip", "growth", "held", "held_near_centre", "hold", "holds", "hub",
    "identical_repeats", "importance", "input", "inside", "interval", "involuntary_force", "kit_note", "leaned_on",
    "left_out", "let_go", "limb_stiffness", "mirror", "mirrored", "mirrored_readings", "missing",
    "missing_distance", "negative_friction", "negative_preload", "negative_stiffness", "no_centre", "no_direction",
    "no_force", "no_outward_readings", "no_pointing", "no_reach", "no_rest", "no_smoothness", "no_tracking",
    "no_tremor", "no_wiggle", "nobody", "not_cleared", "not_self_centring", "not_tried", "note", "nothing_measured",
    "nothing_moves", "offset", "on_stick", "one_axis", "one_release", "other_stick", "output_for_angle",
    "output_not_known", "output_short_of_full", "own_days", "pair", "pairing", "place", "play", "play_blocks",
    "played_back", "plug", "pointing_from_a_part", "power", "press", "presses", "price", "quarter_turn", "range",
    "reach_besides_rotation", "reach_in_play", "reach_not_rotation", "reach_off", "reaches", "reading",
    "reading_out_of_line", "release", "repeats_apart", "rest", "rest_by_stillness", "rest_cleaned", "retired_key",
    "return_scatter", "role", "room", "rotation", "same_role", "same_stick", "same_time_twice", "session",
    "setting", "several_heights", "short_hold", "short_rest", "side", "simulated_player", "slope", "slow_sampling",
    "smoothness_from_a_part", "socket", "sound", "spasms", "spring_back", "stability", "stands_still", "state",
    "stays_by_itself", "stock", "stop_not_recorded", "straight_curve", "support", "swinging", "switch",
    "table_height", "take_off", "tape", "task", "third_axis", "tilt", "tired", "tiring", "tiring_hold", "together",
    "tracking_from_a_part", "tray_height", "tremor_from_a_part", "tremor_while_moving", "trunk_and_tray",
    "turned_base", "turned_far", "two_moved", "unequal_directions", "uneven_friction", "uneven_time", "unit",
    "unplugged", "unsettled_rest", "unusual", "way", "way_not_written", "whole_plan", "wide_dead_zone", "width",
    "worn_spring", "zero_force",
]  # fmt: skip
