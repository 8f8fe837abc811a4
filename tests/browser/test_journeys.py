"""Two readers on their way through the site, ten steps each, as they would tell it; each also where nothing is kept."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

import server
from calc.answer import Typed, answer, link_of, open_link
from calc.engine import offering, plan_file
from calc.engine.plan import Entry
from calc.engine.sheet import Sheet
from tests.browser.conftest import Visiting
from tests.browser.reader import SIZES, Reader, plain
from tests.browser.test_plan import FULL, REFUSED, PlanPage, at_worksheet, stored

pytestmark = pytest.mark.browser

STORAGE = {"on": "", "off": REFUSED, "full": FULL}
SAID = {
    "off": "This browser refuses to keep anything for this site.",
    "full": "This browser has no room left to keep your numbers.",
}


class Journey:
    """A reader's way: the page, and what the browser keeps for them."""

    def __init__(self, page: Page, served: server.Site, places: dict[str, str], storage: str) -> None:
        self.page, self.served, self.places, self.storage = page, served, places, storage
        self.keeps = storage == "on"

    def goes_to(self, worksheet: str, hash_: str = "") -> Reader:
        reader = at_worksheet(self.page, self.served, self.places, worksheet, hash_)
        self.is_told(reader.sheet.locator(".ss-kept"))
        return reader

    def goes_to_the_plan(self) -> PlanPage:
        self.page.goto(f"{self.served.url}plan/")
        plan_page = PlanPage(self.page)
        plan_page.wait()
        return plan_page

    def is_told(self, place: Any) -> None:
        """Where storage is off the page says so at once; where it is full, once there was something to keep."""
        if self.storage == "off":
            expect(place).to_contain_text(SAID["off"])

    def sees(self, reader: Reader, sheet: Sheet) -> None:
        """The page says what the same numbers give at the command line."""
        reader.wait()
        assert not sheet.problems
        assert sheet.headline
        assert reader.figure == plain(sheet.headline.shown)
        assert reader.results() == {result.key: plain(result.shown) for result in sheet.results}
        assert self.page.evaluate("document.documentElement.scrollWidth") <= self.page.viewport_size["width"]  # type: ignore[index]


@pytest.fixture
def journey(visiting: Visiting, served: server.Site, places: dict[str, str], request: pytest.FixtureRequest) -> Any:
    """A reader who has never been here."""
    size, storage = request.param
    troubles: list[str] = []
    kind = {"viewport": SIZES[size], "accept_downloads": True, "permissions": ["clipboard-read", "clipboard-write"]}
    with visiting(troubles, **kind) as page:
        page.add_init_script(STORAGE[storage])
        yield Journey(page, served, places, storage)
        if storage != "on":  # the theme's own scripts mind
            troubles[:] = [trouble for trouble in troubles if "/assets/js" in trouble]


def ways(usual: tuple[str, str]) -> Callable[[Any], Any]:
    """Every screen and kind of storage; all but the usual one take their time."""
    return pytest.mark.parametrize(
        "journey",
        [
            pytest.param(
                (size, storage), marks=[] if (size, storage) == usual else [pytest.mark.long], id=f"{size}-{storage}"
            )
            for size in SIZES
            for storage in STORAGE
        ],
        indirect=True,
    )


