"""Pipe sums that a person can do by hand: from the trade press, textbooks and standards, or written out here."""

from calc.law import Law
from calc.physics import antifreeze, pipes, water
from comparisons.check import At, Check, Published

TRADE = Published(
    "By hand", "Flow and heat with the round factor 500", "2026", "as in the trade's examples", "own arithmetic"
)
HAND = Published(
    "By hand", "Worked by hand for this project", "2025", "the sum is written out in the check", "own arithmetic"
)
TEXTBOOK = Published(
    "Textbooks of pipe flow", "Roughness, water horsepower, feet of water", "1982", "from memory", "from memory"
)
STATICS = Published(
    "Handbooks", "A column of cold water presses 0.433 psi a foot", "2000", "from memory", "from memory"
)
TUBE = Published(
    "A maker of copper tube to EN 1057 (name withheld)",
    "Standard dimensions, with inside diameters",
    "2024",
    "15 x 1 to 54 x 2 mm",
    "trade",
)
ASTM = Published(
    "ASTM and ASME", "B88, F876 and B36.10: sizes as reprinted by trade handbooks", "2016", "bores", "textbook"
)
PSYCHROLIB = Published("By hand", "Vapor pressure at 180 °F", "2023", "version 2.5.0, as printed", "own arithmetic")
HEAT_LOSS = Published(
    "By hand", "Two line sources and their mirror images", "2025", "derived by hand from conduction", "own arithmetic"
)


def _hand(topic: str, where: str, law: Law, given: dict[str, str | At], theirs: str, within: str = "0.1 %") -> Check:
    because = "a sum by hand, rounded as printed"
    return Check(topic, where, law, given, theirs, within, because, HAND)


_500 = {"volume_heat_capacity": "500 Btu/(h·gpm·°F)"}

