"""What scripts/bench measures, and how: visits by a fresh headless browser, clocked inside the page."""

from __future__ import annotations

import contextlib
import json
import statistics
import tempfile
import timeit
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from playwright.sync_api import Page, Playwright, sync_playwright

import opponents
import server
import toolchain
from calc.__main__ import weather_text
from calc.answer import answer
from calc.physics import winter_weather
from calc.worksheets import WORKSHEETS
from opponents import WORKSHEET

GUIDE = "guides/storage/"
FIELD = "store_volume"
SHOWN = '[data-slot="plate"] output'  # whose text tells that an answer has come
EDITS = 40
WIDTHS = (1280, 390)

CLOCK = """
globalThis.clock = { live: 0, answers: [] };
{
  // As soon as the field takes text, type, note when the headline shows another result, rest, and type again.
  let typed = 0;
  let started = 0;
  let shown = null;
  const type = (input, figure) => {
    shown = figure.textContent;
    input.focus({ preventScroll: true }); // as a reader's hand would, so that this worksheet is answered first
    started = performance.now();
    input.value = String(500 + 10 * (typed += 1));
    input.dispatchEvent(new InputEvent("input", { bubbles: true }));
  };
  const look = () => {
    const section = document.querySelector('[data-worksheet="WORKSHEET"]');
    const input = section?.querySelector('input[name="FIELD"]');
    const figure = section?.querySelector('SHOWN');
    if (!input || input.disabled || !figure) return;
    if (!typed) return type(input, figure);
    const none = section.querySelector("template[data-plate]").content.querySelector("output").textContent;
    if (figure.textContent === shown || figure.textContent === none || shown === null) return;
    shown = null;
    if (clock.live) clock.answers.push(performance.now() - started);
    const rest = clock.live ? 50 : 1000;
    clock.live ||= performance.now();
    if (typed <= EDITS) setTimeout(() => type(input, figure), rest);
  };
  const everything = { attributes: true, childList: true, subtree: true, characterData: true };
  new MutationObserver(look).observe(document, everything);
}
"""
# Touches nothing, so that all that moves is the page's own doing. (A reader's typing excuses what moves after it.)
STILL_CLOCK = """
globalThis.clock = { live: 0, shift: 0 };
new PerformanceObserver((list) => {
  for (const entry of list.getEntries()) clock.shift += entry.value;
}).observe({ type: "layout-shift", buffered: true });
new MutationObserver(() => {
  if (document.querySelector('[data-worksheet="WORKSHEET"][data-state=ready]')) clock.live ||= performance.now();
}).observe(document, { attributes: true, childList: true, subtree: true });
setInterval(() => { clock.seen = performance.now(); }, 100);
"""
SETTLED = 1500  # milliseconds after the calculator is ready, in which anything that moves has moved


@dataclass(frozen=True)
class Visit:
    """One visit by a browser that has never been there."""

    live: float  # milliseconds from the call of the page to the first result worked out in it
    answers: list[float]  # milliseconds from each later edit to its result
    sent: int  # bytes that the server sent
    shift: float  # cumulative layout shift


def clock_of(
    script: str, worksheet: str = WORKSHEET, field: str = FIELD, shown: str = SHOWN, edits: int = EDITS
) -> str:
    """A clock's script for one worksheet: where it types, what it looks at, and how often after the first answer."""
    for name, value in {"WORKSHEET": worksheet, "FIELD": field, "SHOWN": shown, "EDITS": str(edits)}.items():
        script = script.replace(name, value)
    return script


