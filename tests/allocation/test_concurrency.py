"""Acting at the same moment, and what tires first: the worked cases and the laws."""

import math
from types import SimpleNamespace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from said import said
from stickwright.allocation.concurrency import interference_share, limb_of, pairs_of, site_loads, tiring_order
from stickwright.allocation.pressing import Pressed, press_fit
from stickwright.codes.estimate import Estimate
from stickwright.codes.layouts import Layouts
from stickwright.codes.message import Name, message
from stickwright.model.game import Action, Game
from stickwright.model.kit import Switch
from stickwright.model.player import PARTS, Player, Site
from stickwright.model.sharing import Placement

PIP = Pressed.of_switch(Switch(name="pip", force_n=0.10, travel_m=0.0015, face_m=(0.012,)))


def player(*sites: tuple[str, str] | dict[str, Any], together: Any = ()) -> Player:
    rows = [one if isinstance(one, dict) else {"name": one[0], "part": one[1]} for one in sites]
    return Player.model_validate({"code": "P", "site": rows, "together": together})


MARIT = player(
    ("chin", "chin"), ("cheek", "cheek"), ("left head side", "head"), ("right head side", "head"),
    together=[
        {"sites": ("chin", "left head side"), "says": "no"}, {"sites": ("right head side", "chin"), "says": "no"},
        {"sites": ("cheek", "chin"), "says": "slows"},
    ],
)  # fmt: skip


class TestLimbs:
    """Which limb a site belongs to."""

    @pytest.mark.parametrize(
        ("site", "limb"),
        [
            ({"name": "right index", "part": "fingertip"}, "right arm"),
            ({"name": "index", "part": "fingertip", "side": "left"}, "left arm"),
            ({"name": "Left forearm end", "part": "forearm"}, "left arm"),
            ({"name": "fist", "part": "hand"}, "unsaid arm"),
            ({"name": "upright hand", "part": "hand"}, "unsaid arm"),
            ({"name": "left hand, right of the tray", "part": "hand"}, "unsaid arm"),
            ({"name": "left knee out", "part": "knee"}, "left leg"),
            ({"name": "right toe", "part": "toe", "side": "left"}, "left leg"),
            ({"name": "left head side", "part": "head"}, "head"),
            ({"name": "left cheek", "part": "cheek", "side": "left"}, "head"),
            ({"name": "back", "part": "trunk"}, "trunk"),
        ],
    )
    def test_by_side_or_by_name(self, site, limb):
        """The side that is said, or else the word in the name; a name that tells both tells none."""
        assert limb_of(Site.model_validate(site)) == limb

    @pytest.mark.parametrize("part", PARTS)
    def test_every_part_has_a_limb(self, part):
        """No part is forgotten."""
        assert limb_of(Site(name="left one", part=part)).split()[-1] in {"arm", "leg", "head", "trunk"}


