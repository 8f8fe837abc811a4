"""What a source is decides how it counts; each is named so that it can be looked up, or says that it cannot."""

from comparisons import all_checks, counted
from comparisons.check import KINDS, Check
from tests.published.test_coverage import LAWS, OUTSIDE_BODIES, is_arithmetic

CHECKS = all_checks()
UNNAMED = ("withheld", "not kept")


def _place(check: Check) -> str:
    return f"{check.source.body}, {check.source.title}"


def test_the_page_counts_every_check_once() -> None:
    assert sum(many for _, _, many in counted()) == len(CHECKS)
    assert [kind for kind, _, _ in counted()] == list(KINDS)


def test_newspapers_hospitals_and_makers_are_no_standards() -> None:
    words = ("maker", "trade", "news", "hospital", "children", "manual", ".com", "journal (")
    standards = {check.source.body.casefold() for check in CHECKS if check.source.kind == "standard"}
    assert not [body for body in standards if any(word in body for word in words)]


def test_sums_of_our_own_are_counted_as_such() -> None:
    own = {check.source.body for check in CHECKS if check.source.kind == "own arithmetic"}
    assert own == {"By hand", "pint"}
    assert not [
        _place(check) for check in CHECKS if check.source.outside and "worked by hand" in _place(check).casefold()
    ]


def test_programs_count_by_what_they_do() -> None:
    for check in CHECKS:
        if "SciPy" in check.source.body or "NumPy" in check.source.body:
            assert check.source.kind == "numerical solution", _place(check)
        elif check.source.body in ("CoolProp", "iapws", "fluids", "ht", "psychrolib"):
            assert check.source.kind == "independent library", _place(check)


def test_who_cannot_be_looked_up_stands_alone_behind_no_law() -> None:
    """Arithmetic aside, and but for two printed rules, which say so beside the number."""
    alone = {
        f"{law.module}.{law.name}"
        for law in LAWS
        if not is_arithmetic(law) and (bodies := OUTSIDE_BODIES.get((law.module, law.name)))
        if all(any(word in body for word in UNNAMED) for body in bodies)
    }
    assert alone == {"safety.water_reserve", "pipes.smallest_copper_metric"}


def test_a_body_has_a_name() -> None:
    assert not [_place(check) for check in CHECKS if not check.source.body.strip()]
