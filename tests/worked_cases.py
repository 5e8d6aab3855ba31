"""Five worked cases: invented people and kit, plausible to a practitioner.

Each says what a good practitioner would decide and why; the plan is held against that.
"""

from __future__ import annotations

from typing import Any

from stickwright.model.case import Case
from stickwright.model.game import Game
from stickwright.model.kit import Kit
from stickwright.model.player import Player

EIGHT = (0, 45, 90, 135, 180, 225, 270, 315)

# name, contact height mm, start N, full N, travel mm, base mm, mass g, note
_STICKS = (
    ("ash", 16, 0.48, 1.05, 6.5, (54, 50, 30), 80),
    ("birch", 16, 0.24, 0.52, 6.5, (54, 50, 30), 80),
    ("cedar", 16, 0.16, 0.35, 6.5, (46, 40, 34), 70),
    ("dew", 45, 0.025, 0.11, 9, (40, 40, 62), 110),
    ("elm", 55, 2.2, 4.6, 11, (150, 110, 70), 700),
    ("larch", 60, 1.6, 3.9, 24, (150, 110, 60), 800),
    ("rowan", 60, 3.5, 8.0, 22, (150, 110, 60), 900),
    ("oak", 60, 0.20, 0.48, 24, (120, 90, 55), 500),
    ("hazel", 50, 0.70, 1.40, 20, (160, 120, 75), 750),
)


def kit(toppers: bool = True) -> Kit:
    """The kit in the van; without toppers and extensions when only the sticks are compared."""
    data: dict[str, Any] = {
        "stick": [
            {
                "name": name, "contact_height_mm": h, "start_force_n": start, "full_force_n": full, "travel_mm": travel,
                "base_mm": base, "mass_g": mass,
                **({"heaviest_topper_g": 8} if name == "dew" else {}),
            }
            for name, h, start, full, travel, base, mass in _STICKS
        ]
        + [{"name": "slate", "kind": "touch", "start_force_n": 0.02, "full_force_n": 0.02, "travel_mm": 20, "base_mm": (60, 60, 12)}],
    }  # fmt: skip
    if toppers:
        data["topper"] = [
            {"name": "dish", "form": "dish", "height_mm": 0, "mass_g": 2},
            {"name": "ball 35", "form": "ball", "height_mm": 10, "mass_g": 12},
            {"name": "peg", "form": "peg", "height_mm": 12, "mass_g": 6},
            {"name": "bar 60", "form": "bar", "height_mm": 5, "mass_g": 14},
            {"name": "foam ball 48", "form": "foam", "height_mm": 8, "mass_g": 9},
            {"name": "soft cup", "form": "cup", "height_mm": 6, "mass_g": 7, "single_player": True},
        ]
        data["extension"] = [{"name": f"+{mm} mm", "length_mm": mm, "mass_g": mm / 5} for mm in (8, 15, 25)]
    return Kit.model_validate(data)


def _readings(force: tuple[float, ...], reach: tuple[float, ...]) -> list[dict[str, Any]]:
    """Three repeats about each figure, 12 % apart, so that the plan has a scatter to work with."""
    spread = (0.88, 1.0, 1.136)
    return [
        {"direction_deg": phi, "force_n": [f * s for s in spread], "reach_mm": [d * s for s in (0.95, 1.0, 1.0526)]}
        for phi, f, d in zip(EIGHT, force, reach, strict=True)
    ]


