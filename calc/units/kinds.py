"""What a unit is, and the kinds of quantity there are: each with its SI unit and what readers are shown."""

import math
from typing import Literal, NamedTuple

System = Literal["us", "si"]
SYSTEMS: tuple[System, System] = ("us", "si")


class Unit(NamedTuple):
    """A unit: printed form, kind, `si = (number + offset) * factor`, ASCII form in links, other spellings."""

    text: str
    kind: str
    factor: float
    ascii: str
    words: str
    spellings: tuple[str, ...] = ()
    offset: float = 0.0

    def to_si(self, number: float) -> float:
        return (number + self.offset) * self.factor

    def from_si(self, value: float) -> float:
        return value / self.factor - self.offset


class DryBasis(Unit):
    """Moisture as meters read it: weight of water over the weight of dry wood; SI is over the whole weight."""

    def to_si(self, number: float) -> float:
        share = number * self.factor
        return share / (1 + share) if share > -1 else math.inf

    def from_si(self, value: float) -> float:
        return value / (1 - value) / self.factor if value < 1 else math.inf


class Kind(NamedTuple):
    """A kind of quantity: its SI unit, what readers of each system are shown, and what a person would call it."""

    name: str
    si: str
    us_shown: str
    si_shown: str
    words: str
    decimals: int | None = None  # shown with this many decimals; else by significant figures


class UnitError(ValueError):
    """A text that cannot be read as a quantity; `reason` completes the sentence "<field> …".

    `wants_example` is set where the reader is helped most by a number like those that the field takes.
    """

    def __init__(self, reason: str, wants_example: bool = False) -> None:
        super().__init__(reason)
        self.reason, self.wants_example = reason, wants_example


