"""The command line: what it prints where, its exit codes, strict JSON, and a sentence for every mistake."""

from __future__ import annotations

import io
import json
import math
import subprocess
import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest

from calc.__main__ import main
from calc.answer import answer, answer_plan, link_of
from calc.chosen import in_whole
from calc.engine.plan import Entry, opened
from calc.engine.plan_file import LARGEST_FILE, write
from calc.worksheets import WORKSHEETS

ROOT = Path(__file__).resolve().parent.parent.parent
PLAN = {
    "indoor": Entry("68 F", "typed"),
    "store_volume": Entry("500 gal", "typed"),
    "store_top": Entry("180 F", "typical"),
    "lowest_useful": Entry("130 F", "link"),
    "design_load": Entry("30500 Btu/h", "computed", "house-load"),
}


@dataclass(frozen=True)
class Said:
    code: int
    out: str
    err: str

    @property
    def json(self) -> Any:
        """The output as strict JSON: no NaN, no infinity."""

        def refuse(name: str) -> float:
            raise AssertionError(f"{name} is not JSON")

        return json.loads(self.out, parse_constant=refuse)


Ask = Callable[..., Said]


@pytest.fixture
def ask(capsys: pytest.CaptureFixture[str]) -> Ask:
    """Runs the command line in this process."""

    def run(*words: str) -> Said:
        capsys.readouterr()
        try:
            code = main(words)
        except SystemExit as left:
            code = left.code if isinstance(left.code, int) else 1
        out, err = capsys.readouterr()
        assert "Traceback" not in out + err
        return Said(code, out, err)

    return run


@pytest.fixture
def plan_file(tmp_path: Path) -> Path:
    path = tmp_path / "plan.txt"
    path.write_text(write(PLAN), encoding="utf-8")
    return path


def run(*words: str, given: bytes = b"", options: tuple[str, ...] = ()) -> subprocess.CompletedProcess[bytes]:
    """Runs the command line as a person does, in a process of its own."""
    return subprocess.run(
        [sys.executable, *options, "-m", "calc", *words], cwd=ROOT, input=given, capture_output=True, check=False
    )


# ---- every option ------------------------------------------------------------------------------------------------


def test_without_words_it_lists_every_worksheet_once_by_guide(ask: Ask) -> None:
    said = ask()
    assert (said.code, said.err) == (0, "")
    named = [line.split()[0] for line in said.out.splitlines() if line.startswith("  ")]
    assert sorted(named) == sorted(WORKSHEETS)
    assert {line for line in said.out.splitlines() if not line.startswith(" ")} == {
        worksheet.guide for worksheet in WORKSHEETS.values()
    }


def test_describe_tells_what_each_worksheet_asks_and_answers(ask: Ask) -> None:
    report = ask("--describe", "--json").json
    assert [entry["worksheet"] for entry in report] == list(WORKSHEETS)
    for entry in report:
        assert {"inputs", "results", "sources"} <= entry.keys()
        for asked in entry["inputs"]:
            assert {"key", "kind", "unit", "default", "allowed", "label"} <= asked.keys()
    alone = ask("--describe", "stored-heat")
    assert alone.code == 0
    assert "store_volume" in alone.out
    assert "tank-size" not in alone.out
    wrong = ask("--describe", "stored-heet", "--json")
    assert wrong.code == 2
    assert [error["input"] for error in wrong.json["errors"]] == ["worksheet"]
    assert "Did you mean stored-heat" in wrong.json["errors"][0]["text"]


@pytest.mark.parametrize("key", WORKSHEETS)
def test_a_worksheet_alone_is_its_worked_example(ask: Ask, key: str) -> None:
    text = ask(key)
    assert (text.code, text.err) == (0, "")
    for part in ("Worked example.", "Inputs", "Results", "Working", "Sources", "Link: #v1;"):
        assert part in text.out
    report = ask(key, "--json").json
    sheet = answer(key, {})
    assert report["worksheet"] == key
    assert report["inputs"].keys() - WORKSHEETS[key].other_names.keys() == sheet.inputs.keys()
    for entry in report["inputs"].values():
        assert entry.keys() == {"si", "kind", "shown", "from"}
        assert entry["from"] in ("typical", "example")
    assert [result.key for result in sheet.results] == list(report["results"])
    for entry in report["results"].values():
        assert entry.keys() == {"si", "kind", "shown"}
        assert entry["si"] is None or entry["kind"] == "choice" or math.isfinite(entry["si"])
    for entry in report["advice"]:
        assert {"level", "code", "text", "source"} == entry.keys()
    assert {"working", "sources", "link"} <= report.keys()