class TestPairs:
    """Yes, slows or no."""

    def test_marit(self):
        """Her cheek slows beside the chin by 0.3, the chin and the head sides exclude each other; the other parts of the
        head were not tried and are taken to slow by half."""
        told = {pair.sites: (pair.says, pair.slowed_share) for pair in pairs_of(MARIT)}
        assert told[("chin", "cheek")] == ("slows", 0.3)
        assert told[("chin", "left head side")][0] == told[("chin", "right head side")][0] == "no"
        untried = [pair for pair in pairs_of(MARIT) if pair.assumed is not None and pair.assumed.text == "same_limb"]
        assert {pair.sites for pair in untried} == {
            ("cheek", "left head side"), ("cheek", "right head side"), ("left head side", "right head side"),
        }  # fmt: skip
        assert {(pair.says, pair.slowed_share) for pair in untried} == {("slows", 0.5)}
        assert {pair.assumed for pair in untried} == {message(Layouts.same_limb, slowed_share=0.5)}

    def test_a_word_without_a_rate_is_marked(self):
        """By how much it slows was not counted: 30 % is taken, and said to be."""
        slows = next(pair for pair in pairs_of(MARIT) if pair.says == "slows")
        assert slows.assumed == message(Layouts.slows_unknown, slowed_share=0.3)

    def test_tove_by_rates(self):
        """Her left index keeps 1.2 of 1.4 a second while the right holds: 14 % is lost, which is under a fifth: yes."""
        rates = {"sites": ("right index", "left index"), "alone_per_s": 1.4, "both_per_s": 1.2}
        (pair,) = pairs_of(player(("right index", "fingertip"), ("left index", "fingertip"), together=[rates]))
        assert (pair.says, pair.assumed) == ("yes", None)
        assert pair.slowed_share == pytest.approx(0.14, abs=0.005)

    @pytest.mark.parametrize(
        ("both", "says"),
        [(1.0, "yes"), (0.81, "yes"), (0.8, "slows"), (0.5, "slows"), (0.49, "no"), (0.0, "no"), (1.3, "yes")],
    )
    def test_thresholds(self, both, says):
        """A loss under 0.2 is a yes, from 0.2 to 0.5 it slows, above it is a no; a faster rate is no loss."""
        rates = {"sites": ("left foot", "right foot"), "alone_per_s": 1.0, "both_per_s": both}
        (pair,) = pairs_of(player(("left foot", "foot"), ("right foot", "foot"), together=[rates]))
        assert pair.says == says
        assert pair.slowed_share == pytest.approx(max(0.0, 1 - both), abs=1e-9)

    def test_half_a_trial_is_none(self):
        """One rate alone, or none alone, tells nothing: the pair counts as untried."""
        for rates in ({"alone_per_s": 1.0}, {"both_per_s": 1.0}, {"alone_per_s": 0.0, "both_per_s": 0.0}):
            trial = {"sites": ("left foot", "right foot"), **rates}
            (pair,) = pairs_of(player(("left foot", "foot"), ("right foot", "foot"), together=[trial]))
            assert pair.assumed == message(Layouts.different_limbs)
        assert math.isnan(interference_share(0.0, 0.0))

    def test_same_limb_untried(self):
        """Two fingers of one hand that nobody tried are taken to slow each other by half; what they can, a trial tells."""
        fingers = (("left index", "fingertip"), ("left thumb", "thumb"))
        (untried,) = pairs_of(player(*fingers))
        assert (untried.says, untried.slowed_share) == ("slows", 0.5)
        (tried,) = pairs_of(player(*fingers, together=[{"sites": ("left thumb", "left index"), "says": "yes"}]))
        assert (tried.says, tried.assumed, tried.sites) == ("yes", None, ("left index", "left thumb"))

    def test_a_hand_without_a_side(self):
        """It counts as a limb of its own, and the mark says that its side is not said."""
        (pair,) = pairs_of(player(("fist", "hand"), ("left index", "fingertip")))
        assert pair.says == "yes"
        assert pair.assumed == message(Layouts.side_unsaid, sites=(Name("fist"),))
        (both,) = pairs_of(player(("fist", "hand"), ("elbow", "elbow")))
        assert both.assumed == message(Layouts.side_unsaid, sites=(Name("fist"), Name("elbow")))

    def test_the_worst_trial_counts(self):
        """Two trials of one pair: the worse one."""
        trials = [{"sites": ("chin", "back"), "says": "yes"}, {"sites": ("back", "chin"), "says": "no"}]
        (pair,) = pairs_of(player(("chin", "chin"), ("back", "trunk"), together=trials))
        assert (pair.says, pair.slowed_share) == ("no", 1.0)

    @given(
        parts=st.lists(st.sampled_from(PARTS), min_size=1, max_size=5),
        says=st.sampled_from(["yes", "slows", "no"]),
        swap=st.booleans(),
    )
    def test_order_does_not_matter(self, parts, says, swap):
        """Law: each two sites stand once, in the order of the file; who is named first in a trial, or in the file, changes
        nothing of what is said."""
        sites = [(f"site {place}", part) for place, part in enumerate(parts)]
        names = ("site 0", f"site {len(parts) - 1}")
        trial = [{"sites": names[::-1] if swap else names, "says": says}] if len(parts) > 1 else []
        forward, back = (pairs_of(player(*order, together=trial)) for order in (sites, sites[::-1]))
        assert len(forward) == len(parts) * (len(parts) - 1) // 2
        order = [name for name, _ in sites]
        assert all(order.index(pair.sites[0]) < order.index(pair.sites[1]) for pair in forward)

        def told(pairs):
            return {frozenset(pair.sites): (pair.says, pair.slowed_share) for pair in pairs}

        assert told(forward) == told(back)


def pressed(site: Site, action: Action, **more: Any) -> Placement:
    toggle = more.get("toggle", False)
    return Placement(
        action.name, "site", site.name, "pip", "switch", press=press_fit(site, PIP, action, toggle=toggle), **more
    )


def stick_fit(effort: float, hold_s: float = math.nan, duty_limit: float = 1.0) -> Any:
    """What the load reads of a stick's fit."""
    return SimpleNamespace(
        effort_share=Estimate(effort, effort, effort), hold_s=Estimate.unbounded(hold_s, "invented"),
        duty_effort_limit=duty_limit,
    )  # fmt: skip


