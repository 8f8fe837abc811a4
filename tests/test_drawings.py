"""Drawings that show amounts show them true: what is drawn is held against what the worksheets compute."""

import html
import itertools
import json
import re
from pathlib import Path
from typing import Any

import pytest

import hooks
from calc.answer import Typed, answer
from calc.tables.year import MONTHS
from calc.units import HOUR, THIN, System, grouped
from calc.worksheets import WORKSHEETS
from render.drawings import scaled, shown
from render.drawings.piping.figure import Box, width_of
from render.pages.drawn import BUILT
from render.view import PARTS, picture

DRAWINGS = Path(__file__).resolve().parent.parent / "site_overrides/render/drawings/fixed"


def _numbers(pattern: str, drawing: str) -> list[tuple[str, ...]]:
    return re.findall(pattern, (DRAWINGS / drawing).read_text(encoding="utf-8"))


def test_the_arrows_of_the_house_are_as_thick_as_its_losses() -> None:
    # One unit of thickness is one percent of the whole, to a tenth of a unit.
    fern_lane = answer("house-load", {}).worksheet.examples[1].given
    values = answer("house-load", {key: Typed(text) for key, text in fern_lane.items()}).values
    drawn = {
        part: float(thick) for part, thick in _numbers(r'data-part="(\w+)" data-thick="([\d.]+)"', "house_loses.svg")
    }
    assert len(drawn) == 6
    for part, thick in drawn.items():
        loss, whole = values[part], values["conductance"]
        assert isinstance(loss, float)
        assert isinstance(whole, float)
        assert thick == pytest.approx(100 * loss / whole, abs=0.06), part


def test_the_fires_of_two_lightings_stand_where_the_worksheet_puts_them() -> None:
    # Twelve units of width an hour, from 20 on.
    values = answer("firing", {}).values
    ways = (
        ("sv-fill", "hours_to_charge", "hours_between_at_design", 2),
        ("sv-one", "burn_time", "hours_between_one_load", 4),
    )
    for mark, burning, between, count in ways:
        fires = _numbers(rf'class="sv-fire {mark}" x="([\d.]+)" y="\d+" width="([\d.]+)"', "two_lightings.svg")
        assert len(fires) == count
        for turn, (start, width) in enumerate(fires):
            hours, apart = values[burning], values[between]
            assert isinstance(hours, float)
            assert isinstance(apart, float)
            assert float(start) == pytest.approx(20 + 12 * turn * apart / HOUR, abs=0.15)
            assert float(width) == pytest.approx(12 * hours / HOUR, abs=0.1)


_BEFORE = {"sv-mid": 0.5, "sv-end": 1}  # the share of words that stands before their place


def _pictured() -> list[str]:
    return [key for key in WORKSHEETS if WORKSHEETS[key].picture]


def _drawn(key: str, given: dict[str, str], system: System = "us") -> str:
    sheet = answer(key, {name: Typed(text) for name, text in given.items()}, system)
    assert sheet.worksheet.picture
    return str(picture(sheet, sheet.worksheet.picture))


@pytest.mark.parametrize("system", ["us", "si"])
@pytest.mark.parametrize("key", _pictured())
def test_a_drawing_of_a_worksheet_says_its_numbers_in_words_and_nothing_leaves_its_frame(
    key: str, system: System
) -> None:
    if key == "winter-run":
        pytest.skip("a whole year is run for its calendar, which test_winter looks at")
    drawn = _drawn(key, {}, system)
    start, width, height = map(float, re.findall(r'viewBox="([\d.]+) 0 ([\d.]+) ([\d.]+)"', drawn)[0])
    texts = re.findall(r'<text class="([^"]+)" x="([\d.]+)" y="([\d.]+)">(.*?)</text>', drawn)
    (told,) = re.findall(r"<desc[^>]*>(.*?)</desc>", drawn)
    assert texts
    assert "None" not in drawn
    for look, x, y, words in texts:
        text = html.unescape(re.sub(r"<[^>]+>", "", words))
        long = width_of(text, bold="sv-b" in look)
        left = float(x) - long * next((share for end, share in _BEFORE.items() if end in look), 0)
        assert 0 < float(y) <= height, text
        assert start <= left <= start + width - long, text
        if key == "stored-heat":
            continue  # its scale and words stand apart; its text tells the temperatures
        for amount in re.findall(r"<tspan[^>]*>(.*?)</tspan>", words) or [text]:
            if any(unit in amount for unit in ("Btu", "kW", "gal", " L", "m³", "°", "ft", "%")):
                assert html.unescape(amount) in html.unescape(told), f"{amount} is not in the alternative text of {key}"


