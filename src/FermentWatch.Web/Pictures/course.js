// A jar's course: pH measured and expected, what was entered in lanes of its own, and the temperature by day and night.
import uPlot from 'uplot';
import { Labels, drawMark } from './ink.js';
import { gappy } from './gaps.js';
import { clipped, edges, line, makeStack, niceTicks, xAt } from './stack.js';
import { clockOf, dateTicks } from './zone.js';
import { degrees, phWords, seconds } from './numbers.js';
import { drawNights, drawEntryLanes, lanesOf } from './lanes.js';
import { near } from './near.js';

const SLOW_CELSIUS = 16,
  SOFT_CELSIUS = 24;

/** Draws the course that the API answered, and returns the plot with its clock, stops and words. */
export function drawCourse(host, course, onCursor) {
  const clock = clockOf(course.time_zone, course.reads_times_by),
    unit = degrees(course.reads_temperatures_in);
  const [packed, now, end] = [course.packed_at, course.known_until, course.shown_until].map(seconds);
  const expectedAt = course.expected.at.map(seconds);
  const marks = course.entries.map(entry => ({ ...entry, x: seconds(entry.at) }));
  const readings = marks.filter(mark => mark.ph != null);
  const full = roomFor(marks, Math.min(packed, ...marks.map(mark => mark.x)), Math.max(end, now));
  const wide = host.clientWidth > 620;
  const hasPh = readings.length > 0 || expectedAt.length > 0;
  const lanes = lanesOf(marks);
  const heat = heatPanel(course, unit, wide);
  const ph = hasPh && { scale: 'ph', title: 'pH', height: wide ? 220 : 190, ...phSpan(course, readings), ticks: [3, 4, 5, 6, 7] };
  if (ph) ph.ticks = ph.ticks.filter(tick => tick >= ph.low && tick <= ph.high);
  const lanePart = lanes.length > 0 && { height: lanes.length * 28 };
  const parts = [ph, lanePart, heat].filter(Boolean);

  const at = gappy(course.temperature.at.map(seconds), course.temperature.point_seconds);
  const tables = [
    // The middle in two columns, so that what is past is drawn through and what is to come in dots.
    [
      expectedAt,
      course.expected.ph_p90,
      course.expected.ph_p10,
      course.expected.ph_p50.map((ph, i) => (expectedAt[i] <= now ? ph : null)),
      course.expected.ph_p50.map((ph, i) => ((expectedAt[i + 1] ?? Infinity) > now ? ph : null)),
    ],
    [
      expectedAt.filter(each => each >= now - 43200),
      ...['high_celsius', 'low_celsius'].map(name => course.expected[name].filter((_, i) => expectedAt[i] >= now - 43200).map(unit.of)),
    ],
    [at.times, ...['mean_celsius', 'maximum_celsius', 'minimum_celsius'].map(name => at.fill(course.temperature[name].map(unit.of)))],
  ];
  const data = uPlot.join(tables);
  const scaleOfHeat = heat ? 'heat' : 'ph';

  const smooth = uPlot.paths.spline();
  const series = [
    { scale: ph ? 'ph' : 'heat', ink: 'band', width: 1, paths: smooth },
    { scale: ph ? 'ph' : 'heat', ink: 'band', width: 1, paths: smooth },
    { scale: ph ? 'ph' : 'heat', ink: 'leaf', width: 2.2, paths: smooth },
    { scale: ph ? 'ph' : 'heat', ink: 'leaf', width: 2.2, dash: [4, 4], paths: smooth },
    { scale: scaleOfHeat, ink: 'heat', width: 1, dash: [3, 4] },
    { scale: scaleOfHeat, ink: 'heat', width: 1, dash: [3, 4] },
    { scale: scaleOfHeat, ink: 'heat', width: 1.8 },
    { scale: scaleOfHeat, width: 0 },
    { scale: scaleOfHeat, width: 0 },
  ];
  const isRolled = (course.temperature.point_seconds ?? 0) > 3600;
  const bands = [[1, 2, 'band'], [5, 6, 'heatBand'], ...(isRolled ? [[8, 9, 'heatBand']] : [])];

  const draw = {
    behind(u, ink) {
      const window = course.sour_enough;
      if (window) {
        const [from, until] = [xAt(u, seconds(window.from)), xAt(u, window.until ? seconds(window.until) : full[1])];
        u.ctx.fillStyle = ink.window;
        u.ctx.fillRect(from, u.bbox.top + 22 * devicePixelRatio, until - from, u.bbox.height);
      }
      if (heat) drawNights(u, heat, clock, ink);
    },
    front(u, ink) {
      const labels = new Labels(u.ctx, ink.card, {
        left: u.bbox.left,
        right: u.bbox.left + u.bbox.width,
        top: u.bbox.top - 8,
        bottom: u.bbox.top + u.bbox.height,
      });
      nameHead(u, ink, labels);
      if (ph) clipped(u, () => drawPh(u, ink, labels));
      if (lanePart) drawEntryLanes(u, lanePart, lanes, ink, labels, { now });
      if (heat) clipped(u, () => nameHeat(u, ink, labels));
    },
  };

  /** The window and today stand side by side above the picture; the words of both get shorter until they fit. */
  function nameHead(u, ink, labels) {
    const y = u.bbox.top + 3 * devicePixelRatio,
      away = 5 * devicePixelRatio,
      x = xAt(u, now);
    const isToday = course.is_kept && now >= u.scales.x.min && now <= u.scales.x.max;
    if (isToday) line(u.ctx, x, y + 20 * devicePixelRatio, x, u.bbox.top + u.bbox.height, ink.ink, 1.2);
    const today = isToday
      ? [
          [x, 'center'],
          [x - away, 'right'],
          [x + away, 'left'],
        ].map(([at, align]) => ['today', at, align])
      : [null];
    const sour = course.sour_enough ? drawWindow(u, ink, course.sour_enough) : [null];
    const fits = (one, other) =>
      [one, other].every(each => !each || labels.fits(each[0], each[1], y, each[2])) && (!one || !other || !labels.meet(one, other));
    const write = (each, colour) => each && labels.writeAt(each[0], each[1], y, { colour, weight: 600, align: each[2] });
    for (const window of [...sour, null])
      for (const day of today)
        if (fits(window, day)) {
          write(window, ink.beet);
          write(day, ink.ink);
          return;
        }
  }

  /** Draws the bracket and returns the names it may have, and where. */
  function drawWindow(u, ink, window) {
    const until = window.until ? seconds(window.until) : full[1];
    const [a, middle, b] = [seconds(window.from), seconds(window.middle), until].map(each => xAt(u, each));
    const top = u.bbox.top + 3 * devicePixelRatio,
      y = top + 19 * devicePixelRatio,
      fall = 6 * devicePixelRatio;
    clipped(u, () => {
      line(u.ctx, a, y, b, y, ink.beet, 2);
      for (const x of [a, middle, ...(window.until ? [b] : [])])
        line(u.ctx, x, y, x, y + (x === middle ? 2 * fall : fall), ink.beet, x === middle ? 3 : 2);
    });
    const shown = [Math.max(a, u.bbox.left), Math.min(b, u.bbox.left + u.bbox.width)];
    return shown[0] >= shown[1]
      ? [null]
      : ['sour enough, eight in ten', 'sour enough', 'sour'].flatMap(text => [
          [text, shown[1], 'right'],
          [text, shown[0], 'left'],
        ]);
  }

  function drawPh(u, ink, labels) {
    const y = value => u.valToPos(value, 'ph', true),
      right = u.bbox.left + u.bbox.width;
    line(u.ctx, u.bbox.left, y(course.acid_line_ph), right, y(course.acid_line_ph), ink.ink, 2, [9, 5]);
    const shown = readings.filter(mark => mark.x >= u.scales.x.min && mark.x <= u.scales.x.max);
    for (const mark of shown)
      labels.take(xAt(u, mark.x) - 8 * devicePixelRatio, y(mark.ph) - 8 * devicePixelRatio, 16 * devicePixelRatio, 16 * devicePixelRatio);
    for (const mark of shown) {
      drawMark(u.ctx, mark.method, xAt(u, mark.x), y(mark.ph), 6, ink.beet, ink.card);
      labels.write([`${mark.method} ${phWords(mark.ph)}`, phWords(mark.ph)], xAt(u, mark.x), y(mark.ph), {
        colour: ink.beet,
        must: shown.length <= 12,
      });
    }
    for (const x of [right, u.bbox.left + 150 * devicePixelRatio])
      if (
        labels.writeAt(`acid line ${course.acid_line_ph}`, x, y(course.acid_line_ph) - 20 * devicePixelRatio, {
          colour: ink.ink,
          weight: 600,
          align: 'right',
        })
      )
        break;
    const ahead = expectedAt.findIndex(each => each > Math.max(now, u.scales.x.min) + (u.scales.x.max - u.scales.x.min) / 50);
    if (ahead > 0)
      labels.writeAt('expected, 8 in 10', xAt(u, expectedAt[ahead]), y(course.expected.ph_p10[ahead]) + 8 * devicePixelRatio, {
        colour: ink.leaf,
        weight: 600,
      });
  }

  function nameHeat(u, ink, labels) {
    const [top, bottom] = edges(u, heat),
      left = u.bbox.left + 6 * devicePixelRatio,
      right = u.bbox.left + u.bbox.width - 4 * devicePixelRatio;
    const [soft, slow] = [SOFT_CELSIUS, SLOW_CELSIUS].map(each => u.valToPos(unit.of(each), 'heat', true));
    if (soft >= top - 1)
      labels.writeAt(wide ? 'warmer than this: soft and fast' : 'soft, fast', left, soft - 18 * devicePixelRatio, { colour: ink.soft });
    if (slow <= bottom + 1)
      labels.writeAt(wide ? 'colder than this: slow' : 'slow', right, slow + 4 * devicePixelRatio, { colour: ink.soft, align: 'right' });
    if ((u.scales.x.max - u.scales.x.min) / 86400 < 60)
      labels.writeAt('bars: night', left, bottom - 16 * devicePixelRatio, { colour: ink.soft });
    nameColdest(u, ink, labels);
    if (expectedAt.at(-1) > now)
      labels.writeAt('expected', right, u.valToPos(unit.of(course.expected.high_celsius.at(-1)), 'heat', true) - 18 * devicePixelRatio, {
        colour: ink.soft,
        align: 'right',
      });
  }

  function nameColdest(u, ink, labels) {
    const { point_seconds: width, minimum_celsius: low } = course.temperature,
      times = course.temperature.at.map(seconds);
    const shown = low.map((_, i) => i).filter(i => times[i] >= u.scales.x.min && times[i] <= u.scales.x.max);
    if (shown.length === 0) return;
    const i = shown.reduce((coldest, each) => (low[each] < low[coldest] ? each : coldest));
    const [x, y] = [xAt(u, times[i] + (width ?? 0) / 2), u.valToPos(unit.of(low[i]), 'heat', true)];
    const texts = [`lowest ${unit.of(low[i]).toFixed(1)}`, unit.of(low[i]).toFixed(1)];
    texts.some(text => labels.writeAt(text, x, y + 5 * devicePixelRatio, { colour: ink.ink, weight: 600, align: 'center' })) ||
      labels.write(texts, x, y, { colour: ink.ink, away: 6 });
  }

  const plot = makeStack({
    host,
    parts,
    series,
    bands,
    data,
    draw,
    full,
    onCursor,
    axis: (from, to, width) => dateTicks(clock, from, to, width),
  });
  return {
    plot,
    full,
    start: readings.at(-1)?.x ?? Math.min(now, full[1]),
    stops: () => marks.map(mark => mark.x),
    said: (x, width) => near({ x, within: ((plot.scales.x.max - plot.scales.x.min) / width) * 9, marks, course, clock, unit, expectedAt }),
  };
}

