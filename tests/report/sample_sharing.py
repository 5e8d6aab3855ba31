"""Plans that share out all actions, made by hand and invented throughout: with a hub and without, with a clash, with
a helper on a second controller, with long names, with twelve actions."""

from __future__ import annotations

import math
from dataclasses import replace

from sample_plan import about, finger_site, sample_plan, thumb_site

from stickwright.allocation.cables import carried
from stickwright.codes.cables import Cables
from stickwright.codes.message import Name, message
from stickwright.codes.plugs import Plugs
from stickwright.codes.wirings import Wirings
from stickwright.model.fit import Assumption, Caution
from stickwright.model.hub import Hub, Socket
from stickwright.model.plan import Plan
from stickwright.model.recorded import Finding
from stickwright.model.sharing import (
    Alternative,
    Clash,
    Elsewhere,
    Pair,
    PartLine,
    Placement,
    PowerLine,
    PressFit,
    Relaxation,
    Sharing,
    SiteLoad,
    Term,
    Wire,
    Wiring,
)

HUB = Hub(
    name="quay",
    socket=(
        Socket(name="u1", takes="USB", role="assignable", current_a=0.1),
        Socket(name="u2", takes="USB", role="assignable", current_a=0.1),
        Socket(name="q1", takes="4-conductor", role="left stick", excludes=("u1",)),
        *(Socket(name=f"k{number}", takes="2-conductor", role="assignable") for number in range(1, 6)),
    ),
    current_a=0.3,
    paired=1,
)  # fmt: skip


def press_fit(hold_s: float | None = None) -> PressFit:
    return PressFit(
        force_n=0.10, comfortable_n=about(0.22), effort_share=0.45, effort_limit_share=0.5, hit_share=0.97,
        presses_per_min=25.0, sustained_per_min=42.0, hold_s=hold_s, hold_limit_s=math.nan, false_per_min=0.2,
        cycle_s=0.5, move_s=0.0, wanted_face_m=math.nan, fails=(), notes=(), assumed=("release",),
    )  # fmt: skip


def placements() -> tuple[Placement, ...]:
    choice = finger_site().choice
    assert choice is not None
    return (
        Placement(
            "move", "site", site="right index finger", device="dew", kind="stick",
            role="left stick", connection="socket", hub="quay", socket="u1", points=8.1, fit=choice,
            terms=(Term("importance", 10.0, "worth 10 to the player"), Term("precision", -1.2, "2.9 bits of 4 wanted"),
                   Term("effort", -0.7, "26 % of the comfortable force")),
            reason="It is the only site that moves in all directions.",
            second="Cedar at the same finger", second_cost=2.3, introduce="day 1",
        ),
        Placement("look", "option", label="the camera follows", points=5.0,
                  terms=(Term("importance", 7.0, ""), Term("option", -2.0, "the player's price for leaving it")),
                  reason="No second site can steer a stick.", second="Left thumb on cedar, side to side only",
                  second_cost=1.4, words="it may look by itself", introduce="day 1"),
        Placement("attack", "site", site="left index finger", device="pip", kind="switch",
                  role="bottom button in right cluster", connection="socket", hub="quay", socket="k1", points=6.6,
                  terms=(Term("importance", 8.0, ""), Term("effort", -0.9, "45 % of the comfortable force"),
                         Term("misses", -0.5, "3 of 100 presses miss")),
                  press=press_fit(), reason="The quickest press there is: 42 a minute can be kept up.",
                  second="Lower lip on pip", second_cost=0.8, introduce="day 1"),
        Placement("jump", "site", site="left index finger", device="pip", kind="switch",
                  role="right button in right cluster", connection="socket", hub="quay", socket="k2", points=5.9,
                  terms=(Term("importance", 7.0, ""), Term("effort", -1.1, "45 % of the comfortable force")),
                  press=press_fit(), reason="Same finger, never pressed with attack.", introduce="day 1"),
        Placement("aim", "site", site="lower lip", device="leaf", kind="switch", toggle=True,
                  role="top left front button", connection="socket", hub="quay", socket="k3", points=3.2,
                  terms=(Term("importance", 6.0, ""), Term("mind", -2.0, "likes the lip less"),
                         Term("toggle", -0.8, "has to remember that it is on")),
                  press=press_fit(6.0), reason="Held for 6 s: longer than the finger keeps it.",
                  second="Held at the left index finger", second_cost=1.9, introduce="week 2"),
        Placement("map", "helper", helper="sister", connection="paired", points=1.0,
                  terms=(Term("importance", 3.0, ""), Term("helper", -2.0, "the player's price")),
                  reason="Too far for every site.", words="She may do the map", introduce="week 2"),
        Placement("photo mode", "dropped", points=-0.5, terms=(Term("cost", -0.5, "going without"),),
                  words="I never use it", reason="Nothing is left to press it with."),
    )  # fmt: skip


_ADAPTER = message(Cables.adapter, plug="6.3 mm 2-conductor", socket="3.5 mm 2-conductor", label=False)


