"""A page for each stick that is mounted, a row for each switch: what a family rebuilds it from, what the practitioner checks."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, get_args

from stickwright.catalogue import book, say
from stickwright.codes.message import Name, Text, message
from stickwright.codes.mount_answers import MountAnswers
from stickwright.codes.mount_lines import Head, MountLines, Row
from stickwright.codes.mount_poses import MountPoses
from stickwright.model.mounting import Check, SiteMount
from stickwright.model.plan import Plan
from stickwright.report.mount_care import monthly
from stickwright.report.mount_distances import (
    along_words,
    clamp_place,
    clamp_range_words,
    dimension_rows,
    distances,
    mount_alt,
)
from stickwright.report.mount_drawing import mount_drawing
from stickwright.report.mount_shapes import base_of
from stickwright.report.mount_words import (
    assumed_words,
    beside_a_number,
    cable_words,
    check_cell,
    check_factor,
    clearance_words,
    clock_words,
    confirm_words,
    counted_words,
    fails_words,
    give_words,
    joint_words,
    least_words,
    lever_words,
    parts_words,
    patch_words,
    photos,
    pose_words,
    quantity,
    release_words,
    result_of,
)
from stickwright.report.paper import width_mm
from stickwright.report.printed import sentence
from stickwright.report.why_so import findings_rows

__all__ = ["MOST_MOUNT_PAGES", "heads", "mount_page", "mounted", "other_lines", "switch_rows", "unmounted_lines"]

MOST_MOUNT_PAGES = 3


def heads() -> dict[Head, str]:
    """Headings of the pages of the mounts and of their tables, by what they are of."""
    return {head: say(message(MountLines.head, head=head)) for head in get_args(Head)}


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
    rows, cautions, notes, assumed, clock = [], dict[Text, list[str]](), [], list[Text](), False
    every: set[str] = set()
    for one in plan.mounts:
        if one.kind != "switch" or one.choice is None or one.pose is None or one in paged or plan.room is None:
            continue
        choice = one.choice
        clock |= choice.arm is not None
        device = message(MountLines.device_at, device=Name(one.device), pieces=one.pieces, site=Name(one.site))
        place = clamp_place(one, plan.room)
        held = [_tail(one), *([say(message(MountPoses.clamp, along=place))] if place else []), *joint_words(choice)]
        every.add(one.site)
        far = " ".join(say(line) for line in distances(one))
        rows.append([say(device), " ".join(held), far, least_words(choice, one.kind)])
        for caution in one.cautions:
            cautions.setdefault(caution.text, []).append(one.site)
        notes += [[level, text] for level, text in findings_rows(one.findings)]
        assumed += [*one.pose.assumed, *choice.assumed]
    if clock:
        notes.insert(0, [say(message(MountLines.clock_head)), clock_words()])
    if assumed:
        texts = message(MountLines.all_assumed, texts=tuple(dict.fromkeys(assumed)))
        notes.append([say(message(MountLines.assumed_head)), say(texts)])
    return {
        "heads": heads(),
        "rows": rows,
        "cautions": [say(text) if set(sites) == every else _of(sites, text) for text, sites in cautions.items()],
        "notes": notes,
    }


def _of(sites: Sequence[str], text: Text) -> str:
    """A caution that concerns some of the sites alone."""
    return say(message(MountLines.for_sites, sites=tuple(map(Name, sites)), text=text))


def _tail(mount: SiteMount) -> str:
    """What holds it, without the device and the site that the row names."""
    return sentence(message(MountAnswers.row, **{name: mount.sentence.param(name) for name in _ROW}))


_ROW = ("how", "under", "lost_share", "confirm")


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
                    *(say(message(MountLines.caution_in_line, text=caution.text)) for caution in one.cautions),
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


def mount_page(plan: Plan, mount: SiteMount, most_others: int = 99) -> dict[str, Any]:
    """Everything printed on the page of one mount.

    Parameters
    ----------
    plan : Plan
        A finished plan, its room described.
    mount : SiteMount
        One of those that `mounted` names.
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
    drawing = mount_drawing(mount, room, base_of(plan, mount))
    place, turned, *assumed = pose_words(mount.pose, mount.device, mount.kind)
    told: list[tuple[Row, str]] = [
        ("part", parts_words(choice)),
        ("fastener", patch_words(choice)),
        ("clamp", along_words(mount, room)),
        ("breakaway", release_words(choice)),
        ("other_places", clamp_range_words(mount, room)),
        ("place", place),
        ("turn", turned),
    ]
    return {
        "heads": heads(),
        "title": say(message(MountLines.heading, device=Name(mount.device), site=Name(mount.site))),
        "lead": sentence(mount.sentence),
        "drawing": {"svg": drawing, "alt": mount_alt(mount, room), "width_mm": width_mm(drawing)},
        "dimensions": [list(row) for row in dimension_rows(mount)],
        "settings": [[say(message(MountLines.row, row=row)), sentence(text)] for row, text in told if text],
        "joints": joint_words(choice),
        "monthly": monthly(choice, plan.made_on),
        "photos": photos(mount),
        "cautions": [say(one.text) for one in mount.cautions if not beside_a_number(one, mount)],
        "number_cautions": [say(one.text) for one in mount.cautions if beside_a_number(one, mount)],
        "checks": [_check_row(check) for check in choice.checks],
        "counted": " ".join(part for part in (counted_words(choice), lever_words(choice)) if part),
        "give": [
            *confirm_words(choice),
            *give_words(choice, mount.kind),
            *clearance_words(choice),
            *([cable_words(choice)] if choice.cable_m is not None else []),
        ],
        "others": other_lines(mount, most_others),
        "assumed": [*assumed, *(assumed_words(one) for one in choice.assumed)],
        "findings": findings_rows(mount.findings),
    }


def _check_row(check: Check) -> list[str]:
    """What, with which push, load, limit, factor, wanted, whether it holds; what was assumed beside its number."""
    push = say(message(MountLines.push, push=check.push)) if check.push else ""
    required = book().writer.trimmed(check.wanted)
    result = say(message(MountLines.result, result=result_of(check)))
    if check.limit is None and check.words is not None:  # a sentence instead of numbers
        return [check_cell(check, check.words), push, "", "", "", required, result]
    load, limit = quantity(check.loads, check.unit), quantity(check.most, check.unit)
    return [check_cell(check), push, load, limit, check_factor(check), required, result]


def other_lines(mount: SiteMount, most: int = 99) -> list[str]:
    """What else there is, and what fails: best first, as many as there is room for.

    Parameters
    ----------
    mount : SiteMount
        With all ways to hold it.
    most : int, default 99
        So many are told; how many more there are is said.
    """
    choice = mount.choice
    told = [
        fails_words(one)
        for one in (choice, *mount.fits)
        if one is not None and (one != choice or one.verdict != "holds")
    ]
    left = len(told) - most
    return told if left <= 0 else [*told[:most], say(message(MountLines.more, count=left))]
