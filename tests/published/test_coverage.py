"""No law of physics stands alone: each has an outside check of its own, and each that guards against injury has two.

A law that only adds, subtracts, multiplies or divides what it is given is arithmetic: a sum of our own and its
dimensions prove it. Every other law needs a number from outside: a standard's, a book's, another program's.
"""

import ast
import importlib
import pkgutil

import pytest

import calc.physics
from calc.law import Law
from comparisons import all_checks

MODULES = [
    importlib.import_module(f"calc.physics.{module.name}") for module in pkgutil.iter_modules(calc.physics.__path__)
]
LAWS = [
    name_value
    for module in MODULES
    for name_value in vars(module).values()
    if isinstance(name_value, Law) and name_value.module == module.__name__.rpartition(".")[2]
]

# Rows of one table count once: what counts is whose numbers they are and where they stand.
STANDING: dict[tuple[str, str], set[tuple[str, str, str, str]]] = {}
for check in all_checks():
    source = check.source
    STANDING.setdefault((check.law.module, check.law.name), set()).add(
        (source.body, source.title, source.year, source.place)
    )


@pytest.mark.parametrize("law", LAWS, ids=lambda law: f"{law.module}.{law.name}")
def test_a_law_is_held_against_the_outside(law: Law) -> None:
    wanted = 2 if law.safety else 1
    assert len(STANDING.get((law.module, law.name), ())) >= wanted


# What nobody outside was found for: a rule recalled from a standard, or a custom. It is said wherever the number shows.
FROM_MEMORY = {
    "safety.open_vent_bore": "three national rules, all recalled; the sheet says to ask the local code",
    "flue.flue_fittings": "ASHRAE's loss of ends and bends",
    "room.air_capacity": "ISO 52016's heat of air and furniture",
    "store.evaporation_loss": "ASHRAE's formula for pools",
    "store.volume_by_house_area": "a custom of the trade, and called one",
}
# Safety laws behind which only one outside body was found, and what else speaks for them.
ONE_BODY = {
    "safety.highest_pressure": "rules of the trade; EN 12828's 0.5 bar is recalled beside it",
    "safety.water_reserve": "one maker's manual; EN 12828's 0.5 % and 3 L are recalled beside it",
    "safety.relieving_pressure": "one state's code, which allows 20 % up to 30 psi; 10 % is the stricter of its two",
}
OUTSIDE_BODIES: dict[tuple[str, str], set[str]] = {}
for check in all_checks():
    if check.source.outside:
        OUTSIDE_BODIES.setdefault((check.law.module, check.law.name), set()).add(check.source.body)


def is_arithmetic(law: Law) -> bool:
    if law.formula is None or any(
        constant.source != "definition" for constant in law.constants.values() if constant.unit != "m/s**2"
    ):
        return False
    for node in ast.walk(law.formula.tree):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id not in ("max", "min"):
            return False
        if isinstance(node, ast.Pow) or (isinstance(node, ast.Constant) and node.value not in (0, 1, 2, 3)):
            return False
    return True


@pytest.mark.parametrize(
    "law", [law for law in LAWS if not is_arithmetic(law)], ids=lambda law: f"{law.module}.{law.name}"
)
def test_a_law_that_is_more_than_arithmetic_has_a_number_from_outside(law: Law) -> None:
    bodies = OUTSIDE_BODIES.get((law.module, law.name), set())
    assert bool(bodies) != (f"{law.module}.{law.name}" in FROM_MEMORY), bodies


@pytest.mark.parametrize(
    "law", [law for law in LAWS if law.safety and not is_arithmetic(law)], ids=lambda law: f"{law.module}.{law.name}"
)
def test_a_safety_law_that_is_more_than_arithmetic_has_two_bodies_behind_it(law: Law) -> None:
    bodies = OUTSIDE_BODIES.get((law.module, law.name), set())
    assert (len(bodies) < 2) == (f"{law.module}.{law.name}" in ONE_BODY.keys() | FROM_MEMORY.keys()), bodies
