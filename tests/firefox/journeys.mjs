// The main ways through the site in Firefox, as a reader on a phone goes them:
//   node journeys.mjs FIREFOX ADDRESS JOURNEY < what the reader types, as JSON
// Prints what the page showed, and what went wrong on it, as JSON. Whether that is right is judged in test_firefox.py.
import { readFileSync } from "node:fs";

import puppeteer from "puppeteer-core";

const PATIENCE = 120_000; // milliseconds: what a busy machine may need
const PHONE = { width: 390, height: 844 };
const OWN = ["http://127.0.0.1:", "data:", "blob:", "about:"];

const plain = (text) => text.split(/\s+/u).join(" ").trim();

/** A page of a fresh visitor; `troubles` hears of errors, of what the policy refuses and of requests to other hosts. */
async function visit(browser, troubles) {
  const page = await (await browser.createBrowserContext()).newPage();
  page.setDefaultTimeout(PATIENCE);
  page.on("console", (message) => message.type() === "error" && troubles.push(`console: ${message.text()}`));
  page.on("pageerror", (error) => troubles.push(`uncaught: ${error}`));
  page.on("request", (request) => {
    if (!OWN.some((start) => request.url().startsWith(start))) troubles.push(`asked another host: ${request.url()}`);
  });
  await page.evaluateOnNewDocument(() => {
    addEventListener("securitypolicyviolation", (event) =>
      console.error(`Content Security Policy: ${event.violatedDirective} refused ${event.blockedURI}`));
    addEventListener("pageshow", (event) => { document.body.dataset.cameBack = event.persisted; });
  });
  await page.setViewport(PHONE);
  return page;
}

/** Until a worksheet is live and nothing that was asked is still without an answer. */
async function live(page, worksheet) {
  await page.waitForFunction((id) => {
    const sheet = document.getElementById(id);
    return sheet && !sheet.querySelector(".ss-fields :disabled") && !document.querySelector(".ss-sheet[data-busy]");
  }, {}, worksheet);
}

/** Type over what is in a box, as a reader does, key by key. */
async function fill(page, worksheet, key, text) {
  const box = await page.waitForSelector(`#${worksheet}-${key}`);
  await box.evaluate((element) => {
    const fold = element.closest("details");
    if (fold) fold.open = true;
    element.scrollIntoView({ block: "center" });
    element.focus();
    element.select();
  });
  await page.keyboard.type(text);
  await page.keyboard.press("Tab");
  await live(page, worksheet);
}

/** What a worksheet shows. */
async function shown(page, worksheet) {
  const seen = await page.$eval(`#${worksheet}`, (sheet) => ({
    state: sheet.dataset.state,
    figure: sheet.querySelector(".ss-figure").textContent,
    results: Object.fromEntries(
      [...sheet.querySelectorAll("tr[data-result]")].map((row) => [row.dataset.result, row.querySelector("td").textContent]),
    ),
    boxes: Object.fromEntries(
      [...sheet.querySelectorAll(".ss-field[data-key] :is(input:not([type=checkbox]), select)")].map((box) => [
        box.closest(".ss-field").dataset.key, box.value,
      ]),
    ),
    width: document.documentElement.scrollWidth,
  }));
  const results = Object.entries(seen.results).map(([key, text]) => [key, plain(text)]);
  return { ...seen, figure: plain(seen.figure), results: Object.fromEntries(results) };
}

const JOURNEYS = {
  /** From the home page to the verdict; what is typed before Python is ready is kept. Then the plan and its record. */
  async start(page, address, typed) {
    await page.goto(address);
    await page.locator('.ss-start a[href$="#start-fuel-oil"]').click();
    for (const [name, text] of typed.answers) {
      await page.locator(text ? `#first-sketch-${name}` : `#start-${name}`).click();
      await page.keyboard.type(text);
    }
    await page.keyboard.press("Tab");
    await page.waitForSelector("#first-sketch[data-state=ready]");
    await live(page, "first-sketch");
    const sketch = await shown(page, "first-sketch");
    await page.goto(`${address}record/`);
    await page.waitForSelector("[data-ss-record][data-mine]:not([data-busy]) .ss-record");
    const record = await page.$eval(".ss-record", (element) => element.innerText);
    return { sketch, record: plain(record) };
  },

  /** A guide's worksheet: other numbers, other units, the page loaded again, the plan; then the same without a line, and back in the history. */
  async guide(page, address, typed) {
    await page.goto(`${address}${typed.guide}`);
    await live(page, typed.worksheet);
    await page.$eval(`#${typed.worksheet}`, (sheet) => "closed" in sheet.dataset && sheet.querySelector("[data-ss-open]").click());
    const example = await shown(page, typed.worksheet);
    for (const [key, text] of Object.entries(typed.numbers)) await fill(page, typed.worksheet, key, text);
    const edited = await shown(page, typed.worksheet);
    await page.locator("[data-ss-units=si]").click();
    await page.waitForSelector("[data-ss-units=si][aria-pressed=true]");
    await live(page, typed.worksheet);
    const switched = await shown(page, typed.worksheet);
    await page.reload();
    await live(page, typed.worksheet);
    const again = await shown(page, typed.worksheet);
    await page.goto(`${address}plan/`);
    await page.waitForSelector(".ss-plan[data-state=ready]:not([data-busy])");
    const plan = await page.$$eval(".ss-plan [data-key]", (rows) =>
      Object.fromEntries(rows.map((row) => [row.dataset.key, row.querySelector(".ss-row :is(input, select)").value])));
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await fetch(`${address}${typed.cut}`);
    await page.goto(`${address}${typed.guide}`);
    await live(page, typed.worksheet);
    await page.locator("[data-ss-units=us]").click();
    await page.waitForSelector("[data-ss-units=us][aria-pressed=true]");
    await live(page, typed.worksheet);
    const offline = await shown(page, typed.worksheet);
    await page.goto(`${address}plan/`);
    await page.evaluate(() => setTimeout(() => history.back())); // puppeteer's own waits for a load that a kept page never has
    await page.waitForSelector(`body[data-came-back] #${typed.worksheet}`);
    await live(page, typed.worksheet);
    const kept = await page.$eval("body", (body) => body.dataset.cameBack);
    await fill(page, typed.worksheet, ...typed.later);
    const back = await shown(page, typed.worksheet);
    return { example, edited, switched, again, plan, offline, kept, back };
  },
};

const [firefox, address, journey] = process.argv.slice(2);
const typed = JSON.parse(readFileSync(0, "utf8"));
const troubles = [];
const browser = await puppeteer.launch({ browser: "firefox", executablePath: firefox, headless: true });
try {
  const seen = await JOURNEYS[journey](await visit(browser, troubles), address, typed);
  console.log(JSON.stringify({ seen, troubles }));
} catch (error) {
  console.error(troubles.join("\n"));
  throw error;
} finally {
  await browser.close();
}
