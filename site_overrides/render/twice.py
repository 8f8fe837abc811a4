"""Quantities that stand in a record with more than one value, each with a sentence that tells the values apart."""

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from calc.engine.plan import may_be_taken
from calc.engine.settled import Raised
from calc.engine.sheet import Sheet
from calc.units import System, show
from calc.vocabulary import BY_KEY
from calc.worksheets import WORKSHEETS
from render.chosen import Chosen

SAME = 1e-3  # values nearer than this are one value: a plan keeps five figures


class Stated(NamedTuple):
    """A value as a worksheet of the record states it."""

    key: str
    label: str
    si: float
    shown: str
    place: int
    how: str  # given, assumed or found


def stated(sheets: Mapping[str, Sheet], system: System) -> Iterator[Stated]:
    """Every number that the worksheets of a record take or give."""
    for place, sheet in enumerate(sheets.values(), 1):
        given = {"typed": "given", "link": "given", "typical": "assumed", "example": "assumed"}
        for key, one in sheet.inputs.items():
            if one.quantity is not None and isinstance(one.si, float):
                how = given.get(one.origin, "found")
                yield Stated(key, one.field.label, one.si, one.shown(system), place, how)
        for result in sheet.results:
            if isinstance(result.si, float | int) and result.key not in sheet.inputs:
                yield Stated(result.key, result.label, result.si, result.shown, place, "found")


def values_of(stands: list[Stated]) -> list[list[Stated]]:
    """The same, put together by value."""
    groups: list[list[Stated]] = []
    for one in stands:
        near = next((group for group in groups if _near(group[0].si, one.si)), None)
        if near is None:
            groups.append([one])
        else:
            near.append(one)
    return groups


def _near(one: float, other: float) -> bool:
    return abs(one - other) <= SAME * max(abs(one), abs(other))


def told_apart(chosen: Chosen, system: System) -> list[str]:
    """A sentence for each quantity that has several values: of one key that is shared, or of one label."""
    sheets = chosen.sheets
    by_name: dict[str, list[Stated]] = {}
    for one in stated(sheets, system):
        by_name.setdefault(one.key if one.key in BY_KEY else one.label, []).append(one)
    sentences = []
    for name, stands in by_name.items():
        groups = values_of(stands)
        if len(groups) > 1:
            sentences.append(" ".join((_sentence(name, groups), *_why_not(name, sheets))))
    return [*(_raised(one, chosen, system) for one in chosen.raised), *sentences]


def _raised(one: Raised, chosen: Chosen, system: System) -> str:
    """Of a number that was given too low."""
    given = chosen.given.value(one.field, one.given)
    place = list(chosen.sheets).index(one.worksheet) + 1 if one.worksheet in chosen.sheets else 0
    who = f"worksheet {place}" if place else f"“{WORKSHEETS[one.worksheet].question}”"
    need = show(one.need, one.field.unit(system), system, 4)
    told = given.shown(system) if given else one.given.text
    return (
        f"{one.field.label}: {told} was given; {who} finds that {need} are needed. Of several needs the highest counts."
    )


def _why_not(key: str, sheets: Mapping[str, Sheet]) -> list[str]:
    """Why the others do not take what a worksheet has found."""
    return [
        result.else_why
        for sheet in sheets.values()
        for result in sheet.worksheet.results
        if result.key == key and result.else_why and not may_be_taken(sheet.worksheet, key, sheet.values)
    ]


def _sentence(name: str, groups: list[list[Stated]]) -> str:
    field = BY_KEY[name][0] if name in BY_KEY else None
    label = field.label if field else groups[0][0].label
    clauses = []
    for group in sorted(groups, key=lambda group: [one.how for one in group].count("found") == len(group)):
        taken = [one for one in group if one.how != "found"]
        found = [one for one in group if one.how == "found"]
        if taken:
            how = {"given": ", as given,", "assumed": ", as it usually is there,"}[taken[0].how]
            verb = "takes" if len(taken) == 1 else "take"
            clauses.append(f"{_places(taken)} {verb} {group[0].shown}{how}".rstrip(","))
        if found:
            clauses.append(f"{_places(found)} {'finds' if len(found) == 1 else 'find'} {group[0].shown}")
    hows = {one.how for group in groups for one in group}
    why = ""
    if field and field.keeps_highest:
        why = " Of several needs the highest counts."
    elif {"given", "found"} <= hows:
        why = " What was given counts."
    elif hows == {"assumed"}:
        why = " Nobody gave it, so each takes what is usual for its own question."
    return f"{label}: {'; '.join(clauses)}.{why}"


def _places(stands: list[Stated]) -> str:
    numbers = [str(place) for place in dict.fromkeys(one.place for one in stands)]
    if len(numbers) == 1:
        return f"worksheet {numbers[0]}"
    return f"worksheets {', '.join(numbers[:-1])} and {numbers[-1]}"
