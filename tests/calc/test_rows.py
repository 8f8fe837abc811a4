"""Many houses in one table: each row is what its worksheet says alone, and a bad row costs only itself."""

from __future__ import annotations

import csv
import io
from pathlib import Path

import pytest

from calc import rows
from calc.__main__ import main
from calc.answer import Typed, answer

FORTY = "name,store_volume,store_top,lowest_useful,load\n" + "".join(
    f'House {number},{300 + 20 * number} gal,180F,110 °F,"12,000 Btu/h"\n' for number in range(40)
)


def run(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, list[dict[str, str]], str]:
    code = main(words)
    said = capsys.readouterr()
    return code, list(csv.DictReader(io.StringIO(said.out.removeprefix(rows.BYTE_ORDER_MARK)))), said.err


@pytest.fixture
def file(tmp_path: Path) -> Path:
    return tmp_path / "houses.csv"


def test_each_row_is_its_worksheet(capsys: pytest.CaptureFixture[str], file: Path) -> None:
    file.write_text(FORTY, encoding="utf-8")
    code, table, wrong = run(capsys, "stored-heat", "--table", str(file))
    assert (code, wrong, len(table)) == (0, "", 40)
    for number, row in enumerate(table):
        given = {key: Typed(row[key]) for key in ("store_volume", "store_top", "lowest_useful", "load")}
        alone = answer("stored-heat", given)
        assert row["name"] == f"House {number}"
        heat = next(result.si for result in alone.results if result.key == "usable_heat")
        assert heat is not None
        # Six figures are printed; 1055.06 J are a Btu.
        assert float(row["usable_heat (Btu)"]) * 1055.05585262 == pytest.approx(heat, rel=1e-5)
        assert row["assumed"].split("; ") == list(alone.assumed)


def test_a_column_may_name_the_worksheet(capsys: pytest.CaptureFixture[str], file: Path) -> None:
    file.write_text("worksheet,altitude,store_volume\nboiling,5000 ft,\nstored-heat,,500\n", encoding="utf-8-sig")
    code, table, _ = run(capsys, "--table", str(file), "--units", "si")
    assert code == 0
    assert table[0]["boiling (°C)"] and not table[0]["usable_heat (kWh)"]
    assert table[1]["usable_heat (kWh)"]
    assert table[1]["store_volume"] == "500"


def test_a_bad_row_is_named_and_the_rest_is_done(capsys: pytest.CaptureFixture[str], file: Path) -> None:
    file.write_text("name,store_volume\ngood,500 gal\nbad,lots\nempty,\n=2+2,500 gal\n", encoding="utf-8")
    code, table, wrong = run(capsys, "stored-heat", "--table", str(file))
    assert code == 2
    assert wrong.splitlines() == [
        f"line 3: {table[1]['problem']}",
        "line 4: This row holds no numbers.",
    ]
    assert table[1]["problem"].startswith("store_volume: ")
    assert not table[2]["usable_heat (Btu)"], "a row without numbers is not the worked example"
    assert table[0]["usable_heat (Btu)"] == table[3]["usable_heat (Btu)"]
    assert table[3]["name"] == "'=2+2", "what came in is no formula in a spreadsheet"


@pytest.mark.parametrize(
    ("text", "words", "sentence"),
    [
        ("store_volume\n", ("stored-heat",), "a row for each house"),
        ("", ("stored-heat",), "a row for each house"),
        ("store_volum\n1\n", ("stored-heat",), "did you mean store_volume"),
        ("store_volume,store_volume\n1,2\n", ("stored-heat",), "Two columns are called store_volume"),
        ("store_volume\n1,000 gal\n", ("stored-heat",), "in quotes"),
        ("store_volume\n500\n", (), "Say which worksheet"),
        ("store_volume\n500\n", ("stord-heat",), "Did you mean stored-heat"),
        ("store_volume\n500\n", ("stored-heat", "store_top=180F"), "takes no other values"),
        ("store_volume\n500\n", ("stored-heat", "--json"), "takes no other values"),
        ("store_volume\n" + "500\n" * (rows.MOST_ROWS + 1), ("stored-heat",), "more than 10,000 rows"),
        ("name\n" + "x" * rows.LARGEST, ("stored-heat",), "larger than"),
        ('name\n"' + "x" * 200_000 + '"\n', ("stored-heat",), "not a table of comma-separated values"),
    ],
)
def test_a_file_that_is_no_table_is_refused_with_a_sentence(
    capsys: pytest.CaptureFixture[str], file: Path, text: str, words: tuple[str, ...], sentence: str
) -> None:
    file.write_text(text, encoding="utf-8")
    code = main([*words, "--table", str(file)])
    said = capsys.readouterr()
    assert code == 2
    assert sentence in said.err + said.out
    assert "Traceback" not in said.err


def test_a_file_that_is_not_there_or_not_text(capsys: pytest.CaptureFixture[str], file: Path) -> None:
    assert main(["stored-heat", "--table", str(file)]) == 2
    file.write_bytes(b"\xff\xfe\x00")
    assert main(["stored-heat", "--table", str(file)]) == 2
    assert "is no file" in (said := capsys.readouterr().err) or "There is no file" in said
