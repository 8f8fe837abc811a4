"""The sizing record: printed from the page on both papers, read back from paper, and checked with a calculator."""

from __future__ import annotations

import dataclasses
import re
from collections import Counter
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Locator, Page, expect

import edition
import server
from calc.engine.link import packed
from calc.units import System
from render import record
from tests.browser.conftest import Visiting
from tests.browser.reader import SIZES, Reader, plain
from tests.browser.test_reach import UNFOLD, assert_accessible, assert_nothing_beyond_the_edge
from tests.paper import SIZES as PAPERS
from tests.paper import Paper
from tests.printed_sums import last_digit, recompute

pytestmark = pytest.mark.browser

HOUSES = {name: house for key in ("quillbrook", "ellerquist") for name, house in edition.load(key).houses.items()}
SI_HOUSES = edition.load("ellerquist").houses
MARGIN = 12 * 72 / 25.4 - 1  # the style sheet's smallest margin, in points, less the width of a line

# Each house prints in a second or ten; one in US units and one that is full of stops come with every run.
EVERY_HOUSE = pytest.mark.parametrize(
    "house",
    [pytest.param(name, marks=[] if name in ("Mill Row", "Ridge Road") else pytest.mark.long) for name in HOUSES],
)
EVERY_PAPER = pytest.mark.parametrize("size", PAPERS)


@dataclasses.dataclass(frozen=True)
class Printed:
    """One house's record on both papers, and what its page said when it was printed."""

    papers: dict[str, Paper]
    words: Counter[str]
    headings: list[str]
    urgent: list[str]
    link: str


def open_record(page: Page, address: str, link: str = "") -> Locator:
    """Go to the record of a link (or of the plan) and wait until it is there."""
    page.goto(f"{address}record/{link}")
    page.locator("[data-ss-next], [data-ss-print]").first.wait_for()
    return wait_for_record(page)


def wait_for_record(page: Page) -> Locator:
    page.locator("[data-ss-record][data-mine]:not([data-busy])").wait_for()
    return page.locator(".ss-record")


@pytest.fixture(scope="module")
def printed(visiting: Visiting, served: server.Site) -> Callable[[str], Printed]:
    """Prints the record of a house, once for the whole file. From the dark page, as a reader at night would."""
    kept: dict[str, Printed] = {}

    def of(house: str) -> Printed:
        if house not in kept:
            with visiting([], color_scheme="dark") as page:
                if house in SI_HOUSES:
                    page.add_init_script("localStorage.setItem('stoke-and-store.units', 'si')")
                kept[house] = _print(page, served, house)
        return kept[house]

    return of


def _print(page: Page, served: server.Site, house: str) -> Printed:
    system: System = "si" if house in SI_HOUSES else "us"
    link = record.link_of(HOUSES[house], system)
    paper = open_record(page, served.url, link)
    assert page.locator("body").get_attribute("data-md-color-scheme") == "slate"
    page.locator("[data-ss-wanted] > summary").click()
    page.get_by_label("Job").fill(house)
    page.get_by_label("Prepared by").fill("A. Sizer")
    page.emulate_media(media="print", color_scheme="dark")
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    # Words in drawings stand on their own, wherever there is room: what joins them when paper is read says nothing.
    drawn = Counter(word for text in paper.locator("svg text").all_text_contents() for word in text.split())
    words = Counter(words_of(paper.inner_text())) - drawn
    headings = [plain(element) for element in paper.locator("h2, h3, h4, .ss-r-group, thead tr").all_inner_texts()]
    urgent = [plain(element) for element in paper.locator(".ss-r-urgent").first.locator("li").all_inner_texts()]
    page.evaluate("dispatchEvent(new Event('afterprint'))")
    page.emulate_media(media="null", color_scheme="dark")
    papers = {size: Paper(page.pdf(format=size)) for size in PAPERS}
    return Printed(papers, words, headings, urgent, packed(link))


def words_of(text: str) -> list[str]:
    """Words, cut wherever a line may end: at spaces, hyphens and strokes, and between two brackets, as in (a)(b)."""
    return re.split(r"[\s/-]+|(?<=\))(?=\()", text)


