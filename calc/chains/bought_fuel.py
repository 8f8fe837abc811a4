"""The fuels that a house may burn: which one it is, the heat in it, a heater's efficiency; one key each on every page.

The stove that is still to come has its own wood and efficiency, `wood_heat_content` and `efficiency_wood`: what an old
wood heater made of its wood are other numbers.
"""

from collections.abc import Callable
from dataclasses import replace

from calc.engine.declare import Case, Cases, Field, Option, Step, Typical
from calc.physics import wood
from calc.physics.fuels import FUEL_WORDS, FUELS
from calc.units import unit_named
from calc.vocabulary import EFFICIENCY_BASIS, WOOD_CONTENT_NOW

OTHER = Option("other", "something else, or nothing yet")
FUEL_NOW = Field(
    "fuel_now",
    "choice",
    "Fuel you heat with now",
    options=(*(Option(fuel.key, fuel.label, FUEL_WORDS.get(fuel.key, ())) for fuel in FUELS.values()), OTHER),
)


def _efficiency(fuel_key: str, key: str, name: str, low: str = "40 %", high: str = "100 %") -> Field:
    fuel = FUELS[fuel_key]
    return Field(
        key,
        "fraction",
        f"Efficiency {name}",
        "Of the fuel's whole heat, its higher heating value, over a season.",
        low=low,
        high=high,
        uncertainty="5 %",
        typical=Typical(
            f"{fuel.efficiency * 100:.4g} %",
            fuel.efficiency_source,
            f"{fuel.efficiency_low * 100:.4g} %",
            f"{fuel.efficiency_high * 100:.4g} %",
            "The label or the service record of the heater.",
        ),
    )


_GAS = _efficiency("gas", "efficiency_gas", "on gas")
EFFICIENCIES = {
    "oil": _efficiency("oil", "efficiency_oil", "on oil"),
    "propane": _efficiency("propane", "efficiency_propane", "on propane"),
    "gas": _GAS,
    "gas-volume": _GAS,
    "electricity": _efficiency("electricity", "efficiency_electricity", "of electric heaters"),
    "heat-pump": _efficiency("heat-pump", "efficiency_heat_pump", "on a heat pump", "100 %", "600 %"),
    "pellets": _efficiency("pellets", "efficiency_pellets", "on pellets"),
    "wood": _efficiency("wood", "efficiency_wood_now", "of the wood heater you have", "20 %"),
    "kerosene": _efficiency("kerosene", "efficiency_kerosene", "on kerosene"),
    "hard-coal": _efficiency("hard-coal", "efficiency_coal", "on coal", "20 %"),
}
# Wood is sold by its whole heat; an efficiency quoted on the lower value counts only what does not leave as steam.
BASIS_NOW = replace(EFFICIENCY_BASIS, key="efficiency_basis_now", label="Efficiency of that heater is quoted on")
ON_LOWER_VALUE = (
    Step("higher_value_now", wood.higher_heating_value, "Heat in the wood by weight, higher value"),
    Step("lower_value_now", wood.lower_heating_value, "The same, lower value", higher_heating_value="higher_value_now"),
    Step(
        "efficiency_on_higher",
        wood.efficiency_on_higher_value,
        "Efficiency of the wood heater, higher value",
        efficiency="efficiency_wood_now",
        lower_value="lower_value_now",
        higher_value="higher_value_now",
    ),
)


def of_wood(step: Callable[[str], Step]) -> Cases:
    """A step with the efficiency of the wood heater that is there, on the higher value, whatever it is quoted on."""
    return Cases(
        "efficiency_basis_now",
        higher=Case(steps=(step("efficiency_wood_now"),)),
        lower=Case(steps=(*ON_LOWER_VALUE, step("efficiency_on_higher"))),
    )


def _content(fuel_key: str, key: str, name: str, us: str, si: str, low: str, high: str) -> Field:
    fuel = FUELS[fuel_key]
    kind = {"volume": "heat_per_volume", "mass": "heat_per_mass"}[fuel.bought_by]
    unit = unit_named(us, kind)
    return Field(
        key,
        kind,
        f"Heat content of {name}",
        "Higher heating value; the usual figure unless you know better.",
        low=f"{low} {us}",
        high=f"{high} {us}",
        us=us,
        si=si,
        unless_given=f"{unit.from_si(fuel.heat_content):,.6g} {us}",
    )


CONTENTS = {
    "oil": _content("oil", "oil_content", "heating oil", "Btu/gal", "kWh/L", "100,000", "160,000"),
    "propane": _content("propane", "propane_content", "propane", "Btu/gal", "kWh/L", "70,000", "115,000"),
    "gas-volume": _content("gas-volume", "gas_content", "natural gas", "Btu/ft³", "kWh/m³", "800", "1,300"),
    "pellets": _content("pellets", "pellet_content", "wood pellets", "MMBtu/ton", "kWh/kg", "10", "20"),
    "wood": WOOD_CONTENT_NOW,
    "kerosene": _content("kerosene", "kerosene_content", "kerosene", "Btu/gal", "kWh/L", "100,000", "160,000"),
    "hard-coal": _content("hard-coal", "coal_content", "hard coal", "MMBtu/ton", "kWh/kg", "10", "32"),
}
