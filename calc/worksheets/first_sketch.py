"""Does wood heat with a store suit my house? Five answers to a whole first plan.

Its numbers are those of the full worksheets: their steps, fields and cautions are taken from them (`whole_sheets`), and
only what joins them is declared here.
"""

from calc.chains import bought_fuel, place
from calc.chains.whole_sheets import Taken, Taking, together
from calc.engine.declare import (
    Advice,
    Case,
    Cases,
    Comparison,
    Example,
    Field,
    Given,
    Next,
    OnlyWith,
    Option,
    Outlook,
    Result,
    Step,
    Typical,
    Variant,
    Worksheet,
)
from calc.engine.words import CHANGE, VERDICT
from calc.physics import exchange, firing, fuels, wood
from calc.physics import floor as floor_laws
from calc.physics.fuels import FUELS
from calc.units import unit_named
from calc.vocabulary import (
    BURN_TIME,
    EFFICIENCY_BASIS,
    EFFICIENCY_WOOD,
    EMITTER,
    FIREBOX_VOLUME,
    FLOOR_AREA,
    FLOOR_COVERING,
    HEATED_AREA,
    INDOOR,
    MOISTURE,
    PACKING_DENSITY,
    ROOM_OUTPUT,
    SPECIES,
    STORE_NEEDED,
    STORE_TOP,
    STORE_VOLUME,
    STOVE_EFFICIENCY,
    SYSTEM_PRESSURE,
    WATER_OUTPUT,
    WOOD_CONTENT,
    WOOD_CONTENT_NOW,
)
from calc.worksheets import (
    air_coil,
    emitter_temperature,
    floor,
    fuel_cost,
    house_load,
    tank_size,
    wood_use,
)
from calc.worksheets import firing as firing_sheet

# --- What is asked ---

FUEL_NOW = fuel_cost.FUEL_NOW.but(
    hint="What heats the house today.",
    typical=Typical("other", "definition"),
)
START_FROM = Field(
    "start_from",
    "choice",
    "What the heat loss comes from",
    "A year's fuel bill is the best guide to a house that stands.",
    options=(
        Option("bill", "how much fuel it burns in a year", ("fuel",)),
        Option("house", "its floor area and how it is built", ("quick",)),
    ),
    unless_given="bill",
)
HEAT_PRICE_NOW = fuel_cost.HEAT_PRICE_NOW.but(awaited=True)
STOVE = Field(
    "stove",
    "choice",
    "The stove",
    "Heat to the water, averaged over a burn; the maker's sheet tells.",
    options=(Option("rated", "I know what it gives"), Option("help", "help me choose", ("help me choose the stove",))),
    unless_given="rated",
)
FIRE_HOURS = Field(
    "fire_hours",
    "time",
    "Hours of fire you would tend on the coldest day",
    "The stove that does it in so many hours is worked out.",
    low="2 h",
    high="24 h",
    us="h",
    si="h",
    typical=Typical("8 h", "common-practice", "6 h", "12 h", "You decide: an evening, or an evening and a morning."),
)
SKETCH_BURN_TIME = BURN_TIME.but(
    typical=Typical("3 h", "common-practice", "2 h", "5 h", "The maker's sheet, or a clock and one full load.")
)
FIREBOX = FIREBOX_VOLUME.but(
    hint="The space that you fill with wood. Left alone, one load holds all that the output and the burn time say.",
    unless_given=FIREBOX_VOLUME.high,
)
EMITTER_HERE = EMITTER.but(
    hint="What gives the heat to the rooms; if several do, the one that needs the hottest water.",
    unless_given="baseboard",
)
COVERING = FLOOR_COVERING.but(
    options=tuple(option for option in FLOOR_COVERING.options if option.value != "own"),
    typical=Typical("wood", "floor-custom"),
)