@EVERY_PAPER
@EVERY_HOUSE
def test_nothing_is_cut_off(printed: Callable[[str], Printed], house: str, size: str) -> None:
    """Every word of the page stands on the paper, nothing reaches into a margin, and no page is empty."""
    entry = printed(house)
    paper = entry.papers[size]
    for result in paper.sizes:
        assert result == pytest.approx(PAPERS[size], abs=1)
    # The address breaks anywhere, so it is no word; everything else is counted.
    address = set(words_of(entry.link)) | {word for word in entry.words if "#v1;packed" in word}
    missing = {
        word: count for word, count in (entry.words - Counter(words_of(paper.text))).items() if word not in address
    }
    # A unit may break behind its stroke, and is one word on the page and another on the paper.
    joined = "".join(paper.text.split())
    assert not {word for word in missing if not (word.startswith("(") and word in joined)}
    assert entry.link in "".join(paper.text.split())
    assert paper.beyond(MARGIN) == []
    assert all(len(text.split()) > 20 for text in paper.pages)


@EVERY_PAPER
@EVERY_HOUSE
def test_two_pages_hand_over_and_the_whole_is_not_long(
    printed: Callable[[str], Printed], house: str, size: str
) -> None:
    """Verdict, answers and signature first, then parts and drawing; the appendix begins on the third page."""
    pages = [plain(text) for text in printed(house).papers[size].pages]
    assert "Checked on site, and decided" in pages[0] and "Not checked" in pages[0]
    assert pages[1].startswith("Parts") and "Piping:" in pages[1]
    assert pages[2].startswith("Appendix: the sums and their sources")
    assert len(pages) <= 13


@EVERY_PAPER
@EVERY_HOUSE
def test_no_heading_is_left_at_the_end_of_a_page(printed: Callable[[str], Printed], house: str, size: str) -> None:
    entry = printed(house)
    assert len(entry.headings) > 20
    for number, text in enumerate(entry.papers[size].pages[:-1], 1):
        lines = [plain(line) for line in text.splitlines() if line.strip()]
        for count in (1, 2):  # a heading may take two lines
            last = " ".join(lines[-count:])
            assert last not in entry.headings, f"page {number} ends with the heading {last!r}"
        assert not lines[-1].startswith("Step "), f"page {number} parts a step from its sum"


@EVERY_PAPER
@EVERY_HOUSE
def test_stops_and_cautions_stand_on_the_first_page(printed: Callable[[str], Printed], house: str, size: str) -> None:
    entry = printed(house)
    first = plain(entry.papers[size].pages[0])
    assert len(entry.urgent) >= 5
    for said in entry.urgent:
        assert said in first
    assert "Name and license" in first and "Signature" in first
    levels = [said.partition(":")[0] for said in entry.urgent]
    assert levels == sorted(levels, key=["Stop", "This cannot work", "Caution"].index)
    assert "never light the stove with its jacket empty" in first
    assert f"Sizing record: {house}" in first


def test_a_dangerous_plan_begins_with_its_stops(printed: Callable[[str], Printed]) -> None:
    stops = [said for said in printed("Ridge Road").urgent if said.startswith("Stop:")]
    assert len(stops) == 1
    assert "nowhere to go" in stops[0]


@EVERY_PAPER
def test_the_dark_page_prints_light(printed: Callable[[str], Printed], size: str) -> None:
    """White paper with dark words on it, on every page."""
    paper = printed("Ridge Road").papers[size]
    for number in range(len(paper.pages)):
        picture = paper.picture(number, 1)
        assert picture[:20].min() == 255, "the upper margin is white"
        assert (picture > 200).mean() > 0.8, f"page {number + 1} is dark"
        assert picture.min() < 60, f"page {number + 1} has no black words"


@EVERY_HOUSE
def test_the_printed_working_can_be_checked_with_a_pocket_calculator(
    printed: Callable[[str], Printed], house: str
) -> None:
    """From the printed text alone: each sum gives its printed result, to the last digit."""
    system: System = "si" if house in SI_HOUSES else "us"
    steps = printed(house).papers["A4"].steps()
    assert len(steps) == printed(house).words["Step"] > 100
    kinds = Counter(step.kind for step in steps)
    assert kinds["sum"] > 100
    assert kinds["given"] < 0.35 * len(steps)
    for step in steps:
        answers = [recompute(entry, system) for entry in step.sums]
        if step.kind == "solved":
            assert answers[0] == pytest.approx(answers[1], rel=1e-4, abs=1e-6), step
        elif step.kind == "sum":
            result, half = last_digit(step.result, system)
            assert abs(answers[0] - result) <= half * 1.000001, (step, answers)


