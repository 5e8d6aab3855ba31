"""What is said once for several sites or recordings."""

from __future__ import annotations

from said import said
from stickwright.codes.message import Message, Name, message
from stickwright.codes.stand_ins import StandIns
from stickwright.model.fit import Assumption
from stickwright.model.recorded import Finding
from stickwright.report.merged import merged_assumptions, merged_findings

STIFF = ("up to twice either way", "not measured", "tremor on two sticks")


def stiffness(site: str, value: str) -> Assumption:
    return Assumption(f"The limb's own stiffness at {site}", f"{value} N/mm, {STIFF[0]}", STIFF[1], STIFF[2])


def test_assumptions_alike_at_two_sites_stand_in_one() -> None:
    """Both sites are named and both figures given, in the same order; the reading that replaces it once."""
    merged = merged_assumptions(
        [stiffness("right index", "0.038"), stiffness("chin", "0.083")], ["right index", "chin"]
    )
    assert merged == (
        Assumption(
            "The limb's own stiffness at right index and chin",
            "0.038 and 0.083 N/mm, up to twice either way",
            *STIFF[1:],
        ),
    )


def test_assumptions_that_differ_in_words_stay_apart() -> None:
    """Another reason or another reading to take is another assumption, and nothing is lost; the same twice is one."""
    other = Assumption("The limb's own stiffness at chin", "0.083 N/mm, up to twice either way", "typed", "two sticks")
    first = stiffness("right index", "0.038")
    assert merged_assumptions([first, other, first], ["right index", "chin"]) == (first, other)


def test_site_whose_name_ends_another_is_not_mixed_up() -> None:
    """'index' and 'right index' are two sites."""
    merged = merged_assumptions([stiffness("right index", "0.1"), stiffness("index", "0.1")], ["index", "right index"])
    assert merged[0].what == "The limb's own stiffness at right index and index"
    assert merged[0].value == "0.1 N/mm, up to twice either way"


def test_messages_alike_at_two_sites_stand_in_one() -> None:
    """By code and figures: both sites in the label, each figure with its site; the same figure once; another reason apart."""

    def limb(site: str, stiffness_n_per_m: float, why: Message) -> Assumption:
        value = message(StandIns.usual_stiffness, stiffness_n_per_m=stiffness_n_per_m, within_factor=2.0)
        label = message(StandIns.limb_stiffness, sites=(Name(site),))
        return Assumption(label, value, why, message(StandIns.two_sticks))

    rule, other = message(StandIns.usual_stiffness_rule), message(StandIns.not_recorded)
    merged = merged_assumptions(
        [limb("right index", 38.0, rule), limb("chin", 83.0, rule), limb("foot", 83.0, other)], []
    )
    assert [said(one.what) for one in merged] == [
        "The limb's own stiffness at the right index and the chin",
        "The limb's own stiffness at the foot",
    ]
    assert said(merged[0].value) == (
        "right index: 0.038 N/mm, up to 2 times more or less; chin: 0.083 N/mm, up to 2 times more or less"
    )
    (same,) = merged_assumptions([limb("right index", 38.0, rule), limb("chin", 38.0, rule)], [])
    assert said(same.value) == "0.038 N/mm, up to 2 times more or less"
    assert said(same.what) == said(merged[0].what)


def test_findings_alike_in_two_recordings_stand_in_one() -> None:
    """The advice once, what the second recording says differently behind it."""
    told = [
        (name, Finding("query", "turned", f"Comes out turned by {said} anticlockwise: turn the base by {by}."))
        for name, said, by in (("push.csv", "13° (10 to 16°)", "13°"), ("hold.csv", "12° (11 to 13°)", "12°"))
    ]
    ((names, finding),) = merged_findings(told)
    assert names == ("push.csv", "hold.csv")
    assert finding.text == (
        "Comes out turned by 13° (10 to 16°) anticlockwise: turn the base by 13°; in hold.csv 12° (11 to 13°)."
    )


def test_findings_about_other_things_stay_apart() -> None:
    """A note and a query in the same words are two; the order is that in which they first come."""
    told = [
        ("a", Finding("note", "x", "One.")),
        ("b", Finding("query", "x", "One.")),
        ("c", Finding("note", "x", "One.")),
    ]
    assert merged_findings(told) == ((("a", "c"), told[0][1]), (("b",), told[1][1]))
