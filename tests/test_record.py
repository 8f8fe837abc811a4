"""The sizing record without a browser: which worksheets are in it, what it says of each number, and what it refuses."""

from __future__ import annotations

import json
import re
from collections import defaultdict
from html import unescape
from typing import Any

import numpy
import pytest
import zxingcpp

import edition
from calc.answer import Reader, Typed, answer, answer_plan
from calc.chosen import Chosen, Taken, fields, filled, look_at
from calc.engine import link
from calc.engine.offering import flowing, offer, offers
from calc.engine.plan import Entries, Entry, given_for
from calc.engine.sheet import Sheet
from calc.engine.steps import Step
from calc.engine.worksheet import Worksheet
from calc.plant import PARTS
from calc.units import BTU
from calc.vocabulary import BY_KEY
from calc.worksheets import WORKSHEETS
from render import paper, qr, record, respond, sized, sums, twice
from render.drawings.piping import SYSTEMS
from render.paper import Wanted, document
from render.plan import entry_for_page
from render.urgent import Said, first, urgent

HOUSES = {name: house for key in ("quillbrook", "ellerquist") for name, house in edition.load(key).houses.items()}
BARE = {"store_volume": "500 gal", "store_top": "180 °F", "lowest_useful": "130 °F", "design_load": "30,500 Btu/h"}


def entries(**texts: str) -> dict[str, Entry]:
    return {key: Entry(text, "typed") for key, text in texts.items()}


def asked(given: dict[str, Any], **more: Any) -> Any:
    return json.loads(respond(json.dumps({"ask": "record", "plan": given, "address": "record/", **more})))


def typed(**texts: str) -> dict[str, Any]:
    return {key: {"text": text, "units": "us", "from": "typed"} for key, text in texts.items()}


def chain_of(plan: dict[str, Entry]) -> Any:
    """What the page of the plan says of it."""
    sent = {key: entry_for_page(entry) for key, entry in plan.items()}
    return json.loads(respond(json.dumps({"ask": "worksheet", "worksheet": "will-it-work", "plan": sent})))


def words(html: str) -> str:
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", html)).replace("\u00a0", " ").split())


def chosen(plan: dict[str, Entry], **ticked: bool) -> Chosen:
    return look_at(plan, "us", {key.replace("_", "-"): on for key, on in ticked.items()})


def taken(plan: dict[str, Entry], **ticked: bool) -> dict[str, Taken]:
    return {entry.worksheet.key: entry for entry in chosen(plan, **ticked).taken}


def said(plan: dict[str, Entry], **ticked: bool) -> list[Said]:
    return urgent(chosen(plan, **ticked), "us")


# --- which worksheets


def test_a_worksheet_is_in_the_record_when_the_plan_holds_its_numbers() -> None:
    entry = taken(entries(**BARE))
    assert [key for key, shown in entry.items() if shown.printed] == ["stored-heat"]
    assert "Burn time of one full load" in entry["tank-size"].lacks
    less = {key: text for key, text in BARE.items() if key != "lowest_useful"}
    assert taken(entries(**less))["stored-heat"].lacks == ("Lowest useful store temperature",)


def test_nothing_is_in_the_record_of_an_empty_plan() -> None:
    assert not any(entry.printed or entry.sheet for entry in taken({}).values())
    assert asked({})["state"] == "empty"


def test_a_worksheet_most_of_whose_numbers_would_be_assumed_waits_for_a_tick() -> None:
    plan = entries(**BARE)
    assert not taken(plan)["pipe"].printed
    assert taken(plan)["pipe"].possible
    assert taken(plan, pipe=True)["pipe"].printed
    assert not taken(plan, stored_heat=False)["stored-heat"].printed


def test_each_pipe_of_a_plan_has_its_own_size() -> None:
    """Two pipes typed on two sheets stand in one record, list and drawing, each with its own size."""
    heating = {"pipe_place": "emitters", "heating_pipe_kind": "pex", "heating_pipe_size": "1", "heating_tees": "9"}
    plan = HOUSES["Mill Row"] | entries(**heating)
    sheets = {key: there.sheet for key, there in taken(plan).items() if there.printed and there.sheet}
    sizes = {
        key: (sheets[key].inputs["pipe_kind"].si, sheets[key].inputs["pipe_size"].si) for key in ("pipe", "charge-loop")
    }
    assert sizes == {"pipe": ("pex", "1"), "charge-loop": ("copper-m", "1-1/4")}
    rows = {row.name: row for row in sized.listed(sheets, "us")}
    assert rows["Pipe, store to house"].material == "PEX (plastic)"
    assert rows["Pipe, stove to store"].material == "copper, type M"
    told = words(document(chosen(plan), "us", Wanted()))
    assert "Nominal pipe size (heating loop)" in told and "Nominal pipe size (charging loop)" in told
    parts = next(text for text in twice.told_apart(chosen(plan), "us") if "each part has its own" in text)
    assert "is about the heating loop, worksheet" in parts and "is about the charging loop; each part" in parts
    assert re.search(r"Velocity in this pipe [\d.]+ ft/s and [\d.]+ ft/s;", parts.replace("\u00a0", " "))


def test_a_part_waits_for_the_sheet_that_the_plan_knows_best() -> None:
    """Who has been at the floor's sheet is not told to measure a baseboard."""
    plan = entries(design_load="16,000 Btu/h", indoor="70 °F", floor_covering="wood", pipe_spacing="8 in")
    told = words(document(chosen(plan), "us", Wanted()))
    assert "the plan lacks Floor area with pipe in it" in told and "finned length" not in told


# A buyer at the start, then at the store's sheet, the stove's room and the power cut; Burlington, baseboard.
BUYER = {
    "fuel_now": "propane",
    "amount": "900 gal",
    "place": "burlington-vt",
    "heated_area": "1800 ft2",
    "emitter": "baseboard",
    "baseboard_length": "120 ft",
    "stove": "help",
}
BUYER_LATER = {
    "store_volume": "2 m3",
    "store_top": "85 C",
    "room_output": "4 kW",
    "room_area": "20 m2",
    "doorway_width": "90 cm",
    "hours_burning": "3 h",
    "jacket_volume": "45 L",
}


def buyers(**more: str) -> Entries:
    start = Entries(entries(**BUYER), Reader())
    sketch = answer_plan(WORKSHEETS["first-sketch"], start, "us")
    flow = flowing(sketch, start, WORKSHEETS, BY_KEY, new=True)
    return Entries({**start, **flow, **entries(**BUYER_LATER, **more)}, Reader())


def test_what_the_start_says_of_a_small_store_the_record_says_too() -> None:
    """Heat to the room, typed at another sheet, made the tank's wait for a firebox that nobody had measured."""
    plan = buyers()
    at_start = answer_plan(WORKSHEETS["first-sketch"], plan, "us").judgement
    assert at_start and at_start.text.startswith("Because your store of 528")
    told, room = [each for each in said(plan) if each.level == "unworkable"]
    assert told.title == "Your store does not hold one burn."
    assert room.title.startswith("The stove's room: ") and room.part
    assert taken(plan)["tank-size"].printed


