"""A winter in one line below the verdict and in the record, and only where the plan holds what it asks."""

import json
from collections.abc import Mapping
from pathlib import Path

import pytest

from calc.__main__ import weather_text
from calc.answer import Typed, answer
from calc.physics import winter_weather
from calc.physics.winter_run import use_file, year
from render import respond

HOUSE = Path(__file__).resolve().parent.parent / "site_overrides/editions/quillbrook/houses/mill-row.txt"
# What the house's plan leaves out of a winter, beside the place.
OF_WINTER = {"emitter": "baseboard", "supply_water": "140 °F", "place": "burlington-vt", "loads_a_day": "3"}


@pytest.fixture(autouse=True)
def _weather_is_here() -> None:
    winter_weather.fetch_with(weather_text)


def _plan(more: Mapping[str, str]) -> dict[str, dict[str, str]]:
    lines = HOUSE.read_text(encoding="utf-8").splitlines()
    given = dict(line.partition(" | ")[0].split(" = ", 1) for line in lines if " = " in line)
    return {key: {"text": text, "units": "us"} for key, text in {**given, **more}.items()}


def _ask(what: str, plan: object) -> dict[str, str]:
    reply: dict[str, str] = json.loads(
        respond(json.dumps({"ask": what, "worksheet": "will-it-work", "plan": plan, "date": "2026-11-25"}))
    )
    return reply


def test_the_line_is_that_of_the_winters_own_worksheet() -> None:
    plan = _plan(OF_WINTER)
    said = _ask("lines", plan)["html"].replace("\u00a0", " ")
    sheet = answer("winter-run", {key: Typed(entry["text"]) for key, entry in plan.items() if key in _asked()})
    shown = {result.key: result.shown.replace("\u00a0", " ") for result in sheet.results}
    assert f"A typical winter: {shown['wood_volume']} of wood, {shown['loads']} loads on " in said
    assert f"too cold for {shown['cold_hours']}, the coldest {shown['coldest']}." in said
    assert "A typical winter: " in _ask("record", plan)["paper"]


def _asked() -> set[str]:
    from calc.worksheets import WORKSHEETS

    return {field.key for field in WORKSHEETS["winter-run"].all_fields()}


def test_no_year_is_run_where_the_plan_has_no_place_or_lacks_a_number() -> None:
    before = year.function.cache_info()  # type: ignore[attr-defined]
    assert _ask("lines", _plan({**OF_WINTER, "place": ""}))["html"] == ""
    assert _ask("lines", {"place": {"text": "burlington-vt"}})["html"] == ""
    assert _ask("lines", _plan({**OF_WINTER, "supply_water": "hot"}))["html"] == ""
    assert _ask("lines", {})["html"] == ""
    assert "A typical winter" not in _ask("record", _plan({}))["paper"]
    assert year.function.cache_info() == before  # type: ignore[attr-defined]


def test_the_same_numbers_do_not_run_the_year_again() -> None:
    plan = _plan(OF_WINTER)
    _ask("lines", plan)
    before = year.function.cache_info().misses  # type: ignore[attr-defined]
    _ask("lines", {**plan, "empty_weight": {"text": "900 lb", "units": "us"}})
    assert year.function.cache_info().misses == before  # type: ignore[attr-defined]


def test_a_year_from_a_file_needs_no_place_and_without_one_the_line_says_why() -> None:
    plan = _plan({**OF_WINTER, "weather": "file"})
    del plan["place"]
    use_file("")
    for said in (_ask("lines", plan)["html"], _ask("record", plan)["paper"]):
        assert "This winter cannot be run. No weather file is open here." in said
    try:
        use_file(winter_weather.written([-20 + hour % 24 for hour in range(8760)]))
        assert "A typical winter: " in _ask("lines", plan)["html"]
    finally:
        use_file("")
