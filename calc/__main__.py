"""Worksheets at a command line.

    python -m calc                                  every worksheet, one line each
    python -m calc --describe [--json] [worksheet]  what each asks and answers
    python -m calc stored-heat                      the worked example
    python -m calc stored-heat store_volume="500 gal" store_top=180F --units us --json
    python -m calc --link "#v1;stored-heat;…;end"   what a shared link says
    python -m calc --plan FILE [--json]             a saved plan: its values, and the worksheets that know them
    python -m calc --plan FILE stored-heat store_top=170F
                                                    a worksheet with the plan's numbers, and others in their place
    python -m calc stored-heat --table houses.csv   a row for each house, its results behind it, as CSV
    python -m calc winter-run --weather year.epw [--degrees F]
                                                    the hours of one's own EPW or CSV file

FILE is what the page saves or what --plan --json prints; - reads it from standard input.

Exit 0, or 2 when the input is wrong: then a sentence for each mistake on standard error, or with --json
{"errors": [{"input", "text"}]} on standard output.
"""

import argparse
import csv
import json
import os
import sys
from collections.abc import Sequence
from typing import Any, NoReturn

from calc import rows
from calc.answer import Typed, UnknownWorksheet, answer, answer_plan, open_link
from calc.chosen import in_whole
from calc.engine import plan, plan_file
from calc.engine.sheet import Sheet
from calc.engine.typed import Reader
from calc.engine.worksheet import Worksheet
from calc.physics import winter_weather
from calc.physics.winter_file import read_file
from calc.physics.winter_run import use_file
from calc.report import as_json, as_text, describe, plan_as_json, plan_as_text
from calc.units import SYSTEMS, System
from calc.worksheets import WORKSHEETS


def weather_text(place: str) -> str:
    """The typical year of a place, as the text that lies beside this file."""
    name = os.path.join(os.path.dirname(os.path.abspath(__file__)), "weather", f"{place}.txt")
    with open(name, encoding="utf-8") as file:
        return file.read()


