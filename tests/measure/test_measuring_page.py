"""The page on measuring is made from the table and the tasks."""

from make_measuring import PAGE, measuring_page


def test_the_page_on_measuring_is_fresh():
    """docs/measuring.md says what the program does; when this fails run ``python docs/make_measuring.py``."""
    assert PAGE.read_text(encoding="utf-8") == measuring_page()
