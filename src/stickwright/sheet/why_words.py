"""Why an action is done here and not there: the place taken with its points, then every other place."""

from __future__ import annotations

from stickwright.catalogue import say
from stickwright.codes.message import Text
from stickwright.errors import BadInput, Problem, nearest
from stickwright.model.sharing import Elsewhere, Placement, Sharing
from stickwright.sheet.printed import sentence, wrapped
from stickwright.sheet.score import score_of, terms_words
from stickwright.sheet.sharing_words import done_by, second_words, socket_words, tags_of
from stickwright.sheet.why_so import press_words

__all__ = ["why_words"]

WIDTH = 80
_WAYS = {"option": "the game's own option", "helper": "a helper", "dropped": "leaving it out"}


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
    names = ", ".join(one.action for one in sharing.placements) or "none"
    raise BadInput(
        Problem("action", f'"{action}"', f"an action of the game: {names}", "Write it as the game file does.")
    )


def _is(chosen: Placement, site: str) -> bool:
    return site.strip().casefold() in {(chosen.site or "").casefold(), chosen.how if chosen.how != "site" else ""} - {
        ""
    }


def _asked(chosen: Placement, others: tuple[Elsewhere, ...], site: str) -> Elsewhere:
    for one in others:
        if one.where.casefold() == site.strip().casefold():
            return one
    names = ", ".join(dict.fromkeys([chosen.site or chosen.how, *(one.where for one in others)]))
    raise BadInput(
        Problem(f"place for {chosen.action}", f'"{site}"', f"one of: {names}", _near(site, names.split(", ")))
    )


def _near(typed: str, names: list[str]) -> Text:
    return nearest(typed, names) or "Write it as the player file does."


def _taken(sharing: Sharing, chosen: Placement) -> str:
    tag = tags_of(sharing).get((chosen.hub or "", chosen.socket or ""), "")
    socket = socket_words(chosen, tag)
    part = score_of(sharing).actions[sharing.placements.index(chosen)]
    lines = [
        say(chosen.reason),
        f"{terms_words(part)}.",
        f"Press: {press_words(chosen.press)}." if chosen.press is not None else "",
        f"Socket: {socket}{f'; the game sees the {chosen.role}' if chosen.role else ''}." if socket else "",
        f"Second best: {second_words(chosen)}" if chosen.second else "",
    ]
    head = wrapped([f"{chosen.action}: {done_by(chosen)}"], WIDTH)
    return f"{head}\n{wrapped([sentence(line) for line in lines if line], WIDTH, '  ', '    ')}"


def _others(others: tuple[Elsewhere, ...]) -> str:
    """Every other place: those that could be, by what they cost, then those that cannot."""
    if not others:
        return ""
    ranked = sorted(others, key=lambda one: (one.cost is None, one.cost or 0.0))
    return "Elsewhere\n" + "\n".join(_other(one) for one in ranked)


def _other(one: Elsewhere) -> str:
    where = _WAYS.get(one.where, one.where)
    told = "not possible. " if one.cost is None else ""
    return wrapped([f"{where}: {told}{sentence(one.sentence)}"], WIDTH, "  ", "    ")
