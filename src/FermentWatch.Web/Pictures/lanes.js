// Lanes of what people did, each with its sign: looks, tastes, titrations, photos, moves and trouble; and bars of night.
import { edges, line, xAt } from './stack.js';
import { midnights, HOUR } from './zone.js';

const LANES = [
  { name: 'looked', of: mark => mark.kind === 'Look' },
  { name: 'tasted', of: mark => mark.kind === 'Taste' },
  { name: 'titrated', of: mark => mark.kind === 'Titration' },
  { name: 'photo', of: mark => mark.photo != null },
  { name: 'trouble', of: mark => mark.kind === 'Sighting' || mark.kind === 'Handling' },
  { name: 'moved', of: mark => mark.kind === 'Move' || mark.kind === 'StageChange' },
];

/** The lanes in which there is something. */
export const lanesOf = marks => LANES.map(lane => ({ ...lane, marks: marks.filter(lane.of) })).filter(lane => lane.marks.length > 0);

export function drawEntryLanes(u, part, lanes, ink, labels, { now }) {
  const [top, bottom] = edges(u, part),
    each = (bottom - top) / lanes.length,
    right = u.bbox.left + u.bbox.width;
  lanes.forEach((lane, i) => {
    const y = top + (i + 0.5) * each;
    line(u.ctx, u.bbox.left, y + each / 2, right, y + each / 2, ink.line);
    if (i === 0) line(u.ctx, u.bbox.left, top, right, top, ink.line);
    drawSign(u.ctx, lane.name, u.bbox.left - 18 * devicePixelRatio, y, ink);
    const shown = lane.marks.filter(mark => mark.x >= u.scales.x.min && mark.x <= u.scales.x.max);
    for (const mark of shown) drawSign(u.ctx, lane.name, xAt(u, mark.x), y, ink);
    const size = 13,
      half = (size * devicePixelRatio) / 2;
    for (const mark of shown) labels.take(xAt(u, mark.x) - half, y - half, 2 * half, 2 * half);
    if (lane.name !== 'looked' && lane.name !== 'photo')
      for (const mark of shown)
        labels.writeAt(mark.in_brief, xAt(u, mark.x) + 10 * devicePixelRatio, y - half, { colour: ink.ink, size }) ||
          labels.writeAt(mark.in_brief, xAt(u, mark.x) - 10 * devicePixelRatio, y - half, { colour: ink.ink, size, align: 'right' });
    const count = ['', 'once', 'twice'][shown.length] ?? `${shown.length} times`;
    const from = Math.max(u.bbox.left, Math.min(xAt(u, now), right)) + 10 * devicePixelRatio;
    const text = { looked: `looked ${count}`, photo: shown.length === 1 ? '1 photo' : `${shown.length} photos` }[lane.name] ?? lane.name;
    if (shown.length > 0)
      labels.writeAt(text, from, y - half, { colour: ink.soft, size }) ||
        labels.writeAt(text, u.bbox.left + 4, y - half, { colour: ink.soft, size });
  });
}

function drawSign(context, lane, x, y, ink) {
  const r = 5 * devicePixelRatio;
  Object.assign(context, { strokeStyle: lane === 'looked' ? ink.leaf : ink.ink, fillStyle: ink.ink, lineWidth: 2 * devicePixelRatio });
  context.beginPath();
  if (lane === 'looked')
    (context.moveTo(x - r, y), context.lineTo(x - r / 3, y + r * 0.7), context.lineTo(x + r, y - r * 0.8), context.stroke());
  else if (lane === 'tasted') (context.arc(x, y, r, 0, 2 * Math.PI), context.fill());
  else if (lane === 'titrated')
    (context.moveTo(x, y - r), context.bezierCurveTo(x + 1.6 * r, y + r, x - 1.6 * r, y + r, x, y - r), context.fill());
  else if (lane === 'photo') (context.rect(x - 1.2 * r, y - r, 2.4 * r, 2 * r), context.stroke());
  else if (lane === 'trouble')
    (context.moveTo(x, y - 1.2 * r),
      context.lineTo(x + 1.2 * r, y + r),
      context.lineTo(x - 1.2 * r, y + r),
      context.closePath(),
      context.stroke());
  else (context.moveTo(x - r, y - r), context.lineTo(x + r, y), context.lineTo(x - r, y + r), context.stroke());
}

/** From nine in the evening to six, where a day is wide enough to show it. */
export function drawNights(u, part, clock, ink) {
  const [from, to] = [u.scales.x.min, u.scales.x.max];
  if ((to - from) / 86400 > 60) return;
  const [top, bottom] = edges(u, part);
  u.ctx.fillStyle = ink.night;
  for (const midnight of midnights(clock, from, to + 3 * HOUR))
    u.ctx.fillRect(
      xAt(u, midnight - 3 * HOUR),
      top,
      xAt(u, midnight + 6 * HOUR) - xAt(u, midnight - 3 * HOUR),
      bottom - top + 8 * devicePixelRatio,
    );
}
