"""The water side: what flows, the pipe it flows in, the fire's peak, and where its water boils first."""

from calc.engine.declare import AnyStep, Case, Cases, Field, Given, Option, Pick, Step
from calc.law import Law
from calc.physics import antifreeze, pipes, safety, water
from calc.vocabulary import (
    ANTIFREEZE,
    ELBOWS,
    OTHER_LOSSES,
    OTHER_PRESSURE,
    PEAK_FACTOR,
    PEAK_OUTPUT,
    PIPE_LENGTH,
    PIPE_SIZE,
    TEES,
    VALVES,
    WATER_OUTPUT,
)

# --- what flows ---

GLYCOL = ANTIFREEZE.but(
    hint="Of the whole filling, as made up at room temperature; not by mass.",
    low="10 %",
    high="55 %",
    unless_given="40 %",
)

# So little that it can only mean none: a larger share, with no glycol named, is taken for propylene glycol.
NO_GLYCOL = ANTIFREEZE.but(high="0.5 %")

_WORDS = {"density": "Density", "specific_heat": "Specific heat", "viscosity": "Viscosity"}
Laws = dict[str, Law]
_PLAIN: Laws = {"density": water.density, "specific_heat": water.specific_heat, "viscosity": water.viscosity}
_PROPYLENE: Laws = {
    "density": antifreeze.propylene_density,
    "specific_heat": antifreeze.propylene_specific_heat,
    "viscosity": antifreeze.propylene_viscosity,
}
_ETHYLENE: Laws = {
    "density": antifreeze.ethylene_density,
    "specific_heat": antifreeze.ethylene_specific_heat,
    "viscosity": antifreeze.ethylene_viscosity,
}

Place = tuple[str, str, str, tuple[str, ...]]  # what the steps' keys end in, temperature, words, properties


def _properties(laws: Laws, places: tuple[Place, ...]) -> tuple[AnyStep, ...]:
    return tuple(
        Step(f"{name}{ending}", laws[name], f"{_WORDS[name]} {words}", temperature=temperature)
        for ending, temperature, words, names in places
        for name in names
    )


def mass_share(kind: str) -> Step:
    """The step from share by volume to share by mass."""
    law = antifreeze.propylene_mass_fraction if kind == "propylene" else antifreeze.ethylene_mass_fraction
    return Step("mass_fraction", law, "Concentration by mass", volume_fraction="antifreeze")


def fluid(*places: Place) -> Cases:
    """Properties of what flows at each of these places, for plain water and for either glycol."""
    return Cases(
        "antifreeze_kind",
        none=Case(fields=(NO_GLYCOL,), steps=_properties(_PLAIN, places)),
        propylene=Case(fields=(GLYCOL,), steps=(mass_share("propylene"), *_properties(_PROPYLENE, places))),
        ethylene=Case(fields=(GLYCOL,), steps=(mass_share("ethylene"), *_properties(_ETHYLENE, places))),
    )


ALL_PROPERTIES = ("density", "specific_heat", "viscosity")

# --- the pipe ---

# Several worksheets ask for one pipe, and each is for another place of it.
PIPE_PLACE = Field(
    "pipe_place",
    "choice",
    "Where this pipe runs",
    "A fire can boil what stands next to it; a store cannot.",
    options=(
        Option("emitters", "from the store to floors, radiators, coils or taps"),
        Option("stove", "between stove and store, or to a dump, a vent or a relief valve"),
    ),
)
PIPE_FIELDS = (PIPE_SIZE, PIPE_LENGTH, ELBOWS, TEES, VALVES, OTHER_LOSSES, OTHER_PRESSURE)
_SIZES = tuple(option.value for option in PIPE_SIZE.options)
_SOURCES = {"copper-m": "astm-b88", "copper-l": "astm-b88", "pex": "astm-f876", "steel": "asme-b36-10"}


def _bores(family: str) -> dict[str, str]:
    return {
        pipe.size: f"{pipe.outside - 2 * pipe.wall:.4f} in"
        for pipe in pipes.PIPES
        if pipe.family == family and pipe.size in _SIZES
    }


def _bore(family: str) -> Pick:
    label = "Inside diameter of this pipe"
    return Pick("bore", "length", label, "pipe_size", _bores(family), _SOURCES[family], us="in", si="mm")


def pipe(*families: str) -> Cases:
    """The bore of the pipe chosen; PEX also by the minimum wall that catalogs print."""
    catalog = Pick(
        "bore_by_minimum_wall",
        "length",
        "Its bore by minimum wall, as catalogs print it",
        "pipe_size",
        _bores("pex-minimum-wall"),
        "astm-f876",
        us="in",
        si="mm",
    )
    return Cases(
        "pipe_kind",
        **{
            family.replace("-", "_"): Case(steps=(_bore(family), catalog) if family == "pex" else (_bore(family),))
            for family in families
        },
    )


