"""Exchangers against the library ht, and what is solved with them against ht inside SciPy's root finder."""

from functools import partial

from calc.physics import exchange
from calc.units import BTU, FAHRENHEIT_DEGREE, HOUR
from comparisons.check import At, Check, Published

HT = Published("ht", "effectiveness_from_NTU, counterflow", "2025", "version 1.2.0", "independent library")
LMTD = Published("ht", "LMTD, log mean temperature difference", "2025", "version 1.2.0", "independent library")
KUMAR = Published(
    "ht",
    "Nu_plate_Kumar, after Kumar (1984)",
    "2025",
    "version 1.2.0, chevron 30°",
    "independent library",
)
SOLVED = Published(
    "ht and SciPy",
    "effectiveness_from_NTU inside brentq",
    "2025",
    "ht 1.2.0, SciPy 1.18",
    "numerical solution",
)

PER_DEGREE = BTU / HOUR / FAHRENHEIT_DEGREE  # W/K in one Btu/(h·°F)
EXACT = "the same formula in other hands; the last printed digit is rounded"


def _effectiveness(units: float, ratio: float) -> float:
    from ht import effectiveness_from_NTU

    return float(effectiveness_from_NTU(units, ratio, subtype="counterflow"))


def _conductance(heat: float, hot_in: float, hot_out: float, cold_in: float, cold_out: float) -> float:
    """W/K from Btu/h and °F."""
    from ht import LMTD as LOG_MEAN

    return heat / float(LOG_MEAN(hot_in, hot_out, cold_in, cold_out)) * PER_DEGREE


def _plate(conductance: float, primary: float, tap: float) -> float:
    """Plate at other flows, by the films that the correlation gives: streams as shares of the rated ones."""
    from ht.conv_plate import Nu_plate_Kumar

    films = [Nu_plate_Kumar(2000 * share, 3.0, 30.0) / Nu_plate_Kumar(2000, 3.0, 30.0) for share in (primary, tap)]
    return float(conductance * 2 / sum(1 / film for film in films))


def _largest_flow(conductance: float, store: float, cold: float, tap: float, primary_gpm: float) -> float:
    """Tap stream in W/K by 500 Btu/(h·°F) for each gpm on both sides, the conductance (Btu/(h·°F)) fixed."""
    from scipy.optimize import brentq

    def lacking(gpm: float) -> float:
        smaller, larger = sorted((500 * gpm, 500 * primary_gpm))
        passed = _effectiveness(conductance / smaller, smaller / larger) * smaller * (store - cold)
        return passed - 500 * gpm * (tap - cold)

    return float(brentq(lacking, 0.1, primary_gpm * (store - cold) / (tap - cold))) * 500 * PER_DEGREE


_EFFECTIVENESS = (
    (1, 0.5, "56.473 %"),
    (2, 0.5, "77.460 %"),
    (1.5, 0.6, "67.270 %"),
    (3, 0.8, "80.433 %"),
    (4, 1, "80.000 %"),
    (5, 0.9, "86.644 %"),
    (5, 0.25, "98.226 %"),
)
_ENDS = (
    (130_000, 160, 120, 50, 110, "2187.1 Btu/(h·°F)"),
    (90_000, 150, 100, 45, 105, "1806.0 Btu/(h·°F)"),
    (80_000, 180, 160, 120, 140, "2000.0 Btu/(h·°F)"),
)
_FLOWS = (
    (4000, 140, 50, 115, 5, "1947.3 Btu/(h·°F)"),
    (4000, 160, 50, 115, 5, "2648.6 Btu/(h·°F)"),
    (4000, 180, 50, 115, 5, "3309.9 Btu/(h·°F)"),
    (2500, 140, 45, 110, 4, "1463.6 Btu/(h·°F)"),
    (6000, 130, 50, 120, 6, "1798.7 Btu/(h·°F)"),
    (4000, 150, 50, 110, 6, "2798.7 Btu/(h·°F)"),
)

