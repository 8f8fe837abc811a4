// Starts Python in the page's worker. Published as assets/python/start.js, below one line `const FILES = {...};`
// that names every file of this very build, and below interpreter_rest.js (see scripts/runtime.py, which writes it).
//
// There are two ways. The ordinary one, by what Pyodide documents, unpacks a library and wheels and imports them. The short
// one takes back the memory of a Python that has done so already (scripts/make_snapshot.mjs): half the time, a few hundred
// kilobytes more. It rests on Pyodide's inner workings, so whatever is amiss with it, the ordinary way is gone.
/* global FILES, holdTogether */

// The same place whether this module stands by itself or inside the worker, which is a folder away.
const here = new URL("../python/", import.meta.url);
const base = here.href;

const hostsFetch = self.fetch;
const BEAT = 1000; // milliseconds between two signs of life while the interpreter is on its way
const LONGEST_FETCH = 120_000; // milliseconds in which even a slow line brings it
// On a line that brings the snapshot slower than this, its bytes would cost more than they save.
const SLOW = 800; // bytes a millisecond, while the interpreter takes half of the line
const FIRST_MOMENTS = 400; // milliseconds after the first bytes, when that is judged
const NO_LIBRARY = "none.zip"; // nobody asks the host for it: what is answered in its place is an
const EMPTY_ZIP = Uint8Array.from([0x50, 0x4b, 5, 6, ...Array(18).fill(0)]);

/** The build this module belongs to: a page that shows another one is out of date and should be reloaded. */
export const build = FILES.build;

/**
 * Load Python with `calc` and `render`, ready to be imported. Not `shortly`, by the ordinary way alone.
 *
 * Rejects when a file is missing, damaged or refused. Whoever calls keeps a timer all the same, for a host that falls
 * silent; `onProgress` is called each time something has arrived and is what that timer waits for. After it was called with
 * "rest" nothing can be heard until the rest of the interpreter is there, in two minutes at the latest.
 */
export async function startPython({ onProgress = () => {}, shortly = true } = {}) {
  const failure = keepTogether(onProgress);
  unpackArchives();
  const interpreter = bringInterpreter(onProgress);
  const memory = shortly ? new Uint8Array(FILES.snapshot.size) : null;
  const there = shortly ? fill(memory, onProgress).catch(tellWhy) : Promise.resolve(false);
  // The two parts of Pyodide's loader come at once instead of one after the other.
  const [{ loadPyodide }] = await Promise.all([
    import(`${base}${FILES.pyodide}pyodide.mjs`),
    import(`${base}${FILES.pyodide}pyodide.asm.js`),
  ]);
  onProgress("loader");
  // If the interpreter or its rest does not come, Pyodide itself only prints a warning and never settles.
  const pyodide = await Promise.race([
    begin(loadPyodide, memory, there),
    interpreter.then(() => new Promise(() => {})),
    failure,
  ]);
  onProgress("python");
  return pyodide;
}

/** The short way, which gets ready while `memory` is being filled; where it turns out that this fails, the ordinary one. */
async function begin(loadPyodide, memory, there) {
  const hopeless = (await Promise.race([there, true])) === false;
  if (!hopeless) {
    const { instantiateStreaming } = WebAssembly;
    const [restored, asked] = restore(loadPyodide, memory, there);
    const ended = restored.catch(() => {});
    if (await there) return restored;
    await Promise.race([asked, ended]); // what is asked for next must be for the other one
    WebAssembly.instantiateStreaming = instantiateStreaming;
  }
  return load(loadPyodide);
}

function load(loadPyodide) {
  return loadPyodide({
    indexURL: base + FILES.pyodide,
    stdLibURL: base + FILES.library,
    lockFileContents: FILES.lock,
    packageBaseUrl: base,
    packages: ["stoke-and-store"],
  });
}

/** Library and wheels come packed as no host would pack them; Pyodide gets the archives that it knows. */
function unpackArchives() {
  const plainFetch = self.fetch;
  const archives = [FILES.library, ...Object.values(FILES.lock.packages).map((wheel) => wheel.file_name)];
  for (const archive of archives) {
    answerFor(base + archive, async () => {
      const response = await plainFetch(`${base}${archive}.pack`);
      if (!response.ok) return response;
      return new Response(response.body.pipeThrough(new DecompressionStream("gzip")));
    });
  }
}

// ---- the interpreter ------------------------------------------------------------------------------------------------

