"""What an answer leads with: its verdict in words, and which boxes stand open beside it."""

import json

import pytest

from calc.answer import Typed, answer
from calc.engine.words import FINE, LEVEL_WORDS
from calc.worksheets import WORKSHEETS
from render import respond, worksheet_html
from render.folding import MOST_OPEN, folded

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
    assert (sheet.judgement.word == FINE) is not graver
    if graver:
        assert sheet.judgement[:3] == (graver[0].level, LEVEL_WORDS[graver[0].level], graver[0].title)


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


def _unfolds(**typed: str) -> bool:
    plan = {key: {"text": text, "units": "us"} for key, text in typed.items()}
    request = {"ask": "worksheet", "units": "us", "worksheet": "stored-heat", "plan": plan, "scold": None}
    return bool(json.loads(respond(json.dumps(request)))["unfold"])


def test_nothing_typed_hides_in_a_fold() -> None:
    open_ones = {"store_volume": "500", "lowest_useful": "120", "design_load": "20,000"}
    assert not _unfolds()
    assert not _unfolds(**open_ones)
    assert _unfolds(**open_ones, cold_water="45")
    assert _unfolds(**open_ones, cold_water="lots")
    assert _unfolds(**open_ones, standby_loss="lots")