def test_a_sheet_whose_result_was_taken_into_the_plan_is_in_the_record() -> None:
    assert not taken(buyers())["power-cut"].printed
    used = Entries({**buyers(), "peak_output": Entry("136490 Btu/h", "computed", "power-cut")}, Reader())
    assert taken(used)["power-cut"].printed


INSTALLED = {
    "fuel_now": "oil",
    "method": "fuel",
    "amount": "900 gal",
    "design_outdoor": "-10 °F",
    "degree_days": "9,500 °F·day",
    "water_output": "40 kW",
    "room_output": "0 kW",
    "burn_time": "5 h",
    "firebox_volume": "5 ft3",
    "store_volume": "1,000 gal",
    "emitter": "radiator",
    "radiator_rating": "60,000 Btu/h",
    "jacket_volume": "40 gal",
    "dump_output": "20,000 Btu/h",
}


def test_a_stop_is_on_the_first_page_though_the_whole_plan_asks_for_its_number_again() -> None:
    assert taken(entries(**INSTALLED))["power-cut"].printed
    stops = [each.title for each in said(entries(**INSTALLED)) if each.level == "stop"]
    assert stops == ["The heat has nowhere to go."]


def test_the_parts_of_the_chain_that_are_known_are_judged_while_others_are_not() -> None:
    """A plan whose page says no because of its power cut has a record that does not say “not judged”."""
    bare = {key: text for key, text in INSTALLED.items() if key != "jacket_volume"}
    del bare["room_output"]
    paper = words(document(chosen(entries(**bare)), "us", Wanted()))
    assert "Power cut: Stop (20,000 Btu/h)" in paper
    assert "The plan lacks Average heat output to the room" in paper
    assert paper.startswith("Sizing record") and "Stop: 1 danger in this plan" in paper


def test_taps_that_somebody_sized_are_in_the_record_with_what_they_need() -> None:
    taps = {"tap_wanted": "120 °F", "tap_flow": "3 gal/min"}
    sheet = answer_plan(WORKSHEETS["tap-water"], Entries(entries(**taps), Reader()), "us")
    needs = offers(sheet, BY_KEY)["lowest_useful"]
    for plan in ({**entries(**INSTALLED, **taps)}, {**entries(**INSTALLED, **taps), "lowest_useful": needs}):
        held = chosen(plan)
        assert held.sheets["tap-water"].values["lowest_useful"] == pytest.approx(
            sheet.values["lowest_useful"], rel=1e-4
        )
        assert held.entries["lowest_useful"] == Entry(needs.text, "computed", "tap-water")


@pytest.mark.parametrize("house", [*HOUSES, "installed"])
def test_the_page_of_the_plan_judges_it_as_its_record_does(house: str) -> None:
    plan = (
        HOUSES[house] if house in HOUSES else entries(**INSTALLED, room_conductance="200 Btu/h/F", tank_diameter="5 ft")
    )
    page = chain_of(plan)
    chain = next(each for each in chosen(plan).taken if each.worksheet.checks).sheet
    assert chain is not None
    shown = words(page["slots"]["verdict"])
    for verdict in chain.verdicts:
        assert words(f"{verdict.label} {verdict.text}") in shown
        assert words(verdict.number) in shown


def test_what_was_typed_stays_in_its_box_where_another_worksheet_needs_more() -> None:
    plan = entries(**INSTALLED, lowest_useful="100 °F")
    box = chain_of(plan)["fields"]["lowest_useful"]
    assert box["value"] == "100 °F"
    assert "Caution: 131 °F are needed." in words(box["note"])


def test_two_kinds_of_emitter_are_two_parts_and_two_answers() -> None:
    shares = {"emitters_share": "70 %", "floor_share": "30 %", "floor_area": "400 ft2", "floor_covering": "bare"}
    plan = chosen(entries(**INSTALLED, **shares))
    assert {"Radiators", "Warm floor"} <= {row.name for row in sized.listed(plan.sheets, "us") if row.known}
    told = [answered.label for answered in paper.answers(plan, "us")]
    assert len(set(told)) == len(told)
    assert "Lowest useful store temperature (How cool can my baseboards or radiators run?)" in told


def test_what_is_out_of_date_can_be_taken_anew_where_it_is_used() -> None:
    house = {key: INSTALLED[key] for key in ("fuel_now", "method", "amount", "design_outdoor", "degree_days")}
    plan = {**entries(**house, species="white-oak"), "yearly_heat": Entry("90 MMBtu", "computed", "house-load")}
    sent = {key: entry_for_page(entry) for key, entry in plan.items()}
    request = {"ask": "worksheet", "worksheet": "wood-use", "plan": sent}
    late = json.loads(respond(json.dumps(request)))["slots"]["late"]
    assert words(late) == "Out of date: Space heating in a year. Take the new number"
    (renewed,) = re.findall(r'data-ss-renew="([^"]*)"', late)
    sent |= json.loads(unescape(renewed))
    request["plan"] = sent
    reply = json.loads(respond(json.dumps(request)))
    assert reply["slots"]["late"] == ""
    assert "Out of date" not in reply["fields"]["yearly_heat"]["note"]


def test_a_firebox_bounds_a_burn_in_the_chain_by_itself() -> None:
    given = {"water_output": "40 kW", "burn_time": "5 h", "room_output": "0 kW", "store_volume": "1,000 gal"}
    printed, measured = (
        answer("will-it-work", {key: Typed(text) for key, text in {**given, **more}.items()}).values["water_heat"]
        for more in ({}, {"firebox_volume": "5 ft3"})
    )
    assert printed == pytest.approx(40e3 * 5 * 3600)
    by_hand = 5 * 12.5 * 0.8 * 8600 * 0.68 * BTU  # ft³, lb/ft³, dry share, Btu/lb, efficiency
    assert measured == pytest.approx(by_hand, rel=1e-6)


def test_the_chain_lacks_nothing_that_only_another_sheets_answer_rests_on() -> None:
    """The room's sheet knows the loss of a room by its size: nobody is to type it again."""
    assert taken(buyers())["will-it-work"].lacks == ("Diameter or longer side of the bare tank",)
    assert taken(buyers(tank_diameter="48 in"))["will-it-work"].lacks == ()
    without = {key: entry for key, entry in buyers(tank_diameter="48 in").items() if key != "room_area"}
    assert taken(without)["will-it-work"].lacks == ("Heat loss of the room per degree",)


def test_who_typed_a_pipe_on_a_sheet_has_that_sheet_in_the_record() -> None:
    typed_pipes = entries(heating_pipe_size="3/4", pipe_place="emitters", charge_pipe_size="1-1/4")
    plan = entries(design_load="26,000 Btu/h", water_output="44,000 Btu/h") | typed_pipes
    assert {key for key, there in taken(plan).items() if there.printed} >= {"pipe", "charge-loop"}
    without = {key: entry for key, entry in plan.items() if not key.endswith("pipe_size")}
    assert not taken(without)["charge-loop"].printed


# --- one quantity, one answer


