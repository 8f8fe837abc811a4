// node list_used.mjs <pyodide folder> <marked interpreter> <library folder> <wheels folder> <JSON list of modules to import as well>
// Prints, as its last line, what the page's Python has used once everything was imported and every worksheet was run:
// the names of modules, to which the standard library is trimmed (those that the interpreter itself holds are none), and
// of the interpreter the numbers of its functions, with the bases of its memory and table (see interpreter.py).
import fs from "node:fs";
import path from "node:path";

import { env } from "./same_each_time.mjs";

const [npm, marked, library, wheels, extra] = process.argv.slice(2);
const MARK = "ran "; // before the number of a function, the name of what says whether it ran

const plainInstantiate = WebAssembly.instantiate;
let marks;
let borrowed;
WebAssembly.instantiate = async (source, imports) => {
  if (!imports?.env?.memory) return plainInstantiate.call(WebAssembly, source, imports);
  borrowed = imports.env;
  const { module, instance } = await plainInstantiate.call(WebAssembly, fs.readFileSync(marked), imports);
  const all = Object.entries(instance.exports);
  marks = all.filter(([name]) => name.startsWith(MARK));
  return { module, instance: { exports: Object.fromEntries(all.filter(([name]) => !name.startsWith(MARK))) } };
};

const { loadPyodide } = await import(path.join(npm, "pyodide.mjs"));
const pyodide = await loadPyodide({
  indexURL: npm + path.sep,
  stdLibURL: path.join(library, "python_stdlib.zip"),
  lockFileContents: JSON.parse(fs.readFileSync(path.join(wheels, "pyodide-lock.json"), "utf-8")),
  packageBaseUrl: wheels + path.sep,
  packages: ["stoke-and-store"],
  env,
  stdout: () => {},
});
pyodide.globals.set("extra", pyodide.toPy(JSON.parse(extra)));
const program = `
import gc, importlib, json, pkgutil, sys

gc.set_threshold(100, 5, 5)  # in a page it may come at any moment, whatever kind of object is about
for name in extra:
    try:
        importlib.import_module(name)
    except ImportError:  # only on the desktop: the page has no processes, no sockets
        pass
for package in ("calc", "render"):
    module = importlib.import_module(package)
    for found in pkgutil.walk_packages(module.__path__, package + "."):
        importlib.import_module(found.name)
sys.modules["render"].run_every_example()
gc.collect()
frozen = {name for name, module in sys.modules.items() if getattr(module.__spec__, "origin", None) == "frozen"}
json.dumps({"modules": sorted(sys.modules.keys() - frozen), "worksheets": list(sys.modules["calc.worksheets"].WORKSHEETS)})
`;
/** What a worker does that Python does not: see worker.js. */
async function askAsAWorker(worksheet) {
  const render = pyodide.pyimport("render");
  pyodide.pyimport("random").seed();
  render.bring("weather/file.txt", "");
  const typing = { ask: "worksheet", units: "us", worksheet, plan: {}, scold: [] };
  render.respond(JSON.stringify(typing), () => {});
  render.respond(JSON.stringify({ ask: "worksheet", units: "si", worksheet }), undefined);
  try {
    render.respond("no request");
  } catch (error) {
    if (!(error instanceof pyodide.ffi.PythonError)) throw error;
  }
  pyodide.runPython("import pyodide.code\ntry:\n    pyodide.code.run_js('throw new Error()')\nexcept Exception:\n    pass");
  await pyodide.loadPackage("segno", { messageCallback: () => {} });
  pyodide.runPython("from render import qr; qr.svg('record/#v1;plan;end', 'code')");
}

try {
  const { modules, worksheets } = JSON.parse(pyodide.runPython(program));
  await askAsAWorker(worksheets[0]);
  const functions = marks.filter(([, mark]) => mark.value).map(([name]) => Number(name.slice(MARK.length)));
  const bases = { memory_base: borrowed.__memory_base.value, table_base: borrowed.__table_base.value };
  process.stdout.write(`${JSON.stringify({ modules, functions, ...bases })}\n`, () => process.exit(0));
} catch (error) {
  // The message is Python's own traceback; the default would print Pyodide's whole source line above it.
  console.error(error.message);
  process.exit(1);
}
