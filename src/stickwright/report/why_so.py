"""For the practitioner: why each action is done so, how sure that is, and what else there is."""

from __future__ import annotations

import math
from collections.abc import Container
from typing import Any, get_args

from stickwright.catalogue import book, say
from stickwright.codes.glance import Glance
from stickwright.codes.inputs import role_named
from stickwright.codes.layout_pages import Heading, LayoutPages
from stickwright.codes.message import Text, message
from stickwright.codes.scores import Scores
from stickwright.codes.sheets import Level, Sheets
from stickwright.model.fit import Caution
from stickwright.model.plan import Plan
from stickwright.model.recorded import Finding
from stickwright.model.sharing import Clash, Placement, PressFit, Sharing, SiteLoad
from stickwright.report.printed import sentence
from stickwright.report.score import score_of, score_words, terms_words
from stickwright.report.sharing_words import (
    asked_first,
    done_by,
    pair_words,
    socket_words,
    tags_of,
    way_out,
)
from stickwright.report.tell import tell
from stickwright.report.who import for_the_cables, for_the_numbers

__all__ = ["NO_HUB", "findings_rows", "press_words", "why_so"]

NO_HUB = message(LayoutPages.no_hub)


def why_so(plan: Plan) -> dict[str, Any] | None:
    """The practitioner's part of the sharing; None when nothing is shared out.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    """
    sharing = plan.sharing
    if sharing is None:
        return None
    cautions = [*for_the_numbers(plan), *(for_the_cables(plan) if sharing.wiring is None else ())]
    sites = {one.site for one in sharing.placements if one.how == "site"}
    return {
        "words": _headings(),
        "headline": " ".join((*asked_first(sharing), sentence(sharing.sentence))),
        "solved": sentence(sharing.solved),
        "score": _score(sharing) if sharing.placements else "",
        "unwired": "" if sharing.wiring is not None and sharing.wiring.wires else say(NO_HUB),
        "clash": _clash(sharing.clash),
        "actions": _actions(sharing, cautions),
        "cautions": [say(one.text) for one in cautions if one.site not in sites],
        "alternatives": [sentence(one.sentence) for one in sharing.alternatives],
        "pairs": _pairs(sharing),
        "loads": [_load(load) for load in sharing.loads],
        "findings": findings_rows(sharing.findings),
    }


def press_words(press: PressFit, before: Container[Text] = ()) -> str:
    """The numbers of a press: force against the comfortable one, hits, presses a minute, hold, false ones.

    Parameters
    ----------
    press : PressFit
        One switch under one part, for one action.
    before : container of Text, default ()
        Notes and assumptions told already, which are not told again.
    """
    told: list[Text] = [
        message(
            LayoutPages.press_force, force_n=press.force_n, comfortable=press.comfortable_n,
            effort_share=press.effort_share, limit_share=press.effort_limit_share,
        )
    ]  # fmt: skip
    if math.isfinite(press.hit_share):
        told.append(message(LayoutPages.press_hits, hit_share=press.hit_share, assumed=press.wanted_face_m is None))
    if press.presses_per_min > 0:
        count = press.presses_per_min
        told.append(message(LayoutPages.press_rate, count_per_min=count, sustained_per_min=press.sustained_per_min))
    if press.hold_s:
        told.append(message(LayoutPages.press_hold, hold_s=press.hold_s, limit_s=press.hold_limit_s))
    if press.false_estimate.upper > 0:
        told.append(message(Scores.unintended, rate=press.false_estimate, assumed=False))
    if press.wanted_face_m is not None:
        told.append(message(LayoutPages.press_face, face_m=press.wanted_face_m))
    told += [one for one in (*press.fails, *press.notes) if one not in before]
    taken = tuple(one for one in press.assumed if one not in before)
    if taken:
        told.append(message(LayoutPages.press_assumed, told=taken))
    elif press.assumed:
        told.append(message(LayoutPages.assumed_above))
    return tell(LayoutPages.press, parts=tuple(told))


def _score(sharing: Sharing) -> str:
    return f"{tell(LayoutPages.total, sum=score_words(score_of(sharing)))} {tell(LayoutPages.rounded)}"


def _pairs(sharing: Sharing) -> str:
    return tell(LayoutPages.pairs, pairs=tuple(pair_words(pair) for pair in sharing.pairs)) if sharing.pairs else ""


def _headings() -> dict[str, str]:
    """Fixed words of the part, for the template."""
    parts: tuple[Heading, ...] = get_args(Heading)
    return {part: tell(LayoutPages.heading, part=part) for part in parts} | {
        "clash": tell(Glance.heading, part="clash")
    }


def _clash(clash: Clash | None) -> dict[str, Any] | None:
    if clash is None:
        return None
    return {
        "sentence": sentence(clash.sentence),
        "wishes": tell(LayoutPages.requests, requests=clash.wishes) if clash.wishes else "",
        "ways": [say(way_out(number, clash)) for number in range(1, len(clash.ways_out) + 1)],
    }


def _actions(sharing: Sharing, cautions: list[Caution]) -> list[dict[str, Any]]:
    """One entry for each action; a site's cautions stand at the first action done there."""
    tags, told, seen = tags_of(sharing), [], set[str]()
    score = score_of(sharing).actions if sharing.placements else ()
    before = set[Text]()
    for one, part in zip(sharing.placements, score, strict=True):
        own = (
            [] if one.site is None or one.site in seen else [say(two.text) for two in cautions if two.site == one.site]
        )
        if one.how == "site" and one.site is not None:
            seen.add(one.site)
        told.append(
            {
                "action": one.action,
                "done": tell(
                    LayoutPages.action, place=done_by(one), socket=socket_words(one, _tag(one, tags)) or None,
                    role=role_named(one.role),
                ),
                "terms": tell(LayoutPages.total, sum=terms_words(part)),
                "press": press_words(one.press, before) if one.press is not None else "",
                "reason": sentence(one.reason),
                "second": sentence(one.second),
                "cautions": own if one.how == "site" else [],
            }
        )  # fmt: skip
        before |= {*one.press.notes, *one.press.assumed} if one.press is not None else set()
    return told


def _tag(one: Placement, tags: dict[tuple[str, str], str]) -> str:
    return tags.get((one.hub or "", one.socket or ""), "")


def _load(load: SiteLoad) -> list[str]:
    busy = tell(LayoutPages.busy, busy_share=load.busy_share) if load.busy_share > 0 else ""
    told = [tell(LayoutPages.load_why, why=load.why)] if load.why else []
    if busy and load.busy_basis:
        told.append(tell(LayoutPages.busy_basis, busy_share=load.busy_share, basis=load.busy_basis))
    tires = tell(LayoutPages.tires, rank=load.tires) if load.tires else ""
    return [load.site, book().writer.names(load.actions), busy, tires, " ".join(told)]


def findings_rows(findings: tuple[Finding, ...]) -> list[list[str]]:
    """What limits first, then what is to be checked, then notes; each kind in one run.

    Parameters
    ----------
    findings : tuple of Finding
        In any order.
    """
    levels: tuple[Level, ...] = get_args(Level)
    return [[tell(Sheets.level, level=level), " ".join(say(one.text) for one in findings if one.level == level)]
            for level in levels if any(one.level == level for one in findings)]  # fmt: skip
