// Starts Python in the page's worker. Published as assets/python/start.js, below one line `const FILES = {...};`
// that names every file of this very build (see scripts/runtime.py, which writes it).
/* global FILES */

// The same place whether this module stands by itself or inside the worker, which is a folder away.
const here = new URL("../python/", import.meta.url);
// Node, where tests load this same module, wants paths instead of file: addresses.
const base = here.protocol === "file:" ? decodeURIComponent(here.pathname) : here.href;

/** The build this module belongs to: a page that shows another one is out of date and should be reloaded. */
export const build = FILES.build;

/**
 * Load Python with `calc` and `render`, ready to be imported.
 *
 * Rejects when a file is missing, damaged or refused. Pyodide itself never settles if the browser refuses WebAssembly
 * (a wrong MIME type, a policy), so the caller keeps a timer; `onProgress` is called each time something has arrived
 * and is what that timer waits for.
 */
export async function startPython({ onProgress = () => {} } = {}) {
  // The two parts of Pyodide's loader come at once instead of one after the other.
  const [{ loadPyodide }] = await Promise.all([
    import(`${here.href}${FILES.pyodide}pyodide.mjs`),
    import(`${here.href}${FILES.pyodide}pyodide.asm.js`),
  ]);
  onProgress("loader");
  const pyodide = await loadPyodide({
    indexURL: base + FILES.pyodide,
    stdLibURL: base + FILES.library,
    lockFileContents: FILES.lock,
    packageBaseUrl: base,
    packages: ["stoke-and-store"],
  });
  onProgress("python");
  return pyodide;
}
