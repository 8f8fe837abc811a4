"""Parts the interpreter's file in two: what a page's Python runs, and the rest, for what it hardly ever does.

Of the interpreter that comes from npm our code runs less than a quarter: nobody unpacks bzip2 here, or writes
Shift-JIS. What ran when every worksheet was worked out (`list_used.mjs`, with the file that `marked` makes), what that
calls, and what is small comes with the page, as `pyodide.asm.wasm`; the other functions stand in `rest.wasm`. In the
place of each the first part has a few instructions that have `interpreter_rest.js` bring the second part, once, and
then call it. So nothing is left out: a function that nobody foresaw costs one more request.

Both parts count functions, types and globals as the whole does, so bodies move without being read. They call each other
through a table that the first part makes.

Constants go the same way. Some are zero until the rest is there, the tables of Chinese, Japanese and Korean encodings
above all: those that a module comes to which was never imported, and that no function of the first part can come to.
What a function can come to is what its instructions name, and what is named there in turn; `CLOSE` is added, since a
compiler may name a place before the one it means.

And what the interpreter works out at each start, though it is always the same, is worked out here: the addresses in
its data (`__wasm_apply_data_relocs`, a fifth of what runs). What it lends to libraries in C, of which the page has
none, goes, and with it what nothing calls then. So go the addresses of the loader's drawing functions, for each of
which a start had a small module compiled.
"""

from __future__ import annotations

import bisect
import math
import re
from collections import Counter, defaultdict
from collections.abc import Collection, Iterable, Iterator
from typing import NamedTuple

import wasm
from wasm import sized, unsigned

BETWEEN = "rest "  # before the number of a table, the name under which the first part lends it to the rest
MARK = "ran "  # before the number of a function, the name of the global that says whether it ran
RELOCATING = "__wasm_apply_data_relocs"
ADDRESSES = "GOT.func"  # where the interpreter borrows the addresses of the loader's functions from
MEMORY_BASE, TABLE_BASE = "__memory_base", "__table_base"
NEVER_CALLED = bytes([0, wasm.UNREACHABLE, wasm.END])  # a function's body
MODULES = "PyImport_Inittab"  # the name of the address of the list of the interpreter's own modules
# Bytes behind a place that a function names which count as named, too: `table[letter - 'a']` names a place before it.
CLOSE = 4096
# Functions of fewer bytes come along though none was seen to run: those called by address, and from call to call those
# that a function calls which comes. They are 50 kB of 1.4 MB, and hardly a page has to ask for the rest.
SMALL = 400
WORTH = 4096  # bytes of constants in a row that are worth a place of their own in the rest
# A definition of what the interpreter lends, in its loader: `var _f=Module["_f"]=wasmExports["f"];` or an address.
LENDING = re.compile(r'(?<=[;}])var (_[\w$]+)=Module\["\1"\]=(?:wasmExports\["[\w$]+"\]|\d+);')
WORD = re.compile(r"[A-Za-z_$][\w$]*")


class Seen(NamedTuple):
    """What was seen when all of our code ran: the functions, and where memory and table begin."""

    functions: list[int]
    memory_base: int
    table_base: int


class Parts(NamedTuple):
    """The loader and the two parts of the interpreter."""

    loader: str
    main: bytes
    rest: bytes
    away: list[tuple[int, int]]  # where in memory the constants lie that come with the rest: from and to


def marked(binary: bytes) -> bytes:
    """The same interpreter, in which a global of its own says of each function whether it ran."""
    whole = _Whole(binary)
    count, first = len(whole.bodies), whole.borrowed_globals + len(whole.variables)
    marks = [wasm.Variable(wasm.I32, 1, 0)] * count
    names = [wasm.lent(f"{MARK}{whole.borrowed + place}", wasm.GLOBAL, first + place) for place in range(count)]
    bodies = []
    for place, body in enumerate(whole.bodies):
        begin = wasm.first_instruction(body)
        mark = bytes([wasm.CONSTANT, 1, wasm.GLOBAL_SET]) + unsigned(first + place)
        bodies.append(sized(body[:begin] + mark + body[begin:]))
    lent = [wasm.lent(*export) for export in whole.exports]
    changed = {
        wasm.GLOBALS: wasm.listed([wasm.written(variable) for variable in [*whole.variables, *marks]]),
        wasm.EXPORTS: wasm.listed(lent + names),
        wasm.CODE: wasm.listed(bodies),
    }
    return wasm.joined({number: changed.get(number, content) for number, content in whole.sections.items()})


