/** An instant as the API writes it, in seconds since the Unix epoch. */
export const seconds = text => Date.parse(text) / 1000;

/** Temperatures as the household reads them; the API's are in Celsius. */
export function degrees(unit) {
  const isFahrenheit = unit === 'Fahrenheit';
  const of = celsius => (isFahrenheit ? celsius * 1.8 + 32 : celsius);
  return {
    symbol: isFahrenheit ? '°F' : '°C',
    of,
    said: celsius => `${of(celsius).toFixed(isFahrenheit ? 0 : 1)} ${isFahrenheit ? '°F' : '°C'}`,
  };
}

/** The place of the value nearest to x in a rising column, or -1. */
export function nearest(column, x) {
  let [low, high] = [0, column.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (column[middle] <= x) low = middle;
    else high = middle;
  }
  return column.length === 0 ? -1 : x - column[low] <= column[high] - x ? low : high;
}

/** A pH with one decimal at least: `4.0`, `3.64`. */
export const phWords = ph => ph.toFixed(2).replace(/0$/, '');
