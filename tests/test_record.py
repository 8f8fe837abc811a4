"""The sizing record without a browser: which worksheets are in it, what it says of each number, and what it refuses."""

from __future__ import annotations

import json
import re
from typing import Any

import numpy
import pytest
import zxingcpp

import edition
from calc.answer import Typed, answer
from calc.engine import link
from calc.engine.plan import Entry
from calc.engine.worksheet import Worksheet
from calc.plant import PARTS
from calc.worksheets import WORKSHEETS
from render import qr, record, respond, sized
from render.drawings.piping import SYSTEMS

HOUSES = {name: house for key in ("quillbrook", "ellerquist") for name, house in edition.load(key).houses.items()}
BARE = {"store_volume": "500 gal", "store_top": "180 °F", "lowest_useful": "130 °F", "design_load": "30,500 Btu/h"}


def entries(**texts: str) -> dict[str, Entry]:
    return {key: Entry(text, "typed") for key, text in texts.items()}


def asked(given: dict[str, Any], **more: Any) -> Any:
    return json.loads(respond(json.dumps({"ask": "record", "plan": given, "address": "record/", **more})))


def typed(**texts: str) -> dict[str, Any]:
    return {key: {"text": text, "units": "us", "from": "typed"} for key, text in texts.items()}


def words(html: str) -> str:
    return " ".join(re.sub(r"<[^>]+>", " ", html).replace("\u00a0", " ").split())


def taken(plan: dict[str, Entry], **ticked: bool) -> dict[str, record.Taken]:
    wanted = {key.replace("_", "-"): on for key, on in ticked.items()}
    return {one.worksheet.key: one for one in record.look_at(plan, "us", wanted)}


# --- which worksheets


def test_a_worksheet_is_in_the_record_when_the_plan_holds_its_numbers() -> None:
    found = taken(entries(**BARE))
    assert [key for key, one in found.items() if one.printed] == ["stored-heat"]
    assert "Heated floor area" in found["tank-size"].lacks
    less = {key: text for key, text in BARE.items() if key != "lowest_useful"}
    assert taken(entries(**less))["stored-heat"].lacks == ("Lowest useful store temperature",)


def test_nothing_is_in_the_record_of_an_empty_plan() -> None:
    assert not any(one.printed or one.sheet for one in taken({}).values())
    assert asked({})["state"] == "empty"


def test_a_worksheet_most_of_whose_numbers_would_be_assumed_waits_for_a_tick() -> None:
    plan = entries(**BARE)
    assert not taken(plan)["pipe"].printed
    assert taken(plan)["pipe"].possible
    assert taken(plan, pipe=True)["pipe"].printed
    assert not taken(plan, stored_heat=False)["stored-heat"].printed


def test_one_pipe_is_not_worked_out_for_two_loops() -> None:
    plan = HOUSES["Mill Row"]
    assert plan["pipe_place"].text == "stove"
    assert taken(plan)["charge-loop"].printed and not taken(plan)["pipe"].printed
    other = plan | entries(pipe_place="emitters")
    assert taken(other)["pipe"].printed and not taken(other)["charge-loop"].printed


# --- what is said of each number


def test_every_choice_says_who_made_it() -> None:
    plan = entries(**BARE) | {
        "design_load": Entry("30500 Btu/h", "computed", "house-load"),
        "lowest_useful": Entry("130 F", "link"),
        "cold_water": Entry("", "typical"),
    }
    html = record._document(plan, record.look_at(plan, "us", {}), "us", {})
    rows = {words(row).partition("  ")[0]: words(row) for row in re.findall(r"<tr><th scope=\"row\">.*?</tr>", html)}
    text = " | ".join(rows.values())
    assert "Store volume 500 gal Given" in text
    assert "Lowest useful store temperature 130 °F From a link" in text
    assert "30,500 Btu/h Worked out: How much heat does my house lose on the coldest day?" in text
    assert re.search(r"Cold water temperature 50 °F Assumed \[\d+\]; check on site", text)