def test_both_papers_carry_the_same_working(printed: Callable[[str], Printed]) -> None:
    first, second = (printed("Mill Row").papers[size].steps() for size in PAPERS)
    assert first == second


def test_the_code_read_from_paper_opens_the_same_numbers(
    printed: Callable[[str], Printed], page: Page, served: server.Site
) -> None:
    """The picture of the first page, read by a library as a telephone would, leads to the same record."""
    entry = printed("Mill Row")
    for paper in entry.papers.values():
        assert paper.code(0) == f"{served.url}record/{entry.link}"
        assert paper.links(0) == [f"{served.url}record/?{entry.link}"], "it can be clicked, too"
        assert len(entry.link) < 800
    address = entry.papers["Letter"].code(0)
    page.goto(address)
    again = wait_for_record(page)
    rows = again.locator(".ss-r-choices tbody tr:not(.ss-r-group)")
    assert rows.count() > 80
    text = plain(entry.papers["A4"].text)
    for row in rows.all_inner_texts():
        assert plain(row) in text
    page.emulate_media(media="print")
    results = [plain(item) for item in again.locator(".ss-r-results li, .ss-r-answer").all_inner_texts()]
    assert len(results) > 50
    unbroken = text.replace("- ", "-")
    assert not [item for item in results if item.replace("- ", "-") not in unbroken]


def test_the_record_of_the_readers_own_plan(page: Page, served: server.Site) -> None:
    """A link's numbers are shown and not taken; taken, they are the plan, and the job's name is kept nowhere."""
    open_record(page, served.url, record.link_of(HOUSES["Hollow Cabin"]))
    status = page.locator("[data-slot=status]")
    expect(status).to_have_text("This is the record of the plan that came with the link. Your own plan is as it was.")
    page.locator("[data-ss-wanted] > summary").click()
    page.get_by_label("Job").fill("The Winterbourne house")
    page.goto(f"{served.url}record/")
    expect(status).to_have_text("Your plan holds no numbers yet. Below is the record of an invented house.")
    expect(page.get_by_role("button", name="Copy a link")).to_be_disabled()
    assert "Worked example: Mill Row" in page.locator(".ss-record").inner_text()
    open_record(page, served.url, record.link_of(HOUSES["Hollow Cabin"]))
    page.get_by_label("Job").fill("The Winterbourne house")
    expect(page.locator("[data-ss-job]")).to_have_text("The Winterbourne house")
    page.get_by_role("button", name="Put these numbers into my plan").click()
    wait_for_record(page)
    expect(status).to_have_text("This is the record of your plan.")
    assert page.url == f"{served.url}record/"
    everything = page.evaluate(
        "JSON.stringify([{...localStorage}, {...sessionStorage}, document.cookie, location.href])"
    )
    assert "17000Btu/h" in everything
    assert "Winterbourne" not in everything
    assert "Winterbourne" not in page.locator(".ss-r-link").inner_text()


def test_a_link_s_numbers_take_the_place_of_typed_ones_only_when_that_was_told(page: Page, served: server.Site) -> None:
    page.goto(f"{served.url}guides/storage/")
    reader = Reader(page, "stored-heat")
    reader.wait_until_live()
    reader.type("store_volume", "650")
    open_record(page, served.url, record.link_of(HOUSES["Hollow Cabin"]))
    take = page.get_by_role("button", name="Put these numbers into my plan")
    take.click()
    expect(page.locator("[data-slot=copied]")).to_contain_text("you have typed 1 of its numbers")
    assert '"650"' in page.evaluate("localStorage['stoke-and-store.plan']")
    take.click()
    expect(page.locator("[data-slot=status]")).to_have_text("This is the record of your plan.")
    assert '"650"' not in page.evaluate("localStorage['stoke-and-store.plan']")


def test_what_a_link_asks_about_stays_when_its_numbers_are_taken(page: Page, served: server.Site) -> None:
    link = "#v1;plan;water_output=60000Btu/h;burn_time=4h;store_volume=300gal;sheets=tank-size;end"
    answers = open_record(page, served.url, link).locator("section", has=page.get_by_role("heading", name="Answers"))
    expect(answers).to_contain_text("Recommended store")
    page.get_by_role("button", name="Put these numbers into my plan").click()
    expect(page.locator("[data-slot=status]")).to_have_text("This is the record of your plan.")
    expect(answers).to_contain_text("Recommended store")


