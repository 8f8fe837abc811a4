"""The dealer's desk: from a customer's question to one link that opens with the numbers in place."""

from __future__ import annotations

from typing import Any

import pytest
from playwright.sync_api import Locator, Page, expect

import edition
import server
from calc.answer import Typed, answer
from tests.browser.conftest import Visiting
from tests.browser.reader import SIZES, Reader, plain
from tests.browser.test_reach import UNFOLD, assert_accessible, assert_nothing_beyond_the_edge
from tests.paper import Paper

pytestmark = pytest.mark.browser

QUILLBROOK = edition.load("quillbrook")
CLIPBOARD = ["clipboard-read", "clipboard-write"]
# What the theme keeps by itself: whether the page is light or dark.
STORED = """async () => [
  ...Object.keys(localStorage).filter((key) => !key.endsWith(".__palette")), ...Object.keys(sessionStorage),
  ...(await indexedDB.databases()).map((base) => base.name), ...(await caches.keys()), document.cookie,
].filter((name) => name)"""


class Desk:
    """The desk in a page."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.desk = page.locator("[data-ss-desk]")

    def open(self, address: str) -> None:
        self.page.goto(address)
        self.wait_until_live()

    def wait_until_live(self) -> None:
        expect(self.desk.get_by_role("button", name="Next customer")).to_be_enabled()
        self.wait()

    def wait(self) -> None:
        self.page.locator("[data-ss-desk]:not([data-busy])").wait_for()

    def choose(self, label: str, option: str) -> None:
        self.desk.get_by_label(label, exact=True).select_option(label=option)
        self.wait()

    def box(self, key: str) -> Locator:
        return self.page.locator(f"#desk-{key}")

    def type(self, key: str, text: str) -> None:
        self.box(key).fill(text)
        self.box(key).blur()
        self.wait()

    def press(self, name: str) -> None:
        self.desk.get_by_role("button", name=name).click()
        self.wait()

    @property
    def message(self) -> str:
        return plain(self.desk.get_by_label("Message").input_value())

    @property
    def link(self) -> str:
        return self.desk.get_by_label("Link", exact=True).input_value()

    @property
    def figure(self) -> str:
        return plain(self.desk.locator(".ss-figure").inner_text())

    def clipboard(self) -> str:
        return plain(str(self.page.evaluate("navigator.clipboard.readText()")))


@pytest.fixture
def desk(page: Page, served: server.Site) -> Desk:
    result = Desk(page)
    result.open(f"{served.url}dealers/")
    return result


@pytest.mark.parametrize("size", SIZES)
def test_the_dealers_journey(visiting: Visiting, served: server.Site, places: dict[str, str], size: str) -> None:
    """Ten steps, from a customer at the counter to the same numbers on the customer's own telephone."""
    with visiting([], viewport=SIZES[size], permissions=CLIPBOARD) as page:
        desk = Desk(page)
        # 1. A customer stands at the counter; the dealer finds the desk from the home page, and it shows the dealer's name.
        page.goto(served.url)
        page.get_by_role("navigation", name="Ways in").get_by_role("link", name="Dealer's desk").click()
        desk.wait_until_live()
        assert page.url == f"{served.url}dealers/"
        expect(page.get_by_role("heading", name="From the stock of Quillbrook Stove Barn")).to_be_visible()
        # 2. "How big a tank do I need?" The dealer picks that question.
        desk.choose("Question", "What size of tank?")
        # 3. The house stands up the valley: height and degree-days come with the place.
        desk.choose("Where the house stands", "Quillbrook valley, 3,000 ft")
        expect(desk.box("altitude")).to_have_value("3,000 ft")
        # 4. The customer likes the large cellar stove. Its numbers come from the stock.
        desk.choose("Appliance", "Cellar 25")
        expect(desk.box("water_output")).to_have_value("77,000 Btu/h")
        # 5. The house loses 30,500 Btu/h on the coldest night; the old baseboards work at 130 °F.
        desk.type("design_load", "30500")
        desk.type("lowest_useful", "130")
        # 6. Nobody knows how hot the store will get: the box stays empty, and says what is taken.
        expect(desk.box("store_top")).to_have_value("")
        expect(page.locator("#desk-store_top-note")).to_contain_text("Empty: 180 °F is taken, a usual value.")
        # 7. The answer is there, and it is what the same worksheet says anywhere else.
        known = {
            "water_output": Typed("77,000 Btu/h"),
            "burn_time": Typed("4 h"),
            "firebox_volume": Typed("7 ft3"),
            "altitude": Typed("3,000 ft"),
            "design_load": Typed("30500"),
            "lowest_useful": Typed("130"),
        }
        sheet = answer("tank-size", known)
        assert sheet.headline
        assert desk.figure == plain(sheet.headline.shown)
        # 8. The dealer copies the message. It has the question, the answer, the link and the dealer's name.
        desk.press("Copy the message")
        expect(desk.desk.locator("[data-slot=copied]")).to_have_text("The message is copied.")
        message = desk.clipboard()
        assert message.startswith(f"What size of tank? Recommended store: {plain(sheet.headline.shown)} (rough).")
        assert desk.link in message
        assert message.endswith(f"Quillbrook Stove Barn {QUILLBROOK.contact}")
        assert_nothing_beyond_the_edge(page, "the desk")
        # 9. Another customer would rather scan: the QR code on the counter says the same link.
        desk.press("Show a QR code")
        assert Paper(page.pdf(format="A4")).code() == desk.link
        assert page.evaluate(STORED) == []
        link = desk.link
    # 10. On the customer's telephone the link opens at the worksheet, with the numbers in place.
    with visiting([], viewport=SIZES["phone"]) as page:
        page.goto(link)
        reader = Reader(page, "tank-size")
        reader.wait_until_live()
        expect(reader.slot("whose")).to_have_text("Numbers that came with a link")
        expect(reader.sheet.locator(".ss-head")).to_be_in_viewport()
        assert reader.figure == plain(sheet.headline.shown)
        for key in known:
            expect(reader.field(key)).to_have_attribute("data-from", "link")
        expect(reader.unknown("store_top")).to_be_checked()
        assert link.startswith(served.url + places["tank-size"])


