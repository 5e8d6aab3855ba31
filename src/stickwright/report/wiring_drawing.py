"""The wiring as a drawing: devices on the left, the hub with its sockets on the right, one line a cable.

Every socket has its own row, in the hub's order, and the device that goes into it stands in the same row: no two lines
cross, and none runs through words. Cables are told apart by tag at both ends, by dashes and by plug, not by colour.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from stickwright.allocation.netlist import empty_sockets, is_paired
from stickwright.allocation.power import bare_socket
from stickwright.catalogue import say
from stickwright.codes.cables import Cables, LeadKind
from stickwright.codes.inputs import role_named
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.plugs import PlugKind, Plugs
from stickwright.codes.wiring_drawings import WiringDrawings
from stickwright.model.hub import Hub
from stickwright.model.plugs import is_usb, plugs_of
from stickwright.model.sharing import Wire, Wiring
from stickwright.report.ink import (
    FLAG_MM,
    LINE_MM,
    PLUG_MM,
    TYPE_MM,
    Ink,
    fitted,
    flag,
    plug_symbol,
    plug_words,
    text_mm,
)
from stickwright.report.mount_shapes import plain_words

__all__ = ["way_parts", "wiring_alt", "wiring_drawing", "wiring_rows"]

_PAD_MM, _GAP_MM, _HEAD_MM = 1.1, 2.0, 7.0
_HUB_MM = 51.0
_LEFT_MM, _LEFT_ALONE_MM = 56.0, 84.0  # the devices' column where leads stand beside it, and where none do
_NO_LENGTH_M = 1e-9
_PAGE_MM = 236.0  # what an A4 page has for the rows; names are shortened before it is passed
_DASHES = ("", "4 1.4", "1 1.2", "6 1.2 1 1.2", "2.4 1.2", "6 1.2 1 1.2 1 1.2", "0.5 0.9", "3.4 1 1.2 1")


@dataclass(frozen=True)
class _Strip:
    """One row: what one socket (or several empty ones) looks like, and the cables that end there."""

    words: tuple[str, ...]
    """At the socket."""
    wires: tuple[Wire, ...]
    takes: str
    bold: bool = True
    ways: tuple[int, ...] = ()
    """Of a splitter, one for each cable."""


@dataclass(frozen=True)
class _Columns:
    """Where things stand across the page, in millimetre."""

    width: float
    left: float
    """Right end of the devices."""

    @property
    def hub(self) -> float:
        return self.width - _HUB_MM

    @property
    def plug(self) -> float:
        """Left end of the plug at the hub."""
        return self.hub - PLUG_MM

    @property
    def first_flag(self) -> float:
        return self.left + 2.0

    @property
    def first_box(self) -> float:
        return self.first_flag + FLAG_MM[0] + 4.0 + PLUG_MM

    def last_flag(self, split: bool) -> float:
        return (self.splitter if split else self.plug) - FLAG_MM[0] - 2.0

    @property
    def splitter(self) -> float:
        return self.plug - 22.0

    def box_room(self, split: bool) -> float:
        return self.last_flag(split) - 3.0 - self.first_box


def wiring_rows(wiring: Wiring) -> tuple[tuple[str, str, str, str, str, str, str], ...]:
    """The cables as a table.

    Parameters
    ----------
    wiring : Wiring
        Cable by cable.

    Returns
    -------
    tuple of tuple of str
        Tag, from, plug, through, to, as what (role and actions), length.
    """
    return tuple(_row(wire) for wire in wiring.wires)


def _row(wire: Wire) -> tuple[str, str, str, str, str, str, str]:
    device = message(WiringDrawings.device_at, device=Name(wire.device), sites=_typed(wire.at))
    through = message(WiringDrawings.through, through=_typed(wire.through), missing=wire.missing)
    doing = message(WiringDrawings.acts_as, role=role_named(wire.role), actions=_typed(wire.actions))
    length = message(WiringDrawings.length, length_m=wire.length_m, needed_m=wire.needed_m)
    if is_paired(wire):
        plug, socket = message(WiringDrawings.no_cable), message(WiringDrawings.paired)
        return _told(wire, device, plug, through, _to(wire, socket), doing, "")
    plug = message(Plugs.named, plug=wire.plug) if wire.plug else message(WiringDrawings.not_recorded)
    return _told(wire, device, plug, through, _to(wire, Name(wire.socket)), doing, length)


def _told(wire: Wire, *cells: Text) -> tuple[str, str, str, str, str, str, str]:
    device, plug, through, to, doing, length = map(say, cells)
    return wire.tag, device, plug, through, to, doing, length


def _to(wire: Wire, socket: Text) -> Text:
    return message(WiringDrawings.to, hub=Name(wire.hub), socket=socket) if wire.hub else socket


def _typed(names: Iterable[str]) -> tuple[Name, ...]:
    return tuple(map(Name, names))


def way_parts(wiring: Wiring) -> tuple[str, ...]:
    """What the length of each cable is made of, where an arm adds to it or the way was reckoned; alike cables in one line.

    Parameters
    ----------
    wiring : Wiring
        Cable by cable.
    """
    told: dict[tuple[float | bool, ...], list[Wire]] = {}
    for wire in wiring.wires:
        if wire.tied_m is None or wire.needed_m is None or not (wire.along_m or wire.assumed):
            continue
        lengths = (wire.tied_m, bool(wire.assumed), wire.along_m, wire.slack_m, wire.tilt_m, wire.needed_m)
        told.setdefault(lengths, []).append(wire)
    return tuple(say(_parts(wires)) for wires in told.values())


def _parts(wires: Sequence[Wire]) -> Message:
    one = wires[0]
    tied, needed = one.tied_m or 0.0, one.needed_m or 0.0
    loop = needed - tied - one.along_m - one.tilt_m
    mount, joints, tilt, spare = (
        part if part > _NO_LENGTH_M else None for part in (one.along_m - one.slack_m, one.slack_m, one.tilt_m, loop)
    )
    return message(
        Cables.parts, tags=_typed(wire.tag for wire in wires), tied_m=tied, assumed=bool(one.assumed), mount_m=mount,
        joints_m=joints, tilt_m=tilt, loop_m=spare, needed_m=needed,
    )  # fmt: skip


def wiring_alt(wiring: Wiring) -> str:
    """The drawing in one sentence.

    Parameters
    ----------
    wiring : Wiring
        The wiring drawn.
    """
    if not wiring.wires:
        return say(message(WiringDrawings.nothing))
    return say(message(WiringDrawings.alt, cables=tuple(_alt_cable(wire) for wire in wiring.wires)))


def _alt_cable(wire: Wire) -> Message:
    tag, device, sites, hub = Name(wire.tag), Name(wire.device), _typed(wire.at), Name(wire.hub)
    if is_paired(wire):
        return message(WiringDrawings.alt_paired, tag=tag, device=device, sites=sites, hub=hub)
    return message(
        WiringDrawings.alt_cable, tag=tag, device=device, sites=sites, through=_typed(wire.through), socket=Name(wire.socket),
        hub=hub, missing=bool(wire.missing),
    )  # fmt: skip


def wiring_drawing(wiring: Wiring, hubs: Sequence[Hub], width_mm: float = 184.0) -> str:
    """Devices, leads and sockets, one straight line a cable.

    Parameters
    ----------
    wiring : Wiring
        Cable by cable.
    hubs : sequence of Hub
        With all their sockets, so that the empty ones are shown.
    width_mm : float, default 184
        On paper; the height follows from what there is.

    Returns
    -------
    str
        SVG in millimetre, the same bytes for the same wiring.
    """
    import drawsvg

    lost = sorted({wire.hub for wire in wiring.wires} - {hub.name for hub in hubs})
    if lost:
        raise ValueError(f"the hubs to draw lack {', '.join(lost)}")
    boards = [
        (hub.name, list(_strips(hub, wiring, hubs))) for hub in hubs if any(w.hub == hub.name for w in wiring.wires)
    ]
    alone = not any(wire.through or wire.missing for wire in wiring.wires)
    across = _Columns(width_mm, _LEFT_ALONE_MM if alone else _LEFT_MM)
    tall, lines = 0.0, 1
    for lines in (6, 5, 4, 3, 2):
        tall = sum(
            _HEAD_MM + _GAP_MM + sum(_strip_mm(strip, across, lines) for strip in strips) for _, strips in boards
        )
        if tall <= _PAGE_MM:
            break
    plugs = _plugs_shown(wiring)
    legend_rows = _legend_rows(plugs, width_mm)
    height = _HEAD_MM + tall + LINE_MM * 1.5 * len(legend_rows) + 2.0
    drawing = drawsvg.Drawing(width_mm, round(height, 2), origin=(0, 0))
    drawing.set_render_size(f"{width_mm:g}mm", f"{round(height, 2):g}mm")
    drawing.append_title(wiring_alt(wiring))
    ink = Ink(drawing)
    ink.words(say(message(WiringDrawings.devices)), (0.0, TYPE_MM + 1.0), bold=True)
    ink.words(say(message(WiringDrawings.hubs)), (width_mm, TYPE_MM + 1.0), bold=True, anchor="end")
    top, count = _HEAD_MM, 0
    for name, strips in boards:
        top, count = _board(ink, across, name, strips, top, count=count, lines=lines)
    for row, entries in enumerate(legend_rows):
        _legend(ink, entries, top + LINE_MM * (1.5 * row + 0.8))
    return str(drawing.as_svg())


# --- what there is to draw --------------------------------------------------------------------------------------------


def _strips(hub: Hub, wiring: Wiring, hubs: Sequence[Hub]) -> Iterator[_Strip]:
    """Rows of one hub: its sockets in order, neighbours that are merely empty in one, then what is paired."""
    known = [socket.name for socket in hub.socket]
    here = [wire for wire in wiring.wires if wire.hub == hub.name]
    shut = empty_sockets(wiring.wires, hubs)
    bare: list[str] = []

    def empties() -> Iterator[_Strip]:
        if bare:
            yield _Strip((say(message(WiringDrawings.empty, sockets=_typed(bare))),), (), "", bold=False)
            bare.clear()

    for socket in hub.socket:
        wires = tuple(
            wire for wire in here if not is_paired(wire) and bare_socket(wire.socket, known)[0] == socket.name
        )
        if not wires and (hub.name, socket.name) not in shut:
            bare.append(socket.name)
            continue
        yield from empties()
        if not wires:
            why = shut[hub.name, socket.name]
            words = say(message(WiringDrawings.keep_empty, socket=Name(socket.name), why=why))
            yield _Strip((words,), (), "", bold=False)
            continue
        ways = tuple(way for wire in wires if (way := bare_socket(wire.socket, known)[1]) is not None)
        ways = ways if len(ways) == len(wires) else ()
        feeds = (
            [message(WiringDrawings.way, way=way, feeds=_feeds(wire)) for way, wire in zip(ways, wires, strict=True)]
            if ways
            else map(_feeds, wires)
        )
        plugs = plugs_of(socket.takes)
        takes = message(Plugs.takes, plugs=plugs) if plugs else None
        name = message(WiringDrawings.socket, socket=Name(socket.name), takes=takes)
        told = tuple(say(one) for one in (name, *feeds) if one is not None)
        yield _Strip(told, wires, socket.takes, ways=ways)
    yield from empties()
    for wire in here:
        if is_paired(wire):
            role = role_named(wire.role)
            feeds = [message(WiringDrawings.feeds, role=role)] if role is not None else []
            yield _Strip(tuple(say(one) for one in (message(WiringDrawings.paired), *feeds)), (wire,), "")


def _feeds(wire: Wire) -> Message | None:
    role = role_named(wire.role)
    if role is not None:
        return message(WiringDrawings.feeds, role=role)
    return message(WiringDrawings.any_button) if len(wire.conductors) == 2 else None


def _boxes(wire: Wire, split: bool) -> list[tuple[str, bool]]:
    """Leads on the line, in order from the device; true for what is missing. A splitter is drawn by itself."""
    lacks_splitter = _lacks_splitter(wire)
    there = wire.through[:-1] if split and not lacks_splitter else wire.through
    lacking = [plain_words(_short(one)) for one in wire.missing if _kind(one) != "splitter"]
    return [*((name, False) for name in there), *((words, True) for words in lacking)]


def _kind(lead: Message) -> LeadKind:
    """What is missing, by its code."""
    return lead.text  # type: ignore[return-value]


def _lacks_splitter(wire: Wire) -> bool:
    return any(_kind(one) == "splitter" for one in wire.missing)


def _short(lead: Message) -> Message:
    """What is missing without its plugs, which are drawn beside it."""
    kind = _kind(lead)
    return message(Cables.lacks, kind=kind, least_m=lead.param("least_m") if kind == "extension" else None)


def _plugs_shown(wiring: Wiring) -> list[PlugKind]:
    ends: list[PlugKind] = [
        end for wire in wiring.wires if not is_paired(wire) for end in (wire.plug, _hub_plug(wire)) if end
    ]
    return sorted(set(ends))


def _hub_plug(wire: Wire) -> PlugKind | Literal[""]:
    """The plug that goes into the socket of the hub: the device's own, or the adapter's."""
    takes = plugs_of(wire.takes)
    return wire.plug if wire.plug in takes or not takes else takes[0]


# --- sizes ------------------------------------------------------------------------------------------------------------


def _device_lines(wire: Wire, across: _Columns, most: int) -> tuple[list[str], list[str]]:
    """The device in bold, and below it where it stands and what it does."""
    room = across.left - 2 * _PAD_MM
    device = fitted(wire.device, room, 2 if most > 3 else 1, bold=True)
    doing = _doing(wire.at, wire)
    left = max(1, most - len(device))
    if left == 1 and wire.actions and text_mm(doing) > room:
        sites = say(message(WiringDrawings.doing, sites=_typed(wire.at), actions=()))
        doing = _doing(fitted(sites, room * 0.45, 1), wire)  # both are worth a part of the line
    return device, fitted(doing, room, left)


def _doing(sites: Iterable[str], wire: Wire) -> str:
    return say(message(WiringDrawings.doing, sites=_typed(sites), actions=_typed(wire.actions)))


def _strip_lines(strip: _Strip) -> list[str]:
    room = _HUB_MM - 7.0
    return [line for place, words in enumerate(strip.words) for line in fitted(words, room, 3, bold=place == 0)]


def _box_mm(text: str, room_mm: float) -> float:
    return len(fitted(text, room_mm - 2.0)) * LINE_MM + 1.6


def _wire_mm(wire: Wire, across: _Columns, split: bool, lines: int) -> float:
    """Height that one cable's row needs."""
    device = sum(map(len, _device_lines(wire, across, lines))) * LINE_MM + 2 * _PAD_MM
    stack = [_box_mm(text, across.box_room(split)) + _GAP_MM for text, _ in _boxes(wire, split)]
    return max(device, sum(stack) - _GAP_MM, FLAG_MM[1] + 1.0)


