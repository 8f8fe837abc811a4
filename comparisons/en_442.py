"""Radiators: the characteristic equation and the excess temperatures of EN 442, worked out for usual temperatures.

The equation is standard; its numbers here were worked out twice, independently, with the standard's reference of
75/65/20 °C: arithmetic excess 50 K, logarithmic 49.833 K. Contested in practice: some divide a logarithmic excess by
50 K, which is 0.4 % low at the reference itself. Each mean belongs to its own reference, and so it is here.
"""

from calc.law import Law
from calc.physics import emitters
from comparisons.check import At, Check, Published

STANDARD = Published("CEN", "EN 442-2, Radiators and convectors", "2014", "standard rating, 75/65/20 °C", "standard")
EQUATION = Published(
    "By hand",
    "The characteristic equation of EN 442-2 worked out, Q = Qn·(ΔT/ΔTn)^n",
    "2026",
    "seven usual sets of temperatures",
    "own arithmetic",
)
TRADE = Published(
    "Building Services Index",
    "How to calculate the delta T for a radiator",
    "undated",
    "table of correction factors from 50 K",
    "trade",
)

TOPIC = "Radiators and baseboard"
ROUNDED = "their last printed digit is rounded"


def _mean(supply: str, back: str) -> At:
    return At(emitters.mean_of, {"supply": supply, "return_water": back})


def _arithmetic(supply: str, back: str, room: str) -> At:
    return At(emitters.excess_of, {"water": _mean(supply, back), "indoor": room})


def _logarithmic(supply: str, back: str, room: str) -> At:
    return At(
        emitters.log_mean_excess,
        {
            "supply_excess": At(emitters.excess_of, {"water": supply, "indoor": room}),
            "return_excess": At(emitters.excess_of, {"water": back, "indoor": room}),
        },
    )


def _check(
    law: Law,
    given: dict[str, str | At],
    theirs: str,
    within: str,
    because: str,
    source: Published,
    where: str,
) -> Check:
    return Check(TOPIC, where, law, given, theirs, within, because, source)


CHECKS = [
    _check(
        emitters.mean_of,
        dict(_mean("75 °C", "65 °C").given),
        "70 °C",
        "0.001 K",
        "it is exact by definition",
        STANDARD,
        "mean of 75 and 65 °C",
    ),
    _check(
        emitters.excess_of,
        {"water": "70 °C", "indoor": "20 °C"},
        "50 K",
        "0.001 K",
        "it is exact by definition",
        STANDARD,
        "arithmetic excess at the standard rating",
    ),
    _check(
        emitters.log_mean_excess,
        dict(_logarithmic("75 °C", "65 °C", "20 °C").given),
        "49.833 K",
        "0.001 K",
        ROUNDED,
        STANDARD,
        "logarithmic excess at the standard rating",
    ),
    _check(
        emitters.output,
        {"rated_output": "1000 W", "excess": "60 K", "rated_excess": "50 K", "exponent": "1.3"},
        "1267 W",
        "0.1 %",
        "the trade tables print three decimals",
        TRADE,
        "50 to 60 K at exponent 1.3",
    ),
    _check(
        emitters.needed_excess,
        {"load": "1267 W", "rated_output": "1000 W", "rated_excess": "50 K", "exponent": "1.3"},
        "60 K",
        "0.1 %",
        "the trade tables print three decimals",
        TRADE,
        "the factor 1.267 turned round",
    ),
    _check(
        emitters.emitter_times,
        {"load": "500 W", "rated_output": "1000 W", "excess": "60 K", "rated_excess": "50 K", "exponent": "1.3"},
        "0.3946",
        "0.1 %",
        "the trade tables print three decimals",
        TRADE,
        "half of the rated output, over the factor 1.267",
    ),
]

# Supply, return, room in °C, exponent; arithmetic excess and its factor to 50 K; logarithmic and its to 49.833 K.
_ROWS = (
    (55, 45, 20, 1.3, 30.0, 0.5148, 29.720, 0.5107),
    (45, 35, 20, 1.3, 20.0, 0.3039, 19.576, 0.2968),
    (70, 40, 20, 1.3, 35.0, 0.6290, 32.741, 0.5792),
    (60, 40, 20, 1.33, 30.0, 0.5069, 28.854, 0.4835),
    (50, 30, 20, 1.3, 20.0, 0.3039, 18.205, 0.2701),
    (40, 30, 20, 1.3, 15.0, 0.2091, 14.427, 0.1996),
    (75, 65, 24, 1.3, 46.0, 0.8973, 45.818, 0.8966),
)

