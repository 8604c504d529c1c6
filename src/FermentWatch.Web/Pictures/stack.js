// One drawing of several panels under each other, with lanes between: one time axis, one pointer, one canvas.
import uPlot from 'uplot';
import { inkOf, font } from './ink.js';

/** Where panels and lanes lie, counted from the top of the plot in CSS pixels. */
export function layOut(parts, gap = 28) {
  let top = 30;
  for (const part of parts) {
    part.top = top;
    top += part.height + gap;
  }
  return top - gap + 8;
}

/** The span of a scale by which a panel's own values fill its place in the whole plot. */
const stretched = (part, whole) => () => {
  const perPixel = (part.high - part.low) / part.height;
  return [part.low - perPixel * (whole - part.top - part.height), part.high + perPixel * part.top];
};

/**
 * Draws a stack.
 * @param host where it goes
 * @param parts panels ({scale, low, high, height, ticks, title}) and lanes ({height})
 * @param series what uPlot draws, each on the scale of a panel
 * @param axis ticks of the bottom: (from, to, width) => [{at, name, below}]
 * @param draw {behind, front}: what is drawn by hand, with (u, ink)
 */
export function makeStack({ host, parts, series, bands, data, axis, draw, full, onCursor }) {
  const whole = layOut(parts);
  const panels = parts.filter(part => part.scale);
  let ink = inkOf(host);
  const colour = name => () => ink[name];
  let ticks = [];

  const options = {
    width: host.clientWidth,
    height: whole + 46,
    padding: [0, 14, 0, 44],
    legend: { show: false },
    cursor: { y: false, drag: { x: false, y: false }, points: { show: false }, focus: { prox: -1 } },
    scales: Object.fromEntries([
      ['x', { time: false, auto: false, range: (u, low, high) => [low, high] }],
      ...panels.map(part => [part.scale, { auto: false, range: stretched(part, whole) }]),
    ]),
    axes: [
      {
        size: 46,
        font: '13px system-ui, sans-serif',
        stroke: colour('ink'),
        grid: { show: false },
        ticks: { stroke: colour('ink'), size: 6 },
        splits: (u, _, from, to) => (ticks = axis(from, to, u.bbox.width / devicePixelRatio)).map(tick => tick.at),
        values: u =>
          ticks.map(tick =>
            u.valToPos(tick.at, 'x') > u.bbox.width / devicePixelRatio - 8 ? '' : tick.below ? `${tick.name}\n${tick.below}` : tick.name,
          ),
      },
      // Each panel has its own scale, and is named at its own place.
      ...panels.map(part => ({ scale: part.scale, show: false })),
    ],
    series: [
      {},
      ...series.map(each => ({
        points: { show: false },
        ...each,
        stroke: each.ink ? colour(each.ink) : undefined,
        width: each.width ?? 2,
      })),
    ],
    bands: bands.map(([high, low, name]) => ({ series: [high, low], fill: colour(name) })),
    hooks: {
      drawClear: [
        u => {
          ink = inkOf(host);
          clipped(u, () => draw.behind(u, ink));
          apart(u, () => panels.forEach(part => drawGrid(u, part, ink)));
        },
      ],
      draw: [
        u =>
          apart(u, () => {
            panels.forEach(part => nameTicks(u, part, ink));
            draw.front(u, ink);
          }),
      ],
      setCursor: [onCursor],
    },
  };
  const plot = new uPlot(options, data, host);
  plot.setScale('x', { min: full[0], max: full[1] });
  return plot;
}

function drawGrid(u, part, ink) {
  for (const tick of part.ticks) {
    const y = u.valToPos(tick, part.scale, true);
    const isMarked = part.marked?.some(each => Math.abs(each - tick) < 0.6);
    line(u.ctx, u.bbox.left, y, u.bbox.left + u.bbox.width, y, isMarked ? ink.soft : ink.line, 1, isMarked ? [2, 4] : []);
  }
}

function nameTicks(u, part, ink) {
  const write = (text, y, weight = 400) => {
    Object.assign(u.ctx, { font: font(14, weight), fillStyle: ink.ink, textAlign: 'right', textBaseline: 'middle' });
    u.ctx.fillText(text, u.bbox.left - 8 * devicePixelRatio, y);
  };
  const places = part.ticks.map(tick => u.valToPos(tick, part.scale, true));
  part.ticks.forEach((tick, i) => write(String(tick), places[i]));
  const [top, bottom] = edges(u, part),
    high = 14 * devicePixelRatio;
  const title = [top - high, (top + bottom) / 2, bottom + high].find(y => places.every(place => Math.abs(place - y) > high)) ?? top - high;
  write(part.title, title, 700);
}

/** Top and bottom of a part in canvas pixels. */
export const edges = (u, part) => [u.bbox.top + part.top * devicePixelRatio, u.bbox.top + (part.top + part.height) * devicePixelRatio];

export const xAt = (u, value) => u.valToPos(value, 'x', true);

/** Runs and leaves the pen as it was: uPlot remembers how it set it. */
function apart(u, work) {
  u.ctx.save();
  work();
  u.ctx.restore();
}

/** Runs with everything outside of the plot cut off. */
export function clipped(u, work) {
  u.ctx.save();
  u.ctx.beginPath();
  u.ctx.rect(u.bbox.left, u.bbox.top, u.bbox.width, u.bbox.height);
  u.ctx.clip();
  work(u.ctx);
  u.ctx.restore();
}

export function line(context, x0, y0, x1, y1, colour, width = 1, dash = []) {
  Object.assign(context, { strokeStyle: colour, lineWidth: width * devicePixelRatio });
  context.setLineDash(dash.map(each => each * devicePixelRatio));
  context.beginPath();
  context.moveTo(x0, y0);
  context.lineTo(x1, y1);
  context.stroke();
  context.setLineDash([]);
}

/** Round values within a span, about as many as wanted. */
export function niceTicks(low, high, wanted) {
  const least = (high - low) / wanted,
    power = 10 ** Math.floor(Math.log10(least));
  const step = power * ([1, 2, 5, 10].find(each => least / power <= each) ?? 10);
  const ticks = [];
  for (let tick = Math.ceil(low / step) * step; tick <= high + step / 1e6; tick += step) ticks.push(Number(tick.toFixed(6)));
  return ticks;
}
