"""A slip in a declaration stops: each is refused with a sentence that names the file, the word and the near match."""

from collections.abc import Callable
from pathlib import Path
from typing import Any, NamedTuple

import pytest

from calc.checking.checker import check, words
from calc.engine.declare import (
    Advice,
    Case,
    Cases,
    Chart,
    Check,
    Comparison,
    DeclarationError,
    Example,
    Field,
    Given,
    Line,
    Methods,
    Must,
    Next,
    OnlyWith,
    Option,
    Outlook,
    Part,
    Pick,
    Picture,
    Result,
    Sizes,
    Spread,
    Step,
    Suits,
    Sweep,
    Trace,
    Track,
    Typical,
    Variant,
    Worksheet,
)
from calc.engine.read import read
from calc.engine.texts import Texts
from calc.engine.values import work_out
from calc.engine.words import DRAWINGS
from calc.law import KelvinByHour, Second, Watt, run
from calc.physics import store, water
from calc.worksheets import WORKSHEETS, Worksheets
from tests.calc.throwaway import worksheet

ROOT = Path(__file__).resolve().parents[2]
SLUGS = ("stored-heat", "tank-size")

HEAT = Field("heat", "energy", "Heat", low="1 Btu", high="1 MMBtu", uncertainty="10 %")
LOAD = Field("load", "power", "Load", low="0 Btu/h", high="100 kBtu/h")
PEAK = Field("peak", "power", "Peak", low="0 Btu/h", high="200 kBtu/h", same_as="load")
TOP = Field(
    "top", "temperature", "Top", low="60 °F", high="250 °F", uncertainty="3 F°",
    typical=Typical({"one": "180 °F", "two": "170 °F"}, "common-practice", "160 °F", "190 °F", on="way"),
)  # fmt: skip
WAY = Field("way", "choice", "Way", options=(Option("one", "the one"), Option("two", "the other")))
KIND = Field("fuel", "choice", "Fuel", options=(Option("oak", "oak"), Option("pine", "pine")))
EXTRA = Field("extra", "energy", "Extra", low="0 Btu", high="9 MMBtu", typical=Typical("5 Btu", "definition"))

TIME = Step("time", store.time_on_heat, "Time")
RICH = Pick("rich", "heat_per_mass", "Richness", "fuel", {"oak": "8,600 Btu/lb", "pine": "8,900 Btu/lb"}, "definition")
BOTH = Step("both", store.time_on_heat, "Time of the extra", heat="extra")
ADVICE = Advice("caution", "short", "time < limit", "Short.", "Only {time}.", "definition", zeroes=("time",))
HOLDS = Check("hold", "Holds", "time", "time < limit", "time < 2 * limit", "It holds {time}.", "definition")
CHART = Chart("Time", "load", "x0.5", "x2", (Line("time", "time", "use"),), "It lasts {time}.", us="h", si="h")


class _Told(NamedTuple):
    lasting: Second
    heats: KelvinByHour


@run("It is run.", source="definition")
def _told(load: Watt) -> _Told:
    return _Told(load, (load, load))


LASTING = Step("lasting", _told.law("lasting"), "How long")
TRACK = Track("Hours", "lasting", "Day", (Trace("heats", "heat", "tank"),), "It lasts {lasting}.")
ROWS = (Variant("less", {"load": "x0.5"}), Variant("cooler", {"top": "less 20 F°"}), Variant("pine", {"fuel": "pine"}))
TABLE = Comparison("Beside each other", ROWS, ("time", "rich"), "As {time}.", "definition")
RULES = Methods("Rules", ("time",), "By {heat}.")
MUST = Must("heat > nothing", "heat", "Heat must be more than none.")
PART = Part("Clock", "nobody")
EXAMPLE = Example("An example", {"heat": "1,000 Btu", "load": "100 Btu/h", "way": "one", "fuel": "oak"})


