"""The chain as a whole: worked by hand link by link, each way of failing, and the change that helps most."""

import pytest

from calc.answer import Typed, answer
from calc.units import BTU, GALLON, HOUR, POUND
from calc.worksheets import WORKSHEETS

# A smaller store, and a higher house, than those of the example.
SMALL = {
    "store_volume": "600 gal",
    "store_top": "185 °F",
    "other_volume": "60 gal",
    "height_above_vessel": "18 ft",
    "vessel_fitted": "110 gal",
    "tank_diameter": "48 in",
    "empty_weight": "700 lb",
    "dump_output": "130,000 Btu/h",
}


def _given() -> dict[str, Typed]:
    example = WORKSHEETS["will-it-work"].examples[0].given
    return {key: Typed(text) for key, text in (dict(example) | SMALL).items()}


def _status(**changed: str) -> dict[str, str]:
    sheet = answer("will-it-work", _given() | {key: Typed(text) for key, text in changed.items()})
    assert not sheet.problems, sheet.problems
    return {verdict.key: verdict.status for verdict in sheet.verdicts}


def test_a_small_store_by_hand() -> None:
    values = answer("will-it-work", _given()).values
    # Fire: 4 h × (60,000 + 8,000) Btu/h = 272,000 Btu a burn; 24 h × 30,500 = 732,000 Btu a day; 2.69 burns, 10.8 h of 24.
    assert values["burning_share"] == pytest.approx(10.76 / 24, rel=0.002)
    # Store: 600 gal × 8.16 Btu/(gal·°F) × (185 - 130) °F = 269,300 Btu; a burn is 4 × 60,000 = 240,000 Btu: 112 %.
    assert values["burn_share"] == pytest.approx(269_300 / 240_000, rel=0.002)
    # House: 269,300 ÷ 30,500 = 8.83 h.
    assert values["hours_carried"] == pytest.approx(8.83 * HOUR, rel=0.002)
    # Room: 150 × (80 - 30) + 100 × (80 - 68) = 7,500 + 1,200 = 8,700 Btu/h.
    assert values["room_can_use"] == pytest.approx(8_700 * BTU / HOUR, rel=1e-6)
    # Power cut: 60,000 × 2 = 120,000 Btu/h.
    assert values["peak_output"] == pytest.approx(120_000 * BTU / HOUR, rel=1e-9)
    # Pressure: water from 50 to 210 °F grows by 62.41/59.88 - 1 = 4.23 % (steam tables, lb/ft³): 660 gal × 4.23 % = 27.9 gal.
    assert values["water_expansion"] == pytest.approx(27.9 * GALLON, rel=0.005)
    # Lowest: 18 ft × 0.4335 psi + 4 = 11.8 psig; highest: 30 - 7 = 23 psig (less than 27); air at 3,000 ft 13.17 psia.
    # 1 - (11.8 + 13.17) ÷ (23 + 13.17) = 0.3096; 27.9 ÷ 0.3096 = 90.1 gal.
    assert values["vessel_needed"] == pytest.approx(90.1 * GALLON, rel=0.006)
    # Weight: 600 gal × 8.345 lb + 700 = 5,707 lb on a circle of 4 ft (12.57 ft²): 454 lb/ft².
    assert values["full_weight"] == pytest.approx(5_707 * POUND, rel=0.002)
    assert values["floor_load"] == pytest.approx(454 * POUND * 9.80665 / 0.3048**2, rel=0.003)


