"""The winter in the page: a place's weather is fetched when it is chosen, and other tanks come one at a time."""

from __future__ import annotations

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
    there = rows.count()
    page.wait_for_timeout(1500)
    assert rows.count() == there < 8
