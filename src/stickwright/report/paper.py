"""Paper for figures: size in millimetre, type that survives A5 in grey, series told apart without colour, fixed bytes.

matplotlib is loaded when the first figure is drawn, never when this module is imported. No window, no pyplot:
a `Figure` goes straight to SVG text, with a fixed salt and no date, so that equal input gives equal bytes.
"""

from __future__ import annotations

import io
import math
import re
from collections.abc import Callable
from dataclasses import dataclass
from html import escape
from typing import TYPE_CHECKING, Any

from stickwright.codes.charts import Charts
from stickwright.report.tell import tell

if TYPE_CHECKING:
    from matplotlib.figure import Figure

__all__ = [
    "FAINT", "INK", "MIDDLE", "SERIES", "Series", "bare", "figure_svg", "font_folder", "name_directions", "width_mm",
]  # fmt: skip

_MM_PER_INCH = 25.4
_POINTS_PER_INCH = 72.0
INK, MIDDLE, FAINT = "#000000", "#595959", "#c8c8c8"
_TYPE_PT = 9.0


@dataclass(frozen=True)
class Series:
    """How one of several series is drawn: by line and marker first, by grey-safe colour besides."""

    colour: str
    line: str | tuple[int, tuple[float, ...]]
    marker: str
    width: float


SERIES: tuple[Series, ...] = (
    Series("#000000", "-", "o", 1.8),
    Series("#0b5394", (0, (5, 2)), "s", 1.5),
    Series("#7a3b00", (0, (1, 1.4)), "^", 1.6),
    Series("#4d4d4d", (0, (6, 2, 1, 2)), "D", 1.3),
    Series("#6a1b6a", (0, (3, 1, 1, 1, 1, 1)), "v", 1.3),
    Series("#2f5d3a", (0, (8, 3)), "P", 1.2),
)
"""Dark enough to keep 4.5 to 1 contrast on white [wcag22], so also when printed in grey."""


def font_folder() -> str:
    """Folder of the sans-serif type that the charts and the sheet are set in (shipped with matplotlib)."""
    import matplotlib

    return f"{matplotlib.get_data_path()}/fonts/ttf"


def figure_svg(draw: Callable[[Figure], None], size_mm: tuple[float, float], title: str) -> str:
    """SVG of what `draw` puts on an empty figure.

    Parameters
    ----------
    draw : callable
        Draws on the figure it is handed; must not compute anything but layout.
    size_mm : tuple of float
        Width and height on paper.
    title : str
        Alternative text, for screen readers that open the file itself.

    Returns
    -------
    str
        SVG with real text, the same bytes for the same drawing.
    """
    from matplotlib import rc_context
    from matplotlib.backends.backend_svg import FigureCanvasSVG
    from matplotlib.figure import Figure

    settings: Any = {
        "svg.fonttype": "none", "svg.hashsalt": "stickwright", "font.family": "DejaVu Sans", "font.size": _TYPE_PT,
        "axes.titlesize": _TYPE_PT + 0.5, "axes.titleweight": "bold", "axes.labelsize": _TYPE_PT,
        "xtick.labelsize": _TYPE_PT - 0.5, "ytick.labelsize": _TYPE_PT - 0.5, "legend.fontsize": _TYPE_PT - 0.5,
        "axes.linewidth": 0.8, "axes.spines.top": False, "axes.spines.right": False, "hatch.linewidth": 0.6,
        "text.parse_math": False, "path.simplify": True, "path.simplify_threshold": 0.3, "axes.unicode_minus": True,
    }  # fmt: skip
    with rc_context(settings):
        figure = Figure(figsize=(size_mm[0] / _MM_PER_INCH, size_mm[1] / _MM_PER_INCH), layout="constrained")
        figure.get_layout_engine().set(rect=(0, 0.01, 1, 0.96))  # type: ignore[union-attr, call-arg]  # titles
        FigureCanvasSVG(figure)
        draw(figure)
        out = io.StringIO()
        figure.savefig(out, format="svg", metadata={"Date": None, "Creator": None})
    return _with_title(out.getvalue(), title)


def bare(axes: Any) -> None:
    """A plane without frame or ticks, that the layout still makes room for."""
    axes.set_aspect("equal")
    axes.set_xticks([])
    axes.set_yticks([])
    for spine in axes.spines.values():
        spine.set_visible(False)


def name_directions(axes: Any) -> None:
    """The player's four directions round a circle of radius 1."""
    for quarters, at in ((1, (0, 1.15)), (3, (0, -1.17)), (0, (1.17, 0)), (2, (-1.17, 0))):
        upright = 0 if quarters % 2 else 90
        axes.annotate(
            tell(Charts.direction, direction_rad=quarters * math.pi / 2),
            at,
            ha="center",
            va="center",
            fontsize=8.5,
            rotation=upright,
        )
    axes.set_xlim(-1.26, 1.26)
    axes.set_ylim(-1.27, 1.25)


def width_mm(svg: str) -> float:
    """The paper width that an SVG of this project states.

    Examples
    --------
    >>> width_mm('<svg width="72pt" height="36pt">')
    25.4
    """
    found = re.search(r'<svg[^>]*?\bwidth="([\d.]+)(pt|mm)"', svg)
    if found is None:
        raise ValueError("the drawing states no width in pt or mm")
    return float(found[1]) * (_MM_PER_INCH / _POINTS_PER_INCH if found[2] == "pt" else 1.0)


def _with_title(svg: str, title: str) -> str:
    """The drawing as one image with a name; a plain sans-serif where the viewer lacks the type."""
    body = svg[svg.index("<svg") :].replace("'DejaVu Sans'", "'DejaVu Sans', sans-serif")
    head, rest = body.split(">", 1)
    return f'{head} role="img">\n <title>{escape(title)}</title>{rest}'
