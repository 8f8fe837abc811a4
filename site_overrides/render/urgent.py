"""What stands first in a record and in a message: every stop, all that cannot work, and the weightiest cautions."""

from collections.abc import Iterable, Iterator, Mapping
from types import MappingProxyType
from typing import NamedTuple

from calc.chosen import Chosen, Taken, fields
from calc.engine import offering
from calc.engine.declare import Worksheet
from calc.engine.plan import Entries
from calc.engine.settled import Raised
from calc.engine.sheet import Sheet
from calc.engine.words import LEVEL_WORDS, Check
from calc.units import System, show
from calc.worksheets import WORKSHEETS

MOST_CAUTIONS = 5  # told in full; the others are counted and named
NOT_OF_THIS_JOB = 5  # weights beside those of advice: what makes other answers wrong comes first
TOO_LOW = 4
NO_LEVELS: Mapping[str, set[str]] = MappingProxyType({})
SLIGHT = 1.0  # K: a need that is higher by less than this is told among the numbers, and not as a caution


class Said(NamedTuple):
    """A stop, what cannot work, or a caution: its words, where it comes from, and how much it weighs."""

    level: str
    title: str
    text: str
    where: str
    weight: int = 2
    cause: str = ""
    part: bool = False  # of a chain: it has the number, and advice also says what to do


class First(NamedTuple):
    """What is told first: one sentence, what is told in full, and the lesser cautions, of which only titles are."""

    verdict: str
    told: tuple[Said, ...]
    others: tuple[Said, ...]


def first(said: list[Said]) -> First:
    """All that is grave, and as many cautions as a reader takes in."""
    grave = [sentence for sentence in said if sentence.level != "caution"]
    cautions = [sentence for sentence in said if sentence.level == "caution"]
    return First(_verdict(said), (*grave, *cautions[:MOST_CAUTIONS]), tuple(cautions[MOST_CAUTIONS:]))


def _verdict(said: list[Said]) -> str:
    """The sentence at the head of a record."""
    stops = sum(sentence.level == "stop" for sentence in said)
    fails = sum(sentence.level == "unworkable" for sentence in said)
    cautions = sum(sentence.level == "caution" for sentence in said)
    if stops:
        return f"Stop: {_counted(stops, 'danger')} in this plan must be mended before a fire is lit."
    if fails:
        return f"This plan cannot work as it stands: {_counted(fails, 'thing')} must change first."
    if cautions:
        return f"Nothing here says stop; {_counted(cautions, 'caution')} must be seen to. That is no approval."
    return "None of the worksheets in this record says stop or caution. That is no approval: see what was not checked."


def _counted(count: int, thing: str) -> str:
    return f"{count} {thing}" if count == 1 else f"{count} {thing}s"


def urgent(chosen: Chosen, system: System) -> list[Said]:
    """Every stop, every plan that cannot work and every caution, also of worksheets that are left out of the record."""
    said: list[Said] = []
    places = {key: number for number, key in enumerate(chosen.sheets, 1)}
    levels = {taken.worksheet.key: {said.level for said in taken.sheet.advice} for taken in chosen.taken if taken.sheet}
    for taken in chosen.taken:
        place = places.get(taken.worksheet.key)
        where = f"Worksheet {place}" if place else taken.worksheet.question
        said += _of_worksheet(taken, where, levels)
    said += too_low(chosen.raised, chosen.given, system)
    said += _stale(chosen, system)
    return in_order(said or _tight(chosen))


def in_order(said: Iterable[Said]) -> list[Said]:
    """Each said once, the gravest first and of cautions the weightiest."""
    order = list(LEVEL_WORDS)
    once: dict[tuple[str, str], Said] = {}
    for sentence in said:  # several worksheets may say the same of one number
        once.setdefault((sentence.level, sentence.title), sentence)
    return _once_a_cause(sorted(once.values(), key=lambda said: (order.index(said.level), -said.weight, said.part)))


def _once_a_cause(said: list[Said]) -> list[Said]:
    """One thing to mend is one line: the gravest tells it, and names what else is as grave for the same cause."""
    leads: dict[str, Said] = {}
    also: dict[str, list[str]] = {}
    told = []
    for sentence in said:
        lead = leads.setdefault(sentence.cause, sentence) if sentence.cause else sentence
        if lead is sentence or (lead.part and lead.level != sentence.level):
            told.append(sentence)
        elif lead.level == sentence.level:
            also.setdefault(sentence.cause, []).append(sentence.title.removesuffix("."))
    return [
        sentence._replace(text=f"{sentence.text} For the same cause: {'; '.join(also[sentence.cause])}.")
        if sentence.cause in also and leads[sentence.cause] is sentence
        else sentence
        for sentence in told
    ]


