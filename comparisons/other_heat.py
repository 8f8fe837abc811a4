"""Another heater on the store: panels against their test certificates, the rest against sums on paper."""

from calc.law import Law
from calc.physics import other_heat
from comparisons.check import Check, Published

CERTIFICATE_A = Published(
    "TÜV Rheinland Energy",
    "Certificate of a flat panel by ISO 9806: power of 2.00 m² at 850 W/m² direct and 150 W/m² diffuse",
    "2019",
    "η0,b 0.750, a1 3.27, a2 0.016, Kd 0.91",
    "public body",
)
CERTIFICATE_B = Published(
    "CENER, the National Renewable Energy Centre of Spain",
    "Certificate of a flat panel by ISO 9806: power of each m² at 850 W/m² direct and 150 W/m² diffuse",
    "2022",
    "η0,b 0.739, a1 3.51, a2 0.017, Kd 0.91",
    "public body",
)
HAND = Published("By hand", "Sums on paper", "2026", "heat of a month", "own arithmetic")
CARNOT = Published(
    "Çengel and Boles",
    "Thermodynamics: an engineering approach",
    "2006",
    "house at 21 °C, air at −5 °C: at most 11.3",
    "from memory",
)
_TOPIC = "another heater"
# A certificate's direct and diffuse light: η0 = η0,b × (0.85 + 0.15 × Kd).
_ETA_A, _ETA_B = f"{75.0 * (0.85 + 0.15 * 0.91):.6f} %", f"{73.9 * (0.85 + 0.15 * 0.91):.6f} %"
_CURVE_A = {"eta0": _ETA_A, "a1": "3.27 W/(m²·K)", "a2": "0.016 W/(m²·K²)"}
_CURVE_B = {"eta0": _ETA_B, "a1": "3.51 W/(m²·K)", "a2": "0.017 W/(m²·K²)"}


def _power(area: str, curve: dict[str, str], excess: int, theirs: str, source: Published) -> Check:
    return Check(
        _TOPIC,
        f"panel {excess} K over the air, 1,000 W/m²",
        other_heat.panel_power,
        {
            "panel_area": area,
            **curve,
            "irradiance": "1000 W/m²",
            "panel_water": f"{20 + excess} °C",
            "air": "20 °C",
        },
        theirs,
        "0.4 %",
        "they print whole watts, from coefficients of three figures",
        source,
    )


def _hand(where: str, law: Law, given: dict[str, str], theirs: str) -> Check:
    return Check(
        _TOPIC,
        where,
        law,
        given,
        theirs,
        "0.01 %",
        "a sum of round numbers, to the digits shown",
        HAND,
    )


