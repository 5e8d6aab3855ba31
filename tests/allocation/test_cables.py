"""What fits into what, how long a cable must be, and which leads of the stock make it so."""

from __future__ import annotations

from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from said import said
from stickwright.allocation.cables import (
    MissingLead,
    Run,
    carried,
    leads_for,
    plugs_compatible,
    splitter_for,
    way_of,
)
from stickwright.codes.message import message
from stickwright.codes.plugs import Plugs
from stickwright.errors import BadInput
from stickwright.model.kit import Lead
from stickwright.model.player import Site
from stickwright.model.sharing import HeldWay


def extension(name: str, length_m: float, plug: str = "2-conductor", in_stock: int = 1) -> Lead:
    return Lead(name=name, plug=plug, length_m=length_m, in_stock=in_stock)


def run(
    tag: str, needed: float | None, own: float | None = 1.0, plug: str = "2-conductor", takes: str = "2-conductor"
) -> Run:
    return Run(tag, plug, takes, own, needed)


@pytest.mark.parametrize(
    "plug, takes, reason",
    [
        ("2-conductor", "2-conductor", None),
        ("USB", "USB-A", None),
        ("USB or 4-conductor", "4-conductor", None),
        ("2-conductor", "4-conductor", ("bridges", "contacts", ("ring 1", "ring 2", "sleeve"))),
        ("3-conductor", "4-conductor", ("bridges", "contacts", ("ring 2", "sleeve"))),
        ("2-conductor", "3-conductor", ("bridges", "contacts", ("ring", "sleeve"))),
        ("4-conductor", "2-conductor", ("no_contact", "contacts", ("ring 1", "ring 2"))),
        ("4-conductor", "3-conductor", ("no_contact", "contacts", ("ring 2",))),
        ("6.3 mm 2-conductor", "2-conductor", ("other_size", "thick", True)),
        ("2.5 mm 2-conductor", "2-conductor", ("other_size", "thick", False)),
        ("USB", "4-conductor", ("other_kind", "socket", "3.5 mm 4-conductor")),
        ("USB", "USB-C", ("other_kind", "socket", "USB-C")),
        ("", "USB", ("not_said", None, None)),
    ],
)  # fmt: skip
def test_only_equal_size_and_conductors_fit(
    plug: str, takes: str, reason: tuple[str, str | None, object] | None
) -> None:
    """By the shape of round plugs: tip at the end, sleeve at the handle, one with fewer contacts has the longer sleeve."""
    fits, why = plugs_compatible(plug, takes)
    assert fits == (reason is None)
    if reason is not None:
        text, name, value = reason
        assert (why.topic, why.text) == ("Plugs", text)
        assert name is None or why.param(name) == value


def test_why_a_plug_does_not_fit_is_said() -> None:
    """Both by their names in the trade, and what is wrong."""
    assert said(plugs_compatible("2-conductor", "4-conductor")[1]) == (
        "3.5 mm mono jack (TS) plug and 3.5 mm four-pole jack (TRRS) socket do not match: the sleeve of the plug bridges ring 1, "
        "ring 2 and sleeve"
    )


def test_plug_that_is_none_is_told() -> None:
    """A plug that nobody knows is refused with what would be one."""
    with pytest.raises(BadInput) as told:
        plugs_compatible("banana", "USB")
    assert told.value.problems[0].found == '"banana"'


def test_needed_length() -> None:
    """Way by the tie points 1.10 m, 0.60 m for tilting, 0.15 m service loop: 1.85 m; unknown way, unknown length."""
    way = way_of([Site(name="chin", part="chin", to_hub_m=1.10, tilt_slack_m=0.60)])
    assert way.needed_m == pytest.approx(1.85, abs=1e-9)
    assert way_of([Site(name="chin", part="chin", tilt_slack_m=0.60)]).needed_m is None


def test_the_way_along_an_arm_is_added() -> None:
    """By hand: 0.7 m tied, 0.5 m along the arm, 0.15 m loop: 1.35 m; a stick that stands by itself adds nothing."""
    hand = Site(name="hand", part="hand", to_hub_m=0.7)
    assert way_of([hand], HeldWay("hand", "dew", 0.5, "arm")).needed_m == pytest.approx(1.35, abs=1e-9)
    assert way_of([hand], HeldWay("hand", "dew", 0.0, "tray")).needed_m == pytest.approx(0.85, abs=1e-9)


def test_the_tape_is_believed_before_the_place_of_the_hub() -> None:
    """What was taken with a tape counts, however far the hub is along the axes; where nothing was taken, these stand in and
    it is said: 1.2 + 0.5 + 0.15 m."""
    held = HeldWay("hand", "dew", 0.5, "arm", to_hub_m=1.2)
    taken = way_of([Site(name="hand", part="hand", to_hub_m=0.7)], held)
    reckoned = way_of([Site(name="hand", part="hand")], held)
    assert (taken.tied_m, taken.assumed) == (0.7, None)
    assert reckoned.needed_m == pytest.approx(1.85, abs=1e-9)
    assert "not measured with a tape" in said(reckoned.assumed)