def _of_worksheet(taken: Taken, where: str, levels: Mapping[str, set[str]]) -> list[Said]:
    said = [Said("caution", "It could not be worked out.", text, where, NOT_OF_THIS_JOB) for text in taken.problems]
    if taken.sheet is None:
        return said
    of_it = of_sheet(taken.sheet, where, levels)
    # A part of a chain is judged by what somebody gave alone.
    if not (taken.printed or taken.worksheet.checks) and (assumed := len(taken.sheet.assumed)):
        rough = f" Rough: {_counted(assumed, 'number')} there {'is' if assumed == 1 else 'are'} assumed."
        of_it = [each._replace(text=each.text + rough) for each in of_it]
    said += of_it
    if taken.printed and taken.lacks:
        stands = "number stands" if len(taken.lacks) == 1 else "numbers stand"
        text = f"Nobody gave {', '.join(taken.lacks)}; the worked example's {stands} in."
        said.append(Said("caution", "This is not worked out for this job.", text, where, NOT_OF_THIS_JOB))
    return said


def of_sheet(sheet: Sheet, where: str, levels: Mapping[str, set[str]] = NO_LEVELS) -> list[Said]:
    """What one worksheet stops, calls unworkable or warns of; of a chain every link that fails.

    `levels` are those of what other worksheets say: a link that fails by their number is told by them.
    """
    said = [
        Said(advice.level, advice.title, advice.text, where, advice.weight, advice.cause)
        for advice in sheet.advice
        if advice.level != "note"
    ]
    for verdict in sheet.verdicts:
        told_by = _judged_by(sheet.worksheet, verdict.key)
        told = any(verdict.status in levels.get(worksheet, ()) for worksheet in told_by)
        if verdict.status in ("stop", "unworkable") and not told:
            title = f"{verdict.label}: {verdict.number}."
            cause = _check(sheet.worksheet, verdict.key).cause
            said.append(Said(verdict.status, title, verdict.text, where, cause=cause, part=True))
    return said


def _tight(chosen: Chosen) -> Iterator[Said]:
    """The links of a chain that hold with little to spare, told where nothing else is told."""
    for taken in chosen.taken:
        for verdict in taken.sheet.verdicts if taken.sheet else ():
            if verdict.status == "tight":
                title = f"Little to spare. {verdict.label}: {verdict.number}."
                yield Said("caution", title, verdict.text, taken.worksheet.question)


def _check(worksheet: Worksheet, key: str) -> Check:
    return next(check for check in worksheet.checks if check.key == key)


def _judged_by(worksheet: Worksheet, key: str) -> set[str]:
    """The worksheets whose numbers decide a link of the chain."""
    check = _check(worksheet, key)
    names = check.conditions[0].names if check.fails else ()
    return {takes.worksheet for takes in worksheet.takes if takes.key in names}


def too_low(raised: Iterable[Raised], given: Entries, system: System) -> list[Said]:
    """A caution for every number that was given lower than a worksheet of the same plan needs it."""
    said = []
    for too_low in raised:
        value = given.value(too_low.field, too_low.given)
        if too_low.need - (given.si(too_low.field, too_low.given) or 0) <= SLIGHT:
            continue
        need, told = (
            show(too_low.need, too_low.field.unit(system), system, 3),
            value.shown(system) if value else too_low.given.text,
        )
        title = f"{too_low.field.label} is given too low."
        text = f"It was given as {told}; {need} are needed, and that counts here."
        said.append(Said("caution", title, text, WORKSHEETS[too_low.worksheet].question, TOO_LOW))
    return said


def _stale(chosen: Chosen, system: System) -> list[Said]:
    """A caution for every number that its worksheet would now compute differently."""
    said = []
    for key, now in offering.stale(chosen.given, WORKSHEETS, fields()).items():
        field, entry = fields()[key][0], chosen.given[key]
        had, gives = (chosen.given.value(field, each) for each in (entry, entry._replace(text=now)))
        shown = gives.shown(system) if gives else "no result"
        text = f"The plan has {had.shown(system) if had else entry.text}; its worksheet now gives {shown}."
        title = f"{field.label} is out of date."
        said.append(Said("caution", title, text, WORKSHEETS[entry.worksheet].question, NOT_OF_THIS_JOB))
    return said