def report(site: Path, folder: Path, runs: int) -> Iterator[str]:
    """The lines to print, each when it is known; the page beside ours is made in a folder."""
    bare = opponents.bare(folder / "bare", site)
    clock, still = clock_of(CLOCK), clock_of(STILL_CLOCK)
    ours: list[Visit] = []
    theirs: list[Visit] = []
    with server.serving(site, encodings=("gzip",)) as here, server.serving(bare.root, encodings=("gzip",)) as there:
        for run in range(runs):
            theirs.append(visit(there, "", bare.clock, WIDTHS[0], lambda seen: bool(seen["live"])))
            ours.append(visit(here, GUIDE, clock, WIDTHS[0], lambda seen: len(seen["answers"]) >= EDITS))
            yield f"Visit {run + 1} of {runs}: bare Pyodide {theirs[-1].live:.0f} ms, {GUIDE} {ours[-1].live:.0f} ms"
        shifts = {
            width: visit(here, GUIDE, still, width, lambda seen: 0 < seen["live"] < seen["seen"] - SETTLED).shift
            for width in WIDTHS
        }
    yield from summary(ours, theirs, shifts)
    yield from desktop_times()


def summary(ours: list[Visit], theirs: list[Visit], shifts: dict[int, float]) -> Iterator[str]:
    """What the visits come to, beside what is aimed at."""
    live, bare = (statistics.median(visit.live for visit in visits) for visits in (ours, theirs))
    answers = [time for visit in ours for time in visit.answers]
    yield ""
    yield row("First live result, cold", f"{live / bare:.2f} of bare", f"{live:.0f} and {bare:.0f} ms; at most 0.25")
    median = f"median {statistics.median(answers):.0f} of {len(answers)} edits; at most 16"
    yield row("Edit to result, 95th percentile", f"{percentile_95(answers):.0f} ms", median)
    beside = f"bare {theirs[0].sent / 1e6:.2f}; at most 6.50"
    yield row("Gzipped, first visit", f"{ours[0].sent / 1e6:.2f} MB", beside)
    for width, shift in shifts.items():
        yield row(f"Layout shift at {width} px", f"{shift:.4f}", "aimed at 0")


def row(what: str, value: str, beside: str) -> str:
    """One line of a report: what was measured, what came out, and what is aimed at."""
    return f"{what:34}{value:>16}   ({beside})"


def percentile_95(times: list[float]) -> float:
    """What all but one in twenty keep below."""
    return sorted(times)[int(0.95 * len(times))]


def visit(site: server.Site, path: str, clock: str, width: int, enough: Callable[[Any], bool]) -> Visit:
    """Open a page in a new browser with an empty cache on disk, and wait until its clock has seen enough."""
    site.requests.clear()
    with (
        tempfile.TemporaryDirectory() as profile,
        sync_playwright() as playwright,
        opened(playwright, profile, clock, width) as page,
    ):
        page.goto(site.url + path, wait_until="commit")
        seen = wait_for_clock(page, enough)
    sent = sum(request.sent for request in site.requests)
    return Visit(seen["live"], seen.get("answers", []), sent, seen.get("shift", 0.0))


@contextlib.contextmanager
def opened(playwright: Playwright, profile: str, clock: str, width: int = WIDTHS[0]) -> Iterator[Page]:
    """An empty page in a browser of its own, which reaches no other host than this machine."""
    context = playwright.chromium.launch_persistent_context(
        profile,
        executable_path=toolchain.find_chromium(),
        viewport={"width": width, "height": 900},
        args=[
            *("--disable-background-networking", "--disable-component-update", "--no-first-run"),
            "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
        ],
    )
    context.add_init_script(clock)
    yield context.new_page()
    context.close()


def wait_for_clock(page: Page, enough: Callable[[Any], bool]) -> Any:
    """What the page's clock says once that is `enough`; Problem after two minutes."""
    for _ in range(1200):
        seen = page.evaluate("globalThis.clock")
        if seen and enough(seen):
            return seen
        page.wait_for_timeout(100)
    raise toolchain.Problem(f"{page.url} gave no result within two minutes: {json.dumps(seen)}")


def desktop_times() -> Iterator[str]:
    """How long a worksheet takes in this Python, unmeasured parts such as charts and HTML left out."""
    yield ""
    winter_weather.fetch_with(weather_text)
    for key in WORKSHEETS:
        times = timeit.repeat(lambda key=key: answer(key, {}), number=20, repeat=7)  # type: ignore[misc]
        yield f"{key:34}{min(times) / 20 * 1000:13.2f} ms   (on the desktop; at most 2)"
