// HTML from Python put into the page without disturbing the reader.

let held = null; // the box that must not move, and where it stood before anything was changed

/** Change the page without moving the box in which the reader is typing, unless it goes: notes come and go above it. */
export function holdingFocus(change) {
  const box = document.activeElement?.closest(".ss-fields") && document.activeElement;
  if (box && held?.box !== box) {
    const holding = { box, top: box.getBoundingClientRect().top };
    held = holding;
    afterLayout(() => putBack(holding));
  }
  change();
}

/** The reader may have gone on to another box meanwhile: then that one is held. */
function putBack(holding) {
  if (held !== holding) return;
  held = null;
  const { box, top } = holding;
  if (box === document.activeElement && box.getClientRects().length) {
    scrollBy({ top: box.getBoundingClientRect().top - top, behavior: "instant" });
  }
}

/** Once the browser has laid out the page and before it paints: to ask for a place sooner would have it do that twice. */
function afterLayout(does) {
  const observer = new ResizeObserver(() => {
    observer.disconnect();
    does();
  });
  observer.observe(document.documentElement);
}

// Links of the HTML that Python makes are those of a page two folders down, where most worksheets stand.
const ROOT = new URL("../../", import.meta.url).href;

const filled = new WeakMap(); // element -> the HTML that was put into it, and the first node that came of it

/** Put HTML from Python into an element, keeping what the reader has unfolded in it. */
export function fill(element, html) {
  html = html.replaceAll('href="../../', `href="${ROOT}`);
  if (holds(element, html)) return;
  const folds = [...element.querySelectorAll("details")];
  const focused = element.contains(document.activeElement) ? document.activeElement.id : "";
  element.innerHTML = html;
  filled.set(element, { html, first: element.firstChild });
  if (focused) document.getElementById(focused)?.focus({ preventScroll: true });
  element.querySelectorAll("details").forEach((details, index) => {
    details.open = folds[index]?.open ?? false;
    details.toggleAttribute("data-ss-for-print", folds[index]?.hasAttribute("data-ss-for-print") ?? false);
  });
}

/** Whether an element holds this HTML already; what the build put there is read once, and what was since put in its place is seen. */
function holds(element, html) {
  const last = filled.get(element);
  return last && last.first === element.firstChild ? last.html === html : element.innerHTML === html;
}
