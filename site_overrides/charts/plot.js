// The page's chart bundle: the parts of Observable Plot that charts here use, and the drawing module on top of them.
import { dot, lineY, plot, text } from "@observablehq/plot";

import { draw } from "./draw.js";

/** Draw a chart of the page's own document at "wide" or "narrow". */
export const drawChart = (chart, size) => draw({ dot, lineY, plot, text }, chart, document, size);
