"""From the solver's columns back to places: which way each action goes, and into which socket."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from stickwright.allocation.integer_model import IntegerModel, SocketColumns
from stickwright.allocation.problem import Question, Way
from stickwright.allocation.solve import Answer
from stickwright.model.fit import Fit
from stickwright.model.sharing import Placement, PressFit

__all__ = ["Choice", "choice_of", "placements_of"]

Choice = tuple[object, ...]
"""What tells two ways of an action apart for people: who or what acts, where, on what, and how."""


def choice_of(way: Way) -> Choice:
    """What of a way matters to people: who or what acts, where, on what. The socket does not, nor which of several
    buttons of one controller, nor whether it is paired.
    """
    return (way.how, way.site, way.device, way.toggle, way.label if way.how == "helper" else None)


def placements_of(question: Question, model: IntegerModel, answer: Answer) -> tuple[Placement, ...]:
    """Each action with its place, device and socket, in the order of the game; actions given up are left out.

    Parameters
    ----------
    question : Question
    model : IntegerModel
        That the answer is of.
    answer : Answer
        With a plan.
    """
    chosen = answer.chosen(question)
    sockets = _sockets_taken(question, model, answer, chosen)
    out = []
    for action in question.actions:
        if action not in chosen:
            continue
        way = question.ways[chosen[action]]
        placement = _placement(way)
        if way.kind == "controller" and question.wired and way.paired:
            placement = replace(placement, connection="paired")
        elif action in sockets:
            hub, socket = sockets[action]
            placement = replace(placement, connection="socket", hub=hub, socket=socket)
        out.append(placement)
    return tuple(out)


def _placement(way: Way) -> Placement:
    return Placement(
        action=way.action,
        how=way.how,
        site=way.site,
        device=way.device,
        kind=way.kind,
        label=way.label,
        together=way.together,
        control=way.control,
        role=way.role,
        toggle=way.toggle,
        holding=way.holding,
        holding_why=way.holding_why,
        helper=way.label if way.how == "helper" else None,
        points=way.points,
        terms=way.terms,
        fit=way.detail if isinstance(way.detail, Fit) else None,
        press=way.detail if isinstance(way.detail, PressFit) else None,
    )


def _sockets_taken(
    question: Question, model: IntegerModel, answer: Answer, chosen: dict[str, int]
) -> dict[str, tuple[str, str]]:
    """Hub and socket for each action whose device is plugged in."""
    waiting = _waiting(question, chosen)
    free = {place: list(group.sockets) for place, group in enumerate(question.sockets)}
    out: dict[str, tuple[str, str]] = {}
    plugged = [
        (name, int(value))
        for name, value in zip(model.names, answer.values, strict=True)
        if name[0] == "plugged" and value
    ]
    ways: dict[int, list[str]] = {}
    for name, number in sorted(plugged, key=lambda one: model.outlets[int(str(one[0][2]))].splitter is not None):
        outlet = model.outlets[int(str(name[2]))]
        group = question.sockets[outlet.group]
        demand = name[1]
        assert isinstance(demand, SocketColumns)
        for _ in range(number):
            if outlet.splitter is None:
                socket = free[outlet.group].pop(0)
            else:
                place = int(str(name[2]))
                if not ways.get(place):
                    first = free[outlet.group].pop(0)
                    count = question.splitters[outlet.splitter].ways
                    ways[place] = [f"{first}/{way}" for way in range(1, count + 1)]
                socket = ways[place].pop(0)
            for action in waiting[demand].pop(0):
                out[action] = (group.hub, socket)
    return out


def _waiting(question: Question, chosen: dict[str, int]) -> dict[SocketColumns, list[list[str]]]:
    """For each kind of demand the devices that wait for a socket, each with the actions it does."""
    gear = {one.name: one for one in question.gear}
    out: dict[SocketColumns, list[list[str]]] = {}
    units: dict[tuple[str, str], list[str]] = {}
    for action in question.actions:
        if action not in chosen:
            continue
        way = question.ways[chosen[action]]
        if way.device is None:
            continue
        one = gear[way.device]
        if way.kind in ("stick", "switch"):
            feeds = "stick" if way.kind == "stick" else "button"
            out.setdefault(SocketColumns(way.role, feeds, one.plugs, one.current_a), []).append([action])
        elif not way.paired:
            key = (way.device, question.stands(way))
            if key not in units:
                units[key] = []
                demand = SocketColumns(None, "stick", one.plugs, one.current_a, way.device)
                out.setdefault(demand, []).append(units[key])
            units[key].append(action)
    return out


def signature(question: Question, chosen: dict[str, int], actions: Sequence[str]) -> tuple[Choice, ...]:
    """What tells two plans apart for people.

    Parameters
    ----------
    question : Question
    chosen : dict
        The way taken for each action.
    actions : sequence of str
    """
    return tuple(choice_of(question.ways[chosen[action]]) if action in chosen else () for action in actions)
