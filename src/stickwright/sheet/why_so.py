"""For the practitioner: why each action is done so, how sure that is, and what else there is."""

from __future__ import annotations

import math
from collections.abc import Container
from typing import Any, get_args

from stickwright.catalogue import say
from stickwright.codes.message import Text, message
from stickwright.codes.scores import Scores
from stickwright.codes.sheets import Level, Sheets
from stickwright.model.plan import Caution, Plan
from stickwright.model.recorded import Finding
from stickwright.model.sharing import Clash, Placement, PressFit, Sharing, SiteLoad
from stickwright.sheet.printed import ASSUMED, clause, listed, plain, sentence, share, shown
from stickwright.sheet.score import score_of, score_words, terms_words
from stickwright.sheet.sharing_words import (
    alternative_words,
    asked_first,
    done_by,
    pair_words,
    second_words,
    socket_words,
    tags_of,
    way_out_words,
)
from stickwright.sheet.tell import tell
from stickwright.sheet.who import for_the_cables, for_the_numbers

__all__ = ["NO_HUB", "findings_rows", "press_words", "why_so"]

NO_HUB = "No hub is described, so no sockets and cables are planned."


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
        "headline": " ".join((*asked_first(sharing), sentence(sharing.sentence))),
        "solved": sentence(sharing.solved),
        "score": f"{score_words(score_of(sharing))}." if sharing.placements else "",
        "unwired": "" if sharing.wiring is not None and sharing.wiring.wires else NO_HUB,
        "clash": _clash(sharing.clash),
        "actions": _actions(sharing, cautions),
        "cautions": [say(one.text) for one in cautions if one.site not in sites],
        "alternatives": [alternative_words(one) for one in sharing.alternatives],
        "pairs": [pair_words(pair) for pair in sharing.pairs],
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
    told = [
        f"{plain(press.force_n, 'n')} to operate, {shown(press.comfortable_n, 'n')} comfortable: "
        f"effort {'not known' if press.effort_share is None else share(press.effort_share)}, limit {share(press.effort_limit_share)}"
    ]
    if math.isfinite(press.hit_share):
        told.append(f"{share(press.hit_share)} of presses land on it")
    kept = f" of {press.sustained_per_min:.0f} that can be kept up" if press.sustained_per_min is not None else ""
    if press.presses_per_min > 0:
        told.append(f"{press.presses_per_min:.0f} presses in the busy minute{kept}")
    if press.hold_s:
        limit = f", limit {plain(press.hold_limit_s, 's')}" if press.hold_limit_s is not None else ", no hold taken"
        told.append(f"held for up to {plain(press.hold_s, 's')}{limit}")
    if press.false_estimate.upper > 0:
        told.append(say(message(Scores.unintended, rate=press.false_estimate, assumed=False)))
    if press.wanted_face_m is not None:
        told.append(f"{plain(press.wanted_face_m, 'mm')} across would catch 95 of 100")
    told += [clause(one) for one in (*press.fails, *press.notes) if one not in before]
    taken = [clause(one) for one in press.assumed if one not in before]
    if taken:
        told.append(f"{ASSUMED}: {'; '.join(taken)}")
    elif press.assumed:
        told.append(f"in part {ASSUMED}, as above")
    return "; ".join(told)


def _clash(clash: Clash | None) -> dict[str, Any] | None:
    if clash is None:
        return None
    return {
        "sentence": sentence(clash.sentence),
        "wishes": [clause(wish) for wish in clash.wishes],
        "ways": [way_out_words(number, clash) for number in range(1, len(clash.ways_out) + 1)],
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
                "place": done_by(one),
                "socket": _socket(one, tags.get((one.hub or "", one.socket or ""), "")),
                "terms": terms_words(part),
                "press": press_words(one.press, before) if one.press is not None else "",
                "reason": sentence(one.reason),
                "second": second_words(one),
                "cautions": own if one.how == "site" else [],
            }
        )
        before |= {*one.press.notes, *one.press.assumed} if one.press is not None else set()
    return told


def _socket(one: Placement, tag: str) -> str:
    """Where it is plugged in and what the game sees."""
    parts = [socket_words(one, tag), f"the game sees the {one.role}" if one.role else ""]
    return ", ".join(part for part in parts if part)


def _load(load: SiteLoad) -> list[str]:
    tires = {0: "", 1: "first", 2: "second", 3: "third"}.get(load.tires, f"number {load.tires}")
    busy = share(load.busy_share) if load.busy_share > 0 else ""
    basis = f"{share(load.busy_share)} busy: {clause(load.busy_basis)}" if busy and load.busy_basis else ""
    return [load.site, listed(load.actions), busy, tires, " ".join(sentence(one) for one in (load.why, basis) if one)]


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
