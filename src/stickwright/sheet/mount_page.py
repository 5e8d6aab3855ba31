"""A page for each stick that is mounted, a row for each switch: what a family rebuilds it from, what the practitioner checks."""

from __future__ import annotations

import math
from typing import Any

from stickwright.catalogue import say
from stickwright.codes.message import message
from stickwright.codes.mount_answers import MountAnswers
from stickwright.model.mounting import Check, MountFit, SiteMount
from stickwright.model.plan import Plan
from stickwright.sheet.mount_care import monthly
from stickwright.sheet.mount_drawing import along_words, clamp_range_words, dimension_rows, mount_alt, mount_drawing
from stickwright.sheet.mount_shapes import base_of
from stickwright.sheet.mount_words import (
    CLOCK,
    COUNTED,
    beside_a_number,
    cable_words,
    check_factor,
    check_name,
    confirm_words,
    fails_words,
    give_words,
    joint_words,
    lever_words,
    parts_words,
    patch_words,
    photos,
    pose_words,
    quantity,
    release_words,
    to_measure,
)
from stickwright.sheet.paper import width_mm
from stickwright.sheet.printed import ASSUMED, clause, listed, plain, sentence
from stickwright.sheet.why_so import findings_rows

__all__ = ["MOST_MOUNT_PAGES", "mount_page", "mounted", "switch_rows", "unmounted_lines"]

MOST_MOUNT_PAGES = 3
_DRAWING_MM = 100.0


def mounted(plan: Plan) -> tuple[SiteMount, ...]:
    """The mounts that get a page of their own, three at most: sticks; where there are none, switches on arms. All other switches
    have a row.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    """
    if plan.room is None:
        return ()
    holding = [one for one in plan.mounts if one.choice is not None and one.pose is not None]
    sticks = [one for one in holding if one.kind != "switch"]
    arms = [one for one in holding if one.choice is not None and one.choice.arm is not None]
    return tuple((sticks or arms)[:MOST_MOUNT_PAGES])


def switch_rows(plan: Plan) -> dict[str, Any]:
    """Switches that are held but have no page: a row each, with their cautions once for all.

    Parameters
    ----------
    plan : Plan
        A finished plan.

    Returns
    -------
    dict
        Rows of what and where, what holds it, where from things that do not move, how well; cautions; what to ask or note.
    """
    paged = mounted(plan)
    rows, cautions, notes, assumed, clock = [], dict[str, list[str]](), [], list[str](), False
    every: set[str] = set()
    for one in plan.mounts:
        if one.kind != "switch" or one.choice is None or one.pose is None or one in paged or plan.room is None:
            continue
        choice = one.choice
        clock |= choice.arm is not None
        device = one.device if one.pieces == 1 else f"{one.pieces} \N{MULTIPLICATION SIGN} {one.device}"
        along = along_words(one, plan.room)
        held = [
            _tail(one),
            *([f"Clamp {along}."] if along else []),
            *(sentence(line) for line in joint_words(choice)),
        ]
        every.add(one.site)
        rows.append([f"{device} at the {one.site}", " ".join(held), _distances(one), _least(choice, one.kind)])
        for caution in one.cautions:
            cautions.setdefault(say(caution.text), []).append(one.site)
        notes += [[level, text] for level, text in findings_rows(one.findings)]
        assumed += [clause(text) for text in (*one.pose.assumed, *choice.assumed)]
    if clock:
        notes.insert(0, ["Clock", f"{CLOCK}."])
    if assumed:
        notes.append([ASSUMED.capitalize(), sentence("; ".join(dict.fromkeys(assumed)))])
    return {
        "rows": rows,
        "cautions": [text if set(sites) == every else f"{listed(sites)}: {text}" for text, sites in cautions.items()],
        "notes": notes,
    }


def _tail(mount: SiteMount) -> str:
    """What holds it, without the device and the site that the row names."""
    return sentence(message(MountAnswers.row, **{name: mount.sentence.param(name) for name in _ROW}))


_ROW = ("how", "under", "lost_share", "confirm")


def _distances(mount: SiteMount) -> str:
    rows = [row for row in dimension_rows(mount) if "named in" not in row[2]]
    ends = dict.fromkeys(row[:2] for row in rows)
    return " ".join(
        f"From {start} to {to}: {listed(far for *both, far in rows if tuple(both) == (start, to))}."
        for start, to in ends
    )


def _least(choice: MountFit, kind: str) -> str:
    """The check with the least to spare; what the give takes stands beside what holds it, unless it is not known."""
    judged = [one for one in choice.checks if math.isfinite(one.times) and one.wanted > 0]
    told = give_words(choice, kind, lost=False)
    if judged:
        worst = min(judged, key=lambda one: one.times / one.wanted)
        told.insert(0, f"{check_name(worst)}: safety factor {check_factor(worst)}, required {worst.wanted:g}.")
    return sentence(" ".join(told) or "nothing loads it")


