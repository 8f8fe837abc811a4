"""Python cannot start, stops, or falls silent: one sentence, nothing typed is lost, and trying again works."""

from __future__ import annotations

import gzip
import hashlib
import re
import threading
import time
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

import finishing
import server
from calc.answer import Typed, answer
from line import Line
from runtime import WORKER_POLICY
from tests.browser.conftest import At, Live
from tests.browser.reader import Reader, assert_says, calculators, plain
from tests.test_interpreter import with_hardly_anything_in_the_first_part

pytestmark = pytest.mark.browser

FAILED = "The calculator could not start here. The example stands, and what you typed is kept."
STOPPED = "The calculator stopped. What you typed is kept."

# The page waits so many seconds for a sign of life; set before its script reads it.
IMPATIENT = """
document.addEventListener("readystatechange", () => {
  for (const sheet of document.querySelectorAll(".ss-sheet")) sheet.dataset.silence = "%s";
});
"""
GONE = server.Answer(404, b"gone", {"Content-Type": "text/plain"})
SORRY = server.Answer(200, b"<html>sorry</html>", {"Content-Type": "text/html"})
# Python starts by its snapshot, so a file of the ordinary way is missed only where that is gone too.
MEMORY = "python.memory"


def cut() -> server.Answer:
    """The host goes while something is on its way from it."""
    raise ConnectionAbortedError


BROKEN: dict[str, tuple[str, server.Answer | Callable[[], server.Answer]]] = {
    "worker gone": ("/worker.js", GONE),
    "worker is a page": ("/worker.js", SORRY),
    "loader gone": ("pyodide.asm.js", GONE),
    "interpreter gone": (".wasm", GONE),
    "interpreter of a wrong type": (".wasm", SORRY),
    "interpreter cut short": (".wasm", server.Answer(200, b"\0asm\1\0\0\0\1", {"Content-Type": "application/wasm"})),
    "host gone in mid-load": ("python_stdlib.zip", cut),
    "library gone": ("python_stdlib.zip", GONE),
    "library is a page": ("python_stdlib.zip", SORRY),
    "our code gone": ("stoke_and_store", GONE),
    "our code damaged": (
        "stoke_and_store",
        server.Answer(200, b"PK\x03\x04 damaged", {"Content-Type": "application/zip"}),
    ),
}


class Trouble:
    """Answers in the place of the site's files as long as there is something wrong."""

    def __init__(self, broken: dict[str, Callable[[], server.Answer]]) -> None:
        self.broken = broken
        self.cured = threading.Event()

    def __call__(self, path: str) -> server.Answer | None:
        wrong = next((answer for name, answer in self.broken.items() if name in path), None)
        return None if self.cured.is_set() or wrong is None else wrong()


USUAL = {"worker gone", "interpreter gone", "library gone", "our code damaged"}


