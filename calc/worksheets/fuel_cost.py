"""What does the heat cost beside the fuel I burn now?"""

from calc.chains import bought_fuel, kind_of_wood
from calc.engine.declare import (
    Advice,
    Case,
    Cases,
    Chart,
    Comparison,
    Example,
    Field,
    Given,
    Line,
    Methods,
    Next,
    Picture,
    Result,
    Step,
    Typical,
    Variant,
    Worksheet,
)
from calc.physics import fuels
from calc.vocabulary import EFFICIENCY_WOOD, MOISTURE, WOOD_CONTENT, YEARLY_HEAT

BESIDE = ("oil", "propane", "gas", "electricity", "heat-pump", "pellets", "wood")  # the fuels that wood is set beside
FUEL_NOW = bought_fuel.FUEL_NOW.offering(*BESIDE, "other").but(hint="Wood is set beside it.")
HEAT_PRICE_NOW = Field(
    "heat_price_now",
    "price_per_energy",
    "Price of the heat you use now",
    "In the house, after the heater's losses.",
    low="0.05 $/therm",
    high="50 $/therm",
    us="$/MMBtu",
    si="€/kWh",
)


def _price(
    key: str, name: str, kind: str, us: str, si: str, ends: tuple[str, str], text: str, low: str, high: str
) -> Field:
    return Field(
        f"fuel_price_{key}",
        kind,
        f"Price of {name}",
        "As delivered, taxes included.",
        low=ends[0],
        high=ends[1],
        us=us,
        si=si,
        typical=Typical(text, "fuel-price-guess", low, high, "Your last bill or a call to a supplier."),
    )


PRICES = (
    _price(
        "wood",
        "firewood",
        "price_per_volume",
        "$/cord",
        "€/m³",
        ("1 $/cord", "3,000 $/cord"),
        "280 $/cord",
        "150 $/cord",
        "450 $/cord",
    ),
    _price(
        "oil",
        "heating oil",
        "price_per_volume",
        "$/gal",
        "€/L",
        ("0.1 $/gal", "50 $/gal"),
        "3.80 $/gal",
        "2.80 $/gal",
        "5.00 $/gal",
    ),
    _price(
        "propane",
        "propane",
        "price_per_volume",
        "$/gal",
        "€/L",
        ("0.1 $/gal", "50 $/gal"),
        "2.70 $/gal",
        "2.00 $/gal",
        "3.70 $/gal",
    ),
    _price(
        "gas",
        "natural gas",
        "price_per_energy",
        "$/therm",
        "€/kWh",
        ("0.05 $/therm", "50 $/therm"),
        "1.40 $/therm",
        "0.90 $/therm",
        "2.20 $/therm",
    ),
    _price(
        "electricity",
        "electricity",
        "price_per_energy",
        "$/kWh",
        "€/kWh",
        ("0.005 $/kWh", "5 $/kWh"),
        "0.17 $/kWh",
        "0.11 $/kWh",
        "0.30 $/kWh",
    ),
    _price(
        "pellets",
        "wood pellets",
        "price_per_mass",
        "$/ton",
        "€/t",
        ("10 $/ton", "5,000 $/ton"),
        "320 $/ton",
        "250 $/ton",
        "420 $/ton",
    ),
)
_EFFICIENCIES = tuple(bought_fuel.EFFICIENCIES[fuel] for fuel in ("oil", "propane", "gas", "heat-pump", "pellets"))
_CONTENTS = tuple(bought_fuel.CONTENTS[fuel] for fuel in ("oil", "propane", "pellets"))
OWN_HOURS = Field(
    "own_hours",
    "time",
    "Your own hours in a winter",
    "Cutting, stacking, carrying, lighting, ash.",
    low="0 h",
    high="2,000 h",
    us="h",
    si="h",
    unless_given="0 h",
)
OWN_PAY = Field(
    "own_pay",
    "price_per_time",
    "What an hour of yours is worth",
    "0 if you like the work.",
    low="0 $/h",
    high="500 $/h",
    unless_given="0 $/h",
)
INSTALLED_COST = Field(
    "installed_cost",
    "money",
    "Installed cost of stove, tank, piping and flue",
    "What the dealer asks for all of it.",
    low="0 $",
    high="500,000 $",
    unless_given="0 $",
)


def _by_volume(key: str, name: str, content: str) -> Step:
    return Step(
        f"heat_price_{key}",
        fuels.delivered_price_by_volume,
        f"Heat from {name}",
        price=f"fuel_price_{key}",
        heat_content=content,
        efficiency=f"efficiency_{key}",
    )


def _by_energy(key: str, name: str, price: str, efficiency: str) -> Step:
    return Step(
        f"heat_price_{key}",
        fuels.delivered_price_by_energy,
        f"Heat from {name}",
        price=price,
        efficiency=efficiency,
    )


def _wood_now(efficiency: str) -> Step:
    return Step(
        "heat_price_wood_now",
        fuels.delivered_price_by_volume,
        "Heat from wood in the heater you have",
        price="fuel_price_wood",
        heat_content="wood_content_now",
        efficiency=efficiency,
    )


