"""What an answer leads with: its verdict in words, and which boxes stand open beside it."""

import json

import pytest

from calc.answer import Typed, answer
from calc.engine.words import BESIDE, FINE, FINE_HERE, LEVEL_WORDS
from calc.worksheets import WORKSHEETS
from render import respond
from render.folding import MOST_OPEN, folded
from render.pages.sections import worksheet_html
from render.view import slots

CHAIN = dict(WORKSHEETS["will-it-work"].examples[0].given)
ALL_HOLDS = {"room_output": "5,000 Btu/h", "dump_output": "140,000 Btu/h", "chimney_known": "yes"} | {
    "draught_left": "0.07 in w.c."
}


@pytest.mark.parametrize("key", WORKSHEETS)
def test_every_answer_has_its_verdict_in_words(key: str) -> None:
    sheet = answer(key, {})
    assert sheet.judgement
    assert sheet.judgement.word
    html = worksheet_html(key)
    assert f'<p class="ss-plate-verdict" data-level="{sheet.judgement.level}"><svg' in html
    if sheet.worksheet.checks or sheet.worksheet.outlook:
        return
    graver = [said for said in sheet.advice if said.level != "note"]
    own = [said for said in graver if not said.beside or said.level == "stop"]
    assert (sheet.judgement.word == FINE) == (not graver)
    if own:
        assert sheet.judgement[:3] == (own[0].level, LEVEL_WORDS[own[0].level], own[0].title)
    elif graver:
        assert sheet.judgement.word == FINE_HERE
        assert sheet.judgement.text.endswith(BESIDE)


def test_an_emitter_that_asks_too_much_is_told_in_degrees() -> None:
    sheet = answer("emitter-temperature", {"baseboard_length": Typed("60 ft"), "design_load": Typed("30,500 Btu/h")})
    assert sheet.headline
    assert sheet.judgement
    assert sheet.judgement.level == "unworkable"
    assert sheet.headline.shown in sheet.judgement.text
    assert sheet.judgement.text.startswith("Not on ")


@pytest.mark.parametrize(
    ("changed", "word", "level", "because"),
    [
        ({}, "Yes", "fine", ""),
        ({"vessel_fitted": "104 gal"}, "Yes, just", "caution", "Because of the pressure"),
        ({"room_output": "20,000 Btu/h"}, "No", "unworkable", "Because of the stove's room"),
        ({"chimney_known": "no"}, "Not yet", "caution", "chimney"),
        ({"tap_store": "190 °F"}, "No", "unworkable", "Because of the taps"),
        ({"dump_output": "0 Btu/h"}, "No", "stop", "power cut"),
    ],
)
def test_a_chain_says_yes_no_or_not_yet_and_why(changed: dict[str, str], word: str, level: str, because: str) -> None:
    given = {key: Typed(text) for key, text in (CHAIN | ALL_HOLDS | changed).items()}
    sheet = answer("will-it-work", given)
    assert sheet.headline
    assert sheet.judgement
    assert (sheet.headline.shown, sheet.judgement.word, sheet.judgement.level) == (word, word, level)
    assert because in sheet.judgement.text


ABOUT_BOILING = ("boiling", "charge-loop", "power-cut")  # and the chain, which judges it as a part


def test_what_is_beside_the_question_leads_no_answer_but_as_a_stop() -> None:
    """Nobody has told altitude or pressure: the outlet's caution stands below what the worksheet is about."""
    told = {"store_volume": Typed("1000 gal"), "store_top": Typed("185 °F")}
    sheet = answer("standby", told)
    assert sheet.judgement == ("fine", FINE_HERE, BESIDE)
    assert {said.code for said in sheet.advice if said.level == "caution"} == {"outlet-boils", "boiling-margin"}
    sheet = answer("stored-heat", told)
    assert sheet.judgement == ("caution", "Caution", "This water scalds.")
    sheet = answer("standby", told | {"altitude": Typed("5,000 ft"), "system_pressure": Typed("0 psi")})
    assert sheet.judgement
    assert (sheet.judgement.level, sheet.judgement.text) == ("stop", "The stove's outlet boils at the peak.")


@pytest.mark.parametrize("key", [key for key, worksheet in WORKSHEETS.items() if not worksheet.outlook])
def test_the_outlet_leads_only_the_worksheets_that_are_about_it(key: str) -> None:
    told = [said for said in WORKSHEETS[key].advice if said.code in ("outlet-boils", "outlet-margin")]
    assert all(said.beside for said in told) or key in ABOUT_BOILING


@pytest.mark.parametrize(
    ("unsaid", "because"),
    [
        ("dump_output", "Because “Dump capacity without power” was not said, nobody can judge the power cut."),
        ("vessel_fitted", "Because “Expansion tank fitted” was not said, nobody can judge the pressure."),
        ("floor_kind", "Because “Floor it stands on” was not said, nobody can judge the weight."),
        (
            "store_volume",
            "Because “Store volume” was not said, nobody can judge the store. 3 more cannot be judged yet.",
        ),
    ],
)
def test_what_nobody_said_is_not_yet_known(unsaid: str, because: str) -> None:
    given = {key: text for key, text in (CHAIN | ALL_HOLDS).items() if key != unsaid}
    if unsaid == "floor_kind":
        del given["floor_allowable"]
    sheet = answer("will-it-work", {key: Typed(text) for key, text in given.items()})
    assert sheet.judgement == ("caution", "Not yet", because)
    count = next(result for result in sheet.results if result.key == "parts_to_mend")
    assert count.si == sum(verdict.status != "pass" for verdict in sheet.verdicts) > 0


