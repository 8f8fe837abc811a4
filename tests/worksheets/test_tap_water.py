"""Worked by hand: the tap-water worksheet in its three ways, the definitions that pin it, and what it says when."""

import pytest

from calc.units import BTU, FAHRENHEIT_DEGREE, GALLON, HOUR
from tests.worksheets.asking import codes, example_of, kelvin, sheet_of, values

PER_DEGREE = BTU / HOUR / FAHRENHEIT_DEGREE
GPM = GALLON / 60
COIL = {
    "tap_way": "coil",
    "coil_rating": "60,000 Btu/h",
    "coil_store": "160 °F",
    "coil_cold_in": "50 °F",
    "coil_cold_out": "110 °F",
}
SIDEARM = {"tap_way": "sidearm", "tap_tank_volume": "50 gal", "tap_tank_temperature": "140 °F"}


def _three_ways(code: str, **typed: str) -> set[str]:
    given = {key: text for key, text in example_of("tap-water").items() if not key.startswith("plate_")}
    given = {key: text for key, text in given.items() if key not in ("primary_flow", "store_volume")}
    if code != "sidearm":
        given |= {"store_volume": "500 gal"}
    return {advice.code for advice in sheet_of("tap-water", **(given | typed)).advice}


def test_fern_lane_plate_by_hand() -> None:
    # Rated ends 160 - 125 = 35 and 110 - 50 = 60 °F: log mean 25 ÷ ln(60/35) = 46.38; 150,000 ÷ 46.38 = 3,234.
    # Streams there 3,000 and 2,000 Btu/h°F. Now 5 gpm × 495 = 2,475 and 2.5 × 498.3 = 1,246:
    # 2 × 3,234 ÷ ((3000/2475)^0.663 + (2000/1246)^0.663) = 6,468 ÷ (1.136 + 1.369) = 2,582. NTU 2.072, ratio 0.5034.
    # e^(-2.072 × 0.4966) = 0.3574; (1 - 0.3574) ÷ (1 - 0.5034 × 0.3574) = 0.7836. 48 + 62 ÷ 0.7836 = 127.1 °F.
    worked = values("tap-water")
    assert worked["rated_conductance"] == pytest.approx(3_234 * PER_DEGREE, rel=1e-3)
    assert worked["conductance"] == pytest.approx(2_582 * PER_DEGREE, rel=3e-3)
    assert worked["effectiveness"] == pytest.approx(0.7836, rel=2e-3)
    assert worked["store_needed"] == pytest.approx(kelvin(127.1), abs=0.2)
    # 500 gal × 8.20 Btu/gal°F × (170 - 127.1) = 175,900 Btu; at 1,246 × 62 = 77,250 Btu/h they last 136.6 min.
    assert worked["shower_minutes"] == pytest.approx(136.6 * 60, rel=0.005)
    # Three showers of eight minutes take 30,900 Btu; 4,100 Btu/°F: 170 - 7.5 = 162.5 °F.
    assert worked["store_after"] == pytest.approx(kelvin(162.5), abs=0.1)
    # At 127.1 °F the plate returns 127.1 - 77,250 ÷ 2,475 = 95.9 °F.
    assert worked["primary_return"] == pytest.approx(kelvin(95.9), abs=0.3)


def test_the_most_that_a_full_store_makes_is_just_made() -> None:
    flow = values("tap-water")["tap_flow_possible"]
    at_that_flow = values("tap-water", tap_flow=f"{flow / GPM:.9f} gpm")
    assert at_that_flow["store_needed"] == pytest.approx(kelvin(170), abs=0.01)