def stated(entry: Chosen) -> dict[str, list[tuple[str, str, float]]]:
    """Of every key and every label: in which worksheet, as what, and with what value it stands. Apart from render.twice."""
    answers: dict[str, list[tuple[str, str, float]]] = defaultdict(list)
    for worksheet, sheet in entry.sheets.items():
        numbers = [(key, given.field.label, given.si) for key, given in sheet.inputs.items() if given.quantity]
        numbers += [(result.key, result.label, result.si) for result in sheet.results if result.si is not None]
        for key, label, value in numbers:
            for name in {key, label}:
                answers[name].append((worksheet, label, float(value)))
    return answers


@pytest.mark.parametrize("house", HOUSES)
def test_a_quantity_has_one_value_or_a_sentence_that_tells_them_apart(house: str) -> None:
    entry = chosen(HOUSES[house])
    sentences = twice.told_apart(entry, "us")
    assert len(entry.sheets) > 10
    for name, stands in stated(entry).items():
        values = [value for _, _, value in stands]
        if max(values) - min(values) <= 1e-3 * max(abs(value) for value in values):
            continue
        labels = {label: {f"{value:.3g}" for _, other, value in stands if other == label} for _, label, _ in stands}
        alike = [label for label, those in labels.items() if len(those) > 1]
        if name not in BY_KEY and not alike:
            continue  # two things whose words tell them apart: flow in the house's pipe, flow at the fire's peak
        wanted = [BY_KEY[name][0].label] if name in BY_KEY else alike
        for label in wanted:
            assert [told for told in sentences if told.startswith(label) or f" {label} " in told], (name, stands)


@pytest.mark.parametrize("house", HOUSES)
def test_the_verdict_uses_the_steps_of_the_sheets(house: str) -> None:
    sheets = chosen(HOUSES[house]).sheets
    chain = WORKSHEETS["will-it-work"]
    compared = 0
    for entry in chain.takes:
        if entry.worksheet in sheets and entry.key in {step.key for step in sheets[chain.key].course.steps}:
            assert sheets[chain.key].values[entry.key] == sheets[entry.worksheet].values[entry.result or entry.key], (
                entry
            )
            compared += 1
    assert compared >= 8
    margins = {
        (key, name): sheet.values.get(name)
        for key, sheet in sheets.items()
        for name in ("outlet_margin", "highest_margin")
    }
    for name in ("outlet_margin", "highest_margin"):
        asked = {
            key: value for (key, other), value in margins.items() if other == name and key != "gravity-loop" and value
        }
        assert len(asked) > 2
        assert max(asked.values()) - min(asked.values()) < 0.01  # type: ignore[operator]


def test_the_room_is_judged_by_its_own_worksheet() -> None:
    house = chosen(HOUSES["Fern Lane"])
    room = house.sheets["room-heat"].values["room_can_use"]
    assert house.sheets["will-it-work"].values["room_can_use"] == room
    assert house.sheets["firing"].values["room_can_use"] == pytest.approx(room, rel=1e-4)
    assert not [said for said in urgent(house, "us") if said.level == "unworkable"]


def test_a_chimney_that_was_worked_out_is_checked() -> None:
    plan = HOUSES["Fern Lane"] | entries(chimney_known="no")
    (chimney,) = [verdict for verdict in chosen(plan).sheets["will-it-work"].verdicts if verdict.key == "chimney"]
    assert chimney.status == "pass"


def test_a_chimney_that_smokes_at_the_fire_s_height_holds_no_chain() -> None:
    """The stove's sheet says stop where only the peak lets smoke into the room, and the chain said that it holds."""
    plan = HOUSES["Fern Lane"] | entries(chimney_known="no", peak_factor="3", flue_diameter="5 in")
    sheets = chosen(plan, chimney_draught=True).sheets
    draught = sheets["chimney-draught"].values
    assert draught["draught_left_peak"] < 0 < draught["draught_needed"] <= draught["draught_left"]  # type: ignore[operator]
    (chimney,) = [verdict for verdict in sheets["will-it-work"].verdicts if verdict.key == "chimney"]
    assert chimney.status == "unworkable"


@pytest.mark.parametrize(("house", "open_to_air"), [("Fern Lane", True), ("Mill Row", False)])
def test_an_open_plant_is_not_judged_by_a_pressure_tank(house: str, open_to_air: bool) -> None:
    result = {verdict.key: verdict for verdict in chosen(HOUSES[house]).sheets["will-it-work"].verdicts}
    assert ("pressure" in result) is not open_to_air
    assert ("open-store" in result) is open_to_air
    if open_to_air:
        assert result["open-store"].status == "not checked"
        assert "17.9\u00a0gal" in result["open-store"].text


LETTER = {
    "design_load": "40,000 Btu/h",
    "baseboard_length": "80 ft",
    "lowest_useful": "140 °F",
    "emitter": "baseboard",
    "indoor": "68 °F",
    "design_outdoor": "-5 °F",
    "store_top": "180 °F",
    "store_volume": "500 gal",
}


def test_emitters_that_need_more_than_the_store_has_come_first() -> None:
    """80 ft of baseboard for 40,000 Btu/h need far more than 180 °F, whatever the plan says its coolest useful water is."""
    plan = entries(**LETTER)
    entry = chosen(plan)
    emitter = entry.sheets["emitter-temperature"]
    need = emitter.values["lowest_useful"]
    assert isinstance(need, float) and need > 180 * 5 / 9 + 255.372
    told = first(urgent(entry, "us")).told
    assert told[0].level == "unworkable"
    shown = next(result.shown for result in emitter.results if result.key == "lowest_useful")
    assert shown in told[0].text
    assert [said for said in told if said.title == "Lowest useful store temperature is given too low."]
    html = document(entry, "us", Wanted(appendix=False))
    assert words(html).index("This cannot work") < words(html).index("Parts")
    assert "This plan cannot work as it stands" in words(html)


def test_a_need_that_is_higher_than_the_number_given_counts_everywhere() -> None:
    house = HOUSES["Alder Yard"] | entries(radiator_rating="15 kW")
    entry = chosen(house)
    (raised,) = entry.raised
    assert raised.field.key == "lowest_useful" and raised.need == pytest.approx(57.3 + 273.15, abs=0.1)
    for worksheet in ("stored-heat", "tank-size", "firing", "will-it-work"):
        assert entry.sheets[worksheet].values["lowest_useful"] == pytest.approx(raised.need, rel=1e-4)
    assert record.link_of(entry.given) == record.link_of(house), "the link keeps what was given"


def test_stops_come_first_then_five_cautions_and_the_others_are_named() -> None:
    everything = said(HOUSES["Ridge Road"])
    head = first(everything)
    assert [entry.level for entry in head.told] == ["stop"] + ["caution"] * 5
    assert head.verdict == "Stop: 1 danger in this plan must be mended before a fire is lit."
    weights = [entry.weight for entry in everything if entry.level == "caution"]
    assert weights == sorted(weights, reverse=True)
    assert len(head.others) == len(weights) - 5 > 0


