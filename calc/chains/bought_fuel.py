"""The fuels that a house may burn: which one it is, the heat in it, a heater's efficiency; one key each on every page.

The stove that is still to come has its own wood and efficiency, `wood_heat_content` and `efficiency_wood`: what an old
wood heater made of its wood are other numbers.
"""

from collections.abc import Callable

from calc.engine.declare import Case, Cases, Field, Given, Option, Step, Typical
from calc.physics import wood
from calc.physics.fuels import FUEL_WORDS, FUELS
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
BASIS_NOW = Field(
    "efficiency_basis_now",
    "choice",
    "Efficiency of that heater is quoted on",
    EFFICIENCY_BASIS.hint,
    options=EFFICIENCY_BASIS.options,
    unless_given="higher",
)
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
DRY_WOOD = Given("dry_heating_value", "heat_per_mass", "Heat in oven-dry wood", "8,600 Btu/lb", "wood-heating-value")


def of_wood(step: Callable[[str], Step]) -> Cases:
    """A step with the efficiency of the wood heater that is there, on the higher value, whatever it is quoted on."""
    return Cases(
        "efficiency_basis_now",
        higher=Case(steps=(step("efficiency_wood_now"),)),
        lower=Case(steps=(*ON_LOWER_VALUE, step("efficiency_on_higher"))),
    )


def _content(key: str, name: str, kind: str, text: str, ends: tuple[str, str], us: str, si: str) -> Field:
    return Field(
        key,
        kind,
        f"Heat content of {name}",
        "Higher heating value; the usual figure unless you know better.",
        low=ends[0],
        high=ends[1],
        us=us,
        si=si,
        unless_given=text,
    )


CONTENTS = {
    "oil": _content(
        "oil_content",
        "heating oil",
        "heat_per_volume",
        "138,500 Btu/gal",
        ("100,000 Btu/gal", "160,000 Btu/gal"),
        "Btu/gal",
        "kWh/L",
    ),
    "propane": _content(
        "propane_content",
        "propane",
        "heat_per_volume",
        "91,452 Btu/gal",
        ("70,000 Btu/gal", "115,000 Btu/gal"),
        "Btu/gal",
        "kWh/L",
    ),
    "gas-volume": _content(
        "gas_content",
        "natural gas",
        "heat_per_volume",
        "1,037 Btu/ft3",
        ("800 Btu/ft3", "1,300 Btu/ft3"),
        "Btu/ft³",
        "kWh/m³",
    ),
    "pellets": _content(
        "pellet_content",
        "wood pellets",
        "heat_per_mass",
        "16.4 MMBtu/ton",
        ("10 MMBtu/ton", "20 MMBtu/ton"),
        "MMBtu/ton",
        "kWh/kg",
    ),
    "wood": WOOD_CONTENT_NOW,
    "kerosene": _content(
        "kerosene_content",
        "kerosene",
        "heat_per_volume",
        "135,000 Btu/gal",
        ("100,000 Btu/gal", "160,000 Btu/gal"),
        "Btu/gal",
        "kWh/L",
    ),
    "hard-coal": _content(
        "coal_content",
        "hard coal",
        "heat_per_mass",
        "25.09 MMBtu/ton",
        ("10 MMBtu/ton", "32 MMBtu/ton"),
        "MMBtu/ton",
        "kWh/kg",
    ),
}
