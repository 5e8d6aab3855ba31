"""What differs in a site, a recording or a figure alone is said once, with all of them in it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace

from stickwright.catalogue import say
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.stand_ins import StandIns
from stickwright.model.fit import Assumption
from stickwright.model.plan import Plan
from stickwright.model.recorded import Finding
from stickwright.report.printed import clause, listed

__all__ = ["all_assumptions", "merged_assumptions", "merged_findings"]

_FIGURE = re.compile(r"[+-]?\d[\d.]*")


def _shape(text: str) -> str:
    """A text with its figures taken out."""
    return _FIGURE.sub("#", text)


def all_assumptions(plan: Plan) -> tuple[Assumption, ...]:
    """All that a plan assumes: about the player and the sites, the layout, and several games together; merged."""
    taken = (
        *plan.assumptions,
        *(plan.sharing.assumptions if plan.sharing is not None else ()),
        *(plan.together.assumptions if plan.together is not None else ()),
    )
    return merged_assumptions(taken, [site.name for site in plan.sites])


def merged_assumptions(assumptions: Sequence[Assumption], sites: Iterable[str]) -> tuple[Assumption, ...]:
    """Assumptions with those alike at several sites in one, each with its own figure.

    Parameters
    ----------
    assumptions : sequence of Assumption
        `what` names its sites in a parameter of that name, or has none; one that is still a sentence ends in its site.
    sites : iterable of str
        Names of all sites.

    Returns
    -------
    tuple of Assumption
        In the order in which they first come, none twice; what has the same value for the same reason stands in one.
    """
    names = sorted(sites, key=len, reverse=True)
    groups: dict[tuple[object, ...], list[Assumption]] = {}
    for one in dict.fromkeys(assumptions):
        groups.setdefault(_key(one, names), []).append(one)
    told = [_merged(group, names) for group in groups.values()]
    alike: dict[tuple[Text, Text, Text], list[Assumption]] = {}
    for each in told:
        alike.setdefault((each.value, each.why, each.replace_by), []).append(each)
    return tuple(
        replace(group[0], what=message(StandIns.several, labels=tuple(dict.fromkeys(one.what for one in group))))
        if len(group) > 1
        else group[0]
        for group in alike.values()
    )


def _key(one: Assumption, names: Sequence[str]) -> tuple[object, ...]:
    """What assumptions share that stand in one: all but their sites and the figures of their value."""
    if isinstance(one.what, Message):
        value = _shape_of(one.value) if _sites(one.what) else one.value
        rest = tuple(pair for pair in one.what.params if pair[0] != "sites")
        return one.what.code, rest, value, one.why, one.replace_by
    site, stem = _site_and_stem(one.what, names)
    return (stem, _shape(say(one.value)), one.why, one.replace_by) if site else (stem, one.value, one.why, "")


def _sites(what: Message) -> tuple[Name, ...]:
    found: tuple[Name, ...] = dict(what.params).get("sites", ())
    return found


def _shape_of(value: Text) -> object:
    """A value without its figures."""
    if isinstance(value, str):
        return _shape(value)
    return value.code, tuple((name, "" if isinstance(held, float) else held) for name, held in value.params)


def _site_and_stem(what: str, names: Sequence[str]) -> tuple[str, str]:
    site = next((name for name in names if what.endswith(f" at {name}")), "")
    return site, what.removesuffix(f" at {site}") if site else what


def _merged(group: list[Assumption], names: Sequence[str]) -> Assumption:
    first = group[0]
    if len(group) == 1:
        return first
    if isinstance(first.what, Message):
        each = [(name, one.value) for one in group if isinstance(one.what, Message) for name in _sites(one.what)]
        at = tuple(name for name, _ in each)
        what = Message(first.what.code, tuple((key, at if key == "sites" else held) for key, held in first.what.params))
        values = tuple(value for _, value in each)
        value = values[0] if len(set(values)) == 1 else message(StandIns.by_site, values=values, sites=at)
        return replace(first, what=what, value=value)
    told = [_site_and_stem(say(one.what), names) for one in group]
    return replace(
        first,
        what=f"{told[0][1]} at {listed(site for site, _ in told)}",
        value=_together([say(one.value) for one in group]),
    )


def _together(texts: Sequence[str]) -> str:
    """Texts that differ in figures alone, as one: each figure that differs is followed by its fellows."""
    figures = [_FIGURE.findall(text) for text in texts]
    alike = [list(dict.fromkeys(column)) for column in zip(*figures, strict=True)]
    fill = iter(
        column[0] if len(column) == 1 else listed(row)
        for column, row in zip(alike, zip(*figures, strict=True), strict=True)
    )
    return _FIGURE.sub(lambda _: next(fill), texts[0])


def merged_findings(told: Iterable[tuple[str, Finding]]) -> tuple[tuple[tuple[str, ...], Finding], ...]:
    """Findings of several recordings, those alike said once, with what is different in the later ones.

    Parameters
    ----------
    told : iterable of (str, Finding)
        Name of the recording, and what was noticed in it.

    Returns
    -------
    tuple of (tuple of str, Finding)
        The recordings that share it, and the finding of the first, ending in what the others differ in.
    """
    groups: dict[tuple[str, str, str], list[tuple[str, Finding]]] = {}
    for name, finding in told:
        groups.setdefault((finding.level, finding.about, _shape(say(finding.text))), []).append((name, finding))
    out = []
    for group in groups.values():
        first = group[0][1]
        names = dict.fromkeys(name for name, _ in group)
        others = [
            f"in {name} {_differs(say(first.text), say(one.text))}" for name, one in group[1:] if one.text != first.text
        ]
        text = f"{clause(say(first.text))}; {', '.join(others)}." if others else first.text
        out.append((tuple(names), Finding(first.level, first.about, text)))
    return tuple(out)


def _differs(first: str, other: str) -> str:
    """The words of the other text from the first to the last that differ, up to where its advice begins."""
    before, after = ([*text.split(": ")[0].split()] for text in (first, other))
    at = [place for place, (a, b) in enumerate(zip(before, after, strict=False)) if a != b]
    return " ".join(after[at[0] : at[-1] + 1]) if at else clause(other)
