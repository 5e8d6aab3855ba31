"""Why an action is done here and not there: the place taken with its points, then every other place."""

from __future__ import annotations

from typing import get_args

from stickwright.codes.inputs import role_named
from stickwright.codes.layout_pages import Heading, LayoutPages, Left
from stickwright.codes.message import Name, message
from stickwright.errors import BadInput, Problem, nearest
from stickwright.model.sharing import Elsewhere, Placement, Sharing
from stickwright.report.printed import sentence, wrapped
from stickwright.report.score import score_of, terms_words
from stickwright.report.sharing_words import done_by, socket_words, tags_of
from stickwright.report.tell import names, tell
from stickwright.report.why_so import press_words

__all__ = ["why_words"]

WIDTH = 80
_WAYS: tuple[Left, ...] = get_args(Left)
"""Places that are no control site."""


def why_words(sharing: Sharing, action: str, site: str | None = None) -> str:
    """The answer to 'why is this action done so', or 'why not at that site'.

    Parameters
    ----------
    sharing : Sharing
        A finished one.
    action : str
        As the game names it; capitals do not matter.
    site : str, optional
        A place, or 'option', 'helper', 'dropped': only this one is told besides the place taken.

    Returns
    -------
    str
        Lines of at most 80 columns.

    Raises
    ------
    BadInput
        No such action in the game, or nothing known about that place for it.
    """
    chosen = _chosen(sharing, action)
    others = dict(sharing.elsewhere).get(chosen.action, ())
    parts = [_taken(sharing, chosen)]
    if site is None:
        parts.append(_others(others))
    elif not _is(chosen, site):
        parts.append(_other(_asked(chosen, others, site)))
    parts.append(wrapped([sentence(sharing.solved)], WIDTH))
    return "\n\n".join(part for part in parts if part) + "\n"


def _chosen(sharing: Sharing, action: str) -> Placement:
    for one in sharing.placements:
        if one.action.casefold() == action.strip().casefold():
            return one
    expected = message(LayoutPages.no_action, actions=names(one.action for one in sharing.placements))
    remedy = message(LayoutPages.as_in_file, kind="game")
    raise BadInput(Problem(message(LayoutPages.asked_action), f'"{action}"', expected, remedy))


def _is(chosen: Placement, site: str) -> bool:
    return site.strip().casefold() in {(chosen.site or "").casefold(), chosen.how if chosen.how != "site" else ""} - {
        ""
    }


def _asked(chosen: Placement, others: tuple[Elsewhere, ...], site: str) -> Elsewhere:
    for one in others:
        if one.where.casefold() == site.strip().casefold():
            return one
    places = list(dict.fromkeys([chosen.site or chosen.how, *(one.where for one in others)]))
    asked = message(LayoutPages.asked_place, action=Name(chosen.action))
    remedy = nearest(site, places) or message(LayoutPages.as_in_file, kind="player")
    raise BadInput(Problem(asked, f'"{site}"', message(LayoutPages.places, places=names(places)), remedy))


def _taken(sharing: Sharing, chosen: Placement) -> str:
    tag = tags_of(sharing).get((chosen.hub or "", chosen.socket or ""), "")
    socket = socket_words(chosen, tag)
    part = score_of(sharing).actions[sharing.placements.index(chosen)]
    lines = [
        sentence(chosen.reason),
        tell(LayoutPages.total, sum=terms_words(part)),
        f"{_head('press')} {press_words(chosen.press)}" if chosen.press is not None else "",
        f"{_head('socket')} {tell(LayoutPages.plugged, socket=socket, role=role_named(chosen.role))}" if socket else "",
        f"{_head('second')} {sentence(chosen.second)}" if chosen.second else "",
    ]
    head = wrapped([tell(LayoutPages.done, action=Name(chosen.action), place=done_by(chosen))], WIDTH)
    return f"{head}\n{wrapped(lines, WIDTH, '  ', '    ')}"


def _head(part: Heading) -> str:
    return tell(LayoutPages.heading, part=part)


def _others(others: tuple[Elsewhere, ...]) -> str:
    """Every other place: those that could be, by what they cost, then those that cannot."""
    if not others:
        return ""
    ranked = sorted(others, key=lambda one: (one.cost is None, one.cost or 0.0))
    return f"{_head('elsewhere')}\n" + "\n".join(_other(one) for one in ranked)


def _other(one: Elsewhere) -> str:
    way = next((each for each in _WAYS if each == one.where), None)
    where = Name(one.where) if way is None else message(LayoutPages.way, how=way)
    if one.cost is None:
        told = tell(LayoutPages.not_possible, where=where, why=one.sentence)
    else:
        told = tell(LayoutPages.elsewhere, where=where, told=one.sentence)
    return wrapped([told], WIDTH, "  ", "    ")
