"""Every reader can use it: by keyboard, by voice, at 320 pixels, on paper, with nothing beyond the screen's edge."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any, Literal

import pytest
from playwright.sync_api import Page, expect

import server
import toolchain
from tests.browser.conftest import At, Live, Visiting
from tests.browser.reader import SIZES, Reader
from tests.paper import Paper

pytestmark = pytest.mark.browser

AXE = toolchain.ROOT / "node_modules" / "axe-core" / "axe.min.js"
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
SCHEMES: dict[Literal["light", "dark"], list[str]] = {"light": RULES, "dark": ["color-contrast", "link-in-text-block"]}
UNFOLD = "() => document.querySelectorAll('main details').forEach((details) => { details.open = true; })"


def violations(page: Page, rules: list[str] = RULES) -> list[list[str]]:
    """What axe-core has to say about the page as it stands: rule, what it asks, and the first elements that break it."""
    if not page.evaluate("'axe' in window"):
        page.evaluate(AXE.read_text(encoding="utf-8"))
    result: list[list[str]] = page.evaluate(
        "async (rules) => (await axe.run(document, { runOnly: rules, resultTypes: ['violations'] })).violations"
        ".map((rule) => [rule.id, rule.help, ...rule.nodes.slice(0, 3).map((node) => node.html.slice(0, 200))])",
        rules,
    )
    return result


def assert_accessible(page: Page, where: str) -> None:
    """axe-core has nothing to say about the page as it stands, seen from its top."""
    page.evaluate("scrollTo(0, 0)")  # a box that is half beneath the header, which stays in sight, is no smaller
    result = violations(page)
    assert result == [], f"{where}: {json.dumps(result, indent=1)}"


def make_ready(reader: Reader) -> None:
    pass


def make_wrong(reader: Reader) -> None:
    reader.type("store_volume", "12 apples")
    reader.type("store_top", "")


def make_assumed(reader: Reader) -> None:
    reader.type("store_volume", "800")
    reader.unknown("cold_water").check()
    reader.wait()


def make_open(reader: Reader) -> None:
    make_assumed(reader)
    reader.page.evaluate(UNFOLD)
    expect(reader.sheet.locator(".ss-stale")).to_have_count(0)  # a chart in a fold is drawn again once it is seen


STATES: dict[str, Callable[[Reader], None]] = {
    "ready": make_ready,
    "wrong": make_wrong,
    "assumed": make_assumed,
    "open": make_open,
}


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_in_any_state(live: Live, size: str, scheme: Any) -> None:
    with live("stored-heat", viewport=SIZES[size], color_scheme=scheme) as reader:
        for state, make in STATES.items():
            reader.page.evaluate(
                "() => document.querySelectorAll('[data-ss-clear]').forEach((button) => button.click())"
            )
            reader.wait()
            make(reader)
            assert_accessible(reader.page, f"{state}, {size}, {scheme}")
            assert_nothing_beyond_the_edge(reader.page, state)


def test_axe_finds_nothing_when_the_calculator_failed(
    page: Page, site: Path, places: dict[str, str], troubles: list[str]
) -> None:
    gone = server.Answer(404, b"gone", {"Content-Type": "text/plain"})
    with server.serving(site, interfere=lambda path: gone if "/worker.js" in path else None) as broken:
        page.goto(broken.url + places["stored-heat"])
        expect(page.get_by_role("button", name="Try again").first).to_be_visible()
        assert_accessible(page, "failed")
    troubles.clear()


def test_axe_finds_nothing_about_a_link_with_mistakes(live: Live) -> None:
    with live("stored-heat", "#v2;stored-heat;store_volume=640gal;goats=3", viewport=SIZES["phone"]) as reader:
        expect(reader.slot("link")).to_be_visible()
        assert_accessible(reader.page, "link")
        assert_nothing_beyond_the_edge(reader.page, "link")


def assert_nothing_beyond_the_edge(page: Page, where: str) -> None:
    """The page does not scroll sideways; the error names what sticks out."""
    wide, names = page.evaluate(
        """() => [document.documentElement.scrollWidth - innerWidth, [...document.querySelectorAll("body *")]
          .filter((element) => element.checkVisibility() && element.getBoundingClientRect().right > innerWidth + 1)
          .map((element) => `${element.tagName}.${element.getAttribute("class")}: ${element.textContent.trim().slice(0, 40)}`)
          .slice(0, 6)]"""
    )
    assert wide <= 0, f"{where}: {names}"


def all_pages(site: Path) -> list[str]:
    return [path.relative_to(site).as_posix().removesuffix("index.html") for path in sorted(site.rglob("*.html"))]


def different_pages(site: Path) -> list[str]:
    """All but most of those that other websites frame: what stands in them stands in a guide as well."""
    pages = all_pages(site)
    framed = [address for address in pages if address.startswith("embed/")]
    return [address for address in pages if address not in framed[3:]]


def test_no_page_scrolls_sideways_at_320(visiting: Visiting, served: server.Site, site: Path) -> None:
    """As built, with everything unfolded, in both unit systems. (Without our scripts: Python need not start for this.)"""
    with visiting([], viewport=SIZES["phone"]) as page:
        page.route("**/assets/js*/*.js", lambda route: route.fulfill(body="", content_type="text/javascript"))
        for address in different_pages(site):
            page.goto(served.url + address)
            page.evaluate(UNFOLD)
            for units in ("us", "si"):
                page.evaluate("units => { document.documentElement.dataset.units = units; }", units)
                assert_nothing_beyond_the_edge(page, f"{address} in {units} units")


@pytest.mark.long
@pytest.mark.parametrize("size", SIZES)
def test_axe_finds_nothing_on_any_page(visiting: Visiting, served: server.Site, site: Path, size: str) -> None:
    """With everything unfolded, in both colour schemes, of which the second only has other colours. (As Python starts.)"""
    result = {}
    with visiting([], viewport=SIZES[size]) as page:
        page.route("**/assets/python/**", lambda _: None)
        for address in different_pages(site):
            page.goto(served.url + address)
            page.locator("html[data-header=live]").wait_for()
            page.evaluate(UNFOLD)
            for scheme, rules in SCHEMES.items():
                page.emulate_media(color_scheme=scheme)
                if said := violations(page, rules):
                    result[f"{address or 'home'}, {scheme}"] = said
    assert result == {}, json.dumps(result, indent=1)


FOCUSED = """() => {
  const element = document.activeElement;
  if (!element || element === document.body) return null;
  const target = element.matches("input[type=checkbox]") ? element.closest("label") ?? element : element;
  const box = target.getBoundingClientRect();
  const at = document.elementFromPoint(box.left + Math.min(box.width / 2, 40), box.top + Math.min(box.height / 2, 40));
  return {
    name: element.name || element.textContent.trim().slice(0, 40) || element.className,
    seen: at !== null && (target.contains(at) || at.contains(target)),
    ring: getComputedStyle(element).outlineStyle !== "none" || getComputedStyle(target).outlineStyle !== "none",
  };
}"""


STOPS_AHEAD = """() => [...document.querySelectorAll("a[href], button, input, select, textarea, summary")]
  .filter((element) => element.checkVisibility({ visibilityProperty: true }) && !element.disabled)
  .filter((element) => document.activeElement.compareDocumentPosition(element) & Node.DOCUMENT_POSITION_FOLLOWING).length"""


@pytest.mark.parametrize("size", SIZES)
def test_every_stop_of_the_keyboard_is_in_sight(at: At, size: str) -> None:
    """Neither the header nor the plate's bar lies over what has the focus, forwards or backwards."""
    reader = at("stored-heat", size)
    page = reader.page
    page.evaluate("document.querySelector('#stored-heat').scrollIntoView()")
    reader.box("store_volume").focus()
    # As far as 30 stops, and not beyond the last of the page, where the focus goes to the browser.
    stops = min(30, page.evaluate(STOPS_AHEAD) - 3)
    assert stops > 15
    for key in ["Tab"] * stops + ["Shift+Tab"] * stops:
        page.keyboard.press(key)
        page.wait_for_timeout(20)
        focused = page.evaluate(FOCUSED)
        assert focused and focused["seen"] and focused["ring"], f"{key}: {focused}"