def parted(binary: bytes, loader: str, callers: str, seen: Seen) -> Parts:
    """The loader and the interpreter in its two parts.

    `callers` is what, beside the loader itself, calls the interpreter by name. Raises ValueError where the interpreter
    is not made as this module expects.
    """
    whole = _Whole(binary)
    loader, lent = _lend_less(loader, callers, whole)
    unused = whole.code.keys() - _callable(whole, lent)
    kept = _kept(whole, [*seen.functions, *(export.number for export in lent if export.kind == wasm.FUNCTION)]) - unused
    values = _settle(whole, seen)
    data = _relocated(whole, seen)
    away = list(_only_for_the_rest(whole, kept, lent, data, values, seen, unused))
    whole.leave_out(unused)
    parts = _Parting(whole, kept, lent, values, data, away, seen).parts()
    return Parts(loader, *parts, [(seen.memory_base + start, seen.memory_base + end) for start, end in away])


class _Whole:
    """The interpreter as it comes, taken apart. Functions and globals are counted from the borrowed ones on."""

    def __init__(self, binary: bytes) -> None:
        self.sections = wasm.sections(binary)
        self.imports = wasm.imports(self.sections[wasm.IMPORTS])
        kinds = Counter(entry.kind for entry in self.imports)
        self.borrowed, self.borrowed_globals = kinds[wasm.FUNCTION], kinds[wasm.GLOBAL]
        self.tables = wasm.tables(self.sections[wasm.TABLES])
        self.variables = wasm.variables(self.sections[wasm.GLOBALS])
        self.exports = wasm.exports(self.sections[wasm.EXPORTS])
        self.bodies = wasm.bodies(self.sections[wasm.CODE])
        self.types = wasm.numbers(self.sections[wasm.FUNCTIONS])
        self.parameters = wasm.parameters(self.sections[wasm.TYPES])
        self.code = {self.borrowed + place: list(wasm.instructions(body)) for place, body in enumerate(self.bodies)}
        self.relocating = next(export.number for export in self.exports if export.name == RELOCATING)
        self.setting = wasm.Reader(self.sections[wasm.START]).number()  # sets globals, and clears memory
        bases = [entry.name for entry in self.imports if entry.kind == wasm.GLOBAL]
        self.memory_base, self.table_base = bases.index(MEMORY_BASE), bases.index(TABLE_BASE)
        self.in_table = self._in_table()

    def leave_out(self, functions: Iterable[int]) -> None:
        """Empty functions that nothing calls, and borrow no address that only they asked for."""
        for function in functions:
            self.bodies[function - self.borrowed] = NEVER_CALLED
            self.code[function] = list(wasm.instructions(NEVER_CALLED))
        used = set().union(*(self.named(function, wasm.GLOBAL_GET) for function in self.code))
        places = [place for place, entry in enumerate(self.imports) if entry.kind == wasm.GLOBAL]
        base = self.imports[places[self.memory_base]]
        for number, place in enumerate(places):
            if self.imports[place].module == ADDRESSES and number not in used:
                self.imports[place] = base  # which is there in any case: so the globals keep their numbers

    def data(self) -> bytes:
        """The one stretch of data, which begins at the base of the memory."""
        reader = wasm.Reader(self.sections[wasm.DATA])
        reader.expect(1, 0, wasm.GLOBAL_GET, self.memory_base, wasm.END)
        return reader.sized()

    def _in_table(self) -> list[int]:
        """The functions of the one stretch of the table of all functions."""
        reader = wasm.Reader(self.sections[wasm.ELEMENTS])
        reader.expect(1, 0, wasm.GLOBAL_GET, self.table_base, wasm.END)
        found = wasm.numbers(reader.content[reader.at :])
        if min(found) < self.borrowed:
            raise ValueError("The interpreter's table holds a function that it borrows.")
        return found

    def is_small(self, function: int) -> bool:
        """Whether a function is small and brings no constants."""
        brings = self.memory_base in self.named(function, wasm.GLOBAL_GET)
        return self.length(function) < SMALL and not brings

    def length(self, function: int) -> int:
        """The bytes of a function."""
        return len(self.bodies[function - self.borrowed])

    def called(self, functions: Iterable[int]) -> set[int]:
        """The functions of the interpreter's own that these call."""
        found = set().union(*(self.named(function, wasm.CALL) for function in functions))
        return {function for function in found if function >= self.borrowed}

    def with_called(self, functions: Iterable[int], smaller: float = math.inf) -> set[int]:
        """These functions with those of fewer bytes that they call, from call to call."""
        found = fresh = set(functions)
        while fresh:
            fresh = {function for function in self.called(fresh) - found if self.length(function) < smaller}
            found = found | fresh
        return found

    def named(self, function: int, code: int) -> set[int]:
        """What a function's instructions of one kind name."""
        return {operand for found, operand in self.code[function] if found == code}


