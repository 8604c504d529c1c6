// Says when the first reading of a sensor has come; without script the page of its own loads itself again.
'use strict';

(() => {
  const box = document.getElementById('first-reading');
  const [head, words, hint] = box.children;
  const address = new URL(box.dataset.heard, document.baseURI);
  const shortest = 2000,
    longest = 15000;
  let wait = shortest;

  async function ask() {
    // Nobody looks at a page in the background.
    if (document.visibilityState === 'hidden') return again();
    try {
      const answer = await fetch(address, { headers: { Accept: 'application/json' }, redirect: 'error' });
      if (answer.status === 404) return;
      const heard = await answer.json();
      if (words.textContent !== heard.words) words.textContent = heard.words;
      if (heard.arrived) {
        head.textContent = 'It reports';
        hint.textContent = 'Forecasts of what stands there follow within the quarter hour.';
        return;
      }
    } catch {
      // Out of reach for the moment; asked again later.
    }
    again();
  }

  function again() {
    setTimeout(ask, wait);
    wait = Math.min(longest, wait * 1.2);
  }

  document.addEventListener('visibilitychange', () => {
    wait = shortest;
  });
  again();
})();
