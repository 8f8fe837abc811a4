"""Text that the reader has enlarged alone: nothing is cut, and no page scrolls sideways, on a screen that did not grow."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

import server
import toolchain
from tests.browser.test_reach import UNFOLD, assert_nothing_beyond_the_edge, different_pages

pytestmark = pytest.mark.browser

ORDINARY = 16  # pixels: what a browser calls medium until its reader says otherwise
CUT = """() => [...document.querySelectorAll(".ss-plate, .ss-plate *, .ss-bar, .ss-ways a, main summary")]
  .filter((element) => element.checkVisibility() && !element.closest(".ss-hidden, .ss-units-word, .md-search"))
  .filter((element) => element.scrollWidth > element.clientWidth + 1 && getComputedStyle(element).display !== "inline")
  .map((element) => `${element.tagName}.${element.className}: ${element.textContent.trim().slice(0, 60)}`)"""


@pytest.fixture(scope="module")
def enlarged(browser: Browser) -> Iterator[Page]:
    """A page, as built and without our scripts, in a browser whose reader wants twice the text."""
    large = browser.browser_type.launch(
        executable_path=toolchain.find_chromium(), args=[f"--blink-settings=defaultFontSize={2 * ORDINARY}"]
    )
    page = large.new_page()
    page.route("**/assets/js*/*.js", lambda route: route.fulfill(body="", content_type="text/javascript"))
    yield page
    large.close()


def test_no_page_scrolls_sideways_or_cuts_at_twice_the_text(enlarged: Page, served: server.Site, site: Path) -> None:
    for address in different_pages(site):
        enlarged.goto(served.url + address)
        enlarged.evaluate(UNFOLD)
        for width in (320, 1280):
            enlarged.set_viewport_size({"width": width, "height": 800})
            assert_nothing_beyond_the_edge(enlarged, f"{address} at {width}")
            assert enlarged.evaluate(CUT) == [], f"{address} at {width}"


@pytest.mark.parametrize("times", [1.5, 2])
def test_the_plate_breaks_its_number_before_it_cuts_it(page: Page, served: server.Site, times: float) -> None:
    """As in a browser that enlarges text and leaves the layout as it was."""
    page.set_viewport_size({"width": 1280, "height": 800})
    for address in ("embed/tank-size/", "embed/house-load/", "guides/cost/"):
        page.goto(served.url + address)
        page.evaluate("times => { document.documentElement.style.fontSize = `${125 * times}%`; }", times)
        plates = "all => all.filter((plate) => plate.scrollWidth > plate.clientWidth).map((plate) => plate.textContent)"
        assert page.locator(".ss-plate").evaluate_all(plates) == [], address


def test_a_record_with_wrong_numbers_fits_a_narrow_screen(page: Page, served: server.Site) -> None:
    wrong = {"store_volume": "12 apples", "store_top": "9" * 200, "design_load": "w" * 190}
    plan = {key: {"text": text, "units": "us"} for key, text in wrong.items()}
    page.set_viewport_size({"width": 320, "height": 640})
    page.add_init_script(f"localStorage.setItem('stoke-and-store.plan', {json.dumps(json.dumps(plan))})")
    page.goto(f"{served.url}record/")
    page.locator("[data-ss-record][data-mine]:not([data-busy])").wait_for()
    page.evaluate(UNFOLD)
    assert_nothing_beyond_the_edge(page, "the record")