def test_nothing_of_a_customer_is_kept(desk: Desk, served: server.Site) -> None:
    """Neither in the browser nor in the address, nor on the desk when the next one comes, nor when it is loaded again."""
    page = desk.page
    desk.choose("Appliance", "Kitchen 14")
    desk.type("design_load", "13,313")
    served.requests.clear()
    desk.press("Show a QR code")
    assert page.evaluate(STORED) == []
    assert page.url == f"{served.url}dealers/"
    assert not any("13313" in request.path or "13,313" in request.path for request in served.requests)
    desk.press("Next customer: clear the desk")
    expect(desk.box("design_load")).to_have_value("")
    expect(desk.desk.get_by_label("Appliance", exact=True)).to_have_value("")
    assert desk.desk.locator("svg.ss-qr").count() == 0
    assert "13,313" not in desk.message
    assert desk.link.endswith("/guides/storage/#tank-size"), "with nothing known the link leads to the worksheet itself"
    desk.type("design_load", "13,313")
    page.reload()
    expect(desk.desk.get_by_role("button", name="Next customer")).to_be_enabled()
    desk.wait()
    expect(desk.box("design_load")).to_have_value("")


def test_a_wrong_number_is_told_and_gives_no_link(desk: Desk) -> None:
    desk.type("design_load", "12 apples")
    expect(desk.page.locator("#desk-design_load-error")).to_contain_text("Design load (heat lost on the coldest day)")
    expect(desk.box("design_load")).to_have_attribute("aria-invalid", "true")
    assert desk.figure == "No result yet"
    assert desk.link == ""
    assert desk.message == (
        "There is no link while a number is wrong. See: Design load (heat lost on the coldest day)."
    )
    for name in ("Copy the message", "Copy the link", "Show a QR code"):
        expect(desk.desk.get_by_role("button", name=name)).to_be_disabled()
    desk.type("design_load", "12 kW")
    expect(desk.page.locator("#desk-design_load-error")).to_be_hidden()
    assert "12kW" in desk.link


def test_what_stock_filled_in_goes_with_it_unless_it_was_changed(desk: Desk) -> None:
    desk.choose("Appliance", "Cellar 25")
    desk.type("burn_time", "6 h")
    desk.choose("Appliance", "Kitchen 8")
    expect(desk.box("water_output")).to_have_value("17,000 Btu/h")
    desk.choose("Appliance", "Not chosen")
    expect(desk.box("water_output")).to_have_value("")
    desk.choose("Appliance", "Cellar 25")
    desk.type("water_output", "70,000")
    desk.choose("Appliance", "Not chosen")
    expect(desk.box("water_output")).to_have_value("70,000")
    expect(desk.box("burn_time")).to_have_value("")


