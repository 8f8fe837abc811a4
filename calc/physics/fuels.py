"""Fuels: the heat in what is bought, and what a unit of that heat costs once it is in the house.

Heat contents are higher heating values, as the bills and statistics of North America use them, and the efficiencies
beside them are on the same basis. A price is divided by the efficiency once: the heat content of this table is what the
fuel holds, never a "net" figure from which an efficiency has already been taken.
"""

from typing import NamedTuple

from calc.law import (
    Count,
    CubicMetre,
    Fraction,
    Joule,
    JoulePerCubicMetre,
    JoulePerKilogram,
    Kilogram,
    Money,
    MoneyPerCubicMetre,
    MoneyPerJoule,
    MoneyPerKilogram,
    MoneyPerSecond,
    Second,
    law,
)
from calc.units import BTU, FOOT, GALLON, POUND

CORD = 128 * FOOT**3
SHORT_TON = 2000 * POUND


class Fuel(NamedTuple):
    """A fuel as it is bought.

    `bought_by` is the kind of quantity on the bill: "volume", "mass" or "energy". `heat_content` is the higher heating
    value of one SI unit of it (J/m³, J/kg; 1 where the bill already counts energy), between `content_low` and
    `content_high` in what is sold under the name. `efficiency` is the share of that heat which an ordinary appliance
    gives the house over a season (for a heat pump: heat moved for each unit of electricity, so above 1).
    """

    key: str
    label: str
    bought_by: str
    us_unit: str
    si_unit: str
    heat_content: float
    content_low: float
    content_high: float
    content_source: str
    efficiency: float
    efficiency_low: float
    efficiency_high: float
    efficiency_source: str


def _fuel(
    key: str,
    label: str,
    bought_by: str,
    units: tuple[str, str],
    content: tuple[float, float, float],
    heat_content: float,
    content_source: str,
    efficiency: tuple[float, float, float],
    efficiency_source: str,
) -> Fuel:
    """A row of the table: `content` is (typical, low, high) Btu in the amount `heat_content`, in SI."""
    typical, low, high = (btu * BTU / heat_content for btu in content)
    us_unit, si_unit = units
    return Fuel(
        key, label, bought_by, us_unit, si_unit, typical, low, high, content_source, *efficiency, efficiency_source
    )


# Heat contents: US Energy Information Administration and 40 CFR 98 Table C-1 (US Government works, public domain).
# Efficiencies: those that the USDA Forest Products Laboratory's net figures imply, within ordinary ranges.
# Other words for them, as people write them.
FUEL_WORDS = {
    "oil": ("fuel oil", "heating oil", "no. 2 oil", "diesel"),
    "gas": ("natural gas", "methane", "mains gas"),
    "propane": ("lpg", "lp", "lp gas", "bottled gas"),
    "electricity": ("electric", "electrical", "resistance"),
}
FUELS: dict[str, Fuel] = {
    fuel.key: fuel
    for fuel in (
        _fuel(
            "oil",
            "Heating oil",
            "volume",
            ("gal", "L"),
            (138_500, 137_381, 138_700),
            GALLON,
            "eia-heat-contents",
            (0.83, 0.80, 0.87),
            "fpl-fuel-value",
        ),
        _fuel(
            "propane",
            "Propane",
            "volume",
            ("gal", "L"),
            (91_452, 91_000, 92_500),
            GALLON,
            "eia-heat-contents",
            (0.85, 0.78, 0.95),
            "efficiency-ranges",
        ),
        _fuel(
            "gas",
            "Natural gas, by energy (therms or kWh)",
            "energy",
            ("therm", "kWh"),
            (1, 1, 1),
            BTU,
            "definition",
            (0.82, 0.78, 0.96),
            "fpl-fuel-value",
        ),
        _fuel(
            "gas-volume",
            "Natural gas, by volume",
            "volume",
            ("ft³", "m³"),
            (1_037, 1_025, 1_039),
            FOOT**3,
            "eia-heat-contents",
            (0.82, 0.78, 0.96),
            "fpl-fuel-value",
        ),
        _fuel(
            "electricity",
            "Electricity, resistance heat",
            "energy",
            ("kWh", "kWh"),
            (1, 1, 1),
            BTU,
            "definition",
            (1.0, 0.98, 1.0),
            "definition",
        ),
        _fuel(
            "heat-pump",
            "Electricity, heat pump",
            "energy",
            ("kWh", "kWh"),
            (1, 1, 1),
            BTU,
            "definition",
            (2.4, 1.8, 3.0),
            "efficiency-ranges",
        ),
        _fuel(
            "pellets",
            "Wood pellets",
            "mass",
            ("ton", "t"),
            (16_400_000, 15_800_000, 17_000_000),
            SHORT_TON,
            "pellet-heat-content",
            (0.80, 0.70, 0.85),
            "efficiency-ranges",
        ),
        _fuel(
            "wood",
            "Firewood, mixed, seasoned",
            "volume",
            ("cord", "stère"),
            (20_000_000, 15_000_000, 29_000_000),
            CORD,
            "eia-heat-contents",
            (0.65, 0.50, 0.80),
            "efficiency-ranges",
        ),
        _fuel(
            "kerosene",
            "Kerosene",
            "volume",
            ("gal", "L"),
            (135_000, 131_900, 135_000),
            GALLON,
            "cfr-98-c1",
            (0.83, 0.80, 0.87),
            "fpl-fuel-value",
        ),
        _fuel(
            "hard-coal",
            "Hard coal (anthracite)",
            "mass",
            ("ton", "t"),
            (25_090_000, 24_000_000, 26_000_000),
            SHORT_TON,
            "cfr-98-c1",
            (0.70, 0.60, 0.80),
            "efficiency-ranges",
        ),
    )
}