/**
 * Fetch and compile the interpreter at once, while its loader is still on its way, and hand it to Pyodide when that asks.
 *
 * A browser keeps the compiled form only when it gets the response untouched, which halves a later start, so nobody can
 * watch it come. There is a steady sign of life instead, for a limited time.
 */
function bringInterpreter(onProgress) {
  const address = `${base}${FILES.pyodide}pyodide.asm.wasm`;
  const pulse = setInterval(() => onProgress("bytes"), BEAT);
  const enough = setTimeout(() => clearInterval(pulse), LONGEST_FETCH);
  const compiled = compile(fetch(address)).finally(() => {
    clearInterval(pulse);
    clearTimeout(enough);
  });
  answerFor(address, () => new Response());
  WebAssembly.instantiateStreaming = async (_, imports) => {
    const module = await compiled;
    return { module, instance: await WebAssembly.instantiate(module, imports) };
  };
  return compiled;
}

/** Hold the parts of the interpreter together. What is returned rejects if the second part is asked for and does not come. */
function keepTogether(onProgress) {
  const failure = new Promise((_, reject) => {
    holdTogether(() => {
      onProgress("rest");
      try {
        return bringRest();
      } catch (error) {
        reject(error);
        throw error;
      }
    });
  });
  failure.catch(() => {}); // who calls Python hears of it by that call, once Python is there
  return failure;
}

/** The second part of the interpreter (interpreter_rest.js): the worker stands still until it is there. */
function bringRest() {
  const request = new XMLHttpRequest();
  request.open("GET", `${base}${FILES.pyodide}rest.wasm`, false);
  request.responseType = "arraybuffer";
  request.timeout = LONGEST_FETCH;
  request.send();
  if (request.status !== 200) throw new Error(`the rest of the interpreter did not arrive: ${request.status}`);
  return request.response;
}

/** Pyodide asks for a file of that address with `fetch`, and gets this answer instead of the host's. */
function answerFor(address, answer) {
  const plainFetch = self.fetch;
  self.fetch = async (asked, ...options) => (String(asked) === address ? answer() : plainFetch(asked, ...options));
}

async function compile(fetched) {
  const response = await fetched;
  if (!response.ok) throw new Error(`the interpreter did not arrive: ${response.status}`);
  if (response.headers.get("Content-Type") === "application/wasm") return WebAssembly.compileStreaming(response);
  return WebAssembly.compile(await response.arrayBuffer()); // the host does not know the type
}

// ---- the short way --------------------------------------------------------------------------------------------------

/** Fill `memory` from the snapshot. Rejects when that does not come whole, or would cost more of the line than it saves. */
async function fill(memory, onProgress) {
  const asked = performance.now(); // WebKit asks the line even for what only its cache should give
  const kept = await fromCache(FILES.snapshot.path);
  if (!kept && (await fromCache(`${FILES.library}.pack`))) throw new Error("what that needs is here already");
  const response = kept ?? (await hostsFetch(base + FILES.snapshot.path));
  if (!response.ok) throw new Error(`the snapshot did not arrive: ${response.status}`);
  const unpacking = new DecompressionStream("gzip");
  const [packed] = await Promise.all([
    handOn(response.body.getReader(), unpacking.writable.getWriter(), asked, onProgress),
    putInPlace(unpacking.readable.getReader(), memory),
  ]);
  // Where the browser lends nobody its digests, the packing's own check sum has to do.
  const digest = await crypto.subtle?.digest("SHA-256", packed);
  if (digest && hexadecimal(digest) !== FILES.snapshot.digest) throw new Error("the snapshot is not of this build");
  return true;
}

/**
 * Give to `writer` what `reader` brings, and return all of it; a slow line is left, without an error in any stream.
 *
 * A busy processor reads late, and all at once, what came slowly meanwhile: so the line is judged by its whole time since
 * it was `asked`, not by what is read in a part of it.
 */
async function handOn(reader, writer, asked, onProgress) {
  const parts = [];
  let size = 0;
  let slow = false;
  let timer = 0;
  let told = asked;
  const judge = () => {
    slow = size < SLOW * (performance.now() - asked);
    if (slow) reader.cancel();
  };
  try {
    for (;;) {
      const { done, value } = await reader.read();
      timer ||= setTimeout(judge, FIRST_MOMENTS);
      if (slow) throw new Error("the line is slow");
      if (done) break;
      parts.push(value);
      size += value.length;
      if (performance.now() - told > BEAT) {
        told = performance.now();
        onProgress("bytes");
      }
      await writer.write(value);
    }
  } finally {
    clearTimeout(timer); // a stream that broke is nobody's to judge: to leave it would be an error that nobody hears
  }
  await writer.close();
  return joined(parts, size);
}

