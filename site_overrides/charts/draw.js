// One drawing module for the build (Node, linkedom) and the page: chart data in, an SVG element out. Every word in it,
// axis and line labels included, comes with the data; the look is in the site's style sheets.

const HEIGHT = { wide: 340, narrow: 330 };
const WIDTH = { wide: 760, narrow: 400 };
const MARGIN_TOP = 34;
const MARGIN_BOTTOM = 46;
const WORDS_APART = 18;
const CLASSES = { tank: "sv-line", use: "sv-line sv-line-use", fire: "sv-line sv-line-fire", limit: "sv-limit", other: "sv-line sv-line-other" };

/** Draw `chart` (see render.view.charts_json) at "wide" or "narrow"; `Plot` holds the marks, `document` makes elements. */
export function draw(Plot, chart, document, size) {
  const width = WIDTH[size];
  const lines = chart.lines.filter((line) => line.points.length > 0);
  const xs = lines.flatMap((line) => line.points.map((point) => point[0]));
  const room = size === "wide" ? 150 : 96;
  const here = lines.map((line) => ({ line, y: at(line.points, chart.here) })).filter((one) => one.y !== null);
  const svg = Plot.plot({
    document,
    width,
    height: HEIGHT[size],
    marginLeft: 62,
    marginRight: room,
    marginTop: MARGIN_TOP,
    marginBottom: MARGIN_BOTTOM,
    className: "ss-plot",
    style: null,
    x: { label: chart.x, labelArrow: "none", labelAnchor: "center", domain: [Math.min(...xs), Math.max(...xs)], ticks: size === "wide" ? 8 : 5 },
    y: { label: chart.y, labelArrow: "none", grid: true, nice: true, zero: zeroBased(lines), ticks: 6 },
    marks: [
      ...lines.map((line) => Plot.lineY(line.points, { x: "0", y: "1", className: CLASSES[line.role] ?? CLASSES.other })),
      ...here.map((one) => Plot.dot([[chart.here, one.y]], { x: "0", y: "1", r: 5, className: "sv-pt" })),
      ...apart(lines, HEIGHT[size]).map(({ line, dy }) =>
        Plot.text(line.points.slice(-1), { x: "0", y: "1", text: [line.label], textAnchor: "start", dx: 8, dy, className: "sv-t", lineWidth: room / 9 }),
      ),
    ],
  });
  svg.querySelectorAll("style").forEach((style) => style.remove());
  for (const element of [svg, ...svg.querySelectorAll("[style]")]) element.removeAttribute("style");
  svg.setAttribute("class", `sv sv-chart`);
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-label", chart.title);
  return svg;
}

/** The y of a line at x, straight between its points; null outside them. */
function at(points, x) {
  for (let index = 1; index < points.length; index += 1) {
    const [left, right] = [points[index - 1], points[index]];
    if (left[0] <= x && x <= right[0]) return left[1] + ((right[1] - left[1]) * (x - left[0])) / (right[0] - left[0] || 1);
  }
  return null;
}

/** Amounts start at zero; temperatures and other numbers that never come near it do not. */
function zeroBased(lines) {
  const ys = lines.flatMap((line) => line.points.map((point) => point[1]));
  return Math.min(...ys) >= 0 && Math.min(...ys) < Math.max(...ys) / 3;
}

/** How far each line's words move down from its end, so that no two stand on one another. */
function apart(lines, height) {
  const ys = lines.flatMap((line) => line.points.map((point) => point[1]));
  const low = zeroBased(lines) ? 0 : Math.min(...ys);
  const perUnit = (height - MARGIN_TOP - MARGIN_BOTTOM) / (Math.max(...ys) - low || 1);
  const ends = lines.map((line) => ({ line, y: line.points.at(-1)[1], dy: 0 })).sort((one, other) => other.y - one.y);
  for (let index = 1; index < ends.length; index += 1) {
    const [above, below] = [ends[index - 1], ends[index]];
    below.dy = Math.max(0, above.dy + WORDS_APART - (above.y - below.y) * perUnit);
  }
  return ends;
}
