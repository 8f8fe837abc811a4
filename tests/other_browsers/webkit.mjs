// WebKit on a screen in memory, by WebDriver: a window of a fresh visitor, with what firefox.mjs can do too.
import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

import { Builder, By, Capabilities, Key, until } from "selenium-webdriver";
import { findFreePort } from "selenium-webdriver/net/portprober.js";
import { DriverService } from "selenium-webdriver/remote/index.js";

/** WebDriver tells nothing of what a page prints, so each page notes it from its load on; what came before is not heard. */
function listen() {
  const heard = (globalThis.heardByTest = []);
  const { error, info } = console;
  console.error = (...said) => { heard.push(`console: ${said.join(" ")}`); error(...said); };
  console.info = (...said) => { if (/Python starts again/u.test(said[0])) heard.push(said[0]); info(...said); };
  addEventListener("error", (event) => heard.push(`uncaught: ${event.message}`));
  addEventListener("unhandledrejection", (event) => heard.push(`uncaught: ${event.reason}`));
  addEventListener("securitypolicyviolation", (event) => heard.push(`${event.violatedDirective} refused ${event.blockedURI}`));
}

// MiniBrowser's own buttons would keep its window wider than a phone.
const NARROW = "button, entry { min-width: 0; margin: 0; padding: 0; border-width: 0; }";

export async function open(executable, { width, height }, patience) {
  const folder = mkdtempSync(join(tmpdir(), "webkit-"));
  mkdirSync(join(folder, "gtk-3.0"));
  writeFileSync(join(folder, "gtk-3.0", "gtk.css"), NARROW);
  const screen = spawn("Xvfb", ["-displayfd", "1", "-screen", "0", `${width}x${height}x24`, "-nolisten", "tcp"], {
    stdio: ["ignore", "pipe", "ignore"],
  });
  process.on("exit", () => screen.kill());
  const [number] = await once(screen.stdout, "data");
  const port = await findFreePort();
  const service = new DriverService.Builder("WebKitWebDriver")
    .setLoopback(true)
    .setPort(port)
    .addArguments(`--port=${port}`)
    .setEnvironment({ ...process.env, DISPLAY: `:${String(number).trim()}`, XDG_CONFIG_HOME: folder })
    .build();
  const wanted = new Capabilities({
    browserName: "MiniBrowser",
    "webkitgtk:browserOptions": { binary: executable, args: ["--automation"] },
  });
  const driver = await new Builder().usingServer(await service.start()).withCapabilities(wanted).build();
  await driver.manage().window().setRect({ x: 0, y: 0, width, height });
  const settled = (question) => driver.wait(question, patience, "nothing came of it", 50);
  const troubles = [];
  const gather = async () => troubles.push(...(await driver.executeScript(() => globalThis.heardByTest?.splice(0) ?? [])));
  const leaving = async (go) => {
    await gather();
    await go();
    await driver.executeScript(listen);
  };
  return {
    goto: (address) => leaving(() => driver.get(address)),
    reload: () => leaving(() => driver.navigate().refresh()),
    back: () => leaving(() => driver.navigate().back()),
    run: (script, ...given) => driver.executeScript(script, ...given),
    until: (script, ...given) => settled(() => driver.executeScript(script, ...given)),
    async click(selector) {
      const found = await settled(until.elementLocated(By.css(selector)));
      // By itself it brings what it clicks to the lower edge, where the answer lies on a phone.
      await driver.executeScript((element) => element.scrollIntoView({ block: "center", behavior: "instant" }), found);
      await found.click();
    },
    type: (text) => driver.actions().sendKeys(text).perform(),
    tab: () => driver.actions().sendKeys(Key.TAB).perform(),
    async troubles() {
      await gather();
      return troubles;
    },
    async end() {
      await driver.quit();
      await service.kill();
      screen.kill();
      rmSync(folder, { recursive: true });
    },
  };
}
