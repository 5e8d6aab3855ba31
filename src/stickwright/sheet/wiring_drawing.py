"""The wiring as a drawing: devices on the left, the hub with its sockets on the right, one line a cable.

Every socket has its own row, in the hub's order, and the device that goes into it stands in the same row: no two lines
cross, and none runs through words. Cables are told apart by tag at both ends, by dashes and by plug, not by colour.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from stickwright.allocation.netlist import empty_sockets, is_paired
from stickwright.allocation.power import bare_socket
from stickwright.model.hub import Hub
from stickwright.model.plugs import conductors_of, is_usb, plugs_of
from stickwright.model.sharing import Wire, Wiring
from stickwright.sheet.printed import in_unit, label_of, listed

if TYPE_CHECKING:
    import drawsvg

__all__ = ["wiring_alt", "wiring_drawing", "wiring_rows"]

_TYPE_MM, _LINE_MM = 3.1, 3.9  # 8.8 points, on lines of 11
_PAD_MM, _GAP_MM, _HEAD_MM = 1.1, 2.0, 7.0
_HUB_MM = 51.0
_LEFT_MM, _LEFT_ALONE_MM = 56.0, 84.0  # the devices' column where leads stand beside it, and where none do
_FLAG_MM, _PLUG_MM = (8.4, 4.6), 8.0
_PAGE_MM = 236.0  # what an A4 page has for the rows; names are shortened before it is passed
_FONT = "DejaVu Sans, sans-serif"
_DASHES = ("", "4 1.4", "1 1.2", "6 1.2 1 1.2", "2.4 1.2", "6 1.2 1 1.2 1 1.2", "0.5 0.9", "3.4 1 1.2 1")
_WIDTHS_EM = {
    **dict.fromkeys("ijl|'", 0.29), **dict.fromkeys(" .,:;", 0.34), **dict.fromkeys("frt()/-", 0.42),
    **dict.fromkeys("cszJ", 0.56), **dict.fromkeys("mwMW%+@…", 1.0),
}  # fmt: skip
_SPLITTER = "a splitter"  # how what is missing begins, where it is one
_LETTER_EM, _CAPITAL_EM, _BOLD = 0.64, 0.79, 1.11


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
        return self.hub - _PLUG_MM

    @property
    def first_flag(self) -> float:
        return self.left + 2.0

    @property
    def first_box(self) -> float:
        return self.first_flag + _FLAG_MM[0] + 4.0 + _PLUG_MM

    def last_flag(self, split: bool) -> float:
        return (self.splitter if split else self.plug) - _FLAG_MM[0] - 2.0

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
    rows = []
    for wire in wiring.wires:
        through = [*wire.through, *([f"MISSING: {wire.missing}"] if wire.missing else [])]
        actions = ", ".join(wire.actions)
        doing = f"{wire.role}: {actions}" if wire.role and actions else wire.role or actions
        to = f"{wire.hub}, {wire.socket}" if wire.hub else wire.socket
        device = f"{wire.device} at {wire.at}" if wire.at else wire.device
        rows.append((wire.tag, device, wire.plug or "not said", ", ".join(through), to, doing, _length(wire)))
    return tuple(rows)


def _length(wire: Wire) -> str:
    if is_paired(wire):
        return ""
    has = "not measured" if wire.length_m is None else _metres(wire.length_m)
    return f"{has}; way not taken" if wire.needed_m is None else f"{has}; {_metres(wire.needed_m)} needed"


def _metres(length_m: float) -> str:
    """To the centimetre: what a tape along the way can tell."""
    return f"{in_unit(length_m, 'm'):.2f} {label_of('m')}"


def wiring_alt(wiring: Wiring) -> str:
    """The drawing in one sentence.

    Parameters
    ----------
    wiring : Wiring
        The wiring drawn.
    """
    if not wiring.wires:
        return "Nothing is plugged in."
    said = [f"{wire.tag}, {wire.device} at {wire.at}, {_end(wire)}" for wire in wiring.wires]
    return f"Wiring, one line a cable: {'; '.join(said)}."


def _end(wire: Wire) -> str:
    if is_paired(wire):
        return f"paired with {wire.hub} without a cable"
    through = f"through {listed(wire.through)} " if wire.through else ""
    return f"{through}into {wire.socket} of {wire.hub}{' (a lead is missing)' if wire.missing else ''}"


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
    height = _HEAD_MM + tall + _LINE_MM * 1.5 * len(legend_rows) + 2.0
    drawing = drawsvg.Drawing(width_mm, round(height, 2), origin=(0, 0))
    drawing.set_render_size(f"{width_mm:g}mm", f"{round(height, 2):g}mm")
    drawing.append_title(wiring_alt(wiring))
    ink = _Ink(drawing)
    ink.words("What stands where, and does what", (0.0, _TYPE_MM + 1.0), bold=True)
    ink.words("What is plugged in, socket by socket", (width_mm, _TYPE_MM + 1.0), bold=True, anchor="end")
    top, count = _HEAD_MM, 0
    for name, strips in boards:
        top, count = _board(ink, across, name, strips, top, count, lines)
    for row, entries in enumerate(legend_rows):
        _legend(ink, entries, top + _LINE_MM * (1.5 * row + 0.8))
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
            yield _Strip((f"{', '.join(bare)}: empty",), (), "", bold=False)
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
            yield _Strip((f"{socket.name}: keep empty: {shut[hub.name, socket.name]}",), (), "", bold=False)
            continue
        ways = tuple(way for wire in wires if (way := bare_socket(wire.socket, known)[1]) is not None)
        ways = ways if len(ways) == len(wires) else ()
        feeds = (
            [f"way {way}: {_feeds(wire)}" for way, wire in zip(ways, wires, strict=True)]
            if ways
            else map(_feeds, wires)
        )
        yield _Strip((f"{socket.name}: {socket.takes}", *filter(None, feeds)), wires, socket.takes, ways=ways)
    yield from empties()
    for wire in here:
        if is_paired(wire):
            yield _Strip(("paired", *filter(None, [wire.role])), (wire,), "")


def _feeds(wire: Wire) -> str:
    return wire.role or ("any button" if len(wire.conductors) == 2 else "")


def _boxes(wire: Wire, split: bool) -> list[tuple[str, bool]]:
    """Leads on the line, in order from the device; true for what is missing. A splitter is drawn by itself."""
    missing = [words for words in wire.missing.split("; ") if words]
    lacks_splitter = any(words.startswith(_SPLITTER) for words in missing)
    there = wire.through[:-1] if split and not lacks_splitter else wire.through
    lacking = [f"missing: {_short(words)}" for words in missing if not words.startswith(_SPLITTER)]
    return [*((name, False) for name in there), *((words, True) for words in lacking)]


def _short(words: str) -> str:
    """What is missing without its plugs, which are drawn beside it.

    Examples
    --------
    >>> _short("an extension lead, 3.5 mm 2-conductor, 1 m or longer")
    'extension lead of 1 m'
    """
    parts = words.split(" from ")[0].removeprefix("an ").removeprefix("a ").split(", ")
    return parts[0] if len(parts) < 2 else f"{parts[0]} of {parts[-1].removesuffix(' or longer')}"


def _plugs_shown(wiring: Wiring) -> list[str]:
    ends = [end for wire in wiring.wires if not is_paired(wire) for end in (wire.plug, _hub_plug(wire)) if end]
    return sorted(set(ends))


def _hub_plug(wire: Wire) -> str:
    """The plug that goes into the socket of the hub: the device's own, or the adapter's."""
    takes = plugs_of(wire.takes)
    return wire.plug if wire.plug in takes or not takes else takes[0]


# --- sizes ------------------------------------------------------------------------------------------------------------


def _text_mm(text: str, bold: bool = False) -> float:
    """About as wide as it will be printed, on the wide side."""
    em = sum(_WIDTHS_EM.get(letter, _CAPITAL_EM if letter.isupper() else _LETTER_EM) for letter in text)
    return em * _TYPE_MM * (_BOLD if bold else 1.0)


def _folded(text: str, room_mm: float, most: int = 9, bold: bool = False) -> list[str]:
    """Lines that fit, broken between words, or inside one that is too long for any line."""
    lines = [""]
    for word in re.sub(r"(\d) (m|mm|mA)\b", "\\1\u00a0\\2", text).split(" "):
        while _text_mm(word, bold) > room_mm:
            cut = next(n for n in range(len(word) - 1, 0, -1) if n == 1 or _text_mm(word[:n] + "-", bold) <= room_mm)
            lines += [f"{word[:cut]}-"]
            word = word[cut:]
        longer = f"{lines[-1]} {word}".strip()
        if _text_mm(longer, bold) <= room_mm:
            lines[-1] = longer
        else:
            lines.append(word)
    lines = [line for line in lines if line]
    if len(lines) > most:
        rest = " ".join(lines[most - 1 :])
        while rest and _text_mm(f"{rest}…", bold) > room_mm:
            rest = rest[:-1].rstrip(" ,")
        lines = [*lines[: most - 1], f"{rest}…"]
    return [line.replace("\u00a0", " ") for line in lines]


def _device_lines(wire: Wire, across: _Columns, most: int) -> tuple[list[str], list[str]]:
    """The device in bold, and below it where it stands and what it does."""
    room = across.left - 2 * _PAD_MM
    device = _folded(wire.device, room, 2 if most > 3 else 1, bold=True)
    doing = f"{wire.at}: {', '.join(wire.actions)}" if wire.actions else wire.at
    left = max(1, most - len(device))
    if left == 1 and wire.actions and _text_mm(doing) > room:
        site = _folded(wire.at, room * 0.45, 1)[0]  # both are worth a part of the line
        doing = f"{site}: {', '.join(wire.actions)}"
    return device, _folded(doing, room, left)


def _strip_lines(strip: _Strip) -> list[str]:
    room = _HUB_MM - 7.0
    return [line for place, words in enumerate(strip.words) for line in _folded(words, room, 3, bold=place == 0)]


def _box_mm(text: str, room_mm: float) -> float:
    return len(_folded(text, room_mm - 2.0)) * _LINE_MM + 1.6


def _wire_mm(wire: Wire, across: _Columns, split: bool, lines: int) -> float:
    """Height that one cable's row needs."""
    device = sum(map(len, _device_lines(wire, across, lines))) * _LINE_MM + 2 * _PAD_MM
    stack = [_box_mm(text, across.box_room(split)) + _GAP_MM for text, _ in _boxes(wire, split)]
    return max(device, sum(stack) - _GAP_MM, _FLAG_MM[1] + 1.0)


