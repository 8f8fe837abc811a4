// node list_modules.mjs <pyodide folder> <library folder> <wheels folder> <JSON list of modules to import as well>
// Prints, as its last line, the names of all modules that the page's Python has loaded once everything was imported and
// every worksheet was run. The standard library is trimmed to these. Those that the interpreter itself holds are none.
import fs from "node:fs";
import path from "node:path";

const [npm, library, wheels, extra] = process.argv.slice(2);
const { loadPyodide } = await import(path.join(npm, "pyodide.mjs"));
const pyodide = await loadPyodide({
  indexURL: npm + path.sep,
  stdLibURL: path.join(library, "python_stdlib.zip"),
  lockFileContents: JSON.parse(fs.readFileSync(path.join(wheels, "pyodide-lock.json"), "utf-8")),
  packageBaseUrl: wheels + path.sep,
  packages: ["stoke-and-store"],
  stdout: () => {},
});
pyodide.globals.set("extra", pyodide.toPy(JSON.parse(extra)));
const program = `
import importlib, json, pkgutil, sys

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
frozen = {name for name, module in sys.modules.items() if getattr(module.__spec__, "origin", None) == "frozen"}
json.dumps(sorted(sys.modules.keys() - frozen))
`;
try {
  process.stdout.write(`${pyodide.runPython(program)}\n`, () => process.exit(0));
} catch (error) {
  // The message is Python's own traceback; the default would print Pyodide's whole source line above it.
  console.error(error.message);
  process.exit(1);
}
