"""What `scripts/bench load` measures: how long until a page's first computed result, cold and warm, on three lines.

Each round visits every page on every line in turn, first in a browser that was never there (cold) and then once more
in the same (warm), so that what else the machine does falls on all alike. A run ends when its time is up, after whole
rounds.
"""

from __future__ import annotations

import json
import shutil
import statistics
import tempfile
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from playwright.sync_api import BrowserContext, sync_playwright

import finishing
import server
import toolchain
from line import Line
from measuring import BARE_CLOCK, BARE_PAGE, BARE_SCRIPT, BARE_WORKER, CLOCK, GUIDE, clock_of, wait_for_clock

MINUTES = 8.0
LINES: dict[str, tuple[float, float] | None] = {  # bits a second and seconds
    "unthrottled": None,
    "10 Mbit/s, 40 ms": (10e6, 0.040),
    "1.6 Mbit/s, 150 ms": (1.6e6, 0.150),
}
BARE, FAIR, OURS = "bare loadPyodide", "compiled, trimmed library", "this site"
# The fair opponent: what an informed author would do with documented options alone, and still only 1 + 1.
FAIR_WORKER = """
import { loadPyodide } from "./pyodide/pyodide.mjs";
const pyodide = await loadPyodide({ stdLibURL: new URL("python_stdlib.zip", import.meta.url).href });
postMessage(pyodide.runPython("1 + 1"));
"""


@dataclass(frozen=True)
class Seen:
    """One visit: milliseconds from the call of the page to its first computed result, and bytes sent."""

    live: float
    sent: int


Visits = dict[tuple[str, str, str], list[Seen]]  # by line, page, and "cold" or "warm"


def report(site: Path, minutes: float, out: Path | None) -> Iterator[str]:
    """The lines to print, each when it is known; all visits go into `out` as JSON."""
    until = time.monotonic() + 60 * minutes
    visits: Visits = {}
    with tempfile.TemporaryDirectory() as folder:
        pages = {**_opponents(site, Path(folder)), OURS: (site, GUIDE)}
        rounds = 0
        longest = 0.0
        while rounds == 0 or time.monotonic() + longest < until:
            started = time.monotonic()
            for line in LINES:
                for page, (root, path) in pages.items():
                    cold, warm = _visit_twice(root, path, line, page)
                    visits.setdefault((line, page, "cold"), []).append(cold)
                    visits.setdefault((line, page, "warm"), []).append(warm)
                    yield f"Round {rounds + 1}, {line}, {page}: cold {cold.live:.0f} ms, warm {warm.live:.0f} ms"
            rounds += 1
            longest = max(longest, time.monotonic() - started)
    yield ""
    yield from table(visits, rounds)
    if out:
        out.write_text(json.dumps(as_json(visits), indent=1) + "\n", encoding="utf-8")
        yield f"\nAll visits are in {out}."


def _opponents(site: Path, folder: Path) -> dict[str, tuple[Path, str]]:
    """The two pages that say 1 + 1, each a site of its own."""
    library = next((site / "assets" / "python").glob("library-*/python_stdlib.zip"))
    made: dict[str, tuple[Path, str]] = {}
    for name, worker in {BARE: BARE_WORKER, FAIR: FAIR_WORKER}.items():
        root = folder / str(len(made))
        shutil.copytree(toolchain.ROOT / "node_modules" / "pyodide", root / "pyodide")
        shutil.copyfile(library, root / "python_stdlib.zip")
        for file, text in {"index.html": BARE_PAGE, "page.js": BARE_SCRIPT, "worker.js": worker}.items():
            (root / file).write_text(text, encoding="utf-8")
        rules = "/*\n  Cache-Control: public, max-age=86400\n/\n  Cache-Control: no-cache\n"
        (root / "_headers").write_text(rules, encoding="utf-8")
        finishing.compress(root)
        made[name] = (root, "")
    return made


def _visit_twice(root: Path, path: str, line: str, page: str) -> tuple[Seen, Seen]:
    speed = LINES[line]
    shaped = Line(speed[0] / 8, speed[1]) if speed else None
    clock = clock_of(CLOCK, edits=1) if page == OURS else BARE_CLOCK
    with (
        server.serving(root, encodings=("gzip",), line=shaped) as running,
        tempfile.TemporaryDirectory() as profile,
        sync_playwright() as playwright,
    ):
        return (
            _visit(running, path, clock, lambda: _open(playwright, profile)),
            _visit(running, path, clock, lambda: _open(playwright, profile)),
        )


def _open(playwright: Any, profile: str) -> BrowserContext:
    context: BrowserContext = playwright.chromium.launch_persistent_context(
        profile,
        executable_path=toolchain.find_chromium(),
        args=["--disable-background-networking", "--disable-component-update", "--no-first-run"],
    )
    return context


def _visit(running: server.Site, path: str, clock: str, opened: Callable[[], BrowserContext]) -> Seen:
    context = opened()
    context.add_init_script(clock)
    tab = context.new_page()
    running.requests.clear()
    tab.goto(running.url + path, wait_until="commit")
    seen = wait_for_clock(tab, lambda told: bool(told["live"]))
    tab.wait_for_timeout(500)  # until the browser has put away what it keeps
    context.close()
    return Seen(seen["live"], sum(request.sent for request in running.requests))


def table(visits: Visits, rounds: int) -> Iterator[str]:
    """Markdown: medians with the spread, the ratio to each opponent on the same line, and bytes."""
    yield f"Milliseconds to the first computed result: median [least to most] of {rounds} visits; gzip."
    yield ""
    yield "| line | visit | page | ms | of bare | of fair | MB |"
    yield "|---|---|---|---|---|---|---|"
    for line, page, visit in sorted(visits, key=lambda name: (list(LINES).index(name[0]), name[2])):
        seen = visits[line, page, visit]
        times = [each.live for each in seen]
        median = statistics.median(times)
        others = (statistics.median(each.live for each in visits[line, other, visit]) for other in (BARE, FAIR))
        ratios = (f"{median / other:.2f}" for other in others)
        sent = statistics.median(each.sent for each in seen) / 1e6
        spread = f"{median:.0f} [{min(times):.0f} to {max(times):.0f}]"
        yield f"| {line} | {visit} | {page} | {spread} | {' | '.join(ratios)} | {sent:.2f} |"


def as_json(visits: Visits) -> list[dict[str, Any]]:
    """Every visit, for who wants to reckon otherwise."""
    return [
        {"line": line, "page": page, "visit": visit, "ms": round(each.live, 1), "bytes": each.sent}
        for (line, page, visit), seen in visits.items()
        for each in seen
    ]
