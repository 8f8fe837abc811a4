"""The plan file: it comes back as it was written, and nothing that a stranger puts into one can do harm."""

import json
import random
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.answer import Typed, answer, open_link
from calc.engine import link
from calc.engine.offering import Offer, flowing, offer, offers, renewed, stale
from calc.engine.plan import Entry, brought_up, fields_by_key, given_for, look, older_fields
from calc.engine.plan_file import read, with_units, write
from calc.engine.sheet import Sheet
from calc.engine.typed import Reader
from calc.physics import fuels
from calc.vocabulary import BY_KEY, EVERY_PIPE, OLDER_WORDS
from calc.worksheets import WORKSHEETS

FIELDS = fields_by_key(WORKSHEETS.values())
PLAN = {
    "store_volume": Entry("500 gal", "typed"),
    "store_top": Entry("180 F", "typical"),
    "design_load": Entry("30500 Btu/h", "computed", "house-load"),
    "lowest_useful": Entry("130 F", "link"),
}


def test_a_plan_comes_back_as_it_was_written() -> None:
    opened = read(write(PLAN), WORKSHEETS.values())
    assert opened.entries == PLAN
    assert opened.problems == ()


def test_json_comes_back_too() -> None:
    text = json.dumps({"plan": {key: {"text": entry.text, "from": entry.origin} for key, entry in PLAN.items()}})
    assert {key: entry.text for key, entry in read(text, WORKSHEETS.values()).entries.items()} == {
        key: entry.text for key, entry in PLAN.items()
    }


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("", "not a plan"),
        ("<html><script>alert(1)</script>", "not a plan"),
        ("[settings]\nvolume=500", "not a plan"),
        ('{"other": 1}', "JSON of another form"),
        ("{" * 50_000, "JSON of another form"),
        ("x" * 5_000_000, "too large"),
        ("Stoke and Store plan 1\n" + "\n".join(f"key{n} = {n}" for n in range(1000)) + "\nend", "far more values"),
        (write(PLAN).removesuffix("end\n"), "cut off"),
        (write(PLAN).replace("plan 1", "plan 9"), "another version"),
        (write(PLAN).replace("500 gal", "<b>500</b>"), "left out"),
        (write(PLAN).replace("500 gal", "5 apples"), "left out"),
        (write(PLAN).replace("500 gal", "5e9 gal"), "must be between"),
        (write(PLAN | {"fuel_now": Entry("peat", "typed")}), "is no choice that is offered"),
        (write(PLAN).replace("store_volume", "nonsense"), "no worksheet asks"),
        (write(PLAN).replace("end\n", "store_volume = 600 gal | typed\nend\n"), "twice"),
        ("\ufffd\ufffdS\x00t\x00o\x00k\x00e\x00", "not a plan"),
    ],
    ids=lambda value: str(value)[:30] if isinstance(value, str) else "",
)
def test_another_file_is_answered_in_a_sentence(text: str, word: str) -> None:
    opened = read(text, WORKSHEETS.values())
    assert any(word in problem for problem in opened.problems), opened.problems
    for entry in opened.entries.values():
        assert "<" not in entry.text


@given(st.text(max_size=400))
def test_no_text_breaks_the_reader(text: str) -> None:
    read(text, WORKSHEETS.values())
    read("Stoke and Store plan 1\n" + text, WORKSHEETS.values())


def test_every_worksheet_takes_what_the_plan_knows() -> None:
    for worksheet in WORKSHEETS.values():
        taken = given_for(worksheet, PLAN)
        sheet = answer(worksheet.key, taken)
        for key, typed in taken.items():
            if key in sheet.inputs:
                assert sheet.inputs[key].origin == typed.origin


def test_results_that_are_inputs_elsewhere_are_offered() -> None:
    given = {"indoor": Typed("68 °F")}
    own = {
        "method": "quick",
        "heated_area": "2,000",
        "house_class": "1980s",
        "design_outdoor": "0",
        "degree_days": "7,000",
    }
    sheet = answer("house-load", {key: Typed(text) for key, text in own.items()})
    assert offers(sheet, BY_KEY)["design_load"].origin == "computed"
    assert "lowest_useful" in offers(answer("emitter-temperature", given), BY_KEY)
    assert "store_volume" not in offers(answer("stored-heat", {}), BY_KEY), "an input is not a result"
    assert "bore" not in offers(answer("pipe", {}), BY_KEY), "a bore from a table is no news to another pipe"


