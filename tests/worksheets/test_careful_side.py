"""What nobody gave stands on the side that warns, and a danger that rests on that alone asks for the number."""

import pytest

from calc.worksheets import WORKSHEETS
from tests.worksheets.asking import example_of, kelvin, sheet_of, values

EMITTERS = ("floor", "emitter-temperature", "air-coil")
TAKES_A_STORE_TOP = (
    *("stored-heat", "tank-size", "firing", "load-now", "standby", "boiling", "charge-loop", "power-cut"),
    *(*EMITTERS, "tempering", "tap-water", "other-heat", "heat-dump", "tanks-together"),
)
# A first plan and a whole winter, whose examples are tried in tests of their own.
WITH_THE_SAME_WORDS = ("first-sketch", "winter-run")


def _unknown(worksheet: str, **typed: str) -> dict[str, str]:
    """The levels of what is said of boiling when nobody gave altitude or pressure."""
    given = {key: text for key, text in example_of(worksheet).items() if key not in ("altitude", "system_pressure")}
    said = sheet_of(worksheet, **(given | typed)).advice
    return {sentence.code: sentence.level for sentence in said if "boil" in sentence.code}


@pytest.mark.parametrize("worksheet", TAKES_A_STORE_TOP)
def test_a_store_that_would_boil_itself_stays_a_stop(worksheet: str) -> None:
    assert "stop" in _unknown(worksheet, store_top="215 °F").values()


@pytest.mark.parametrize("worksheet", TAKES_A_STORE_TOP)
def test_an_outlet_that_boils_only_by_assumption_is_a_caution_that_asks(worksheet: str) -> None:
    # 190 + 25 = 215 °F: over 202.8 °F, where open water boils at 5,000 ft, and far under 274 °F at sea level and 30 psi.
    levels = _unknown(worksheet, store_top="190 °F", charge_rise="25 F°")
    assert "stop" not in levels.values()
    assert "caution" in levels.values()
    # Both given, it is a stop.
    given = example_of(worksheet) | {"store_top": "190 °F", "charge_rise": "25 F°", "altitude": "5,000 ft"}
    said = sheet_of(worksheet, **(given | {"system_pressure": "0 psi"})).advice
    assert "stop" in {sentence.level for sentence in said if "boil" in sentence.code}


def test_every_worksheet_that_takes_a_stores_top_judges_boiling() -> None:
    assert {key for key, entry in WORKSHEETS.items() if "store_top" in {field.key for field in entry.all_fields()}} == {
        *TAKES_A_STORE_TOP,
        "will-it-work",  # in its chain, below
        *WITH_THE_SAME_WORDS,
    }
    for key in WITH_THE_SAME_WORDS:
        said = [advice.code for advice in WORKSHEETS[key].advice]
        assert any("outlet-boils" in code for code in said) and any(code.endswith("boiling") for code in said), key


@pytest.mark.parametrize("worksheet", EMITTERS)
def test_where_boiling_is_not_the_question_its_numbers_are_folded_and_leave_the_answer_firm(worksheet: str) -> None:
    boiling = {
        field.key: field for field in WORKSHEETS[worksheet].all_fields() if field.key in {"altitude", "charge_rise"}
    }
    assert len(boiling) == 2 and all(entry.optional for entry in boiling.values())
    given = {key: text for key, text in example_of(worksheet).items() if key not in ("altitude", "system_pressure")}
    assert not {"Height above sea level", "System pressure at the store's top"} & set(
        sheet_of(worksheet, **given).assumed
    )


def test_the_margin_at_the_outlet_beside_an_emitter() -> None:
    # Mill Row: 180 + 25 = 205 °F; at 3,000 ft (13.17 psia, ASHRAE) and 12 psi, 25.17 psia, IF97 boils at 240.4 °F.
    worked = values("emitter-temperature")
    assert worked["outlet_margin"] == pytest.approx((240.4 - 205) / 1.8, abs=0.1)


def test_what_stands_in_is_an_open_store_at_5000_feet_and_is_said() -> None:
    given = {"store_volume": "500 gal", "store_top": "190 °F", "lowest_useful": "130 °F", "design_load": "20,000 Btu/h"}
    sheet = sheet_of("stored-heat", **given)
    # ASHRAE's barometer at 5,000 ft is 12.228 psia, where IF97 boils at 202.83 °F.
    assert sheet.values["boiling"] == pytest.approx(kelvin(202.83), abs=0.1)
    assert any("5,000" in note and "side that warns" in note for note in sheet.notes)
    asked = next(advice.text for advice in sheet.advice if advice.code == "outlet-boils")
    assert "nobody gave" in asked and "System pressure" in asked


def test_a_danger_that_holds_at_best_stays_a_stop() -> None:
    # Open, and the place unknown: 195 + 25 = 220 °F boils at sea level too (211.95 °F); 185 + 25 = 210 °F does not.
    given = {key: text for key, text in example_of("stored-heat", 1).items() if key != "altitude"}
    hot = sheet_of("stored-heat", **(given | {"store_top": "195 °F", "charge_rise": "25 F°"}))
    warm = sheet_of("stored-heat", **(given | {"store_top": "185 °F", "charge_rise": "25 F°"}))
    assert {advice.level for advice in hot.advice if advice.code == "outlet-boils"} == {"stop"}
    assert {advice.level for advice in warm.advice if advice.code == "outlet-boils"} == {"caution"}


def test_the_plan_judges_the_same_way() -> None:
    given = {
        key: text for key, text in example_of("will-it-work").items() if key not in ("altitude", "system_pressure")
    }

    def water(store_top: str) -> str:
        sheet = sheet_of("will-it-work", **(given | {"store_top": store_top, "charge_rise": "25 F°"}))
        return next(verdict.status for verdict in sheet.verdicts if verdict.key == "water")

    assert water("190 °F") == "not checked"
    assert water("215 °F") == "stop"


def test_limits_of_physics_are_numbers() -> None:
    # A store as warm as its surroundings loses nothing, legs as warm as each other drive nothing.
    assert sheet_of("standby", store_top="75 °F", store_surroundings="75 °F").values["standby_loss"] == 0
    loop = sheet_of("gravity-loop", loop_supply="120 °F", loop_return="120 °F")
    assert loop.values["heat_moved"] == 0
    assert loop.values["flow"] == 0
    assert values("firing", room_output="0 Btu/h")["burns_per_day_at_design"] > 0
    assert values("room-heat", room_output="0 Btu/h")["steady_rise"] == 0


def test_a_highest_pressure_above_the_relief_setting_is_a_stop() -> None:
    given = example_of("expansion") | {"highest_rule": "typed", "highest": "40 psi", "relief_setting": "30 psi"}
    said = {advice.code: advice.level for advice in sheet_of("expansion", **given).advice}
    assert said["over-relief"] == "stop"


def test_water_that_never_boils_has_a_hottest_temperature() -> None:
    # A dump of 118,000 of 120,000 Btu/h leaves 2,000 Btu/h for 2 h, 4,000 Btu; 20 gal of 180 °F water take
    # 162.0 lb × 1.0024 Btu/(lb·°F) = 162.4 Btu for each degree: 24.6 °F over the 205 °F of the outlet.
    worked = values("power-cut", dump_output="118,000 Btu/h")
    assert worked["hottest_water"] == pytest.approx(kelvin(229.6), abs=0.2)
    assert values("power-cut")["hottest_water"] == pytest.approx(kelvin(205))
    # With no dump it boils, and is no hotter than that.
    assert values("power-cut", dump_output="0 Btu/h")["hottest_water"] == pytest.approx(kelvin(242.2), abs=0.1)
