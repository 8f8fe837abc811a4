"""The first screen of a guide shows its question, the answer and the first boxes; and no guide is endless, whoever reads it."""

from __future__ import annotations

import json
from typing import Any

import pytest
from playwright.sync_api import expect

import server
from calc.answer import Reader, answer_plan
from calc.engine.offering import flowing
from calc.engine.plan import Entries, Entry
from calc.vocabulary import BY_KEY
from calc.worksheets import WORKSHEETS
from render.plan import entry_for_page
from tests.browser.conftest import Visiting
from tests.browser.test_first_sketch import AS_TYPED

pytestmark = pytest.mark.browser

PHONE = {"width": 390, "height": 844}
DESKTOP = {"width": 1280, "height": 800}
FARMHOUSE = AS_TYPED | {"fuel": "oil", "method": "fuel", "start_from": "bill"}
MOST_SCREENS = 12  # of a phone, before anything is unfolded
FIRST_BOXES = 3  # in sight without scrolling, above the bar with the answer

MEASURE = """() => {
  const sheet = document.querySelector(".ss-sheet");
  const inside = (element, bottom) => {
    const box = element.getBoundingClientRect();
    return box.height > 0 && box.top >= 0 && box.bottom <= bottom;
  };
  const plate = sheet?.querySelector(".ss-plate");
  const narrow = innerWidth < 720;
  const end = narrow && plate ? plate.getBoundingClientRect().top : innerHeight;
  return {
    question: inside(document.querySelector("h1"), innerHeight),
    answer: plate && [".ss-figure", ".ss-plate-verdict", ".ss-plate-flag"]
      .every((part) => inside(plate.querySelector(part), innerHeight)),
    named: plate?.querySelector(".ss-plate-flag").textContent.startsWith("Worked example: "),
    boxes: sheet && [...sheet.querySelectorAll(".ss-fields :is(input:not([type=checkbox]), select)")]
      .filter((box) => inside(box, end)).length,
    screens: document.documentElement.scrollHeight / innerHeight,
  };
}"""


def guides_of(places: dict[str, str]) -> list[str]:
    """The guides that have worksheets. The start asks with buttons: `test_first_sketch.py` holds its first screen."""
    return sorted({address for address in places.values() if address.startswith("guides/")})


def measured(visiting: Visiting, served: server.Site, addresses: list[str], size: Any) -> dict[str, dict[str, Any]]:
    """What the first screen of each address shows, and how many screens it has."""
    result = {}
    with visiting([], viewport=size) as page:
        for address in addresses:
            page.goto(served.url + address)
            result[address] = page.evaluate(MEASURE)
    return result


@pytest.mark.parametrize("size", [PHONE, DESKTOP], ids=["phone", "desktop"])
def test_a_guide_begins_with_question_answer_and_boxes(
    visiting: Visiting, served: server.Site, places: dict[str, str], size: Any
) -> None:
    result = measured(visiting, served, guides_of(places), size)
    assert len(result) > 15
    wrong = {
        address: first
        for address, first in result.items()
        if not (first["question"] and first["answer"] and first["named"]) or first["boxes"] < FIRST_BOXES
    }
    assert not wrong


def test_no_guide_is_longer_than_twelve_phone_screens(visiting: Visiting, served: server.Site, site: Any) -> None:
    guides = [f"{path.parent.relative_to(site).as_posix()}/" for path in sorted(site.glob("guides/*/index.html"))]
    result = measured(visiting, served, guides, PHONE)
    assert len(result) > 20
    longer = {
        address: round(first["screens"], 1) for address, first in result.items() if first["screens"] > MOST_SCREENS
    }
    assert not longer


@pytest.mark.long
def test_no_guide_is_longer_with_a_reader_s_numbers(visiting: Visiting, served: server.Site, site: Any) -> None:
    """All that the start gives: the leaky farmhouse, with what was worked out of it."""
    entries = Entries({key: Entry(text, "typed") for key, text in FARMHOUSE.items()}, Reader())
    flow = flowing(answer_plan(WORKSHEETS["first-sketch"], entries, "us"), entries, WORKSHEETS, BY_KEY, new=True)
    plan = {key: entry_for_page(entry) for key, entry in {**entries, **flow}.items()}
    assert {"design_load", "altitude", "degree_days", "lowest_useful"} <= flow.keys()
    longer = {}
    with visiting([], viewport=PHONE) as page:
        page.add_init_script(f"localStorage.setItem('stoke-and-store.plan', {json.dumps(json.dumps(plan))});")
        for path in sorted(site.glob("guides/*/index.html")):
            page.goto(f"{served.url}guides/{path.parent.name}/")
            expect(page.locator(".ss-fields :disabled, .ss-sheet[data-busy]")).to_have_count(0)
            screens = page.evaluate("document.documentElement.scrollHeight / innerHeight")
            if screens > MOST_SCREENS:
                longer[path.parent.name] = round(screens, 1)
    assert not longer


@pytest.mark.parametrize("size", [PHONE, DESKTOP], ids=["phone", "desktop"])
def test_a_worksheet_opens_with_five_boxes_and_a_choice_at_most(
    visiting: Visiting, served: server.Site, places: dict[str, str], size: Any
) -> None:
    count = """() => Object.fromEntries([...document.querySelectorAll(".ss-sheet")].map((sheet) => [
      sheet.dataset.worksheet,
      [...sheet.querySelectorAll(".ss-fields > .ss-field:not([hidden])")].length,
    ]))"""
    with visiting([], viewport=size) as page:
        for address in guides_of(places):
            page.goto(served.url + address)
            assert {key: boxes for key, boxes in page.evaluate(count).items() if not 1 <= boxes <= 6} == {}