def test_a_number_that_its_worksheet_would_now_work_out_otherwise_is_told() -> None:
    house = {key: Entry(text, "typed") for key, text in WORKSHEETS["emitter-temperature"].examples[0].given.items()}
    sheet = answer("emitter-temperature", {key: Typed(one.text) for key, one in house.items()})
    value = sheet.values["lowest_useful"]
    assert isinstance(value, float)
    good = house | {"lowest_useful": Entry(f"{value * 1.8 - 459.67:.5f} F", "computed", "emitter-temperature")}
    assert not [one for one in record._urgent(good, list(taken(good).values())) if "out of date" in one.title]
    stale = good | {"baseboard_length": Entry("90 ft", "typed")}
    (said,) = [one for one in record._urgent(stale, list(taken(stale).values())) if "out of date" in one.title]
    assert said.title == "Lowest useful store temperature is out of date."


def test_a_number_that_a_worksheet_refuses_is_told_on_the_first_page() -> None:
    plan = entries(**BARE) | entries(store_top="60 gal")
    said = record._urgent(plan, list(taken(plan).values()))
    assert any(
        one.title == "It could not be worked out." and "Store temperature when fully charged" in one.text
        for one in said
    )


@pytest.mark.parametrize("house", HOUSES)
def test_stops_and_cautions_stay_when_their_worksheet_is_left_out(house: str) -> None:
    plan = HOUSES[house]
    everything = {(one.level, one.title) for one in record._urgent(plan, list(taken(plan).values()))}
    none = {key.replace("-", "_"): False for key in WORKSHEETS}
    assert {(one.level, one.title) for one in record._urgent(plan, list(taken(plan, **none).values()))} == everything
    assert len(everything) >= 5


# --- parts


def test_no_part_takes_its_size_from_another_house() -> None:
    """A worksheet that is ticked without its numbers works with the example's; the list of parts must not."""
    plan = entries(design_load="30,500 Btu/h")
    found = taken(plan, floor=True, stored_heat=True)
    sheets = {key: one.sheet for key, one in found.items() if one.printed and one.sheet}
    rows = {row.name: row for row in sized.listed(sheets, "us")}
    assert {"floor", "stored-heat"} <= sheets.keys()
    for name in ("Store", "Emitters"):
        assert rows[name].size == sized.NOT_YET
        assert rows[name].lacks
    assert sized.drawn(sheets, "us") == {}
    assert "This is not worked out for this job." in [one.title for one in record._urgent(plan, list(found.values()))]


def test_a_part_names_the_choices_that_nobody_made() -> None:
    plan = HOUSES["Mill Row"] | {}
    del plan["metal_credit"]
    sheets = {key: one.sheet for key, one in taken(plan).items() if one.printed and one.sheet}
    (row,) = [row for row in sized.listed(sheets, "us") if row.name == "Expansion tank"]
    assert row.assumes == ("Credit for the metal's own growth: none",)


def test_parts_have_the_sizes_that_their_worksheets_give() -> None:
    plan = HOUSES["Mill Row"]
    sheets = {key: one.sheet for key, one in taken(plan).items() if one.printed and one.sheet}
    shown = {(key, result.key): result.shown for key, sheet in sheets.items() for result in sheet.results}
    rows = {row.name: row.size for row in sized.listed(sheets, "us")}
    assert shown["power-cut", "dump_needed"] in rows["Heat dump"]
    assert shown["relief", "peak_output"] in rows["Relief valve"]
    assert shown["expansion", "vessel_with_reserve"] in rows["Expansion tank"]
    assert shown["charge-loop", "flow"] in rows["Pump between stove and store"]
    assert shown["charge-loop", "head"] in rows["Pump between stove and store"]
    assert shown["emitter-temperature", "supply_water"] in rows["Emitters"]
    assert rows["Tempering valve"] == sized.NOT_YET


@pytest.mark.parametrize(
    ("house", "drawing"),
    [
        ("Mill Row", "baseboard"),
        ("Fern Lane", "open-store"),
        ("Ridge Road", "duct-coil"),
        ("Hollow Cabin", "open-store"),
        ("Alder Yard", "closed-store"),
    ],
)
def test_the_piping_drawing_suits_the_plan(house: str, drawing: str) -> None:
    sheets = {key: one.sheet for key, one in taken(HOUSES[house]).items() if one.printed and one.sheet}
    assert record.suited(sheets) == drawing


