"""Safety: expansion, relief, vent, the minutes to boiling when a pump stops, the dump, and the steam of a burst.

Each law here guards against injury: it needs two independent outside checks. They size and explain; they do not stand
in for the local code, the maker's manual or a licensed person. No law adds a hidden margin.
"""

from calc.law import (
    AbsolutePascal,
    Constant,
    CubicMetre,
    CubicMetrePerKilogram,
    Density,
    ElectricWatt,
    Factor,
    Fraction,
    GaugePascal,
    Joule,
    JoulePerKilogram,
    JoulePerKilogramKelvin,
    Kelvin,
    KelvinDifference,
    Kilogram,
    MassFlow,
    Metre,
    PascalDifference,
    PerKelvin,
    Second,
    Velocity,
    Watt,
    law,
)
from calc.physics.pipes import GRAVITY
from calc.units import PSI

# --- expansion -------------------------------------------------------------------------------------------------------


@law(
    "system_volume * (cold_density / hot_density - 1 - 3 * metal_expansion * temperature_rise)",
    source="ashrae-expansion",
    ranges={"hot_density": "700 kg/m³ to 1200 kg/m³"},
    safety=True,
)
def water_expansion(
    system_volume: CubicMetre,
    cold_density: Density,
    hot_density: Density,
    metal_expansion: PerKelvin,
    temperature_rise: KelvinDifference,
) -> CubicMetre:
    """Volume in m³ by which a system's water outgrows its vessels from the cold fill to the stove's high limit.

    The densities are those of the fluid in the system, water or mixture, cold and hot. `metal_expansion` is the growth
    in length of tank and pipe for each degree: 0 takes no credit for it, the safe way and the usual one here.
    """


@law("hot - cold", source="definition", safety=True)
def temperature_rise(hot: Kelvin, cold: Kelvin) -> KelvinDifference:
    """From the cold filling to the stove's high limit, K."""


@law(
    "cold_density / hot_density - 1",
    source="ashrae-expansion",
    ranges={"hot_density": "700 kg/m³ to 1200 kg/m³"},
    safety=True,
)
def expansion_share(cold_density: Density, hot_density: Density) -> Fraction:
    """By how much of its cold volume a fluid grows between two temperatures."""


@law(
    "min(share_of_setting * relief_setting, relief_setting - least_gap)",
    constants={
        "share_of_setting": Constant(0.9, "1", source="common-practice"),
        "least_gap": Constant(7 * PSI, "Pa", source="common-practice", note="7 psi, 0.5 bar"),
    },
    source="common-practice",
    ranges={"relief_setting": "0.5 bar to 11 bar"},
    safety=True,
)
def highest_pressure(relief_setting: GaugePascal) -> GaugePascal:
    """Highest gauge pressure in Pa that the expanded water may reach at the relief valve.

    The smaller of 90 % of the setting and the setting less 7 psi, so that the valve never weeps.
    """


@law(
    "density * gravity * height_above_vessel + top_pressure + pump_pressure",
    constants={"gravity": GRAVITY},
    source="hydrostatics",
    safety=True,
)
def fill_pressure(
    density: Density, height_above_vessel: Metre, top_pressure: GaugePascal, pump_pressure: PascalDifference
) -> GaugePascal:
    """Gauge pressure in Pa of the cold fill at the vessel, also the charge of its air side before water is let in.

    `top_pressure` is what is kept at the system's highest point; `pump_pressure` is nothing where the vessel joins at
    the pump's suction side, and the pump's whole pressure where it joins behind the pump.
    """


@law(
    "1 - (lowest + barometer) / (highest + barometer)",
    source="ashrae-expansion",
    ranges={"highest": "0 bar to 20 bar"},
    safety=True,
)
def acceptance(lowest: GaugePascal, highest: GaugePascal, barometer: AbsolutePascal) -> Fraction:
    """Share of a closed vessel that fills with water between two gauge pressures (Pa) at the site's air pressure (Pa).

    Absolute pressures count, so the barometer of the place stands in it. Zero or less if the lowest is not the lower.
    """


