"""What befalls a page in a browser that is used: a plain host, a wrong clock, an update, printing too early, long use."""

from __future__ import annotations

import datetime
import functools
import http.server
import os
import threading
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

import server
from calc.answer import Typed, answer
from tests.browser.conftest import Live, Visiting
from tests.browser.reader import Reader, assert_says, calculators, plain
from tests.browser.test_failures import GONE, STOPPED, Trouble
from tests.paper import Paper

pytestmark = pytest.mark.browser

EDITS = int(os.environ.get("EDITS", "200"))  # EDITS=10000 takes some minutes


@pytest.fixture
def plain_host(site: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[str]:
    """What `python -m http.server` is: no headers of ours, its own types and its own page for what is not there."""
    handler = functools.partial(http.server.SimpleHTTPRequestHandler, directory=str(site))
    monkeypatch.setattr(http.server.SimpleHTTPRequestHandler, "log_message", lambda *_: None)
    with http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler) as host:
        threading.Thread(target=host.serve_forever, daemon=True).start()
        yield f"http://127.0.0.1:{host.server_address[1]}/"
        host.shutdown()


class Late:
    """Files with a part of a name in their path wait until they may arrive."""

    def __init__(self, part: str) -> None:
        self.part, self.arrived = part, threading.Event()

    def __call__(self, path: str) -> None:
        if self.part in path:
            self.arrived.wait(60)


def test_a_host_that_only_hands_out_files_is_enough(page: Page, plain_host: str, places: dict[str, str]) -> None:
    page.goto(plain_host + places["stored-heat"])
    reader = Reader(page, "stored-heat")
    reader.wait_until_live()
    reader.type("store_volume", "650")
    assert_says(reader, {"store_volume": Typed("650")})


def test_a_clock_that_is_wrong_or_jumps_changes_no_result(
    page: Page, served: server.Site, places: dict[str, str]
) -> None:
    page.clock.set_fixed_time("1970-01-01T00:00:00Z")
    page.goto(served.url + places["stored-heat"])
    reader = Reader(page, "stored-heat")
    reader.wait_until_live()
    reader.type("store_volume", "650")
    page.clock.set_fixed_time("2099-12-31T23:59:59Z")
    reader.type("store_top", "170")
    page.clock.set_fixed_time("2001-01-01T00:00:00Z")
    reader.type("lowest_useful", "95 °F")
    assert_says(reader, {"store_volume": Typed("650"), "store_top": Typed("170"), "lowest_useful": Typed("95 °F")})


def test_a_number_typed_before_python_is_there_is_answered_when_it_is(
    page: Page, site: Path, places: dict[str, str]
) -> None:
    """Whoever comes for the first time may type at once, and the number means what its label said, whatever the units."""
    late = Late(".wasm")
    with server.serving(site, interfere=late) as slow:
        page.goto(slow.url + places["stored-heat"])
        reader = Reader(page, "stored-heat")
        reader.box("store_volume").fill("650")
        expect(reader.slot("plate").locator("output")).to_have_text("No result yet")
        expect(reader.slot("status")).to_contain_text("Getting the calculator ready")
        # Nor does another worksheet that asks for this number go on to show the example's.
        other = Reader(page, "standby")
        expect(other.slot("plate").locator("output")).to_have_text("No result yet")
        assert other.box("store_volume").input_value() == "650"
        page.get_by_role("button", name="SI units").click()
        late.arrived.set()
        reader.wait_until_live()
        assert_says(reader, {"store_volume": Typed("650", "us", "gal")}, "si")


def test_own_numbers_can_be_changed_once_python_has_set_their_boxes(
    page: Page, asked_anew: Path, places: dict[str, str]
) -> None:
    """Built in gallons, the box would take for gallons what is typed over the reader's own litres."""
    late = Late("/worker.js")
    late.arrived.set()
    with server.serving(asked_anew, interfere=late) as slow:
        page.goto(slow.url + places["stored-heat"])
        reader = Reader(page, "stored-heat")
        reader.wait_until_live()
        page.get_by_role("button", name="SI units").click()
        reader.type("store_volume", "3000")
        late.arrived.clear()
        page.goto(f"{slow.url}glossary/")
        page.add_init_script("delete window.SharedWorker")
        page.goto(slow.url + places["stored-heat"])
        expect(reader.slot("plate").locator("output")).to_have_text("No result yet")
        expect(reader.box("store_volume")).to_be_disabled()
        late.arrived.set()
        reader.wait_until_live()
        reader.type("store_volume", "3100")
        assert_says(reader, {"store_volume": Typed("3100", "si")}, "si")


