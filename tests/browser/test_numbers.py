"""A reader types: results follow, mistakes are told in their time, and nothing typed is lost."""

from __future__ import annotations

import json
from typing import Any

import pytest
from playwright.sync_api import expect

from calc.answer import Typed, answer
from calc.engine.typed import declared_input
from calc.units import System
from calc.worksheets import WORKSHEETS
from tests.browser.conftest import At, Live
from tests.browser.reader import SIZES, Reader, plain

pytestmark = pytest.mark.browser


def expected(worksheet: str, given: dict[str, str], system: System = "us") -> dict[str, str]:
    """The results of a worksheet for what was typed, as the desktop works them out."""
    sheet = answer(worksheet, {key: Typed(text, system) for key, text in given.items()}, system)
    assert not sheet.problems
    return {result.key: plain(result.shown) for result in sheet.results}


def test_typing_works_the_numbers_out_anew(at: At) -> None:
    reader = at("stored-heat")
    example = reader.figure
    reader.box("store_volume").press("End")
    reader.box("store_volume").press("0")  # behind what stands there: ten times as much
    reader.wait()
    assert reader.figure != example
    assert reader.results() == expected("stored-heat", {"store_volume": "8000"})
    expect(reader.slot("whose")).to_have_text("Your numbers")
    expect(reader.slot("plate")).to_contain_text("assumed")
    expect(reader.slot("picture").locator("svg")).to_be_visible()
    reader.type("cold_water", "45")
    assert reader.results() == expected("stored-heat", {"store_volume": "8000", "cold_water": "45"})


def test_the_newest_text_wins_when_typing_is_faster_than_working_out(at: At) -> None:
    reader = at("tank-size")
    box = reader.box("heated_area")
    box.evaluate(
        """(box) => {
          for (let area = 900; area <= 1900; area += 1) {
            box.value = String(area);
            box.dispatchEvent(new Event("input", { bubbles: true }));
          }
        }"""
    )
    reader.wait()
    assert reader.results() == expected("tank-size", {"heated_area": "1900"})


def test_the_chart_follows(live: Live) -> None:
    with live("stored-heat", viewport=SIZES["desktop"]) as reader:
        chart = reader.slot("chart")
        before = chart.locator("svg:visible").inner_html()
        reader.page.on("request", lambda request: asked.append(request.url))
        asked: list[str] = []
        reader.type("store_volume", "1,200")
        expect(chart).not_to_have_class("ss-stale")
        expect(chart).to_be_visible()
        assert chart.locator("svg:visible").inner_html() != before
        sheet = answer("stored-heat", {"store_volume": Typed("1,200")})
        assert sheet.headline
        expect(chart.locator("figcaption")).to_contain_text(sheet.headline.shown)
        assert [url.rpartition("/")[2] for url in asked] == ["plot.bundle.js"]  # fetched now, not before


def test_the_working_follows_when_typing_pauses_and_old_working_is_never_in_sight(at: At) -> None:
    reader = at("stored-heat")
    reader.show_how()
    for texts in (("900",), ("901", "902"), ("soon", "903")):
        for text in texts:
            reader.type("store_volume", text, leave=False)
            # Asked in one breath: what is to be seen of the working is of the numbers in the boxes.
            assert reader.slot("working").evaluate(
                "(part, text) => getComputedStyle(part).visibility === 'hidden' || part.textContent.includes(text)",
                text,
            )
        expect(reader.slot("working")).to_have_css("visibility", "visible")
        expect(reader.slot("working")).to_contain_text(f"{texts[-1]} gal")
    sheet = answer("stored-heat", {"store_volume": Typed("903")})
    expect(reader.slot("working").locator(".ss-working > li")).to_have_count(len(sheet.working))


