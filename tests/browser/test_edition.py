"""An edition started by the script, with logo, colours, prices and stock, published below another site."""

from __future__ import annotations

import re
import subprocess
import sys
from collections.abc import Iterator

import pytest
from playwright.sync_api import ViewportSize, expect

import building
import server
import toolchain
from calc.answer import open_link
from tests.browser.conftest import Visiting
from tests.browser.reader import Reader, plain
from tests.browser.test_desk import Desk
from tests.browser.test_reach import assert_nothing_beyond_the_edge

pytestmark = [pytest.mark.browser, pytest.mark.long]

PHONE: ViewportSize = {"width": 390, "height": 844}
LOGO = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 24"><rect width="40" height="24" fill="#ffd34d"/></svg>'
STOVES = ["name,water_output,room_output,burn_time"] + [f"Stove {size},{size} kW,3 kW,3 h" for size in range(8, 20)]
TANKS = ["name;store_volume;system_pressure"] + [f"{size} L;{size} L;1.5 bar" for size in (500, 800, 1000, 1500, 2000)]
PRICES = '[prices]\ndate = 2026-11-01\nsays = "our counter"\nfuel_price_wood = "95 €/m³"\n'
INVENTED = re.compile("quillbrook|ellerquist", re.IGNORECASE)


@pytest.fixture(scope="module")
def published(tmp_path_factory: pytest.TempPathFactory) -> Iterator[server.Site]:
    """A host in whose folder `heat` the edition's site lies."""
    folder = tmp_path_factory.mktemp("edition")
    (folder / "drawn.svg").write_text(LOGO, encoding="utf-8")
    mine = folder / "mine"
    words = {
        "name": "Harrow Hearth",
        "site-name": "Harrow & Sons",
        "contact": "Come by.",
        "units": "si",
        "place": "Lower Harrow",
        "altitude": "300 m",
        "design-outdoor": "-12 °C",
        "logo": str(folder / "drawn.svg"),
        "bar": "#5a1020",
        "accent": "#7a1f5b",
    }
    flags = [f"--{key}={text}" for key, text in words.items()]
    subprocess.run(
        [sys.executable, str(toolchain.ROOT / "scripts" / "new-edition"), str(mine), *flags],
        env=toolchain.environment(),
        check=True,
    )
    (mine / "appliances.csv").write_text("\n".join(STOVES), encoding="utf-8")
    (mine / "tanks.csv").write_text("\n".join(TANKS), encoding="utf-8")
    told = (mine / "edition.toml").read_text(encoding="utf-8")
    told = told.replace("[[places]]", f'hidden_guides = ["slab"]\n{PRICES}\n[[places]]')
    (mine / "edition.toml").write_text(told, encoding="utf-8")
    (folder / "host").mkdir()
    building.make(folder / "host" / "heat", "https://warm.example/heat/", mine)
    with server.serving(folder / "host") as host:
        yield host


def test_nothing_of_the_invented_dealers_is_in_it(published: server.Site) -> None:
    site = published.root / "heat"
    texts = [path for path in site.rglob("*") if path.suffix in {".html", ".json", ".xml", ".txt", ".css", ".js"}]
    assert len(texts) > 50
    assert [path.name for path in texts if INVENTED.search(path.read_text(encoding="utf-8"))] == []
    assert not (site / "dealers" / "si-desk").exists()
    start = (site / "index.html").read_text(encoding="utf-8")
    assert " - Harrow &amp; Sons</title>" in start
    assert "guides/slab/" not in start.partition('id="ss-drawer"')[2].partition("</nav>")[0]
    assert (site / "guides" / "slab" / "index.html").is_file()
    index = (site / "search" / "every_page.json").read_text(encoding="utf-8")
    assert "guides/storage/" in index and '"guides/slab/' not in index


def test_its_link_opens_on_a_phone_under_its_own_name(published: server.Site, visiting: Visiting) -> None:
    home = f"{published.url}heat/"
    with visiting([], viewport=PHONE) as page:
        desk = Desk(page)
        desk.open(f"{home}dealers/")
        expect(page.get_by_role("heading", name="From the stock of Harrow Hearth")).to_be_visible()
        assert desk.desk.get_by_label("Appliance", exact=True).locator("option").count() == len(STOVES)
        assert desk.desk.get_by_label("Tank", exact=True).locator("option").count() == len(TANKS)
        desk.choose("Question", "What size of tank?")
        desk.choose("Where the house stands", "Lower Harrow")
        desk.choose("Appliance", "Stove 19")
        desk.type("design_load", "8 kW")
        assert desk.message.endswith("Harrow Hearth Come by.")
        link = desk.link
    assert link.startswith(home)
    sheet, _ = open_link(f"#{link.partition('#')[2]}", "si")
    assert sheet and sheet.headline
    with visiting([], viewport=PHONE) as page:
        page.goto(link)
        reader = Reader(page, "tank-size")
        reader.wait_until_live()
        expect(reader.box("water_output")).to_have_value("19")
        assert reader.figure == plain(sheet.headline.shown)
        expect(reader.sheet.locator("[data-ss-shelf=appliances]")).to_have_value("stove-19")
        expect(reader.sheet.locator(".ss-stock")).to_contain_text("The smallest that is enough: ")
        expect(page.locator(".ss-bar-name")).to_contain_text("Harrow & Sons")
        assert page.locator(".ss-logo").evaluate("logo => logo.naturalWidth > 0 && logo.offsetWidth > 0")
        assert page.locator(".md-header").evaluate("bar => getComputedStyle(bar).backgroundColor") == "rgb(90, 16, 32)"
        assert page.locator("html").get_attribute("data-units") == "si"
        assert_nothing_beyond_the_edge(page, "an edition's guide")


def test_its_link_opens_in_a_plain_site(published: server.Site, served: server.Site, visiting: Visiting) -> None:
    link = "#v1;tank-size;units=si;from=Harrow Hearth;water_output=19kW!s.stove-19;design_load=8kW;end"
    for home in (f"{published.url}heat/", served.url):
        with visiting([], viewport=PHONE) as page:
            page.goto(f"{home}guides/storage/{link.replace(' ', '%20')}")
            reader = Reader(page, "tank-size")
            reader.wait_until_live()
            expect(reader.box("water_output")).to_have_value("19")
            sheet, _ = open_link(link, "si")
            assert sheet and sheet.headline
            assert reader.figure == plain(sheet.headline.shown)


def test_its_prices_go_into_the_worksheet(published: server.Site, visiting: Visiting) -> None:
    with visiting([], viewport=PHONE) as page:
        page.goto(f"{published.url}heat/guides/cost/")
        expect(page.get_by_text("Prices of 1 November 2026, our counter:")).to_be_visible()
        Reader(page, "fuel-cost").wait_until_live()
        page.locator("#fuel-cost [data-ss-shelf=places]").select_option(label="Lower Harrow")
        expect(Reader(page, "fuel-cost").box("fuel_price_wood")).to_have_value("95")


def test_a_wrong_address_finds_home(published: server.Site) -> None:
    text = (published.root / "heat" / "404.html").read_text(encoding="utf-8")
    assert 'href="/heat/' in text
    assert "Harrow &amp; Sons" in text
