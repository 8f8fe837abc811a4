"""Links: `#v1;stored-heat;store_volume=500gal;store_top=180F~;end`.

A link carries every field of the chosen case, as typed, so that it means the same after a default has changed; `~`
marks a number that nobody gave; `end` proves that nothing was cut off. A link is untrusted: it holds keys, numbers,
units and choices, and whatever else is in it is named and left out.

A whole plan travels in the same form, with `plan` in the worksheet's place and every quantity that somebody gave.
`!s` behind a number says where it came from (`MARKS`), `!s.cellar-20` also which item of a dealer's stock it is,
`!w.tap-water` that this worksheet has worked it out, so that it follows when the plan's numbers are changed,
`units=si` in which units the link was made, `from=Name` whose site made it. For codes that a telephone reads, the same
text is packed: `#v1;packed;…;end`.

Links last: what an older version wrote is brought up to this one by `MIGRATIONS`, a step for each version.
"""

from collections.abc import Callable, Iterable, Mapping
from typing import NamedTuple
from urllib.parse import quote, unquote

from calc.engine import packing
from calc.engine.fields import Field, declared
from calc.engine.plan import brought_up, fields_by_key, older_fields
from calc.engine.read import named, tells
from calc.engine.read import read as read_inputs
from calc.engine.typed import GIVERS, Input, Reader, Typed, item_key
from calc.engine.worksheet import Worksheet
from calc.units import LONGEST_TEXT, SYSTEMS, System

VERSION = 1
PLAN = "plan"  # stands where a worksheet's key would
PACKED = "packed"  # likewise, and behind it the packed text
UNITS, SHEETS, SENDER = "units", "sheets", "from"  # stand where a number's key would
MARKS = dict(zip(GIVERS, ("m", "b", "s", "k"), strict=True))  # a letter of its own for each of GIVERS
WORKED_OUT = "w"  # likewise, with the key of the worksheet that has
_GIVER_OF = {mark: giver for giver, mark in MARKS.items()}
LONGEST_LINK = 8000  # characters; the longest worksheet's link has a few hundred
LONGEST_VERSION = 6  # digits
LONGEST_SENDER = 60  # characters
MOST_TOLD = 12  # sentences about what is wrong with one link
_SAFE = "/+-.,'"


class Opened(NamedTuple):
    """What a link says: the worksheet's key, a text for each field, and a sentence for everything that was wrong.

    `units` is the system in which the link was made; None where it does not say. `sheets` are the worksheets that the
    sender of a plan asks about, `sender` whose site made the link, as the link says.
    """

    worksheet: str
    given: dict[str, Typed]
    problems: tuple[str, ...]
    units: System | None = None
    sheets: tuple[str, ...] = ()
    sender: str = ""


class Carried(NamedTuple):
    """What a link of some version carries: the worksheet's key, and key, text and origin of each number.

    The origin of a number that came from somewhere ends in that mark: "link!s".
    """

    worksheet: str
    numbers: tuple[tuple[str, str, str], ...]


Migration = Callable[[Carried], Carried]
# For each version before this one, the pure function that turns what its links carry into what the next version's do.
MIGRATIONS: Mapping[int, Migration] = {}


def write(worksheet: Worksheet, inputs: dict[str, Input], system: System = "us") -> str:
    """The link that restores these inputs, made in this unit system."""
    given = {}
    for key, entry in inputs.items():
        text = str(entry.si) if entry.quantity is None else entry.quantity.link_text()
        given[key] = Typed(text, origin=entry.origin, giver=entry.giver, item=entry.item)
    return _written(worksheet.key, given, system)


def write_plan(given: Mapping[str, Typed], system: System = "us", sheets: Iterable[str] = ()) -> str:
    """The link that restores a plan. Its texts name their units; one with no text is a number that nobody knows.

    `sheets` are the worksheets that it is about, if it is not about the whole.
    """
    return _written(PLAN, given, system, ",".join(sheets))


def _written(what: str, given: Mapping[str, Typed], system: System, sheets: str = "") -> str:
    parts = []
    for key, text in given.items():
        item = f".{text.item}" if text.item else ""
        told = f"!{MARKS[text.giver]}{item}" if text.giver in MARKS else ""
        told = f"!{WORKED_OUT}.{text.worksheet}" if text.worksheet else told
        mark = "~" if text.origin in ("typical", "example") else told
        parts.append(f"{key}={quote(text.text, safe=_SAFE)}{mark}")
    parts += [f"{UNITS}={system}"] if system != "us" else []
    parts += [f"{SHEETS}={sheets}"] if sheets else []
    return "#" + ";".join([f"v{VERSION}", what, *parts, "end"])


def signed(text: str, sender: str) -> str:
    """A link that also says whose site made it."""
    body, end, rest = text.rpartition(";end")
    return f"{body};{SENDER}={quote(sender[:LONGEST_SENDER], safe='')}{end}" if sender and end and not rest else text


def site_of(asked: Mapping[str, object]) -> str:
    """The name of the dealer's site that a page's request comes from; empty for the project's own."""
    return str(asked.get("site") or "")[:LONGEST_SENDER]


def packed(text: str) -> str:
    """A link in its shortest form, for a code that a telephone reads."""
    body = text.removeprefix(f"#v{VERSION};").removesuffix(";end")
    return f"#v{VERSION};{PACKED};{packing.pack(body)};end"


