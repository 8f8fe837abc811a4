"""Worked by hand: what the winter's worksheet makes of its record, a year of degree-days, and where its advice begins."""

from itertools import pairwise

import pytest

from calc.answer import answer
from calc.engine.effects import spread
from calc.engine.series import Series, series
from calc.engine.sweeping import swept
from calc.engine.typed import Reader
from calc.engine.values import record
from calc.physics import winter_weather
from calc.tables.places import BASES, PLACES
from calc.units import BTU, FAHRENHEIT_DEGREE, HOUR
from calc.worksheets import WORKSHEETS
from tests.worksheets.asking import codes, example_of, kelvin, sheet_of, values

SHEET = "winter-run"
CORD = 128 * 0.3048**3
TANK, EMITTERS, FIRES, UNCERTAIN = WORKSHEETS[SHEET].sweeps


def test_the_wood_and_the_balance_of_the_year_by_hand() -> None:
    # Every load gives the water 60,000 Btu/h and the room 8,000 for 4 h: 272,000 Btu.
    # Sugar maple: 66.4 % solid × 34.96 lb/ft³ (560 kg/m³) × 8,600 Btu/lb = 199,600 Btu/ft³ of stack; × 128 ft³ =
    # 25.6 MMBtu a cord, of which 68 % are used. (What is wet weighs more and holds less: ÷ 0.8 and × 0.8.)
    numbers = values(SHEET)
    assert numbers["fire_heat"] == pytest.approx(numbers["loads"] * 272_000 * BTU, rel=1 / numbers["loads"])
    cord = 128 * 0.028316846592
    heat = 0.664 * 560 * 8_600 * BTU / 0.45359237 * cord
    assert numbers["wood_volume"] == pytest.approx(numbers["fire_heat"] / (heat * 0.68) * cord, rel=0.01)
    # What the fire gave the water went to rooms, taps and standing losses, and what is left stands in the tank.
    to_water = numbers["loads"] * 240_000 * BTU
    went = numbers["rooms_heat"] + numbers["taps_heat"] + numbers["standby_heat"] + numbers["surplus_heat"]
    assert to_water == pytest.approx(went, rel=0.02)


def test_the_heat_of_the_rooms_is_that_of_their_degree_days() -> None:
    # 30,500 Btu/h ÷ 73 °F = 417.8 Btu/(h·°F); × 7,800 °F·day × 24 h = 78.2 MMBtu, from emitters, stove's room and store.
    numbers = values(SHEET)
    needed = 30_500 / 73 * 7_800 * 24 * BTU
    in_the_room = numbers["fire_heat"] * 8 / 68
    came = numbers["rooms_heat"] + in_the_room + numbers["standby_heat"]
    # Rooms that are warmer than wanted, in mild weeks with a fire, and windows opened then, take the rest.
    assert needed * 0.97 < came < needed * 1.08


def test_the_year_has_the_degree_days_that_were_typed_and_those_of_its_place() -> None:
    assert values(SHEET)["year_degree_days"] == pytest.approx(7_800 * FAHRENHEIT_DEGREE, rel=1e-9)
    own = values(SHEET, weather="place", base_temperature="65 °F")["year_degree_days"]
    assert own == pytest.approx(PLACES["burlington-vt"].degree_days[BASES[0]] * FAHRENHEIT_DEGREE, rel=1e-4)


@pytest.mark.parametrize("place", PLACES)
def test_every_place_has_a_year_with_the_degree_days_of_the_table(place: str) -> None:
    hours = winter_weather.hours_of(place)
    for base in BASES:
        result = winter_weather.degree_days(hours, kelvin(base)) / FAHRENHEIT_DEGREE
        assert result == pytest.approx(PLACES[place].degree_days[base], abs=0.6)
    assert winter_weather.design_temperature(hours) == pytest.approx(273.15 + PLACES[place].cold, abs=0.35)


def test_a_shaped_year_has_both_of_its_numbers_and_keeps_the_rank_of_its_hours() -> None:
    hours = winter_weather.hours_of("boston-ma")
    shaped = winter_weather.shaped(hours, kelvin(65), 4_500.0, 252.0)
    assert winter_weather.degree_days(shaped, kelvin(65)) == pytest.approx(4_500)
    assert winter_weather.design_temperature(shaped) == pytest.approx(252)
    coldest = sorted(range(len(hours)), key=hours.__getitem__)
    assert all(shaped[a] <= shaped[b] for a, b in pairwise(coldest))
    with pytest.raises(winter_weather.NoYear):
        winter_weather.shaped(hours, kelvin(65), 20_000.0, 280.0)


@pytest.mark.parametrize(
    ("text", "says"),
    [("1 2 3", "8760"), ("0 " * 8759 + "x", "no number"), ("900 " + "0 " * 8759, "outdoors"), ("", "has 0")],
)
def test_what_is_no_year_is_refused_in_a_sentence(text: str, says: str) -> None:
    with pytest.raises(winter_weather.NoYear, match=says):
        winter_weather.keep("boston-ma", text)


