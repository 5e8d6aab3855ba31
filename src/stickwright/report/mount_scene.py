"""The mounts of a plan as one page that can be turned: a single HTML file that asks no network for anything."""

from __future__ import annotations

import base64
import hashlib
import json
import re
from collections.abc import Iterable, Sequence
from html import escape
from pathlib import Path
from typing import Any

from stickwright.catalogue import say
from stickwright.codes.message import Name, message
from stickwright.codes.mount_drawings import MountDrawings, SceneHead, Thing
from stickwright.codes.mount_lines import MountLines
from stickwright.codes.mount_problems import MountProblems
from stickwright.errors import BadInput, Problem
from stickwright.model.mounting import SiteMount
from stickwright.model.plan import Plan
from stickwright.model.room import Room
from stickwright.report.mount_distances import clamp_place, clamp_range_words, dimension_rows, mount_alt
from stickwright.report.mount_numbers import worth_naming
from stickwright.report.mount_shapes import (
    DrawnBody,
    Layer,
    Point,
    base_of,
    dimension_ends,
    forward_of,
    mount_shapes,
    plain_words,
    room_shapes,
)
from stickwright.report.mount_words import (
    assumed_words,
    check_words,
    fails_words,
    give_words,
    joint_words,
    patch_words,
    pose_words,
)
from stickwright.report.printed import in_unit, sentence
from stickwright.report.what_if import what_if_mark
from stickwright.report.why_so import findings_rows

__all__ = ["place_rows", "scene_data", "scene_html"]

_TEMPLATES = Path(__file__).with_name("templates")
_KINDS: dict[Layer, Thing] = {
    "TUBES": "tube", "EDGES": "edge", "SURFACES": "surface", "KEEP_OUT": "keep_free", "LANDMARKS": "landmark",
    "MOUNT": "mount", "STICK": "stick", "CABLE": "cable",
}  # fmt: skip
_PLACES: tuple[SceneHead, ...] = ("what", "name", "right", "forward", "up", "note")
_ARROW_M, _ACROSS_M, _LEAST_M = 0.12, 0.85, 0.002
_BODY_M: Point = (0.0, 0.15, 0.20)  # the middle of the sign


def scene_html(plan: Plan) -> str:
    """The page, with its pictures' data, its tables, and rules that let nothing in from outside.

    Parameters
    ----------
    plan : Plan
        A finished plan whose room is described.

    Returns
    -------
    str
        HTML, the same for the same plan.

    Raises
    ------
    BadInput
        No stick was given a place.
    """
    told = [one for one in plan.mounts if one.pose is not None]
    room = plan.room
    if room is None or not told:
        raise BadInput(
            Problem(
                "--scene",
                message(MountProblems.nothing_placed),
                message(MountProblems.room_and_fit),
                message(MountProblems.describe_room),
            )
        )
    style, script = _part("scene.css"), _part("scene.js")
    data = json.dumps([scene_data(plan, one, room) for one in told], ensure_ascii=False, allow_nan=False)
    mark = f"{what_if_mark(plan.wishes)}." if plan.wishes.what_if else ""
    foot = message(MountDrawings.scene_foot, mark=mark, version=Name(plan.version), made_on=Name(plan.made_on))
    parts = {
        "policy": f"default-src 'none'; script-src {_hash(script)}; style-src {_hash(style)}; base-uri 'none'; form-action 'none'",
        "title": escape(say(message(MountLines.of_player, player=Name(plan.player)))),
        "style": style,
        "choice": _choice(told),
        "tables": "\n".join(_tables(plan, one, room) for one in told),
        "foot": escape(say(foot)),
        "data": data.replace("<", "\\u003c"),
        "script": script,
    }  # fmt: skip
    return re.sub(r"@@(\w+)@@", lambda found: parts[found[1]], _part("scene.html"))


def _part(name: str) -> str:
    return (_TEMPLATES / name).read_text(encoding="utf-8")


def _hash(text: str) -> str:
    """What the policy knows this very text by."""
    return f"'sha256-{base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()}'"


def _choice(mounts: Sequence[SiteMount]) -> str:
    if len(mounts) < 2:
        return ""
    options = "".join(f'<option value="{place}">{escape(_heading(one))}</option>' for place, one in enumerate(mounts))
    label = escape(say(message(MountDrawings.show)))
    return f'<p class="choice"><label for="choice">{label}</label> <select id="choice">{options}</select></p>'


def _heading(mount: SiteMount) -> str:
    return say(message(MountLines.device_at, device=Name(mount.device), pieces=1, site=Name(mount.site)))


# --- the picture ------------------------------------------------------------------------------------------------------------


def scene_data(plan: Plan, mount: SiteMount, room: Room) -> dict[str, Any]:
    """What the picture of one mount is drawn from.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    mount : SiteMount
        One of its mounts, with a pose.
    room : Room
        The plan's room.

    Returns
    -------
    dict
        JSON-ready bodies, distances and the arrow, in millimetre.
    """
    shapes = _shapes(plan, mount, room)
    distances = []
    for one in mount.choice.dimensions if mount.choice is not None else ():
        ends = dimension_ends(mount, room, one)
        if ends is not None and one.distance_m >= _LEAST_M:
            start, end, axis = ends
            foot = tuple(end[place] if place == axis else start[place] for place in range(3))
            text = message(MountDrawings.distance_along, to=one.to, distance_m=one.distance_m, along=one.along)
            distances.append({"from": _mm(start), "to": _mm((foot[0], foot[1], foot[2])), "text": plain_words(text)})
    return {
        "alt": mount_alt(mount, room),
        "shapes": [
            {
                "layer": one.layer, "name": one.name, "form": one.form, "points": [_mm(point) for point in one.points],
                "thick": round(in_unit(one.thick_m, "mm"), 1), "sure": one.sure,
                "told": _told(one, mount),
            }
            for one in shapes
        ],
        "distances": distances,
        "forward": _forward(mount),
        "middle": _mm(_middle(mount)),
"across": round(in_unit(_ACROSS_M, "mm"), 1),
    }  # fmt: skip