def _strip_mm(strip: _Strip, across: _Columns, lines: int) -> float:
    split = bool(strip.ways)
    wires = sum(_wire_mm(wire, across, split, lines) + _GAP_MM for wire in strip.wires)
    return max(wires, len(_strip_lines(strip)) * _LINE_MM + _GAP_MM)


# --- drawing ----------------------------------------------------------------------------------------------------------


class _Ink:
    """Black on white, in hundredths of a millimetre: the same text on every machine."""

    def __init__(self, drawing: drawsvg.Drawing) -> None:
        self._drawing = drawing

    def line(self, *points: tuple[float, float], dash: str = "", width: float = 0.6) -> None:
        import drawsvg

        flat = [round(number, 2) for point in points for number in point]
        more = {"stroke_dasharray": dash} if dash else {}
        self._drawing.append(drawsvg.Lines(*flat, fill="none", stroke="black", stroke_width=width, **more))

    def box(
        self, left: float, top: float, width: float, height: float, *, dash: str = "", round_mm: float = 0.0,
        fill: str = "white", line_mm: float = 0.3,
    ) -> None:  # fmt: skip
        import drawsvg

        numbers = [round(number, 2) for number in (left, top, width, height)]
        more = {"stroke_dasharray": dash} if dash else {}
        self._drawing.append(
            drawsvg.Rectangle(*numbers, rx=round_mm, fill=fill, stroke="black", stroke_width=line_mm, **more)
        )

    def words(self, text: str, at: tuple[float, float], *, bold: bool = False, anchor: str = "start") -> None:
        import drawsvg

        weight = {"font_weight": "bold"} if bold else {}
        x, y = (round(number, 2) for number in at)
        self._drawing.append(
            drawsvg.Text(text, _TYPE_MM, x, y, text_anchor=anchor, font_family=_FONT, fill="black", **weight)
        )

    def paragraph(self, lines: Sequence[str], left: float, middle: float, bold: int = 0) -> None:
        """Lines below each other about a height, the first so many bold."""
        top = middle - len(lines) * _LINE_MM / 2
        for place, line in enumerate(lines):
            self.words(line, (left, top + _LINE_MM * (place + 0.76)), bold=place < bold)


