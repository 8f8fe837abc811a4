"""Editions: those that are there can be used, and a mistake in one stops the build with a sentence."""

from __future__ import annotations

import dataclasses
import json
import os
import re
import shutil
import struct
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

import building
import edition
import toolchain
from calc.answer import answer
from calc.engine import plan
from calc.worksheets import WORKSHEETS
from edition import applied, declared, looks, schema, starting
from edition.offered import offered
from render.pages import sections

GOOD = """
name = "A dealer"
contact = "Come by."
units = "us"
currency = "USD"
hidden_guides = ["slab"]
logo = "logo.svg"
colours = { bar = "#5a1020", accent = "#7a1f5b", accent_dark = "#f0a8d8" }

[prices]
date = 2026-11-01
fuel_price_wood = "250 $/cord"

[[notes]]
text = "Ask the <county>."
says = "the county, 2026"

[[places]]
name = "The valley"
fills = { altitude = "3,000 ft", design_outdoor = "-5 °F" }

[[tanks]]
name = "500 gal"
fills = { store_volume = "500 gal" }
"""
RULE = """[[rules]]
worksheet = "tank-size"
says = "Ours."
of = "water_output"
each = "1 kW"
gives = "60 L"
"""
QUOTE = """[quote]
tax = "7 %"
valid_days = 30
lines = [{ what = "Delivery", price = "$250" }]
"""
GOOD += RULE + QUOTE
LOGO = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 2 2"><path d="M0 0h2v2z"/></svg>'
STOVES = 'name,water_output,burn_time,price\nLittle,"17,000 Btu/h",4 h,\nLarge,60000 Btu/h,,"$2,400"\n'
HOUSE = "Stoke and Store plan 1\nstore_volume = 500 gal | typed\nend\n"
ANSWERS = {
    "name": "The “Elm” \\ Hearth",
    "contact": "Come by.",
    "units": "si",
    "place": "Elm valley",
    "altitude": "300 m",
    "design_outdoor": "-12 °C",
}


def write(folder: Path, text: str = GOOD, **files: str | bytes) -> Path:
    """An edition in a folder of its own; `files` by their names, with _ for the point before a suffix."""
    place = folder / "mine"
    (place / "houses").mkdir(parents=True)
    for name, content in {"edition_toml": text, "logo_svg": LOGO, "appliances_csv": STOVES, **files}.items():
        path = place / re.sub(r"_(?=[a-z]+$)", ".", name)
        path.write_bytes(content if isinstance(content, bytes) else content.encode())
    return place


def refusal(place: Path) -> str:
    """The sentence with which an edition is refused."""
    with pytest.raises(edition.EditionError) as wrong:
        edition.read(place)
    return str(wrong.value)


