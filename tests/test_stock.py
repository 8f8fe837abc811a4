"""A dealer's stock in the page: what a pick does, the smallest that passes, links that outlive the stock, the quote."""

from __future__ import annotations

import dataclasses
import json
from typing import Any

import pytest

import edition
import render
from calc.answer import answer, link_of, open_link
from calc.engine import link, plan, plan_file
from calc.engine.typed import Reader, Typed
from calc.worksheets import WORKSHEETS
from edition.offered import offered
from render import stock

HOUSE = {"design_load": "30500 Btu/h", "store_top": "180 °F", "lowest_useful": "120 °F", "burn_time": "4 h"}


def shop(**changed: Any) -> dict[str, Any]:
    """The stock of an invented dealer, with prices and a rule of its own."""
    dealer = edition.load("quillbrook")
    tanks = tuple(tank._replace(facts={"price": "$3,400"}) if "800" in tank.key else tank for tank in dealer.tanks)
    rule = {"worksheet": "tank-size", "says": "Ours.", "of": "water_output", "each": "1,000 Btu/h", "gives": "12 gal"}
    quote = {"tax": "6 %", "valid_days": 30, "lines": [{"what": "Delivery", "price": "$250"}]}
    told = dealer.told | {"currency": "USD", "rules": [rule], "quote": quote}
    told = offered(dataclasses.replace(dealer, tanks=tanks, told=told))
    return told | changed


@pytest.fixture(autouse=True)
def kept() -> None:
    render.bring("stock/own.json", json.dumps(shop()))


def ask(what: str, house: dict[str, Any], **more: Any) -> dict[str, Any]:
    numbers = {key: text if isinstance(text, dict) else {"text": text, "units": "us"} for key, text in house.items()}
    request = {"ask": what, "units": "us", "stock": "own", "plan": numbers, **more}
    reply: dict[str, Any] = json.loads(render.respond(json.dumps(request)))
    return reply


def picked(shelf: str, item: str, house: dict[str, Any] | None = None) -> dict[str, Any]:
    entries: dict[str, Any] = ask("pick", house or {}, shelf=shelf, item=item)["entries"]
    return entries


def test_the_stock_is_fetched_when_it_is_first_asked_for() -> None:
    assert ask("stock", {}, worksheet="tank-size", stock="another")["lacks"] == "stock/another.json"
    assert ask("stock", {}, worksheet="tank-size", stock="../x")["lacks"] == "stock/.json"


def test_a_pick_fills_the_boxes_and_takes_away_what_another_one_filled() -> None:
    first = picked("appliances", "kitchen-20")
    assert first["water_output"] == {
        "text": "52000",
        "units": "us",
        "from": "typed",
        "unit": "Btu/h",
        "giver": "stock",
        "item": "kitchen-20",
    }
    assert picked("appliances", "", {**first, "indoor": "68 °F"}) == dict.fromkeys(first)
    assert set(picked("tanks", "500-gal-open", first)) & set(first) == set()


def test_the_smallest_that_is_enough_is_told_with_why_the_next_is_not() -> None:
    html = ask("stock", {**HOUSE, "water_output": "40000 Btu/h"}, worksheet="tank-size")["html"]
    needed = answer("tank-size", {key: Typed(text) for key, text in (HOUSE | {"water_output": "40000 Btu/h"}).items()})
    recommended = next(result for result in needed.results if result.key == "recommended")
    assert 300 < float(recommended.shown.split()[0].replace(",", "").split("\xa0")[0]) < 500
    assert "The smallest that is enough: 500 gal, open. The next smaller, 300 gal, closed, is not, because" in html
    assert recommended.shown in html
    assert stock.STILL_THE_EXAMPLES not in html
    unsaid = {key: text for key, text in HOUSE.items() if key != "burn_time"}
    assert stock.STILL_THE_EXAMPLES in ask("stock", unsaid, worksheet="tank-size")["html"]
    huge = ask("stock", {**HOUSE, "water_output": "900,000 Btu/h"}, worksheet="tank-size")["html"]
    assert "the largest, 1,200 gal, closed, does not." in huge or "1,200 gal, closed, is not." in huge
    tiny = ask("stock", {**HOUSE, "water_output": "5,000 Btu/h", "burn_time": "1 h"}, worksheet="tank-size")["html"]
    assert "The smallest in stock, 160 gal, closed, is enough" in tiny


