// One drawing module for the build (Node, linkedom) and the page: chart data in, an SVG element out. Every word in it,
// axis and line labels included, comes with the data; the look is in the site's style sheets.

const SIZES = { wide: { width: 760, height: 340, room: 150, ticks: 8 }, narrow: { width: 400, height: 330, room: 96, ticks: 5 } };
const MARGINS = { marginLeft: 62, marginTop: 34, marginBottom: 46 };
const CLASSES = { tank: "sv-line", use: "sv-line sv-line-use", fire: "sv-line sv-line-fire", limit: "sv-limit", other: "sv-line sv-line-other" };
const MARGIN_WITHOUT_WORDS = 22; // half of the last number under the axis
const LINE_HEIGHT = 17; // of the words, in units of the drawing
const EM = 18; // a little more than the size of the words, for fonts that run wide
const LETTER = 9; // about as wide as a letter is on average

/** Draw `chart` (see render.view.charts_json) at "wide" or "narrow"; `Plot` holds the marks, `document` makes elements. */
export function draw(Plot, chart, document, size) {
  const { width, height, room, ticks } = SIZES[size];
  const lines = chart.lines.map((line) => ({ ...line, known: line.points.filter((point) => point[1] !== null) })).filter((line) => line.known.length > 0);
  const xs = lines.flatMap((line) => line.known.map((point) => point[0]));
  const frame = {
    document,
    width,
    height,
    ...MARGINS,
    marginRight: room,
    className: "ss-plot",
    style: null,
    x: { label: chart.x, labelArrow: "none", labelAnchor: "center", domain: [Math.min(...xs), Math.max(...xs)], ticks },
    y: { label: chart.y, labelArrow: "none", grid: true, nice: true, zero: zeroBased(lines) || level(lines), ticks: 6 },
  };
  const marks = lines.map((line) => Plot.lineY(line.points, { x: "0", y: "1", className: CLASSES[line.role] ?? CLASSES.other }));
  const here = lines.map((line) => at(line.points, chart.here)).filter((y) => y !== null);
  marks.push(...here.map((y) => Plot.dot([[chart.here, y]], { x: "0", y: "1", r: 5, className: "sv-pt" })));
  let placed = laidOut(Plot, frame, marks, lines, room);
  if (!placed.some((words) => words.behind)) { // no words need the room behind the lines, so the lines have it
    frame.marginRight = MARGIN_WITHOUT_WORDS;
    placed = laidOut(Plot, frame, marks, lines, room);
  }
  marks.push(...placed.map(({ line, index, behind, ...how }) =>
    Plot.text([line.known[index]], { x: "0", y: "1", text: [line.label], className: "sv-t sv-halo", ...how })));
  const svg = Plot.plot({ ...frame, marks });
  svg.querySelectorAll("style").forEach((style) => style.remove());
  for (const element of [svg, ...svg.querySelectorAll("[style]")]) element.removeAttribute("style");
  for (const tick of svg.querySelectorAll("[aria-label$='tick label'] text")) tick.textContent = grouped(tick.textContent, chart.thousands);
  // The chart is one picture with one name; its parts have none of their own.
  for (const part of svg.querySelectorAll("[aria-label]")) part.removeAttribute("aria-label");
  svg.setAttribute("class", "sv sv-chart");
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-label", chart.title);
  return svg;
}

/** A number under an axis with `mark` between thousands as in the page's words: a thin space only from ten thousand on. */
function grouped(text, mark) {
  const belowTenThousand = /^\D?\d,\d{3}(?!,)/u.test(text);
  return belowTenThousand && mark !== "," ? text.replace(",", "") : text.replaceAll(",", mark);
}

/** Where the words of each line stand, learned from a drawing without them. */
function laidOut(Plot, frame, marks, lines, room) {
  const bare = Plot.plot({ ...frame, marks });
  const pixels = lines.map((line) => line.known.map(([x, y]) => [bare.scale("x").apply(x), bare.scale("y").apply(y)]));
  return places(lines, pixels, room, { left: frame.marginLeft, right: frame.width, floor: frame.height - MARGINS.marginBottom });
}