def test_values_are_typed_as_in_the_page(ask: Ask) -> None:
    words = ("stored-heat", "store_volume=500 gal", "store_top=180F", "lowest_useful=110 °F", "--json")
    report = ask(*words).json
    assert report["inputs"]["store_volume"] == {
        "si": pytest.approx(500 * 3.785411784e-3, rel=1e-12),
        "kind": "volume",
        "shown": "500\u00a0gal",
        "from": "typed",
    }
    assert report["inputs"]["store_top"]["si"] == pytest.approx((180 + 459.67) * 5 / 9)
    assert report["rough"] is True


def test_units_decide_what_is_shown_and_what_bare_numbers_and_commas_mean(ask: Ask) -> None:
    us = ask("stored-heat", "store_volume=1,500", "--json").json
    assert us["inputs"]["store_volume"]["si"] == pytest.approx(1500 * 3.785411784e-3)
    si = ask("stored-heat", "store_volume=1500", "--units", "si", "--json").json
    assert si["inputs"]["store_volume"]["si"] == pytest.approx(1.5)
    assert si["results"]["usable_heat"]["shown"].endswith("kWh")
    doubtful = ask("stored-heat", "store_volume=1,500", "--units", "si", "--json")
    assert doubtful.code == 2
    assert "could be 1500 or 1.500" in doubtful.json["errors"][0]["text"]


def test_a_link_comes_back_as_the_sheet_it_was_made_from(ask: Ask) -> None:
    made = ask("stored-heat", "store_volume=600 gal", "--json").json
    opened = ask("--link", made["link"], "--json").json
    assert opened["results"] == made["results"]
    assert opened["link"] == made["link"]
    assert opened["inputs"]["store_volume"]["from"] == "link"
    assert opened["inputs"]["store_top"]["from"] == "typical"
    assert "link_problems" not in opened


def test_what_is_wrong_with_a_link_is_said_and_the_rest_is_computed(ask: Ask) -> None:
    link = link_of(answer("stored-heat", {})).replace("800gal", "5apples").removesuffix(";end")
    said = ask("--link", link)
    assert said.code == 0
    assert "cut off" in said.err
    assert "A number of this link is left out. Store volume" in said.err
    assert len(ask("--link", link, "--json").json["link_problems"]) == 2
    nothing = ask("--link", "#v1;nonsense;end", "--json")
    assert nothing.code == 2
    assert nothing.json["errors"][0]["input"] == "link"


# ---- mistakes ----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("words", "inputs", "text"),
    [
        (("nonsense",), ["worksheet"], "There is no worksheet called “nonsense”"),
        (("stored-heat", "store_volume=apples"), ["store_volume"], "Store volume must start with a number"),
        (("stored-heat", "store_volume=-5 gal"), ["store_volume"], "Store volume must be between"),
        (("stored-heat", "volume=5"), ["volume"], "no input called “volume”"),
        (("stored-heat", "store_volume"), ["store_volume"], "not of the form input=value"),
        (("stored-heat", "store_top=180F", "store_top=170F"), ["store_top"], "given twice"),
        (
            ("stored-heat", "store_volume=apples", "store_top=warm", "nonsense"),
            ["nonsense", "store_volume", "store_top"],
            "",
        ),
        (("--units", "metric"), [""], "Argument --units"),
        (("--nonsense",), [""], "--nonsense"),
        (("--link",), [""], "Argument --link"),
        (("--plan",), [""], "Argument --plan"),
        (("--link", "#v1;x;end", "--plan", "x"), [""], "do not go together"),
        (("--describe", "--plan", "x"), [""], "do not go together"),
    ],
    ids=lambda value: " ".join(value) if isinstance(value, tuple) else "",
)
def test_mistakes_are_sentences_every_one_at_once(
    ask: Ask, words: tuple[str, ...], inputs: list[str], text: str
) -> None:
    plain = ask(*words)
    assert (plain.code, plain.out) == (2, "")
    assert text in plain.err
    assert len(plain.err.strip().splitlines()) == len(inputs)
    sheet = ask(*words, "--json")
    assert (sheet.code, sheet.err) == (2, "")
    assert sheet.json.keys() == {"errors"}
    assert sorted(error["input"] for error in sheet.json["errors"]) == sorted(inputs)
    assert all(error.keys() == {"input", "text"} for error in sheet.json["errors"])
    assert text in " ".join(error["text"] for error in sheet.json["errors"])


