"""Times to a deep burn against the tables that print them, which differ: each of ours is the edge of what is printed.

Contested. The safety commission prints 5 minutes at 120 °F and 6 s at 140 °F; a trade safety page 10 minutes and 5 s; a
third table 3 s at 140 °F and 0.5 s at 150 °F. Nobody prints a curve, so none is drawn here, and children burn sooner.
"""

from calc.law import Law
from calc.physics import exchange
from comparisons.check import Check, Published

CPSC = Published(
    "US Consumer Product Safety Commission",
    "Tap water scalds, as reprinted",
    "2012",
    "third-degree burns of adults: 150 °F 2 s, 140 °F 6 s, 130 °F 30 s, 120 °F 5 min",
    "public body",
)
HOSPITAL = Published(
    "Children's of Alabama",
    "Prevent scald burn injuries",
    "undated",
    "120 °F more than 5 min, 125 °F 1.5 to 2 min, 130 °F 30 s, 135 °F 10 s, 150 °F 1.5 s",
    "trade",
)
TRADE = Published(
    "Moritz and Henriques",
    "Studies of thermal injury, American Journal of Pathology, as quoted by a page of the plumbing trade",
    "1947",
    "120 °F 10 min, 131 °F 30 s, 140 °F 5 s",
    "trade",
)
SHORTEST = Published(
    "Tables of burn times (names not kept)",
    "Time to a deep burn by water temperature",
    "undated",
    "140 °F 3 to 5 s, 150 °F 0.5 s",
    "trade",
)


def _check(law: Law, water: str, theirs: str, source: Published) -> Check:
    because = "a time that is printed as such is taken as such"
    return Check("Scalding", water, law, {"water": water}, theirs, "0.001 s", because, source)


CHECKS = [
    _check(exchange.shortest_scald_time, "120 °F", "5 min", CPSC),
    _check(exchange.shortest_scald_time, "130 °F", "30 s", CPSC),
    _check(exchange.shortest_scald_time, "125 °F", "90 s", HOSPITAL),
    _check(exchange.shortest_scald_time, "135 °F", "10 s", HOSPITAL),
    _check(exchange.shortest_scald_time, "140 °F", "3 s", SHORTEST),
    _check(exchange.shortest_scald_time, "150 °F", "0.5 s", SHORTEST),
    # Between two rows the hotter one stands; above the last the last.
    _check(exchange.shortest_scald_time, "136 °F", "3 s", SHORTEST),
    _check(exchange.shortest_scald_time, "170 °F", "0.5 s", SHORTEST),
    _check(exchange.longest_scald_time, "120 °F", "10 min", TRADE),
    _check(exchange.longest_scald_time, "125 °F", "120 s", HOSPITAL),
    _check(exchange.longest_scald_time, "130 °F", "30 s", HOSPITAL),
    _check(exchange.longest_scald_time, "135 °F", "10 s", HOSPITAL),
    _check(exchange.longest_scald_time, "140 °F", "6 s", CPSC),
    _check(exchange.longest_scald_time, "150 °F", "2 s", CPSC),
]