@pytest.mark.parametrize("size", SIZES)
def test_a_wrong_number_empties_the_plate_at_its_height(at: At, size: str) -> None:
    reader = at("stored-heat", size)
    plate = reader.sheet.locator(".ss-plate")
    reader.type("store_volume", "700")
    heights = [plate.evaluate("plate => plate.offsetHeight")]
    tops = [reader.box("store_top").evaluate("box => box.offsetTop")]
    reader.type("store_volume", "12 apples", leave=False)
    assert reader.figure == "No result yet"
    # While typing: no scolding, nothing moves, and no result stays that belongs to other numbers.
    expect(reader.field("store_volume").locator(".ss-error")).to_be_hidden()
    expect(reader.slot("errors")).to_be_hidden()
    heights.append(plate.evaluate("plate => plate.offsetHeight"))
    tops.append(reader.box("store_top").evaluate("box => box.offsetTop"))
    assert_nothing_of_a_result_is_visible(reader)
    reader.box("store_volume").blur()
    reader.wait()
    heights.append(plate.evaluate("plate => plate.offsetHeight"))
    assert_nothing_of_a_result_is_visible(reader)
    sentence = answer("stored-heat", {"store_volume": Typed("12 apples")}).problems[0].text
    expect(reader.field("store_volume").locator(".ss-error")).to_have_text(sentence)
    assert reader.errors() == [plain(sentence)]
    expect(reader.box("store_volume")).to_have_attribute("aria-invalid", "true")
    expect(reader.box("store_volume")).to_have_value("12 apples")
    assert len(set(heights)) == 1
    assert len(set(tops)) == 1
    # Forgiven as soon as it is right, before the box is left.
    reader.type("store_volume", "12 gal", leave=False)
    expect(reader.field("store_volume").locator(".ss-error")).to_be_hidden()
    expect(reader.slot("errors")).to_be_hidden()
    expect(reader.box("store_volume")).not_to_have_attribute("aria-invalid", "true")
    assert reader.results() == expected("stored-heat", {"store_volume": "12 gal"})


def assert_nothing_of_a_result_is_visible(reader: Reader) -> None:
    for name in ("results", "tables", "chart", "picture", "advice"):
        expect(reader.slot(name)).to_be_hidden()
    for fold in reader.sheet.locator(".ss-foot > details").all():
        expect(fold).to_be_hidden()


SEEN_CHANGING = """async (box) => {
  const sheet = box.closest(".ss-sheet");
  const seen = [];
  const until = Date.now() + 60_000;
  const look = new MutationObserver((changes) => {
    for (const { target } of changes) seen.push(target.dataset.slot);
  });
  for (const name of ["plate", "results"]) look.observe(sheet.querySelector(`[data-slot=${name}]`), { childList: true });
  box.focus();
  box.value = "777";
  box.dispatchEvent(new InputEvent("input", { bubbles: true }));
  while (!seen.includes("results") && Date.now() < until) await new Promise((done) => setTimeout(done, 4));
  look.disconnect();
  return seen;
}"""


def test_the_answer_comes_before_the_rest_of_it_while_somebody_types(at: At) -> None:
    reader = at("stored-heat")
    before = reader.figure
    assert reader.box("store_volume").evaluate(SEEN_CHANGING) == ["plate", "results"]
    reader.wait()
    sheet = answer("stored-heat", {"store_volume": Typed("777")})
    assert sheet.headline and before != reader.figure == plain(sheet.headline.shown)


@pytest.mark.parametrize("size", SIZES)
def test_the_box_stays_where_it_is_while_notes_come_and_go_above_it(at: At, size: str) -> None:
    reader = at("stored-heat", size)
    reader.unfold("system_pressure")
    box = reader.box("system_pressure")
    box.focus()
    before = box.evaluate("box => box.getBoundingClientRect().top")
    box.fill("1x")  # turns every other box into an assumed one
    reader.wait()
    expect(reader.field("store_top").locator(".ss-note")).to_contain_text("Assumed")
    reader.page.wait_for_timeout(100)
    assert box.evaluate("box => box.getBoundingClientRect().top") == pytest.approx(before, abs=1)
    reader.box("altitude").focus()
    before = reader.box("altitude").evaluate("box => box.getBoundingClientRect().top")
    reader.wait()
    expect(reader.slot("errors")).to_be_visible()
    reader.page.wait_for_timeout(100)
    assert reader.box("altitude").evaluate("box => box.getBoundingClientRect().top") == pytest.approx(before, abs=1)


