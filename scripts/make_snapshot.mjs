// node make_snapshot.mjs <pyodide folder> <library.zip> <JSON list of wheels> <JSON list of modules> <JSON list of templates> <out>
// Writes the memory of a Python that has imported all of our code, so that a page may begin with it instead of importing:
// as it compresses best, and prints as its last line what start_python.js has to know to take it back.
//
// The memory that Pyodide hands out is told shorter in four ways, each undone by start_python.js in a few milliseconds:
// what the interpreter's own file puts there is left out (by XOR, for most of it has not changed); memory that is free
// is zero; the garbage collector's list of objects, two addresses for each, is put in order and told in steps; and of
// what is zero for long nothing is written.
import fs from "node:fs";
import path from "node:path";

import { holdTogether } from "../site_overrides/interpreter_rest.js";
import { env } from "./same_each_time.mjs";

const [npm, library, wheels, modules, templates, out] = process.argv.slice(2);
process.argv[1] = "python"; // Python notes by which path it was called, and where this was made is nobody's business
const HEAD_OF_OBJECT = 8; // bytes of the collector's two addresses before each object that it knows
const PAGE = 65_536; // bytes
const FLAGS = 3; // the collector's marks in the second of them

holdTogether(() => fs.readFileSync(path.join(npm, "rest.wasm")));
let untouched; // the memory as the interpreter's own file fills it
const plainInstantiate = WebAssembly.instantiate;
WebAssembly.instantiate = async (source, imports) => {
  const made = await plainInstantiate.call(WebAssembly, source, imports);
  if (imports?.env?.memory) untouched ??= new Uint8Array(imports.env.memory.buffer.slice(0));
  return made;
};

const { loadPyodide } = await import(path.join(npm, "pyodide.mjs"));
const pyodide = await loadPyodide({
  indexURL: npm + path.sep,
  stdLibURL: library,
  env,
  stdout: () => {},
  _makeSnapshot: true,
});
pyodide.runPython("import tempfile; tempfile._name_sequence = map(str, range(99))");
for (const wheel of JSON.parse(wheels)) pyodide.unpackArchive(new Uint8Array(fs.readFileSync(wheel)), "wheel");

const program = `
import gc, importlib, json, pkgutil, random, sys, tempfile, zipimport

def fill_free_memory():
    for size in range(512, 16, -16):
        blocks = [bytes(size - 17) for _ in range(200_000 // size)]
        del blocks

# Unpacking leaves texts that chance has a hand in, and what is made in their place does not fill all of it.
fill_free_memory()
importlib.invalidate_caches()
for name in json.loads(modules):
    try:
        importlib.import_module(name)
    except ImportError:  # a template, say: they come below
        pass
for package in ("calc", "render"):
    for module in pkgutil.walk_packages(importlib.import_module(package).__path__, package + "."):
        importlib.import_module(module.name)
# The files are not in the snapshot, so all that is read from them later is read now.
from render.templating import templates
for name in json.loads(names):
    templates().get_template(name)
# Nor will the library be: what looks for a module in it later finds none there.
zipimport._zip_directory_cache.clear()
sys.path_importer_cache.clear()
# Drawn from the machine's own chance.
random.seed(0)
tempfile._name_sequence = None
del module, name, names, modules

for _ in range(3):
    gc.collect()
fill_free_memory()
del fill_free_memory
gc.collect()
gc.freeze()
sys._clear_type_cache()
id(sys.modules)
`;
pyodide.globals.set("modules", modules);
pyodide.globals.set("names", templates);
const tracked = pyodide.runPython(program) - HEAD_OF_OBJECT;
const module = pyodide._module;
fillFreeMemory(module);

const snapshot = pyodide.makeMemorySnapshot();
const start = new DataView(snapshot.buffer).getUint32(4, true); // where the memory begins behind Pyodide's own head
// The page begins without the rest of the interpreter, whatever was needed of it here.
for (const [from, to] of JSON.parse(fs.readFileSync(path.join(npm, "rest.json"), "utf-8"))) {
  snapshot.fill(0, start + from, start + to);
}
const words = new Uint32Array(snapshot.buffer, start, (snapshot.length - start) >> 2);
const collector = tellInSteps(words, tracked);
const constant = untouched.findLastIndex((byte) => byte !== 0) + 4 & ~3;
const before = new Uint32Array(untouched.buffer, 0, constant >> 2);
for (let i = 0; i < before.length; i += 1) words[i] ^= before[i];
const stretches = stretchesOf(snapshot);
fs.writeFileSync(out, Buffer.concat(stretches.map(([from, to]) => snapshot.subarray(from, to))));
// Where Python keeps which function counts arguments: a browser has its own or none.
const counter = module.__PyRuntime + module.HEAP32[module.__PyEM_EMSCRIPTEN_COUNT_ARGS_OFFSET >> 2];
process.stdout.write(`${JSON.stringify({ size: snapshot.length, stretches, start, constant, collector, counter })}\n`, () => process.exit(0));

/** Put zeros where the C library's memory is free: blocks are taken from the largest down as long as none is new. */
function fillFreeMemory({ _emscripten_builtin_malloc: malloc, _emscripten_builtin_free: free, _sbrk: sbrk, HEAPU8 }) {
  const taken = [];
  for (let size = 1 << 15; size >= 32; size = size > 256 ? size >> 1 : size - 16) {
    for (;;) {
      const end = sbrk(0);
      const block = malloc(size);
      if (!block) break;
      if (sbrk(0) !== end) {
        free(block);
        break;
      }
      HEAPU8.fill(0, block, block + size);
      taken.push(block);
    }
  }
  taken.forEach((block) => free(block));
}

/** From where to where there is something: what lies between is zero, a page of memory or more. */
function stretchesOf(content) {
  const found = [];
  for (let from = 0; from < content.length; from += PAGE) {
    const to = Math.min(from + PAGE, content.length);
    if (content.subarray(from, to).every((byte) => byte === 0)) continue;
    if (found.at(-1)?.[1] === from) found.at(-1)[1] = to;
    else found.push([from, to]);
  }
  return found;
}

/**
 * Put the ring of all objects that the collector knows in the order of their addresses, and write in each only how far
 * it is to the next one: 0 in the last. Returns the address of the first, which lies in the interpreter's own memory.
 */
function tellInSteps(words, tracked) {
  const ring = [];
  for (let at = tracked; ring.length === 0 || at !== tracked; at = words[at >> 2]) ring.push(at);
  ring.sort((one, other) => one - other);
  ring.forEach((at, place) => {
    words[at >> 2] = place + 1 < ring.length ? ring[place + 1] - at : 0;
    words[(at >> 2) + 1] &= FLAGS;
  });
  return ring[0];
}