def _unpacked(text: str) -> str:
    """A link as it was before it was packed; any other text as it is."""
    version, what, *inside = (*text.strip().rpartition("#")[2].split(";", 3), "")
    if what != PACKED or inside[1:2] != ["end"]:
        return text
    body = packing.unpack(inside[0], LONGEST_LINK)
    return f"#{version};{body};end" if body else text


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
    parts = _unpacked(_plain(text)).strip().rpartition("#")[2].split(";")  # a whole address may have been pasted
    if parts[1:2] == [PACKED]:
        return Opened("", {}, ("This link was cut off or spoilt on its way. Ask for it again.",))
    if _cut_in_first_words(parts, worksheets):
        return Opened("", {}, ("This link was cut off on its way, before its first number. Ask for it again.",))
    version = parts[0]
    digits = version.removeprefix("v")
    if digits == version or not (digits.isascii() and digits.isdigit() and len(digits) <= LONGEST_VERSION):
        return Opened("", {}, ("This link does not begin like one of ours (#v1;…).",))
    if int(digits) > VERSION:
        problems.append("This link comes from a later version of this site: reload the page, or ask for its numbers.")
    carried = _migrated(_carried(parts), int(digits), migrations)
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
    units: System | None = None
    sheets: tuple[str, ...] = ()
    sender = ""
    for name, value, origin in carried.numbers:
        if name == UNITS and value in SYSTEMS:
            units = "si" if value == "si" else "us"
        elif name == SHEETS and key == PLAN:
            sheets = tuple(sheet for sheet in value.split(",") if sheet in worksheets)
        elif name == SENDER:
            sender = "".join(mark for mark in value if mark.isprintable())[:LONGEST_SENDER]
        elif name not in fields:
            asks = "no worksheet asks" if key == PLAN else "this worksheet does not ask"
            problems.append(f"This link holds something that {asks}: “{_short(name)}”.")
        elif name in given:
            problems.append(f"This link gives {fields[name].label} twice; the first is used.")
        else:
            origin, _, mark = origin.partition("!")
            letter, _, item = mark.partition(".")
            if letter == WORKED_OUT and key == PLAN and item in worksheets:
                given[name] = Typed(value, origin="computed", worksheet=item)
            else:
                given[name] = Typed(value, origin=origin, giver=_GIVER_OF.get(letter, ""), item=item_key(item))
    given = _as_left(given, fields)
    if key == PLAN:
        given, changed = brought_up(given, worksheets.values(), reader or Reader())
        problems += [changed] if changed else []
    else:
        given = named(worksheets[key], given, reader or Reader())
        _leave_out_bad(worksheets[key], given, problems, reader or Reader())
    return Opened(key, given, _few(problems), units, sheets, sender)


def _as_left(given: dict[str, Typed], fields: Mapping[str, Field]) -> dict[str, Typed]:
    """What nobody gave, as the sender left it: what followed another number still does, what may be left alone is, and
    what has no usual value was the worked example's. A link in which nobody gave anything is that example, whole.
    """
    left = {}
    some = any(typed.origin != "typical" for typed in given.values())
    for key, typed in given.items():
        field, usual = fields[key], typed.origin == "typical"
        followed = given.get(field.same_as)
        if usual and ((followed and followed.text == typed.text) or _is_left_alone(field, typed.text)):
            continue
        foreign = usual and some and typed.text and tells(field)
        left[key] = typed._replace(origin="example") if foreign else typed
    return left


def _is_left_alone(field: Field, text: str) -> bool:
    """Whether this is the number that stands in for one left alone, here and perhaps in no other worksheet."""
    if not field.unless_given or field.kind == "choice":
        return False
    return declared(field.unless_given, field.kind).link_text() == text


def _plain(text: str) -> str:
    """A link as it was before a mail program wrote all its marks as %3B and the like; any other text as it is."""
    place, mark, link = text.rpartition("#")
    return place + mark + (unquote(link) if ";" not in link and "%3b" in link.lower() else link)


def _few(problems: list[str]) -> tuple[str, ...]:
    """Each sentence once, and of very many only the first."""
    told = list(dict.fromkeys(problems))
    more = len(told) - MOST_TOLD
    return (*told[:MOST_TOLD], *([f"{more} more things in this link cannot be used."] if more > 0 else []))


def _cut_in_first_words(parts: list[str], worksheets: Mapping[str, Worksheet]) -> bool:
    """Whether a link ends inside its version or its worksheet's name."""
    begun = f"v{VERSION};"
    if len(parts) == 1:
        return begun.startswith(parts[0])
    keys = (*worksheets, PLAN, PACKED)
    return len(parts) == 2 and parts[1] not in keys and any(key.startswith(parts[1]) for key in keys)


def _carried(parts: list[str]) -> Carried:
    """What stands between version and end; the last part is "end", or the one that was cut and cannot be trusted."""
    numbers = []
    for pair in filter(None, parts[2:-1]):
        name, _, value = pair.partition("=")
        value, _, mark = value.partition("!")
        plain = unquote(value.removesuffix("~"))[: LONGEST_TEXT + 1]
        numbers.append((unquote(name), plain, "typical" if value.endswith("~") else f"link!{mark}" if mark else "link"))
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
        everything = older_fields(worksheets.values()) | fields_by_key(worksheets.values())
        return {name: fields[0] for name, fields in everything.items()}
    fields = {field.key: field for field in worksheets[key].all_fields()}
    return {name: fields[keys[0]] for name, keys in worksheets[key].other_names.items()} | fields


def _short(text: str) -> str:
    plain = "".join(mark for mark in text if mark.isprintable())
    return plain[:40]