# --- what comes with the page -------------------------------------------------------------------------------------


def _lend_less(loader: str, callers: str, whole: _Whole) -> tuple[str, list[wasm.Export]]:
    """The loader without definitions that nothing uses, and the exports that are still asked for."""
    counted = Counter(WORD.findall(loader))
    own = Counter(WORD.findall("".join(found[0] for found in LENDING.finditer(loader))))
    elsewhere = set(WORD.findall(callers)) | {word for word, times in counted.items() if times > own[word]}
    borrowed = {entry.name for entry in whole.imports if entry.module.startswith("GOT.")}

    def wanted(name: str) -> bool:
        return name in elsewhere or f"_{name}" in elsewhere or name in borrowed or name == RELOCATING

    def shortened(found: re.Match[str]) -> str:
        return found[0] if wanted(found[1][1:]) else ""

    return LENDING.sub(shortened, loader), [export for export in whole.exports if wanted(export.name)]


def _callable(whole: _Whole, lent: list[wasm.Export]) -> set[int]:
    """The functions that something may call: by a name that is lent, by address, or from one of these."""
    by_name = {export.number for export in lent if export.kind == wasm.FUNCTION}
    return whole.with_called({*by_name, *whole.in_table, whole.setting, whole.relocating})


def _kept(whole: _Whole, used: Iterable[int]) -> set[int]:
    """The functions that come with the page: those used, those that they call, small ones, some that share a global.

    Used are those that ran and those that the loader asks for by name. What is called by address, as a type's way to
    free its objects, may be called at any moment and is mostly small. A global that changes while Python runs is the
    first part's alone, and so is all that reads it.
    """
    kept = {*used, whole.setting, whole.relocating}
    kept |= whole.called(kept)
    kept |= {function for function in whole.in_table if whole.is_small(function)}
    kept = whole.with_called(kept, SMALL)
    changing = _changing(whole)
    touching = {wasm.GLOBAL_GET, wasm.GLOBAL_SET}
    kept |= {
        function
        for function, code in whole.code.items()
        if any(found in touching and operand in changing for found, operand in code)
    }
    return kept


def _changing(whole: _Whole) -> set[int]:
    """The globals of the interpreter's own that something sets after the start."""
    found: set[int] = set()
    for function in whole.code.keys() - {whole.setting}:
        found |= whole.named(function, wasm.GLOBAL_SET)
    return {number for number in found if number >= whole.borrowed_globals}


# --- what is the same at each start -------------------------------------------------------------------------------


class _Sum(NamedTuple):
    """A number as a straight run of instructions works it out: so many times each base, and a constant.

    Or it is what a borrowed global holds, which only the loader knows.
    """

    memory_bases: int
    table_bases: int
    constant: int
    borrowed: int = 0

    def value(self, seen: Seen) -> int:
        return self.memory_bases * seen.memory_base + self.table_bases * seen.table_base + self.constant


def _worked_out(whole: _Whole, function: int) -> Iterator[tuple[int, int, list[_Sum]]]:
    """What a function without loops and choices stores or sets: the instruction, its operand, and the sums it takes."""
    stack: list[_Sum] = []
    bases = {whole.memory_base: _Sum(1, 0, 0), whole.table_base: _Sum(0, 1, 0)}
    for code, operand in whole.code[function]:
        if code == wasm.GLOBAL_GET:
            stack.append(bases.get(operand, _Sum(0, 0, 0, operand)))
        elif code == wasm.CONSTANT:
            stack.append(_Sum(0, 0, operand))
        elif code in {wasm.ADD, wasm.SUBTRACT}:
            second, first = stack.pop(), stack.pop()
            sign = 1 if code == wasm.ADD else -1
            stack.append(_Sum(*(one + sign * other for one, other in zip(first, second, strict=True))))
        elif code == wasm.GLOBAL_SET:
            yield code, operand, [stack.pop()]
        elif code == wasm.STORE:
            value, place = stack.pop(), stack.pop()
            yield code, operand, [place, value]
        elif code == wasm.MANY:  # memory is filled: three numbers
            del stack[-3:]
        elif code != wasm.END:
            raise ValueError(f"The interpreter prepares itself with an instruction that is not known: {code:#x}.")