# The wood burnt now is of the usual kind as well, as long as nobody says more, and a cord of it holds as much.
_CORD = wood.stack_higher_heat(
    wood.SOLID_SHARE.value, wood.SPECIES["mixed-hardwood"].basic_density, wood.DRY_HEATING_VALUE.value
)
MIXED_CORD = WOOD_CONTENT_NOW.but(
    typical=Typical(
        f"{unit_named(WOOD_CONTENT_NOW.us, WOOD_CONTENT_NOW.kind).from_si(_CORD):.3g} {WOOD_CONTENT_NOW.us}",
        "usfs-fia-species",
        "15 MMBtu/cord",
        "27 MMBtu/cord",
        "The kind of tree.",
    )
)
LENGTH = emitter_temperature.BASEBOARD_LENGTH.but(awaited=True)
RATING = emitter_temperature.RADIATOR_RATING.but(awaited=True)

# --- What joins the full worksheets ---

# What they ask or work out and what is asked or worked out here under the same name.
_OURS = {
    key: key
    for key in (
        "place",
        "design_outdoor",
        "degree_days",
        "heating_days",
        "average_outdoor",
        "altitude",
        "system_pressure",
        "indoor",
        "heated_area",
        "store_top",
        "water_output",
        "room_output",
        "burn_time",
        "firebox_volume",
        "moisture",
        "efficiency_basis",
        "efficiency",
        "packing_density",
        "heating_value",
        "species",
        "fuel_price_wood",
        "own_hours",
        "own_pay",
        "installed_cost",
        "design_load",
        "conductance",
        "yearly_heat",
        "lowest_useful",
        "lowest_useful_average",
        "wood_heat_content",
        "efficiency_wood",
    )
}
_OF_HOUSE = ("design_load", "yearly_heat")
_NOW = {"wood": "wood_now"}  # the price of its heat, beside that of the stove to come


def _ours(*but: str, **more: str) -> dict[str, str]:
    """Names for a worksheet that works out `but` itself, and those that go by another name here."""
    return {key: name for key, name in _OURS.items() if key not in but} | more


def _of_fuel_cost(fuel: str, **chosen: str) -> Taken:
    """What a winter costs on wood and on this fuel."""
    return Taking(
        fuel_cost.WORKSHEET,
        {"fuel_now": fuel, **chosen},
        _ours(),
        # What that worksheet calls so is for the rooms alone; here it is the whole bill where one is known.
        {"cost_now": "cost_same_heat", "cost_of_wood": "cost_wood"},
    ).take(("break_even_price", "saving_each_year", "cost_of_wood"))


def _from_bill(fuel: str, cost: Taken, **chosen: str) -> Case:
    """The heat loss from a year's fuel, and what that fuel costs."""
    asked = {field.key: field.key for field in cost.fields}
    taken = Taking(
        house_load.WORKSHEET,
        {"method": "fuel", "fuel_now": fuel, **chosen},
        _ours(*_OF_HOUSE, "conductance", efficiency_electricity="resistance") | asked,
        known=cost.steps,
    ).take(_OF_HOUSE)
    bills = {"volume": fuels.bill_by_volume, "mass": fuels.bill_by_mass, "energy": fuels.bill_by_energy}
    bill = bills[FUELS[fuel].bought_by]
    whole = Step("cost_now", bill, "The whole bill for the fuel you burn now", price=_price_of(fuel))
    fields = tuple(field.but(awaited=True) if field.key == "amount" else field for field in taken.fields)
    return Case(fields, (*taken.steps, whole))


def _from_house(heat_price: str) -> Case:
    """The heat loss from floor area and kind of house, and what its heat costs now."""
    taken = Taking(house_load.WORKSHEET, {"method": "quick"}, _ours(*_OF_HOUSE, "conductance")).take(_OF_HOUSE)
    cost = Step(
        "cost_now",
        fuels.cost_of_heat,
        "The rooms' heat on the fuel you burn now",
        heat="yearly_heat",
        delivered_price=heat_price,
    )
    return Case(taken.fields, (*taken.steps, cost))


