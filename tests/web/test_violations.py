"""What the tests of the pages call a fault against accessibility is found, at the first look at a page and at any later one."""

from __future__ import annotations

from browser import Visit, violations

FINE = "<!doctype html><html lang='en'><head><title>One</title></head><body><main><h1>One</h1>{}</main></body></html>"


def test_a_fault_is_found_at_every_look(visit: Visit) -> None:
    """A picture without words; mended, it is found no more, and one that comes later is found again; on another page too."""
    visit.page.set_content(FINE.format("<img src='data:,'>"))
    assert [one.split(":")[0] for one in violations(visit.page)] == ["image-alt"]
    visit.page.evaluate("document.querySelector('img').alt = 'a stick'")
    assert violations(visit.page) == []
    visit.page.evaluate("document.querySelector('h1').style.color = '#eee'")
    assert [one.split(":")[0] for one in violations(visit.page)] == ["color-contrast"]
    visit.page.goto("about:blank")
    assert violations(visit.page) != []
