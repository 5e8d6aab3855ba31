"""What differs in a site, a recording or a figure alone is said once, with all of them in it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace

from stickwright.catalogue import say
from stickwright.model.plan import Assumption
from stickwright.model.recorded import Finding
from stickwright.sheet.printed import clause, listed

__all__ = ["merged_assumptions", "merged_findings"]

_FIGURE = re.compile(r"[+-]?\d[\d.]*")


def _shape(text: str) -> str:
    """A text with its figures taken out."""
    return _FIGURE.sub("#", text)


def merged_assumptions(assumptions: Sequence[Assumption], sites: Iterable[str]) -> tuple[Assumption, ...]:
    """Assumptions with those alike at several sites in one: '... at right index and chin: 0.038 and 0.083 N/mm'.

    Parameters
    ----------
    assumptions : sequence of Assumption
        Each names its site at the end of `what`, or none.
    sites : iterable of str
        Names of all sites.

    Returns
    -------
    tuple of Assumption
        In the order in which they first come, none twice; what has the same value for the same reason stands in one.
    """
    names = sorted(sites, key=len, reverse=True)
    groups: dict[tuple[str, ...], list[tuple[str, Assumption]]] = {}
    for one in dict.fromkeys(assumptions):
        site = next((name for name in names if one.what.endswith(f" at {name}")), "")
        stem = one.what.removesuffix(f" at {site}") if site else one.what
        key = (stem, _shape(one.value), one.why, one.replace_by) if site else (one.what, one.value, one.why, "")
        groups.setdefault(key, []).append((site, one))
    told = [_merged(stem, group) for (stem, *_), group in groups.items()]
    alike: dict[tuple[str, str, str], list[Assumption]] = {}
    for each in told:
        alike.setdefault((each.value, each.why, each.replace_by), []).append(each)
    return tuple(
        replace(group[0], what=listed(dict.fromkeys(one.what for one in group))) if len(group) > 1 else group[0]
        for group in alike.values()
    )


def _merged(stem: str, group: list[tuple[str, Assumption]]) -> Assumption:
    first = group[0][1]
    if len(group) == 1:
        return first
    what = f"{stem} at {listed(site for site, _ in group)}"
    return Assumption(what, _together([one.value for _, one in group]), first.why, first.replace_by)


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