def _strip_mm(strip: _Strip, across: _Columns, lines: int) -> float:
    split = bool(strip.ways)
    wires = sum(_wire_mm(wire, across, split, lines) + _GAP_MM for wire in strip.wires)
    return max(wires, len(_strip_lines(strip)) * LINE_MM + _GAP_MM)


# --- drawing ----------------------------------------------------------------------------------------------------------


def _board(
    ink: Ink, across: _Columns, name: str, strips: Sequence[_Strip], top: float, *, count: int, lines: int
) -> tuple[float, int]:
    """One hub with all that goes into it; where the next may begin, and how many cables were drawn."""
    tall = _HEAD_MM + sum(_strip_mm(strip, across, lines) for strip in strips)
    ink.box(across.hub, top, _HUB_MM - 0.3, tall, round_mm=2.0, line_mm=0.6)
    ink.paragraph(fitted(name, _HUB_MM - 7.0, 1, bold=True), across.hub + 5.5, top + _HEAD_MM / 2, bold=1)
    here = top + _HEAD_MM
    for strip in strips:
        high = _strip_mm(strip, across, lines)
        ink.line((across.hub, here), (across.width - 0.3, here), width=0.2)
        ends = _cables(ink, across, strip, here, count, lines)
        middle = here + high / 2 if not ends else sum(ends) / len(ends)
        said = _strip_lines(strip)
        half = len(said) * LINE_MM / 2
        first = len(fitted(strip.words[0], _HUB_MM - 7.0, 3, bold=True))
        words_at = (
            min(max(middle, here + half + 0.4), here + high - half - 0.4) if high > 2 * half + 0.8 else here + high / 2
        )
        ink.paragraph(said, across.hub + 5.5, words_at, bold=first if strip.bold else 0)
        if strip.takes and ends:
            _hole(ink, across.hub, middle, strip.takes)
        count += len(strip.wires)
        here += high
    return here + _GAP_MM, count