CHECKS: list[Check] = [
    Check(
        topic="Heat a flow carries",
        where="10.5 gal/min with a drop of 19 °F by the factor 500",
        law=pipes.heat_carried,
        given={"flow": "10.5 gal/min", "water_drop": "19 F°", **_500},
        theirs="99750 Btu/h",
        within="0.01 %",
        because="exact arithmetic with the printed factor",
        source=TRADE,
    ),
    Check(
        topic="Flow for the heat",
        where="10,000 Btu/h with a drop of 20 °F is 1 gal/min by the factor 500",
        law=pipes.flow,
        given={"heat": "10000 Btu/h", "water_drop": "20 F°", **_500},
        theirs="1 gal/min",
        within="0.01 %",
        because="exact arithmetic with the printed factor",
        source=TRADE,
    ),
    Check(
        topic="Rise at the stove's outlet",
        where="27,125 Btu/h into 3.5 gal/min by the factor 500",
        law=pipes.rise,
        given={"heat": "27125 Btu/h", "flow": "3.5 gal/min", **_500},
        theirs="15.5 F°",
        within="0.01 %",
        because="exact arithmetic with the printed factor",
        source=TRADE,
    ),
    _hand(
        "All the water of a plant",
        "500 gal of store and 35 gal of stove and pipes",
        pipes.system_volume,
        {"store_volume": "500 gal", "other_volume": "35 gal"},
        "535 gal",
    ),
    _hand(
        "Glycol for a plant",
        "40 % of 55 gal",
        antifreeze.glycol_needed,
        {"volume_fraction": "40 %", "system_volume": "55 gal"},
        "22 gal",
    ),
    _hand(
        "Heat carried less with antifreeze",
        "461.4 instead of 491.8: 1 - 0.93819",
        antifreeze.heat_capacity_lost,
        {"mixture_heat_capacity": "461.4 Btu/(h·gpm·°F)", "water_heat_capacity": "491.8 Btu/(h·gpm·°F)"},
        "6.1814 %",
    ),
    _hand(
        "Bore for a speed limit",
        "4 gal/min = 8.9124e-3 ft³/s at 2.4843 ft/s need 3.5875e-3 ft² = 0.5166 in², a bore of 0.811 in",
        pipes.bore_for_velocity,
        {"flow": "4 gal/min", "velocity_limit": "2.4843 ft/s"},
        "0.811 in",
    ),
    Check(
        topic="Relative roughness",
        where="commercial steel 0.00015 ft in a bore of 2.067 in",
        law=pipes.relative_roughness,
        given={"roughness": "0.00015 ft", "bore": "2.067 in"},
        theirs="0.00087",
        within="0.2 %",
        because="printed to two figures",
        source=TEXTBOOK,
    ),
    _hand(
        "Pressure lost around a loop",
        "300 Pa/m × 30 m + 14.6 × 980 kg/m³ × (0.9 m/s)² / 2 + 4000 Pa = 9000 + 5794.7 + 4000",
        pipes.pressure_drop,
        {
            "friction": "300 Pa/m",
            "length": "30 m",
            "fittings_loss": "14.6",
            "density": "980 kg/m³",
            "velocity": "0.9 m/s",
            "other_pressure": "4000 Pa",
        },
        "18794.7 Pa",
    ),
    _hand(
        "Loss of fittings",
        "8 elbows 7.2 + 3 tees 4.8 + 2 valves 0.6 + 2 typed",
        pipes.fittings_loss,
        {"elbows": "8", "tees": "3", "valves": "2", "other_losses": "2"},
        "14.6",
    ),
    Check(
        topic="Head of a pump",
        where="1 psi is 2.31 ft of water at 62.4 lb/ft³",
        law=pipes.head,
        given={"pressure_drop": "1 psi", "density": "62.4 lb/ft³"},
        theirs="2.31 ft",
        within="0.2 %",
        because="printed to three figures (144 / 62.4 = 2.308)",
        source=TEXTBOOK,
    ),
    Check(
        topic="Power of a pump",
        where="10 gal/min × 10 ft / 3960 = 0.02525 hp of 745.7 W, at 25 % efficiency",
        law=pipes.pump_power,
        given={"flow": "10 gal/min", "pressure_drop": "4.33 psi", "pump_efficiency": "25 %"},
        theirs="75.32 W",
        within="0.2 %",
        because="3960 and 0.433 psi a foot are rounded",
        source=TEXTBOOK,
    ),
    _hand(
        "Extra flow with antifreeze",
        "the true factor falls from 487.1 to 455.0: 487.1 / 455.0 - 1",
        pipes.extra_flow,
        {"mixture_flow": "4.871 gal/min", "water_flow": "4.55 gal/min"},
        "7.055 %",
    ),
    _hand(
        "Extra pumping with antifreeze",
        "4.2 psi instead of 3.5 psi",
        pipes.extra_pressure_drop,
        {"mixture_pressure_drop": "4.2 psi", "water_pressure_drop": "3.5 psi"},
        "20 %",
    ),
]

# Trade sizes: the smallest whose printed bore is not under the one asked for.
for _law, _rows in (
    (pipes.smallest_copper_l, (("0.545", "0.5"), ("1.02", "1"), ("1.03", "1.25"), ("2.9", "3"))),
    (pipes.smallest_copper_m, (("0.569", "0.5"), ("0.82", "1"), ("1.03", "1"), ("1.53", "2"))),
    (pipes.smallest_pex, (("0.475", "0.5"), ("0.48", "0.625"), ("0.68", "1"), ("1.25", "2"))),
    (pipes.smallest_steel, (("0.622", "0.5"), ("1.05", "1.25"), ("2.07", "2.5"), ("3.5", "4"))),
):
    CHECKS += [
        Check(
            topic="Smallest pipe of a kind",
            where=f"{_law.name.replace('_', ' ')}, bore {_bore} in or more",
            law=_law,
            given={"least_bore": f"{_bore} in"},
            theirs=f"{_size} in",
            within="0.01 %",
            because="a trade size read from the table",
            source=ASTM,
        )
        for _bore, _size in _rows
    ]

