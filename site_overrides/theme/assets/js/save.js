// A text as a file of the reader's own.

/** Save `text` under `name`, where the browser keeps what it downloads. */
export function saveText(name, text) {
  const type = name.endsWith(".csv") ? "text/csv" : "text/plain";
  const address = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000); // the browser may still be asking where to put it
}