def _told(one: DrawnBody, mount: SiteMount) -> bool:
    """Whether its name stands in the picture; the tables name everything."""
    if not one.name or one.layer in ("BODY", "SEAT") or one.role == "contact":
        return False
    if one.layer == "LANDMARKS":
        return mount.choice is not None and one.name in {line.landmark for line in mount.choice.dimensions}
    if one.layer in ("TUBES", "EDGES", "SURFACES"):
        return worth_naming(one, mount)
    return (one.layer, one.form) != ("MOUNT", "solid")


def _shapes(plan: Plan, mount: SiteMount, room: Room) -> tuple[DrawnBody, ...]:
    contact = mount.pose.contact_m if mount.pose is not None else None
    return (*room_shapes(room, mount.site, contact), *mount_shapes(mount, room, base_of(plan, mount)))


def _middle(mount: SiteMount) -> Point:
    """What the picture turns about: a good way from the player's middle to the stick."""
    at = mount.pose.base_m if mount.pose is not None else _BODY_M
    x, y, z = (body + 0.6 * (base - body) for body, base in zip(_BODY_M, at, strict=True))
    return x, y, z


def _forward(mount: SiteMount) -> list[list[float]]:
    if mount.pose is None:
        return []
    _, forward, _ = forward_of(mount.pose)
    x, y, z = (at + _ARROW_M * way for at, way in zip(mount.pose.base_m, forward, strict=True))
    return [_mm(mount.pose.base_m), _mm((x, y, z))]


def _mm(point: Point) -> list[float]:
    return [round(in_unit(number, "mm"), 1) for number in point]


# --- the tables -------------------------------------------------------------------------------------------------------------


def place_rows(shapes: Iterable[DrawnBody]) -> list[list[str]]:
    """What stands where, for those who do not see the picture.

    Parameters
    ----------
    shapes : iterable of DrawnBody
        Bodies; those without a name and the sign of the player are left out.

    Returns
    -------
    list
        Rows of: what, name, then right, forward and up of the seat reference point in millimetre, and a note.
    """
    rows = []
    for one in shapes:
        if one.name and one.layer in _KINDS:
            spans = [_span([point[axis] for point in one.points]) for axis in range(3)]
            rows.append([say(message(MountDrawings.kind, kind=_KINDS[one.layer])), one.name, *spans, one.note])
    return rows


def _span(along_m: Sequence[float]) -> str:
    return say(message(MountDrawings.span, low_m=min(along_m), high_m=max(along_m)))


def _tables(plan: Plan, mount: SiteMount, room: Room) -> str:
    choice = mount.choice
    mark = escape(say(message(MountDrawings.caution_mark)))
    device, site = Name(mount.device), Name(mount.site)
    told = [f"<h2>{escape(_heading(mount))}</h2>", f"<p>{escape(sentence(mount.sentence))}</p>"]
    told += [f'<p class="care"><strong>{mark}</strong> {escape(say(one.text))}</p>' for one in mount.cautions]
    if mount.pose is not None:
        told += [f"<p>{escape(line)}</p>" for line in pose_words(mount.pose, mount.device)]
    if choice is not None:
        held = message(
            MountLines.held_by, mount=Name(choice.mount), on=None, fixed=patch_words(choice) or None,
            along=clamp_place(mount, room),
        )  # fmt: skip
        told.append(f"<p>{escape(say(held))}</p>")
        if other := clamp_range_words(mount, room):
            told.append(f"<p>{escape(other)}</p>")
        told.append(_list(say(message(MountDrawings.joints)), joint_words(choice)))
        fixed = say(message(MountDrawings.fixed_points, site=site))
        told.append(_table(fixed, _heads("from", "to", "distance"), dimension_rows(mount)))
        told.append(_list(say(message(MountDrawings.strength)), [check_words(one) for one in choice.checks]))
        told += [
            f"<p>{escape(line)}</p>" for line in (*give_words(choice), *(assumed_words(one) for one in choice.assumed))
        ]
    others = [fails_words(one) for one in mount.fits if one != choice]
    told.append(_list(say(message(MountDrawings.others)), others))
    told += [
        f"<p><strong>{escape(level)}:</strong> {escape(text)}</p>" for level, text in findings_rows(mount.findings)
    ]
    positions = say(message(MountDrawings.positions, device=device, site=site))
    told.append(_table(positions, _heads(*_PLACES), place_rows(_shapes(plan, mount, room))))
    return f"<section>{''.join(told)}</section>"


def _heads(*heads: SceneHead) -> list[str]:
    return [say(message(MountDrawings.head, head=head)) for head in heads]


def _table(caption: str, heads: Sequence[str], rows: Sequence[Sequence[str]]) -> str:
    if not rows:
        return ""
    top = "".join(f'<th scope="col">{escape(head)}</th>' for head in heads)
    body = "".join(f"<tr>{''.join(f'<td>{escape(cell)}</td>' for cell in row)}</tr>" for row in rows)
    table = f"<table><caption>{escape(caption)}</caption><thead><tr>{top}</tr></thead><tbody>{body}</tbody></table>"
    return f'<div class="wide" role="region" tabindex="0" aria-label="{escape(caption)}">{table}</div>'


def _list(title: str, lines: Sequence[str]) -> str:
    if not lines:
        return ""
    return f"<h3>{escape(title)}</h3><ul>{''.join(f'<li>{escape(line)}</li>' for line in lines)}</ul>"