def _hole(ink: Ink, left: float, middle: float, takes: str) -> None:
    """The socket on the edge of the hub: a slot or a round jack."""
    usb = is_usb(plugs_of(takes)[0])
    ink.box(left - 0.3, middle - (1.9 if usb else 1.5), 3.2, 3.8 if usb else 3.0, round_mm=0.2 if usb else 1.5)


def _cables(ink: Ink, across: _Columns, strip: _Strip, top: float, count: int, lines: int) -> list[float]:
    """The cables of one socket, one below the other; heights at which they arrive."""
    split = bool(strip.ways)
    ends = []
    here = top
    for place, wire in enumerate(strip.wires):
        high = _wire_mm(wire, across, split, lines)
        if place == len(strip.wires) - 1:
            high = max(high, top + _strip_mm(strip, across, lines) - _GAP_MM - here)
        dash = _DASHES[(count + place) % len(_DASHES)]
        ends.append(_cable(ink, across, wire, (here + _GAP_MM / 2, high), dash=dash, split=split, lines=lines))
        here += high + _GAP_MM
    if split and ends:
        _splitter(ink, across, strip, ends)
        middle = sum(ends) / len(ends)
        ink.line((across.splitter + 20.0, middle), (across.plug, middle))
        plug_symbol(ink, across.plug, middle, _hub_plug(strip.wires[0]))
        return [middle]
    return ends


