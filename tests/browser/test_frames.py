"""Worksheets in frames of other websites, and their tables as files."""

from __future__ import annotations

import csv
import html
import io
import re
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

import server
from calc.answer import Typed, answer
from tests.browser.conftest import At, Visiting
from tests.browser.reader import Reader, plain
from tests.browser.test_plan import at_worksheet
from tests.browser.test_reach import assert_accessible

pytestmark = pytest.mark.browser

# Asked in the frame: the page around it gets a message at each change of height, and the last one is waited for.
UNTIL_IT_FITS = """async (page) => {
  const until = Date.now() + 30_000;
  while (Math.abs(page.scrollHeight - page.clientHeight) > 2 && Date.now() < until) await new Promise(requestAnimationFrame);
  return [page.scrollHeight, page.clientHeight];
}"""


def lines_of(reader: Reader) -> str:
    """What the page gives to be copied into another website."""
    reader.sheet.locator("summary", has_text="Show how").click()
    return reader.sheet.locator("[data-ss-frame]").first.input_value()


def test_the_lines_show_the_worksheet_in_another_website(
    visiting: Visiting, served: server.Site, places: dict[str, str], tmp_path: Path
) -> None:
    with visiting([]) as page:
        reader = at_worksheet(page, served, places, "stored-heat")
        lines = lines_of(reader)
        assert f'src="{served.url}embed/stored-heat/"' in lines
        assert f'href="{served.url}{places["stored-heat"]}#stored-heat"' in lines
        # Another website, with a policy of its own: another address, another port.
        policy = f"default-src 'none'; img-src data:; frame-src {served.url}"
        title = "A stove dealer's page"
        (tmp_path / "index.html").write_text(
            f'<!doctype html><html lang="en"><meta http-equiv="Content-Security-Policy" content="{html.escape(policy)}">'
            f"<title>{title}</title><link rel=icon href=data:,><main><h1>{title}</h1>{lines}</main></html>",
            encoding="utf-8",
        )
        with server.serving(tmp_path) as elsewhere:
            assert elsewhere.url != served.url
            page.goto(elsewhere.url)
            frame = page.frame_locator("iframe")
            sheet = frame.locator("#stored-heat")
            expect(sheet.locator(".ss-fields :disabled")).to_have_count(0)
            sheet.locator("[data-key=store_volume] input[type=text]").fill("640")
            wanted = answer("stored-heat", {"store_volume": Typed("640")})
            assert wanted.headline
            expect(sheet.locator(".ss-figure")).to_have_text(plain(wanted.headline.shown))
            # It leads back to the guide, in a page of its own; the plan and the frame's own lines are not offered there.
            back = frame.locator(".ss-embed-foot a")
            expect(back).to_have_attribute("target", "_blank")
            assert str(back.get_attribute("href")).endswith("guides/storage/#stored-heat")
            expect(sheet.locator(".ss-framed")).to_be_hidden()
            expect(frame.locator("[data-ss-use]:visible")).to_have_count(0)


def test_with_a_few_lines_of_script_the_frame_fits_its_content(
    visiting: Visiting, served: server.Site, places: dict[str, str], tmp_path: Path
) -> None:
    with visiting([]) as page:
        reader = at_worksheet(page, served, places, "stored-heat")
        lines_of(reader)
        lines = "\n".join(box.input_value() for box in reader.sheet.locator("[data-ss-frame]").all())
        head = "<!doctype html><title>x</title><link rel=icon href=data:,>"
        (tmp_path / "index.html").write_text(f"{head}<main>{lines}</main>", encoding="utf-8")
        with server.serving(tmp_path) as elsewhere:
            page.goto(elsewhere.url)
            frame = page.frame_locator("iframe")
            expect(frame.locator("#stored-heat .ss-fields :disabled")).to_have_count(0)
            expect(page.locator("iframe")).not_to_have_css("height", "1600px")
            inside = frame.locator("html").evaluate(UNTIL_IT_FITS)
            assert abs(inside[0] - inside[1]) <= 2, "nothing has to be scrolled"