def _price_of(fuel: str) -> str:
    return "fuel_price_electricity" if fuel == "heat-pump" else f"fuel_price_{fuel}"


def _fuel(fuel: str, **chosen: str) -> Case:
    """A house that burns this fuel now."""
    cost = _of_fuel_cost(fuel, **chosen)
    heat_price = f"heat_price_{_NOW.get(fuel, fuel.replace('-', '_'))}"
    start_from = Cases("start_from", bill=_from_bill(fuel, cost, **chosen), house=_from_house(heat_price))
    fields = (MIXED_CORD if field.key == MIXED_CORD.key else field for field in cost.fields)
    return Case(tuple(fields), cost.steps, (start_from,))


def _wood() -> Case:
    """A house that burns wood already, in a heater whose efficiency is quoted on either basis."""
    on = bought_fuel.BASIS_NOW.key
    bases = {option.value: _fuel("wood", **{on: option.value}) for option in bought_fuel.BASIS_NOW.options}
    return Case((bought_fuel.BASIS_NOW,), cases=(Cases(on, **bases),))


def _another() -> Case:
    """A house that burns something else, or nothing yet: no bill tells its heat loss."""
    cost = _of_fuel_cost("other")
    house = _from_house("heat_price_now")
    fields = (HEAT_PRICE_NOW if field.key == HEAT_PRICE_NOW.key else field for field in cost.fields)
    return Case(tuple(fields), cost.steps, (Cases("start_from", bill=house, house=house),))


_SIZED = {"stoking": "by-hand", "firebox_known": "yes", "efficiency_basis": "higher"}
_SAID_BY_FIRING = ("no-band", "no-room", "relight-too-late")
# Whether the reader has a store is asked here too, so what is said of one and of none stays apart.
_TANK = Taking(tank_size.WORKSHEET, _SIZED | {"store_known": "no"}, _ours(store_known="store_known")).take(
    ("recommended", "by_house_area"), without=_SAID_BY_FIRING
)
# The store that everything after it looks at: the recommended one, or one that the reader's plan has.
_RECOMMENDED_STORE = Taking(
    tank_size.WORKSHEET, _SIZED | {"store_known": "no"}, _ours(), {"chosen_volume": "store_volume"}, known=_TANK.steps
).take(("chosen_volume",), advised=False)
_OWN_STORE = Taking(
    tank_size.WORKSHEET,
    _SIZED | {"store_known": "yes"},
    _ours(store_volume="store_volume", store_known="store_known"),
    known=_TANK.steps,
).take(("own_share",), without=_SAID_BY_FIRING)
_STORES = Cases(
    "store_known",
    no=Case(_RECOMMENDED_STORE.fields, _RECOMMENDED_STORE.steps),
    yes=Case((STORE_VOLUME,), _OWN_STORE.steps, decides=True),
)
_BOILING = ("boiling", "boiling-margin", "outlet-boils", "outlet-margin")  # said once, of the tank


def _emitter(kind: str) -> Taken:
    """What this emitter needs on the coldest day and on an average one."""
    sheet, chosen, asked, tried = {
        "floor": (floor.WORKSHEET, {"floor_covering": "bare"}, (), "tried-limit"),
        "baseboard": (emitter_temperature.WORKSHEET, {"emitter": "baseboard"}, (LENGTH,), ""),
        "radiator": (emitter_temperature.WORKSHEET, {"emitter": "radiator"}, (RATING,), ""),
        "air-coil": (
            air_coil.WORKSHEET,
            {"coil_known": "conductance", "flow_basis": "actual", "duct_way": "share", "antifreeze_kind": "none"},
            (),
            "too-cool-tried",
        ),
    }[kind]
    return Taking(
        sheet,
        chosen,
        # Every covering of a floor but one of your own stands in one table, so that choice stays open.
        _ours("lowest_useful", "lowest_useful_average", floor_area="heated_area", floor_covering="floor_covering"),
        {
            "load_average": "emitter_load_average",
            "lowest_useful": "emitters_need",
            "lowest_useful_average": "emitters_need_average",
        },
        _TANK.steps,
        f"{kind}-",
    ).take(
        ("supply_water", "lowest_useful", "lowest_useful_average"),
        asked,
        f"emitter == '{kind}'",
        (*_BOILING, tried),
    )