def test_the_summary_leads_to_the_box(at: At) -> None:
    reader = at("stored-heat")
    reader.type("standby_loss", "lots")
    reader.type("store_volume", "")
    reader.sheet.locator("details.ss-optional").evaluate("details => { details.open = false; }")
    assert len(reader.errors()) == 2
    expect(reader.slot("errors").locator("h3")).to_have_text("2 numbers need changing")
    reader.slot("errors").locator("a").filter(has_text="tank loses").or_(
        reader.slot("errors").locator("a[href$=standby_loss]")
    ).first.click()
    expect(reader.box("standby_loss")).to_be_focused()
    expect(reader.box("standby_loss")).to_be_visible()
    assert "#" not in reader.page.url


def test_units_switch_without_losing_what_was_typed(at: At) -> None:
    texts = {"store_volume": "1/2 m3", "lowest_useful": "45 °C", "store_top": "180.125", "design_load": "12.5 kBtu/h"}
    reader = at("stored-heat")
    for key, text in texts.items():
        reader.type(key, text)
    us = reader.results()
    assert us == expected("stored-heat", texts)
    reader.page.get_by_role("button", name="SI units").click()
    reader.wait()
    given = {key: Typed(text, "us") for key, text in texts.items()}
    assert reader.results() == {
        result.key: plain(result.shown) for result in answer("stored-heat", given, "si").results
    }
    shown = {key: reader.box(key).input_value() for key in texts}
    assert shown == {"store_volume": "500", "lowest_useful": "45", "store_top": "82", "design_load": "3.663"}
    expect(reader.field("store_top").locator(".ss-unit")).to_have_text("degrees Celsius")
    reader.type("store_top", "80")
    reader.page.get_by_role("button", name="US units").click()
    reader.wait()
    assert {key: reader.box(key).input_value() for key in texts} == texts | {"store_top": "176"}


def test_units_are_remembered_for_the_whole_site(live: Live, served: Any) -> None:
    with live("stored-heat") as reader:
        reader.page.get_by_role("button", name="SI units").click()
        reader.wait()
        reader.page.reload()
        reader.wait_until_live()
        assert reader.results() == {
            result.key: plain(result.shown) for result in answer("stored-heat", {}, "si").results
        }
        expect(reader.page.get_by_role("button", name="SI units")).to_have_attribute("aria-pressed", "true")
        expect(reader.slot("whose")).to_contain_text("Worked example")
        reader.page.goto(served.url)
        expect(reader.page.get_by_role("button", name="SI units")).to_have_attribute("aria-pressed", "true")
        assert reader.page.evaluate("document.documentElement.dataset.units") == "si"


def test_a_number_that_the_reader_does_not_know(at: At) -> None:
    reader = at("stored-heat")
    reader.type("store_volume", "800")
    reader.type("cold_water", "41")
    expect(reader.unknown("cold_water")).not_to_be_checked()
    reader.unknown("cold_water").check()
    reader.wait()
    sheet = answer("stored-heat", {"store_volume": Typed("800")})
    assumed = sheet.inputs["cold_water"]
    assert assumed.origin == "typical"
    assert reader.results() == {result.key: plain(result.shown) for result in sheet.results}
    expect(reader.box("cold_water")).to_have_value(assumed.text.split("°")[0].strip())
    expect(reader.field("cold_water")).to_have_attribute("data-from", "typical")
    expect(reader.field("cold_water").locator(".ss-note")).to_contain_text("Assumed")
    reader.unknown("cold_water").uncheck()
    reader.wait()
    expect(reader.box("cold_water")).to_have_value("41")
    assert reader.results() == expected("stored-heat", {"store_volume": "800", "cold_water": "41"})
    # Typing in a box that stands for an assumed number makes it the reader's own.
    reader.unknown("cold_water").check()
    reader.wait()
    reader.type("cold_water", "44")
    expect(reader.unknown("cold_water")).not_to_be_checked()
    assert reader.results() == expected("stored-heat", {"store_volume": "800", "cold_water": "44"})