/** Put what `reader` brings into the stretches of memory to which it belongs; what lies between them stays zero. */
async function putInPlace(reader, memory) {
  const stretches = FILES.snapshot.stretches.map(([from, to]) => memory.subarray(from, to));
  for (;;) {
    let { done, value } = await reader.read();
    if (done && stretches.length > 0) throw new Error("the snapshot is too short");
    if (done) return;
    while (value.length > 0) {
      if (stretches.length === 0) throw new Error("the snapshot is too long");
      const part = value.subarray(0, stretches[0].length);
      stretches[0].set(part);
      stretches[0] = stretches[0].subarray(part.length);
      if (stretches[0].length === 0) stretches.shift();
      value = value.subarray(part.length);
    }
  }
}

function joined(parts, size) {
  const whole = new Uint8Array(size);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

/** A file of this build as the browser kept it from an earlier visit, without a word on the line; else null. */
async function fromCache(path) {
  try {
    const response = await fetch(base + path, { cache: "only-if-cached", mode: "same-origin" });
    return response.ok ? response : null;
  } catch {
    return null;
  }
}

/** Two promises: of a Python that begins with `memory`, and of the moment at which it has asked for its interpreter. */
function restore(loadPyodide, memory, there) {
  const { instantiateStreaming } = WebAssembly;
  const asked = new Promise((resolve) => {
    WebAssembly.instantiateStreaming = async (source, imports) => {
      resolve();
      keepOwnCounter(memory, imports.env);
      const made = await instantiateStreaming(source, imports);
      if (!(await there)) await new Promise(() => {}); // this Python is given up
      giveExports(imports.env.__indirect_function_table, made.instance.exports);
      refill(memory, new Uint32Array(imports.env.memory.buffer));
      return made;
    };
  });
  return [take(loadPyodide, memory), asked];
}

async function take(loadPyodide, memory) {
  const library = base + NO_LIBRARY;
  answerFor(library, () => new Response(EMPTY_ZIP));
  const pyodide = await loadPyodide({
    indexURL: base + FILES.pyodide,
    stdLibURL: library,
    lockFileContents: FILES.lock,
    packageBaseUrl: base,
    _loadSnapshot: memory,
  });
  memory.buffer.transfer?.(0); // 21 MB that nobody needs any more, though functions that were handed on still name them
  pyodide.pyimport("random").seed(); // else every visit would draw the same
  return pyodide;
}

/**
 * Functions are numbered in Pyodide's table as it adds those that are not there yet, and the snapshot holds their numbers.
 * WebKit tells a function in the table and the same one among the exports apart, against the standard, so Pyodide would add
 * some twice: it gets the exports.
 */
function giveExports(table, exports) {
  const own = table.length;
  const functions = Object.values(exports).filter((one) => typeof one === "function");
  const byName = new Map(functions.map((one) => [one.name, one])); // its number in the file
  table.get = (at) => {
    const found = WebAssembly.Table.prototype.get.call(table, at);
    return (at < own && byName.get(found?.name)) || found;
  };
}

/** Whether a browser can count a function's arguments is settled anew: on an iPhone Pyodide does without. */
function keepOwnCounter(memory, env) {
  const settle = env._PyEM_InitTrampoline_js;
  env._PyEM_InitTrampoline_js = () => {
    settle();
    const { start, counter } = FILES.snapshot;
    new Uint32Array(memory.buffer, start)[counter >> 2] = new Uint32Array(env.memory.buffer)[counter >> 2];
  };
}

/** Undo what made the snapshot small: see scripts/make_snapshot.mjs. `constant` is what the interpreter's file brings. */
function refill(memory, constant) {
  const { start, constant: length, collector } = FILES.snapshot;
  const words = new Uint32Array(memory.buffer, start);
  for (let i = 0; i < length >> 2; i += 1) words[i] ^= constant[i];
  for (let at = collector, step = -1; step !== 0; ) {
    step = words[at >> 2];
    const next = step === 0 ? collector : at + step;
    words[at >> 2] = next;
    words[(next >> 2) + 1] |= at;
    at = next;
  }
}

function hexadecimal(digest) {
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, "0")).join("");
}

function tellWhy(error) {
  console.info(`Python starts the longer way: ${error.message}`);
  return false;
}
