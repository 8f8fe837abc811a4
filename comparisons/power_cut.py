"""Power cuts: the heating of a jacket marched by SciPy, an outlet by enthalpy, sums by pint, and by hand."""

from functools import partial

from calc.law import Law
from calc.physics import pipes, safety, water
from comparisons.check import At, Check, Published

SCIPY = Published(
    "SciPy and CoolProp",
    "A jacket heated until it boils, marched in time",
    "2025",
    "1.18.1, 8.0.0",
    "numerical solution",
)
IAPWS = Published("iapws", "Stove's outlet by enthalpy, IAPWS-IF97", "2025", "version 1.5.5", "independent library")
PINT = Published("pint", "The same sum with units carried by the library", "2025", "version 0.26", "own arithmetic")
TABLE_1 = Published(
    "By hand",
    "First check table, whole evenings by hand: 585,400 Btu to water",
    "2025",
    "820 gal at 60 % of 6880 Btu/lb",
    "own arithmetic",
)
TABLE_2 = Published(
    "By hand",
    "Second check table, an evening by hand: 160,000 Btu to water",
    "2025",
    "35.8 lb at 65 % of 6880 Btu/lb",
    "own arithmetic",
)
HAND = Published(
    "By hand", "Worked by hand for this project", "2025", "the sum is written out in the check", "own arithmetic"
)

GALLON, BTU, FAHRENHEIT = 3.785411784e-3, 1055.05585262, 5 / 9

# The case: 12 gal of jacket at 190 °F, 80,000 Btu/h at the peak, open at 5,000 ft, where water boils at 202.83 °F.
_BOILING, _START, _GALLONS, _PEAK = 202.83, 190.0, 12.0, 80000.0


def _march(until_seconds: float | None = None) -> tuple[float, float]:
    """Seconds until the jacket boils, and heat in J still to come by then from a fire that lasts `until_seconds`."""
    from CoolProp.CoolProp import PropsSI
    from scipy.integrate import solve_ivp

    kelvin = [(degrees + 459.67) * FAHRENHEIT for degrees in (_START, _BOILING)]
    mass = _GALLONS * GALLON * PropsSI("D", "T", kelvin[0], "P", 6e5, "Water")
    power = _PEAK * BTU / 3600

    def warming(_: float, temperature: list[float]) -> list[float]:
        return [power / mass / PropsSI("C", "T", temperature[0], "P", 6e5, "Water")]

    def boils(_: float, temperature: list[float]) -> float:
        return float(temperature[0] - kelvin[1])

    boils.terminal = True  # type: ignore[attr-defined]
    run = solve_ivp(warming, (0, 7200), [kelvin[0]], events=boils, rtol=1e-9, max_step=5)
    seconds = float(run.t_events[0][0])
    return seconds, power * ((until_seconds or seconds) - seconds)


def _march_seconds() -> float:
    return _march()[0]


def _march_heat() -> float:
    return _march()[0] * _PEAK * BTU / 3600


def _march_left() -> float:
    return _march(3600)[1]


def _outlet(btu_per_hour: float = 60_000) -> float:
    import iapws

    top = iapws.IAPWS97(T=(180 + 459.67) * FAHRENHEIT, P=0.6)
    enthalpy = top.h + btu_per_hour * BTU / 3600 / (4 * GALLON / 60 * top.rho) / 1e3
    return float(iapws.IAPWS97(P=0.6, h=enthalpy).T)


def _pint(text: str, unit: str) -> float:
    import pint

    quantity = pint.UnitRegistry()
    return float(quantity.parse_expression(text).to(unit).magnitude)


def _by_pint(topic: str, law: Law, given: dict[str, str | At], theirs: str, text: str, unit: str) -> Check:
    again = partial(_pint, text, unit)
    because = "the same sum, so only the printed digits differ"
    return Check(topic, text, law, given, theirs, "0.05 %", because, PINT, again)


def _hand(topic: str, where: str, law: Law, given: dict[str, str | At], theirs: str) -> Check:
    return Check(topic, where, law, given, theirs, "0.05 %", "a sum by hand, rounded as printed", HAND)


