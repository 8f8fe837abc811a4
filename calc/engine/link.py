"""Links: `#v1;stored-heat;store_volume=500gal;store_top=180F~;end`.

A link carries every field of the chosen case, as typed, so that it means the same after a default has changed; `~`
marks a number that nobody gave; `end` proves that nothing was cut off. A link is untrusted: it holds keys, numbers,
units and choices, and whatever else is in it is named and left out.

A whole plan travels in the same form, with `plan` in the worksheet's place and every quantity that somebody gave.

Links last: what an older version wrote is brought up to this one by `MIGRATIONS`, a step for each version.
"""

from collections.abc import Callable, Mapping
from typing import NamedTuple
from urllib.parse import quote, unquote

from calc.engine.fields import Field
from calc.engine.plan import fields_by_key
from calc.engine.read import read as read_inputs
from calc.engine.typed import Input, Reader, Typed
from calc.engine.worksheet import Worksheet
from calc.units import LONGEST_TEXT

VERSION = 1
PLAN = "plan"  # stands where a worksheet's key would
LONGEST_LINK = 8000  # characters; the longest worksheet's link has a few hundred
_SAFE = "/+-.,'"


class Opened(NamedTuple):
    """What a link says: the worksheet's key, a text for each field, and a sentence for everything that was wrong."""

    worksheet: str
    given: dict[str, Typed]
    problems: tuple[str, ...]


class Carried(NamedTuple):
    """What a link of some version carries: the worksheet's key, and key, text and origin of each number."""

    worksheet: str
    numbers: tuple[tuple[str, str, str], ...]


Migration = Callable[[Carried], Carried]
# For each version before this one, the pure function that turns what its links carry into what the next version's do.
MIGRATIONS: Mapping[int, Migration] = {}


def write(worksheet: Worksheet, inputs: dict[str, Input]) -> str:
    """The link that restores these inputs."""
    parts = []
    for key, entry in inputs.items():
        text = str(entry.si) if entry.quantity is None else entry.quantity.link_text()
        parts.append(f"{key}={quote(text, safe=_SAFE)}" + ("~" if entry.origin in ("typical", "example") else ""))
    return "#" + ";".join([f"v{VERSION}", worksheet.key, *parts, "end"])


def write_plan(given: Mapping[str, Typed]) -> str:
    """The link that restores a plan. Its texts name their units; one with no text is a number that nobody knows."""
    parts = []
    for key, entry in given.items():
        mark = "~" if entry.origin in ("typical", "example") else ""
        parts.append(f"{key}={quote(entry.text, safe=_SAFE)}{mark}")
    return "#" + ";".join([f"v{VERSION}", PLAN, *parts, "end"])


def read(
    text: str,
    worksheets: Mapping[str, Worksheet],
    migrations: Mapping[int, Migration] = MIGRATIONS,
    reader: Reader | None = None,
) -> Opened:
    """Read a link; whatever can be used is used, and the rest is named in a sentence."""
    problems: list[str] = []
    if len(text) > LONGEST_LINK:
        return Opened("", {}, ("This link is too long to be one of ours.",))
    parts = text.strip().rpartition("#")[2].split(";")  # a whole address may have been pasted
    if _cut_in_first_words(parts, worksheets):
        return Opened("", {}, ("This link was cut off on its way, before its first number. Ask for it again.",))
    version = parts[0]
    if not (version[:1] == "v" and version[1:].isascii() and version[1:].isdigit()):
        return Opened("", {}, ("This link does not begin like one of ours (#v1;…).",))
    if int(version[1:]) > VERSION:
        problems.append("This link comes from a later version of this site: reload the page, or ask for its numbers.")
    carried = _migrated(_carried(parts), int(version[1:]), migrations)
    if carried is None:
        return Opened("", {}, ("This link is of a version that this site never had.",))
    key = carried.worksheet
    if key not in worksheets and key != PLAN:
        problems.append(f"This link names a worksheet that is not here: “{_short(key)}”.")
        return Opened("", {}, tuple(problems))
    if parts[-1] != "end":
        problems.append("This link was cut off on its way: its last numbers may be missing. Ask for it again.")
    fields = _fields(key, worksheets)
    given: dict[str, Typed] = {}
    for name, value, origin in carried.numbers:
        if name not in fields:
            asks = "no worksheet asks" if key == PLAN else "this worksheet does not ask"
            problems.append(f"This link holds something that {asks}: “{_short(name)}”.")
        elif name in given:
            problems.append(f"This link gives {fields[name].label} twice; the first is used.")
        else:
            given[name] = Typed(value, "us", origin)
    if key != PLAN:
        _leave_out_bad(worksheets[key], given, problems, reader or Reader())
    return Opened(key, given, tuple(problems))


def _cut_in_first_words(parts: list[str], worksheets: Mapping[str, Worksheet]) -> bool:
    """Whether a link ends inside its version or its worksheet's name."""
    begun = f"v{VERSION};"
    if len(parts) == 1:
        return begun.startswith(parts[0])
    keys = (*worksheets, PLAN)
    return len(parts) == 2 and parts[1] not in keys and any(key.startswith(parts[1]) for key in keys)


def _carried(parts: list[str]) -> Carried:
    """What stands between version and end; the last part is "end", or the one that was cut and cannot be trusted."""
    numbers = []
    for pair in parts[2:-1]:
        name, _, value = pair.partition("=")
        plain = unquote(value.removesuffix("~"))[: LONGEST_TEXT + 1]
        numbers.append((unquote(name), plain, "typical" if value.endswith("~") else "link"))
    return Carried(parts[1] if len(parts) > 1 else "", tuple(numbers))


def _migrated(carried: Carried, version: int, migrations: Mapping[int, Migration]) -> Carried | None:
    """What a link of an older version carries, as this version says it; None where a step of the chain is missing."""
    for step in range(version, VERSION):
        if step not in migrations:
            return None
        carried = migrations[step](carried)
    return carried


def _leave_out_bad(worksheet: Worksheet, given: dict[str, Typed], problems: list[str], reader: Reader) -> None:
    """Take away, with a sentence each, the values that the worksheet cannot take, until it can take the rest."""
    while given:
        wrong = {
            problem.key: problem.text
            for problem in read_inputs(worksheet, given, reader).problems
            if problem.key in given
        }
        if not wrong:
            return
        for key, sentence in wrong.items():
            problems.append(f"A number of this link is left out. {sentence}")
            del given[key]


def _fields(key: str, worksheets: Mapping[str, Worksheet]) -> dict[str, Field]:
    """What a link may name: the fields of its worksheet, or of all for a plan."""
    if key == PLAN:
        return {name: fields[0] for name, fields in fields_by_key(worksheets.values()).items()}
    return {field.key: field for field in worksheets[key].all_fields()}


def _short(text: str) -> str:
    plain = "".join(mark for mark in text if mark.isprintable())
    return plain[:40]