def test_a_store_that_does_not_hold_one_burn_stands_first() -> None:
    """Wherever it was typed: start, the tank's own sheet and the record's first page say one thing of it."""
    small = HOUSES["Mill Row"] | entries(store_volume="300 gal")
    head = first(said(small))
    assert head.verdict.startswith("This plan cannot work as it stands")
    assert head.verdict.endswith("1 thing must change first."), "one cause counts once"
    (burn,) = [entry for entry in head.told if entry.level == "unworkable"]
    assert burn.title == "Your store does not hold one burn."
    assert re.search(r"For the same cause: Store: 51\.0\u00a0%; House: [\d.]+\u00a0h\.$", burn.text), burn.text
    assert "A full burn does not fit this store." not in [entry.title for entry in (*head.told, *head.others)]
    assert "Your store does not hold one burn." not in [entry.title for entry in said(HOUSES["Mill Row"])]


def test_a_number_that_somebody_gave_stands_before_what_its_worksheet_finds() -> None:
    """The installer measured the load; the house's area and kind, given on the way, find another, which does not count."""
    measured = chosen(entries(**INSTALLER, design_load="37,500 Btu/h"))
    shown = {answer.label: answer.shown.replace("\u00a0", " ") for answer in paper.answers(measured, "us")}
    alone = measured.sheets["house-load"].headline
    assert alone
    assert shown[alone.label].startswith("37,500 Btu/h, as given; its worksheet finds ")
    assert shown[alone.label].endswith(alone.shown.replace("\u00a0", " "))


def test_what_two_worksheets_answer_alike_stands_once() -> None:
    """Two tanks of 400 gal are the store of 800 gal: the same heat from two worksheets is one line."""
    plan = chosen(HOUSES["Mill Row"] | entries(tank_count="2", tank_volume="400 gal"), tanks_together=True)
    assert {"stored-heat", "tanks-together"} <= plan.sheets.keys()
    told = [(answer.label, answer.shown) for answer in paper.answers(plan, "us")]
    assert len(told) == len(set(told))
    assert [label for label, _ in told].count("Usable heat, mixed store") == 1


# --- what is said of each number


def test_every_choice_says_who_made_it() -> None:
    plan = entries(**BARE) | {
        "design_load": Entry("30500 Btu/h", "computed", "house-load"),
        "lowest_useful": Entry("130 F", "link"),
        "cold_water": Entry("", "typical"),
    }
    html = document(chosen(plan), "us", Wanted())
    rows = {words(row).partition("  ")[0]: words(row) for row in re.findall(r"<tr><th scope=\"row\">.*?</tr>", html)}
    text = " | ".join(rows.values())
    assert "Store volume 500 gal Given" in text
    assert "Lowest useful store temperature 130 °F From a link" in text
    assert "30,500 Btu/h Worked out: How much heat does my house lose on the coldest day?" in text
    assert re.search(r"Cold water temperature 50 °F Assumed \[\d+\]: check", text)


def test_a_number_that_its_worksheet_would_now_work_out_otherwise_is_told() -> None:
    house = {key: Entry(text, "typed") for key, text in WORKSHEETS["emitter-temperature"].examples[0].given.items()}
    sheet = answer("emitter-temperature", {key: Typed(entry.text) for key, entry in house.items()})
    value = sheet.values["lowest_useful"]
    assert isinstance(value, float)
    good = house | {"lowest_useful": Entry(f"{value * 1.8 - 459.67:.5f} F", "computed", "emitter-temperature")}
    assert not [entry for entry in said(good) if "out of date" in entry.title]
    stale = good | {"baseboard_length": Entry("90 ft", "typed")}
    (late,) = [entry for entry in said(stale) if "out of date" in entry.title]
    assert late.title == "Lowest useful store temperature is out of date."


def test_a_number_that_a_worksheet_refuses_is_told_on_the_first_page() -> None:
    plan = entries(**BARE) | entries(store_top="60 gal")
    assert any(
        entry.title == "It could not be worked out." and "Store temperature when fully charged" in entry.text
        for entry in said(plan)
    )


def test_a_record_without_a_caution_still_tells_what_holds_with_little_to_spare() -> None:
    mild = {"store_top": "118 °F", "lowest_useful": "90 °F", "design_load": "12000 Btu/h", "hours_wanted": "4"}
    for volume, titles in (("225 gal", ["Little to spare. House: 4.3\u00a0h."]), ("400 gal", [])):
        told = first(urgent(chosen(entries(store_volume=volume, **mild)), "us"))
        assert [each.title for each in told.told] == titles
        assert ("None of the worksheets" in told.verdict) == (not titles)


@pytest.mark.parametrize("house", HOUSES)
def test_stops_and_cautions_stay_when_their_worksheet_is_left_out(house: str) -> None:
    plan = HOUSES[house]
    everything = {(entry.level, entry.title) for entry in said(plan)}
    none = {key.replace("-", "_"): False for key in WORKSHEETS}
    assert {(entry.level, entry.title) for entry in said(plan, **none)} == everything
    assert len(everything) >= 5


# --- parts


def test_no_part_takes_its_size_from_another_house() -> None:
    """A worksheet that is ticked without its numbers works with the example's; the list of parts must not."""
    plan = entries(design_load="30,500 Btu/h")
    result = taken(plan, floor=True, stored_heat=True)
    sheets = {key: entry.sheet for key, entry in result.items() if entry.printed and entry.sheet}
    rows = {row.name: row for row in sized.listed(sheets, "us")}
    assert {"floor", "stored-heat"} <= sheets.keys()
    for name in ("Store", "Warm floor"):
        assert rows[name].size == sized.NOT_YET
        assert rows[name].lacks
    assert sized.drawn(sheets, "us") == {}
    titles = [entry.title for entry in said(plan, floor=True, stored_heat=True)]
    assert "This is not worked out for this job." in titles


def test_a_part_names_the_choices_that_nobody_made() -> None:
    plan = HOUSES["Mill Row"] | {}
    del plan["metal_credit"]
    sheets = {key: entry.sheet for key, entry in taken(plan).items() if entry.printed and entry.sheet}
    (row,) = [row for row in sized.listed(sheets, "us") if row.name == "Expansion tank"]
    assert row.assumes == ("Credit for the metal's own growth: none",)


def test_parts_have_the_sizes_that_their_worksheets_give() -> None:
    plan = HOUSES["Mill Row"]
    sheets = {key: entry.sheet for key, entry in taken(plan).items() if entry.printed and entry.sheet}
    shown = {(key, result.key): result.shown for key, sheet in sheets.items() for result in sheet.results}
    rows = {row.name: row.size for row in sized.listed(sheets, "us")}
    assert shown["power-cut", "dump_needed"] in rows["Heat dump"]
    assert shown["relief", "peak_output"] in rows["Relief valve"]
    assert shown["expansion", "vessel_with_reserve"] in rows["Expansion tank"]
    assert shown["charge-loop", "flow"] in rows["Charging pump"]
    assert shown["charge-loop", "head"] in rows["Charging pump"]
    assert shown["emitter-temperature", "supply_water"] in rows["Baseboard"]
    assert rows["Tempering valve"] == sized.NOT_YET


