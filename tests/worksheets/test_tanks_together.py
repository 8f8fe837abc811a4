"""Worked by hand: the tanks-together worksheet, its limits, and what it says when."""

import pytest

from calc.answer import Typed, answer
from calc.units import BTU, GALLON, HOUR
from tests.worksheets.asking import codes, sheet_of, values

MINUTE = 60
SERIES = {"joined": "series", "between_tanks": "8 ft"}


def test_ridge_road_by_hand() -> None:
    # 2 × 400 gal = 800 gal; 185 − 130 = 55 °F × 8.16 Btu/gal°F × 800 = 359,000 Btu; ÷ 32,500 Btu/h = 11.05 h.
    # Layered down to 130 − 20 = 110 °F: 800 × 75 × 8.18 = 490,800 Btu.
    # 32,500 ÷ (20 °F × 491 Btu/h for each gal/min and °F) = 3.31 gal/min.
    # 6 and 16 ft of 1.025 in are 70 and 187 bores; about 12,000 Reynolds in each, where the Moody chart has 0.029:
    # 0.029 × 70 + 6 = 8.0 against 0.029 × 187 + 6 = 11.4, so flows are as √11.4 to √8.0: 54.4 % and 45.6 %.
    worked = values("tanks-together")
    assert worked["store_volume"] == pytest.approx(800 * GALLON)
    assert worked["usable_heat"] == pytest.approx(359_000 * BTU, rel=0.002)
    assert worked["hours_carried"] == pytest.approx(11.05 * HOUR, rel=0.002)
    assert worked["usable_heat_layered"] == pytest.approx(490_800 * BTU, rel=0.002)
    assert worked["flow"] == pytest.approx(3.31 * GALLON / MINUTE, rel=0.005)
    assert worked["nearest_share"] == pytest.approx(0.544, abs=0.005)
    assert worked["nearest_share"] + worked["farthest_share"] == pytest.approx(1)
    assert worked["pressure_near"] == pytest.approx(worked["pressure_far"], rel=1e-6)


def test_the_loss_by_hand() -> None:
    # Each: width ∛(4 × 1.514 m³ ÷ 1.5π) = 1.087 m, height 1.631 m; 0.1016 m of 0.03606 W/mK and a film of 8.5.
    # Side π × 1.631 ÷ (ln(1.1869) ÷ 0.07212 + 1 ÷ (8.5 × 1.290)) = 2.078 W/K;
    # ends π ÷ 2 × 1.182 ÷ (2.8175 + 0.1176) = 0.633 W/K. (2.078 + 0.633) × 80.56 K × 2 = 436.8 W = 1,490 Btu/h.
    # One of 3.028 m³: 1.370 m wide, 2.055 m high: 3.247 + 1.004 = 4.251 W/K × 80.56 K = 342.5 W.
    worked = values("tanks-together")
    assert worked["loss_together"] == pytest.approx(436.8, rel=0.002)
    assert worked["loss_one"] == pytest.approx(342.5, rel=0.002)
    assert worked["loss_ratio"] == pytest.approx(436.8 / 342.5, rel=0.002)
    assert worked["surface_factor"] == pytest.approx(1.26, rel=0.001)


def test_it_says_what_stored_heat_and_standby_say() -> None:
    ours = values("tanks-together")
    same = {"store_volume": "800 gal", "store_top": "185 °F", "lowest_useful": "130 °F", "design_load": "32,500 Btu/h"}
    heat = values("stored-heat", **same, water_drop="20 F°")
    for key in ("usable_heat", "usable_heat_layered", "hours_carried", "hours_carried_layered"):
        assert ours[key] == pytest.approx(heat[key])
    blanket = {"insulation": "4 in", "slenderness": "1.5", "conductivity": "0.25 Btuin/h/ft2/F", "fittings": "1"}
    place = {"store_kind": "closed", "store_surroundings": "40 °F", "store_inside": "no"}
    lost = values("standby", **blanket, **place, store_volume="800 gal", store_top="185 °F")
    assert ours["loss_one"] == pytest.approx(lost["standby_loss"])


