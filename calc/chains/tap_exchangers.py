"""What a tap-water exchanger does, by what is known of it: a rated point, its conductance, or its approach.

A plate beside the store has streams on both sides; a coil stands in a store of one temperature. With a rated point the
conductance follows flows and temperatures; a typed conductance or an approach is taken as it stands.
"""

from calc.engine.declare import AnyStep, Case, Cases, Field, Option, Step, Typical
from calc.physics import emitters, exchange

EXCHANGER_KNOWN = Field(
    "exchanger_known",
    "choice",
    "What you know of the exchanger",
    "A maker's table always holds one rated point at least.",
    options=(
        Option("rating", "one rated point from the maker's table"),
        Option("conductance", "its conductance, UA"),
        Option("approach", "how much cooler the tap water leaves than the store is"),
    ),
    unless_given="rating",
)
EXCHANGER_CONDUCTANCE = Field(
    "exchanger_conductance",
    "conductance",
    "Conductance of the exchanger, UA",
    "At about this draw; with less water or a cooler store it has less.",
    low="5 Btu/h/F",
    high="100,000 Btu/h/F",
    uncertainty="15 %",
    typical=Typical(
        "1,500 Btu/h/F",
        "exchanger-guess",
        "600 Btu/h/F",
        "4,000 Btu/h/F",
        "Work it out from a rated point.",
    ),
)
TAP_APPROACH = Field(
    "tap_approach",
    "temperature_difference",
    "Approach of the exchanger",
    "Store less hot water out, at the peak draw and the temperature wanted.",
    low="1 F°",
    high="80 F°",
    uncertainty="3 F°",
    typical=Typical("15 F°", "exchanger-guess", "5 F°", "30 F°", "Two thermometers while a tap runs."),
)


def _rated(key: str, kind: str, label: str, hint: str, low: str, high: str, text: str, ends: tuple[str, str]) -> Field:
    return Field(
        key,
        kind,
        label,
        hint,
        low=low,
        high=high,
        typical=Typical(text, "exchanger-guess", *ends, "The maker's table, any one line of it."),
    )


PLATE = (
    _rated(
        "plate_rating",
        "power",
        "Rated capacity",
        "Any one line of the maker's table.",
        "5,000 Btu/h",
        "2,000,000 Btu/h",
        "150,000 Btu/h",
        ("80,000 Btu/h", "250,000 Btu/h"),
    ),
    _rated(
        "plate_hot_in",
        "temperature",
        "Rated hot-side inlet",
        "",
        "90 °F",
        "250 °F",
        "160 °F",
        ("160 °F", "160 °F"),
    ),
    _rated(
        "plate_hot_out",
        "temperature",
        "Rated hot-side outlet",
        "",
        "60 °F",
        "240 °F",
        "110 °F",
        ("106 °F", "116 °F"),
    ),
    _rated(
        "plate_cold_in",
        "temperature",
        "Rated cold-side inlet",
        "",
        "33 °F",
        "120 °F",
        "50 °F",
        ("50 °F", "50 °F"),
    ),
    _rated(
        "plate_cold_out",
        "temperature",
        "Rated cold-side outlet",
        "",
        "60 °F",
        "240 °F",
        "125 °F",
        ("120 °F", "130 °F"),
    ),
)
COIL = (
    _rated(
        "coil_rating",
        "power",
        "Rated capacity of the coil",
        "Any one line of the maker's table.",
        "2,000 Btu/h",
        "1,000,000 Btu/h",
        "60,000 Btu/h",
        ("40,000 Btu/h", "100,000 Btu/h"),
    ),
    _rated(
        "coil_store",
        "temperature",
        "Rated store temperature",
        "",
        "90 °F",
        "250 °F",
        "160 °F",
        ("160 °F", "160 °F"),
    ),
    _rated(
        "coil_cold_in",
        "temperature",
        "Rated cold-water inlet",
        "",
        "33 °F",
        "120 °F",
        "50 °F",
        ("50 °F", "50 °F"),
    ),
    _rated(
        "coil_cold_out",
        "temperature",
        "Rated hot-water outlet",
        "",
        "60 °F",
        "240 °F",
        "110 °F",
        ("105 °F", "120 °F"),
    ),
)


def _store_by_approach() -> Step:
    return Step(
        "store_needed",
        emitters.lowest_useful,
        "Coolest store that still makes it",
        supply="tap_wanted",
        exchanger_approach="tap_approach",
    )


def _plate(conductance: str) -> tuple[AnyStep, ...]:
    """What a plate of this conductance (a field or a step) does at the flows given."""
    return (
        Step("transfer_units", exchange.number_of_transfer_units, "Number of transfer units", conductance=conductance),
        Step(
            "effectiveness",
            exchange.counterflow_effectiveness,
            "Effectiveness of the plate",
            ratio="stream_ratio",
        ),
        Step(
            "heat_full",
            exchange.heat_passed,
            "Heat that passes from a fully charged store",
            store="store_top",
            cold="cold_water",
        ),
        Step(
            "exchanger_outlet",
            exchange.tap_temperature,
            "Tap water from a fully charged store",
            cold="cold_water",
            heat="heat_full",
        ),
    )


def _plate_store() -> Step:
    return Step(
        "store_needed",
        exchange.store_needed,
        "Coolest store that still makes it",
        tap="tap_wanted",
        cold="cold_water",
    )