def _now(key: str, *asked: Field, cases: tuple[Cases, ...] = ()) -> Case:
    """What wood is set beside: the delivered price of the fuel burnt now."""
    price = f"heat_price_{key}"
    return Case(
        fields=asked,
        cases=cases,
        steps=(
            Step(
                "break_even_price",
                fuels.break_even_price,
                "Price of wood at which both cost the same",
                us="$/cord",
                si="€/m³",
                other_price=price,
                labour="labour_price",
                heat_content="wood_heat_content",
                efficiency="efficiency_wood",
            ),
            Step(
                "cost_now",
                fuels.cost_of_heat,
                "A winter on the fuel you burn now",
                heat="yearly_heat",
                delivered_price=price,
            ),
            Step(
                "price_beside",
                fuels.price_with_labour,
                "Heat from the fuel you burn now",
                delivered_price=price,
                labour="no_labour",
            ),
        ),
    )


WORKSHEET = Worksheet(
    key="fuel-cost",
    guide="cost",
    question="What does wood heat cost beside the fuel I burn now?",
    short="Prices of delivered heat side by side, and what wood may cost.",
    fields=(
        YEARLY_HEAT,
        FUEL_NOW,
        *PRICES,
        EFFICIENCY_WOOD,
        *_EFFICIENCIES,
        WOOD_CONTENT,
        *_CONTENTS,
        OWN_HOURS,
        OWN_PAY,
        INSTALLED_COST,
    ),
    givens=(
        Given("resistance", "fraction", "Efficiency of electric heaters", "100 %", "definition"),
        Given("no_labour", "price_per_energy", "Hours spent on the other fuel", "0 $/MMBtu", "definition"),
        kind_of_wood.ANY_WOOD,
    ),
    cases=(
        Cases(
            "fuel_now",
            oil=_now("oil"),
            propane=_now("propane"),
            gas=_now("gas"),
            electricity=_now("electricity"),
            heat_pump=_now("heat_pump"),
            pellets=_now("pellets"),
            wood=_now(
                "wood_now",
                bought_fuel.CONTENTS["wood"],
                bought_fuel.EFFICIENCIES["wood"],
                bought_fuel.BASIS_NOW,
                MOISTURE,
                cases=(bought_fuel.of_wood(_wood_now),),
            ),
            other=_now("now", HEAT_PRICE_NOW),
        ),
    ),
    steps=(
        Step(
            "heat_price_wood",
            fuels.delivered_price_by_volume,
            "Heat from wood, your hours not counted",
            price="fuel_price_wood",
            heat_content="wood_heat_content",
            efficiency="efficiency_wood",
        ),
        _by_volume("oil", "oil", "oil_content"),
        _by_volume("propane", "propane", "propane_content"),
        _by_energy("gas", "natural gas", "fuel_price_gas", "efficiency_gas"),
        _by_energy("electricity", "electric heaters", "fuel_price_electricity", "resistance"),
        _by_energy("heat_pump", "a heat pump", "fuel_price_electricity", "efficiency_heat_pump"),
        Step(
            "heat_price_pellets",
            fuels.delivered_price_by_mass,
            "Heat from pellets",
            price="fuel_price_pellets",
            heat_content="pellet_content",
            efficiency="efficiency_pellets",
        ),
        Step(
            "labour_price",
            fuels.labour_price,
            "Added by your own hours",
            pay="own_pay",
            time_each_year="own_hours",
            heat_each_year="yearly_heat",
        ),
        Step(
            "wood_heat_price",
            fuels.price_with_labour,
            "Heat from wood, your hours counted",
            delivered_price="heat_price_wood",
            labour="labour_price",
        ),
        Step(
            "cost_of_wood",
            fuels.cost_of_heat,
            "A winter on wood, your hours counted",
            heat="yearly_heat",
            delivered_price="wood_heat_price",
        ),
        Step("saving_each_year", fuels.saving_each_year, "Saved each winter"),
        Step("years_to_repay", fuels.years_to_repay, "Winters until it is repaid"),
    ),
    results=(
        Result("cost_of_wood", "A winter on wood", "For {yearly_heat}, your hours counted."),
        Result("cost_now", "A winter on the fuel you burn now"),
        Result("saving_each_year", "Saved each winter", figures=2),
        Result("wood_heat_price", "Heat from wood, your hours counted", "In the house, after the stove's losses."),
        Result("price_beside", "Heat from the fuel you burn now", "On the same terms."),
        Result(
            "break_even_price",
            "Break-even price of wood",
            "Your hours counted; dearer wood costs more than what you burn now.",
            us="$/cord",
            si="€/m³",
        ),
        Result("labour_price", "Added by your own hours"),
        Result(
            "years_to_repay",
            "Winters until {installed_cost} is repaid",
            "Without interest, upkeep or a sweep.",
            figures=2,
            missing="never",
        ),
    ),
    headline="cost_of_wood",
    say="Your present fuel: {cost_now} a winter.",
    verdict="Wood saves {saving_each_year} a winter.",
    advice=(
        Advice(
            "unworkable",
            "dearer",
            "saving_each_year <= 0 and installed_cost > 0",
            "It does not pay itself back.",
            "At these prices a winter on wood costs {cost_of_wood} and on your present fuel {cost_now}. There may be "
            "other reasons to do it, but saving is not one.",
        ),
        Advice(
            "caution",
            "saves-nothing",
            "saving_each_year <= 0 and installed_cost <= 0",
            "Wood costs more than what you burn now.",
            "A winter on wood costs {cost_of_wood}, your hours counted, and on your present fuel {cost_now}.",
        ),
        Advice(
            "caution",
            "hours-decide",
            "break_even_price <= 0",
            "Your hours alone cost more than the other fuel.",
            "They add {labour_price} to the heat, and the fuel you burn now costs {price_beside} in all.",
        ),
        Advice(
            "caution",
            "net-values",
            "efficiency_wood > 0.8",
            "Few wood stoves do that over a winter.",
            "Efficiencies here are on the higher heating value. A test on the lower value reads about a tenth higher. "
            "And where a table prints “net” heat of a cord or stère, the efficiency is already in it: do not take it off twice.",
            "fpl-fuel-value",
        ),
        Advice(
            "note",
            "guess",
            "assumed(fuel_price_wood)",
            "Type your own prices.",
            "The ones filled in are round figures for the whole United States and differ by half from place to place.",
            "fuel-price-guess",
        ),
        Advice(
            "note",
            "free-wood",
            "own_hours <= 0",
            "Free wood is paid in hours.",
            "Cutting, splitting, stacking and carrying a cord (3.6 m³) takes something like ten hours. Give them a price, or "
            "leave them at 0 if you like the work.",
            "common-practice",
        ),
    ),
    meaning=(
        "Wood at up to {break_even_price} costs no more than what you burn now. A fuel's own price says little: what "
        "counts is the heat that reaches the house.",
    ),
    picture=Picture(
        "winters",
        "The same heat in the house, from wood and from what you burn now.",
        {
            "said": "fuel_now",
            "wood": "cost_of_wood",
            "now": "cost_now",
            "saved": "saving_each_year",
            "heat": "wood_heat_price",
            "hours": "labour_price",
        },
    ),
    chart=Chart(
        "Heat from wood, by the price of the wood",
        across="fuel_price_wood",
        low="1 $/cord",
        high="x2",
        lines=(
            Line("wood_heat_price", "wood, hours counted", "fire"),
            Line("price_beside", "what you burn now", "use"),
            Line("heat_price_heat_pump", "a heat pump", "other"),
        ),
        say="At {fuel_price_wood} wood heat costs {wood_heat_price}; the fuel you burn now {price_beside}.",
    ),
    tables=(
        Methods(
            "Delivered heat side by side",
            show=(
                "heat_price_wood",
                "wood_heat_price",
                "heat_price_oil",
                "heat_price_propane",
                "heat_price_gas",
                "heat_price_electricity",
                "heat_price_heat_pump",
                "heat_price_pellets",
            ),
            say="Price over heat content and efficiency, each counted once.",
        ),
        Comparison(
            "If it goes otherwise",
            rows=(
                Variant("As it is", {}),
                Variant("Wood half as dear again", {"fuel_price_wood": "x1.5"}),
                Variant("Slow, smoky fires: a fifth less from the wood", {"efficiency_wood": "x0.8"}),
                Variant("A denser wood: a quarter more heat in each stack", {"wood_heat_content": "x1.25"}),
            ),
            show=("wood_heat_price", "break_even_price", "saving_each_year"),
        ),
    ),
    examples=(
        Example(
            "Mill Row: wood in place of oil",
            {
                "yearly_heat": "78.1 MMBtu",
                "fuel_now": "oil",
                "fuel_price_oil": "4.00 $/gal",
                "efficiency_oil": "82 %",
                "fuel_price_wood": "300 $/cord",
                "wood_heat_content": "24 MMBtu/cord",
                "efficiency_wood": "68 %",
                "own_hours": "60 h",
                "own_pay": "12 $/h",
                "installed_cost": "14,000 $",
            },
        ),
        Example("The same house on wood in an old furnace", {"fuel_now": "wood", "yearly_heat": "78.1 MMBtu"}),
        Example(
            "The same house beside heat at a known price",
            {"fuel_now": "other", "heat_price_now": "30 $/MMBtu", "yearly_heat": "78.1 MMBtu"},
        ),
    ),
    sources=("eia-heat-contents", "pellet-heat-content"),
    leaves_out=(
        "Sweeping, repairs, interest, insurance, and electricity for pumps.",
        "How fuel prices will change.",
        "What warm hands, a cooking top or heat in a power cut are worth to you.",
        "Carbon dioxide: wood gives off more at the flue than oil does, and grows back in decades.",
    ),
    follow=(
        Next("wood-use", "How much wood a winter takes, by kind of tree."),
        Next("house-load", "Where the heat for a year comes from."),
    ),
)
