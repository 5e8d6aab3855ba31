"""The sharing in the terminal: a table of who does what, how sure it is, what else there is, and the cables."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Sequence

from stickwright.catalogue import say
from stickwright.codes.glance import Glance
from stickwright.codes.layout_pages import Heading, LayoutPages
from stickwright.codes.wiring_pages import WiringPages
from stickwright.model.plan import Plan
from stickwright.model.sharing import Clash, Placement, Sharing, Wiring
from stickwright.report.printed import sentence, wrapped
from stickwright.report.score import score_of, score_words
from stickwright.report.sharing_words import (
    bought_words,
    device_words,
    given_up,
    introduced,
    lacking,
    load_words,
    own_words,
    pair_words,
    part_words,
    place_words,
    power_words,
    press_of,
    socket_words,
    tags_of,
    way_out_words,
    wire_words,
)
from stickwright.report.tell import named, names, tell
from stickwright.report.why_so import NO_HUB

__all__ = ["sharing_blocks"]

_GAPS = 8  # letters beside and between the four columns


def sharing_blocks(plan: Plan, width: int = 80) -> list[str]:
    """Blocks of text about the sharing; none when nothing is shared out.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    width : int, default 80
        Columns of the terminal.
    """
    sharing = plan.sharing
    if sharing is None:
        return []
    order = introduced(sharing.placements)
    blocks = [
        f"{'-' * width}\n{tell(Glance.heading, part='who_does_what')}\n{_who_table(sharing, width)}",
        _clash(sharing.clash, width),
        wrapped([sentence(sharing.sentence), sentence(sharing.solved)], width),
        wrapped(
            [tell(LayoutPages.total, sum=score_words(score_of(sharing))) if sharing.placements else ""], width, "", "  "
        ),
        _block(_head("order"), order, width),
        _numbered(_head("alternatives"), [sentence(one.sentence) for one in sharing.alternatives], width),
        _block(_head("loads"), [load_words(load) for load in sharing.loads], width),
        _block(_head("together"), [say(pair_words(pair)) for pair in sharing.pairs], width),
        *(_wired(plan, sharing.wiring, width) if sharing.wiring is not None else (wrapped([say(NO_HUB)], width),)),
    ]
    return [block for block in blocks if block]


def _who_table(sharing: Sharing, width: int) -> str:
    """One action a row, in columns no wider than what they hold."""
    tags = tags_of(sharing)
    heads = (_head("action"), _head("by"), _head("with"), _head("plugged"))
    rows = [heads, *(_row(one, tags.get((one.hub or "", one.socket or ""), "")) for one in sharing.placements)]
    widths = [max(len(row[at]) for row in rows) for at in range(len(heads))]
    while sum(widths) > width - _GAPS:
        widths[widths.index(max(widths))] -= 1
    return "\n".join(line for row in rows for line in _lines(row, widths))


def _row(one: Placement, tag: str) -> tuple[str, str, str, str]:
    if one.how == "site":
        device = tell(Glance.pressed, device=device_words(one), press=press_of(one))
        return one.action, place_words(one), device, socket_words(one, tag)
    return one.action, place_words(one), _with(one), ""


def _with(one: Placement) -> str:
    own = own_words(one)
    if one.how == "option":
        return tell(Glance.option, option=named(one.label), words=own)
    if one.how == "helper":
        return tell(Glance.second_controller, words=own)
    if one.how == "chord":
        return tell(Glance.together, actions=names(one.together))
    return tell(Glance.own_words, words=own) if own else ""


def _lines(row: Sequence[str], widths: Sequence[int]) -> list[str]:
    """One row on as many lines as its longest cell takes."""
    cells = [textwrap.wrap(cell, wide, break_on_hyphens=False) or [""] for cell, wide in zip(row, widths, strict=True)]
    tall = max(len(cell) for cell in cells)
    lines = (
        "  ".join((cell[at] if at < len(cell) else "").ljust(wide) for cell, wide in zip(cells, widths, strict=True))
        for at in range(tall)
    )
    return [f"  {line}".rstrip() for line in lines]


def _clash(clash: Clash | None, width: int) -> str:
    if clash is None:
        return ""
    given = given_up(clash) or None
    said = wrapped([tell(LayoutPages.clash, told=sentence(clash.sentence), given_up=given)], width)
    ways = [way_out_words(number, clash) for number in range(1, len(clash.ways_out) + 1)]
    return "\n".join(part for part in (said, _numbered(_head("ways_out"), ways, width)) if part)


def _wired(plan: Plan, wiring: Wiring, width: int) -> list[str]:
    noted = [tell(WiringPages.noted, part=line.name, note=line.note) for line in plan.parts if line.buy and line.note]
    return [
        _block(tell(WiringPages.heading, part="wiring"), [wire_words(wire) for wire in wiring.wires], width)
        if wiring.wires
        else wrapped([say(NO_HUB)], width),
        _block(tell(WiringPages.heading, part="current"), [say(power_words(line)) for line in wiring.power], width),
        _block(
            tell(WiringPages.heading, part="parts"),
            [*(part_words(line) for line in plan.parts), bought_words(plan.parts, lacking(wiring)), *noted],
            width,
        ),
    ]


def _head(part: Heading) -> str:
    return tell(LayoutPages.heading, part=part)


def _block(title: str, lines: Iterable[str], width: int) -> str:
    told = [line for line in lines if line]
    return f"{title}\n{wrapped(told, width, '  ', '    ')}" if told else ""


def _numbered(title: str, lines: Sequence[str], width: int) -> str:
    return _block(title, (f"{number}. {line}" for number, line in enumerate(lines, start=1)), width)
