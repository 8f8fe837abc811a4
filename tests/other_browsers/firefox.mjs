// Firefox as its makers publish it, by WebDriver BiDi: a window of a fresh visitor, with what webkit.mjs can do too.
import puppeteer from "puppeteer-core";

const RESTART = /Python starts again/u; // it could not use its snapshot, which is no error
const OWN = ["http://127.0.0.1:", "data:", "blob:", "about:"];

export async function open(executable, size, patience) {
  const browser = await puppeteer.launch({ browser: "firefox", executablePath: executable, headless: true });
  const page = await browser.newPage();
  const troubles = [];
  page.setDefaultTimeout(patience);
  page.on("console", (message) => {
    if (message.type() === "error" || RESTART.test(message.text())) troubles.push(`console: ${message.text()}`);
  });
  page.on("pageerror", (error) => troubles.push(`uncaught: ${error}`));
  page.on("request", (request) => {
    if (!OWN.some((start) => request.url().startsWith(start))) troubles.push(`asked another host: ${request.url()}`);
  });
  await page.evaluateOnNewDocument(() => {
    addEventListener("securitypolicyviolation", (event) =>
      console.error(`Content Security Policy: ${event.violatedDirective} refused ${event.blockedURI}`));
  });
  await page.setViewport(size);
  return {
    goto: (address) => page.goto(address),
    reload: () => page.reload(),
    back: () => page.evaluate(() => setTimeout(() => history.back())), // its own waits for a load that a kept page never has
    run: (script, ...given) => page.evaluate(script, ...given),
    until: (script, ...given) => page.waitForFunction(script, {}, ...given),
    click: (selector) => page.locator(selector).click(),
    type: (text) => page.keyboard.type(text),
    tab: () => page.keyboard.press("Tab"),
    troubles: async () => troubles,
    end: () => browser.close(),
  };
}