def whole(**changes: Any) -> Worksheet:
    """A worksheet with every word in it and no mistake, or with other parts."""
    plain: dict[str, Any] = {
        "fields": (HEAT, LOAD, PEAK, TOP, WAY, KIND),
        "givens": (
            Given("limit", "time", "Limit", "4 h", "definition", us="h", si="h"),
            Given("nothing", "energy", "No heat", "0 Btu", "definition"),
        ),
        "steps": (TIME, RICH),
        "cases": (Cases("way", one=Case(), two=Case(fields=(EXTRA,), steps=(BOTH,))),),
        "results": (Result("time", us="h", si="h"), Result("both", only=("way", "two"))),
        "say": "It lasts {time}.",
        "meaning": ("{heat} is {time}.",),
        "sources": ("definition",),
        "advice": (ADVICE,),
        "checks": (HOLDS,),
        "musts": (MUST,),
        "picture": Picture("tank", "A tank.", {"top": "top", "low": "top"}),
        "chart": CHART,
        "tables": (TABLE, RULES),
        "changes": (Variant("twice", {"heat": "x2"}),),
        "follow": (Next("stored-heat", "For more."),),
        "examples": (EXAMPLE,),
        "in_record": OnlyWith(WAY, ("one",)),
        "sizes": (Sizes(PART, "{time} long", "{time}"), Sizes(PART, "{both}", only=("way", "two"))),
        "suits": (Suits("open-store", "time > limit"),),
    }
    return worksheet(**(plain | changes))


def _field(**changes: Any) -> Callable[[], Worksheet]:
    """Another first field."""
    return lambda: whole(fields=(HEAT.but(**changes), LOAD, PEAK, TOP, WAY, KIND))


def _top(*typical: Any, **named: Any) -> Callable[[], Worksheet]:
    return lambda: whole(fields=(HEAT, LOAD, PEAK, TOP.but(typical=Typical(*typical, **named)), WAY, KIND))


def _advice(**changes: Any) -> Callable[[], Worksheet]:
    return lambda: whole(advice=(ADVICE._replace(**changes),))


def _check(**changes: Any) -> Callable[[], Worksheet]:
    return lambda: whole(checks=(HOLDS._replace(**changes),))


def _chart(**changes: Any) -> Callable[[], Worksheet]:
    return lambda: whole(chart=CHART._replace(**changes))


def _track(**changes: Any) -> Callable[[], Worksheet]:
    return lambda: whole(steps=(TIME, RICH, LASTING), chart=TRACK._replace(**changes))


def _sweep(**changes: Any) -> Callable[[], Worksheet]:
    return lambda: whole(sweeps=(Sweep("Other loads", "load", ("x1", "x2"), ("time",), "time")._replace(**changes),))


def _row(**changes: str) -> Callable[[], Worksheet]:
    return lambda: whole(tables=(TABLE._replace(rows=(Variant("less", changes),)),))


def _table(**changes: Any) -> Callable[[], Worksheet]:
    return lambda: whole(tables=(TABLE._replace(**changes),))


def _step(**binding: str) -> Callable[[], Worksheet]:
    return lambda: whole(steps=(Step("time", store.time_on_heat, "Time", **binding), RICH))


def _pick(**changes: Any) -> Callable[[], Worksheet]:
    return lambda: whole(steps=(TIME, RICH._replace(**changes)))


def _result(*more: Any, **named: Any) -> Callable[[], Worksheet]:
    return lambda: whole(results=(Result("time"), Result(*more, **named)))


def _given(**changes: Any) -> Callable[[], Worksheet]:
    plain = Given("limit", "time", "Limit", "4 h", "definition", us="h", si="h")
    return lambda: whole(givens=(plain._replace(**changes), *whole().givens[1:]))


def _case(**cases: Case) -> Callable[[], Worksheet]:
    return lambda: whole(cases=(Cases("way", **cases),))


def _with(**changes: Any) -> Callable[[], Worksheet]:
    return lambda: whole(**changes)