@ways(usual=("desktop", "on"))
def test_a_buyer_finds_out_whether_it_suits_the_house(journey: Journey) -> None:
    # 1. I know my floor area, how the house is built and how cold it gets, and nothing else.
    reader = journey.goes_to("house-load")
    house = {"method": "quick", "heated_area": "1,800", "house_class": "1980s", "design_outdoor": "-5"}
    for key, text in house.items():
        reader.type(key, text)
    sheet = answer("house-load", {key: Typed(text) for key, text in house.items()})
    journey.sees(reader, sheet)
    if journey.storage == "full":
        expect(reader.sheet.locator(".ss-kept")).to_contain_text(SAID["full"])

    # 2. The page tells what the house loses on the coldest day. I take that number along.
    reader.sheet.locator("[data-ss-use=design_load]").click()
    expect(reader.slot("used")).to_contain_text("In your plan: Design load (heat lost on the coldest day)")
    load = offering.offers(
        sheet, {"design_load": [field for field in _fields("stored-heat") if field.key == "design_load"]}
    )["design_load"]

    # 3. On the next page it is there; where my browser keeps nothing, I was told and type it again.
    reader = journey.goes_to("stored-heat")
    known: dict[str, Typed] = {}
    if journey.keeps:
        expect(reader.field("design_load")).to_have_attribute("data-from", "computed")
        known["design_load"] = Typed(load.text, "us", "computed")
    else:
        reader.type("design_load", load.text)
        known["design_load"] = Typed(load.text)

    # 4. A neighbour offers a tank of 500 gallons. How long would it last?
    reader.type("store_volume", "500")
    known["store_volume"] = Typed("500")
    journey.sees(reader, answer("stored-heat", known))

    # 5. How hot it gets I do not know, and say so: a usual value stands in, and the answer is marked as rough.
    reader.unknown("store_top").uncheck()
    reader.type("store_top", "170")
    reader.unknown("store_top").check()
    reader.wait()
    known["store_top"] = Typed("", "us", "typical")
    journey.sees(reader, answer("stored-heat", known))
    expect(reader.slot("plate")).to_contain_text("assumed")

    # 6. How cool can my old baseboards run? I have measured them, and take the answer along too.
    reader = journey.goes_to("emitter-temperature")
    baseboards = {"baseboard_length": "120", "design_outdoor": "-5"}
    if not journey.keeps:
        baseboards["design_load"] = load.text
    for key, text in baseboards.items():
        reader.type(key, text)
    given = {key: Typed(text) for key, text in baseboards.items()}
    given.setdefault("design_load", Typed(load.text, "us", "computed"))
    if journey.keeps:
        given["store_top"] = Typed("", "us", "typical")
    emitters = answer("emitter-temperature", given)
    journey.sees(reader, emitters)
    reader.sheet.locator("[data-ss-use=lowest_useful]").click()
    expect(reader.slot("used")).to_contain_text("In your plan: Lowest useful store temperature")

    # 7. Back at the tank, the answer follows from my own baseboards now.
    reader = journey.goes_to("stored-heat")
    lowest = offering.offers(
        emitters, {"lowest_useful": [field for field in _fields("stored-heat") if field.key == "lowest_useful"]}
    )["lowest_useful"]
    if journey.keeps:
        known["lowest_useful"] = Typed(lowest.text, "us", "computed")
        expect(reader.field("lowest_useful").locator(".ss-note")).to_contain_text(
            "Worked out by “How cool can my baseboards"
        )
    else:
        known = {"lowest_useful": Typed(lowest.text), "store_volume": Typed("500")}
        for key, entry in known.items():
            reader.type(key, entry.text)
    journey.sees(reader, answer("stored-heat", known))

    # 8. Will the whole plan work? Each link says how it stands; no word stands for all, and what nobody checked is listed.
    reader = journey.goes_to("will-it-work")
    expect(reader.slot("verdict")).to_contain_text("Not checked here:")
    expect(reader.slot("verdict").locator("tbody tr")).to_have_count(12)

    # 9. Your plan: everything I gave, and where it came from. The house is larger than I thought; what follows is marked.
    plan_page = journey.goes_to_the_plan()
    if not journey.keeps:
        assert plan_page.listed() == []
        journey.is_told(plan_page.section.locator(".ss-kept"))
        mine = {key: Entry(text, "typed") for key, text in house.items() if key != "heated_area"}
        mine |= {"heated_area": Entry("1800 ft2", "typed"), "design_load": load}
        plan_page.load(plan_file.write(mine).encode())
    assert plan_page.note("heated_area") == "Typed by you."
    assert plan_page.note("design_load").startswith("Worked out by How much heat does my house lose")
    plan_page.change("heated_area", "2,400")
    late = plan_page.row("design_load").locator(".ss-caution")
    expect(late).to_contain_text("Out of date")
    late.get_by_role("button").click()
    plan_page.wait()
    expect(late).to_have_count(0)

    # 10. I save it to a file, clear everything, change my mind, clear it again, and load the file.
    saved = plan_page.save()
    assert "heated_area = 2400 ft2 | typed" in saved
    plan_page.press("Clear everything")
    assert plan_page.listed() == []
    plan_page.press("Undo")
    assert "heated_area" in plan_page.listed()
    plan_page.press("Clear everything")
    assert plan_page.load(saved.encode()).startswith("Loaded:")
    assert plan_page.save() == saved


def _fields(worksheet: str) -> tuple[Any, ...]:
    return answer(worksheet, {}).course.fields


CUSTOMER = {
    "store_volume": Typed("600 gal"),
    "store_top": Typed("185 F"),
    "lowest_useful": Typed("130 F"),
    "design_load": Typed("30500 Btu/h"),
}