def test_not_knowing_a_number_of_the_worked_example(at: At) -> None:
    reader = at("stored-heat")
    reader.unknown("cold_water").check()
    reader.wait()
    expect(reader.unknown("cold_water")).to_be_checked()
    expect(reader.slot("whose")).to_have_text("Your numbers")
    # Known after all, with nothing typed before: the value that stands there becomes the reader's.
    shown = reader.box("cold_water").input_value()
    reader.unknown("cold_water").uncheck()
    reader.wait()
    expect(reader.box("cold_water")).to_be_focused()
    assert reader.results() == expected("stored-heat", {"cold_water": shown})


def test_a_number_that_several_worksheets_ask_is_typed_once(at: At) -> None:
    reader = at("stored-heat")
    other = Reader(reader.page, "tank-size")
    reader.type("store_top", "170")
    expect(other.box("store_top")).to_have_value("170")
    assert other.results() == expected("tank-size", {"store_top": "170"})
    other.type("store_top", "165")
    expect(reader.box("store_top")).to_have_value("165")
    assert reader.results() == expected("stored-heat", {"store_top": "165"})


def test_another_way_of_asking_keeps_what_was_typed_for_the_first(at: At) -> None:
    reader = at("emitter-temperature")
    reader.type("baseboard_length", "150")
    reader.type("emitter", "radiator")
    expect(reader.field("baseboard_length")).to_be_hidden()
    expect(reader.field("radiator_rating")).to_be_visible()
    given = {"emitter": "radiator"}
    assert reader.results() == expected("emitter-temperature", given)
    reader.type("emitter", "baseboard")
    expect(reader.box("baseboard_length")).to_have_value("150")
    assert reader.results() == expected("emitter-temperature", {"emitter": "baseboard", "baseboard_length": "150"})


def test_a_box_that_may_be_left_alone_can_be_emptied(at: At) -> None:
    reader = at("stored-heat")
    reader.type("store_volume", "900")
    reader.type("standby_loss", "500")
    assert reader.results() == expected("stored-heat", {"store_volume": "900", "standby_loss": "500"})
    reader.type("standby_loss", "")
    assert reader.results() == expected("stored-heat", {"store_volume": "900"})
    expect(reader.box("standby_loss")).to_have_value("0")
    expect(reader.slot("errors")).to_be_hidden()


def test_numbers_are_cleared_and_put_back(at: At) -> None:
    reader = at("stored-heat")
    example = reader.results()
    reader.type("store_volume", "1,000 L")
    reader.unknown("cold_water").check()
    reader.wait()
    mine = reader.results()
    reader.page.get_by_role("button", name="Clear my numbers").first.click()
    reader.wait()
    assert reader.results() == example
    expect(reader.slot("whose")).to_contain_text("Worked example")
    back = reader.sheet.get_by_role("button", name="Put my numbers back")
    expect(back).to_be_focused()
    back.click()
    reader.wait()
    assert reader.results() == mine
    expect(reader.box("store_volume")).to_have_value("1,000 L")
    expect(reader.unknown("cold_water")).to_be_checked()


def test_typed_numbers_outlive_a_reload(live: Live) -> None:
    with live("stored-heat") as reader:
        reader.type("store_volume", "640")
        reader.type("lowest_useful", "warm")
        reader.page.reload()
        reader.wait_until_live()
        expect(reader.box("store_volume")).to_have_value("640")
        expect(reader.box("lowest_useful")).to_have_value("warm")
        assert reader.figure == "No result yet"
        assert len(reader.errors()) == 1


