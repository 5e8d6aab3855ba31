"""Pages of every public function and class from the docstrings, by pdoc; a warning of its is an error.

make api                                     out/api/stickwright.html
python docs/make_api.py stickwright.trace    one room, in seconds
"""

from __future__ import annotations

import inspect
import sys
import typing
import warnings
from importlib import import_module
from pathlib import Path
from pkgutil import walk_packages

import pdoc
import pdoc.render

OUT = Path(__file__).resolve().parents[1] / "out" / "api"
LEFT_OUT = ("stickwright.store.migrations", "stickwright.__main__")
"""Run by their own tools, and no interface."""


def resolved(room: str) -> None:
    """Give named tuples types in place of names: pdoc looks for the names where the constructor was made, not where it is used."""
    root = import_module(room)
    places = walk_packages(root.__path__, f"{room}.") if hasattr(root, "__path__") else ()
    for place in places:
        if place.name.startswith(LEFT_OUT):
            continue
        module = import_module(place.name)
        for _, thing in inspect.getmembers(module, inspect.isclass):
            if issubclass(thing, tuple) and hasattr(thing, "_fields") and thing.__module__.startswith("stickwright"):
                hints = typing.get_type_hints(thing)
                thing.__new__.__annotations__ = {name: hints[name] for name in thing._fields}


def main(rooms: list[str]) -> None:
    """Write the pages; the first warning ends it."""
    warnings.simplefilter("error", UserWarning)
    for room in rooms:
        resolved(room)
    pdoc.render.configure(docformat="numpy", show_source=False, search=len(rooms) == 1 and rooms[0] == "stickwright")
    pdoc.pdoc(*rooms, *(f"!{name}" for name in LEFT_OUT), output_directory=OUT)
    print(f"{sum(1 for _ in OUT.rglob('*.html'))} pages: {OUT / 'index.html'}")


if __name__ == "__main__":
    main(sys.argv[1:] or ["stickwright"])
