// A text that the browser keeps under a name, or memory alone where the reader's settings refuse storage.

/** A place for one text in "localStorage" or "sessionStorage". */
export function keep(storage, name) {
  let memory = null;
  return {
    read() {
      try {
        return window[storage].getItem(name) ?? memory;
      } catch {
        return memory;
      }
    },
    write(text) {
      memory = text;
      try {
        window[storage].setItem(name, text);
      } catch {
        // Refused or full: this page remembers it as long as it is open.
      }
    },
  };
}
