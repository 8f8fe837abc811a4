"""A reader at a worksheet: what a test does to its boxes and sees of it."""

from __future__ import annotations

import contextlib
import re
from collections.abc import Mapping

from playwright.sync_api import Error, Locator, Page, ViewportSize, Worker, expect

from calc.answer import Typed, answer
from calc.engine.sheet import Sheet
from calc.report import as_json
from calc.units import System
from calc.worksheets import WORKSHEETS

SIZES: dict[str, ViewportSize] = {
    "desktop": {"width": 1280, "height": 800},
    "phone": {"width": 320, "height": 640},
}

NOT_YET = re.compile("^(Getting the calculator ready|The calculator starts)")

# Asked in the page: an answer takes 20 ms, and who looks from outside looks again after 100.
UNTIL_ANSWERED = """async () => {
  const until = Date.now() + 60_000;
  const wait = () => new Promise((done) => setTimeout(done, 4));
  while (document.querySelector(".ss-sheet[data-busy]") && Date.now() < until) await wait();
}"""

# Looked at and pressed in one breath: a link that is read in between opens the worksheet, and its button is gone.
OPEN = "sheet => { if ('closed' in sheet.dataset) sheet.querySelector('[data-ss-open]').click(); }"


class Reader:
    """One worksheet of a page."""

    def __init__(self, page: Page, worksheet: str) -> None:
        self.page = page
        self.worksheet = worksheet
        self.sheet = page.locator(f"#{worksheet}")

    def wait_until_live(self) -> None:
        """Until Python is ready and has answered what it was asked."""
        expect(self.slot("status")).not_to_have_text(NOT_YET)
        expect(self.sheet.locator(".ss-fields :disabled")).to_have_count(0)
        self.wait()
        self.open()

    def open(self) -> None:
        """Open a worksheet that shows its question and its answer alone, unless the page has just done so by itself."""
        self.sheet.evaluate(OPEN)

    def wait(self) -> None:
        """Until nothing that was asked is still without an answer."""
        with contextlib.suppress(Error):  # the page has gone on to another one
            self.page.evaluate(UNTIL_ANSWERED)
        expect(self.page.locator(".ss-sheet[data-busy]")).to_have_count(0)

    def box(self, key: str) -> Locator:
        """The box of a field, or its list of choices."""
        return self.field(key).locator("input:not([type=checkbox]), select")

    def field(self, key: str) -> Locator:
        """Everything that belongs to a field."""
        kept = WORKSHEETS[self.worksheet].plan_key(key) if self.worksheet in WORKSHEETS else key
        return self.sheet.locator(f".ss-field[data-key={kept}]")

    def unknown(self, key: str) -> Locator:
        """The field's box "I do not know"."""
        return self.field(key).get_by_label("I do not know")

    def type(self, key: str, text: str, leave: bool = True) -> None:
        """Type a text in place of what is in a box (or choose), leave the box, and wait for the answer."""
        box = self.box(key)
        self.unfold(key)
        if box.evaluate("box => box.tagName") == "SELECT":
            box.select_option(text)
        else:
            box.fill(text)
            if leave:
                box.blur()
        self.wait()

    def unfold(self, key: str) -> None:
        """Open the part that a box may be folded into."""
        self.open()
        self.box(key).evaluate("box => { const folded = box.closest('details'); if (folded) folded.open = true; }")

    def show_how(self) -> None:
        """Open the part with working, sources and spreadsheets."""
        self.sheet.locator(".ss-how").evaluate("details => { details.open = true; }")

    def slot(self, name: str) -> Locator:
        """A part of the worksheet that Python fills."""
        return self.sheet.locator(f"[data-slot={name}]")

    @property
    def state(self) -> str | None:
        return self.sheet.get_attribute("data-state")

    @property
    def figure(self) -> str:
        """The headline, with plain spaces."""
        return plain(self.sheet.locator(".ss-figure").inner_text())

    @property
    def status(self) -> str:
        return self.slot("status").inner_text().strip()

    def results(self) -> dict[str, str]:
        """What the table of results says, by key, with plain spaces."""
        element = self.sheet.locator("tr[data-result]").evaluate_all(
            "rows => rows.map((row) => [row.dataset.result, row.querySelector('td').textContent])"
        )
        return {key: plain(text) for key, text in element}

    def errors(self) -> list[str]:
        """The sentences of the summary above the boxes, with plain spaces."""
        if not self.slot("errors").is_visible():
            return []
        return [plain(text) for text in self.slot("errors").locator("li").all_inner_texts()]


def assert_says(reader: Reader, given: Mapping[str, Typed], system: System = "us") -> Sheet:
    """The page says what the desktop says for the same texts: results, advice, notes on guesses, or every mistake."""
    sheet = answer(reader.worksheet, given, system)
    said = as_json(sheet)
    shown = reader.sheet.inner_text()
    assert "Traceback" not in shown
    if sheet.problems:
        assert reader.state == "wrong"
        assert reader.figure == "No result yet"
        assert reader.errors() == [plain(error["text"]) for error in said["errors"]]
        return sheet
    assert reader.state == "ready"
    assert reader.figure == plain(said["headline"])
    assert reader.results() == {key: plain(result["shown"]) for key, result in said["results"].items()}
    advice = plain(" ".join(reader.sheet.locator("[data-slot=verdict], [data-slot=advice]").all_text_contents()))
    for entry in said["advice"]:
        assert plain(entry["text"]) in advice
    assert (reader.sheet.locator(".ss-plate [data-ss-bring=assumed]").count() == 1) == said["rough"]
    return sheet


def plain(text: str) -> str:
    """A text with every kind of space as a plain one."""
    return " ".join(text.split())


def calculators(page: Page) -> list[Worker]:
    """The workers in which our Python runs; the theme has one of its own for the search."""
    return [worker for worker in page.workers if worker.url.endswith("/worker.js")]