@pytest.mark.parametrize("text", ["9**9**9 m", "1e400", "NaN", "5" * 10_000, "\x1b[31m5", "<b>5</b>", "=", "%s%n", "٣"])
def test_no_text_makes_a_traceback(ask: Ask, text: str) -> None:
    for words in ((f"store_volume={text}",), (f"{text}=5",), (text,)):
        assert ask("stored-heat", *words).code in (0, 2)
    assert ask("--link", text).code == 2
    assert ask(text or "x").code == 2


def test_stop_and_unworkable_are_answers_not_mistakes(ask: Ask) -> None:
    danger = ask("stored-heat", "store_top=215 °F", "system_pressure=0 psi", "--json")
    assert danger.code == 0
    assert "stop" in [advice["level"] for advice in danger.json["advice"]]
    useless = ask("stored-heat", "store_top=120 °F", "lowest_useful=130 °F", "--json")
    assert useless.code == 0
    assert "unworkable" in [advice["level"] for advice in useless.json["advice"]]
    assert useless.json["results"]["usable_heat"]["si"] == 0
    assert useless.json["results"]["usable_share"]["si"] in (0, None)


def test_the_links_of_a_chain_that_do_not_stand_are_advice_too(ask: Ask) -> None:
    report = ask("will-it-work", "water_output=60000", "dump_output=0", "--json").json
    said = {advice["code"]: advice["level"] for advice in report["advice"]}
    assert said["power-cut"] == "stop"
    levels = {"stop": "stop", "unworkable": "unworkable", "tight": "caution"}
    for verdict in report["verdict"]:
        assert said.get(verdict["link"]) == levels.get(verdict["status"])


def test_a_note_names_what_nobody_gave(ask: Ask) -> None:
    report = ask("stored-heat", "store_volume=500 gal", "--json").json
    notes = [advice["text"] for advice in report["advice"] if advice["level"] == "note" and advice["code"] == "rough"]
    assert report["rough"]
    assert len(notes) == 1
    assert all(label in notes[0] for label in report["assumed"])
    assert "rough" not in [advice["code"] for advice in ask("stored-heat", "--json").json["advice"]]


def test_choices_are_read_kindly_and_never_guessed(ask: Ask) -> None:
    for worksheet, typed, value in (
        ("tank-size", "stoking=by hand", "by-hand"),
        ("tank-size", "stoking=By_Hand", "by-hand"),
        ("standby", "store_inside=inside", "yes"),
        ("standby", "store_inside=outside", "no"),
        ("pipe", 'pipe_size=3/4"', "3/4"),
        ("pipe", "pipe_size=1 1/4", "1-1/4"),
        ("house-load", "fuel=heat pump", "heat-pump"),
    ):
        assert ask(worksheet, typed, "--json").json["inputs"][typed.partition("=")[0]]["si"] == value
    for worksheet, typed in (
        ("pipe", "pipe_kind=copper"),
        ("house-load", "fuel=electricity, "),
        ("wood-use", "species=a"),
    ):
        assert ask(worksheet, typed, "--json").code == 2


# ---- the plan ----------------------------------------------------------------------------------------------------


def test_a_plan_gives_its_values_and_every_worksheet_that_knows_some(ask: Ask, plan_file: Path) -> None:
    report = ask("--plan", str(plan_file), "--json").json
    assert report.keys() == {"plan", "worksheets", "problems"}
    assert report["plan"] == {
        key: {"text": entry.text, "from": entry.origin} | ({"by": entry.worksheet} if entry.worksheet else {})
        for key, entry in PLAN.items()
    }
    assert report["problems"] == []
    asked = {key for key, entry in WORKSHEETS.items() if PLAN.keys() & {field.key for field in entry.all_fields()}}
    assert report["worksheets"].keys() == asked
    origins = {key: entry["from"] for key, entry in report["worksheets"]["stored-heat"]["inputs"].items()}
    assert {key: origins[key] for key in ("store_volume", "store_top", "lowest_useful", "design_load")} == {
        "store_volume": "typed",
        "store_top": "typical",
        "lowest_useful": "link",
        "design_load": "computed",
    }


def test_what_it_prints_it_can_read_again(ask: Ask, plan_file: Path, tmp_path: Path) -> None:
    first = ask("--plan", str(plan_file), "--json")
    again = tmp_path / "again.json"
    again.write_text(first.out, encoding="utf-8")
    assert ask("--plan", str(again), "--json").json == first.json


