// Paper cannot be unfolded: every folded part is opened for printing and folded again afterwards.

/** Open what is folded before the page is printed. */
export function wirePrinting() {
  addEventListener("beforeprint", () => {
    for (const details of document.querySelectorAll("main details:not([open])")) {
      details.open = true;
      details.toggleAttribute("data-ss-for-print", true);
    }
  });
  addEventListener("afterprint", () => {
    for (const details of document.querySelectorAll("[data-ss-for-print]")) {
      details.open = false;
      details.removeAttribute("data-ss-for-print");
    }
  });
}