def test_what_the_reader_ticks_is_printed_and_no_stop_can_be_left_out(page: Page, served: server.Site) -> None:
    paper = open_record(page, served.url, record.link_of(HOUSES["Ridge Road"]))
    page.evaluate(UNFOLD)
    before = paper.locator(".ss-r-urgent li strong").all_inner_texts()
    assert paper.get_by_role("heading", name="The pump stops while it burns").count() == 1
    page.locator("[data-ss-sheet=power-cut]").uncheck()
    wait_for_record(page)
    assert paper.get_by_role("heading", name="The pump stops while it burns").count() == 0
    assert paper.locator(".ss-r-urgent li strong").all_inner_texts() == before
    expect(page.locator("[data-ss-sheet=power-cut]")).to_be_focused()
    row = paper.locator(".ss-r-parts tr", has_text="Heat dump")
    expect(row).to_contain_text("how long until it boils? Tick it under “Worksheets in this record”.")
    page.locator("[data-ss-sheet=load-now]").check()  # the plan has none of its thermometers
    wait_for_record(page)
    told = paper.locator(".ss-r-urgent", has_text="This is not worked out for this job. Nobody gave")
    expect(told).to_have_count(1)
    for choice, drawings in (("none", 0), ("floor", 1)):
        page.get_by_label("Piping drawing").select_option(choice)
        wait_for_record(page)
        assert paper.locator("figure.ss-piping").count() == drawings
    expect(paper.locator("figure.ss-piping")).to_contain_text("Floor loops")


def test_the_code_is_fetched_only_where_it_is_wanted(page: Page, served: server.Site, places: dict[str, str]) -> None:
    served.requests.clear()
    page.goto(served.url + places["stored-heat"])
    Reader(page, "stored-heat").wait_until_live()
    assert not [request.path for request in served.requests if "segno" in request.path]
    paper = open_record(page, served.url, record.link_of(HOUSES["Mill Row"]))
    assert [request.path for request in served.requests if "segno" in request.path]
    assert paper.locator("svg.ss-qr").count() == 1


def test_without_the_code_the_record_still_comes(page: Page, site: Path, troubles: list[str]) -> None:
    gone = server.Answer(404, b"gone", {"Content-Type": "text/plain"})
    with server.serving(site, interfere=lambda path: gone if "segno" in path else None) as broken:
        paper = open_record(page, broken.url, record.link_of(HOUSES["Mill Row"]))
        expect(paper.locator(".ss-r-reopen")).to_contain_text("No QR code could be made here.")
        expect(paper.locator(".ss-r-link")).to_contain_text("#v1;packed;")
    troubles.clear()


def test_a_spoilt_link_says_so_and_the_rest_is_used(page: Page, served: server.Site) -> None:
    paper = open_record(
        page,
        served.url,
        "#v1;plan;store_volume=500gal;goats=3;store_top=180F;lowest_useful=130F;design_load=9kW;water_drop=1",
    )
    said = page.locator("[data-slot=said]")
    expect(said).to_contain_text("holds something that no worksheet asks: “goats”")
    expect(said).to_contain_text("was cut off on its way")
    expect(paper.locator(".ss-r-choices")).to_contain_text("500 gal")


def test_it_stands_there_without_any_script(visiting: Visiting, served: server.Site) -> None:
    with visiting([], java_script_enabled=False) as page:
        page.goto(f"{served.url}record/")
        expect(page.locator(".ss-record")).to_contain_text("Worked example: Mill Row. An invented house.")
        expect(page.locator(".ss-noscript")).to_contain_text("Without JavaScript")
        assert page.locator(".ss-record .ss-r-chain li").count() > 10
        steps = Paper(page.pdf(format="A4")).steps()
        assert len(steps) > 100, "what is folded on the screen is printed all the same"


@pytest.mark.parametrize("size", SIZES)
def test_everybody_can_read_it(visiting: Visiting, served: server.Site, size: str) -> None:
    scheme: Any = "dark" if size == "phone" else "light"
    with visiting([], viewport=SIZES[size], color_scheme=scheme) as page:
        open_record(page, served.url, record.link_of(HOUSES["Ridge Road"]))
        page.evaluate(UNFOLD)
        assert_accessible(page, f"record, {size}")
        assert_nothing_beyond_the_edge(page, f"record, {size}")
