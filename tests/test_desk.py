"""The desk without a browser: what its message says of a customer's house, and what it never does."""

import json
import re
from typing import Any

import pytest

import edition
from calc.answer import Typed, answer
from calc.engine import link
from calc.engine.fields import quantity
from calc.worksheets import WORKSHEETS
from render import respond
from render.desk import JOIN, TOGETHER

BASEBOARD = JOIN.join(TOGETHER[0][1])
PLACE = {
    "altitude": "3,000 ft",
    "design_outdoor": "-5 °F",
    "degree_days": "7,800 °F·day",
    "base_temperature": "65 °F",
    "average_outdoor": "28 °F",
}
STOVE = {"water_output": "60,000 Btu/h", "room_output": "8,000 Btu/h", "burn_time": "4 h", "firebox_volume": "5 ft3"}
LETTER = {"heated_area": "2,400", "house_class": "never-insulated", "baseboard_length": "80", "lowest_useful": "140"}


def asked(question: str, given: dict[str, str], stock: dict[str, str] | None = None, **more: Any) -> Any:
    plan: dict[str, Any] = {key: {"text": text, "units": "us"} for key, text in given.items()}
    plan |= {key: {"text": text, "units": "us", "giver": "stock"} for key, text in (stock or {}).items()}
    request = {"ask": "desk", "units": "us", "worksheet": question, "plan": plan, "typing": None, "address": "desk/"}
    return json.loads(respond(json.dumps(request | more)))


def lines(reply: Any) -> list[str]:
    return [line.replace("\u00a0", " ") for line in reply["message"].splitlines()]


def test_house_emitter_and_tank_feed_each_other() -> None:
    reply = asked(BASEBOARD, LETTER | PLACE, STOVE)
    told = lines(reply)
    assert told[0] == " ".join(WORKSHEETS[key].question for key in BASEBOARD.split(JOIN))
    load = next(line for line in told if line.startswith("Design load"))
    shown = load.partition(": ")[2].partition(" (rough)")[0]
    assert shown in reply["fields"]["design_load"]["note"].replace("\u00a0", " ")
    assert "worked out here: How much heat does my house lose" in reply["fields"]["design_load"]["note"]
    assert reply["fields"]["design_load"]["value"] == ""
    opened = link.read(reply["link"], WORKSHEETS)
    assert opened.worksheet == link.PLAN and opened.problems == ()
    assert "design_load" not in opened.given, "what follows from the numbers is worked out again where they are opened"
    assert opened.given["water_output"].giver == "stock" and opened.given["heated_area"].giver == ""


def test_the_record_that_the_link_opens_answers_the_question() -> None:
    reply = asked(BASEBOARD, {"heated_area": "1,500", "baseboard_length": "80", "lowest_useful": "140"} | PLACE, STOVE)
    opened = json.loads(respond(json.dumps({"ask": "record", "units": "us", "link": reply["link"].partition("/")[2]})))
    tank = next(line for line in lines(reply) if line.startswith("Recommended store"))
    shown = tank.partition(": ")[2].partition(" (rough)")[0]
    assert shown in opened["paper"].replace("\u00a0", " ")
    assert opened["said"] == ""


def test_emitters_that_the_store_cannot_feed_stop_the_message() -> None:
    """80 ft of baseboard in a large old house: the need with its number stands before the answers."""
    told = lines(asked(BASEBOARD, LETTER | PLACE, STOVE))
    assert told[1].startswith("This cannot work:")
    assert any("These emitters would need 351 °F" in line for line in told[1:3])
    assert any(line.startswith("Recommended store: ") and "gal" not in line for line in told), "no tank is quoted"
    house = next(line for line in told if line.startswith("From what we know of your house: "))
    assert "Lowest useful store temperature 140 °F" in house and "250 °F" not in house, "what the customer said"
    low = next(line for line in told if "is given too low" in line)
    assert low.startswith("Caution: Lowest useful store temperature is given too low. It was given as 140 °F;")
    assert told.index(low) < next(number for number, line in enumerate(told) if line.startswith("From what we know"))


def test_whose_numbers_these_are() -> None:
    told = lines(asked(BASEBOARD, LETTER | PLACE, STOVE))
    house, stock, assumed = (
        next(line for line in told if line.startswith(words))
        for words in ("From what we know of your house: ", "From our stock: ", "Assumed: ")
    )
    assert "Heated floor area 2,400 ft²" in house and "60,000 Btu/h" not in house
    assert "Average heat output to water 60,000 Btu/h" in stock and "140 °F" not in stock
    assert "Heating-effect allowance inside the rating 15 %" in assumed
    assert re.search(r"; and \d+ more, each at the link\.$", assumed), "a message is short"
    for piece in assumed.removeprefix("Assumed: ").rstrip(".").split("; "):
        assert len(piece.split()) > 1, "each with its value"


def test_what_the_question_works_out_has_its_digits_in_every_sentence() -> None:
    """The store is lit again at the lowest useful temperature, which another worksheet of the question has found."""
    given = {"heated_area": "1,500", "house_class": "1980s", "baseboard_length": "140"}
    reply = asked(BASEBOARD, given | PLACE, STOVE | {"store_volume": "300 gal"})
    (said,) = [line for line in lines(reply) if "does not hold one burn" in line]
    shown = next(line for line in lines(reply) if line.startswith("Lowest useful store temperature")).split(": ")[1]
    assert f"between {shown.partition(' (')[0]} and 180 °F" in said


