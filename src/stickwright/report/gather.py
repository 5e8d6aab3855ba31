"""The report of a plan, made once: what is told, in which order, with the caution or table that belongs to it."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator

from stickwright.codes.estimate import Estimate
from stickwright.codes.glance import Glance
from stickwright.codes.layout_pages import LayoutPages
from stickwright.codes.message import Message, Name, Text, message
from stickwright.codes.plan_report import ColumnCode, PlanReport, SectionCode
from stickwright.codes.reports import Reports
from stickwright.codes.sheets import Sheets
from stickwright.codes.wiring_pages import WiringPages
from stickwright.model.fit import Caution, Fit
from stickwright.model.plan import Plan
from stickwright.model.recorded import Finding
from stickwright.model.sharing import PartLine, Placement, PressFit, Sharing
from stickwright.report.body import body_told
from stickwright.report.device_words import crosswise_step, holding_steps, mode_steps, order_told, setting_step
from stickwright.report.family import as_shared, on_page_one
from stickwright.report.games_words import all_placements
from stickwright.report.merged import all_assumptions
from stickwright.report.sharing_words import (
    bought,
    control_of,
    device_words,
    given_up,
    introductions,
    lacking,
    load_told,
    own_words,
    pair_words,
    place_of,
    press_of,
    socket_of,
    tags_of,
    way_out,
)
from stickwright.report.tell import named, names
from stickwright.report.tuned import settings_told
from stickwright.report.view import (
    Bar,
    Block,
    CautionBlock,
    Cell,
    Column,
    LineBlock,
    Paragraph,
    PictureBlock,
    Report,
    Section,
    Table,
)
from stickwright.report.what_if import what_if_told
from stickwright.report.who import for_the_cables, for_the_family, for_the_numbers, marks_of

__all__ = ["device_steps", "parts_blocks", "report_of", "shared_findings"]

_CONTROLS: tuple[ColumnCode, ...] = ("mark", "action", "control", "by", "with", "socket", "chance", "effort")
_ASSUMED: tuple[ColumnCode, ...] = ("quantity", "value", "why", "confirm")
_PARTS: tuple[ColumnCode, ...] = ("part", "kind", "needed", "in_stock", "to_order", "price", "note")
_FOLDED: tuple[SectionCode, ...] = ("alternatives", "loads", "together", "parts", "current", "assumed")


def report_of(plan: Plan) -> Report:
    """What is told of a plan.

    Parameters
    ----------
    plan : Plan
        A finished plan.

    Returns
    -------
    Report
        Sections without anything to tell are left out.
    """
    told: tuple[tuple[SectionCode, Iterable[Block]], ...] = (
        ("clash", _clash(plan)),
        ("answer", _answer(plan)),
        ("controls", _controls(plan)),
        ("order", _lines(introductions(plan.sharing.placements) if plan.sharing is not None else ())),
        ("settings", _lines(_settings(plan))),
        ("to_order", _to_order(plan)),
        ("to_check", _lines(_to_check(plan))),
        ("cautions", _cautions(plan)),
        ("alternatives", _alternatives(plan)),
        ("loads", _lines(load_told(load) for load in plan.sharing.loads) if plan.sharing is not None else ()),
        ("together", _lines(pair_words(pair) for pair in plan.sharing.pairs) if plan.sharing is not None else ()),
        ("parts", parts_blocks(plan)),
        ("current", _current(plan)),
        ("assumed", _assumed(plan)),
    )
    made_on, version = named(plan.made_on), Name(plan.version)
    return Report(
        head=message(Reports.head, player=Name(plan.player), made_on=made_on, version=version),
        what_if=what_if_told(plan.wishes) if plan.wishes.what_if else None,
        sections=tuple(section for code, blocks in told if (section := _section(code, tuple(blocks))) is not None),
    )


def _section(code: SectionCode, blocks: tuple[Block, ...]) -> Section | None:
    if not blocks:
        return None
    title = message(PlanReport.section, section=code)
    return Section(code, title, blocks, "folded" if code in _FOLDED else "first")


def _lines(texts: Iterable[Text], *, numbered: bool = False) -> tuple[LineBlock, ...]:
    told = tuple(dict.fromkeys(text for text in texts if text))
    return (LineBlock(told, numbered),) if told else ()


def _answer(plan: Plan) -> Iterator[Block]:
    """What loses much, what to ask first, how much of the game is done, and the answer for the first site."""
    if plan.together is not None and plan.together.headlines:
        yield Paragraph(plan.together.headlines, strong=True)
    sharing = plan.sharing
    if sharing is not None and sharing.ask_first:
        yield Paragraph((sharing.ask_first,), strong=True)
    if sharing is not None:
        yield Paragraph((sharing.sentence,), strong=True)
        if sharing.solved:
            yield Paragraph((sharing.solved,))
    yield LineBlock((_in_short(plan.sentence),))


def _in_short(answer: Text) -> Text:
    """The answer for a site without what limits it and what comes second: those are among the reasons."""
    if not isinstance(answer, Message) or answer.code != "Setups.chosen":
        return answer
    left_out = ("limit", "second")
    return Message(answer.code, tuple((name, None if name in left_out else value) for name, value in answer.params))


def _clash(plan: Plan) -> Iterator[Block]:
    """Which requests cannot all be met, what was given up, and the ways out."""
    clash = plan.sharing.clash if plan.sharing is not None else None
    if clash is None:
        return
    yield Paragraph((message(LayoutPages.clash, told=clash.sentence, given_up=given_up(clash)),), strong=True)
    ways = tuple(way_out(number, clash) for number in range(1, len(clash.ways_out) + 1))
    if ways:
        yield LineBlock(ways, numbered=True, title=message(LayoutPages.heading, part="ways_out"))


def _controls(plan: Plan) -> Iterator[Block]:
    """The picture, and a line for each action; a table for each game where there are several."""
    if plan.sharing is None:
        return
    marks = marks_of(plan)
    if marks:
        yield PictureBlock(body_told(marks), marks)
    numbers = {mark.site: mark.number for mark in marks}
    if not plan.layouts:
        yield _table_of(plan.sharing, numbers, message(PlanReport.section, section="controls"))
    for layout in plan.layouts:
        if layout.sharing is not None:
            yield _table_of(layout.sharing, numbers, message(PlanReport.controls_of, game=Name(layout.game)))


def _table_of(sharing: Sharing, numbers: dict[str, int], caption: Message) -> Table:
    tags = tags_of(sharing)
    rows = tuple(_row(one, numbers, tags.get((one.hub or "", one.socket or ""), "")) for one in sharing.placements)
    return Table(caption, _columns(_CONTROLS), rows, message(PlanReport.effort_note))


def _columns(codes: Iterable[ColumnCode]) -> tuple[Column, ...]:
    return tuple(Column(code, message(PlanReport.column, column=code)) for code in codes)


def _row(one: Placement, numbers: dict[str, int], tag: str) -> tuple[Cell, ...]:
    """One action, in the columns of `_CONTROLS`."""
    number = numbers.get(one.site or "") if one.how == "site" else None
    return (
        Name(str(number)) if number is not None else None,
        Name(one.action),
        _control(one),
        place_of(one),
        _with(one),
        socket_of(one, tag) if one.how == "site" else None,
        _chance(one),
        _effort(one),
    )


def _control(one: Placement) -> Message:
    """What does it; what the player said about it stands where there is room for it."""
    control = control_of(one)
    return Message(control.code, tuple((name, None if name == "words" else value) for name, value in control.params))


def _with(one: Placement) -> Message | None:
    """The device, or how else it is done, beside its place."""
    own = own_words(one)
    if one.how == "site":
        return message(Glance.pressed, device=device_words(one), press=press_of(one))
    if one.how == "option":
        return message(Glance.option, option=named(one.label), words=own)
    if one.how == "helper":
        return message(Glance.second_controller, words=own)
    if one.how == "chord":
        return message(Glance.together, actions=names(one.together))
    return message(Glance.own_words, words=own) if own else None


def _chance(one: Placement) -> Bar | None:
    """How sure it is: of a stick that it is the right one, of a switch that a press lands on it."""
    if one.how != "site":
        return None
    if one.fit is not None:
        chance = one.fit.probability_best
        return Bar(message(PlanReport.best_stick, chance_share=chance), chance)
    if one.press is None or not math.isfinite(one.press.hit_share):
        return None
    hits = one.press.hit_share
    return Bar(message(LayoutPages.press_hits, hit_share=hits, assumed=one.press.wanted_face_m is None), hits)


def _effort(one: Placement) -> Bar | None:
    """Force as a share of what is comfortable; of a switch against its limit, where a stick has rules for each direction."""
    if one.how != "site":
        return None
    if one.fit is not None:
        return _effort_bar(one.fit.effort_share, None)
    if one.press is None or one.press.effort_share is None:
        return None
    return _effort_bar(_press_effort(one.press), one.press.effort_limit_share)


def _effort_bar(effort: Estimate, limit_share: float | None) -> Bar | None:
    if effort.value is None:
        return None
    text = message(PlanReport.effort, effort=effort, all_of_it=effort.number > 1)
    return Bar(text, effort.number, limit_share)


def _press_effort(press: PressFit) -> Estimate:
    """The effort of a press, with the interval that comes of the comfortable force: the force of the switch is known."""
    able = press.comfortable_n
    share = press.effort_share or 0.0
    if not able.has_interval or able.lower <= 0:
        return Estimate.unbounded(share, able.why or "", assumed=able.assumed)
    return Estimate(share, press.force_n / able.upper, press.force_n / able.lower, assumed=able.assumed)


def _settings(plan: Plan) -> Iterator[Text]:
    """What to set for each stick in use, and how its device is to be set, held and switched."""
    for site in as_shared(plan).sites:
        if site.choice is not None:
            yield from settings_told(site)
    yield from device_steps(plan)


def device_steps(plan: Plan) -> tuple[Message, ...]:
    """How each device in use is set, stood, held and switched.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    """
    steps = [step(fit) for fit in _fits_in_use(plan) for step in (setting_step, crosswise_step)]
    return tuple(one for one in (*steps, *holding_steps(plan), *mode_steps(plan)) if one is not None)


def _fits_in_use(plan: Plan) -> list[Fit]:
    """Every stick that the plan uses, as it is to be set up."""
    if plan.sharing is None:
        return [site.choice for site in plan.sites if site.choice is not None]
    fits = [one.fit for one in all_placements(plan) if one.fit is not None]
    return list({(fit.site, fit.named): fit for fit in fits}.values()) if plan.layouts else fits


def _to_order(plan: Plan) -> Iterator[Block]:
    wiring = plan.sharing.wiring if plan.sharing is not None else None
    told = bought(plan.parts, lacking(wiring)) if wiring is not None else ()
    made = tuple(order_told(site.to_order) for site in plan.sites if site.to_order is not None)
    if told or made:
        yield LineBlock((*told, *made))
    elif plan.sharing is not None:
        yield LineBlock((message(PlanReport.nothing_to_order),))


_LEFT_UNSAID = ("CaseFiles.no_hub", "CaseFiles.usual_actions")
"""Notes without which the plan would be taken for more than it is."""


def _to_check(plan: Plan) -> Iterator[Text]:
    """What must be confirmed before it is relied on: faults, queries, doubts of what is used, the next reading."""
    for finding in _all_findings(plan):
        if finding.level in ("fault", "query") or getattr(finding.text, "code", "") in _LEFT_UNSAID:
            yield message(Sheets.finding, level=finding.level, text=finding.text)
    for one in all_placements(plan):
        used = one.fit if one.fit is not None else one.press
        if one.how == "site" and used is not None:
            yield from (
                message(PlanReport.to_confirm, action=Name(one.action), doubt=doubt.sentence) for doubt in used.doubts
            )
    yield plan.next_reading.sentence


def _all_findings(plan: Plan) -> Iterator[Finding]:
    yield from plan.findings
    yield from shared_findings(plan)
    for site in plan.sites:
        yield from (*site.findings, *site.capability.findings)
    for mount in plan.mounts:
        yield from mount.findings


def shared_findings(plan: Plan) -> tuple[Finding, ...]:
    """What was noticed in sharing out and wiring.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    """
    if plan.sharing is None:
        return ()
    wiring = plan.sharing.wiring
    return (*plan.sharing.findings, *(wiring.findings if wiring is not None else ()))


def _cautions(plan: Plan) -> Iterator[Block]:
    """Cautions for everybody; how many more stand beside their numbers and mounts."""
    texts = dict.fromkeys(one.text for one in _for_everybody(plan))
    more = {one.text for one in (*plan.cautions, *_shared_cautions(plan), *_mount_cautions(plan))} - set(texts)
    if texts:
        yield CautionBlock(tuple(texts))
    if more:
        yield LineBlock((message(PlanReport.cautions_elsewhere, count=len(more)),))


def _for_everybody(plan: Plan) -> Iterator[Caution]:
    yield from on_page_one(as_shared(plan))
    if plan.sharing is not None:
        yield from for_the_family(plan)
        yield from for_the_cables(plan)
        yield from (one for one in for_the_numbers(plan) if one.about == "press")


def _shared_cautions(plan: Plan) -> tuple[Caution, ...]:
    return plan.sharing.cautions if plan.sharing is not None else ()


def _mount_cautions(plan: Plan) -> Iterator[Caution]:
    for mount in plan.mounts:
        yield from mount.cautions


def _alternatives(plan: Plan) -> Iterator[Block]:
    if plan.sharing is not None:
        yield from _lines((one.sentence for one in plan.sharing.alternatives), numbered=True)


def parts_blocks(plan: Plan) -> Iterator[Block]:
    """Every part with what the kit says of it, and what is to be ordered.

    Parameters
    ----------
    plan : Plan
        A finished plan.
    """
    wiring = plan.sharing.wiring if plan.sharing is not None else None
    if wiring is None:
        return
    if plan.parts:
        every = Table(message(PlanReport.section, section="parts"), _columns(_PARTS), tuple(map(_part, plan.parts)))
        yield every.only(*_PARTS)
    if told := bought(plan.parts, lacking(wiring)):
        yield Paragraph(told, strong=True)


def _part(line: PartLine) -> tuple[Cell, ...]:
    """One part, in the columns of `_PARTS`; a price where it is to be bought."""
    return (
        line.name,
        line.kind_named,
        Name(str(line.count)),
        Name(str(line.in_stock)),
        Name(str(line.buy)) if line.buy else None,
        message(WiringPages.price, total_price=line.price) if line.buy else None,
        message(WiringPages.part_note, note=line.note) if line.note else None,
    )


def _current(plan: Plan) -> Iterator[Block]:
    wiring = plan.sharing.wiring if plan.sharing is not None else None
    if wiring is not None:
        yield from _lines(one.words for one in wiring.power)


def _assumed(plan: Plan) -> Iterator[Block]:
    """What nobody measured, with what would replace it."""
    rows = tuple((one.what, one.value, one.why, one.replace_by) for one in all_assumptions(plan))
    if rows:
        yield Table(message(PlanReport.section, section="assumed"), _columns(_ASSUMED), rows)