def roughness(*families: str) -> Pick:
    """The roughness of the pipe chosen."""
    depths = {family: f"{pipes.ROUGHNESS[family] * 1e3:g} mm" for family in families}
    return Pick("roughness", "length", "Roughness of its wall", "pipe_kind", depths, "pipe-roughness", us="mm", si="mm")


FRICTION_STEPS: tuple[AnyStep, ...] = (
    Step("velocity", pipes.velocity, "Velocity of the water"),
    Step("reynolds_number", pipes.reynolds_number, "Reynolds number"),
    Step("relative_roughness", pipes.relative_roughness, "Roughness over bore"),
    Step("friction_factor", pipes.friction_factor, "Friction factor"),
    Step("friction", pipes.friction, "Pressure lost in each length"),
    Step("fittings_loss", pipes.fittings_loss, "Loss of all fittings, in velocity heads"),
    Step("pressure_drop", pipes.pressure_drop, "Pressure drop of the loop", length="pipe_length"),
    Step("head", pipes.head, "Head the pump must give at this flow"),
)

FRICTION_GIVENS = (
    Given("laminar", "factor", "Reynolds number below which flow is laminar", "2100", "reynolds"),
    Given("turbulent", "factor", "Reynolds number above which flow is turbulent", "4000", "reynolds"),
)

# --- the fire's peak ---


def peak(*asked: Field) -> Cases:
    """The fire's peak, known or from the average output; `asked` is what only that way asks beside its factor."""
    return Cases(
        "peak_known",
        no=Case(
            fields=(*asked, PEAK_FACTOR),
            steps=(Step("peak_output", safety.peak_output, "Peak output to water"),),
        ),
        yes=Case(fields=(PEAK_OUTPUT,), decides=True),
    )


PEAK = peak(WATER_OUTPUT)

# --- where water boils first ---

BOILING_GIVENS = (
    Given("boiling_caution", "temperature_difference", "Margin to boiling worth keeping", "20 F°", "boiling-caution"),
)

BOILING_STEPS: tuple[AnyStep, ...] = (
    Step("barometer", water.barometer, "Air pressure at this height"),
    Step("pressure", water.absolute_pressure, "Absolute pressure at the store's top", gauge="system_pressure"),
    Step("boiling", water.boiling_temperature, "Boiling point at the store's top"),
    Step("store_margin", water.boiling_margin, "Margin at the store's top", temperature="store_top"),
    Step("density_hot", water.density, "Density of the hot water", temperature="store_top"),
    Step("outlet_at_peak", safety.outlet_at_peak, "Stove's outlet at the fire's peak", rise="charge_rise"),
    Step(
        "outlet_pressure",
        pipes.pressure_at_height,
        "Absolute pressure at the stove's outlet",
        absolute_pressure="pressure",
        density="density_hot",
        height="outlet_height",
    ),
    Step(
        "boiling_outlet",
        water.boiling_temperature,
        "Boiling point at the stove's outlet",
        pressure="outlet_pressure",
    ),
    Step(
        "outlet_margin",
        water.boiling_margin,
        "Margin at the stove's outlet, at the peak",
        boiling="boiling_outlet",
        temperature="outlet_at_peak",
    ),
    Step(
        "highest_pressure",
        pipes.pressure_at_height,
        "Absolute pressure at the highest pipe",
        absolute_pressure="pressure",
        density="density_hot",
        height="highest_point",
    ),
    Step(
        "boiling_highest",
        water.boiling_temperature,
        "Boiling point at the highest pipe",
        pressure="highest_pressure",
    ),
    Step(
        "highest_margin",
        water.boiling_margin,
        "Margin at the highest pipe",
        boiling="boiling_highest",
        temperature="outlet_at_peak",
    ),
    Step(
        "inlet_pressure",
        pipes.pump_inlet_pressure,
        "Absolute pressure at the pump's inlet",
        absolute_pressure="pressure",
        density="density_hot",
        height="pump_height",
        pressure_lost="suction_loss",
    ),
    Step("boiling_pump", water.boiling_temperature, "Boiling point at the pump's inlet", pressure="inlet_pressure"),
    Step(
        "pump_margin",
        water.boiling_margin,
        "Margin at the pump's inlet",
        boiling="boiling_pump",
        temperature="store_top",
    ),
    Step(
        "vapour_pressure",
        water.vapour_pressure,
        "Vapor pressure of the hottest stored water",
        temperature="store_top",
    ),
    Step(
        "suction_head",
        pipes.net_positive_suction_head,
        "Net positive suction head at the pump",
        density="density_hot",
    ),
)