def test_a_result_of_the_worked_example_is_offered_as_the_example_s() -> None:
    assert {offer.origin for offer in offers(answer("house-load", {}), BY_KEY).values()} == {"example"}


def test_so_is_one_with_a_number_of_the_example_behind_it() -> None:
    """A load of one's own, but the floor of an invented house: the water is nobody's. A peak needs no more than was given."""
    water = answer("floor", {"design_load": Typed("30,000 Btu/h")})
    assert water.inputs["floor_area"].origin == "example"
    assert offers(water, BY_KEY)["supply_water"].origin == "example"
    loop = answer("charge-loop", {"water_output": Typed("60,000 Btu/h")})
    assert offers(loop, BY_KEY)["peak_output"].origin == "computed"


def test_every_result_that_another_worksheet_asks_can_be_offered() -> None:
    # In another unit for each fuel, a flow of another loop, water in a power cut, rooms for pipes, emitters needed
    # for emitters there are: no number for another.
    apart = {"heat_content", "flow", "hottest_water", "coldest", "emitter_times"}
    for worksheet in WORKSHEETS.values():
        own = {field.key for field in worksheet.all_fields()}
        for result in worksheet.results:
            asked = any(
                result.key in {field.key for field in other.all_fields()}
                for other in WORKSHEETS.values()
                if other is not worksheet
            )
            if asked and result.key not in own | apart:
                assert result.key in BY_KEY, f"{worksheet.key} gives {result.key}, which calc.vocabulary does not know"


def test_a_sheet_without_results_offers_nothing() -> None:
    assert offers(answer("house-load", {"indoor": Typed("hot")}), BY_KEY) == {}


def test_what_a_plan_holds_and_no_case_asks_is_read_by_itself() -> None:
    """No wood is burnt here, so its heater is not asked about: what was said of it is shown all the same if it can be."""
    way = {"method": Entry("surfaces", "typed"), "indoor": Entry("68 F", "typed"), "fuel_now": Entry("oil", "typed")}
    basis, amount = "efficiency_basis_now", "amount"
    known = look(way | {basis: Entry("lower", "typed"), amount: Entry("600 gal", "typed")}, WORKSHEETS.values())
    assert known[basis].value is not None
    assert not known[basis].used
    assert known[amount].value is not None
    known = look(way | {basis: Entry("peat", "typed"), amount: Entry("much", "typed")}, WORKSHEETS.values())
    assert known[basis].value is None
    assert known[amount].value is None


def test_what_no_longer_has_a_result_is_stale() -> None:
    entries = {"indoor": Entry("68 F", "typed"), "design_load": Entry("30500 Btu/h", "computed", "house-load")}
    assert stale(entries | {"indoor": Entry("hot", "typed")}, WORKSHEETS, BY_KEY) == {"design_load": ""}


def test_a_computed_value_goes_stale_when_its_inputs_change() -> None:
    sheet = answer("house-load", {})
    entries = {key: Entry(entry.text, "typed") for key, entry in sheet.inputs.items() if not entry.from_field}
    entries["design_load"] = Entry(offers(sheet, BY_KEY)["design_load"].text, "computed", "house-load")
    assert stale(entries, WORKSHEETS, BY_KEY) == {}
    entries["indoor"] = Entry("60 °F", "typed")
    now = offers(answer("house-load", given_for(WORKSHEETS["house-load"], entries)), BY_KEY)["design_load"].text
    assert stale(entries, WORKSHEETS, BY_KEY) == {"design_load": now}
    assert stale(entries, WORKSHEETS, BY_KEY, ["indoor"]) == {}


def test_what_rests_on_a_renewed_number_is_renewed_with_it() -> None:
    """The emitters' need was in step with a load that is out of date: it goes along, and then nothing is left behind."""
    entries = {
        "method": Entry("quick", "typed"),
        "heated_area": Entry("1,800 ft2", "typed"),
        "design_load": Entry("20000 Btu/h", "computed", "house-load"),
        "emitter_length": Entry("120 ft", "typed"),
    }
    emitters = WORKSHEETS["emitter-temperature"]
    need = offers(answer(emitters.key, given_for(emitters, entries)), BY_KEY)["lowest_useful"].text
    entries["lowest_useful"] = Entry(need, "computed", emitters.key)
    assert stale(entries, WORKSHEETS, BY_KEY).keys() == {"design_load"}
    new = renewed(entries, stale(entries, WORKSHEETS, BY_KEY), WORKSHEETS, BY_KEY)
    assert new.keys() == {"design_load", "lowest_useful"}
    assert stale(entries | new, WORKSHEETS, BY_KEY) == {}
    assert renewed(entries | new, stale(entries | new, WORKSHEETS, BY_KEY), WORKSHEETS, BY_KEY) == {}


