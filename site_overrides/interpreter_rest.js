// Holds the two parts of the interpreter together (scripts/interpreter.py): the second one comes when the first asks for a
// function that only that has. Part of start.js as it is published; Node
// uses it where the site is made.

// A module that takes a function and lends it again: only such a one may stand in a table.
const LENDER = Uint8Array.of(
  ...[0, 97, 115, 109, 1, 0, 0, 0],
  ...[1, 4, 1, 96, 0, 0], // type 0: nothing in, nothing out
  ...[2, 7, 1, 1, 97, 1, 97, 0, 0], // import "a" "a", a function of type 0
  ...[7, 5, 1, 1, 97, 0, 0], // export "a", function 0
);
const BETWEEN = "rest "; // before the number of a table that both parts use; the last one holds functions of both

/**
 * From here on WebAssembly makes an interpreter in two parts whole. `bringRest` returns the bytes of the second one, at
 * once: nothing can wait where it is asked for. What it throws goes through Python to whoever asked that.
 */
export function holdTogether(bringRest) {
  const plainInstantiate = WebAssembly.instantiate;
  WebAssembly.instantiate = async (source, imports) => {
    const made = await plainInstantiate.call(WebAssembly, source, imports);
    const main = (made.instance ?? made).exports;
    const names = Object.keys(main).filter((name) => name.startsWith(BETWEEN));
    if (names.length === 0) return made;
    const between = main[names.at(-1)];
    const bring = () => {
      const rest = new WebAssembly.Module(bringRest());
      new WebAssembly.Instance(rest, { ...imports, main });
    };
    const lender = new WebAssembly.Instance(new WebAssembly.Module(LENDER), { a: { a: bring } });
    between.set(between.length - 1, lender.exports.a);
    const exports = Object.fromEntries(Object.entries(main).filter(([name]) => !names.includes(name)));
    return made.instance ? { module: made.module, instance: { exports } } : { exports };
  };
}
