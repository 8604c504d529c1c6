// Two jars side by side, and last year's same under them, on one axis of days since packing.
import uPlot from 'uplot';
import { Labels, drawMark } from './ink.js';
import { gappy } from './gaps.js';
import { degrees, nearest, phWords, seconds } from './numbers.js';
import { clipped, edges, line, makeStack, niceTicks } from './stack.js';

const DAY = 86400;
const LOOKS = [
  { ink: 'beet', dash: [] },
  { ink: 'blue', dash: [9, 5] },
  { ink: 'third', dash: [2, 4] },
];

/** Draws the courses of two or three jars. */
export function drawBeside(host, courses, onCursor) {
  const unit = degrees(courses[0].reads_temperatures_in),
    wide = host.clientWidth > 620;
  const jars = courses.map((course, i) => jarOf(course, LOOKS[i], unit));
  const full = [0, Math.max(1, ...jars.map(jar => jar.days))];
  const parts = [],
    heats = jars.flatMap(jar => jar.heat.values.filter(value => value != null));
  const phs = jars.flatMap(jar => [...jar.expected, ...jar.readings.map(mark => mark.ph)]);
  const ph = phs.length > 0 && {
    scale: 'ph',
    title: 'pH',
    height: wide ? 250 : 200,
    low: Math.min(3.4, ...phs) - 0.1,
    high: Math.max(6.2, ...phs) + 0.1,
    ticks: [4, 5, 6],
  };
  const tastes = jars.some(jar => jar.tastes.length > 0) && { height: 30 * jars.filter(jar => jar.tastes.length > 0).length };
  const heat = heats.length > 0 && heatPanel(heats, unit, wide);
  parts.push(...[ph, tastes, heat].filter(Boolean));

  const tables = [],
    series = [];
  for (const jar of jars) {
    if (ph)
      (tables.push([jar.expectedDays, jar.expected]),
        series.push({ scale: 'ph', ink: jar.look.ink, dash: jar.look.dash, width: 2.4, paths: uPlot.paths.spline() }));
    if (heat)
      (tables.push([jar.heat.days, jar.heat.values]), series.push({ scale: 'heat', ink: jar.look.ink, dash: jar.look.dash, width: 1.6 }));
  }
  const draw = {
    behind() {},
    front: (u, ink) =>
      clipped(u, () => {
        const labels = new Labels(u.ctx, ink.card, {
          left: u.bbox.left,
          right: u.bbox.left + u.bbox.width,
          top: u.bbox.top,
          bottom: u.bbox.top + u.bbox.height,
        });
        if (ph) drawPh(u, ink, labels);
        if (tastes) drawTastes(u, ink, labels);
        if (heat)
          for (const jar of jars.filter(each => each.heat.days.length > 0))
            nameLine(u, labels, jar, ink, 'heat', jar.heat.days, jar.heat.values);
      }),
  };

  function drawPh(u, ink, labels) {
    const y = value => u.valToPos(value, 'ph', true),
      x = day => u.valToPos(day, 'x', true);
    const acidLine = courses[0].acid_line_ph;
    line(u.ctx, u.bbox.left, y(acidLine), u.bbox.left + u.bbox.width, y(acidLine), ink.ink, 2, [9, 5]);
    for (const jar of jars)
      for (const mark of jar.readings) {
        drawMark(u.ctx, mark.method, x(mark.day), y(mark.ph), 6, ink[jar.look.ink], ink.card);
        labels.take(x(mark.day) - 8 * devicePixelRatio, y(mark.ph) - 8 * devicePixelRatio, 16 * devicePixelRatio, 16 * devicePixelRatio);
      }
    const [left, right] = [u.bbox.left + 8 * devicePixelRatio, u.bbox.left + u.bbox.width],
      below = y(acidLine) + 5 * devicePixelRatio;
    [
      [left, below, 'left'],
      [right, y(acidLine) - 19 * devicePixelRatio, 'right'],
      [right, below, 'right'],
    ].some(([at, top, align]) => labels.writeAt(`acid line ${acidLine}`, at, top, { colour: ink.ink, weight: 600, align }));
    for (const jar of jars.filter(each => each.expected.length > 0)) nameLine(u, labels, jar, ink, 'ph', jar.expectedDays, jar.expected);
  }

  function nameLine(u, labels, jar, ink, scale, days, values) {
    const last = Math.max(
      0,
      days.findLastIndex((day, i) => day <= u.scales.x.max && values[i] != null),
    );
    labels.write([jar.name], u.valToPos(days[last], 'x', true), u.valToPos(values[last], scale, true), {
      colour: ink[jar.look.ink],
      must: true,
    });
  }

  function drawTastes(u, ink, labels) {
    const [top, bottom] = edges(u, tastes),
      tasted = jars.filter(jar => jar.tastes.length > 0),
      each = (bottom - top) / tasted.length;
    tasted.forEach((jar, i) => {
      const y = top + (i + 0.5) * each;
      line(u.ctx, u.bbox.left, y + each / 2, u.bbox.left + u.bbox.width, y + each / 2, ink.line);
      for (const taste of jar.tastes) {
        drawMark(u.ctx, 'meter', u.valToPos(taste.day, 'x', true), y, 5, ink[jar.look.ink], ink.card);
        const x = u.valToPos(taste.day, 'x', true),
          away = 9 * devicePixelRatio,
          high = 7 * devicePixelRatio;
        [`${jar.number}: ${taste.in_brief}`, taste.in_brief].some(text =>
          [
            [x + away, 'left'],
            [x - away, 'right'],
          ].some(([at, align]) => labels.writeAt(text, at, y - high, { colour: ink[jar.look.ink], size: 13, weight: 600, align })),
        );
      }
    });
  }

  const plot = makeStack({ host, parts, series, bands: [], data: uPlot.join(tables), draw, full, onCursor, axis: dayTicks });
  return {
    plot,
    full,
    leastSpan: 0.25,
    start: Math.min(full[1], jars[0].readings.at(-1)?.day ?? jars[0].days),
    stops: () => jars.flatMap(jar => [...jar.readings, ...jar.tastes].map(mark => mark.day)).sort((a, b) => a - b),
    said: x => ({ head: `Day ${Math.floor(x)}`, beside: jars.map(jar => jar.said(x)).join('; '), at: x }),
  };
}

