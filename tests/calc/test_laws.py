"""Every law: it has a body only where its text does not say it all, its dimensions come out, its source is there."""

import ast
import importlib
import itertools
import math
import pkgutil
import random
import re
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pint
import pytest

import calc.physics
from calc.expression import FUNCTIONS, Formula
from calc.law import Law, NoSolution, OutOfRange, find_root
from calc.sources import SOURCES
from calc.units import KINDS

PINT = pint.UnitRegistry()
PINT.define("money = [money]")


def _laws() -> Iterator[Law]:
    for module in pkgutil.iter_modules(calc.physics.__path__):
        loaded = importlib.import_module(f"calc.physics.{module.name}")
        for name_value in vars(loaded).values():
            if isinstance(name_value, Law) and name_value.module == module.name:
                yield name_value


LAWS = sorted(_laws(), key=lambda entry: (entry.module, entry.name))
FORMULAS = [law for law in LAWS if law.formula]
WITH_BODY = [law for law in FORMULAS if law.function]
NEVER = [law for law in LAWS if law.never]
BALANCES = [law for law in LAWS if law.solves]
METHODS = [law for law in LAWS if law.sentence]
IDS = lambda entry: f"{entry.module}.{entry.name}"  # noqa: E731

# What no pocket calculator can follow. Each is a decision, with its reason in DEVELOPERS.md.
DECIDED = {
    "air": "effectiveness transfer_units_for",
    "antifreeze": "ethylene_burst_point ethylene_density ethylene_specific_heat ethylene_viscosity "
    "propylene_burst_point propylene_density propylene_specific_heat propylene_viscosity",
    "conduction": "slab_conductance warmest_factor",
    "dump": "heat_by_gravity return_by_gravity supply_by_gravity",
    "exchange": "longest_scald_time shortest_scald_time",
    "fill_water": "chloride_limit_304 chloride_limit_316 hardness_limit hardness_limit_austrian hardness_limit_with_element",
    "floor": "cover_factor pipe_factor spacing_factor",
    "house": "month_degree_days month_heating_days",
    "pipes": "smallest_copper_l smallest_copper_m smallest_copper_metric smallest_pex smallest_steel",
    "store": "delivered_share outlet_share",
    "tanks": "farthest_share nearest_share parallel_delivered series_delivered",
    "warming": "room_after time_to_limit",
    "water": "boiling_temperature mean_volume_heat_content vapour_pressure",
}

# Where a parameter is sampled if the law says nothing: ordinary values of its kind, SI.
ORDINARY = {
    "temperature": (275.0, 370.0),
    "temperature_difference": (1.0, 60.0),
    "pressure_absolute": (6e4, 4e5),
    "pressure_gauge": (0.0, 4e5),
    "fraction": (0.05, 0.95),
    "exponent": (1.0, 1.6),
    "length": (0.1, 30.0),
    "area": (0.1, 300.0),
    "time": (60.0, 1e6),
    "density": (600.0, 1100.0),
}


def _sample(law: Law, source: random.Random) -> dict[str, float] | None:
    """Arguments inside the law's ranges for which the function has a value; None after many tries without."""
    for _ in range(400):
        arguments = {}
        for name, measure in law.parameters.items():
            low, high = ORDINARY.get(measure.kind, (0.1, 10.0))
            if name in law.ranges:
                low, high = law.ranges[name].low, law.ranges[name].high
                if low > 0 and high / low > 1e3:
                    arguments[name] = math.exp(source.uniform(math.log(low), math.log(high)))
                    continue
            arguments[name] = source.uniform(low, high)
        try:
            value = law(**arguments)
        except NoSolution:
            if law.solves:
                return arguments
        except (ArithmeticError, ValueError):
            continue
        else:
            if math.isfinite(value):
                return arguments
    return None


def _declared() -> Iterator[tuple[str, ast.FunctionDef, ast.Call]]:
    """Module, function and decorator of everything in calc/physics that is declared as a law."""
    for path in sorted(Path(calc.physics.__path__[0]).glob("*.py")):
        for function in ast.parse(path.read_text("utf-8")).body:
            if isinstance(function, ast.FunctionDef):
                for decorator in function.decorator_list:
                    if isinstance(decorator, ast.Call) and ast.unparse(decorator.func) in ("law", "balance", "method"):
                        yield path.stem, function, decorator


def test_a_law_has_a_body_only_where_it_says_so() -> None:
    bodies = {
        f"{module}.{function.name}": any(word.arg == "body" for word in decorator.keywords)
        for module, function, decorator in _declared()
        if ast.unparse(decorator.func) == "law" and len(function.body) > 1
    }
    assert all(bodies.values()), bodies
    assert set(bodies) == {f"{law.module}.{law.name}" for law in WITH_BODY}