def test_a_worksheet_takes_the_plan_s_numbers_and_others_in_their_place(ask: Ask, plan_file: Path) -> None:
    report = ask("--plan", str(plan_file), "stored-heat", "store_volume=800", "--json").json
    assert report["worksheets"].keys() == {"stored-heat"}
    inputs = report["worksheets"]["stored-heat"]["inputs"]
    assert inputs["store_volume"]["shown"] == "800\u00a0gal"
    assert inputs["lowest_useful"]["shown"] == "130\u00a0°F"
    assert report["plan"]["store_volume"] == {"text": "800 gal", "from": "typed"}
    text = ask("--plan", str(plan_file), "stored-heat", "store_volume=800")
    assert text.code == 0
    assert "Store volume: 800\u00a0gal (given)" in text.out
    assert "(from another worksheet)" in text.out


def test_the_plan_as_text_says_who_gave_what_and_what_is_out_of_date(ask: Ask, plan_file: Path) -> None:
    said = ask("--plan", str(plan_file))
    assert (said.code, said.err) == (0, "")
    assert "Lowest useful store temperature: 130\u00a0°F (from the link)" in said.out
    load = next(line for line in said.out.splitlines() if "[design_load]" in line)
    assert "from another worksheet, house-load; out of date, now" in load
    assert "stored-heat" in said.out
    assert "kW" in ask("--plan", str(plan_file), "--units", "si").out


def test_a_mistake_beside_a_plan_is_told_like_any_other(ask: Ask, plan_file: Path) -> None:
    for words, key in (
        (("stored-heat", "store_volume=apples"), "store_volume"),
        (("stored-heat", "nonsense=5"), "nonsense"),
        (("stored-heat", "store_top"), "store_top"),
        (("nonsense",), "worksheet"),
    ):
        said = ask("--plan", str(plan_file), *words, "--json")
        assert said.code == 2
        assert [error["input"] for error in said.json["errors"]] == [key]