def test_a_size_that_follows_an_unknown_number_waits_for_it() -> None:
    """The store is warm or cool by the temperature at which one lights again, which is the lowest useful one unless told."""
    reply = asked("tank-size", PLACE, STOVE)
    (said,) = [line for line in lines(reply) if line.startswith("Recommended store")]
    assert "not worked out yet" in said
    assert WORKSHEETS["tank-size"].examples[0].given["lowest_useful"].split()[0] not in said
    assert {"Lowest useful store temperature", "Design load (heat lost on the coldest day)"} <= set(
        said.partition("need: ")[2].rstrip(".").split("; ")
    )


@pytest.mark.parametrize("key", WORKSHEETS)
def test_no_result_of_the_worked_example_is_told_as_the_customers(key: str) -> None:
    """With one number known, a headline that moves with a number of the example is not worked out yet."""
    given = {"altitude": "4,000 ft"} if "altitude" in _keys(key) else {"indoor": "66 °F"}
    reply = asked(key, given)
    told = lines(reply)
    if _moves_with_the_example(key, given):
        assert any("not worked out yet. We still need: " in line for line in told), told
        assert not [line for line in told if line.startswith(("Stop", "This cannot work", "Caution"))]
        assert "No result yet" in reply["plate"]


def _moves_with_the_example(key: str, given: dict[str, str]) -> bool:
    """Whether a number that nobody gave and that has no usual value changes the headline, somewhere in its range."""
    typed = {name: Typed(text, "us") for name, text in given.items()}
    sheet = answer(key, typed)
    for entry in sheet.inputs.values():
        field = entry.field
        if entry.origin != "example" or field.kind == "choice" or field.optional:
            continue
        for end in (field.low_si, field.high_si):
            unit = field.unit("us")
            other = answer(key, typed | {field.key: Typed(f"{unit.from_si(end):.12g} {unit.ascii}", "us")})
            if other.headline and sheet.headline and other.headline.shown != sheet.headline.shown:
                return True
    return False


def _keys(key: str) -> set[str]:
    return {field.key for field in WORKSHEETS[key].all_fields()}


def test_the_desk_folds_what_has_a_usual_value() -> None:
    """What a letter tells stands open; of all three worksheets some twenty boxes, and the others are there when unfolded."""
    form = asked(BASEBOARD, {}, form=True)["form"]
    folded = "".join(re.findall(r"<details.*?</details>", form, flags=re.DOTALL))
    asked_openly = [key for key in re.findall(r'data-key="([^"]+)"', form) if f'data-key="{key}"' not in folded]
    assert {"method", "amount", "heated_area", "house_class", "baseboard_length", "water_output"} <= set(asked_openly)
    assert {"exponent", "rating_air", "store_top", "hours_wanted"} <= set(re.findall(r'data-key="([^"]+)"', folded))


def test_a_wrong_box_is_named_while_somebody_types_in_it() -> None:
    reply = asked("tank-size", {"design_load": "12 apples"}, STOVE, typing="design_load")
    assert reply["wrong"] == "See: Design load (heat lost on the coldest day)."
    assert reply["link"] == reply["message"] == ""
    assert reply["fields"]["design_load"]["error"] == "", "the box itself is not scolded yet"


def test_whether_it_suits_the_house_is_told_with_the_tank() -> None:
    house = {"fuel_now": "oil", "amount": "720 gal", "heated_area": "2,200", "emitter": "air-coil", "stove": "help"}
    told = lines(asked("first-sketch", house | {"place": "burlington-vt"}))
    (line,) = [line for line in told if line.startswith("Does it suit my house? Yes (rough). ")]
    assert re.search(r" Tank needed: \d+ gal\. Fires in the worst cold: [\d.]+ a day\.$", line), line


def test_cautions_travel_with_the_message_the_strongest_first() -> None:
    told = lines(asked("floor", {"floor_area": "400 ft2", "design_load": "30,000 Btu/h", "indoor": "68 °F"} | PLACE))
    cautions = [line for line in told if line.startswith("Caution: ")]
    assert 1 <= len(cautions) <= 3
    grave = [number for number, line in enumerate(told) if line.startswith(("Stop", "This cannot work"))]
    assert not grave or max(grave) < told.index(cautions[0])


def test_who_says_how_high_the_house_stands_has_measured_no_walls() -> None:
    """A dealer's place fills the height in: the boxes of the fuel bill stay."""
    assert answer("house-load", {"altitude": Typed("3,000 ft")}).inputs["method"].si == "fuel"
    walls = {"altitude": Typed("3,000 ft"), "wall_area": Typed("1,500 ft2")}
    assert answer("house-load", walls).inputs["method"].si == "surfaces"


@pytest.mark.parametrize("shop", ["quillbrook", "ellerquist"])
def test_a_place_s_heating_days_are_those_of_its_degree_days(shop: str) -> None:
    kinds = {"heating_days": "time", "degree_days": "degree_days", "base_temperature": "temperature"}
    for place in edition.load(shop).places:
        of = {key: quantity(place.fills[key], kind) for key, kind in kinds.items()}
        outdoor = quantity(place.fills["average_outdoor"], "temperature")
        days = of["degree_days"] / (of["base_temperature"] - outdoor)
        assert days == pytest.approx(of["heating_days"] / 86400, rel=0.01)
