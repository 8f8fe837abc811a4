"""Links last: what any version wrote decodes to the same numbers for ever."""

from pathlib import Path

import pytest

from calc.answer import Typed, answer, link_of, open_link
from calc.engine import link
from calc.engine.link import Carried
from calc.engine.read import read
from calc.engine.typed import Reader
from calc.worksheets import WORKSHEETS
from tests.links import golden

FILES = sorted(golden.HERE.glob("v*.txt"))


def test_every_version_has_its_file_of_links() -> None:
    assert [path.name for path in FILES] == [f"v{version}.txt" for version in range(1, link.VERSION + 1)]


def test_every_worksheet_has_links_in_the_file_of_this_version() -> None:
    there = {line.split(";")[1] for line in golden.read(golden.HERE / f"v{link.VERSION}.txt")}
    missing = WORKSHEETS.keys() - there
    assert not missing, f"python -m tests.links.golden adds links of {', '.join(sorted(missing))}"


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_links_decode_to_the_same_numbers_for_ever(path: Path) -> None:
    links = golden.read(path)
    assert len(links) > 50
    for text, values in links.items():
        opened = link.read(text, WORKSHEETS)
        assert opened.problems == (), text
        worksheet = WORKSHEETS[opened.worksheet]
        inputs = read(worksheet, opened.given, Reader()).inputs
        renamed = {name: key for name, keys in worksheet.other_names.items() for key in keys if key in inputs}
        assert values
        for key, value in values.items():
            result = inputs[renamed.get(key, key)].si
            assert result == (pytest.approx(value, rel=1e-12, abs=1e-12) if isinstance(value, float) else value), (
                f"{key} of {text}"
            )


# ---- what nobody gave ---------------------------------------------------------------------------------------------


def test_what_followed_another_number_follows_it_after_a_link_too() -> None:
    """The sender gave a load and a need; who opens the link and changes them changes all that rests on them."""
    given = {"design_load": Typed("30,000"), "lowest_useful": Typed("170"), "store_volume": Typed("300")}
    sent = link.read(link_of(answer("tank-size", given)), WORKSHEETS).given
    now = {"design_load": Typed("20,000"), "lowest_useful": Typed("140")}
    assert answer("tank-size", sent | now).values == answer("tank-size", given | now).values
    # What somebody typed beside it is theirs, and stays.
    sent = link.read(link_of(answer("tank-size", given | {"load": Typed("25,000")})), WORKSHEETS).given
    assert sent["load"].text == "25000Btu/h"
    assert "load_during_burn" not in sent


def test_a_number_of_the_worked_example_is_nobody_s_after_a_link_either() -> None:
    given = {"water_output": Typed("60,000"), "lowest_useful": Typed("140"), "store_volume": Typed("500")}
    sheet = answer("tank-size", given)
    opened, _ = open_link(link_of(sheet))
    assert opened is not None
    origins = {key: entry.origin for key, entry in opened.inputs.items()}
    assert origins["design_load"] == sheet.inputs["design_load"].origin == "example"
    assert origins["store_top"] == "typical"
    assert opened.values == sheet.values


# ---- an older version: invented here, since the first is still the present one -----------------------------------


def _from_version_0(carried: Carried) -> Carried:
    """In an invented version 0 the store was called tank, and the worksheet tank-heat."""
    names = {"tank": "store_volume"}
    numbers = tuple((names.get(key, key), text, origin) for key, text, origin in carried.numbers)
    return Carried(carried.worksheet.replace("tank-heat", "stored-heat"), numbers)


OLD = "#v0;tank-heat;tank=500gal;store_top=170F~;lowest_useful=120F;end"


def test_an_older_link_is_brought_up_to_this_version() -> None:
    opened = link.read(OLD, WORKSHEETS, {0: _from_version_0})
    assert opened.problems == ()
    assert opened.worksheet == "stored-heat"
    assert opened.given == {
        "store_volume": Typed("500gal", "us", "link"),
        "store_top": Typed("170F", "us", "typical"),
        "lowest_useful": Typed("120F", "us", "link"),
    }


