"""What the command line tells while it works, and when something is to be put right."""

from __future__ import annotations

import sys

TYPE_CHECKING = False  # spelt out: importing typing would cost the help text a third of its time
if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from stickwright.codes.message import Text

__all__ = ["progress", "say_problems"]


def say_problems(sentences: Sequence[str]) -> None:
    """Problems on standard error, one a line."""
    if len(sentences) > 1:
        from stickwright.catalogue import say
        from stickwright.codes.message import message
        from stickwright.codes.terminal import Terminal

        print(say(message(Terminal.problems, count=len(sentences))), file=sys.stderr)
    for sentence in sentences:
        print(f"{'- ' if len(sentences) > 1 else ''}{sentence}", file=sys.stderr)


def progress() -> tuple[Callable[[Text, float], None], Callable[[], None]]:
    """A bar on the terminal; silent when the output goes elsewhere."""
    from tqdm import tqdm

    from stickwright.catalogue import say

    bar = tqdm(
        total=100,
        leave=False,
        disable=not sys.stderr.isatty(),
        bar_format="{desc:<28.28}|{bar:40}| {percentage:3.0f}%",
    )

    def tell(what: Text, share: float) -> None:
        bar.set_description_str(say(what))
        bar.update(round(100 * share) - bar.n)

    return tell, bar.close
