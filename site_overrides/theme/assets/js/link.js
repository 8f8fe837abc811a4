// Shared links: `#v1;stored-heat;…;end` is read once, when the page is opened at it. Python says what it holds, and asks
// which numbers to keep where the reader's own plan holds other ones; until that is answered they are only borrowed.
import { stored } from "./browser-storage.js";
import { borrow, giveBack, ownEntries } from "./numbers.js";
import { borrowUnits, unitsChosen } from "./units.js";

const opened = stored("sessionStorage", "stoke-and-store.opened"); // the address whose link was read last
const asked = stored("sessionStorage", "stoke-and-store.asked"); // "yes" while it is not answered which numbers to keep

/**
 * Open the link that the page's address carries, now and whenever the reader goes to another one on this page.
 * Returns whether there is one to open now. Its worksheet comes into view at once, so that nothing moves under a finger
 * when Python is ready, and no box can be filled in before the link's numbers stand there.
 */
export function openLinks(sheets) {
  // A page that is loaded again keeps what was changed since its link was opened.
  const [visit] = performance.getEntriesByType("navigation");
  const again = visit?.type === "reload" || visit?.type === "back_forward";
  addEventListener("hashchange", () => open(sheets));
  const readBefore = again && opened.read() === location.href && asked.read() !== "yes";
  if (readBefore || !isLink(location.hash)) return false;
  for (const sheet of sheets) sheet.hold();
  const named = sheets.find((sheet) => location.hash.includes(`;${sheet.worksheet};`)) ?? sheets[0];
  named.bring();
  return open(sheets, named);
}

function isLink(hash) {
  if (!/^#v\d*(;|%3b|$)/i.test(hash) && !hash.includes(";")) return false;
  return !document.getElementById(hash.slice(1)); // else it is a heading of the page
}

/** Read the address as a link; its worksheet comes into view unless it was `brought` there before. */
function open(sheets, brought = null) {
  const hash = location.hash;
  if (!isLink(hash)) return false;
  const release = () => sheets.forEach((sheet) => sheet.release());
  sheets[0].panel.want({
    name: "link",
    request: () => ({ ask: "link", link: hash, plan: ownEntries(), chosen: unitsChosen() }),
    take: (reply) => {
      if (reply.made_in && reply.made_in !== reply.units && !unitsChosen()) {
        borrowUnits(reply.made_in);
        open(sheets, brought); // what is told about it is told in those units
        return;
      }
      opened.write(location.href);
      asked.write(reply.ask ? "yes" : "no");
      const named = sheets.find((sheet) => sheet.worksheet === reply.worksheet);
      const sheet = named ?? sheets[0];
      const bring = sheet !== brought;
      const here = named || reply.whole;
      if (here && reply.ask) {
        ask(sheet, reply, bring);
      } else {
        giveBack();
        if (here && Object.keys(reply.fields).length > 0) sheet.replace(reply.fields, reply.whole);
        sheet.showLink(here || !reply.worksheet ? reply.said : null, { bring });
      }
      release();
    },
    refuse: () => {
      sheets[0].showLink(null, { bring: sheets[0] !== brought });
      release();
    },
  });
  return true;
}

/** Show the link's numbers without keeping them, and ask. */
function ask(sheet, reply, bring) {
  borrow(sheet.inPlaceOf(reply.fields, reply.whole));
  const answered = (answer) => {
    if (answer !== "look") {
      asked.write("no");
      giveBack();
    }
    if (answer === "theirs") sheet.replace(reply.fields, reply.whole);
  };
  sheet.showLink(reply.said + reply.ask, { bring, answered });
}
