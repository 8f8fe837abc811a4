"""What tests of the built site share: the site, a server for it, a browser, and a page that notices trouble."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, ConsoleMessage, Page, Request, sync_playwright

import building
import server
import toolchain

PATIENCE = 120_000  # milliseconds: what a busy machine may need, not what an idle one does

REPORT_VIOLATIONS = """
addEventListener("securitypolicyviolation", (event) =>
  console.error(`Content Security Policy: ${event.violatedDirective} refused ${event.blockedURI}`));
"""


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
def page(browser: Browser, troubles: list[str]) -> Iterator[Page]:
    """A fresh page of a fresh visitor; the test fails if anything went wrong on it that the test did not clear."""

    def note_console(message: ConsoleMessage) -> None:
        if message.type == "error":
            troubles.append(f"console: {message.text} ({message.location.get('url', '')})")

    def note_request(request: Request) -> None:
        if not request.url.startswith(("http://127.0.0.1:", "data:", "blob:", "about:")):
            troubles.append(f"asked another host: {request.url}")

    context = browser.new_context()
    context.set_default_timeout(PATIENCE)
    context.add_init_script(REPORT_VIOLATIONS)
    context.on("request", note_request)
    context.on("console", note_console)
    context.on("weberror", lambda error: troubles.append(f"uncaught: {error.error}"))
    yield context.new_page()
    context.close()
    assert not troubles, "\n".join(troubles)