@pytest.mark.parametrize(
    ("joined", "drawing"),
    [
        ({"joined": "series", "between_tanks": "8 ft"}, "two-tanks"),
        ({"joined": "parallel", "nearest_branch": "6 ft", "farthest_branch": "16 ft"}, "tanks-side-by-side"),
    ],
    ids=["series", "parallel"],
)
def test_a_dump_and_tanks_that_are_worked_out_stand_in_the_list_and_the_drawing(
    joined: dict[str, str], drawing: str
) -> None:
    tanks = entries(tank_count="2", tank_volume="400 gal", position="upright", **joined)
    dump = entries(loop_height="9 ft", dump_kind="finned-pipe", dump_rating="1,100 Btu/h/ft", dump_question="size")
    more = entries(
        gravity_pipe_kind="steel", gravity_pipe_size="2", damper="open", dump_surroundings="80 °F", diffuser="none"
    )
    plan = HOUSES["Mill Row"] | tanks | dump | more
    sheets = {key: entry.sheet for key, entry in taken(plan).items() if entry.printed and entry.sheet}
    rows = {row.name: row for row in sized.listed(sheets, "us")}
    assert rows["Store"].worksheet == "tanks-together"
    assert rows["Store"].quantity == "2"
    assert rows["Store"].size.startswith(f"400\u00a0gal each, in {joined['joined']}")
    size = next(result.shown for result in sheets["heat-dump"].results if result.key == "dump_size")
    assert rows["Heat dump"].size.startswith(f"{size}, finned pipe, for ")
    drawn = sized.drawn(sheets, "us")
    assert drawn["dump"] == size
    assert drawn["first-tank"] == drawn["second-tank"] == "400\u00a0gal"
    assert paper.suited(sheets) == drawing
    html = document(chosen(plan), "us", Wanted())
    for part, shown in (("dump", size), ("first-tank", "400\u00a0gal")):
        assert re.search(
            rf'<li data-part="{part}"><b>[^<]+</b>, <span class="ss-number">{re.escape(shown)}</span>', html
        )


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
    sheets = {key: entry.sheet for key, entry in taken(HOUSES[house]).items() if entry.printed and entry.sheet}
    assert paper.suited(sheets) == drawing


@pytest.mark.parametrize("worksheet", WORKSHEETS.values(), ids=list(WORKSHEETS))
def test_drawings_and_parts_that_a_worksheet_names_are_there(worksheet: Worksheet) -> None:
    parts = {key for system in SYSTEMS.values() for _, keys in system.groups for key in keys}
    assert {key for entry in worksheet.sizes for key in entry.drawn} <= parts
    assert {entry.drawing for entry in worksheet.suits} <= SYSTEMS.keys()


def test_every_part_that_is_listed_has_a_worksheet_that_sizes_it() -> None:
    assert {entry.part for worksheet in WORKSHEETS.values() for entry in worksheet.sizes} == set(PARTS)


# --- link and code


@pytest.mark.parametrize("house", HOUSES)
def test_the_link_brings_the_same_plan(house: str) -> None:
    plan = HOUSES[house]
    written = record.link_of(plan)
    assert written.isascii() and len(written) < 2000
    opened = link.read(written, WORKSHEETS)
    assert opened.problems == ()
    again = {key: Entry(text.text, text.origin) for key, text in opened.given.items()}
    assert record.link_of(again) == written
    for key, entry in taken(plan).items():
        sheet = taken(again)[key].sheet
        assert (sheet is None) == (entry.sheet is None)
        if sheet and entry.sheet:
            assert sheet.values == entry.sheet.values


def test_a_bare_number_gets_the_unit_that_stood_beside_it() -> None:
    given = {
        "store_volume": {"text": "1900,5", "units": "si", "from": "typed"},
        "store_top": {"text": "80", "units": "si", "from": "typed"},
    }
    assert asked(given)["link"] == "#v1;plan;store_volume=1900.5L;store_top=80C;end"
    fuel = typed(method="fuel", fuel="gas", amount="915")
    assert "amount=915therm" in asked(fuel)["link"]


def test_a_link_says_whose_site_made_it_in_what_units_and_the_reader_s_own_choice_wins() -> None:
    """A name is a stranger's text: it is said as what the link says, without markup, and no number hangs on it."""
    made = asked(typed(**BARE), units="si", site="Quillbrook <b>Stove Barn")["link"]
    assert made.endswith(";units=si;from=Quillbrook%20%3Cb%3EStove%20Barn;end")
    for form in (made, link.packed(made)):
        opened = json.loads(respond(json.dumps({"ask": "record", "units": "us", "link": form, "chosen": True})))
        assert "<b>" not in opened["said"]
        assert "This link says that it comes from Quillbrook &lt;b&gt;Stove Barn." in opened["said"]
        assert "This link was made in SI units; its numbers are shown in US units, as you chose." in opened["said"]
        assert opened["entries"]["store_volume"]["text"] == "500gal"
    assert "from=" not in asked(typed(**BARE))["link"], "the project's own site needs no name"
    at_a_guide = json.loads(respond(json.dumps({"ask": "link", "link": made, "plan": {}})))
    assert "it comes from Quillbrook" in at_a_guide["said"]


def test_every_link_of_a_dealer_s_site_carries_its_name_and_there_it_is_not_told() -> None:
    """That of a single worksheet as that of a plan; a packed one grows by little, since a telephone has to read it."""
    request = {"ask": "worksheet", "worksheet": "stored-heat", "units": "si", "plan": typed(**BARE)}
    plain = json.loads(respond(json.dumps(request)))["link"]
    made = json.loads(respond(json.dumps(request | {"site": "Harrow & Sons"})))["link"]
    assert made == plain.replace(";end", ";from=Harrow%20%26%20Sons;end") != plain
    assert len(link.packed(made)) - len(link.packed(plain)) < 30
    asking = {"ask": "link", "link": made, "plan": {}, "units": "us", "chosen": True}
    elsewhere, there = (json.loads(respond(json.dumps(asking | more))) for more in ({}, {"site": "Harrow & Sons"}))
    assert "it comes from Harrow &amp; Sons" in elsewhere["said"]
    assert "comes from" not in there["said"] and "shown in US units, as you chose" in there["said"]
    assert elsewhere["fields"] == there["fields"] == json.loads(respond(json.dumps(asking | {"link": plain})))["fields"]


def test_who_gave_a_number_and_what_was_picked_survive_a_link() -> None:
    plan = entries(**BARE) | {
        "store_volume": Entry("500 gal", "typed", giver="stock", item="open-500"),
        "design_load": Entry("30,500 Btu/h", "typed", giver="bill"),
        "lowest_useful": Entry("130 °F", "typed", giver="measured"),
    }
    opened = link.read(link.packed(record.link_of(plan)), WORKSHEETS)
    again = {key: Entry(text.text, text.origin, giver=text.giver, item=text.item) for key, text in opened.given.items()}
    for stock, model in ({"open-500": "Open 500"}, "Open 500"), ({}, "open-500 in that stock"):
        told_there = unescape(words(document(chosen(again), "us", Wanted(stock=stock))))
        assert f"{model} dealer's stock owner, installer" in told_there
        for told in ("500 gal Dealer's stock", "30,500 Btu/h From the bill", "130 °F Measured"):
            assert told in told_there