def test_a_computed_value_without_its_inputs_is_stale_too() -> None:
    entries = {"design_load": Entry("30485.5 Btu/h", "computed", "house-load")}
    assert stale(entries, WORKSHEETS, BY_KEY) == {"design_load": ""}
    assert stale({"design_load": Entry("30485.5 Btu/h", "typed")}, WORKSHEETS, BY_KEY) == {}


def _sheet(key: str, entries: dict[str, Entry]) -> Sheet:
    return answer(key, given_for(WORKSHEETS[key], entries))


def _offered(key: str, result: str, entries: dict[str, Entry]) -> Offer:
    entry = offer(result, _sheet(key, entries), entries, WORKSHEETS, BY_KEY)
    assert entry is not None
    return entry


def test_a_result_goes_into_the_plan_where_nobody_typed_one() -> None:
    entries = {"indoor": Entry("68 F", "typed")}
    entry = _offered("house-load", "design_load", entries)
    assert entry.why == ""
    assert entry.taken == offers(_sheet("house-load", entries), BY_KEY)["design_load"]
    entries["design_load"] = Entry("9000 Btu/h", "computed", "house-load")
    assert _offered("house-load", "design_load", entries).taken == entry.taken
    entries["design_load"] = Entry("", "typical")
    assert _offered("house-load", "design_load", entries).taken == entry.taken


@pytest.mark.parametrize("origin", ["typed", "link"])
def test_a_number_that_somebody_typed_stands_until_the_reader_says_otherwise(origin: str) -> None:
    entries = {"indoor": Entry("68 F", "typed"), "design_load": Entry("21,000", origin)}
    entry = _offered("house-load", "design_load", entries)
    assert (entry.why, entry.taken, entry.standing) == ("typed", None, entries["design_load"])
    assert entry.choices == (offers(_sheet("house-load", entries), BY_KEY)["design_load"],)
    entries["design_load"] = Entry(entry.choices[0].text, origin)
    assert _offered("house-load", "design_load", entries).why == "same"


def test_a_typed_temperature_that_falls_short_of_what_the_emitter_needs_is_told() -> None:
    entries = {"design_load": Entry("20000 Btu/h", "typed"), "indoor": Entry("68 F", "typed")}
    low = _offered("floor", "lowest_useful", entries | {"lowest_useful": Entry("70 F", "typed")})
    high = _offered("floor", "lowest_useful", entries | {"lowest_useful": Entry("200 F", "typed")})
    load = _offered("house-load", "design_load", {"design_load": Entry("900 Btu/h", "typed")})
    assert [(entry.why, entry.short) for entry in (low, high, load)] == [
        ("typed", True),
        ("typed", False),
        ("typed", False),
    ]


def test_of_emitter_coil_and_tap_the_highest_is_kept() -> None:
    entries = {"design_load": Entry("20000 Btu/h", "typed"), "indoor": Entry("68 F", "typed")}
    high = Entry("200 F", "computed", "tap-water")
    entry = _offered("floor", "lowest_useful", entries | {"lowest_useful": high})
    low = offers(_sheet("floor", entries), BY_KEY)["lowest_useful"]
    assert (entry.why, entry.taken) == ("higher", None)
    assert low in entry.choices
    # The same worksheet may always correct what it gave itself.
    own = Entry("200 F", "computed", "floor")
    assert _offered("floor", "lowest_useful", entries | {"lowest_useful": own}).taken == low
    # A higher one takes the place of a lower one.
    lower = Entry("70 F", "computed", "no-such-worksheet")
    assert _offered("floor", "lowest_useful", entries | {"lowest_useful": lower}).taken == low


