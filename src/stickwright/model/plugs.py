"""Plugs and sockets: which size, how many conductors, and what fits into what.

A plug is written as people say it: ``USB``, ``USB-C``, ``4-conductor`` (3.5 mm), ``6.3 mm 2-conductor``,
``USB or 4-conductor`` for a device with either.
"""

from __future__ import annotations

import re
from typing import cast

from stickwright.codes.message import message
from stickwright.codes.plugs import Contact, PlugKind, Plugs
from stickwright.errors import BadInput, Problem

__all__ = ["CONDUCTORS", "conductors_of", "is_usb", "plugs_of"]

_JACK = re.compile(r"^(?:(2\.5|3\.5|6\.3)\s*mm\s+)?([234])[- ]conductors?(?:\s+plug|\s+jack)?$", re.IGNORECASE)
_USB: dict[str, PlugKind] = {"usb": "USB-A", "usb-a": "USB-A", "usb a": "USB-A", "usb-c": "USB-C", "usb c": "USB-C"}
CONDUCTORS: dict[int, tuple[Contact, ...]] = {
    2: ("tip", "sleeve"),
    3: ("tip", "ring", "sleeve"),
    4: ("tip", "ring 1", "ring 2", "sleeve"),
}
"""Contacts of a round plug from its end to the handle: the words of the trade; the sleeve is the one at the handle."""


def plugs_of(text: str) -> tuple[PlugKind, ...]:
    """The plugs that a device can have, in one spelling.

    Parameters
    ----------
    text : str
        As typed; several joined by "or".

    Returns
    -------
    tuple of str
        Empty when nothing is said.

    Raises
    ------
    BadInput
        A plug that is none of these.

    Examples
    --------
    >>> plugs_of("USB or 4-conductor"), plugs_of("6.3 mm 2-conductor"), plugs_of("")
    (('USB-A', '3.5 mm 4-conductor'), ('6.3 mm 2-conductor',), ())
    """
    out: list[PlugKind] = []
    for part in re.split(r"\s+or\s+|\s*/\s*|\s*,\s*", text.strip()) if text.strip() else ():
        round_plug = _JACK.match(part)
        if round_plug:
            out.append(cast(PlugKind, f"{round_plug[1] or '3.5'} mm {round_plug[2]}-conductor"))
        elif part.lower() in _USB:
            out.append(_USB[part.lower()])
        else:
            raise BadInput(Problem("plug", f'"{part}"', message(Plugs.kinds), message(Plugs.look)))
    return tuple(dict.fromkeys(out))


def is_usb(plug: str) -> bool:
    """Whether a plug is a USB plug.

    Parameters
    ----------
    plug : str
        As `plugs_of` spells it.
    """
    return plug.startswith("USB")


def conductors_of(plug: str) -> tuple[Contact, ...]:
    """Contacts of a plug; for USB 2.0 its four wires [usb-2].

    Parameters
    ----------
    plug : str
        As `plugs_of` spells it.

    Examples
    --------
    >>> conductors_of("3.5 mm 2-conductor")
    ('tip', 'sleeve')
    """
    if is_usb(plug):
        return ("supply", "data -", "data +", "ground")
    return CONDUCTORS[int(plug.split(" mm ")[1][0])]
