"""The parts list: everything that the plan uses stands on it, and "everything is in stock" is said only when it is."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from pathlib import Path

from small_cases import action, case, hub, site, switch

from kept import planned
from said import said
from stickwright.files.folder import read_case
from stickwright.model.sharing import Sharing
from stickwright.model.wishes import Wishes
from stickwright.planning.plan import plan
from stickwright.report.gather import report_of
from stickwright.report.sharing_words import bought, lacking
from stickwright.report.to_terminal import cell_text

DEMO = Path(__file__).parents[1] / "examples" / "demo"
IN_STOCK = "Everything is in stock."


def used_by(sharing: Sharing) -> Counter[str]:
    """Names of what is worked and plugged in, counted from who does what and from the cables, not from the parts list."""
    out: Counter[str] = Counter()
    wiring = sharing.wiring
    assert wiring is not None
    out.update(wire.device for wire in wiring.wires)
    out.update(lead for wire in wiring.wires for lead in wire.through)
    out.update({wire.hub for wire in wiring.wires})
    for one in sharing.placements:
        if one.fit is not None:
            out.update(name for name in (one.fit.topper, one.fit.extension) if name)
    return out


def test_all_that_the_demo_uses_is_on_its_list() -> None:
    """Devices, toppers, extensions, leads, hub, second controller, arms, couplings and pieces of fastener, each as often as
    it is used; what is needed beyond the stock is to order."""
    found = planned(read_case(DEMO), draws=20)
    assert found.sharing is not None
    used = used_by(found.sharing)
    for mount in found.mounts:
        if mount.choice is not None:
            used[mount.choice.mount] += mount.choice.kind in ("friction arm", "gooseneck", "floor stand", "floor plate")
            used[mount.choice.fastener or ""] += mount.pieces if mount.choice.fastener else 0
    counts = {line.name: line.count for line in found.parts}
    for name, number in used.items():
        if name and number:
            assert counts[name] == number, name
    assert len(counts) == len(found.parts), "one line for each part"
    assert all(line.buy == max(0, line.count - line.in_stock) for line in found.parts)
    assert all(line.kind for line in found.parts)
    (table,) = report_of(found).tables("parts")
    columns = [column.code for column in table.columns]
    assert columns[:5] == ["part", "kind", "needed", "in_stock", "to_order"]
    for line, row in zip(found.parts, table.rows, strict=True):
        cells = [said(cell_text(cell)) for cell in row]
        assert cells[:4] == [said(line.name), said(line.kind_named), str(line.count), str(line.in_stock)]
        assert cells[4] == (str(line.buy) if line.buy else "")


def helped(pairs: bool, stock: int = 1, hubs: bool = True) -> Sharing:
    """A sister does the menu; the kit has one controller."""
    this = case(
        [site("left index")], [action("jump"), action("menu", helper=True, helper_price=0, importance=2)],
        switches=[switch("pip")], helpers=[{"name": "sister"}],
        controllers=[{"name": "yew", "pairs": pairs, "in_stock": stock, "sticks": [], "buttons": []}],
        hubs=[hub(switches=2, paired=1)] if hubs else [],
    )  # fmt: skip
    found = plan(this, draws=20, wishes=Wishes()).sharing
    assert found is not None
    assert next(one for one in found.placements if one.action == "menu").how == "helper"
    return found


def test_a_helper_without_a_controller_that_pairs_is_something_to_order() -> None:
    """No controller of the kit pairs: the second controller is to order, and not everything is in stock."""
    for hubs in (True, False):
        wiring = helped(False, hubs=hubs).wiring
        assert wiring is not None
        assert [(one.kind, one.count, one.in_stock, one.buy) for one in wiring.parts if "second" in said(one.name)] == [
            ("controller", 1, 0, 1)
        ]
        assert " ".join(map(said, bought(wiring.parts, lacking(wiring)))) != IN_STOCK
        assert "1 × second controller" in " ".join(map(said, bought(wiring.parts, lacking(wiring))))


def test_a_helper_with_a_controller_needs_no_other() -> None:
    """It is on the list once, with or without a hub, and then everything is in stock."""
    for hubs in (True, False):
        wiring = helped(True, hubs=hubs).wiring
        assert wiring is not None
        assert [(one.name, one.count, one.buy) for one in wiring.parts if one.kind == "controller"] == [("yew", 1, 0)]
        assert " ".join(map(said, bought(wiring.parts, lacking(wiring)))) == IN_STOCK


def test_goals_are_told_with_the_plan() -> None:
    """What the player wants is said in their own words wherever the plan is read; without goals nothing is made up."""
    this = read_case(DEMO)
    asked = replace(
        this, player=this.player.model_copy(update={"goals": ("win once against my cousin.", "play an hour")})
    )
    told = [said(one.text) for one in plan(asked, draws=5).findings if one.about == "goals"]
    assert len(told) == 1
    assert "win once against my cousin; play an hour" in said(told[0])
    silent = replace(this, player=this.player.model_copy(update={"goals": ()}))
    assert not [one for one in plan(silent, draws=5).findings if one.about == "goals"]
