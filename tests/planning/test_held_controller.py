"""A controller in the whole plan: in the hand or on a mount, its sticks lighter or longer, a stick on its grip.

All devices, players and figures are invented.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

import pytest
from test_kit_as_it_is import DRAWS, FIRM, LIGHT, SHELL, case, chosen
from test_kit_warnings import PAD, STICK, told

from said import said
from stickwright.files.sharing_warnings import sharing_warnings
from stickwright.files.toml_lines import parse_toml
from stickwright.model.case import Case
from stickwright.model.game import Game
from stickwright.model.kit import Kit
from stickwright.model.mounting import SiteMount
from stickwright.model.plan import Plan
from stickwright.model.player import Player
from stickwright.model.room import Room
from stickwright.mounting.together import WantedMount, mounts_together
from stickwright.planning import mount_requirements
from stickwright.planning.plan import plan
from stickwright.report.words import plan_words

FAR = {"name": "oak", **SHELL, "start_force_n": 20, "full_force_n": 40}
GRIP = {
    "name": "pad", "contact_height_mm": 16, "travel_mm": 4, **LIGHT, "press_force_n": 0.3, "base_mm": [150, 100, 50], "mass_g": 200,
}  # fmt: skip
HOLDS = {"holds_g": 400, "holds_s": 3600}


def played(pad: dict[str, Any], **site: Any) -> Case:
    """The steady thumb with a controller in front of a tray, and a stick far too firm."""
    given = case(FAR, controller=[{**GRIP, **pad}])
    (thumb,) = given.player.site
    told_of = {**thumb.model_dump(exclude_defaults=True), **site}
    return replace(
        given,
        player=Player.model_validate({"code": "Q1", "session_min": 30, "site": [told_of]}),
        room=Room.model_validate(
            {
                "surface": [{"name": "tray", "corner_mm": [-280, 220, 240], "size_mm": [560, 340]}],
                "place": [{"site": "left thumb", "at_mm": [0, 400, 310]}],
            }
        ),
    )


def only(made: Plan) -> Any:
    assert made.sharing is not None
    (placement,) = made.sharing.placements
    return placement


class TestInTheHandOrOnAMount:
    def test_held_it_needs_no_mount(self) -> None:
        """200 g in a hand that holds 400 g for an hour: held, said on the terminal, and nothing is mounted."""
        made = plan(played({"held": "one hand"}, **HOLDS), draws=DRAWS)
        assert (only(made).device, only(made).holding) == ("pad", "one hand")
        assert made.mounts == ()
        assert "Hold pad in one hand, the one of the left thumb." in " ".join(plan_words(made).split())

    def test_too_heavy_it_rests_and_is_mounted(self) -> None:
        """The same, 900 g: it rests on something, with the reason."""
        made = plan(played({"held": "one hand", "mass_g": 900}, **HOLDS), draws=DRAWS)
        assert only(made).holding == "resting"
        assert [one.device for one in made.mounts] == ["pad"]
        assert "too heavy to hold: it weighs 900 g" in " ".join(plan_words(made).split())

    def test_nobody_said_how(self) -> None:
        """As in every case so far: put up like any other device, and no word on mount_requirements."""
        made = plan(played({}), draws=DRAWS)
        assert only(made).holding == ""
        assert [one.device for one in made.mounts] == ["pad"]
        assert "Hold pad" not in plan_words(made)


class TestItsSticks:
    def test_lighter_by_a_setting(self) -> None:
        """Too firm as bought, light enough with the soft springs: chosen so, and the sheet says how to set it, once."""
        pad = {**FIRM, "set_as": "as bought", "mode": "gamepad",
               "setting": [{"name": "soft springs", "how": "put the soft springs in", **LIGHT}]}  # fmt: skip
        made = plan(replace(played(pad), room=None), draws=DRAWS)
        assert (chosen(made).stick, chosen(made).setting) == ("pad", "soft springs")
        assert [(one.device, one.set_as, one.set_how, one.mode) for one in made.device_notes] == [
            ("pad", "soft springs", "put the soft springs in", "gamepad")
        ]

    @pytest.mark.parametrize(("takes", "extension"), [(True, "plus 16"), (False, None)])
    def test_longer_where_toppers_fit(self, takes: bool, extension: str | None) -> None:
        """1.2 N at the stop under a thumb of 0.8 N and 8 mm: twice as long it is 0.6 N over 8 mm (lever law), if that can be put on."""
        given = replace(played({"start_force_n": 0.6, "full_force_n": 1.2, "takes_toppers": takes}), room=None)
        kit = given.kit.model_dump(exclude_defaults=True)
        given = replace(given, kit=Kit.model_validate({**kit, "extension": [{"name": "plus 16", "length_mm": 16}]}))
        (site,) = plan(given, draws=DRAWS).sites
        first = next(one for one in site.fits if one.stick == "pad")
        assert first.extension == extension
        if takes:
            assert first.full_force_n == pytest.approx(0.6)


def test_a_stick_on_its_grip_has_no_mount_of_its_own(monkeypatch: pytest.MonkeyPatch) -> None:
    """Thumb on the stick, index on the button, one hand: the controller is mounted for both, the stick by nothing else. What
    holds it must stand the harder of the two: the thumb's 0.8 N, and not only the 0.7 N of a press."""
    wanted: list[WantedMount] = []

    def seen(them: Sequence[WantedMount], *rest: Any) -> tuple[SiteMount, ...]:
        wanted.extend(them)
        return mounts_together(them, *rest)

    monkeypatch.setattr(mount_requirements, "mounts_together", seen)
    given = played({"held": "resting", "start_force_n": 20, "full_force_n": 40})
    (thumb,) = given.player.site
    press = {"force_n": [0.7], "rate_per_s": [2.0], "hold_s": [20], "release_s": [0.2], "travel_mm": 10}
    button = "bottom button in right cluster"
    index = {"name": "left index", "part": "fingertip", "press": press, "reaches": [button]}
    kit = given.kit.model_dump(exclude_defaults=True)
    kit["stick"] = [{"name": "spur", **SHELL, **LIGHT, "fixed_to": "pad", "mass_g": 60}]
    actions = [
        {"name": "steer", "kind": "two-axis", "importance": 5},
        {"name": "jump", "kind": "press", "importance": 5, "input": button, "busy_presses_per_min": 6},
    ]
    made = plan(
        replace(
            given, kit=Kit.model_validate(kit), game=Game.model_validate({"name": "a road", "action": actions}),
            player=Player.model_validate({"code": "Q1", "site": [thumb.model_dump(exclude_defaults=True), index]}),
        ),
        draws=DRAWS,
    )  # fmt: skip
    assert made.sharing is not None
    assert {one.action: one.device for one in made.sharing.placements} == {"steer": "spur", "jump": "pad"}
    assert [one.device for one in made.mounts] == ["pad"]
    assert wanted[0].held.mass_kg == pytest.approx(0.200 + 0.060)  # the stick rides on it
    assert wanted[0].pushes.working_n == pytest.approx(0.8, rel=0.05)
    assert "grip" in [one.about for one in made.mounts[0].findings]
    assert "Fix spur to the grip of pad. The same hand works both." in " ".join(plan_words(made).split())


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (STICK + 'fixed_to = "pod"\n' + PAD, '! kit.toml, line 7, stick "willow", fixed_to: found "pod"'),
        (STICK + PAD + 'held = "one hand"\n', "was not weighed"),
        (STICK + PAD + "mass_g = 200\n" + 2 * '[[controller.setting]]\nname = "soft"\n', "second setting"),
    ],
)
def test_what_is_refused_and_asked_of_a_kit(text: str, words: str) -> None:
    """A grip that is not there, a mass that decides, two settings of one name."""
    assert any(words in one for one in told(text))


def test_how_long_without_what_is_asked_about() -> None:
    """A time means nothing without the mass that was held."""
    site = '[[site]]\nname = "left thumb"\npart = "thumb"\nholds_s = 300\n'
    (one,) = sharing_warnings(parse_toml(site, "player.toml"), ("left thumb",), None)
    assert "how long the hand holds an object is given, but not its mass" in said(one.text)  # type: ignore[union-attr]
    assert sharing_warnings(parse_toml(site + "holds_g = 200\n", "player.toml"), ("left thumb",), None) == []
