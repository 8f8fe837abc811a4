"""Reads and writes a WebAssembly file as far as `interpreter.py` takes one apart.

Source of the numbers: WebAssembly Core Specification 2.0, W3C, 2025, chapter 5 (binary format); the instructions of
exceptions (0x06 to 0x09, 0x18, 0x19) are those of its legacy exception-handling proposal. What a file has beyond that
is an error, never a guess.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

HEADER = b"\0asm\1\0\0\0"
CUSTOM, TYPES, IMPORTS, FUNCTIONS, TABLES = range(5)  # sections
GLOBALS, EXPORTS, START, ELEMENTS, CODE, DATA = range(6, 12)
FUNCTION, TABLE, MEMORY, GLOBAL, TAG = range(5)  # what an import or export may be
FUNCTION_TYPE, I32, FUNCTION_REFERENCE = 0x60, 0x7F, 0x70

UNREACHABLE, END, CALL, CALL_INDIRECT = 0x00, 0x0B, 0x10, 0x11
LOCAL_GET, GLOBAL_GET, GLOBAL_SET, STORE, CONSTANT, ADD, SUBTRACT = 0x20, 0x23, 0x24, 0x36, 0x41, 0x6A, 0x6B
FROM_LOCAL = {0x20, 0x22}  # local.get and local.tee: the base is often kept in one
REFERENCE_FUNCTION, MANY = 0xD2, 0xFC
FIRST_MEMORY, LAST_MEMORY = 0x28, 0x3E  # loads and stores: alignment and offset

_BARE = {0x00, 0x01, 0x05, 0x0A, 0x0B, 0x0F, 0x19, 0x1A, 0x1B, 0xD1, *range(0x45, 0xC5)}
_WITH_INDEX = {0x07, 0x08, 0x09, 0x0C, 0x0D, 0x10, 0x18, *range(0x20, 0x27), 0xD2}
_BLOCKS = {0x02, 0x03, 0x04, 0x06}
_FOLLOWED_BY = {0x3F: 1, 0x40: 1, 0x43: 4, 0x44: 8, 0xD0: 1}  # so many bytes that say nothing here
_AFTER_MANY = {**dict.fromkeys(range(8), 0), 10: 2, 11: 1, 12: 2, 14: 2, 15: 1, 16: 1, 17: 1}


class Export(NamedTuple):
    """What a module lends under a name."""

    name: str
    kind: int
    number: int


class Entry(NamedTuple):
    """An import: where from, of which kind, and its type as it stands."""

    module: str
    name: str
    kind: int
    type: bytes


class Variable(NamedTuple):
    """A global of the module's own: its type, whether it may be set, and the constant with which it begins."""

    type: int
    mutable: int
    value: int


def unsigned(number: int) -> bytes:
    """A whole number from 0, in LEB128."""
    out = bytearray()
    while number > 127:
        out.append(number & 127 | 128)
        number >>= 7
    out.append(number)
    return bytes(out)


def signed(number: int) -> bytes:
    """A whole number, in LEB128."""
    out = bytearray()
    while not -64 <= number < 64:
        out.append(number & 127 | 128)
        number >>= 7
    out.append(number & 127)
    return bytes(out)


def sized(content: bytes) -> bytes:
    """Content behind its length."""
    return unsigned(len(content)) + content


def listed(parts: Sequence[bytes]) -> bytes:
    """Parts behind their number."""
    return unsigned(len(parts)) + b"".join(parts)


class Reader:
    """Goes through bytes from front to back."""

    def __init__(self, content: bytes, at: int = 0) -> None:
        self.content, self.at = content, at

    def byte(self) -> int:
        """The next byte."""
        self.at += 1
        return self.content[self.at - 1]

    def number(self) -> int:
        """The next whole number from 0."""
        total = shift = 0
        while True:
            byte = self.byte()
            total |= (byte & 127) << shift
            shift += 7
            if byte < 128:
                return total

    def signed(self) -> int:
        """The next whole number with a sign, which is the highest of the bits that are written."""
        start = self.at
        total = self.number()
        bits = 7 * (self.at - start)
        return total - (1 << bits) if total >> (bits - 1) else total

    def take(self, size: int) -> bytes:
        """So many of the next bytes."""
        self.at += size
        return self.content[self.at - size : self.at]

    def sized(self) -> bytes:
        """Bytes behind their length."""
        return self.take(self.number())

    def expect(self, *wanted: int) -> None:
        """Pass these bytes; raises ValueError where the file has others."""
        found = self.take(len(wanted))
        if found != bytes(wanted):
            raise ValueError(f"The interpreter's file has {found.hex()} where {bytes(wanted).hex()} was expected.")


def sections(binary: bytes) -> dict[int, bytes]:
    """The sections of a module by number, in their order. Raises ValueError if one comes twice."""
    reader = Reader(binary)
    reader.expect(*HEADER)
    found: dict[int, bytes] = {}
    while reader.at < len(binary):
        number = reader.byte()
        if number in found:
            raise ValueError(f"The interpreter's file has two sections {number}.")
        found[number] = reader.sized()
    return found