def test_shared_by_two_parts_the_longest_way_counts() -> None:
    """One device at two parts: 0.6 m with 0.5 m for tilting is longer than 0.9 m: 1.25 m with the loop."""
    sites = [Site(name="a", part="hand", to_hub_m=0.9), Site(name="b", part="hand", to_hub_m=0.6, tilt_slack_m=0.5)]
    assert way_of(sites).needed_m == pytest.approx(1.25, abs=1e-9)


def test_nearest_stock_length_up() -> None:
    """0.7 m short: of 0.5, 1 and 2 m the 1 m lead; of another connector none."""
    leads = [extension(f"{m} m", m) for m in (2.0, 0.5, 1.0)] + [extension("wrong", 0.8, "4-conductor")]
    found = leads_for([run("A1", 1.7)], leads)["A1"]
    assert [lead.name for lead in found.leads] == ["1.0 m"]
    assert found.length_m == pytest.approx(2.0, abs=1e-9)


def test_exactly_enough_is_enough() -> None:
    """A lead of just the length that lacks does; no lead where the own cable does."""
    assert [lead.name for lead in leads_for([run("A1", 1.5)], [extension("half", 0.5)])["A1"].leads] == ["half"]
    assert leads_for([run("A1", 1.0)], [extension("half", 0.5)])["A1"].leads == ()
    joined = leads_for([run("A1", 1.8)], [extension("a", 0.1), extension("b", 0.7)])[
        "A1"
    ]  # 0.7999... as a computer adds them
    assert [lead.name for lead in joined.leads] == ["a", "b"]
    assert joined.wanted == ()


def test_longest_need_first() -> None:
    """One 2 m and one 1 m lead: the run that lacks 1.8 m takes the long one, though it comes later."""
    found = leads_for([run("A1", 1.9), run("A2", 2.8)], [extension("two", 2.0), extension("one", 1.0)])
    assert [[lead.name for lead in found[tag].leads] for tag in ("A1", "A2")] == [["one"], ["two"]]


def test_the_longest_need_is_served_when_stock_is_short() -> None:
    """One lead of 1 m for runs that lack 0.8 and 0.9 m: the longer has it, the shorter is told what is missing."""
    found = leads_for([run("A1", 1.8), run("A2", 1.9)], [extension("one", 1.0)])
    assert [[lead.name for lead in found[tag].leads] for tag in ("A1", "A2")] == [[], ["one"]]
    assert [said(wanted.text) for wanted in found["A1"].wanted] == [
        "an extension lead, 3.5 mm mono jack (TS), 0.8 m or longer"
    ]


def test_joined_only_if_one_does_not_do() -> None:
    """Lacking 1.4 m: with 1 m and 0.5 m leads, two joined; as soon as a 2 m lead is there, that one alone."""
    short = [extension("half", 0.5, in_stock=2), extension("one", 1.0)]
    assert [lead.name for lead in leads_for([run("A1", 2.4)], short)["A1"].leads] == ["half", "one"]
    assert [lead.name for lead in leads_for([run("A1", 2.4)], [*short, extension("two", 2.0)])["A1"].leads] == ["two"]


def test_what_is_missing() -> None:
    """Nothing long enough: what to ask for, rounded up to a tenth of a metre, and what would do."""
    found = leads_for([run("A1", 1.95)], [extension("half", 0.5)])["A1"]
    assert [said(wanted.text) for wanted in found.wanted] == ["an extension lead, 3.5 mm mono jack (TS), 1 m or longer"]
    assert found.leads == ()
    assert found.wanted[0].met_by(extension("one", 1.0, in_stock=0))
    assert not found.wanted[0].met_by(extension("short", 0.9, in_stock=0))
    assert not found.wanted[0].met_by(extension("other", 2.0, "USB", in_stock=0))


def test_adapter_then_extension_on_either_side() -> None:
    """A 6.3 mm plug reaches a 3.5 mm jack by an adapter; leads of both connectors may lengthen it, in order."""
    adapter = Lead(name="step", kind="adapter", plug="2-conductor", sockets=("6.3 mm 2-conductor",), length_m=0.1)
    big, small = extension("big", 0.5, "6.3 mm 2-conductor"), extension("small", 0.5)
    found = leads_for([run("A1", 2.0, plug="6.3 mm 2-conductor")], [small, adapter, big])["A1"]
    assert [lead.name for lead in found.leads] == ["big", "step", "small"]
    assert found.length_m == pytest.approx(2.1, abs=1e-9)
    assert found.wanted == ()