def test_an_edition_is_read(tmp_path: Path) -> None:
    place = write(tmp_path)
    (place / "houses" / "elm.txt").write_text(HOUSE, encoding="utf-8")
    mine = edition.read(place)
    assert (mine.name, mine.site_name, mine.contact, mine.units) == ("A dealer", "A dealer", "Come by.", "us")
    assert mine.tanks == (edition.Stock("500 gal", {"store_volume": "500 gal"}, key="500-gal"),)
    assert mine.appliances == (
        edition.Stock("Little", {"water_output": "17,000 Btu/h", "burn_time": "4 h"}, key="little"),
        edition.Stock("Large", {"water_output": "60000 Btu/h"}, key="large", facts={"price": "$2,400"}),
    )
    assert mine.houses == {"Elm": {"store_volume": plan.Entry("500 gal", "typed")}}
    assert mine.logo == place / "logo.svg"
    assert {path.name for path in edition.files(place)} == {"edition.toml", "appliances.csv", "logo.svg", "elm.txt"}


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("name = ", "title = ", "mine/edition.toml holds what no edition has: title."),
        ('contact = "Come by."', "", "lacks contact: write how to reach you"),
        ('"A dealer"', f'"{"A dealer " * 5}"', "too many for the bar of a page: write a shorter one as site_name"),
        ('"us"', '"imperial"', "units must be one of us, si."),
        ("store_volume =", "stove_volume =", "no worksheet asks 'stove_volume'. Did you mean store_volume"),
        ('"500 gal" }', '"500 apples" }', "tanks, number 1, input store_volume: “500 apples” cannot stand here: Store"),
        ('"500 gal" }', '"500" }', "“500” has no unit: write 500 gal, if"),
        ('"500 gal" }', "500 }", "write the number with its unit in quotes"),
        ("fills = { store", "fill = { store", "tanks, number 1 holds what no edition has: fill. Did you mean fills?"),
        ("[[tanks]]", "[tanks", "mine/edition.toml cannot be read"),
        ("[[tanks]]", "[tanks]", "tanks: write each below a line [[tanks]]."),
        (', design_outdoor = "-5 °F"', "", "places, number 1 (The valley) lacks design_outdoor: a place needs it"),
        ('"slab"', '"safety"', "'safety' is none that can stand here"),
        ('"slab"', '"slap"', "'slap' is none that can stand here"),
        ("2026-11-01", '"last week"', "prices, date: write the day on which these prices held"),
        ("date = 2026-11-01", "", "prices lacks date: write the day on which these prices held"),
        ("250 $/cord", "-250 $/cord", "prices, fuel_price_wood: “-250 $/cord” cannot stand here: Price of firewood"),
        ("250 $/cord", "95 €/m³", "is in EUR and this edition's currency is USD"),
        ('"USD"', '"GBP"', "currency must be one of USD, EUR."),
        ('"#5a1020"', '"red"', "colours, bar: “red” is no colour: write a # and six digits"),
        (
            '"#5a1020"',
            '"#ffcc00"',
            "#ffcc00 and what stands on the bar or on an answer differ by 1.1 to 1, and to be read they must",
        ),
        ('"#7a1f5b"', '"#f0a8d8"', "colours, accent: #f0a8d8 and the light page differ by 1.7 to 1"),
        ('"#f0a8d8"', '"#7a1f5b"', "write a lighter colour"),
        ('"logo.svg"', '"../mine/logo.svg"', "is no name of a file here"),
        ('"logo.svg"', '"logo.png"', "there is no file logo.png in mine"),
        ('says = "the county, 2026"', "", "notes, number 1 lacks says: write who says so, and when"),
        ("Ask the <county>.", "a" * 2001, "has 2,001 characters"),
        (RULE, RULE.replace('"water_output"', '"roof"'), "rules, number 1, of must be one of"),
        (
            RULE,
            RULE.replace('"water_output"', '"insulation"'),
            "of: the worksheet tank-size does not ask insulation",
        ),
        (RULE, RULE.replace("1 kW", "0 kW"), "rules, number 1, each: “0 kW” is nothing"),
        (RULE, RULE.replace("60 L", "60 W"), "rules, number 1, gives: “60 W” cannot stand here"),
        (RULE, RULE.replace("60 L", "60"), "rules, number 1, gives: “60” has no unit: write 60 gal"),
        (QUOTE, QUOTE.replace("30", '"30"'), "valid_days: write for how many days a quote holds, as a whole number"),
        (QUOTE, QUOTE.replace("7 %", "170 %"), "quote, tax: “170 %” is no tax"),
        (QUOTE, QUOTE.replace("$250", "soon"), "quote, lines, number 1, price: “soon” cannot stand here"),
        ('currency = "USD"', "", "quote: say the currency of your prices"),
    ],
    ids=lambda value: str(value)[:20],
)
def test_a_mistake_in_an_edition_is_one_sentence(tmp_path: Path, old: str, new: str, says: str) -> None:
    assert old in GOOD
    assert says in refusal(write(tmp_path, GOOD.replace(old, new, 1)))


@pytest.mark.parametrize(
    ("table", "says"),
    [
        ("name,watter_output\nA,5 kW\n", "appliances.csv, row 1, column 2: no worksheet asks 'watter_output'. Did you"),
        ("name,water_output,water_output\nA,5 kW,6 kW\n", "row 1: two columns are called 'water_output': keep one."),
        ("water_output\n5 kW\n", "row 1: no column is called name"),
        (
            "name,water_output\nA,5 kW\nB,-5 kW\n",
            "row 3, column water_output: “-5 kW” cannot stand here: Average heat o",
        ),
        ("name,water_output\nA,5\n", "row 2, column water_output: “5” has no unit"),
        ("name,water_output\nA,5 kW\nA,6 kW\n", "row 3: 'A' stands also at mine/appliances.csv, row 2"),
        ("name,water_output\n,5 kW\n", "row 2, column name: write the name by which an appliance is picked"),
        ("name,water_output,burn_time\nA,,3 h\n", "row 2 (A) lacks water_output: an appliance needs it"),
        ("name,water_output\nA,17,000 Btu/h\n", "row 2 has 3 cells under 2 heads: write a number with a comma in quot"),
        (
            "name,key,water_output\nA,x,5 kW\nB,x,6 kW\n",
            "row 3, column key: “x” is also the key at mine/appliances.csv, row 2",
        ),
        ("name,key,water_output\nA,X Y,5 kW\n", "row 2, column key: “X Y” is no key for links"),
        ("name,water_output,price\nA,5 kW,-5 $\n", "row 2, column price: “-5 $” is below nothing"),
        (
            "name,water_output,price\nA,5 kW,€5\n",
            "row 2, column price: “€5” is in EUR and this edition's currency is USD",
        ),
        ("name,water_output,clearance_back\nA,5 kW,5 kg\n", "row 2, column clearance_back: “5 kg” cannot stand here"),
        ("name,water_output,weight\nA,5 kW,500\n", "row 2, column weight: “500” has no unit: write 500 lb"),
        ("name,water_output,documents\nA,5 kW,javascript:x\n", "row 2, column documents: “javascript:x” is no address"),
        ("name,water_output\nA,5 kW\n", "quote: nothing in the stock has a price"),
        ("", "appliances.csv is empty: write a first line"),
        (b"name,water_output\n\xff,5 kW\n", "appliances.csv is not in UTF-8: save it as “CSV UTF-8”."),
        (b"name,water_output\n" + b"A,5 kW\n" * 2001, "more than 2,000 rows"),
        (b"x" * 2_000_001, "larger than 2,000,000 bytes"),
    ],
    ids=lambda value: str(value)[-20:],
)
def test_a_mistake_in_a_table_is_named_with_its_row_and_column(tmp_path: Path, table: str | bytes, says: str) -> None:
    assert says in refusal(write(tmp_path, appliances_csv=table))


