"""What `scripts/bench` measures beside the start: the first text, typing, and how long the site takes to make."""

from __future__ import annotations

import contextlib
import json
import os
import re
import signal
import statistics
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from playwright.sync_api import Browser, Page, sync_playwright

import building
import loading
import measuring
import server
import toolchain

SLOWEST = list(loading.LINES)[-1]
WORKER = "/worker.js"
TRACED, SLOWED = 20, 40  # edits
VISITS = 4  # of several pages, with a worker that lasts and without
SLOWER = 4  # times, as a phone's processor is
MOMENT = 0.001  # seconds
PAINT_CLOCK = """
globalThis.clock = { live: 0 };
new PerformanceObserver((list) => {
  for (const { name, startTime } of list.getEntries()) if (name === "first-contentful-paint") clock.live = startTime;
}).observe({ type: "paint", buffered: true });
"""
A_SUM = """() => {
  const began = performance.now();
  for (let i = 0, sum = 0; i < 3e8; i += 1) sum += i;
  return performance.now() - began;
}"""
TRACE = ["devtools.timeline", "disabled-by-default-devtools.timeline"]
SCRIPT = {"EvaluateScript", "EventDispatch", "FireAnimationFrame", "FunctionCall", "RunMicrotasks", "TimerFire"}


def report(site: Path) -> Iterator[str]:
    """The lines to print, each when it is known."""
    yield ""
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=toolchain.find_chromium())
        yield from first_text(site, browser)
        yield from keystrokes(site, browser)
        yield from next_pages(site, browser)
        browser.close()
    yield from building_times()


def first_text(site: Path, browser: Browser) -> Iterator[str]:
    """On the slowest line: when the first text stands there, and what was asked for before the worker."""
    with server.serving(site, encodings=("gzip",), line=loading.shaped(SLOWEST)) as here:
        page = browser.new_page()
        page.add_init_script(PAINT_CLOCK)
        page.goto(here.url + measuring.GUIDE, wait_until="load", timeout=120_000)
        painted = measuring.wait_for_clock(page, lambda seen: bool(seen["live"]))["live"]
        asked = list(here.requests)
        page.close()
    paths = [request.path for request in asked]
    worker = next(place for place, path in enumerate(paths) if path.endswith(WORKER))
    before = sum(request.sent for request in asked[:worker])
    page_alone = sum(
        request.sent for request in asked if "/assets/python/" not in request.path and not request.path.endswith(WORKER)
    )
    yield measuring.row(f"First text, {SLOWEST}", f"{painted:.0f} ms", "cold; at most 1000")
    beside = f"{page_alone / 1e3:.0f} with what the page asks for beside it; at most 300"
    yield measuring.row("Asked for before the worker", f"{before / 1e3:.0f} kB", beside)


def keystrokes(site: Path, browser: Browser) -> Iterator[str]:
    """One visit, in which edit follows on edit: the longest task of scripts; then edits with all of it slowed."""
    clock = measuring.clock_of(measuring.CLOCK, edits=1000)
    with server.serving(site, encodings=("gzip",)) as here:
        page = browser.new_page()
        page.add_init_script(clock)
        page.goto(here.url + measuring.GUIDE)
        _next_answers(page, 5)  # the first ones still fetch what a chart is drawn by
        browser.start_tracing(page=page, categories=TRACE)
        _next_answers(page, TRACED)
        tasks = sorted(script_tasks(json.loads(browser.stop_tracing())["traceEvents"]))
        full = page.evaluate(A_SUM)
        with slowed(browser):
            factor = page.evaluate(A_SUM) / full
            answers = _next_answers(page, SLOWED)
        page.close()
    longest = f"median of those over 1 ms {statistics.median(task for task in tasks if task > 1):.1f}; at most 4"
    yield measuring.row("Longest task of scripts, typing", f"{tasks[-1]:.1f} ms", longest)
    slow = f"all {factor:.1f} times slower, median {statistics.median(answers):.0f}; at most 50"
    yield measuring.row("Edit to result on a phone, 95th", f"{measuring.percentile_95(answers):.0f} ms", slow)