def _plate_stream(**rated: str) -> Step:
    """The largest stream from a full store; a plate whose conductance is taken as it stands is rated where it is."""
    return Step(
        "largest_stream",
        exchange.largest_tap_stream,
        "Largest stream a full store makes",
        store="store_top",
        cold="cold_water",
        tap="tap_wanted",
        **rated,
    )


_AS_IT_STANDS = {"rated_primary": "primary", "rated_tap": "tap_side", "film_exponent": "no_film"}

PLATE_WAYS = Cases(
    "exchanger_known",
    rating=Case(
        fields=PLATE,
        steps=(
            Step(
                "rated_conductance",
                exchange.rated_conductance,
                "Conductance of the plate at its rated point",
                rated_heat="plate_rating",
                hot_in="plate_hot_in",
                hot_out="plate_hot_out",
                cold_in="plate_cold_in",
                cold_out="plate_cold_out",
            ),
            Step(
                "rated_primary",
                exchange.stream_capacity,
                "Hot side's stream there",
                heat="plate_rating",
                warm="plate_hot_in",
                cool="plate_hot_out",
            ),
            Step(
                "rated_tap",
                exchange.stream_capacity,
                "Cold side's stream there",
                heat="plate_rating",
                warm="plate_cold_out",
                cool="plate_cold_in",
            ),
            Step("conductance", exchange.conductance_at_flows, "Conductance at your flows"),
            *_plate("conductance"),
            _plate_store(),
            _plate_stream(),
        ),
    ),
    conductance=Case(
        fields=(EXCHANGER_CONDUCTANCE,),
        steps=(
            *_plate("exchanger_conductance"),
            _plate_store(),
            _plate_stream(rated_conductance="exchanger_conductance", **_AS_IT_STANDS),
        ),
        decides=True,
    ),
    approach=Case(
        fields=(TAP_APPROACH,),
        steps=(
            _store_by_approach(),
            Step(
                "conductance",
                exchange.rated_conductance,
                "Conductance that this approach means",
                rated_heat="draw",
                hot_in="store_needed",
                hot_out="primary_return",
                cold_in="cold_water",
                cold_out="tap_wanted",
            ),
            *_plate("conductance"),
            _plate_stream(rated_conductance="conductance", **_AS_IT_STANDS),
        ),
        decides=True,
    ),
)


def _coil(conductance: str) -> tuple[AnyStep, ...]:
    """What a coil of this conductance (a field or a step) does, taken as it stands."""
    return (
        Step(
            "largest_stream",
            exchange.coil_largest_stream,
            "Largest stream a full store makes",
            store="store_top",
            cold="cold_water",
            tap="tap_wanted",
            conductance=conductance,
        ),
        Step(
            "exchanger_outlet",
            exchange.coil_outlet,
            "Tap water from a fully charged store",
            store="store_top",
            cold="cold_water",
            conductance=conductance,
        ),
    )


_COIL_RATED = {"rated_store": "coil_store"}

COIL_WAYS = Cases(
    "exchanger_known",
    rating=Case(
        fields=COIL,
        steps=(
            Step(
                "rated_conductance",
                exchange.rated_conductance,
                "Conductance of the coil at its rated point",
                rated_heat="coil_rating",
                hot_in="coil_store",
                hot_out="coil_store",
                cold_in="coil_cold_in",
                cold_out="coil_cold_out",
            ),
            Step(
                "rated_tap",
                exchange.stream_capacity,
                "Tap water's stream there",
                heat="coil_rating",
                warm="coil_cold_out",
                cool="coil_cold_in",
            ),
            Step(
                "rated_mean",
                emitters.mean_of,
                "Tap water halfway along the coil there",
                supply="coil_cold_out",
                return_water="coil_cold_in",
            ),
            Step("tap_mean", emitters.mean_of, "Tap water halfway", supply="tap_wanted", return_water="cold_water"),
            Step(
                "store_needed",
                exchange.store_for_coil,
                "Coolest store that still makes it",
                tap="tap_wanted",
                cold="cold_water",
                **_COIL_RATED,
            ),
            Step(
                "conductance",
                exchange.coil_conductance,
                "Conductance of the coil at this draw in that store",
                store="store_needed",
                **_COIL_RATED,
            ),
            Step(
                "largest_stream",
                exchange.stream_of_coil,
                "Largest stream a full store makes",
                store="store_top",
                cold="cold_water",
                tap="tap_wanted",
                **_COIL_RATED,
            ),
            Step(
                "exchanger_outlet",
                exchange.water_from_coil,
                "Tap water from a fully charged store",
                store="store_top",
                cold="cold_water",
                **_COIL_RATED,
            ),
        ),
    ),
    conductance=Case(
        fields=(EXCHANGER_CONDUCTANCE,),
        steps=(
            Step(
                "store_needed",
                exchange.store_needed_by_coil,
                "Coolest store that still makes it",
                tap="tap_wanted",
                cold="cold_water",
                conductance="exchanger_conductance",
            ),
            *_coil("exchanger_conductance"),
        ),
        decides=True,
    ),
    approach=Case(
        fields=(TAP_APPROACH,),
        steps=(
            _store_by_approach(),
            Step(
                "conductance",
                exchange.rated_conductance,
                "Conductance that this approach means",
                rated_heat="draw",
                hot_in="store_needed",
                hot_out="store_needed",
                cold_in="cold_water",
                cold_out="tap_wanted",
            ),
            *_coil("conductance"),
        ),
        decides=True,
    ),
)