def test_a_table_may_have_semicolons_and_no_rows(tmp_path: Path) -> None:
    mine = edition.read(
        write(tmp_path, appliances_csv="\ufeffname;water_output;price\nA;5 kW;$5\n", tanks_csv="name\n")
    )
    assert mine.appliances == (edition.Stock("A", {"water_output": "5 kW"}, key="a", facts={"price": "$5"}),)
    assert [tank.name for tank in mine.tanks] == ["500 gal"]


def svg(inside: str) -> str:
    return LOGO.replace("</svg>", f"{inside}</svg>")


@pytest.mark.parametrize(
    ("logo", "says"),
    [
        (svg("<script>alert(1)</script>"), "holds a script"),
        (svg('<g onclick="alert(1)"/>'), "holds a script (onclick)"),
        (svg('<use href="https://else.example/a.svg#a"/>'), "points outside itself (href)"),
        (svg('<image href="data:,"/>'), "holds <image>"),
        (svg("<foreignObject/>"), "holds <foreignObject>"),
        (svg('<path fill="url(https://else.example/a)"/>'), "points outside itself (fill)"),
        (svg('<path style="fill:u\\72l(a)"/>'), "points outside itself (style)"),
        (svg("<style>@import 'a.css';</style>"), "points outside itself (style)"),
        (svg("<style>path{fill:url(a.svg)}</style>"), "points outside itself (style)"),
        ('<!DOCTYPE svg [<!ENTITY a "b">]>' + LOGO, "declares entities"),
        ('<?xml-stylesheet href="a.css"?>' + LOGO, "a style sheet of its own"),
        (LOGO.replace(' viewBox="0 0 2 2"', ""), "has no svg element with a viewBox"),
        (LOGO.replace("</svg>", ""), "cannot be read as SVG"),
        ("<html/>", "has no svg element"),
        (b"\xff\xfe", "is not in UTF-8"),
        (b" " * 20_000_000, "has 20,000,000 bytes, and every page would fetch it"),
    ],
    ids=lambda value: str(value)[:90][-30:],
)
def test_a_logo_that_is_more_than_a_drawing_is_refused(tmp_path: Path, logo: str | bytes, says: str) -> None:
    assert says in refusal(write(tmp_path, logo_svg=logo))


def test_a_drawing_with_its_own_colours_is_taken(tmp_path: Path) -> None:
    inside = '<defs><linearGradient id="a"/></defs><style>.b{fill:red}</style><path class="b" fill="url(#a)"/>'
    assert edition.read(write(tmp_path, logo_svg=svg(inside))).logo


def png(width: int) -> bytes:
    return looks.PNG + b"\0\0\0\rIHDR" + struct.pack(">II", width, 10) + b"\x08\0\0\0\0\0\0\0\0\0\0\0\0IEND\xaeB`\x82"


@pytest.mark.parametrize(
    ("logo", "says"),
    [
        (png(100), ""),
        (png(2001), "more than 2,000 pixels"),
        (png(100)[:-8], "no whole PNG"),
        (b"GIF89a", "no whole PNG"),
    ],
)
def test_a_picture_is_looked_at(tmp_path: Path, logo: bytes, says: str) -> None:
    place = write(tmp_path, GOOD.replace("logo.svg", "logo.png"), logo_png=logo)
    assert says in refusal(place) if says else edition.read(place).logo == place / "logo.png"


