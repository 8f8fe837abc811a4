"""Each invented house has one set of numbers, on every page and in the records, and keeps the rules that the pages teach."""

import re
from collections import defaultdict
from pathlib import Path

import pytest

from calc.answer import Typed, answer
from calc.engine.plan import Entry, given_for
from calc.engine.sheet import Sheet
from calc.units import FAHRENHEIT_DEGREE
from calc.worksheets import WORKSHEETS

RECORDS = {
    path.stem.replace("-", " ").title(): path
    for path in sorted((Path(__file__).resolve().parent.parent / "site_overrides/editions").glob("*/houses/*.txt"))
}
TOLD = ("Fern Lane", "Mill Row", "Ridge Road", "Hollow Cabin")

# A house has several fluids in its pipes; a page may ask another question of it, or of its oil burner.
SEVERAL = {"pipe_place", "antifreeze_kind"}
ASKED = {"peak_known", "loop_question", "fire_known"}
# What flows through a trench is as hot as the store sends it; the winter asks for what the emitters need.
TRENCH = {("antifreeze", "supply_water"), ("buried-pipe", "supply_water")}
SAME_KEY_OTHER_THING = {*TRENCH}


def _record(house: str) -> dict[str, str]:
    lines = RECORDS[house].read_text(encoding="utf-8").splitlines()
    return dict(line.partition(" | ")[0].split(" = ", 1) for line in lines if " = " in line)


def _numbers(house: str) -> dict[str, dict[str, set[str]]]:
    """Every text of each key, and where it stands."""
    result: dict[str, dict[str, set[str]]] = defaultdict(lambda: defaultdict(set))
    for slug, worksheet in WORKSHEETS.items():
        for example in worksheet.examples:
            if example.name.startswith(house):
                for key, text in example.given.items():
                    if (slug, key) not in SAME_KEY_OTHER_THING:
                        result[worksheet.plan_key(key)][text].add(slug)
    for key, text in _record(house).items():
        result[key][text].add("the record")
    return result


@pytest.mark.parametrize("house", TOLD)
def test_one_quantity_has_one_number(house: str) -> None:
    several = {
        key: dict(texts) for key, texts in _numbers(house).items() if len(texts) > 1 and key not in SEVERAL | ASKED
    }
    assert not several


def _sheet(slug: str, house: str) -> Sheet:
    """A worksheet with the house's recorded numbers, and those of its own example where the record has none."""
    examples = [example.given for example in WORKSHEETS[slug].examples if example.name.startswith(house)]
    recorded = {key: Entry(text, "typed") for key, text in _record(house).items()}
    told = {key: Typed(text) for key, text in (examples[0] if examples else {}).items()}
    sheet = answer(slug, told | given_for(WORKSHEETS[slug], recorded))
    assert not sheet.problems
    return sheet


@pytest.mark.parametrize("house", TOLD)
def test_a_burn_is_in_the_wood_and_fits_the_store(house: str) -> None:
    said = {advice.code for advice in _sheet("firing", house).advice}
    assert not said & {"wood-too-little", "burn-does-not-fit", "boiling", "boiling-margin", "more-than-a-day"}


@pytest.mark.parametrize("house", TOLD)
def test_the_outlet_stays_clear_of_boiling(house: str) -> None:
    margin = _sheet("will-it-work", house).values["outlet_margin"]
    assert isinstance(margin, float)
    assert margin >= 20 * FAHRENHEIT_DEGREE


@pytest.mark.parametrize("house", ["Fern Lane", "Mill Row", "Hollow Cabin"])
def test_no_link_is_dangerous(house: str) -> None:
    """Ridge Road is the house whose record has to say stop: its dump is too small."""
    assert "stop" not in {verdict.status for verdict in _sheet("will-it-work", house).verdicts}


def test_the_store_of_fern_lane_serves_floor_and_taps() -> None:
    record, floor, taps = (
        _record("Fern Lane"),
        _sheet("floor", "Fern Lane").values,
        _sheet("tap-water", "Fern Lane").values,
    )
    lowest = _sheet("firing", "Fern Lane").values["lowest_useful"]
    for needs in (floor["lowest_useful"], taps["store_needed"]):
        assert isinstance(needs, float)
        assert isinstance(lowest, float)
        assert needs <= lowest
    wanted = float(re.sub(r"[^\d.]", "", record["mixed_wanted"]))
    supply = floor["supply_water"]
    assert isinstance(supply, float)
    assert wanted == pytest.approx(supply * 1.8 - 459.67, abs=0.6)


def test_the_surfaces_of_fern_lane_lose_its_design_load() -> None:
    example = next(example for example in WORKSHEETS["house-load"].examples if example.name.startswith("Fern Lane"))
    sheet = answer("house-load", {key: Typed(text) for key, text in example.given.items()})
    assert (
        next(result.shown for result in sheet.results if result.key == "design_load").replace("\u00a0", " ")
        == _record("Fern Lane")["design_load"]
    )


def test_the_fuel_of_mill_row_is_its_design_load_and_its_winter() -> None:
    shown = {result.key: result.shown.replace("\u00a0", " ") for result in _sheet("house-load", "Mill Row").results}
    assert shown["design_load"] == _record("Mill Row")["design_load"]
    assert {shown["yearly_heat"]} == set(_numbers("Mill Row")["yearly_heat"])