def test_nothing_is_suggested_for_the_worked_example() -> None:
    html = ask("stock", {}, worksheet="tank-size")["html"]
    assert "smallest" not in html and "500 gal, open" in html
    assert "A rule of Quillbrook Stove Barn, not of this worksheet:" in html and "Here that is" not in html


def test_the_smallest_that_passes_is_the_first_for_which_the_worksheet_finds_no_stop() -> None:
    house = {
        "water_output": "60,000 Btu/h",
        "burn_time": "4 h",
        "design_load": "30500 Btu/h",
        "store_volume": "160 gal",
    }
    told: dict[str, list[str]] = {}
    for key, worksheet in WORKSHEETS.items():
        if worksheet.sweeps:
            continue
        entries = plan.Entries({name: plan.Entry(text, "typed") for name, text in house.items()}, Reader())
        sheet = answer(key, plan.given_for(worksheet, entries))
        for shelf in shop()["shelves"]:
            told[f"{key} {shelf['key']}"] = stock.suggestion(shop(), shelf, sheet, entries)
    said = {where: lines[0] for where, lines in told.items() if lines and "passes here" in lines[0]}
    assert said, "some worksheet judges some of this stock"
    for where, line in said.items():
        key, shelf_key = where.split()
        name, less = line.removeprefix("The smallest that passes here: ").split(". The next smaller, ")
        less = less.split(", does not: ")[0]
        shelf = next(shelf for shelf in shop()["shelves"] if shelf["key"] == shelf_key)
        levels = {}
        for item in shelf["items"]:
            numbers = {name: Typed(text) for name, text in (house | item["fills"]).items()}
            asked = {field.key for field in WORKSHEETS[key].all_fields()}
            judged = answer(key, {name: text for name, text in numbers.items() if name in asked}).judgement
            levels[item["name"]] = judged.level if judged else "problem"
        assert levels[name] not in stock.FAILS, where
        assert levels[less] in stock.FAILS, where


def test_a_dealers_rule_is_worked_out_and_labelled_as_theirs() -> None:
    html = ask("stock", {**HOUSE, "water_output": "40000 Btu/h"}, worksheet="tank-size")["html"]
    assert (
        "A rule of Quillbrook Stove Barn, not of this worksheet:</strong> Ours. Here that is <strong>480\xa0gal" in html
    )


def test_a_link_carries_the_items_key_with_its_numbers() -> None:
    given = {
        "water_output": Typed("52,000 Btu/h", origin="link", giver="stock", item="kitchen-20"),
        "burn_time": Typed("4 h"),
    }
    text = link_of(answer("tank-size", given))
    assert "water_output=52000Btu/h!s.kitchen-20;" in text.replace("%20", "")
    sheet, problems = open_link(text)
    assert sheet and not problems
    assert (sheet.inputs["water_output"].giver, sheet.inputs["water_output"].item) == ("stock", "kitchen-20")
    assert sheet.inputs["burn_time"].item == ""
    bad = text.replace("!s.kitchen-20", "!s.Kitchen <20>")
    opened = link.read(bad, WORKSHEETS)
    assert opened.given["water_output"] == Typed("52000Btu/h", origin="link", giver="stock")


def test_a_plan_file_keeps_the_items_key() -> None:
    entries = {"store_volume": plan.Entry("500 gal", "typed", giver="stock", item="500-gal-open")}
    assert plan_file.read(plan_file.write(entries), WORKSHEETS.values()).entries == entries