# What was slipped, how, and the sentence that follows the file's name.
SLIPS: dict[str, tuple[Callable[[], Worksheet], str]] = {
    # fields
    "a choice that is too low": (_field(kind="choice", options=(Option("a", "A"),), too_low="so"), "Field heat: a choice is never too low"),
    "a small share that is no share": (_field(small_shares=True), "Field heat: only a fraction can be a small share"),
    "a field of an unknown kind": (_field(kind="enrgy"), "Field heat: no kind is called 'enrgy'; did you mean energy?"),
    "a limit that cannot be read": (_field(low="2 apples"), "Field heat: '2 apples' as energy: has a unit that does not fit here, “apples”: use Btu, kBtu, MMBtu, therm, kWh or Wh"),
    "a limit in a unit of another kind": (_field(high="9 gal"), "Field heat: '9 gal' as energy: has a unit that does not fit here, “gal”: use Btu, kBtu, MMBtu, therm, kWh or Wh"),
    "a limit left out": (_field(high=""), "Field heat: both ends of the accepted range are needed"),
    "an empty range": (_field(low="2 MMBtu"), "Field heat: the range from 2 MMBtu to 1 MMBtu is empty"),
    "an unknown unit of a field": (_field(us="Btoo"), "Field heat: the unit 'Btoo' of energy has a unit that does not fit here, “Btoo”: use Btu, kBtu, MMBtu, therm, kWh or Wh"),
    "a number with options": (_field(options=(Option("one", "one"),)), "Field heat: a choice, and only a choice, has options"),
    "an option twice": (_with(fields=(HEAT, LOAD, PEAK, TOP, WAY, KIND.but(options=(Option("oak", "oak"), Option("oak", "pine"))))), "Field fuel: the option 'oak' stands twice"),
    "an uncertainty that cannot be read": (_field(uncertainty="ten %"), "Field heat: 'ten %' as fraction: must start with a number"),
    "an uncertainty of another kind": (_field(uncertainty="3 F°"), "Field heat: '3 F°' as energy: has a unit that does not fit here, “F°”: use Btu, kBtu, MMBtu, therm, kWh or Wh"),
    "a typical value out of range": (_field(typical=Typical("9 MMBtu", "definition")), "Field heat: heat: 9 MMBtu is outside 1 Btu to 1 MMBtu"),
    "a typical value of an unknown source": (_field(typical=Typical("9 Btu", "definitionx")), "Field heat: no source is called 'definitionx'; did you mean definition?"),
    "a typical value outside its band": (_field(typical=Typical("9 Btu", "definition", "10 Btu", "12 Btu")), "Field heat: its typical value lies outside its usual band"),
    "a band with one end": (_field(typical=Typical("9 Btu", "definition", "8 Btu")), "Field heat: a usual band has two ends"),
    "a typical value on no field": (_top({"one": "180 °F", "two": "170 °F"}, "common-practice", on="ways"), "Field top: no field is called 'ways'; did you mean way?"),
    "a typical value on a number": (_top({"one": "180 °F", "two": "170 °F"}, "common-practice", on="load"), "Field top: its typical value hangs on load, which is no choice"),
    "a typical value for no option": (_top({"one": "180 °F", "too": "170 °F"}, "common-practice", on="way"), "Field top: no option of way for the typical value is called 'too'; did you mean two?"),
    "a typical value that lacks an option": (_top({"one": "180 °F"}, "common-practice", on="way"), "Field top: no text for the option two of way for the typical value"),
    "a typical value that hangs on nothing": (_top({"one": "180 °F", "two": "170 °F"}, "common-practice"), "Field top: a typical value hangs on a choice just where its texts are by option"),
    "what stands in unless given out of range": (_field(unless_given="8 MMBtu"), "Field heat: heat: 8 MMBtu is outside 1 Btu to 1 MMBtu"),
    "the same as no field": (_with(fields=(HEAT, LOAD, PEAK.but(same_as="lode"), TOP, WAY, KIND)), "Field peak: no field is called 'lode'; did you mean load?"),
    "the same as a field of another kind": (_with(fields=(HEAT, LOAD, PEAK.but(same_as="heat"), TOP, WAY, KIND)), "Field peak: heat is energy, not power"),
    "the same as one that is itself the same": (_with(fields=(HEAT, LOAD.but(same_as="peak"), PEAK, TOP, WAY, KIND)), "Field load: it is the same as peak, which is itself the same as another"),
    "a field that nobody gives": (_with(examples=(Example("An example", {"load": "100 Btu/h", "way": "one", "fuel": "oak"}),)), "Field heat: heat has no typical value and stands in no example"),
    "a name in braces in a label": (_with(fields=(HEAT, LOAD, PEAK, TOP, WAY, KIND, Field("more", "energy", "More than {heat}", low="1 Btu", high="9 Btu", unless_given="2 Btu"))), "Field more: 'More than {heat}' is shown as it stands: it takes no names in braces"),
    "a field twice": (_with(fields=(HEAT, HEAT.but(low="2 Btu"), LOAD, PEAK, TOP, WAY, KIND)), "Field heat: heat stands twice where way is one"),
    # givens
    "a given of an unknown source": (_given(source="definitions"), "Given limit: no source is called 'definitions'; did you mean definition?"),
    "a given that cannot be read": (_given(text="4 ours"), "Given limit: '4 ours' as time: has a unit that does not fit here, “ours”: use h, min, s, days, months or years"),
    "a given of an unknown kind": (_given(kind="tyme"), "Given limit: no kind is called 'tyme'; did you mean time?"),
    "a given in an unknown unit": (_given(si="hourz"), "Given limit: the unit 'hourz' of time has a unit that does not fit here, “hourz”: use h, min, s, days, months or years"),
    "a given that is a field": (_given(key="heat"), "Given heat: heat is both a field and a given"),
    "a given twice": (_with(givens=(*whole().givens, whole().givens[0])), "Worksheet test: the given 'limit' stands twice"),
    # steps and cases
    "a parameter that the law does not have": (_step(heet="heat"), "Step time: time_on_heat takes heat, load, not heet"),
    "a step that needs what is not there": (_step(heat="heet"), "Step time: no field, given or step is called 'heet'; did you mean heat?"),
    "a step bound to another kind": (_step(heat="load"), "Step time: it binds heat (energy) to load (power)"),
    "a step bound to what another case works out": (_step(heat="extra"), "Worksheet test: these steps lack what they need: time needs extra"),
    "a step twice": (_with(steps=(TIME, RICH, TIME)), "Step time: time stands twice where way is one"),
    "a step that is a field": (_with(steps=(TIME, RICH, Step("load", store.time_on_heat, "Load"))), "Field load: load stands twice where way is one"),
    "a step in an unknown unit": (_with(steps=(Step("time", store.time_on_heat, "Time", us="hous"), RICH)), "Step time: the unit 'hous' of time has a unit that does not fit here, “hous”: use h, min, s, days, months or years"),
    "steps that wait for each other": (_with(steps=(TIME, RICH, Step("this", water.density, "This", temperature="that"), Step("that", water.boiling_temperature, "That", pressure="this"))), "Worksheet test: these steps lack what they need: this needs that; that needs this"),
    "a pick on no field": (_pick(on="feul"), "Pick rich: no field is called 'feul'; did you mean fuel?"),
    "a pick on a number": (_pick(on="load"), "Pick rich: load is no choice"),
    "a pick that misses an option": (_pick(values={"oak": "8,600 Btu/lb"}), "Pick rich: it has no value for the option pine of fuel"),
    "a pick with an option too many": (_pick(values={"oak": "8,600 Btu/lb", "pine": "8,900 Btu/lb", "pines": "8,900 Btu/lb"}), "Pick rich: no option of fuel is called 'pines'; did you mean pine?"),
    "a pick that cannot be read": (_pick(values={"oak": "8,600 Btu", "pine": "8,900 Btu/lb"}), "Pick rich: '8,600 Btu' as heat_per_mass: has a unit that does not fit here, “Btu”: use Btu/lb, MMBtu/ton, kWh/kg, MJ/kg or J/kg"),
    "a pick of an unknown source": (_pick(source="definitione"), "Pick rich: no source is called 'definitione'; did you mean definition?"),
    "a pick in a unit of another kind": (_pick(us="lb"), "Pick rich: the unit 'lb' of heat_per_mass has a unit that does not fit here, “lb”: use Btu/lb, MMBtu/ton, kWh/kg, MJ/kg or J/kg"),
    "cases on no field": (_with(cases=(Cases("ways", one=Case(), two=Case()),)), "Cases ways: no field is called 'ways'; did you mean way?"),
    "cases on a number": (_with(cases=(Cases("load", one=Case()),)), "Cases load: load is no choice"),
    "a case of no option": (_case(one=Case(), too=Case(fields=(EXTRA,), steps=(BOTH,))), "Cases way: no case of way is called 'two'; did you mean too?"),
    # results and sentences
    "a result that no step makes": (_result("tyme"), "Result tyme: no field, given or step is called 'tyme'; did you mean time?"),
    "a result twice": (_result("time", "Again"), "Result time: the result 'time' stands twice"),
    "a result only with a field that is not there": (_result("both", only=("wayy", "two")), "Result both: no field is called 'wayy'; did you mean way?"),
    "a result only with an option that is not there": (_result("both", only=("way", "tow")), "Result both: no option of way is called 'tow'; did you mean two?"),
    "a result only where its step is not": (_result("both", only=("way", "one")), "Result both: in no case are both there as it needs them, so it is never said"),
    "a result in an unknown unit": (_result("both", us="hr.s!"), "Result both: the unit 'hr.s!' of time has a unit that does not fit here, “hr.s!”: use h, min, s, days, months or years"),
    "a result that says an unknown name": (_result("both", "Time of {ekstra}"), "Result both: no field, given or step is called 'ekstra'; did you mean extra?"),
    "a result to no figure": (_result("both", figures=0), "Result both: its figures are not between 1 and 12"),
    "a headline that is no result": (_with(headline="rich"), "Worksheet test: no result is called 'rich'"),
    "a headline that is not always there": (_with(headline="both"), "Worksheet test: its headline both is not there where way is one"),
    "a sentence with an unknown name": (_with(say="It lasts {tome}."), "Worksheet test: no field, given or step is called 'tome'; did you mean time?"),
    "a sentence with a name of another case": (_with(meaning=("And {both} more.",)), "Worksheet test: 'both' has no value where way is one, and 'And {both} more.' names it"),
    "a sentence with a brace left open": (_with(meaning=("{time is long.",)), "Worksheet test: expected '}' before end of string: '{time is long.'"),
    "a sentence with more than a name in braces": (_with(meaning=("{time:.2f} is long.",)), "Worksheet test: only names may stand in braces: '{time:.2f} is long.'"),
    "an unknown source of the worksheet": (_with(sources=("first-lore",)), "Worksheet test: no source is called 'first-lore'; did you mean first-law?"),
    # advice
    "advice of an unknown level": (_advice(level="cuation"), "Advice short: no level is called 'cuation'; did you mean caution?"),
    "advice whose condition names nothing": (_advice(when="tine < limit"), "Advice short: no field, given or step is called 'tine'; did you mean time?"),
    "advice whose condition is none": (_advice(when="time <"), "Advice short: this is not a condition (invalid syntax): time <"),
    "advice whose condition reaches out": (_advice(when="time.real > limit"), "Advice short: Attribute is not allowed in a condition: time.real > limit"),
    "advice that asks about an unknown name": (_advice(when="missing(tinme)", zeroes=()), "Advice short: no field, given or step is called 'tinme'; did you mean time?"),
    "advice that compares with no option": (_advice(when="fuel == 'oka'"), "Advice short: no option of fuel is called 'oka'; did you mean oak?"),
    "advice that compares a number with a text": (_advice(when="time == 'oak'"), "Advice short: time == 'oak' compares time with a text"),
    "advice that orders a choice": (_advice(when="fuel > 'oak'"), "Advice short: fuel > 'oak' orders a choice, which can only be == or !="),
    "advice that compares a choice with a number": (_advice(when="fuel == 1"), "Advice short: fuel == 1 compares a choice with what is none of its options"),
    "advice that compares unlike kinds": (_advice(when="time < heat"), "Advice short: time < heat compares energy and time"),
    "advice that adds unlike kinds": (_advice(when="time + heat < limit"), "Advice short: time + heat adds time and energy"),
    "advice that compares with a bare number": (_advice(when="time < 4"), "Advice short: time < 4 compares time with a number that has no unit: bring it as a Given"),
    "advice that can never hold": (_advice(when="both < limit and way == 'one'", zeroes=()), "Advice short: in no case are both, limit, way there as it needs them, so it is never said"),
    "advice that says what is not there": (_advice(say="Only {both}."), "Advice short: 'both' has no value where way is one, and 'Only {both}.' names it"),
    "advice that says an unknown name": (_advice(title="Only {hat}."), "Advice short: no field, given or step is called 'hat'; did you mean heat?"),
    "advice of an unknown source": (_advice(source="definitioned"), "Advice short: no source is called 'definitioned'; did you mean definition?"),
    "advice that sets nothing to nothing": (_advice(zeroes=("tim",)), "Advice short: no field, given or step is called 'tim'; did you mean time?"),
    "advice that sets a choice to nothing": (_advice(zeroes=("fuel",)), "Advice short: fuel is a choice, where a number is needed"),
    "advice that sets to nothing by who gave": (_advice(when="assumed(load) and time < limit"), "Advice short: what sets a result to nothing cannot depend on who gave a number: assumed()"),
    "two pieces of advice of one code": (_with(advice=(ADVICE, ADVICE._replace(level="note"))), "Worksheet test: the code of advice 'short' stands twice"),
    # checks and musts
    "a check judged by an unknown number": (_check(number="thyme"), "Check hold: no field, given or step is called 'thyme'; did you mean time?"),
    "a check judged by a choice": (_check(number="fuel"), "Check hold: fuel is a choice, where a number is needed"),
    "a check that fails as a caution": (_check(level="caution"), "Check hold: a check fails as stop or as unworkable, not as 'caution'"),
    "a check that fails by an unknown name": (_check(fails="time < limits"), "Check hold: no field, given or step is called 'limits'; did you mean limit?"),
    "a check that is tight by another kind": (_check(tight="time < load"), "Check hold: time < load compares power and time"),
    "a check that says an unknown name": (_check(say="It holds {times}."), "Check hold: no field, given or step is called 'times'; did you mean time?"),
    "a check of an unknown source": (_check(source="definitionz"), "Check hold: no source is called 'definitionz'; did you mean definition?"),
    "two checks of one key": (_with(checks=(HOLDS, HOLDS._replace(label="Again"))), "Worksheet test: the check 'hold' stands twice"),
    "a must of a step": (_with(musts=(Must("time > limit", "heat", "X"),)), "Must time > limit: time is a step, and only fields and givens are known when this is asked"),
    "a must beside no field": (_with(musts=(MUST._replace(field="hete"),)), "Must heat > nothing: no field is called 'hete'; did you mean heat?"),
    "a must of unlike kinds": (_with(musts=(MUST._replace(that="heat > load"),)), "Must heat > load: heat > load compares energy and power"),
    "a must that names its numbers": (_with(musts=(MUST._replace(say="More than {heat}."),)), "Must heat > nothing: 'More than {heat}.' is shown as it stands: it takes no names in braces"),
    # pictures, charts, tables
    "an unknown drawing": (_with(picture=Picture("tnak", "", {"top": "top", "low": "top"})), "Picture tnak: no drawing is called 'tnak'; did you mean tank?"),
    "an unknown part of a drawing": (_with(picture=Picture("tank", "", {"tip": "top", "low": "top"})), "Picture tank: no part of the drawing tank is called 'tip'; did you mean top?"),
    "a part of a drawing left out": (_with(picture=Picture("tank", "", {"top": "top"})), "Picture tank: nothing stands for the part low of the drawing tank"),
    "an unknown name in a drawing": (_with(picture=Picture("tank", "", {"top": "topp", "low": "top"})), "Picture tank: no field, given or step is called 'topp'; did you mean top?"),
    "another kind in a drawing": (_with(picture=Picture("tank", "", {"top": "load", "low": "top"})), "Picture tank: load is no temperature where way is one, and stands for top"),
    "another kind for what a drawing may lack": (_with(picture=Picture("taps", "", {"said": "way", "needed": "load"})), "Picture taps: load is no temperature where way is one, and stands for needed"),
    "a sweep of one point": (_sweep(points=("x2",)), "Sweep Other loads: it needs two points or more"),
    "a sweep across no field": (_sweep(across="lode"), "Sweep Other loads: no field, given or step is called 'lode'; did you mean load?"),
    "a sweep to what the field does not take": (_sweep(points=("x1", "xmuch")), "Sweep Other loads: 'xmuch' for load is no multiple such as x2"),
    "a sweep of what is no result": (_sweep(falls="rich"), "Sweep Other loads: it shows rich, which is no result"),
    "a sweep held against no point of it": (_sweep(more="x3"), "Sweep Other loads: x3 is none of its points"),
    "a sweep to an amount of another kind": (_sweep(points=("x1", "plus 3 gal")), "Sweep Other loads: '3 gal' as power: has a unit that does not fit here, “gal”: use Btu/h, kBtu/h, MMBtu/h, kW or W"),
    "a spread of what is no result": (_with(sweeps=(Spread("What matters", ("load",)),)), "Spread What matters: it shows load, which is no result"),
    "a spread of nothing": (_with(sweeps=(Spread("What matters", ()),)), "Spread What matters: it tells of no result"),
    "a track of what no run gives": (_track(of="time"), "Track Hours: time is not read from the record of a run"),
    "a track of a series that is not there": (_track(lines=(Trace("heatz", "heat"),)), "Track Hours: no series of that record is called 'heatz'; did you mean heats?"),
    "a track of so many readings as no run gives": (_track(a_day="lastin"), "Track Hours: no number of that record is called 'lastin'; did you mean lasting?"),
    "a track without a line": (_track(lines=()), "Track Hours: it has no line"),
    "a track's line in no role": (_track(lines=(Trace("heats", "heat", "tonk"),)), "Chart, Trace heat: no role of a line is called 'tonk'; did you mean tank?"),
    "a chart across no field": (_chart(across="lode"), "Chart Time: no field, given or step is called 'lode'; did you mean load?"),
    "a chart across a choice": (_chart(across="fuel", low="oak", high="pine"), "Chart Time: fuel is a choice, where a number is needed"),
    "a chart from what the field does not take": (_chart(low="5 gal"), "Chart Time: '5 gal' as power: has a unit that does not fit here, “gal”: use Btu/h, kBtu/h, MMBtu/h, kW or W"),
    "a chart from what is no multiple": (_chart(low="xhalf"), "Chart Time: 'xhalf' for load is no multiple such as x2"),
    "a chart over an empty range": (_chart(low="x3"), "Chart Time: the range from x3 to x2 is empty"),
    "a chart in a unit of another kind": (_chart(us="gal"), "Chart Time: the unit 'gal' of time has a unit that does not fit here, “gal”: use h, min, s, days, months or years"),
    "a chart that says an unknown name": (_chart(say="It lasts {tmie}."), "Chart Time: no field, given or step is called 'tmie'; did you mean time?"),
    "a line of an unknown name": (_chart(lines=(Line("timer", "time"),)), "Chart, Line timer: no field, given or step is called 'timer'; did you mean time?"),
    "a line of an unknown role": (_chart(lines=(Line("time", "time", "fier"),)), "Chart, Line time: no role of a line is called 'fier'; did you mean fire?"),
    "lines of unlike kinds": (_chart(lines=(Line("time", "time"), Line("rich", "richness")), us="", si=""), "Chart Time: its lines are of unlike kinds: heat_per_mass, time"),
    "a line of another case": (_chart(lines=(Line("both", "both"),)), "Chart Time: its line both has no value where way is one"),
    "a variant of an unknown key": (_row(lodd="x0.5"), "Comparison Beside each other, Variant less: no field is called 'lodd'; did you mean load?"),
    "a variant that the field does not take": (_row(load="9 MMBtu/h"), "Comparison Beside each other, Variant less: load: 9 MMBtu/h is outside 0 Btu/h to 100 kBtu/h"),
    "a variant that is no multiple": (_row(load="xtwo"), "Comparison Beside each other, Variant less: 'xtwo' for load is no multiple such as x2"),
    "a variant of no option": (_row(fuel="pin"), "Comparison Beside each other, Variant less: no option of fuel is called 'pin'; did you mean pine?"),
    "a variant below in another kind": (_row(top="less 20 gal"), "Comparison Beside each other, Variant less: '20 gal' as temperature_difference: has a unit that does not fit here, “gal”: use F° or K"),
    "a variant into a case that asks more": (_row(way="two"), "Comparison Beside each other, Variant less: it leads where way is two, where extra would have to be asked"),
    "a change of an unknown key": (_with(changes=(Variant("twice", {"heta": "x2"}),)), "Variant twice: no field is called 'heta'; did you mean heat or extra?"),
    "a row that says an unknown name": (_table(rows=(Variant("at {lode}", {}),)), "Comparison Beside each other, Variant at {lode}: no field, given or step is called 'lode'; did you mean load?"),
    "a table that shows an unknown name": (_table(show=("tme",)), "Comparison Beside each other: no field, given or step is called 'tme'; did you mean time?"),
    "a table that shows a bare field": (_table(show=("time", "load")), "Comparison Beside each other: it shows load, which is neither a step nor a result"),
    "a table of an unknown source": (_table(source="definitions"), "Comparison Beside each other: no source is called 'definitions'; did you mean definition?"),
    "two rows of one label": (_table(rows=(ROWS[0], ROWS[0])), "Comparison Beside each other: the row 'less' stands twice"),
    "rules that show an unknown name": (_with(tables=(RULES._replace(show=("timing",)),)), "Methods Rules: no field, given or step is called 'timing'; did you mean nothing or time?"),
    "rules that show a field": (_with(tables=(RULES._replace(show=("time", "heat")),)), "Methods Rules: it shows heat, which is no step and so has no rule"),
    # the outlook
    "an outlook that awaits an unknown name": (_with(outlook=Outlook((("haet", "nobody said"),), {"short": "it is short"})), "Outlook: no field, given or step is called 'haet'; did you mean heat?"),
    "a reason for no advice": (_with(outlook=Outlook((), {"short": "it is short", "shirt": "it is so"})), "Outlook: no code of advice but notes is called 'shirt'; did you mean short?"),
    "a reason that names what is not there": (_with(outlook=Outlook((), {"short": "{both} is short"})), "Outlook: 'both' has no value where way is one, and '{both} is short' names it"),
    "advice without a reason": (_with(outlook=Outlook((), {})), "Outlook: no reason stands for short"),
    # examples and where to go
    "an example of no field": (_with(examples=(EXAMPLE, Example("Another", {"haet": "5 Btu"}))), "Example Another: no field is called 'haet'; did you mean heat?"),
    "an example that the field does not take": (_with(examples=(EXAMPLE, Example("Another", {"load": "9 MMBtu/h"}))), "Example Another: load: 9 MMBtu/h is outside 0 Btu/h to 100 kBtu/h"),
    "an example of no option": (_with(examples=(EXAMPLE, Example("Another", {"fuel": "oka"}))), "Example Another: fuel: 'oka' is not one of its options"),
    "two examples of one name": (_with(examples=(EXAMPLE, EXAMPLE)), "Worksheet test: the example 'An example' stands twice"),
    # the record
    "an unknown guide": (_with(guide="storages"), "Worksheet test: no guide is called 'storages'; did you mean storage or stove?"),
    "in the record only with no option": (_with(in_record=OnlyWith(WAY, ("ones",))), "OnlyWith way: no option of way is called 'ones'; did you mean one?"),
    "a size of an unknown name": (_with(sizes=(Sizes(PART, "{times} long"),)), "Sizes Clock: no field, given or step is called 'times'; did you mean time?"),
    "a short size of an unknown name": (_with(sizes=(Sizes(PART, "x", "{lode}"),)), "Sizes Clock: no field, given or step is called 'lode'; did you mean load?"),
    "a size only with no field": (_with(sizes=(Sizes(PART, "x", only=("ways", "one")),)), "Sizes Clock: no field is called 'ways'; did you mean way?"),
    "a size only with no option": (_with(sizes=(Sizes(PART, "x", only=("way", "three")),)), "Sizes Clock: no option of way is called 'three'"),
    "a size of what is not there then": (_with(sizes=(Sizes(PART, "{both}", only=("way", "one")),)), "Sizes Clock: in no case are both there as it needs them, so it is never said"),
    "a drawing that suits an unknown name": (_with(suits=(Suits("open-store", "lode > nothing"),)), "Suits open-store: no field, given or step is called 'lode'; did you mean load?"),
    # where to go
    "an unknown worksheet to go to": (_with(follow=(Next("stored-heats", "For more."),)), "Next stored-heats: no worksheet is called 'stored-heats'; did you mean stored-heat?"),
    "a worksheet that leads to itself": (_with(key="tank-size", follow=(Next("tank-size", "For more."),)), "Next tank-size: a worksheet does not lead to itself"),
}  # fmt: skip


