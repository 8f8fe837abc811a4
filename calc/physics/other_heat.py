"""Another heater on the same store: an electric element, a heat pump or solar panels, month by month.

A month is one sum: what it needs, what the heater could give, and the smaller of the two. What a month has too much of
does not wait for the next one: a store holds days, not months.
"""

from calc.law import (
    Constant,
    DegreeDays,
    ElectricWatt,
    Factor,
    Fraction,
    Joule,
    Kelvin,
    KelvinDifference,
    LossGrowth,
    Radiation,
    Second,
    SquareMetre,
    Watt,
    WattPerSquareMetre,
    WattPerSquareMetreKelvin,
    law,
)
from calc.units import DAY

# --- What a month needs ---


@law("yearly_heat * month_degree_days / year_degree_days + tap_load * month", source="degree-day-method")
def month_need(
    yearly_heat: Joule, month_degree_days: DegreeDays, year_degree_days: DegreeDays, tap_load: Watt, month: Second
) -> Joule:
    """Heat of a month in J: the rooms' heat of the year (J) shared out by degree-days, the taps' (W) by time (s)."""


@law(
    "january + february + march + april + may + june + july + august + september + october + november + december",
    source="definition",
)
def sum_of_year(
    january: Joule,
    february: Joule,
    march: Joule,
    april: Joule,
    may: Joule,
    june: Joule,
    july: Joule,
    august: Joule,
    september: Joule,
    october: Joule,
    november: Joule,
    december: Joule,
) -> Joule:
    """Heat of twelve months, J."""


@law(
    "january + february + march + april + may + june + july + august + september + october + november + december",
    source="definition",
)
def hours_of_year(
    january: Second,
    february: Second,
    march: Second,
    april: Second,
    may: Second,
    june: Second,
    july: Second,
    august: Second,
    september: Second,
    october: Second,
    november: Second,
    december: Second,
) -> Second:
    """Time of twelve months, s."""


# --- What a heater gives ---


@law("element_power", source="first-law")
def heat_of_element(element_power: ElectricWatt) -> Watt:
    """Heat in W of an electric element: all of its power."""


@law("min(store_top, highest_water)", source="definition")
def highest_reached(store_top: Kelvin, highest_water: Kelvin) -> Kelvin:
    """How hot, in K, a store charged to `store_top` (K) at most gets by a heater that ends at `highest_water` (K)."""


@law(
    "power * hours_a_day / seconds_per_day * month",
    constants={"seconds_per_day": Constant(DAY, "s", source="definition")},
    source="definition",
)
def most_in_month(power: Watt, hours_a_day: Second, month: Second) -> Joule:
    """Most heat in J that a heater (W) gives in a month (s), running so long (s) each day."""


@law(
    "power * hours_a_day / seconds_per_day / (design_load + tap_load)",
    constants={"seconds_per_day": Constant(DAY, "s", source="definition")},
    source="definition",
)
def share_of_coldest_day(power: Watt, hours_a_day: Second, design_load: Watt, tap_load: Watt) -> Fraction:
    """Share of the coldest day's load (rooms and taps, W) that a heater (W) carries, running so long (s) that day."""


@law("heat / (power - load)", source="first-law", never="heat <= 0 or power <= load")
def recharge_time(heat: Joule, power: Watt, load: Watt) -> Second:
    """Time in s to fill a store with `heat` (J), while the house takes `load` (W) of the heater's power (W).

    Raises NoSolution where there is nothing to fill, or the heater gives no more than the house takes.
    """


@law(
    "panel_area * max(eta0 * irradiance - a1 * max(panel_water - air, 0) - a2 * max(panel_water - air, 0) ** 2, 0)",
    source="iso-9806",
)
def panel_power(
    panel_area: SquareMetre,
    eta0: Fraction,
    irradiance: WattPerSquareMetre,
    a1: WattPerSquareMetreKelvin,
    a2: LossGrowth,
    panel_water: Kelvin,
    air: Kelvin,
) -> Watt:
    """Heat in W of solar panels (m²) by their efficiency curve, in sunshine of so many W/m²; none below zero.

    `panel_water` is the mean temperature of the water in them (K), `air` that of the air (K).
    """


@law(
    "panel_area * (1 - pipe_loss) * max(eta0 * radiation"
    " - (a1 * max(panel_water - air, 0) + a2 * max(panel_water - air, 0) ** 2) * sun_time, 0)",
    source="iso-9806",
    ranges={"pipe_loss": "0 % to 100 %"},
)
def panel_heat(
    panel_area: SquareMetre,
    pipe_loss: Fraction,
    eta0: Fraction,
    radiation: Radiation,
    a1: WattPerSquareMetreKelvin,
    a2: LossGrowth,
    panel_water: Kelvin,
    air: Kelvin,
    sun_time: Second,
) -> Joule:
    """Heat in J that panels bring the store in a month; a month in which they would lose heat counts nothing.

    The efficiency curve holds at each moment, so its sum over the hours of strong sun needs no more than the radiation
    of those hours (J/m²), their number (`sun_time`, s) and the air's mean temperature in them (K).
    """


@law("profile * radiation_year / profile_year", source="definition")
def scaled_radiation(profile: Radiation, radiation_year: Radiation, profile_year: Radiation) -> Radiation:
    """Strong sunshine of a month in J/m²: a place's own, scaled from its year's sum to the reader's."""


@law("month_radiation * strong_share", source="definition")
def strong_radiation(month_radiation: Radiation, strong_share: Fraction) -> Radiation:
    """Part of a month's radiation (J/m²) that comes while the sun is strong."""


@law("(lowest_useful + reached) / 2", source="definition")
def halfway(lowest_useful: Kelvin, reached: Kelvin) -> Kelvin:
    """Mean temperature in K of a store while it is charged from its lowest useful temperature to the one reached."""


@law("water + panel_excess", source="definition")
def panel_water(water: Kelvin, panel_excess: KelvinDifference) -> Kelvin:
    """Mean temperature in K of the water in panels that warm a store's `water` (K) through pipes and an exchanger."""


# --- What comes of it ---


@law("min(need, most)", source="first-law")
def heat_used(need: Joule, most: Joule) -> Joule:
    """Heat of a month that counts, J: no more than it needs, no more than there is."""


@law("used / need", source="definition", never="need <= 0")
def share_of_need(used: Joule, need: Joule) -> Fraction:
    """Share of a need that is covered. Raises NoSolution where nothing is needed."""


@law("most - used", source="definition")
def left_over(most: Joule, used: Joule) -> Joule:
    """Heat in J that came in months which did not need it."""


@law("heat / cop", source="definition", ranges={"cop": "0.5 to 20"})
def electricity(heat: Joule, cop: Factor) -> Joule:
    """Electricity in J for so much heat (J), at so much heat for each unit of it."""


@law("pump_power * running_time", source="definition")
def pump_electricity(pump_power: ElectricWatt, running_time: Second) -> Joule:
    """Electricity in J of a pump (W) that runs for so long (s)."""


@law("cop * (water - outdoor) / water", source="carnot", never="water <= outdoor")
def share_of_carnot(cop: Factor, water: Kelvin, outdoor: Kelvin) -> Fraction:
    """A heat pump's performance as a share of the most that any machine could reach between the two temperatures, K."""