@ways(usual=("phone", "on"))
def test_an_installer_justifies_a_size(journey: Journey) -> None:
    # 1. A dealer sent me a link with the customer's numbers. It opens at the answer.
    link = link_of(answer("stored-heat", CUSTOMER))
    reader = journey.goes_to("stored-heat", link)
    sent, _ = open_link(link)
    assert sent
    journey.sees(reader, sent)
    expect(reader.slot("whose")).to_have_text("Numbers that came with a link")
    expect(reader.slot("link")).to_be_hidden()

    # 2. I unfold the working: each step with its formula and numbers, then the sources and what it leaves out.
    _unfold(reader, "Show how: working, limits, sources, spreadsheet")
    expect(reader.slot("working").locator(".ss-working > li")).to_have_count(len(sent.working))
    expect(reader.slot("sources")).to_contain_text("It leaves out")

    # 3. The inspector reads SI. I switch over and back, and nothing has been lost.
    journey.page.locator("[data-ss-units=si]").click()
    journey.sees(reader, open_link(link, "si")[0])  # type: ignore[arg-type]
    journey.page.locator("[data-ss-units=us]").click()
    journey.sees(reader, sent)

    # 4. The customer's thermometer shows less than the dealer thought. I correct it, and the working follows.
    reader.type("store_top", "178")
    given = {key: Typed(entry.text, "us", entry.origin) for key, entry in sent.inputs.items() if not entry.from_field}
    given["store_top"] = Typed("178")
    corrected = answer("stored-heat", given)
    journey.sees(reader, corrected)
    expect(reader.slot("working")).to_contain_text("178")

    # 5. My thumb slips. The page says what to type, keeps what I typed, and shows no answer that is not mine.
    reader.type("store_volume", "6oo gal")
    assert reader.figure == "No result yet"
    assert len(reader.errors()) == 1
    expect(reader.box("store_volume")).to_have_value("6oo gal")
    reader.type("store_volume", "600")
    given["store_volume"] = Typed("600")
    corrected = answer("stored-heat", given)
    journey.sees(reader, corrected)

    # 6. The results go into my spreadsheet: plain numbers, the units beside them.
    reader.show_how()
    with journey.page.expect_download() as download:
        reader.sheet.locator("[data-ss-csv=results]").click()
    assert download.value.suggested_filename == "stored-heat-results.csv"
    rows = list(csv.reader(io.StringIO(Path(download.value.path()).read_text(encoding="utf-8-sig"))))
    assert rows[0] == ["Result", "Value", "Unit"]
    assert [" ".join(row[1:]).strip() for row in rows[1:]] == [
        plain(result.shown).replace(",", "").replace("\N{MINUS SIGN}", "-") for result in corrected.results
    ]

    # 7. I send the corrected numbers back as a link.
    reader.sheet.get_by_role("button", name="Copy a link").click()
    expect(reader.slot("said")).to_contain_text("The link is copied.")
    copied = str(journey.page.evaluate("navigator.clipboard.readText()"))
    assert "#" + copied.partition("#")[2] == link_of(corrected)

    # 8. Another customer's link: it does not touch what I have. I look at it, and go back to mine.
    before = stored(journey.page) if journey.keeps else {}
    other = answer("stored-heat", {"store_volume": Typed("320 gal"), "store_top": Typed("170 F")})
    journey.page.evaluate("hash => { location.hash = hash; }", link_of(other))
    expect(reader.slot("link")).to_contain_text("These numbers came with the link")
    reader.slot("link").get_by_role("button", name="Look at the link's").click()
    journey.sees(reader, open_link(link_of(other))[0])  # type: ignore[arg-type]
    reader.slot("link").get_by_role("button", name="Back to mine").click()
    journey.sees(reader, corrected)
    if journey.keeps:
        assert stored(journey.page) == before

    # 9. Where does water boil first up there? An open system, hot as it can be: the page says stop, and why.
    reader = journey.goes_to("boiling")
    for key, text in {"altitude": "5,000 ft", "system_pressure": "0", "store_top": "205"}.items():
        reader.type(key, text)
    expect(reader.slot("advice").locator(".ss-stop").first).to_contain_text("Stop:")

    # 10. Your plan: all of it in one place. A file from another program harms nothing; then I save the plan for the job.
    plan_page = journey.goes_to_the_plan()
    if not journey.keeps:
        plan_page.load(
            plan_file.write({"store_top": Entry("205 F", "typed"), "store_volume": Entry("600 gal", "link")}).encode()
        )
    assert "Nothing was loaded, and your plan is as it was." in plan_page.load(b"\x00\x01 not a plan")
    assert plan_page.note("store_top") == "Typed by you."
    saved = plan_page.save()
    assert "store_top = 205 F | typed" in saved
    assert "store_volume = 600 gal |" in saved


def _unfold(reader: Reader, name: str) -> None:
    reader.sheet.locator("summary", has_text=name).click()