def test_a_stop_that_is_known_stays_no_whatever_else_is_not_said() -> None:
    given = {key: Typed(text) for key, text in (CHAIN | ALL_HOLDS | {"dump_output": "0 Btu/h"}).items()}
    del given["vessel_fitted"]
    sheet = answer("will-it-work", given)
    assert sheet.judgement
    assert (sheet.judgement.word, sheet.judgement.level) == ("No", "stop")
    assert "dump" in sheet.best_change


def test_a_store_from_another_page_is_told_where_the_sketch_draws_it() -> None:
    """Typed at the tank's own sheet: picture, its caption with a link there, and the tank's line say whose store it is."""
    plan = {
        "fuel_now": "oil",
        "amount": "740 gal",
        "place": "hibbing-mn",
        "heated_area": "1,900 ft2",
        "emitter": "baseboard",
        "baseboard_length": "140 ft",
        "stove": "help",
    }
    own = answer("first-sketch", {key: Typed(text) for key, text in (plan | {"store_volume": "2 m3"}).items()})
    shown = slots(own)["sketch"].replace("\u00a0", " ")
    assert ">Your store<" in shown and ">528 gal<" in shown
    assert 'href="../../guides/storage/#stored-heat-store_volume"' in shown
    assert "<dt>Tank needed</dt>" in shown and "your store: 528 gal" in shown
    without = slots(answer("first-sketch", {key: Typed(text) for key, text in plan.items()}))["sketch"]
    assert "our store" not in without


def test_the_bar_leads_to_the_picture_and_to_what_was_assumed() -> None:
    sheet = answer("stored-heat", {"store_volume": Typed("500 gal")})
    filled = slots(sheet)
    assert f'data-ss-bring="assumed">{len(sheet.assumed)} numbers assumed<' in filled["plate"]
    assert 'data-ss-bring="picture"' not in filled["plate"]
    assert 'data-brought="assumed"' in filled["advice"]
    sketch = slots(answer("first-sketch", {"amount": Typed("800 gal"), "fuel_now": Typed("oil")}))
    assert 'data-ss-bring="picture"' in sketch["plate"]
    assert 'data-brought="picture"' in sketch["sketch"] and 'data-brought="assumed"' in sketch["sketch"]
    assert "data-ss-bring" not in slots(answer("first-sketch", {}))["plate"], "the example has its own line"


def test_cost_leads_with_dollars_a_winter() -> None:
    sheet = answer("fuel-cost", {})
    assert sheet.headline
    assert sheet.headline.label == "A winter on wood"
    assert sheet.headline.kind == "money"


@pytest.mark.parametrize("key", WORKSHEETS)
def test_few_boxes_stand_open_and_those_that_need_an_answer_first(key: str) -> None:
    worksheet = WORKSHEETS[key]
    for course in worksheet.all_courses():
        closed = folded(worksheet, course)
        stand_open = [field for field in course.fields if field.key not in closed]
        if worksheet.opens:
            assert set(worksheet.opens) <= {field.key for field in stand_open}
            continue
        assert 1 <= len(stand_open) <= MOST_OPEN + 1
        needs = [field for field in course.fields if not field.typical and not field.optional]
        if any(field.typical and field.key not in closed for field in course.fields if field.kind != "choice"):
            assert not [field.key for field in needs if field.key in closed]


def _fold(**typed: str) -> tuple[bool, str]:
    """Whether the fold opens by itself, and what its line says."""
    plan = {key: {"text": text, "units": "us"} for key, text in typed.items()}
    request = {"ask": "worksheet", "units": "us", "worksheet": "stored-heat", "plan": plan, "scold": None}
    reply = json.loads(respond(json.dumps(request)))
    return bool(reply["unfold"]), " ".join(reply["slots"]["fold"].split())


def test_a_fold_stays_closed_and_its_line_names_what_was_typed() -> None:
    open_ones = {"store_volume": "500", "lowest_useful": "120", "design_load": "20,000"}
    assert not _fold()[0]
    unfolds, said = _fold(**open_ones)
    assert not unfolds
    assert "of your numbers" not in said
    unfolds, said = _fold(**open_ones, cold_water="45")
    assert not unfolds, "a page stays as short as it was"
    assert "1 of your numbers" in said
    assert "<small>Cold water temperature 45" in said, "what was typed is named first"


def test_nothing_wrong_hides_in_a_fold() -> None:
    assert _fold(store_volume="500", cold_water="lots")[0]
    assert _fold(store_volume="500", standby_loss="lots")[0]


def test_a_question_without_an_answer_is_named_in_the_line_of_its_fold() -> None:
    plan = {"design_load": {"text": "30,000", "units": "us"}}
    request = {"ask": "worksheet", "units": "us", "worksheet": "will-it-work", "plan": plan, "scold": None}
    reply = json.loads(respond(json.dumps(request)))
    assert not reply["unfold"]
    assert "still the example’s" in reply["slots"]["fold"]
    assert "Hot taps from this store" in reply["slots"]["fold"], "before any usual value"