def test_a_worksheet_by_keyboard_alone(live: Live) -> None:
    with live("stored-heat", viewport=SIZES["desktop"], permissions=["clipboard-read", "clipboard-write"]) as reader:
        page = reader.page

        def go_to(name: str) -> None:
            for _ in range(120):
                page.keyboard.press("Tab")
                if page.evaluate(
                    "name => (document.activeElement.name || document.activeElement.textContent).includes(name)", name
                ):
                    return
            raise AssertionError(f"{name} cannot be reached")

        go_to("SI")
        page.keyboard.press("Enter")
        reader.wait()
        go_to("store_volume")
        page.keyboard.press("Control+A")
        page.keyboard.type("2 m3 or so")
        page.keyboard.press("Enter")
        reader.wait()
        assert len(reader.errors()) == 1
        reader.slot("errors").focus()
        page.keyboard.press("Tab")
        page.keyboard.press("Enter")
        expect(reader.box("store_volume")).to_be_focused()
        page.keyboard.press("Control+A")
        page.keyboard.type("2 m3")
        go_to("")  # whatever comes next
        reader.wait()
        assert reader.state == "ready"
        expect(reader.unknown("cold_water")).to_be_checked()
        go_to("change")  # the line under which the other boxes are folded
        page.keyboard.press("Enter")
        reader.unknown("cold_water").focus()
        page.keyboard.press("Space")
        reader.wait()
        expect(reader.unknown("cold_water")).not_to_be_checked()
        expect(reader.box("cold_water")).to_be_focused()
        go_to("Show how: working, limits, sources, spreadsheet")
        page.keyboard.press("Enter")
        expect(reader.slot("working")).to_be_visible()
        go_to("Copy a link")
        page.keyboard.press("Enter")
        expect(reader.slot("said")).to_have_text("The link is copied. It holds these numbers.")