@pytest.mark.parametrize(
    "name", [pytest.param(name, marks=[] if name in USUAL else pytest.mark.long) for name in BROKEN]
)
def test_a_start_that_fails_leaves_the_example_and_can_be_tried_again(
    page: Page, site: Path, places: dict[str, str], troubles: list[str], name: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(server.Site, "handle_error", lambda *_: None)  # a host that goes is meant to
    part, wrong = BROKEN[name]
    trouble = Trouble({part: wrong if callable(wrong) else lambda: wrong, MEMORY: lambda: GONE})
    with server.serving(site, interfere=trouble) as broken:
        page.goto(broken.url + places["stored-heat"])
        reader = Reader(page, "stored-heat")
        expect(reader.slot("status")).to_have_text(FAILED)
        for _ in range(3_000):  # until the browser has taken the dead one away
            if calculators(page):
                page.wait_for_timeout(20)
        assert calculators(page) == []
        assert reader.figure == plain(headline("stored-heat"))
        expect(page.locator("main p").first).to_be_visible()
        expect(reader.slot("results")).to_be_visible()
        trouble.cured.set()
        reader.sheet.get_by_role("button", name="Try again").click()
        reader.wait_until_live()
        expect(reader.slot("status")).to_have_text("Ready. Change any number.")
        expect(reader.sheet.get_by_role("button", name="Try again")).to_be_hidden()
        reader.type("store_volume", "650")
        assert_says(reader, {"store_volume": Typed("650")})
    assert troubles  # the browser and the page both say what happened
    troubles.clear()


@pytest.mark.parametrize("way", ["short", "ordinary"])
def test_what_readers_do_needs_no_function_of_the_interpreters_rest(
    page: Page, site: Path, places: dict[str, str], troubles: list[str], way: str
) -> None:
    """Where this fails, `scripts/list_used.mjs` or `run_every_example` has to do what was done here."""

    def interfere(path: str) -> server.Answer | None:
        return GONE if way == "ordinary" and MEMORY in path else None

    with server.serving(site, interfere=interfere) as running:
        for worksheet, number in (("stored-heat", "1,5 m3"), ("winter-run", "nine hundred")):
            page.goto(running.url + places[worksheet])
            reader = Reader(page, worksheet)
            reader.wait_until_live()
            reader.type("store_volume", number)
        page.goto(running.url + places["first-sketch"])
        Reader(page, "first-sketch").wait_until_live()
        page.goto(running.url + "record/")
        page.locator("[data-ss-record]:not([data-busy])").wait_for()
        asked = [request.path.rpartition("/")[2] for request in running.requests]
    assert "rest.wasm" not in asked
    assert ("stoke_and_store" in " ".join(asked)) == (way == "ordinary")
    troubles.clear()


def test_what_was_typed_before_python_could_not_start_is_kept_and_answered_after_another_try(
    page: Page, site: Path, places: dict[str, str], troubles: list[str]
) -> None:
    typed = threading.Event()

    def gone_late() -> server.Answer:
        typed.wait(60)
        return GONE

    trouble = Trouble({".wasm": gone_late})
    with server.serving(site, interfere=trouble) as broken:
        page.goto(broken.url + places["stored-heat"])
        reader = Reader(page, "stored-heat")
        reader.box("store_volume").fill("650")
        typed.set()
        expect(reader.slot("status")).to_have_text("The calculator could not start here. What you typed is kept.")
        expect(reader.slot("plate").locator("output")).to_have_text("No result yet")
        assert reader.box("store_volume").input_value() == "650"
        trouble.cured.set()
        reader.sheet.get_by_role("button", name="Try again").click()
        reader.wait_until_live()
        assert_says(reader, {"store_volume": Typed("650")})
    troubles.clear()  # the browser's own lines about it


def test_a_rest_that_takes_longer_than_any_silence_is_waited_for(
    page: Page, site: Path, places: dict[str, str], troubles: list[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """While it comes the worker stands still: what it says before must be enough."""
    slowly = tmp_path / "site"
    with_hardly_anything_in_the_first_part(site, slowly, monkeypatch)

    def late(path: str) -> None:
        if "rest.wasm" in path:
            time.sleep(6)

    page.add_init_script(IMPATIENT % 3)
    with server.serving(slowly, interfere=late) as slow:
        page.goto(slow.url + places["stored-heat"])
        reader = Reader(page, "stored-heat")
        reader.wait_until_live()
        assert reader.status == "Ready. Change any number."
        asked = [request.path.rpartition("/")[2] for request in slow.requests]
    assert asked.count("worker.js") == asked.count("rest.wasm") == 1
    troubles.clear()  # the browser says that the snapshot is gone


def damaged(memory: bytes) -> dict[str, bytes]:
    """What may become of the snapshot on its way, or at a host that has another release's."""
    other = bytearray(gzip.decompress(memory))
    other[len(other) // 2 : len(other) // 2 + 200_000] = bytes(200_000)
    flipped = bytearray(memory)
    flipped[len(memory) // 2] ^= 1
    return {
        "is a page": b"<html>sorry</html>",
        "ends half way": memory[: len(memory) // 2],
        "has a wrong bit": bytes(flipped),
        "is another build's": gzip.compress(bytes(other), 1),
    }


@pytest.mark.parametrize(
    "fault",
    [
        "gone",
        *(pytest.param(name, marks=pytest.mark.long) for name in ("is a page", "ends half way", "has a wrong bit")),
        "is another build's",
    ],
)
def test_without_a_good_snapshot_python_starts_the_ordinary_way(
    page: Page, site: Path, places: dict[str, str], troubles: list[str], fault: str
) -> None:
    memory = next(site.rglob(MEMORY)).read_bytes()
    wrong = GONE if fault == "gone" else server.Answer(200, damaged(memory)[fault], {"Content-Type": "text/plain"})
    with server.serving(site, interfere=Trouble({MEMORY: lambda: wrong})) as broken:
        page.goto(broken.url + places["stored-heat"])
        started_the_ordinary_way(page, broken)
    if fault == "gone":
        troubles.clear()  # the browser's own line about it


def test_a_snapshot_that_breaks_off_in_its_first_moments_costs_no_worker(
    page: Page, site: Path, places: dict[str, str], troubles: list[str]
) -> None:
    """What has arrived is well packed, what follows is not: the page hears of the break when it has read a part."""
    memory = next(site.rglob(MEMORY)).read_bytes()
    packed = bytearray(gzip.compress(memory[:200_000], 0))
    packed[150_000:] = b"\xff" * 50_000
    broken_off = server.Answer(200, bytes(packed), {"Content-Type": "text/plain", "Content-Encoding": "gzip"})
    with server.serving(site, interfere=Trouble({MEMORY: lambda: broken_off})) as broken:
        page.goto(broken.url + places["stored-heat"])
        started_the_ordinary_way(page, broken)
        page.wait_for_timeout(600)  # longer than the first moments
        assert sum(request.path.endswith("/worker.js") for request in broken.requests) == 1
    troubles.clear()  # the browser's own line about it


@pytest.mark.parametrize("moment", [0.0, 0.03, 0.1, pytest.param(0.3, marks=pytest.mark.long)])
def test_a_snapshot_that_breaks_off_while_python_gets_ready_for_it_costs_no_worker(
    page: Page, site: Path, places: dict[str, str], troubles: list[str], moment: float
) -> None:
    """So many seconds after the loader was asked for. What has come looks right, and must not be taken for a whole."""
    memory = next(site.rglob(MEMORY)).read_bytes()
    loading = threading.Event()

    def breaks_off(path: str) -> server.Answer | None:
        if "pyodide.asm.js" in path:
            loading.set()
        if MEMORY not in path:
            return None
        loading.wait(60)
        time.sleep(moment)
        return server.Answer(200, memory[: len(memory) // 2], {"Content-Type": "text/plain"})

    with server.serving(site, interfere=breaks_off) as broken:
        page.goto(broken.url + places["stored-heat"])
        started_the_ordinary_way(page, broken)
        assert sum(request.path.endswith("/worker.js") for request in broken.requests) == 1
    troubles.clear()


@pytest.mark.parametrize("harm", ["memory", pytest.param("head", marks=pytest.mark.long)])
def test_a_snapshot_that_passes_for_good_and_is_not_costs_only_time(
    page: Page, site: Path, places: dict[str, str], troubles: list[str], harm: str
) -> None:
    """Its digest is right, and what it restores cannot answer: the page sees that and starts another worker."""
    whole = bytearray(gzip.decompress(next(site.rglob(MEMORY)).read_bytes()))
    if harm == "head":
        whole[0] ^= 1
    else:
        whole[8_500_000:12_000_000] = bytes(3_500_000)
    memory = gzip.compress(bytes(whole), 1)
    script = (site / "assets/js/worker.js").read_text(encoding="utf-8")
    script, count = re.subn(r'("?digest"?:\s*")[0-9a-f]{64}', rf"\g<1>{hashlib.sha256(memory).hexdigest()}", script)
    assert count == 1
    headers = {"Content-Type": "text/javascript", "Content-Security-Policy": WORKER_POLICY}
    trouble = Trouble(
        {
            MEMORY: lambda: server.Answer(200, memory, {"Content-Type": "text/plain"}),
            "/worker.js": lambda: server.Answer(200, script.encode(), headers),
        }
    )
    page.add_init_script(IMPATIENT % 10)
    with server.serving(site, interfere=trouble) as broken:
        page.goto(broken.url + places["stored-heat"])
        started_the_ordinary_way(page, broken)
    troubles.clear()  # what Pyodide itself has to say about such a memory


def test_a_snapshot_that_never_arrives_costs_only_time(page: Page, site: Path, places: dict[str, str]) -> None:
    def silence() -> server.Answer:
        trouble.cured.wait(60)
        return GONE

    trouble = Trouble({MEMORY: silence})
    page.add_init_script(IMPATIENT % 10)
    with server.serving(site, interfere=trouble) as broken:
        page.goto(broken.url + places["stored-heat"])
        started_the_ordinary_way(page, broken)
        trouble.cured.set()


@pytest.mark.long
@pytest.mark.parametrize("bits_a_second", [1.6e6, 10e6])
def test_on_a_slow_line_python_starts_the_ordinary_way(
    page: Page, site: Path, places: dict[str, str], bits_a_second: float
) -> None:
    with server.serving(site, encodings=("gzip",), line=Line(bits_a_second / 8, 0.02)) as slow:
        page.goto(slow.url + places["stored-heat"])
        started_the_ordinary_way(page, slow)
        slow.requests.clear()
        page.reload()
        Reader(page, "stored-heat").wait_until_live()
        assert MEMORY not in " ".join(request.path for request in slow.requests), "all but that is here already"


def started_the_ordinary_way(page: Page, served: server.Site) -> None:
    """Python answers, nothing is said about it, and it came by its library and wheels."""
    reader = Reader(page, "stored-heat")
    reader.wait_until_live()
    expect(reader.slot("status")).to_have_text("Ready. Change any number.")
    reader.type("store_volume", "650")
    assert_says(reader, {"store_volume": Typed("650")})
    asked = " ".join(request.path for request in served.requests)
    assert "python_stdlib.zip" in asked and "stoke_and_store" in asked


@pytest.mark.parametrize("kind", ["application/octet-stream", "text/plain"])
def test_a_host_that_does_not_know_the_interpreters_type_serves_too(
    page: Page, site: Path, places: dict[str, str], kind: str
) -> None:
    interpreter = next(site.rglob("pyodide.asm.wasm")).read_bytes()
    trouble = Trouble({".wasm": lambda: server.Answer(200, interpreter, {"Content-Type": kind})})
    with server.serving(site, interfere=trouble) as simple:
        page.goto(simple.url + places["stored-heat"])
        reader = Reader(page, "stored-heat")
        reader.wait_until_live()
        reader.type("store_volume", "650")
        assert_says(reader, {"store_volume": Typed("650")})


def headline(worksheet: str) -> str:
    sheet = answer(worksheet, {})
    assert sheet.headline
    return sheet.headline.shown


@pytest.mark.parametrize(
    "part", [".wasm", *(pytest.param(name, marks=pytest.mark.long) for name in ("/worker.js", "python_stdlib.zip"))]
)
def test_a_server_that_falls_silent_is_given_up(
    page: Page, site: Path, places: dict[str, str], troubles: list[str], part: str
) -> None:
    def silence() -> server.Answer:
        trouble.cured.wait(60)
        return GONE

    trouble = Trouble({part: silence, MEMORY: lambda: GONE})
    # For the interpreter there is a steady sign of life while it is on its way, for at most two minutes; here, less.
    worker = (
        (site / "assets/js/worker.js").read_text(encoding="utf-8").replace("LONGEST_FETCH=12e4", "LONGEST_FETCH=1500")
    )
    assert "LONGEST_FETCH=1500" in worker
    headers = {"Content-Type": "text/javascript", "Content-Security-Policy": WORKER_POLICY}
    if part != "/worker.js":
        trouble.broken["/worker.js"] = lambda: server.Answer(200, worker.encode(), headers)
    page.add_init_script(IMPATIENT % 3)
    with server.serving(site, interfere=trouble) as broken:
        page.goto(broken.url + places["stored-heat"])
        reader = Reader(page, "stored-heat")
        expect(reader.slot("status")).to_have_text(FAILED)
        expect(reader.sheet.get_by_role("button", name="Try again")).to_be_visible()
        trouble.cured.set()
    assert "nothing was heard for too long" in "".join(troubles)
    troubles.clear()


def test_a_wrong_known_answer_is_no_start(page: Page, site: Path, places: dict[str, str], troubles: list[str]) -> None:
    html = (site / places["stored-heat"] / "index.html").read_text(encoding="utf-8")
    changed = re.sub(r'(?<=<output class="ss-figure">)[0-8]', "9", html, count=1)
    assert changed != html
    other = server.Answer(200, changed.encode(), {"Content-Type": "text/html; charset=utf-8"})
    with server.serving(site, interfere=lambda path: other if path.endswith(places["stored-heat"]) else None) as broken:
        page.goto(broken.url + places["stored-heat"])
        expect(Reader(page, "stored-heat").slot("status")).to_have_text(FAILED)
    assert "the known answer came out differently" in "".join(troubles)
    troubles.clear()


SILENCE = "seconds => document.querySelectorAll('.ss-sheet').forEach((sheet) => { sheet.dataset.silence = seconds; })"
CRASHES = {
    "throws": "setTimeout(() => { throw new Error('out of memory'); })",
    "rejects": "void Promise.reject(new Error('out of memory'))",
    "hangs": "setTimeout(() => { for (;;) ; })",
    "closes": "close()",
}


@pytest.mark.parametrize(
    "name", [pytest.param(name, marks=[] if name in {"throws", "hangs"} else pytest.mark.long) for name in CRASHES]
)
def test_a_worker_that_dies_costs_nothing_that_was_typed(live: Live, name: str) -> None:
    troubles: list[str] = []
    with live("stored-heat", troubles=troubles) as reader:
        reader.type("store_volume", "650")
        (worker,) = calculators(reader.page)
        reader.page.evaluate(SILENCE, 2)
        worker.evaluate(f"() => {{ {CRASHES[name]} }}")
        reader.box("store_top").fill("170")  # from here on there is nobody to answer
        expect(reader.slot("status")).to_have_text(STOPPED)
        assert reader.figure == "No result yet"
        expect(reader.slot("results")).to_be_hidden()
        reader.box("lowest_useful").fill("95 °F")  # boxes stay open
        expect(reader.box("store_volume")).to_have_value("650")
        expect(reader.box("store_top")).to_have_value("170")
        reader.page.evaluate(SILENCE, 60)
        reader.sheet.get_by_role("button", name="Try again").click()
        reader.wait_until_live()
        expect(reader.slot("status")).to_have_text("Ready. Change any number.")
        given = {"store_volume": Typed("650"), "store_top": Typed("170"), "lowest_useful": Typed("95 °F")}
        assert_says(reader, given)
        assert "The calculator stopped" in "".join(troubles)
        troubles.clear()


def test_an_error_in_one_reply_spoils_only_that(live: Live) -> None:
    troubles: list[str] = []
    with live("stored-heat", troubles=troubles) as reader:
        reader.type("store_volume", "650")
        # A box that no worksheet knows, as if page and Python were of two builds.
        reader.sheet.evaluate("sheet => { sheet.querySelector('[name=store_top]').value = '170'; }")
        reader.page.evaluate(
            """() => {
              const plain = JSON.stringify;
              JSON.stringify = (value, ...rest) => {
                if (value.ask !== "worksheet") return plain(value, ...rest);  // the chart is asked for later, by itself
                JSON.stringify = plain;
                return plain({ ...value, worksheet: "no-such-worksheet" }, ...rest);
              };
            }"""
        )
        reader.box("store_top").press("End")
        reader.box("store_top").dispatch_event("input")
        expect(reader.slot("status")).to_have_text(STOPPED)
        assert reader.figure == "No result yet"
        # Asked again, it answers; so it does when something else is typed.
        reader.sheet.get_by_role("button", name="Try again").click()
        expect(reader.slot("status")).to_have_text("Ready. Change any number.")
        expect(reader.sheet.get_by_role("button", name="Try again")).to_be_hidden()
        assert_says(reader, {"store_volume": Typed("650"), "store_top": Typed("170")})
        reader.type("store_top", "175")
        assert_says(reader, {"store_volume": Typed("650"), "store_top": Typed("175")})
        assert "UnknownWorksheet" in "".join(troubles)
        troubles.clear()


# ---- the page's own scripts ---------------------------------------------------------------------------------------

SCRIPTS_BROKEN = {
    "gone": GONE,
    "a page": SORRY,
    "damaged": server.Answer(
        200, b"export {", {"Content-Type": "text/javascript", "Cache-Control": finishing.FOR_EVER}
    ),
}
SCRIPTS = {
    "page": ("/page.js", "{storage}"),
    "part": ("/part-", "plan/"),
    "record": ("/record.js", "record/"),
    "desk": ("/desk.js", "dealers/"),
}


@pytest.mark.parametrize(
    ("script", "how"),
    [
        ("page", "gone"),
        ("page", "damaged"),
        ("part", "a page"),
        ("record", "gone"),
        *(pytest.param("desk", how, marks=pytest.mark.long) for how in SCRIPTS_BROKEN),
    ],
)
def test_a_script_of_the_page_that_is_missing_is_told(
    page: Page, site: Path, places: dict[str, str], troubles: list[str], script: str, how: str
) -> None:
    """Nothing of it can say so; what stands in the head of the page does, and loads the page again."""
    name, address = SCRIPTS[script]
    early = next(site.glob("assets/js-*/early.js")).read_text(encoding="utf-8")
    assert "LONGEST_WAIT = 20_000" in early
    quick = server.Answer(200, early.replace("20_000", "1_500").encode(), {"Content-Type": "text/javascript"})
    trouble = Trouble({name: lambda: SCRIPTS_BROKEN[how], "/early.js": lambda: quick})
    with server.serving(site, interfere=trouble) as broken:
        page.goto(broken.url + address.format(storage=places["stored-heat"]))
        part = page.locator("[data-silence]").first
        status = part.locator("[data-slot=status]")
        expect(status).to_contain_text("The calculator could not start here.")
        trouble.cured.set()
        part.get_by_role("button", name="Try again").click()
        expect(part).to_have_attribute("data-live", "")
        expect(status).not_to_contain_text("could not start")
        expect(status).not_to_contain_text("Getting the calculator ready")
        expect(part.get_by_role("button", name="Try again")).to_be_hidden()
    troubles.clear()


def test_a_page_opened_from_a_file_says_that_it_cannot_calculate(
    page: Page, site: Path, places: dict[str, str], troubles: list[str]
) -> None:
    page.goto((site / places["stored-heat"] / "index.html").as_uri())
    expect(page.locator("#stored-heat [data-slot=status]")).to_have_text(FAILED)
    troubles.clear()


# ---- units that the page is being switched to ---------------------------------------------------------------------


def test_a_number_is_taken_in_the_units_of_its_label_when_nobody_answers(live: Live) -> None:
    troubles: list[str] = []
    with live("stored-heat", troubles=troubles) as reader:
        (worker,) = calculators(reader.page)
        worker.evaluate(f"() => {{ {CRASHES['throws']} }}")
        expect(reader.slot("status")).to_have_text(STOPPED)
        reader.page.get_by_role("button", name="SI units").click()
        expect(reader.field("store_volume").locator(".ss-unit")).to_have_text("US gallons")
        reader.box("store_volume").fill("650")
        reader.sheet.get_by_role("button", name="Try again").click()
        reader.wait_until_live()
        expect(reader.field("store_volume").locator(".ss-unit")).to_have_text("liters")
        assert_says(reader, {"store_volume": Typed("650", "us")}, "si")
        troubles.clear()


def test_a_number_is_taken_in_the_units_of_its_label_before_the_switch_is_answered(at: At) -> None:
    reader = at("stored-heat")
    reader.page.evaluate(
        """() => {
          document.querySelector("[data-ss-units=si]").click();
          const box = document.querySelector("#stored-heat-store_volume");
          box.focus();
          box.value = "650";
          box.dispatchEvent(new Event("input", { bubbles: true }));
        }"""
    )
    reader.wait()
    unit = reader.field("store_volume").locator(".ss-unit")
    expect(unit).to_have_text("US gallons")  # as long as the reader is typing beside it
    expect(reader.box("store_volume")).to_have_value("650")
    assert_says(reader, {"store_volume": Typed("650", "us")}, "si")
    reader.box("store_volume").press("End")
    reader.box("store_volume").press_sequentially("0")
    reader.wait()
    assert_says(reader, {"store_volume": Typed("6500", "us")}, "si")
    reader.box("store_volume").blur()
    reader.wait()
    expect(unit).to_have_text("liters")
    expect(reader.box("store_volume")).to_have_value("24 610")
    assert_says(reader, {"store_volume": Typed("6500", "us")}, "si")