@law("(water_expansion + reserve) / max(acceptance, 0)", source="ashrae-expansion", safety=True)
def vessel_volume(water_expansion: CubicMetre, reserve: CubicMetre, acceptance: Fraction) -> CubicMetre:
    """Total volume in m³ of a closed vessel with a membrane; none is large enough for an acceptance of zero."""


@law(
    "max(reserve_share * system_volume, least_reserve)",
    constants={
        "reserve_share": Constant(0.005, "1", source="en-12828"),
        "least_reserve": Constant(0.003, "m**3", source="en-12828", note="3 L"),
    },
    source="en-12828",
    safety=True,
)
def water_reserve(system_volume: CubicMetre) -> CubicMetre:
    """Water in m³ that a closed vessel holds when cold, against small losses: 0.5 % of the system and 3 L at least."""


@law(
    "(water_expansion + reserve) / max(barometer / (lowest + barometer) - barometer / (highest + barometer), 0)",
    source="ashrae-expansion",
    safety=True,
)
def plain_tank_volume(
    water_expansion: CubicMetre,
    reserve: CubicMetre,
    lowest: GaugePascal,
    highest: GaugePascal,
    barometer: AbsolutePascal,
) -> CubicMetre:
    """Total volume in m³ of an old closed tank without a membrane, its air at the site's pressure before filling."""


@law("water_expansion + standing_water", source="definition", safety=True)
def open_tank_volume(water_expansion: CubicMetre, standing_water: CubicMetre) -> CubicMetre:
    """Volume in m³ an open expansion tank needs between its bottom and its overflow.

    `standing_water` is what it holds when all is cold, so that evaporation does not let air into the pipes.
    """


# --- boiling ---------------------------------------------------------------------------------------------------------


@law("store_top + rise", source="first-law", safety=True)
def outlet_at_peak(store_top: Kelvin, rise: KelvinDifference) -> Kelvin:
    """Hottest water in the plant in K: the stove's outlet at the fire's peak, with a full store feeding its inlet."""


@law("store_top + rise / peak_factor", source="first-law", safety=True, ranges={"peak_factor": "1 to 5"})
def outlet_on_average(store_top: Kelvin, rise: KelvinDifference, peak_factor: Factor) -> Kelvin:
    """Stove's outlet in K at its average output, the flow being that which gives the `rise` (K) at the peak."""


# --- relief and vent -------------------------------------------------------------------------------------------------


@law("water_output * peak_factor", source="definition", ranges={"peak_factor": "1 to 5"}, safety=True)
def peak_output(water_output: Watt, peak_factor: Factor) -> Watt:
    """Heat to the water in W at the fire's peak, from the mean over a burn."""


@law(
    "overpressure * relief_setting + barometer",
    constants={"overpressure": Constant(1.1, "1", source="relief-codes", note="10 % above the setting")},
    source="relief-codes",
    safety=True,
)
def relieving_pressure(relief_setting: GaugePascal, barometer: AbsolutePascal) -> AbsolutePascal:
    """Absolute pressure in Pa at which a relief valve passes its full flow: 10 % over its setting."""


@law(
    "h0 - h1 * (boiling - hundred) - h2 * (boiling - hundred) ** 2 - h3 * (boiling - hundred) ** 3",
    constants={
        "hundred": Constant(373.15, "K", source="definition", note="100 °C"),
        "h0": Constant(2.256491e6, "J/kg", source="iapws-if97", note="fitted"),
        "h1": Constant(2640.235, "J/kg/K", source="iapws-if97", note="fitted"),
        "h2": Constant(3.460472, "J/kg/K**2", source="iapws-if97", note="fitted"),
        "h3": Constant(0.01744922, "J/kg/K**3", source="iapws-if97", note="fitted"),
    },
    source="iapws-if97",
    ranges={"boiling": "50 °C to 170 °C"},
    safety=True,
)
def latent_heat(boiling: Kelvin) -> JoulePerKilogram:
    """Heat in J/kg that turns boiling water into steam: a fit within 0.01 % of IAPWS-IF97 from 50 to 170 °C."""


