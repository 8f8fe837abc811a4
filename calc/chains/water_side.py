"""The water side: what flows, the pipe it flows in, the fire's peak, and where its water boils first."""

from collections.abc import Callable

from calc.engine.declare import AnyStep, Case, Cases, Field, Given, Option, Pick, Step, Typical
from calc.engine.recorded import Apart
from calc.law import Law
from calc.physics import antifreeze, pipes, safety, water
from calc.vocabulary import (
    ANTIFREEZE,
    ANTIFREEZE_IN,
    ELBOWS,
    EVERY_PIPE,
    METRIC_SIZE,
    OTHER_LOSSES,
    OTHER_PRESSURE,
    PEAK_FACTOR,
    PEAK_OUTPUT,
    PIPE_KIND,
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
GLYCOLS: dict[str, Laws] = {
    "propylene": {
        "density": antifreeze.propylene_density,
        "specific_heat": antifreeze.propylene_specific_heat,
        "viscosity": antifreeze.propylene_viscosity,
    },
    "ethylene": {
        "density": antifreeze.ethylene_density,
        "specific_heat": antifreeze.ethylene_specific_heat,
        "viscosity": antifreeze.ethylene_viscosity,
    },
}

Place = tuple[str, str, str, tuple[str, ...]]  # what the steps' keys end in, temperature, words, properties


def _properties(laws: Laws, places: tuple[Place, ...]) -> tuple[AnyStep, ...]:
    return tuple(
        Step(f"{name}{ending}", laws[name], f"{_WORDS[name]} {words}", temperature=temperature)
        for ending, temperature, words, names in places
        for name in names
    )


def mixture(kind: str, *places: Place) -> tuple[AnyStep, ...]:
    """The steps from this glycol's share by volume to the properties of the mixture at each of these places."""
    law = antifreeze.propylene_mass_fraction if kind == "propylene" else antifreeze.ethylene_mass_fraction
    share = Step("mass_fraction", law, "Concentration by mass", volume_fraction="antifreeze")
    return (share, *_properties(GLYCOLS[kind], places))


def _by_kind(places: tuple[Place, ...], mixed: Callable[[str], Case]) -> Cases:
    plain = Case(fields=(NO_GLYCOL,), steps=_properties(_PLAIN, places))
    return Cases("antifreeze_kind", none=plain, **{kind: mixed(kind) for kind in GLYCOLS})


def fluid(*places: Place) -> Cases:
    """Properties of what flows at each of these places, for plain water and for either glycol."""
    return _by_kind(places, lambda kind: Case(fields=(GLYCOL,), steps=mixture(kind, *places)))


def fluid_at_the_fire(*places: Place) -> Cases:
    """The same on the fire's side of the store: plain water where the antifreeze is in a loop behind an exchanger."""

    def mixed(kind: str) -> Case:
        whole = Case(fields=(GLYCOL,), steps=mixture(kind, *places))
        loop = Case(steps=_properties(_PLAIN, places))
        return Case(fields=(ANTIFREEZE_IN,), cases=(Cases("antifreeze_in", whole=whole, loop=loop),))

    return _by_kind(places, mixed)


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
# Not in the vocabulary: each is for the pipe in hand, and a bore that a table gave is no news to another pipe.
PIPE_BORE = Field(
    "bore",
    "length",
    "Inside diameter of this pipe",
    "Outside diameter less two walls.",
    low="0.2 in",
    high="6 in",
    us="in",
    si="mm",
    typical=Typical("1 in", "common-practice", "0.5 in", "2 in", "A caliper, or what is stamped on it."),
)
PIPE_ROUGHNESS = Field(
    "roughness",
    "length",
    "Roughness of its wall",
    "0.0015 mm for drawn tube and plastic, 0.045 mm for new steel.",
    low="0 mm",
    high="3 mm",
    us="mm",
    si="mm",
    unless_given="0.0015 mm",
)
PIPE_FIELDS = (PIPE_LENGTH, ELBOWS, TEES, VALVES, OTHER_LOSSES, OTHER_PRESSURE)
_SOURCES = {
    "copper-m": "astm-b88",
    "copper-l": "astm-b88",
    "copper-metric": "en-1057",
    "pex": "astm-f876",
    "steel": "asme-b36-10",
}


def _size(family: str) -> Field:
    return METRIC_SIZE if family == "copper-metric" else PIPE_SIZE


def _pick(key: str, label: str, family: str, source: str) -> Pick:
    """The bore of a family's pipe, by its size."""
    size = _size(family)
    bores = {
        pipe.size: f"{pipe.bore * 1e3:.5f} mm"
        for pipe in pipes.PIPES
        if pipe.family == family and pipe.size in [option.value for option in size.options]
    }
    return Pick(key, "length", label, size.key, bores, source, us="in", si="mm")


def _case(family: str, rough: bool) -> Case:
    """Size, bore and roughness of a pipe of this family; PEX also by the minimum wall that catalogs print."""
    if family == "own":
        return Case(fields=(PIPE_BORE, PIPE_ROUGHNESS), decides=True)
    picks = [_pick("bore", "Inside diameter of this pipe", family, _SOURCES[family])]
    if rough:
        depth, label = {family: f"{pipes.ROUGHNESS[family] * 1e3:g} mm"}, "Roughness of its wall"
        picks.append(Pick("roughness", "length", label, "pipe_kind", depth, "pipe-roughness", us="mm", si="mm"))
    if family == "pex":
        catalog = "Its bore by minimum wall, as catalogs print it"
        picks.append(_pick("bore_by_minimum_wall", catalog, "pex-minimum-wall", "astm-f876"))
    return Case(fields=(_size(family),), steps=tuple(picks), decides=family == "copper-metric")


def pipe_of(word: str, says: str, not_where: str = "") -> Apart:
    """Which pipe a worksheet asks about; another pipe of the same plan may be of another kind and size.

    An older plan that says its pipe runs `not_where` did not mean this one.
    """
    return Apart(word, says, EVERY_PIPE, (PIPE_PLACE.key, not_where))


HEATING_PIPE = pipe_of("heating", "heating loop", "stove")
GRAVITY_PIPE = pipe_of("gravity", "gravity loop")

METAL_PIPES = ("copper-m", "copper-l", "steel", "copper-metric", "own")
ALL_PIPES = (*METAL_PIPES, "pex")
# The kinds of pipe for water that a fire can boil.
METAL_PIPE_KIND = PIPE_KIND.but(options=tuple(option for option in PIPE_KIND.options if option.value in METAL_PIPES))


def pipe(families: tuple[str, ...], rough: bool = True) -> Cases:
    """The pipe chosen, by its size or its inside diameter; where it is `rough`, friction is asked for."""
    return Cases("pipe_kind", **{family.replace("-", "_"): _case(family, rough) for family in families})


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

SPEED_GIVENS = (
    Given("hot_copper_speed", "velocity", "Fastest in hot copper", "3 ft/s", "copper-velocity", limit="most"),
    Given("loud", "velocity", "Water is heard above", "4 ft/s", "quiet-velocity", limit="most"),
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