def test_parts_that_a_plan_does_not_have_are_not_asked_for() -> None:
    rows = [row.name for row in sized.listed(chosen(HOUSES["Hollow Cabin"]).sheets, "us")]
    assert "Stove with a water jacket" in rows
    assert not {"Exchanger for the taps", "Tempering valve"} & set(rows)


@pytest.mark.parametrize("house", HOUSES)
def test_no_step_is_printed_twice_and_what_is_pointed_at_stands_there(house: str) -> None:
    sections = sums.sections(chosen(HOUSES[house]).sheets)
    lines = {line.number: line for section in sections for line in section.lines}
    printed = [(line.step.words, line.step.sums, line.step.result) for line in lines.values() if line.step.sums]
    assert len(printed) == len(set(printed)) > 150
    assert all(number in lines for section in sections for _, number in section.before)
    told_by_what_differs = [line for line in lines.values() if line.differs]
    assert len(told_by_what_differs) > 5
    for line in told_by_what_differs:
        written = lines[line.formula_at].step.sums[0]
        for here, there in line.differs:
            written = written.replace(there, here)
        assert written == line.step.sums[0]


def test_a_code_is_read_back_from_its_drawing() -> None:
    """By a library from the drawing's own path: as long as the longest link of a house, and without any inline style."""
    text = "https://example.org/record/" + max((record.link_of(house) for house in HOUSES.values()), key=len)
    drawn = str(qr.svg(text, "the code"))
    assert "style" not in drawn
    size = int(re.findall(r'viewBox="0 0 (\d+)', drawn)[0])
    picture = numpy.full((size, size), 255, numpy.uint8)
    for x, y, width in re.findall(r"M(\d+) (\d+)h(\d+)v1H\d+z", drawn):
        picture[int(y), int(x) : int(x) + int(width)] = 0
    (result,) = zxingcpp.read_barcodes(numpy.kron(picture, numpy.ones((4, 4), numpy.uint8)))
    assert result.text == text


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
    replied = asked(given, date=bad, version=bad, piping=bad, ticked={bad: True}, address=f"https://example.org/{bad}")
    opened = json.loads(respond(json.dumps({"ask": "record", "link": f"#v1;plan;{bad}={bad};store_volume={bad};end"})))
    for reply in (replied, opened):
        for part in ("paper", "worksheets", "said", "link"):  # what the page takes as markup, or as an address
            assert "<script" not in reply[part]
    assert "alert(1)" in words(replied["paper"]), "it is shown as the text that it is"


@pytest.mark.parametrize(
    ("iso", "shown"), [("2026-11-25", "25 November 2026"), ("2026-13-01", ""), ("soon", ""), ("", "")]
)
def test_the_date_is_written_as_on_paper(iso: str, shown: str) -> None:
    assert paper.date(iso) == shown


def test_what_was_not_checked_is_always_there() -> None:
    for given in (typed(**BARE), {}):
        text = words(asked(given)["paper"])
        assert "The state of the chimney; clearances and floor protection" in text
        assert "local codes, the maker's manual and a licensed person decide" in text


def test_no_result_fills_a_field_that_only_shares_its_key() -> None:
    """How much larger the emitter would have to be is not how large it is, and a cool room is no cold pipe."""
    results = {result.key for worksheet in WORKSHEETS.values() for result in worksheet.results}
    assert {"emitter_times", "coldest", "flow", "hottest_water"} <= results & set(fields()), "the danger is there"
    assert not {"emitter_times", "coldest", "flow", "hottest_water"} & set(filled())
    by_name = {wanted.key for worksheet in WORKSHEETS.values() for wanted in worksheet.takes}
    assert set(filled()) <= set(BY_KEY) | by_name
    for house in HOUSES.values():
        for key, entry in look_at(house, "us", {}).entries.items():
            choice = fields()[key][0].kind == "choice"  # which case is at hand follows from the numbers
            assert entry.origin != "computed" or key in filled() or choice, key


def test_a_need_beyond_every_plant_is_no_second_number() -> None:
    """Baseboard that needs 351 °F: the tank's worksheet takes the highest that it can, and says that it is more."""
    place = {
        "altitude": "3,000 ft",
        "design_outdoor": "-5 °F",
        "degree_days": "7,800 °F·day",
        "average_outdoor": "28 °F",
    }
    letter = {"heated_area": "2,400 ft2", "house_class": "never-insulated", "method": "quick", "emitter": "baseboard"}
    stove = {"water_output": "40,000 Btu/h", "burn_time": "2 h", "firebox_volume": "2 ft3"}
    plan = entries(**place, **letter, **stove, baseboard_length="80 ft", lowest_useful="140 °F")
    told = words(document(chosen(plan, tank_size=True), "us", Wanted()))
    assert "What draws on it needs 250 °F or more" in told
    assert "it would need 351 °F" in told
    row = next(row for row in sized.listed(chosen(plan, tank_size=True).sheets, "us") if row.name == "Store")
    assert (row.quantity, row.size) == ("", "no size does it")


INSTALLER = {
    "method": "quick",
    "heated_area": "1,800 ft2",
    "house_class": "1970s",
    "design_outdoor": "-5 °F",
    "degree_days": "7,800 °F·day",
    "water_output": "60,000 Btu/h",
    "burn_time": "4 h",
    "lowest_useful": "140 °F",
    "hours_wanted": "14 h",
    "pipe_place": "emitters",
    "heating_pipe_kind": "copper-m",
    "heating_pipe_size": "1",
    "heating_pipe_length": "120 ft",
    "heating_elbows": "14",
    "heating_tees": "6",
    "store_volume": "600 gal",
    "other_volume": "35 gal",
    "expansion_kind": "membrane",
    "vessel_fitted": "44 gal",
    "height_above_vessel": "14 ft",
    "plant_kind": "closed",
    "peak_known": "no",
    "valve_capacity": "250,000 Btu/h",
    "stove_rating": "30 psi",
}


def test_an_installer_s_plan_of_five_worksheets_is_drawn_and_listed_as_he_gave_it() -> None:
    """A closed plant is drawn closed, though another worksheet takes no pressure; the store is the one that was given."""
    entry = chosen(entries(**INSTALLER))
    assert list(entry.sheets) == ["house-load", "tank-size", "pipe", "expansion", "relief"]
    assert entry.sheets["tank-size"].inputs["system_pressure"].origin == "typical"
    drawing = paper.suited(entry.sheets)
    assert not SYSTEMS[drawing].vented
    assert SYSTEMS[paper.suited(chosen(entries(**INSTALLER, system_pressure="0 psi")).sheets)].vented is True
    (store,) = [row for row in sized.listed(entry.sheets, "us") if row.name == "Store"]
    recommended = next(result.shown for result in entry.sheets["tank-size"].results if result.key == "recommended")
    assert store.size.startswith("600\u00a0gal, as given; ") and recommended in store.size
    assert sized.drawn(entry.sheets, "us")["store"] == "600\u00a0gal"
    told = first(urgent(entry, "us"))
    titles = [sentence.title for sentence in told.told]
    assert titles[0] == "The tank you have is too small." and "Your store does not hold one burn." in titles
    without = {key: text for key, text in INSTALLER.items() if key != "store_volume"}
    assert "as given" not in document(chosen(entries(**without)), "us", Wanted())