def test_what_is_told_is_heard(at: At) -> None:
    """The parts that change while the reader is elsewhere are live regions; boxes name what belongs to them."""
    reader = at("stored-heat")
    expect(reader.slot("status")).to_have_attribute("role", "status")
    expect(reader.slot("said")).to_have_attribute("role", "status")
    assert reader.sheet.locator("output.ss-figure").count() == 1
    reader.type("store_volume", "some")
    box = reader.box("store_volume")
    described = str(box.get_attribute("aria-describedby")).split()
    assert all(reader.page.locator(f"#{name}").count() == 1 for name in described)
    assert "stored-heat-store_volume-error" in described
    expect(reader.page.get_by_label("Store volume", exact=True).first).to_have_attribute("aria-invalid", "true")


def test_paper_gets_everything_unfolded(at: At) -> None:
    reader = at("stored-heat")
    folds = reader.page.locator("main details")
    reader.sheet.locator("details").last.evaluate("details => { details.open = true; }")
    # A fold is known by its place: what its line says follows the numbers.
    unfolded = "all => all.filter((fold) => fold.open).map((fold) => [fold.closest('[id]').id, fold.className])"
    before = folds.evaluate_all(unfolded)
    assert before
    reader.page.evaluate("dispatchEvent(new Event('beforeprint'))")
    assert all(folds.evaluate_all("all => all.map((fold) => fold.open)"))
    reader.type("store_volume", "650")  # an answer that comes meanwhile fills its parts anew, and brings folds
    reader.wait()
    reader.page.evaluate("dispatchEvent(new Event('afterprint'))")
    assert folds.evaluate_all(unfolded) == before


def search_workers(served: server.Site) -> list[str]:
    """Each time that the theme's own search worker was asked for."""
    return [asked.path for asked in served.requests if "/javascripts/workers/search." in asked.path]


@pytest.mark.parametrize("size", ["A4", "Letter"])
def test_what_is_filled_in_by_hand_is_printed_to_be_hung_up(visiting: Visiting, served: server.Site, size: str) -> None:
    """The calendar is three sheets, the handover sheet is one, and there is room to write in both."""
    with visiting([]) as page:
        page.goto(f"{served.url}guides/service/")
        calendar = Paper(page.pdf(format=size))
        page.goto(f"{served.url}guides/water/")
        handover = Paper(page.pdf(format=size)).pages[-1]
        page.emulate_media(media="print")
        room = page.locator("td:empty").evaluate_all("cells => Math.min(...cells.map((cell) => cell.offsetWidth))")
    assert len(calendar.pages) == 3
    assert "Last done on" in calendar.pages[-1]
    assert handover.lstrip().startswith("The handover sheet")
    assert "Who to call" in handover
    assert "What next" not in calendar.text + handover
    assert room >= 120  # pixels of 1/96 inch: a date, or a name


@pytest.mark.parametrize("size", SIZES)
def test_the_header_by_keyboard(visiting: Visiting, served: server.Site, places: dict[str, str], size: str) -> None:
    with visiting([], viewport=SIZES[size]) as page:
        page.goto(served.url + places["stored-heat"])
        page.locator("html[data-header=live]").wait_for()
        if size == "phone":
            drawer = page.get_by_role("button", name="All pages")
            drawer.focus()
            page.keyboard.press("Enter")
            expect(drawer).to_have_attribute("aria-expanded", "true")
            expect(page.locator(".ss-nav-close")).to_be_focused()
            page.keyboard.press("Escape")
            expect(drawer).to_have_attribute("aria-expanded", "false")
            expect(drawer).to_be_focused()
            page.get_by_role("button", name="Search", exact=True).focus()
            page.keyboard.press("Enter")
        else:
            page.keyboard.press("/")
        words = page.get_by_role("textbox", name="Search words")
        expect(words).to_be_focused()
        read = len(search_workers(served))
        page.keyboard.type("tank")
        expect(page.locator(".md-search-result__item").first).to_be_visible()
        assert len(search_workers(served)) == read + 1, "the index is read at the first question, not before"
        page.keyboard.press("Escape")
        expect(page.locator(".md-search-result__item").first).to_be_hidden()
