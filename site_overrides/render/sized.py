"""The parts of a plant with the size that a worksheet gives each of them; nothing where the plan lacks its numbers."""

from collections.abc import Iterable, Iterator, Mapping
from types import MappingProxyType
from typing import NamedTuple

from calc.engine.conditions import condition
from calc.engine.declare import Part, Sizes
from calc.engine.sentences import placeholders
from calc.engine.sheet import Sheet
from calc.engine.standing import foreign, inputs_behind
from calc.engine.texts import Texts
from calc.engine.typed import Input
from calc.engine.values import NOTHING, Values
from calc.engine.words import ATTENTION
from calc.plant import PARTS
from calc.units import System
from calc.worksheets import WORKSHEETS

NOT_YET = "Not worked out yet"


class Row(NamedTuple):
    """One line of the list of parts."""

    name: str
    size: str
    worksheet: str
    assumes: tuple[str, ...] = ()
    lacks: tuple[str, ...] = ()
    known: bool = True
    waits: bool = False  # for nothing but a tick
    quantity: str = ""
    material: str = ""
    supplied_by: str = ""
    decided_by: str = ""
    item: str = ""  # the key of what was picked from a dealer's stock


def listed(
    sheets: Mapping[str, Sheet],
    system: System,
    lacking: Mapping[str, tuple[str, ...]] = MappingProxyType({}),
    choices: Mapping[str, str] = MappingProxyType({}),
) -> list[Row]:
    """Every part that the plan has, with its size, in the order of the plant; of several that size one, the first that is worked out.

    One that speaks `instead` of the others is heard before them. `lacking` says of worksheets that are left out which
    few numbers the plan still lacks for them, those that the plan knows best first; `choices` are the plan's texts.
    """
    found: dict[Part, dict[str, Row]] = {}
    for sheet, sized in _sizes(sheets):
        row = _as_chosen(_row(sized, sheet, system), _chosen(sized, sheets), system)
        rows = found.setdefault(sized.part, {})
        if row.known and (sized.instead or not any(other.known for other in rows.values())):
            rows.clear()
        if row.known or not rows:
            rows.setdefault(row.name, row)  # radiators and a warm floor are two of one part
    values = {key: value for sheet in sheets.values() for key, value in sheet.values.items()}
    return [
        row._replace(decided_by=part.decided_by)
        for part in PARTS
        if part in found or not _left_out(part, values)
        for row in (found[part].values() if part in found else (_left_open(part, lacking, choices),))
    ]


def _left_out(part: Part, values: Values) -> bool:
    """Whether the plan says that it has no such part."""
    unless = condition(part.unless) if part.unless else None
    return unless is not None and unless.names <= values.keys() and unless(values, {})


def drawable() -> set[str]:
    """What the piping drawings show and some worksheet sizes."""
    return {key for worksheet in WORKSHEETS.values() for sized in worksheet.sizes for key in sized.drawn}


def drawn(sheets: Mapping[str, Sheet], system: System) -> dict[str, str]:
    """The sizes that stand beside the parts of a piping drawing, by the drawing's key."""
    sizes: dict[str, str] = {}
    for sheet, sized in _sizes(sheets):
        if sized.short and _row(sized, sheet, system).known:
            has = _chosen(sized, sheets)
            short = has.shown(system) if has else _texts(sheet, system).fill(sized.short)
            for key in sized.drawn:
                sizes.setdefault(key, short)
    return sizes


def _sizes(sheets: Mapping[str, Sheet]) -> Iterator[tuple[Sheet, Sizes]]:
    """Every part that a worksheet of the record sizes with the choices made in it, in the worksheets' order."""
    for key in WORKSHEETS:
        for sized in WORKSHEETS[key].sizes if key in sheets else ():
            if sized.only is None or sheets[key].values.get(sized.only[0]) == sized.only[1]:
                yield sheets[key], sized


def _left_open(part: Part, lacking: Mapping[str, tuple[str, ...]], choices: Mapping[str, str]) -> Row:
    """A part that no worksheet of the record sizes: which one would, and what it lacks where that is little."""
    every = [(key, sized) for key, worksheet in WORKSHEETS.items() for sized in worksheet.sizes if sized.part is part]
    sizers = [key for key, sized in every if _may_be(key, sized, choices)] or [key for key, _ in every]
    nearest = next((key for key in lacking if key in sizers), sizers[0])
    lacks = lacking.get(nearest)
    return Row(part.name, NOT_YET, nearest, lacks=lacks or (), known=False, waits=lacks == ())


def _may_be(worksheet: str, sized: Sizes, choices: Mapping[str, str]) -> bool:
    """Whether the plan has not chosen a part of another kind."""
    if sized.means:
        field, kind = sized.means
        key = field.key
    elif sized.only:
        key, kind = WORKSHEETS[worksheet].plan_key(sized.only[0]), sized.only[1]
    else:
        return True
    return choices.get(key) in (None, "", kind)


def _row(sized: Sizes, sheet: Sheet, system: System) -> Row:
    name, worksheet = sized.called or sized.part.name, sheet.worksheet.key
    texts, told = _texts(sheet, system), (sized.size, sized.quantity, sized.material)
    unsure = foreign(fed_by(sheet, [key for text in told for key in placeholders(text)]))
    lacks = tuple(entry.field.label for entry in unsure if entry.quantity is not None)
    if lacks:
        return Row(name, NOT_YET, worksheet, lacks=lacks, known=False)
    assumes = tuple(f"{entry.field.label}: {entry.shown(system)}" for entry in unsure)
    size, quantity, material = (texts.fill(text) for text in told)
    if any(sheet.values.get(key) is None for key in placeholders(sized.size)):
        size, quantity = texts.fill(sized.short) or size, ""  # nothing of any size does it, so there is none to order
    told_by = [entry for key, entry in sheet.inputs.items() if key in placeholders(sized.size)]
    from_stock = any(entry.giver == "stock" for entry in told_by)
    return Row(
        name,
        size,
        worksheet,
        assumes,
        quantity=quantity,
        material=material,
        supplied_by="dealer's stock" if from_stock else "",
        item=next((entry.item for entry in told_by if entry.item), ""),
    )


def _chosen(sized: Sizes, sheets: Mapping[str, Sheet]) -> Input | None:
    """What somebody gave as the size of a part, where its worksheet says what it should be."""
    if sized.chosen is None:
        return None
    asked = (sheet.inputs.get(sized.chosen.key) for sheet in sheets.values())
    return next((entry for entry in asked if entry and entry.origin in ("typed", "link")), None)


def _as_chosen(row: Row, has: Input | None, system: System) -> Row:
    """A row that begins with the size that the plan has, if somebody gave one."""
    if has is None:
        return row
    given = f"{has.shown(system)}, as given"
    stock = "dealer's stock" if has.giver == "stock" else ""
    return row._replace(
        size=f"{given}; {row.size}" if row.known else given,
        quantity="1",
        known=True,
        lacks=(),
        supplied_by=stock or row.supplied_by,
        item=has.item or row.item,
    )


def fed_by(sheet: Sheet, keys: list[str]) -> Iterable[Input]:
    """Every input on which these values rest; how many parts of a chain need attention rests on all of them."""
    names = set(keys)
    if ATTENTION in names:
        names |= {name for check in sheet.worksheet.checks for name in check.names}
    return inputs_behind(sheet.reading, names, NOTHING)


def _texts(sheet: Sheet, system: System) -> Texts:
    return Texts(sheet.worksheet, sheet.reading, sheet.values, system)