CHECKS = [
    *(
        Check(
            "Exchangers for tap water",
            f"NTU {units}, ratio {ratio}",
            exchange.counterflow_effectiveness,
            {"transfer_units": str(units), "ratio": str(ratio)},
            theirs,
            "0.001 %",
            EXACT,
            HT,
            partial(_effectiveness, units, ratio),
        )
        for units, ratio, theirs in _EFFECTIVENESS
    ),
    *(
        Check(
            "Exchangers for tap water",
            f"{hot_in} to {hot_out} °F against {cold_in} to {cold_out} °F",
            exchange.rated_conductance,
            {
                "rated_heat": f"{heat} Btu/h",
                "hot_in": f"{hot_in} °F",
                "hot_out": f"{hot_out} °F",
                "cold_in": f"{cold_in} °F",
                "cold_out": f"{cold_out} °F",
            },
            theirs,
            "0.01 %",
            EXACT,
            LMTD,
            partial(_conductance, heat, hot_in, hot_out, cold_in, cold_out),
        )
        for heat, hot_in, hot_out, cold_in, cold_out, theirs in _ENDS
    ),
    *(
        Check(
            "Exchangers for tap water",
            f"plate rated at 3000 and 2000 Btu/(h·°F), run at {primary} and {tap} of that",
            exchange.conductance_at_flows,
            {
                "rated_conductance": "4000 Btu/(h·°F)",
                "rated_primary": "3000 Btu/(h·°F)",
                "primary": f"{3000 * primary} Btu/(h·°F)",
                "rated_tap": "2000 Btu/(h·°F)",
                "tap_side": f"{2000 * tap} Btu/(h·°F)",
                "film_exponent": "0.663",
            },
            theirs,
            "0.05 %",
            "the correlation's exponent above Re 10 is the same; rounding",
            KUMAR,
            partial(_plate, 4000 * PER_DEGREE, primary, tap),
        )
        for primary, tap, theirs in ((1, 0.5, "3096.7 Btu/(h·°F)"), (1.5, 0.8, "4158.6 Btu/(h·°F)"))
    ),
    *(
        Check(
            "Exchangers for tap water",
            f"UA {conductance} Btu/(h·°F), store {store} °F, {cold} to {tap} °F, {primary} gpm from the store",
            exchange.largest_tap_stream,
            {
                "store": f"{store} °F",
                "cold": f"{cold} °F",
                "tap": f"{tap} °F",
                "primary": f"{500 * primary} Btu/(h·°F)",
                "rated_conductance": f"{conductance} Btu/(h·°F)",
                "rated_primary": "2500 Btu/(h·°F)",
                "rated_tap": "1750 Btu/(h·°F)",
                "film_exponent": "0",
            },
            theirs,
            "0.05 %",
            "two ways to solve one balance; rounding",
            SOLVED,
            partial(_largest_flow, conductance, store, cold, tap, primary),
        )
        for conductance, store, cold, tap, primary, theirs in _FLOWS
    ),
    Check(
        "Exchangers for tap water",
        "the flow that is solved gives back the tap temperature, plate's films counted",
        exchange.counterflow_effectiveness,
        {
            "transfer_units": At(
                exchange.number_of_transfer_units,
                {
                    "conductance": At(
                        exchange.conductance_at_flows,
                        {
                            "rated_conductance": "4000 Btu/(h·°F)",
                            "rated_primary": "3000 Btu/(h·°F)",
                            "primary": "2500 Btu/(h·°F)",
                            "rated_tap": "2000 Btu/(h·°F)",
                            "tap_side": "1250 Btu/(h·°F)",
                            "film_exponent": "0.663",
                        },
                    ),
                    "smaller_stream": At(
                        exchange.smaller_stream, {"primary": "2500 Btu/(h·°F)", "tap_side": "1250 Btu/(h·°F)"}
                    ),
                },
            ),
            "ratio": At(exchange.stream_ratio, {"primary": "2500 Btu/(h·°F)", "tap_side": "1250 Btu/(h·°F)"}),
        },
        "83.910 %",
        "0.02 %",
        "films and effectiveness both from the library",
        HT,
        lambda: _effectiveness(_plate(4000, 2500 / 3000, 1250 / 2000) / 1250, 0.5),
    ),
]
