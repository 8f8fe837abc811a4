"""Physics that carries what it shows: each law holds its formula as text, its units, its ranges and its source.

    @law("volume * heat_content * (top - low)", source="first-law", ranges={"top": "1 °C to 150 °C"})
    def heat(volume: CubicMetre, heat_content: JoulePerCubicMetreKelvin, top: Kelvin, low: Kelvin) -> Joule:
        "Heat in water between two temperatures, J."

The text is what readers see and what is computed: parsed once against an allow-list, and compiled into a function of
the parameters at its first call. Tests prove that its units come out. `@balance` is for laws that are solved, `@method`
for the few that are not a formula (property formulations, series, hourly runs) and show a sentence instead.
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Annotated, Any, NamedTuple, get_args, get_origin

from calc.expression import CONDITION, PLAIN_NAMES, Expression, Formula
from calc.sources import SOURCES
from calc.units import UnitError, read_quantity, shown_unit


class Measure(NamedTuple):
    """What an annotation says of a number: its kind (see `units.KINDS`); its SI unit follows from the kind."""

    kind: str


# Names for signatures: SI floats with their kind.
Kelvin = Annotated[float, Measure("temperature")]
KelvinDifference = Annotated[float, Measure("temperature_difference")]
Watt = Annotated[float, Measure("power")]
ElectricWatt = Annotated[float, Measure("electric_power")]
Joule = Annotated[float, Measure("energy")]
CubicMetre = Annotated[float, Measure("volume")]
Flow = Annotated[float, Measure("flow")]
AirFlow = Annotated[float, Measure("air_flow")]
Metre = Annotated[float, Measure("length")]
SquareMetre = Annotated[float, Measure("area")]
GaugePascal = Annotated[float, Measure("pressure_gauge")]
AbsolutePascal = Annotated[float, Measure("pressure_absolute")]
PascalDifference = Annotated[float, Measure("pressure_difference")]
DraughtPascal = Annotated[float, Measure("draught")]
Second = Annotated[float, Measure("time")]
Kilogram = Annotated[float, Measure("mass")]
MassFlow = Annotated[float, Measure("mass_flow")]
Money = Annotated[float, Measure("money")]
MoneyPerJoule = Annotated[float, Measure("price_per_energy")]
MoneyPerCubicMetre = Annotated[float, Measure("price_per_volume")]
MoneyPerKilogram = Annotated[float, Measure("price_per_mass")]
MoneyPerSecond = Annotated[float, Measure("price_per_time")]
Fraction = Annotated[float, Measure("fraction")]
DegreeDays = Annotated[float, Measure("degree_days")]
Count = Annotated[float, Measure("count")]
Exponent = Annotated[float, Measure("exponent")]
Factor = Annotated[float, Measure("factor")]
PerDay = Annotated[float, Measure("rate")]
PerSecond = Annotated[float, Measure("settling_rate")]
AirChanges = Annotated[float, Measure("air_changes")]
WattPerMetre = Annotated[float, Measure("heat_rate_per_length")]
WattPerSquareMetre = Annotated[float, Measure("heat_flux")]
WattPerKelvin = Annotated[float, Measure("conductance")]
WattPerSquareMetreKelvin = Annotated[float, Measure("conductance_per_area")]
WattPerMetreKelvin = Annotated[float, Measure("conductance_per_length")]
Conductivity = Annotated[float, Measure("conductivity")]
ThermalResistance = Annotated[float, Measure("thermal_resistance")]
MetreKelvinPerWatt = Annotated[float, Measure("resistance_per_length")]
Density = Annotated[float, Measure("density")]
Velocity = Annotated[float, Measure("velocity")]
JoulePerKelvin = Annotated[float, Measure("heat_capacity")]
JoulePerKilogramKelvin = Annotated[float, Measure("specific_heat")]
JoulePerCubicMetreKelvin = Annotated[float, Measure("volume_heat_capacity")]
JoulePerKilogram = Annotated[float, Measure("heat_per_mass")]
JoulePerCubicMetre = Annotated[float, Measure("heat_per_volume")]
CubicMetrePerWatt = Annotated[float, Measure("volume_per_power")]
CubicMetrePerSquareMetre = Annotated[float, Measure("volume_per_area")]
LoadPerArea = Annotated[float, Measure("load_per_area")]
PascalSecond = Annotated[float, Measure("viscosity")]
CubicMetrePerKilogram = Annotated[float, Measure("specific_volume")]
PascalPerMetre = Annotated[float, Measure("pressure_per_length")]
PerKelvin = Annotated[float, Measure("expansion_rate")]
KelvinPerSecond = Annotated[float, Measure("temperature_rate")]
Radiation = Annotated[float, Measure("radiation")]
LossGrowth = Annotated[float, Measure("loss_growth")]
Hardness = Annotated[float, Measure("hardness")]
Concentration = Annotated[float, Measure("concentration")]
Dose = Annotated[float, Measure("dose")]
Acidity = Annotated[float, Measure("acidity")]
JoulePerSquareMetreKelvin = Annotated[float, Measure("area_heat_capacity")]
Choice = Annotated[str, Measure("choice")]


# What a run records hour by hour.
KelvinByHour = Annotated[tuple[float, ...], Measure("temperature")]

# What the function of a balance returns: the two values between which the answer lies.
type Bracket[Measured] = tuple[Measured, Measured]


class Constant(NamedTuple):
    """A number that a formula names: its SI value, its unit in words pint can read, and where it comes from.

    With a `kind` it is shown in the reader's units like any other quantity; without, in SI.
    """

    value: float
    unit: str
    source: str
    note: str = ""
    kind: str = ""


class Range(NamedTuple):
    """Where a law holds for one argument, ends included, with the text it was declared in."""

    low: float
    high: float
    text: str

    def holds(self, value: float) -> bool:
        """Whether it holds there. A bound in another unit, 212 °F for 100 °C, may miss by its last binary digit."""
        return self.low <= value <= self.high or any(math.isclose(value, end, rel_tol=1e-12) for end in self[:2])


class OutOfRange(ValueError):
    """An argument outside the range in which a law holds."""

    def __init__(self, law: str, argument: str, value: float, allowed: Range) -> None:
        super().__init__(f"{law}: {argument} = {value!r} is outside {allowed.text}")
        self.law, self.argument, self.value, self.allowed = law, argument, value, allowed
        self.step = ""  # the worksheet's step in which it happened, if it was one


class NoSolution(ValueError):
    """A balance that no value in its bracket satisfies."""

    def __init__(self, law: str) -> None:
        super().__init__(f"{law}: no value balances both sides")
        self.law = law


@dataclass(eq=False, repr=False)
class Law:
    """A piece of physics with what it shows. Call it like a function; it refuses arguments out of its ranges.

    Most laws are computed from `formula`. A `function` is what a method computes by, the bracket of a balance, or a
    body that says more than its formula does.
    """

    name: str
    module: str
    source: str
    parameters: dict[str, Measure]
    returns: Measure
    constants: dict[str, Constant]
    ranges: dict[str, Range]
    function: Callable[..., Any] | None = None
    formula: Formula | None = None
    never: Expression | None = None
    left: Formula | None = None
    right: Formula | None = None
    solves: str | None = None
    sentence: str | None = None
    safety: bool = False
    run: "Run | None" = None  # what the value was read from, if it is one of many

    def __call__(self, *positional: float, **named: float) -> float:
        arguments = dict(zip(self.parameters, positional, strict=False)) | named if positional else named
        for name, allowed in self.ranges.items():
            if not allowed.holds(arguments[name]):
                raise OutOfRange(self.name, name, arguments[name], allowed)
        return self._compute(**arguments)

    @cached_property
    def constant_values(self) -> dict[str, float]:
        return {name: constant.value for name, constant in self.constants.items()}

    @cached_property
    def _compute(self) -> Callable[..., float]:
        """What gives the answer, made at the first call: a page uses a handful of the laws that it imports."""
        if self.solves is not None:
            return self._solver()
        if self.function is not None:
            return self.function
        assert self.formula
        compute = self.formula.function(self.parameters, self.constant_values)
        if self.never is None:
            return compute
        never = self.never.function(self.parameters, self.constant_values)

        def guarded(**arguments: float) -> float:
            if never(**arguments):
                raise NoSolution(self.name)
            return float(compute(**arguments))

        return guarded

    def _solver(self) -> Callable[..., float]:
        assert self.left and self.right and self.solves and self.function
        names = (*self.parameters, self.solves)
        left = self.left.function(names, self.constant_values)
        right = self.right.function(names, self.constant_values)
        solves, bracket = self.solves, self.function

        def solve(**arguments: float) -> float:
            def imbalance(guess: float) -> float:
                values = {**arguments, solves: guess}
                return float(left(**values) - right(**values))

            root = find_root(imbalance, *bracket(**arguments))
            if root is None:
                raise NoSolution(self.name)
            return root

        return solve


def find_root(imbalance: Callable[[float], float], low: float, high: float) -> float | None:
    """The root of a function that changes sign once between `low` and `high`, to the last bit or so; None without one.

    Chandrupatla, A new hybrid quadratic/bisection algorithm for finding the zero of a nonlinear function without using
    derivatives, Advances in Engineering Software 28 (1997), 145-149: inverse quadratic interpolation through the last
    three points where the function is straight enough between them, else bisection.
    """
    old, at_old, new, at_new = low, imbalance(low), high, imbalance(high)
    if at_old == 0:
        return old
    if at_new == 0:
        return new
    if (at_old > 0) == (at_new > 0) or math.isnan(at_old) or math.isnan(at_new):
        return None
    share = 0.5  # of the way from the newest point to the one across the root, at which the next guess lies
    for _ in range(200):
        guess = new + share * (old - new)
        at_guess = imbalance(guess)
        if (at_guess > 0) == (at_new > 0):
            last, at_last = new, at_new
        else:
            last, at_last, old, at_old = old, at_old, new, at_new
        new, at_new = guess, at_guess
        best, at_best = (new, at_new) if abs(at_new) < abs(at_old) else (old, at_old)
        least = 2e-15 * abs(best) / abs(old - new)  # a smaller step would not be seen in the last digits
        if at_best == 0 or least > 0.5:
            return best
        straight, level = (new - old) / (last - old), (at_new - at_old) / (at_last - at_old)
        share = 0.5
        if level**2 < straight and (1 - level) ** 2 < 1 - straight:
            share = at_new / (at_old - at_new) * at_last / (at_old - at_last)
            share += (last - new) / (old - new) * at_new / (at_last - at_new) * at_old / (at_last - at_old)
        share = min(max(share, least), 1 - least)
    return best


def law(
    formula: str,
    *,
    source: str,
    ranges: Mapping[str, str] | None = None,
    constants: Mapping[str, Constant] | None = None,
    safety: bool = False,
    never: str | None = None,
    body: str | None = None,
) -> Callable[[Callable[..., float]], Law]:
    """Declare a law: its `formula` text (parameter and constant names, SI) is what readers see and what is computed.

    The decorated function gives names and measures, and its docstring the meaning; it has no body. `never` is a
    condition, such as "top <= low", under which nothing satisfies the law: it raises NoSolution. Where the formula has
    no value but the law has (a limit), `body` says where, and the function's body is what is computed.

    `ranges` maps a parameter to text such as "1 °C to 150 °C". `safety` marks laws that guard against injury; they need
    two outside checks.
    """

    def declare(function: Callable[..., float]) -> Law:
        made = _law(
            function,
            source,
            ranges,
            constants,
            safety=safety,
            function=function if body else None,
            formula=Formula(formula),
            never=Expression(never, CONDITION) if never else None,
        )
        if __debug__:  # left out of the page's Python, like every check of a declaration
            _names_known(made, made.formula, ())
            if made.never:
                _names_known(made, made.never, ())
        return made

    return declare


def balance(
    left: str,
    right: str,
    *,
    solves: str,
    source: str,
    ranges: Mapping[str, str] | None = None,
    constants: Mapping[str, Constant] | None = None,
    safety: bool = False,
) -> Callable[[Callable[..., Bracket[float]]], Law]:
    """Declare a law that is solved: `solves` is found such that the two formula texts are equal.

    The decorated function returns the bracket, the two values between which the answer must lie: `Bracket[Kelvin]`.
    Raises NoSolution when the sides do not cross in the bracket.
    """

    def declare(function: Callable[..., Bracket[float]]) -> Law:
        sides = {"left": Formula(left), "right": Formula(right)}
        made = _law(function, source, ranges, constants, safety=safety, function=function, solves=solves, **sides)
        if __debug__:
            _names_known(made, made.left, (solves,))
            _names_known(made, made.right, (solves,))
        return made

    return declare


def method(
    sentence: str, *, source: str, ranges: Mapping[str, str] | None = None, safety: bool = False
) -> Callable[[Callable[..., float]], Law]:
    """Declare a function that no pocket calculator can follow (a property formulation, a series); shows `sentence`."""

    def declare(function: Callable[..., float]) -> Law:
        return _law(function, source, ranges, None, safety=safety, function=function, sentence=sentence)

    return declare


@dataclass(eq=False, repr=False)
class Run:
    """A method that gives a whole record at once, such as a year run hour by hour; steps read its fields one by one.

    `law(field)` is what a step takes: every field that is a measured number has one. `series` are those fields that
    hold such a number for each hour. It is the function's own business to keep the last records, so that reading twenty
    fields is not running twenty times.
    """

    name: str
    module: str
    source: str
    parameters: dict[str, Measure]
    fields: dict[str, Measure]
    series: dict[str, Measure]
    function: Callable[..., Any]
    sentence: str

    def __call__(self, **arguments: float | str) -> Any:
        """The record."""
        return self.function(**arguments)

    def law(self, field: str) -> Law:
        """The law that gives one field of the record."""

        def read(**arguments: Any) -> float:
            value: float | None = getattr(self.function(**arguments), field)
            if value is None:
                raise NoSolution(field)
            return value

        return Law(
            name=field,
            module=self.module,
            source=self.source,
            parameters=self.parameters,
            returns=self.fields[field],
            constants={},
            ranges={},
            function=read,
            sentence=self.sentence,
            run=self,
        )


def run(sentence: str, *, source: str) -> Callable[[Callable[..., Any]], Run]:
    """Declare a function that gives a record: a NamedTuple whose measured fields are annotated like a law's result."""

    def declare(function: Callable[..., Any]) -> Run:
        hints = dict(function.__annotations__)
        record = hints.pop("return")
        measured = {name: hint for name, hint in record.__annotations__.items() if _is_measured(hint)}
        measures = {name: _measure(function, name, hint) for name, hint in measured.items()}
        of_hours = {name for name, hint in measured.items() if get_origin(get_args(hint)[0]) is tuple}
        return Run(
            name=function.__name__,
            module=function.__module__.rpartition(".")[2],
            source=source,
            parameters={name: _measure(function, name, hint) for name, hint in hints.items()},
            fields={name: measure for name, measure in measures.items() if name not in of_hours},
            series={name: measure for name, measure in measures.items() if name in of_hours},
            function=function,
            sentence=sentence,
        )

    return declare