def test_what_is_printed_while_the_calculator_loads_is_the_example(
    page: Page, site: Path, places: dict[str, str]
) -> None:
    late = Late(".wasm")
    with server.serving(site, interfere=late) as slow:
        page.goto(slow.url + places["stored-heat"])
        reader = Reader(page, "stored-heat")
        expect(reader.slot("status")).to_contain_text("Getting the calculator ready")
        paper = plain(" ".join(Paper(page.pdf(format="A4")).pages))
        example = answer("stored-heat", {}).headline
        assert example
        assert plain(example.shown) in paper
        assert "Getting the calculator ready" not in paper
        late.arrived.set()
        reader.wait_until_live()
        reader.type("store_volume", "650")
        assert_says(reader, {"store_volume": Typed("650")})


@pytest.mark.parametrize("damaged", ["[{", '{"store_volume": 5, "store_top": null, "lowest_useful": {}}'])
def test_a_damaged_plan_in_the_browser_is_no_plan(
    page: Page, served: server.Site, places: dict[str, str], damaged: str
) -> None:
    page.goto(f"{served.url}glossary/")
    page.evaluate("text => localStorage.setItem('stoke-and-store.plan', text)", damaged)
    page.goto(served.url + places["stored-heat"])
    reader = Reader(page, "stored-heat")
    reader.wait_until_live()
    reader.type("store_volume", "650")
    assert_says(reader, {"store_volume": Typed("650")})


@pytest.mark.long
def test_a_page_left_open_over_an_update_starts_what_the_host_has_now(
    visiting: Visiting, site: Path, places: dict[str, str]
) -> None:
    """Its Python went with the last release; when it has to be started again, it comes from the new one."""
    worker = (site / "assets/js/worker.js").read_text(encoding="utf-8")
    memory = next(site.glob("assets/python/snapshot-*/python.memory"))
    later = f"{memory.parent.name[:-12]}{'0' * 12}"
    assert memory.parent.name in worker
    trouble = Trouble(
        {
            "/worker.js": lambda: server.Answer(
                200, worker.replace(memory.parent.name, later).encode(), _worker_headers(site)
            ),
            later: lambda: server.Answer(200, memory.read_bytes(), {"Content-Type": "application/octet-stream"}),
            memory.parent.name: lambda: GONE,
        }
    )
    trouble.cured.set()
    troubles: list[str] = []
    with server.serving(site, interfere=trouble) as host, visiting(troubles) as page:
        page.goto(host.url + places["stored-heat"])
        reader = Reader(page, "stored-heat")
        reader.wait_until_live()
        reader.type("store_volume", "650")
        trouble.cured.clear()
        (running,) = calculators(page)
        running.evaluate("() => { setTimeout(() => { throw new Error('out of memory'); }); }")
        reader.box("store_top").fill("170")
        expect(reader.slot("status")).to_have_text(STOPPED)
        reader.sheet.get_by_role("button", name="Try again").click()
        reader.wait_until_live()
        assert_says(reader, {"store_volume": Typed("650"), "store_top": Typed("170")})
        assert [asked for asked in host.requests if later in asked.path]
        troubles.clear()


def _worker_headers(site: Path) -> dict[str, str]:
    with server.serving(site) as known:
        return known.answer("/assets/js/worker.js", "", "").headers


MAKE_MANY = """async (count) => {
  const sheet = document.getElementById("stored-heat");
  const box = sheet.querySelector(".ss-field[data-key=store_volume] input[type=text]");
  box.focus();
  for (let edit = 0; edit < count; edit++) {
    box.value = String(500 + (edit % 400));
    box.dispatchEvent(new Event("input", { bubbles: true }));
    const until = Date.now() + 60_000;
    do await new Promise((done) => setTimeout(done, 2));
    while ("busy" in sheet.dataset && Date.now() < until);
  }
}"""