@pytest.mark.parametrize(
    ("given", "code"),
    [
        ({"store_volume": "300 gal"}, "cold"),
        ({"store_volume": "60 gal"}, "never-lit"),
        ({"water_output": "20,000 Btu/h"}, "fire-too-small"),
        ({"supply_water": "200 °F"}, "too-cool"),
        ({"design_outdoor": "40 °F"}, "no-year"),
        ({"away_days": "20", "away_from": "10"}, "frost"),
        ({"room_passes": "100 Btu/h/F"}, "hot"),
        ({"store_top": "215 °F", "system_pressure": "0 psi"}, "boiling"),
    ],
)
def test_what_is_said(given: dict[str, str], code: str) -> None:
    assert code in codes(SHEET, **given)


@pytest.mark.parametrize(
    "given",
    [{}, {"store_volume": "800 gal", "backup": "yes"}, {"room_passes": "5,000 Btu/h/F", "room_output": "0 Btu/h"}],
)
def test_what_is_not_said(given: dict[str, str]) -> None:
    assert not codes(SHEET, **given) & {"cold", "fire-too-small", "never-lit", "no-year", "too-cool", "frost"}


def test_impossible_habits_are_refused_with_the_field() -> None:
    for field, text in (("first_hour", "24"), ("loads_a_day", "0"), ("last_hour", "-1"), ("supply_water", "72 °F")):
        sheet = answer(SHEET, {key: _typed(value) for key, value in (example_of(SHEET) | {field: text}).items()})
        assert [problem.key for problem in sheet.problems] == [field]


def _typed(text: str):  # type: ignore[no-untyped-def]
    from calc.answer import Typed

    return Typed(text)


def test_a_slab_carries_the_house_and_its_hours_end_in_one_record() -> None:
    sheet = sheet_of(SHEET, **(example_of(SHEET) | _fern_lane()))
    year = record(sheet.course.steps, "loads", sheet.values)
    assert len(year.days) == 365
    assert sum(len(day.lit) for day in year.days) == sheet.values["loads"] == sum(month.loads for month in year.months)
    assert len(year.shown_top) == len(year.shown_outdoor) == 14 * 24
    assert isinstance(sheet.values["coldest"], float)
    assert sheet.values["coldest"] > kelvin(60)


def test_the_chart_shows_the_coldest_weeks_or_weeks_of_ones_own_or_the_whole_year() -> None:
    example = example_of(SHEET)
    whole = _charted(example | {"shown": "year"})
    assert [len(line.points) for line in whole.lines] == [365] * 3
    means = [outdoor for _, outdoor in whole.lines[-1].points]
    hourly = {
        name: _charted(example | chosen).lines[-1].points
        for name, chosen in {
            "coldest": {},
            "october": {"shown": "from", "shown_from": "300"},
            "late june": {"shown": "from", "shown_from": "181"},
        }.items()
    }
    means_of = {
        name: [sum(y for _, y in points[at : at + 24]) / 24 for at in range(0, 336, 24)]
        for name, points in hourly.items()
    }
    assert means_of["october"] == pytest.approx(means[118:132])  # 27 October, 118 days after 1 July
    assert means_of["late june"] == pytest.approx(means[-14:]), "weeks that would pass the end of June end with the run"
    assert sum(means_of["coldest"]) == pytest.approx(min(sum(means[at : at + 14]) for at in range(352)))


def _charted(given: dict[str, str]) -> Series:
    charted = series(sheet_of(SHEET, **given))
    assert charted
    return charted


def _fern_lane() -> dict[str, str]:
    return example_of(SHEET, 1) | {
        "design_load": "13,300 Btu/h",
        "store_volume": "500 gal",
        "water_output": "40,000 Btu/h",
    }


def test_a_run_is_made_once_for_all_that_is_read_from_it() -> None:
    from calc.physics.winter_run import year

    sheet_of(SHEET, **example_of(SHEET))
    before = year.function.cache_info()  # type: ignore[attr-defined]
    sheet_of(SHEET, **example_of(SHEET))
    after = year.function.cache_info()  # type: ignore[attr-defined]
    assert after.misses == before.misses
    assert after.hits > before.hits + 10


def test_the_load_of_the_coldest_hours_is_that_of_the_house() -> None:
    numbers = values(SHEET)
    assert numbers["conductance"] == pytest.approx(30_500 / 73 * BTU / HOUR / FAHRENHEIT_DEGREE)


