"""The verification tables that IAPWS prints with its industrial formulation, R7-97."""

from calc.physics import water
from comparisons.check import Check, Published


def _table(number: int) -> Published:
    return Published(
        "International Association for the Properties of Water and Steam",
        "Revised Release on the IAPWS Industrial Formulation 1997, R7-97",
        "2012",
        f"table {number}",
        "standard",
    )


_BECAUSE = "the printed digits of the table"

CHECKS = [
    *(
        Check(
            topic="Vapor pressure of water",
            where=temperature,
            law=water.vapour_pressure,
            given={"temperature": temperature},
            theirs=theirs,
            within="0.0000005 %",
            because=_BECAUSE,
            source=_table(35),
        )
        for temperature, theirs in (
            ("300 K", "3.53658941 kPa"),
            ("500 K", "2638.89776 kPa"),
            ("600 K", "12344.3146 kPa"),
        )
    ),
    *(
        Check(
            topic="Boiling temperature of water",
            where=pressure,
            law=water.boiling_temperature,
            given={"pressure": pressure},
            theirs=theirs,
            within="0.000001 K",
            because=_BECAUSE,
            source=_table(36),
        )
        for pressure, theirs in (
            ("100 kPa", "372.755919 K"),
            ("1000 kPa", "453.035632 K"),
            ("10000 kPa", "584.149488 K"),
        )
    ),
]
