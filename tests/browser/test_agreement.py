"""On edits made at random, the page says what the command line says."""

from __future__ import annotations

import random
from collections.abc import Iterator
from typing import Any

import pytest

from calc.answer import Reader, Typed, answer, answer_plan
from calc.chosen import in_whole
from calc.engine.declare import Field
from calc.engine.plan import opened
from calc.engine.sheet import Sheet
from calc.report import as_json
from calc.units import System, grouped, round_to
from calc.worksheets import WORKSHEETS
from render.plan import entries_from
from tests.browser.conftest import At
from tests.browser.reader import plain

pytestmark = pytest.mark.browser

ODD = ["", "none", "-1", "1e400", "1,234", "1½", "12 apples", "−3", "10²"]
ORDINARY = ("stored-heat", "tank-size", "house-load", "emitter-temperature")

# Makes each edit as a reader does, waits for the answer, and notes what the page then says.
MAKE_EDITS = """async ([worksheet, edits]) => {
  const sheet = document.getElementById(worksheet);
  const words = (selector) => [...sheet.querySelectorAll(selector)].map((element) => element.textContent);
  const said = [];
  const answered = async () => {
    const until = Date.now() + 60_000;
    while ("busy" in sheet.dataset && Date.now() < until) await new Promise((done) => setTimeout(done, 2));
  };
  for (const { units, key, text } of edits) {
    document.querySelector(`[data-ss-units=${units}]`).click();
    await answered(); // what is typed is meant in the units that the label shows
    const box = sheet.querySelector(`.ss-field[data-key=${key}] :is(input:not([type=checkbox]), select)`);
    const folded = box.closest("details");
    if (folded) folded.open = true;
    const { hidden } = box.closest(".ss-field");
    box.focus();
    box.value = text;
    box.dispatchEvent(new Event("input", { bubbles: true }));
    box.blur();
    await answered();
    said.push({
      hidden,
      state: sheet.dataset.state,
      figure: words(".ss-figure")[0],
      rough: sheet.querySelector(".ss-plate [data-ss-bring=assumed]") !== null,
      errors: words("[data-slot=errors]:not([hidden]) li"),
      results: [...sheet.querySelectorAll("tr[data-result]")].map((row) => [row.dataset.result, row.querySelector("td").textContent]),
      advice: words("[data-slot=verdict], [data-slot=advice]").join(" "),
      shown: [...sheet.querySelectorAll(".ss-field:not([hidden])")].map((field) => field.dataset.key),
      box: box.value,
      plan: JSON.parse(localStorage.getItem("stoke-and-store.plan") ?? "{}"),
    });
  }
  return said;
}"""


def some_text(field: Field, system: System, chance: random.Random) -> str:
    """A text that a reader might type: mostly a value in range, in several spellings, sometimes one that is none."""
    if field.kind == "choice":
        return chance.choice(field.options).value
    if chance.random() < 0.15:
        return chance.choice(ODD)
    low, high = field.low_si, field.high_si
    value = low * (high / low) ** chance.random() if low > 0 else low + (high - low) * chance.random()
    unit = field.unit(system)
    digits = round_to(unit.from_si(value), chance.randint(2, 4))
    text = grouped(digits, "us") if system == "us" and chance.random() < 0.5 else digits
    return f"{text} {unit.ascii}" if chance.random() < 0.3 else text


def some_edits(worksheet: str, count: int) -> Iterator[tuple[dict[str, str], Sheet, dict[str, Typed]]]:
    """Edits one after the other, each with what the desktop says once it was made, and all that was typed so far."""
    chance = random.Random(f"edits of {worksheet}")
    system: System = "us"
    given: dict[str, Typed] = {}
    sheet = answer(worksheet, given, system)
    for _ in range(count):
        if chance.random() < 0.15:
            system = "si" if system == "us" else "us"
        field = chance.choice(sheet.course.fields)
        text = some_text(field, system, chance)
        if field.optional and not text:
            given.pop(field.key, None)
        else:
            given[field.key] = Typed(text, system)
        sheet = answer(worksheet, given, system)
        yield {"units": system, "key": WORKSHEETS[worksheet].plan_key(field.key), "text": text}, sheet, dict(given)


def assert_agreement(at: At, worksheet: str, count: int) -> None:
    reader = at(worksheet)
    edits, sheets, typed = zip(*some_edits(worksheet, count), strict=True)
    pages = reader.page.evaluate(MAKE_EDITS, [worksheet, edits])
    unseen: set[str] = set()  # what no reader could type: what flowed back hid the box, and its label changed no more
    for edit, sheet, given, page in zip(edits, sheets, typed, pages, strict=True):
        # Results flow into the plan, and what other worksheets of the page make of them flows back.
        entries = opened(entries_from(page.pop("plan"), Reader()))
        plan_keys = {key: WORKSHEETS[worksheet].plan_key(key) for key in given}
        there = {key: entries[plan_key] for key, plan_key in plan_keys.items() if plan_key in entries}
        unseen = unseen | {edit["key"]} if page.pop("hidden") else unseen - {edit["key"]}
        seen = {key for key, plan_key in plan_keys.items() if plan_key not in unseen}
        assert {key: entry.text for key, entry in there.items()} == {key: text.text for key, text in given.items()}
        kept = {key: there[key].system for key in seen}
        assert kept == {key: given[key].system for key in seen}, f"{worksheet} after {edit}"
        whole, taken = in_whole(WORKSHEETS[worksheet], entries)
        asked = answer_plan(WORKSHEETS[worksheet], whole, edit["units"], taken) if entries else sheet
        assert page == expected(asked, page), f"{worksheet} after {edit}"
        if edit["text"]:
            assert page["box"] == edit["text"]


def expected(sheet: Sheet, page: dict[str, Any]) -> dict[str, Any]:
    """What the page has to say; `page` gives back what is not compared."""
    said = as_json(sheet)
    fields = {"shown": page["shown"], "box": page["box"]}
    assert set(page["shown"]) == {sheet.worksheet.plan_key(field.key) for field in sheet.course.fields}
    if sheet.problems:
        told = {"state": "wrong", "figure": "No result yet", "errors": [error["text"] for error in said["errors"]]}
        return page | told | fields | {"rough": False}
    page["figure"] = plain(page["figure"])
    page["results"] = sorted([key, plain(text)] for key, text in page["results"])  # the lesser ones stand in a fold
    for advice in said["advice"]:
        if advice["code"] == "rough" and sheet.worksheet.outlook:
            continue  # its own screen tells what was assumed, each with what it moves
        assert plain(advice["text"]) in plain(page["advice"])
    return {
        "state": "ready",
        "figure": plain(said["headline"]),
        "rough": said["rough"],
        "errors": [],
        "results": sorted([key, plain(result["shown"])] for key, result in said["results"].items()),
        "advice": page["advice"],
        **fields,
    }


@pytest.mark.parametrize("worksheet", ORDINARY)
def test_the_page_says_what_the_command_line_says(at: At, worksheet: str) -> None:
    assert_agreement(at, worksheet, 50)


@pytest.mark.long
@pytest.mark.parametrize("worksheet", [key for key in WORKSHEETS if key not in ORDINARY])
def test_every_other_worksheet_too(at: At, worksheet: str) -> None:
    assert_agreement(at, worksheet, 50)
