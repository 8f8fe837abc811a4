"""The interpreter in two parts does what the whole one does, and the first part holds what pages ask for."""

from __future__ import annotations

import json
import shutil
import subprocess
from pathlib import Path
from typing import Any

import pytest

import interpreter
import runtime
import server
import toolchain
import wasm
from tests.conftest import Visiting
from tests.test_runtime import desktop_answer, small_site, what_the_page_says  # noqa: F401 - a fixture

# Each is a text of Python that gives a text. All that Python may say of any character, and more besides: where a constant
# were missing, the two would differ. Those of the first part are in words that our code uses: a list's repr is none.
OF_CHARACTERS = """
import unicodedata
said = 0
for number in range(0x110000):
    if number < 0xD800 or number > 0xDFFF:
        mark = chr(number)
        said = (said * 1_000_003 + int.from_bytes(f"{{{}}}".encode(), "big")) % (2**61 - 1)
str(said)
"""
IN_THE_FIRST_PART = {
    "kinds": OF_CHARACTERS.format("unicodedata.category(mark)"),
    "digits": OF_CHARACTERS.format("unicodedata.decimal(mark, -1)"),
    "compatible forms": OF_CHARACTERS.format("unicodedata.normalize('NFKC', mark)"),
    "numbers": "' '.join(f'{x:.5g} {x}' for x in (3 ** k / 7 ** (k // 2) for k in range(-600, 600)))",
    "sums": "import math\n' '.join(f'{math.exp(k / 7)} {math.log(k)} {k ** 1.3} {math.sqrt(k)}' for k in range(1, 3000))",
    "patterns": "import re\n' '.join(re.sub(p, '-', 'Zwölf 3½ m², 12.5 °F') for p in (r'\\w+', r'\\d+'))",
    "json": "import json\njson.dumps(json.loads('[1e3, -0.5, {\"a\": [true, null]}]'))",
}
OF_THE_REST = {
    encoding: f"""
import hashlib
text = "".join(chr(n) for n in range(0x10000) if not 0xD800 <= n < 0xE000)
coded = text.encode({encoding!r}, "ignore")
f"{{len(coded)}} {{hashlib.sha256(coded).hexdigest()}} {{hashlib.sha256(coded.decode({encoding!r}, "replace").encode()).hexdigest()}}"
"""
    for encoding in ("cp932", "shift_jisx0213", "euc_kr", "gb18030", "big5hkscs", "iso2022_jp_3", "hz", "johab")
} | {
    "letters": OF_CHARACTERS.format("mark.lower() + mark.casefold()"),
    "names": OF_CHARACTERS.format('unicodedata.name(mark, "")'),
    "bzip2": "import bz2\nrepr(bz2.decompress(bz2.compress(bytes(range(256)) * 300)) == bytes(range(256)) * 300)",
    "decimals": "import decimal\nstr(decimal.Decimal(2).sqrt() ** 7)",
    "mistakes": "try:\n    compile('a = = 3', 'x', 'exec')\nexcept SyntaxError as wrong:\n    said = str(wrong)\nsaid",
}

ASK = """
import fs from "node:fs";
import { holdTogether } from %(holder)s;
const folder = %(folder)s;
let asked = false;
holdTogether(() => {
  asked = true;
  return fs.readFileSync(`${folder}rest.wasm`);
});
const { loadPyodide } = await import(`${folder}pyodide.mjs`);
const pyodide = await loadPyodide({ indexURL: folder, stdLibURL: %(library)s, stdout: () => {} });
const said = {};
for (const [name, text] of %(texts)s) said[name] = { said: String(pyodide.runPython(text)), asked };
process.stdout.write(`\\n${JSON.stringify(said)}`, () => process.exit(0));
"""


@pytest.fixture(scope="module")
def parted(small_site: Path) -> Path:  # noqa: F811
    """The folder that holds the interpreter in its two parts, once a site is made."""
    (folder,) = runtime.CACHE.glob("pyodide-*")
    return folder


@pytest.fixture(scope="module")
def whole() -> bytes:
    return (runtime.NPM / "pyodide.asm.wasm").read_bytes()


def asked(folder: Path, tmp_path: Path) -> dict[str, dict[str, Any]]:
    """What the interpreter of a folder says, under Node with the whole library, and whether it asked for its rest by then."""
    (library,) = runtime.CACHE.glob("compiled-*/python_stdlib.zip")
    script = tmp_path / "ask.mjs"
    parts = {
        "holder": runtime.REST_LOADER.as_uri(),
        "folder": f"{folder}/",
        "library": str(library),
        "texts": [*IN_THE_FIRST_PART.items(), *OF_THE_REST.items()],
    }
    script.write_text(ASK % {name: json.dumps(part) for name, part in parts.items()}, encoding="utf-8")
    done = subprocess.run([str(toolchain.node()), str(script)], capture_output=True, encoding="utf-8", check=False)
    assert done.returncode == 0, done.stderr[-2000:]
    found: dict[str, dict[str, Any]] = json.loads(done.stdout.splitlines()[-1])
    return found