def test_the_guides_themselves_stand_in_no_frame(
    visiting: Visiting, served: server.Site, places: dict[str, str], tmp_path: Path
) -> None:
    troubles: list[str] = []
    with visiting(troubles) as page:
        (tmp_path / "index.html").write_text(
            f'<title>x</title><link rel=icon href=data:,><iframe src="{served.url}{places["stored-heat"]}"></iframe>',
            encoding="utf-8",
        )
        with server.serving(tmp_path) as elsewhere:
            page.goto(elsewhere.url)
            expect(page.frame_locator("iframe").locator("#stored-heat")).to_have_count(0)
        page.wait_for_timeout(300)
        assert any("frame-ancestors" in trouble for trouble in troubles)
        troubles.clear()


@pytest.mark.parametrize("width", [320, 1280])
def test_an_embed_page_is_accessible_and_fits(visiting: Visiting, served: server.Site, width: int) -> None:
    with visiting([], viewport={"width": width, "height": 800}) as page:
        page.goto(f"{served.url}embed/house-load/")
        reader = Reader(page, "house-load")
        reader.wait_until_live()
        assert_accessible(page, f"embed at {width}")
        assert page.evaluate("document.documentElement.scrollWidth") <= width


def test_the_folds_of_an_embed_page_show_which_has_the_focus(page: Page, served: server.Site) -> None:
    page.goto(f"{served.url}embed/stored-heat/")
    Reader(page, "stored-heat").wait_until_live()
    page.locator("main summary:visible").first.focus()
    page.keyboard.press("Shift+Tab")
    page.keyboard.press("Tab")
    ring = "() => [document.activeElement.tagName, getComputedStyle(document.activeElement).outlineStyle]"
    assert page.evaluate(ring) == ["SUMMARY", "solid"]


def csv_of(reader: Reader, name: str) -> list[list[str]]:
    reader.show_how()
    with reader.page.expect_download() as download:
        reader.sheet.locator(f"[data-ss-csv={name}]").click()
    assert download.value.suggested_filename == f"{reader.worksheet}-{name}.csv"
    content = Path(download.value.path()).read_bytes()
    assert content.startswith(b"\xef\xbb\xbf"), "a spreadsheet takes it for UTF-8 by this"
    return list(csv.reader(io.StringIO(content.decode("utf-8-sig"), newline="")))


def table_on_page(reader: Reader, caption: str) -> list[list[str]]:
    """The cells of a table as they stand on the page."""
    return list(
        reader.sheet.locator("table", has=reader.page.locator("caption", has_text=caption)).first.evaluate(
            "table => [...table.rows].map((row) => [...row.cells].map((cell) => cell.textContent.trim()))"
        )
    )


def bare(text: str) -> str:
    return plain(text).replace(",", "").replace("\N{MINUS SIGN}", "-")


def test_tables_and_charts_are_saved_for_a_spreadsheet(at: At) -> None:
    reader = at("stored-heat")
    reader.type("store_volume", "640")
    sheet = answer("stored-heat", {"store_volume": Typed("640")})
    table = sheet.tables[0]
    rows = csv_of(reader, "table-0")
    assert len(rows) == len(table.rows) + 1
    for shown, saved in zip(table_on_page(reader, table.title)[1:], rows[1:], strict=True):
        for cell, number, head in zip(shown, saved, rows[0], strict=True):
            unit = re.search(r"\(([^()]*)\)$", head)
            assert bare(cell) == f"{number} {unit.group(1)}" if unit and number[:1].isdigit() else plain(cell) == number
    assert all(re.fullmatch(r"-?\d+(\.\d+)?", row[1]) for row in rows[1:])
    chart = csv_of(reader, "chart")
    assert all(re.fullmatch(r"-?\d+(\.\d+)?", cell) for row in chart[1:] for cell in row)
    assert "°F" in chart[0][0]


def test_in_si_units_a_spreadsheet_gets_si(at: At) -> None:
    reader = at("stored-heat")
    reader.page.locator("[data-ss-units=si]").click()
    reader.wait()
    rows = csv_of(reader, "results")
    assert rows[1][2] == "kWh"
    sheet = answer("stored-heat", {}, "si")
    assert rows[1][1] == sheet.results[0].shown.partition("\u00a0")[0].replace("\u202f", "")


def test_the_buttons_can_be_told_apart_by_their_names(page: Page, served: server.Site, places: dict[str, str]) -> None:
    reader = at_worksheet(page, served, places, "will-it-work")
    names = [plain(name) for name in reader.sheet.locator("[data-ss-csv]").all_text_contents()]
    assert len(names) == len(set(names)) >= 2
    assert all(name.startswith("Save as a spreadsheet (CSV): ") for name in names)
