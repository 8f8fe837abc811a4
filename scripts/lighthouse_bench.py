"""What `scripts/bench lighthouse` measures: Lighthouse on pages of the site, three runs each, their medians.

Accessibility, best practices and SEO are aimed at 100; performance hangs on the machine and is only told.
"""

from __future__ import annotations

import json
import os
import statistics
import subprocess
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import server
import toolchain

PAGES = ("", "start/", "guides/storage/", "plan/", "record/")
RUNS = 3
ATTEMPTS = 3  # now and then a browser hands over no trace, and Lighthouse asks to be run again
AIMED_AT = ("accessibility", "best-practices", "seo")
CATEGORIES = (*AIMED_AT, "performance")
CLI = toolchain.BENCH_PACKAGES / "node_modules" / "lighthouse" / "cli" / "index.js"
CHROME = "--headless=new --no-sandbox --host-resolver-rules='MAP * ~NOTFOUND, EXCLUDE 127.0.0.1'"


def report(site: Path) -> Iterator[str]:
    """The lines to print, each when it is known: the scores, and below them what took points where 100 is aimed at."""
    yield f"{'median of ' + str(RUNS) + ' runs':24}{''.join(f'{name:>16}' for name in CATEGORIES)}"
    with server.serving(site, encodings=("gzip",), offline=True) as running:
        for path in PAGES:
            told = [run(running.url + path) for _ in range(RUNS)]
            yield f"{'/' + path:24}{''.join(f'{median_score(told, name):16.0f}' for name in CATEGORIES)}"
            yield from sorted({fault for each in told for fault in faults(each)})


def run(address: str) -> dict[str, Any]:
    """Lighthouse's own report of one page, as on a phone."""
    options = ["--output=json", "--quiet", "--no-enable-error-reporting", f"--chrome-flags={CHROME}"]
    command = [str(toolchain.node()), str(CLI), address, f"--only-categories={','.join(CATEGORIES)}", *options]
    chromium = toolchain.find_chromium()
    if chromium is None:
        raise toolchain.Problem("Lighthouse needs a Chromium or Chrome on PATH: install one the way your system does.")
    surroundings = {**os.environ, "CHROME_PATH": chromium}
    for _ in range(ATTEMPTS):
        done = subprocess.run(command, env=surroundings, capture_output=True, encoding="utf-8", check=False)
        if not done.returncode:
            return dict(json.loads(done.stdout))
    raise toolchain.Problem(f"{done.stderr}\nLighthouse could not look at {address} (the reason is above).")


def median_score(told: list[dict[str, Any]], category: str) -> float:
    """Of 100."""
    return 100 * statistics.median(float(each["categories"][category]["score"]) for each in told)


def faults(told: dict[str, Any]) -> Iterator[str]:
    """What took points in the categories that are aimed at 100: the audit, and where it found what."""
    for category in AIMED_AT:
        for counted in told["categories"][category]["auditRefs"]:
            audit = told["audits"][counted["id"]]
            if counted["weight"] and audit["score"] is not None and audit["score"] < 1:
                found = audit.get("details", {}).get("items", [])
                yield f"  {category}: {audit['title']} {json.dumps(found)[:600]}"