def test_what_the_taps_need_is_remembered_although_the_emitter_s_number_stands_in_the_plan() -> None:
    """The emitter gave 150 °F, more than the taps; better emitters need less than the taps, and the taps count again."""
    entries = {
        "design_load": Entry("20000 Btu/h", "typed"),
        "indoor": Entry("68 F", "typed"),
        "tap_wanted": Entry("125 F", "typed"),
        "lowest_useful": Entry("150 F", "computed", "floor"),
    }
    assert "tap_wanted" in {field.key for field in WORKSHEETS["tap-water"].all_fields()}
    entry = _offered("floor", "lowest_useful", entries)
    taps = offers(_sheet("tap-water", entries), BY_KEY)["lowest_useful"]
    assert (entry.why, entry.standing) == ("higher", taps)
    assert entry.choices[0] == taps


# ---- what is meant by a bare number, and what flows on its own -----------------------------------------------------

OIL = {
    "method": Entry("fuel", "typed"),
    "fuel_now": Entry("oil", "typed"),
    "amount": Entry("800", "typed", unit="gal"),
    "design_outdoor": Entry("-10", "typed", unit="F"),
    "degree_days": Entry("7500", "typed", unit="Fday"),
}


def test_a_bare_number_is_meant_in_the_unit_of_its_label_whatever_is_asked_later() -> None:
    gallons = _sheet("house-load", OIL).inputs["amount"].si
    for others in ({"method": Entry("quick", "typed")}, {"heated_area": Entry("1800", "typed", unit="ft2")}):
        known = look(OIL | others, WORKSHEETS.values())["amount"]
        assert known.value is not None
        assert known.value.si == pytest.approx(gallons)
        assert known.value.shown("us") == "800\N{NO-BREAK SPACE}gal"
    tons = _sheet("house-load", OIL | {"fuel_now": Entry("pellets", "typed")})
    assert [problem.key for problem in tons.problems] == ["amount"]
    assert "gal" in tons.problems[0].text


def test_an_unknown_unit_beside_a_number_is_told() -> None:
    sheet = _sheet("house-load", OIL | {"amount": Entry("800", "typed", unit="firkins")})
    assert [problem.key for problem in sheet.problems] == ["amount"]


def _flow(entries: dict[str, Entry], *, new: bool = True, declined: tuple[str, ...] = ()) -> dict[str, str]:
    flow = flowing(_sheet("house-load", entries), entries, WORKSHEETS, BY_KEY, new=new, declined=declined)
    return {key: entry.text for key, entry in flow.items()}


def test_results_flow_into_the_plan_once_nothing_of_the_example_is_behind_them() -> None:
    worked = {key: entry.text for key, entry in offers(_sheet("house-load", OIL), BY_KEY).items()}
    assert _flow(OIL) == worked
    assert {"design_load", "yearly_heat"} <= worked.keys()
    assert _flow({}) == {}
    assert _flow({key: entry for key, entry in OIL.items() if key != "degree_days"}) == {}  # the example's still


def test_results_do_not_flow_over_what_stands() -> None:
    worked = offers(_sheet("house-load", OIL), BY_KEY)
    assert _flow(OIL, new=False) == {}
    assert "design_load" not in _flow(OIL, declined=("design_load",))
    assert "design_load" not in _flow(OIL | {"design_load": Entry("21,000", "typed")})
    assert "design_load" not in _flow(OIL | {"design_load": Entry("21,000", "link")})
    assert "design_load" not in _flow(OIL | {"design_load": Entry("21000 Btu/h", "computed", "another-worksheet")})
    late = Entry("21000 Btu/h", "computed", "house-load")
    assert _flow(OIL | {"design_load": late}, new=False) == {"design_load": worked["design_load"].text}
    assert _flow(OIL | worked) == {}


def test_of_several_needs_the_highest_flows() -> None:
    entries = {key: Entry(text, "typed") for key, text in WORKSHEETS["tap-water"].examples[0].given.items()}
    sheet = _sheet("tap-water", entries)
    lower = entries | {"lowest_useful": Entry("60 F", "computed", "no-such-worksheet")}
    assert "lowest_useful" in flowing(sheet, lower, WORKSHEETS, BY_KEY, new=True)
    # The emitter of the same plan needs hotter water than the taps do.
    higher = entries | {"lowest_useful": Entry("140 F", "computed", "emitter-temperature")}
    assert "lowest_useful" not in flowing(sheet, higher, WORKSHEETS, BY_KEY, new=True)


def test_a_sheet_offers_nothing_that_no_other_worksheet_asks() -> None:
    sheet = _sheet("stored-heat", {"store_volume": Entry("500 gal", "typed")})
    assert offer("usable_heat", sheet, {}, WORKSHEETS, BY_KEY) is None


