"""The words that people bring find the page that answers them, and guides stand before lists."""

import re
from collections.abc import Iterator

import pytest
from playwright.sync_api import Page, expect

import server
from tests.browser.conftest import Visiting

# What somebody types, and the page that has to come first, or either of two that answer it.
ASKED = {
    "power cut": "guides/safety",
    "power outage": "guides/safety",
    "blackout": "guides/safety",
    "what if the power fails": "guides/(safety|dump)",
    "relief valve": "guides/(safety|faults)",
    "carbon monoxide": "guides/safety",
    "generator": "guides/safety",
    "furnace": "guides/existing-boiler",
    "oil tank": "guides/existing-boiler",
    "keep my oil boiler": "guides/existing-boiler",
    "dealer": "dealers",
    "price": "guides/cost",
    "oil price": "guides/cost",
    "payback": "guides/cost",
    "insurance": "guides/law",
    "permit": "guides/law",
    "radiators": "guides/emitters",
    "baseboard": "guides/emitters",
    "underfloor heating": "guides/emitters",
    "forced air": "guides/air",
    "ducts": "guides/air",
    "hot water": "guides/taps",
    "shower": "guides/taps",
    "chimney": "guides/(stove|service)",
    "creosote": "guides/stove",
    "sauna": "guides/room",
    "stove room too hot": "guides/room",
    "tank size": "guides/(storage|tanks)",
    "how many gallons": "guides/storage",
    "buffer tank": "guides/storage",
    "how often to light": "guides/firing",
    "burn time": "guides/firing",
    "cords": "guides/wood",
    "wet wood": "guides/wood",
    "firewood": "guides/wood",
    "insulation": "guides/house",
    "heat loss": "guides/house",
    "pump": "guides/pipes",
    "PEX": "guides/pipes",
    "thermosiphon": "guides/(pipes|dump)",
    "glycol": "guides/antifreeze",
    "vacation": "guides/antifreeze",
    "expansion tank": "guides/open-or-pressurised",
    "barn": "guides/another-building",
    "trench": "guides/another-building",
    "diagram": "guides/(piping|controls)",
    "concrete slab": "guides/slab",
    "hard water": "guides/water",
    "solar panels": "guides/other-heat",
    "heat pump": "guides/other-heat",
    "two tanks": "guides/tanks",
    "heat dump": "guides/dump",
    "start": "start",
    "first fire": "guides/water",
}


@pytest.fixture(scope="module")
def searching(visiting: Visiting, served: server.Site) -> Iterator[Page]:
    """The home page with its search open, the same for every question: reading the index takes its time."""
    with visiting([]) as page:
        page.goto(served.url)
        page.locator("html[data-header=live]").wait_for()
        page.keyboard.press("/")
        yield page


@pytest.mark.parametrize("words", ASKED)
def test_everyday_words_find_their_page(searching: Page, served: server.Site, words: str) -> None:
    box = searching.get_by_role("textbox", name="Search words")
    box.fill("")
    box.press_sequentially(words)
    address = re.compile(re.escape(served.url) + ASKED[words] + r"/([?#].*)?$")
    expect(searching.locator(".md-search-result__link").first).to_have_attribute("href", address, timeout=10_000)


@pytest.mark.parametrize("words", ["water", "heat", "store", "pressure", "tank"])
def test_guides_stand_before_lists(searching: Page, words: str) -> None:
    box = searching.get_by_role("textbox", name="Search words")
    box.fill("")
    box.press_sequentially(words)
    expect(searching.locator(".md-search-result__link mark").first).to_have_text(re.compile(words, re.IGNORECASE))
    items = searching.locator(".md-search-result__item").evaluate_all(
        "all => all.map((item) => item.querySelector('a').pathname)"
    )
    lists = [place for place, path in enumerate(items) if re.search("/(sources|glossary|evidence|worksheets)/", path)]
    assert not lists or min(lists) > 1, items