CHECKS = [
    *(
        _power("2 m²", _CURVE_A, excess, f"{watts} W", CERTIFICATE_A)
        for excess, watts in ((0, 1479), (10, 1410), (30, 1254), (50, 1072), (70, 864), (100, 505))
    ),
    *(
        _power("1 m²", _CURVE_B, excess, f"{watts} W", CERTIFICATE_B)
        for excess, watts in ((0, 729), (10, 692), (30, 608), (50, 511), (70, 400))
    ),
    *(
        Check(
            _TOPIC,
            f"an hour of 1,000 W/m², panel {excess} K over the air",
            other_heat.panel_heat,
            {
                "panel_area": "2 m²",
                "pipe_loss": "0 %",
                **_CURVE_A,
                "radiation": "1 kWh/m²",
                "panel_water": f"{20 + excess} °C",
                "air": "20 °C",
                "sun_time": "1 h",
            },
            f"{watts} Wh",
            "0.4 %",
            "a sum over an hour is the power times an hour",
            CERTIFICATE_A,
        )
        for excess, watts in ((10, 1410), (50, 1072), (100, 505))
    ),
    # 60 K over the air: 3.4 × 60 + 0.016 × 3,600 = 261.6 W/m²; × 100 h = 26.16 kWh/m².
    # 10 m² × 0.9 × (0.74 × 60 − 26.16) = 164.16 kWh
    _hand(
        "a month of 60 kWh/m² in 100 h",
        other_heat.panel_heat,
        {
            "panel_area": "10 m²",
            "pipe_loss": "10 %",
            "eta0": "74 %",
            "radiation": "60 kWh/m²",
            "a1": "3.4 W/(m²·K)",
            "a2": "0.016 W/(m²·K²)",
            "panel_water": "60 °C",
            "air": "0 °C",
            "sun_time": "100 h",
        },
        "164.16 kWh",
    ),
    Check(
        _TOPIC,
        "a month in which panels would lose heat",
        other_heat.panel_heat,
        {
            "panel_area": "10 m²",
            "pipe_loss": "10 %",
            "eta0": "74 %",
            "radiation": "20 kWh/m²",
            "a1": "3.4 W/(m²·K)",
            "a2": "0.016 W/(m²·K²)",
            "panel_water": "60 °C",
            "air": "0 °C",
            "sun_time": "100 h",
        },
        "0 kWh",
        "0.001 kWh",
        "nothing at all is left to round",
        HAND,
    ),
    # 10,000 kWh × 600 ÷ 3,000 + 0.5 kW × 744 h = 2,372 kWh
    _hand(
        "a month with a fifth of the year's degree-days",
        other_heat.month_need,
        {
            "yearly_heat": "10000 kWh",
            "month_degree_days": "600 K·day",
            "year_degree_days": "3000 K·day",
            "tap_load": "0.5 kW",
            "month": "31 days",
        },
        "2372 kWh",
    ),
    _hand(
        "1 to 12 kWh",
        other_heat.sum_of_year,
        {name: f"{at} kWh" for at, name in enumerate(other_heat.sum_of_year.parameters, 1)},
        "78 kWh",
    ),
    _hand(
        "1 to 12 h",
        other_heat.hours_of_year,
        {name: f"{at} h" for at, name in enumerate(other_heat.hours_of_year.parameters, 1)},
        "78 h",
    ),
    _hand("4.5 kW", other_heat.heat_of_element, {"element_power": "4.5 kW"}, "4.5 kW"),
    _hand(
        "55 °C in a store up to 80 °C",
        other_heat.highest_reached,
        {"store_top": "80 °C", "highest_water": "55 °C"},
        "55 °C",
    ),
    # 6 kW × 8 h a day × 30 days = 1,440 kWh
    _hand(
        "6 kW for 8 h a day in April",
        other_heat.most_in_month,
        {"power": "6 kW", "hours_a_day": "8 h", "month": "30 days"},
        "1440 kWh",
    ),
    # 6 kW × 8 ÷ 24 = 2 kW of 7.5 + 0.5 kW
    _hand(
        "6 kW for 8 h on the coldest day",
        other_heat.share_of_coldest_day,
        {"power": "6 kW", "hours_a_day": "8 h", "design_load": "7.5 kW", "tap_load": "0.5 kW"},
        "25 %",
    ),
    _hand(
        "30 kWh at 6 kW, 1 kW drawn",
        other_heat.recharge_time,
        {"heat": "30 kWh", "power": "6 kW", "load": "1 kW"},
        "6 h",
    ),
    # 100 × 1,200 ÷ 1,500 = 80
    _hand(
        "a roof with four fifths of the sun",
        other_heat.scaled_radiation,
        {"profile": "100 kWh/m²", "radiation_year": "1200 kWh/m²", "profile_year": "1500 kWh/m²"},
        "80 kWh/m²",
    ),
    _hand(
        "85 % of 100 kWh/m²",
        other_heat.strong_radiation,
        {"month_radiation": "100 kWh/m²", "strong_share": "85 %"},
        "85 kWh/m²",
    ),
    _hand("40 to 80 °C", other_heat.halfway, {"lowest_useful": "40 °C", "reached": "80 °C"}, "60 °C"),
    _hand("6 K over 40 °C", other_heat.panel_water, {"water": "40 °C", "panel_excess": "6 K"}, "46 °C"),
    _hand("a month with too much", other_heat.heat_used, {"need": "300 kWh", "most": "500 kWh"}, "300 kWh"),
    _hand("300 of 1,200 kWh", other_heat.share_of_need, {"used": "300 kWh", "need": "1200 kWh"}, "25 %"),
    _hand("500 kWh, 300 of them used", other_heat.left_over, {"most": "500 kWh", "used": "300 kWh"}, "200 kWh"),
    _hand("1,200 kWh at 2.4", other_heat.electricity, {"heat": "1200 kWh", "cop": "2.4"}, "500 kWh"),
    _hand("40 W for 2,000 h", other_heat.pump_electricity, {"pump_power": "40 W", "running_time": "2000 h"}, "80 kWh"),
    Check(
        _TOPIC,
        "the most that can be reached between −5 and 21 °C",
        other_heat.share_of_carnot,
        {"cop": "11.3", "water": "21 °C", "outdoor": "-5 °C"},
        "100 %",
        "0.5 %",
        "they print three figures",
        CARNOT,
    ),
]