def test_a_coil_by_hand() -> None:
    # Rated ends 160 - 110 = 50 and 160 - 50 = 110 °F: 60,000 × ln(110/50) ÷ 60 = 788.5 Btu/h°F, at a stream of 1,000,
    # its mean of 80 °F being 80 °F under the store. 2.5 gpm are 1,246, their mean (48 + 110)/2 = 79 °F.
    # Try a store of 170 °F: drive (91/80)^0.293 = 1.0385, warmth ((629.67 + 538.67)/(619.67 + 539.67))^4 = 1.0314,
    # outside 1.0711; inside (1246/1000)^0.8 = 1.1924: 788.5 ÷ (0.3/1.1924 + 0.7/1.0711) = 871.1 Btu/h°F.
    # e^(-871.1/1246) = 0.4970; 48 + 62 ÷ 0.5030 = 171.3. Try 171.1: outside 1.0789, 875.7, 0.4952: 170.8.
    # At 170.9 both agree.
    worked = values_of(COIL)
    assert worked["rated_conductance"] == pytest.approx(788.5 * PER_DEGREE, rel=1e-3)
    assert worked["conductance"] == pytest.approx(875 * PER_DEGREE, rel=3e-3)
    assert worked["store_needed"] == pytest.approx(kelvin(170.9), abs=0.2)
    # At 2 gpm from a store at 160 °F and cold water at 50 °F it does what its rating says.
    rated = values_of(COIL | {"store_top": "160 °F", "cold_water": "50 °F", "tap_wanted": "110 °F"})
    assert rated["tap_flow_possible"] == pytest.approx(2.0 * GPM, rel=0.01)


def test_a_coil_gives_less_with_less_flow_and_a_cooler_store() -> None:
    usual, slower, cooler = (values_of(COIL | more) for more in ({}, {"tap_flow": "1 gpm"}, {"tap_wanted": "95 °F"}))
    assert slower["conductance"] < usual["conductance"]
    assert cooler["store_needed"] < usual["store_needed"]
    assert cooler["conductance"] < usual["conductance"]


def test_a_typed_conductance_is_taken_as_it_stands() -> None:
    # With 500 Btu/h°F for each gpm: 150 - 100 × e^(-800/1500) = 91.3 °F, 1.746 gpm for 110 °F;
    # a gallon of lukewarm water carries 0.7 % less than that 500 has it.
    lukewarm = {"store_top": "150 °F", "cold_water": "50 °F", "tap_wanted": "110 °F"}
    coil = {"tap_way": "coil", "exchanger_conductance": "800 Btu/h/F", "tap_flow": "3 gpm"}
    worked = values_of(lukewarm | coil)
    assert worked["exchanger_outlet"] == pytest.approx(kelvin(91.3), abs=0.25)
    assert worked["tap_flow_possible"] == pytest.approx(1.746 * GPM, rel=0.01)
    # A plate of 4,000 with 6 gpm from 150 °F: 5.60 gpm of 110 °F; from 160 °F 4 gpm leave at 131.4 °F.
    plate = {"tap_way": "plate", "exchanger_conductance": "4,000 Btu/h/F", "primary_flow": "6 gpm", "tap_flow": "4 gpm"}
    assert values_of(lukewarm | plate)["tap_flow_possible"] == pytest.approx(5.60 * GPM, rel=0.015)
    hotter = values_of(lukewarm | plate | {"store_top": "160 °F"})
    assert hotter["exchanger_outlet"] == pytest.approx(kelvin(131.4), abs=0.3)


@pytest.mark.parametrize("way", ["plate", "coil"])
def test_an_approach_is_what_the_store_needs_over_the_tap(way: str) -> None:
    given = {"tap_way": way, "tap_approach": "9 F°"} | ({"primary_flow": "5 gpm"} if way == "plate" else {})
    needed = values_of(given)["store_needed"]
    assert needed == pytest.approx(kelvin(110 + 9))
    # A store just so hot makes just that draw at just that temperature.
    at_that = values_of(given | {"store_top": f"{needed * 1.8 - 459.67:.6f} °F"})
    assert at_that["exchanger_outlet"] == pytest.approx(kelvin(110), abs=1e-3)
    assert at_that["tap_flow_possible"] == pytest.approx(2.5 * GPM, rel=1e-4)


def test_a_plate_cannot_come_closer_than_its_streams_allow() -> None:
    assert "impossible-approach" in _three_ways(
        "plate", tap_way="plate", tap_approach="2 F°", primary_flow="1 gpm", tap_flow="4 gpm"
    )
    assert "impossible-approach" not in _three_ways("plate", tap_way="plate", tap_approach="9 F°", primary_flow="5 gpm")