@pytest.mark.parametrize("refused", ["sessionStorage", "localStorage"])
def test_it_works_where_storage_is_refused(
    live: Live, visiting: Any, served: Any, places: dict[str, str], refused: str
) -> None:
    troubles: list[str] = []
    with visiting(troubles) as page:
        page.add_init_script(
            f"Object.defineProperty(window, '{refused}', {{ get() {{ throw new DOMException('no', 'SecurityError'); }} }})"
        )
        page.goto(served.url + places["stored-heat"])
        reader = Reader(page, "stored-heat")
        reader.wait_until_live()
        reader.type("store_volume", "640")
        page.get_by_role("button", name="SI units").click()
        reader.wait()
        sheet = answer("stored-heat", {"store_volume": Typed("640")}, "si")
        assert reader.results() == {result.key: plain(result.shown) for result in sheet.results}
        troubles[:] = [trouble for trouble in troubles if "/assets/js" in trouble]  # the theme's own scripts mind


# ---- what one edit does, and what it does not ----------------------------------------------------------------------


def kept(reader: Reader) -> dict[str, Any]:
    return dict(json.loads(reader.page.evaluate("localStorage.getItem('stoke-and-store.plan') ?? '{}'")))


def test_the_first_own_number_keeps_the_choices_and_the_unit_that_it_rests_on(
    live: Live, served: Any, places: dict[str, str]
) -> None:
    with live("house-load") as house:
        house.type("amount", "800")
        assert kept(house) == {
            "method": {"text": "fuel", "units": "us"},
            "fuel_now": {"text": "oil", "units": "us"},
            "amount": {"text": "800", "units": "us", "unit": "gal"},
        }
        house.page.goto(served.url + places["tank-size"])
        store = Reader(house.page, "tank-size")
        store.wait_until_live()
        store.type("heated_area", "1800")
        house.page.goto(served.url + places["house-load"])
        house.wait_until_live()
        expect(house.box("method")).to_have_value("fuel")
        expect(house.box("amount")).to_have_value("800")
        expect(house.field("amount").locator(".ss-unit")).to_have_text("US gallons")
        # Another fuel is another choice: the gallons stay gallons, and the page says that they do not fit.
        house.type("fuel_now", "pellets")
        expect(house.box("amount")).to_have_value("800 gal")
        assert len(house.errors()) == 1


def test_what_moves_with_the_first_own_number_is_told_and_can_be_kept(at: At) -> None:
    reader = at("house-load")
    reader.type("amount", "688")  # the example's own amount
    told = plain(reader.slot("moved").inner_text())
    example = WORKSHEETS["house-load"].examples[0].given
    sheet = answer("house-load", {"amount": Typed("688")})
    moved = [
        entry
        for key, entry in sheet.inputs.items()
        if key in example and key != "amount" and entry.si != declared_input(entry.field, example[key], "").si
    ]
    assert len(moved) == 2
    for entry in moved:
        assert plain(f"{entry.field.label}: {entry.shown('us')} is usual") in told
    # Kept: one edit, and only that changed; so the same amount gives the example's answer again.
    reader.slot("moved").get_by_role("button", name="Keep the example’s 2 numbers").click()
    reader.wait()
    expect(reader.slot("moved")).to_be_empty()
    assert reader.results() == expected("house-load", {})
    assert {entry["from"] for entry in kept(reader).values() if "from" in entry} == {"example"}
    reader.type("amount", "1,376")
    first, second = expected("house-load", {})["conductance"], reader.results()["conductance"]
    assert float(second.split()[0]) == pytest.approx(2 * float(first.split()[0]), rel=0.01)


