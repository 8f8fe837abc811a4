"""Worked by hand: the example of the water-and-steel worksheet, its table's edges, and where its advice begins."""

import pytest

from calc.answer import Typed, answer
from calc.engine.sheet import Sheet
from calc.units import CACO3, GALLON, POUND

EXAMPLE = dict(answer("water-and-steel", {}).worksheet.examples[0].given)


def _sheet(**given: str) -> Sheet:
    sheet = answer("water-and-steel", {key: Typed(text) for key, text in (EXAMPLE | given).items()})
    assert not sheet.problems
    return sheet


def _codes(**given: str) -> dict[str, str]:
    return {said.code: said.level for said in _sheet(**given).advice}


def test_mill_row_by_hand() -> None:
    # 845 gal × 3.7854 = 3,198.7 L; × 180 mg/L = 575.8 g = 1.269 lb.
    # 6 gal × 10 = 60 gal = 227.1 L; × 180 mg/L = 40.88 g = 0.0901 lb.
    # Oxygen: 3,198.7 L × 11.3 mg/L = 36.15 g; × 2.618 = 94.6 g of iron.
    # 60,000 Btu/h = 17.58 kW; 3,198.7 L ÷ 17.58 kW = 181.9 L/kW: 0.05 mmol/L, which is 5.004 mg/L.
    # (180 − 5.004) ÷ (180 − 1.785) = 98.19 %; × 845 gal = 829.7 gal. 1 % of 845 gal is 8.45 gal.
    values = _sheet().values
    assert values["scale_first"] == pytest.approx(0.5758, rel=0.001)
    assert values["scale_make_up"] == pytest.approx(0.0901 * POUND, rel=0.001)
    assert values["rust_first"] == pytest.approx(0.0946, rel=0.001)
    assert values["specific_volume"] == pytest.approx(181.9e-6, rel=0.001)
    assert values["hardness_limit"] == pytest.approx(0.05 * CACO3)
    assert values["treated_share"] == pytest.approx(0.9819, rel=0.001)
    assert values["treated_water"] == pytest.approx(829.7 * GALLON, rel=0.001)
    assert values["inhibitor_dose"] == pytest.approx(8.45 * GALLON)


@pytest.mark.parametrize(
    ("volume", "element", "moles"),
    [
        ("200 L", "no", None),
        ("201 L", "no", 3.0),
        ("400 L", "no", 3.0),
        ("401 L", "no", 0.05),
        ("200 L", "yes", 3.0),
        ("400 L", "yes", 1.5),
        ("401 L", "yes", 0.05),
    ],
)
def test_the_table_turns_at_20_and_40_litres_a_kilowatt(volume: str, element: str, moles: float | None) -> None:
    result = _sheet(system_volume=volume, water_output="10 kW", element_in_water=element)
    assert result.values["hardness_limit"] == (None if moles is None else pytest.approx(moles * CACO3))


def test_a_plant_of_which_nothing_is_asked_has_nothing_to_soften() -> None:
    worked = _sheet(system_volume="150 L", water_output="10 kW", make_up="1 gal")
    assert {result.key: result.shown for result in worked.results}["hardness_limit"] == "no limit"
    assert "guideline-met" in {advice.code for advice in worked.advice}


@pytest.mark.parametrize(
    ("given", "code", "level"),
    [
        ({"store_kind": "open"}, "closed-only", "caution"),
        ({"store_kind": "lined"}, "closed-only", "caution"),
        ({"hardness": "5.1 mg/L"}, "too-hard", "caution"),
        ({"hardness": "99 mg/L"}, "guidelines-differ", "note"),
        ({"ph": "8.1"}, "ph-low", "caution"),
        ({"ph": "10.1"}, "ph-high", "caution"),
        ({"ph": "9.1", "aluminum": "yes"}, "ph-high", "caution"),
        ({"stainless": "304", "hottest_water": "180 °F", "chloride": "11 mg/L"}, "chloride-stainless", "caution"),
        ({"stainless": "316", "hottest_water": "170 °F", "chloride": "151 mg/L"}, "chloride-stainless", "caution"),
        ({"chloride": "251 mg/L"}, "chloride-steel", "caution"),
        ({"make_up": "85 gal"}, "leak", "caution"),
        ({"make_up": "170 gal"}, "many-fillings", "caution"),
        ({"hardness": "5 mg/L"}, "guideline-met", "note"),
    ],
)
def test_the_advice_begins_where_it_should(given: dict[str, str], code: str, level: str) -> None:
    assert _codes(**given).get(code) == level


@pytest.mark.parametrize(
    ("given", "code"),
    [
        ({}, "closed-only"),
        ({"hardness": "5 mg/L"}, "too-hard"),
        ({"hardness": "101 mg/L"}, "guidelines-differ"),
        ({"ph": "8.2"}, "ph-low"),
        ({"ph": "10"}, "ph-high"),
        ({"ph": "9", "aluminum": "yes"}, "ph-high"),
        ({"stainless": "304", "hottest_water": "176 °F", "chloride": "25 mg/L"}, "chloride-stainless"),
        ({"chloride": "250 mg/L"}, "chloride-steel"),
        ({"make_up": "84 gal"}, "leak"),
        ({"make_up": "168 gal"}, "many-fillings"),
        ({"hardness": "5 mg/L", "store_kind": "open"}, "guideline-met"),
        ({"hardness": "5 mg/L", "ph": "8"}, "guideline-met"),
    ],
)
def test_the_advice_is_silent_where_it_should(given: dict[str, str], code: str) -> None:
    assert code not in _codes(**given)


@pytest.mark.parametrize("text", ["180 mg/L", "180 ppm", "10.5153 gpg", "10.0851 °dH", "18 °f", "1.79844 mmol/L"])
def test_one_hardness_in_every_unit(text: str) -> None:
    assert _sheet(hardness=text).values["scale_first"] == pytest.approx(0.5758, rel=0.001)