_HEAT: dict[str, str | At] = {
    "standing_volume": "12 gal",
    "density": At(water.density, {"temperature": "190 °F"}),
    "specific_heat": At(water.specific_heat, {"temperature": "196.4 °F"}),
    "boiling": "202.83 °F",
    "hottest_outlet": "190 °F",
}
_TIME: dict[str, str | At] = {
    "heat_to_boiling": At(safety.heat_to_boiling, _HEAT),
    "net_output": At(safety.net_output, {"peak_output": "80000 Btu/h", "dump_output": "0 Btu/h"}),
    "time_until_spent": "1 h",
}
_180: dict[str, str | At] = {"temperature": "180 °F"}


def _warmed(pounds: float, start: float, heat: float) -> float:
    """K to which so many pounds of water at 0.6 MPa come from a start in °F by a heat in Btu, by enthalpy."""
    import iapws

    cold = iapws.IAPWS97(T=(start + 459.67) * FAHRENHEIT, P=0.6)
    return float(iapws.IAPWS97(P=0.6, h=cold.h + heat * BTU / (pounds * 0.45359237) / 1e3).T)


_STANDING: dict[str, str | At] = {
    "hottest_outlet": "190 °F",
    "standing_volume": "12 gal",
    "density": "8.07 lb/gal",
    "specific_heat": "1.0037 Btu/(lb·°F)",
    "boiling": "202.83 °F",
}
HOTTEST = [
    # 12 gal × 8.07 lb/gal = 96.84 lb; 500 Btu warm it by 500 ÷ (96.84 × 1.0037) = 5.144 °F.
    Check(
        "Power cut", "500 Btu into 12 gal at 190 °F", safety.hottest_water, {"heat": "500 Btu"} | _STANDING,
        "195.14 °F", "0.02 F°", "one mean specific heat over five degrees", IAPWS,
        lambda: _warmed(96.84, 190.0, 500.0),
    ),
    Check(
        "Power cut", "much more than boiling takes", safety.hottest_water, {"heat": "20000 Btu"} | _STANDING,
        "202.83 °F", "0.001 F°", "boiling water gets no hotter in the open", HAND,
    ),
    Check(
        "Power cut", "nothing left by the dump", safety.hottest_water, {"heat": "0 Btu"} | _STANDING,
        "190 °F", "0.001 F°", "no heat, no rise", HAND,
    ),
    Check(
        "Power cut", "20,000 Btu/h for 2 h", safety.heat_into_standing_water,
        {"net_output": "20000 Btu/h", "time_until_spent": "2 h"},
        "40000 Btu", "0.001 %", "a product of two printed numbers", HAND,
    ),
    Check(
        "Power cut", "5 kW for 90 min", safety.heat_into_standing_water,
        {"net_output": "5 kW", "time_until_spent": "90 min"},
        "27000000 J", "0.001 %", "the library's own units", PINT,
        lambda: _pint("5 kW * 90 min", "J"),
    ),
]  # fmt: skip

_RISE = At(
    pipes.rise,
    {
        "heat": "60000 Btu/h",
        "flow": "4 gal/min",
        "volume_heat_capacity": At(
            pipes.volume_heat_capacity,
            {"density": At(water.density, _180), "specific_heat": At(water.specific_heat, _180)},
        ),
    },
)

