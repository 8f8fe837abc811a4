"""The dealer's desk: what is known of a customer's house becomes one link, and a short message around it.

A question is a worksheet, or several that hang together: "house-load+emitter-temperature+tank-size", where each answer
stands in the next for the number that nobody gave. Nothing of it is kept: the page sends what stands in its boxes, and
gets back what to show.
"""

from collections.abc import Iterator, Mapping
from typing import Any, NamedTuple

from markupsafe import Markup, escape

from calc.answer import answer, link_of
from calc.chosen import filled, is_complete, lacks_of, needs
from calc.engine.declare import Field, Worksheet
from calc.engine.link import signed as link_signed
from calc.engine.plan import Entries, Entry, given_for
from calc.engine.read import Problem
from calc.engine.sentences import placeholders
from calc.engine.settled import settled
from calc.engine.sheet import Sheet
from calc.engine.typed import Input, Reader, Typed
from calc.engine.words import LEVEL_WORDS
from calc.units import System
from calc.worksheets import WORKSHEETS
from render import folding, qr, record, stock, view
from render.plan import entries_from
from render.sized import fed_by
from render.templating import fill
from render.urgent import Said, in_order, of_sheet, too_low

LONGEST = 500  # characters of a dealer's own words, or of an address
MOST_CAUTIONS = 3  # that a short message tells in full
MOST_ASSUMED = 8  # that it names, those on which an answer depends most before others
JOIN = "+"  # between the worksheets of a question that asks for several
# What customers ask in one breath: house, what heats the rooms, and the tank.
TOGETHER = (
    ("House, baseboard or radiators, and tank together", ("house-load", "emitter-temperature", "tank-size")),
    ("House, warm floor and tank together", ("house-load", "floor", "tank-size")),
    ("House, coil in the ducts and tank together", ("house-load", "air-coil", "tank-size")),
)


class Answered(NamedTuple):
    """A worksheet of the question: its sheet, what was given of it, and what it still needs before it says anything."""

    sheet: Sheet
    given: Mapping[str, Typed]
    lacks: tuple[str, ...]
    computed: Mapping[str, Entry]

    @property
    def told(self) -> bool:
        """Whether its answer is this customer's."""
        return bool(self.given) and not self.lacks and not self.sheet.problems


def respond(asked: Mapping[str, Any], system: System, reader: Reader) -> dict[str, Any]:
    """Answer the desk.

    Takes {"worksheet": one key or several joined by +, "plan": what is known of the house, "typing": key or null,
    "address", "name", "contact", "stock": whose}. Gives {"fields": {key: what its box shows}, "link", "message",
    "wrong": a sentence that names the boxes that cannot be used, and as HTML "plate", "said" and "stock"}; with
    "form": true also the "form" of the boxes, with "code": true also the QR "code" of the link.
    """
    keys = str(asked["worksheet"]).split(JOIN)
    given = entries_from(asked.get("plan"), reader)
    worksheets = {key: WORKSHEETS[key] for key in keys}
    work = settled(given, worksheets, filled(), is_complete)
    answered = [_answered(worksheet, given, work.entries, system) for worksheet in worksheets.values()]
    told = {
        reply.sheet.worksheet.key: [
            problem
            for problem in reply.sheet.problems
            if reply.sheet.worksheet.plan_key(problem.key) != asked.get("typing")
        ]
        for reply in answered
    }
    wrong = _wrong(answered)
    said = _urgent(answered, too_low(work.raised, given, system))
    signed = [str(asked.get(who, ""))[:LONGEST] for who in ("name", "contact")]
    address = str(asked.get("address") or "")[:LONGEST]
    link = "" if wrong else link_signed(_link(answered, given, address, system), signed[0])
    reply: dict[str, Any] = {
        "fields": _states(answered, told),
        "plate": str(fill("desk_plates.html", plates=_plates(answered, told))),
        "said": str(fill("desk_said.html", said=said, words=LEVEL_WORDS)) if not wrong else "",
        "stock": _stock(asked, answered, work.entries, reader) if not wrong else "",
        "wrong": wrong,
        "link": link,
        "message": "" if wrong else _message(answered, said, link, signed, reader),
    }
    if asked.get("form"):
        reply["form"] = str(_form(answered))
    if asked.get("code") and link:
        reply["code"] = str(qr.svg(link, "QR code of the link"))
    return reply


