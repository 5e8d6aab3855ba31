"""Five worked cases: invented people and kit, plausible to a practitioner.

Each says what to decide and why, as its author saw it; the plan is held against that. `case` is the site with the stick
alone, `whole_case` all that was found and all that the game asks, the van's switches and the hub Quay. The cases give
no prices and no cable runs, and leave some figures of pressing open: what was chosen for them is marked "chosen".
"""

from __future__ import annotations

from typing import Any

from stickwright.model.case import Case
from stickwright.model.game import Game
from stickwright.model.hub import Hub
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


# plug, current mA; cables are chosen
_PLUGS: dict[str, tuple[str, float | None, float]] = {
    "ash": ("USB or 4-conductor", 40, 1.2), "birch": ("4-conductor", None, 1.2), "cedar": ("4-conductor", None, 1.2),
    "dew": ("USB", 70, 1.5), "elm": ("USB", 60, 1.5), "larch": ("USB", 60, 1.5), "rowan": ("USB", 60, 1.5),
    "oak": ("USB", 60, 1.5), "hazel": ("USB", 90, 1.5), "slate": ("4-conductor", None, 1.2),
}  # fmt: skip
# name, force N, travel mm, face mm, how many (chosen); wink senses without touch
_SWITCHES = (
    ("pip", 0.10, 1.5, [12], 3), ("leaf", 0.35, 3, [20, 60], 2), ("disc", 0.9, 3, [45], 2), ("dome", 1.8, 6, [70], 2),
    ("slab", 3.5, 8, [130], 2),
)  # fmt: skip


def kit(toppers: bool = True) -> Kit:
    """The sticks in the van; without toppers and extensions when only the sticks are compared."""
    return Kit.model_validate(_sticks(toppers))


def van_kit(**more: Any) -> Kit:
    """All that is in the van, with plugs, cables and currents; leads are chosen.

    Parameters
    ----------
    more : list of dict
        Sticks, switches, controllers or leads instead of those in the van.
    """
    data = _sticks(True)
    for stick in data["stick"]:
        plug, current_ma, cable_m = _PLUGS[stick["name"]]
        stick.update(plug=plug, cable_m=cable_m, **({} if current_ma is None else {"current_ma": current_ma}))
    data["switch"] = [
        {"name": name, "force_n": force, "travel_mm": travel, "face_mm": face, "plug": "2-conductor", "cable_m": 1.8,
         "in_stock": stock}
        for name, force, travel, face, stock in _SWITCHES
    ] + [{"name": "wink", "kind": "proximity", "senses_at_mm": 6, "face_mm": [25], "plug": "2-conductor", "cable_m": 1.8}]  # fmt: skip
    data["controller"] = [{
        "name": "plain pad", "contact_height_mm": 16, "start_force_n": 0.48, "full_force_n": 1.05, "travel_mm": 6.5,
        "press_force_n": 0.9,  # chosen
        "mass_g": 260, "current_ma": 100, "cable_m": 2.0, "in_stock": 2,
    }]  # fmt: skip
    data["lead"] = [
        {"name": "two-conductor lead 1 m", "plug": "2-conductor", "length_m": 1.0, "in_stock": 4},
        {"name": "four-conductor lead 1 m", "plug": "4-conductor", "length_m": 1.0},
        {"name": "USB lead 1 m", "plug": "USB", "length_m": 1.0, "in_stock": 2},
    ]
    return Kit.model_validate({**data, **more})


def quay(**more: Any) -> Hub:
    """Three USB sockets of 100 mA, 300 mA in all; a jack for each stick; seven for switches; one paired controller."""
    usb = [{"name": f"u{n}", "takes": "USB", "role": "assignable", "roles": ["left stick", "right stick"], "current_ma": 100}
           for n in (1, 2, 3)]  # fmt: skip
    sticks = [
        {"name": f"q{n}", "takes": "4-conductor", "role": role} for n, role in ((1, "left stick"), (2, "right stick"))
    ]
    switches = [{"name": f"k{n}", "takes": "2-conductor", "role": "assignable"} for n in range(1, 8)]
    return Hub.model_validate(
        {"name": "Quay", "socket": usb + sticks + switches, "current_ma": 300, "paired": 1, "plug": "USB", **more}
    )


def _sticks(toppers: bool) -> dict[str, Any]:
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
    return data


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