def test_six_sizes_are_as_long_as_they_are_large() -> None:
    sheet = answer("tank-size", {})
    assert sheet.worksheet.picture
    drawn = shown.bars(sheet, sheet.worksheet.picture)["bars"]
    sizes = [sheet.values[name] for name in sheet.worksheet.picture.values.values()]
    assert len(drawn) == len(sizes) == 7
    assert isinstance(sizes[0], float)
    for bar, size in zip(drawn, sizes, strict=True):
        assert isinstance(size, float)
        assert bar["long"] / drawn[0]["long"] == pytest.approx(size / sizes[0], abs=0.001)


@pytest.mark.parametrize(
    ("key", "field", "places"),
    [
        ("tap-water", "tap_way", {"plate": 2, "coil": 136, "sidearm": 270}),
        ("tanks-together", "joined", {"series": 4, "parallel": 204}),
        ("expansion", "expansion_kind", {"open": 4, "membrane": 204, "plain": 204}),
    ],
)
def test_the_frame_stands_round_the_way_that_was_chosen(key: str, field: str, places: dict[str, int]) -> None:
    chosen = next(entry for entry in WORKSHEETS[key].all_fields() if entry.key == field)
    assert {option.value for option in chosen.options} == places.keys()
    for way, place in places.items():
        assert f'class="sv-yours" x="{place}"' in _drawn(key, {field: way})


def test_a_drawing_without_a_number_says_none() -> None:
    assert "German law, by the firebox" not in _drawn("tank-size", {"firebox_known": "no"})
    assert "106\u00a0ft" in _drawn("heat-dump", {})


def _words_apart(drawn: str) -> None:
    boxes = {}
    for look, x, y, words in re.findall(r'<text class="([^"]+)" x="([\d.]+)" y="([\d.]+)">(.*?)</text>', drawn):
        text = html.unescape(re.sub(r"<[^>]+>", "", words))
        long = width_of(text, bold="sv-b" in look)
        left = float(x) - long * next((share for end, share in _BEFORE.items() if end in look), 0)
        boxes[text, x, y] = Box(left, float(y) - 12, left + long, float(y) + 3)
    for (first, box), (second, other) in itertools.combinations(boxes.items(), 2):
        assert not box.meets(other), f"{first[0]!r} and {second[0]!r}"


@pytest.mark.parametrize("system", ["us", "si"])
@pytest.mark.parametrize("key", [key for key in _pictured() if key != "winter-run"])
def test_no_words_of_a_drawing_stand_over_others(key: str, system: System) -> None:
    _words_apart(_drawn(key, {}, system))


def _words_within(drawn: str) -> None:
    start, width = map(float, re.findall(r'viewBox="([\d.]+) 0 ([\d.]+) ', drawn)[0])
    assert re.search(r"<title id=.*?</title>\s*<desc id=", drawn)
    for look, x, words in re.findall(r'<text class="([^"]+)" x="([\d.]+)" y="[\d.]+">(.*?)</text>', drawn):
        long = width_of(re.sub(r"<[^>]+>", "", words), bold="sv-b" in look)
        left = float(x) - long * next((share for end, share in _BEFORE.items() if end in look), 0)
        assert start <= left <= start + width - long, words


@pytest.mark.parametrize("path", sorted(DRAWINGS.glob("*.svg")), ids=lambda path: path.stem)
def test_no_words_of_a_fixed_drawing_stand_over_others_or_leave_its_frame(path: Path) -> None:
    drawn = re.sub(r'<tspan class="ss-si".*?</tspan>', "", path.read_text(encoding="utf-8"))  # as in US units
    _words_apart(drawn)
    _words_within(drawn)


