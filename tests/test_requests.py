"""What a page may ask: each kind by its name, with its shape told; and what a page cannot ask is refused in a sentence."""

from __future__ import annotations

import gc
import json
import os
import re
import sys
from typing import Any

import pytest

import render
from calc.physics import winter_weather
from calc.vocabulary import BY_KEY
from calc.worksheets import WORKSHEETS
from render.start import QUESTIONS, Choice


def ask(what: Any, **more: Any) -> dict[str, Any]:
    reply: dict[str, Any] = json.loads(render.respond(json.dumps({"ask": what, **more})))
    return reply


@pytest.mark.parametrize(
    "request_", [{}, {"ask": None}, {"ask": ["plan"]}, {"ask": "Plan"}, {"ask": "no" * 100}, {"plan": {}}]
)
def test_what_nobody_answers_is_refused_by_name(request_: dict[str, Any]) -> None:
    with pytest.raises(
        render.UnknownRequest, match=r"cannot be asked “.{0,60}”; it answers worksheet, how, chart, "
    ) as refused:
        render.respond(json.dumps(request_))
    assert all(name in str(refused.value) for name in render.ANSWERS)


def test_who_is_typing_hears_the_answer_before_the_rest() -> None:
    heard: list[str] = []

    def asked(text: str, scold: list[str] | None) -> Any:
        plan = {"store_volume": {"text": text, "units": "us", "unit": "gal"}}
        request = {"ask": "worksheet", "worksheet": "stored-heat", "plan": plan, "scold": scold}
        return json.loads(render.respond(json.dumps(request), heard.append))

    reply = asked("650", [])
    assert heard == [reply["slots"]["plate"]] and "650" not in heard[0]
    for text, scold in (("650", None), ("65o", []), ("", [])):
        reply = asked(text, scold)
        assert len(heard) == 1 or (reply["state"] != "wrong" and scold == []), text
        del heard[1:]


def test_a_page_tells_what_an_older_plan_has_for_two_things() -> None:
    texts = {"method": "fuel", "fuel": "oil", "efficiency": "81 %", "amount": "700 gal"}
    plan = {key: {"text": text, "units": "us"} for key, text in texts.items()}
    renamed = ask("worksheet", worksheet="house-load", plan=plan)["renamed"]
    assert renamed["entries"]["fuel"] is None
    assert {key: renamed["entries"][key]["text"] for key in ("fuel_now", "efficiency_oil")} == {
        "fuel_now": "oil",
        "efficiency_oil": "81 %",
    }
    assert "This plan had one entry for the stove and for the heater you have: Efficiency on oil." in renamed["said"]


@pytest.mark.parametrize("name", render.ANSWERS)
def test_each_kind_tells_what_it_takes_and_gives(name: str) -> None:
    told = (render.ANSWERS[name].__doc__ or "").lower()
    assert ("takes {" in told and "gives " in told) or "see `" in told


def test_every_reply_names_the_units_of_its_labels() -> None:
    for system in ("us", "si"):
        for name, more in {
            "worksheet": {"worksheet": "stored-heat"},
            "plan": {},
            "desk": {"worksheet": "stored-heat"},
            "record": {},
        }.items():
            assert ask(name, units=system, **more)["units"] == system


@pytest.mark.parametrize(
    ("standing", "said"),
    [
        ("149.09 F", "Take the cooler one only if nothing else in the house needs"),
        ("120 F", "the higher one is what counts"),
    ],
)
def test_who_takes_another_need_in_place_of_a_given_one_hears_which_counts(standing: str, said: str) -> None:
    """One store serves rooms and taps: of their needs the highest counts."""
    plan = {"lowest_useful": {"text": standing, "units": "us", "from": "link"}, "emitters_need": {"text": "60 F"}}
    told = ask("use", worksheet="tap-water", key="lowest_useful", plan=plan)
    assert told["taken"] is None and said in told["said"]


@pytest.mark.parametrize(
    "choice",
    [choice for question in QUESTIONS for choice in (*question.choices, *question.more)],
    ids=lambda choice: choice.key,
)
def test_what_a_button_of_the_start_puts_into_the_plan_is_read_everywhere(choice: Choice) -> None:
    plan = json.loads(choice.entries)
    assert "ss-error" not in ask("plan", plan=plan)["list"]
    asking = [key for key in WORKSHEETS if plan.keys() & {field.key for field in WORKSHEETS[key].all_fields()}]
    wrong = [
        key for key in asking if key != "winter-run" and ask("worksheet", worksheet=key, plan=plan)["state"] == "wrong"
    ]
    assert wrong == []


