"""The rows, each by a small question made for it and reckoned by hand."""

from __future__ import annotations

import math
from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import given, settings
from plain_sharing import best_by_trying_all, points, refusal
from small_questions import small_questions

from stickwright.allocation.integer_model import Group, SocketColumns, integer_model, socket_options
from stickwright.allocation.problem import (
    Connection,
    Gear,
    PlayingSite,
    Question,
    SocketGroup,
    Splitter,
    TogetherNeed,
    Way,
)
from stickwright.allocation.solve import Answer, Solver

USB, FOUR, TWO = "USB-A", "3.5 mm 4-conductor", "3.5 mm 2-conductor"
LEFT, RIGHT, JUMP = "left stick", "right stick", "bottom button in right cluster"
EVERY = (LEFT, RIGHT, JUMP)


def best(question: Question) -> Answer:
    """The solver's answer, held against the plain reckoner first."""
    answer, tried = Solver(question).best(), best_by_trying_all(question)
    assert answer.possible is (tried is not None)
    assert tried is None or answer.points == tried[0]
    return answer


def sticks(
    *currents: float, plug: str = USB, sockets: tuple[SocketGroup, ...], role: str | None = None, stock: int = 1
) -> Question:
    """So many sticks, each at a site of its own for an action of its own, worth 5 each; or each action dropped."""
    names = [f"action {n}" for n in range(len(currents))]
    gear = tuple(Gear(f"stick {n}", (plug,), current, stock) for n, current in enumerate(currents))
    ways = [Way(name, "site", 5.0, f"site {n}", gear[n].name, "stick", role=role) for n, name in enumerate(names)]
    ways += [Way(name, "dropped", 0.0) for name in names]
    sites = tuple(PlayingSite(f"site {n}", 0.0, 2, f"site {n}") for n in range(len(names)))
    return Question(tuple(names), (5.0,) * len(names), tuple(ways), gear, sites, sockets=sockets, wired=True)


def switches(count: int, busy_s: float, near_s: float, **site: object) -> Question:
    """So many switches at one foot, worth 5 each; or each action dropped."""
    names = tuple(f"action {n}" for n in range(count))
    gear = tuple(Gear(f"switch {n}") for n in range(count))
    ways = [
        Way(n, "site", 5.0, "foot", g.name, "switch", busy_s=busy_s, near_s=near_s)
        for n, g in zip(names, gear, strict=True)
    ]
    ways += [Way(name, "dropped", 0.0) for name in names]
    return Question(names, (5.0,) * count, tuple(ways), gear, (PlayingSite("foot", **{"most_switches": 3, **site}),))  # type: ignore[arg-type]


class TestSites:
    @pytest.mark.parametrize(
        ("busy_s", "near_s", "worth"),
        [
            (10, 12, 15.0), (10, 12.001, 10.0), (12, 12, 15.0), (18, 18, 10.0), (18, 18.001, 5.0), (36, 50, 5.0),
            (36.001, 36.001, 0.0),
        ],
    )  # fmt: skip
    def test_the_busy_minute(self, busy_s: float, near_s: float, worth: float) -> None:
        """Presses fill at most 36 s of the busy minute; with a second switch near, moving to it counts as well."""
        assert best(switches(3, busy_s, near_s)).points == worth

    def test_one_switch_alone_needs_no_moving(self) -> None:
        """Where one switch would take more than the minute with moving, it may still stand alone."""
        assert best(switches(2, 30.0, 45.0)).points == 5.0
        assert best(switches(2, 1.0, 45.0)).points == 5.0

    def test_so_many_switches(self) -> None:
        """No more switches at a part than it can tell apart."""
        assert [best(switches(3, 1.0, 1.0, most_switches=most)).points for most in (0, 1, 2, 3)] == [
            0.0,
            5.0,
            10.0,
            15.0,
        ]

    def test_its_cost_is_paid_once(self) -> None:
        """Setting a part up costs once, however many switches it works; and nothing when it is not used."""
        assert best(switches(3, 1.0, 1.0, cost=0.7)).points == 14.3
        assert best(switches(1, 1.0, 1.0, cost=5.5)).points == 0.0

    def test_one_that_stands_alone(self) -> None:
        """A switch that allows none near it: it alone, or the two others."""
        question = switches(3, 1.0, 1.0)
        ways = (replace(question.ways[0], alone=True), *question.ways[1:])
        assert best(replace(question, ways=ways)).points == 10.0
        assert best(replace(question, ways=(replace(ways[0], points=11.0), *ways[1:]))).points == 11.0

    def test_never_two_kinds(self) -> None:
        """A stick or switches, not both."""
        question = switches(2, 1.0, 1.0)
        assert best(replace(question, ways=(replace(question.ways[0], kind="stick"), *question.ways[1:]))).points == 5.0