/** A little more at an end at which a mark stands, so that it is seen whole. */
function roomFor(marks, from, to) {
  const room = (to - from) / 60;
  const isAt = edge => marks.some(mark => Math.abs(mark.x - edge) < room);
  return [isAt(from) ? from - room : from, isAt(to) ? to + room : to];
}

function phSpan(course, readings) {
  const all = [course.acid_line_ph, ...course.expected.ph_p10, ...course.expected.ph_p90, ...readings.map(mark => mark.ph)];
  return { low: Math.min(3.4, Math.floor(Math.min(...all) * 5) / 5 - 0.1), high: Math.max(6.2, Math.ceil(Math.max(...all) * 5) / 5 + 0.1) };
}

/** None where nothing was measured or is expected: no axis is made up. */
function heatPanel(course, unit, wide) {
  const all = [
    ...course.temperature.minimum_celsius,
    ...course.temperature.maximum_celsius,
    ...course.expected.low_celsius,
    ...course.expected.high_celsius,
  ];
  if (all.length === 0) return null;
  const low = Math.min(...all, SLOW_CELSIUS) - 1.5,
    high = Math.max(...all, SOFT_CELSIUS) + 1.5;
  const ticks = [SLOW_CELSIUS, SOFT_CELSIUS, ...niceTicks(low, high, 4).filter(tick => Math.abs(tick - 16) > 3 && Math.abs(tick - 24) > 3)];
  return {
    scale: 'heat',
    title: unit.symbol,
    height: wide ? 150 : 130,
    low: unit.of(low),
    high: unit.of(high),
    marked: [SLOW_CELSIUS, SOFT_CELSIUS].map(unit.of),
    ticks: ticks.map(tick => Math.round(unit.of(tick))),
  };
}
