"""The reader's own weather: EPW and CSV in the forms in which people have them, and what is refused, each in a sentence."""

import time
from collections.abc import Iterator
from datetime import datetime, timedelta

import pytest

from calc.__main__ import weather_text
from calc.answer import Typed, answer
from calc.physics import winter_weather
from calc.physics.winter_file import read_file
from calc.physics.winter_run import use_file
from calc.physics.winter_weather import LARGEST_FILE, NoYear
from tests.worksheets.asking import codes, example_of, values


@pytest.fixture(scope="module")
def celsius() -> list[float]:
    winter_weather.fetch_with(weather_text)
    return [round(kelvin - 273.15, 1) for kelvin in winter_weather.hours_of("burlington-vt")]


@pytest.fixture(autouse=True)
def _no_file_stays() -> Iterator[None]:
    yield
    use_file("")


def _table(
    celsius: list[float], form: str = "%Y-%m-%d %H:%M", mark: str = ",", head: str = "time,temperature (°C)"
) -> str:
    start = datetime(2023, 1, 1)
    rows = [f"{(start + timedelta(hours=hour)).strftime(form)}{mark}{value}" for hour, value in enumerate(celsius)]
    return "\n".join([head, *rows]) + "\n"


def _epw(celsius: list[float]) -> str:
    heads = ["LOCATION,Somewhere,VT,USA,TMY3,726170,44.47,-73.15,-5.0,101.0", *["DESIGN CONDITIONS,0"] * 6]
    heads.append("DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31")
    start = datetime(1999, 1, 1)
    rows = []
    for hour, value in enumerate(celsius):
        at = start + timedelta(hours=hour)
        rows.append(f"{at.year},{at.month},{at.day},{at.hour + 1},60,A7A7,{value},-5.0,70,101000")
    return "\n".join([*heads, *rows]) + "\n"


def _hours(text: str) -> list[float]:
    winter_weather.keep("file", text)
    return [round(kelvin - 273.15, 1) for kelvin in winter_weather.hours_of("file")]


def test_an_epw_file_and_tables_in_every_form_give_the_same_year(celsius: list[float]) -> None:
    fahrenheit = [round(value * 1.8 + 32, 2) for value in celsius]
    forms = {
        "epw": (_epw(celsius), ""),
        "iso": (_table(celsius), ""),
        "the letter T": (_table(celsius, "%Y-%m-%dT%H:%M:%SZ"), ""),
        "American": (_table(celsius, "%m/%d/%Y %I:%M %p"), ""),
        "tabs": (_table(celsius, mark="\t", head="time\ttemp"), "C"),
        "two columns": (_table(celsius, "%Y-%m-%d,%H:%M", head="date,time,temp_c"), ""),
        "no head": (_table(celsius).split("\n", 1)[1], "C"),
        "named unit": (_table(fahrenheit, head="time,temperature"), "F"),
        "unit in the head": (_table(fahrenheit, head="time,Outdoor temp °F"), ""),
        "day before month": (_table(celsius, "%d/%m/%Y %H:%M"), ""),
    }
    for name, (text, degrees) in forms.items():
        opened = read_file(text, degrees)
        assert _hours(opened.year) == pytest.approx(celsius, abs=0.051), name
        assert opened.said[0].startswith("Read "), name


def test_a_table_with_semicolons_and_decimal_commas(celsius: list[float]) -> None:
    start = datetime(2023, 1, 1)
    rows = [
        f"{(start + timedelta(hours=hour)):%d.%m.%Y %H:%M};{str(value).replace('.', ',')}"
        for hour, value in enumerate(celsius)
    ]
    assert _hours(read_file("\n".join(["Zeit;Temp", *rows]), "C").year) == celsius


def test_more_than_one_reading_an_hour_is_its_mean_and_of_two_years_the_later_counts(celsius: list[float]) -> None:
    twice = _table(celsius) + _table([value + 1 for value in celsius], "%Y-%m-%d %H:30").split("\n", 1)[1]
    assert _hours(read_file(twice).year) == pytest.approx([value + 0.5 for value in celsius], abs=0.051)
    later = _table([value + 3 for value in celsius]).replace("2023-", "2024-")
    both = _table(celsius) + later.split("\n", 1)[1]
    assert _hours(read_file(both).year) == pytest.approx([value + 3 for value in celsius], abs=0.051)


