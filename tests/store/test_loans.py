"""What is with whom: stock for the others, what is overdue, what belongs to one player for good, and undo."""

import pytest

from stickwright.errors import BadInput
from stickwright.model.kit import Kit, Stick, Topper
from stickwright.store.loans import available, cleaned, extend, give_back, lend, loans, overdue, undo_loan
from stickwright.store.players import add_player

KIT = Kit(
    stick=(
        Stick(name="ash", start_force_n=0.1, full_force_n=0.5, travel_m=0.01, in_stock=2),
        Stick(name="elm", start_force_n=0.1, full_force_n=0.5, travel_m=0.01, in_stock=0, price=20.0),
    ),
    topper=(Topper(name="chin cup", form="cup", height_m=0.01, single_player=True, in_stock=2),),
)


@pytest.fixture
def three(store):
    return [add_player(store, code, who="ot").id for code in ("K7", "K8", "K9")]


def out(store, player_id, item="ash", on_date="2026-03-01", due="2026-04-01"):
    return lend(store, player_id, item, kit=KIT, on_date=on_date, due=due, who="ot")


def stock(store, player_id=None):
    kit = available(KIT, loans(store), player_id)
    return kit.stick[0].in_stock, kit.topper[0].in_stock


def test_what_is_lent_is_not_in_stock_for_others(store, three):
    """Two sticks: one with K7 leaves one for K8, and two for K7, who has one of them at home."""
    row = out(store, three[0], "ASH ")
    assert (row.item, row.code, row.out_on, row.due_on, row.back_on) == ("ash", "K7", "2026-03-01", "2026-04-01", "")
    assert (stock(store, three[0])[0], stock(store, three[1])[0], stock(store)[0]) == (2, 1, 1)
    out(store, three[1])
    with pytest.raises(
        BadInput, match=r"ash: found none left of 2; on loan: K7 \(due 1 Apr 2026\) and K8 .*, expected one in stock"
    ):
        out(store, three[2])
    with pytest.raises(BadInput, match="elm: found none left of 0, expected one in stock"):
        out(store, three[2], "elm")
    give_back(store, row.loan, on_date="2026-03-20", who="ot")
    assert stock(store, three[2])[0] == 1
    assert out(store, three[2]).code == "K9"
    assert KIT.stick[0].in_stock == 2


def test_a_part_for_one_player_never_goes_to_a_second(store, three):
    """Two chin cups: K7's stays K7's when it is back, and may go out to K7 again; K8 has the other; there is none for K9."""
    first = out(store, three[0], "chin cup")
    give_back(store, first.loan, on_date="2026-03-10", who="ot")
    cleaned(store, first.loan, on_date="2026-03-11", who="ot")
    assert (stock(store, three[0])[1], stock(store, three[1])[1]) == (2, 1)
    out(store, three[1], "chin cup")
    assert (stock(store, three[0])[1], stock(store, three[2])[1]) == (1, 0)
    with pytest.raises(
        BadInput, match=r"chin cup: found none left for another player \(used by K7 and K8\).*one player"
    ):
        out(store, three[2], "chin cup")
    assert out(store, three[0], "chin cup", "2026-05-01", "2026-06-01").code == "K7"
    with pytest.raises(BadInput, match="none left for another player"):
        out(store, three[0], "chin cup", "2026-05-01", "2026-06-01")  # the second one is K8's


def test_overdue(store, three):
    """What should be back by today, the longest overdue first; on the day itself it is not overdue; longer is possible."""
    one, two = out(store, three[0], due="2026-04-02"), out(store, three[1], due="2026-04-01")
    assert overdue(store, "2026-04-01") == ()
    assert [row.loan for row in overdue(store, "2026-04-03")] == [two.loan, one.loan]
    assert extend(store, two.loan, due="2026-05-01", who="ot", note="school project").note == "school project"
    assert [row.loan for row in overdue(store, "2026-04-03")] == [one.loan]
    give_back(store, one.loan, on_date="2026-04-03", who="ot")
    assert overdue(store, "2026-04-30") == ()


def test_everything_noted_can_be_undone(store, three):
    """Step by step back to where nothing was lent; each step is a further line, none is taken out."""
    row = out(store, three[0], "chin cup")
    give_back(store, row.loan, on_date="2026-03-10", who="ot")
    cleaned(store, row.loan, on_date="2026-03-11", who="ot")
    assert undo_loan(store, row.loan, who="ot").back_on == "2026-03-10"
    assert undo_loan(store, row.loan, who="ot") == row
    assert undo_loan(store, row.loan, who="ot") is None
    assert (loans(store), stock(store)[1]) == ((), 2)
    with pytest.raises(BadInput, match=f"loan: found number {row.loan}, expected a loan in the records"):
        undo_loan(store, row.loan, who="ot")
    assert out(store, three[1], "chin cup").loan > row.loan


@pytest.mark.parametrize(
    "asked, words",
    [
        ({"item": "ahs"}, r'item: found "ahs", expected an item of the kit\. Did you mean .ash.'),
        ({"on_date": "1 March"}, "lent on: found 1 March, expected a date such as 2026-03-14"),
        ({"due": "2026-02-01"}, "due: found 2026-02-01, expected 1 Mar 2026 or later"),
    ],
)
def test_what_cannot_be_lent_is_said(store, three, asked, words):
    """A name not in the kit, a date that is none, a due date before the loan: in words, and nothing is noted."""
    with pytest.raises(BadInput, match=words):
        out(store, three[0], **asked)
    assert loans(store) == ()


def test_the_course_of_a_loan_is_kept_to(store, three):
    """Back twice, cleaned before it is back, back before it went out: refused in words."""
    row = out(store, three[0])
    with pytest.raises(BadInput, match="ash: found still with K7, expected an item that has been returned"):
        cleaned(store, row.loan, on_date="2026-03-05", who="ot")
    with pytest.raises(
        BadInput, match="returned on: found 2026-02-28, expected 1 Mar 2026, when it was lent, or later"
    ):
        give_back(store, row.loan, on_date="2026-02-28", who="ot")
    give_back(store, row.loan, on_date="2026-03-05", who="ot")
    with pytest.raises(BadInput, match="ash: found returned on 5 Mar 2026, expected an item that is on loan"):
        give_back(store, row.loan, on_date="2026-03-06", who="ot")