/** The y of a line at x, straight between its points; null where it has none. */
function at(points, x) {
  for (let index = 1; index < points.length; index += 1) {
    const [left, right] = [points[index - 1], points[index]];
    if (left[0] <= x && x <= right[0]) {
      if (left[1] === null || right[1] === null) return null;
      return left[1] + ((right[1] - left[1]) * (x - left[0])) / (right[0] - left[0] || 1);
    }
  }
  return null;
}

/** Amounts start at zero; temperatures and other numbers that never come near it do not. */
function zeroBased(lines) {
  const ys = lines.flatMap((line) => line.known.map((point) => point[1]));
  return Math.min(...ys) >= 0 && Math.min(...ys) < Math.max(...ys) / 3;
}

/** Whether no line rises or falls by more than the last digits of a sum: an axis of such digits would say nothing. */
function level(lines) {
  const ys = lines.flatMap((line) => line.known.map((point) => point[1]));
  return Math.max(...ys) - Math.min(...ys) <= 1e-9 * Math.max(...ys.map(Math.abs));
}

/** Where each line's words stand: behind its end, or along it if it is alone, they find no room there or another
 * line ends too close. */
function places(lines, pixels, room, { left, right, floor }) {
  return lines.map((line, mine) => {
    const path = pixels[mine];
    const [endX, endY] = path.at(-1);
    const near = pixels.findIndex((other, index) => {
      const apart = LINE_HEIGHT * Math.max(rows(lines[index].label, room), rows(line.label, room));
      return index !== mine && Math.abs(other.at(-1)[0] - endX) < room && Math.abs(other.at(-1)[1] - endY) < apart;
    });
    const fits = Math.max(...line.label.split(" ").map((word) => word.length)) * LETTER < room;
    if (near < 0 && fits && lines.length > 1) {
      // Words at the foot of the picture grow upwards, clear of the axis.
      const lineAnchor = endY > floor - LINE_HEIGHT ? "bottom" : "middle";
      return { line, behind: true, index: path.length - 1, textAnchor: "start", lineAnchor, dx: 8, lineWidth: (room - 12) / EM };
    }
    return { line, ...alongside(path, pixels[near] ?? [[0, Infinity]], mine < near, { left, right, long: line.label.length * LETTER }) };
  });
}

/** Words on the free side of a line, at the place in its middle part where it runs furthest from its neighbour, and as
 * far back from there as keeps them within the picture. */
function alongside(path, neighbour, first, { left, right, long }) {
  const gap = (index) => path[index][1] - (neighbour[Math.min(index, neighbour.length - 1)][1]);
  const middle = path.map((_, index) => index).slice(Math.floor(path.length * 0.35), Math.ceil(path.length * 0.65));
  let index = middle.reduce((best, other) => (Math.abs(gap(other)) >= Math.abs(gap(best)) ? other : best), middle[0] ?? path.length - 1);
  const above = gap(index) === 0 ? first : gap(index) < 0;
  const [before, after] = [path[Math.max(index - 1, 0)], path[Math.min(index + 1, path.length - 1)]];
  const rises = before[1] - after[1];
  const level = Math.abs(rises) < (after[0] - before[0]) / 8;
  const textAnchor = level ? "middle" : above === rises > 0 ? "end" : "start";
  const ahead = { middle: long / 2, end: long + 6, start: -6 }[textAnchor];
  while (index > 0 && path[index][0] - ahead + long > right) index -= 1;
  while (index < path.length - 1 && path[index][0] - ahead < left) index += 1;
  return { index, textAnchor, dy: above ? -11 : 13, dx: { middle: 0, end: -6, start: 6 }[textAnchor] };
}

/** Over how many rows a label of this length is broken behind a line's end. */
function rows(label, room) {
  return Math.ceil((label.length * LETTER) / room);
}