class TestTogether:
    def runs_and_jumps(self, need: TogetherNeed, *, toggle: bool = False, chord: bool = False) -> Question:
        ways = [
            Way("run", "site", 5.0, "left hand", "a", "switch"),
            Way("run", "site", 3.0, "knee", "a", "switch"),
            Way("jump", "site", 5.0, "left hand", "b", "switch", toggle=toggle),
            Way("jump", "site", 4.0, "foot", "b", "switch"),
        ]
        if chord:
            ways += [Way("both", "chord", 2.0), Way("both", "dropped", 0.0)]
        sites = tuple(PlayingSite(name, 0.0, 2, name) for name in ("left hand", "foot", "knee"))
        chords = (("both", ("run", "jump")),) if chord else ()
        actions = ("run", "jump", "both") if chord else ("run", "jump")
        return Question(actions, (5.0,) * len(actions), tuple(ways), (Gear("a"), Gear("b")), sites, (need,), chords)

    def test_not_at_one_part(self) -> None:
        """What must be possible at the same moment needs two parts; a press to start and one to stop leaves the part free."""
        need = TogetherNeed("run", "jump")
        assert best(self.runs_and_jumps(need)).points == 9.0
        assert best(self.runs_and_jumps(need, toggle=True)).points == 10.0

    def test_not_at_parts_that_cannot_act_together(self) -> None:
        """Nor at two parts that cannot act at once; the order of the pair is that of the actions."""
        assert (
            best(self.runs_and_jumps(TogetherNeed("run", "jump", None, frozenset({("left hand", "foot")})))).points
            == 8.0
        )
        assert (
            best(self.runs_and_jumps(TogetherNeed("jump", "run", None, frozenset({("left hand", "foot")})))).points
            == 9.0
        )

    def test_at_a_price_where_one_slows_the_other(self) -> None:
        """Parts that slow each other cost, or a dearer place is taken."""
        assert (
            best(self.runs_and_jumps(TogetherNeed("run", "jump", slowed=(("left hand", "foot", 0.25),)))).points == 8.75
        )
        assert (
            best(self.runs_and_jumps(TogetherNeed("run", "jump", slowed=(("left hand", "foot", 1.5),)))).points == 8.0
        )

    def test_only_while_the_chord_is_played(self) -> None:
        """What a chord asks for binds, and costs, only when the chord is played by its members."""
        assert best(self.runs_and_jumps(TogetherNeed("run", "jump", "both"), chord=True)).points == 11.0
        dear = TogetherNeed(
            "run",
            "jump",
            "both",
            slowed=(("left hand", "foot", 5.0), ("knee", "left hand", 5.0), ("knee", "foot", 5.0)),
        )
        assert best(self.runs_and_jumps(dear, chord=True)).points == 10.0
        apart = self.runs_and_jumps(dear, chord=True)
        assert best(replace(apart, ways=(*apart.ways[:2], *apart.ways[3:]))).points == 9.0
        priced = replace(dear, slowed=(("left hand", "foot", 0.5), ("knee", "foot", 5.0), ("knee", "left hand", 5.0)))
        assert best(self.runs_and_jumps(priced, chord=True)).points == 10.5

    def test_a_chord_that_nobody_plays_asks_for_nothing(self) -> None:
        """Where the chord is left to the game, its members need not be possible at once."""
        question = self.runs_and_jumps(TogetherNeed("run", "jump", "both"), chord=True)
        ways = (*question.ways[:4], Way("both", "option", 1.0))
        assert best(replace(question, ways=ways)).points == 11.0

    def test_a_chord_needs_its_members_played(self) -> None:
        """A chord is played by the player's own parts: a member left to a helper does not do."""
        ways = (
            Way("run", "helper", 9.0),
            Way("run", "site", 3.0, "foot", "a", "switch"),
            Way("both", "chord", 5.0),
            Way("both", "dropped", 0.0),
        )
        question = Question(
            ("run", "both"), (9.0, 5.0), ways, (Gear("a"),), (PlayingSite("foot"),), chords=(("both", ("run",)),)
        )
        assert best(question).points == 9.0


