"""The plan file: it comes back as it was written, and nothing that a stranger puts into one can do harm."""

import json
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.answer import Typed, answer, open_link
from calc.engine import link
from calc.engine.plan import Entry, fields_by_key, given_for, offers, read, stale, write
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
    text = json.dumps({"plan": {key: {"text": one.text, "from": one.origin} for key, one in PLAN.items()}})
    assert {key: one.text for key, one in read(text, WORKSHEETS.values()).entries.items()} == {
        key: one.text for key, one in PLAN.items()
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
    assert offers(answer("house-load", {}), FIELDS)["design_load"].origin == "computed"
    assert "lowest_useful" in offers(answer("emitter-temperature", {}), FIELDS)
    assert "store_volume" not in offers(answer("stored-heat", {}), FIELDS), "an input is not a result"


def test_a_computed_value_goes_stale_when_its_inputs_change() -> None:
    sheet = answer("house-load", {})
    entries = {key: Entry(one.text, "typed") for key, one in sheet.inputs.items() if not one.from_field}
    entries["design_load"] = offers(sheet, FIELDS)["design_load"]
    assert stale(entries, WORKSHEETS) == {}
    entries["indoor"] = Entry("60 °F", "typed")
    assert "design_load" in stale(entries, WORKSHEETS)


def test_a_plan_cut_anywhere_breaks_nothing() -> None:
    text = write(PLAN)
    for length in sorted(random.Random(1).sample(range(len(text)), 60)):
        opened = read(text[:length], WORKSHEETS.values())
        assert opened.problems


PLAN_LINK = "#v1;plan;store_volume=500gal;store_top=180F~;fill_temperature=~;lowest_useful=130F;emitter_kind=baseboard;end"


def test_a_link_of_the_whole_plan_comes_back_as_it_was_written() -> None:
    opened = link.read(PLAN_LINK, WORKSHEETS)
    assert opened.problems == ()
    assert opened.worksheet == "plan"
    assert opened.given == {
        "store_volume": Typed("500gal", "us", "link"),
        "store_top": Typed("180F", "us", "typical"),
        "fill_temperature": Typed("", "us", "typical"),
        "lowest_useful": Typed("130F", "us", "link"),
        "emitter_kind": Typed("baseboard", "us", "link"),
    }
    assert link.write_plan(opened.given) == PLAN_LINK


def test_a_link_of_the_whole_plan_is_no_worksheet() -> None:
    sheet, said = open_link(PLAN_LINK)
    assert sheet is None
    assert said == ("This link holds a whole plan: open it at the sizing record.",)


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
    given = {"pipe_size": Typed("1-1/4", "us"), "store_volume": Typed("5;end <b>½ gal", "us")}
    written = link.write_plan(given)
    assert written.isascii()
    assert written.count(";") == 4
    assert {key: one.text for key, one in link.read(written, WORKSHEETS).given.items()} == {
        key: one.text for key, one in given.items()
    }
