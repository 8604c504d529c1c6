// Pointing, dragging, pinching and keys. A mouse points and drags; one finger points, and moves the picture where it is zoomed in; two pinch.
const LEAST_SPAN = 6 * 3600;

/** Gives a picture its hand. `stops` are the places between which the page keys go; `leastSpan` is in the unit of the axis. */
export function giveHand(u, host, { full, stops, leastSpan = LEAST_SPAN, onView }) {
  const view = () => [u.scales.x.min, u.scales.x.max];
  const show = (from, to) => {
    const span = Math.min(full[1] - full[0], Math.max(leastSpan, to - from));
    const start = Math.min(Math.max(from - (span - (to - from)) / 2, full[0]), full[1] - span);
    u.setScale('x', { min: start, max: start + span });
    onView?.(start, start + span);
  };
  const zoom = (factor, around = at() ?? (view()[0] + view()[1]) / 2) => {
    const [from, to] = view();
    show(around - (around - from) * factor, around + (to - around) * factor);
  };
  const at = () => (u.cursor.left >= 0 ? u.posToVal(u.cursor.left, 'x') : null);
  const point = value => u.setCursor({ left: u.valToPos(Math.min(Math.max(value, view()[0]), view()[1]), 'x'), top: 10 });
  const follow = value => {
    const [from, to] = view();
    if (value < from || value > to) show(value - (to - from) / 2, value + (to - from) / 2);
    point(value);
  };
  const whole = () => show(...full);
  fingers(u, { view, show, point, isWhole: () => view()[1] - view()[0] >= (full[1] - full[0]) * 0.999 });
  u.over.addEventListener(
    'wheel',
    event => {
      if (!event.ctrlKey && !event.shiftKey) return;
      event.preventDefault();
      zoom(event.deltaY > 0 ? 1.25 : 0.8, u.posToVal(event.offsetX, 'x'));
    },
    { passive: false },
  );
  u.over.addEventListener('dblclick', whole);
  host.addEventListener('keydown', event => {
    if (event.ctrlKey || event.metaKey || event.altKey || !press(event)) return;
    event.preventDefault();
  });

  function press({ key, shiftKey }) {
    const [from, to] = view(),
      step = (to - from) / 60,
      here = at() ?? from;
    const moves = {
      ArrowRight: () => (shiftKey ? show(from + 10 * step, to + 10 * step) : follow(here + step)),
      ArrowLeft: () => (shiftKey ? show(from - 10 * step, to - 10 * step) : follow(here - step)),
      PageDown: () => follow(stops().find(stop => stop > here + step / 50) ?? here),
      PageUp: () => follow(stops().findLast(stop => stop < here - step / 50) ?? here),
      Home: () => follow(full[0]),
      End: () => follow(full[1]),
      '+': () => zoom(0.6),
      '=': () => zoom(0.6),
      '-': () => zoom(1 / 0.6),
      0: whole,
      Escape: whole,
    };
    moves[key]?.();
    return key in moves;
  }

  return { zoom, whole, point, follow };
}

function fingers(u, { view, show, point, isWhole }) {
  const down = new Map();
  let held = null;
  const placeOf = event => event.clientX - u.over.getBoundingClientRect().left;
  const hold = () => {
    const places = [...down.values()];
    held = { places, values: places.map(place => u.posToVal(place, 'x')), view: view(), width: u.over.clientWidth };
  };
  u.over.style.touchAction = 'pan-y';
  u.over.addEventListener('pointerdown', event => {
    down.set(event.pointerId, placeOf(event));
    u.over.setPointerCapture(event.pointerId);
    hold();
    if (event.pointerType !== 'mouse' && down.size === 1) point(u.posToVal(placeOf(event), 'x'));
  });
  u.over.addEventListener('pointermove', event => {
    if (!down.has(event.pointerId)) return;
    down.set(event.pointerId, placeOf(event));
    const places = [...down.values()],
      span = held.view[1] - held.view[0];
    if (places.length === 2) pinch(places);
    else if (!isWhole()) show(...held.view.map(edge => edge - ((places[0] - held.places[0]) / held.width) * span));
    if (places.length === 1 && (event.pointerType !== 'mouse' || isWhole())) point(u.posToVal(places[0], 'x'));
  });
  for (const name of ['pointerup', 'pointercancel'])
    u.over.addEventListener(name, event => {
      down.delete(event.pointerId);
      if (down.size > 0) hold();
    });

  /** What was under the two fingers stays under them. */
  function pinch(places) {
    const perPixel = (held.values[1] - held.values[0]) / (places[1] - places[0] || 1);
    if (perPixel > 0) show(held.values[0] - places[0] * perPixel, held.values[0] + (held.width - places[0]) * perPixel);
  }
}