def test_a_sweep_comes_a_point_at_a_time_and_names_the_knee() -> None:
    sheet = answer(SHEET, {})
    first = swept(sheet, TANK, 1)
    assert first is not None
    assert len(first.table.rows) == 1
    assert not first.said
    whole = swept(sheet, TANK, first.points)
    assert whole is not None
    assert len(whole.table.rows) == first.points == 8
    assert whole.table.rows[0] == first.table.rows[0]
    assert whole.table.rows[3][1] == f"{sheet.values['loads']:.0f}", "its own tank is one of them"
    # By hand: 1 % of 475 hours are 4.75, and the first tank with fewer is the one of 640 gal.
    assert "Beyond 640" in whole.said[-1]


def test_another_200_gallons_are_told_in_a_sentence() -> None:
    whole = swept(answer(SHEET, {}), TANK, 8)
    assert whole is not None
    # 800 + 200 gal is the point of the table that stands behind the reader's own.
    assert whole.table.rows[4][0].startswith("1,000")
    coldest = [row[3] for row in whole.table.rows[3:5]]
    assert whole.said[0].replace("\u00a0", " ").startswith("With 200 gal more, 1,000 gal in all: ")
    assert f"goes from {coldest[0]} to {coldest[1]}" in whole.said[0]


def test_twice_the_emitters_need_the_supply_of_the_curve() -> None:
    # Baseboards, 140 °F with 12 F° of drop: mean 134, 66 F° above 68. Twice as many: 66 × 0.5^(1/1.4) = 40.2, so 114.2.
    assert values(SHEET, emitter_times="2")["supply_sized"] == pytest.approx(kelvin(68 + 66 * 0.5 ** (1 / 1.4) + 6))
    assert values(SHEET)["supply_sized"] == pytest.approx(kelvin(140))
    whole = swept(answer(SHEET, {}), EMITTERS, 8)
    assert whole is not None
    assert [row[0] for row in whole.table.rows] == ["0.6", "0.8", "1", "1.25", "1.5", "2", "3"]
    assert codes(SHEET, emitter_times="0.5") & {"too-cool"}, "66 × 2^(1/1.4) is 108 F° above the rooms"
    floor = answer(SHEET, {key: _typed(text) for key, text in example_of(SHEET, 1).items()})
    assert swept(floor, EMITTERS, 8) is None, "a floor's own slab decides what it gives"


def test_more_fires_a_day_end_where_its_box_ends() -> None:
    whole = swept(answer(SHEET, {}), FIRES, 8)
    assert whole is not None
    assert [row[0] for row in whole.table.rows] == ["1", "2", "3", "4", "5", "6"]
    most = example_of(SHEET) | {"loads_a_day": "24"}
    assert swept(answer(SHEET, {key: _typed(text) for key, text in most.items()}), FIRES, 1).points == 7  # type: ignore[union-attr]


def test_the_longest_bar_is_that_of_the_number_to_find_out() -> None:
    sheet = answer(SHEET, {})
    bars = spread(sheet, UNCERTAIN, {}, 40, Reader())
    assert bars is not None
    assert bars.points == len(bars.bars)
    assert bars.bars[0].label in bars.said
    lengths = [bar.length for bar in bars.bars]
    assert all(before >= after - 0.2 for before, after in pairwise(lengths)), "to a tenth of a percent"
    # Of 15 % more heat output a load, 15 % fewer are burnt, and the wood is the same; of 15 % more house, 15 % more.
    load = next(bar for bar in bars.bars if bar.key == "design_load")
    cords = [values(SHEET, design_load=text)["wood_volume"] / CORD for text in ("25,925 Btu/h", "35,075 Btu/h")]
    assert load.told.replace("\u00a0", " ").startswith(
        f"Stacked wood for a winter: {cords[0]:.1f} cords to {cords[1]:.1f} cords"
    )


def test_a_range_of_the_readers_own_moves_its_bar_and_a_wrong_one_is_told() -> None:
    sheet = answer(SHEET, {})
    own = spread(sheet, UNCERTAIN, {"design_load": ("30,000", "31,000"), "store_loss": ("much", "3")}, 40, Reader())
    usual = spread(sheet, UNCERTAIN, {}, 40, Reader())
    assert own is not None
    assert usual is not None
    bars, before = ({bar.key: bar for bar in spread.bars} for spread in (own, usual))
    assert bars["design_load"].length < before["design_load"].length
    assert bars["store_loss"].wrong.startswith("Heat the store loses for each degree")
    assert bars["store_loss"].low == "much"
    assert spread(answer(SHEET, {"store_volume": _typed("words")}), UNCERTAIN, {}, 1, Reader()) is None


def test_a_sweep_that_changes_nothing_says_so() -> None:
    warm = swept(
        answer(SHEET, {key: _typed(text) for key, text in (example_of(SHEET) | {"backup": "yes"}).items()}), TANK, 8
    )
    assert warm is not None
    assert "does not decide it" in warm.said[-1]
    assert swept(answer(SHEET, {"store_volume": _typed("words")}), TANK, 1) is None
