"""Several tanks as one store: branches, rows and layers by libraries, and sums of round numbers by hand."""

from functools import partial

from calc.law import Law
from calc.physics import tanks
from comparisons.check import Check, Published

BRANCHES = Published(
    "fluids, SciPy", "Parallel branches by Colebrook and fsolve", "2026", "1.3.1, 1.18.1", "numerical solution"
)
ROW = Published("SciPy", "integrate.solve_ivp on tanks in a row", "2026", "scipy 1.18", "numerical solution")
APART = Published("SciPy", "optimize.brentq on tanks side by side", "2026", "scipy 1.18", "numerical solution")
SHAPES = Published("fluids", "Surface of tanks with flat ends, TANK", "2026", "1.3.1", "independent library")
INLET = Published("fluids", "Densimetric Froude number, Froude_densimetric", "2026", "1.3.1", "independent library")
HAND = Published("By hand", "Sums on paper", "2026", "several tanks", "own arithmetic")
TOPIC = "Several tanks"


def shares(whole: float, count: int, near: float, far: float, roughness: float, losses: float) -> list[float]:
    """Shares of the flow in branches of even steps, solved all at once with Colebrook's friction factor."""
    import numpy
    from fluids.friction import Colebrook
    from scipy.optimize import fsolve

    lengths = numpy.linspace(near, far, count)

    def unbalanced(reynolds: numpy.ndarray) -> list[float]:
        drops = [
            (float(Colebrook(reynolds_number, roughness)) * length + losses) * (reynolds_number / whole) ** 2
            for reynolds_number, length in zip(reynolds, lengths, strict=True)
        ]
        return [sum(reynolds) / whole - 1, *(drop - drops[0] for drop in drops[1:])]

    solved = fsolve(unbalanced, [whole / count] * count, xtol=1e-10)
    return [float(pressure / whole) for pressure in solved]


def share_at(place: int, *branches: float) -> float:
    """One of those shares."""
    whole, count, *rest = branches
    return shares(whole, int(count), *rest)[place]


def row_delivered(count: int, end: float) -> float:
    """Share of the heat that came out of mixed tanks in a row until the last is down to `end`, by integration."""
    import numpy
    from scipy.integrate import solve_ivp

    def cooling(_: float, warm: numpy.ndarray) -> numpy.ndarray:
        return numpy.asarray(count * (numpy.concatenate(([0.0], warm[:-1])) - warm))

    def too_cool(_: float, warm: numpy.ndarray) -> float:
        return float(warm[-1] - end)

    too_cool.terminal = True  # type: ignore[attr-defined]
    ran = solve_ivp(cooling, (0, 9), numpy.ones(count), events=too_cool, rtol=1e-11, atol=1e-12)
    return float(1 - ran.y[:, -1].mean())


def side_by_side(part: float, end: float) -> float:
    """Share of the heat that came out of two mixed tanks, one with `part` of the flow, until the mixture is at `end`."""
    from math import exp

    from scipy.optimize import brentq

    def left(drawn: float) -> tuple[float, float]:
        return exp(-2 * part * drawn), exp(-2 * (1 - part) * drawn)

    def over(drawn: float) -> float:
        first, second = left(drawn)
        return part * first + (1 - part) * second - end

    return 1 - sum(left(float(brentq(over, 0, 60, xtol=1e-12)))) / 2


def surfaces(count: int) -> float:
    """Surface of so many tanks over that of one of the same shape that holds as much."""
    from fluids.geometry import TANK

    return float(
        count * TANK(V=1.0, L_over_D=1.5, horizontal=False).A / TANK(V=count, L_over_D=1.5, horizontal=False).A
    )


def calmness(cool: float, warm: float, height: float, speed: float) -> float:
    """Richardson number as one over the square of the densimetric Froude number."""
    from fluids.core import Froude_densimetric

    return float(Froude_densimetric(speed, height, rho1=cool, rho2=warm, heavy=True) ** -2)


_BRANCH_ROWS = (
    ((40_000, 2, 71, 189, 0.0000576, 6), "54.297 %", "45.703 %"),
    ((60_000, 2, 50, 500, 0.001, 4), "64.835 %", "35.165 %"),
    ((90_000, 4, 80, 400, 0.0001, 5), "30.739 %", "20.464 %"),
)
_NAMES = ("whole_reynolds", "tank_count", "near_bores", "far_bores", "relative_roughness", "branch_losses")