@law(
    "v0 * (pressure / atmosphere) ** -0.93694",
    constants={
        "v0": Constant(1.67321, "m**3/kg", source="iapws-if97", note="fitted"),
        "atmosphere": Constant(101325.0, "Pa", source="definition"),
    },
    source="iapws-if97",
    ranges={"pressure": "40 kPa to 700 kPa"},
    safety=True,
)
def steam_volume(pressure: AbsolutePascal) -> CubicMetrePerKilogram:
    """Volume in m³/kg of steam just off the boil: a fit within 0.3 % of IAPWS-IF97 from 40 to 700 kPa."""


@law("peak_output / latent_heat", source="relief-codes", ranges={"latent_heat": "1 MJ/kg to 3 MJ/kg"}, safety=True)
def relief_steam(peak_output: Watt, latent_heat: JoulePerKilogram) -> MassFlow:
    """Steam in kg/s that a relief valve must pass when all of the fire's heat goes into boiling."""


@law(
    "max(least_bore, bore_of_one * (peak_output / one_kilowatt) ** (1 / 3))",
    constants={
        "least_bore": Constant(0.025, "m", source="pn-91-b-02413"),
        "bore_of_one": Constant(0.00808, "m", source="pn-91-b-02413"),
        "one_kilowatt": Constant(1000.0, "W", source="definition"),
    },
    source="pn-91-b-02413",
    ranges={"peak_output": "0.1 kW to 1000 kW"},
    safety=True,
)
def open_vent_bore(peak_output: Watt) -> Metre:
    """Least bore in m of the pipe from stove to open tank: 25 mm, more above 30 kW."""


@law(
    "4 * relief_steam * steam_volume / (pi * bore ** 2)",
    source="definition",
    ranges={"bore": "5 mm to 200 mm"},
    safety=True,
)
def vent_steam_velocity(relief_steam: MassFlow, steam_volume: CubicMetrePerKilogram, bore: Metre) -> Velocity:
    """Speed in m/s of the steam in an open vent when all of the fire's heat goes into boiling."""


@law(
    "water_height * (cold_density / hot_density - 1)",
    source="hydrostatics",
    ranges={"hot_density": "700 kg/m³ to 1200 kg/m³"},
    safety=True,
)
def vent_rise(water_height: Metre, cold_density: Density, hot_density: Density) -> Metre:
    """How much higher in m hot water stands in a vent than the cold water that balances it, pump at rest."""


# --- power cut -------------------------------------------------------------------------------------------------------


@law(
    "wood_left * heating_value * share_to_water",
    source="first-law",
    ranges={"share_to_water": "0 % to 100 %"},
    safety=True,
)
def fire_heat_left(wood_left: Kilogram, heating_value: JoulePerKilogram, share_to_water: Fraction) -> Joule:
    """Heat in J that the wood still in the fire will give the water."""


@law("jacket_volume + loop_volume", source="definition", safety=True)
def standing_volume(jacket_volume: CubicMetre, loop_volume: CubicMetre) -> CubicMetre:
    """Water in m³ that takes up the heat: the jacket's, and the gravity loop's only where it is shown to flow."""


@law(
    "standing_volume * density * specific_heat * max(boiling - hottest_outlet, 0)",
    source="first-law",
    safety=True,
)
def heat_to_boiling(
    standing_volume: CubicMetre,
    density: Density,
    specific_heat: JoulePerKilogramKelvin,
    boiling: Kelvin,
    hottest_outlet: Kelvin,
) -> Joule:
    """Heat in J that this water takes up before it boils, from the hottest outlet of ordinary running."""


