"""The worksheets: one file each, and its line here."""

from calc.engine.declare import Worksheet
from calc.worksheets import air_coil, emitter_temperature, firing, floor, house_load, load_now, standby, stored_heat, tank_place, tank_size, tempering

WORKSHEETS: dict[str, Worksheet] = {
    module.WORKSHEET.key: module.WORKSHEET
    for module in (
        house_load,
        stored_heat,
        tank_size,
        standby,
        tank_place,
        emitter_temperature,
        firing,
        load_now,
        floor,
        tempering,
        air_coil,
    )
}
