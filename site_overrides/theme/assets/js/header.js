// The header's real buttons for the list of pages and for the search. The theme opens both by a hidden checkbox, whose
// label no keyboard reaches; see partials/header.html.

/** Bring the header's buttons to life. */
export function wireHeader() {
  wire("drawer", ".ss-nav-close");
  wire("search", ".md-search__input");
  document.getElementById("__search")?.addEventListener("change", sayIfTheIndexIsMissing, { once: true });
  document.documentElement.dataset.header = "live";
}

/** Without its indexes the theme's search would wait for ever. */
async function sayIfTheIndexIsMissing() {
  try {
    for (const name of ["search_index", "every_page"]) {
      await (await fetch(new URL(`../../search/${name}.json`, import.meta.url))).json();
    }
  } catch {
    const said = document.querySelector(".md-search-result__meta");
    said.textContent = said.dataset.sayFailed;
  }
}

function wire(name, inside) {
  const box = document.getElementById(`__${name}`);
  const buttons = [...document.querySelectorAll(`[data-ss-toggle="${name}"]`)];
  const opener = buttons.find((button) => button.hasAttribute("aria-expanded"));
  if (!box || !opener) return;
  for (const button of buttons) button.addEventListener("click", () => box.click());
  box.addEventListener("change", () => {
    opener.setAttribute("aria-expanded", String(box.checked));
    if (box.checked) document.querySelector(inside)?.focus();
    else if (opener.offsetParent) opener.focus();
  });
  document.addEventListener("keydown", (event) => {
    if (event.key === "Escape" && box.checked && name === "drawer") box.click();
  });
}