class TestControllers:
    def held(
        self, *ways: Way, stock: int = 2, paired: int = 2, sockets: tuple[SocketGroup, ...] = (), hands: str = "hands"
    ) -> Question:
        """Pads held in both hands, or one in each."""
        actions = tuple(dict.fromkeys(way.action for way in ways))
        gear = (Gear("pad", (USB,), 0.1, stock), Gear("other pad", (USB,), 0.1, stock))
        sites = tuple(PlayingSite(f"{side} thumb", 0.0, 2, hands or side) for side in ("left", "right"))
        return Question(actions, (9.0,) * len(actions), ways, gear, sites, sockets=sockets, wired=True, paired=paired)

    def on(
        self,
        action: str,
        control: str,
        *,
        side: str = "left",
        pad: str = "pad",
        paired: bool = True,
        role: str | None = None,
        worth: float = 5.0,
    ) -> Way:
        return Way(action, "site", worth, f"{side} thumb", pad, "controller", control, paired, role or control)

    def test_both_thumbs_share_one(self) -> None:
        """A controller in both hands is one part, whoever plays on it; in two places it is two."""
        ways = (self.on("look", LEFT), self.on("jump", JUMP, side="right"))
        assert best(self.held(*ways)).points == 9.8
        assert best(self.held(*ways, hands="")).points == 9.6
        assert best(self.held(*ways, stock=1, hands="")).possible is False

    def test_hands_hold_one(self) -> None:
        """No hand holds two controllers: not two of a kind, one paired and one plugged in, nor two different ones."""
        every = (SocketGroup(("u1", "u2"), "hub", USB, EVERY),)
        for other in (self.on("jump", JUMP, paired=False), self.on("jump", JUMP, pad="other pad")):
            ways = (self.on("look", LEFT), other, Way("jump", "dropped", 0.0))
            assert best(self.held(*ways, sockets=every)).points == 4.8

    def test_one_control_does_one_action(self) -> None:
        """A button of a controller stands for one action."""
        ways = (self.on("jump", JUMP), self.on("run", JUMP, side="right"), Way("run", "dropped", 0.0))
        assert best(self.held(*ways)).points == 4.8

    def test_so_many_are_paired(self) -> None:
        """The hub accepts so many paired controllers, and the helper's is one of them."""
        ways = (
            self.on("look", LEFT),
            Way("look", "dropped", 0.0),
            Way("run", "helper", 2.0),
            Way("jump", "helper", 2.0),
        )
        ways = (*ways, Way("run", "dropped", 0.0), Way("jump", "dropped", 0.0))
        assert [best(self.held(*ways, paired=paired)).points for paired in (0, 1, 2)] == [0.0, 4.8, 8.8]

    def test_plugged_in_its_stick_takes_the_role_of_the_socket(self) -> None:
        """By a socket that gives the other role the left stick looks; by one that does not it cannot."""
        way = self.on("look", LEFT, paired=False, role=RIGHT)
        for roles, possible in (((LEFT,), False), ((RIGHT,), True), (EVERY, True), ((JUMP,), False)):
            assert best(self.held(way, sockets=(SocketGroup(("u1",), "hub", USB, roles),))).possible is possible

    def test_two_devices_never_arrive_as_the_same_input(self) -> None:
        """Two controllers whose sticks need the same role: one would silently win, whatever the sockets give."""
        ways = (
            self.on("look", LEFT, paired=False, role=RIGHT),
            self.on("aim", LEFT, side="right", paired=False, role=RIGHT),
        )
        one = (SocketGroup(("u1",), "hub", USB, (RIGHT,)), SocketGroup(("u2",), "hub", USB, (LEFT,)))
        assert best(self.held(*ways, hands="", sockets=one)).possible is False
        two = (SocketGroup(("u1", "u2"), "hub", USB, (RIGHT,)),)
        assert best(self.held(*ways, hands="", sockets=two)).possible is False

    def test_a_hub_passes_one_stick_on(self) -> None:
        """Of a controller plugged into a hub one stick arrives; paired, both do."""
        ways = (self.on("run", LEFT, paired=False), self.on("look", RIGHT, side="right", paired=False))
        every = (SocketGroup(("u1", "u2"), "hub", USB, EVERY),)
        assert best(self.held(*ways, sockets=every)).possible is False
        assert best(self.held(*(replace(way, paired=True) for way in ways), sockets=every)).points == 9.8