KINDS: dict[str, Kind] = {
    kind.name: kind
    for kind in (
        Kind("temperature", "K", "°F", "°C", "a temperature", 0),
        Kind("temperature_difference", "K", "F°", "K", "a temperature difference"),
        Kind("power", "W", "Btu/h", "kW", "heat each hour"),
        Kind("electric_power", "W", "W", "W", "electric power"),
        Kind("energy", "J", "Btu", "kWh", "an amount of heat"),
        Kind("volume", "m³", "gal", "L", "a volume"),
        Kind("flow", "m³/s", "gal/min", "L/min", "a water flow"),
        Kind("air_flow", "m³/s", "cfm", "m³/h", "an air flow"),
        Kind("length", "m", "ft", "m", "a length"),
        Kind("area", "m²", "ft²", "m²", "an area"),
        Kind("pressure_gauge", "Pa", "psi", "bar", "a pressure above the air outside"),
        Kind("pressure_absolute", "Pa", "psia", "kPa", "an absolute pressure"),
        Kind("pressure_difference", "Pa", "psi", "kPa", "a pressure difference"),
        Kind("draught", "Pa", "in w.c.", "Pa", "a chimney draught"),
        Kind("time", "s", "h", "h", "a time"),
        Kind("mass", "kg", "lb", "kg", "a weight"),
        Kind("mass_flow", "kg/s", "lb/h", "kg/h", "a mass flow"),
        Kind("money", "money", "$", "€", "an amount of money"),
        Kind("price_per_volume", "money/m³", "$/gal", "€/L", "a price"),
        Kind("price_per_energy", "money/J", "$/MMBtu", "€/kWh", "a price of heat"),
        Kind("price_per_mass", "money/kg", "$/ton", "€/t", "a price"),
        Kind("price_per_time", "money/s", "$/h", "€/h", "pay for an hour"),
        Kind("fraction", "1", "%", "%", "a share"),
        Kind("degree_days", "K·day", "°F·day", "K·day", "degree-days"),
        Kind("choice", "1", "", "", "a choice"),
        Kind("count", "1", "", "", "a number"),
        Kind("exponent", "1", "", "", "an exponent"),
        Kind("factor", "1", "", "", "a factor"),
        Kind("rate", "1/day", "a day", "a day", "how many a day"),
        Kind("settling_rate", "1/s", "/h", "/h", "how fast a temperature settles"),
        Kind("air_changes", "1/s", "/h", "/h", "air changes an hour"),
        Kind("heat_rate_per_length", "W/m", "Btu/(h·ft)", "W/m", "heat from each length"),
        Kind("heat_flux", "W/m²", "Btu/(h·ft²)", "W/m²", "heat from each area"),
        Kind("conductance", "W/K", "Btu/(h·°F)", "W/K", "heat lost for each degree"),
        Kind("conductance_per_area", "W/(m²·K)", "Btu/(h·ft²·°F)", "W/(m²·K)", "a U-value"),
        Kind("conductance_per_length", "W/(m·K)", "Btu/(h·ft·°F)", "W/(m·K)", "heat lost for each length and degree"),
        Kind("resistance_per_length", "m·K/W", "ft·°F·h/Btu", "m·K/W", "how well each length holds its heat"),
        Kind("thermal_resistance", "m²·K/W", "ft²·°F·h/Btu", "m²·K/W", "an R-value"),
        Kind("conductivity", "W/(m·K)", "Btu·in/(h·ft²·°F)", "W/(m·K)", "a conductivity"),
        Kind("density", "kg/m³", "lb/ft³", "kg/m³", "a density"),
        Kind("velocity", "m/s", "ft/s", "m/s", "a speed"),
        Kind("heat_capacity", "J/K", "Btu/°F", "kWh/K", "heat held for each degree"),
        Kind("specific_heat", "J/(kg·K)", "Btu/(lb·°F)", "kJ/(kg·K)", "a specific heat"),
        Kind("volume_heat_capacity", "J/(m³·K)", "Btu/(gal·°F)", "Wh/(L·K)", "heat held by each volume and degree"),
        Kind("heat_per_mass", "J/kg", "Btu/lb", "kWh/kg", "heat in each weight"),
        Kind("heat_per_volume", "J/m³", "Btu/gal", "kWh/L", "heat in each volume"),
        Kind("volume_per_power", "m³/W", "gal/(kBtu/h)", "L/kW", "volume for each heat rate"),
        Kind("volume_per_area", "m³/m²", "gal/(1000 ft²)", "L/m²", "volume for each floor area"),
        Kind("load_per_area", "Pa", "lb/ft²", "kPa", "weight on each area"),
        Kind("viscosity", "Pa·s", "cP", "mPa·s", "a viscosity"),
        Kind("specific_volume", "m³/kg", "ft³/lb", "m³/kg", "a specific volume"),
        Kind("pressure_per_length", "Pa/m", "psi/100 ft", "Pa/m", "pressure lost in each length"),
        Kind("expansion_rate", "1/K", "1/°F", "1/K", "growth for each degree"),
        Kind("time_per_heat", "s/J", "h/MMBtu", "h/kWh", "time for each heat"),
        Kind("temperature_rate", "K/s", "F°/h", "K/h", "how fast a temperature changes"),
        Kind("radiation", "J/m²", "kWh/m²", "kWh/m²", "sunshine on each area"),
        Kind("loss_growth", "W/(m²·K²)", "W/(m²·K²)", "W/(m²·K²)", "how a panel's loss grows"),
        Kind("hardness", "kg/m³", "mg/L", "mmol/L", "a hardness, as calcium carbonate"),
        Kind("concentration", "kg/m³", "mg/L", "mg/L", "how much is dissolved"),
        Kind("dose", "1", "gal/100 gal", "L/100 L", "a dose by volume"),
        Kind("acidity", "1", "", "", "a pH", 1),
        Kind("area_heat_capacity", "J/(m²·K)", "Btu/(ft²·°F)", "Wh/(m²·K)", "heat held by each floor area and degree"),
    )
}