_EMITTERS = {kind: _emitter(kind) for kind in ("floor", "baseboard", "radiator", "air-coil")}
# One store serves the taps as well, on every day of the winter.
_COOLEST = tuple(
    Step(
        f"lowest_useful{day}",
        exchange.coolest_useful,
        f"Coolest store water worth drawing{when}, taps counted",
        for_emitters=f"emitters_need{day}",
        for_taps="store_needed",
    )
    for day, when in (("", ""), ("_average", " on an average day"))
)
_FIRING = Taking(
    firing_sheet.WORKSHEET,
    {"efficiency_basis": "higher", "firebox_known": "yes"},
    _ours(store_volume="store_volume"),
    known=_TANK.steps,
).take(("burns_per_day_at_design", "burns_per_day_average", "hours_tended", "hours_between_at_design"))
_OF_STACK = ("wood_heat_content", "efficiency_wood")
_STACK = {
    "heating_value": "stack_heating_value",
    "dry_heating_value": "stack_dry_value",
    "heat_content": "stack_heat_content",
}
_WOOD = Taking(
    wood_use.WORKSHEET,
    {"efficiency_basis": "higher", "firebox_known": "yes"},
    _ours(*_OF_STACK, heating_value="stack_heating_value"),
    _STACK,
    known=(*_TANK.steps, *_FIRING.steps),
).take(("wood_volume", *_OF_STACK))


def _heating_values(basis: str) -> Case:
    """Heat in each weight of the wood on this basis: of any wood, as it is loaded, and of the kind that is stacked."""
    chosen = {"efficiency_basis": basis, "firebox_known": "yes"}
    loaded = Taking(firing_sheet.WORKSHEET, chosen, _ours("heating_value")).take(("heating_value",), advised=False)
    renamed = _STACK | {"higher_value": "stack_higher_value"}
    stacked = Taking(wood_use.WORKSHEET, chosen, _ours("heating_value"), renamed, _WOOD.steps).take(
        ("heating_value",), advised=False
    )
    return Case(steps=(*loaded.steps, *stacked.steps))


_HOUSE_ADVICE = together(
    Taking(house_load.WORKSHEET, {"method": "fuel", "fuel_now": "oil"}, _ours()).take((), where="start_from == 'bill'")
)
_LOADED = Taking(
    firing_sheet.WORKSHEET, {"efficiency_basis": "higher", "firebox_known": "yes"}, _ours("heating_value")
).take(("heating_value",), advised=False)
_FUELS = ("oil", "propane", "gas", "electricity", "heat-pump", "pellets")
_COSTS = (*map(_of_fuel_cost, _FUELS), _of_fuel_cost("wood", efficiency_basis_now="higher"))
_ALL = together(_HOUSE_ADVICE, *_EMITTERS.values(), _TANK, _OWN_STORE, _FIRING, _WOOD, *_COSTS, _LOADED)
_BASED = Cases("efficiency_basis", higher=_heating_values("higher"), lower=_heating_values("lower"))
_STOVES = Cases(
    "stove",
    rated=Case(fields=(WATER_OUTPUT.but(awaited=True), SKETCH_BURN_TIME)),
    help=Case(
        fields=(FIRE_HOURS, SKETCH_BURN_TIME),
        steps=(
            Step(
                "water_output",
                firing.output_for_hours,
                "Heat to the water of a stove that would do",
                load="design_load",
            ),
        ),
    ),
)

