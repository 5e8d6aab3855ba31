"""All charts by name; each is drawn in the module of its subject and takes finished results only."""

from __future__ import annotations

import re

from stickwright.model.plan import Plan
from stickwright.report.body import body_drawing
from stickwright.report.drawings import setup_drawing
from stickwright.report.figures_ability import capability_polar
from stickwright.report.figures_bench import bench
from stickwright.report.figures_fit import force_travel, ranking, reach_polygon
from stickwright.report.figures_recording import trace_overview
from stickwright.report.figures_tuning import curve, tuning_before_after
from stickwright.report.mount_drawing import mount_drawing
from stickwright.report.mount_shapes import base_of
from stickwright.report.who import marks_of
from stickwright.report.wiring_drawing import wiring_drawing

__all__ = [
    "all_figures", "bench", "capability_polar", "curve", "force_travel", "ranking", "reach_polygon", "trace_overview",
    "tuning_before_after",
]  # fmt: skip


def all_figures(plan: Plan) -> dict[str, str]:
    """Every figure of a plan, by a name that can be a file name.

    Parameters
    ----------
    plan : Plan
        A finished plan.

    Returns
    -------
    dict
        Name without ending, SVG text; "body" and "wiring" when all actions are shared out; sites numbered in the
        plan's order.
    """
    figures: dict[str, str] = {}
    if plan.sharing is not None and (marks := marks_of(plan)):
        figures["body"] = body_drawing(marks)
    wiring = plan.sharing.wiring if plan.sharing is not None else None
    if wiring is not None and wiring.wires:
        figures["wiring"] = wiring_drawing(wiring, wiring.hubs)
    for number, mount in enumerate(plan.mounts, start=1):
        if plan.room is not None and mount.pose is not None:
            name = f"mount-{number}-{_slug(mount.site)}"
            figures[name] = mount_drawing(mount, plan.room, base_of(plan, mount))
    for number, site in enumerate(plan.sites, start=1):
        stem = f"site-{number}-{_slug(site.name)}"
        if site.choice is not None:
            figures[f"{stem}-set-up"] = setup_drawing(site.choice)
        figures[f"{stem}-ability"] = capability_polar(site)
        if site.fits:
            figures[f"{stem}-reach"] = reach_polygon(site)
            figures[f"{stem}-force-travel"] = force_travel(site)
            figures[f"{stem}-ranking"] = ranking(site)
        for tuning in site.tunings:
            figures[f"{stem}-tuning-{_slug(tuning.stick)}"] = tuning_before_after(tuning)
            figures[f"{stem}-curve-{_slug(tuning.stick)}"] = curve(tuning)
        for place, report in enumerate(site.recordings, start=1):
            figures[f"{stem}-recording-{place}-{_slug(report.name)}"] = trace_overview(report)
    return figures


def _slug(name: str) -> str:
    """Letters, digits and hyphens of a name, at most 40."""
    return re.sub(r"[^a-z0-9]+", "-", name.casefold()).strip("-")[:40] or "unnamed"
