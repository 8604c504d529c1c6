// Days and dates on the household's clock, wherever the browser is. Times are seconds since the Unix epoch.
export const HOUR = 3600,
  DAY = 86400;

/** The clock of a time zone, by its name in the tz database, with the face that the household reads. */
export function clockOf(timeZone, face) {
  const known = new Intl.DateTimeFormat('en', { timeZone, timeZoneName: 'longOffset' });
  const show = options => new Intl.DateTimeFormat('en-GB', { timeZone, ...options });
  const hours = face === 'TwelveHours' ? { hour: 'numeric', hourCycle: 'h12' } : { hour: '2-digit', hourCycle: 'h23' };
  const [day, month, year, weekday, time] = [
    { day: 'numeric' },
    { month: 'short' },
    { year: 'numeric' },
    { weekday: 'short' },
    { ...hours, minute: '2-digit' },
  ].map(show);

  const offset = at => {
    const name = known.formatToParts(at * 1000).find(part => part.type === 'timeZoneName').value;
    const [, sign, hours, minutes] = /GMT(?:([+-])(\d\d):(\d\d))?/.exec(name) ?? [];
    return sign ? (sign === '-' ? -1 : 1) * (Number(hours) * HOUR + Number(minutes) * 60) : 0;
  };
  const startOfDay = at => {
    const local = Math.floor((at + offset(at)) / DAY) * DAY;
    const first = local - offset(at);
    return local - offset(first);
  };
  const nextDay = start => startOfDay(start + 36 * HOUR);
  const name = (of, at) => of.format(at * 1000);
  const dayOf = at => Number(name(day, at)),
    monthOf = at => name(month, at),
    yearOf = at => Number(name(year, at));

  return {
    offset,
    startOfDay,
    nextDay,
    dayOf,
    monthOf,
    yearOf,
    time: at => name(time, at),
    /** `Wed 25 Nov, 18:00`, with the year where it is not the present one. */
    said: at =>
      `${name(weekday, at)} ${dayOf(at)} ${monthOf(at)}${yearOf(at) === yearOf(Date.now() / 1000) ? '' : ` ${yearOf(at)}`}, ${name(time, at)}`,
  };
}

const DAY_STEPS = [1, 2, 4, 7, 14],
  MONTH_STEPS = [1, 2, 3, 6, 12, 24, 60],
  HOUR_STEPS = [1, 3, 6, 12];

/** Places and names of dates along an axis, as many as there is room for. */
export function dateTicks(clock, from, to, width) {
  const room = Math.max(2, Math.floor(width / 54));
  const span = to - from;
  const hours = HOUR_STEPS.find(step => span / (step * HOUR) <= room);
  if (hours) return named(clock, from, to, hourTicks(clock, from, to, hours));
  const days = DAY_STEPS.find(step => span / (step * DAY) <= room);
  return named(
    clock,
    from,
    to,
    days
      ? dayTicks(clock, from, to, days)
      : monthTicks(clock, from, to, MONTH_STEPS.find(step => span / (step * 30.4 * DAY) <= room) ?? 120),
  );
}

/** Every midnight of a span, for bars of night and fine ticks. */
export function midnights(clock, from, to) {
  const all = [];
  for (let at = clock.startOfDay(from); at <= to; at = clock.nextDay(at)) all.push(at);
  return all;
}

function hourTicks(clock, from, to, step) {
  const ticks = [];
  for (const midnight of midnights(clock, from, to))
    for (let hour = 0; hour < 24; hour += step) {
      const at = midnight + hour * HOUR;
      // Where the clock was set in between, the hour it shows is meant.
      ticks.push(at + clock.offset(midnight) - clock.offset(at));
    }
  return ticks.filter(at => at >= from && at <= to);
}

function dayTicks(clock, from, to, step) {
  return midnights(clock, from, to).filter(at => at >= from && Math.round((at - Date.UTC(2024, 0, 1) / 1000) / DAY) % step === 0);
}

function monthTicks(clock, from, to, step) {
  return midnights(clock, from, to).filter(
    at => at >= from && clock.dayOf(at) === 1 && (clock.yearOf(at) * 12 + new Date((at + 15 * DAY) * 1000).getUTCMonth()) % step === 0,
  );
}

/** The month is said once, and the year where it is another or not the present one. */
function named(clock, from, to, ticks) {
  const present = clock.yearOf(Date.now() / 1000);
  let [month, year] = ['', clock.yearOf(from) === present && clock.yearOf(to) === present ? present : 0];
  return ticks.map(at => {
    const isMidnight = clock.startOfDay(at) === at;
    if (!isMidnight) return { at, name: clock.time(at) };
    const isNewMonth = clock.monthOf(at) !== month || clock.yearOf(at) !== year;
    const isNewYear = clock.yearOf(at) !== year;
    [month, year] = [clock.monthOf(at), clock.yearOf(at)];
    return { at, name: `${clock.dayOf(at)}${isNewMonth ? ` ${month}` : ''}`, below: isNewYear ? String(year) : '' };
  });
}
