"""The worksheets: one file each, and its line here."""

from calc.engine.declare import Worksheet
from calc.worksheets import (
    air_coil,
    antifreeze,
    boiling,
    buried_pipe,
    charge_loop,
    emitter_temperature,
    expansion,
    firing,
    floor,
    fuel_cost,
    gravity_loop,
    house_load,
    load_now,
    pipe,
    power_cut,
    relief,
    standby,
    stored_heat,
    tank_place,
    tank_size,
    tempering,
    wood_use,
)

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
        wood_use,
        fuel_cost,
        pipe,
        charge_loop,
        gravity_loop,
        buried_pipe,
        expansion,
        antifreeze,
        boiling,
        relief,
        power_cut,
    )
}
