// Says so where the browser does not keep the reader's numbers.
import { keeping, whenNumbersChange } from "./numbers.js";

/** Keep every place for that sentence up to date. */
export function wireStorageNotice() {
  whenNumbersChange(show);
  show();
}

function show() {
  for (const place of document.querySelectorAll("[data-ss-kept]")) {
    const words = { refused: place.dataset.sayRefused, full: place.dataset.sayFull }[keeping()] ?? "";
    if (place.textContent.trim() !== words) place.textContent = words;
    place.hidden = words === "";
  }
}
