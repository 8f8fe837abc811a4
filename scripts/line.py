"""A line between this machine's server and a browser: so many bytes a second, shared by all requests, and a delay each.

Shaped here and not in the browser, whose own brakes leave out what workers ask for. There is no loss, no slow start and
no encryption, so a real line is slower than its figures say.
"""

from __future__ import annotations

import threading
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field

PIECE = 8192  # bytes that go out in one turn


def pieces(body: bytes) -> Iterator[bytes]:
    """A body in the pieces in which it goes out."""
    return (body[start : start + PIECE] for start in range(0, len(body), PIECE))


@dataclass
class Line:
    """`rate` in bytes a second for all requests together; `delay` in seconds before each answer begins."""

    rate: float
    delay: float
    _turn: threading.Lock = field(default_factory=threading.Lock)
    _free: float = 0.0  # the moment at which the last piece that was promised has gone

    def wait(self) -> None:
        """The way there and back."""
        time.sleep(self.delay)

    def send(self, write: Callable[[bytes], object], body: bytes) -> None:
        """Write a body in pieces, each when its turn on the line has come."""
        for piece in pieces(body):
            with self._turn:
                self._free = max(self._free, time.monotonic()) + len(piece) / self.rate
                due = self._free
            time.sleep(max(0.0, due - time.monotonic()))
            write(piece)
