"""What tests of the built site share: the site, a server for it, a browser, and a page that notices trouble."""

from __future__ import annotations

import contextlib
from collections.abc import Callable, Iterator, Sequence
from contextlib import AbstractContextManager
from pathlib import Path
from typing import Any

import hypothesis
import pytest
from playwright.sync_api import (
    Browser,
    BrowserContext,
    ConsoleMessage,
    Page,
    Playwright,
    Request,
    ViewportSize,
    sync_playwright,
)
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

CHROMIUM: dict[str, Any] = {
    "executable_path": toolchain.find_chromium(),
    "args": ["--disable-background-networking", "--disable-component-update", "--no-first-run"],
}
ALL_VISITORS: dict[str, Any] = {"service_workers": "block"}
PROFILE_KINDS = {"viewport", "permissions", "color_scheme", "forced_colors", "reduced_motion"}

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


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """What browser tests reach of calc is not counted: other tests reach it too, and counting makes all of it slower."""
    for item in items:
        if item.get_closest_marker("browser"):
            item.add_marker("no_cover")


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
def playwright() -> Iterator[Playwright]:
    """What drives the browsers."""
    with sync_playwright() as running:
        yield running


@pytest.fixture(scope="session")
def browser(playwright: Playwright) -> Iterator[Browser]:
    """A headless Chromium: the machine's own, or Playwright's."""
    running = playwright.chromium.launch(**CHROMIUM)
    yield running
    running.close()


@pytest.fixture(scope="session")
def profile(playwright: Playwright, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Profile]:
    """A Chromium that keeps on the disk what it has compiled."""
    folder = tmp_path_factory.mktemp("profile")
    context = playwright.chromium.launch_persistent_context(folder, **CHROMIUM, **ALL_VISITORS)
    yield Profile(context)
    context.close()


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
def visiting(browser: Browser, profile: Profile) -> Visiting:
    """Opens pages of fresh visitors, for tests that need several or one of a special kind.

    One that is `alone` shares no profile: what stays open for longer than a test, or counts what is fetched.
    """

    @contextlib.contextmanager
    def visit(troubles: list[str], alone: bool = False, **kind: Any) -> Iterator[Page]:
        if alone or profile.busy or not kind.keys() <= PROFILE_KINDS:
            context = browser.new_context(**ALL_VISITORS | kind)
            listen(context, troubles.append)
            try:
                yield context.new_page()
            finally:
                context.close()
        else:
            with profile.visit(troubles, **kind) as page:
                yield page
        assert not troubles, "\n".join(troubles)

    return visit


class Profile:
    """One profile for visitors who come after each other: none finds what another left, but for what the browser compiled.

    A page in it starts Python in half of the processor's time. That a first visitor's start works too is seen by every
    test with a server of its own, for whose address nothing is kept.
    """

    def __init__(self, context: BrowserContext) -> None:
        self.busy = False
        self._context = context
        self._troubles: list[str] = []
        self._places: set[str] = set()
        self._cleaning = context.new_cdp_session(context.pages[0])
        listen(context, lambda trouble: self._troubles.append(trouble))
        context.on("request", lambda request: self._places.add("/".join(request.url.split("/")[:3])))

    @contextlib.contextmanager
    def visit(
        self,
        troubles: list[str],
        viewport: ViewportSize | None = None,
        permissions: Sequence[str] = (),
        **media: Any,
    ) -> Iterator[Page]:
        """A page of a visitor of whom this profile knows nothing."""
        self.busy, self._troubles = True, troubles
        page = self._context.new_page()
        try:
            page.emulate_media(**media)
            if viewport:
                page.set_viewport_size(viewport)
            if permissions:
                self._context.grant_permissions(permissions)
            yield page
        finally:
            self._forget()
            self.busy = False

    def _forget(self) -> None:
        for page in self._context.pages[1:]:
            page.close()
        self._context.unroute_all()
        self._context.clear_permissions()
        for origin in self._places:
            what = {"origin": origin, "storageTypes": "local_storage,indexeddb,cache_storage,service_workers"}
            self._cleaning.send("Storage.clearDataForOrigin", what)
        self._places.clear()


def listen(context: BrowserContext, note: Callable[[str], None]) -> None:
    """Note what goes wrong on the pages of a context."""
    context.set_default_timeout(PATIENCE)
    context.add_init_script(REPORT_VIOLATIONS)
    context.on("request", lambda request: note_request(request, note))
    context.on("console", lambda message: note_console(message, note))
    context.on("weberror", lambda error: note(f"uncaught: {error.error}"))


def note_console(message: ConsoleMessage, note: Callable[[str], None]) -> None:
    """Note an error that the page printed."""
    if message.type == "error":
        note(f"console: {message.text} ({message.location.get('url', '')})")


def note_request(request: Request, note: Callable[[str], None]) -> None:
    """Note a request that went to another host."""
    if not request.url.startswith(("http://127.0.0.1:", "data:", "blob:", "about:")):
        note(f"asked another host: {request.url}")
