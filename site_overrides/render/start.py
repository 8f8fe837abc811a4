"""Start with my house: the five questions as a page asks them, and the answer as one screen."""

import json
import re
from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

from markupsafe import Markup

from calc.engine.effects import effects
from calc.engine.sheet import Sheet, Shown
from calc.engine.words import CHANGE
from calc.tables.places import PLACES, WINTERS, Winter
from calc.worksheets import WORKSHEETS
from render.drawings import sketch
from render.templating import fill

STORE_SHEET = "stored-heat"  # where a reader types the store that stands in the plan
MOST_ASSUMED = 4  # assumed numbers that are told with what they do; the others are named
MOVED = ("recommended", "burns_per_day_at_design", "wood_volume", "cost_wood")


class Choice(NamedTuple):
    """A big button: its words, what it puts into the plan, and the box that it asks to be filled in."""

    key: str
    label: str
    puts: Mapping[str, str]
    asks: str = ""

    @property
    def entries(self) -> str:
        """The entries for the plan, as the page keeps them; an empty text is "I do not know"."""
        return json.dumps(
            {
                key: {"text": text, "units": "us"} if text else {"text": "", "units": "us", "from": "typical"}
                for key, text in self.puts.items()
            }
        )


class Question(NamedTuple):
    """One of the five: what is asked, the choices, and the boxes that belong to them."""

    key: str
    asks: str
    choices: tuple[Choice, ...] = ()
    fields: tuple[str, ...] = ()
    more: tuple[Choice, ...] = ()
    more_asks: str = ""


def _fuel(key: str, label: str) -> Choice:
    return Choice(key, label, {"fuel_now": key, "method": "fuel", "start_from": "bill"}, "amount")


def _of_winter(winter: Winter) -> str:
    """The winter in words, and the place that has it."""
    return f"{winter.words[0].upper()}{winter.words[1:]}, like {re.sub(r' \([^)]*\)', '', PLACES[winter.place].name)}"


FUELS = (
    _fuel("oil", "Heating oil"),
    _fuel("propane", "Propane"),
    _fuel("gas", "Natural gas"),
    _fuel("electricity", "Electric heat"),
    _fuel("heat-pump", "A heat pump"),
    _fuel("pellets", "Pellets"),
    _fuel("wood", "Firewood"),
    Choice("house", "Something else, or I do not know", {"start_from": "house", "method": "quick"}, "house_class"),
)
QUESTIONS = (
    Question(
        "fuel", "What do you burn now, and how much in a year?", FUELS, ("amount", "house_class", "heat_price_now")
    ),
    Question(
        "place",
        "What are your winters like?",
        tuple(Choice(winter.key, _of_winter(winter), {"place": winter.place}) for winter in WINTERS),
        ("place",),
    ),
    Question("area", "How large is the house?", (), ("heated_area",)),
    Question(
        "emitter",
        "What heats the rooms?",
        (
            Choice("baseboard", "Baseboard", {"emitter": "baseboard"}, "baseboard_length"),
            Choice("radiator", "Radiators", {"emitter": "radiator"}, "radiator_rating"),
            Choice("floor", "A warm floor", {"emitter": "floor"}),
            Choice("air-coil", "Ducts, with a coil", {"emitter": "air-coil"}),
        ),
        ("baseboard_length", "radiator_rating"),
    ),
    Question(
        "stove",
        "And the stove?",
        (
            Choice("help", "Help me choose", {"stove": "help"}),
            Choice("rated", "I know what it gives", {"stove": "rated"}, "water_output"),
        ),
        ("water_output",),
        (
            Choice("open", "Open to the air", {"system_pressure": "0 psi"}),
            Choice("closed", "Closed, under pressure", {"system_pressure": "12 psi"}),
            Choice("unsaid", "I do not know", {"system_pressure": ""}),
        ),
        "Is the tank open to the air, or closed?",
    ),
)
ASKED = tuple(key for question in QUESTIONS for key in question.fields)
CHOSEN = frozenset(
    key for question in QUESTIONS for choice in (*question.choices, *question.more) for key in choice.puts
)


def grouped(fields: Sequence[dict[str, Any]]) -> tuple[list[dict[str, Any]], list[dict[str, Any]]]:
    """The drawn fields of the worksheet: those of each question, and those that a start leaves alone."""
    by_key = {field["field"].key: field for field in fields}
    questions = [
        {"asks": question, "fields": [by_key[key] | {"blank": True} for key in question.fields]}
        for question in QUESTIONS
    ]
    return questions, [field for field in fields if field["field"].key not in ASKED]


def first_question(address: str) -> str:
    """The first question for the home page: each answer leads to the start, which takes it along."""
    return str(fill("start_first.html", question=QUESTIONS[0], address=address))


def answer_screen(sheet: Sheet) -> Markup:
    """The whole answer as one screen."""
    told = {result.key: result for result in sheet.results}
    moved = effects(sheet, [key for key in MOVED if sheet.values[key] is not None])
    named = {effect.entry.field.label for effect in moved[:MOST_ASSUMED]}
    return fill(
        "sketch.html",
        sheet=sheet,
        told=told,
        change=told[CHANGE],
        drawing=fill("system.svg", **sketch.parts(sheet), prefix="sketch"),
        moved=moved[:MOST_ASSUMED],
        labels={result.key: result.label for result in sheet.worksheet.results},
        others=[label for label in sheet.assumed if label not in named] if not sheet.example else [],
        nearest=next((entry.nearest for entry in sheet.inputs.values() if entry.nearest), ""),
        saved=_saved(told),
        store=WORKSHEETS[STORE_SHEET] if sketch.has_store(sheet) and not sheet.example else None,
    )


def _saved(told: Mapping[str, Shown]) -> bool:
    """Whether a winter on wood is shown beside what is burnt now."""
    return "cost_now" in told and told["cost_now"].si is not None and told["cost_wood"].si is not None