def next_pages(site: Path, browser: Browser) -> Iterator[str]:
    """The second page of a visit and the third, in turns with a worker that outlives its page and with one for each."""
    clock = measuring.clock_of(measuring.CLOCK, edits=0)
    times: dict[str, list[float]] = {"": [], "delete globalThis.SharedWorker;": []}
    with server.serving(site, encodings=("gzip",)) as here:
        for _ in range(VISITS):
            for without, found in times.items():
                context = browser.new_context()
                context.add_init_script(without + clock)
                page = context.new_page()
                for _ in range(3):
                    page.goto(here.url + measuring.GUIDE)
                    found.append(measuring.wait_for_clock(page, lambda seen: bool(seen["live"]))["live"])
                del found[-3]  # the first page of the visit
                context.close()
    lasting, own = (statistics.median(found) for found in times.values())
    beside = f"{lasting:.0f} and {own:.0f} ms from leaving to the first own result"
    yield measuring.row("The next page of a visit", f"{lasting / own:.2f}", f"of one that starts Python; {beside}")


def _next_answers(page: Page, count: int) -> list[float]:
    """Milliseconds to the next so many answers, without the one that is under way."""
    past = len(measuring.wait_for_clock(page, lambda seen: bool(seen["live"]))["answers"]) + 1
    seen = measuring.wait_for_clock(page, lambda seen: len(seen["answers"]) >= past + count)
    answers: list[float] = seen["answers"][past : past + count]
    return answers


def script_tasks(events: list[dict[str, Any]]) -> list[float]:
    """Milliseconds of processor that scripts took in each task of a page's main thread, with layout they forced."""
    mains = {
        (event["pid"], event["tid"])
        for event in events
        if event["name"] == "thread_name" and event["args"]["name"] == "CrRendererMain"
    }
    timed = [event for event in events if "tdur" in event and (event["pid"], event["tid"]) in mains]
    tasks: list[float] = []
    counted = 0.0  # the moment up to which scripts are counted: what begins before it stands inside another
    for event in sorted(timed, key=lambda event: (event["pid"], event["ts"], -event["dur"])):
        if event["name"] == "RunTask":
            tasks.append(0.0)
            counted = event["ts"]
        elif event["name"] in SCRIPT and tasks and event["ts"] >= counted:
            tasks[-1] += event["tdur"] / 1000
            counted = event["ts"] + event["dur"]
    return [task for task in tasks if task]


@contextlib.contextmanager
def slowed(browser: Browser) -> Iterator[None]:
    """Pages and their workers stand still three moments of four. (The browser's own brake does not reach workers.)"""
    session = browser.new_browser_cdp_session()
    processes = session.send("SystemInfo.getProcessInfo")["processInfo"]
    pages = [process["id"] for process in processes if process["type"] == "renderer"]
    done = threading.Event()

    def brake() -> None:
        while not done.is_set():
            for sign, moments in ((signal.SIGSTOP, SLOWER - 1), (signal.SIGCONT, 1)):
                for process in pages:
                    os.kill(process, sign)
                time.sleep(moments * MOMENT)

    thread = threading.Thread(target=brake)
    thread.start()
    try:
        yield
    finally:
        done.set()
        thread.join()


def building_times() -> Iterator[str]:
    """The site made again, all in the caches, beside the theme alone on the same pages."""
    with tempfile.TemporaryDirectory(dir=toolchain.CACHE) as folder:
        began = time.monotonic()
        building.make(Path(folder, "ours"))
        ours = time.monotonic() - began
        config = Path(folder, "mkdocs.yml")
        config.write_text(theme_alone((toolchain.ROOT / "mkdocs.yml").read_text(encoding="utf-8")), encoding="utf-8")
        began = time.monotonic()
        command = [sys.executable, "-m", "mkdocs", "--quiet", "build", "-f", str(config), "-d", f"{folder}/bare"]
        subprocess.run(command, env=toolchain.environment(), capture_output=True, check=True)
        theme = time.monotonic() - began
    yield measuring.row(
        "To make the site again", f"{ours / theme:.1f} of theme", f"{ours:.1f} and {theme:.1f} s; at most 1.5"
    )


def theme_alone(config: str) -> str:
    """MkDocs' configuration without what is ours: pages, theme and extensions stay."""
    config = re.sub(r"^(?:hooks|extra_css|extra_javascript):\n(?:[ #].*\n)+", "", config, flags=re.MULTILINE)
    config = re.sub(r"^  custom_dir:.*\n", "", config, flags=re.MULTILINE)
    return re.sub(r"^docs_dir: ", f"docs_dir: {toolchain.ROOT}/", config, flags=re.MULTILINE)
