"""The parts that every plant of this kind has, in the order in which the sizing record lists them."""

from calc.engine.recorded import Part

STOVE = Part("Stove with a water jacket", "owner, installer")
STORE = Part("Store", "owner, installer")
STORE_PLACE = Part("Place for the store", "engineer, code office")
EMITTERS = Part("Emitters", "heating installer")
TAP_EXCHANGER = Part("Exchanger for the taps", "licensed plumber", "taps_from_store == 'no'")
TEMPERING_VALVE = Part("Tempering valve", "licensed plumber", "taps_from_store == 'no' and emitter != 'floor'")
CHARGE_PUMP = Part("Charging pump", "heating installer")
CHARGE_PIPE = Part("Pipe, stove to store", "heating installer")
EMITTER_PUMP = Part("House pump", "heating installer")
EMITTER_PIPE = Part("Pipe, store to house", "heating installer")
EXPANSION_TANK = Part("Expansion tank", "licensed installer")
RELIEF_VALVE = Part("Relief valve", "licensed installer")
HEAT_DUMP = Part("Heat dump", "installer, stove's maker")
FILL_WATER = Part("Fill water", "heating installer")

PARTS = tuple(part for part in list(vars().values()) if isinstance(part, Part))