def test_a_part_names_the_number_or_two_that_it_waits_for() -> None:
    """House, emitters and stove are known, how long it burns is not: the paper says what the tank's worksheet waits for."""
    plan = {"method": "fuel", "amount": "740 gal", "degree_days": "7,800 °F·day", "design_outdoor": "-5 °F"}
    plan |= {"baseboard_length": "140 ft", "water_output": "60,000 Btu/h"}
    assert "Not worked out yet: the plan lacks Burn time of one full load." in _said_of("Store", plan)
    # Then only how well it is known stands in the way, which the reader may judge.
    assert "What size of tank? Tick it" in _said_of("Store", plan | {"burn_time": "4 h"})


@pytest.mark.parametrize(
    ("emitter", "waits"),
    [
        ("floor", "the plan lacks Floor area with pipe in it."),
        ("baseboard", "the plan lacks Total finned length of baseboard."),
        ("radiator", "the plan lacks Rated output of all radiators."),
    ],
)
def test_a_part_waits_for_numbers_of_the_kind_that_the_plan_has(emitter: str, waits: str) -> None:
    """Whoever chose a warm floor at the start was told that the length of the baseboard is missing."""
    plan = {"emitter": emitter, "design_load": "20,000 Btu/h", "design_outdoor": "-7 °F"}
    assert waits in _said_of("Emitters", plan)


def _at_the_start(**answers: str) -> tuple[Sheet, dict[str, Entry]]:
    """What the start says to these answers, and the plan with what flows into it from there."""
    plan = Entries(entries(**answers), Reader())
    start = answer_plan(WORKSHEETS["first-sketch"], plan, "us")
    return start, {**plan, **flowing(start, plan, WORKSHEETS, BY_KEY, new=True)}


FLOOR_HOUSE = {"place": "burlington-vt", "stove": "help", "emitter": "floor", "heated_area": "1,100 ft2"}
BILL = {"fuel_now": "propane", "method": "fuel", "amount": "700 gal", "start_from": "bill"}


@pytest.mark.parametrize(
    ("emitter", "more"),
    [
        ("floor", {"heated_area": "1,100 ft2"}),
        ("floor", {"heated_area": "1,100 ft2", "store_volume": "350 gal"}),
        ("air-coil", {}),
        ("baseboard", {"baseboard_length": "120 ft"}),
    ],
)
def test_whatever_the_start_warns_of_the_record_warns_of(emitter: str, more: dict[str, str]) -> None:
    """Five answers at the start are a plan, and who opens its record must not hear less: of a floor it was the mixing valve."""
    house = {"place": "burlington-vt", "stove": "help", "emitter": emitter, "system_pressure": "12 psi"}
    start, whole = _at_the_start(**BILL, **house, **more)
    warned = {advice.title for advice in start.advice if advice.level != "note"}
    told = {each.title for each in said(whole)}
    assert warned
    assert {title for title in warned if not title.startswith("12\u00a0h without")} <= told
    # With the tank of the sketch in the plan, or one's own, it is said of that tank.
    assert any(title.startswith("12\u00a0h without a fire need more than") for title in told)


def test_an_area_that_gives_the_heat_loss_too_is_not_taken_for_floor_with_pipe() -> None:
    assert "floor_area" in _at_the_start(**FLOOR_HOUSE, **BILL)[1]
    _, whole = _at_the_start(**FLOOR_HOUSE, fuel_now="propane", start_from="house", house_class="1980s")
    assert "design_load" in whole and "floor_area" not in whole


def test_what_flowed_from_a_choice_that_was_made_otherwise_since_is_not_called_late() -> None:
    """Who tried a floor first and has baseboard was told, before all else, that the floor's area is out of date."""
    _, plan = _at_the_start(**FLOOR_HOUSE, **BILL)
    changed = {**plan, **entries(emitter="baseboard", baseboard_length="120 ft")}
    assert "floor_area" in changed
    assert not [each.title for each in said(changed) if each.title.startswith("Floor area")]
    assert "floor" not in chosen(changed).sheets


def test_a_tank_that_carries_the_pause_is_not_called_too_small_for_it() -> None:
    """The chain said that 500 gal hold for 14 h, and the tank's sheet that 12 h need a larger tank."""
    given = {
        "water_output": "59,400 Btu/h",
        "burn_time": "3 h",
        "design_load": "19,800 Btu/h",
        "lowest_useful": "114 °F",
    }
    for volume, level in (("", "caution"), ("350 gal", "caution"), ("500 gal", "note")):
        plan = Entries(entries(**given, **({"store_volume": volume} if volume else {})), Reader())
        sheet = answer_plan(WORKSHEETS["tank-size"], plan, "us")
        assert [advice.level for advice in sheet.advice if advice.code.startswith("hours-")] == [level], volume


def _said_of(part: str, plan: dict[str, str]) -> str:
    paper = chosen(entries(**plan))
    assert "tank-size" not in paper.sheets
    row = re.search(rf"<tr[^>]*><th[^>]*>{part}</th>.*?</tr>", document(paper, "us", Wanted()))
    assert row
    return words(row[0])


def test_a_number_of_one_method_alone_keeps_no_tank_out_of_the_record() -> None:
    """The rule by floor area needs the area; what it gives is no other house's, and the rest stands without it."""
    plan = {
        "water_output": "60,000 Btu/h",
        "burn_time": "4 h",
        "design_load": "30,000 Btu/h",
        "lowest_useful": "140 °F",
    }
    entry = taken(entries(**plan), tank_size=True)["tank-size"]
    assert entry.lacks == () and entry.sheet is not None
    assert entry.sheet.values["by_house_area"] is None
    assert entry.sheet.headline and entry.sheet.headline.si


def test_what_most_of_a_plan_has_in_common_is_told_once() -> None:
    html = document(chosen(entries(**INSTALLER)), "us", Wanted())
    assert "Where nothing stands behind a value: given." in html
    assert "<td>Given</td>" not in html and "<strong>Assumed" in html
    measured = entries(**INSTALLER) | {"store_volume": Entry("600 gal", "typed", giver="measured")}
    assert "<td>Measured</td>" in document(chosen(measured), "us", Wanted())
    assert "* second-hand. ** from memory." in html


def test_a_result_that_was_worked_out_before_names_its_step() -> None:
    sections = sums.sections(chosen(HOUSES["Mill Row"]).sheets)
    numbers = {line.number for section in sections for line in section.lines}
    named = [number for section in sections for number in section.results_at.values()]
    assert len(named) > 10 and set(named) <= numbers


def test_the_appendix_is_left_out_on_request_and_no_stop_with_it() -> None:
    whole, short = (asked(typed(**INSTALLER), appendix=appendix)["paper"] for appendix in (True, False))
    assert whole.startswith(short.rstrip())
    assert "The tank you have is too small." in short and "Signature" in short
    for part in ("Appendix", "Step 1.1", "Sources", "Choices, and who made them"):
        assert part in whole and part not in short


