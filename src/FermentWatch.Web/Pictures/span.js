// What was measured in a place or by a sensor, over any span: the mean as a line, the smallest and largest as a band.
import { Labels } from './ink.js';
import { gappy } from './gaps.js';
import { drawNights } from './lanes.js';
import { degrees, nearest, seconds } from './numbers.js';
import { edges, makeStack, niceTicks } from './stack.js';
import { clockOf, dateTicks } from './zone.js';

const NAMES = { Temperature: '°C', Ph: 'pH', Millivolts: 'mV', Humidity: '%' };

/** Draws an answer of the history; `finer` asks for a part of it again when people look closer. */
export function drawSpan(host, history, onCursor, { timeZone, clockFace, unit: unitName, finer }) {
  const clock = clockOf(timeZone, clockFace),
    isHeat = history.quantity === 'Temperature';
  const unit = isHeat
    ? degrees(unitName)
    : {
        symbol: NAMES[history.quantity],
        of: value => value,
        said: value => `${value.toFixed(history.quantity === 'Ph' ? 2 : 0)} ${NAMES[history.quantity]}`,
      };
  let now = columnsOf(history, unit);
  const full = [seconds(history.from), seconds(history.to)];
  const margin = Math.max(1, (Math.max(...now.high) - Math.min(...now.low)) * 0.08);
  const [low, high] = [Math.min(...now.low) - margin, Math.max(...now.high) + margin];
  const marked = isHeat ? [16, 24].map(unit.of).filter(each => each > low && each < high) : [];
  const far = (high - low) / 12;
  const panel = {
    scale: 'y',
    title: unit.symbol,
    height: host.clientWidth > 620 ? 300 : 240,
    low,
    high,
    marked,
    ticks: [...marked, ...niceTicks(low, high, 5).filter(tick => marked.every(each => Math.abs(tick - each) > far))].map(tick =>
      Number(tick.toFixed(1)),
    ),
  };

  const draw = {
    behind: (u, ink) => isHeat && drawNights(u, panel, clock, ink),
    front(u, ink) {
      const labels = new Labels(u.ctx, ink.card, {
        left: u.bbox.left,
        right: u.bbox.left + u.bbox.width,
        top: u.bbox.top,
        bottom: u.bbox.top + u.bbox.height,
      });
      const left = u.bbox.left + 6 * devicePixelRatio,
        place = value => u.valToPos(unit.of(value), 'y', true);
      if (isHeat && unit.of(24) < high)
        labels.writeAt('warmer than this: soft and fast', left, place(24) - 18 * devicePixelRatio, { colour: ink.soft });
      if (isHeat && unit.of(16) > low)
        labels.writeAt('colder than this: slow', left, place(16) + 4 * devicePixelRatio, { colour: ink.soft });
      if (isHeat && (u.scales.x.max - u.scales.x.min) / 86400 < 60)
        labels.writeAt('bars: night', u.bbox.left + u.bbox.width - 6, edges(u, panel)[1] - 10 * devicePixelRatio, {
          colour: ink.soft,
          align: 'right',
        });
    },
  };
  const plot = makeStack({
    host,
    parts: [panel],
    full,
    draw,
    onCursor,
    data: now.data,
    bands: [[2, 3, 'heatBand']],
    series: [
      { scale: 'y', ink: 'heat', width: 1.8 },
      { scale: 'y', width: 0 },
      { scale: 'y', width: 0 },
    ],
    axis: (from, to, width) => dateTicks(clock, from, to, width),
  });

  let waiting;
  const onView = (from, to) => {
    clearTimeout(waiting);
    waiting = setTimeout(async () => {
      const closer = await finer(from, to);
      if (closer) {
        now = columnsOf(closer, unit);
        plot.setData(now.data, false);
        plot.redraw();
      }
    }, 250);
  };
  return {
    plot,
    full,
    onView,
    start: now.times.at(-1),
    stops: () => now.times,
    said(x) {
      const i = nearest(now.times, x),
        width = now.width ?? 0;
      if (i < 0 || Math.abs(now.times[i] - x) > Math.max(3 * 3600, width))
        return { head: clock.said(x), beside: 'nothing measured then', at: x };
      const beside =
        width === 0
          ? ''
          : `${unit.said(now.low[i])} to ${unit.said(now.high[i])}, ${now.count[i]} ${now.count[i] === 1 ? 'reading' : 'readings'}`;
      return { head: `${clock.said(now.times[i] - width / 2)}: ${unit.said(now.mean[i])}`, beside, at: now.times[i] };
    },
  };
}

function columnsOf(history, unit) {
  const starts = history.at.map(seconds),
    width = history.point_seconds;
  const column = name => (history[`${name}_in_unit_of_quantity`] ?? history.mean_in_unit_of_quantity).map(unit.of);
  const [mean, low, high] = ['mean', 'minimum', 'maximum'].map(column);
  const at = gappy(starts, width);
  return {
    width,
    mean,
    low,
    high,
    count: history.readings,
    times: starts.map(start => start + (width ?? 0) / 2),
    data: [at.times, at.fill(mean), at.fill(high), at.fill(low)],
  };
}
