"""The parts that every plant of this kind has, in the order in which the sizing record lists them."""

from calc.engine.recorded import Part

STORE = Part("Store", "owner and installer")
STORE_FOR_BURN = Part("Store that the burn asks for", "owner and installer")
STORE_PLACE = Part("Place for the store", "engineer or code office")
EMITTERS = Part("Emitters", "heating installer")
TAP_EXCHANGER = Part("Exchanger for the taps", "licensed plumber")
TEMPERING_VALVE = Part("Tempering valve", "licensed plumber")
CHARGE_PUMP = Part("Pump between stove and store", "heating installer")
CHARGE_PIPE = Part("Pipe between stove and store", "heating installer")
EMITTER_PUMP = Part("Pump to the emitters", "heating installer")
EMITTER_PIPE = Part("Pipe to the emitters", "heating installer")
EXPANSION_TANK = Part("Expansion tank", "licensed installer")
RELIEF_VALVE = Part("Relief valve", "licensed installer, by the code")
HEAT_DUMP = Part("Heat dump", "licensed installer and the stove's maker")
FILL_WATER = Part("Fill water", "heating installer")

PARTS = tuple(part for part in list(vars().values()) if isinstance(part, Part))