class TestSockets:
    def test_roles_and_plugs(self) -> None:
        """A stick needs a socket that fits its plug and feeds what it must."""
        for plug, roles, role, worth in (
            (USB, EVERY, None, 5.0), (FOUR, EVERY, None, 0.0), (USB, (JUMP,), None, 0.0), (USB, (RIGHT,), None, 5.0),
            (USB, (RIGHT,), LEFT, 0.0), (USB, (RIGHT,), RIGHT, 5.0), (USB, (), None, 0.0),
        ):  # fmt: skip
            question = sticks(0.0, sockets=(SocketGroup(("u1",), "hub", plug, roles),), role=role)
            assert best(question).points == worth, (plug, roles, role)

    def test_so_many_sockets(self) -> None:
        """No more devices than sockets; nothing is plugged in where no hub is described."""
        question = sticks(0.0, 0.0, 0.0, sockets=(SocketGroup(("u1", "u2"), "hub", USB, EVERY),))
        assert best(question).points == 10.0
        assert best(replace(question, sockets=())).points == 0.0
        assert best(replace(question, sockets=(), wired=False)).points == 15.0

    def test_one_shuts_out_another(self) -> None:
        """A socket in use keeps the one it excludes empty, whichever of the two says so."""
        first, second = SocketGroup(("q1",), "hub", USB, EVERY), SocketGroup(("q2",), "hub", USB, EVERY)
        assert best(sticks(0.0, 0.0, sockets=(first, second))).points == 10.0
        assert best(sticks(0.0, 0.0, sockets=(replace(first, excludes=(1,)), second))).points == 5.0
        assert best(sticks(0.0, 0.0, sockets=(first, replace(second, excludes=(0,))))).points == 5.0

    def test_current(self) -> None:
        """Each socket supplies so much, and the hub so much in all to so many devices."""
        group = SocketGroup(("u1", "u2", "u3"), "hub", USB, EVERY, 0.1)
        assert best(sticks(0.1, 0.11, 0.05, sockets=(group,))).points == 10.0
        question = sticks(0.05, 0.05, 0.05, sockets=(group,))
        for limit, worth in ((0.04, 0.0), (0.05, 5.0), (0.149, 10.0), (0.15, 15.0), (None, 15.0)):
            assert best(replace(question, hub_limits=(("hub", limit, None),))).points == worth
        assert [best(replace(question, hub_limits=(("hub", None, most),))).points for most in (0, 1, 3)] == [
            0.0,
            5.0,
            15.0,
        ]

    def test_adapters_come_from_the_stock(self) -> None:
        """Each adapter costs as a part does, and two need two of them in stock or bought."""
        four = (SocketGroup(("q1", "q2"), "hub", FOUR, EVERY),)
        question = replace(sticks(0.0, 0.0, sockets=four), adapters=(Connection("adapter", USB, FOUR),))
        for stock, price, worth in ((0, None, 0.0), (1, None, 4.8), (2, None, 9.6), (1, 4.0, 9.1), (0, 4.0, 8.6)):
            gear = (*question.gear, Gear("adapter", (), 0.0, stock, price))
            assert best(replace(question, gear=gear)).points == pytest.approx(worth, rel=0, abs=1e-9)
        gear = (*question.gear, Gear("adapter", (), 0.0, 0, 4.0))
        assert best(replace(question, gear=gear, budget=4.0)).points == pytest.approx(4.3, rel=0, abs=1e-9)

    def test_an_adapter_draws_too(self) -> None:
        """What an adapter draws counts at its socket."""
        group = (SocketGroup(("q1",), "hub", FOUR, EVERY, 0.1),)
        for own, worth in ((0.0, 4.8), (0.05, 4.8), (0.051, 0.0)):
            question = sticks(0.05, sockets=group)
            gear = (*question.gear, Gear("adapter"))
            assert best(replace(question, gear=gear, adapters=(Connection("adapter", USB, FOUR, own),))).points == worth

    def split(
        self,
        question: Question,
        *,
        ways: int = 2,
        own: float = 0.0,
        each: float = 0.5,
        powered: bool = False,
        stock: int = 2,
    ) -> Question:
        gear = (*question.gear, Gear("splitter", (), 0.0, stock))
        return replace(question, gear=gear, splitters=(Splitter("splitter", ways, USB, own, each, powered),))

    def test_a_splitter_gives_more_sockets(self) -> None:
        """One splitter turns one socket into two, and costs as a part does."""
        one = (SocketGroup(("u1",), "hub", USB, EVERY),)
        assert best(self.split(sticks(0.0, 0.0, 0.0, sockets=one))).points == 9.8
        assert best(self.split(sticks(0.0, 0.0, 0.0, sockets=one), stock=0)).points == 5.0
        two = (SocketGroup(("u1", "u2"), "hub", USB, EVERY),)
        found = [best(self.split(sticks(*[0.0] * 4, sockets=two), stock=stock)).points for stock in (0, 1, 2)]
        assert found == pytest.approx([10.0, 14.8, 19.6], rel=0, abs=1e-9)

    def test_a_splitter_shares_the_current_of_its_socket(self) -> None:
        """Without a supply of its own all its ways and itself live on one socket; with one, only itself does."""
        one = (SocketGroup(("u1",), "hub", USB, EVERY, 0.1),)
        question = sticks(0.04, 0.04, sockets=one)
        assert best(self.split(question, own=0.02)).points == 9.8
        assert best(self.split(question, own=0.021)).points == 5.0
        assert best(self.split(question, own=0.1, powered=True)).points == 9.8
        assert best(self.split(question, own=0.101, powered=True)).points == 5.0
        assert best(self.split(question, each=0.03)).points == 5.0
        limited = replace(self.split(question, own=0.02), hub_limits=(("hub", 0.099, None),))
        assert best(limited).points == 5.0
        assert best(replace(limited, hub_limits=(("hub", 0.1, None),))).points == 9.8

    def test_two_splitters_do_not_share_their_current(self) -> None:
        """Three sticks of 60 mA need three sockets of 100 mA: two with a splitter each feed only one each."""
        two = (SocketGroup(("u1", "u2"), "hub", USB, EVERY, 0.1),)
        assert best(self.split(sticks(0.06, 0.06, 0.06, sockets=two), each=0.1)).points == 10.0
        assert best(self.split(sticks(0.05, 0.05, 0.06, sockets=two), each=0.1)).points == 14.8

    def test_options_are_told_in_the_order_of_the_sockets(self) -> None:
        """Where a stick could go: straight in where the plug fits, otherwise through an adapter, with what it then draws."""
        sockets = (
            SocketGroup(("u1",), "hub", USB, EVERY),
            SocketGroup(("q1",), "hub", FOUR, (LEFT,)),
            SocketGroup(("k1",), "hub", TWO, (JUMP,)),
        )
        adapters = (Connection("a", USB, FOUR, 0.01), Connection("b", FOUR, USB, 0.02))
        assert socket_options(SocketColumns(LEFT, "stick", (USB,), 0.05), sockets, adapters) == [
            (0, None, 0.05),
            (1, 0, pytest.approx(0.06, rel=0, abs=1e-12)),
        ]
        assert socket_options(SocketColumns(None, "button", (TWO,), 0.0), sockets, adapters) == [(2, None, 0.0)]
        assert socket_options(SocketColumns(None, "stick", (USB,), 0.1, "pad"), sockets, ()) == [(0, None, 0.1)]


