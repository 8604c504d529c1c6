// Puts the pictures in the place of the drawings that stand there without script.
import 'uplot/dist/uPlot.min.css';
import './pictures.css';
import { drawBeside } from './beside.js';
import { drawCourse } from './course.js';
import { giveHand } from './hand.js';
import { drawSpan } from './span.js';

const POINTS = 1000;

const ask = async address => {
  const answer = await fetch(address, { headers: { Accept: 'application/json' }, credentials: 'same-origin' });
  if (!answer.ok) throw new Error(`${answer.status}`);
  return answer.json();
};

const KINDS = {
  course: async (host, { source }, onCursor) => drawCourse(host, await ask(source), onCursor),
  beside: async (host, { source }, onCursor) => drawBeside(host, await Promise.all(source.split(' ').map(ask)), onCursor),
  span: async (host, { source, timeZone, clockFace, unit }, onCursor) => {
    const address = new URL(source, document.baseURI);
    address.searchParams.set('points', POINTS);
    const history = await ask(address);
    if (history.at.length === 0) throw new Error('nothing measured');
    const finer = async (from, to) => {
      const closer = new URL(address);
      closer.searchParams.set('from', new Date(from * 1000).toISOString());
      closer.searchParams.set('to', new Date(to * 1000).toISOString());
      return ask(closer).catch(() => null);
    };
    return drawSpan(host, history, onCursor, { timeZone, clockFace, unit, finer });
  },
};

for (const figure of document.querySelectorAll('[data-picture]')) start(figure).catch(() => figure.classList.remove('is-live'));

async function start(figure) {
  const [read, host, buttons] = partsOf(figure);
  figure.classList.add('is-live');
  let picture;
  const onCursor = u => {
    if (picture && u.cursor.left >= 0) say(picture.said(u.posToVal(u.cursor.left, 'x'), u.over.clientWidth));
  };
  picture = await KINDS[figure.dataset.picture](host, figure.dataset, onCursor);
  const { plot, full } = picture;
  const hand = giveHand(plot, host, { ...picture, full });
  for (const [name, label, act] of [
    ['−', 'Show more days', () => hand.zoom(1 / 0.6)],
    ['+', 'Look closer', () => hand.zoom(0.6)],
    ['All days', '', hand.whole],
  ])
    buttons.append(button(name, label, act));
  [host.ariaValueMin, host.ariaValueMax] = full.map(String);
  new ResizeObserver(() => host.clientWidth > 0 && plot.setSize({ width: host.clientWidth, height: plot.height })).observe(host);
  for (const change of ['(prefers-color-scheme: dark)', '(prefers-contrast: more)'])
    matchMedia(change).addEventListener('change', () => plot.redraw());
  hand.point(picture.start);

  function say({ head, beside, isReading, photo, at }) {
    read.replaceChildren(
      Object.assign(document.createElement('strong'), { textContent: head }),
      Object.assign(document.createElement('span'), { textContent: beside }),
    );
    if (photo)
      read.prepend(
        Object.assign(document.createElement('img'), {
          src: new URL(`photos/${photo}/small`, document.baseURI),
          alt: '',
          className: 'row-photo',
        }),
      );
    read.classList.toggle('is-reading', Boolean(isReading));
    host.ariaValueNow = String(Math.round(at));
    host.ariaValueText = beside ? `${head}, ${beside}` : head;
  }
}

function partsOf(figure) {
  const make = (name, classes, more = {}) => Object.assign(document.createElement(name), { className: classes, ...more });
  const read = make('p', 'picture-read');
  const host = make('div', 'picture-plot', { role: 'slider', tabIndex: 0, ariaLabel: figure.dataset.name, ariaValueNow: '0' });
  host.setAttribute('aria-describedby', 'picture-keys');
  const buttons = make('div', 'picture-buttons');
  const keys = make('p', 'unseen', {
    id: 'picture-keys',
    textContent: 'Arrow keys point, the page keys go from mark to mark, plus and minus look closer or wider, 0 shows all.',
  });
  figure.prepend(read, buttons, host, keys);
  return [read, host, buttons];
}

function button(text, label, act) {
  const made = Object.assign(document.createElement('button'), { type: 'button', className: 'quiet', textContent: text, onclick: act });
  if (label) made.ariaLabel = label;
  return made;
}
