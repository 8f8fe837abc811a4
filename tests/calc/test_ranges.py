"""One quantity has one range, on every worksheet that asks it."""

from collections import defaultdict

import pytest

from calc.answer import Typed, answer, open_link
from calc.engine.declare import Field
from calc.engine.typed import Reader, bounds
from calc.units import SYSTEMS, System, unit_named
from calc.vocabulary import COLD_WATER
from calc.worksheets import WORKSHEETS, floor

EVERY_FIELD = [field for worksheet in WORKSHEETS.values() for field in worksheet.all_fields() if field.kind != "choice"]
# Where one key has several ranges by its meaning, and why.
SEVERAL = {
    "amount": "of oil in gallons, of wood in cords",
    "antifreeze": "none in plain water, and what the tables of the glycols hold",
    "efficiency": "a stove of 100 % has no flue gas",
    "load": "a store is also refilled while nobody draws, and then carries no load",
    "dump_size": "of finned pipe in feet, of other dumps in rated output",
    "high_limit": "glycol's growth is tabled to 212 °F",
}


def test_one_quantity_has_one_range() -> None:
    ranges: dict[str, dict[tuple[float, float], list[str]]] = defaultdict(lambda: defaultdict(list))
    for worksheet in WORKSHEETS.values():
        for field in worksheet.all_fields():
            if field.kind != "choice":
                ranges[field.key][field.low_si, field.high_si].append(worksheet.key)
    differing = {key: dict(meaning) for key, meaning in ranges.items() if len(meaning) > 1}
    assert differing.keys() == differing.keys() & SEVERAL.keys(), {
        key: meaning for key, meaning in differing.items() if key not in SEVERAL
    }


def test_every_exception_is_one() -> None:
    several = {key for key in SEVERAL if len({(field.low_si, field.high_si) for field in _fields(key)}) > 1}
    assert several == set(SEVERAL)


def _fields(key: str) -> list[Field]:
    return [field for worksheet in WORKSHEETS.values() for field in worksheet.all_fields() if field.key == key]


@pytest.mark.parametrize("system", SYSTEMS)
def test_the_ends_that_a_reader_is_told_are_accepted(system: System) -> None:
    reader = Reader()
    for field in EVERY_FIELD:
        for told in bounds(field, field.unit(system), system):
            assert reader.read(field, Typed(told, system)).value, f"{field.key}: {told} of {field.low} to {field.high}"


def test_ends_in_another_unit_have_two_figures_and_lie_inside() -> None:
    # 2 in are 50.8 mm and 14.7 in 373.4: rounded inward to what a tape shows.
    assert bounds(floor.PIPE_SPACING, unit_named("mm", "length"), "si") == (
        "51\N{NO-BREAK SPACE}mm",
        "370\N{NO-BREAK SPACE}mm",
    )
    assert bounds(floor.PIPE_SPACING, unit_named("in", "length"), "us") == (
        "2\N{NO-BREAK SPACE}in",
        "14.7\N{NO-BREAK SPACE}in",
    )
    assert bounds(COLD_WATER, unit_named("°C", "temperature"), "si")[0] == "0\N{NO-BREAK SPACE}°C"


def test_pipes_ducts_and_flues_are_asked_in_millimetres() -> None:
    """As their makers print them; a spacing of 200 is 200 mm, and a link keeps the unit in which it was typed."""
    across = ("spacing", "diameter", "bore", "distance", "cover", "insulation", "jacket", "slab_thickness")
    asked = {field.key: field for field in EVERY_FIELD if field.kind == "length" and field.key.endswith(across)}
    assert asked.keys() >= {"pipe_spacing", "duct_diameter", "flue_diameter", "sidearm_bore", "bore"}
    del asked["tank_diameter"]  # in meters, like the door through which the tank has to come
    assert {field.unit("si").text for field in asked.values()} == {"mm"}
    typed = answer("floor", {"pipe_spacing": Typed("200", "si")}, "si")
    assert typed.values["pipe_spacing"] == pytest.approx(0.2)
    sheet, _ = open_link("#v1;floor;pipe_spacing=20cm;end", "si")
    assert sheet.values["pipe_spacing"] == pytest.approx(0.2)


def test_a_limit_is_told_on_its_safe_side() -> None:
    """3 ft/s are 0.914 m/s, and 20 °F of margin 11.1 K: who keeps what the sentence says keeps the rule."""
    loop = {"water_output": Typed("25 kW"), "store_top": Typed("88 °C"), "altitude": Typed("1,500 ft")}
    for system, margin, speed in (("si", "keep 12 K", "keep to 0.91 m/s"), ("us", "keep 20 °F", "keep to 3 ft/s")):
        sheet = answer("charge-loop", loop | {"system_pressure": Typed("3 psi")}, system)  # type: ignore[arg-type]
        told = " ".join(advice.text for advice in sheet.advice).replace("\N{NO-BREAK SPACE}", " ")
        assert margin in told and speed in told
