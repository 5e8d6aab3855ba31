"""A clash in words: what is wished, what stands against it, and what can be given up."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from stickwright.allocation.integer_model import Group, Sockets, socket_options
from stickwright.allocation.places import Refused
from stickwright.allocation.problem import BUSY_LIMIT_SHARE, Gear, Question
from stickwright.mechanics.stand_ins import percent
from stickwright.model.hub import BUTTON_ROLES, STICK_ROLES
from stickwright.units import figures, spoken

__all__ = ["given_up", "nearest_words", "sentence_of", "way_out_sentence", "wish_words"]

_LEFT_TO_NOBODY = {
    "option": ": game.toml names no option for it",
    "helper": ": there is no helper for it",
    "dropped": ": without a drop_price in game.toml it is not left out",
}
_MOST_TOLD = 3
"""Clashes told in one sentence."""


def sentence_of(
    core: Sequence[Group],
    further: Sequence[Sequence[Group]],
    out: Sequence[str],
    question: Question,
    refused: Sequence[Refused],
) -> str:
    """The clash, what clashes besides, and the ways out.

    Parameters
    ----------
    core : sequence of Group
    further : sequence of sequence of Group
        Other clashes that stand beside it.
    out : sequence of str
        Ways out, cheapest first.
    question : Question
    refused : sequence of Refused
    """
    told = [_one(one, question, refused) for one in (core, *further)[:_MOST_TOLD]]
    more = len(further) + 1 - len(told)
    besides = "".join(f". Besides, {text}" for text in told[1:])
    besides += f". And {more} clash{'es' if more > 1 else ''} more" if more > 0 else ""
    if not out:
        return f"{told[0]}{besides}."
    if not further and len(core) > 1:
        return f"{told[0]}; free one of: {'; '.join(out)}."
    return f"{told[0]}{besides}. What would do: {'; or '.join(out)}."


def _one(core: Sequence[Group], question: Question, refused: Sequence[Refused]) -> str:
    wanted = [group[1] for group in core if group[0] == "do"]
    both = [group for group in core if group[0] == "together"]
    kinds = {group[0] for group in core}
    if len(core) == 1 and wanted:
        return _nobody(wanted[0], question, refused)
    if len(both) == 1 and set(wanted) == set(both[0][1:3]) and kinds == {"do", "together"}:
        first, second = both[0][1:3]
        here, there = _who(first, question), _who(second, question)
        if here == there and len(here) == 1:
            return f"{first} and {second} must be possible at the same moment, but both need the {here[0]}"
        return (
            f"{first} and {second} must be possible at the same moment, but only {_or(here)} can do {first} and only "
            f"{_or(there)} {second}, and these cannot act together"
        )
    sites = {name for action in wanted for name in _who(action, question)}
    if len(wanted) > 1 and len(sites) == 1 and kinds <= {"do", "site"}:
        return f"{_and(wanted)} all need the {next(iter(sites))}, which does not take so many"
    wishes = [wish_words(group, question, refused) for group in core if group[0] != "do"]
    alike = [action for action in wanted if _who(action, question) == _who(wanted[0], question)]
    if len(wanted) > 1 and len(alike) == len(wanted) and _who(wanted[0], question):
        who = _who(wanted[0], question)
        wishes.insert(0, f"{_and(wanted)} are wanted" + (f", and only {_or(who)} can do them" if len(who) < 3 else ""))
    else:
        wishes = [*(wish_words(group, question, refused) for group in core if group[0] == "do"), *wishes]
    if len(wishes) == 1:
        return wishes[0]
    return f"not all of these can be had: {'; '.join(wishes)}. Without any one of them the rest could"


def _and(parts: Sequence[str]) -> str:
    *most, last = parts
    return f"{', '.join(most)} and {last}" if most else last


def _or(names: Sequence[str]) -> str:
    *most, last = names or ["nobody"]
    return f"{', '.join(most)} or {last}" if most else last


def _who(action: str, question: Question) -> list[str]:
    """Parts, people and the game itself, who could do an action."""
    names = {"option": "the game itself", "dropped": "leaving it out"}
    found = [way for way in question.ways if way.action == action and way.how != "chord"]
    return list(dict.fromkeys(way.site or names.get(way.how) or way.label for way in found))


def _nobody(action: str, question: Question, refused: Sequence[Refused]) -> str:
    if _who(action, question):
        return f"{action} cannot be done"
    why = nearest_words(action, refused)
    return f"nobody can do {action} with this kit{f' ({why})' if why else ''}"


def nearest_words(action: str, refused: Sequence[Refused]) -> str:
    """Why the parts that come nearest cannot do an action; empty when nothing is known of any.

    Parameters
    ----------
    action : str
    refused : sequence of Refused
    """
    nearest: dict[str, Refused] = {}
    for one in refused:
        if one.action == action and (one.site not in nearest or one.shortfalls < nearest[one.site].shortfalls):
            nearest[one.site] = one
    closest = sorted(nearest.values(), key=lambda one: one.shortfalls)[:2]
    return "; ".join(f"{one.site}{f' on {one.device}' if one.device else ''}: {one.why}" for one in closest)


def wish_words(group: Group, question: Question, refused: Sequence[Refused]) -> str:
    """One member of a clash, as a clause.

    Parameters
    ----------
    group : Group
        As `stickwright.allocation.integer_model` names wishes and facts.
    question : Question
    refused : sequence of Refused
        Why parts cannot do actions.
    """
    kind, rest = group[0], group[1:]
    texts: dict[str, Callable[[], str]] = {
        "do": lambda: _wanted_words(rest[0], question, refused),
        "stock": lambda: _stock_words(_gear(rest[0], question)),
        "together": lambda: f"{rest[0]} and {rest[1]} must be possible at the same moment",
        "chord": lambda: f"{rest[0]} is made of {rest[1]}, which the player has to press",
        "site": lambda: _site_words(rest[0], question),
        "held": lambda: f"the {rest[1].removeprefix('unsaid ')} holds {rest[0]} and does nothing else meanwhile",
        "fixed": lambda: f"{rest[0]} is fixed to the grip of {rest[1]}, and one hand works both",
        "presses": lambda: f"{rest[0]} may press for no more than {percent(BUSY_LIMIT_SHARE)} of the busy minute",
        "sockets": lambda: _socket_words(rest, question),
        "input": lambda: f"the game tells one {rest[0]} from another by nothing, so only one device can be it",
        "power": lambda: f"{rest[0]} supplies only so much current",
        "paired": lambda: _paired_words(question.paired),
        "budget": lambda: f"no more than {figures(question.budget or 0.0)} may be spent",
        "parts": lambda: f"no more than {_many(question.most_parts or 0, 'device')} may stand around",
        "keep": lambda: _keep_words(rest, question, refused),
        "without": lambda: f"{rest[0]} is not to be used",
        "helper": lambda: _helper_words(rest[0], question),
        "slowed": lambda: "one part slows another",
    }
    return texts[kind]()


def _wanted_words(action: str, question: Question, refused: Sequence[Refused]) -> str:
    who = _who(action, question)
    chord = next((way.label for way in question.ways if way.action == action and way.how == "chord"), "")
    if chord and not who:
        return f"{action} is wanted, by pressing {chord} together"
    if not who:
        return _nobody(action, question, refused)
    if chord or len(who) > 2:
        return f"{action} is wanted"
    return f"{action} is wanted, and only {_or(who)} can do it"


def _gear(name: str, question: Question) -> Gear:
    return next(gear for gear in question.gear if gear.name == name)


def _stock_words(gear: Gear) -> str:
    if gear.in_stock == 0:
        return f"no {gear.name} is in stock"
    return f"there is only one {gear.name}" if gear.in_stock == 1 else f"there are only {gear.in_stock} of {gear.name}"


def _site_words(name: str, question: Question) -> str:
    site = next((one for one in question.sites if one.name == name), None)
    if site is not None:
        switches = "one switch" if site.most_switches == 1 else f"up to {site.most_switches} switches"
        return f"{name} takes one stick, or {switches}, or a controller, never two kinds"
    gear = next((one.name for one in question.gear if name.startswith(f"{one.name}: ")), None)
    if gear is None:
        return f"the {name} hold{'' if name == 'hands' else 's'} one controller"
    return f"the {name.removeprefix(f'{gear}: ')} of {gear} does one action"


def _paired_words(paired: int) -> str:
    few = "no second controller" if paired == 0 else f"only {paired} second controller{'s' * (paired > 1)}"
    return f"the hub takes {few} beside it"


def _keep_words(rest: Sequence[str], question: Question, refused: Sequence[Refused]) -> str:
    what, where = rest
    told = f"{what} is to stay with {where}"
    ways = next((ways for name, place, ways in question.keep if (name, place) == (what, where)), ())
    if ways:
        return told
    against = [one for one in refused if one.action == what and where in (one.site, one.device)]
    against += [one for one in refused if one.site == what and one.device == where]
    why = f": {min(against, key=lambda one: one.shortfalls).why}" if against else _LEFT_TO_NOBODY.get(where, "")
    return f"{told}, which cannot be{why}"


def _helper_words(name: str, question: Question) -> str:
    most = next(most for helper, most, _ in question.at_most if helper == name)
    return f"{name} takes over {'nothing' if most == 0 else f'only {most} action' + 's' * (most > 1)}"


# ---- sockets


def _feeding(name: str) -> tuple[str, str | None, str]:
    """What asks for a socket: in words, its role, and what it feeds."""
    if name in STICK_ROLES:
        return f"a stick as {name}", name, "stick"
    if name in BUTTON_ROLES:
        return f"a switch as {name}", name, "button"
    usual = {"any stick": ("a stick", "stick"), "any button": ("a switch", "button")}
    words, feeds = usual.get(name, (name, "stick"))
    return words, None, feeds


def _socket_words(rest: Sequence[str], question: Question) -> str:
    groups = {one.name: one for one in question.sockets}
    group = groups.get(rest[0])
    if group is not None and len(rest) == 2 and rest[1] in groups:
        return f"on {group.hub}, {' '.join(group.sockets)} and {' '.join(groups[rest[1]].sockets)} shut each other out"
    if group is not None:
        several = len(group.sockets) > 1
        return f"{group.hub} has only {len(group.sockets)} socket{'s' * several} like {', '.join(group.sockets)}"
    for hub, _, most in question.hub_limits:
        if rest[0] == hub:
            return f"{hub} takes only {most} device{'s' * (most != 1)}"
    for splitter in question.splitters:
        if rest[0] in {f"{name} {splitter.name}" for name in groups}:
            return f"{splitter.name} has only {splitter.ways} ways"
    return _demand_words(rest[0], rest[1:], question)


def _demand_words(name: str, plugs: Sequence[str], question: Question) -> str:
    words, role, feeds = _feeding(name)
    device = name if words == name else ""
    if not plugs:
        return f"kit.toml does not say what plug {words} has, so no socket can be chosen"
    able = [
        place
        for place, *_ in socket_options(
            Sockets(role, feeds, tuple(plugs), 0.0, device), question.sockets, question.adapters
        )
    ]
    if not able:
        return f"no socket takes {words} with a {_or(plugs)} plug"
    # of one demand all draw the same; gear that is plugged in otherwise may only be lighter
    least = min((one.current_a for one in question.gear if one.plugs == tuple(plugs)), default=0.0)
    limits = [question.sockets[place].limit_a for place in able]
    known = [limit for limit in limits if limit is not None]
    if len(known) == len(limits) and max(known) < least:
        return f"no socket supplies the {spoken(least, 'ma')} that {words} takes"
    number = sum(len(question.sockets[place].sockets) for place in dict.fromkeys(able))
    few = f"only {number} sockets take" if number > 1 else "only one socket takes"
    return f"{few} {words} with a {_or(plugs)} plug"


# ---- what can be given up


def way_out_sentence(groups: Sequence[Group], question: Question, amounts: Mapping[Group, float]) -> str:
    """All that one way out gives up.

    Parameters
    ----------
    groups : sequence of Group
    question : Question
    amounts : mapping
        From `stickwright.allocation.clash.WayOut`.
    """
    left = [group[1] for group in groups if group[0] == "do"]
    rest = [given_up(group, question, amounts) for group in groups if group[0] != "do"]
    if len(left) == 1:
        rest.insert(0, given_up(("do", left[0]), question, amounts))
    elif left:
        rest.insert(0, f"leave out {_and(left)} (or find game options or helpers for them)")
    return _and(rest) if len(rest) < 2 else f"{', '.join(rest[:-1])}, and {rest[-1]}"


def given_up(group: Group, question: Question, amounts: Mapping[Group, float]) -> str:
    """One thing that can be given up, as an instruction.

    Parameters
    ----------
    group : Group
    question : Question
    amounts : mapping
        From `stickwright.allocation.clash.WayOut`.
    """
    kind, rest = group[0], group[1:]
    new = amounts.get(group, 0.0)
    texts: dict[str, Callable[[], str]] = {
        "do": lambda: f"leave {rest[0]} out (or find a game option or a helper for it)",
        "together": lambda: f"do {rest[0]} and {rest[1]} one after the other",
        "stock": lambda: _get_words(_gear(rest[0], question), new),
        "sockets": lambda: _more_sockets(rest, question, new),
        "power": lambda: f"feed what is plugged into {rest[0]} from a powered splitter, or use a second hub",
        "paired": lambda: f"use a hub that takes {_many(new, 'second controller')} beside it",
        "budget": lambda: f"spend {new:.2f} instead of {question.budget or 0.0:.2f}",
        "parts": lambda: f"let {_many(new, 'device')} stand around instead of {question.most_parts}",
        "keep": lambda: f"let {rest[0]} go elsewhere than {rest[1]}",
        "without": lambda: f"use {rest[0]} after all",
        "helper": lambda: f"let {rest[0]} take over {_many(new, 'action')}",
        "presses": lambda: f"slow the game down, so that {rest[0]} presses less often",
    }
    return texts[kind]()


def _many(number: float, what: str) -> str:
    return f"{number:.0f} {what}{'s' * (round(number) != 1)}"


def _get_words(gear: Gear, stock: float) -> str:
    more = max(1, round(stock) - gear.in_stock)
    verb = "get" if gear.price is None else "borrow"
    return f"{verb} one more {gear.name}" if more == 1 else f"{verb} {more} more of {gear.name}"


def _more_sockets(rest: Sequence[str], question: Question, over: float) -> str:
    groups = {one.name: one for one in question.sockets}
    group = groups.get(rest[0])
    if group is not None and len(rest) == 2 and rest[1] in groups:
        return f"use a hub on which {' '.join(group.sockets)} does not shut out {' '.join(groups[rest[1]].sockets)}"
    if group is not None:
        few = "one more socket" if over <= 1 else f"{round(over)} more sockets"
        return f"add a hub or a splitter with {few} like {group.sockets[0]} on {group.hub}"
    if any(rest[0] == hub for hub, *_ in question.hub_limits):
        return f"add a second hub beside {rest[0]}"
    words, *_ = _feeding(rest[0])
    if not rest[1:]:
        return f"say in kit.toml what plug {words} has"
    return f"add a hub with one more socket for {words} ({_or(rest[1:])} plug)"