function dayTicks(from, to, width) {
  const room = Math.max(2, Math.floor(width / 62));
  const step = [1, 2, 4, 7, 14, 28, 56, 84].find(each => (to - from) / each <= room) ?? 112;
  const ticks = [];
  for (let day = Math.ceil(from / step) * step; day <= to; day += step)
    ticks.push({ at: day, name: day === 0 ? 'packed' : ticks.length === 0 || ticks.at(-1).at === 0 ? `day ${day}` : String(day) });
  return ticks;
}

function heatPanel(heats, unit, wide) {
  const low = Math.min(...heats, unit.of(16)) - 2,
    high = Math.max(...heats, unit.of(24)) + 2;
  const [slow, soft] = [unit.of(16), unit.of(24)].map(Math.round);
  return {
    scale: 'heat',
    title: unit.symbol,
    height: wide ? 160 : 130,
    low,
    high,
    marked: [slow, soft],
    ticks: [slow, soft, ...niceTicks(low, high, 4).filter(tick => Math.abs(tick - slow) > 3 && Math.abs(tick - soft) > 3)],
  };
}

/** A jar by days since its packing. What is only expected of a jar that is still kept ends where the other lines do. */
function jarOf(course, look, unit) {
  const packed = seconds(course.packed_at),
    dayOf = text => (seconds(text) - packed) / DAY;
  const known = dayOf(course.known_until);
  const marks = course.entries.map(entry => ({ ...entry, day: dayOf(entry.at) }));
  const readings = marks.filter(mark => mark.ph != null);
  const at = gappy(course.temperature.at.map(seconds), course.temperature.point_seconds);
  const heat = { days: at.times.map(time => (time - packed) / DAY), values: at.fill(course.temperature.mean_celsius.map(unit.of)) };
  const expectedDays = course.expected.at.map(dayOf),
    name = `jar ${course.number}`;
  return {
    name,
    number: course.number,
    look,
    readings,
    tastes: marks.filter(mark => mark.kind === 'Taste'),
    heat,
    expectedDays,
    expected: course.expected.ph_p50,
    days: Math.max(known, course.is_kept ? (expectedDays.at(-1) ?? 0) : 0, ...readings.map(mark => mark.day)),
    said(x) {
      const measured = readings.filter(mark => Math.abs(mark.day - x) < 0.5).map(mark => `${mark.method} ${phWords(mark.ph)}`);
      const i = nearest(heat.days, x);
      const warm =
        i >= 0 && heat.values[i] != null && Math.abs(heat.days[i] - x) < 1 ? `, ${heat.values[i].toFixed(1)} ${unit.symbol}` : '';
      return x > known && measured.length === 0
        ? `${name} not there yet`
        : `${name} ${measured.join(', ') || 'not measured that day'}${warm}`;
    },
  };
}