# --- What is said ---

OWN_GIVENS = (
    Given("largest_store", "volume", "Largest store that the worksheets take", "20,000 gal", "definition"),
    Given("narrow", "temperature_difference", "Band below which a store is hardly used", "20 F°", "verdict-margins"),
)
OWN_ADVICE = (
    Advice(
        "unworkable",
        "no-such-tank",
        "store_volume > largest_store",
        "No tank is that large.",
        "Between {lowest_useful} and {store_top} one burn would take {store_volume}. More emitter, less heat to replace "
        "or a hotter store widens that band.",
    ),
    Advice(
        "caution",
        "narrow-band",
        "lowest_useful < store_top and lowest_useful > store_top - narrow and store_volume <= largest_store",
        "Only a narrow band of the store is used.",
        "It is charged to {store_top} and what draws on it needs {lowest_useful}: that is why the tank is so large.",
        "verdict-margins",
    ),
)
BECAUSE = {
    # stops and what cannot work, the gravest first
    "boiling": "water boils at {boiling} in this store",
    "outlet-boils": "water boils at the stove's outlet, which reaches {outlet_at_peak}",
    "baseboard-too-hot": "the baseboard needs {emitters_need}, and no store is that hot",
    "radiator-too-hot": "the radiators need {emitters_need}, and no store is that hot",
    "floor-too-hot": "the floor needs {emitters_need}, and no store is that hot",
    "air-coil-too-hot": "the coil in the ducts needs {emitters_need}, and no store is that hot",
    "baseboard-over-store": "the baseboard needs {emitters_need} and the store is charged to {store_top}",
    "radiator-over-store": "the radiators need {emitters_need} and the store is charged to {store_top}",
    "floor-over-store": "the floor needs {emitters_need} and the store is charged to {store_top}",
    "air-coil-over-store": "the coil in the ducts needs {emitters_need} and the store is charged to {store_top}",
    "no-band": "what draws on the store needs {lowest_useful} and the store is charged to {store_top}",
    "no-such-tank": "it would take a tank of {store_volume}",
    "store-too-small": "your store of {store_volume} takes only {own_share} of a burn",
    "more-than-a-day": "this stove would have to burn more than 24 hours of the coldest day",
    "dearer": "wood would cost more than what you burn now",
    "saves-nothing": "wood that costs more than what you burn now",
    # cautions: the end of "yes, with …"
    "long-stoking": "a fire that must be fed at night in the worst cold",
    "narrow-band": "a very large tank, because the emitters need nearly all the heat of the water",
    "never-full": "a store that no single day of fire fills in the worst cold",
    "fire-too-small": "a stove that leaves nothing to store on the coldest day",
    "burn-does-not-fit": "smaller loads, since a full one does not fit the store",
    "wood-too-little": "less heat from a load than the stove's output says",
    "boiling-margin": "a store that is charged cooler or kept under pressure, so that nothing boils",
    "outlet-margin": "a store that is charged cooler or kept under pressure, so that nothing boils at the stove",
    "room-overheats": "a room that the stove overheats",
    "floor-mixing-valve": "a mixing valve between the store and the floor",
    "floor-hot-slab": "floor water that is too hot for a slab",
    "floor-surface-limit": "a floor whose warmest spots pass their limit",
    "floor-downward": "much of the heat going down",
    "floor-return-too-cold": "more flow through the floor",
    "air-coil-ducts-first": "ducts that are sealed and wrapped first",
    "air-coil-barely-warm": "air at the registers that feels barely warm",
    "baseboard-return-too-cold": "more flow through the baseboard",
    "radiator-return-too-cold": "more flow through the radiators",
    "baseboard-large-drop": "more flow through the baseboard",
    "radiator-large-drop": "more flow through the radiators",
    "green": "wood that has dried for another summer or two",
    "damp": "drier wood",
    "many-splits": "thinner splits",
    "hours-longer": "several lightings for the hours you want between fires",
    "hours-over-store": "shorter pauses between fires than you want, on your store",
    "part-loads": "small fires in mild weather, every time",
    "baseboard-allowance": "a look at the small print of the baseboard's rating",
    "no-heat-left": "a second look at how much of the fuel heats the taps",
    "hours-decide": "work that you do not count",
    "flattering": "a second look at the stove's efficiency",
    "net-values": "a second look at the stove's efficiency",
}

