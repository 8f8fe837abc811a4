"""The winter in the page: a place's weather is fetched when it is chosen, and other tanks come one at a time."""

from __future__ import annotations

from datetime import datetime, timedelta
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

import server
from tests.browser.reader import Reader

pytestmark = [pytest.mark.browser]
KEPT = 12_000  # bytes, compressed, of a place's year


def test_the_weather_of_a_place_is_fetched_when_it_is_chosen(page: Page, served: server.Site) -> None:
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url.rpartition("/")[2]))
    page.goto(f"{served.url}guides/winter/")
    reader = Reader(page, "winter-run")
    reader.wait_until_live()
    assert [name for name in asked if name.endswith(".txt")] == ["burlington-vt.txt"], "that of the worked example"
    reader.type("weather", "place")
    burlington = reader.figure
    reader.type("place", "fargo-nd")
    assert asked.count("fargo-nd.txt") == 1
    assert reader.figure != burlington
    reader.type("place", "burlington-vt")
    assert reader.figure == burlington
    assert asked.count("burlington-vt.txt") == 1, "what is there is not fetched again"


def test_every_year_is_small(site: Path) -> None:
    years = sorted((site / "assets" / "weather").glob("*.txt.gz"))
    assert len(years) == 31
    assert all(path.stat().st_size < KEPT for path in years)


def test_other_tanks_come_one_at_a_time_and_stop_when_told(page: Page, served: server.Site) -> None:
    page.goto(f"{served.url}guides/winter/")
    reader = Reader(page, "winter-run")
    reader.wait_until_live()
    rows = reader.sheet.locator("[data-slot=sweep] tbody tr")
    start, stop = reader.sheet.get_by_role("button", name="Another tank"), reader.sheet.locator("[data-ss-halt]")
    start.click()
    expect(rows).to_have_count(8, timeout=120_000)
    expect(stop).to_be_hidden()
    expect(reader.sheet.locator("[data-slot=sweep] p").last).to_contain_text("Beyond 640")
    reader.type("store_volume", "720")
    expect(rows).to_have_count(0)
    start.click()
    expect(rows).not_to_have_count(0)
    stop.click()
    expect(stop).to_be_hidden()
    there = rows.count()
    reader.show_how()
    with (
        page.expect_download()
    ):  # Python answers one thing after the other, so a point under way would be there by then
        reader.sheet.locator("[data-ss-csv]").first.click()
    assert rows.count() == there < 8


def test_a_weather_file_of_the_readers_is_read_in_the_page_and_kept_there(
    page: Page, served: server.Site, tmp_path: Path
) -> None:
    page.goto(f"{served.url}guides/winter/")
    reader = Reader(page, "winter-run")
    reader.wait_until_live()
    chooser = reader.sheet.locator("[data-ss-weather]")
    said = reader.sheet.locator("[data-slot=weather]")
    expect(chooser).to_be_hidden()
    reader.type("weather", "file")
    expect(reader.sheet.locator("[data-slot=advice]")).to_contain_text("No weather file is open here")
    expect(chooser).to_be_visible()
    asked: list[str] = []
    # Parts of the site that come late are fetched by their names alone.
    page.on(
        "request", lambda request: asked.append(request.url) if request.method != "GET" or "?" in request.url else None
    )

    wrong = tmp_path / "wrong.csv"
    wrong.write_text("name,colour\nash,white\n", encoding="utf-8")
    chooser.locator("input").set_input_files(wrong)
    expect(said).to_contain_text("No column holds a date and a time")

    huge = tmp_path / "huge.csv"
    with huge.open("wb") as file:
        file.truncate(50_000_000)
    chooser.locator("input").set_input_files(huge)
    expect(said).to_contain_text("larger than 6 MB", timeout=1000)

    start = datetime(2023, 1, 1)
    rows = [f"{start + timedelta(hours=hour)},{40 + hour % 24}" for hour in range(8760)]
    mild = tmp_path / "mild.csv"
    mild.write_text("\n".join(["time,temperature", *rows]), encoding="utf-8")
    chooser.locator("select").select_option("F")
    chooser.locator("input").set_input_files(mild)
    expect(said).to_contain_text("Read the column “temperature” in °F")
    reader.wait()
    expect(reader.sheet.locator("[data-slot=advice]")).not_to_contain_text("No weather file")
    loads = reader.figure
    assert not asked, "what is in the file goes nowhere"

    page.reload()
    reader.wait_until_live()
    assert reader.figure == loads, "the year is kept in this browser"
    assert reader.box("weather").input_value() == "file"