@pytest.mark.parametrize("hidden", ["us", "si"])
@pytest.mark.parametrize("name", ["firebox", "store-day"])
def test_no_words_of_a_house_s_drawing_stand_over_others_or_leave_its_frame(name: str, hidden: str) -> None:
    drawn = re.sub(rf'<tspan class="ss-{hidden}".*?</tspan>', "", BUILT[name]())
    _words_apart(drawn)
    _words_within(drawn)


def test_logs_lie_as_high_in_a_firebox_as_the_tape_says() -> None:
    drawn, given = BUILT["firebox"](), {"firebox_volume": "3 ft3"}
    top, high = map(float, re.findall(r'class="sv-box" x="36" y="([\d.]+)" width="164" height="([\d.]+)"', drawn)[0])
    (door,) = map(float, re.findall(r'class="sv-mark sv-dash" d="M14 ([\d.]+)H', drawn))
    taped, promised = _values("firing", {}), _values("firing", given)
    assert (top + high - door) / high == pytest.approx(taped["firebox_volume"] / promised["firebox_volume"], abs=0.001)
    assert "93,600\u00a0Btu" in drawn
    assert "140,000\u00a0Btu" in drawn


def test_the_store_s_day_takes_its_hours_from_the_worksheet() -> None:
    drawn, values = BUILT["store-day"](), _values("firing", {})
    hills = re.findall(r'class="sv-edge" fill="[^"]+" d="M([\d.]+) 146L([\d.]+) 46L([\d.]+) 146Z"', drawn)
    assert len(hills) == 2
    for hill in hills:
        lit, out, empty = map(float, hill)
        assert (out - lit) / (empty - out) == pytest.approx(values["hours_to_charge"] / values["hours_cold"], abs=0.003)


def _parts(key: str, given: dict[str, str]) -> dict[str, Any]:
    sheet = answer(key, {name: Typed(text) for name, text in given.items()})
    assert sheet.worksheet.picture
    return dict(PARTS[sheet.worksheet.picture.name](sheet, sheet.worksheet.picture))


def _values(key: str, given: dict[str, str]) -> dict[str, float]:
    """The values that are numbers, in SI."""
    values = answer(key, {name: Typed(text) for name, text in given.items()}).values
    return {name: value for name, value in values.items() if isinstance(value, float)}


def test_the_water_in_a_log_is_as_long_as_its_share_and_a_block_stands_for_each_cord() -> None:
    drawn = _parts("wood-use", {"moisture": "45 %"})
    assert drawn["wet_at"] == pytest.approx(scaled.LOG_LEFT + 0.45 * scaled.LOG_WIDE)
    assert drawn["dry_at"] < drawn["green_at"] < drawn["wet_at"]
    volume = answer("wood-use", {"moisture": Typed("45 %")}).values["wood_volume"]
    assert isinstance(volume, float)
    whole = drawn["blocks"][0][1]
    assert sum(wide for _, wide in drawn["blocks"]) / whole == pytest.approx(volume / (128 * 0.3048**3), abs=0.02)


def test_steam_rises_only_where_the_worksheet_finds_that_water_boils() -> None:
    assert not any(_parts("boiling", {})["boils"].values())
    hot = {"store_top": "205 °F"}
    margins = answer("boiling", {key: Typed(text) for key, text in hot.items()}).values
    named = {"outlet": "outlet_margin", "high": "highest_margin", "store": "store_margin", "pump": "pump_margin"}
    boils = _parts("boiling", hot)["boils"]
    assert any(boils.values())
    assert not all(boils.values())
    for place, margin in named.items():
        left = margins[margin]
        assert isinstance(left, float)
        assert boils[place] == (left <= 0), place


def test_two_winters_are_as_long_as_they_are_dear() -> None:
    drawn, values = _parts("fuel-cost", {}), answer("fuel-cost", {}).values
    wood, now, hours, heat = (values[name] for name in ("cost_of_wood", "cost_now", "labour_price", "wood_heat_price"))
    assert isinstance(wood, float)
    assert isinstance(now, float)
    assert isinstance(hours, float)
    assert isinstance(heat, float)
    long = drawn["wood_long"] + drawn["hours_long"]
    assert long / drawn["now_long"] == pytest.approx(wood / now, abs=0.001)
    assert drawn["hours_long"] / long == pytest.approx(hours / heat, abs=0.001)
    assert "wood saves nothing" in _drawn("fuel-cost", {"fuel_price_wood": "900 $/cord"})
    assert "your hours" not in _drawn("fuel-cost", {"own_hours": "0 h"})