def _settle(whole: _Whole, seen: Seen) -> list[int]:
    """The values of the interpreter's own globals once it has prepared itself."""
    values = [variable.value for variable in whole.variables]
    for code, number, sums in _worked_out(whole, whole.setting):
        if code == wasm.GLOBAL_SET:
            values[number - whole.borrowed_globals] = sums[0].value(seen)
    return values


class _Data(NamedTuple):
    """The interpreter's data with its addresses filled in, and where in it one stands for another place of it."""

    content: bytes
    addresses: dict[int, int]  # place: place
    functions: dict[int, int]  # place: number of a function in the table of all functions
    later: list[bytes]  # instructions that fill in what only the loader knows


def _relocated(whole: _Whole, seen: Seen) -> _Data:
    content = bytearray(whole.data())
    addresses, functions, later = {}, {}, []
    for _, offset, (place, value) in _worked_out(whole, whole.relocating):
        at = place.constant + offset
        if value.borrowed:
            if value != _Sum(0, 0, 0, value.borrowed):
                raise ValueError("The interpreter reckons with what only the loader knows.")
            taken = bytes([wasm.GLOBAL_GET]) + unsigned(value.borrowed)
            later.append(constant(seen.memory_base + at) + taken + bytes([wasm.STORE, 2, 0]))
            continue
        content[at : at + 4] = (value.value(seen) % 2**32).to_bytes(4, "little")
        if value.memory_bases:
            addresses[at] = value.constant
        elif value.table_bases:
            functions[at] = value.constant
    return _Data(bytes(content), addresses, functions, later)


# --- constants that only the rest can come to ---------------------------------------------------------------------


def _only_for_the_rest(
    whole: _Whole,
    kept: set[int],
    lent: list[wasm.Export],
    data: _Data,
    values: list[int],
    seen: Seen,
    unused: set[int],
) -> Iterator[tuple[int, int]]:
    """Stretches of constants, from and to, to which no function of the first part comes.

    They are those of modules that are never imported, and of functions that nothing calls.
    """
    every = {function: _places(whole, function, values, seen) for function in whole.code}
    things = sorted({0}.union(*every.values(), data.addresses.values()))
    surely = {function: _surely(whole, function) for function in whole.code}
    outside = {
        values[export.number - whole.borrowed_globals] - seen.memory_base for export in lent if _is_own(whole, export)
    }
    named = set().union(outside, *(every[function] for function in kept))
    first = _Way(whole, every, things, data).reached(places=named)
    others = _Way(whole, surely, things, data).reached(
        functions=unused.union(_beginning(whole, data)) - kept, follow=whole.code.keys() - kept
    )
    constants = min(data.addresses)  # before the first address that is filled in, nothing is ever written
    for run in _runs(len(things), first):
        own = [thing for thing in run if thing in others]
        if own:
            start = things[own[0]]
            start = max([start, *(place + CLOSE for place in named if place <= start)])
            end = min(things[own[-1] + 1] if own[-1] + 1 < len(things) else constants, constants)
            if end - start >= WORTH:
                yield start, end


def _runs(count: int, dividing: set[int]) -> Iterator[range]:
    """The numbers below `count` in runs between those that divide them."""
    start = 0
    for number in [*sorted(dividing), count]:
        yield range(start, number)
        start = number + 1


def _is_own(whole: _Whole, export: wasm.Export) -> bool:
    return export.kind == wasm.GLOBAL and export.number >= whole.borrowed_globals


def _places(whole: _Whole, function: int, values: list[int], seen: Seen) -> set[int]:
    """The places in the data that a function's instructions may name: rather too many than too few."""
    if function in {whole.relocating, whole.setting}:
        return set()
    named = set()
    for code, operand in whole.code[function]:
        if code == wasm.CONSTANT or wasm.FIRST_MEMORY <= code <= wasm.LAST_MEMORY:
            named.add(operand)
        elif code == wasm.GLOBAL_GET and operand >= whole.borrowed_globals:
            named.add(values[operand - whole.borrowed_globals] - seen.memory_base)
    return {place for place in named if 0 <= place < len(whole.sections[wasm.DATA])}