def test_contrast_is_the_standards() -> None:
    """WCAG 2.2 names 21 to 1 for black on white; #767676 is the lightest grey that passes on white, #777777 fails."""
    assert looks.contrast("#000000", "#ffffff") == pytest.approx(21)
    assert looks.contrast("#767676", "#ffffff") >= looks.CONTRAST > looks.contrast("#777777", "#ffffff")


def test_our_own_colours_would_be_taken() -> None:
    light, dark = looks.tokens("default"), looks.tokens("slate")
    looks.check_colours({"bar": light["bar"], "accent": light["link"], "accent_dark": dark["link"]}, "ours")


def test_a_mistake_in_a_house_is_named(tmp_path: Path) -> None:
    place = write(tmp_path)
    (place / "houses" / "elm.txt").write_text(HOUSE.replace("500 gal", "many"), encoding="utf-8")
    assert "elm.txt: Store volume" in refusal(place)


def test_an_edition_that_is_not_there(tmp_path: Path) -> None:
    assert "its file edition.toml is missing" in refusal(tmp_path / "nowhere")


@pytest.mark.parametrize("key", ["quillbrook", "ellerquist"])
def test_what_is_in_stock_can_be_used_at_every_worksheet(key: str) -> None:
    """Whatever a dealer picks, no worksheet refuses its numbers, in the units in which the desk sends them."""
    dealer = edition.load(key)
    for stock in (*dealer.places, *dealer.appliances, *dealer.tanks):
        entries = {name: plan.Entry(text, "typed", system=dealer.units) for name, text in stock.fills.items()}
        for worksheet in WORKSHEETS.values():
            given = plan.given_for(worksheet, entries)
            if given:
                told = answer(worksheet.key, given).problems
                assert [problem for problem in told if problem.key in stock.fills] == [], (
                    f"{stock.name}, {worksheet.key}"
                )


def test_prices_and_notes_stand_at_the_head_of_their_guides(tmp_path: Path) -> None:
    mine = edition.read(write(tmp_path))
    assert "Ask the &lt;county&gt;." in applied.notes(mine, "law")
    priced = applied.notes(mine, "cost")
    assert "Price of firewood: 250 $/cord" in priced and "1 November 2026" in priced
    assert "Choose under “Where the house stands” in the worksheet" in priced
    (places, *_) = offered(mine)["shelves"]
    assert places["items"][0]["fills"]["fuel_price_wood"] == "250 $/cord"
    (alone, *_) = offered(dataclasses.replace(mine, places=()))["shelves"]
    assert (alone["label"], alone["tells_apart"]) == ("Fuel prices", ["fuel_price_wood"])
    assert not applied.notes(mine, "storage")
    assert applied.with_prices(mine).places[0].fills["fuel_price_wood"] == "250 $/cord"


def test_the_example_of_a_record_stands_in_the_units_of_the_edition() -> None:
    house = next(iter(edition.load("quillbrook").houses.values()))
    us, si = (sections.record_page("A house", house, "0", system=system) for system in ("us", "si"))
    us, si = (page.partition("<h3>Answers</h3>")[2].partition("<h3>")[0] for page in (us, si))
    assert "Btu" in us and "kW" not in us
    assert "kW" in si and "Btu" not in si


def test_before_any_script_a_worksheet_stands_in_the_units_of_the_edition() -> None:
    us, si = (sections.worksheet_html("stored-heat", system) for system in ("us", "si"))
    us, si = (page.partition('data-slot="plate"')[2].partition("</output>")[0] for page in (us, si))
    assert "Btu" in us and "Wh" not in us
    assert "kWh" in si and "Btu" not in si


def test_the_guides_that_keep_people_from_harm_cannot_be_hidden() -> None:
    assert not set(declared.ALWAYS_SHOWN) & set(declared.hideable())
    for name in declared.ALWAYS_SHOWN:
        assert (declared.GUIDES / f"{name}.md").is_file()


def test_the_schema_takes_what_the_reader_takes() -> None:
    told = json.loads(schema.text())
    assert set(told["properties"]) == {item.key for item in declared.entries()}
    assert tomllib.loads(GOOD).keys() <= told["properties"].keys()
    assert set(told["$defs"]["fills"]["properties"]) == set(declared.inputs())
    assert told["properties"]["hidden_guides"]["items"]["enum"] == list(declared.hideable())


