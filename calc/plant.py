"""The parts that every plant of this kind has, in the order in which the sizing record lists them."""

from calc.engine.recorded import Part

STORE = Part("Store")
STORE_FOR_BURN = Part("Store that the burn asks for")
STORE_PLACE = Part("Place for the store")
EMITTERS = Part("Emitters")
TAP_EXCHANGER = Part("Exchanger for the taps")
TEMPERING_VALVE = Part("Tempering valve")
CHARGE_PUMP = Part("Pump between stove and store")
CHARGE_PIPE = Part("Pipe between stove and store")
EMITTER_PUMP = Part("Pump to the emitters")
EMITTER_PIPE = Part("Pipe to the emitters")
EXPANSION_TANK = Part("Expansion tank")
RELIEF_VALVE = Part("Relief valve")
HEAT_DUMP = Part("Heat dump")

PARTS = tuple(part for part in list(vars().values()) if isinstance(part, Part))