def _surely(whole: _Whole, function: int) -> set[int]:
    """The places in the data that a function's instructions name without a doubt: rather too few than too many."""
    code = whole.code[function]
    return {
        operand
        for (before, number), (instruction, operand), (after, _) in zip(code, code[1:], code[2:], strict=False)
        if instruction == wasm.CONSTANT and after == wasm.ADD
        if before in wasm.FROM_LOCAL or (before, number) == (wasm.GLOBAL_GET, whole.memory_base)
    }


def _beginning(whole: _Whole, data: _Data) -> Iterator[int]:
    """The functions with which the interpreter's own modules begin."""
    table = next(export for export in whole.exports if export.name == MODULES)
    at = whole.variables[table.number - whole.borrowed_globals].value
    at = data.addresses[at]
    while at in data.addresses:  # pairs of a name and a function
        if at + 4 in data.functions:  # some have none
            yield whole.in_table[data.functions[at + 4]]
        at += 8


class _Way:
    """From functions and places in the data to all that they name, and what is named there in turn."""

    def __init__(self, whole: _Whole, places: dict[int, set[int]], things: list[int], data: _Data) -> None:
        self.whole, self.places, self.things = whole, places, things
        self.leading: dict[int, set[int]] = defaultdict(set)
        self.calling: dict[int, set[int]] = defaultdict(set)
        for at, place in data.addresses.items():
            self.leading[self._thing(at)].add(self._thing(place))
        for at, number in data.functions.items():
            self.calling[self._thing(at)].add(whole.in_table[number])

    def _thing(self, place: int) -> int:
        return bisect.bisect_right(self.things, place) - 1

    def reached(
        self, places: Iterable[int] = (), functions: Iterable[int] = (), follow: Collection[int] = ()
    ) -> set[int]:
        """The things in the data, by number, that can be come to; of functions only those to `follow`."""
        things = {self._thing(place) for place in places}
        waiting = [*things]
        passed = set(functions)
        calls = [*passed]
        while waiting or calls:
            if waiting:
                thing = waiting.pop()
                more, called = self.leading[thing], self.calling[thing]
            else:
                function = calls.pop()
                more = {self._thing(place) for place in self.places[function]}
                called = self.whole.named(function, wasm.CALL)
            waiting += more - things
            things |= more
            fresh = {function for function in called - passed if function in follow}
            calls += fresh
            passed |= fresh
        return things


# --- the two parts ------------------------------------------------------------------------------------------------