@law("amount * heat_content", source="definition")
def heat_in_volume(amount: CubicMetre, heat_content: JoulePerCubicMetre) -> Joule:
    """Heat in J of a fuel bought by volume, m³ (oil, propane, firewood), on the basis of `heat_content`, J/m³."""


@law("amount * heat_content", source="definition")
def heat_in_mass(amount: Kilogram, heat_content: JoulePerKilogram) -> Joule:
    """Heat in J of a fuel bought by weight, kg (pellets, coal), on the basis of `heat_content`, J/kg."""


@law("heat_in_fuel * efficiency", source="definition", ranges={"efficiency": "1 % to 600 %"})
def heat_delivered(heat_in_fuel: Joule, efficiency: Fraction) -> Joule:
    """Heat in J that reaches the house from the heat in the fuel, J; a heat pump's `efficiency` is above 100 %.

    Heat content and efficiency must be on the same basis, both higher or both lower heating value. Raises OutOfRange
    for an efficiency below 1 % or above 600 %.
    """


@law("heat / (heat_content * efficiency)", source="definition", ranges={"efficiency": "1 % to 600 %"})
def volume_needed(heat: Joule, heat_content: JoulePerCubicMetre, efficiency: Fraction) -> CubicMetre:
    """Fuel sold by volume, m³, that delivers `heat` (J). Raises OutOfRange like `heat_delivered`."""


@law("heat / (heat_content * efficiency)", source="definition", ranges={"efficiency": "1 % to 600 %"})
def mass_needed(heat: Joule, heat_content: JoulePerKilogram, efficiency: Fraction) -> Kilogram:
    """Fuel sold by weight, kg, that delivers `heat` (J). Raises OutOfRange like `heat_delivered`."""


@law("heat / (volume * heat_content)", source="definition")
def efficiency_of_volume(heat: Joule, volume: CubicMetre, heat_content: JoulePerCubicMetre) -> Fraction:
    """Efficiency on the basis of `heat_content` with which a fuel sold by volume, m³, has delivered `heat` (J)."""


@law("heat / efficiency", source="definition", ranges={"efficiency": "1 % to 600 %"})
def energy_needed(heat: Joule, efficiency: Fraction) -> Joule:
    """Fuel billed by energy, J, that delivers `heat` (J). Raises OutOfRange like `heat_delivered`."""


@law("price / (heat_content * efficiency)", source="definition", ranges={"efficiency": "1 % to 600 %"})
def delivered_price_by_volume(
    price: MoneyPerCubicMetre, heat_content: JoulePerCubicMetre, efficiency: Fraction
) -> MoneyPerJoule:
    """Price of heat in the house from a fuel sold by volume. Raises OutOfRange like `heat_delivered`."""


@law("price / (heat_content * efficiency)", source="definition", ranges={"efficiency": "1 % to 600 %"})
def delivered_price_by_mass(
    price: MoneyPerKilogram, heat_content: JoulePerKilogram, efficiency: Fraction
) -> MoneyPerJoule:
    """Price of heat in the house from a fuel sold by weight. Raises OutOfRange like `heat_delivered`."""


@law("price / efficiency", source="definition", ranges={"efficiency": "1 % to 600 %"})
def delivered_price_by_energy(price: MoneyPerJoule, efficiency: Fraction) -> MoneyPerJoule:
    """Price of heat in the house from a fuel billed by energy: gas, power. Raises OutOfRange like `heat_delivered`."""


@law("pay * time_each_year / heat_each_year", source="definition")
def labour_price(pay: MoneyPerSecond, time_each_year: Second, heat_each_year: Joule) -> MoneyPerJoule:
    """What the reader's own hours add to each unit of heat delivered, if they are given a price."""


@law("(other_price - labour) * heat_content * efficiency", source="definition", ranges={"efficiency": "1 % to 600 %"})
def break_even_price(
    other_price: MoneyPerJoule, labour: MoneyPerJoule, heat_content: JoulePerCubicMetre, efficiency: Fraction
) -> MoneyPerCubicMetre:
    """Price of firewood at which its heat, labour counted, costs as much as the other fuel's delivered heat.

    Below zero when the labour alone costs more than the other fuel. Raises OutOfRange like `heat_delivered`.
    """


@law("heat * delivered_price", source="definition")
def cost_of_heat(heat: Joule, delivered_price: MoneyPerJoule) -> Money:
    """What an amount of delivered heat costs, a winter's for example."""


@law("amount * price", source="definition")
def bill_by_volume(amount: CubicMetre, price: MoneyPerCubicMetre) -> Money:
    """What an amount of fuel sold by volume costs, taxes and delivery included where the price includes them."""


@law("amount * price", source="definition")
def bill_by_mass(amount: Kilogram, price: MoneyPerKilogram) -> Money:
    """What an amount of fuel sold by weight costs."""


@law("amount * price", source="definition")
def bill_by_energy(amount: Joule, price: MoneyPerJoule) -> Money:
    """What an amount of energy costs that is billed as such: gas, power."""


@law("delivered_price + labour", source="definition")
def price_with_labour(delivered_price: MoneyPerJoule, labour: MoneyPerJoule) -> MoneyPerJoule:
    """Price of heat in the house with the reader's own hours counted."""


@law("cost_now - cost_of_wood", source="definition")
def saving_each_year(cost_now: Money, cost_of_wood: Money) -> Money:
    """What a winter on wood saves beside the fuel used now; below zero when wood costs more."""


@law("installed_cost / max(saving_each_year, 0)", source="definition")
def years_to_repay(installed_cost: Money, saving_each_year: Money) -> Count:
    """Years until yearly savings add up to the installed cost, without interest or upkeep.

    Raises ZeroDivisionError when nothing is saved: it is then never repaid.
    """