def test_a_leap_day_is_left_out_and_said(celsius: list[float]) -> None:
    start = datetime(2024, 1, 1)
    march = 24 * 59
    year = [*celsius[:march], *[20.0] * 24, *celsius[march:]]
    rows = [f"{start + timedelta(hours=hour)},{value}" for hour, value in enumerate(year)]
    opened = read_file("\n".join(["time,temperature", *rows]), "C")
    assert _hours(opened.year) == celsius
    assert any("29 February" in sentence for sentence in opened.said)


def test_small_gaps_are_filled_in_straight_lines_and_said(celsius: list[float]) -> None:
    lines = _table(celsius).split("\n")
    opened = read_file("\n".join([*lines[:101], *lines[104:]]))
    filled = _hours(opened.year)
    before, after = celsius[99], celsius[103]
    assert filled[100:103] == pytest.approx([before + (after - before) * step / 4 for step in (1, 2, 3)], abs=0.051)
    assert "3 hours were missing" in " ".join(opened.said)
    words = "\n".join([*lines[:101], lines[101].split(",")[0] + ",no reading", *lines[102:]])
    assert "1 hour was missing" in " ".join(read_file(words).said)


@pytest.mark.parametrize(
    ("spoil", "says"),
    [
        (lambda text: "", "empty"),
        (lambda text: "\0\1\2PNG", "no text"),
        (lambda text: "x" * (LARGEST_FILE + 1), "larger than 6 MB"),
        (lambda text: text[: len(text) // 2], "of the 8,760 hours"),
        (lambda text: "\n".join(text.split("\n")[:200] + text.split("\n")[230:]), "From 9 January on 30 hours are missing"),
        (lambda text: text.replace("time,temperature (°C)", "time,rain,wind").replace(" 00:00,", " 00:00,0,"), "No column is called temperature"),
        (lambda text: text.replace("temperature (°C)", "temperature"), "°C or °F"),
        (lambda text: text.replace("-", "x"), "No column holds a date and a time"),
        (lambda text: text.replace("2023-02-10", "2023-02-31"), "does not exist"),
        (lambda text: text.replace("2023-06-01 12:00", "yesterday"), "no date and time"),
        (lambda text: "\n".join(line.split(",")[0] + ",a lot" for line in text.split("\n")), "°C or °F"),
        (lambda text: "time,temperature °C\n" + "\n".join(line.split(",")[0] + ",warm" for line in text.split("\n")[1:]), "holds no numbers"),
        (lambda text: "time,temp °C\n" + "2023-01-01 00:00,1\n" * 130_000, "more than 120,000 rows"),
        (lambda text: "LOCATION,x\n1999,1,1,one,60,A7,3.0\n", "no hour of an EPW file"),
        (lambda text: "LOCATION,x\n", "holds no hours"),
        (lambda text: 'time,temperature °C\n2023-01-01 00:00,"' + "x" * 200_000, "cannot be read as a table"),
    ],
)  # fmt: skip
def test_what_is_no_year_is_refused_in_a_sentence_within_a_second(celsius: list[float], spoil, says: str) -> None:  # type: ignore[no-untyped-def]
    text = spoil(_table(celsius))
    began = time.process_time()
    with pytest.raises(NoYear) as refused:
        read_file(text)
    assert time.process_time() - began < 1
    assert says in str(refused.value)
    assert len(str(refused.value)) < 250


def test_fahrenheit_taken_for_celsius_is_noticed(celsius: list[float]) -> None:
    warm = [value * 1.8 + 32 for value in celsius]
    with pytest.raises(NoYear, match="Are they in °F"):
        read_file(_table(warm))


def test_a_winter_runs_with_the_file_and_says_when_none_is_open(celsius: list[float]) -> None:
    mine = example_of("winter-run") | {"weather": "file"}
    assert "no-file" in codes("winter-run", **mine)
    use_file(read_file(_epw(celsius)).year)
    same = values("winter-run", **mine)
    place = values("winter-run", **(example_of("winter-run") | {"weather": "place"}))
    assert same["year_degree_days"] == pytest.approx(place["year_degree_days"], rel=1e-6)
    assert (same["loads"], same["cold_hours"]) == (place["loads"], place["cold_hours"])
    # Another file behind the same choice is another winter.
    use_file(read_file(_epw([value - 5 for value in celsius])).year)
    assert values("winter-run", **mine)["loads"] > same["loads"]
    use_file("")
    sheet = answer("winter-run", {key: Typed(text) for key, text in mine.items()})
    assert sheet.values["loads"] is None