def test_a_plan_as_typed_gets_its_units_for_the_file() -> None:
    typed = {
        "store_volume": Entry("1 500", "typed", "", "si"),
        "store_top": Entry("", "typical"),
        "indoor": Entry("nonsense", "typed"),
        "store_inside": Entry("yes", "typed"),
        "nobody_asks": Entry("5", "typed"),
    }
    opened = with_units(typed, WORKSHEETS.values())
    assert {key: entry.text for key, entry in opened.entries.items()} == {
        "store_volume": "1500 L",
        "store_top": "180 F",
        "store_inside": "yes",
    }
    assert opened.problems == ("Room temperature wanted is left out: what stands there cannot be read.",)
    assert read(write(opened.entries), WORKSHEETS.values()).entries == opened.entries


def test_the_plan_is_seen_as_the_worksheets_see_it() -> None:
    entries = {"method": Entry("quick", "typed"), "wall_area": Entry("600", "typed"), "indoor": Entry("70", "typed")}
    seen = look(entries, WORKSHEETS.values())
    assert list(seen) == ["method", "indoor", "wall_area"]
    assert seen["indoor"].used
    assert not seen["wall_area"].used, "the quick way asks for no walls"
    assert {"house-load", "emitter-temperature"} <= set(seen["indoor"].askers)
    assert look({"indoor": Entry("7000", "typed")}, WORKSHEETS.values())["indoor"].problem.startswith(
        "Room temperature"
    )


def test_a_plan_cut_anywhere_breaks_nothing() -> None:
    text = write(PLAN)
    for length in sorted(random.Random(1).sample(range(len(text)), 60)):
        opened = read(text[:length], WORKSHEETS.values())
        assert opened.problems


PLAN_LINK = "#v1;plan;store_volume=500gal;store_top=180F~;fill_temperature=~;lowest_useful=130F;emitter=baseboard;end"


def test_a_link_of_the_whole_plan_comes_back_as_it_was_written() -> None:
    opened = link.read(PLAN_LINK, WORKSHEETS)
    assert opened.problems == ()
    assert opened.worksheet == "plan"
    assert opened.given == {
        "store_volume": Typed("500gal", "us", "link"),
        "store_top": Typed("180F", "us", "typical"),
        "fill_temperature": Typed("", "us", "typical"),
        "lowest_useful": Typed("130F", "us", "link"),
        "emitter": Typed("baseboard", "us", "link"),
    }
    assert link.write_plan(opened.given) == PLAN_LINK


def test_a_link_of_the_whole_plan_is_no_worksheet() -> None:
    sheet, said = open_link(PLAN_LINK)
    assert sheet is None
    assert said == ("This link holds a whole plan: open it in a browser, at any page of this site.",)


@pytest.mark.parametrize(
    ("spoilt", "word"),
    [
        (PLAN_LINK.removesuffix(";end"), "cut off"),
        (PLAN_LINK.replace("#v1", "#v9"), "later version"),
        (PLAN_LINK.replace(";end", ";store_volume=600gal;end"), "twice"),
        (PLAN_LINK.replace("lowest_useful", "nonsense"), "no worksheet asks: “nonsense”"),
        (PLAN_LINK.replace(";end", ";%3Cscript%3E=1;end"), "no worksheet asks"),
    ],
)
def test_a_spoilt_link_of_the_whole_plan_names_what_is_wrong(spoilt: str, word: str) -> None:
    opened = link.read(spoilt, WORKSHEETS)
    assert any(word in problem for problem in opened.problems), opened.problems
    assert opened.given["store_volume"].text == "500gal"


def test_texts_in_a_link_of_the_whole_plan_are_escaped() -> None:
    given = {"charge_pipe_size": Typed("1-1/4", "us"), "store_volume": Typed("5;end <b>½ gal", "us")}
    written = link.write_plan(given)
    assert written.isascii()
    assert written.count(";") == 4
    assert {key: text.text for key, text in link.read(written, WORKSHEETS).given.items()} == {
        key: text.text for key, text in given.items()
    }


def _after_the_start(**said: str) -> dict[str, Entry]:
    """A plan after the five questions: what was said, and what flows into it unasked."""
    entries = {key: Entry(text, "typed") for key, text in said.items()}
    sheet = _sheet("first-sketch", entries)
    return entries | flowing(sheet, entries, WORKSHEETS, BY_KEY, new=True)


