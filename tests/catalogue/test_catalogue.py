"""The catalogue is whole: every message has a note, units in its parameters, words in every language, and somebody who says it."""

from __future__ import annotations

import ast
import re
from importlib import import_module
from pathlib import Path

import make_glossary
import pytest
from samples import NAME, kinds, samples, texts, topics, values

import stickwright
from stickwright.catalogue import LANGUAGES, book, say, speaking
from stickwright.catalogue.book import Book, module_of
from stickwright.catalogue.glossary import glossary
from stickwright.codes.cautions import Cautions
from stickwright.codes.glossary_meanings import GlossaryMeanings
from stickwright.codes.glossary_terms import GlossaryTerms
from stickwright.codes.message import Message, Name, message

SOURCE = Path(stickwright.__file__).parent
ALL = [(topic, name) for topic in topics() for name in texts(topic)]
IDS = [f"{topic.__name__}.{name}" for topic, name in ALL]
_FAULTS = (r"^\s|\s$", "  ", r"\.\.(?!\.)(?<!\.\.\.)", r" [.,;:]", "None", r"Message\(", r"\bnan\b", r"\{|\}")
"""Doubled or stray spaces and stops, and what a program prints by mistake."""
ALL_OF_GLOSSARY = [
    (topic, name) for topic in ("GlossaryTerms", "GlossaryMeanings") for name in GlossaryTerms.__abstractmethods__
]
"""Said one after the other by `stickwright.catalogue.glossary.glossary`."""
UNITS = (
    "_n", "_m", "_rad", "_s", "_kg", "_hz", "_nm", "_pa", "_a", "_share", "_per_min", "_per_s", "_n_per_m", "_nm_per_rad",
    "_bits", "_factor", "_points", "_price", "_in_unit",
)  # fmt: skip
"""``_in_unit``: in the unit that a parameter beside it names."""


@pytest.mark.parametrize(("topic", "name"), ALL, ids=IDS)
def test_every_text_says_what_it_means_and_in_which_units(topic, name):
    """Whoever words or translates a message finds a note; a number that is no count names its unit at the end of its name."""
    text = texts(topic)[name]
    assert text.__doc__, f"{topic.__name__}.{name} has no note"
    for place, kind in kinds(text).items():
        if float in values_types(kind):
            assert place.endswith(UNITS), f"{topic.__name__}.{name}: '{place}' is a number without its unit"


def values_types(kind):
    return {type(value) for value in values(kind)}


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize(("topic", "name"), ALL, ids=IDS)
def test_every_language_says_every_message_with_all_that_it_was_given(language, topic, name):
    """No gap, no doubled space or full stop, no bare code; names, nested texts and isolates survive."""
    opened = Book(language)
    for sample in samples(topic, name):
        said = opened.say(sample)
        assert said, sample
        faults = [fault for fault in _FAULTS if re.search(fault, said)]
        assert not faults, f"{sample.code} in {language}: {said}"
        for _, value in sample.params:
            if isinstance(value, Name):
                assert value in said, f"{sample.code} in {language} drops a name: {said}"
            elif isinstance(value, Message):
                assert opened.say(value).rstrip(".") in said, f"{sample.code} in {language} drops a nested text"
        assert said.count("\N{POP DIRECTIONAL ISOLATE}") == sum(said.count(sign) for sign in "\u2066\u2067\u2068")


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_language_has_every_topic_and_no_text_of_its_own(language):
    """A text that no topic names could never be said."""
    for topic in topics():
        module = import_module(f"stickwright.catalogue.{language}.{module_of(topic.__name__)}")
        own = {name for name in vars(module.Texts) if not name.startswith("_")}
        assert own == set(texts(topic)), f"{topic.__name__} in {language}"