def _board(
    ink: _Ink, across: _Columns, name: str, strips: Sequence[_Strip], top: float, count: int, lines: int
) -> tuple[float, int]:
    """One hub with all that goes into it; where the next may begin, and how many cables were drawn."""
    tall = _HEAD_MM + sum(_strip_mm(strip, across, lines) for strip in strips)
    ink.box(across.hub, top, _HUB_MM - 0.3, tall, round_mm=2.0, line_mm=0.6)
    ink.paragraph(_folded(f"hub {name}", _HUB_MM - 7.0, 1, bold=True), across.hub + 5.5, top + _HEAD_MM / 2, bold=1)
    here = top + _HEAD_MM
    for strip in strips:
        high = _strip_mm(strip, across, lines)
        ink.line((across.hub, here), (across.width - 0.3, here), width=0.2)
        ends = _cables(ink, across, strip, here, count, lines)
        middle = here + high / 2 if not ends else sum(ends) / len(ends)
        said = _strip_lines(strip)
        half = len(said) * _LINE_MM / 2
        first = len(_folded(strip.words[0], _HUB_MM - 7.0, 3, bold=True))
        words_at = (
            min(max(middle, here + half + 0.4), here + high - half - 0.4) if high > 2 * half + 0.8 else here + high / 2
        )
        ink.paragraph(said, across.hub + 5.5, words_at, bold=first if strip.bold else 0)
        if strip.takes and ends:
            _hole(ink, across.hub, middle, strip.takes)
        count += len(strip.wires)
        here += high
    return here + _GAP_MM, count