STARTED = {
    "fuel_now": "oil",
    "method": "fuel",
    "start_from": "bill",
    "place": "hibbing-mn",
    "heated_area": "2000 ft2",
    "emitter": "baseboard",
    "baseboard_length": "160 ft",
    "stove": "help",
}
CLIMATE = {"design_outdoor", "degree_days", "heating_days", "average_outdoor", "altitude"}


def test_the_place_of_the_start_fills_the_climate_of_every_worksheet() -> None:
    plan = _after_the_start(**STARTED, amount="800 gal")
    assert plan.keys() >= CLIMATE
    for key, worksheet in WORKSHEETS.items():
        if key == "winter-run":
            continue  # asks the place itself, and its year is a file
        for name, entry in _sheet(key, plan).inputs.items():
            if name in CLIMATE:
                assert entry.origin == "computed" or "place" in {field.key for field in worksheet.fields}, (key, name)


@pytest.mark.parametrize("gallons", ["800 gal", "670 gal"])
def test_the_house_goes_on_from_the_start_with_the_same_load(gallons: str) -> None:
    plan = _after_the_start(**STARTED, amount=gallons)
    house = _sheet("house-load", plan)
    assert house.inputs["fuel_now"].si == "oil" and house.inputs["amount"].text == gallons
    assert house.values["design_load"] == pytest.approx(
        BY_KEY["design_load"][0].unit("us").to_si(float(plan["design_load"].text.split()[0])), rel=1e-4
    )
    # Another worksheet's area changes neither the fuel nor its unit, and nothing in the plan is called out of date.
    assert stale(plan, WORKSHEETS, BY_KEY) == {}


def test_twice_the_oil_is_twice_the_heat_and_moves_nothing_else() -> None:
    less, more = (_after_the_start(**STARTED, amount=amount) for amount in ("400 gal", "800 gal"))
    changed = {key for key in more if less.get(key) != more[key]}
    assert changed.isdisjoint(CLIMATE | STARTED.keys())
    loads = [float(plan["design_load"].text.split()[0]) for plan in (less, more)]
    assert loads[1] == pytest.approx(2 * loads[0], rel=1e-3)


ONE_PIPE = Path(__file__).resolve().parents[1] / "moved/one-pipe"  # a plan, and its links, from when all pipes were one
PIPES = (
    "This plan had one entry for every pipe: Kind of pipe; Nominal pipe size; Length of pipe, there and back; "
    "90° elbows; Tees with flow through the branch; Ball valves. Each pipe has its own now and begins with that, so "
    "change it where a pipe is another."
)


def test_a_plan_of_one_pipe_is_read_for_ever_and_gives_each_pipe_its_own() -> None:
    """It says that its pipe is at the stove, so the heating loop's is not known; every other pipe begins with it."""
    opened = read((ONE_PIPE / "plan.txt").read_text(encoding="utf-8"), WORKSHEETS.values())
    assert opened.problems == (PIPES,)
    assert write(opened.entries) == (ONE_PIPE / "now.txt").read_text(encoding="utf-8")
    assert {key for key in opened.entries if key.endswith("pipe_size")} == {
        f"{part}_pipe_size" for part in ("charge", "gravity", "buried", "branch")
    }
    for text in (ONE_PIPE / "links.txt").read_text(encoding="utf-8").splitlines():
        linked = link.read(text, WORKSHEETS)
        assert linked.problems == (PIPES,)
        assert linked.given.keys() == opened.entries.keys()
    again = read(write(opened.entries), WORKSHEETS.values())
    assert (again.entries, again.problems) == (opened.entries, ())


def test_the_heater_of_the_bill_and_the_stove_to_come_are_two() -> None:
    """Each efficiency is read where it is asked, whichever page it was typed on; so is the one fuel of the house."""
    plan = _after_the_start(**STARTED | {"fuel_now": "propane"}, amount="900 gal", efficiency_propane="78 %")
    sketch, house, cost = (_sheet(key, plan) for key in ("first-sketch", "house-load", "fuel-cost"))
    assert house.inputs["fuel_now"].si == cost.inputs["fuel_now"].si == "propane"
    assert house.inputs["efficiency_propane"].si == cost.inputs["efficiency_propane"].si == 0.78
    assert house.values["design_load"] == pytest.approx(sketch.values["design_load"], rel=1e-4)
    for key in ("first-sketch", "wood-use"):
        assert _sheet(key, plan).values["efficiency"] == 0.68