def test_the_chain_of_migrations_takes_one_version_after_the_other(monkeypatch: pytest.MonkeyPatch) -> None:
    def from_version_1(carried: Carried) -> Carried:
        """In an invented version 2 every temperature is asked in degrees Celsius, and the store in liters."""
        return carried._replace(numbers=tuple(number for number in carried.numbers if number[0] != "lowest_useful"))

    monkeypatch.setattr(link, "VERSION", 2)
    opened = link.read(OLD, WORKSHEETS, {0: _from_version_0, 1: from_version_1})
    assert list(opened.given) == ["store_volume", "store_top"]
    assert link.read(OLD.replace("#v0", "#v2"), WORKSHEETS, {}).problems[0].startswith("This link names a worksheet")


def test_a_version_without_a_way_to_this_one_is_refused_in_a_sentence() -> None:
    assert link.read(OLD, WORKSHEETS) == link.Opened("", {}, ("This link is of a version that this site never had.",))


def test_there_is_a_migration_for_every_version_before_this_one() -> None:
    assert sorted(link.MIGRATIONS) == list(range(1, link.VERSION))


def test_reading_the_same_link_twice_gives_the_same() -> None:
    assert link.read(OLD, WORKSHEETS, {0: _from_version_0}) == link.read(OLD, WORKSHEETS, {0: _from_version_0})


# ---- what is wrong with a link is named, and the rest is used ----------------------------------------------------

GOOD = "#v1;stored-heat;store_volume=500gal;store_top=180F~;lowest_useful=120F;design_load=20000Btu/h;end"


@pytest.mark.parametrize(
    ("spoilt", "word", "lost"),
    [
        (GOOD.replace("500gal", "5apples"), "left out. Store volume", "store_volume"),
        (GOOD.replace("500gal", "-5gal"), "Store volume must be", "store_volume"),
        (GOOD.replace("500gal", "1e99gal"), "Store volume must be", "store_volume"),
        (GOOD.replace("500gal", ""), "Store volume is empty", "store_volume"),
        (GOOD.replace("500gal", "%3Cimg%20src=x%20onerror=alert(1)%3E"), "left out. Store volume", "store_volume"),
        (GOOD.replace("store_volume", "nonsense"), "does not ask: “nonsense”", "store_volume"),
        (GOOD.replace("store_volume=500gal", "store_volume"), "Store volume is empty", "store_volume"),
        (GOOD.removesuffix("h;end"), "cut off", "design_load"),
    ],
)
def test_what_is_wrong_is_named_and_the_rest_is_used(spoilt: str, word: str, lost: str) -> None:
    opened = link.read(spoilt, WORKSHEETS)
    assert any(word in problem for problem in opened.problems), opened.problems
    good = link.read(GOOD, WORKSHEETS).given
    assert opened.given == {key: text for key, text in good.items() if key != lost}
    sheet, said = open_link(spoilt)
    assert sheet is not None
    assert not sheet.problems
    assert said == opened.problems
    assert "<" not in "".join(text.text for text in opened.given.values())


def test_a_link_whose_numbers_are_all_wrong_holds_none() -> None:
    sheet, said = open_link("#v1;stored-heat;store_volume=apples;end")
    assert sheet is None
    assert said[-1] == "This link holds no numbers."


def test_a_link_whose_marks_a_mail_program_escaped_says_the_same() -> None:
    plain = "#v1;stored-heat;store_volume=500gal;store_top=180F~;end"
    escaped = plain.replace(";", "%3B").replace("=", "%3D")
    assert link.read(escaped, WORKSHEETS) == link.read(plain, WORKSHEETS)
    assert link.read("https://warm.example/guides/storage/" + escaped, WORKSHEETS) == link.read(plain, WORKSHEETS)


@pytest.mark.parametrize("version", ["v" + "9" * 4301, "v", "9", "v-1", "v1.5", "v\N{SUPERSCRIPT ONE}"])
def test_what_is_no_version_is_told_in_a_sentence(version: str) -> None:
    opened = link.read(f"#{version};stored-heat;store_volume=500gal;end", WORKSHEETS)
    assert len(opened.problems) == 1
    assert not opened.given


def test_a_link_full_of_rubbish_is_told_in_a_few_sentences() -> None:
    empty = link.read("#v1;stored-heat;" + ";" * 7900 + "store_volume=500gal;end", WORKSHEETS)
    assert empty.given.keys() == {"store_volume"}
    assert empty.problems == ()
    strange = link.read("#v1;stored-heat;" + "".join(f"x{number}=1;" for number in range(900)) + "end", WORKSHEETS)
    assert len(strange.problems) == link.MOST_TOLD + 1
    assert strange.problems[-1] == f"{900 - link.MOST_TOLD} more things in this link cannot be used."
