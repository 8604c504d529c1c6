// Colours of the page guide, as the style sheet has them, and signs and words drawn with them.
const NAMES = ['card', 'ink', 'soft', 'line', 'leaf', 'band', 'beet', 'window', 'blue', 'night', 'heat', 'heat-band', 'third'];

/** The colours that hold now, light or dark. */
export function inkOf(element) {
  const style = getComputedStyle(element);
  return Object.fromEntries(NAMES.map(name => [name.replace('-b', 'B'), style.getPropertyValue(`--picture-${name}`).trim()]));
}

export const font = (size, weight = 400) => `${weight} ${size * devicePixelRatio}px system-ui, sans-serif`;

/** Draws a measured pH; the shape is the method: circle meter, square strip, triangle probe. */
export function drawMark(context, method, x, y, size, colour, halo) {
  const r = size * devicePixelRatio;
  context.beginPath();
  if (method === 'strip') context.rect(x - r, y - r, 2 * r, 2 * r);
  else if (method === 'probe')
    (context.moveTo(x, y - 1.3 * r), context.lineTo(x + 1.2 * r, y + r), context.lineTo(x - 1.2 * r, y + r), context.closePath());
  else context.arc(x, y, r, 0, 2 * Math.PI);
  Object.assign(context, { fillStyle: colour, strokeStyle: halo, lineWidth: 2 * devicePixelRatio });
  context.stroke();
  context.fill();
}

/** Words that keep out of each other's way. Places are canvas pixels. */
export class Labels {
  #context;
  #taken = [];
  #halo;

  constructor(context, halo, bounds) {
    this.#context = context;
    this.#halo = halo;
    this.bounds = bounds;
  }

  /** Keeps words off a spot. */
  take(x, y, width, height) {
    this.#taken.push({ x, y, width, height });
  }

  /** Writes at the first free place; the texts get shorter, and the last is written in any case where it must be. */
  write(texts, x, y, { colour, size = 14, weight = 600, away = 10, must = false }) {
    const context = this.#context,
      gap = away * devicePixelRatio,
      high = size * devicePixelRatio;
    context.font = font(size, weight);
    for (const text of texts) {
      const wide = context.measureText(text).width;
      const places = [
        [x + gap, y - high / 2],
        [x - wide / 2, y - gap - high],
        [x - wide, y - gap - high],
        [x - gap - wide, y - high / 2],
        [x - wide / 2, y + gap],
        [x + gap, y - gap - high],
        [x + gap, y + gap],
      ];
      const free =
        places.find(place => this.#isFree(place[0], place[1], wide, high)) ??
        (must && text === texts.at(-1) ? this.#within(places[1], wide, high) : null);
      if (free) return this.#draw(text, free[0], free[1], wide, high, colour);
    }
    return false;
  }

  /** Writes at one place or not at all. */
  writeAt(text, x, y, { colour, size = 14, weight = 400, align = 'left', must = false }) {
    const high = size * devicePixelRatio,
      { left, wide } = this.#box(text, x, align, size, weight);
    return (must || this.#isFree(left, y, wide, high)) && this.#draw(text, left, y, wide, high, colour);
  }

  /** Whether words fit at a place. */
  fits(text, x, y, align, size = 14) {
    const { left, wide } = this.#box(text, x, align, size);
    return this.#isFree(left, y, wide, size * devicePixelRatio);
  }

  /** Whether two words of one line, each [text, x, align], would meet. */
  meet(one, other, size = 14) {
    const [a, b] = [one, other].map(each => this.#box(each[0], each[1], each[2], size)),
      gap = 6 * devicePixelRatio;
    return a.left < b.left + b.wide + gap && b.left < a.left + a.wide + gap;
  }

  #box(text, x, align, size, weight = 600) {
    this.#context.font = font(size, weight);
    const wide = this.#context.measureText(text).width;
    return { wide, left: align === 'right' ? x - wide : align === 'center' ? x - wide / 2 : x };
  }

  #draw(text, x, y, width, height, colour) {
    const context = this.#context;
    Object.assign(context, {
      textAlign: 'left',
      textBaseline: 'top',
      lineJoin: 'round',
      strokeStyle: this.#halo,
      lineWidth: 4 * devicePixelRatio,
      fillStyle: colour,
    });
    context.strokeText(text, x, y);
    context.fillText(text, x, y);
    this.take(x, y, width, height);
    return true;
  }

  #within([x, y], wide, high) {
    const { left, top, right, bottom } = this.bounds;
    return [Math.min(Math.max(x, left), right - wide), Math.min(Math.max(y, top), bottom - high)];
  }

  #isFree(x, y, width, height) {
    const { left, top, right, bottom } = this.bounds;
    return (
      x >= left &&
      x + width <= right &&
      y >= top &&
      y + height <= bottom &&
      !this.#taken.some(other => x < other.x + other.width && other.x < x + width && y < other.y + other.height && other.y < y + height)
    );
  }
}
