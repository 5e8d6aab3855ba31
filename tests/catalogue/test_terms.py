"""One word for one thing: no text of the catalogue and no page says what a better word has replaced."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from samples import samples, texts, topics

import stickwright
from stickwright.catalogue.book import Book

SOURCE = Path(stickwright.__file__).parent
ROOT = Path(__file__).resolve().parents[2]
DOCS = ("app", "case-folder", "commands", "glossary", "measuring", "plan-json", "worked-cases")
REPLACED = {
    r"free reach": "movement range",
    r"(start|starting) force": "actuation force",
    r"force at the (rim|stop)\b": "force at full travel",
    r"rest force": "resting force",
    r"false inputs?": "unintended activation",
    r"sudden push(es)?": "spasm, involuntary movement",
    r"comes? home": "returns to centre",
    r"range (is to be |to be )?widened": "sensitivity",
    r"two-handed controller": "controller, second controller",
    r"[24]-conductor": "3.5 mm mono jack (TS), 3.5 mm four-pole jack (TRRS)",
    r"right cluster|left cluster": "face button, D-pad, by position",
    r"^what holds it": "mounting",
    r"kept free": "minimum clearance",
    r"drop price|\bits price for the player": "cost to the player",
    r"why so\b": "reasons",
    r"replace by": "to confirm: measure ...",
    r"who presses what": "controls at a glance, control layout",
    r"sharing.out|share(d|s)? out": "control layout",
    r"invented player on a made-up stick": "simulated player",
    r"settle the player": "seat the player in their gaming position",
    r"nobody touches the stick": "hands off the stick while you plug it in",
    r"drawn further on": "see page ...",
    r"plug home|the plug home": "push the plug fully in",
    r"leaned on at start-up": "was the stick touched at switch-on?",
    r"stop, and take care": "safety: when to stop",
    r"treating team's word": "only if the treating team has agreed",
    r"who to ring": "contact",
    r"what stands where": "device and function",
    r"socket by socket": "hub connections",
    r"the papers of": "manuals",
    r"that for its middle": "sets that position as centre",
    r"silently wins": "only one of them will work, without warning",
    r"by its own name": "try each action once",
    r"drawn as a sign": "schematic",
    r"things that do not move": "fixed points",
    r"neither left nor right": "on the centre line",
    r"would hold too|^does not hold$": "also passes, fails",
    r"let go, it swings": "natural frequency about ...",
    r"no other plan has more": "no other layout scores higher",
    r"costs next to nothing": "scores almost the same",
    r"is the first to give": "is the limiting direction",
    r"training by heavy sticks": "do not use stiff sticks as exercise",
    r"beyond doubt": "no clear increase ...",
    r"somebody entitled": "if an authorised clinician agrees",
    r"enough\?$": "readings sufficient?",
    r"not everything could be had": "some requests cannot be met",
    r"free one of|shut each other out": "resolve by one of, cannot be used together",
    r"things? to put right": "problems to fix",
    r"may be said again": "repeatable",
    r"that may stand around": "maximum number of devices",
    r"does all its own set-up": "installs what it needs",
    r"not reckoned with": "anything left out is ignored",
    r"make the records|they will lie in": "create records, stored in",
    r"no way back without": "it cannot be recovered",
    r"^the same again": "confirm passphrase",
    r"^take away\b|^put them in|^leave it out|^go on$": "Delete, Add, Exclude, Resume",
    r"take in a case|bring one back": "import, restore",
    r"who sits here": "your initials",
    r"^said on$|^by whom$": "consent date, given by",
    r"write it down, and keep": "record consent",
    r"consent is taken back": "withdraw consent",
    r"^there is$|^missing$": "entered, still needed",
    r"more that may be known": "more details",
    r"at the same moment": "simultaneous use",
    r"blanks between": "separate repeats with spaces",
    r"what this tells so far": "results so far",
    r"told only": "for information",
    r"breath goes on": "no breath-holding",
    r"is a long day": "limit testing to ... minutes",
    r"scale of all prices": "scale 0 to 10, used for all costs",
    r"let stay as it is": "keep unchanged",
    r"looks again each second": "updating automatically",
    r"\d %": "35%, without a space",
}
"""What stood on pages and sheets once, and what readers understand at once."""
_SHOWN = re.compile(r"<script.*?</script>|<!--.*?-->|\{#.*?#\}|\{%.*?%\}|\{\{.*?\}\}", re.S)

_TYPED = re.compile(r'"(?:[24]-conductor|(?:\w+ ){1,5}cluster)"|`[^`]*`')
"""Words to be typed in a file, quoted: files keep theirs."""


def found(text: str) -> list[str]:
    """Replaced words in a text, each with the better one."""
    plain = _TYPED.sub(" ", text.replace("\N{NO-BREAK SPACE}", " "))
    return [f"'{old}' -> {better}" for old, better in REPLACED.items() if re.search(old, plain, re.IGNORECASE)]


@pytest.mark.parametrize("topic", topics(), ids=lambda topic: topic.__name__)
def test_no_text_says_what_a_better_word_has_replaced(topic) -> None:
    """Every sample of every text of the English catalogue."""
    opened = Book("en")
    wrong = [
        f"{topic.__name__}.{name}: {said}: {', '.join(faults)}"
        for name in texts(topic)
        for said in {opened.say(sample) for sample in samples(topic, name)}
        if (faults := found(said))
    ]
    assert not wrong, "\n".join(wrong)


@pytest.mark.parametrize(
    "path", [*sorted(SOURCE.rglob("*.html")), *sorted(SOURCE.rglob("*.typ"))], ids=lambda path: path.name
)
def test_no_page_says_it_either(path: Path) -> None:
    """What stands in a template besides texts of the catalogue."""
    lines = _SHOWN.sub(" ", path.read_text(encoding="utf-8")).splitlines()
    wrong = [
        f"{path.name}, line {number}: {', '.join(faults)}"
        for number, line in enumerate(lines, 1)
        if (faults := found(line.strip()))
    ]
    assert not wrong, "\n".join(wrong)


@pytest.mark.parametrize("name", ["README.md", *(f"docs/{name}.md" for name in DOCS)])
def test_the_docs_use_the_same_words(name: str) -> None:
    """What is read before the program is."""
    lines = (ROOT / name).read_text(encoding="utf-8").splitlines()
    wrong = [
        f"{name}, line {number}: {', '.join(faults)}"
        for number, line in enumerate(lines, 1)
        if (faults := found(line.strip()))
    ]
    assert not wrong, "\n".join(wrong)


def test_what_is_replaced_is_seen() -> None:
    """In a sentence and as a label, in capitals or not."""
    assert found("Asks 35 % of the force") == ["'\\d %' -> 35%, without a space"]
    assert len(found("WHO PRESSES WHAT")) == 1
    assert found("Hub connections") == []
