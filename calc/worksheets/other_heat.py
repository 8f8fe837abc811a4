"""What would an electric element, a heat pump or solar panels do for the same store?"""

from calc.chains import outlet, place
from calc.engine.declare import (
    Advice,
    AnyStep,
    Case,
    Cases,
    Chart,
    Comparison,
    Example,
    Field,
    Given,
    Line,
    Next,
    OnlyWith,
    Option,
    Pick,
    Picture,
    Result,
    Step,
    Typical,
    Variant,
    Worksheet,
)
from calc.law import Law
from calc.physics import house, other_heat, store, water
from calc.tables.sun import SUN
from calc.tables.year import MONTH_DAYS, MONTH_NAMES, MONTHS
from calc.vocabulary import DESIGN_LOAD, INDOOR, LOAD, LOWEST_USEFUL, STORE_TOP, STORE_VOLUME, TAP_LOAD

HEATER = Field(
    "heater",
    "choice",
    "What else heats the store",
    "Beside the fire, or in its place.",
    options=(
        Option("element", "an electric element", ("electric element", "immersion heater")),
        Option("heat-pump", "a heat pump"),
        Option("panels", "solar panels for hot water", ("solar", "solar panels")),
    ),
)
ELEMENT_POWER = Field(
    "element_power",
    "electric_power",
    "Power of the element",
    "It is stamped on it; several count together.",
    low="100 W",
    high="100 kW",
    us="kW",
    si="kW",
    typical=Typical("4.5 kW", "element-custom", "3 kW", "9 kW", "The stamp on its head."),
)
HOURS_A_DAY = Field(
    "hours_a_day",
    "time",
    "Hours a day in which it may run",
    "Fewer where electricity is cheap at night only.",
    low="30 min",
    high="24 h",
    us="h",
    si="h",
    unless_given="24 h",
)
HEAT_PUMP_OUTPUT = Field(
    "heat_pump_output",
    "power",
    "Heat output of the heat pump",
    "In the cold of your winter, at its hottest water; the maker's table tells.",
    low="2,000 Btu/h",
    high="300,000 Btu/h",
    uncertainty="10 %",
)
HIGHEST_WATER = Field(
    "highest_water",
    "temperature",
    "Hottest water it makes",
    "In the cold of your winter, not on a mild day.",
    low="80 °F",
    high="190 °F",
    typical=Typical("130 °F", "heat-pump-guess", "120 °F", "150 °F", "The maker's table."),
)
SEASONAL_COP = Field(
    "seasonal_cop",
    "factor",
    "Seasonal performance (COP) at that water",
    "Heat over electricity, averaged over the winter; a figure for cooler water flatters it.",
    low="1",
    high="8",
    typical=Typical("2.4", "heat-pump-guess", "2", "3", "The maker's table at that water and your cold."),
)
PANEL_AREA = Field(
    "panel_area",
    "area",
    "Area of the panels",
    "Gross or aperture, as in the test that gives the curve.",
    low="5 ft2",
    high="5,000 ft2",
)
ETA0 = Field(
    "eta0",
    "fraction",
    "Efficiency with no loss (η₀)",
    "First number of the efficiency curve. A plain 0.75 is read as 75 %.",
    low="20 %",
    high="95 %",
    typical=Typical("74 %", "panel-certificates", "70 %", "80 %", "The panel's test certificate."),
)
LOSS_LINEAR = Field(
    "a1",
    "conductance_per_area",
    "Loss for each degree (a₁)",
    "Second number of the curve.",
    low="0 W/m2/K",
    high="30 W/m2/K",
    us="W/(m²·K)",
    typical=Typical("3.4 W/m2/K", "panel-certificates", "3 W/m2/K", "4 W/m2/K", "The panel's test certificate."),
)
LOSS_SQUARE = Field(
    "a2",
    "loss_growth",
    "Growth of the loss (a₂)",
    "Third number of the curve.",
    low="0 W/m2/K2",
    high="0.2 W/m2/K2",
    typical=Typical(
        "0.016 W/m2/K2", "panel-certificates", "0.005 W/m2/K2", "0.02 W/m2/K2", "The panel's test certificate."
    ),
)
PANEL_EXCESS = Field(
    "panel_excess",
    "temperature_difference",
    "Water in the panels over the store's",
    "For the pipes and the exchanger between them.",
    low="0 F°",
    high="60 F°",
    unless_given="10 F°",
)
PIPE_LOSS = Field(
    "pipe_loss",
    "fraction",
    "Share lost in the solar pipes",
    "Warming them up each morning counts too.",
    low="0 %",
    high="60 %",
    unless_given="10 %",
)
SOLAR_PUMP = Field(
    "solar_pump",
    "electric_power",
    "Power of the solar pump",
    "With its control.",
    low="0 W",
    high="1,000 W",
    unless_given="40 W",
)
SUN_KNOWN = Field(
    "sun_known",
    "choice",
    "Sunshine on the panels",
    "The place's own is for a roof that faces south at 45°.",
    options=(
        Option("place", "as at that place, south at 45°"),
        Option("year", "I know the year's sum on my roof"),
        Option("months", "I know each month's sum on my roof"),
    ),
    unless_given="place",
)
RADIATION_YEAR = Field(
    "radiation_year",
    "radiation",
    "Radiation of a year on the panels' plane",
    "From a weather service, for the slope and direction of the roof.",
    low="200 kWh/m2",
    high="3,000 kWh/m2",
)