# Pressure where water boils first.
CHECKS += [
    Check(
        topic="Pressure at the highest point",
        where="30 ft of cold water over a gauge of 15 psi at 14.7 psia: 14.7 + 15 - 30 × 0.433",
        law=pipes.pressure_at_height,
        given={"absolute_pressure": "29.7 psia", "density": "62.35 lb/ft³", "height": "30 ft"},
        theirs="16.71 psia",
        within="0.1 %",
        because="0.433 psi a foot is rounded",
        source=STATICS,
    ),
    _hand(
        "Pressure at the highest point",
        "101325 - 970.6 × 9.80665 × 4 = 101325 - 38073 Pa",
        pipes.pressure_at_height,
        {"absolute_pressure": "101.325 kPa", "density": "970.6 kg/m³", "height": "4 m"},
        "63.252 kPa",
        "0.01 %",
    ),
    _hand(
        "Pressure at the highest point",
        "84.31 kPa less 10 m of water would be below nothing: the column has parted, 1 kPa is kept",
        pipes.pressure_at_height,
        {"absolute_pressure": "84.31 kPa", "density": "970.6 kg/m³", "height": "10 m"},
        "1 kPa",
        "0.01 %",
    ),
    Check(
        topic="Pressure at the pump's inlet",
        where="inlet 8 ft below an open store's top, 0.5 psi lost before it: 14.7 + 8 × 0.433 - 0.5",
        law=pipes.pump_inlet_pressure,
        given={
            "absolute_pressure": "14.7 psia",
            "density": "62.35 lb/ft³",
            "height": "-8 ft",
            "pressure_lost": "0.5 psi",
        },
        theirs="17.664 psia",
        within="0.1 %",
        because="0.433 psi a foot is rounded",
        source=STATICS,
    ),
    _hand(
        "Pressure at the pump's inlet",
        "84310 - 970.6 × 9.80665 × 3 - 5000 = 84310 - 28555 - 5000 Pa",
        pipes.pump_inlet_pressure,
        {"absolute_pressure": "84.31 kPa", "density": "970.6 kg/m³", "height": "3 m", "pressure_lost": "5 kPa"},
        "50.755 kPa",
        "0.01 %",
    ),
    _hand(
        "Pressure at the pump's inlet",
        "20 kPa less 1.5 m of water and 8 kPa of friction is below 1 kPa, which is kept",
        pipes.pump_inlet_pressure,
        {"absolute_pressure": "20 kPa", "density": "970.6 kg/m³", "height": "1.5 m", "pressure_lost": "8 kPa"},
        "1 kPa",
        "0.01 %",
    ),
    Check(
        topic="How high hot water may rise over an open store",
        where="180 °F at sea level: (14.696 - 7.519) psi × 144 / 60.6 lb/ft³ = 17.05 ft",
        law=pipes.rise_before_boiling,
        given={"absolute_pressure": "14.696 psia", "vapour_pressure": "7.519 psia", "density": "60.6 lb/ft³"},
        theirs="17.054 ft",
        within="0.1 %",
        because="a sum by hand with printed pressures",
        source=PSYCHROLIB,
    ),
    Check(
        topic="Net positive suction head",
        where="17.664 psia at the inlet, water of 180 °F (7.519 psia, 60.6 lb/ft³): 10.145 × 144 / 60.6",
        law=pipes.net_positive_suction_head,
        given={"inlet_pressure": "17.664 psia", "vapour_pressure": "7.519 psia", "density": "60.6 lb/ft³"},
        theirs="24.107 ft",
        within="0.1 %",
        because="a sum by hand with printed pressures",
        source=PSYCHROLIB,
    ),
    _hand(
        "Net positive suction head",
        "(50755 - 47414) / (971.8 × 9.80665), water of 80 °C",
        pipes.net_positive_suction_head,
        {
            "inlet_pressure": "50.755 kPa",
            "vapour_pressure": At(water.vapour_pressure, {"temperature": "80 °C"}),
            "density": "971.8 kg/m³",
        },
        "0.3506 m",
        "0.2 %",
    ),
]

