// The put-up form: the salt to weigh as it is typed, and of two answers to "what" the later one. The service works the salt out.
'use strict';

const form = document.querySelector('form:has(.salt-slab)');
const slab = form.querySelector('.salt-slab');
const [weigh, spoons] = slab.children;
const field = name => form.elements[`Input.${name}`];
const asked = {
  what: () => field('Another').value || field('What').value,
  how_much: () => field('HowMuch').value,
  also: () => field('Also').value,
  added_water: () => field('AddedWater').value,
  salt: () => field('SaltTyped').value || field('Salt').value,
  salt_of: () => field('SaltOf').value,
  tub_before: () => field('TubBefore').value,
  tub_after: () => field('TubAfter').value,
  how_many: () => field('HowMany').value,
};

let turn = 0;
const say = (first, second) => {
  weigh.textContent = first;
  spoons.textContent = second;
};

async function work() {
  const mine = ++turn;
  if (!asked.how_much().trim() || !(asked.salt() || asked.tub_after())) return;
  const query = new URLSearchParams(Object.entries(asked).map(([name, read]) => [name, read()]));
  const answer = await fetch(`${slab.dataset.ask}?${query}`, { headers: { Accept: 'application/json' } }).catch(() => null);
  if (mine !== turn || !answer) return;
  const body = await answer.json().catch(() => null);
  if (answer.ok && body)
    say(body.grams === null ? 'Salted by taste' : body.words, body.spoons ?? 'taken as 1.5 to 3.5 %: the days are less certain');
  else say('How much salt?', 'It is worked out once the amounts can be read.');
}

let waiting;
form.addEventListener('input', event => {
  if (event.target === field('Another') && event.target.value)
    for (const drawn of form.querySelectorAll('[name="Input.What"]')) drawn.checked = false;
  if (event.target.name === 'Input.What') field('Another').value = '';
  clearTimeout(waiting);
  waiting = setTimeout(work, 150);
});
work();