def wiring() -> Wiring:
    pair = (
        message(Plugs.carries, contacts=("tip",), carries="switch_contact"),
        message(Plugs.carries, contacts=("sleeve",), carries="common"),
    )
    places = (
        message(Wirings.at_socket, socket=Name("u1"), hub=None, way=None),
        message(Wirings.at_hub, hub=Name("quay")),
    )
    return Wiring(
        wires=(
            Wire("A1", "dew", ("right index finger",), "USB-A", ("USB extension 1 m",), "quay", "u1", "USB", "left stick",
                 ("move",), 1.35, 1.5, 0.07, carried("USB-A", "stick")),
            Wire("A2", "pip", ("left index finger",), "3.5 mm 2-conductor", (), "quay", "k1", "2-conductor",
                 "bottom button in right cluster", ("attack",), 1.2, 1.8, 0.0, pair),
            Wire("A3", "pip", ("left index finger",), "3.5 mm 2-conductor", (), "quay", "k2", "2-conductor",
                 "right button in right cluster", ("jump",), 1.2, 1.8, 0.0, pair),
            Wire("A4", "leaf", ("lower lip",), "6.3 mm 2-conductor", ("adapter 6.3 to 3.5",), "quay", "k3", "2-conductor",
                 "top left front button", ("aim",), None, None, 0.0, pair, (_ADAPTER,)),
        ),
        parts=(
            PartLine("dew", "stick", 1, 1, 0, None),
            PartLine("pip", "switch", 2, 1, 1, 45.0, "one is on loan"),
            PartLine("leaf", "switch", 1, 1, 0, None),
            PartLine("adapter 6.3 to 3.5", "adapter", 1, 0, 1, 6.5),
            PartLine("USB extension 1 m", "extension lead", 1, 2, 0, None),
        ),
        power=(PowerLine(places[0], 0.07, 0.1, 1), PowerLine(places[1], 0.07, 0.3, 1)),
        steps=(
            "Plug dew (A1) into u1, hands off the stick.",
            "Plug the switches A2, A3 and A4 into k1, k2 and k3.",
            "Wake the console, then plug in the hub.",
            "Press each control once and see what arrives; push the stick forward by the player's word.",
        ),
        findings=(Finding("query", "empty socket", "q1 stays empty: it feeds the same stick as u1."),),
        hubs=(HUB,),
    )  # fmt: skip


def sharing() -> Sharing:
    told = placements()
    return Sharing(
        placements=told, points=29.3, bound=29.3, proven=True,
        solved="Proven best for the wishes as stated: no plan can have more than 29.3 points.",
        alternatives=(
            Alternative(told, 28.5, 0.8, ("attack",), "Attack at the lower lip, so that the left hand rests"),
            Alternative(told, 27.9, 1.4, ("look",), "Look with the left thumb, side to side, instead of the option."),
        ),
        clash=None,
        pairs=(Pair(("right index finger", "left index finger"), "yes", 0.14, None),
               Pair(("right index finger", "lower lip"), "yes", 0.0, "nobody tried it; face and hand are apart"),
               Pair(("left index finger", "left thumb"), "slows", 0.35, None)),
        loads=(
            SiteLoad("right index finger", ("dew + low dish",), ("move",), 0.0, 2, "18 % lost in 9 minutes"),
            SiteLoad("left index finger", ("pip", "pip"), ("attack", "jump"), 0.28, 1, "28 presses a minute at 45 %"),
            SiteLoad("lower lip", ("leaf",), ("aim",), 0.03, 0, ""),
        ),
        elsewhere=(
            ("move", (Elsewhere("left thumb", None, "reaches 17 % of the throw forward"),
                      Elsewhere("helper", 6.0, "her sister could steer, but the player wants to steer herself"))),
            ("attack", (Elsewhere("lower lip", 0.8, "0.8 /s there, and she likes it less"),
                        Elsewhere("helper", 4.1, "her sister"),
                        Elsewhere("right index finger", None, "it must move at the same moment"))),
            ("look", (Elsewhere("left thumb", 1.4, "side to side only"),)),
        ),
        wiring=wiring(),
        sentence="Five actions at three sites, one by the game, one by the sister; photo mode is left out.",
        findings=(Finding("note", "new controls", "Three new controls on the first day, of four at most."),),
        assumptions=(Assumption("release of a press at left index finger", "0.2 s", "nobody timed it",
                                "the time from the cue to letting go"),),
        cautions=(Caution("helper", None, "Nobody but the player decides what the helper does."),
                  Caution("effort", "left index finger", "Rest the finger after ten minutes: no training by pressing."),
                  Caution("cable", None, "Keep cables off the neck, the breathing tube and the walkway.")),
    )  # fmt: skip


def shared_plan() -> Plan:
    """All there is: a hub, an option, a helper, something left out."""
    return replace(sample_plan(), sharing=sharing())


