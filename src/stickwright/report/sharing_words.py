"""Who does what, in words that page, terminal and explanation share."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import get_args

from stickwright.catalogue import say
from stickwright.codes.glance import Glance, Press, When
from stickwright.codes.inputs import role_named
from stickwright.codes.layout_pages import LayoutPages
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.sockets import Sockets
from stickwright.codes.wiring_pages import WiringPages
from stickwright.codes.wirings import Wirings
from stickwright.model.sharing import (
    Clash,
    Pair,
    PartLine,
    Placement,
    PowerLine,
    Sharing,
    SiteLoad,
    Wire,
    Wiring,
)
from stickwright.report.printed import sentence
from stickwright.report.tell import named, names, tell

__all__ = [
    "asked_first", "bought", "control_of", "device_words", "done_by", "given_up", "introductions", "lacking", "load_told",
    "own_words", "pair_words", "place_of", "power_words", "press_of", "socket_name", "socket_of", "socket_words",
    "tags_of", "way_out", "wire_words",
]  # fmt: skip


def asked_first(sharing: Sharing | None) -> tuple[str, ...]:
    """What must be asked of the player before the plan is read; empty when nothing."""
    return (sentence(sharing.ask_first),) if sharing is not None and sharing.ask_first else ()


def device_words(placement: Placement) -> Text:
    """The device as it stands there, and which of its controls when it is a controller.

    Parameters
    ----------
    placement : Placement
        One done at a site.
    """
    return placement.named


def press_of(placement: Placement) -> Press:
    """How it is pressed: held, press on and press off, or plainly; plainly for a stick as well.

    Parameters
    ----------
    placement : Placement
        One done at a site.
    """
    if placement.toggle:
        return "latching"
    return "held" if placement.press is not None and placement.press.hold_s else "plain"


def own_words(placement: Placement) -> Name | None:
    """What the player said about it, without quotes; None when nothing was said.

    Examples
    --------
    >>> own_words(Placement("menu", "helper", words='"She may do that"'))
    'She may do that'
    """
    return named(placement.words.strip().strip(chr(34)).strip("“”"))


def done_by(placement: Placement, *, with_site: bool = True) -> str:
    """What does an action, for somebody who was not there: site and device, the game, a helper, or nobody.

    Parameters
    ----------
    placement : Placement
        How one action is done.
    with_site : bool, default True
        Whether the site is named, or left to the number beside it.

    Examples
    --------
    >>> done_by(Placement("menu", "helper", helper="sister", words="She may do that"))
    'sister, on the second controller; the player: “She may do that”'
    >>> done_by(Placement("aim", "site", site="left index", device="pip", kind="switch", toggle=True))
    'left index on pip: press on, press off'
    """
    return say(control_of(placement, with_site=with_site))


def control_of(placement: Placement, *, with_site: bool = True) -> Message:
    """`done_by` as a message.

    Parameters
    ----------
    placement : Placement
        How one action is done.
    with_site : bool, default True
        Whether the site is named.
    """
    own = own_words(placement)
    if placement.how == "site":
        site = named(placement.site) if with_site else None
        return message(Glance.at_site, site=site, device=device_words(placement), press=press_of(placement))
    if placement.how == "chord":
        return message(Glance.together, actions=names(placement.together))
    if placement.how == "option":
        return message(Glance.by_game, option=named(placement.label), words=own)
    if placement.how == "helper":
        return message(Glance.by_helper, helper=named(placement.helper), words=own)
    return message(Glance.left_out, words=own)


def place_of(placement: Placement) -> Text:
    """Where an action is done, in one or two words, for a narrow column.

    Parameters
    ----------
    placement : Placement
        How one action is done.
    """
    if placement.how == "site":
        return Name(placement.site or "")
    return named(placement.helper) or message(Glance.place, how=placement.how)


def socket_words(placement: Placement, tag: str = "") -> str:
    """The socket, with its hub and the tag of its cable; that it is paired for the second controller; nothing when none.

    Parameters
    ----------
    placement : Placement
        How one action is done.
    tag : str, default ""
        Of the cable, when one is drawn.
    """
    return say(socket_of(placement, tag) or "")


def socket_of(placement: Placement, tag: str = "") -> Message | None:
    """`socket_words` as a message; None when there is no socket.

    Parameters
    ----------
    placement : Placement
        How one action is done.
    tag : str, default ""
        Of the cable, when one is drawn.
    """
    if placement.connection == "paired":
        return message(Sockets.paired) if placement.how == "site" else None
    if not placement.socket:
        return None
    return message(Sockets.of_hub, socket=socket_name(placement.socket), hub=named(placement.hub), tag=named(tag))


def socket_name(socket: str) -> Text:
    """A socket as one looks for it: by its name, and by the number in the splitter in it.

    Examples
    --------
    >>> socket_name("u1"), socket_name("u1/2").code
    ('u1', 'Sockets.of_splitter')
    """
    name, _, way = socket.rpartition("/")
    if name and way.isdigit():
        return message(Sockets.of_splitter, socket=Name(name), way=Name(way))
    return Name(socket)


def introductions(placements: Iterable[Placement]) -> tuple[Message, ...]:
    """The order in which the player meets the controls: when, and which actions.

    Parameters
    ----------
    placements : iterable of Placement
        All of a plan.
    """
    told: dict[str, list[str]] = {}
    for one in placements:
        if one.introduce:
            told.setdefault(one.introduce, []).append(one.action)
    moments: tuple[When, ...] = get_args(When)
    return tuple(message(Glance.introduced, when=when, actions=names(told[when])) for when in moments if when in told)


def given_up(clash: Clash) -> Message | None:
    """What was given up so that the rest can be had; the placements hold for that.

    Parameters
    ----------
    clash : Clash
        With its ways out, cheapest first.
    """
    if not clash.ways_out:
        return None
    cheapest = clash.ways_out[0]
    return message(Glance.given_up, parts=cheapest.gives_up or (cheapest.sentence,))


def way_out(number: int, clash: Clash) -> Message:
    """One way out with its price; the cheapest is the one that this layout takes.

    Parameters
    ----------
    number : int
        1 is the cheapest.
    clash : Clash
        With its ways out.
    """
    way = clash.ways_out[number - 1]
    return message(LayoutPages.way_out, told=way.sentence, cost_points=way.price, taken=number == 1)


def pair_words(pair: Pair) -> Message:
    """Whether two sites act at the same time; assumed ones are marked.

    Parameters
    ----------
    pair : Pair
        Two sites.
    """
    slowed = pair.slowed_share if pair.says == "slows" and pair.slowed_share > 0 else None
    return message(
        LayoutPages.pair, sites=names(pair.sites), says=pair.says, slowed_share=slowed, assumed=pair.assumed or None
    )


def load_told(load: SiteLoad) -> Message:
    """What a site is asked to do, how busy it is and when it tires.

    Parameters
    ----------
    load : SiteLoad
        One site.
    """
    return message(
        LayoutPages.load, site=Name(load.site), actions=names(load.actions),
        busy_share=load.busy_share if load.busy_share > 0 else None, basis=load.busy_basis or None,
        tires=load.tires or None, why=load.why or None,
    )  # fmt: skip


def power_words(line: PowerLine) -> Text:
    """Current at a socket, a splitter or a hub, against its limit."""
    return line.words


def wire_words(wire: Wire) -> str:
    """One cable in a line: tag, device, all between, socket, and what is missing.

    Parameters
    ----------
    wire : Wire
        One device to one socket.
    """
    tag, device = Name(wire.tag), Name(wire.device)
    placed = message(Wirings.device_at, device=device, sites=names(wire.at)) if wire.at else device
    if wire.paired:
        return tell(WiringPages.paired, tag=tag, device=placed, hub=named(wire.hub))
    socket = message(Sockets.of_hub, socket=socket_name(wire.socket), hub=named(wire.hub), tag=None)
    return tell(
        WiringPages.wire, tag=tag, device=placed, through=names(wire.through), socket=socket, role=role_named(wire.role),
        missing=wire.lacks,
    )  # fmt: skip


def lacking(wiring: Wiring) -> tuple[Message, ...]:
    """What the cables still lack, by their tags, that stands on no line of the parts list.

    Parameters
    ----------
    wiring : Wiring
        With its cables.
    """
    return tuple(
        message(WiringPages.lacking, tag=Name(wire.tag), missing=wire.lacks)
        for wire in wiring.wires
        if wire.lacks is not None
    )


def bought(parts: Sequence[PartLine], missing: tuple[Message, ...] = ()) -> tuple[Message, ...]:
    """What must be ordered altogether, with the price as far as it is known.

    Parameters
    ----------
    parts : sequence of PartLine
        The whole parts list.
    missing : tuple of Message, default ()
        What the cables still lack.
    """
    wanted = [one for one in parts if one.buy]
    told = []
    if wanted:
        prices = [one.price for one in wanted if one.price is not None]
        pieces = tuple(message(WiringPages.pieces, count=one.buy, part=one.name) for one in wanted)
        total = sum(prices) if prices else None
        unpriced = len(prices) < len(wanted)
        told.append(message(WiringPages.to_order, parts=pieces, total_price=total, unpriced=unpriced))
    elif parts and not missing:
        told.append(message(WiringPages.all_in_stock))
    if missing:
        told.append(message(WiringPages.still_missing, missing=missing))
    return tuple(told)


def tags_of(sharing: Sharing) -> dict[tuple[str, str], str]:
    """Tag of the cable in each socket, by hub and socket."""
    wires = sharing.wiring.wires if sharing.wiring is not None else ()
    return {(wire.hub, wire.socket): wire.tag for wire in wires}
