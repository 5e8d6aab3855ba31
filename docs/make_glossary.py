"""Write docs/glossary.md from the catalogue: ``python docs/make_glossary.py``."""

from __future__ import annotations

from pathlib import Path

from stickwright.catalogue.glossary import glossary

PAGE = Path(__file__).with_name("glossary.md")


def text() -> str:
    """The page."""
    rows = [f"| **{term}** | {meaning} |" for term, meaning in glossary()]
    head = [
        "# Glossary", "", "One word for one thing, on every page, on the sheet, in the terminal and in the files.", "",
        "| term | meaning |", "| --- | --- |",
    ]  # fmt: skip
    return "\n".join([*head, *rows]) + "\n"


if __name__ == "__main__":
    PAGE.write_text(text(), encoding="utf-8")