def test_a_law_says_what_it_means() -> None:
    said = {f"{module}.{function.name}": ast.get_docstring(function) for module, function, _ in _declared()}
    assert set(said) == {f"{law.module}.{law.name}" for law in LAWS}
    assert all(said.values())


PLAIN = str.maketrans("", "", "()·")  # a docstring may write W/m²K for W/(m²·K)


def test_a_law_says_the_unit_of_its_result() -> None:
    said = {f"{module}.{function.name}": ast.get_docstring(function) or "" for module, function, _ in _declared()}
    silent = []
    for law in LAWS:
        unit = KINDS[law.returns.kind].si.translate(PLAIN)
        words = re.split(r"[\s,;:]+|\.(?=\s|$)", said[f"{law.module}.{law.name}"].translate(PLAIN))
        if unit not in ("1", *words) and "money" not in unit and "day" not in unit:
            silent.append(f"{law.module}.{law.name} gives {unit}")
    assert silent == []


def _corners(law: Law) -> Iterator[dict[str, float]]:
    """Arguments at 0 and 1, equal to one another and otherwise, and at the ends of their ranges."""
    for values in itertools.product((0.0, 1.0, 2.0), repeat=len(law.parameters)):
        arguments = dict(zip(law.parameters, values, strict=True))
        if all(allowed.holds(arguments[name]) for name, allowed in law.ranges.items()):
            yield arguments


@pytest.mark.parametrize("law", WITH_BODY, ids=IDS)
def test_a_body_has_a_value_where_its_text_has_none(law: Law) -> None:
    """Otherwise it repeats its text, word for word or in other words, and is taken away."""
    assert law.formula
    by_text = replace(law, function=None)
    more = 0
    for arguments in _corners(law):
        try:
            ours = law(**arguments)
        except NoSolution:
            continue
        try:
            assert by_text(**arguments) == pytest.approx(ours, rel=1e-12)
        except ArithmeticError:
            more += 1
    assert more


@pytest.mark.parametrize("law", WITH_BODY, ids=IDS)
def test_text_equals_body(law: Law) -> None:
    source = random.Random(law.name)
    tried = 0
    for _ in range(25):
        arguments = _sample(law, source)
        if arguments is None:
            continue
        tried += 1
        by_text, by_body = replace(law, function=None)(**arguments), law(**arguments)
        # Cancelling terms leave rounding of their own size, not of the difference's.
        size = max([abs(by_text), abs(by_body), *(1e-3 * abs(value) for value in arguments.values())])
        assert by_text == pytest.approx(by_body, rel=1e-12, abs=1e-12 * size), arguments
    assert tried >= 5, "no sensible arguments were found"


def test_methods_are_few() -> None:
    assert {f"{law.module}.{law.name}" for law in METHODS} == {
        f"{module}.{name}" for module, names in DECIDED.items() for name in names.split()
    }


@pytest.mark.parametrize("law", FORMULAS, ids=IDS)
def test_a_law_has_values_in_its_ranges(law: Law) -> None:
    source = random.Random(law.name)
    assert sum(_sample(law, source) is not None for _ in range(25)) >= 5, "no sensible arguments were found"


@pytest.mark.parametrize("law", NEVER, ids=IDS)
def test_what_nothing_satisfies_is_no_number(law: Law) -> None:
    """Each condition is met somewhere, and says no there."""
    assert law.never
    met = [arguments for arguments in _corners(law) if law.never(law.constant_values | arguments)]
    assert met
    for arguments in met:
        with pytest.raises(NoSolution):
            law(**arguments)


def test_a_power_without_a_real_value_fails() -> None:
    """Python makes a complex number of it, which would travel on."""
    root = Formula("first ** second").function(("first", "second"), {})
    assert root(4.0, 0.5) == 2
    with pytest.raises(ValueError, match="math domain"):
        root(-4.0, 0.5)


@pytest.mark.parametrize("law", BALANCES, ids=IDS)
def test_both_sides_of_a_balance_are_equal_at_its_solution(law: Law) -> None:
    source = random.Random(law.name)
    solved = 0
    for _ in range(200):
        arguments = _sample(law, source)
        if arguments is None:
            continue
        try:
            answer = law(**arguments)
        except (ValueError, ArithmeticError, TypeError):
            continue
        assert law.left
        assert law.right
        values = law.constant_values | arguments | {str(law.solves): answer}
        left, right = law.left(values), law.right(values)
        apart = abs(left - right)
        # Where small differences of large numbers decide, the answer is as good as its last digits allow.
        nudged = values | {str(law.solves): answer * (1 + 1e-13)}
        assert apart <= 1e-9 * max(abs(left), abs(right), 1.0) or apart <= abs(law.left(nudged) - law.right(nudged))
        solved += 1
    assert solved >= 5, "no arguments were found that have a solution"