class _Parser(argparse.ArgumentParser):
    """A parser that reports a wrong option in the same form as any other mistake."""

    json_wanted = False

    def error(self, message: str) -> NoReturn:
        sys.exit(_refuse([("", message[:1].upper() + message[1:] + ".")], self.json_wanted))


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command line; returns the exit code."""
    words = list(sys.argv[1:] if arguments is None else arguments)
    winter_weather.fetch_with(weather_text)
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(encoding="utf-8")
    parser = _Parser(prog="python -m calc", description="Worksheets for wood-fired water heating.", allow_abbrev=False)
    parser.json_wanted = "--json" in words
    parser.add_argument("worksheet", nargs="?", help="its key, such as stored-heat")
    parser.add_argument("values", nargs="*", metavar="input=value", help='such as store_volume="500 gal"')
    parser.add_argument("--units", choices=SYSTEMS, default="us", help="units shown, and meant by bare numbers")
    parser.add_argument("--json", action="store_true", help="print JSON")
    parser.add_argument("--describe", action="store_true", help="print inputs, results and sources")
    parser.add_argument("--link", metavar="LINK", help='open a shared link, "#v1;…;end"')
    parser.add_argument("--plan", metavar="FILE", help="use the numbers of a saved plan; - reads standard input")
    parser.add_argument("--table", metavar="FILE", help="answer each row of a CSV file; - reads standard input")
    parser.add_argument("--weather", metavar="FILE", help="an EPW or CSV file of hourly outdoor temperatures")
    parser.add_argument("--degrees", choices=("C", "F"), default="", help="the unit of that CSV file's temperatures")
    asked = parser.parse_intermixed_args(words)
    alone = [name for name in ("link", "describe", "plan", "table") if getattr(asked, name) not in (None, False)]
    if len(alone) > 1:
        parser.error(f"--{alone[0]} and --{alone[1]} do not go together")
    if asked.link is not None:
        opened, said = open_link(asked.link, asked.units)
        if opened is None:
            return _refuse([("link", text) for text in said], asked.json)
        return _print(opened, asked.json, said)
    if asked.describe:
        return _describe(asked.worksheet, asked.units, asked.json)
    if asked.table is not None:
        return _table(asked)
    if asked.worksheet is None and asked.plan is None:
        return _list()
    given, problems = _given(asked)
    if asked.weather is not None:
        try:
            own_year = read_file(
                _file_text(asked.weather, 4 * winter_weather.LARGEST_FILE + 1, "replace"), asked.degrees
            )
        except (_Unreadable, winter_weather.NoYear) as wrong:
            return _refuse([("weather", str(wrong))], asked.json)
        use_file(own_year.year)
        for sentence in own_year.said:
            print(sentence, file=sys.stderr)
        given.setdefault("weather", Typed(winter_weather.FILE, asked.units))
    if asked.plan is not None:
        return _plan(asked, given, problems)
    try:
        sheet = answer(asked.worksheet, given, asked.units)
    except UnknownWorksheet as unknown:
        return _refuse([("worksheet", unknown.sentence)], asked.json)
    if problems or sheet.problems:
        return _refuse(problems + [(problem.key, problem.text) for problem in sheet.problems], asked.json)
    return _print(sheet, asked.json, ())


def _given(asked: argparse.Namespace) -> tuple[dict[str, Typed], list[tuple[str, str]]]:
    """The values on the command line, and what is wrong with their form."""
    given: dict[str, Typed] = {}
    problems: list[tuple[str, str]] = []
    for pair in asked.values:
        key, mark, text = pair.partition("=")
        if not mark:
            problems.append((key[:60], f"“{pair[:60]}” is not of the form input=value, such as store_volume=500gal."))
        elif key in given:
            problems.append((key[:60], f"{key[:60]} is given twice; give it once."))
        else:
            given[key] = Typed(text, asked.units)
    return given, problems


def _plan(asked: argparse.Namespace, given: dict[str, Typed], problems: list[tuple[str, str]]) -> int:
    """A plan with the worksheets that know its numbers, or with the one that was named."""
    try:
        text = _file_text(asked.plan, 4 * plan_file.LARGEST_FILE + 1)  # UTF-8 has at most four bytes for a character
    except _Unreadable as wrong:
        return _refuse([("plan", str(wrong))], asked.json)
    opened = plan_file.read(text, WORKSHEETS.values())
    if opened.problems and not opened.entries:
        return _refuse([("plan", sentence) for sentence in opened.problems], asked.json)
    if asked.worksheet is not None and asked.worksheet not in WORKSHEETS:
        return _refuse([("worksheet", UnknownWorksheet(asked.worksheet).sentence)], asked.json)
    typed = {key: plan.Entry(text.text, "typed", "", text.system) for key, text in given.items()}
    if asked.worksheet is None:
        named, _ = plan.brought_up(typed, WORKSHEETS.values(), Reader())
    else:
        named = {WORKSHEETS[asked.worksheet].plan_key(key): entry for key, entry in typed.items()}
    entries = plan.opened(opened.entries | named)
    sheets = {}
    for key in WORKSHEETS if asked.worksheet is None else (asked.worksheet,):
        known = plan.given_for(WORKSHEETS[key], entries)
        # What was typed for a worksheet is handed to it even if it does not ask for it, so that it can say so.
        if known or asked.worksheet:
            sheets[key] = _of_plan(WORKSHEETS[key], entries, known | given, asked.units)
    if asked.worksheet is not None:
        problems = problems + [(problem.key, problem.text) for problem in sheets[asked.worksheet].problems]
        if problems:
            return _refuse(problems, asked.json)
    complete = plan_file.with_units(entries, WORKSHEETS.values())
    said = (*opened.problems, *complete.problems)
    if asked.json:
        _print_json(plan_as_json(complete.entries, sheets, said))
        return 0
    for sentence in said:
        print(sentence, file=sys.stderr)
    print(as_text(sheets[asked.worksheet]) if asked.worksheet else plan_as_text(entries, sheets, asked.units))
    return 0


def _of_plan(worksheet: Worksheet, entries: plan.Entries, known: dict[str, Typed], system: System) -> Sheet:
    """The sheet for what a plan holds; a worksheet that takes what others find does so, as it does in the page."""
    if known.keys() - {field.key for field in worksheet.all_fields()}:
        return answer(
            worksheet.key, known, system
        )  # which says what it has no input for, or finds it by its other name
    whole, taken = in_whole(worksheet, entries)
    return answer_plan(worksheet, whole, system, taken)


def _table(asked: argparse.Namespace) -> int:
    """A worksheet for each row of a table; rows that cannot be worked out are named, and the rest is done."""
    if asked.json or asked.values:
        return _refuse(
            [("table", "A table takes no other values and gives CSV: leave out --json and input=value.")], asked.json
        )
    if asked.worksheet is not None and asked.worksheet not in WORKSHEETS:
        return _refuse([("worksheet", UnknownWorksheet(asked.worksheet).sentence)], False)
    try:
        houses = rows.read(_file_text(asked.table, rows.LARGEST + 1), asked.worksheet)
    except (_Unreadable, rows.BadTable) as wrong:
        return _refuse([("table", str(wrong))], False)

    def tell(done: int) -> None:
        if sys.stderr.isatty():
            print(f"\r{done} of {len(houses)}", end="\n" if done == len(houses) else "", file=sys.stderr, flush=True)

    answered = list(rows.worked(houses, asked.worksheet, asked.units, tell))
    print(rows.BYTE_ORDER_MARK, end="")
    csv.writer(sys.stdout, lineterminator="\n").writerows(rows.table(answered, asked.units))
    bad = [(f"line {row.line}", wrong) for row, _, wrong in answered if wrong]
    return _refuse(bad, False) if bad else 0


class _Unreadable(Exception):
    """A file that cannot be read as text; the message says why."""


def _file_text(name: str, most: int, errors: str = "strict") -> str:
    """The text of a file, or of standard input; of one that is too large, `most` bytes, and no less of it as text."""
    try:
        if name == "-":
            content = sys.stdin.buffer.read(most)
        else:
            with open(name, "rb") as file:
                content = file.read(most)
    except FileNotFoundError:
        raise _Unreadable(f"There is no file “{name}”: check its name.") from None
    except IsADirectoryError:
        raise _Unreadable(f"“{name}” is a folder: name the file in it.") from None
    except (OSError, ValueError):
        raise _Unreadable(f"The file “{name}” cannot be read: check that you may read it.") from None
    try:
        return content.decode("utf-8", errors)
    except UnicodeDecodeError:
        if len(content) == most:
            return " " * most  # cut inside a character: too large in any case
        raise _Unreadable(f"The file “{name}” is not plain text in UTF-8: save it so, and try again.") from None


def _print(sheet: Sheet, wanted: bool, problems: tuple[str, ...]) -> int:
    if sheet.problems:
        return _refuse(
            [("link", text) for text in problems] + [(problem.key, problem.text) for problem in sheet.problems], wanted
        )
    if wanted:
        report: dict[str, Any] = as_json(sheet)
        if problems:
            report["link_problems"] = list(problems)
        _print_json(report)
    else:
        for text in problems:
            print(text, file=sys.stderr)
        print(as_text(sheet))
    return 0


def _print_json(report: Any) -> None:
    print(json.dumps(report, ensure_ascii=False, indent=2, allow_nan=False))


def _refuse(problems: list[tuple[str, str]], wanted: bool) -> int:
    # What is quoted in a sentence may have been pasted from anywhere: it may not steer the terminal.
    problems = [(_printable(key), _printable(text)) for key, text in problems]
    if wanted:
        _print_json({"errors": [{"input": key, "text": text} for key, text in problems]})
    else:
        for key, text in problems:
            print(f"{key}: {text}" if key else text, file=sys.stderr)
    return 2


def _printable(text: str) -> str:
    return "".join(mark for mark in text if mark.isprintable() or mark.isspace())


def _list() -> int:
    guides = dict.fromkeys(worksheet.guide for worksheet in WORKSHEETS.values())
    for guide in guides:
        print(guide)
        for worksheet in WORKSHEETS.values():
            if worksheet.guide == guide:
                print(f"  {worksheet.key:20} {worksheet.short}")
    return 0


def _describe(key: str | None, system: Any, wanted: bool) -> int:
    if key is not None and key not in WORKSHEETS:
        return _refuse([("worksheet", UnknownWorksheet(key).sentence)], wanted)
    descriptions = [describe(worksheet, system) for worksheet in WORKSHEETS.values() if key in (None, worksheet.key)]
    if wanted:
        _print_json(descriptions)
        return 0
    for described in descriptions:
        print(f"{described['worksheet']}: {described['question']}")
        for asked in described["inputs"]:
            default = f", usually {asked['default']}" if isinstance(asked["default"], str) else ""
            allowed = ", ".join(asked["allowed"]) if asked["kind"] == "choice" else " to ".join(asked["allowed"])
            unit = asked["unit"] or "choice"
            print(f"  {asked['key']:24} {asked['label']} [{asked['kind']}; {unit}; {allowed}{default}]")
        print("  gives " + ", ".join(result["key"] for result in described["results"]))
        print("  sources " + ", ".join(described["sources"]))
    return 0


if __name__ == "__main__":
    try:
        code = main()
        sys.stdout.flush()
    except BrokenPipeError:  # whoever reads our output has had enough of it, like `head`
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        code = 0
    sys.exit(code)
