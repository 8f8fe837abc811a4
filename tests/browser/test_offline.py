"""The site without a line, and over an update: what is in sight is of one release, and the reader decides when it changes."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

import finishing
import offline
import server
from calc.answer import Typed
from tests.browser.conftest import Visiting
from tests.browser.reader import Reader, assert_says

pytestmark = pytest.mark.browser

KEPT = "async () => { await navigator.serviceWorker.ready; return (await caches.keys()).length; }"
WAITING = "async () => Boolean((await navigator.serviceWorker.getRegistration())?.waiting)"
GONE = "async () => !(await navigator.serviceWorker.getRegistration()) && (await caches.keys()).length === 0"
MARK = "another release"


class Host:
    """A host of a site, below a path of its own as many are, whose files can be replaced and whose line can be cut."""

    def __init__(self, root: Path, site: Path) -> None:
        self.folder = root / "warm"
        shutil.copytree(site, self.folder, copy_function=shutil.copyfile, ignore=shutil.ignore_patterns("*.gz", "*.br"))
        self.cut = False
        self.site = server.Site(root, interfere=self.interfere, offline=True)

    def interfere(self, path: str) -> server.Answer | None:
        if self.cut:
            raise ConnectionAbortedError  # nothing comes back
        # The host knows the headers of the folder, which it would else read at its root.
        if path == "/warm/sw.js":
            headers = {"Content-Type": "text/javascript", "Content-Security-Policy": finishing.KEEPER_POLICY}
            return server.Answer(200, (self.folder / offline.NAME).read_bytes(), headers)
        return None

    @property
    def url(self) -> str:
        return f"{self.site.url}warm/"

    def release(self, *, whole: bool = True) -> None:
        """Put another release there; or only its `sw.js`, while the rest of it is still on its way."""
        before = {path: path.read_text(encoding="utf-8") for path in self.folder.glob("guides/*/index.html")}
        for path, text in before.items():
            path.write_text(text.replace("</main>", f"<p>{MARK}</p></main>"), encoding="utf-8", newline="\n")
        offline.write(self.folder)
        if not whole:
            for path, text in before.items():
                path.write_text(text, encoding="utf-8", newline="\n")


@pytest.fixture
def host(site: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Host]:
    monkeypatch.setattr(server.Site, "handle_error", lambda *_: None)  # a line that is cut is meant to be
    host = Host(tmp_path, site)
    with server.running(host.site):
        yield host


@pytest.fixture
def visitor(visiting: Visiting) -> Iterator[Page]:
    """A fresh visitor whose browser may keep the site. What a cut line makes it print is no trouble."""
    troubles: list[str] = []
    with visiting(troubles, service_workers="allow") as page:
        yield page
        cut = ("Failed to load", "Failed to fetch", "sw.js")
        troubles[:] = [trouble for trouble in troubles if not any(words in trouble for words in cut)]


def open_guide(page: Page, host: Host, guide: str = "guides/storage/", worksheet: str = "stored-heat") -> Reader:
    page.goto(host.url + guide)
    reader = Reader(page, worksheet)
    reader.wait_until_live()
    return reader


def until(page: Page, is_so: str) -> None:
    for _ in range(600):
        if page.evaluate(is_so):
            return
        page.wait_for_timeout(100)
    raise AssertionError(f"never: {is_so}")


def shows(page: Page) -> str:
    return "new" if page.get_by_text(MARK).count() else "old"


def keep(page: Page, host: Host) -> Reader:
    """A first visit, until all of the site is kept."""
    reader = open_guide(page, host)
    assert page.evaluate(KEPT) == 1
    return reader


def open_again(page: Page) -> Reader:
    """Load the page again, until it is live: only now is it the service worker's."""
    page.reload()
    reader = Reader(page, "stored-heat")
    reader.wait_until_live()
    return reader


def look_for_update(page: Page) -> None:
    page.evaluate("async () => (await navigator.serviceWorker.getRegistration()).update().catch(() => {})")