def _quantity(kind: str, value: float) -> pint.Quantity:
    si = KINDS[kind].si.replace("m²", "m**2").replace("m³", "m**3").replace("·", "*").replace("money", "money")
    return PINT.Quantity(value, PINT.parse_expression(si).units if si != "1" else PINT.dimensionless)


def _pint_functions() -> dict[str, object]:
    def plain(function):  # type: ignore[no-untyped-def]
        def call(argument):  # type: ignore[no-untyped-def]
            number = argument.to("dimensionless").magnitude if hasattr(argument, "to") else argument
            return function(number)

        return call

    def larger(*given):  # type: ignore[no-untyped-def]
        measured = [text for text in given if hasattr(text, "dimensionality")]
        for entry in measured[1:]:
            assert entry.dimensionality == measured[0].dimensionality, "max or min of unlike quantities"
        for entry in given:
            assert entry in measured or entry == 0 or not measured or measured[0].dimensionless
        return measured[0] if measured else given[0]

    functions = {name: plain(function) for name, function in FUNCTIONS.items()}
    return functions | {"max": larger, "min": larger, "log_mean": larger, "sqrt": lambda entry: entry**0.5}


def _measured(law: Law, arguments: dict[str, float]) -> dict[str, object]:
    values: dict[str, object] = {name: _quantity(law.parameters[name].kind, value) for name, value in arguments.items()}
    for name, constant in law.constants.items():
        unit = PINT.parse_expression(constant.unit) if constant.unit not in ("", "1") else 1
        values[name] = constant.value * unit
    return values


@pytest.mark.parametrize("law", FORMULAS, ids=IDS)
def test_dimensions_come_out(law: Law) -> None:
    arguments = _sample(law, random.Random(law.name))
    assert arguments is not None
    assert law.formula
    result = law.formula(_measured(law, arguments), _pint_functions())  # type: ignore[arg-type]
    result = result if hasattr(result, "dimensionality") else PINT.Quantity(result)
    wanted = _quantity(law.returns.kind, 1.0)
    assert result.dimensionality == wanted.dimensionality
    assert result.to(wanted.units).magnitude == pytest.approx(
        result.to_base_units().magnitude / wanted.to_base_units().magnitude
    )


@pytest.mark.parametrize("law", BALANCES, ids=IDS)
def test_both_sides_of_a_balance_have_one_dimension(law: Law) -> None:
    arguments = _sample(law, random.Random(law.name))
    assert arguments is not None
    assert law.left
    assert law.right
    values = _measured(law, arguments)
    values[str(law.solves)] = _quantity(law.returns.kind, ORDINARY.get(law.returns.kind, (1.0, 2.0))[1])
    left = law.left(values, _pint_functions())  # type: ignore[arg-type]
    right = law.right(values, _pint_functions())  # type: ignore[arg-type]
    assert PINT.Quantity(left).dimensionality == PINT.Quantity(right).dimensionality


@pytest.mark.parametrize("law", LAWS, ids=IDS)
def test_sources_and_words(law: Law) -> None:
    assert law.source in SOURCES
    assert all(constant.source in SOURCES for constant in law.constants.values())


@pytest.mark.parametrize("law", [law for law in LAWS if law.ranges], ids=IDS)
def test_arguments_out_of_range_are_refused_by_name(law: Law) -> None:
    arguments = _sample(law, random.Random(law.name))
    assert arguments is not None
    for name, allowed in law.ranges.items():
        for value in (allowed.low - abs(allowed.low) * 0.01 - 1e-6, allowed.high * 1.01 + 1e-6):
            with pytest.raises(OutOfRange) as refused:
                law(**(arguments | {name: value}))
            assert refused.value.argument == name
            assert refused.value.value == value


def test_a_formula_reaches_nothing_but_arithmetic() -> None:
    for text in (
        "__import__('os')",
        "a.b",
        "a[0]",
        "lambda: 1",
        "[x for x in y]",
        "a if b else c",
        "f'{a}'",
        "'text'",
        "print(a)",
    ):
        with pytest.raises(ValueError, match=r"allowed|called"):
            _ = Formula(text).names


def test_the_root_finder_against_roots_known_in_closed_form() -> None:
    assert find_root(lambda x: x**3 - 2, 0, 2) == pytest.approx(2 ** (1 / 3), rel=1e-14)
    assert find_root(lambda x: math.exp(x) - 10, 0, 300) == pytest.approx(math.log(10), rel=1e-14)
    assert find_root(lambda x: x - 1, 1, 5) == 1
    assert find_root(lambda x: x * x + 1, -5, 5) is None