class TestKit:
    def test_stock_and_buying(self) -> None:
        """One more than there is must be bought: its price from the budget, half a point for the errand."""
        question = switches(3, 1.0, 1.0)
        ways = tuple(replace(way, device="switch 0" if way.how == "site" else None) for way in question.ways)
        question = replace(question, ways=ways)
        for stock, price, budget, worth in (
            (1, None, None, 5.0), (1, 10.0, None, 14.0), (1, 10.0, 19.99, 9.5), (1, 10.0, 20.0, 14.0),
            (0, 10.0, 9.99, 0.0), (3, 10.0, 0.0, 15.0),
        ):  # fmt: skip
            gear = (Gear("switch 0", (), 0.0, stock, price),)
            assert best(replace(question, gear=gear, budget=budget)).points == worth

    def test_so_many_parts(self) -> None:
        """No more devices than wished."""
        assert [best(replace(switches(3, 1.0, 1.0), most_parts=most)).points for most in (0, 1, 2, 3)] == [
            0.0,
            5.0,
            10.0,
            15.0,
        ]

    def test_what_stays_and_what_does_not(self) -> None:
        """One of the ways that keep a thing where it is, is taken; none of those that use what is not wanted."""
        question = switches(2, 1.0, 1.0)
        assert best(replace(question, keep=(("action 0", "dropped", (2,)),))).points == 5.0
        assert best(replace(question, keep=(("action 0", "nowhere", ()),))).possible is False
        assert best(replace(question, without=(("switch 0", (0,)),))).points == 5.0
        assert best(replace(question, at_most=(("foot", 1, (0, 1)),))).points == 5.0