@pytest.mark.parametrize("worksheet", WORKSHEETS.values(), ids=list(WORKSHEETS))
def test_drawings_and_parts_that_a_worksheet_names_are_there(worksheet: Worksheet) -> None:
    parts = {key for system in SYSTEMS.values() for _, keys in system.groups for key in keys}
    assert {key for one in worksheet.sizes for key in one.drawn} <= parts
    assert {one.drawing for one in worksheet.suits} <= SYSTEMS.keys()


def test_every_part_that_is_listed_has_a_worksheet_that_sizes_it() -> None:
    assert {one.part for worksheet in WORKSHEETS.values() for one in worksheet.sizes} == set(PARTS)


# --- link and code


@pytest.mark.parametrize("house", HOUSES)
def test_the_link_brings_the_same_plan(house: str) -> None:
    plan = HOUSES[house]
    written = record.link_of(plan)
    assert written.isascii() and len(written) < 2000
    opened = link.read(written, WORKSHEETS)
    assert opened.problems == ()
    again = {key: Entry(one.text, one.origin) for key, one in opened.given.items()}
    assert record.link_of(again) == written
    for key, one in taken(plan).items():
        sheet = taken(again)[key].sheet
        assert (sheet is None) == (one.sheet is None)
        if sheet and one.sheet:
            assert sheet.values == one.sheet.values


def test_a_bare_number_gets_the_unit_that_stood_beside_it() -> None:
    given = {
        "store_volume": {"text": "1900,5", "units": "si", "from": "typed"},
        "store_top": {"text": "80", "units": "si", "from": "typed"},
    }
    assert asked(given)["link"] == "#v1;plan;store_volume=1900.5L;store_top=80C;end"
    fuel = typed(method="fuel", fuel="gas", amount="915")
    assert "amount=915therm" in asked(fuel)["link"]


def test_a_code_is_read_back_from_its_drawing() -> None:
    """By a library from the drawing's own path: as long as the longest link of a house, and without any inline style."""
    text = "https://example.org/record/" + max((record.link_of(house) for house in HOUSES.values()), key=len)
    drawn = str(qr.svg(text, "the code"))
    assert "style" not in drawn
    size = int(re.findall(r'viewBox="0 0 (\d+)', drawn)[0])
    picture = numpy.full((size, size), 255, numpy.uint8)
    for x, y, width in re.findall(r"M(\d+) (\d+)h(\d+)v1H\d+z", drawn):
        picture[int(y), int(x) : int(x) + int(width)] = 0
    (found,) = zxingcpp.read_barcodes(numpy.kron(picture, numpy.ones((4, 4), numpy.uint8)))
    assert found.text == text


def test_a_text_that_fits_no_code_gives_none() -> None:
    assert qr.svg("x" * 5000, "too long") == ""


# --- what strangers may send


def test_nothing_that_is_sent_becomes_markup() -> None:
    bad = "<script>alert(1)</script>"
    given = typed(**BARE) | {
        "store_volume": {"text": bad, "units": bad, "from": bad, "by": bad},
        bad: {"text": bad},
        "store_top": bad,
    }
    said = asked(given, date=bad, version=bad, piping=bad, ticked={bad: True}, address=f"https://example.org/{bad}")
    opened = json.loads(respond(json.dumps({"ask": "record", "link": f"#v1;plan;{bad}={bad};store_volume={bad};end"})))
    for reply in (said, opened):
        for part in ("paper", "worksheets", "said", "link"):  # what the page takes as markup, or as an address
            assert "<script" not in reply[part]
    assert "alert(1)" in words(said["paper"]), "it is shown as the text that it is"


@pytest.mark.parametrize(
    ("iso", "shown"), [("2026-11-25", "25 November 2026"), ("2026-13-01", ""), ("soon", ""), ("", "")]
)
def test_the_date_is_written_as_on_paper(iso: str, shown: str) -> None:
    assert record._date(iso) == shown


def test_what_was_not_checked_is_always_there() -> None:
    for given in (typed(**BARE), {}):
        text = words(asked(given)["paper"])
        assert "The state of the chimney; clearances and floor protection" in text
        assert "local codes, the maker's manual and a licensed person decide" in text
