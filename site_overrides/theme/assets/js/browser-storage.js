// A text that the browser keeps under a name, or memory alone where its storage is refused or full.

/** A place for one text in "localStorage" or "sessionStorage". */
export function stored(storage, name) {
  let memory = null;
  let state = "kept";
  return {
    /** "kept", or why the browser does not keep what was written last: "refused" or "full". */
    state: () => state,
    read() {
      if (state !== "kept") return memory; // what is stored is older
      try {
        return window[storage].getItem(name);
      } catch {
        state = "refused";
        return memory;
      }
    },
    write(text) {
      memory = text;
      try {
        window[storage].setItem(name, text);
        state = "kept";
      } catch (error) {
        state = error.name === "QuotaExceededError" ? "full" : "refused";
      }
    },
  };
}