def test_a_mixture_that_turns_to_slush_ends_before_the_coldest() -> None:
    enough, thin = _parts("antifreeze", {"antifreeze": "45 %"}), _parts("antifreeze", {"antifreeze": "25 %"})
    assert enough["ice_long"] > enough["coldest_long"]
    assert thin["ice_long"] < thin["coldest_long"]
    assert enough["burst_long"] > enough["ice_long"]


def test_the_speed_in_a_pipe_ends_where_it_lies_between_nothing_and_its_limit() -> None:
    slow, fast = _parts("pipe", {}), _parts("pipe", {"pipe_size": "1/2"})
    values = answer("pipe", {}).values
    speed, limit = values["velocity"], values["velocity_limit"]
    assert isinstance(speed, float)
    assert isinstance(limit, float)
    assert slow["speed_long"] / (slow["limit_at"] - scaled.BAR_LEFT) == pytest.approx(speed / limit, abs=0.001)
    assert not slow["fast"]
    assert fast["fast"]
    assert fast["speed_long"] > fast["limit_at"]


@pytest.mark.parametrize("example", [0, 1])
def test_scale_and_rust_are_as_long_as_they_are_heavy(example: int) -> None:
    given = dict(WORKSHEETS["water-and-steel"].examples[example].given)
    bars, values = _parts("water-and-steel", given)["bars"], _values("water-and-steel", given)
    heaviest = values["scale_first"] + values["scale_make_up"]
    for part, name in (("scale", "scale"), ("rust", "rust")):
        assert bars[part]["first"] / scaled.BAR == pytest.approx(values[f"{name}_first"] / heaviest, abs=0.001)
        assert bars[part]["later"] / scaled.BAR == pytest.approx(values[f"{name}_make_up"] / heaviest, abs=0.001)
    allowed = values["hardness_limit"] / values["hardness"]
    assert (bars["allowed_at"] - scaled.BAR_LEFT) / bars["hard"] == pytest.approx(allowed, abs=0.001)


def test_soft_water_ends_before_the_line_of_the_guideline() -> None:
    bars = _parts("water-and-steel", {"hardness": "2 mg/L"})["bars"]
    assert bars["hard"] < bars["allowed_at"] - scaled.BAR_LEFT == scaled.BAR


@pytest.mark.parametrize("example", [0, 1])
def test_each_month_is_as_high_as_its_need_and_hatched_as_far_as_it_is_covered(example: int) -> None:
    given = dict(WORKSHEETS["other-heat"].examples[example].given)
    drawn, values = _parts("other-heat", given)["bars"], _values("other-heat", given)
    most = max(values[f"need_{month}"] for month in MONTHS)
    assert len(drawn) == 12
    for bar, month in zip(drawn, MONTHS, strict=True):
        need, used = ((scaled.MONTHS_FOOT - bar[part]) / scaled.MONTHS_HIGH for part in ("top", "covered"))
        assert need == pytest.approx(values[f"need_{month}"] / most, abs=0.001), month
        assert used == pytest.approx(values[f"used_{month}"] / most, abs=0.001), month


@pytest.mark.parametrize(("system", "mark"), [("us", ","), ("si", THIN)])
def test_numbers_under_axes_are_grouped_as_those_in_words(system: System, mark: str) -> None:
    charts = json.loads(hooks._drawn_charts(system))
    ticks = {
        tick
        for chart in charts.values()
        for size in ("wide", "narrow")
        for tick in re.findall(r">([\d.,\s]+)</text>", chart[size])
    }
    long = {tick for tick in ticks if len(re.sub(r"\D", "", tick.partition(".")[0])) > 3}
    assert long
    assert long == {grouped(re.sub(r"[^\d.]", "", tick), system) for tick in long}
    assert any(mark in tick for tick in long)
