"""What stands in a page before any script: a worksheet with its example, an empty plan, the desk, a sample record."""

from collections.abc import Mapping, Sequence
from typing import Any

from markupsafe import Markup

from calc.answer import answer
from calc.chosen import fields, look_at
from calc.engine.declare import Field
from calc.engine.plan import Entry
from calc.engine.plan_file import LARGEST_FILE as LARGEST_PLAN
from calc.engine.sheet import Sheet
from calc.physics.winter_weather import LARGEST_FILE
from calc.units import System
from calc.vocabulary import OLDER_WORDS
from calc.worksheets import WORKSHEETS
from render import folding, start, view
from render.desk import JOIN, TOGETHER
from render.drawings.piping import SYSTEMS
from render.paper import SITE, Wanted, document
from render.plan import offered, plan_list
from render.templating import fill

WAITING = "Your own numbers are worked out as soon as the calculator is ready."


def worksheet_html(key: str, system: System = "us", heading: str = "h2", *, closed: bool = False) -> str:
    """The whole section of a worksheet with its worked example, as it stands in a guide before any script.

    `system` are the units in which the site opens. A `closed` one shows its question and its answer, until the reader
    opens it.
    """
    sheet = answer(key, {}, system)
    return _section(sheet, heading, closed=closed)


def _section(sheet: Sheet, heading: str, *, closed: bool) -> str:
    """The whole worksheet with every field of every case, those of other cases hidden."""
    shown = {field.key for field in sheet.course.fields}
    by_key: dict[str, Field] = {}
    for field in (*sheet.course.fields, *sheet.worksheet.all_fields()):
        by_key.setdefault(field.key, field)
    states = view.field_states(sheet, {})
    hidden = folding.folded(sheet.worksheet, sheet.course)
    drawn = [_field(sheet, field, states.get(field.key), field.key in shown) for field in _in_form_order(sheet, by_key)]
    questions, others = start.grouped(drawn) if sheet.worksheet.outlook else ([], drawn)
    return str(
        fill(
            "pages/worksheet.html",
            worksheet=sheet.worksheet,
            closed=closed,
            questions=questions,
            heading=Markup(heading),  # noqa: S704 - a tag name of our own
            fields=[drawn_field for drawn_field in others if drawn_field["field"].key not in hidden],
            folded=[drawn_field for drawn_field in others if drawn_field["field"].key in hidden],
            order=" ".join(drawn_field["key"] for drawn_field in drawn),
            alone=" ".join(key for key in map(sheet.worksheet.plan_key, by_key) if _asked_once(key)),
            fold=folding.line(sheet),
            slots=view.slots(sheet, offered=offered(sheet, {})),
            no_plate=view.no_plate(sheet),
            waiting_plate=view.empty_plate(sheet, WAITING),
            has_chart=sheet.worksheet.chart is not None,
            picture=sheet.worksheet.picture,
            largest_file=LARGEST_FILE,
        )
    )


def _asked_once(key: str) -> bool:
    """Whether only one worksheet asks for a number."""
    asked = ({worksheet.plan_key(field.key) for field in worksheet.all_fields()} for worksheet in WORKSHEETS.values())
    return sum(key in keys for keys in asked) == 1


def _in_form_order(sheet: Sheet, fields: Mapping[str, Field]) -> list[Field]:
    """The fields of the course in its order, each other case's fields behind the choice they hang on."""
    ordered = [fields[field.key] for field in sheet.course.fields]
    placed = {field.key for field in ordered}
    for course in sheet.worksheet.all_courses():
        before: str | None = None
        for field in course.fields:
            if field.key not in placed:
                at = next((place for place, other in enumerate(ordered) if other.key == before), len(ordered) - 1) + 1
                ordered.insert(at, fields[field.key])
                placed.add(field.key)
            before = field.key
    return ordered


def _field(sheet: Sheet, field: Field, state: Mapping[str, Any] | None, shown: bool) -> dict[str, Any]:
    return {
        "field": field,
        "key": sheet.worksheet.plan_key(field.key),
        "id": f"{sheet.worksheet.key}-{field.key}",
        "state": state
        or {
            "value": "",
            "unit": view.unit_words(field, sheet.system),
            "measure": view.measure(field, sheet.system),
            "note": "",
            "from": "example",
        },
        "ticked": state is not None and state["unknown"],
        "units": sheet.system,
        "hidden": not shown,
        "optional": field.optional,
        "unknown": field.typical is not None,
        "blank": False,  # begins empty, whatever stands in for it
        "rests": " ".join(map(sheet.worksheet.plan_key, sheet.worksheet.rests_on(field.key))),
    }


def plan_section(system: System = "us") -> str:
    """The whole section with an empty plan, as it stands in its page before any script."""
    return str(fill("pages/plan.html", content=plan_list({}, system), largest=4 * LARGEST_PLAN + 1))


def desk_page(edition: Any, shelves: Sequence[Any], addresses: Mapping[str, str], whole: str, shop: str) -> str:
    """The desk as it stands in the page before any script.

    `addresses` are those of the worksheets' guides, `whole` that of the page that shows a whole plan, `shop` the
    key of the stock.
    """
    sample = next(iter(WORKSHEETS))
    known = view.slots(answer(sample, {}))["plate"]
    return str(
        fill(
            "pages/desk.html",
            edition=edition,
            shop=shop,
            sample=sample,
            known=Markup(known),  # noqa: S704 - filled in by our own template
            shelves=[(shelf, getattr(edition, shelf.key)) for shelf in shelves],
            together=[(JOIN.join(keys), label, whole) for label, keys in TOGETHER],
            worksheets=[(key, WORKSHEETS[key].question, addresses[key]) for key in _as_asked() if key in addresses],
            first="tank-size",
        )
    )


def _as_asked() -> list[str]:
    """The worksheets as customers ask: whether it suits the house at all comes first."""
    return sorted(WORKSHEETS, key=lambda key: WORKSHEETS[key].outlook is None)


def record_page(
    name: str,
    entries: Mapping[str, Entry],
    version: str,
    site: str = SITE,
    shop: str = "",
    system: System = "us",
    *,
    quote: bool = False,
) -> str:
    """What stands in the page of the record before any script: its controls, and the record of an invented house.

    `shop` is the key of the dealer's stock whose names the page knows; `quote` whether it makes a quote from it;
    `system` are the units in which the site opens.
    """
    known = view.slots(answer(next(iter(WORKSHEETS)), {}))["plate"]
    return str(
        fill(
            "pages/record.html",
            keys=[*fields(), *OLDER_WORDS],
            version=version,
            shop=shop,
            quote=quote,
            known=Markup(known),  # noqa: S704 - filled in by our own template
            sample=next(iter(WORKSHEETS)),
            pipings=[(key, drawing.title) for key, drawing in SYSTEMS.items()],
            paper=Markup(_example(name, entries, version, site, system)),  # noqa: S704 - likewise
        )
    )


def _example(name: str, house: Mapping[str, Entry], version: str, site: str, system: System) -> str:
    """The record of an invented house, as it stands in the page before any script."""
    return document(look_at(house, system, {}), system, Wanted(version=version, site=site, example_of=name))
