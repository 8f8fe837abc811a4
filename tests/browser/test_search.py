"""The words that people bring find the page that answers them, and guides stand before lists."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

import server
from tests.browser.conftest import Visiting

# What somebody types, and the page that has to come first, or either of two that answer it: everyday words, then what is
# asked in the course of a long talk, in whole questions or in the words that somebody half remembers.
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
    # A long talk.
    "does the coil go before or after the air conditioner": "guides/ducts",
    "plenum": "guides/ducts",
    "clogged filter": "guides/ducts",
    "static pressure": "guides/ducts",
    "blower blows cold air": "guides/(ducts|faults|air)",
    "tanks side by side": "guides/(tanks|piping)",
    "reverse return": "guides/tanks",
    "storms knock out our electricity": "guides/(safety|dump|controls)",
    "battery backup for the pump": "guides/(controls|safety)",
    "who heats while I am away": "guides/antifreeze",
    "will it freeze while we travel": "guides/antifreeze",
    "can I weld my own tank": "guides/second-hand",
    "old propane tank": "guides/second-hand",
    "used milk tank": "guides/second-hand",
    "water is brown": "guides/(faults|water)",
    "rusty": "guides/(water|faults)",
    "valve keeps dripping": "guides/faults",
    "smoke comes into the room": "guides/(faults|stove)",
    "stove bangs": "guides/faults",
    "tar": "guides/(stove|faults|firing)",
    "black glass": "guides/faults",
    "bedroom stays cold": "guides/faults",
    "shower runs cold": "guides/(taps|faults)",
    "scald": "guides/taps",
    "legionella": "guides/taps",
    "how heavy is a full tank": "guides/storage",
    "does it fit through the door": "guides/(storage|tanks)",
    "can it go in the garage": "guides/(storage|another-building|slab)",
    "how thick insulation around the tank": "guides/storage",
    "how do I size the expansion vessel": "guides/open-or-pressurised",
    "pressure tank or open tank": "guides/open-or-pressurised",
    "is it dangerous": "guides/safety",
    "can it explode": "guides/safety",
    "do I need a permit": "guides/law",
    "home insurance": "guides/law",
    "warranty": "guides/choosing",
    "how do I find an installer": "guides/choosing",
    "compare two quotes": "guides/choosing",
    "what do I ask the salesman": "guides/choosing",
    "fireplace insert": "guides/choosing",
    "wood stove insert": "guides/choosing",
    "can I get a loan": "guides/cost",
    "tax credit": "guides/cost",
    "rebates": "guides/cost",
    "is it worth it": "guides/cost",
    "cheaper than propane": "guides/cost",
    "how many cords per winter": "guides/wood",
    "green wood": "guides/wood",
    "pine or oak": "guides/wood",
    "do I have to get up at night": "guides/(firing|winter)",
    "how long does a full tank last": "guides/(storage|firing)",
    "can I bake in it": "guides/(stove|questions|choosing)",
    "will my kitchen get too hot": "guides/room",
    "does it work with radiators from 1950": "guides/emitters",
    "cast iron radiators": "guides/emitters",
    "how warm can a wood floor get": "guides/emitters",
    "summer hot water": "guides/(other-heat|taps|antifreeze)",
    "electric element": "guides/other-heat",
    "night rate electricity": "guides/other-heat",
    "solar": "guides/other-heat",
    "thermostat setting": "guides/controls",
    "where do sensors go": "guides/controls",
    "wiring diagram": "guides/controls",
    "yearly maintenance": "guides/service",
    "chimney sweep": "guides/service",
    "when do I change the door gasket": "guides/service",
    "checklist": "guides/service",
    "water softener": "guides/water",
    "flush the system": "guides/water",
    "handover": "guides/water",
    "air in the pipes": "guides/(faults|water|pipes)",
    "what size copper pipe": "guides/pipes",
    "pump noise": "guides/(pipes|faults)",
    "run without electricity": "guides/(pipes|dump|safety)",
    "stove in the shed": "guides/another-building",
    "underground pipe": "guides/another-building",
    "keep the oil furnace as backup": "guides/existing-boiler",
    "how cold does it get here": "guides/(house|winter)",
    "drafty old house": "guides/house",
    "coldest night": "guides/(winter|firing|house|storage)",
    "boiling": "guides/safety",
    "radiator as heat dump": "guides/dump",
    "can I put a valve on the dump": "guides/dump",
    "concrete floor as heat storage": "guides/slab",
    "what will it cost me": "guides/cost",
}


@pytest.fixture(scope="module")
def searching(visiting: Visiting, served: server.Site) -> Iterator[Page]:
    """The home page with its search open, the same for every question: reading the index takes its time."""
    with visiting([]) as page:
        page.goto(served.url)
        page.locator("html[data-header=live]").wait_for()
        page.keyboard.press("/")
        yield page


@pytest.mark.parametrize("broken", [b"gone", b'{"docs": ['])
@pytest.mark.parametrize("name", ["search_index", "every_page"])
def test_a_search_without_its_index_says_so(
    page: Page, site: Path, troubles: list[str], name: str, broken: bytes
) -> None:
    wrong = server.Answer(200 if broken[:1] == b"{" else 404, broken, {"Content-Type": "application/json"})
    with server.serving(site, interfere=lambda path: wrong if name in path else None) as crippled:
        page.goto(crippled.url)
        page.locator("html[data-header=live]").wait_for()
        page.keyboard.press("/")
        expect(page.locator(".md-search-result__meta")).to_contain_text("did not arrive")
    troubles.clear()


def test_everyday_words_and_questions_find_their_page(searching: Page) -> None:
    """All in one go, since each takes half a second: those that miss are told together."""
    assert len(ASKED) >= 120
    box = searching.get_by_role("textbox", name="Search words")
    box.fill("")  # what another question has left there
    box.press_sequentially("store")
    searching.locator(".md-search-result__link").first.wait_for()
    searching.evaluate(COUNT_ANSWERS)
    missed = {}
    for question, wanted in ASKED.items():
        answered = searching.evaluate("answers")
        box.fill(question)
        box.press("End")  # the search listens to keys
        searching.wait_for_function("before => answers > before", arg=answered)
        first = searching.locator(".md-search-result__link").first.evaluate("link => link.pathname")
        if not re.search(f"/{wanted}/$", first):
            missed[question] = first
    assert missed == {}


COUNT_ANSWERS = """() => {
  window.answers = 0;
  const list = document.querySelector(".md-search-result__list");
  new MutationObserver(() => window.answers++).observe(list, { childList: true });
}"""


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
