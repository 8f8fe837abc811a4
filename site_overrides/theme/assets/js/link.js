// Shared links: `#v1;stored-heat;…;end` is read once, when the page is opened at it. Python says what it holds.
import { keep } from "./keep.js";
import { setNumbers } from "./numbers.js";

const opened = keep("sessionStorage", "stoke-and-store.opened");

/**
 * Open the link that the page's address carries, now and whenever the reader goes to another one on this page.
 * Returns whether there is one to open now.
 */
export function openLinks(calculator, sheets) {
  // A page that is loaded again keeps what was changed since its link was opened.
  const [visit] = performance.getEntriesByType("navigation");
  const again = visit?.type === "reload" || visit?.type === "back_forward";
  addEventListener("hashchange", () => open(calculator, sheets));
  return !(again && opened.read() === location.href) && open(calculator, sheets);
}

function open(calculator, sheets) {
  const hash = location.hash;
  if (!/^#v\d*(;|$)/.test(hash) && !hash.includes(";")) return false;
  if (document.getElementById(hash.slice(1))) return false; // a heading of the page
  calculator.want({
    name: "link",
    rank: () => 0,
    request: () => ({ open: hash }),
    take: (reply) => {
      opened.write(location.href);
      const named = sheets.find((sheet) => sheet.worksheet === reply.worksheet);
      const sheet = named ?? sheets[0];
      if (named) sheet.replace(reply.fields);
      sheet.showLink(named || !reply.worksheet ? reply.said : null);
    },
    refuse: () => sheets[0].showLink(null),
  });
  return true;
}
