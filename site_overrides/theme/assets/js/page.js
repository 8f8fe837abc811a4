// The page's script: header, units, printing, and the worksheets with the calculator behind them. It moves typed text
// to Python and HTML back; it holds no formula and no sentence, and never reads a number.
import { tellHeight, wireFrames } from "./frame.js";
import { wireHeader } from "./header.js";
import { openLinks } from "./link.js";
import { watchForRelease } from "./offline.js";
import { startCalculator } from "./panel.js";
import { wirePlan } from "./plan.js";
import { wirePrinting } from "./print.js";
import { Sheet } from "./sheet.js";
import { wireStorageNotice } from "./storage-notice.js";
import { builtUnits, wireUnits } from "./units.js";
import { keptWeather } from "./weather-file.js";

// A page without a calculator hands a link on to the one that shows whole plans.
if (/^#v\d+;/.test(location.hash) && !document.querySelector(".ss-sheet, [data-ss-record], [data-ss-desk]")) {
  location.replace(new URL(`../../record/${location.hash}`, import.meta.url));
}
wireHeader();
wireUnits();
wirePrinting();
wireStorageNotice();
wireFrames();
tellHeight();
watchForRelease();
const elements = [...document.querySelectorAll(".ss-sheet")];
if (elements.length > 0) wireSheets(elements);
const plan = document.querySelector(".ss-plan");
if (plan) wirePlan(plan);

function wireSheets(elements) {
  const sheets = elements.map((element) => new Sheet(element));
  const panels = sheets.map((sheet) => sheet.panel);
  const calculator = startCalculator(panels, {
    // The build worked out the same example with the same Python, and its answer stands in the page.
    check: { ask: "worksheet", worksheet: sheets[0].worksheet, units: builtUnits, scold: [] },
    part: (reply) => reply.slots.plate,
    known: sheets[0].built,
    weather: keptWeather,
    wait: navigator.connection?.saveData,
    worksheets: sheets.map((sheet) => sheet.worksheet),
  });
  if (openLinks(sheets)) calculator.start();
}