@pytest.mark.parametrize("basis", ["higher", "lower"])
def test_a_winter_on_wood_costs_the_same_on_every_page(basis: str) -> None:
    stove = {"efficiency_basis": basis, "efficiency": "75 %", "species": "white-oak", "moisture": "25 %"}
    plan = _after_the_start(**STARTED, **stove, amount="800 gal")
    sketch, wood, cost = (_sheet(key, plan) for key in ("first-sketch", "wood-use", "fuel-cost"))
    assert wood.values["wood_volume"] == pytest.approx(sketch.values["wood_volume"], rel=1e-4)
    assert cost.values["cost_of_wood"] == pytest.approx(sketch.values["cost_wood"], rel=1e-4)
    price = cost.values["fuel_price_wood"]
    assert cost.values["cost_of_wood"] == pytest.approx(wood.values["wood_volume"] * price, rel=1e-3)


def test_who_burns_wood_now_has_one_kind_of_wood_and_two_heaters() -> None:
    plan = _after_the_start(
        **STARTED | {"fuel_now": "wood"}, amount="6 cord", efficiency_wood_now="50 %", tap_share="0 %"
    )
    sketch, house, cost = (_sheet(key, plan) for key in ("first-sketch", "house-load", "fuel-cost"))
    assert house.values["wood_content_now"] == pytest.approx(sketch.values["wood_heat_content"], rel=1e-3)
    assert house.values["yearly_heat"] == pytest.approx(sketch.values["yearly_heat"], rel=1e-4)
    # The same heat at 68 % in place of 50 % takes fewer cords, and the bill falls with them.
    cord = fuels.CORD
    assert sketch.values["wood_volume"] == pytest.approx(6 * cord * 50 / 68, rel=1e-3)
    # What is burnt next does not change what the house took last year.
    oak = _sheet("first-sketch", plan | {"species": Entry("white-oak", "typed")})
    assert oak.values["yearly_heat"] == sketch.values["yearly_heat"]
    assert oak.values["wood_volume"] < 0.85 * sketch.values["wood_volume"]
    assert sketch.values["cost_now"] == pytest.approx(6 * cord * sketch.values["fuel_price_wood"], rel=1e-6)
    assert cost.values["cost_now"] == pytest.approx(sketch.values["cost_now"], rel=1e-4)


@pytest.mark.parametrize("basis", ["higher", "lower"])
def test_an_old_wood_heater_is_read_on_the_basis_it_is_quoted_on(basis: str) -> None:
    given = {"fuel_now": "wood", "amount": "6 cord", "efficiency_wood_now": "60 %", "efficiency_basis_now": basis}
    plan = _after_the_start(**STARTED | given)
    sketch, house, cost = (_sheet(key, plan) for key in ("first-sketch", "house-load", "fuel-cost"))
    assert house.values["yearly_heat"] == pytest.approx(sketch.values["yearly_heat"], rel=1e-4)
    whole = cost.values["fuel_price_wood"] / cost.values["wood_content_now"]
    share = 0.6 if basis == "higher" else 0.6 * 6219 / 6880  # Btu/lb at 20 % moisture: Forest Products Laboratory
    assert cost.values["price_beside"] == pytest.approx(whole / share, rel=1e-3)


def test_a_plan_of_one_efficiency_is_read_for_ever_and_gives_the_old_heater_its_own() -> None:
    older = {
        key: Entry(text, "typed") for key, text in {"method": "fuel", "fuel": "pellets", "efficiency": "72 %"}.items()
    }
    now, said = brought_up(older | {"heat_content": Entry("16 MMBtu/ton", "typed")}, WORKSHEETS.values(), Reader())
    assert {key: entry.text for key, entry in now.items()} == {
        "method": "fuel",
        "fuel_now": "pellets",
        "efficiency": "72 %",
        "efficiency_pellets": "72 %",
        "pellet_content": "16 MMBtu/ton",
    }
    assert said == (
        "This plan had one entry for the stove and for the heater you have: Efficiency on pellets. Each has its own now "
        "and begins with that, so change it where they differ."
    )
    assert brought_up(now, WORKSHEETS.values(), Reader()) == (now, "")
    linked = link.read("#v1;plan;method=fuel;fuel=pellets;efficiency=72%25;end", WORKSHEETS)
    assert (linked.given["efficiency_pellets"].text, linked.problems) == ("72%", (said,))