def _hole(ink: _Ink, left: float, middle: float, takes: str) -> None:
    """The socket on the edge of the hub: a slot or a round jack."""
    usb = is_usb(plugs_of(takes)[0])
    ink.box(left - 0.3, middle - (1.9 if usb else 1.5), 3.2, 3.8 if usb else 3.0, round_mm=0.2 if usb else 1.5)


def _cables(ink: _Ink, across: _Columns, strip: _Strip, top: float, count: int, lines: int) -> list[float]:
    """The cables of one socket, one below the other; heights at which they arrive."""
    split = bool(strip.ways)
    ends = []
    here = top
    for place, wire in enumerate(strip.wires):
        high = _wire_mm(wire, across, split, lines)
        if place == len(strip.wires) - 1:
            high = max(high, top + _strip_mm(strip, across, lines) - _GAP_MM - here)
        dash = _DASHES[(count + place) % len(_DASHES)]
        ends.append(_cable(ink, across, wire, (here + _GAP_MM / 2, high), dash, split, lines))
        here += high + _GAP_MM
    if split and ends:
        _splitter(ink, across, strip, ends)
        middle = sum(ends) / len(ends)
        ink.line((across.splitter + 20.0, middle), (across.plug, middle))
        _plug(ink, across.plug, middle, _hub_plug(strip.wires[0]))
        return [middle]
    return ends


def _splitter(ink: _Ink, across: _Columns, strip: _Strip, ends: Sequence[float]) -> None:
    missing = any(words.startswith(_SPLITTER) for words in strip.wires[0].missing.split("; "))
    name = "missing: splitter" if missing else strip.wires[0].through[-1]
    top, bottom = min(ends) - 4.0, max(ends) + 4.0
    said = _folded(name, 14.5)
    grow = max(0.0, len(said) * _LINE_MM + 1.6 - (bottom - top)) / 2
    ink.box(across.splitter, top - grow, 20.0, bottom - top + 2 * grow, dash="1.2 1" if missing else "")
    ink.paragraph(said, across.splitter + 4.8, (top + bottom) / 2)
    for way, at in zip(strip.ways, ends, strict=True):
        ink.words(str(way), (across.splitter + 1.2, at + 1.1))


