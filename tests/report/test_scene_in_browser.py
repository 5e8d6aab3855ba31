"""The picture that can be turned, opened as a family opens it: in a browser, from a file."""

from __future__ import annotations

from pathlib import Path

import pytest
from sample_mounts import mounted_plan

from browser import Visit, violations
from stickwright.report.mount_scene import scene_html


@pytest.fixture
def opened(visit: Visit, tmp_path: Path) -> Visit:
    """The page of two sticks that are held and one that is refused."""
    file = tmp_path / "scene.html"
    file.write_text(scene_html(mounted_plan()), encoding="utf-8")
    visit.page.goto(file.as_uri())
    return visit


def picture(visit: Visit) -> str:
    """The canvas as it stands."""
    return visit.page.evaluate("() => document.getElementById('scene').toDataURL()")


def shades(visit: Visit) -> tuple[int, float]:
    """Its darkest red, and the share of it that is white: the drawing knows no colour."""
    darkest, white = visit.page.evaluate(
        """() => {
            const canvas = document.getElementById("scene"), all = canvas.width * canvas.height;
            const data = canvas.getContext("2d").getImageData(0, 0, canvas.width, canvas.height).data;
            let darkest = 255, white = 0;
            for (let at = 0; at < data.length; at += 4) { darkest = Math.min(darkest, data[at]); white += data[at] === 255; }
            return [darkest, white / all];
        }"""
    )
    return darkest, white


def test_it_opens_from_a_file_without_an_error_or_a_request(opened: Visit) -> None:
    """Nothing is asked for but the file itself, the console stays empty, and there is black on white in the picture."""
    assert opened.errors == []
    assert [address.partition(":")[0] for address in opened.asked_for] == ["file"]
    darkest, white = shades(opened)
    assert darkest == 0
    assert 0.5 < white < 0.99


def test_its_policy_stops_what_would_go_out(opened: Visit) -> None:
    """A picture put in from outside is not fetched: the page's own rules forbid it, and the browser says so."""
    opened.page.evaluate(
        "() => { document.body.append(Object.assign(new Image(), { src: 'http://127.0.0.1:9/x.png' })); }"
    )
    opened.page.wait_for_function("() => [...document.images].every((one) => one.complete)")
    assert len(opened.errors) == 1
    assert "Content Security Policy" in opened.errors[0]


@pytest.mark.parametrize(
    ("key", "words"),
    [
        ("ArrowRight", "Seen from behind, turned 45°, 28° from above; enlarged 1.0 times."),
        ("ArrowLeft", "Seen from behind, turned 25°, 28° from above; enlarged 1.0 times."),
        ("ArrowUp", "Seen from behind, turned 35°, 38° from above; enlarged 1.0 times."),
        ("ArrowDown", "Seen from behind, turned 35°, 18° from above; enlarged 1.0 times."),
        ("+", "Seen from behind, turned 35°, 28° from above; enlarged 1.3 times."),
        ("-", "Seen from behind, turned 35°, 28° from above; enlarged 0.8 times."),
    ],
)
def test_keys_turn_it(opened: Visit, key: str, words: str) -> None:
    """From a corner (35 degrees round, 28 up), a key turns it by 10 degrees or enlarges it by a quarter; the picture changes and
    what is seen is said."""
    before = picture(opened)
    opened.page.focus("#scene")
    opened.page.keyboard.press(key)
    assert opened.page.inner_text("#view") == words
    assert picture(opened) != before


def test_every_control_is_reached_by_tab_and_works(opened: Visit) -> None:
    """Tab alone comes to every button, the list and the picture; 'from above' pressed by the space bar says so."""
    reached = []
    for _ in range(14):
        opened.page.keyboard.press("Tab")
        reached.append(
            opened.page.evaluate("() => document.activeElement.id || document.activeElement.textContent.trim()")
        )
        if reached[-1] == "from above":
            opened.page.keyboard.press("Space")
            assert opened.page.inner_text("#view").startswith("Seen from above")
    assert reached[:13] == [
        "choice", "from above", "from the side", "from the front", "from a corner", "names", "scene", "turn left",
        "turn right", "more from above", "less from above", "+", "−",
    ]  # fmt: skip


def test_another_stick_is_another_picture(opened: Visit) -> None:
    """Chosen from the list, the next stick is drawn and named for those who listen."""
    before, said = picture(opened), opened.page.get_attribute("#scene", "aria-label")
    opened.page.select_option("#choice", "1")
    assert picture(opened) != before
    assert opened.page.get_attribute("#scene", "aria-label") != said


def test_without_scripts_the_tables_say_it_all(visit: Visit, tmp_path: Path) -> None:
    """With scripts off there is no picture and no control, and each stick's table tells where everything stands."""
    file = tmp_path / "scene.html"
    file.write_text(scene_html(mounted_plan()), encoding="utf-8")
    quiet = visit.page.context.browser.new_context(java_script_enabled=False)
    page = quiet.new_page()
    page.goto(file.as_uri())
    assert not page.is_visible("#scene")
    assert page.is_visible("noscript p")
    captions = page.locator("caption").all_inner_texts()
    assert sum("Positions around" in one for one in captions) == 3
    cells = page.locator("td").all_text_contents()
    at = next(k for k, cell in enumerate(cells) if cells[k - 1] == "keep free" and cell == "keep free: chair control")
    assert cells[at + 1 : at + 4] == ["210 to 330", "420 to 520", "200 to 360"]
    quiet.close()


@pytest.mark.parametrize("width", [1280, 390])
def test_axe_finds_no_fault(opened: Visit, width: int) -> None:
    """No violation of axe's rules on a desk or on a telephone, and no sideways scrolling of the page."""
    opened.page.set_viewport_size({"width": width, "height": 900})
    assert violations(opened.page) == []
    assert opened.page.evaluate("() => document.documentElement.scrollWidth <= innerWidth")
