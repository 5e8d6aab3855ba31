"""The sticks of a kit beside each other: from actuation force to force at full travel, and the travel."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stickwright.codes.charts import Charts
from stickwright.codes.message import Name
from stickwright.model.kit import Kit, Stick
from stickwright.report.paper import INK, MIDDLE, figure_svg
from stickwright.report.printed import in_unit, label_of
from stickwright.report.tell import tell

if TYPE_CHECKING:
    from matplotlib.figure import Figure

__all__ = ["kit_forces", "kit_forces_alt"]

_LEAST_N = 0.01
"""A touch surface takes next to nothing; on a scale of factors nothing has no place."""


def kit_forces(kit: Kit) -> str:
    """A bar for each stick from actuation force to force at full travel, lightest on top, with its travel.

    Returns
    -------
    str
        SVG, 150 mm wide.
    """
    sticks = _lightest_first(kit)

    def draw(figure: Figure) -> None:
        axes = figure.subplots()
        for row, stick in enumerate(sticks):
            low, high = max(stick.start_force_n, _LEAST_N), max(stick.full_force_n, _LEAST_N)
            axes.plot([low, high], [row, row], color=MIDDLE, lw=3, solid_capstyle="butt", zorder=2)
            axes.plot(
                [low],
                [row],
                "o",
                color=INK,
                mfc="white",
                ms=6,
                zorder=3,
                label=tell(Charts.label, label="leaves_centre") if row == 0 else None,
            )
            axes.plot(
                [high],
                [row],
                "s",
                color=INK,
                ms=6,
                zorder=3,
                label=tell(Charts.label, label="full_travel") if row == 0 else None,
            )
            axes.annotate(f"{in_unit(stick.travel_m, 'mm'):.1f} {label_of('mm')}", (1.0, row), xycoords=("axes fraction", "data"),
                          xytext=(4, 0), textcoords="offset points", va="center")  # fmt: skip
        axes.set_yticks(range(len(sticks)), [stick.name for stick in sticks])
        axes.set_ylim(len(sticks) - 0.4, -0.6)
        axes.set_xscale("log")
        axes.set_xlabel(tell(Charts.label, label="stick_force_axis"))
        ticks = [one for one in (0.01, 0.03, 0.1, 0.3, 1, 3, 10, 30, 100) if _spans(sticks, one)]
        axes.set_xticks(ticks, [f"{tick:g}" for tick in ticks])
        axes.minorticks_off()
        axes.set_title(tell(Charts.label, label="travel"), loc="right", fontsize=9)
        axes.grid(axis="x", color="#dddddd", lw=0.6)
        axes.legend(
            frameon=False, loc="upper center", bbox_to_anchor=(0.5, -0.16 if len(sticks) > 6 else -0.3), ncols=2
        )

    return figure_svg(draw, (150, 30 + 6.5 * len(sticks)), kit_forces_alt(kit))


def kit_forces_alt(kit: Kit) -> str:
    """The same in a sentence."""
    sticks = _lightest_first(kit)
    first, last = sticks[0], sticks[-1]
    if len(sticks) == 1:
        one = Name(first.name)
        return tell(Charts.one_stick_alt, stick=one, start_n=first.start_force_n, full_n=first.full_force_n)
    return tell(
        Charts.kit_alt, sticks=len(sticks), lightest=Name(first.name), light_n=first.full_force_n, heaviest=Name(last.name),
        heavy_n=last.full_force_n,
    )  # fmt: skip


def _lightest_first(kit: Kit) -> list[Stick]:
    return sorted(kit.stick, key=lambda stick: (stick.full_force_n, stick.name))


def _spans(sticks: list[Stick], tick: float) -> bool:
    forces = [max(force, _LEAST_N) for stick in sticks for force in (stick.start_force_n, stick.full_force_n)]
    return min(forces) / 1.5 <= tick <= max(forces) * 1.5