for _supply, _return, _room, _exponent, _plain, _plain_factor, _log, _log_factor in _ROWS:
    _where = f"{_supply}/{_return}/{_room} °C, exponent {_exponent}"
    _ends = (f"{_supply} °C", f"{_return} °C", f"{_room} °C")
    for _excess, _reference, _factor, _name in (
        (_arithmetic(*_ends), "50 K", _plain_factor, "arithmetic"),
        (_logarithmic(*_ends), "49.833 K", _log_factor, "logarithmic"),
    ):
        CHECKS.append(
            _check(
                emitters.output,
                {"rated_output": "10000 W", "excess": _excess, "rated_excess": _reference, "exponent": str(_exponent)},
                f"{_factor * 1e4:.0f} W",
                "0.03 %",
                ROUNDED,
                EQUATION,
                f"{_where}, {_name}",
            )
        )
    CHECKS += [
        _check(
            emitters.log_mean_excess,
            dict(_logarithmic(*_ends).given),
            f"{_log} K",
            "0.001 K",
            ROUNDED,
            EQUATION,
            _where,
        ),
        _check(
            emitters.supply_water_log_mean,
            {"indoor": f"{_room} °C", "drop": f"{_supply - _return} K", "excess": f"{_log} K"},
            f"{_supply} °C",
            "0.002 K",
            "the logarithmic excess given to it is rounded to 0.001 K",
            EQUATION,
            f"{_where}: from the logarithmic excess back to the supply",
        ),
        _check(
            emitters.supply_water,
            {"mean_water": f"{(_supply + _return) / 2} °C", "drop": f"{_supply - _return} K"},
            f"{_supply} °C",
            "0.001 K",
            "it is exact by definition",
            EQUATION,
            _where,
        ),
        _check(
            emitters.return_water,
            {"supply": f"{_supply} °C", "drop": f"{_supply - _return} K"},
            f"{_return} °C",
            "0.001 K",
            "it is exact by definition",
            EQUATION,
            _where,
        ),
        _check(
            emitters.mean_water,
            {"indoor": f"{_room} °C", "excess": f"{_plain} K"},
            f"{(_supply + _return) / 2} °C",
            "0.001 K",
            "it is exact by definition",
            EQUATION,
            _where,
        ),
    ]

# The row 60/40/20 read the other way: a 10 kW radiator gives 5069 W (exponent 1.33) from 60 °C water when its flow
# carries 5069 W in 20 K, which is 253.45 W/K.
CHECKS += [
    _check(
        emitters.output_at,
        {
            "supply": "60 °C",
            "flow_capacity": "253.45 W/K",
            "rated_output": "10000 W",
            "rated_excess": "50 K",
            "exponent": "1.33",
            "indoor": "20 °C",
        },
        "5069 W",
        "0.03 %",
        ROUNDED,
        EQUATION,
        "60 °C supply at the flow that returns it at 40 °C",
    ),
    _check(
        emitters.output_at,
        {
            "supply": "70 °C",
            "flow_capacity": "209.67 W/K",
            "rated_output": "10000 W",
            "rated_excess": "50 K",
            "exponent": "1.3",
            "indoor": "20 °C",
        },
        "6290 W",
        "0.03 %",
        ROUNDED,
        EQUATION,
        "70 °C supply at the flow that returns it at 40 °C",
    ),
    _check(
        emitters.output_at,
        {
            "supply": "20 °C",
            "flow_capacity": "200 W/K",
            "rated_output": "10000 W",
            "rated_excess": "50 K",
            "exponent": "1.3",
            "indoor": "21 °C",
        },
        "0 W",
        "0.001 W",
        "water cooler than the room heats nothing",
        EQUATION,
        "water cooler than the room",
    ),
    _check(
        emitters.excess_ratio,
        {"return_water": "30 °C", "supply": "50 °C", "indoor": "20 °C"},
        "33.333 %",
        "0.01 %",
        "10 K over 30 K, rounded",
        EQUATION,
        "50/30/20 °C",
    ),
    _check(
        emitters.excess_ratio,
        {"return_water": "45 °C", "supply": "55 °C", "indoor": "20 °C"},
        "71.429 %",
        "0.01 %",
        "25 K over 35 K, rounded",
        EQUATION,
        "55/45/20 °C",
    ),
]