def test_the_schema_in_an_edition_is_kept_fresh(tmp_path: Path) -> None:
    place = write(tmp_path)
    schema.refresh(place)
    assert not (place / schema.NAME).exists(), "who does not want it does not get it"
    (place / schema.NAME).write_text("that of an older release", encoding="utf-8")
    schema.refresh(place)
    assert (place / schema.NAME).read_text(encoding="utf-8") == schema.text()


def test_a_started_edition_can_be_read_and_says_what_was_answered(tmp_path: Path) -> None:
    logo = tmp_path / "drawn.svg"
    logo.write_text(LOGO, encoding="utf-8")
    starting.start(tmp_path / "new", {**ANSWERS, "logo": str(logo), "bar": "#5a1020"})
    mine = edition.read(tmp_path / "new")
    assert (mine.name, mine.units, mine.places[0].name) == (ANSWERS["name"], "si", "Elm valley")
    assert mine.places[0].fills == {"altitude": "300 m", "design_outdoor": "-12 °C"}
    assert mine.logo and mine.told["colours"] == {"bar": "#5a1020"}
    more = starting.MORE.replace("# More that can be said: take the # away and write your own.\n", "").replace("# ", "")
    told = (tmp_path / "new" / "edition.toml").read_text(encoding="utf-8")
    assert starting.MORE.strip() in told
    with_more = told.replace(starting.MORE.strip(), more.replace("#\n", "\n").strip())
    (tmp_path / "new" / "edition.toml").write_text(with_more, encoding="utf-8")
    assert edition.read(tmp_path / "new").prices, "the lines that are offered as comments are good ones"


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"units": "metric"}, "units must be one of us, si"),
        ({"altitude": "-300 km"}, "altitude"),
        ({"logo": "nowhere.svg"}, "There is no file nowhere.svg"),
        ({"bar": "#ffffff"}, "write a darker colour"),
    ],
)
def test_answers_that_cannot_stand_leave_nothing_behind(tmp_path: Path, change: dict[str, str], says: str) -> None:
    with pytest.raises(edition.EditionError, match=re.escape(says)):
        starting.start(tmp_path / "new", {**ANSWERS, **change})
    assert list(tmp_path.iterdir()) == []
    (tmp_path / "new").mkdir()
    with pytest.raises(edition.EditionError, match="is there already"):
        starting.start(tmp_path / "new", ANSWERS)


def script(*words: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, str(toolchain.ROOT / "scripts" / words[0]), *words[1:]]
    return subprocess.run(
        command,
        env=toolchain.environment(),
        capture_output=True,
        encoding="utf-8",
        check=False,
        stdin=subprocess.DEVNULL,
    )


def test_the_scripts_refuse_with_a_sentence_and_no_traceback(tmp_path: Path) -> None:
    place = write(tmp_path, GOOD.replace('"us"', '"imperial"'))
    before = os.stat(building.SITE).st_mtime_ns if building.SITE.is_dir() else None
    for words in (["build", "--edition", str(place)], ["preview", "--edition", str(place)]):
        done = script(*words)
        assert done.returncode == 1
        assert done.stderr.strip() == "mine/edition.toml, units must be one of us, si.\nThe site was not built."
    done = script("new-edition", str(tmp_path / "new"), "--name", "A")
    assert done.returncode == 1
    assert "Nobody is here to ask: say --contact" in done.stderr
    assert (os.stat(building.SITE).st_mtime_ns if building.SITE.is_dir() else None) == before


def test_an_editions_files_make_another_site(tmp_path: Path) -> None:
    place = write(tmp_path)
    seen = [building.inputs_digest(), building.inputs_digest(place)]
    (place / "appliances.csv").write_text(STOVES.replace("Little", "Small"), encoding="utf-8")
    seen.append(building.inputs_digest(place))
    assert len(set(seen)) == 3


def test_an_edition_of_an_older_release_is_read_as_it_stands(tmp_path: Path) -> None:
    """The folder was written by scripts/new-edition of November 2026, before stock had keys and prices."""
    moved = tmp_path / "older-hearth"
    shutil.copytree(Path(__file__).parent / "moved" / "older-hearth", moved)
    (moved / schema.NAME).write_text("{}", encoding="utf-8")
    before = {path.name: path.read_bytes() for path in moved.iterdir()}
    mine = edition.read(moved)
    schema.refresh(moved)
    assert [(tank.key, tank.fills["store_volume"]) for tank in mine.tanks] == [("500-gal", "500 gal")]
    assert [(stove.key, stove.fills["water_output"]) for stove in mine.appliances] == [("elm-20", "17,000 Btu/h")]
    changed = {name for name, content in before.items() if (moved / name).read_bytes() != content}
    assert changed == {schema.NAME}