GROUPS = {
    "do", "together", "keep", "without", "budget", "parts",
    "site", "presses", "stock", "sockets", "input", "power", "paired", "helper", "chord", "slowed",
}  # fmt: skip


@settings(max_examples=100)
@given(small_questions)
def test_rows_are_of_columns_that_exist(question: Question) -> None:
    """Every row names a wish or a fact, and columns once each; the first columns are the ways, in their order."""
    model = integer_model(question)
    assert len(model.points) == len(model.upper) == len(model.names)
    assert model.names[: len(question.ways)] == [("way", n) for n in range(len(question.ways))]
    assert len(set(model.names)) >= len([name for name in model.names if name[0] != "split"])
    for row in model.rows:
        assert row.group[0] in GROUPS
        assert len(row.columns) == len(row.values)
        assert max(Counter(row.columns).values(), default=0) <= 1, row
        assert all(0 <= column < len(model.points) for column in row.columns)
        assert row.low <= row.high
        assert math.isfinite(row.low) or math.isfinite(row.high)


def test_every_action_is_a_wish() -> None:
    """An action without any way is a wish that cannot be met, and nothing else is to blame."""
    question = Question(("run", "jump"), (5.0, 5.0), (Way("run", "option", 3.0),))
    assert Solver(question).clashing() == (("do", "jump"),)


def clash(question: Question) -> set[Group]:
    """What is left of the clash when everything that is not needed for it is taken out."""
    solver = Solver(question)
    left = list(solver.clashing())
    for group in tuple(left):
        if solver.possible(freed=[one for one in solver.groups if one not in left or one == group]) is False:
            left.remove(group)
    return set(left)


def test_a_clash_is_told_in_wishes_and_facts() -> None:
    """Two actions of one switch: both are wanted, and there is one; money, sockets and current are named as such."""
    question = switches(2, 1.0, 1.0)
    ways = tuple(replace(way, device="switch 0") for way in question.ways[:2])
    both = {("do", "action 0"), ("do", "action 1")}
    question = replace(question, ways=ways, gear=(Gear("switch 0"),))
    assert clash(question) == both | {("stock", "switch 0")}
    bought = replace(question, gear=(Gear("switch 0", (), 0.0, 1, 10.0),), budget=5.0)
    assert clash(bought) == both | {("stock", "switch 0"), ("budget",)}
    assert clash(replace(question, gear=(Gear("switch 0", in_stock=2),), most_parts=1)) == both | {("parts",)}
    wired = sticks(0.1, 0.1, sockets=(SocketGroup(("u1", "u2"), "hub", USB, EVERY),))
    wired = replace(wired, ways=wired.ways[:2], hub_limits=(("hub", 0.15, None),))
    assert ("power", "hub") in clash(wired)
    assert both < clash(wired)


def test_the_reckoner_can_refuse() -> None:
    """The plain reckoner itself tells a plan that breaks a rule, and what one is worth that does not."""
    question = switches(2, 30.0, 30.0)
    assert refusal(question, {"action 0": 0, "action 1": 1}) == "foot presses too much"
    assert refusal(question, {"action 0": 0}) == "action 1 is not done"
    assert refusal(question, {"action 0": 0, "action 1": 3}) is None
    assert points(question, {"action 0": 0, "action 1": 3}) == 5.0