CHECKS: list[Check] = []
for _row, _near, _far in _BRANCH_ROWS:
    for _law, _place, _theirs in ((tanks.nearest_share, 0, _near), (tanks.farthest_share, -1, _far)):
        CHECKS.append(
            Check(
                TOPIC,
                f"{_row[1]} branches of {_row[2]} to {_row[3]} bores, Reynolds number {_row[0]:,} in all",
                _law,
                {name: f"{value:.7f}".rstrip("0").rstrip(".") for name, value in zip(_NAMES, _row, strict=True)},
                _theirs,
                "0.3 %",
                "Churchill's friction factor instead of Colebrook's, in both branches alike",
                BRANCHES,
                partial(share_at, _place, *_row),
            )
        )

for _count, _end, _theirs in ((1, 30, "70.0000 %"), (2, 30, "80.6385 %"), (3, 50, "72.5874 %"), (6, 40, "85.9939 %")):
    CHECKS.append(
        Check(
            TOPIC,
            f"{_count} mixed tanks in a row, drawn until {_end} % is left at the end",
            tanks.series_delivered,
            {"tank_count": str(_count), "end_share": f"{_end} %"},
            _theirs,
            "0.001 %",
            "to the digits shown",
            ROW,
            partial(row_delivered, _count, _end / 100),
        )
    )
for _part, _end, _theirs in ((50, 30, "70.0000 %"), (60, 30, "68.5370 %"), (80, 50, "38.5015 %")):
    CHECKS.append(
        Check(
            TOPIC,
            f"two mixed tanks side by side, {_part} % through one, until the mixture has {_end} %",
            tanks.parallel_delivered,
            {
                "tank_count": "2",
                "nearest_share": f"{_part} %",
                "farthest_share": f"{100 - _part} %",
                "end_share": f"{_end} %",
            },
            _theirs,
            "0.001 %",
            "to the digits shown",
            APART,
            partial(side_by_side, _part / 100, _end / 100),
        )
    )
for _count, _theirs in ((2, "1.259921"), (3, "1.442250"), (5, "1.709976")):
    CHECKS.append(
        Check(
            TOPIC,
            f"{_count} tanks half as high again as wide, against one",
            tanks.surface_factor,
            {"tank_count": str(_count)},
            _theirs,
            "0.001 %",
            "to the digits shown",
            SHAPES,
            partial(surfaces, _count),
        )
    )
for _cool, _warm, _height, _speed, _theirs in ((988, 970, 1.6, 0.2, "7.14655"), (995, 961, 0.6, 0.05, "80.4244")):
    CHECKS.append(
        Check(
            TOPIC,
            f"{_cool} under {_warm} kg/m³, {_height} m high, {_speed} m/s",
            tanks.richardson,
            {
                "cool_density": f"{_cool} kg/m³",
                "warm_density": f"{_warm} kg/m³",
                "height": f"{_height} m",
                "inlet_velocity": f"{_speed} m/s",
            },
            _theirs,
            "0.01 %",
            "to the digits shown",
            INLET,
            partial(calmness, _cool, _warm, _height, _speed),
        )
    )


def _sum(law: Law, words: str, theirs: str, **given: str) -> Check:
    return Check(TOPIC, words, law, given, theirs, "0.001 %", "round numbers, exact on paper", HAND)


CHECKS += [
    _sum(tanks.volume_of_all, "3 tanks of 400 L", "1200 L", tank_count="3", volume_of_each="400 L"),
    _sum(tanks.volume_of_one, "1500 L in 2 tanks", "750 L", store_volume="1500 L", tank_count="2"),
    _sum(tanks.loss_of_all, "3 tanks of 80 W", "240 W", tank_count="3", loss_of_each="80 W"),
    _sum(tanks.loss_ratio, "240 W against 160 W", "1.5", loss_of_all="240 W", loss_of_one="160 W"),
    _sum(tanks.loss_saved, "240 W less 160 W", "80 W", loss_of_all="240 W", loss_of_one="160 W"),
    _sum(tanks.length_of_all, "4 pieces of 2.5 m", "10 m", tank_count="4", length_of_each="2.5 m"),
    _sum(tanks.fittings_of_all, "4 times 6", "24", tank_count="4", loss_of_each="6"),
    _sum(tanks.part_of_flow, "60 % of 20 L/min", "12 L/min", share="60 %", flow="20 L/min"),
    _sum(
        tanks.end_share,
        "60 °C between 50 and 90 °C",
        "25 %",
        lowest_useful="60 °C",
        return_water="50 °C",
        top="90 °C",
    ),
    _sum(tanks.layered_share, "62.5 % of the flow through one of two", "80 %", tank_count="2", nearest_share="62.5 %"),
    _sum(tanks.inlet_velocity, "0.4 m/s into ten times the area", "0.04 m/s", velocity="0.4 m/s", spread="10"),
]
