// What the read-out says: of a mark near the pointer that, else what was measured and is expected then.
import { nearest, seconds } from './numbers.js';

export function near({ x, within, marks, course, clock, unit, expectedAt }) {
  const close = marks.filter(mark => Math.abs(mark.x - x) <= within);
  // A reading says most; among others the nearest is meant.
  const mark = close
    .filter(each => each.ph != null)
    .concat(close)
    .sort((a, b) => (a.ph == null) - (b.ph == null) || Math.abs(a.x - x) - Math.abs(b.x - x))[0];
  const at = mark?.x ?? x;
  const beside = [expectedOf(at, course, expectedAt), heatOf(at, course, unit)].filter(Boolean).join(', ');
  return {
    head: mark ? `${clock.said(at)}: ${mark.words}` : clock.said(at),
    beside: beside || (mark ? '' : 'nothing measured then'),
    isReading: mark?.ph != null,
    photo: mark?.photo,
    at,
  };
}

function expectedOf(at, course, expectedAt) {
  if (expectedAt.length === 0 || at > expectedAt.at(-1) + 43200) return '';
  const i = nearest(expectedAt, at);
  return `expected pH ${course.expected.ph_p10[i].toFixed(1)} to ${course.expected.ph_p90[i].toFixed(1)}`;
}

function heatOf(at, course, unit) {
  course.temperature.times ??= course.temperature.at.map(seconds);
  const { times, point_seconds: width, mean_celsius: mean, minimum_celsius: low, maximum_celsius: high } = course.temperature;
  const i = nearest(times, at - (width ?? 0) / 2);
  if (i < 0 || Math.abs(times[i] + (width ?? 0) / 2 - at) > Math.max(3 * 3600, width ?? 0)) return '';
  return (width ?? 0) > 3600 ? `${unit.said(low[i])} to ${unit.said(high[i])}, on average ${unit.said(mean[i])}` : unit.said(mean[i]);
}
