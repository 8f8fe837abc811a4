"""What makes the page's Python small: modules that nothing in the page uses, and lines that nobody reads there."""

from __future__ import annotations

import importlib.util
import marshal
from types import CodeType

# Modules that are asked for by name and never used: segno's writers of image files, since the page draws its own SVG,
# and all with which Jinja2 reads templates, since ours come compiled. Each is `HOLLOW` in its wheel.
HOLLOWED = (
    *("segno/writers.py", "segno/cli.py", "segno/helpers.py"),
    *("jinja2/bccache.py", "jinja2/compiler.py", "jinja2/lexer.py", "jinja2/parser.py"),
)
# The same in the standard library: nothing in the page waits for anything in Python, opens an archive other than a
# wheel, or takes apart the address of a host.
HOLLOWED_LIBRARY = ("asyncio/__init__.py", "ipaddress.py", "pyodide/webloop.py", "tarfile.py")
HOLLOW = '''"""Left out of the page: its names are there, and nothing is behind them."""


def __getattr__(name):
    if name.startswith("__"):
        raise AttributeError(name)
    return type(name, (), {})
'''
# Pyodide finds what it holds of JavaScript by the order in which it was taken up, so this one is taken up all the same.
TAKEN_UP = {"pyodide/webloop.py": "from pyodide_js._api import scheduleCallback\n"}
# Modules that nothing asks for: Jinja2's extensions, its sandbox, what examines templates, and what the hollow ones
# used.
LEFT_OUT = (
    *("jinja2/ext.py", "jinja2/sandbox.py", "jinja2/nativetypes.py", "jinja2/meta.py", "jinja2/constants.py"),
    *("jinja2/_identifier.py", "jinja2/idtracking.py", "jinja2/optimizer.py", "jinja2/visitor.py"),
)


def lean(compiled: bytes) -> bytes:
    """A module's byte code in which every line of a function counts as its first: that saves a sixth of the download.

    A traceback in the page then names the file, the function and where it begins.
    """
    head = len(importlib.util.MAGIC_NUMBER) + 12
    return compiled[:head] + marshal.dumps(_on_first_lines(marshal.loads(compiled[head:])))  # noqa: S302 - made here


def _on_first_lines(code: CodeType) -> CodeType:
    """The same code with a table of lines that says, for each eight units of it at most, that no line was passed."""
    units = len(code.co_code) // 2
    spans = [8] * (units // 8) + ([units % 8] if units % 8 else [])
    no_columns_no_step = b"".join(bytes([0x80 | 13 << 3 | span - 1, 0]) for span in spans)
    constants = tuple(_on_first_lines(part) if isinstance(part, CodeType) else part for part in code.co_consts)
    return code.replace(co_linetable=no_columns_no_step, co_qualname=code.co_name, co_consts=constants)