_COVERING = {"floor": (COVERING,)}
# The floor's own sheet asks for it under this name.
_PIPED = {"floor": (Step("floor_area", floor_laws.piped_area, FLOOR_AREA.label),)}
_UNKNOWN = "not yet known"
_AND_STORE = "and a tank of {store_volume}"
CHANGES = (
    Variant("a store of {recommended} in place of yours", {"store_known": "no"}),
    *(
        Variant(f"{words} {{baseboard_length}} of baseboard in all, {_AND_STORE}", {"baseboard_length": times})
        for words, times in (("twice as much:", "x2"), ("three times as much:", "x3"), ("four times as much:", "x4"))
    ),
    *(
        Variant(f"{words} radiators rated {{radiator_rating}} in all, {_AND_STORE}", {"radiator_rating": times})
        for words, times in (("half as much again:", "x1.5"), ("twice as much:", "x2"), ("three times as much:", "x3"))
    ),
    Variant(f"pipes {{pipe_spacing}} apart in the floor, {_AND_STORE}", {"pipe_spacing": "6 in"}),
    Variant(f"twice the coil in the ducts, {{coil_ua}}, {_AND_STORE}", {"coil_ua": "x2"}),
    Variant(
        f"a quarter less heat lost by the house, so {{design_load}} on the coldest day, {_AND_STORE}",
        {"amount": "x0.75", "loss_per_area": "x0.75"},
    ),
    Variant(f"a stove that gives {{water_output}} to the water, {_AND_STORE}", {"water_output": "x1.5"}),
    Variant(f"half as much wood in a load, {_AND_STORE}", {"burn_time": "x0.5"}),
    Variant(f"a store charged to {{store_top}}, {_AND_STORE}", {"store_top": "170 °F"}),
    Variant(f"a store charged to {{store_top}} only, {_AND_STORE}", {"store_top": "160 °F"}),
    Variant(f"a store charged to {{store_top}} at its hottest, {_AND_STORE}", {"store_top": "190 °F"}),
    Variant("a tank twice as large, {store_volume}", {"size_factor": "x2"}),
    Variant("drier wood, {moisture} of its weight water: {wood_volume} a winter", {"moisture": "18 %"}),
)

