"""The worksheets: one file each, and its line here."""

from calc.engine.declare import Worksheet
from calc.worksheets import emitter_temperature, house_load, stored_heat, tank_size

WORKSHEETS: dict[str, Worksheet] = {
    module.WORKSHEET.key: module.WORKSHEET
    for module in (
        house_load,
        stored_heat,
        tank_size,
        emitter_temperature,
    )
}