@pytest.mark.parametrize(
    ("part", "status", "changed"),
    [
        ("fire", "unworkable", {"water_output": "15,000 Btu/h", "room_output": "2,000 Btu/h"}),
        ("fire", "tight", {"water_output": "24,000 Btu/h", "room_output": "8,000 Btu/h"}),
        ("water", "stop", {"system_pressure": "0 psi", "store_top": "200 °F"}),
        ("water", "tight", {"system_pressure": "0 psi", "store_top": "170 °F"}),
        ("highest", "stop", {"system_pressure": "0 psi", "highest_point": "20 ft"}),
        # Outlet at the peak: 185 + 25 = 210 °F; 12 psig less 12 ft x 0.42 psi: boiling near 228 °F. 18 °F are left.
        ("highest", "tight", {}),
        ("store", "unworkable", {"store_volume": "400 gal"}),
        ("store", "tight", {"store_volume": "560 gal"}),
        ("emitter", "unworkable", {"lowest_useful": "185 °F"}),
        ("emitter", "tight", {"lowest_useful": "170 °F"}),
        ("house", "unworkable", {"hours_wanted": "12 h"}),
        ("house", "tight", {"hours_wanted": "8.5 h"}),
        ("tap", "unworkable", {"tap_store": "190 °F"}),
        ("tap", "tight", {"tap_store": "140 °F"}),
        ("tap", "pass", {"tap_store": "125 °F"}),
        ("room", "unworkable", {"room_output": "20,000 Btu/h"}),
        ("room", "pass", {"room_output": "5,000 Btu/h"}),
        ("chimney", "not checked", {}),
        ("chimney", "unworkable", {"chimney_known": "yes", "draught_left": "0.03 in w.c."}),
        ("chimney", "pass", {"chimney_known": "yes", "draught_left": "0.07 in w.c."}),
        ("pressure", "stop", {"vessel_fitted": "50 gal"}),
        ("pressure", "stop", {"top_pressure": "20 psi", "vessel_fitted": "500 gal"}),  # 27.8 psi cold, over 23: no room
        ("pressure", "tight", {"vessel_fitted": "95 gal"}),
        ("pressure", "pass", {"vessel_fitted": "120 gal"}),
        ("open-store", "not checked", {"vessel_fitted": "0 gal", "system_pressure": "0 psi"}),
        ("power-cut", "stop", {"dump_output": "0 Btu/h"}),
        ("power-cut", "pass", {"dump_output": "140,000 Btu/h"}),
        ("power-cut", "stop", {"peak_known": "yes", "peak_output": "150,000 Btu/h"}),
        ("weight", "stop", {"floor_kind": "framed", "floor_allowable": "40 lb/ft2"}),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_each_part_stands_and_falls_by_its_own_number(part: str, status: str, changed: dict[str, str]) -> None:
    assert _status(**changed)[part] == status


def test_taps_that_are_not_on_this_store_are_no_part_of_the_chain() -> None:
    assert "tap" not in _status(tap_store="190 °F", taps_from_store="no")


def test_there_is_no_overall_pass_and_what_was_not_checked_is_always_told() -> None:
    worksheet = WORKSHEETS["will-it-work"]
    assert len(worksheet.not_checked) >= 5
    everything = _status(
        room_output="5,000 Btu/h",
        dump_output="140,000 Btu/h",
        chimney_known="yes",
        draught_left="0.07 in w.c.",
        highest_point="4 ft",
    )
    assert set(everything.values()) == {"pass"}
    assert "checked here alone" in next(result.say for result in worksheet.results if result.key == "parts_to_mend")


def test_the_change_that_helps_most_is_found_by_trying() -> None:
    given = {key: Typed(text) for key, text in WORKSHEETS["will-it-work"].examples[0].given.items()}
    without_dump = answer("will-it-work", given | {"dump_output": Typed("0 Btu/h")})
    assert "dump" in without_dump.best_change
    small = answer("will-it-work", given | {"store_volume": Typed("420 gal"), "room_output": Typed("4,000 Btu/h")})
    assert "store" in small.best_change


def test_no_plan_fails_by_hours_that_nobody_asked_for() -> None:
    """Of a first plan nobody has said how long the store should carry the house: 12 h are usual, and no reason for a No."""
    first = {
        "water_output": "88,593 Btu/h",
        "burn_time": "3 h",
        "design_load": "29,531 Btu/h",
        "lowest_useful": "141 °F",
    }
    given = {key: Typed(text) for key, text in (first | {"store_volume": "841 gal"}).items()}
    sheet = answer("will-it-work", given)
    house = next(verdict for verdict in sheet.verdicts if verdict.key == "house")
    assert (house.status, house.unsaid) == ("not checked", ("Hours without a fire",))
    assert sheet.judgement and sheet.judgement.word == "Not yet"
    asked = answer("will-it-work", given | {"hours_wanted": Typed("12 h")})
    assert next(verdict for verdict in asked.verdicts if verdict.key == "house").status == "unworkable"