def test_a_sidearm_by_hand() -> None:
    # 0.7 × 50 gal × (140 - 48) ÷ (110 - 48) ÷ 2.5 gpm = 20.8 min. The store must be 140 + 15 = 155 °F.
    worked = values_of(SIDEARM)
    assert worked["shower_minutes"] == pytest.approx(20.77 * 60, rel=3e-3)
    assert worked["store_needed"] == pytest.approx(kelvin(155))
    # The shell could pass 100 Btu/h°F; its water moves too slowly for all of that, so that the tank takes some hours.
    assert 0.3 * 100 * PER_DEGREE < worked["whole_conductance"] < 100 * PER_DEGREE
    assert 3 * HOUR < worked["recovery"] < 12 * HOUR


def values_of(typed: dict[str, str]) -> dict[str, float]:
    given = {
        key: text
        for key, text in example_of("tap-water").items()
        if not key.startswith("plate_") and key != "primary_flow"
    }
    if typed["tap_way"] == "sidearm":
        given.pop("store_volume")
    result = sheet_of("tap-water", **(given | typed)).values
    return {key: float(value) for key, value in result.items() if isinstance(value, float | int)}


def test_the_hotter_need_sets_the_lowest_useful_water() -> None:
    assert values("tap-water")["lowest_useful"] == pytest.approx(values("tap-water")["store_needed"])
    assert values("tap-water", emitters_need="150 °F")["lowest_useful"] == pytest.approx(kelvin(150))


def test_a_store_at_a_floors_temperature_makes_no_hot_tap() -> None:
    sheet = sheet_of("tap-water", **(example_of("tap-water") | {"store_top": "100 °F", "tap_wanted": "120 °F"}))
    assert sheet.values["shower_minutes"] == 0
    assert sheet.values["tap_flow_possible"] == 0
    assert "too-cool" in {advice.code for advice in sheet.advice if advice.level == "unworkable"}


def test_scald_times_are_the_edges_of_what_is_printed() -> None:
    worked = values("tap-water", store_top="140 °F", tap_wanted="105 °F")
    assert (worked["scald_shortest"], worked["scald_longest"]) == (3.0, 6.0)


def test_ethylene_glycol_behind_one_wall_is_a_stop() -> None:
    poison = {"antifreeze_kind": "ethylene", "exchanger_wall": "single"}
    sheet = sheet_of("tap-water", **(example_of("tap-water") | poison))
    assert "poison" in {advice.code for advice in sheet.advice if advice.level == "stop"}
    assert "poison" not in codes("tap-water", antifreeze_kind="ethylene", exchanger_wall="double")


@pytest.mark.parametrize(
    ("code", "holds", "spared"),
    [
        ("scald", {"tap_wanted": "132 °F"}, {}),
        ("too-cool", {"store_top": "125 °F"}, {}),
        ("mixing-valve", {}, {"store_top": "119 °F"}),
        ("treated", {"antifreeze_kind": "propylene", "exchanger_wall": "single"}, {"antifreeze_kind": "propylene"}),
        ("taps-decide", {}, {"emitters_need": "150 °F"}),
        ("warm-tap", {"tap_wanted": "124 °F"}, {}),
        ("made-fresh", {}, {"tap_wanted": "132 °F", "antifreeze_kind": "ethylene", "exchanger_wall": "single"}),
    ],
)
def test_what_it_says_when(code: str, holds: dict[str, str], spared: dict[str, str]) -> None:
    assert code in codes("tap-water", **holds)
    if code != "made-fresh":  # the first two notes are always shown
        assert code not in codes("tap-water", **spared)


@pytest.mark.parametrize(
    ("code", "holds", "spared"),
    [
        ("bacteria", {"tap_tank_temperature": "125 °F"}, {}),
        ("sidearm-free", {}, {"store_top": "140 °F"}),
        ("tank-too-hot", {"store_top": "138 °F"}, {}),
        ("tank-too-cool", {"tap_tank_temperature": "105 °F"}, {}),
    ],
)
def test_what_it_says_of_a_sidearm(code: str, holds: dict[str, str], spared: dict[str, str]) -> None:
    assert code in _three_ways("sidearm", **(SIDEARM | holds))
    assert code not in _three_ways("sidearm", **(SIDEARM | spared))