def _by_place(say: str, column: str, month: int) -> dict[str, str]:
    return {key: f"{getattr(months, column)[month]} {say}" for key, months in SUN.items()}


def _radiation_field(month: int) -> Field:
    return Field(
        f"radiation_{MONTHS[month]}",
        "radiation",
        f"Radiation in {MONTH_NAMES[month]}",
        "Of the whole month; a daily figure times the days of the month.",
        low="0 kWh/m2",
        high="400 kWh/m2",
    )


def _months(make: str, law: Law, label: str, **binding: str) -> tuple[AnyStep, ...]:
    """One step for each month; "*" in a binding stands for the month."""
    return tuple(
        Step(f"{make}_{month}", law, f"{label}, {name}", **{to: key.replace("*", month) for to, key in binding.items()})
        for month, name in zip(MONTHS, MONTH_NAMES, strict=True)
    )


def _picks(key: str, kind: str, label: str, unit: str, column: str, source: str) -> tuple[AnyStep, ...]:
    return tuple(
        Pick(f"{key}_{month}", kind, f"{label}, {MONTH_NAMES[at]}", "place", _by_place(unit, column, at), source)
        for at, month in enumerate(MONTHS)
    )


def _sum(key: str, label: str, of: str) -> Step:
    names = [name.casefold() for name in MONTH_NAMES]
    return Step(
        key,
        other_heat.sum_of_year,
        label,
        **{name: f"{of}_{month}" for name, month in zip(names, MONTHS, strict=True)},
    )


def _refill(power: str) -> Step:
    return Step(
        "recharge_hours", other_heat.recharge_time, "Hours to refill the store", heat="recharge_heat", power=power
    )


def _coldest(power: str) -> Step:
    return Step("coldest_share", other_heat.share_of_coldest_day, "Share of the coldest day's load", power=power)


_SUNSHINE = _picks("sunshine", "radiation", "Strong sunshine there", "kWh/m2", "radiation", "sun-of-places")