def test_the_words_that_a_page_brings_up_are_all_there_are() -> None:
    asked = fields_by_key(WORKSHEETS.values())
    assert set(OLDER_WORDS) >= {key for key in older_fields(WORKSHEETS.values()) if key not in asked} - {"how_built"}
    assert not set(OLDER_WORDS) & asked.keys()


def test_an_older_entry_goes_to_the_worksheet_that_gave_it_and_only_where_it_fits() -> None:
    reader = Reader()
    by_one, _ = brought_up({"pipe_size": Entry("2", "example", "buried-pipe")}, WORKSHEETS.values(), reader)
    assert by_one == {"buried_pipe_size": Entry("2", "example", "buried-pipe")}
    plastic, _ = brought_up({"pipe_kind": Entry("pex", "typed")}, WORKSHEETS.values(), reader)
    assert set(plastic) == {"heating_pipe_kind", "buried_pipe_kind"}, "no plastic beside a fire"
    unreadable, _ = brought_up({"elbows": Entry("many", "typed")}, WORKSHEETS.values(), reader)
    assert {entry.text for entry in unreadable.values()} == {"many"}, "nothing typed is lost"
    heat, _ = brought_up({"pipe_heat": Entry("10,000 Btu/h", "typed")}, WORKSHEETS.values(), reader)
    assert set(heat) == {"heating_pipe_heat", "buried_pipe_heat"}, "a branch carries less than the line to the house"
    own = {"tees": Entry("3", "typed"), "charge_tees": Entry("7", "typed")}
    assert brought_up(own, WORKSHEETS.values(), reader)[0]["charge_tees"].text == "7"


def test_each_pipe_is_read_by_its_own_worksheets_alone() -> None:
    entries = {"charge_pipe_size": Entry("1-1/4", "typed"), "heating_pipe_size": Entry("3/4", "typed")}
    sizes = {key: given_for(worksheet, entries).get("pipe_size") for key, worksheet in WORKSHEETS.items()}
    assert {key: typed.text for key, typed in sizes.items() if typed} == {
        "charge-loop": "1-1/4",
        "pipe": "3/4",
        "antifreeze": "3/4",
    }
    labels = [known.field.label for known in look(entries, WORKSHEETS.values()).values()]
    assert labels == ["Nominal pipe size (heating loop)", "Nominal pipe size (charging loop)"]


def test_no_worksheet_asks_about_a_pipe_without_saying_which() -> None:
    kept = fields_by_key(WORKSHEETS.values())
    assert not kept.keys() & set(EVERY_PIPE)
    assert {key for field in EVERY_PIPE for key in kept if key.endswith(f"_{field}")} >= {
        "branch_bore",
        "buried_pipe_kind",
    }


@pytest.mark.parametrize(
    ("key", "value", "there", "elsewhere"),
    [
        ("emitter", "floor", "winter-run", "emitter-temperature"),
        ("emitter", "air-coil", "first-sketch", "emitter-temperature"),
        ("antifreeze_kind", "none", "expansion", "antifreeze"),
    ],
)
def test_a_choice_that_a_worksheet_does_not_offer_is_no_mistake_of_the_plan(
    key: str, value: str, there: str, elsewhere: str
) -> None:
    entries = {key: Entry(value, "typed")}
    assert key in given_for(WORKSHEETS[there], entries)
    assert key not in given_for(WORKSHEETS[elsewhere], entries)
    known = look(entries, WORKSHEETS.values())[key]
    assert (known.value and known.value.si, known.problem) == (value, "")
    assert there in known.askers
    assert elsewhere not in known.askers


def test_a_temperature_typed_in_other_units_is_told_in_whole_degrees() -> None:
    """28 °F are −2 °C, not −2.222; what was typed is kept, and is whole again in its own units."""
    typed = {"average_outdoor": Typed("28 °F"), "altitude": Typed("3,000 ft")}
    shown = answer("room-heat", typed, "si").inputs
    assert [shown[key].shown("si").replace("\u00a0", " ") for key in typed] == ["\u22122 °C", "914.4 m"]
    assert [shown[key].shown("us").replace("\u00a0", " ") for key in typed] == ["28 °F", "3,000 ft"]
    assert shown["altitude"].si == pytest.approx(914.4)
