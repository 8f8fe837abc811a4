"""Worked by hand: the expansion worksheet, the definitions that pin it, and what it says when."""

import pytest

from calc.answer import Typed, answer
from calc.units import GALLON, PSI
from tests.worksheets.asking import codes, sheet_of, values


def test_mill_row_by_hand() -> None:
    # 845 gal from 50 °F (62.43 lb/ft³) to 210 °F (59.89): 62.43 ÷ 59.89 - 1 = 4.24 %, 35.8 gal.
    # Fill: 14 ft × 0.4335 + 4 = 10.07 psi; highest: the smaller of 27 and 23 psi. Air at 3,000 ft 13.17 psia.
    # Share that fills: 1 - 23.24 ÷ 36.17 = 35.75 %. Tank 35.8 ÷ 0.3575 = 100 gal; reserve 4.2 gal: 112 gal.
    worked = values("expansion")
    assert worked["water_expansion"] == pytest.approx(35.8 * GALLON, rel=0.005)
    assert worked["charge_pressure"] == pytest.approx(10.07 * PSI, rel=0.002)
    assert worked["highest"] == pytest.approx(23 * PSI)
    assert worked["acceptance"] == pytest.approx(0.3575, rel=0.002)
    assert worked["vessel_volume"] == pytest.approx(100 * GALLON, rel=0.006)
    assert worked["vessel_with_reserve"] == pytest.approx(112 * GALLON, rel=0.006)


def test_the_high_limit_counts_and_not_the_store() -> None:
    assert values("expansion", high_limit="230 °F")["vessel_volume"] > 1.1 * values("expansion")["vessel_volume"]
    assert "store_top" not in {field.key for field in sheet_of("expansion").course.fields}


def test_thin_air_needs_a_smaller_vessel_because_pressures_are_absolute() -> None:
    assert (
        values("expansion", altitude="7,000 ft")["vessel_volume"]
        < values("expansion", altitude="0 ft")["vessel_volume"]
    )


def test_highest_pressure_is_the_smaller_of_both_rules_unless_typed() -> None:
    assert values("expansion", relief_setting="45 psi")["highest"] == pytest.approx(38 * PSI)
    assert values("expansion", relief_setting="75 psi")["highest"] == pytest.approx(67.5 * PSI)
    assert values("expansion", highest_rule="typed", highest="25 psi")["highest"] == pytest.approx(25 * PSI)
    assert sheet_of("expansion", highest="25 psi").values["highest"] == pytest.approx(25 * PSI)


def test_the_pump_counts_where_the_tank_joins_behind_it() -> None:
    assert values("expansion", pump_pressure="5 psi")["charge_pressure"] == pytest.approx(
        values("expansion")["charge_pressure"] + 5 * PSI
    )


def test_metal_is_credited_only_when_asked() -> None:
    # 3 × 6.5e-6 × 160 °F × 845 gal = 2.64 gal.
    plain, credited = values("expansion"), values("expansion", metal_credit="steel")
    assert plain["water_expansion"] - credited["water_expansion"] == pytest.approx(2.636 * GALLON, rel=0.001)


def test_glycol_grows_more_than_water() -> None:
    assert (
        values("expansion", antifreeze_kind="propylene", antifreeze="40 %")["expansion_share"]
        > 1.2 * values("expansion")["expansion_share"]
    )


def test_an_open_tank_holds_growth_and_what_stands_in_it() -> None:
    worked = values(
        "expansion",
        expansion_kind="open",
        high_limit="180 °F",
        standing_water="5 gal",
        fill_temperature="60 °F",
        store_volume="500 gal",
        other_volume="0 gal",
    )
    # 500 gal from 60 to 180 °F grow by 14.74 gal.
    assert worked["vessel_volume"] == pytest.approx(19.74 * GALLON, rel=0.003)


def test_an_old_air_tank_must_be_far_larger() -> None:
    assert values("expansion", expansion_kind="plain")["vessel_volume"] > 1.7 * values("expansion")["vessel_volume"]


OPEN = {"expansion_kind": "open"}
GLYCOL = {"antifreeze_kind": "propylene"}
IN_LOOP = {**GLYCOL, "antifreeze_in": "loop"}


def test_a_loop_behind_an_exchanger_has_a_tank_of_its_own_beside_the_plant_s() -> None:
    """The plant's water is what it is without antifreeze; the loop is sized like a plant of that much mixture alone."""
    loop = values("expansion", **IN_LOOP, glycol_volume="30 gal", store_volume="500 gal", altitude="0 ft")
    plain = values("expansion", store_volume="500 gal", altitude="0 ft", antifreeze_kind="none")
    assert {key: loop[key] for key in ("system_volume", "water_expansion", "vessel_volume")} == {
        key: plain[key] for key in ("system_volume", "water_expansion", "vessel_volume")
    }
    whole = values("expansion", **GLYCOL, other_volume="30 gal", store_volume="570 gal")
    assert loop["loop_expansion"] == pytest.approx(whole["water_expansion"] * 30 / 600)
    # Of so little, the reserve is its least, 3 L; the plant's own tank tells what share of a tank the water may fill.
    share = loop["water_expansion"] / loop["vessel_volume"]
    assert loop["loop_vessel"] == pytest.approx((loop["loop_expansion"] + 0.003) / share)


@pytest.mark.parametrize(
    ("code", "holds", "spared"),
    [
        ("no-room", {"height_above_vessel": "45 ft"}, {}),
        ("too-small", {"vessel_fitted": "90 gal"}, {"vessel_fitted": "115 gal"}),
        ("tight", {"vessel_fitted": "105 gal"}, {"vessel_fitted": "115 gal"}),
        ("boils-at-limit", OPEN, {**OPEN, "high_limit": "195 °F"}),
        ("near-boiling", {}, {"top_pressure": "14 psi"}),
        ("glycol-in-store", GLYCOL, IN_LOOP),
        ("two-sides", IN_LOOP, GLYCOL),
        # The example's fill is 10.1 psi: its 14 ft of water are 6.1 psi, and 4 psi are kept at the top.
        ("fill-too-low", {"system_pressure": "12 psi"}, {"system_pressure": "10 psi"}),
        ("hot-membrane", {"vessel_water": "165 °F"}, {}),
        ("after-the-pump", {"pump_pressure": "3 psi"}, {}),
        ("near-relief", {"highest_rule": "typed", "highest": "26 psi"}, {"highest_rule": "typed", "highest": "22 psi"}),
        ("no-valve", {}, OPEN),
        ("frost", OPEN, {}),
    ],
)
def test_what_it_says_when(code: str, holds: dict[str, str], spared: dict[str, str]) -> None:
    assert code in codes("expansion", **holds)
    assert code not in codes("expansion", **spared)


def test_a_share_of_glycol_without_its_kind_is_taken_for_propylene_and_says_so() -> None:
    sheet = answer("expansion", {"antifreeze": Typed("30 %")})
    assert sheet.inputs["antifreeze_kind"].si == "propylene"
    assert sheet.inputs["antifreeze_kind"].field.label in sheet.assumed
    refused = answer("expansion", {"antifreeze": Typed("30 %"), "antifreeze_kind": Typed("none")})
    assert [problem.key for problem in refused.problems] == ["antifreeze"]
