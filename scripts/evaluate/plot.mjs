// The diagrams of the evaluation, as SVG.

const SIZE = 320;
const MARGIN = 44;
const WHOLE = SIZE + 2 * MARGIN;

/** How often the first place was right over how probable it was said to be; a bar is two standard errors. */
export function reliabilityDiagram(name, bins) {
  const marks = bins
    .filter(({ count }) => count > 0)
    .map(({ meanProbability: p, rate, count }) => {
      const error = 2 * Math.sqrt((p * (1 - p)) / count);
      const [top, bottom] = [Math.min(1, rate + error), Math.max(0, rate - error)];
      const said = `${count} cases: said ${fix(p)}, found ${fix(rate)}`;
      return [
        `<line x1="${x(p)}" x2="${x(p)}" y1="${y(top)}" y2="${y(bottom)}" stroke="#36c"/>`,
        `<circle cx="${x(p)}" cy="${y(rate)}" r="4" fill="#36c"><title>${said}</title></circle>`,
      ].join("\n");
    });
  return picture({
    title: `First place of ${name}: how often it was right, by how probable it was said to be`,
    head: name,
    axes: ["said", "found"],
    body: [
      `<line x1="${x(0)}" y1="${y(0)}" x2="${x(1)}" y2="${y(1)}" stroke="#999" stroke-dasharray="4"/>`,
      ...marks,
    ],
  });
}

/**
 * Lines of a rate over the size of the noise.
 * @param lines name, colour and points [sigma, rate] of each
 */
export function noiseDiagram(lines) {
  const most = Math.max(...lines.flatMap(({ points }) => points.map(([sigma]) => sigma)));
  const drawn = lines.flatMap(({ name, colour, points }, i) => [
    `<polyline fill="none" stroke="${colour}" points="${points
      .map(([sigma, rate]) => `${x(sigma / most)},${y(rate)}`)
      .join(" ")}"/>`,
    ...points.map(
      ([sigma, rate]) =>
        `<circle cx="${x(sigma / most)}" cy="${y(rate)}" r="4" fill="${colour}"><title>${name}, sigma ${sigma}: ${fix(rate)}</title></circle>`,
    ),
    `<text x="${MARGIN + 12}" y="${WHOLE - MARGIN - 12 - 16 * i}" fill="${colour}">${name}</text>`,
  ]);
  const sigmas = [...new Set(lines.flatMap(({ points }) => points.map(([sigma]) => sigma)))];
  const ticks = sigmas.map(
    (sigma) =>
      `<text x="${x(sigma / most)}" y="${WHOLE - MARGIN + 16}" text-anchor="middle">${sigma}</text>`,
  );
  return picture({
    title:
      "First place right, by the noise on all weights (standard deviation in natural log-odds)",
    head: "First place right under noise",
    axes: ["sigma", "top-1"],
    body: [...ticks, ...drawn],
  });
}

function picture({ title, head, axes: [across, upwards], body }) {
  const scale = [0, 0.5, 1].map(
    (p) =>
      `<text x="${MARGIN - 6}" y="${y(p)}" text-anchor="end" dominant-baseline="middle">${p}</text>`,
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WHOLE} ${WHOLE}" font-family="sans-serif" font-size="12">`,
    `<title>${title}</title>`,
    `<rect width="${WHOLE}" height="${WHOLE}" fill="#fff"/>`,
    `<rect x="${MARGIN}" y="${MARGIN}" width="${SIZE}" height="${SIZE}" fill="none" stroke="#999"/>`,
    ...scale,
    ...body,
    `<text x="${MARGIN}" y="24">${head}</text>`,
    `<text x="${WHOLE / 2}" y="${WHOLE - 6}" text-anchor="middle">${across}</text>`,
    `<text x="12" y="${WHOLE / 2}" text-anchor="middle" transform="rotate(-90 12 ${WHOLE / 2})">${upwards}</text>`,
    "</svg>\n",
  ].join("\n");
}

function x(part) {
  return fix(MARGIN + part * SIZE);
}

function y(part) {
  return fix(MARGIN + (1 - part) * SIZE);
}

function fix(value) {
  return value.toFixed(3);
}
