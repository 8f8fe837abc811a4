"""The worker that outlives its page: the next page finds Python running; two pages share it; one that fails is left."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

import server
from calc.answer import Typed, answer
from tests.browser.conftest import Visiting
from tests.browser.reader import Reader, assert_says, plain
from tests.browser.test_failures import GONE, IMPATIENT, Trouble

pytestmark = pytest.mark.browser

WORKER = "/worker.js"
STORAGE = {"store_volume": Typed("650")}


def started(served: server.Site) -> int:
    """How many workers have been started: each asks whether its script is still the same."""
    return sum(request.path.endswith(WORKER) for request in served.requests)


def goes_to(page: Page, served: server.Site, places: dict[str, str], worksheet: str) -> Reader:
    page.goto(served.url + places[worksheet])
    reader = Reader(page, worksheet)
    reader.wait_until_live()
    return reader


def types_and_sees(reader: Reader) -> None:
    reader.type("store_volume", "650")
    assert_says(reader, STORAGE)


def test_from_page_to_page_python_runs_on(visiting: Visiting, asked_anew: Path, places: dict[str, str]) -> None:
    with server.serving(asked_anew) as served, visiting([], lasting=True) as page:
        types_and_sees(goes_to(page, served, places, "stored-heat"))
        goes_to(page, served, places, "firing").type("burn_time", "3")
        for name in ("plan/", "record/", "start/", "dealers/", "embed/stored-heat/"):
            page.goto(served.url + name)
            expect(page.locator("[data-state=ready]:has(> [data-slot=status])").first).to_be_attached()
        page.goto(f"{served.url}glossary/")  # a page without a calculator
        reader = goes_to(page, served, places, "stored-heat")
        assert_says(reader, STORAGE)
        page.go_back()
        page.go_back()
        page.go_forward()
        page.go_forward()
        reader.wait_until_live()
        reader.type("store_top", "170")
        assert_says(reader, STORAGE | {"store_top": Typed("170")})
        assert started(served) == 1


def test_two_pages_share_one_python_and_each_is_answered(
    visiting: Visiting, asked_anew: Path, places: dict[str, str]
) -> None:
    with server.serving(asked_anew) as served, visiting([], lasting=True) as page:
        one = goes_to(page, served, places, "stored-heat")
        other_page = page.context.new_page()
        other = goes_to(other_page, served, places, "standby")
        other.unfold("insulation")
        for inches in ("3", "4", "5"):
            other.box("insulation").fill(inches)
            types_and_sees(one)
        both = {"insulation": Typed("5")} | STORAGE
        wanted = answer("standby", both).headline
        assert wanted
        # What one page keeps the other hears of in its own time.
        expect(other.sheet.locator(".ss-figure")).to_have_text(plain(wanted.shown))
        other.wait()
        assert_says(other, both)
        page.close()
        other.type("insulation", "6")
        assert_says(other, {"insulation": Typed("6")} | STORAGE)
        assert started(served) == 1


def test_another_release_has_another_worker(visiting: Visiting, asked_anew: Path, places: dict[str, str]) -> None:
    early = next(asked_anew.glob("assets/js-*/early.js")).read_text(encoding="utf-8")
    assert early.startswith('const RELEASE = "')
    later = early.replace('const RELEASE = "', 'const RELEASE = "later-', 1).encode()
    update = Trouble({"/early.js": lambda: server.Answer(200, later, {"Content-Type": "text/javascript"})})
    update.cured.set()
    with server.serving(asked_anew, interfere=update) as served, visiting([], lasting=True) as page:
        goes_to(page, served, places, "stored-heat")
        update.cured.clear()
        types_and_sees(goes_to(page, served, places, "stored-heat"))
        assert started(served) == 2


# What becomes of the worker that pages share, and whether that takes the page as long as silence does.
FAULTS = {
    "hangs": "onconnect = () => { for (;;) ; };",
    "is silent": "onconnect = () => {};",
    "dies": "onconnect = ({ ports: [page] }) => { page.postMessage({ dead: 'out of memory' }); close(); };",
    "is not to be had": "",
}


@pytest.mark.parametrize("fault", FAULTS)
def test_a_shared_worker_that_fails_is_left_for_one_of_the_pages_own(
    visiting: Visiting, asked_anew: Path, places: dict[str, str], fault: str
) -> None:
    """And for as long as the visit lasts: no later page waits for it again."""
    script = f"if ('onconnect' in self) {{ {FAULTS[fault]} }}".encode()
    wrong = server.Answer(200, script, {"Content-Type": "text/javascript"}) if FAULTS[fault] else GONE
    answers = iter([wrong])  # only the first that asks gets it
    trouble = Trouble({WORKER: lambda: next(answers, None)})  # type: ignore[arg-type, return-value]
    troubles: list[str] = []
    with server.serving(asked_anew, interfere=trouble) as served, visiting(troubles, lasting=True) as page:
        page.add_init_script(IMPATIENT % 12)
        types_and_sees(goes_to(page, served, places, "stored-heat"))
        assert started(served) == 2
        assert_says(goes_to(page, served, places, "stored-heat"), STORAGE)
        assert started(served) == 3
        troubles.clear()


@pytest.mark.parametrize("refused", ["sessionStorage", "localStorage"])
def test_where_nothing_is_kept_python_runs_on_too(
    visiting: Visiting, asked_anew: Path, places: dict[str, str], refused: str
) -> None:
    script = (
        f"Object.defineProperty(self, '{refused}', {{ get() {{ throw new DOMException('no', 'SecurityError'); }} }});"
    )
    troubles: list[str] = []
    with server.serving(asked_anew) as served, visiting(troubles, lasting=True) as page:
        page.add_init_script(script)
        goes_to(page, served, places, "firing")
        types_and_sees(goes_to(page, served, places, "stored-heat"))
        assert started(served) == 1
        troubles.clear()  # the theme's own scripts mind
