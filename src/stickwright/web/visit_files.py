"""The files that a visit works with, whether its own or of the shelf, and the names that stand in them."""

from __future__ import annotations

from stickwright.errors import BadInput
from stickwright.files.typed_tables import stick_called
from stickwright.store.documents import Document, documents
from stickwright.web.noun_views import plain_tables
from stickwright.web.request_context import At

__all__ = ["conditions_here", "file_here", "names_here"]

OF_THE_SHELF = "kit.toml"


def file_here(here: At, name: str) -> tuple[Document | None, bool]:
    """A file, and whether it is the visit's own; a visit without a kit has that of the shelf.

    Parameters
    ----------
    here : At
        A visit or the shelf.
    name : str
    """
    own = documents(here.store, here.visit.id).get(name) if here.visit is not None else None
    if own is not None or (here.visit is not None and name != OF_THE_SHELF):
        return own, True
    return documents(here.store, None).get(name), here.visit is None


def names_here(here: At, name: str, table: str) -> tuple[str, ...]:
    """Names of the tables of one kind in a file, sticks with each of their settings too; none while it cannot be read, which
    its own page says.

    Parameters
    ----------
    here : At
    name : str
        File.
    table : str
        Kind: 'site', 'stick'.
    """
    document, _ = file_here(here, name)
    try:
        listed = plain_tables(document.says, name).get(table) if document else None
    except BadInput:
        return ()
    tables = [one for one in (listed if isinstance(listed, list) else []) if isinstance(one, dict)]
    if table == "stick":
        return tuple(name for one in tables for name in stick_called(one))
    return tuple(str(one["name"]) for one in tables if one.get("name"))


def conditions_here(here: At, site: str) -> tuple[str, ...]:
    """The states in which a site was read besides its usual one, in words; none while the file cannot be read."""
    document, _ = file_here(here, "player.toml")
    try:
        listed = plain_tables(document.says, "player.toml").get("site") if document else None
    except BadInput:
        return ()
    mine = [
        one for one in (listed if isinstance(listed, list) else []) if isinstance(one, dict) and one.get("name") == site
    ]
    states = [one["under"] for one in mine if isinstance(one.get("under"), list)]
    return tuple(
        str(state["condition"])
        for under in states
        for state in under
        if isinstance(state, dict) and state.get("condition")
    )
