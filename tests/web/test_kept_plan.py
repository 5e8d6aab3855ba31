"""A kept plan is shown from what was kept, whatever the program has become; worked out again it is another plan."""

from __future__ import annotations

import hashlib
import json
import re
import time
import zlib
from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

import pytest
import sqlalchemy as sa
from tests.web.conftest import demo_with_plan

from stickwright.mechanics.site_inputs import Rules
from stickwright.store import plans as plans_module
from stickwright.store.opening import Store
from stickwright.store.plans import PlanRow, plan_text, plans, program
from stickwright.store.schema import plan as plan_table
from stickwright.web.request_context import RequestContext

if TYPE_CHECKING:
    from starlette.testclient import TestClient

FILES = ("sheet.pdf", "plan.json", "page-1.svg", "scene.html", "drawings.zip")


@pytest.fixture
def kept(desk: RequestContext) -> Iterator[Store]:
    """Records with one visit, the demo's, and one plan of it."""
    demo_with_plan(desk)
    assert desk.store is not None
    yield desk.store
    desk.store.close()


def row_of(store: Store, number: int = 1) -> PlanRow:
    return next(one for one in plans(store, 1) if one.number == number)


def rewritten(store: Store, text: bytes | None = None, **more: Any) -> None:
    """The plan as another version would have kept it."""
    kept = {} if text is None else {"result": zlib.compress(text), "digest": hashlib.sha256(text).hexdigest()}
    with store.write("test", "") as connection:
        connection.execute(sa.update(plan_table).where(plan_table.c.number == 1).values(kept | more))


def words(page: str) -> str:
    """Of a page, without what changes from one look to the next."""
    return re.sub(r'name="csrf" value="[^"]*"|nonce="[^"]*"', "", page)


def test_nothing_of_a_kept_plan_is_worked_out_anew(
    client: TestClient, kept: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    """With other rules in the program the page, the sheet, the data, the scene and the drawings are those of before; only a
    plan that is worked out again follows the new rules."""
    assert client.get("/visits/1/plans/1").status_code == 200
    before = words(client.get("/visits/1/plans/1").text)
    files = {name: client.get(f"/visits/1/plans/1/{name}") for name in FILES}
    assert {one.status_code for one in files.values()} == {200}
    stored = plan_text(kept, row_of(kept).id)
    assert files["plan.json"].content == stored
    client.app.state.plans.shown.clear()  # type: ignore[attr-defined]

    def never(*_args: Any, **_more: Any) -> Any:
        raise AssertionError("a kept plan was worked out anew")

    monkeypatch.setattr(plans_module, "plan", never)
    assert words(client.get("/visits/1/plans/1").text) == before
    assert client.get("/visits/1/plans/1/plan.json").content == stored
    for page in ("mounts", "sheet"):
        assert client.get(f"/visits/1/{page}").status_code == 200
    for name in ("page-1.svg", "scene.html"):
        assert client.get(f"/visits/1/plans/1/{name}").content == files[name].content
    monkeypatch.undo()

    strict = tuple(0.01 if value == Rules().effort_share else value for value in Rules.__init__.__defaults__ or ())
    monkeypatch.setattr(Rules.__init__, "__defaults__", strict)
    client.app.state.plans.shown.clear()  # type: ignore[attr-defined]
    assert words(client.get("/visits/1/plans/1").text) == before
    page = worked_out_again(client)
    assert "actions are done otherwise" in page or "differs" in page
    assert plan_text(kept, row_of(kept, 2).id) != stored == plan_text(kept, row_of(kept).id)


def worked_out_again(client: TestClient) -> str:
    """Press the button, wait for the new plan, and read what stands there then."""
    answer = client.post("/visits/1/plans/1/again", follow_redirects=False)
    making = answer.headers["location"]
    for _ in range(120):
        answer = client.get(making, follow_redirects=False)
        if answer.status_code == 303:
            assert answer.headers["location"].endswith("compare?a=1&b=2")
            return client.get(answer.headers["location"]).text
        assert answer.status_code == 200, answer.text
        time.sleep(0.5)
    raise AssertionError("the plan was not made")


def test_worked_out_again_by_the_same_program_it_is_the_same(client: TestClient, kept: Store) -> None:
    """A new plan from the same inputs: same bytes, and the page says that nothing differs; it names the plan it came from."""
    page = worked_out_again(client)
    assert "Both were made by the same program from the same readings, kit, wishes and seed." in page
    assert "Every action is done the same way" in page
    assert plan_text(kept, row_of(kept, 2).id) == plan_text(kept, row_of(kept).id)
    assert "Worked out again from the inputs of" in client.get("/visits/1/plans/2").text


def test_a_plan_of_another_program_says_so(client: TestClient, kept: Store) -> None:
    """It is shown as it was, under the version that made it; nothing is said of versions where it is the same."""
    assert "the plan was made by another version" not in client.get("/visits/1/plans/1").text
    rewritten(kept, program="0.0.9 (0123456789ab)")
    page = client.get("/visits/1/plans/1").text
    assert "with stickwright 0.0.9 (0123456789ab)" in page
    assert f"This is stickwright {program()}; the plan was made by another version." in page
    compared = worked_out_again(client)
    assert f"made with stickwright 0.0.9 (0123456789ab), the second with stickwright {program()}." in compared


def test_a_plan_of_an_older_format_says_what_can_be_had(client: TestClient, kept: Store) -> None:
    """One sentence wherever it would be shown; its data as they were kept; a new plan of the same inputs beside it."""
    old = json.loads(plan_text(kept, row_of(kept).id)) | {"format": 2}
    text = json.dumps(old).encode()
    rewritten(kept, text)
    said = "This plan was kept by an earlier version of stickwright, in format 2; this version shows format 3."
    for path in ("plans/1", "mounts", "sheet", "plans/1/sheet.pdf", "plans/1/scene.html", "plans/1/page-1.svg"):
        answer = client.get(f"/visits/1/{path}")
        assert (answer.status_code, said in answer.text) == (200, True)
    assert 'action="/visits/1/plans/1/again"' in client.get("/visits/1/plans/1").text
    assert client.get("/visits/1/plans/1/plan.json").content == text
    page = worked_out_again(client)
    assert said in page
    assert "The same sticks are chosen, but 1 entry differs, the first at format (2 before, 3 now)." in page
    assert "<h2" in client.get("/visits/1/plans/2").text


def test_the_familys_pages_are_shown_in_the_language_that_was_chosen(client: TestClient, kept: Store) -> None:
    """A link for each language by its own name; pictures and PDF follow; one that there is not falls back to English."""
    assert row_of(kept).number == 1
    assert 'lang="de">Deutsch</a>' in client.get("/visits/1/sheet").text
    chosen = client.get("/visits/1/sheet?language=de").text
    assert "page-1.svg?language=de" in chosen
    assert "sheet.pdf?language=de" in chosen
    english, german, none = (
        client.get(f"/visits/1/plans/1/page-1.svg?language={one}").content for one in ("en", "de", "xx")
    )
    assert german != english == none
