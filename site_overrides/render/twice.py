"""Quantities that stand in a record with more than one value, each with a sentence that tells the values apart."""

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from calc.chosen import Chosen
from calc.engine.offering import may_be_taken
from calc.engine.settled import Raised
from calc.engine.sheet import Sheet
from calc.units import System, show
from calc.vocabulary import BY_KEY
from calc.worksheets import WORKSHEETS

SAME = 1e-3  # values nearer than this are one value: a plan keeps five figures


class Stated(NamedTuple):
    """A value as a worksheet of the record states it."""

    key: str
    label: str
    si: float
    shown: str
    place: int
    how: str  # given, assumed or found
    part: str  # which of several like parts its worksheet asks about, if it does


def stated(sheets: Mapping[str, Sheet], system: System) -> Iterator[Stated]:
    """Every number that the worksheets of a record take or give."""
    for place, sheet in enumerate(sheets.values(), 1):
        given = {"typed": "given", "link": "given", "typical": "assumed", "example": "assumed"}
        part = sheet.worksheet.apart.says if sheet.worksheet.apart else ""
        for entry in sheet.inputs.values():
            if entry.quantity is not None and isinstance(entry.si, float):
                how = given.get(entry.origin, "found")
                field = sheet.worksheet.in_plan(entry.field)
                yield Stated(field.key, field.label, entry.si, entry.shown(system), place, how, part)
        for result in sheet.results:
            if isinstance(result.si, float | int) and result.key not in sheet.inputs:
                yield Stated(result.key, result.label, result.si, result.shown, place, "found", part)


def values_of(stands: list[Stated]) -> list[list[Stated]]:
    """The same, put together by value."""
    groups: list[list[Stated]] = []
    for statement in stands:
        near = next((group for group in groups if _near(group[0].si, statement.si)), None)
        if near is None:
            groups.append([statement])
        else:
            near.append(statement)
    return groups


def _near(first: float, other: float) -> bool:
    return abs(first - other) <= SAME * max(abs(first), abs(other))


def told_apart(chosen: Chosen, system: System) -> list[str]:
    """A sentence for each quantity that has several values: of one key that is shared, or of one label."""
    sheets = chosen.sheets
    by_name: dict[str, list[Stated]] = {}
    for statement in stated(sheets, system):
        by_name.setdefault(statement.key if statement.key in BY_KEY else statement.label, []).append(statement)
    several = {name: groups for name, stands in by_name.items() if len(groups := values_of(stands)) > 1}
    by_parts: dict[tuple[str, ...], list[list[list[Stated]]]] = {}
    for groups in several.values():
        by_parts.setdefault(_parts(groups), []).append(groups)
    return [
        *(_raised(raised, chosen, system) for raised in chosen.raised),
        *(
            " ".join((_sentence(name, groups), *_why_not(name, sheets)))
            for name, groups in several.items()
            if not _parts(groups)
        ),
        *(_of_parts(parts, each) for parts, each in by_parts.items() if parts),
    ]


def _parts(groups: list[list[Stated]]) -> tuple[str, ...]:
    """Which worksheets are about which part, where each value is that of another of several like parts."""
    if any(statement.key in BY_KEY for statement in groups[0]):
        return ()  # one quantity for all of the plan
    parts = [{statement.part for statement in group} for group in groups]
    if any(len(part) > 1 or "" in part for part in parts) or len(set.union(*parts)) < len(groups):
        return ()
    return tuple(f"{_places(group)} {_verb(group, 'is', 'are')} about the {group[0].part}" for group in groups)


def _of_parts(parts: tuple[str, ...], each: list[list[list[Stated]]]) -> str:
    """One sentence for all that several like parts have of their own."""
    values = "; ".join(f"{groups[0][0].label} {' and '.join(group[0].shown for group in groups)}" for groups in each)
    said = ", ".join(parts)
    return f"{said[:1].upper()}{said[1:]}; each part has its own: {values}."


def _verb(stands: list[Stated], one: str, several: str) -> str:
    return one if len({statement.place for statement in stands}) == 1 else several


def _raised(raised: Raised, chosen: Chosen, system: System) -> str:
    """Of a number that was given too low."""
    given = chosen.given.value(raised.field, raised.given)
    place = list(chosen.sheets).index(raised.worksheet) + 1 if raised.worksheet in chosen.sheets else 0
    who = f"worksheet {place}" if place else f"“{WORKSHEETS[raised.worksheet].question}”"
    need = show(raised.need, raised.field.unit(system), system, 4)
    told = given.shown(system) if given else raised.given.text
    needed = f"{who} finds that {need} are needed. Of several needs the highest counts."
    return f"{raised.field.label}: {told} was given; {needed}"


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
    for group in sorted(groups, key=lambda group: [statement.how for statement in group].count("found") == len(group)):
        taken = [statement for statement in group if statement.how != "found"]
        worked_out = [statement for statement in group if statement.how == "found"]
        if taken:
            how = {"given": ", as given,", "assumed": ", as it usually is there,"}[taken[0].how]
            verb = "takes" if len(taken) == 1 else "take"
            clauses.append(f"{_places(taken)} {verb} {group[0].shown}{how}".rstrip(","))
        if worked_out:
            clauses.append(f"{_places(worked_out)} {'finds' if len(worked_out) == 1 else 'find'} {group[0].shown}")
    hows = {statement.how for group in groups for statement in group}
    why = ""
    if field and field.keeps_highest:
        why = " Of several needs the highest counts."
    elif {"given", "found"} <= hows:
        why = " What was given counts."
    elif hows == {"assumed"}:
        why = " Nobody gave it, so each takes what is usual for its own question."
    return f"{label}: {'; '.join(clauses)}.{why}"


def _places(stands: list[Stated]) -> str:
    numbers = [str(place) for place in dict.fromkeys(statement.place for statement in stands)]
    if len(numbers) == 1:
        return f"worksheet {numbers[0]}"
    return f"worksheets {', '.join(numbers[:-1])} and {numbers[-1]}"