# The cases' tables are worked out for a stick pushed right out.
GAMES: dict[str, dict[str, Any]] = {
    "tove": {"name": "walking adventure", "action": [{
        "name": "move", "kind": "two-axis", "duty_share": 0.6, "usual_level_share": 1, "longest_hold_s": 20,
        "direction": [{"direction_deg": 90, "weight": 7}, *({"direction_deg": p, "weight": 1} for p in EIGHT if p != 90)],
    }]},
    "idris": {"name": "football", "action": [{"name": "move", "kind": "two-axis", "duty_share": 0.75, "usual_level_share": 1}]},
    "marit": {"name": "racing", "action": [{
        "name": "steer", "kind": "two-axis", "duty_share": 0.9, "usual_level_share": 1,
        "direction": [{"direction_deg": p, "weight": 4 if p in (0, 180) else 1} for p in EIGHT],
    }]},
    "joss": {"name": "shooter", "action": [{"name": "move", "kind": "two-axis", "duty_share": 0.6, "usual_level_share": 1}]},
    "rune": {"name": "strategy", "action": [{"name": "pointer", "kind": "two-axis", "duty_share": 0.2, "usual_level_share": 1}]},
}  # fmt: skip


# ---- all that was found besides, and all that the game asks

# Added to the site with the stick. Ways to the hub and slack are chosen.
_FIRST: dict[str, dict[str, Any]] = {
    "tove": {"to_hub_m": 0.8, "tilt_slack_m": 0.2},
    "idris": {"to_hub_m": 0.8, "release_s": [0.9, 0.9, 2.4]},
    "marit": {"to_hub_m": 1.1, "tilt_slack_m": 0.6},
    "joss": {"to_hub_m": 1.0, "press_rate_per_s": 4},
    "rune": {"to_hub_m": 0.8},
}
_HEAD_SIDE = {"part": "head", "cleared": "yes", "to_hub_m": 1.1, "tilt_slack_m": 0.6}
# reaction is chosen: feet are slower than fingers
_FOOT = {"part": "foot", "press": {"force_n": 30, "rate_per_s": 2, "reaction_ms": 350}, "to_hub_m": 1.0}

MORE_SITES: dict[str, list[dict[str, Any]]] = {
    "tove": [
        # how far finger and lip move is chosen
        {"name": "left index", "part": "fingertip", "press": {"force_n": 0.22, "rate_per_s": 1.4, "hold_s": 8, "travel_mm": 4},
         "to_hub_m": 0.9, "tilt_slack_m": 0.2},
        # side to side only
        {"name": "left thumb", "part": "thumb", "can_lift": False, "to_hub_m": 0.9, "tilt_slack_m": 0.2,
         "reading": [{"direction_deg": phi, "force_n": 0.20, "reach_mm": 4} for phi in (0, 180)]
                  + [{"direction_deg": phi, "force_n": 0, "reach_mm": 0} for phi in (90, 270)]},
        # likes it less: 2 of 10 is chosen, and so is the team's word
        {"name": "lower lip", "part": "lip", "press": {"force_n": 0.15, "rate_per_s": 0.8, "travel_mm": 3}, "minds": 2, "cleared": "yes",
         "to_hub_m": 1.2, "tilt_slack_m": 0.2},
    ],
    "idris": [
        {"name": "left fist", "part": "hand", "to_hub_m": 0.9,
         "press": {"force_n": 9, "rate_per_s": 0.7, "landing_mm": 28, "release_s": [0.9, 0.9, 2.4]}},
        # involuntary force between spasms is chosen
        {"name": "knee", "part": "knee", "to_hub_m": 1.2,
         "press": {"force_n": 12, "rate_per_s": 0.5, "fires_with_spasm_share": 0.2, "involuntary_force_n": 0.5}},
    ],
    "marit": [
        # measured on wink; its force and how far it moves clear are chosen. One switch there, one on each wing of the head rest
        {"name": "cheek", "part": "cheek", "press": {"force_n": 0.2, "rate_per_s": 1.2, "travel_mm": 8, "most_switches": 1},
         "cleared": "yes",
         "to_hub_m": 1.1, "tilt_slack_m": 0.6},
        {"name": "left head side", **_HEAD_SIDE, "press": {"force_n": 6, "rate_per_s": 0.9, "hold_s": 10, "most_switches": 1}},
        {"name": "right head side", **_HEAD_SIDE, "press": {"force_n": 5, "rate_per_s": 0.9, "hold_s": 10, "most_switches": 1}},
    ],
    "joss": [
        {"name": "left thumb", "part": "thumb", "to_hub_m": 1.0,
         "room_mm": [30, 30],  # measured on the pad in its holder: no other stick can stand there
         "reading": [{"direction_deg": phi, "force_n": 7, "reach_mm": 25} for phi in EIGHT],
         "rest": [{"force_n": 0}],  # chosen
         "involuntary_force_n": 0.02, "limb_stiffness_n_per_mm": 0.08, "force_noise_share": 0.05,
         "crossing_hz": 1.5,  # chosen, as his forearm's
         "reaches": ["right button in left cluster", "bottom button in left cluster"]},  # chosen: "the reachable cluster button"
        # full strength: the thumb's force; travel, rate (the forearm's), hold and reaction are chosen
        *({"name": f"left {finger}", "part": "fingertip", "to_hub_m": 1.0, "reaches": [f"{which} left front button"],
           "press": {"force_n": 7, "travel_mm": 5, "rate_per_s": 4, "hold_s": 20, "reaction_ms": 220}}
          for finger, which in (("index", "top"), ("middle finger", "bottom"))),
        {"name": "right foot", **_FOOT},
        {"name": "left foot", **_FOOT},
    ],
    "rune": [
        {"name": "right thumb", "part": "thumb", "press": {"force_n": 0.5, "rate_per_s": 0.9, "travel_mm": 5},
         "to_hub_m": 0.8},  # travel is chosen
        # head control needs the team's word; time to set up each day is chosen
        *({"name": f"{side} head side", "part": "head", "cleared": "ask", "press": {"force_n": 4, "travel_mm": 30, "most_switches": 1},
           "setup_min": 3, "to_hub_m": 1.2}
          for side in ("left", "right")),
        {"name": "left toe", "part": "toe", "press": {"force_n": 8, "rate_per_s": 1.1}, "setup_min": 2, "to_hub_m": 1.6},
    ],
}  # fmt: skip