WORKSHEET = Worksheet(
    key="first-sketch",
    guide="start",
    question="Does wood heat with a store suit my house?",
    short="Five answers to a whole first plan: verdict, tank, lightings, wood and dollars.",
    fields=(
        FUEL_NOW,
        START_FROM,
        place.PLACE_HERE,
        HEATED_AREA.but(hint="Every floor you keep warm; with a warm floor, the part with pipe in it.", awaited=True),
        EMITTER_HERE,
        STOVE,
        *place.CLIMATE,
        INDOOR,
        STORE_TOP,
        SYSTEM_PRESSURE,
        EFFICIENCY_BASIS,
        STOVE_EFFICIENCY,
        MOISTURE,
        SPECIES,
        PACKING_DENSITY,
        fuel_cost.PRICES[0],
        ROOM_OUTPUT.but(unless_given="0 Btu/h"),
        FIREBOX,
        fuel_cost.OWN_HOURS,
        fuel_cost.OWN_PAY,
        fuel_cost.INSTALLED_COST,
        STORE_NEEDED,
        tank_size.STORE_KNOWN,
        *together(_TANK, _FIRING, _WOOD).fields,
    ),
    givens=(*_ALL.givens, *OWN_GIVENS),
    cases=(
        Cases("fuel_now", **{key.replace("-", "_"): _fuel(key) for key in _FUELS}, wood=_wood(), other=_another()),
        Cases(
            "emitter",
            **{
                kind.replace("-", "_"): Case(
                    (*_COVERING.get(kind, ()), *taken.fields), (*_PIPED.get(kind, ()), *taken.steps)
                )
                for kind, taken in _EMITTERS.items()
            },
        ),
        _STOVES,
        _STORES,
        _BASED,
    ),
    steps=(*_COOLEST, *together(_TANK, _FIRING, _WOOD).steps),
    advice=(*OWN_ADVICE, *_ALL.advice),
    musts=_ALL.musts,
    outlook=Outlook(
        awaits=(
            ("design_load", "nobody has said how much fuel the house burns, or how large it is and how it is built"),
            ("lowest_useful", "nobody has said how much there is of what heats the rooms"),
            ("water_output", "nobody has said how much heat the stove gives the water"),
        ),
        because=BECAUSE,
    ),
    changes=CHANGES,
    tables=(
        Comparison(
            "What one change would do",
            rows=(Variant("As it is", {}), *CHANGES),
            show=("lowest_useful", "recommended", "burns_per_day_at_design", "wood_volume"),
        ),
    ),
    results=(
        Result(VERDICT, "Does it suit my house?", "From every stop and caution of the full worksheets."),
        Result(
            "recommended",
            "Tank",
            "Holds one full burn between {lowest_useful} and {store_top} while the house takes nothing.",
            missing=_UNKNOWN,
        ),
        Result("by_house_area", "Tank by floor area, common practice", missing=_UNKNOWN),
        Result(
            "burns_per_day_at_design",
            "Loads of wood on the coldest day",
            "Of {burn_time} each.",
            figures=2,
            missing=_UNKNOWN,
        ),
        Result("burns_per_day_average", "Loads of wood on an average day", figures=2, missing=_UNKNOWN),
        Result("hours_tended", "Hours of the coldest day with a fire", figures=2, missing=_UNKNOWN),
        Result(
            "hours_between_at_design",
            "From one lighting to the next, coldest day",
            figures=2,
            missing="it never goes out, or is not known",
        ),
        Result("wood_volume", "Stacked wood for a winter", figures=2, us="cord", si="stère", missing=_UNKNOWN),
        # What the price of wood heat rests on: the fuel-cost worksheet takes both.
        Result("wood_heat_content", WOOD_CONTENT.label, us="MMBtu/cord", si="kWh/m³"),
        Result("efficiency_wood", EFFICIENCY_WOOD.label),
        Result("wood_content_now", WOOD_CONTENT_NOW.label, us="MMBtu/cord", si="kWh/m³", only=(FUEL_NOW.key, "wood")),
        Result(
            "cost_now",
            "A winter on what you burn now",
            "The whole bill where you typed one, taps included; else the rooms' heat.",
            missing=_UNKNOWN,
        ),
        Result("cost_wood", "A winter on wood", "For the rooms' heat alone.", missing=_UNKNOWN),
        Result("saving_each_year", "Saved each winter, the rooms' heat on both", figures=2, missing=_UNKNOWN),
        Result(
            "design_load",
            "Design load (heat lost on the coldest day)",
            "At {design_outdoor} outside and {indoor} inside.",
            missing=_UNKNOWN,
        ),
        Result("yearly_heat", "Space heating in a year", us="MMBtu", missing=_UNKNOWN),
        Result("supply_water", "Supply temperature on the coldest day", missing=_UNKNOWN),
        Result(
            "lowest_useful",
            "Lowest useful store temperature",
            "The hotter of the emitters' {emitters_need} and what your plan's taps need.",
            missing=_UNKNOWN,
        ),
        Result("lowest_useful_average", "Lowest useful store temperature on an average day", missing=_UNKNOWN),
        Result(
            "floor_area",
            FLOOR_AREA.label,
            "All of {heated_area}.",
            missing=_UNKNOWN,
            only=(EMITTER.key, "floor"),
            taken_when="start_from == 'bill'",
            else_why="It is the whole house's area, which gives the heat loss: measure the floor that has pipe in it.",
        ),
        Result("water_output", "Heat of the stove to the water", missing=_UNKNOWN),
        Result("store_volume", "Tank looked at", missing=_UNKNOWN),
        Result("usable_heat", "Usable heat of it, mixed", missing=_UNKNOWN),
        # What the place says: other worksheets ask it too.
        *(Result(field.key, field.label) for field in place.CLIMATE),
        Result("burn_time", BURN_TIME.label, missing=_UNKNOWN),
        Result(CHANGE, "The one change that helps most"),
    ),
    headline="recommended",
    opens=("place",),
    say="Tank needed: {recommended}. Fires in the worst cold: {burns_per_day_at_design}.",
    meaning=(
        "This is a sketch: five answers, and usual values for the rest. Each full worksheet takes its part further.",
    ),
    examples=(
        Example(
            "Mill Row: oil, old baseboard and a stove in the cellar",
            {
                "fuel_now": "oil",
                "start_from": "bill",
                "amount": "688 gal",
                "efficiency_oil": "82 %",
                "tap_share": "0 %",
                "place": "burlington-vt",
                "design_outdoor": "-5 °F",
                "degree_days": "7,800 °F·day",
                "heating_days": "300 days",
                "average_outdoor": "30 °F",
                "altitude": "3,000 ft",
                "heated_area": "1,600 ft2",
                "emitter": "baseboard",
                "baseboard_length": "180 ft",
                "water_drop": "12 F°",
                "stove": "rated",
                "water_output": "60,000 Btu/h",
                "burn_time": "4 h",
                "room_output": "8,000 Btu/h",
                "firebox_volume": "5 ft3",
                "store_top": "180 °F",
                "system_pressure": "12 psi",
                "indoor": "68 °F",
                "hours_wanted": "8 h",
                "species": "sugar-maple",
                "moisture": "20 %",
                "efficiency_basis": "higher",
                "efficiency": "68 %",
                "fuel_price_wood": "300 $/cord",
                "fuel_price_oil": "4.00 $/gal",
            },
        ),
        Example("The same house by its kind, with a floor", {"start_from": "house", "house_class": "1980s"}),
        Example("The same house with a smaller store at hand", {"store_known": "yes", "store_volume": "400 gal"}),
        Example("The same house with radiators", {"emitter": "radiator", "radiator_rating": "70,000 Btu/h"}),
        Example("The same house on gas", {"fuel_now": "gas", "amount": "915 therm"}),
        Example("The same house on kilowatt hours", {"fuel_now": "electricity", "amount": "22,900 kWh"}),
        Example("The same house on pellets", {"fuel_now": "pellets", "amount": "5.6 ton"}),
        Example("The same house on nothing yet", {"fuel_now": "other", "heat_price_now": "30 $/MMBtu"}),
    ),
    in_record=OnlyWith(STOVE, ()),  # the record holds the full worksheets
    other_names={"floor_area": ("heated_area",), "how_built": ("house_class",)},
    leaves_out=(
        "Sun, people and lamps, which spare wood on bright days.",
        "What the store loses, unless you give it as lost outside the house.",
        "Pressure, a power cut, the chimney and the floor under the tank: will-it-work looks at these.",
        "Hot taps from the store, unless you give their load.",
    ),
    follow=(
        Next("tank-size", "Six ways to size the tank, side by side."),
        Next("firing", "How often you would light it, against the weather."),
        Next("will-it-work", "The whole chain, safety included."),
        Next("room-heat", "Whether the room with the stove gets too warm."),
        Next("power-cut", "What happens when the pump stops in mid-burn."),
    ),
)
