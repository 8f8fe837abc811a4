"""Mixing hot and cold water: shares by hand, by enthalpy and by volume with the iapws library.

Two answers exist for hot water cooler than wanted: refuse, or open the valve wide and say that the mix falls short. The
second is what a valve does, and is followed; cold water warmer than wanted is refused, since no valve can mix it down.
"""

from functools import partial

from calc.physics import mixing, water
from comparisons.check import At, Check, Published

BY_HAND = Published(
    "By hand",
    "Shares of two waters of equal heat capacity, (m − c)/(h − c)",
    "2026",
    "worked out by hand",
    "own arithmetic",
)
ENTHALPY = Published(
    "iapws", "IAPWS-IF97: shares by enthalpy and by volume at 0.6 MPa", "2026", "version 1.5.5", "independent library"
)

TOPIC = "Mixing valves"
EQUAL = "a valve's share takes both heat capacities as equal"


def _water(fahrenheit: float) -> tuple[float, float]:
    """Enthalpy kJ/kg and specific volume m³/kg at 0.6 MPa."""
    from iapws import IAPWS97

    state = IAPWS97(T=(fahrenheit + 459.67) / 1.8, P=0.6)
    return state.h, state.v


def by_mass(hot: float, cold: float, mixed: float) -> float:
    """Share of hot water by mass such that the enthalpies balance."""
    (hot_h, _), (cold_h, _), (mixed_h, _) = _water(hot), _water(cold), _water(mixed)
    return (mixed_h - cold_h) / (hot_h - cold_h)


def by_volume(hot: float, cold: float, mixed: float) -> float:
    """The same share by volume, each water at its own density."""
    share = by_mass(hot, cold, mixed)
    hot_volume, cold_volume = share * _water(hot)[1], (1 - share) * _water(cold)[1]
    return hot_volume / (hot_volume + cold_volume)


def _rises(hot: float, cold: float, mixed: float) -> dict[str, str | At]:
    return {
        "wanted_rise": At(mixing.rise_over_cold, {"water": f"{mixed} °F", "cold": f"{cold} °F"}),
        "hot_rise": At(mixing.rise_over_cold, {"water": f"{hot} °F", "cold": f"{cold} °F"}),
    }


# Hot, cold and mixed, °F; share by hand; by enthalpy; by volume.
_ROWS = (
    (180, 110, 120, "14.29 %", "14.26 %", "14.52 %"),
    (180, 100, 105, "6.25 %", "6.241 %", "6.377 %"),
    (120, 95, 105, "40 %", "40.00 %", "40.13 %"),
    (140, 50, 110, "66.67 %", "66.68 %", "67.05 %"),
    (160, 50, 120, "63.64 %", "63.63 %", "64.16 %"),
    (180, 50, 120, "53.85 %", "53.82 %", "54.56 %"),
    (160, 50, 110, "54.55 %", "54.55 %", "55.11 %"),
    (140, 55, 105, "58.82 %", "58.84 %", "59.23 %"),
    (190, 40, 120, "53.33 %", "53.31 %", "54.15 %"),
    (170, 90, 110, "25 %", "24.98 %", "25.38 %"),
)

CHECKS = []
for _hot, _cold, _mixed, _share, _mass, _volume in _ROWS:
    _where = f"{_hot} °F and {_cold} °F to {_mixed} °F"
    CHECKS += [
        Check(
            TOPIC,
            _where,
            mixing.hot_share,
            _rises(_hot, _cold, _mixed),
            _share,
            "0.03 %",
            "they round to four digits",
            BY_HAND,
        ),
        Check(
            TOPIC,
            f"{_where}, by enthalpy",
            mixing.hot_share,
            _rises(_hot, _cold, _mixed),
            _mass,
            "0.25 %",
            EQUAL,
            ENTHALPY,
            partial(by_mass, _hot, _cold, _mixed),
        ),
        Check(
            TOPIC,
            f"{_where}, by volume",
            mixing.hot_share_by_volume,
            {
                "hot_share": At(mixing.hot_share, _rises(_hot, _cold, _mixed)),
                "hot_density": At(water.density, {"temperature": f"{_hot} °F"}),
                "cold_density": At(water.density, {"temperature": f"{_cold} °F"}),
            },
            _volume,
            "0.25 %",
            EQUAL,
            ENTHALPY,
            partial(by_volume, _hot, _cold, _mixed),
        ),
        Check(
            TOPIC,
            f"{_where}, mixed again",
            mixing.mixed_temperature,
            {"hot_share": _share, "hot": f"{_hot} °F", "cold": f"{_cold} °F"},
            f"{_mixed} °F",
            "0.02 F°",
            "the share given to it has four digits",
            BY_HAND,
        ),
    ]


def flow_of_hot(flow: float, hot: float, cold: float, mixed: float) -> float:
    """Flow of the hot water, m³/s, for a mixed `flow` in gallons a minute: masses from the library's volumes."""
    return flow * 3.785411784e-3 / 60 / _water(mixed)[1] * by_mass(hot, cold, mixed) * _water(hot)[1]


CHECKS += [
    Check(
        TOPIC,
        "hot water cooler than wanted: the valve stands wide open",
        mixing.hot_share,
        _rises(100, 50, 120),
        "100 %",
        "0.001 %",
        "no share can exceed the whole",
        BY_HAND,
    ),
    Check(
        TOPIC,
        "a return of 100 °F warmed to 140 by water of 175: bypass",
        mixing.hot_share,
        _rises(175, 100, 140),
        "53.33 %",
        "0.02 %",
        "they round to four digits",
        BY_HAND,
    ),
    Check(
        TOPIC,
        "and the rest comes from the system",
        mixing.cold_share,
        {"hot_share": "53.33 %"},
        "46.67 %",
        "0.001 %",
        "the difference is exact",
        BY_HAND,
    ),
    Check(
        TOPIC,
        "120 °F less 50 °F",
        mixing.rise_over_cold,
        {"water": "120 °F", "cold": "50 °F"},
        "70 F°",
        "0.001 F°",
        "the difference is exact",
        BY_HAND,
    ),
    Check(
        TOPIC,
        "10 gpm of 120 °F from 180 and 50 °F: the hot water",
        mixing.part_flow,
        {
            "mixed_flow": "10 gpm",
            "mixed_density": At(water.density, {"temperature": "120 °F"}),
            "share": At(mixing.hot_share, _rises(180, 50, 120)),
            "density": At(water.density, {"temperature": "180 °F"}),
        },
        "5.484 gpm",
        "0.25 %",
        EQUAL,
        ENTHALPY,
        partial(flow_of_hot, 10, 180, 50, 120),
    ),
    # (180 − 68)/(105 − 68) = 112/37
    Check(
        TOPIC,
        "180 °F water in a floor meant for 105 °F, room at 68 °F",
        mixing.overheat_factor,
        {"hot": "180 °F", "wanted": "105 °F", "indoor": "68 °F"},
        "3.02703",
        "0.001 %",
        "they print six digits",
        BY_HAND,
    ),
    Check(
        TOPIC,
        "15 °F over 105 °F",
        mixing.high_limit,
        {"wanted": "105 °F", "margin": "15 F°", "most": "131 °F"},
        "120 °F",
        "0.001 F°",
        "the sum is exact",
        BY_HAND,
    ),
    Check(
        TOPIC,
        "15 °F over 125 °F would be more than the floor stands",
        mixing.high_limit,
        {"wanted": "125 °F", "margin": "15 F°", "most": "131 °F"},
        "131 °F",
        "0.001 F°",
        "the limit is exact",
        BY_HAND,
    ),
]