def test_every_message_is_said_somewhere():
    """An identifier that nothing uses is taken out: searched as ``Topic.text`` in the code, as ``topic.text`` in templates."""
    used = set()
    for path in SOURCE.rglob("*.py"):
        if path.is_relative_to(SOURCE / "codes"):
            continue
        tree = ast.parse(path.read_text(encoding="utf-8"))
        names = {
            one.asname: one.name
            for node in ast.walk(tree)
            if isinstance(node, ast.ImportFrom)
            for one in node.names
            if one.asname
        }
        for node in ast.walk(tree):
            if isinstance(node, ast.Attribute):
                held = node.value.id if isinstance(node.value, ast.Name) else getattr(node.value, "attr", "")
                used.add((names.get(held, held).casefold().replace("_", ""), node.attr))
            elif isinstance(node, ast.Constant) and isinstance(node.value, str) and node.value.count(".") == 1:
                held, _, name = node.value.partition(".")
                used.add((held.casefold(), name))
    for path in (*SOURCE.rglob("*.html"), *SOURCE.rglob("*.typ")):
        used |= {
            (held.casefold().replace("_", ""), name)
            for held, name in re.findall(r"\b(\w+)\.(\w+)", path.read_text("utf-8"))
        }
        used |= {(held.replace("_", ""), name) for held, name, _ in _asked_in_template(path)}
    used |= {(topic.casefold(), name) for topic, name in ALL_OF_GLOSSARY}
    unused = [f"{topic.__name__}.{name}" for topic, name in ALL if (topic.__name__.casefold(), name) not in used]
    assert not unused, f"said by nobody: {', '.join(unused)}"


def _asked_in_template(path):
    """Topic, text and names of parameters of each ``t.topic.text(name=...)``."""
    inside = r"(?:[^()]|\((?:[^()]|\([^()]*\))*\))*"
    calls = re.findall(rf"(?=\bt\.(\w+)\.(\w+)\(({inside})\))", path.read_text("utf-8"))
    own = (
        (held, name, re.sub(rf"\({inside}\)", "", given)) for held, name, given in calls
    )  # not those of a call in it
    return [(held, name, tuple(re.findall(r"(?:^|, )(\w+)=", given))) for held, name, given in own]


def test_templates_ask_for_texts_that_there_are():
    """Each by its name and with all its parameters: a template is not seen by the type checker."""
    known = {(module_of(topic.__name__), name): set(kinds(texts(topic)[name])) for topic, name in ALL}
    asked = [(path.name, *one) for path in SOURCE.rglob("*.html") for one in _asked_in_template(path)]
    assert asked
    wrong = [one for one in asked if known.get(one[1:3]) != set(one[3])]
    assert not wrong


def test_a_message_is_data():
    """Equal by code and figures, whatever the order; printed by mistake, it is a defect and says so."""
    one = message(Cautions.force_ceiling, site=NAME, force_n=1.5, why=None)
    assert one == message(Cautions.force_ceiling, why=None, force_n=1.5, site=NAME)
    assert (one.topic, one.text, one.param("force_n")) == ("Cautions", "force_ceiling", 1.5)
    with pytest.raises(TypeError, match=r"Cautions\.force_ceiling"):
        f"{one}"


def test_the_language_is_opened_for_what_is_done_inside():
    """Outside, English is spoken; a language that there is not is refused by its name."""
    with speaking("en") as opened:
        assert opened is book()
    assert say("already said") == "already said"
    with pytest.raises(ValueError, match="expected one of en, de, ar"), speaking("xx"):
        pass


def test_the_glossary_says_every_term_once_with_its_meaning() -> None:
    """In the order of the work, each term with a sentence; docs/glossary.md is what ``python docs/make_glossary.py`` writes."""
    assert GlossaryTerms.__abstractmethods__ == GlossaryMeanings.__abstractmethods__
    terms = glossary()
    assert terms[0][0] == "control site"
    assert len({term for term, _ in terms}) == len(terms) == len(GlossaryTerms.__abstractmethods__)
    assert all(meaning.endswith(".") for _, meaning in terms)
    assert make_glossary.PAGE.read_text(encoding="utf-8") == make_glossary.text()
