"""Worksheets at a command line.

    python -m calc                                  every worksheet, one line each
    python -m calc --describe [--json] [worksheet]  what each asks and answers
    python -m calc stored-heat                      the worked example
    python -m calc stored-heat store_volume="500 gal" store_top=180F --units us --json
    python -m calc --link "#v1;stored-heat;…;end"   what a shared link says

Exit 0, or 2 when the input is wrong: then a sentence for each mistake on standard error, or with --json
{"errors": [{"input", "text"}]} on standard output.
"""

import argparse
import json
import sys
from collections.abc import Sequence
from typing import Any, NoReturn

from calc.answer import Typed, UnknownWorksheet, answer, open_link
from calc.engine.run import Sheet
from calc.report import as_json, as_text, describe
from calc.units import SYSTEMS
from calc.worksheets import WORKSHEETS


class _Parser(argparse.ArgumentParser):
    """A parser that reports a wrong option in the same form as any other mistake."""

    json_wanted = False

    def error(self, message: str) -> NoReturn:
        sys.exit(_refuse([("", message[:1].upper() + message[1:] + ".")], self.json_wanted))


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command line; returns the exit code."""
    words = list(sys.argv[1:] if arguments is None else arguments)
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
    asked = parser.parse_intermixed_args(words)
    if asked.link is not None:
        opened, said = open_link(asked.link, asked.units)
        if opened is None:
            return _refuse([("link", text) for text in said], asked.json)
        return _print(opened, asked.json, said)
    if asked.describe:
        return _describe(asked.worksheet, asked.units, asked.json)
    if asked.worksheet is None:
        return _list()
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
    try:
        sheet = answer(asked.worksheet, given, asked.units)
    except UnknownWorksheet as unknown:
        return _refuse([("worksheet", unknown.sentence)], asked.json)
    if problems or sheet.problems:
        return _refuse(problems + [(one.key, one.text) for one in sheet.problems], asked.json)
    return _print(sheet, asked.json, ())


def _print(sheet: Sheet, wanted: bool, problems: tuple[str, ...]) -> int:
    if sheet.problems:
        return _refuse([("link", text) for text in problems] + [(one.key, one.text) for one in sheet.problems], wanted)
    if wanted:
        found: dict[str, Any] = as_json(sheet)
        if problems:
            found["link_problems"] = list(problems)
        _print_json(found)
    else:
        for text in problems:
            print(text, file=sys.stderr)
        print(as_text(sheet))
    return 0


def _print_json(found: Any) -> None:
    print(json.dumps(found, ensure_ascii=False, indent=2, allow_nan=False))


def _refuse(problems: list[tuple[str, str]], wanted: bool) -> int:
    if wanted:
        _print_json({"errors": [{"input": key, "text": text} for key, text in problems]})
    else:
        for key, text in problems:
            print(f"{key}: {text}" if key else text, file=sys.stderr)
    return 2


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
    found = [describe(worksheet, system) for worksheet in WORKSHEETS.values() if key in (None, worksheet.key)]
    if wanted:
        _print_json(found)
        return 0
    for one in found:
        print(f"{one['worksheet']}: {one['question']}")
        for asked in one["inputs"]:
            default = f", usually {asked['default']}" if isinstance(asked["default"], str) else ""
            allowed = ", ".join(asked["allowed"]) if asked["kind"] == "choice" else " to ".join(asked["allowed"])
            unit = asked["unit"] or "choice"
            print(f"  {asked['key']:24} {asked['label']} [{asked['kind']}; {unit}; {allowed}{default}]")
        print("  gives " + ", ".join(result["key"] for result in one["results"]))
        print("  sources " + ", ".join(one["sources"]))
    return 0


if __name__ == "__main__":
    sys.exit(main())
