// The main ways through the site in another browser, as a reader on a phone goes them:
//   node journeys.mjs BROWSER EXECUTABLE ADDRESS JOURNEY < what the reader types, as JSON
// Prints what the page showed, and what went wrong on it, as JSON. Whether that is right is judged in test_other_browsers.py.
import { readFileSync } from "node:fs";

const PATIENCE = 120_000; // milliseconds: what a busy machine may need
const PHONE = { width: 390, height: 844 };

const plain = (text) => text.split(/\s+/u).join(" ").trim();

/** Until a worksheet is live and nothing that was asked is still without an answer. */
const live = (page, worksheet) => page.until((id) => {
  const sheet = document.getElementById(id);
  const begins = /^(Getting the calculator ready|The calculator starts)/;
  if (!sheet || begins.test(sheet.querySelector("[data-slot=status]").textContent)) return false;
  return !sheet.querySelector(".ss-fields :disabled") && !document.querySelector(".ss-sheet[data-busy]");
}, worksheet);

const there = (page, selector) => page.until((wanted) => Boolean(document.querySelector(wanted)), selector);

/** Until the charts are drawn anew too: a page that is left meanwhile says that what draws them did not come. */
async function switchTo(page, units, worksheet) {
  await page.click(`[data-ss-units=${units}]`);
  await there(page, `[data-ss-units=${units}][aria-pressed=true]`);
  await live(page, worksheet);
  await page.until(() => !document.querySelector(".ss-stale"));
}

/** Type over what is in a box, as a reader does, key by key. */
async function fill(page, worksheet, key, text) {
  await page.run((id) => {
    const box = document.getElementById(id);
    const fold = box.closest("details");
    if (fold) fold.open = true;
    box.scrollIntoView({ block: "center" });
    box.focus();
    box.select();
  }, `${worksheet}-${key}`);
  await page.type(text);
  await page.tab();
  await live(page, worksheet);
}

/** What a worksheet shows. */
async function shown(page, worksheet) {
  const seen = await page.run((id) => {
    const sheet = document.getElementById(id);
    return {
      state: sheet.dataset.state,
      figure: sheet.querySelector(".ss-figure")?.textContent ?? "",
      results: [...sheet.querySelectorAll("tr[data-result]")].map((row) => [row.dataset.result, row.querySelector("td").textContent]),
      errors: [...sheet.querySelectorAll(".ss-field > .ss-error:not([hidden])")].map((line) => line.textContent),
      boxes: [...sheet.querySelectorAll(".ss-field[data-key] :is(input:not([type=checkbox]), select)")].map((box) => [
        box.closest(".ss-field").dataset.key, box.value,
      ]),
      width: document.documentElement.scrollWidth,
    };
  }, worksheet);
  return {
    ...seen,
    figure: plain(seen.figure),
    results: Object.fromEntries(seen.results.map(([key, text]) => [key, plain(text)])),
    errors: seen.errors.map(plain),
    boxes: Object.fromEntries(seen.boxes),
  };
}

const JOURNEYS = {
  /** From the home page to the verdict; what is typed before Python is ready is kept. Then the plan and its record. */
  async start(page, address, typed) {
    await page.goto(address);
    await page.click('.ss-start a[href$="#start-fuel-oil"]');
    for (const [name, text] of typed.answers) {
      await page.click(text ? `#first-sketch-${name}` : `#start-${name}`);
      if (text) await page.type(text);
    }
    await page.tab();
    await there(page, "#first-sketch[data-state=ready]");
    await live(page, "first-sketch");
    const sketch = await shown(page, "first-sketch");
    await page.goto(`${address}record/`);
    await there(page, "[data-ss-record][data-mine]:not([data-busy]) .ss-record");
    const record = await page.run(() => document.querySelector(".ss-record").innerText);
    return { sketch, record: plain(record) };
  },

  /**
   * A guide's worksheet: other numbers, one that is none, other units, the page loaded again, the plan, a link from
   * somebody else; then the same without a line, and back in the history.
   */
  async guide(page, address, typed) {
    const guide = `${address}${typed.guide}`;
    const { worksheet } = typed;
    const [[first, number]] = Object.entries(typed.numbers);
    await page.goto(guide);
    await live(page, worksheet);
    await page.run((id) => {
      const sheet = document.getElementById(id);
      if ("closed" in sheet.dataset) sheet.querySelector("[data-ss-open]").click();
    }, worksheet);
    const example = await shown(page, worksheet);
    await fill(page, worksheet, first, typed.wrong);
    const wrong = await shown(page, worksheet);
    await fill(page, worksheet, first, number);
    for (const [key, text] of Object.entries(typed.numbers).slice(1)) await fill(page, worksheet, key, text);
    const edited = await shown(page, worksheet);
    await switchTo(page, "si", worksheet);
    const switched = await shown(page, worksheet);
    await page.reload();
    await live(page, worksheet);
    const again = await shown(page, worksheet);
    await page.goto(`${address}plan/`);
    await there(page, ".ss-plan[data-state=ready]:not([data-busy])");
    const plan = Object.fromEntries(await page.run(() => [...document.querySelectorAll(".ss-plan [data-key]")].map((row) =>
      [row.dataset.key, row.querySelector(".ss-row :is(input, select)").value])));
    await page.goto(`${guide}${typed.link}`);
    await there(page, "[data-borrowed] [data-ss-link=mine]");
    await live(page, worksheet);
    const borrowed = await shown(page, worksheet);
    await page.click("[data-borrowed] [data-ss-link=mine]");
    await live(page, worksheet);
    await page.run(() => { navigator.serviceWorker.ready.then(() => { document.body.dataset.kept = ""; }); });
    await there(page, "body[data-kept]");
    await fetch(`${address}${typed.cut}`);
    await page.goto(guide);
    await live(page, worksheet);
    await switchTo(page, "us", worksheet);
    const offline = await shown(page, worksheet);
    await page.goto(`${address}plan/`);
    await page.back();
    await there(page, `#${worksheet}`);
    await live(page, worksheet);
    await fill(page, worksheet, ...typed.later);
    const back = await shown(page, worksheet);
    return { example, wrong, edited, switched, again, plan, borrowed, offline, back };
  },
};

const [browser, executable, address, journey] = process.argv.slice(2);
const typed = JSON.parse(readFileSync(0, "utf8"));
const { open } = await import(`./${browser}.mjs`);
const page = await open(executable, PHONE, PATIENCE);
try {
  const seen = await JOURNEYS[journey](page, address, typed);
  console.log(JSON.stringify({ seen, troubles: await page.troubles() }));
} catch (error) {
  console.error((await page.troubles()).join("\n"));
  throw error;
} finally {
  await page.end();
}
