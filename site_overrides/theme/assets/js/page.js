// The page's script: header, units, printing, and the worksheets with the calculator behind them. It moves typed text
// to Python and HTML back; it holds no formula and no sentence, and never reads a number.
import { Calculator } from "./calculator.js";
import { wireFrames } from "./frame.js";
import { wireHeader } from "./header.js";
import { wireKept } from "./kept.js";
import { openLinks } from "./link.js";
import { rereadNumbers, whenNumbersChange } from "./numbers.js";
import { wirePlan } from "./plan.js";
import { wirePrinting } from "./print.js";
import { Sheet } from "./sheet.js";
import { whenUnitsChange, wireUnits } from "./units.js";

wireHeader();
wireUnits();
wirePrinting();
wireKept();
wireFrames();
const elements = [...document.querySelectorAll(".ss-sheet")];
if (elements.length > 0) wireSheets(elements);
const plan = document.querySelector(".ss-plan");
if (plan) wirePlan(plan);

function wireSheets(elements) {
  const [first] = elements;
  const calculator = new Calculator({
    silence: () => 1000 * first.dataset.silence,
    // The build worked out the same example with the same Python, and its answer stands in the page.
    check: { worksheet: first.dataset.worksheet, units: "us", fields: {} },
    rightly: (reply) => sheets[0].agrees(reply),
    onChange: (state, before) => {
      for (const sheet of sheets) sheet.calculatorTurned(state, before);
    },
  });
  const sheets = elements.map((element) => new Sheet(element, calculator));
  whenUnitsChange(() => {
    for (const sheet of sheets) sheet.ask();
  });
  whenNumbersChange((keys) => {
    for (const sheet of sheets) sheet.numbersChanged(keys);
  });
  addEventListener("pageshow", (event) => {
    if (event.persisted) rereadNumbers();
  });
  const linked = openLinks(calculator, sheets);
  if (linked || !navigator.connection?.saveData) {
    calculator.start();
    return;
  }
  for (const sheet of sheets) sheet.calculatorTurned("asleep");
  document.addEventListener("focusin", (event) => {
    if (calculator.state === "asleep" && event.target.closest(".ss-sheet")) calculator.start();
  });
}