def _splitter(ink: Ink, across: _Columns, strip: _Strip, ends: Sequence[float]) -> None:
    missing = _lacks_splitter(strip.wires[0])
    lacks = message(Cables.lacks, kind="splitter", least_m=None)
    name = say(lacks) if missing else strip.wires[0].through[-1]
    top, bottom = min(ends) - 4.0, max(ends) + 4.0
    said = fitted(name, 14.5)
    grow = max(0.0, len(said) * LINE_MM + 1.6 - (bottom - top)) / 2
    ink.box(across.splitter, top - grow, 20.0, bottom - top + 2 * grow, dash="1.2 1" if missing else "")
    ink.paragraph(said, across.splitter + 4.8, (top + bottom) / 2)
    for way, at in zip(strip.ways, ends, strict=True):
        ink.words(str(way), (across.splitter + 1.2, at + 1.1))


def _cable(
    ink: Ink, across: _Columns, wire: Wire, row: tuple[float, float], *, dash: str, split: bool, lines: int
) -> float:
    """One cable from its device to where it ends; the height of that end."""
    top, high = row
    bold, plain_lines = _device_lines(wire, across, lines)
    deep = (len(bold) + len(plain_lines)) * LINE_MM + 2 * _PAD_MM
    middle = top + high / 2
    boxes = _boxes(wire, split)
    room = across.box_room(split)
    heights = [_box_mm(text, room) for text, _ in boxes]
    stack = sum(heights) + _GAP_MM * max(0, len(heights) - 1)
    start = middle if len(boxes) < 2 else middle - stack / 2 + heights[0] / 2
    end = middle if len(boxes) < 2 else middle + stack / 2 - heights[-1] / 2
    at = max(top + deep / 2, min(start, top + high - deep / 2))
    ink.box(0.15, at - deep / 2, across.left - 0.15, deep, round_mm=1.0)
    ink.paragraph([*bold, *plain_lines], _PAD_MM, at, bold=len(bold))
    after = across.first_flag + FLAG_MM[0]
    flag(ink, across.first_flag, start, wire.tag)
    if is_paired(wire):  # no cable, so no second end to flag
        ink.paragraph([say(message(WiringDrawings.no_cable))], after + 2.0, middle)
        return end
    flag(ink, across.last_flag(split), end, wire.tag)
    ink.line((across.left, start), (across.first_flag, start), dash=dash)
    here = after
    if boxes:
        ink.line((after, start), (across.first_box - PLUG_MM, start), dash=dash)
        plug_symbol(ink, across.first_box - PLUG_MM, start, wire.plug)
        _stack(ink, across, boxes, heights, start - heights[0] / 2, room)
        here = across.first_box + room
    ink.line((here, end), (across.last_flag(split), end), dash=dash)
    flagged = across.last_flag(split) + FLAG_MM[0]
    ink.line((flagged, end), (across.splitter if split else across.plug, end), dash=dash)
    if not split:
        plug_symbol(ink, across.plug, end, _hub_plug(wire))
    return end