def joined(parts: dict[int, bytes]) -> bytes:
    """The module with these sections, in this order."""
    return HEADER + b"".join(bytes([number]) + sized(content) for number, content in parts.items())


def parameters(section: bytes) -> list[int]:
    """How many parameters each type of function has; -1 for those that have neither parameters nor results."""
    reader = Reader(section)
    found = []
    for _ in range(reader.number()):
        reader.expect(FUNCTION_TYPE)
        taken, given = reader.sized(), reader.sized()
        found.append(len(taken) if taken or given else -1)
    return found


def imports(section: bytes) -> list[Entry]:
    """What a module borrows."""
    reader = Reader(section)
    found = []
    for _ in range(reader.number()):
        module, name, kind = reader.sized().decode(), reader.sized().decode(), reader.byte()
        start = reader.at
        if kind in {TABLE, GLOBAL, TAG}:
            reader.byte()
        if kind == GLOBAL:
            reader.byte()
        elif kind in {TABLE, MEMORY}:
            limits(reader)
        else:
            reader.number()
        found.append(Entry(module, name, kind, reader.content[start : reader.at]))
    return found


def borrowed(module: str, name: str, kind: int, type_: bytes) -> bytes:
    """An import as it stands in its section."""
    return sized(module.encode()) + sized(name.encode()) + bytes([kind]) + type_


def limits(reader: Reader) -> bytes:
    """The smallest and, if there is one, the largest size of a table or memory, as they stand."""
    start = reader.at
    bounded = reader.byte() & 1
    for _ in range(1 + bounded):
        reader.number()
    return reader.content[start : reader.at]


def tables(section: bytes) -> list[bytes]:
    """The tables of the module's own: type of entry and limits."""
    reader = Reader(section)
    return [reader.take(1) + limits(reader) for _ in range(reader.number())]


def variables(section: bytes) -> list[Variable]:
    """The globals of the module's own. Raises ValueError for one that begins with more than a constant."""
    reader = Reader(section)
    found = []
    for _ in range(reader.number()):
        kind, mutable = reader.take(2)
        reader.expect(CONSTANT)
        found.append(Variable(kind, mutable, reader.signed()))
        reader.expect(END)
    return found


def written(variable: Variable) -> bytes:
    """A global as it stands in its section."""
    return bytes([variable.type, variable.mutable, CONSTANT]) + signed(variable.value) + bytes([END])


def exports(section: bytes) -> list[Export]:
    """What a module lends."""
    reader = Reader(section)
    return [Export(reader.sized().decode(), reader.byte(), reader.number()) for _ in range(reader.number())]


def lent(name: str, kind: int, index: int) -> bytes:
    """An export as it stands in its section."""
    return sized(name.encode()) + bytes([kind]) + unsigned(index)


def numbers(section: bytes) -> list[int]:
    """A list of numbers."""
    reader = Reader(section)
    return [reader.number() for _ in range(reader.number())]


def bodies(section: bytes) -> list[bytes]:
    """The functions' bodies: each its locals and its instructions."""
    reader = Reader(section)
    return [reader.sized() for _ in range(reader.number())]


def first_instruction(body: bytes) -> int:
    """Where a body's instructions begin, behind its locals."""
    reader = Reader(body)
    for _ in range(reader.number()):
        reader.number()
        reader.byte()
    return reader.at


def instructions(body: bytes) -> Iterator[tuple[int, int]]:
    """The instructions of a body, each with its index, constant or offset in memory, and 0 where it has none.

    Raises ValueError for one that is not known.
    """
    reader = Reader(body, first_instruction(body))
    while reader.at < len(body):
        code = reader.byte()
        operand = 0
        if code in _BARE:
            pass
        elif code in _WITH_INDEX:
            operand = reader.number()
        elif code == CONSTANT or code in _BLOCKS or code == CONSTANT + 1:
            operand = reader.signed()
        elif FIRST_MEMORY <= code <= LAST_MEMORY:
            reader.number()
            operand = reader.number()
        elif code == CALL_INDIRECT:
            operand = reader.number()
            reader.number()
        else:
            _pass(reader, code)
        yield code, operand


def _pass(reader: Reader, code: int) -> None:
    """Pass what follows an instruction of which nothing has to be known."""
    if code in _FOLLOWED_BY:
        reader.take(_FOLLOWED_BY[code])
    elif code == 0x0E:  # br_table
        for _ in range(reader.number() + 1):
            reader.number()
    elif code == 0x1C:  # select with types
        reader.sized()
    elif code == MANY and (more := reader.number()) in _AFTER_MANY:
        for _ in range(_AFTER_MANY[more]):
            reader.number()
    else:
        raise ValueError(f"The interpreter's file has an instruction that is not known: {code:#x}.")
