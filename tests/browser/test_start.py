"""A worksheet before any script runs, and how it comes alive."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

import server
from calc.answer import Typed, answer
from tests.browser.conftest import Live, Visiting
from tests.browser.reader import SIZES, Reader, calculators, plain

pytestmark = pytest.mark.browser

WATCH_SHIFTS = """
window.shifts = [];
new PerformanceObserver((list) => {
  for (const entry of list.getEntries()) {
    const moved = entry.sources.map((source) => source.node?.className ?? source.node?.nodeName);
    window.shifts.push([entry.value, ...moved]);
  }
}).observe({ type: "layout-shift", buffered: true });
"""


@pytest.mark.parametrize("size", SIZES)
def test_the_worked_example_stands_there_without_any_script(
    visiting: Visiting, served: server.Site, places: dict[str, str], size: str
) -> None:
    with visiting([], java_script_enabled=False, viewport=SIZES[size]) as page:
        page.goto(served.url + places["stored-heat"])
        reader = Reader(page, "stored-heat")
        sheet = answer("stored-heat", {})
        assert sheet.headline
        assert reader.figure == plain(sheet.headline.shown)
        assert reader.results() == {result.key: plain(result.shown) for result in sheet.results}
        assert "Without JavaScript" in (reader.sheet.locator("noscript").text_content() or "")
        expect(reader.slot("status")).to_be_hidden()
        expect(reader.sheet.get_by_role("button")).to_have_count(0)
        expect(reader.box("store_volume")).to_be_disabled()
        expect(reader.slot("advice")).to_be_visible()
        expect(reader.slot("picture").locator("svg")).to_be_visible()
        expect(reader.slot("chart").locator("svg:visible")).to_have_count(1)
        reader.sheet.locator("summary", has_text="Show how").click()
        expect(reader.slot("sources")).to_be_visible()


@pytest.mark.parametrize("size", SIZES)
def test_it_comes_alive_without_moving_anything(
    page: Page, served: server.Site, places: dict[str, str], size: str
) -> None:
    page.set_viewport_size(SIZES[size])
    page.add_init_script(WATCH_SHIFTS)
    page.goto(served.url + places["stored-heat"])
    reader = Reader(page, "stored-heat")
    before = reader.sheet.locator(".ss-side, .ss-foot").evaluate_all("parts => parts.map((part) => part.innerHTML)")
    reader.wait_until_live()
    page.wait_for_timeout(300)  # a shift is reported with the next frame
    assert (
        reader.sheet.locator(".ss-side, .ss-foot").evaluate_all("parts => parts.map((part) => part.innerHTML)")
        == before
    )
    assert page.evaluate("window.shifts") == []
    assert reader.status == "Ready. Change any number."


def test_nothing_is_started_before_it_is_wanted_when_data_is_to_be_saved(
    page: Page, served: server.Site, places: dict[str, str]
) -> None:
    page.add_init_script("Object.defineProperty(navigator, 'connection', { value: { saveData: true } })")
    page.goto(served.url + places["stored-heat"])
    reader = Reader(page, "stored-heat")
    expect(reader.slot("status")).to_have_text("The calculator starts when you choose a box.")
    assert calculators(page) == []
    reader.box("store_volume").fill("600")
    assert reader.figure == "No result yet"
    reader.wait()
    sheet = answer("stored-heat", {"store_volume": Typed("600")})
    assert reader.results() == {result.key: plain(result.shown) for result in sheet.results}


def test_a_link_is_opened_at_once_also_when_data_is_to_be_saved(
    page: Page, served: server.Site, places: dict[str, str]
) -> None:
    page.add_init_script("Object.defineProperty(navigator, 'connection', { value: { saveData: true } })")
    page.goto(f"{served.url}{places['stored-heat']}#v1;stored-heat;store_volume=640gal;end")
    reader = Reader(page, "stored-heat")
    expect(reader.box("store_volume")).to_have_value("640")
    reader.wait()
    sheet = answer("stored-heat", {"store_volume": Typed("640gal", "us", "link")})
    assert reader.results() == {result.key: plain(result.shown) for result in sheet.results}


def test_a_page_without_worksheets_loads_no_python(page: Page, served: server.Site, site: Path) -> None:
    bare = next(
        path for path in sorted(site.glob("*/index.html")) if "data-silence" not in path.read_text(encoding="utf-8")
    )
    served.requests.clear()
    page.goto(f"{served.url}{bare.parent.name}/")
    page.locator("html[data-header=live]").wait_for()
    page.wait_for_timeout(300)
    assert calculators(page) == []
    assert not [request.path for request in served.requests if "/python/" in request.path]


def test_what_was_typed_goes_along_to_the_next_page(live: Live, served: server.Site, places: dict[str, str]) -> None:
    with live("stored-heat") as reader:
        reader.type("design_load", "21,000")
        reader.page.goto(served.url + places["emitter-temperature"])
        there = Reader(reader.page, "emitter-temperature")
        there.wait_until_live()
        expect(there.box("design_load")).to_have_value("21,000")
        sheet = answer("emitter-temperature", {"design_load": Typed("21,000")})
        assert there.results() == {result.key: plain(result.shown) for result in sheet.results}
