"""A device that stands on a table, tray or floor: free, fixed by each fastener of the kit, or on a board."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from stickwright.codes.message import Message, Name, message
from stickwright.codes.mount_answers import MountAnswers
from stickwright.codes.mount_assumed import MountAssumed
from stickwright.codes.mount_changes import MountChanges
from stickwright.codes.to_measure import ToMeasure
from stickwright.model.kit import Fastener, Kit, Mount
from stickwright.model.mounting import Check, MountFit
from stickwright.model.room import Surface
from stickwright.mounting.asked import (
    MountRequest,
    dimensions,
    entered,
    margin,
    reach_of,
    stronger_first,
    unmeasured_words,
    verdict_of,
)
from stickwright.mounting.base_stability import Foot, foot_checks, with_fastener
from stickwright.mounting.carried import UNMEASURED_BASE_M
from stickwright.mounting.change import Stand, smallest_change, stand_change
from stickwright.mounting.friction import assumed_friction, friction_range
from stickwright.mounting.held import HeldDevice
from stickwright.mounting.rules import broken_rules
from stickwright.mounting.statics import Pushes
from stickwright.mounting.support_stability import THIGHS_RANGE_M, stand_checks, surface_checks
from stickwright.mounting.unmeasured import Reading, Unmeasured, judged, of_device, of_fastener, of_mount, reading_of

__all__ = ["LEVEL_M", "Standing", "on_surface"]

LEVEL_M = 0.012
"""How far a base may be off the height of a surface before something must go under it, or it is too high."""
MOST_PACKED_M = 0.120
"""Packing under a base beyond which it is no longer steady: common practice, no source."""
MOST_RAISED_M = 0.040
"""By which a pad may raise a part that lies on something: common practice, no source."""
LEAST_WEDGE_RAD = math.radians(1.0)
"""A base that is tilted by less lies flat."""
RAISED_PARTS = frozenset({"fingertip", "thumb", "hand", "forearm", "elbow", "foot", "toe"})
ANTI_SLIP = "anti-slip sheet"
TRAY_KG = 6.0
"""The heaviest tray that nobody weighed: common practice, no source."""
_TAPE_M = 0.002
_OVER_M = 0.005


@dataclass(frozen=True)
class Standing:
    """A base on a surface, with all figures that it is judged by.

    Parameters
    ----------
    held : HeldDevice
    surface : Surface
    pushes : Pushes
    off_m : tuple of 2 floats
        From the near left corner of the surface to the middle of the base.
    underside_m : float
        Of the base above the surface, with its pivot where it is now taken to be.
    slope_rad : float
        Steepest that the surface stands in play.
    tilt_rad : float, default 0.0
        Of the base against the surface, towards the player: a wedge goes under it.
    raises : bool, default False
        Whether a pad may raise the part.
    plate : Mount, optional
        Board that it stands on.
    fastener : Fastener, optional
    sheet : Fastener, optional
        Under the board.
    friction : float, optional
        Under the base, where somebody pulled it; what is usual for the materials when None.
    thighs_m : float, optional
        Under a lap tray, from its middle to the middle of a thigh; what is usual when None.
    """

    held: HeldDevice
    surface: Surface
    pushes: Pushes
    off_m: tuple[float, float]
    underside_m: float
    slope_rad: float
    tilt_rad: float = 0.0
    raises: bool = False
    plate: Mount | None = None
    fastener: Fastener | None = None
    sheet: Fastener | None = None
    friction: float | None = None
    thighs_m: float | None = None

    @property
    def height_m(self) -> float:
        """Contact point above the surface."""
        return reach_of(self.held) + max(0.0, self.underside_m)

    @property
    def pulled(self) -> float | None:
        """Friction under a base that lies free, where somebody pulled one there."""
        return self.friction if self.friction is not None else self.surface.base_friction

    @property
    def taken(self) -> tuple[float, Message]:
        """What stands in for that friction, and that it does."""
        return assumed_friction(self.surface.material, "smooth plastic", measure=self.pull)

    @property
    def pull(self) -> Message:
        """How to measure it."""
        return message(ToMeasure.friction_of_base, device=Name(self.held.device), surface=Name(self.surface.name))

    @property
    def assumed(self) -> Message | None:
        """What stands in for the friction under a base that lies free."""
        return None if self.pulled is not None else self.taken[1]

    @property
    def foot(self) -> Foot:
        """How the base stands."""
        friction = self.taken[0] if self.pulled is None else self.pulled
        return Foot(
            self.held.base_m[:2] if self.held.base_m else UNMEASURED_BASE_M, self.height_m, self.held.mass_kg or 0.0,
            fastener=self.fastener, friction=friction, assumed=self.assumed,
            tilt_rad=self.slope_rad, pressed=self.held.kind == "switch",
        )  # fmt: skip

    @property
    def stand(self) -> Stand | None:
        """The board that it stands on."""
        if self.plate is None:
            return None
        bare = Stand(self.plate, self.height_m, self.held.whole_kg, self.surface.material, self.held.kind == "switch")
        return bare if self.sheet is None else bare.on(self.sheet)

    def own(self) -> tuple[Check, ...]:
        """What the base must stand."""
        return foot_checks(self.foot, self.pushes)

    def under(self) -> tuple[Check, ...]:
        """What the board, or the surface itself, must stand."""
        stand = self.stand
        if stand is None:
            return surface_checks(
                self.surface, self.pushes, reach_of(self.held), self.held.whole_kg, leg_m=self.thighs_m
            )
        return stand_checks(
            stand.mount, self.pushes, self.height_m, self.held.whole_kg, floor=self.surface.material, pressed=stand.pressed
        )  # fmt: skip

    def placed(self) -> tuple[Reading, ...]:
        """Whether it is level with the surface, or can be made so, and stands on it whole."""
        return (
            *(
                Reading(what, "", math.inf if words is None else math.nan, words is None, words)
                for what, words in (("level", self._off_level()), ("edge", self._over()))
            ),
        )

    def readings(self) -> tuple[Reading, ...]:
        """All rules that it keeps or breaks."""
        return (
            *self.placed(),
            *(reading_of(one, "base") for one in self.own()),
            *(reading_of(one, "under") for one in self.under()),
        )

    @property
    def wedge_m(self) -> float:
        """What a wedge lifts the higher edge of the base over the lower; 0 where none is needed."""
        length = (self.held.base_m or UNMEASURED_BASE_M)[0]
        return length * math.sin(abs(self.tilt_rad)) if abs(self.tilt_rad) >= LEAST_WEDGE_RAD else 0.0

    @property
    def gap_m(self) -> float:
        """Of the lower edge of the base above the surface."""
        return self.underside_m - self.wedge_m / 2

    def _off_level(self) -> Message | None:
        gap, name = self.gap_m, Name(self.surface.name)
        if gap > MOST_PACKED_M:
            return message(MountAnswers.too_low, surface=name, gap_m=gap)
        if gap < -LEVEL_M and not (-gap <= MOST_RAISED_M and self.raises):
            return message(MountAnswers.too_high, surface=name, over_m=-gap, lower_edge=self.wedge_m > 0)
        return None

    def _over(self) -> Message | None:
        x, y = self.off_m
        width, depth = self.surface.size_m
        half = _half_m(self.held)
        sides: tuple[tuple[Literal["left", "right", "near", "far"], float], ...] = (
            ("left", half - x), ("right", x + half - width), ("near", half - y), ("far", y + half - depth),
        )  # fmt: skip
        over = tuple(side for side, off in sides if off > _OVER_M)
        return message(MountAnswers.overhangs, surface=Name(self.surface.name), sides=over) if over else None

    def packing(self) -> tuple[Message, ...]:
        """What goes under the base or the part."""
        gap, out = self.gap_m, []
        if self.wedge_m:
            tilt, higher = abs(self.tilt_rad), self.wedge_m
            out.append(message(MountAnswers.wedge, angle_rad=tilt, far=self.tilt_rad > 0, higher_m=higher))
        if LEVEL_M < gap <= MOST_PACKED_M:
            out.append(message(MountAnswers.packing, height_m=gap, under_wedge=bool(out)))
        elif gap < -LEVEL_M and self._off_level() is None:
            out.append(message(MountAnswers.support, higher_m=-gap))
        return tuple(out)

    def with_device(self, change: Callable[[HeldDevice], HeldDevice]) -> Standing:
        """The same with other figures of the device; its underside moves with its pivot."""
        held = change(self.held)
        return replace(self, held=held, underside_m=self.underside_m - reach_of(held) + reach_of(self.held))

    def unmeasured(self) -> list[Unmeasured[Standing]]:
        """Figures that nobody measured."""
        out: list[Unmeasured[Standing]] = of_device(
            self.held, lambda change: lambda one: one.with_device(change), heavy=True
        )
        if self.fastener is None and self.pulled is None:
            low, high = friction_range(self.surface.material, "smooth plastic")
            out.append(
                Unmeasured(self.pull, lambda one: replace(one, friction=high), lambda one: replace(one, friction=low))
            )
        out += of_fastener(self.fastener, lambda change: lambda one: _with_fastener(one, change))
        if self.plate is not None:
            return out + self._of_plate(self.plate)
        return out + self._of_surface()

    def _of_plate(self, plate: Mount) -> list[Unmeasured[Standing]]:
        out: list[Unmeasured[Standing]] = of_mount(plate, 0, lambda change: lambda one: _with_plate(one, change))
        if plate.friction is None and self.sheet is None:
            low, high = friction_range(self.surface.material)
            out.append(
                Unmeasured(
                    message(ToMeasure.friction_under, thing=Name(plate.name)),
                    lambda one: _with_plate(one, lambda board: board.model_copy(update={"friction": high})),
                    lambda one: _with_plate(one, lambda board: board.model_copy(update={"friction": low})),
                )
            )  # fmt: skip
        return out

    def _of_surface(self) -> list[Unmeasured[Standing]]:
        surface = self.surface
        if surface.kind == "floor" or surface.fastened:
            return []
        out: list[Unmeasured[Standing]] = []
        if surface.mass_kg is None and surface.kind != "table":
            weigh = message(ToMeasure.weigh, thing=Name(surface.name))
            out.append(Unmeasured(weigh, lambda one: _with_surface(one, mass_kg=TRAY_KG), lambda one: one))
        if surface.kind == "lap tray":
            near, far = THIGHS_RANGE_M
            wide = message(ToMeasure.thighs)
            out.append(
                Unmeasured(wide, lambda one: replace(one, thighs_m=far), lambda one: replace(one, thighs_m=near))
            )
        elif surface.friction is None and (surface.mass_kg is not None or surface.kind != "table"):
            low, high = friction_range(None, "tray")
            out.append(
                Unmeasured(
                    message(ToMeasure.friction_under, thing=Name(surface.name)),
                    lambda one: _with_surface(one, friction=high), lambda one: _with_surface(one, friction=low),
                )
            )  # fmt: skip
        return out


def _with_fastener(one: Standing, change: Callable[[Fastener], Fastener]) -> Standing:
    return one if one.fastener is None else replace(one, fastener=change(one.fastener))


def _with_plate(one: Standing, change: Callable[[Mount], Mount]) -> Standing:
    return one if one.plate is None else replace(one, plate=change(one.plate))


def _with_surface(one: Standing, **update: float) -> Standing:
    return replace(one, surface=one.surface.model_copy(update=update))


def _half_m(held: HeldDevice) -> float:
    """Half the longer side of all pieces; none where nobody measured it."""
    return held.pieces * max(held.base_m[0], held.base_m[1]) / 2 if held.base_m else 0.0


def on_surface(asked: MountRequest, surface: Surface) -> list[MountFit]:
    """Standing on a table, tray or floor, free or fixed by each fastener of the kit.

    Returns
    -------
    list of MountFit
        None where the surface is nowhere near.
    """
    held, pose, room = asked.held, asked.pose, asked.room
    left, near, top = surface.corner_m
    bare = Standing(
        held, surface, asked.pushes, (pose.base_m[0] - left, pose.base_m[1] - near), pose.base_m[2] - top,
        max(abs(room.tilt_from_rad), abs(room.tilt_to_rad)) if surface.moves_with == "seat" else 0.0,
        tilt_rad=pose.tilt_rad, raises=asked.site.part in RAISED_PARTS,
    )  # fmt: skip
    if not _near(bare):
        return []
    refused = broken_rules(
        asked.site, None, surface, room, contact_m=pose.contact_m, site_moves_with=asked.moves_with, tolerance_m=pose.may_be_off_m,
        thing=held.kind, entered=entered(asked),
    )  # fmt: skip
    out = []
    for plate, fastener, sheet in _surface_ways(surface, asked.kit):
        one = replace(bare, plate=plate, fastener=fastener, sheet=sheet)
        if sheet is not None and _stays_without(one):
            continue
        out.append(_fit_of(asked, one, refused))
    return out


def _near(one: Standing) -> bool:
    """Whether the base is over the surface, and on the same storey of the room."""
    half, (x, y), (width, depth) = _half_m(one.held), one.off_m, one.surface.size_m
    return -half <= x <= width + half and -half <= y <= depth + half and abs(one.underside_m) <= 4 * MOST_PACKED_M


def _stays_without(one: Standing) -> bool:
    """Whether the board needs no sheet, or the sheet changes nothing."""
    bare = replace(one, sheet=None).stand
    return bare is None or bare.holds(one.pushes) or bare == one.stand


def _fit_of(asked: MountRequest, one: Standing, refused: tuple[Message, ...]) -> MountFit:
    surface, plate, fastener, held = one.surface, one.plate, one.fastener, asked.held
    found = judged(one, one.unmeasured(), by_face=asked.by_face)
    slip = (
        one.sheet
        if one.sheet is not None
        else fastener
        if fastener is not None and fastener.kind == ANTI_SLIP
        else None
    )
    return MountFit(
        mount=plate.name if plate else surface.name, kind=plate.kind if plate else surface.kind, on=surface.name,
        fastener=fastener.name if fastener else None,
        patch_m=one.foot.patch if fastener is not None and asked.pushes.working_n > 0 else None, arm=None, checks=found.checks,
        margin=margin(found.checks), give_n_per_m=math.inf, lost_share=0.0, droop_m=0.0, droop_rad=0.0, ringing_hz=math.nan,
        parts=(held.named, *(Name(part.name) for part in (plate, fastener, one.sheet) if part)), take_off_s=None, under=one.packing(),
        verdict=verdict_of(found, refused), fails=found.fails, refused=refused,
        change=_change(one, asked.kit) if found.fails and all(each.holds for each in one.placed()) else None,
        dimensions=dimensions(asked.room, asked.pose, surface.moves_with), cable_m=None,
        assumed=(*((one.assumed,) if fastener is None and one.assumed else ()), *_unlevel(surface, one.gap_m),
                 *_loose(surface), *unmeasured_words(held)),
        openings=fastener.openings if fastener else None, anti_slip=slip.name if slip else None,
        lever_m=(reach_of(held), max(0.0, one.underside_m)),
        doubts=() if found.fails else (*found.doubts, *asked.tilt_warnings(surface)),
    )  # fmt: skip


def _loose(surface: Surface) -> tuple[Message, ...]:
    """That nobody can tell whether a loose table stays where it is."""
    if surface.kind != "table" or surface.fastened or surface.mass_kg is not None:
        return ()
    return (message(MountAssumed.loose, surface=Name(surface.name)),)


def _unlevel(surface: Surface, gap_m: float) -> tuple[Message, ...]:
    """That a base is left a little higher or lower than the part was measured."""
    if not _TAPE_M <= abs(gap_m) <= LEVEL_M:
        return ()
    name, off = Name(surface.name), abs(gap_m)
    return (
        message(MountAssumed.unlevel, surface=name, off_m=off, below=gap_m > 0, allowed_m=LEVEL_M),
    )  # fmt: skip


def _stuck(surface: Surface, kit: Kit) -> list[Fastener]:
    """Nothing is stuck to a floor."""
    return [one for one in kit.fastener if one.in_stock and (surface.kind != "floor" or one.kind == ANTI_SLIP)]


def _surface_ways(surface: Surface, kit: Kit) -> list[tuple[Mount | None, Fastener | None, Fastener | None]]:
    """Board, fastener of the device, anti-slip sheet under the board. Nothing is stuck to a floor: a board lies on it, by itself or on
    a sheet, and the device is fixed to the board."""
    stuck = _stuck(surface, kit)
    ways: list[tuple[Mount | None, Fastener | None, Fastener | None]] = [(None, one, None) for one in (None, *stuck)]
    if surface.kind == "floor":
        boards = [one for one in kit.mount if one.kind == "floor plate" and one.in_stock]
        sheets = [one for one in stuck if one.friction is not None]
        strongest = next(iter(stronger_first(kit)), None)
        ways += [(board, strongest, sheet) for board in boards for sheet in (None, *sheets)]
    return ways


def _change(one: Standing, kit: Kit) -> Message | None:
    """The smallest change for the base, and for the board under it where that is what slides or tips."""
    own, under, stand = one.own(), one.under(), one.stand
    if stand is None:
        return _for_base(one, (*own, *under), _stuck(one.surface, kit))
    told = []
    if not all(check.holds for check in own):
        told.append(_for_base(one, own, [each for each in kit.fastener if each.in_stock]))
    if not all(check.holds for check in under):
        told.append(stand_change(stand, one.pushes, kit.fastener))
    known = [each for each in told if each is not None]
    if not known or len(known) < len(told):
        return None
    return known[0] if len(known) == 1 else message(MountChanges.both, first=known[0], second=known[1])


def _for_base(one: Standing, checks: Sequence[Check], fasteners: Sequence[Fastener]) -> Message | None:
    foot = with_fastener(one.foot, one.fastener)
    return smallest_change(checks, foot=foot, pushes=one.pushes, fasteners=fasteners, tray=Name(one.surface.name))