class TestLoads:
    """What each part is asked, and what tires first."""

    PLAYER = player(
        {"name": "right index", "part": "fingertip", "side": "right"},
        {
            "name": "left index", "part": "fingertip",
            "press": {"force_n": 0.22, "rate_per_s": 1.4, "hold_s": 8.0, "move_intercept_s": 0.1, "move_slope_s_per_bit": 0.2},
        },
        {"name": "lip", "part": "lip", "press": {"force_n": 0.15, "rate_per_s": 0.8}},
    )  # fmt: skip
    MOVE = Action(name="move", kind="two-axis", duty_share=0.6)
    ATTACK = Action(name="attack", kind="press", busy_presses_per_s=25 / 60)
    JUMP = Action(name="jump", kind="press", busy_presses_per_s=8 / 60)
    AIM = Action(name="aim", kind="hold", busy_presses_per_s=2 / 60, longest_hold_s=3.0, duty_share=0.2)
    GAME = Game(name="g", action=(MOVE, ATTACK, JUMP, AIM))

    def left(self) -> Site:
        return self.PLAYER.site[1]

    def test_presses_fill_the_busy_minute(self):
        """25 presses of 1/1.4 s fill 17.9 of 60 s: 30 %. With jump on a second pip, each of 33 presses moves as well: a bit
        of difficulty is 0.1 + 0.2 s, so 33 (0.714 + 0.3) = 33.5 s: 56 %."""
        (alone,) = site_loads([pressed(self.left(), self.ATTACK)], self.PLAYER, self.GAME, {})
        assert alone.busy_share == pytest.approx(0.30, abs=0.005)
        assert (alone.site, alone.devices, alone.actions) == ("left index", ("pip",), ("attack",))
        assert (alone.part, alone.side) == ("fingertip", "left")
        both = [pressed(self.left(), self.ATTACK, socket="k1"), pressed(self.left(), self.JUMP, socket="k2")]
        (two,) = site_loads(both, self.PLAYER, self.GAME, {})
        assert two.busy_share == pytest.approx(0.56, abs=0.005)
        assert two.actions == ("attack", "jump")
        assert said(alone.busy_basis) == "attack: 25 presses of 0.71 s: 18 of 60 s"
        basis = said(two.busy_basis)
        assert basis.startswith("attack: 25 presses of 0.71 s + 0.30 s to get there; jump: 8.0 presses of ")
        assert basis.endswith(": 33 of 60 s")

    def test_a_hold_keeps_the_part_busy(self):
        """An aim of 20 % of the time fills 20 %, more than its two presses; as a toggle only its four presses do."""
        (held,) = site_loads([pressed(self.left(), self.AIM)], self.PLAYER, self.GAME, {})
        assert held.busy_share == pytest.approx(0.2, abs=1e-9)
        assert said(held.busy_basis) == "aim held 20% of the time: 12 of 60 s"
        (toggled,) = site_loads([pressed(self.left(), self.AIM, toggle=True)], self.PLAYER, self.GAME, {})
        assert toggled.busy_share == pytest.approx(4 / 1.4 / 60, abs=1e-9)

    def test_what_is_asked_most_of_its_limit_tells(self):
        """Pip asks 45 % of the left index where half is allowed: 0.91 of the limit, more than a stick's 0.26 of 0.5. The
        measured loss of 18 % does not turn that, a loss of 50 % does: 0.52/0.5 = 1.04."""
        move = Placement("move", "site", "right index", "dew", "stick", fit=stick_fit(0.26))
        placements = [move, pressed(self.left(), self.ATTACK)]
        right, left = site_loads(placements, self.PLAYER, self.GAME, {"right index": 0.18})
        assert (right.tires, left.tires) == (2, 1)
        assert said(left.why) == "attack needs 45% of its comfortable force, 25 times in the busiest minute"
        assert (
            said(right.why)
            == "needs 26% of its comfortable force, 60% of the time; it lost 18% of its force over the visit"
        )
        right, left = site_loads(placements, self.PLAYER, self.GAME, {"right index": 0.5})
        assert (right.tires, left.tires) == (1, 2)

    def test_a_stick_kept_out_long(self):
        """At high duty less effort is acceptable; and a hold counts against half of what can be kept."""
        strict = Placement("move", "site", "right index", "dew", "stick", fit=stick_fit(0.26, duty_limit=0.27))
        (load, left) = site_loads([strict, pressed(self.left(), self.ATTACK)], self.PLAYER, self.GAME, {})
        assert (load.tires, left.tires) == (1, 2)
        long = self.MOVE.model_copy(update={"longest_hold_s": 20.0})
        kept = Placement("move", "site", "right index", "dew", "stick", fit=stick_fit(0.26, hold_s=25.0))
        (load,) = site_loads([kept], self.PLAYER, Game(name="g", action=(long,)), {})
        assert said(load.why) == "move needs holds of 20 s, and 12 s is the limit"

    def test_nothing_tells(self):
        """Without a figure nothing is claimed; actions elsewhere load nobody."""
        bare = Placement("move", "site", "right index", "pad", "controller")
        elsewhere = Placement("jump", "helper", helper="sister")
        (load,) = site_loads([bare, elsewhere], self.PLAYER, self.GAME, {})
        assert (load.tires, load.busy_share, said(load.why)) == (0, 0.0, "no figure shows how soon it tires")

    @given(
        strain=st.dictionaries(st.sampled_from("abcde"), st.floats(0.0, 2.0) | st.just(math.nan)),
        lost=st.floats(0.0, 0.9),
        name=st.sampled_from("abcde"),
    )
    def test_ranks_are_one_to_n(self, strain, lost, name):
        """Law: those of whom something is known are ranked from 1 without a gap, the more strained first, and a part that
        is measured to tire never tires later for it."""
        before, after = tiring_order(strain, {}), tiring_order(strain, {name: lost})
        known = [site for site, share in strain.items() if share > 0]
        assert sorted(before[site] for site in known) == list(range(1, len(known) + 1))
        assert all(before[site] == 0 for site in strain if site not in known)
        assert all(strain[a] >= strain[b] for a in known for b in known if before[a] < before[b])
        if name in strain:
            assert after[name] <= before[name]