def unmounted_lines(plan: Plan) -> list[list[str]]:
    """Sites without a page or a row: the site, the answer, and everything that fails or is to be taken care of.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    """
    paged = mounted(plan)
    return [
        [
            one.site,
            " ".join(
                [
                    sentence(one.sentence),
                    *(f"Caution. {say(caution.text)}" for caution in one.cautions),
                    *(
                        pose_words(one.pose, one.device, one.kind)
                        if one.pose is not None and one.kind != "switch"
                        else ()
                    ),
                    *(
                        fails_words(fit)
                        for fit in one.fits
                        if fit != one.choice and not (one.kind == "switch" and fit.taken_by)
                    ),
                    *(f"{level}: {text}" for level, text in findings_rows(one.findings) if text != say(one.sentence)),
                ]
            ),
        ]
        for one in plan.mounts
        if one not in paged and not (one.kind == "switch" and one.choice is not None and one.pose is not None)
    ]


def mount_page(plan: Plan, mount: SiteMount, height_mm: float = _DRAWING_MM, most_others: int = 99) -> dict[str, Any]:
    """Everything printed on the page of one mount.

    Parameters
    ----------
    plan : Plan
        A finished plan, its room described.
    mount : SiteMount
        One of those that `mounted` names.
    height_mm : float, default 100
        Paper height of the drawing.
    most_others : int, default 99
        So many of the other mounts are told; how many more there are is said.

    Returns
    -------
    dict
        Texts, tables and one drawing, for the template.
    """
    choice, room = mount.choice, plan.room
    if choice is None or room is None or mount.pose is None:
        raise ValueError(f"nothing holds {mount.device} at {mount.site}: there is nothing to draw")
    drawing = mount_drawing(mount, room, base_of(plan, mount), (184.0, height_mm))
    along = along_words(mount, room)
    place, turned, *assumed = pose_words(mount.pose, mount.device, mount.kind)
    told = [
        ("Part", parts_words(choice)),
        ("Fastener", patch_words(choice)),
        ("Clamp", along),
        ("Breakaway", release_words(choice)),
        ("Other places", clamp_range_words(mount, room)),
        ("Place", place),
        ("Turn", turned),
    ]
    return {
        "title": f"Where it goes: {mount.device} at the {mount.site}",
        "lead": sentence(mount.sentence),
        "drawing": {"svg": drawing, "alt": mount_alt(mount, room), "width_mm": width_mm(drawing)},
        "dimensions": [list(row) for row in dimension_rows(mount) if "named in" not in row[2]],
        "settings": [[name, sentence(text)] for name, text in told if text],
        "joints": [sentence(line) for line in joint_words(choice)],
        "monthly": monthly(choice, plan.made_on),
        "photos": photos(mount),
        "cautions": [say(one.text) for one in mount.cautions if not beside_a_number(one, mount)],
        "number_cautions": [say(one.text) for one in mount.cautions if beside_a_number(one, mount)],
        "checks": [_check_row(check) for check in choice.checks],
        "counted": " ".join(
            part
            for part in (
                f"{COUNTED}." if any(one.push == "working" for one in choice.checks) else "",
                lever_words(choice),
            )
            if part
        ),
        "give": [
            *confirm_words(choice),
            *give_words(choice, mount.kind),
            *_clearance(choice),
            *([cable_words(choice)] if choice.cable_m is not None else []),
        ],
        "others": _others(mount, choice, most_others),
        "assumed": [*assumed, *(f"{ASSUMED}: {clause(one)}." for one in choice.assumed)],
        "findings": findings_rows(mount.findings),
    }


def _check_row(check: Check) -> list[str]:
    """What, with which push, load, limit, factor, wanted, whether it holds; what was assumed beside its number."""
    beside = [
        *([f"to confirm: {to_measure(check)}"] if check.confirm else []),
        *([f"{ASSUMED}: {clause(check.assumed)}"] if check.assumed else []),
    ]
    what = f"{check_name(check)} ({'; '.join(beside)})" if beside else check_name(check)
    if check.limit is None and check.words is not None:  # a sentence instead of numbers
        told = f"{what}: {clause(check.words)}"
        return [told, check.push, "", "", "", f"{check.wanted:g}", _holds(check)]
    load, limit = quantity(check.loads, check.unit), quantity(check.most, check.unit)
    return [what, check.push, load, limit, check_factor(check), f"{check.wanted:g}", _holds(check)]


def _holds(check: Check) -> str:
    """Yes or no; or that assumed figures decide it, which stand beside its name."""
    return "to confirm" if check.confirm else "pass" if check.holds else "FAIL"


def _clearance(choice: MountFit) -> list[str]:
    arm = choice.arm
    if arm is None or not arm.nearest:
        return []
    return [f"Minimum clearance: {plain(arm.clearance_m, 'mm')} from {arm.nearest}, over the whole tilt."]


def _others(mount: SiteMount, choice: MountFit, most: int) -> list[str]:
    """What else there is, and what fails: best first, as many as there is room for."""
    told = [fails_words(one) for one in (choice, *mount.fits) if one != choice or one.verdict != "holds"]
    left = len(told) - most
    return told if left <= 0 else [*told[:most], f"{left} more, which come after these: see the plan's JSON file."]