def _answered(worksheet: Worksheet, given: Entries, settled_plan: Entries, system: System) -> Answered:
    """A worksheet of the question, with what the others have worked out."""
    known = given_for(worksheet, given)
    # With nothing given it would be the worked example; a number that nobody knows makes it this customer's house.
    unknown = {next(field.key for field in worksheet.all_fields()): Typed("", system, "typical")}
    sheet = answer(worksheet.key, given_for(worksheet, settled_plan) or unknown, system, given.reader)
    # What the message quotes rests on these alone.
    fed = fed_by(sheet, [worksheet.headline, *placeholders(worksheet.say)])
    lacks = lacks_of({entry.field.key: entry for entry in fed})
    computed = {name: entry for name, entry in settled_plan.items() if entry.origin == "computed"}
    return Answered(sheet, known, lacks, computed)


def _wrong(answered: list[Answered]) -> str:
    """A sentence that names the boxes with something in them that cannot be used; empty if all can."""
    labels = {field.key: field.label for reply in answered for field in reply.sheet.worksheet.all_fields()}
    keys = dict.fromkeys(problem.key for reply in answered for problem in reply.sheet.problems)
    return f"See: {'; '.join(labels.get(key, key) for key in keys)}." if keys else ""


def _link(answered: list[Answered], given: Entries, address: str, system: System) -> str:
    """One link for the whole question: a worksheet's, or the plan's where it asks for several."""
    if len(answered) > 1:
        sheets = [reply.sheet.worksheet for reply in answered]
        asked = {worksheet.plan_key(field.key) for worksheet in sheets for field in worksheet.all_fields()}
        known = {key: entry for key, entry in given.items() if key in asked}
        about = [worksheet.key for worksheet in sheets]
        return address + (record.link_of(Entries(known, given.reader), system, about) if known else "")
    (reply,) = answered
    return address + (link_of(reply.sheet) if reply.given else f"#{reply.sheet.worksheet.key}")


# --- the boxes


def _form(answered: list[Answered]) -> Markup:
    """The boxes of the question, empty, each once; those of cases that are not chosen are hidden."""
    placed: set[str] = set()
    groups = []
    for reply in answered:
        asked: dict[str, Field] = {}
        worksheet = reply.sheet.worksheet
        for field in map(worksheet.in_plan, (*reply.sheet.course.fields, *worksheet.all_fields())):
            if field.key not in placed:
                asked.setdefault(field.key, field)
        placed.update(asked)
        in_fold = {key for key, field in asked.items() if _stays_folded(field, reply.sheet)}
        groups.append(
            {
                "title": reply.sheet.worksheet.question if len(answered) > 1 else "",
                "asked": [field for key, field in asked.items() if key not in in_fold],
                "folded": [field for key, field in asked.items() if key in in_fold],
            }
        )
    return fill("desk_form.html", groups=groups)


def _stays_folded(field: Field, sheet: Sheet) -> bool:
    """Whether the worksheet itself folds a box; in cases that are not chosen yet, one that has a usual value."""
    asked_now = {asked.key for asked in sheet.course.fields}
    if field.key in asked_now:
        return field.key in folding.folded(sheet.worksheet, sheet.course)
    return field.optional or (field.typical is not None and field.kind != "choice")


def _states(answered: list[Answered], told: Mapping[str, list[Problem]]) -> dict[str, dict[str, str]]:
    """For each box that is asked now: what stands in it, its unit in words, what is taken if it is empty, its error."""
    states: dict[str, dict[str, str]] = {}
    for reply in answered:
        problems = told[reply.sheet.worksheet.key]
        for name, state in view.field_states(reply.sheet, reply.given, problems).items():
            key = reply.sheet.worksheet.plan_key(name)
            if key in states:
                continue
            taken = reply.sheet.inputs.get(name)
            states[key] = {
                "value": state["value"] if name in reply.given else "",
                "unit": state["unit"],
                "measure": state["measure"],
                "note": _note(taken, reply) if taken and name not in reply.given else "",
                "error": state["error"],
            }
    return states


def _note(taken: Input, reply: Answered) -> str:
    computed = reply.computed.get(reply.sheet.worksheet.plan_key(taken.field.key))
    by = WORKSHEETS[computed.worksheet].question if computed else ""
    return str(fill("desk_note.html", taken=taken, shown=taken.shown(reply.sheet.system), by=by))


# --- the answer


def _plates(answered: list[Answered], told: Mapping[str, list[Problem]]) -> list[str]:
    return [_plate(reply, told[reply.sheet.worksheet.key]) for reply in answered if reply.given]


def _plate(reply: Answered, told: list[Problem]) -> str:
    """The answer on its plate; never one that rests on a number of the worked example."""
    if not reply.lacks or reply.sheet.problems:
        return str(view.plate(reply.sheet, told))
    return str(view.empty_plate(reply.sheet, f"Still needed: {'; '.join(reply.lacks)}."))