class _Parting:
    """Writes the two parts. Each has the bodies of its own functions; for others that it calls it asks the table."""

    def __init__(
        self,
        whole: _Whole,
        kept: set[int],
        lent: list[wasm.Export],
        values: list[int],
        data: _Data,
        away: list[tuple[int, int]],
        seen: Seen,
    ) -> None:
        self.whole, self.lent, self.values, self.data, self.away, self.seen = whole, lent, values, data, away, seen
        self.kept = kept
        self.imports = [wasm.borrowed(*entry) for entry in whole.imports]
        others = whole.code.keys() - kept
        entries = {export.number for export in lent if export.kind == wasm.FUNCTION} | set(whole.in_table)
        self.called = sorted(whole.called(others) & kept)  # by the rest, in the first part
        self.asked = sorted((whole.called(kept) | entries) & others)  # by the first part, in the rest
        # The last place in the table holds what brings the rest, and afterwards what does nothing.
        self.places = {function: place for place, function in enumerate([*self.called, *self.asked])}
        self.bringing = len(self.places)
        self.nothing = whole.parameters.index(-1)
        self.table = 1 + len(whole.tables)
        if any(code == wasm.REFERENCE_FUNCTION for code_of in whole.code.values() for code, _ in code_of):
            raise ValueError("The interpreter hands on functions in a way that is not foreseen.")

    def parts(self) -> tuple[bytes, bytes]:
        return self._main(), self._rest()

    def _main(self) -> bytes:
        whole = self.whole
        tables = [*whole.tables, self._table()]
        lent = [wasm.lent(*export) for export in self.lent]
        lent += [wasm.lent(f"{BETWEEN}{place}", wasm.TABLE, 1 + place) for place in range(len(tables))]
        elements = whole.sections[wasm.ELEMENTS][1:]
        changed = {
            wasm.IMPORTS: wasm.listed(self.imports),
            wasm.TABLES: wasm.listed(tables),
            wasm.EXPORTS: wasm.listed(lent),
            wasm.ELEMENTS: wasm.listed([elements, self._elements(0, self.called)]),
            wasm.CODE: wasm.listed([sized(self._body_in_main(function)) for function in whole.code]),
            wasm.DATA: self._stretches(self._staying()),
        }
        return wasm.joined({number: changed.get(number, whole.sections[number]) for number in self._order()})

    def _rest(self) -> bytes:
        whole = self.whole
        tables = [*whole.tables, self._table()]
        borrowed = [
            sized(b"main") + sized(f"{BETWEEN}{place}".encode()) + bytes([wasm.TABLE]) + table
            for place, table in enumerate(tables)
        ]
        variables = [
            wasm.Variable(variable.type, variable.mutable, value)
            for variable, value in zip(whole.variables, self.values, strict=True)
        ]
        changed = {
            wasm.IMPORTS: wasm.listed(self.imports + borrowed),
            wasm.GLOBALS: wasm.listed([wasm.written(variable) for variable in variables]),
            wasm.ELEMENTS: wasm.listed([self._elements(len(self.called), [*self.asked, whole.relocating])]),
            wasm.CODE: wasm.listed([sized(self._body_in_rest(function)) for function in whole.code]),
            wasm.DATA: self._stretches(self.away),
        }
        left_out = {wasm.CUSTOM, wasm.TABLES, wasm.EXPORTS, wasm.START}  # the first part has prepared itself
        order = [number for number in self._order() if number not in left_out]
        return wasm.joined({number: changed.get(number, whole.sections[number]) for number in order})

    def _order(self) -> list[int]:
        """The sections of a part: the count of stretches of data goes, since no instruction asks for one."""
        return [number for number in self.whole.sections if number <= wasm.DATA]

    def _table(self) -> bytes:
        return bytes([wasm.FUNCTION_REFERENCE, 0]) + unsigned(self.bringing + 1)

    def _elements(self, place: int, functions: list[int]) -> bytes:
        """Functions in the table between the parts, from a place on."""
        head = bytes([2]) + unsigned(self.table) + constant(place) + bytes([wasm.END, 0])
        return head + wasm.listed([unsigned(function) for function in functions])

    def _stretches(self, stretches: Iterable[tuple[int, int]]) -> bytes:
        return wasm.listed(
            [
                bytes([0])
                + constant(self.seen.memory_base + start)
                + bytes([wasm.END])
                + sized(self.data.content[start:end])
                for start, end in stretches
            ]
        )

    def _staying(self) -> Iterator[tuple[int, int]]:
        at = 0
        for start, end in self.away:
            yield at, start
            at = end
        yield at, len(self.data.content)

    def _body_in_main(self, function: int) -> bytes:
        if function == self.whole.relocating:
            return bytes([0, *b"".join(self.data.later), wasm.END])
        if function in self.kept:
            return self.whole.bodies[function - self.whole.borrowed]
        bring = constant(self.bringing) + self._call(self.nothing)
        return self._elsewhere(function, bring)

    def _body_in_rest(self, function: int) -> bytes:
        if function == self.whole.relocating:
            return bytes([0, wasm.END])
        return (
            self._elsewhere(function, b"")
            if function in self.kept
            else self.whole.bodies[function - self.whole.borrowed]
        )

    def _elsewhere(self, function: int, before: bytes) -> bytes:
        """A body that hands its arguments to the same function in the other part; that fails if nothing calls it."""
        if function not in self.places:
            return NEVER_CALLED
        kind = self.whole.types[function - self.whole.borrowed]
        arguments = b"".join(
            bytes([wasm.LOCAL_GET]) + unsigned(number) for number in range(max(self.whole.parameters[kind], 0))
        )
        call = constant(self.places[function]) + self._call(kind)
        return bytes([0]) + before + arguments + call + bytes([wasm.END])

    def _call(self, kind: int) -> bytes:
        return bytes([wasm.CALL_INDIRECT]) + unsigned(kind) + unsigned(self.table)


def constant(number: int) -> bytes:
    """The instruction that hands on a constant."""
    return bytes([wasm.CONSTANT]) + wasm.signed(number)
