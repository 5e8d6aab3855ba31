"""German, for the family's pages. Translated by the program's authors; no practitioner who speaks it has checked it."""

from __future__ import annotations

from stickwright.catalogue.family_writer import FamilyWriter

__all__ = ["German", "writer"]


class German(FamilyWriter):
    """Numbers, plurals and lists of German."""

    tag = "de"
    unknown = "nicht bekannt"
    up_to = "bis"
    assumed = "angenommen"
    english = "Englisch"
    translated = "Übersetzt von den Autoren des Programms. Bitte von jemandem prüfen lassen, der Deutsch spricht."
    eight = ("rechts", "vorn rechts", "vorn", "vorn links", "links", "hinten links", "hinten", "hinten rechts")
    turns = ("gegen den Uhrzeigersinn", "im Uhrzeigersinn")
    sticks = ("linker Stick", "rechter Stick")
    buttons = (
        "untere Fronttaste", "rechte Fronttaste", "linke Fronttaste", "obere Fronttaste", "linke Schultertaste",
        "rechte Schultertaste", "linker Abzug", "rechter Abzug", "Ansichtstaste", "Menütaste", "Druck auf den linken Stick",
        "Druck auf den rechten Stick", "Steuerkreuz oben", "Steuerkreuz unten", "Steuerkreuz links", "Steuerkreuz rechts",
        "mittlere Taste",
    )  # fmt: skip

    def plural(self, count: float, *, one: str, other: str) -> str:
        """The form that goes with a count.

        Parameters
        ----------
        count : float
        one, other : str
        """
        return one if self.form(count) == "one" else other


writer = German()