def _urgent(answered: list[Answered], low: list[Said]) -> list[Said]:
    """What stops the question, makes it unworkable or is to be seen to, the gravest first."""
    return in_order([*low, *(said for reply in answered if reply.told for said in of_sheet(reply.sheet, ""))])


def _stock(asked: Mapping[str, Any], answered: list[Answered], entries: Mapping[str, Entry], reader: Reader) -> str:
    """Of each shelf the smallest item that passes, where a worksheet of the question finds that it matters."""
    if not asked.get("stock"):
        return ""
    shop = stock.shop_of(str(asked["stock"]))
    told = Entries(entries, reader)
    lines = [
        sentence
        for reply in answered
        if reply.told
        for shelf in shop["shelves"]
        for sentence in stock.suggestion(shop, shelf, reply.sheet, told)
    ]
    return "".join(f"<p>{escape(line)}</p>" for line in dict.fromkeys(lines))


def _message(answered: list[Answered], said: list[Said], link: str, signed: list[str], reader: Reader) -> str:
    """A few plain lines for a customer, in the sheets' units."""
    lines = [" ".join(reply.sheet.worksheet.question for reply in answered)]
    if any(reply.given for reply in answered):
        grave = [sentence for sentence in said if sentence.level != "caution"]
        cautions = [sentence for sentence in said if sentence.level == "caution"]
        lines += [f"{LEVEL_WORDS[said.level]}: {said.title} {said.text}" for said in grave]
        lines += [_result(reply) for reply in answered if reply.given]
        lines += [f"{LEVEL_WORDS[said.level]}: {said.title} {said.text}" for said in cautions[:MOST_CAUTIONS]]
        if rest := len(cautions) - MOST_CAUTIONS if len(cautions) > MOST_CAUTIONS else 0:
            lines.append(f"{rest} more {'caution is' if rest == 1 else 'cautions are'} at the link.")
        lines += _known(answered, reader)
        lines.append(f"Open it with these numbers in place, and change any of them: {link}")
    else:
        lines.append(f"Put in your own numbers here: {link}")
    return "\n".join([*lines, *(line for line in signed if line)])


def _result(reply: Answered) -> str:
    headline = reply.sheet.headline
    label = headline.label if headline else reply.sheet.worksheet.question
    label += "" if label.endswith("?") else ":"
    if reply.lacks or headline is None:
        return f"{label} not worked out yet. We still need: {'; '.join(reply.lacks)}."
    judgement = reply.sheet.judgement
    judged = [judgement.text] if judgement and judgement.word == headline.shown else []
    # Whether it suits the house is not all: a customer asks for the tank as well.
    told = judged + ([reply.sheet.say] if not judged or reply.sheet.worksheet.outlook else [])
    return " ".join((f"{label} {headline.shown}{' (rough)' if reply.sheet.rough else ''}.", *told))


def _known(answered: list[Answered], reader: Reader) -> Iterator[str]:
    """Whose numbers these are: the customer's, the dealer's stock, or assumed, each with its value."""
    told: dict[str, dict[str, str]] = {"house": {}, "stock": {}, "assumed": {}}
    weighty = []
    for reply in answered:
        for key, taken in reply.sheet.inputs.items():
            whose = "stock" if taken.giver == "stock" else "house" if key in reply.given else "assumed"
            stands_in = whose == "assumed" and (taken.origin not in ("typical", "example") or taken.field.optional)
            if not stands_in and not (taken.origin == "example" and needs(taken)):
                value = _as_given(taken, reply, reader) if whose == "house" else taken
                told[whose].setdefault(key, f"{taken.field.label} {value.shown(reply.sheet.system)}")
            if reply.sheet.band and reply.sheet.band.matters_most == taken.field.label:
                weighty.append(key)
    words = {"house": "From what we know of your house", "stock": "From our stock", "assumed": "Assumed"}
    assumed = told["assumed"]
    named = sorted(assumed, key=lambda key: key not in weighty)[:MOST_ASSUMED]
    if more := len(assumed) - len(named):
        told["assumed"] = {key: assumed[key] for key in named} | {"": f"and {more} more, each at the link"}
    for whose, entries in told.items():
        if entries:
            yield f"{words[whose]}: {'; '.join(entries.values())}."


def _as_given(taken: Input, reply: Answered, reader: Reader) -> Input:
    """What the customer said, also where a higher need counts in its place."""
    if taken.origin != "computed":
        return taken
    return reader.read(taken.field, reply.given[taken.field.key]).value or taken