def test_what_is_known_goes_along_to_another_question(desk: Desk) -> None:
    desk.choose("Tank", "500 gal, open")
    desk.type("design_load", "13,300")
    desk.choose("Question", "How much usable heat is in the tank, and how long does it last?")
    expect(desk.box("design_load")).to_have_value("13,300")
    expect(desk.box("store_volume")).to_have_value("500 gal")
    expect(desk.box("system_pressure")).to_have_value("0 psi")
    assert ";store_volume=500gal!s.500-gal-open;" in desk.link
    # A choice brings its own boxes.
    desk.choose("Question", "How much heat does my house lose on the coldest day?")
    desk.box("method").select_option("quick")
    desk.wait()
    expect(desk.box("heated_area")).to_be_visible()
    expect(desk.box("wall_area")).to_be_hidden()


def test_the_message_comes_in_either_units(desk: Desk) -> None:
    desk.choose("Tank", "800 gal, closed")
    desk.choose("Question", "How much usable heat is in the tank, and how long does it last?")
    desk.type("design_load", "30,500")
    desk.type("lowest_useful", "130")
    link = desk.link
    assert "Btu" in desk.message and "kWh" not in desk.message
    desk.desk.get_by_label("SI units").check()
    desk.wait()
    assert "kWh" in desk.message and "Btu" not in desk.message.replace(desk.link, "")
    assert desk.link == link.replace(";from=", ";units=si;from=")
    expect(desk.box("lowest_useful")).to_have_value("54")
    desk.desk.get_by_label("US units").check()
    desk.wait()
    expect(desk.box("lowest_useful")).to_have_value("130")
    assert desk.page.evaluate(STORED) == []


def test_a_message_says_stop_where_the_worksheet_does(desk: Desk) -> None:
    desk.choose("Question", "The pump stops while it burns: how long until it boils?")
    desk.choose("Appliance", "Cellar 25")
    desk.page.locator("#desk-safety_coil").select_option("well")
    desk.wait()
    assert "Stop:" in desk.message
    expect(desk.desk.locator(".ss-stop").first).to_be_visible()


def test_the_desk_of_another_edition(page: Page, served: server.Site) -> None:
    desk = Desk(page)
    desk.open(f"{served.url}dealers/si-desk/")
    expect(desk.desk.get_by_label("SI units")).to_be_checked()
    desk.choose("Question", "How much usable heat is in the tank, and how long does it last?")
    desk.choose("Tank", "1000 L, open")
    desk.type("design_load", "6")
    desk.type("lowest_useful", "45")
    expect(desk.box("store_volume")).to_have_value("1000 L")
    assert "kWh" in desk.message
    assert desk.message.endswith("Ellerquist Stove Hall Come by the hall, or write to the workshop.")
    assert ";store_volume=1000L!s.1000-l-open;" in desk.link and ";design_load=6kW;" in desk.link


def test_where_copying_is_refused_the_text_is_marked(visiting: Visiting, served: server.Site) -> None:
    with visiting([]) as page:
        page.add_init_script("navigator.clipboard.writeText = () => Promise.reject(new Error('no'))")
        desk = Desk(page)
        desk.open(f"{served.url}dealers/")
        desk.type("design_load", "30,500")
        desk.press("Copy the link")
        expect(desk.desk.locator("[data-slot=copied]")).to_contain_text("The text is marked")
        assert page.evaluate("getSelection().toString() || document.activeElement.value") == desk.link


def test_without_a_calculator_it_says_so(page: Page, site: Any, troubles: list[str]) -> None:
    gone = server.Answer(404, b"gone", {"Content-Type": "text/plain"})
    with server.serving(site, interfere=lambda path: gone if "/worker.js" in path else None) as broken:
        page.goto(f"{broken.url}dealers/")
        expect(page.locator("[data-slot=status]")).to_have_text("The calculator could not start here.")
        expect(page.get_by_role("button", name="Try again")).to_be_visible()
    troubles.clear()


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_everybody_can_use_it(visiting: Visiting, served: server.Site, size: str, scheme: Any) -> None:
    with visiting([], viewport=SIZES[size], color_scheme=scheme) as page:
        desk = Desk(page)
        desk.open(f"{served.url}dealers/")
        for made in ("empty", "filled", "wrong"):
            if made == "filled":
                desk.choose("Appliance", "Cellar 40")
                desk.type("design_load", "30,500")
                desk.press("Show a QR code")
            if made == "wrong":
                desk.type("design_load", "some")
            page.evaluate(UNFOLD)
            assert_accessible(page, f"desk {made}, {size}, {scheme}")
            assert_nothing_beyond_the_edge(page, f"desk {made}, {size}")