def test_after_a_first_visit_all_of_it_can_be_read_and_reckoned_without_a_line(visitor: Page, host: Host) -> None:
    keep(visitor, host).type("store_volume", "640")
    host.cut = True
    reader = open_again(visitor)
    assert_says(reader, {"store_volume": Typed("640")})
    # Pages that were never opened, one by an address without its slash, are there too; so is the search.
    reader = open_guide(visitor, host, "guides/house", "house-load")
    reader.type("design_outdoor", "-20 °F")
    assert reader.state == "ready"
    visitor.goto(f"{host.url}sources/")
    visitor.locator("html[data-header=live]").wait_for()
    visitor.keyboard.press("/")
    visitor.keyboard.type("creosote")
    expect(visitor.locator(".md-search-result__link").first).to_be_visible()


def test_an_update_waits_until_the_reader_asks_and_never_mixes(visitor: Page, host: Host) -> None:
    keep(visitor, host)
    reader = open_again(visitor)
    reader.type("store_volume", "640")
    host.release()
    look_for_update(visitor)
    notice = visitor.locator("[data-ss-release]")
    expect(notice).to_contain_text("A newer version")
    # What is opened meanwhile, and what is loaded again, is of the release that is in sight.
    other = visitor.context.new_page()
    open_guide(other, host)
    visitor.reload()
    assert (shows(visitor), shows(other)) == ("old", "old")
    notice.get_by_role("button").click()
    expect(notice).to_contain_text("Other pages of this site are open")
    assert shows(visitor) == "old"
    other.close()
    notice.get_by_role("button").click()
    expect(visitor.get_by_text(MARK)).to_be_visible()
    reader.wait_until_live()
    assert_says(reader, {"store_volume": Typed("640")})
    assert visitor.evaluate(KEPT) == 1, "what was kept of the old release is forgotten"
    expect(notice).to_be_hidden()


def test_a_reader_whose_numbers_are_not_kept_is_asked_first(visitor: Page, host: Host) -> None:
    keep(visitor, host)
    visitor.add_init_script("Storage.prototype.setItem = () => { throw new DOMException('no', 'SecurityError'); }")
    reader = open_again(visitor)
    reader.type("store_volume", "640")
    host.release()
    look_for_update(visitor)
    notice = visitor.locator("[data-ss-release]")
    notice.get_by_role("button").click()
    expect(notice).to_contain_text("Your browser does not keep your numbers")
    expect(reader.box("store_volume")).to_have_value("640")
    notice.get_by_role("button").click()
    expect(visitor.get_by_text(MARK)).to_be_visible()


def test_a_release_that_has_not_wholly_arrived_is_none(visitor: Page, host: Host) -> None:
    keep(visitor, host)
    open_again(visitor)
    host.release(whole=False)
    look_for_update(visitor)
    until(visitor, "async () => !(await navigator.serviceWorker.getRegistration()).installing")
    assert not visitor.evaluate(WAITING)
    assert visitor.evaluate(KEPT) == 1
    host.cut = True
    open_again(visitor)


def test_when_the_last_page_is_closed_the_next_one_is_of_the_new_release(visitor: Page, host: Host) -> None:
    keep(visitor, host)
    open_again(visitor)
    host.release()
    look_for_update(visitor)
    until(visitor, WAITING)
    visitor.goto("about:blank")
    visitor.wait_for_timeout(500)
    open_guide(visitor, host)
    assert shows(visitor) == "new"


def remove(host: Host) -> None:
    offline.write(host.folder, keep=False)


def lose_what_is_kept(host: Host) -> None:
    pass


@pytest.mark.parametrize("ending", [remove, lose_what_is_kept])
def test_there_is_a_way_out(visitor: Page, host: Host, ending: Callable[[Host], None]) -> None:
    """`scripts/build --no-offline` takes it back; and one whose files are gone steps aside by itself."""
    keep(visitor, host)
    open_again(visitor)
    ending(host)
    if ending is remove:
        look_for_update(visitor)
    else:
        visitor.evaluate("async () => { for (const name of await caches.keys()) await caches.delete(name); }")
        visitor.reload()
    until(visitor, GONE)
    host.release()
    if ending is remove:
        remove(host)
    open_guide(visitor, host)
    assert shows(visitor) == "new"


def test_what_other_websites_frame_keeps_nothing(visitor: Page, host: Host) -> None:
    visitor.goto(f"{host.url}embed/stored-heat/")
    Reader(visitor, "stored-heat").wait_until_live()
    visitor.wait_for_timeout(4000)
    assert visitor.evaluate(GONE)
