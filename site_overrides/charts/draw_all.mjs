// node draw_all.mjs < charts.json > drawings.json
// Draws every chart of the build: {key: chart} in, {key: {wide, narrow}} of SVG texts out.
import fs from "node:fs";

import * as Plot from "@observablehq/plot";
import { parseHTML } from "linkedom";

import { draw } from "./draw.js";

const charts = JSON.parse(fs.readFileSync(0, "utf-8"));
const drawings = {};
for (const [key, chart] of Object.entries(charts)) {
  drawings[key] = {};
  for (const size of ["wide", "narrow"]) {
    const { document } = parseHTML("<!doctype html><html><body></body></html>");
    drawings[key][size] = draw(Plot, chart, document, size).outerHTML;
  }
}
fs.writeFileSync(1, JSON.stringify(drawings));