@law(
    "max(min(hottest_outlet + heat / (standing_volume * density * specific_heat), boiling), hottest_outlet)",
    source="first-law",
    ranges={"standing_volume": "0.00001 m³ to 1000 m³"},
    safety=True,
)
def hottest_water(
    hottest_outlet: Kelvin,
    heat: Joule,
    standing_volume: CubicMetre,
    density: Density,
    specific_heat: JoulePerKilogramKelvin,
    boiling: Kelvin,
) -> Kelvin:
    """Hottest that the standing water gets in K when `heat` (J) goes into it: it stays at boiling once it is there."""


@law("net_output * time_until_spent", source="first-law", safety=True)
def heat_into_standing_water(net_output: Watt, time_until_spent: Second) -> Joule:
    """Heat in J that goes into the standing water until the fire is spent."""


@law("max(peak_output - dump_output, 0)", source="first-law", safety=True)
def net_output(peak_output: Watt, dump_output: Watt) -> Watt:
    """Heat in W that is left to warm the standing water when a dump takes its part."""


@law("fire_heat_left / peak_output", source="first-law", ranges={"peak_output": "1 W to 1000 kW"}, safety=True)
def time_until_spent(fire_heat_left: Joule, peak_output: Watt) -> Second:
    """Time in s for which the fire can keep up its peak output with the wood it has."""


@law(
    "heat_to_boiling / net_output",
    source="first-law",
    safety=True,
    never="heat_to_boiling > net_output * time_until_spent or net_output == 0",
)
def time_to_boiling(heat_to_boiling: Joule, net_output: Watt, time_until_spent: Second) -> Second:
    """Time in s until the standing water boils.

    Raises NoSolution, "never", where the fire is spent first or the dump takes all of its heat.
    """


@law("max(net_output * time_until_spent - heat_to_boiling, 0)", source="first-law", safety=True)
def heat_boiled_off(net_output: Watt, time_until_spent: Second, heat_to_boiling: Joule) -> Joule:
    """Heat in J that is left to boil water away by the time the fire is spent; zero means that it does not boil."""


@law("heat_boiled_off / latent_heat", source="first-law", ranges={"latent_heat": "1 MJ/kg to 3 MJ/kg"}, safety=True)
def water_boiled_off(heat_boiled_off: Joule, latent_heat: JoulePerKilogram) -> Kilogram:
    """Water in kg that leaves as steam before the fire is spent."""


@law("peak_output * fire_share", source="first-law", ranges={"fire_share": "0 % to 100 %"}, safety=True)
def dump_needed(peak_output: Watt, fire_share: Fraction) -> Watt:
    """Heat in W that a dump must carry off: all of the peak, or the share left by a damper that fails shut."""


@law(
    "pump_power * running_time / inverter_efficiency",
    source="first-law",
    ranges={"inverter_efficiency": "10 % to 100 %"},
    safety=True,
)
def battery_energy(pump_power: ElectricWatt, running_time: Second, inverter_efficiency: Fraction) -> Joule:
    """Energy in J that a battery must give to keep a pump running until the fire is spent."""


# --- burst -----------------------------------------------------------------------------------------------------------


@law(
    "specific_heat * max(hot - boiling, 0) / latent_heat",
    source="flash",
    ranges={"latent_heat": "1 MJ/kg to 3 MJ/kg"},
    safety=True,
)
def flash_fraction(
    hot: Kelvin, boiling: Kelvin, specific_heat: JoulePerKilogramKelvin, latent_heat: JoulePerKilogram
) -> Fraction:
    """Share of hot water's mass that turns to steam when its pressure is let go, at constant enthalpy.

    `boiling` is at the pressure outside, `specific_heat` at the mean of the two, `latent_heat` at `boiling`. Exactly
    nothing when the water is no hotter than that.
    """


@law("volume * density * flash_fraction", source="definition", safety=True)
def flash_steam(volume: CubicMetre, density: Density, flash_fraction: Fraction) -> Kilogram:
    """Steam in kg from a volume of hot water that is let go; `density` is that of the hot water."""


@law("flash_steam * steam_volume", source="definition", safety=True)
def flash_steam_volume(flash_steam: Kilogram, steam_volume: CubicMetrePerKilogram) -> CubicMetre:
    """Space in m³ that this steam takes once it is out."""