def test_on_a_screen_the_sums_and_their_sources_are_folded() -> None:
    """A phone shows the two pages to hand over; what is behind them opens at a touch, and none of it stands outside."""
    whole = asked(typed(**INSTALLER))["paper"]
    folds = re.findall(
        r"<details class=\"ss-more ss-r-more\"><summary>(.*?)</summary>(.*?)</details>", whole, re.DOTALL
    )
    assert {"Choices, and who made them", "Results and working", "Sources"} <= {said for said, _ in folds}
    outside = re.sub(r"<details class=\"ss-more ss-r-more\">.*?</details>", "", whole, flags=re.DOTALL)
    assert "Step 1.1" not in outside and "Step 1.1" in whole
    assert "<details open" not in whole


def test_a_part_that_nobody_worked_out_is_dashed_and_says_so() -> None:
    html = document(chosen(entries(**INSTALLER)), "us", Wanted(appendix=False))
    listed = {key: words(row) for key, row in re.findall(r'<li data-part="([^"]+)">(.*?)</li>', html)}
    unknown = {key for key, row in listed.items() if "(not worked out)" in row}
    assert {"dump", "pump"} & unknown and "store" not in unknown and "600 gal" in listed["store"]
    assert html.count("sv-unsized") >= len([key for key in unknown if "pipe" not in key and "-to-" not in key]) > 1


def test_the_list_of_parts_can_be_ordered_from() -> None:
    """Each row with its quantity, size, material, room for maker and model, who supplies it and who decides."""
    plan = entries(**INSTALLER) | {"store_volume": Entry("600 gal", "typed", giver="stock", item="tank-600")}
    html = document(chosen(plan), "us", Wanted(stock={"tank-600": "Tank 600"}))
    table = html.partition('class="ss-r-parts"')[2].partition("</table>")[0]
    heads = re.findall(r'<th scope="col">(.*?)</th>', table)
    assert heads == ["Part", "Quantity", "Size", "Material", "Maker and model", "Supplied by", "Decided by"]
    rows = {
        cells[0]: cells[1:]
        for cells in (re.findall(r"<t[hd][^>]*>(.*?)</t[hd]>", row) for row in table.split("<tr")[2:])
    }
    assert rows["Store"][3:] == ["Tank 600", "dealer&#39;s stock", "owner, installer"]
    pipe = rows["Pipe, store to house"]
    assert (unescape(pipe[0]).replace("\u00a0", " "), pipe[2]) == ("120 ft", "copper, type M")
    assert pipe[3:5] == ["", ""], "for the installer to fill in"
    assert all(row[5] for row in rows.values())


METRIC = re.compile(r"([\d,.]+)\u00a0((?:m|kg|g|Pa|kPa|J|kJ|W|L|K|bar|mm)(?:[²³/·].*?)?)(?=[ )]|$)")
OURS = re.compile(r"\u00a0(?:\(?gal|ft|in|Btu|MMBtu|lb|psi|°F|cfm)")


@pytest.mark.parametrize("house", ["Fern Lane", "Ridge Road"])
def test_no_sum_mixes_units_but_for_the_constant_of_its_law(house: str) -> None:
    """A reader in US units finds them, or SI throughout; what stands in SI between the others is a constant as published."""
    mixed = 0
    for sheet in chosen(HOUSES[house]).sheets.values():
        laws = {step.key: step.law for step in sheet.course.steps if isinstance(step, Step)}
        for line in sheet.working:
            for written in line.sums:
                if not OURS.search(written):
                    continue
                for number, unit in METRIC.findall(written):
                    constants = [constant.value for constant in laws[line.key].constants.values()]
                    value = float(number.replace(",", ""))
                    same = any(value == pytest.approx(constant, rel=1e-6) for constant in constants)
                    assert same or unit in ("mm", "W"), (written, number, unit)
                    mixed += same
    assert mixed > 3


def test_the_link_of_a_whole_plan_opens_at_any_page() -> None:
    made = asked(typed(**BARE))["link"]
    reply = json.loads(respond(json.dumps({"ask": "link", "link": link.packed(made), "plan": {}})))
    assert reply["whole"] and set(reply["fields"]) == set(BARE) and "whole plan" in words(reply["said"])


@pytest.mark.parametrize("house", HOUSES)
def test_the_link_of_a_record_opens_the_same_record(house: str) -> None:
    """With what was worked out as such: it follows when the plan's numbers are changed, and its worksheets are in it."""
    given = HOUSES[house] | {"store_needed": Entry("133 °F", "computed", "tap-water")}
    sent = asked({key: entry_for_page(entry) for key, entry in given.items()})
    opened = asked({}, link=sent["link"])
    assert opened["entries"]["store_needed"] == {"text": "133F", "units": "us", "from": "computed", "by": "tap-water"}
    sheets = [re.findall(r'data-ss-sheet="([a-z-]+)"[^>]* checked', reply["worksheets"]) for reply in (sent, opened)]
    assert sheets[0] == sheets[1] != []
    assert opened["link"] == sent["link"]


def test_a_link_of_a_worksheet_fills_no_box_of_another_with_what_may_be_left_alone() -> None:
    """The start takes a firebox that bounds nothing where nobody has measured one; the tank's sheet took it for measured."""
    made = link.write(WORKSHEETS["first-sketch"], answer("first-sketch", {"amount": Typed("1,150 gal")}).inputs)
    assert "firebox_volume=60ft3~" in made
    reply = json.loads(respond(json.dumps({"ask": "link", "link": made, "plan": {}})))
    assert reply["fields"]["amount"]["text"] == "1150gal"
    assert "firebox_volume" not in reply["fields"]


def test_a_need_of_the_emitters_stays_the_highest_when_the_taps_need_less_again() -> None:
    """No other worksheet but the start asks what theirs asks, and the start is no place of its own."""
    emitters = {"design_load": "45,000 Btu/h", "emitter": "radiator", "radiator_rating": "24,500 Btu/h"}
    taps = {"tap_way": "coil", "coil_rating": "450,000 Btu/h", "tap_flow": "4 gal/min", "store_volume": "500 gal"}
    given = entries(**emitters, **taps, emitters_share="33 %")
    there = Entries(given | {"lowest_useful": Entry("146 °F", "computed", "tap-water")}, Reader())
    found = {key: answer_plan(WORKSHEETS[key], there, "us") for key in ("emitter-temperature", "tap-water")}
    assert found["emitter-temperature"].values["lowest_useful"] > found["tap-water"].values["lowest_useful"]  # type: ignore[operator]
    made = offer("lowest_useful", found["tap-water"], there, WORKSHEETS, BY_KEY)
    assert made and made.why == "higher" and made.standing and made.standing.worksheet == "emitter-temperature"
    flows = flowing(found["tap-water"], there, WORKSHEETS, BY_KEY, new=True)
    assert flows["lowest_useful"] == made.standing


def test_mixed_water_takes_a_load_of_its_own() -> None:
    given = entries(mixed_load="35,000 Btu/h", design_load="30,500 Btu/h")
    assert given_for(WORKSHEETS["tempering"], given)["load"].text == "35,000 Btu/h"
    assert "load" not in given_for(WORKSHEETS["stored-heat"], given)
    assert "load" not in given_for(WORKSHEETS["tempering"], entries(load="9,000 Btu/h"))