def test_unmeasured_is_never_lengthened() -> None:
    """No way taken, or no cable measured: no lead is spent, no length made up."""
    leads = [extension("two", 2.0)]
    assert leads_for([run("A1", None)], leads)["A1"].length_m == 1.0
    unknown = leads_for([run("A1", 3.0, own=None)], leads)["A1"]
    assert (unknown.leads, unknown.length_m, unknown.wanted) == ((), None, ())


def test_splitter_with_its_own_supply_comes_first() -> None:
    """Of splitters that fit, one that feeds its ways itself; then the smallest; none that lacks a way."""
    two = Lead(name="two", kind="splitter", plug="USB", sockets=("USB", "USB"))
    four = Lead(name="four", kind="splitter", plug="USB", sockets=("USB",) * 4, port_current_a=0.5)
    jacks = Lead(name="jacks", kind="splitter", plug="2-conductor", sockets=("2-conductor",) * 2)
    assert splitter_for("USB", {1: "USB", 2: "USB"}, [two, four, jacks]) is four
    assert splitter_for("USB", {1: "USB", 2: "USB"}, [two, jacks]) is two
    assert splitter_for("USB", {1: "USB", 3: "USB"}, [two, jacks]) == MissingLead("splitter", "USB-A", "USB-A", ways=3)


def test_contacts_of_a_stick_plug_are_not_guessed() -> None:
    """Four conductors come in two orders; the netlist says what there is, not where."""
    assert carried("3.5 mm 4-conductor", "stick") == (
        message(Plugs.carries, contacts=("tip", "ring 1", "ring 2", "sleeve"), carries="axes"),
    )
    assert [(one.param("contacts"), one.param("carries")) for one in carried("USB-A", "stick")] == [
        (("supply",), "five_volts"),
        (("data -",), "data"),
        (("data +",), "data"),
        (("ground",), "ground"),
    ]
    for plug, kind in (
        ("3.5 mm 3-conductor", "stick"),
        ("3.5 mm 4-conductor", "switch"),
        ("3.5 mm 2-conductor", "stick"),
    ):
        assert [one.param("carries") for one in carried(plug, kind)] == ["unknown"]
    assert carried("", "switch") == ()


LENGTHS = st.sampled_from([0.3, 0.5, 1.0, 1.5, 2.0, 3.0])
CONNECTORS = st.sampled_from(["2-conductor", "4-conductor", "USB"])
RUNS = st.lists(
    st.tuples(st.one_of(st.none(), st.floats(0.2, 6.0)), st.one_of(st.none(), LENGTHS), CONNECTORS),
    min_size=1,
    max_size=8,
)
STOCK = st.lists(st.tuples(LENGTHS, CONNECTORS, st.integers(0, 3)), max_size=6)


@given(RUNS, STOCK)
def test_never_too_short_unsaid_and_never_used_twice(
    wanted: list[tuple[float | None, float | None, str]], stock: list[tuple[float, str, int]]
) -> None:
    """Law: a cable is long enough or says what is missing; leads match its connector; no unit is used twice."""
    runs = [Run(f"A{n}", plug, plug, own, need) for n, (need, own, plug) in enumerate(wanted, 1)]
    leads = [extension(f"lead {n}", length, plug, units) for n, (length, plug, units) in enumerate(stock)]
    found = leads_for(runs, leads)
    used = Counter(lead.name for at in found.values() for lead in at.leads)
    assert all(used[lead.name] <= lead.in_stock for lead in leads)
    for one in runs:
        at = found[one.tag]
        assert all(lead.plug == one.plug for lead in at.leads)
        if one.own_m is not None:
            total = one.own_m + sum(lead.length_m or 0.0 for lead in at.leads)
            assert at.length_m == pytest.approx(total, abs=1e-9)
            if one.needed_m is not None:
                assert at.length_m >= one.needed_m - 1e-6 or at.wanted
                assert not (at.wanted and at.length_m >= one.needed_m)


@given(st.lists(st.floats(1.0, 4.0), min_size=1, max_size=5), st.lists(LENGTHS, max_size=5))
def test_as_many_as_can_be_served_with_one_lead_are(needs: list[float], stock: list[float]) -> None:
    """Law: single leads serve as many runs as any sharing out could (largest matching of nested choices, by hand)."""
    runs = [Run(f"A{n}", "USB", "USB", 1.0, need) for n, need in enumerate(needs)]
    found = leads_for(runs, [extension(f"lead {n}", length, "USB") for n, length in enumerate(stock)])
    lacking = sorted((need - 1.0 for need in needs if need > 1.0 + 1e-9), reverse=True)
    left = sorted(stock)
    served = 0
    for lack in lacking:  # the longest need has the fewest choices: any of them is as good for the rest
        if left and left[-1] >= lack - 1e-9:
            left.pop()
            served += 1
    alone = sum(len(at.leads) == 1 for at in found.values())
    assert alone == served
