// Charts are drawn at build; the drawing library is fetched only when one has to change.
let library = null;

/** Draw a chart (data from Python) into its figure, in the two widths of which the style sheet shows one. */
export async function drawInto(figure, chart) {
  library ??= import("../js/plot.bundle.js").catch((error) => {
    library = null; // the next chart asks again: the line may be back
    throw error;
  });
  const { drawChart } = await library;
  for (const size of ["wide", "narrow"]) {
    figure.querySelector(`.ss-chart-${size}`).replaceChildren(drawChart(chart, size));
  }
}
