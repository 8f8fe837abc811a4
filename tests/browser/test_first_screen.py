"""The first screen of a guide shows its question, the answer and the first boxes; and no guide is endless, whoever reads it."""

from __future__ import annotations

import functools
import json
from collections.abc import Callable
from pathlib import Path
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
FIRST_SCREENS = {"phone": PHONE, "desktop": DESKTOP}
First = dict[str, dict[str, Any]]  # of each guide
FARMHOUSE = AS_TYPED | {"method": "fuel", "start_from": "bill"}
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
    opened: Object.fromEntries([...document.querySelectorAll(".ss-sheet")].map((each) => [
      each.dataset.worksheet,
      [...each.querySelectorAll(".ss-fields > .ss-field:not([hidden])")].length,
    ])),
  };
}"""


@pytest.fixture(scope="module")
def measured(visiting: Visiting, served: server.Site, site: Path) -> Callable[[str], First]:
    """What each guide shows first, before Python is there: which need not come for this."""

    @functools.cache
    def at(size: str) -> First:
        result = {}
        with visiting([], viewport=FIRST_SCREENS[size]) as page:
            page.route("**/worker.js", lambda route: route.fulfill(body="", content_type="text/javascript"))
            for path in sorted(site.glob("guides/*/index.html")):
                page.goto(f"{served.url}guides/{path.parent.name}/")
                result[path.parent.name] = page.evaluate(MEASURE)
        assert len(result) > 20
        return result

    return at


@pytest.fixture(params=FIRST_SCREENS)
def first_screens(request: pytest.FixtureRequest, measured: Callable[[str], First]) -> First:
    return measured(request.param)


def test_a_guide_begins_with_question_answer_and_boxes(first_screens: First) -> None:
    """The start asks with buttons: `test_first_sketch.py` holds its first screen."""
    with_sheets = {name: first for name, first in first_screens.items() if first["opened"]}
    assert len(with_sheets) > 15
    wrong = {
        name: first
        for name, first in with_sheets.items()
        if not (first["question"] and first["answer"] and first["named"]) or first["boxes"] < FIRST_BOXES
    }
    assert not wrong


def test_a_worksheet_opens_with_five_boxes_and_a_choice_at_most(first_screens: First) -> None:
    opened = {key: boxes for first in first_screens.values() for key, boxes in first["opened"].items()}
    assert opened
    assert {key: boxes for key, boxes in opened.items() if not 1 <= boxes <= 6} == {}


def test_no_guide_is_longer_than_twelve_phone_screens(measured: Callable[[str], First]) -> None:
    most = {name: first["screens"] for name, first in measured("phone").items()}
    assert {name: round(screens, 1) for name, screens in most.items() if screens > MOST_SCREENS} == {}


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
def test_the_picture_of_the_home_page_stands_by_its_words(
    visiting: Visiting, served: server.Site, size: dict[str, int]
) -> None:
    with visiting([], viewport=size) as page:
        page.goto(served.url)
        picture, words = (page.locator(part).bounding_box() for part in (".sv-two", ".sv-two + p, :has(> .sv-two) + p"))
        below = page.get_by_role("heading", name="The job in one minute").bounding_box()
        start = page.locator(".ss-start").bounding_box()
        assert picture and words and below and start
        assert 0 <= words["y"] - (picture["y"] + picture["height"]) < 60
        last = max(box["y"] + box["height"] for box in (words, start))
        assert 0 <= below["y"] - last < 120
