// Paper cannot be unfolded: every folded part is opened for printing and folded again afterwards.

/** Open what is folded before the page is printed. */
export function wirePrinting() {
  let opened = [];
  addEventListener("beforeprint", () => {
    opened = [...document.querySelectorAll("main details:not([open])")];
    for (const details of opened) details.open = true;
  });
  addEventListener("afterprint", () => {
    for (const details of opened) details.open = false;
    opened = [];
  });
}