def test_one_tank_is_one_tank() -> None:
    for joined in ({}, SERIES):
        worked = values("tanks-together", tank_count="1", nearest_branch="6 ft", farthest_branch="6 ft", **joined)
        assert worked["loss_together"] == pytest.approx(worked["loss_one"])
        # Mixed, its outlet reaches the lowest useful temperature when all of it has; water's heat content hardly bends.
        assert worked["usable_heat_joined"] == pytest.approx(worked["usable_heat"], rel=0.005)


def test_bare_tanks_lose_as_their_surface() -> None:
    for count in (2, 5):
        worked = values("tanks-together", tank_count=str(count), insulation="0 in")
        assert worked["loss_ratio"] == pytest.approx(count ** (1 / 3), rel=0.001)


def test_a_row_is_between_mixed_and_layered_and_grows_towards_layers() -> None:
    shares = []
    for count in (1, 2, 4, 12):
        worked = values("tanks-together", **SERIES, tank_count=str(count))
        assert worked["usable_heat"] * 0.99 < worked["usable_heat_joined"] < worked["usable_heat_layered"]
        shares.append(worked["usable_heat_joined"] / worked["usable_heat_layered"])
    assert shares == sorted(shares)


def test_two_in_series_by_hand() -> None:
    # Last useful water is (130 − 110) ÷ (185 − 110) = 26.67 % over the return. Two mixed tanks in a row keep
    # (1 + 2x)·e^(−2x) in the last: 26.67 % at x = 1.302. Left in both: (e^(−2x) + 26.67 %) ÷ 2 = (7.40 + 26.67) ÷ 2 %.
    worked = values("tanks-together", **SERIES)
    assert worked["end_share"] == pytest.approx(0.2667, abs=0.0001)
    assert worked["drawn_share"] == pytest.approx(1 - 0.1703, abs=0.0005)


def test_equal_ways_share_evenly() -> None:
    worked = values("tanks-together", tank_count="4", nearest_branch="10 ft", farthest_branch="10 ft")
    assert worked["nearest_share"] == pytest.approx(0.25)
    assert worked["layered_share"] == pytest.approx(1)


def test_a_typed_flow_decides() -> None:
    sheet = sheet_of("tanks-together", tank_count="2", tank_volume="300 gal", flow="6 gal/min")
    assert sheet.values["draw_known"] == "yes"
    assert sheet.values["flow"] == pytest.approx(6 * GALLON / MINUTE)


@pytest.mark.parametrize("text", ["2.5", "1.999", "2,5"])
def test_tanks_are_counted_in_whole_numbers(text: str) -> None:
    sheet = answer("tanks-together", {"tank_count": Typed(text)})
    assert [problem.key for problem in sheet.problems] == ["tank_count"]
    assert "whole number" in sheet.problems[0].text


@pytest.mark.parametrize("text", ["2", "2.0", "3 "])
def test_a_whole_number_may_be_written_with_a_point(text: str) -> None:
    assert not answer("tanks-together", {"tank_count": Typed(text)}).problems


@pytest.mark.parametrize(
    ("code", "holds", "spared"),
    [
        ("no-band", {"lowest_useful": "190 °F"}, {}),
        ("uneven", {}, {"farthest_branch": "7 ft"}),
        ("stirred", {}, {"diffuser": "diffuser"}),
        ("lying", {"position": "horizontal"}, {}),
        ("shut-off", {}, {"tank_count": "1"}),
        ("one-larger", {}, {"tank_count": "1"}),
        ("in-series", SERIES, {}),
        ("in-parallel", {}, SERIES),
    ],
)
def test_what_it_says_when(code: str, holds: dict[str, str], spared: dict[str, str]) -> None:
    assert code in codes("tanks-together", **holds)
    assert code not in codes("tanks-together", **spared)


def test_a_lying_tank_is_stirred_sooner() -> None:
    upright, lying = values("tanks-together"), values("tanks-together", position="horizontal")
    assert lying["richardson"] == pytest.approx(upright["richardson"] / 1.5)


def test_nothing_usable_is_nothing() -> None:
    given = {"tank_count": Typed("3"), "tank_volume": Typed("200 gal"), "lowest_useful": Typed("190 °F")}
    sheet = answer("tanks-together", given)
    for key in ("usable_heat", "usable_heat_joined", "usable_heat_layered", "hours_carried"):
        assert sheet.values[key] == 0