def _cable(
    ink: _Ink, across: _Columns, wire: Wire, row: tuple[float, float], dash: str, split: bool, lines: int
) -> float:
    """One cable from its device to where it ends; the height of that end."""
    top, high = row
    bold, plain_lines = _device_lines(wire, across, lines)
    deep = (len(bold) + len(plain_lines)) * _LINE_MM + 2 * _PAD_MM
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
    after = across.first_flag + _FLAG_MM[0]
    _flag(ink, across.first_flag, start, wire.tag)
    _flag(ink, across.last_flag(split), end, wire.tag)
    if is_paired(wire):
        ink.paragraph([wire.plug], after + 4.0, middle)
        return end
    ink.line((across.left, start), (across.first_flag, start), dash=dash)
    here = after
    if boxes:
        ink.line((after, start), (across.first_box - _PLUG_MM, start), dash=dash)
        _plug(ink, across.first_box - _PLUG_MM, start, wire.plug)
        _stack(ink, across, boxes, heights, start - heights[0] / 2, room)
        here = across.first_box + room
    ink.line((here, end), (across.last_flag(split), end), dash=dash)
    flagged = across.last_flag(split) + _FLAG_MM[0]
    ink.line((flagged, end), (across.splitter if split else across.plug, end), dash=dash)
    if not split:
        _plug(ink, across.plug, end, _hub_plug(wire))
    return end


def _stack(
    ink: _Ink, across: _Columns, boxes: Sequence[tuple[str, bool]], heights: Sequence[float], top: float, room: float
) -> None:
    """Leads below each other, joined by a short line, in order from the device."""
    for place, ((text, missing), height) in enumerate(zip(boxes, heights, strict=True)):
        if place:
            joint = across.first_box + room / 2
            ink.line((joint, top - _GAP_MM), (joint, top))
        ink.box(across.first_box, top, room, height, dash="1.2 1" if missing else "", fill="white")
        ink.paragraph(_folded(text, room - 2.0), across.first_box + 1.0, top + height / 2)
        top += height + _GAP_MM


def _flag(ink: _Ink, left: float, middle: float, tag: str) -> None:
    wide, high = _FLAG_MM
    ink.box(left, middle - high / 2, wide, high, line_mm=0.4)
    ink.words(tag, (left + wide / 2, middle + _TYPE_MM * 0.36), bold=True, anchor="middle")


def _plug(ink: _Ink, left: float, middle: float, plug: str) -> None:
    """A handle and, pointing right, a flat tongue for USB or a pin with a ring for every contact but one."""
    if not plug:
        ink.line((left, middle), (left + _PLUG_MM, middle))
        return
    ink.box(left, middle - 1.7, 2.6, 3.4, fill="black", round_mm=0.4)
    if is_usb(plug):
        ink.box(left + 2.6, middle - 1.4, _PLUG_MM - 2.6, 2.8, round_mm=1.4 if plug == "USB-C" else 0.0)
        if plug != "USB-C":
            for place in (4.2, 6.0):
                ink.box(left + place, middle - 0.4, 0.8, 0.8, fill="black", line_mm=0.1)
        return
    thick = {"2.5": 1.2, "6.3": 2.6}.get(plug[:3], 1.8)
    ink.box(left + 2.6, middle - thick / 2, _PLUG_MM - 2.6, thick, round_mm=0.5)
    for ring in range(len(conductors_of(plug)) - 1):
        ink.box(left + 3.5 + 1.35 * ring, middle - thick / 2, 0.5, thick, fill="black", line_mm=0.1)


def _legend_rows(plugs: Sequence[str], width_mm: float) -> list[list[tuple[float, str]]]:
    """Which drawing of a plug is which, in as many rows as it takes: left end and plug of each."""
    rows: list[list[tuple[float, str]]] = []
    left = width_mm
    for plug in plugs:
        wide = _PLUG_MM + 1.6 + _text_mm(_plug_words(plug)) + 5.0
        if left + wide > width_mm + 5.0:
            rows.append([])
            left = 0.0
        rows[-1].append((left, plug))
        left += wide
    return rows


def _plug_words(plug: str) -> str:
    if is_usb(plug):
        return plug
    rings = len(conductors_of(plug)) - 1
    return f"{plug}: {rings} ring{'s' if rings > 1 else ''}"


def _legend(ink: _Ink, entries: Sequence[tuple[float, str]], middle: float) -> None:
    for left, plug in entries:
        _plug(ink, left, middle, plug)
        ink.words(_plug_words(plug), (left + _PLUG_MM + 1.6, middle + _TYPE_MM * 0.36))