# What it costs the player to leave an action to somebody else is chosen, from what the case tells of their wishes.
MORE_OF_PLAYERS: dict[str, dict[str, Any]] = {
    "tove": {
        "together": [{"sites": ("right index", "left index"), "alone_per_s": 1.4, "both_per_s": 1.2}],
        "helper": [{"name": "brother"}], "independence": 8, "session_min": 45,
    },
    "idris": {"helper": [{"name": "sister"}], "independence": 1, "session_min": 20},
    "marit": {
        "together": [
            {"sites": ("chin", "left head side"), "says": "no"}, {"sites": ("chin", "right head side"), "says": "no"},
            {"sites": ("chin", "cheek"), "alone_per_s": 1.2, "both_per_s": 0.84},  # slows 0.3
        ],
        "helper": [{"name": "carer"}], "independence": 7, "session_min": 60,
    },
    "joss": {
        "together": [
            {"sites": ("left thumb", "left index"), "says": "yes"}, {"sites": ("left thumb", "left middle finger"), "says": "yes"},
            {"sites": ("left index", "left middle finger"), "says": "yes"},
        ],
        "session_min": 120,
    },
    "rune": {"helper": [{"name": "son"}], "independence": 5},
}  # fmt: skip

# Importance and all prices are chosen: they are the player's word, which the cases do not put in figures.
WHOLE_GAMES: dict[str, list[dict[str, Any]]] = {
    "tove": [
        {**GAMES["tove"]["action"][0], "importance": 10, "input": "left stick", "together": ["attack", "jump"], "helper": False,
         "helper_words": "I want to walk by myself"},
        {"name": "look", "kind": "two-axis", "importance": 6, "duty_share": 0.4, "input": "right stick", "helper": False,
         "option": "the camera follows", "option_price": 2, "option_words": "it may look by itself"},
        {"name": "attack", "kind": "press", "importance": 8, "presses_per_min": 12, "busy_presses_per_min": 25, "helper": False},
        {"name": "jump", "kind": "press", "importance": 7, "presses_per_min": 8, "helper": False},
        # how often she aims is chosen
        {"name": "aim", "kind": "hold", "importance": 4, "longest_hold_s": 6, "presses_per_min": 2, "duty_share": 0.1,
         "toggle": "press once to aim, once to stop", "toggle_price": 1, "helper": False, "drop_price": 1,
         "drop_words": "I can do without for a start"},
        {"name": "map", "kind": "press", "importance": 3, "presses_per_min": 1, "helper_price": 1,
         "helper_words": "he may open the map when he is there"},
    ],
    "idris": [
        {**GAMES["idris"]["action"][0], "importance": 10, "input": "left stick", "together": ["pass"], "helper": False,
         "helper_words": "I am the one who runs"},
        {"name": "pass", "kind": "press", "importance": 8, "presses_per_min": 12, "busy_presses_per_min": 20, "helper_price": 5,
         "helper_words": "I pass to her"},
        # a false one loses the ball, or is a foul
        {"name": "shoot", "kind": "press", "importance": 7, "presses_per_min": 3, "false_input_costly": True, "helper_price": 2},
        {"name": "tackle", "kind": "press", "importance": 4, "presses_per_min": 4, "false_input_costly": True},
        {"name": "sprint", "kind": "hold", "importance": 3, "longest_hold_s": 3, "duty_share": 0.3,
         "option": "no sprinting, everybody runs alike", "option_price": 0.5},
        {"name": "change man", "kind": "press", "importance": 4, "presses_per_min": 4, "option": "changes by itself",
         "option_price": 0.5},
        {"name": "menu", "kind": "press", "importance": 2, "presses_per_min": 0.5, "false_input_costly": True, "helper_price": 0},
    ],
    "marit": [
        {**GAMES["marit"]["action"][0], "importance": 10, "input": "left stick", "together": ["accelerate", "brake"], "helper": False},
        # longest holds of accelerate and how often she brakes are chosen
        {"name": "accelerate", "kind": "hold", "importance": 8, "duty_share": 0.85, "longest_hold_s": 30, "option": "automatic",
         "option_price": 1, "helper": False},
        {"name": "brake", "kind": "hold", "importance": 9, "duty_share": 0.15, "longest_hold_s": 3, "busy_presses_per_min": 6,
         "reaction_ms": 400, "helper": False, "helper_words": "braking late is the whole fun"},
        {"name": "boost", "kind": "press", "importance": 7, "presses_per_min": 4, "helper": False},
        {"name": "menu", "kind": "press", "importance": 5, "presses_per_min": 1},
        {"name": "look back", "kind": "press", "importance": 2, "presses_per_min": 1, "helper": False, "drop_price": 0.5,
         "drop_words": "the picture in the corner shows enough"},
    ],
    "joss": [
        {"name": "look", "kind": "two-axis", "importance": 10, "duty_share": 0.8, "input": "right stick",
         "together": ["move", "fire", "aim"]},
        {**GAMES["joss"]["action"][0], "importance": 9, "input": "left stick", "together": ["fire", "aim"]},
        # a shooter gives 200 to 300 ms; how often he aims is chosen
        {"name": "fire", "kind": "press", "importance": 9, "busy_presses_per_min": 60, "reaction_ms": 300, "together": ["aim"]},
        {"name": "aim", "kind": "hold", "importance": 8, "longest_hold_s": 3, "duty_share": 0.15, "presses_per_min": 10,
         "reaction_ms": 300},
        # 12 a minute of all four together
        {"name": "jump", "kind": "press", "importance": 6, "presses_per_min": 4, "together": ["look", "move"]},
        {"name": "crouch", "kind": "press", "importance": 5, "presses_per_min": 3, "together": ["look", "move"]},
        {"name": "reload", "kind": "press", "importance": 6, "presses_per_min": 3},
        {"name": "swap", "kind": "press", "importance": 4, "presses_per_min": 2},
    ],
    "rune": [
        {**GAMES["rune"]["action"][0], "importance": 9, "input": "left stick", "levels": 2, "option": "scanning with a switch",
         "option_price": 4, "option_words": "to be tried now, while the hand still works"},
        {"name": "select", "kind": "press", "importance": 9, "presses_per_min": 10},
    ],
}  # fmt: skip


def whole_case(name: str) -> Case:
    """One of the five with all its sites, all its actions, the van and the hub."""
    data = PLAYERS[name]
    first = {**data["site"][0], **_FIRST[name]}
    return Case(
        name=name,
        player=Player.model_validate({**data, **MORE_OF_PLAYERS[name], "site": [first, *MORE_SITES[name]]}),
        kit=van_kit(),
        game=Game.model_validate({**GAMES[name], "action": WHOLE_GAMES[name]}),
        made_on="2026-11-25",
        hubs=(quay(),),
    )


def case(name: str, *, toppers: bool = True) -> Case:
    """The site with the stick of one of the five, by the invented first name it goes by here."""
    return Case(
        name=name,
        player=Player.model_validate(PLAYERS[name]),
        kit=kit(toppers),
        game=Game.model_validate(GAMES[name]),
        made_on="2026-11-25",
    )
