"""A whole worksheet taken into another: the same laws, bindings, fields and cautions, so that both give one number.

A sketch that answers many questions at once takes from each worksheet the steps of the results it wants, together with
every caution, unworkable and stop of that worksheet and the steps that these rest on. What the sketch knows under its
own name, or has worked out already, is not asked or worked out again.
"""

import re
from collections.abc import Collection, Iterable, Mapping
from types import MappingProxyType
from typing import NamedTuple

from calc.engine.declare import Advice, AnyStep, DeclarationError, Field, Given, Must, Pick, Step, Worksheet
from calc.engine.sentences import pieces, placeholders

_NONE: Mapping[str, str] = MappingProxyType({})
_TOKENS = re.compile(r"'[^']*'|[a-z_]\w*")
_CHOICES = re.compile(r"(\w+) == '([^']*)'")


class Taken(NamedTuple):
    """What is taken from a worksheet, under the names of the one that takes it."""

    fields: tuple[Field, ...] = ()
    steps: tuple[AnyStep, ...] = ()
    givens: tuple[Given, ...] = ()
    advice: tuple[Advice, ...] = ()
    musts: tuple[Must, ...] = ()


class Taking:
    """A worksheet in the case `chosen` for it, about to be taken.

    `ours` maps names of it to names of ours that stand there instead; a choice that is ours stays open although it is
    `chosen`. `renamed` gives other names to what is its own. `known` are steps of ours that stand already: one of the
    same key must be the same step. With `prefix` its codes of advice begin so.
    """

    def __init__(
        self,
        sheet: Worksheet,
        chosen: Mapping[str, str] = _NONE,
        ours: Mapping[str, str] = _NONE,
        renamed: Mapping[str, str] = _NONE,
        known: Iterable[AnyStep] = (),
        prefix: str = "",
    ) -> None:
        self.sheet, self.prefix = sheet, prefix
        self.course = sheet.course(chosen)
        self.chosen = {key: option for key, option in chosen.items() if key not in ours}
        self.known = {step.key: step for step in known}
        self.ours = dict(ours)
        for field in self.course.fields:
            # What is the same as a number that we work out is that number.
            if field.same_as in self.ours or field.same_as in self.known:
                self.ours.setdefault(field.key, self.ours.get(field.same_as, field.same_as))
        self.renamed = renamed

    def take(
        self,
        want: Collection[str],
        fields: Iterable[Field] = (),
        where: str = "",
        without: Collection[str] = (),
        advised: bool = True,
    ) -> Taken:
        """Take the results `want`, and unless `advised` is false all advice but notes and the codes `without`.

        `fields` are asked in place of the worksheet's own. The advice holds only `where` a condition of ours does.
        Raises DeclarationError where a step of ours has the same key and is another one.
        """
        advice = [held for held in self.sheet.advice if advised and self._may_hold(held) and held.code not in without]
        needed = {*want, *(name for held in advice for name in _names_in(held))}
        steps: list[AnyStep] = []
        for step in reversed(self.course.steps):
            if step.key in needed and not self._stands(step):
                steps.append(self._step(step))
                needed.update(step.needs)
        needed |= {field.typical.on for field in self.course.fields if field.key in needed and field.typical}
        instead = {field.key: field for field in fields}
        asked = [field for field in self.course.fields if self._is_asked(field, needed)]
        return Taken(
            tuple(instead.get(field.key, self._field(field)) for field in asked),
            tuple(reversed(steps)),
            tuple(given for given in self.sheet.givens if given.key in needed and given.key not in self.ours),
            tuple(self._advice(held, where) for held in advice),
            tuple(must for must in self.sheet.musts if must.condition.names <= {field.key for field in asked}),
        )

    def _name(self, key: str) -> str:
        return self.ours.get(key) or self.renamed.get(key, key)

    def _stands(self, step: AnyStep) -> bool:
        """Whether a step of ours stands for it."""
        if step.key in self.ours:
            return True
        name = self._name(step.key)
        if name in self.known and not _same(self._step(step), self.known[name]):
            raise DeclarationError(f"{self.sheet.key}: {name} is another step than ours of that name: rename it")
        return name in self.known

    def _is_asked(self, field: Field, needed: Collection[str]) -> bool:
        used = field.key in needed
        return used and field.key not in self.ours and field.key not in self.chosen and field.key not in self.known

    def _may_hold(self, advice: Advice) -> bool:
        """Whether advice is more than a note, may hold in this case, and has there all that it names."""
        there = {given.key for given in self.sheet.givens} | {part.key for part in self.course.steps}
        there |= {field.key for field in self.course.fields}
        possible = all(self.chosen.get(key, value) == value for key, value in _CHOICES.findall(advice.when))
        return advice.level != "note" and possible and _names_in(advice) <= there

    def _step(self, step: AnyStep) -> AnyStep:
        if isinstance(step, Pick):
            return step._replace(key=self._name(step.key), on=self._name(step.on))
        binding = {name: self._name(source) for name, source in step.binding.items()}
        return Step(self._name(step.key), step.law, step.label, us=step.us, si=step.si, **binding)

    def _field(self, field: Field) -> Field:
        """The field; what is usual of it by a choice that was made for it is plainly usual."""
        typical = field.typical
        if typical is None or typical.on not in self.chosen:
            return field
        option = self.chosen[typical.on]
        plain = {
            part: text if isinstance(text, str) else text[option]
            for part, text in (("text", typical.text), ("low", typical.low), ("high", typical.high))
        }
        return field.but(typical=typical._replace(on="", **plain))

    def _advice(self, advice: Advice, where: str) -> Advice:
        when = _CHOICES.sub(lambda made: "1 == 1" if made[1] in self.chosen else made[0], advice.when)
        when = when.replace("1 == 1 and ", "")
        when = _TOKENS.sub(lambda token: self._name(token[0]), when)
        return advice._replace(
            code=f"{self.prefix}{advice.code}",
            when=f"{where} and ({when})" if where else when,
            title=self._sentence(advice.title),
            say=self._sentence(advice.say),
            zeroes=tuple(self._name(key) for key in advice.zeroes),
            stays=_TOKENS.sub(lambda token: self._name(token[0]), advice.stays),
        )

    def _sentence(self, template: str) -> str:
        return "".join(text + (f"{{{self._name(name)}}}" if name else "") for text, name in pieces(template))


def _names_in(advice: Advice) -> set[str]:
    return {*advice.condition.names, *placeholders(advice.title), *placeholders(advice.say), *advice.zeroes}


def _same(step: AnyStep, other: AnyStep) -> bool:
    """Whether two steps work out one thing from the same numbers."""
    if isinstance(step, Step) and isinstance(other, Step):
        return step.law is other.law and step.binding == other.binding
    return step == other


def together(*parts: Taken) -> Taken:
    """Several of them as one: what stands in two of them stands once."""
    advice: dict[tuple[str, str], Advice] = {}
    for held in (held for part in parts for held in part.advice):
        advice.setdefault((held.when, held.say), held)
    return Taken(
        tuple({field.key: field for part in reversed(parts) for field in reversed(part.fields)}.values())[::-1],
        tuple({step.key: step for part in parts for step in part.steps}.values()),
        tuple({given.key: given for part in parts for given in part.givens}.values()),
        tuple(advice.values()),
        tuple({must.that: must for part in parts for must in part.musts}.values()),
    )
