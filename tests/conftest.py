"""What tests of the built site share: the site, a server for it, a browser, and a page that notices trouble."""

from __future__ import annotations

import contextlib
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager
from pathlib import Path
from typing import Any

import hypothesis
import pytest
from playwright.sync_api import Browser, ConsoleMessage, Page, Request, sync_playwright
from xdist.scheduler import LoadScopeScheduling

import building
import server
import toolchain
from calc.__main__ import weather_text
from calc.physics import winter_weather

winter_weather.fetch_with(weather_text)

# The same examples at each run, so that a change is judged by what it changes; and no clock, since machines are busy.
hypothesis.settings.register_profile("steady", derandomize=True, deadline=None)
hypothesis.settings.load_profile("steady")

PATIENCE = 120_000  # milliseconds: what a busy machine may need, not what an idle one does

Visiting = Callable[..., AbstractContextManager[Page]]

REPORT_VIOLATIONS = """
addEventListener("securitypolicyviolation", (event) =>
  console.error(`Content Security Policy: ${event.violatedDirective} refused ${event.blockedURI}`));
"""


class Scheduling(LoadScopeScheduling):
    """Tests of one file that drive a browser run in one worker: they share open pages, prints and indexes, each dear to make.

    (xdist's own groups are lost on a pytest whose names of tests are no longer texts.)
    """

    def _split_scope(self, nodeid: str) -> str:
        file = nodeid.partition("::")[0]
        return file if file.startswith(("tests/browser/", "tests/other_browsers/", "tests/test_bench")) else nodeid


def pytest_xdist_make_scheduler(config: pytest.Config, log: Any) -> Scheduling:
    """Who runs which test."""
    return Scheduling(config, log)


@pytest.fixture(scope="session")
def site() -> Path:
    """The folder of the built site, built first if anything that it is made from has changed."""
    building.build()
    return building.SITE


@pytest.fixture(scope="session")
def served(site: Path) -> Iterator[server.Site]:
    """The built site behind an address on this machine."""
    with server.serving(site) as running:
        yield running


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """A headless Chromium: the machine's own, or Playwright's."""
    quiet = ["--disable-background-networking", "--disable-component-update", "--no-first-run"]
    with sync_playwright() as playwright:
        running = playwright.chromium.launch(executable_path=toolchain.find_chromium(), args=quiet)
        yield running
        running.close()


@pytest.fixture
def troubles() -> list[str]:
    """What went wrong on the page so far: errors, refusals, requests to other hosts. A test that means it clears it."""
    return []


@pytest.fixture
def page(visiting: Visiting, troubles: list[str]) -> Iterator[Page]:
    """A fresh page of a fresh visitor; the test fails if anything went wrong on it that the test did not clear."""
    with visiting(troubles) as page:
        yield page


@pytest.fixture(scope="session")
def visiting(browser: Browser) -> Visiting:
    """Opens pages of fresh visitors, for tests that need several or one of a special kind.

    Nobody sees or hears from outside the worker that pages share, so each page has one of its own unless it is `lasting`.
    """

    @contextlib.contextmanager
    def visit(troubles: list[str], lasting: bool = False, **kind: Any) -> Iterator[Page]:
        context = browser.new_context(**{"service_workers": "block", **kind})
        context.set_default_timeout(PATIENCE)
        context.add_init_script(REPORT_VIOLATIONS + ("" if lasting else "delete globalThis.SharedWorker;"))
        context.on("request", lambda request: note_request(request, troubles))
        context.on("console", lambda message: note_console(message, troubles))
        context.on("weberror", lambda error: troubles.append(f"uncaught: {error.error}"))
        try:
            yield context.new_page()
        finally:
            context.close()
        assert not troubles, "\n".join(troubles)

    return visit


def note_console(message: ConsoleMessage, troubles: list[str]) -> None:
    """Note an error that the page printed."""
    if message.type == "error":
        troubles.append(f"console: {message.text} ({message.location.get('url', '')})")


def note_request(request: Request, troubles: list[str]) -> None:
    """Note a request that went to another host."""
    if not request.url.startswith(("http://127.0.0.1:", "data:", "blob:", "about:")):
        troubles.append(f"asked another host: {request.url}")