@pytest.mark.parametrize("key", WORKSHEETS)
def test_practice_is_for_nobody(key: str) -> None:
    """However many turns a page asks for, it gets nothing to show, and what a worksheet says stays as it was."""
    before = ask("worksheet", worksheet=key)
    for turn in range(5):
        assert ask("practise", worksheet=key, turn=turn) == {"units": "us"}
    assert ask("worksheet", worksheet=key) == before


def test_practice_fetches_no_weather(monkeypatch: pytest.MonkeyPatch) -> None:
    def nowhere(place: str) -> str:
        raise winter_weather.NotHere(place)

    monkeypatch.setattr(render, "_worksheet", lambda *_: nowhere("burlington-vt"))
    assert ask("practise", worksheet="winter-run", turn=0) == {"units": "us"}


def test_who_gave_a_number_is_decided_here() -> None:
    """The page says what was typed and in which units; what it says of nobody knows is typed."""
    plan = {"store_volume": {"text": "640", "units": "us"}, "store_top": {"text": "", "units": "us", "from": "typical"}}
    fields = ask("worksheet", worksheet="stored-heat", plan=plan)["fields"]
    assert (fields["store_volume"]["from"], fields["store_volume"]["unknown"]) == ("typed", False)
    assert (fields["store_top"]["from"], fields["store_top"]["unknown"]) == ("typical", True)
    plan["store_volume"]["from"] = "the devil"
    assert ask("worksheet", worksheet="stored-heat", plan=plan)["fields"]["store_volume"]["from"] == "typed"


def test_a_worksheet_says_whether_it_follows_numbers_that_it_does_not_ask() -> None:
    typed = {"store_volume": {"text": "640", "units": "us"}}
    computed = {"design_load": {"text": "20000 Btu/h", "units": "us", "from": "computed", "by": "house-load"}}
    assert not ask("worksheet", worksheet="stored-heat", plan=typed)["follows"]
    assert ask("worksheet", worksheet="stored-heat", plan=typed | computed)["follows"]
    assert ask("worksheet", worksheet="house-load", plan=computed)["follows"], "its result is in the plan"


@pytest.mark.parametrize("text", ["1e308", "-1e308", "1e150", "9" * 200])
@pytest.mark.parametrize("typed_in", ["us", "si"])
@pytest.mark.parametrize("units", ["us", "si"])
def test_a_number_beyond_all_use_is_answered_in_either_units(text: str, typed_in: str, units: str) -> None:
    plan = {key: {"text": text, "units": typed_in} for key in BY_KEY}
    assert text in ask("plan", plan=plan, units=units)["list"]
    for worksheet in WORKSHEETS:
        reply = ask("worksheet", worksheet=worksheet, plan=plan, units=units)
        assert all(
            field["value"] in ("", text)
            for field in reply["fields"].values()
            if field["from"] == "typed" and field["unit"]
        )
    assert ask("save", plan=plan, units=units)["text"]
    assert ask("record", plan=plan, units=units)["paper"]


def test_a_table_by_a_name_that_is_not_there_is_no_file() -> None:
    for name in ("table-99", "table-x", "nothing", ""):
        assert ask("csv", worksheet="stored-heat", table=name, plan={}) == {"units": "us", "name": "", "text": ""}


def test_the_link_of_a_plan_says_where_its_numbers_stand() -> None:
    said = ask("link", link="#v1;plan;store_volume=640gal;end", plan={}, units="us")["said"]
    assert "It holds a whole plan: its numbers stand at every worksheet of this site" in said
    assert '<a href="../../record/">the sizing record</a>' in said
    said = ask("link", link="#v1;stored-heat;store_volume=640gal;end", plan={}, units="us")["said"]
    assert "whole plan" not in said


def test_long_use_leaves_nothing_behind() -> None:
    """Each edit a new text, as a reader makes them; EDITS=10000 makes so many instead of some hundreds."""
    edits = int(os.environ.get("EDITS", "300"))

    def edit(count: int, start: int) -> int:
        for number in range(start, start + count):
            plan = {"store_volume": {"text": f"{500 + number / 100}"}, "store_top": {"text": f"{170 + number % 10}"}}
            ask("worksheet", worksheet="stored-heat", units=("us", "si")[number % 2], plan=plan)
        gc.collect()
        return sys.getallocatedblocks()

    before = edit(60, 0)  # until each unit, table and template that it takes has been made
    assert edit(edits, 60) - before < edits, "less than one object an edit"


def test_a_result_that_rests_on_the_worked_example_is_put_into_the_plan_with_that_word() -> None:
    """Its digits are those of any result; the floor's area is that of an invented house."""
    plan = {"design_load": {"text": "38,000", "units": "us", "unit": "Btu/h"}}
    reply = ask("use", worksheet="floor", plan=plan, key="supply_water")
    assert reply["taken"]["from"] == "example"
    assert re.search(r"Supply temperature, \d+\s°F, which rests on numbers of the worked example", reply["said"])
