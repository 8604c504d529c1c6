/** Columns with an empty place wherever nothing was measured for longer than is usual, so that no line crosses it. */
export function gappy(times, pointSeconds) {
  const longest = Math.max(3 * 3600, 2.5 * (pointSeconds ?? 0)),
    half = (pointSeconds ?? 0) / 2;
  const places = [],
    filled = [];
  times.forEach((time, i) => {
    if (i > 0 && time - times[i - 1] > longest) (filled.push(times[i - 1] + half + 1), places.push(-1));
    (filled.push(time + half), places.push(i));
  });
  return { times: filled, fill: values => places.map(place => (place < 0 ? null : values[place])) };
}