def test_what_has_no_slip_is_not_refused() -> None:
    check(whole(), SLUGS)
    check(worksheet(), ())


@pytest.mark.parametrize("slip", SLIPS)
def test_a_slip_stops(slip: str) -> None:
    make, sentence = SLIPS[slip]
    with pytest.raises(DeclarationError) as refused:
        check(make(), SLUGS)
    file, _, said = str(refused.value).partition(": ")
    assert file == f"calc/worksheets/{make().key.replace('-', '_')}.py"
    assert said == sentence


def test_each_slip_is_refused_for_its_own_reason() -> None:
    assert len({sentence for _, sentence in SLIPS.values()}) == len(SLIPS) >= 40


def test_every_kind_of_word_has_a_slip() -> None:
    slipped = {word for _, sentence in SLIPS.values() for word in sentence.partition(": ")[0].replace(",", "").split()}
    assert {type(word).__name__ for word, _ in words(whole())} <= slipped


@pytest.mark.parametrize("key", WORKSHEETS)
def test_our_worksheets_hold_no_slip(key: str) -> None:
    check(WORKSHEETS[key], tuple(WORKSHEETS))


def test_a_worksheet_is_checked_when_it_is_first_used() -> None:
    slipped = SLIPS["a sentence with an unknown name"][0]()
    slipped.key = "stored-heat"
    with pytest.raises(DeclarationError, match="did you mean time"):
        Worksheets(lambda key: slipped)["stored-heat"]


def test_every_drawing_is_drawn() -> None:
    drawn = {path.stem for path in (ROOT / "site_overrides" / "render").rglob("drawings/*.svg")}
    assert set(DRAWINGS) == drawn


def test_filling_a_sentence_stops_at_an_unknown_name() -> None:
    reading = read(whole(), {}, "us")
    texts = Texts(whole(), reading, work_out(whole(), reading), "us")
    assert texts.fill("In {time}.") == "In 10.0\u00a0h."
    with pytest.raises(DeclarationError, match="nothing here is called 'tyme'"):
        texts.fill("In {tyme}.")