def test_a_link_survives_a_change_of_stock() -> None:
    house = HOUSE | picked("appliances", "kitchen-20")
    assert "other numbers" not in ask("stock", house, worksheet="tank-size")["html"]
    changed = shop()
    stoves = next(shelf["items"] for shelf in changed["shelves"] if shelf["key"] == "appliances")
    stoves[2]["fills"]["water_output"] = "50,000 Btu/h"
    render.bring("stock/own.json", json.dumps(changed))
    html = ask("stock", house, worksheet="tank-size")["html"]
    assert "Kitchen 20 has other numbers in the stock now" in html and "50,000" in html and "here 52,000" in html
    del stoves[2]
    render.bring("stock/own.json", json.dumps(changed))
    html = ask("stock", house, worksheet="tank-size")["html"]
    assert "“kitchen-20” is no longer in the stock of Quillbrook Stove Barn. The numbers" in html
    assert ask("worksheet", house, worksheet="tank-size")["fields"]["water_output"]["value"] == "52000"


def test_a_place_fills_its_numbers_and_the_prices_and_no_link_names_it() -> None:
    dealer = edition.load("quillbrook")
    told = dealer.told | {"prices": {"date": "2026-11-01", "fuel_price_wood": "250 $/cord"}}
    render.bring("stock/own.json", json.dumps(offered(dataclasses.replace(dealer, told=told))))
    first, other = dealer.places[:2]
    house = picked("places", "1", {"indoor": "70 °F"})
    assert set(house) == {*first.fills, "fuel_price_wood"}
    assert not any("giver" in entry or "item" in entry for entry in house.values())
    html = ask("stock", house, worksheet="house-load")["html"]
    assert f"selected>{first.name}</option>" in html
    changed = {**house, "altitude": {"text": "12", "units": "us", "from": "typed"}}
    assert "selected>" not in ask("stock", changed, worksheet="house-load")["html"]
    moved = {**house, **picked("places", "2", house)}
    assert moved["design_outdoor"]["text"] in other.fills["design_outdoor"].replace("−", "-")
    assert picked("places", "", house) == dict.fromkeys(house)
    render.bring("stock/own.json", json.dumps(shop()))
    assert "holds nothing from the stock" in ask("quote", house, date="")["html"]


def test_the_stocks_prices_are_offered_as_a_part_of_the_installed_cost() -> None:
    tank, stove = picked("tanks", "800-gal-closed"), picked("appliances", "kitchen-20")
    assert "of it, from this stock" not in ask("stock", stove, worksheet="fuel-cost")["html"], "it has no price"
    html = ask("stock", {**stove, **tank}, worksheet="fuel-cost")["html"]
    assert "$3,869.00 of it, from this stock" in html and "tax included, this is for 800 gal, closed; Delivery." in html
    cost = picked("installed_cost", "installed_cost", tank)
    assert (cost["installed_cost"]["text"], cost["installed_cost"]["giver"]) == ("3869.00", "stock")
    assert 'value="installed_cost" selected' in ask("stock", tank | cost, worksheet="fuel-cost")["html"]
    stale = {**tank, "installed_cost": {**cost["installed_cost"], "text": "9000"}}
    assert "what an earlier choice came to" in ask("stock", stale, worksheet="fuel-cost")["html"]
    assert picked("installed_cost", "", tank | cost) == {"installed_cost": None}
    assert "of it, from" not in ask("stock", tank, worksheet="tank-size")["html"]


def test_a_quote_adds_up_what_the_dealer_wrote() -> None:
    house = {**picked("appliances", "kitchen-20"), **picked("tanks", "800-gal-closed")}
    html = ask("quote", house, date="2026-11-25")["html"]
    for told in ("Kitchen 20", "ask", "$3,400.00", "Delivery", "$250.00", "$3,650.00", "$219.00", "$3,869.00"):
        assert told in html
    assert "Of 25 November 2026, valid until 25 December 2026." in html
    assert "holds nothing from the stock" in ask("quote", {}, date="")["html"]


def test_what_a_dealer_writes_is_never_markup() -> None:
    told = shop(dealer="<b>A</b>")
    told["rules"][0]["says"] = "<i>x</i>"
    render.bring("stock/own.json", json.dumps(told))
    html = ask("stock", HOUSE, worksheet="tank-size")["html"]
    assert "<b>" not in html and "<i>" not in html
