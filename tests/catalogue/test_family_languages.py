"""The family's pages in other languages: whole for what those pages say, marked where they are not, right to left where that is so."""

from __future__ import annotations

import importlib
import inspect
import io
import pkgutil
import re

import pytest
from pypdf import PdfReader
from samples import NAME, samples, texts, topics

from stickwright.catalogue import FAMILY_LANGUAGES, LANGUAGES, speaking
from stickwright.catalogue.book import Book
from stickwright.codes.message import Message, Name, message, module_of
from stickwright.codes.terminal import Terminal
from stickwright.report.document import sheet_pdf

OTHERS = [language for language in FAMILY_LANGUAGES if language not in LANGUAGES]
WHOLE = ("Family", "Glance", "SetupPictures", "BodyDrawings", "Cautions")
"""Topics of which the family's pages may say everything."""
SOME = {
    "DeviceSteps": (
        "set_to", "crosswise", "crosswise_told", "hold_in_one_hand", "hold_in_two_hands", "rest_it", "fix_to_grip", "check_mode",
        "other_mode", "mode_back",
    ),
    "Setups": ("named",), "Presses": ("button",), "Sessions": ("first_blocks",), "Sockets": ("of_splitter",),
    "StickSettings": (
        "in_game", "in_each_game", "nothing_yet", "change_nothing", "numbers", "numbers_offered", "gains", "other_stick", "other_setup",
        "extension",
    ),
}  # fmt: skip
"""Texts of other topics that they say: found by printing the pages of the demo and of the worked cases."""
BY_NAME = {topic.__name__: topic for topic in topics()}
SAID = [(name, text) for name in WHOLE for text in texts(BY_NAME[name])] + [
    (name, text) for name, some in SOME.items() for text in some
]
_FAULTS = (r"^\s|\s$", "  ", r"\.\.", r" [.,;]", "None", r"Message\(", r"\bnan\b", r"\{|\}", r"\[")


@pytest.mark.parametrize("language", OTHERS)
@pytest.mark.parametrize(("topic", "text"), SAID, ids=[f"{topic}.{text}" for topic, text in SAID])
def test_each_language_says_what_the_familys_pages_say(language: str, topic: str, text: str) -> None:
    """With every name it was given, without a bare code, and not in English."""
    opened, english = Book(language), Book("en")
    for sample in samples(BY_NAME[topic], text):
        said = opened.say(sample)
        assert said or english.say(sample) == ""
        assert [fault for fault in _FAULTS if re.search(fault, said)] == [], said
        for _, value in sample.params:
            if isinstance(value, Name):
                assert value in said, said
            elif isinstance(value, Message):
                assert opened.say(value).rstrip(".") in said
        assert said.count("\N{POP DIRECTIONAL ISOLATE}") == sum(said.count(sign) for sign in "\u2066\u2067\u2068")


@pytest.mark.parametrize("language", OTHERS)
def test_each_text_of_a_language_is_a_message_with_its_parameters(language: str) -> None:
    """Typed as in English: no text that no message names, none that takes other figures."""
    package = importlib.import_module(f"stickwright.catalogue.{language}")
    found = {module_of(topic): BY_NAME[topic] for topic in (*WHOLE, *SOME)}
    modules = [one.name for one in pkgutil.iter_modules(package.__path__)]
    assert sorted(modules) == sorted(found)
    for module in modules:
        own = importlib.import_module(f"stickwright.catalogue.{language}.{module}").Texts
        for name, text in vars(own).items():
            if not name.startswith("_"):
                wanted = inspect.signature(getattr(found[module], name))
                assert inspect.signature(text) == wanted, f"{language}, {module}.{name}"


@pytest.mark.parametrize("language", OTHERS)
def test_what_a_language_does_not_have_is_said_in_english_and_marked(language: str) -> None:
    """Never silently: the language's own name of English stands behind it."""
    text = message(Terminal.doing, what="reading_case")
    with speaking(language) as opened:
        told = opened.say(text)
        assert told.endswith(f"[{opened.writer.english}]")
        assert Book("en").say(text) in told
        assert opened.writer.translated.endswith(".")


@pytest.mark.parametrize("language", OTHERS)
def test_names_stay_as_they_were_typed(language: str) -> None:
    """A player's code and a control site are not translated."""
    with speaking(language) as opened:
        assert NAME in opened.writer.sites((NAME, NAME))


def pages(language: str) -> PdfReader:
    from sample_sharing import shared_plan

    return PdfReader(io.BytesIO(sheet_pdf(shared_plan(), language=language)))


def plain(text: str) -> str:
    """Without spaces and isolates, which share a glyph."""
    return re.sub(r"[\s\u2066-\u2069]", "", text)


@pytest.mark.parametrize("language", OTHERS)
def test_the_familys_part_stays_two_pages_with_embedded_type(language: str) -> None:
    """The third page is the practitioner's, in English; every type on the first two is in the file; the language is named there."""
    sheet = pages(language)
    assert [place for place, page in enumerate(sheet.pages) if "Missing:cableA4" in plain(page.extract_text())] == [2]
    for page in sheet.pages[:2]:
        for font in page["/Resources"]["/Font"].values():  # type: ignore[index]
            inside = font.get_object()["/DescendantFonts"][0].get_object()["/FontDescriptor"].get_object()
            assert {"/FontFile2", "/FontFile3"} & {*inside}
            assert "DejaVu" in inside["/FontName"]
    with speaking(language) as opened:
        if not opened.writer.right_to_left:
            assert opened.writer.translated in " ".join(sheet.pages[0].extract_text().split())


def test_arabic_runs_from_right_to_left() -> None:
    """The heading of the first page ends at the right margin, where the one in German begins at the left."""
    where: dict[str, list[float]] = {}
    for language in ("de", "ar"):
        found: list[float] = []

        def place(
            text: str, cm: list[float], tm: list[float], _font: object, size: float, found: list[float] = found
        ) -> None:
            if text.strip() and size * abs(tm[3] * cm[3]) > 14:
                found.append(tm[4] * cm[0] + cm[4])

        pages(language).pages[0].extract_text(visitor_text=place)
        where[language] = found
    assert min(where["de"]) < 50
    assert min(where["ar"]) > 200
