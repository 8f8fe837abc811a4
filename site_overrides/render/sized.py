"""The parts of a plant with the size that a worksheet gives each of them; nothing where the plan lacks its numbers."""

from collections.abc import Mapping
from dataclasses import dataclass

from calc.engine.sheet import Sheet
from calc.engine.texts import Texts
from calc.engine.words import placeholders
from calc.units import System

NOT_YET = "Not worked out yet"


@dataclass(frozen=True)
class Sized:
    """A part, the worksheet that sizes it, its size as a sentence with {results}, and a shorter one for the drawing.

    `when` is a choice of that worksheet and the value for which the sentence holds. `drawn` are the keys under which
    the piping drawings know the part.
    """

    name: str
    worksheet: str
    size: str
    short: str = ""
    drawn: tuple[str, ...] = ()
    when: tuple[str, str] | None = None


@dataclass(frozen=True)
class Row:
    """One line of the list of parts."""

    name: str
    size: str
    worksheet: str
    assumes: tuple[str, ...] = ()
    lacks: tuple[str, ...] = ()
    known: bool = True


# The first of a name whose worksheet is worked out, and whose choice fits, is the one that is listed.
PARTS = (
    Sized("Store", "stored-heat", "{store_volume} hold {usable_heat} between {lowest_useful} and {store_top}", "{store_volume}", ("store",)),
    Sized("Store that the burn asks for", "tank-size", "{recommended}: one whole burn with no load"),
    Sized("Place for the store", "tank-place", "{full_weight} when full, {floor_load} on the floor"),
    Sized("Emitters", "emitter-temperature", "{baseboard_length} of baseboard rated {baseboard_rating}; they need {supply_water}", "{supply_water} on the coldest day", ("house", "baseboard-upstairs", "baseboard-downstairs"), ("emitter", "baseboard")),
    Sized("Emitters", "emitter-temperature", "radiators rated {radiator_rating}; they need {supply_water}", "{supply_water} on the coldest day", ("house",), ("emitter", "radiator")),
    Sized("Emitters", "floor", "{floor_area} of warm floor, pipes {pipe_spacing} apart; it needs {supply_water} and {floor_flow}", "{floor_area}, {supply_water}", ("floor", "house")),
    Sized("Emitters", "air-coil", "a coil in the ducts; it needs {supply_water} at {coil_flow}, with {air_flow} of air", "{supply_water}, {coil_flow}", ("duct-coil", "house")),
    Sized("Exchanger for the taps", "tap-water", "a plate for {plate_rating}; it makes {tap_flow_possible} from a full store", "{plate_rating}", ("plate",), ("tap_way", "plate")),
    Sized("Exchanger for the taps", "tap-water", "a coil for {coil_rating}; it makes {tap_flow_possible} from a full store", "{coil_rating}", ("tap-tank",), ("tap_way", "coil")),
    Sized("Exchanger for the taps", "tap-water", "beside a tank of {tap_tank_volume}, warm in {recovery}", "{tap_tank_volume}", ("tap-tank",), ("tap_way", "sidearm")),
    Sized("Tempering valve", "tempering", "mixes to {delivered}; {hot_flow} hot and {cool_flow} cool; a second limit at {high_limit} at most", "{delivered}", ("tempering-valve",), ("mix_purpose", "floor")),
    Sized("Tempering valve", "tempering", "mixes to {delivered}; {hot_flow} hot and {cool_flow} cool", "{delivered}", ("tap-tempering-valve",), ("mix_purpose", "tap")),
    Sized("Pump between stove and store", "charge-loop", "{flow} against {head}", "{flow}, {head}", ("charge-pump",)),
    Sized("Pipe between stove and store", "charge-loop", "at least {smallest_copper_l} copper (type L) or {smallest_steel} steel; worked out with {pipe_size}", "{smallest_copper_l} copper", ("charge-pipe",)),
    Sized("Pump to the emitters", "pipe", "{flow} against {head}", "{flow}, {head}", ("house-pump",)),
    Sized("Pipe to the emitters", "pipe", "at least {smallest_copper_l} copper (type L) or, behind a mixing valve, {smallest_pex} PEX; worked out with {pipe_size}", "{smallest_copper_l} copper", ("house-pipe",)),
    Sized("Expansion tank", "expansion", "{vessel_with_reserve} with its reserve, charged to {charge_pressure} cold", "{vessel_with_reserve}", ("vessel",), ("expansion_kind", "membrane")),
    Sized("Expansion tank", "expansion", "{vessel_with_reserve} with its reserve, without a membrane", "{vessel_with_reserve}", ("vessel",), ("expansion_kind", "plain")),
    Sized("Feed and expansion tank", "expansion", "{vessel_volume} from the bottom to the overflow", "{vessel_volume}", ("feed-tank",), ("expansion_kind", "open")),
    Sized("Relief valve", "relief", "{peak_output} at {relief_setting}, or {relief_steam} of steam", "{peak_output} at {relief_setting}", ("relief",), ("plant_kind", "closed")),
    Sized("Open vent", "relief", "a bore of {vent_bore} or more, rising {vent_rise} and more above the water", "{vent_bore} bore", ("open-vent", "vent-pipe"), ("plant_kind", "open")),
    Sized("Heat dump", "power-cut", "{dump_needed} by gravity, with no power, valve or fan", "{dump_needed}", ("dump",)),
)  # fmt: skip