@pytest.mark.long
def test_long_use_leaves_nothing_behind_in_the_page(live: Live) -> None:
    with live("stored-heat") as reader:
        session = reader.page.context.new_cdp_session(reader.page)

        def held() -> dict[str, Any]:
            session.send("HeapProfiler.collectGarbage")
            return {**session.send("Memory.getDOMCounters"), "heap": session.send("Runtime.getHeapUsage")["usedSize"]}

        def is_flat() -> bool:
            more = {kind: after[kind] - before[kind] for kind in before}
            few = more["nodes"] < 2_000 and more["jsEventListeners"] < 20 and more["documents"] < 2
            # However many edits: one answer's HTML is some 20 kB, and what compiled scripts keep has come to 2 MB.
            return bool(few and more["heap"] < 3_000_000)

        reader.page.evaluate(MAKE_MANY, 150)  # until what is made once has been made
        before = held()
        reader.page.evaluate(MAKE_MANY, EDITS)
        after = held()
        for _ in range(100):  # what is no longer needed goes in its own time
            if is_flat():
                break
            reader.page.wait_for_timeout(100)
            after = held()
        assert is_flat(), (before, after)


KEEP_WHAT_IS_ASKED = """
globalThis.asked = [];
const post = Worker.prototype.postMessage;
globalThis.practised = new Promise((begun) => {
  Worker.prototype.postMessage = function (message, ...more) {
    if (message.request) asked.push(JSON.parse(message.request));
    if (asked.at(-1)?.ask === "practise") begun();
    return post.call(this, message, ...more);
  };
});
"""


def test_the_calculator_practises_while_nobody_types_and_a_reader_goes_first(
    visiting: Visiting, served: server.Site, places: dict[str, str]
) -> None:
    """Each worksheet of the page is worked out for nobody: nothing is shown of it and nothing kept."""
    with visiting([]) as page:
        page.add_init_script(KEEP_WHAT_IS_ASKED)
        page.goto(served.url + places["stored-heat"])
        reader = Reader(page, "stored-heat")
        reader.wait_until_live()
        shown = page.locator("main").inner_html()
        page.evaluate("practised")
        assert page.locator("main").inner_html() == shown
        assert page.evaluate("localStorage.getItem('stoke-and-store.plan')") is None
        reader.type("store_volume", "650")
        asked = [one["ask"] for one in page.evaluate("asked")]
        assert asked[asked.index("worksheet") - 1] == "practise", asked
        assert_says(reader, {"store_volume": Typed("650")})
        # And then it goes on where it was, if its second is not over.
        turns = [(one["worksheet"], one["turn"]) for one in page.evaluate("asked") if one["ask"] == "practise"]
        assert turns == sorted(set(turns), key=turns.index)
        assert [turn for worksheet, turn in turns if worksheet == "stored-heat"] == list(range(min(4, len(turns))))


def test_while_a_reader_types_no_other_worksheet_of_the_page_is_worked_out(
    visiting: Visiting, served: server.Site, places: dict[str, str]
) -> None:
    """They follow after a pause, or as soon as the box is left."""
    with visiting([]) as page:
        page.add_init_script(KEEP_WHAT_IS_ASKED)
        page.clock.install()
        page.goto(served.url + places["stored-heat"])
        reader, other = Reader(page, "stored-heat"), Reader(page, "standby")
        reader.wait_until_live()
        page.evaluate("practised")
        page.clock.pause_at(datetime.datetime.now() + datetime.timedelta(seconds=2))

        def typed(text: str) -> None:
            reader.box("store_volume").fill(text)
            expect(reader.sheet).not_to_have_attribute("data-busy", "")
            expect(other.sheet).to_have_attribute("data-busy", "")
            assert {one["worksheet"] for one in page.evaluate("asked") if one["ask"] == "worksheet"} == {"stored-heat"}

        typed("650")
        typed("651")
        page.clock.run_for(250)
        expect(other.sheet).not_to_have_attribute("data-busy", "")
        assert_says(other, {"store_volume": Typed("651")})
        page.evaluate("asked.length = 0")
        typed("652")
        reader.box("store_volume").blur()
        expect(other.sheet).not_to_have_attribute("data-busy", "")
        assert_says(other, {"store_volume": Typed("652")})
