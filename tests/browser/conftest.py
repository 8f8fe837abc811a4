"""What the browser tests share: where each worksheet stands, and pages at which it is live."""

from __future__ import annotations

import contextlib
import re
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

import finishing
import server
from calc.worksheets import WORKSHEETS
from tests.browser.reader import SIZES, Reader

expect.set_options(timeout=60_000)  # what a busy machine may need
Visiting = Callable[..., AbstractContextManager[Page]]
At = Callable[..., Reader]
Live = Callable[..., AbstractContextManager[Reader]]


@pytest.fixture(scope="session")
def places(site: Path) -> dict[str, str]:
    """The address, below the site's, of the page on which each worksheet stands."""
    result = {}
    for path in [site / "start/index.html", *sorted(site.glob("guides/*/index.html"))]:
        for key in re.findall(r'data-worksheet="([^"]+)"', path.read_text(encoding="utf-8")):
            result[key] = f"{path.parent.relative_to(site).as_posix()}/"
    assert result
    return {key: result[key] for key in WORKSHEETS if key in result}


@pytest.fixture(scope="session")
def asked_anew(site: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The site on a host that has browsers ask for everything anew, so that it hears of each worker."""
    root = tmp_path_factory.mktemp("asked anew")
    for path in site.iterdir():
        (root / path.name).symlink_to(path)
    (root / "_headers").unlink()
    rules = (site / "_headers").read_text(encoding="utf-8")
    (root / "_headers").write_text(rules.replace(finishing.FOR_EVER, "no-cache"), encoding="utf-8")
    return root


@dataclass
class Desk:
    """A page that stays open from test to test, cleared before each, since starting Python takes its time."""

    page: Page
    troubles: list[str]
    address: str


@pytest.fixture(scope="session")
def desks(visiting: Visiting) -> Iterator[Callable[[str], Desk]]:
    """Opens a guide's page, once for all tests."""
    with contextlib.ExitStack() as open_pages:
        known: dict[str, Desk] = {}

        def desk(address: str) -> Desk:
            if address not in known:
                troubles: list[str] = []
                page = open_pages.enter_context(visiting(troubles))
                page.goto(address)
                known[address] = Desk(page, troubles, address)
            return known[address]

        yield desk


@pytest.fixture
def at(desks: Callable[[str], Desk], served: server.Site, places: dict[str, str]) -> Iterator[At]:
    """A worksheet at which nothing has been typed yet, in US units."""
    used: list[Desk] = []

    def reader_at(worksheet: str, size: str = "desktop") -> Reader:
        desk = desks(served.url + places[worksheet])
        used.append(desk)
        reader = Reader(desk.page, worksheet)
        desk.page.set_viewport_size(SIZES[size])
        reader.wait_until_live()
        desk.page.evaluate(CLEAR)
        reader.wait()
        return reader

    yield reader_at
    for desk in used:
        told, desk.troubles[:] = list(desk.troubles), []
        assert not told, "\n".join(told)


CLEAR = """() => {
  history.replaceState(null, "", location.pathname);
  sessionStorage.removeItem("stoke-and-store.opened");
  document.querySelector("[data-ss-units=us]").click();
  document.querySelector("[data-borrowed] [data-ss-link=mine]")?.click(); // a link that nobody has answered yet
  document.querySelectorAll("[data-ss-clear]").forEach((button) => button.click());
  document.activeElement?.blur();
  scrollTo(0, 0);
}"""


@pytest.fixture(scope="session")
def live(visiting: Visiting, served: server.Site, places: dict[str, str]) -> Live:
    """Opens a fresh visitor's page and waits until a worksheet on it is live."""

    @contextlib.contextmanager
    def open_live(
        worksheet: str, address: str = "", troubles: list[str] | None = None, **kind: Any
    ) -> Iterator[Reader]:
        with visiting([] if troubles is None else troubles, **kind) as page:
            page.goto(f"{served.url}{places[worksheet]}{address}")
            reader = Reader(page, worksheet)
            reader.wait_until_live()
            yield reader

    return open_live