PLAYERS: dict[str, dict[str, Any]] = {
    "tove": {
        "code": "T1", "course": "progressive", "alerts": ["drives-chair", "airway"],
        "site": [{
            "name": "right index", "part": "fingertip",
            "reading": _readings((0.34, 0.31, 0.26, 0.28, 0.38, 0.36, 0.42, 0.38), (9, 7, 5, 6, 10, 9, 8, 9)),
            "rest": [
                {"force_n": [0.060, 0.058, 0.062], "direction_deg": 270},
                {"force_n": [0.015, 0.014, 0.016], "direction_deg": 270, "support": "wedge under the hand"},
            ],
            "involuntary_force_n": 0.008, "crossing_hz": 1.5, "limb_stiffness_n_per_mm": 0.03, "force_noise_share": 0.05,
            "hold": [{"duration_s": 25, "effort_share": 0.5}], "gauge_step_n": 0.01, "can_lift": False,
            "again_force_n": [0.28, 0.275, 0.28],
        }],
    },
    "idris": {
        "code": "I2", "course": "stable", "alerts": ["startle", "seizures"],
        "site": [{
            "name": "right fist", "part": "hand",
            "reading": _readings((22, 18, 14, 16, 20, 24, 26, 25), (110, 90, 70, 75, 100, 110, 120, 115)),
            "involuntary_force_n": 2.2, "crossing_hz": 0.8, "limb_stiffness_n_per_mm": 0.15, "force_noise_share": 0.10,
            "spasm": {"peak_n": 85, "rate_per_min": 4, "duration_s": [0.4, 1.5]}, "can_lift": False,
        }],
    },
    "marit": {
        "code": "M3", "course": "stable", "alerts": ["spinal-t6", "drives-chair"],
        "site": [{
            "name": "chin", "part": "chin", "cleared": "yes",
            "reading": _readings((1.9, 1.9, 2.4, 1.8, 1.7, 1.1, 0.9, 1.2), (14, 12, 10, 11, 13, 8, 6, 9)),
            "rest": [{"force_n": 0}],
            "involuntary_force_n": 0.07, "crossing_hz": 1.2, "limb_stiffness_n_per_mm": 0.10, "force_noise_share": 0.05,
            "hold": [{"duration_s": 40, "effort_share": 0.5}], "can_lift": False,
        }],
    },
    "joss": {
        "code": "J4", "course": "stable", "alerts": ["skin"],
        "site": [{
            "name": "right forearm", "part": "forearm",
            "reading": _readings((9, 9, 11, 9, 8, 9, 10, 9), (32, 28, 26, 27, 35, 30, 30, 30)),
            "rest": [{"force_n": 0.35, "direction_deg": 225}],
            "involuntary_force_n": 0.12, "crossing_hz": 1.5, "limb_stiffness_n_per_mm": 0.15, "force_noise_share": 0.05,
            "can_lift": False,
        }],
    },
    "rune": {
        "code": "R5", "course": "progressive", "alerts": ["neck"],
        "site": [{
            "name": "right index", "part": "fingertip",
            "reading": _readings((0.90, 0.85, 0.80, 0.85, 1.00, 0.95, 0.90, 0.90), (16, 14, 12, 13, 17, 15, 14, 15)),
            "rest": [{"force_n": [0.010, 0.010, 0.011]}],
            "involuntary_force_n": 0.015, "crossing_hz": 2.0, "limb_stiffness_n_per_mm": 0.05, "force_noise_share": 0.05,
            "can_lift": False,
        }],
    },
}  # fmt: skip

GAMES: dict[str, dict[str, Any]] = {
    "tove": {"name": "walking adventure", "action": [{
        "name": "move", "kind": "two-axis", "duty_share": 0.6, "longest_hold_s": 20,
        "direction": [{"direction_deg": 90, "weight": 7}, *({"direction_deg": p, "weight": 1} for p in EIGHT if p != 90)],
    }]},
    "idris": {"name": "football", "action": [{"name": "move", "kind": "two-axis", "duty_share": 0.75}]},
    "marit": {"name": "racing", "action": [{
        "name": "steer", "kind": "two-axis", "duty_share": 0.9,
        "direction": [{"direction_deg": p, "weight": 4 if p in (0, 180) else 1} for p in EIGHT],
    }]},
    "joss": {"name": "shooter", "action": [{"name": "move", "kind": "two-axis", "duty_share": 0.6}]},
    "rune": {"name": "strategy", "action": [{"name": "pointer", "kind": "two-axis", "duty_share": 0.2}]},
}  # fmt: skip


def case(name: str, *, toppers: bool = True) -> Case:
    """One of the five, by the invented first name it goes by here."""
    return Case(
        name=name,
        player=Player.model_validate(PLAYERS[name]),
        kit=kit(toppers),
        game=Game.model_validate(GAMES[name]),
        made_on="2026-11-25",
    )