# Underground. Two line sources and their mirror images above the ground: the neighbor, C away, warms a pipe by
# q / (2 π λ) × ln(√(C² + 4 Z²) / C).
_PAIR: dict[str, str | At] = {"depth": "0.8 m", "pipe_distance": "0.25 m", "soil_conductivity": "1.5 W/(m·K)"}
CHECKS += [
    Check(
        topic="Warmth of the neighboring pipe",
        where="Z = 0.8 + 0.0685 × 1.5 = 0.90275 m: ln(√(0.25² + 4 × 0.90275²) / 0.25) / (2 π 1.5) = 1.98648 / 9.42478",
        law=pipes.neighbour_resistance,
        given=_PAIR,
        theirs="0.21077 m·K/W",
        within="0.05 %",
        because="the same conduction problem solved with line sources",
        source=HEAT_LOSS,
    ),
    _hand(
        "Heat lost by a buried pair",
        "2 / (4.2 + 0.37 + 0.21) = 2 / 4.78",
        pipes.pair_conductance,
        {
            "insulation_resistance": "4.2 m·K/W",
            "soil_resistance": "0.37 m·K/W",
            "neighbour_resistance": "0.21 m·K/W",
        },
        "0.41841 W/(m·K)",
        "0.01 %",
    ),
    _hand(
        "Heat lost by a buried pair",
        "0.41841 × (70 - 5) K",
        pipes.trench_loss,
        {"pair_conductance": "0.41841 W/(m·K)", "mean_water": "70 °C", "ground": "5 °C"},
        "27.197 W/m",
        "0.01 %",
    ),
    _hand(
        "Heat lost by a buried pair",
        "27.197 W/m × 40 m",
        pipes.buried_loss,
        {"trench_loss": "27.197 W/m", "trench_length": "40 m"},
        "1.08788 kW",
        "0.01 %",
    ),
    _hand(
        "Share of the heat lost underground",
        "1.08788 kW of 9.5 kW",
        pipes.share_lost,
        {"buried_loss": "1.08788 kW", "heat": "9.5 kW"},
        "11.4514 %",
    ),
    _hand(
        "Heat lost underground in a time",
        "1.08788 kW × 2000 h = 2175.8 kWh",
        pipes.heat_lost_in,
        {"buried_loss": "1.08788 kW", "hours_hot": "2000 h"},
        "2175.76 kWh",
        "0.01 %",
    ),
    _hand(
        "Heat a run loses for each degree",
        "0.2092 W/(m·K) × 40 m",
        pipes.run_conductance,
        {"conductance_per_length": "0.2092 W/(m·K)", "length": "40 m"},
        "8.368 W/K",
        "0.01 %",
    ),
    _hand(
        "Temperature at the far end",
        "stream 0.25 L/s × 4.077 MJ/(m³·K) = 1019 W/K; 5 + (80 - 5) exp(-200/1019.25) = 5 + 75 × 0.82182",
        pipes.leaving_temperature,
        {
            "entering": "80 °C",
            "ground": "5 °C",
            "run_conductance": "200 W/K",
            "flow": "0.25 L/s",
            "volume_heat_capacity": "4077000 J/(m³·K)",
        },
        "66.637 °C",
        "0.01 K",
    ),
    _hand(
        "Insulated pipe in still air",
        "1 / (4.2 + 1 / (π × 0.06 × 8)) = 1 / (4.2 + 0.66315)",
        pipes.conductance_in_air,
        {"insulation_resistance": "4.2 m·K/W", "jacket": "60 mm"},
        "0.205628 W/(m·K)",
        "0.01 %",
    ),
    _hand(
        "Time until a pipe is solid ice",
        "10 kg × 333.55 kJ/kg / (2 W/K × 12 K) = 138,979 s = 38.605 h",
        pipes.time_to_freeze_solid,
        {"water": "10 kg", "conductance": "2 W/K", "freezing_point": "0 °C", "surroundings": "-12 °C"},
        "38.605 h",
        "0.01 %",
    ),
]

# Its table prints inside 13, 20, 25, 32 and 50 mm for 15 x 1, 22 x 1, 28 x 1.5, 35 x 1.5 and 54 x 2.
CHECKS += [
    Check(
        topic="Smallest metric copper",
        where=f"bore of at least {least} mm",
        law=pipes.smallest_copper_metric,
        given={"least_bore": f"{least} mm"},
        theirs=f"{outside} mm",
        within="0.01 mm",
        because="tube sizes are whole millimeters",
        source=TUBE,
    )
    for least, outside in (("13.0", 15), ("19.9", 22), ("20.1", 28), ("32", 35), ("50", 54))
]
