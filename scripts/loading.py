"""What `scripts/bench load` measures: how long until a page's first computed result, cold and warm, on three lines.

On a line, every page is visited in turn, first in a browser that was never there (cold) and then once more in the same
(warm), so that what else the machine does falls on all alike. Each line is gone through once, and then again as often
as the time allows, so that the quick ones are gone through more often.
"""

from __future__ import annotations

import itertools
import json
import statistics
import tempfile
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from playwright.sync_api import Playwright, sync_playwright

import measuring
import opponents
import server
import toolchain
from line import Line
from opponents import BARE, FAIR, FLOOR, FRAMEWORK, Page

LINES: dict[str, tuple[float, float] | None] = {  # bits a second and seconds
    "unthrottled": None,
    "10 Mbit/s, 40 ms": (10e6, 0.040),
    "1.6 Mbit/s, 150 ms": (1.6e6, 0.150),
}
OURS = "this site"
BESIDE = {BARE: "bare", FAIR: "fair", FRAMEWORK: "PyScript", FLOOR: "floor"}


@dataclass(frozen=True)
class Seen:
    """One visit: milliseconds from the call of the page to its first computed result, and bytes sent."""

    live: float
    sent: int


Visits = dict[tuple[str, str, str], list[Seen]]  # by line, page, and "cold" or "warm"


def report(site: Path, minutes: float, out: Path | None) -> Iterator[str]:
    """The lines to print, each when it is known; all visits go into `out` as JSON."""
    visits: Visits = {}
    with tempfile.TemporaryDirectory() as folder:
        pages = {name: make(Path(folder, BESIDE[name]), site) for name, make in opponents.MAKERS.items()}
        pages[OURS] = Page(site, measuring.GUIDE, measuring.clock_of(measuring.CLOCK, edits=1))
        for line in turns(minutes):
            for name, page in pages.items():
                cold, warm = _visit_twice(page, line)
                visits.setdefault((line, name, "cold"), []).append(cold)
                visits.setdefault((line, name, "warm"), []).append(warm)
                yield f"{line}, {name}: cold {cold.live:.0f} ms, warm {warm.live:.0f} ms"
    yield ""
    yield from table(visits)
    if out:
        out.write_text(json.dumps(as_json(visits), indent=1) + "\n", encoding="utf-8")
        yield f"\nAll visits are in {out}."


def turns(minutes: float) -> Iterator[str]:
    """The lines in turn, each while there is time for what it took at most, and the first time in any case."""
    until = time.monotonic() + 60 * minutes
    longest: dict[str, float] = {}

    def fits(line: str) -> bool:
        return line not in longest or time.monotonic() + longest[line] < until

    for line in itertools.cycle(LINES):
        if not any(map(fits, LINES)):
            return
        if fits(line):
            started = time.monotonic()
            yield line
            longest[line] = max(longest.get(line, 0), time.monotonic() - started)


def shaped(line: str) -> Line | None:
    """A line of that name, new and idle."""
    speed = LINES[line]
    return Line(speed[0] / 8, speed[1]) if speed else None


def _visit_twice(page: Page, line: str) -> tuple[Seen, Seen]:
    with (
        server.serving(page.root, encodings=("gzip",), line=shaped(line)) as running,
        tempfile.TemporaryDirectory() as profile,
        sync_playwright() as playwright,
    ):
        return _visit(running, page, playwright, profile), _visit(running, page, playwright, profile)


def _visit(running: server.Site, page: Page, playwright: Playwright, profile: str) -> Seen:
    running.requests.clear()
    with measuring.opened(playwright, profile, page.clock) as tab:
        tab.goto(running.url + page.path, wait_until="commit")
        seen = measuring.wait_for_clock(tab, lambda told: bool(told["live"]))
        tab.wait_for_timeout(500)  # until the browser has put away what it keeps
    if page.shows not in seen.get("shown", ""):
        raise toolchain.Problem(f"A page that is to show “{page.shows}” shows “{seen['shown']}”.")
    return Seen(seen["live"], sum(request.sent for request in running.requests))


def table(visits: Visits) -> Iterator[str]:
    """Markdown: medians with the spread, the ratio to each page beside ours on the same line, and bytes."""
    yield "Milliseconds to the first computed result: median [least to most] of so many visits; gzip."
    yield ""
    yield f"| line | visit | page | visits | ms |{''.join(f' of {name} |' for name in BESIDE.values())} MB |"
    yield "|---" * (6 + len(BESIDE)) + "|"
    for line, page, visit in sorted(visits, key=lambda name: (list(LINES).index(name[0]), name[2])):
        seen = visits[line, page, visit]
        times = [each.live for each in seen]
        median = statistics.median(times)
        others = (statistics.median(each.live for each in visits[line, other, visit]) for other in BESIDE)
        ratios = (f"{median / other:.2f}" for other in others)
        sent = statistics.median(each.sent for each in seen) / 1e6
        spread = f"{median:.0f} [{min(times):.0f} to {max(times):.0f}]"
        yield f"| {line} | {visit} | {page} | {len(seen)} | {spread} | {' | '.join(ratios)} | {sent:.2f} |"


def as_json(visits: Visits) -> list[dict[str, Any]]:
    """Every visit, for who wants to reckon otherwise."""
    return [
        {"line": line, "page": page, "visit": visit, "ms": round(each.live, 1), "bytes": each.sent}
        for (line, page, visit), seen in visits.items()
        for each in seen
    ]