def _stack(
    ink: Ink, across: _Columns, boxes: Sequence[tuple[str, bool]], heights: Sequence[float], top: float, room: float
) -> None:
    """Leads below each other, joined by a short line, in order from the device."""
    for place, ((text, missing), height) in enumerate(zip(boxes, heights, strict=True)):
        if place:
            joint = across.first_box + room / 2
            ink.line((joint, top - _GAP_MM), (joint, top))
        ink.box(across.first_box, top, room, height, dash="1.2 1" if missing else "", fill="white")
        ink.paragraph(fitted(text, room - 2.0), across.first_box + 1.0, top + height / 2)
        top += height + _GAP_MM


def _legend_rows(plugs: Sequence[PlugKind], width_mm: float) -> list[list[tuple[float, PlugKind]]]:
    """Which drawing of a plug is which, in as many rows as it takes: left end and plug of each."""
    rows: list[list[tuple[float, PlugKind]]] = []
    left = width_mm
    for plug in plugs:
        wide = PLUG_MM + 1.6 + text_mm(plug_words(plug)) + 5.0
        if left + wide > width_mm + 5.0:
            rows.append([])
            left = 0.0
        rows[-1].append((left, plug))
        left += wide
    return rows


def _legend(ink: Ink, entries: Sequence[tuple[float, PlugKind]], middle: float) -> None:
    for left, plug in entries:
        plug_symbol(ink, left, middle, plug)
        ink.words(plug_words(plug), (left + PLUG_MM + 1.6, middle + TYPE_MM * 0.36))