WHOLE = write(PLAN)
FILES = {
    "from another program": (b"[settings]\nvolume = 500\n", "does not begin with"),
    "a web page": (b"<html><script>alert(1)</script></html>", "does not begin with"),
    "empty": (b"", "does not begin with"),
    "5 MB": (b"x" * 5_000_000, "far too large"),
    "5 MB, cut inside a character": ("°".encode() * 2_500_000, "far too large"),
    "5 MB that begins well": (WHOLE.encode() + b"#" * 5_000_000, "far too large"),
    "UTF-16": (WHOLE.encode("utf-16"), "not plain text in UTF-8"),
    "Latin-1": (WHOLE.replace("180 F", "180 °F").encode("latin-1"), "not plain text in UTF-8"),
    "a picture": (b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR", "not plain text in UTF-8"),
    "JSON of another form": (b'{"store_volume": 500}', "JSON of another form"),
    "deep JSON": (b"{" * 100_000, "JSON of another form"),
    "a thousand keys": (
        ("Stoke and Store plan 1\n" + "\n".join(f"key{n} = {n} | typed" for n in range(1000)) + "\nend\n").encode(),
        "far more values",
    ),
}


@pytest.mark.parametrize("name", FILES)
def test_a_file_that_is_no_plan_is_refused_in_one_sentence(ask: Ask, tmp_path: Path, name: str) -> None:
    content, words = FILES[name]
    path = tmp_path / "file"
    path.write_bytes(content)
    said = ask("--plan", str(path))
    assert (said.code, said.out) == (2, "")
    assert words in said.err
    assert len(said.err.strip().splitlines()) == 1
    sheet = ask("--plan", str(path), "stored-heat", "--json")
    assert sheet.code == 2
    assert [error["input"] for error in sheet.json["errors"]] == ["plan"]


def test_a_file_that_is_not_there_and_a_folder_are_named(ask: Ask, tmp_path: Path) -> None:
    assert "There is no file" in ask("--plan", str(tmp_path / "nothing.txt")).err
    assert "is a folder" in ask("--plan", str(tmp_path)).err
    assert ask("--plan", "a\0b").code == 2
    assert ask("--plan", "x" * 5000).code == 2


@pytest.mark.parametrize(
    ("spoilt", "word"),
    [
        (WHOLE.removesuffix("end\n"), "cut off"),
        (WHOLE.replace("500 gal", "<b>500</b>"), "left out"),
        (WHOLE.replace("indoor", "nonsense"), "no worksheet asks"),
        (WHOLE.replace("plan 1", "plan 9"), "another version"),
    ],
)
def test_what_is_wrong_in_a_plan_is_named_and_the_rest_is_used(
    ask: Ask, tmp_path: Path, spoilt: str, word: str
) -> None:
    path = tmp_path / "plan.txt"
    path.write_text(spoilt, encoding="utf-8-sig", newline="\r\n")
    said = ask("--plan", str(path), "stored-heat")
    assert said.code == 0
    assert word in said.err
    report = ask("--plan", str(path), "--json").json
    assert any(word in problem for problem in report["problems"])
    assert report["plan"]["lowest_useful"] == {"text": "130 F", "from": "link"}


# ---- as a person runs it -----------------------------------------------------------------------------------------


def test_output_is_utf_8_and_codes_are_the_shell_s() -> None:
    good = run("stored-heat", "store_top=180 °F", "--json")
    assert good.returncode == 0
    assert json.loads(good.stdout.decode("utf-8"))["inputs"]["store_top"]["shown"] == "180\u00a0°F"
    bad = run("stored-heat", "store_top=hot")
    assert (bad.returncode, bad.stdout) == (2, b"")
    assert bad.stderr.decode("utf-8").startswith("store_top: ")


def test_a_plan_comes_through_standard_input() -> None:
    done = run("--plan", "-", "stored-heat", "--json", given=WHOLE.encode())
    assert done.returncode == 0
    assert json.loads(done.stdout)["plan"]["store_volume"]["text"] == "500 gal"
    wrong = run("--plan", "-", given=b"\xff\xfe")
    assert wrong.returncode == 2
    assert b"UTF-8" in wrong.stderr


def test_standard_input_and_a_locked_file_in_this_process(
    ask: Ask, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    """The same as above without a process of its own; a file that one may not read is told apart from a wrong one."""
    monkeypatch.setattr(sys, "stdin", SimpleNamespace(buffer=io.BytesIO(WHOLE.encode())))
    assert ask("--plan", "-", "stored-heat", "--json").json["plan"]["store_volume"]["text"] == "500 gal"
    text = "é" * (2 * LARGEST_FILE)  # an odd number of bytes is read, so the last letter is cut in two
    monkeypatch.setattr(sys, "stdin", SimpleNamespace(buffer=io.BytesIO(text.encode())))
    assert "too large" in ask("--plan", "-").err

    def locked(*_: object) -> None:
        raise PermissionError

    monkeypatch.setattr("builtins.open", locked)
    assert "check that you may read it" in ask("--plan", str(tmp_path / "plan.txt")).err


def test_a_plan_that_contradicts_itself_says_where(ask: Ask, tmp_path: Path) -> None:
    path = tmp_path / "plan.txt"
    path.write_text(
        write({"indoor": Entry("50 F", "typed"), "design_outdoor": Entry("55 F", "typed")}), encoding="utf-8"
    )
    said = ask("--plan", str(path))
    assert said.code == 0
    line = next(line for line in said.out.splitlines() if line.startswith("  house-load "))
    assert "must be" in line


def test_it_works_without_docstrings_and_asserts_as_in_the_page() -> None:
    assert run("stored-heat", "--json", options=("-OO",)).stdout == run("stored-heat", "--json").stdout


def test_a_reader_who_has_had_enough_makes_no_traceback() -> None:
    with subprocess.Popen(
        [sys.executable, "-m", "calc", "--describe", "--json"], cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.PIPE
    ) as running:
        assert running.stdout
        assert running.stderr
        running.stdout.read(1)
        running.stdout.close()
        assert running.stderr.read() == b""


def test_the_whole_plan_is_judged_as_in_the_page(ask: Ask, tmp_path: Path) -> None:
    """With what its other worksheets find: taps that need hotter water than somebody gave leave less in the store."""
    given = {"lowest_useful": "120 °F", "store_volume": "500 gal", "tap_way": "coil", "tap_flow": "4 gal/min"}
    path = tmp_path / "plan.txt"
    entries = {key: Entry(text, "typed") for key, text in (given | {"taps_from_store": "yes"}).items()}
    path.write_text(write(entries), encoding="utf-8")
    report = ask("--plan", str(path), "--json", "will-it-work").json["worksheets"]["will-it-work"]
    whole, taken = in_whole(WORKSHEETS["will-it-work"], opened(entries))
    page = answer_plan(WORKSHEETS["will-it-work"], whole, "us", taken)
    assert report["inputs"]["lowest_useful"]["from"] == "computed"
    assert report["inputs"]["lowest_useful"]["si"] == page.inputs["lowest_useful"].si
