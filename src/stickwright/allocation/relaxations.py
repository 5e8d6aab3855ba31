"""A clash in codes: what is wished, what stands against it, and what can be given up."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Literal

from stickwright.allocation.explain import refusal_words
from stickwright.allocation.integer_model import Group, SocketColumns, socket_options
from stickwright.allocation.places import Refused
from stickwright.allocation.problem import BUSY_LIMIT_SHARE, Gear, Question
from stickwright.codes.choices import Choices
from stickwright.codes.clashes import Clashes, limb_named
from stickwright.codes.inputs import Role
from stickwright.codes.message import Message, Name, Text, message
from stickwright.model.hub import BUTTON_ROLES, ROLES, STICK_ROLES

__all__ = ["given_up", "nearest_words", "sentence_of", "way_out_sentence", "wish_words"]

_LEFT: dict[str, tuple[Literal["option", "helper", "dropped"], Message]] = {
    "option": ("option", message(Clashes.no_option)),
    "helper": ("helper", message(Clashes.no_helper)),
    "dropped": ("dropped", message(Clashes.no_drop_cost)),
}
_MOST_TOLD = 3
"""Clashes told in one sentence."""


def sentence_of(
    core: Sequence[Group],
    further: Sequence[Sequence[Group]],
    out: Sequence[Text],
    question: Question,
    refused: Sequence[Refused],
) -> Message:
    """The clash, what clashes besides, and the ways out.

    Parameters
    ----------
    core : sequence of Group
    further : sequence of sequence of Group
        Other clashes that stand beside it.
    out : sequence of Message
        Ways out, cheapest first.
    question : Question
    refused : sequence of Refused
    """
    told = tuple(_one(one, question, refused) for one in (core, *further)[:_MOST_TOLD])
    return message(
        Clashes.sentence,
        told=told,
        more=max(0, len(further) + 1 - len(told)),
        out=tuple(out),
        one_each=not further and len(core) > 1,
    )


def _one(core: Sequence[Group], question: Question, refused: Sequence[Refused]) -> Message:
    wanted = [group[1] for group in core if group[0] == "do"]
    both = [group for group in core if group[0] == "together"]
    kinds = {group[0] for group in core}
    if len(core) == 1 and wanted:
        return _nobody(wanted[0], question, refused)
    if len(both) == 1 and set(wanted) == set(both[0][1:3]) and kinds == {"do", "together"}:
        return _both(both[0][1], both[0][2], question)
    sites = {name for action in wanted for name in _who(action, question)}
    if len(wanted) > 1 and len(sites) == 1 and kinds <= {"do", "site"}:
        return message(Clashes.all_need, actions=_names(wanted), site=next(iter(sites)))
    wishes = [wish_words(group, question, refused) for group in core if group[0] != "do"]
    alike = [action for action in wanted if _who(action, question) == _who(wanted[0], question)]
    if len(wanted) > 1 and len(alike) == len(wanted) and _who(wanted[0], question):
        who = _who(wanted[0], question)
        wishes.insert(0, message(Clashes.wanted, actions=_names(wanted), by=tuple(who) if len(who) < 3 else ()))
    else:
        wishes = [*(wish_words(group, question, refused) for group in core if group[0] == "do"), *wishes]
    return wishes[0] if len(wishes) == 1 else message(Clashes.not_all, requests=tuple(wishes))


def _both(one: str, other: str, question: Question) -> Message:
    """Two actions that must be possible at the same time."""
    first, second = Name(one), Name(other)
    here, there = _who(one, question), _who(other, question)
    if here == there and len(here) == 1:
        return message(Clashes.both_need, first=first, second=second, site=here[0])
    return message(Clashes.not_at_once, first=first, second=second, first_by=tuple(here), second_by=tuple(there))


def _names(names: Sequence[str]) -> tuple[Name, ...]:
    return tuple(map(Name, names))


def _who(action: str, question: Question) -> list[Text]:
    """Sites, people and the game itself, who could do an action."""
    names = {"option": message(Clashes.the_game), "dropped": message(Clashes.leaving_out)}
    found = [way for way in question.ways if way.action == action and way.how != "chord"]
    return list(dict.fromkeys(Name(way.site) if way.site else names.get(way.how) or Name(way.label) for way in found))


def _nobody(action: str, question: Question, refused: Sequence[Refused]) -> Message:
    if _who(action, question):
        return message(Clashes.cannot, action=Name(action))
    return message(Clashes.nobody, action=Name(action), nearest=nearest_words(action, refused))


def nearest_words(action: str, refused: Sequence[Refused]) -> Message | None:
    """Why the sites that come nearest cannot do an action; None when nothing is known of any."""
    nearest: dict[str, Refused] = {}
    for one in refused:
        if one.action == action and (one.site not in nearest or one.shortfalls < nearest[one.site].shortfalls):
            nearest[one.site] = one
    closest = sorted(nearest.values(), key=lambda one: one.shortfalls)[:2]
    told = tuple(refusal_words(one) for one in closest)
    return message(Choices.several, told=told) if len(told) > 1 else told[0] if told else None


def wish_words(group: Group, question: Question, refused: Sequence[Refused]) -> Message:
    """One member of a clash.

    Parameters
    ----------
    group : Group
        As `stickwright.allocation.integer_model` names wishes and facts.
    question : Question
    refused : sequence of Refused
        Why sites cannot do actions.
    """
    kind, rest = group[0], _names(group[1:])
    texts: dict[str, Callable[[], Message]] = {
        "do": lambda: _wanted_words(rest[0], question, refused),
        "stock": lambda: message(Clashes.stock, device=rest[0], in_stock=_gear(rest[0], question).in_stock),
        "together": lambda: message(Clashes.together, first=rest[0], second=rest[1]),
        "chord": lambda: message(Clashes.chord, chord=rest[0], member=rest[1]),
        "site": lambda: _site_words(rest[0], question),
        "held": lambda: message(Clashes.limb_holds, limb=limb_named(rest[1]), controller=rest[0]),
        "fixed": lambda: message(Clashes.fixed, stick=rest[0], controller=rest[1]),
        "presses": lambda: message(Clashes.presses, site=rest[0], most_share=BUSY_LIMIT_SHARE),
        "sockets": lambda: _socket_words(rest, question),
        "input": lambda: message(Clashes.one_input, role=_role(rest[0])),
        "power": lambda: message(Clashes.current, source=rest[0]),
        "paired": lambda: message(Clashes.second_controllers, count=question.paired),
        "budget": lambda: message(Clashes.budget, limit_price=question.budget or 0.0),
        "parts": lambda: message(Clashes.devices, count=question.most_parts or 0),
        "keep": lambda: _keep_words(rest, question, refused),
        "without": lambda: message(Clashes.without, name=rest[0]),
        "helper": lambda: message(Clashes.helper, helper=rest[0], count=_helper_most(rest[0], question)),
        "slowed": lambda: message(Clashes.slows),
    }
    return texts[kind]()


def _role(name: str) -> Role:
    return next(role for role in ROLES if role == name)


def _wanted_words(action: Name, question: Question, refused: Sequence[Refused]) -> Message:
    who = _who(action, question)
    chord = next((way.together for way in question.ways if way.action == action and way.how == "chord"), ())
    if chord and not who:
        return message(Clashes.chord_wanted, action=action, members=tuple(Name(one) for one in chord))
    if not who:
        return _nobody(action, question, refused)
    return message(Clashes.wanted, actions=(action,), by=() if chord or len(who) > 2 else tuple(who))


def _gear(name: str, question: Question) -> Gear:
    return next(gear for gear in question.gear if gear.name == name)


def _site_words(name: Name, question: Question) -> Message:
    site = next((one for one in question.sites if one.name == name), None)
    if site is not None:
        return message(Clashes.site_takes, site=name, switches=site.most_switches)
    gear = next((one.name for one in question.gear if name.startswith(f"{one.name}: ")), None)
    if gear is None:
        return message(Clashes.limb_takes, limb=limb_named(name))
    control = next((role for role in ROLES if name == f"{gear}: {role}"), None)
    return message(Clashes.control_takes, control=control, device=Name(gear))


def _where(name: str) -> Text:
    left = _LEFT.get(name)
    return Name(name) if left is None else message(Clashes.place, how=left[0])


def _keep_words(rest: Sequence[Name], question: Question, refused: Sequence[Refused]) -> Message:
    what, where = rest
    ways = next((ways for name, place, ways in question.keep if (name, place) == (what, where)), ())
    if ways:
        return message(Clashes.keep, what=what, where=_where(where))
    against = [one for one in refused if one.action == what and where in (one.site, one.device)]
    against += [one for one in refused if one.site == what and one.device == where]
    left = _LEFT.get(where)
    why = min(against, key=lambda one: one.shortfalls).why if against else left[1] if left is not None else None
    return message(Clashes.keep_impossible, what=what, where=_where(where), why=why)


def _helper_most(name: str, question: Question) -> int:
    return next(most for helper, most, _ in question.at_most if helper == name)


# ---- sockets


def _feeding(name: str) -> tuple[Text, Role | None, str]:
    """What asks for a socket: in words, its role, and what it feeds."""
    if name in (*STICK_ROLES, "any_stick"):
        stick = _role(name) if name in STICK_ROLES else None
        return message(Clashes.stick_as, role=stick), stick, "stick"
    if name in (*BUTTON_ROLES, "any_button"):
        button = _role(name) if name in BUTTON_ROLES else None
        return message(Clashes.switch_as, role=button), button, "button"
    return Name(name), None, "stick"


def _socket_words(rest: Sequence[Name], question: Question) -> Message:
    groups = {one.name: one for one in question.sockets}
    group = groups.get(rest[0])
    if group is not None:
        hub, sockets = Name(group.hub), _names(group.sockets)
        if len(rest) == 2 and rest[1] in groups:
            return message(Clashes.shut_out, hub=hub, first=sockets, second=_names(groups[rest[1]].sockets))
        return message(Clashes.sockets_alike, hub=hub, sockets=sockets)
    for name, _, most in question.hub_limits:
        if rest[0] == name:
            return message(Clashes.hub_takes, hub=Name(name), count=most or 0)
    for splitter in question.splitters:
        if rest[0] in {f"{name} {splitter.name}" for name in groups}:
            return message(Clashes.splitter_ways, splitter=Name(splitter.name), count=splitter.ways)
    return _demand_words(rest[0], rest[1:], question)


def _demand_words(name: Name, plugs: Sequence[Name], question: Question) -> Message:
    words, role, feeds = _feeding(name)
    device = name if words == name else ""
    if not plugs:
        return message(Clashes.plug_unknown, device=words)
    able = [
        place
        for place, *_ in socket_options(
            SocketColumns(role, feeds, tuple(plugs), 0.0, device), question.sockets, question.adapters
        )
    ]
    if not able:
        return message(Clashes.no_socket, device=words, plugs=tuple(plugs))
    # of one demand all draw the same; gear that is plugged in otherwise may only be lighter
    least = min((one.current_a for one in question.gear if one.plugs == tuple(plugs)), default=0.0)
    limits = [question.sockets[place].limit_a for place in able]
    known = [limit for limit in limits if limit is not None]
    if len(known) == len(limits) and max(known) < least:
        return message(Clashes.no_current, device=words, current_a=least)
    number = sum(len(question.sockets[place].sockets) for place in dict.fromkeys(able))
    return message(Clashes.few_sockets, count=number, device=words, plugs=tuple(plugs))


# ---- what can be given up


def way_out_sentence(groups: Sequence[Group], question: Question, amounts: Mapping[Group, float]) -> Message:
    """All that one way out gives up.

    Parameters
    ----------
    groups : sequence of Group
    question : Question
    amounts : mapping
        From `stickwright.allocation.infeasible_core.FreedWishes`.
    """
    left = _names([group[1] for group in groups if group[0] == "do"])
    rest = [given_up(group, question, amounts) for group in groups if group[0] != "do"]
    parts = [message(Clashes.leave_out, actions=left), *rest] if left else rest
    return parts[0] if len(parts) == 1 else message(Clashes.give_up_all, parts=tuple(parts))


def given_up(group: Group, question: Question, amounts: Mapping[Group, float]) -> Message:
    """One thing that can be given up, as an instruction.

    Parameters
    ----------
    group : Group
    question : Question
    amounts : mapping
        From `stickwright.allocation.infeasible_core.FreedWishes`.
    """
    kind, rest = group[0], _names(group[1:])
    new = amounts.get(group, 0.0)
    texts: dict[str, Callable[[], Message]] = {
        "do": lambda: message(Clashes.leave_out, actions=(rest[0],)),
        "together": lambda: message(Clashes.one_by_one, first=rest[0], second=rest[1]),
        "stock": lambda: _get_words(_gear(rest[0], question), new),
        "sockets": lambda: _more_sockets(rest, question, new),
        "power": lambda: message(Clashes.more_current, source=rest[0]),
        "paired": lambda: message(Clashes.pairing_hub, count=round(new)),
        "budget": lambda: message(Clashes.spend, new_price=new, old_price=question.budget or 0.0),
        "parts": lambda: message(Clashes.more_devices, new=round(new), old=question.most_parts or 0),
        "keep": lambda: message(Clashes.let_go, what=rest[0], where=_where(rest[1])),
        "without": lambda: message(Clashes.use_anyway, name=rest[0]),
        "helper": lambda: message(Clashes.helper_more, helper=rest[0], count=round(new)),
        "presses": lambda: message(Clashes.slow_game, site=rest[0]),
    }
    return texts[kind]()


def _get_words(gear: Gear, stock: float) -> Message:
    more = max(1, round(stock) - gear.in_stock)
    return message(Clashes.get_more, device=Name(gear.name), count=more, priced=gear.price is not None)


def _more_sockets(rest: Sequence[Name], question: Question, over: float) -> Message:
    groups = {one.name: one for one in question.sockets}
    group = groups.get(rest[0])
    if group is not None and len(rest) == 2 and rest[1] in groups:
        return message(Clashes.other_hub, first=_names(group.sockets), second=_names(groups[rest[1]].sockets))
    if group is not None:
        return message(
            Clashes.more_sockets, count=max(1, round(over)), socket=Name(group.sockets[0]), hub=Name(group.hub)
        )
    if any(rest[0] == hub for hub, *_ in question.hub_limits):
        return message(Clashes.second_hub, hub=rest[0])
    words, *_ = _feeding(rest[0])
    if not rest[1:]:
        return message(Clashes.record_plug, device=words)
    return message(Clashes.hub_for, device=words, plugs=tuple(rest[1:]))