def test_results_flow_into_the_plan_are_told_and_can_be_taken_out(live: Live) -> None:
    with live("house-load") as reader:
        for key, text in {"amount": "800", "design_outdoor": "-10"}.items():
            reader.type(key, text)
            assert not {"design_load", "yearly_heat"} & kept(reader).keys()  # the example is still behind them
        reader.box("degree_days").fill("7500")
        reader.wait()
        assert "design_load" not in kept(reader)  # not while the reader is typing
        reader.box("degree_days").blur()
        reader.wait()
        expect(reader.slot("flow")).to_contain_text("In your plan now: Design load")
        assert kept(reader)["design_load"]["from"] == "computed"
        before = kept(reader)["design_load"]["text"]
        reader.type("amount", "900")
        assert kept(reader)["design_load"]["text"] != before
        reader.slot("flow").get_by_role("button").click()
        reader.wait()
        assert kept(reader)["design_load"]["text"] == before
        reader.type("amount", "800")
        reader.sheet.get_by_role("button", name="Clear my numbers").click()
        reader.wait()
        assert kept(reader) == {}


def test_the_reader_s_numbers_are_in_every_sheet_of_a_guide(live: Live) -> None:
    """What one sheet of a guide works out is in the next ones at once, and a sheet without any says so."""
    with live("emitter-temperature") as reader:
        example = WORKSHEETS["emitter-temperature"].examples[0].given
        others = [Reader(reader.page, key) for key in ("floor", "tempering") if reader.page.locator(f"#{key}").count()]
        assert others
        for key, text in example.items():
            reader.type(key, text)
        asked = set(kept(reader))
        for other in others:
            mine = asked & {field.key for field in WORKSHEETS[other.worksheet].all_fields()}
            whose = plain(other.slot("whose").inner_text())
            if mine:
                assert whose == "Your numbers"
            else:
                assert "Your plan holds none of these numbers yet" in whose


@pytest.mark.parametrize("starts", [True, False])
def test_nothing_of_an_example_stands_for_the_reader_s_numbers(
    visiting: Any, served: Any, places: dict[str, str], starts: bool
) -> None:
    """Until Python has read them, what was typed stands in its boxes, and no result of another house beside it."""
    entries = {"store_volume": {"text": "640", "units": "us", "unit": "gal"}}
    with visiting(troubles := []) as page:
        page.add_init_script(f"localStorage.setItem('stoke-and-store.plan', {json.dumps(json.dumps(entries))})")
        held: list[Any] = []
        page.context.route("**/pyodide.asm.wasm*", lambda route: held.append(route))
        page.goto(served.url + places["stored-heat"])
        reader = Reader(page, "stored-heat")
        expect(reader.sheet).to_have_attribute("data-state", "waiting")
        expect(reader.slot("whose")).to_have_text("Your numbers")
        assert reader.figure == "No result yet"
        expect(reader.box("store_volume")).to_have_value("640")
        expect(reader.box("design_load")).to_have_value("")
        expect(reader.slot("results")).to_be_hidden()
        other = Reader(page, "standby")
        assert other.figure == "No result yet"  # it asks the store's volume as well
        page.wait_for_timeout(200)
        if not starts:  # nor does what another worker asks for, which starts the ordinary way
            page.context.route("**/pyodide.asm.wasm*", lambda route: route.abort())
        for route in held:
            route.continue_() if starts else route.abort()
        if starts:
            reader.wait_until_live()
            assert reader.results() == expected("stored-heat", {"store_volume": "640"})
        else:
            expect(reader.slot("status")).to_have_text("The calculator could not start here. What you typed is kept.")
            assert reader.figure == "No result yet"
            troubles.clear()


def test_a_choice_that_stands_there_can_be_taken_for_one_s_own(at: At) -> None:
    """Browsers say nothing of it when the option that is shown is chosen once more."""
    reader = at("will-it-work")
    reader.type("store_volume", "640 gal")
    reader.unfold("taps_from_store")
    said = reader.field("taps_from_store").locator(".ss-note")
    expect(said).to_contain_text("Still the choice of the worked example.")
    said.get_by_role("button", name="It is so here").click()
    reader.wait()
    expect(said).to_be_empty()
    expect(reader.box("taps_from_store")).to_be_focused()
    assert (
        reader.box("taps_from_store").input_value() == WORKSHEETS["will-it-work"].examples[0].given["taps_from_store"]
    )