def unwired_plan() -> Plan:
    """No hub is described."""
    told = sharing()
    loose = tuple(replace(one, connection="" if one.connection == "socket" else one.connection, hub=None, socket=None)
                  for one in told.placements)  # fmt: skip
    return replace(sample_plan(), sharing=replace(told, placements=loose, wiring=None))


def clashing_plan() -> Plan:
    """Some requests cannot be met."""
    clash = Clash(
        ("move and attack at the same moment", "no helper for move", "the lip only for aim"),
        "Moving and attacking at once, no helper for move, and the lip kept for aim cannot all be had: the left hand "
        "holds the chair's control.",
        (Relaxation("Let attack go to the game's automatic attack", 2.0, ("pressing attack by herself",)),
         Relaxation("Let the sister move", 6.0, ("steering by herself",))),
    )  # fmt: skip
    told = replace(sharing(), clash=clash, proven=False, bound=30.1,
                   solved="Not proven: another plan could have up to 0.8 points more.")  # fmt: skip
    return replace(sample_plan(), sharing=told)


def paired_plan() -> Plan:
    """Two sticks at two parts, one of them on a controller used whole, and two helpers."""
    told = placements()
    look = Placement(
        "look", "site", site="left thumb", device="plain pad", kind="controller", role="right stick",
        control="left stick", connection="socket", hub="quay", socket="u2", points=6.0, introduce="day 1",
        terms=(Term("importance", 8.0, ""), Term("effort", -2.0, "")), reason="The best site to the finest job.",
        fit=thumb_site().fits[0],
    )  # fmt: skip
    reload_ = Placement("reload", "site", site="left thumb", device="plain pad", kind="controller",
                        control="bottom button in left cluster", connection="paired", points=2.0, introduce="later",
                        press=press_fit())  # fmt: skip
    menu = Placement("menu", "helper", helper="evening carer", points=0.5, connection="paired",
                     words="whoever is there")  # fmt: skip
    shared = replace(sharing(), placements=(told[0], look, *told[2:6], reload_, menu), points=33.3, bound=33.3)
    wide = replace(thumb_site(), choice=replace(thumb_site().fits[0], stick="cedar"))
    return replace(sample_plan(), sites=(finger_site(), wide), sharing=shared)


def long_plan() -> Plan:
    """Twelve actions and long names: what must still fit the family's page."""
    told = sharing()
    site = "left residual limb just below the elbow, on the padded armrest"
    device = "large padded dome switch with the long lead"
    many = tuple(
        Placement(f"{verb} the other player while running", "site", site=f"{site} {number % 4 + 1}", device=device,
                  kind="switch", toggle=number % 3 == 0, role="bottom button in right cluster",
                  connection="socket", hub="quay", socket=f"k{number + 1}", points=4.0 + number / 10,
                  terms=(Term("importance", 6.0 + number / 10, ""), Term("effort", -1.0, "45 % of the comfortable force"),
                         Term("mind", -1.0, "does not like to be seen doing it")),
                  press=press_fit(6.0 if number % 4 == 0 else None),
                  reason="No other part reaches it while the stick is held, and the helper is out on Thursdays.",
                  second="The same switch at the other arm, where the skin is tender", second_cost=1.2,
                  introduce="day 1" if number < 4 else "week 2" if number < 8 else "later")
        for number, verb in enumerate(("pass to", "tackle", "shoot at", "follow", "block", "call", "wave at", "chase",
                                       "mark", "dodge"))
    )  # fmt: skip
    made = told.wiring
    assert made is not None
    wires = tuple(replace(made.wires[1], tag=f"A{number + 1}", device=device, at=(one.site or "",), socket=f"k{number + 1}",
                          actions=(one.action,)) for number, one in enumerate(many))  # fmt: skip
    big = Hub(name="quay", socket=tuple(Socket(name=f"k{number}", takes="2-conductor", role="assignable")
                                        for number in range(1, 13)))  # fmt: skip
    loads = tuple(SiteLoad(f"{site} {number}", (device,), ("pass",), 0.2, number, "long days", "forearm", "left")
                  for number in range(1, 5))  # fmt: skip
    full = replace(told, placements=(*many, told.placements[1], told.placements[6]), loads=loads, points=49.0, bound=49.0,
                   wiring=replace(made, wires=wires, hubs=(big,)))  # fmt: skip
    return replace(sample_plan(), sharing=full)


def switches_plan() -> Plan:
    """No stick at all: a game of presses."""
    told = sharing()
    pressed = replace(told, placements=told.placements[2:5], wiring=None, points=15.7, bound=15.7)
    return replace(sample_plan(), sites=(), sharing=pressed,
                   sentence="Three presses at two sites.", cautions=sample_plan().cautions[:1])  # fmt: skip


SHARED = {"shared": shared_plan, "unwired": unwired_plan, "clash": clashing_plan, "paired": paired_plan,
          "long": long_plan, "switches": switches_plan}  # fmt: skip