CHECKS: list[Check] = [
    *HOTTEST,
    Check(
        topic="Hottest outlet at the fire's peak",
        where="store at 180 °F, 60,000 Btu/h into 4 gal/min metered there",
        law=safety.outlet_at_peak,
        given={
            "store_top": "180 °F",
            "rise": _RISE,
        },
        theirs="210.73 °F",
        within="0.15 F°",
        because="specific heat at 180 °F stands for the mean on the way up",
        source=IAPWS,
        recompute=_outlet,
    ),
    _hand(
        "Hottest outlet at the fire's peak",
        "180 + 30.8 °F",
        safety.outlet_at_peak,
        {"store_top": "180 °F", "rise": "30.8 F°"},
        "210.8 °F",
    ),
    Check(
        topic="Outlet at the average output",
        where="store at 180 °F, 30,000 Btu/h on average of a fire that peaks at 60,000, into 4 gal/min metered there",
        law=safety.outlet_on_average,
        given={"store_top": "180 °F", "rise": _RISE, "peak_factor": "2"},
        theirs="195.38 °F",
        within="0.15 F°",
        because="specific heat at 180 °F stands for the mean on the way up",
        source=IAPWS,
        recompute=partial(_outlet, 30_000),
    ),
    _hand(
        "Outlet at the average output",
        "180 + 30.8 / 2 °F",
        safety.outlet_on_average,
        {"store_top": "180 °F", "rise": "30.8 F°", "peak_factor": "2"},
        "195.4 °F",
    ),
    Check(
        topic="Heat until the jacket boils",
        where="12 gal from 190 °F to 202.83 °F",
        law=safety.heat_to_boiling,
        given=_HEAT,
        theirs="1248.0 Btu",
        within="0.2 %",
        because="one specific heat instead of one for each degree; two standards of water",
        source=SCIPY,
        recompute=_march_heat,
    ),
    Check(
        topic="Minutes to boiling",
        where="12 gal at 190 °F, 80,000 Btu/h, open at 5,000 ft",
        law=safety.time_to_boiling,
        given=_TIME,
        theirs="56.160 s",
        within="0.2 %",
        because="one specific heat instead of one for each degree; two standards of water",
        source=SCIPY,
        recompute=_march_seconds,
    ),
    Check(
        topic="Heat left to boil water away",
        where="the same jacket, when the fire lasts an hour",
        law=safety.heat_boiled_off,
        given={
            "net_output": "80000 Btu/h",
            "time_until_spent": "1 h",
            "heat_to_boiling": At(safety.heat_to_boiling, _HEAT),
        },
        theirs="78752 Btu",
        within="0.02 %",
        because="one specific heat instead of one for each degree, in a small part of the sum",
        source=SCIPY,
        recompute=_march_left,
    ),
    _hand(
        "Heat until the jacket boils",
        "0.05 m³ × 970 kg/m³ × 4200 J/(kg·K) × (95 - 85) K",
        safety.heat_to_boiling,
        {
            "standing_volume": "50 L",
            "density": "970 kg/m³",
            "specific_heat": "4200 J/(kg·K)",
            "boiling": "95 °C",
            "hottest_outlet": "85 °C",
        },
        "2.037 MJ",
    ),
    _hand(
        "Heat until the jacket boils",
        "an outlet of 205 °F where water boils at 202.83 °F boils already: none",
        safety.heat_to_boiling,
        {
            "standing_volume": "50 L",
            "density": "970 kg/m³",
            "specific_heat": "4200 J/(kg·K)",
            "boiling": "202.83 °F",
            "hottest_outlet": "205 °F",
        },
        "0 MJ",
    ),
    _hand(
        "Minutes to boiling",
        "2.037 MJ at 20 kW",
        safety.time_to_boiling,
        {"heat_to_boiling": "2.037 MJ", "net_output": "20 kW", "time_until_spent": "2 min"},
        "101.85 s",
    ),
    _hand(
        "Heat left to boil water away",
        "15 kW × 40 min = 36 MJ, less 2.037 MJ",
        safety.heat_boiled_off,
        {"net_output": "15 kW", "time_until_spent": "40 min", "heat_to_boiling": "2.037 MJ"},
        "33.963 MJ",
    ),
    _hand(
        "Heat left to boil water away",
        "15 kW × 2 min = 1.8 MJ are not enough for 2.037 MJ: none",
        safety.heat_boiled_off,
        {"net_output": "15 kW", "time_until_spent": "2 min", "heat_to_boiling": "2.037 MJ"},
        "0 MJ",
    ),
    Check(
        topic="Heat in the wood that is left",
        where="141.8 lb at 60 % of 6880 Btu/lb",
        law=safety.fire_heat_left,
        given={"wood_left": "141.8 lb", "heating_value": "6880 Btu/lb", "share_to_water": "60 %"},
        theirs="585400 Btu",
        within="0.05 %",
        because="printed to four figures",
        source=TABLE_1,
    ),
    Check(
        topic="Heat in the wood that is left",
        where="35.8 lb at 65 % of 6880 Btu/lb",
        law=safety.fire_heat_left,
        given={"wood_left": "35.8 lb", "heating_value": "6880 Btu/lb", "share_to_water": "65 %"},
        theirs="160000 Btu",
        within="0.1 %",
        because="printed to three figures",
        source=TABLE_2,
    ),
    _hand(
        "Heat at the fire's peak",
        "a fire that rises and falls as a triangle peaks at twice its mean",
        safety.peak_output,
        {"water_output": "40000 Btu/h", "peak_factor": "2"},
        "80000 Btu/h",
    ),
    _by_pint(
        "Heat at the fire's peak",
        safety.peak_output,
        {"water_output": "12 kW", "peak_factor": "1.6"},
        "19.2 kW",
        "12 kW * 1.6",
        "W",
    ),
    _hand(
        "Water that takes up the heat",
        "12 gal of jacket and 4.5 gal of loop",
        safety.standing_volume,
        {"jacket_volume": "12 gal", "loop_volume": "4.5 gal"},
        "16.5 gal",
    ),
    _by_pint(
        "Water that takes up the heat",
        safety.standing_volume,
        {"jacket_volume": "30 L", "loop_volume": "3 gal"},
        "41.356 L",
        "30 L + 3 gallon",
        "m**3",
    ),
    _hand(
        "Heat left when a dump takes its part",
        "80,000 - 30,000 Btu/h",
        safety.net_output,
        {"peak_output": "80000 Btu/h", "dump_output": "30000 Btu/h"},
        "50000 Btu/h",
    ),
    _hand(
        "Heat left when a dump takes its part",
        "a dump of 90,000 Btu/h takes all of 80,000",
        safety.net_output,
        {"peak_output": "80000 Btu/h", "dump_output": "90000 Btu/h"},
        "0 Btu/h",
    ),
    _by_pint(
        "Heat left when a dump takes its part",
        safety.net_output,
        {"peak_output": "20 kW", "dump_output": "30000 Btu/h"},
        "11.208 kW",
        "20 kW - 30000 Btu/hour",
        "W",
    ),
    _hand(
        "Time until the fire is spent",
        "80,000 Btu at 40,000 Btu/h",
        safety.time_until_spent,
        {"fire_heat_left": "80000 Btu", "peak_output": "40000 Btu/h"},
        "2 h",
    ),
    _by_pint(
        "Time until the fire is spent",
        safety.time_until_spent,
        {"fire_heat_left": "25 kWh", "peak_output": "60000 Btu/h"},
        "1.4217 h",
        "25 kWh / (60000 Btu/hour)",
        "s",
    ),
    _hand(
        "Water boiled away",
        "77,600 Btu at 970 Btu a pound",
        safety.water_boiled_off,
        {"heat_boiled_off": "77600 Btu", "latent_heat": "970 Btu/lb"},
        "80 lb",
    ),
    _by_pint(
        "Water boiled away",
        safety.water_boiled_off,
        {"heat_boiled_off": "20 kWh", "latent_heat": "2.2565 MJ/kg"},
        "31.908 kg",
        "20 kWh / (2.2565 MJ/kg)",
        "kg",
    ),
    _hand(
        "Heat a dump must carry off",
        "30 % of 80,000 Btu/h with a damper that fails shut",
        safety.dump_needed,
        {"peak_output": "80000 Btu/h", "fire_share": "30 %"},
        "24000 Btu/h",
    ),
    _by_pint(
        "Heat a dump must carry off",
        safety.dump_needed,
        {"peak_output": "60000 Btu/h", "fire_share": "100 %"},
        "17.584 kW",
        "60000 Btu/hour * 1.0",
        "W",
    ),
    _hand(
        "Energy for the pump",
        "45 W × 4 h / 0.85 = 211.76 Wh",
        safety.battery_energy,
        {"pump_power": "45 W", "running_time": "4 h", "inverter_efficiency": "85 %"},
        "211.76 Wh",
    ),
    _by_pint(
        "Energy for the pump",
        safety.battery_energy,
        {"pump_power": "60 W", "running_time": "90 min", "inverter_efficiency": "80 %"},
        "112.5 Wh",
        "60 W * 90 minute / 0.8",
        "J",
    ),
]