def test_the_parts_say_what_the_whole_says(parted: Path, tmp_path: Path) -> None:
    by_whole, by_parts = asked(runtime.NPM, tmp_path), asked(parted, tmp_path)
    for name in [*IN_THE_FIRST_PART, *OF_THE_REST]:
        assert by_parts[name]["said"] == by_whole[name]["said"], name
    assert [name for name in IN_THE_FIRST_PART if by_parts[name]["asked"]] == []
    assert by_parts[next(iter(OF_THE_REST))]["asked"]
    assert not any(said["asked"] for said in by_whole.values()), "and the whole one has no rest"


def test_constants_that_come_with_the_rest_are_tables_and_nothing_that_changes(parted: Path, whole: bytes) -> None:
    """They are a tenth of the data at least, lie apart, and every byte of the data is in one part or the other."""
    away = json.loads((parted / "rest.json").read_text(encoding="utf-8"))
    size = sum(end - start for start, end in away)
    assert size > 500_000
    ends = [0] + [end for _, end in away]
    assert all(start >= end for (start, _), end in zip(away, ends, strict=False))
    stretches = stretches_of((parted / "pyodide.asm.wasm").read_bytes()) | stretches_of(
        (parted / "rest.wasm").read_bytes()
    )
    reader = wasm.Reader(wasm.sections(whole)[wasm.DATA], 5)
    assert sum(map(len, stretches.values())) == reader.number()
    at = min(stretches)
    for start in sorted(stretches):
        assert start == at
        at += len(stretches[start])


def stretches_of(binary: bytes) -> dict[int, bytes]:
    """The data of a part by its place in memory."""
    reader = wasm.Reader(wasm.sections(binary)[wasm.DATA])
    found = {}
    for _ in range(reader.number()):
        reader.expect(0, wasm.CONSTANT)
        place = reader.signed()
        reader.expect(wasm.END)
        found[place] = reader.sized()
    return found


def with_hardly_anything_in_the_first_part(made: Path, out: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A copy of a site in which nearly all of the interpreter is in its rest; returns that folder of it.

    A snapshot fits one parting alone.
    """
    monkeypatch.setattr(interpreter, "SMALL", 0)
    shutil.copytree(made, out)
    (folder,) = out.glob("assets/python/pyodide-*")
    (used,) = runtime.CACHE.glob("used-*/used.json")
    bases = {name: value for name, value in json.loads(used.read_text(encoding="utf-8")).items() if "base" in name}
    loader = (runtime.NPM / "pyodide.asm.js").read_text(encoding="utf-8")
    binary = (runtime.NPM / "pyodide.asm.wasm").read_bytes()
    parts = interpreter.parted(binary, loader, runtime.callers(), interpreter.Seen([], **bases))
    assert len(parts.main) < 0.6 * len((folder / "pyodide.asm.wasm").read_bytes())
    for name, content in (("pyodide.asm.wasm", parts.main), ("rest.wasm", parts.rest)):
        for packed in folder.glob(f"{name}.*"):
            packed.unlink()
        (folder / name).write_bytes(content)
    next(out.rglob("python.memory")).unlink()
    return folder


def test_a_page_works_though_its_first_part_has_hardly_anything(
    small_site: Path,  # noqa: F811
    tmp_path: Path,
    visiting: Visiting,
    troubles: list[str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """The worst case, in a browser: nearly all in the rest, for one more request."""
    site = tmp_path / "site"
    folder = with_hardly_anything_in_the_first_part(small_site, site, monkeypatch)
    with server.serving(site) as running:
        with visiting(troubles) as page:
            said = what_the_page_says(page, running.url)
            troubles.clear()  # the browser says that the snapshot is gone
        assert [request.path for request in running.requests].count(f"/assets/python/{folder.name}/rest.wasm") == 1
    assert "failure" not in said, said
    (folder / "rest.wasm").unlink()
    with server.serving(site) as running, visiting(troubles) as page:
        assert what_the_page_says(page, running.url).keys() == {"failure"}, "and without it the worker says so"
        troubles.clear()
    assert json.loads(said["answer"]) == desktop_answer()


def test_numbers_are_written_as_the_standard_writes_them() -> None:
    """DWARF Debugging Information Format Committee, DWARF Version 5, 2017, section 7.6: examples of LEB128.

    The tables are 7.7 and 7.8; their numbers are from memory.
    """
    for number, written in {2: "02", 127: "7f", 128: "8001", 129: "8101", 12857: "b964"}.items():
        assert wasm.unsigned(number).hex() == written
        assert wasm.Reader(wasm.unsigned(number)).number() == number
    for number, written in {
        2: "02",
        -2: "7e",
        127: "ff00",
        -127: "817f",
        128: "8001",
        -128: "807f",
        -129: "ff7e",
    }.items():
        assert wasm.signed(number).hex() == written
        assert wasm.Reader(wasm.signed(number)).signed() == number


def test_an_instruction_that_is_not_known_is_an_error() -> None:
    with pytest.raises(ValueError, match="0xfd"):
        list(wasm.instructions(bytes([0, 0xFD, 0x0C, wasm.END])))


def test_the_whole_file_is_read_and_written_as_it_was(whole: bytes) -> None:
    parts = wasm.sections(whole)
    assert wasm.joined(parts) == whole
    exports = wasm.exports(parts[wasm.EXPORTS])
    assert wasm.listed([wasm.lent(*export) for export in exports]) == parts[wasm.EXPORTS]
    variables = wasm.variables(parts[wasm.GLOBALS])
    assert wasm.listed([wasm.written(variable) for variable in variables]) == parts[wasm.GLOBALS]