def _is_measured(hint: Any) -> bool:
    return any(isinstance(part, Measure) for part in get_args(hint))


def _law(
    declared: Callable[..., Any],
    source: str,
    ranges: Mapping[str, str] | None,
    constants: Mapping[str, Constant] | None,
    **rest: Any,
) -> Law:
    parameters = {name: _measure(declared, name, hint) for name, hint in declared.__annotations__.items()}
    returns = parameters.pop("return")
    used = {source, *(constant.source for constant in (constants or {}).values())}
    for key in used:
        if key not in SOURCES:
            raise ValueError(f"{declared.__name__}: no source is called {key!r}")
    return Law(
        name=declared.__name__,
        module=declared.__module__.rpartition(".")[2],
        source=source,
        parameters=parameters,
        returns=returns,
        constants=dict(constants or {}),
        ranges={name: _range(parameters[name].kind, text) for name, text in (ranges or {}).items()},
        **rest,
    )


def _measure(declared: Callable[..., Any], name: str, hint: Any) -> Measure:
    parts = get_args(hint)
    for part in parts:
        if isinstance(part, Measure):
            return part
    for part in parts:
        if get_args(part):  # Bracket[Kelvin]
            return _measure(declared, name, part)
    raise ValueError(f"{declared.__name__}: {name} needs an annotation with a Measure")


def _names_known(made: Law, formula: Expression | None, extra: tuple[str, ...]) -> None:
    assert formula
    unknown = formula.names - made.parameters.keys() - made.constants.keys() - PLAIN_NAMES.keys() - set(extra)
    if unknown:
        raise ValueError(f"{made.name}: {', '.join(sorted(unknown))} in the formula is neither parameter nor constant")


def _range(kind: str, text: str) -> Range:
    low, separator, high = text.partition(" to ")
    if not separator:
        raise ValueError(f"a range reads like '1 °C to 150 °C', not {text!r}")
    shown = shown_unit(kind, "si")
    try:
        return Range(read_quantity(low, kind, shown, "us").si, read_quantity(high, kind, shown, "us").si, text)
    except UnitError as wrong:
        raise ValueError(f"the range {text!r} {wrong.reason}") from None