# What every plant of this kind has, and the record therefore always lists: name, the worksheet that would size it.
ALWAYS = (
    ("Store", "stored-heat"), ("Store that the burn asks for", "tank-size"), ("Place for the store", "tank-place"), ("Emitters", "emitter-temperature"),
    ("Exchanger for the taps", "tap-water"), ("Tempering valve", "tempering"), ("Pump between stove and store", "charge-loop"),
    ("Pipe between stove and store", "charge-loop"), ("Pump to the emitters", "pipe"), ("Pipe to the emitters", "pipe"),
    ("Expansion tank", "expansion"), ("Relief valve", "relief"), ("Heat dump", "power-cut"),
)  # fmt: skip
_INSTEAD = {"Feed and expansion tank": "Expansion tank", "Open vent": "Relief valve"}


def listed(sheets: Mapping[str, Sheet], system: System) -> list[Row]:
    """Every part with its size, in the order of the plant."""
    found: dict[str, Row] = {}
    for part in PARTS:
        row = _row(part, sheets.get(part.worksheet), system)
        place = _INSTEAD.get(part.name, part.name)
        if row and (place not in found or not found[place].known):
            found[place] = row
    return [found.get(name) or Row(name, NOT_YET, worksheet, known=False) for name, worksheet in ALWAYS]


def drawn(sheets: Mapping[str, Sheet], system: System) -> dict[str, str]:
    """The sizes that stand beside the parts of a piping drawing, by the drawing's key."""
    found: dict[str, str] = {}
    for part in PARTS:
        row = _row(part, sheets.get(part.worksheet), system)
        if row and row.known and part.short:
            short = _texts(sheets[part.worksheet], system).fill(part.short)
            for key in part.drawn:
                found.setdefault(key, short)
    return found


def _row(part: Sized, sheet: Sheet | None, system: System) -> Row | None:
    if sheet is None or (part.when and sheet.values.get(part.when[0]) != part.when[1]):
        return None
    fed = _fed_by(sheet, placeholders(part.size))
    unsure = [one for key, one in sheet.inputs.items() if key in fed and one.origin == "example"]
    lacks = tuple(one.field.label for one in unsure if one.quantity is not None)
    if lacks:
        return Row(part.name, NOT_YET, part.worksheet, lacks=lacks, known=False)
    assumes = tuple(f"{one.field.label}: {one.shown(system)}" for one in unsure)
    return Row(part.name, _texts(sheet, system).fill(part.size), part.worksheet, assumes)


def _fed_by(sheet: Sheet, keys: list[str]) -> set[str]:
    """Every field and step on which these values rest."""
    return set(keys).union(*(step.needs for step in sheet.plan.steps_for(keys)))


def _texts(sheet: Sheet, system: System) -> Texts:
    return Texts(sheet.worksheet, sheet.reading, sheet.values, system)