WORKSHEET = Worksheet(
    key="other-heat",
    guide="other-heat",
    question="What would an element, a heat pump or solar panels do for this store?",
    short="Hours to refill the store, the share of each month's need, and electricity a year.",
    fields=(
        HEATER,
        STORE_VOLUME,
        LOWEST_USEFUL,
        STORE_TOP,
        place.FIELDS[0],
        DESIGN_LOAD,
        INDOOR,
        place.DESIGN_OUTDOOR_HERE,
        place.DEGREE_DAYS_HERE,
        TAP_LOAD,
        LOAD.but(
            hint="What the house draws while the store is refilled; none unless you say so.",
            low="0 Btu/h",
            same_as="",
            unless_given="0 Btu/h",
        ),
        *outlet.FOLDED,
    ),
    givens=(
        *outlet.GIVENS,
        *(
            Given(f"time_{month}", "time", f"Time in {name}", f"{days} days", "definition", us="days", si="days")
            for month, name, days in zip(MONTHS, MONTH_NAMES, MONTH_DAYS, strict=True)
        ),
        Given("element_cop", "factor", "Heat for each unit of electricity", "1", "first-law"),
        Given("full_sun", "heat_flux", "Full sun", "800 W/m2", "full-sun", us="W/m²"),
        Given("mild_air", "temperature", "Air on a mild day", "50 °F", "full-sun"),
        Given("too_good", "fraction", "Share of Carnot's limit that no seasonal figure reaches", "55 %", "carnot"),
        Given("much_left", "fraction", "Left over that is much", "25 %", "common-practice"),
        Given("little", "fraction", "Share of a month that is little", "20 %", "common-practice"),
        Given("whole", "fraction", "Share of a month that is all", "99.9 %", "definition"),
    ),
    cases=(
        Cases(
            "heater",
            **{
                "element": Case(
                    fields=(ELEMENT_POWER, HOURS_A_DAY),
                    steps=(
                        Step("power", other_heat.heat_of_element, "Heat of the element"),
                        Step(
                            "reached",
                            other_heat.highest_reached,
                            "Store when it has charged it",
                            highest_water="store_top",
                        ),
                        *_months("most", other_heat.most_in_month, "Most it gives", month="time_*"),
                        _refill("power"),
                        _coldest("power"),
                        Step(
                            "yearly_electricity",
                            other_heat.electricity,
                            "Electricity a year",
                            heat="heat_given",
                            cop="element_cop",
                        ),
                    ),
                    decides=True,
                ),
                "heat-pump": Case(
                    fields=(HEAT_PUMP_OUTPUT, HIGHEST_WATER, SEASONAL_COP, HOURS_A_DAY, place.AVERAGE_OUTDOOR_HERE),
                    steps=(
                        Step("reached", other_heat.highest_reached, "Store when it has charged it"),
                        *_months(
                            "most", other_heat.most_in_month, "Most it gives", power="heat_pump_output", month="time_*"
                        ),
                        _refill("heat_pump_output"),
                        _coldest("heat_pump_output"),
                        Step(
                            "yearly_electricity",
                            other_heat.electricity,
                            "Electricity a year",
                            heat="heat_given",
                            cop="seasonal_cop",
                        ),
                        Step(
                            "carnot_share",
                            other_heat.share_of_carnot,
                            "Its performance as a share of Carnot's limit",
                            cop="seasonal_cop",
                            water="highest_water",
                            outdoor="average_outdoor",
                        ),
                    ),
                    decides=True,
                ),
                "panels": Case(
                    fields=(
                        PANEL_AREA,
                        ETA0,
                        LOSS_LINEAR,
                        LOSS_SQUARE,
                        SUN_KNOWN,
                        PANEL_EXCESS,
                        PIPE_LOSS,
                        SOLAR_PUMP,
                    ),
                    cases=(
                        Cases(
                            "sun_known",
                            place=Case(
                                steps=_picks(
                                    "strong", "radiation", "Strong sunshine", "kWh/m2", "radiation", "sun-of-places"
                                )
                            ),
                            year=Case(
                                fields=(RADIATION_YEAR,),
                                steps=(
                                    *_SUNSHINE,
                                    Pick(
                                        "profile_year",
                                        "radiation",
                                        "Radiation of a year there",
                                        "place",
                                        {key: f"{months.whole_year} kWh/m2" for key, months in SUN.items()},
                                        "sun-of-places",
                                    ),
                                    *_months(
                                        "strong",
                                        other_heat.scaled_radiation,
                                        "Strong sunshine",
                                        profile="sunshine_*",
                                    ),
                                ),
                                decides=True,
                            ),
                            months=Case(
                                fields=tuple(_radiation_field(month) for month in range(12)),
                                steps=(
                                    Pick(
                                        "strong_share",
                                        "fraction",
                                        "Share that comes while the sun is strong",
                                        "place",
                                        {
                                            key: f"{100 * sum(months.radiation) / months.whole_year:.0f} %"
                                            for key, months in SUN.items()
                                        },
                                        "sun-of-places",
                                    ),
                                    *_months(
                                        "strong",
                                        other_heat.strong_radiation,
                                        "Strong sunshine",
                                        month_radiation="radiation_*",
                                    ),
                                ),
                                decides=True,
                            ),
                        ),
                    ),
                    steps=(
                        Step("reached", other_heat.highest_reached, "Store when full", highest_water="store_top"),
                        Step("panel_water", other_heat.panel_water, "Water in the panels", water="lowest_useful"),
                        *_picks("hours", "time", "Hours of strong sun", "h", "hours", "sun-of-places"),
                        *_picks("air", "temperature", "Air in the sun", "°C", "air", "sun-of-places"),
                        *_months(
                            "most",
                            other_heat.panel_heat,
                            "Heat of the panels",
                            radiation="strong_*",
                            air="air_*",
                            sun_time="hours_*",
                        ),
                        Step("store_middle", other_heat.halfway, "Store while it is charged"),
                        Step(
                            "charging_water",
                            other_heat.panel_water,
                            "Water in the panels meanwhile",
                            water="store_middle",
                        ),
                        Step(
                            "power",
                            other_heat.panel_power,
                            "Heat of the panels in full sun",
                            irradiance="full_sun",
                            panel_water="charging_water",
                            air="mild_air",
                        ),
                        _refill("power"),
                        *_months("left", other_heat.left_over, "Left over", most="most_*", used="used_*"),
                        _sum("left_year", "Left over in a year", "left"),
                        _sum("gained_year", "All the heat of the panels", "most"),
                        Step(
                            "left_share",
                            other_heat.share_of_need,
                            "Share left over",
                            used="left_year",
                            need="gained_year",
                        ),
                        Step(
                            "sun_hours",
                            other_heat.hours_of_year,
                            "Hours of strong sun in a year",
                            **{
                                name.casefold(): f"hours_{month}"
                                for name, month in zip(MONTH_NAMES, MONTHS, strict=True)
                            },
                        ),
                        Step(
                            "yearly_electricity",
                            other_heat.pump_electricity,
                            "Electricity a year",
                            pump_power="solar_pump",
                            running_time="sun_hours",
                        ),
                    ),
                    decides=True,
                ),
            },
        ),
    ),
    steps=(
        Step("conductance", house.conductance_from_load, "Heat loss for each degree"),
        Step("yearly_heat", house.yearly_heat, "Space heating in a year"),
        *_picks("cold", "degree_days", "Degree-days there", "°F·day", "degree_days", "sun-of-places"),
        Pick(
            "cold_year",
            "degree_days",
            "Degree-days there in a year",
            "place",
            {key: f"{sum(months.degree_days)} °F·day" for key, months in SUN.items()},
            "sun-of-places",
        ),
        *_months(
            "need",
            other_heat.month_need,
            "Need",
            month_degree_days="cold_*",
            year_degree_days="cold_year",
            month="time_*",
        ),
        *_months("used", other_heat.heat_used, "Covered", need="need_*", most="most_*"),
        *_months("share", other_heat.share_of_need, "Share covered", used="used_*", need="need_*"),
        _sum("need_year", "Need of a year", "need"),
        _sum("heat_given", "Covered in a year", "used"),
        Step("share_year", other_heat.share_of_need, "Share of the year", used="heat_given", need="need_year"),
        Step(
            "heat_content",
            water.mean_volume_heat_content,
            "Heat in each volume and degree of water",
            low="lowest_useful",
            top="reached",
        ),
        Step(
            "recharge_heat",
            store.usable_heat,
            "Heat that refills the store",
            volume="store_volume",
            top="reached",
            low="lowest_useful",
        ),
        *outlet.STEPS,
    ),
    results=(
        Result(
            "share_year",
            "Share of the year's need",
            "Rooms and taps, {need_year} in all, by the degree-days of each month.",
            figures=2,
            missing="nothing is needed",
        ),
        Result(
            "recharge_hours",
            "Hours to refill the store",
            "From {lowest_useful} to {reached}, {recharge_heat}, while the house draws {load}.",
            figures=2,
            missing="never",
        ),
        Result("coldest_share", "Share of the coldest day's load", figures=2),
        Result("yearly_electricity", "Electricity a year", us="kWh", si="kWh"),
        *(
            Result(f"share_{month}", f"Share of the need in {name}", figures=2, missing="nothing is needed")
            for month, name in zip(MONTHS, MONTH_NAMES, strict=True)
        ),
        Result("heat_given", "Heat that counts in a year", us="MMBtu"),
        Result("need_year", "Need of a year", us="MMBtu"),
        Result("power", "Heat in full sun", "With the store half charged.", only=("heater", "panels")),
        Result("left_year", "Heat in months that do not need it", only=("heater", "panels"), us="MMBtu"),
        Result("carnot_share", "Performance as a share of Carnot's limit", only=("heater", "heat-pump"), figures=2),
        outlet.RESULT,
    ),
    headline="share_year",
    say="Hours to refill the store: {recharge_hours}.",
    advice=(
        *outlet.ADVICE,
        Advice(
            "unworkable",
            "too-cool",
            "highest_water <= lowest_useful",
            "This heat pump does not reach the useful band.",
            "It makes {highest_water}, and what heats the rooms or taps needs {lowest_useful}. More or larger emitters that "
            "run cooler come first.",
            zeroes=("share_year", "heat_given", "yearly_electricity", *(f"share_{month}" for month in MONTHS)),
        ),
        Advice(
            "unworkable",
            "no-band",
            "lowest_useful >= store_top",
            "This store carries nothing.",
            "What draws on it needs {lowest_useful}, and it is never hotter than {store_top}.",
            zeroes=("recharge_heat",),
        ),
        Advice(
            "caution",
            "part-charge",
            "highest_water > lowest_useful and highest_water < store_top",
            "It fills a part of the store.",
            "It stops at {highest_water}, and the fire charges to {store_top}. So it brings {recharge_heat}. Let it warm the "
            "lower part, and only when no fire has.",
        ),
        Advice(
            "caution",
            "cop-too-good",
            "carnot_share > too_good",
            "This performance is too good to be true.",
            "Between {average_outdoor} and {highest_water} it would be {carnot_share} of what any machine could reach. "
            "Perhaps it is for cooler water or a milder day: ask for the figure at {highest_water}.",
            "carnot",
        ),
        Advice(
            "caution",
            "draws-too-much",
            "missing(recharge_hours) and recharge_heat > 0",
            "It does not refill the store while the house draws.",
            "It gives no more than the {load} that the house takes.",
        ),
        Advice(
            "caution",
            "left-over",
            "left_share > much_left",
            "Much of it comes when nobody needs it.",
            "{left_year} a year come in months that need less. The panels then stand hot and dry, and boil: the solar loop "
            "needs a vessel and fluid made for it, or fewer panels, or steeper ones.",
            "panel-custom",
        ),
        Advice(
            "caution",
            "no-winter",
            "share_dec < little and panel_area > 0",
            "The fire stays the winter's heater.",
            "In December the panels cover {share_dec}, in January {share_jan}. What they do well is the taps from spring to "
            "fall.",
        ),
        Advice(
            "caution",
            "not-the-coldest-day",
            "coldest_share < whole",
            "It does not carry the coldest day.",
            "On that day it gives {coldest_share} of what the house takes. A month's mean hides this: the fire has to do the "
            "rest.",
        ),
        Advice(
            "note",
            "element-safety",
            "element_power > 0",
            "An element has a thermostat and a limit of its own.",
            "It must never be on while the tank is empty, and it needs its relief and an electrician. Hard water scales it "
            "first of all.",
        ),
        Advice(
            "note",
            "panel-side",
            "panel_area > 0",
            "Panels are a closed loop of their own.",
            "With antifreeze, an exchanger, a vessel and a relief valve. Where it also warms tap water, that wants a double "
            "wall.",
            "double-wall",
        ),
    ),
    meaning=(
        "Each heater asks something of the store. An element asks nothing but money. A heat pump asks for cool water, and "
        "panels ask for cool water and for sun. So the lower your emitters can run, the more both of them give.",
    ),
    picture=Picture(
        "months",
        "Each bar is what rooms and taps need in a month, and its hatched part what this heater gives of it.",
        {
            "said": "heater",
            "year": "share_year",
            "december": "share_dec",
            "june": "share_jun",
            **{f"{of}_{month}": f"{of}_{month}" for of in ("need", "used") for month in MONTHS},
        },
    ),
    chart=Chart(
        "Share of the year by the coolest useful water",
        across="lowest_useful",
        low="80 °F",
        high="170 °F",
        lines=(Line("share_year", "share of the year", "use"),),
        say="At {lowest_useful} it covers {share_year} of the year's need.",
    ),
    tables=(
        Comparison(
            "The same heater with one thing changed",
            rows=(
                Variant("As it is", {}),
                Variant("Water useful down to 105 °F (41 °C)", {"lowest_useful": "105 °F"}),
                Variant("Not useful below 150 °F (66 °C)", {"lowest_useful": "150 °F"}),
                Variant("A house with half the load", {"design_load": "x0.5"}),
            ),
            show=("share_year", "recharge_hours", "yearly_electricity", "share_jan", "share_apr", "share_oct"),
        ),
    ),
    examples=(
        Example(
            "Fern Lane: panels on the roof, with the sun of Burlington",
            {
                "heater": "panels",
                "store_volume": "500 gal",
                "lowest_useful": "130 °F",
                "store_top": "170 °F",
                "place": "burlington-vt",
                "design_load": "13,300 Btu/h",
                "indoor": "68 °F",
                "design_outdoor": "-5 °F",
                "degree_days": "7,800 °F·day",
                "tap_load": "1,500 Btu/h",
                "panel_area": "120 ft2",
                "eta0": "74 %",
                "a1": "3.4 W/m2/K",
                "a2": "0.016 W/m2/K2",
                "altitude": "3,000 ft",
                "system_pressure": "0 psi",
                "charge_rise": "15 F°",
            },
        ),
        Example(
            "Mill Row: a heat pump beside the old baseboard",
            {
                "heater": "heat-pump",
                "store_volume": "800 gal",
                "lowest_useful": "130 °F",
                "store_top": "180 °F",
                "place": "burlington-vt",
                "design_load": "30,500 Btu/h",
                "indoor": "68 °F",
                "design_outdoor": "-5 °F",
                "degree_days": "7,800 °F·day",
                "tap_load": "2,000 Btu/h",
                "heat_pump_output": "24,000 Btu/h",
                "highest_water": "140 °F",
                "seasonal_cop": "2.2",
                "average_outdoor": "30 °F",
                "altitude": "3,000 ft",
                "system_pressure": "12 psi",
                "charge_rise": "25 F°",
            },
        ),
        Example(
            "Ridge Road: an electric element",
            {
                "heater": "element",
                "store_volume": "800 gal",
                "lowest_useful": "130 °F",
                "store_top": "185 °F",
                "place": "burlington-vt",
                "design_load": "32,500 Btu/h",
                "indoor": "68 °F",
                "design_outdoor": "-5 °F",
                "degree_days": "7,800 °F·day",
                "element_power": "9 kW",
                "altitude": "3,000 ft",
                "system_pressure": "12 psi",
                "charge_rise": "25 F°",
            },
        ),
        Example(
            "A roof that is known by its year",
            {"heater": "panels", "sun_known": "year", "radiation_year": "1,300 kWh/m2"},
        ),
        Example(
            "A roof that is known by its months: invented figures",
            {
                "heater": "panels",
                "sun_known": "months",
                **{
                    f"radiation_{month}": f"{amount} kWh/m2"
                    for month, amount in zip(
                        MONTHS, (60, 80, 110, 130, 150, 150, 160, 150, 120, 90, 60, 50), strict=True
                    )
                },
            },
        ),
    ),
    leaves_out=(
        "Cold snaps: a month is taken at its mean. Only the coldest day stands beside it.",
        "What the store and its pipes lose, unless it heats the house.",
        "Slanting light, dust and snow on panels, and shade: together 5 to 15 % in most places.",
        "That a heat pump gives less in the cold; give its output for your winter.",
        "Electricity from the panels on your roof, which may run an element at noon.",
    ),
    in_record=OnlyWith(HEATER, ("element", "heat-pump", "panels")),
    follow=(
        Next("emitter-temperature", "How cool the rooms' water may be."),
        Next("fuel-cost", "What a kilowatt-hour of heat costs from each."),
        Next("water-and-steel", "An element scales first of all."),
    ),
)
