// Keeps the round for where there is no reception, keeps what is entered there, and sends it when the kitchen can be reached.
// A form carries an id by which the kitchen does it once, however often it is sent. What is not such a form is never kept.
'use strict';

(() => {
  const root = new URL('./', self.location).pathname;
  const roundPage = root,
    unsentPage = `${root}unsent`;
  const hour = 3600e3,
    oldestPage = 48 * hour,
    oldestEntry = 7 * 24 * hour,
    patience = 8000,
    sendingPatience = 15000,
    sendingLaterPatience = 60000;
  const entryForms = /^(|round|round\/answer|put-up|jars\/\d+(\/(seen|taste|ph|titration|on))?)$/;
  const keptPages = /^jars\/\d+\/(seen|taste|ph)$/;
  const tokenField = '__RequestVerificationToken';

  const within = path => (path.startsWith(root) ? path.slice(root.length) : null);
  const isRound = path => path === root || path === `${root}round`;
  // A proxy answers so where the kitchen behind it does not.
  const isAway = answer => answer.status === 502 || answer.status === 504;

  async function reached(request, milliseconds) {
    const answer = await Promise.race([
      fetch(request),
      new Promise((_, give) => {
        if (milliseconds) setTimeout(() => give(new Error('too slow')), milliseconds);
      }),
    ]);
    if (isAway(answer)) throw new Error('away');
    return answer;
  }

  // ---- Whose phone it is at present: pages are kept for one person, and go with the sign-in.
  const personFact = 'https://unsent.invalid/person';
  const person = async () => (await caches.match(personFact, { cacheName: 'facts' }))?.text();

  async function belongsTo(now) {
    if ((await person()) === now) return;
    await caches.delete('pages');
    await (await caches.open('facts')).put(personFact, new Response(now));
  }

  async function forget() {
    await caches.delete('pages');
    await caches.delete('facts');
  }

  // ---- Pages
  const addressOf = url => (isRound(url.pathname) ? roundPage : url.pathname);

  async function keep(url, answer) {
    const who = answer.headers.get('FermentWatch-Person');
    if (url.pathname === `${root}sign-in` && !who) return forget();
    if (who) await belongsTo(who);
    const inside = within(url.pathname);
    if (!answer.ok || !(who ? isRound(url.pathname) || keptPages.test(inside) : url.pathname === unsentPage)) return;
    const html = await answer.text();
    const headers = new Headers(answer.headers);
    headers.set('Kept-At', Date.now());
    await (await caches.open(who ? 'pages' : 'door')).put(addressOf(url), new Response(html, { headers }));
    await keepFiles(html);
  }

  // What a page is made of, by addresses that bear a print of their content.
  async function keepFiles(html) {
    const files = await caches.open('files');
    for (const [, found] of html.matchAll(/(?:href|src)="([^"]+\?v=[0-9a-f]+)"/g)) {
      const file = new URL(found, new URL(root, self.location));
      if (!(await files.match(file))) await fileOf(new Request(file));
    }
  }

  async function fileOf(request) {
    const files = await caches.open('files');
    const kept = await files.match(request);
    if (kept) return kept;
    const answer = await fetch(request);
    if (answer.ok) {
      await files.delete(request, { ignoreSearch: true });
      await files.put(request, answer.clone());
    }
    return answer;
  }

  async function keptPage(url) {
    if (url.pathname === unsentPage) return caches.match(unsentPage, { cacheName: 'door' });
    const page = await caches.match(addressOf(url), { cacheName: 'pages' });
    return page && Date.now() - Number(page.headers.get('Kept-At')) < oldestPage ? page : null;
  }

  const day = at =>
    new Date(at).toLocaleString('en-GB', { weekday: 'long', day: 'numeric', month: 'long', hour: '2-digit', minute: '2-digit' });

  // Shown from here it says so. Its forms get ids of their own each time: sent on another day they are other answers.
  async function asKept(page, path) {
    const ids = new Map();
    const note =
      path === unsentPage
        ? 'The kitchen is out of reach. What stands here is on this phone only, and is sent when the kitchen is in reach again.'
        : `The kitchen is out of reach. This page is as it stood on ${day(Number(page.headers.get('Kept-At')))}. ` +
          'What you enter is kept on this phone and sent when the kitchen is in reach again.';
    const html = (await page.text())
      .replace(/(name="Input\.Id" value=")([^"]+)/g, (_, before, id) => {
        if (!ids.has(id)) ids.set(id, crypto.randomUUID());
        return before + ids.get(id);
      })
      .replace(/<main id="main"[^>]*>/, main => `${main}<p class="now-box calm" id="kept-page" role="status">${note}</p>`);
    return new Response(html, { headers: page.headers });
  }

  async function shown(event, url) {
    const kept = await keptPage(url);
    try {
      const answer = await reached(event.request, kept ? patience : 0);
      event.waitUntil(keep(url, answer.clone()).then(send));
      return answer;
    } catch {
      return kept ? asKept(kept, url.pathname) : fallback('');
    }
  }

  async function fallback(why) {
    const page = await caches.match(unsentPage, { cacheName: 'door' });
    return page
      ? new Response(
          (await page.text()).replace(
            '<h1>Not sent yet</h1>',
            `<h1>Out of reach</h1><p class="flag">${why || 'The kitchen cannot be reached, and this page is not kept on this phone.'}</p>`,
          ),
          { headers: page.headers },
        )
      : Response.error();
  }

  // ---- Entries
  async function taken(event, url) {
    const body = await event.request.clone().text();
    if (url.pathname === `${root}sign-out`) await forget();
    try {
      const answer = await reached(event.request, entryOf(url, body) ? sendingPatience : 0);
      event.waitUntil(send());
      return answer;
    } catch {
      const who = await person();
      const entry = entryOf(url, body);
      if (!who || !entry)
        return fallback('The kitchen cannot be reached. This was not sent and is not kept: go back, what you typed still stands there.');
      await unsent.put({
        ...entry,
        person: who,
        typedAt: Date.now(),
        state: 'waiting',
      });
      event.waitUntil(self.registration.sync?.register('unsent').catch(() => {}));
      return Response.redirect(new URL(unsentPage, self.location), 303);
    }
  }

  // Only what carries an id is done once, however often it is sent. A correction names what it takes the place of, which may be gone by then.
  function entryOf(url, body) {
    const fields = new URLSearchParams(body);
    if (!fields.has('Input.Id') || !entryForms.test(within(url.pathname)) || url.searchParams.has('corrects')) return null;
    fields.delete(tokenField);
    const text = fields.toString();
    // The same tap twice is one entry; the same page sent on another day is another.
    return { key: `${url.pathname} ${new Date().toDateString()} ${text}`, action: url.pathname + url.search, body: text };
  }

  let sending = null;

  function send() {
    sending ??= sendAll().finally(() => {
      sending = null;
    });
    return sending;
  }

  async function sendAll() {
    const waiting = (await unsent.all()).filter(entry => entry.state === 'waiting');
    if (waiting.length === 0) return true;
    const asked = await fetch(`${root}api/v1/form-ticket`, {
      cache: 'no-store',
      redirect: 'error',
      signal: AbortSignal.timeout(sendingLaterPatience),
    }).catch(() => null);
    if (!asked?.ok) return asked !== null;
    const ticket = await asked.json();
    for (const entry of waiting.filter(each => each.person === ticket.person)) {
      const now = await became(entry, ticket);
      if (now === null) return false;
      await unsent.put({ ...entry, ...now });
      await tell();
    }
    return true;
  }

  // What became of an entry; null where the kitchen could not be reached, or could not answer now.
  async function became(entry, ticket) {
    const age = Date.now() - entry.typedAt;
    if (age > oldestEntry) return { state: 'refused', words: 'It lay for more than a week: enter it with its date, or on the week sheet.' };
    const fields = new URLSearchParams(entry.body);
    fields.set(ticket.field, ticket.token);
    let answer;
    try {
      answer = await fetch(entry.action, {
        method: 'POST',
        body: fields,
        redirect: 'manual',
        signal: AbortSignal.timeout(sendingLaterPatience),
        headers: { 'X-FermentWatch-Kept': String(Math.max(0, age) / 1000) },
      });
    } catch {
      return null;
    }
    switch (answer.status) {
      case 200:
        return { state: 'sent', to: answer.headers.get('FermentWatch-To') ?? root };
      case 403:
        return { state: 'refused', words: 'That is for an adult.' };
      case 404:
        return { state: 'refused', words: 'There is no such jar.' };
      case 409:
        return { state: 'refused', words: 'What it answers is not asked any more.' };
      case 422:
        return { state: 'asked', words: 'The kitchen asks about it, or something in it was not right.' };
      case 400:
      case 413:
      case 415:
        return { state: 'refused', words: 'The kitchen could not read it.' };
      default:
        return null;
    }
  }

  async function tell() {
    for (const page of await self.clients.matchAll({ type: 'window' })) page.postMessage('unsent');
  }

  // ---- The round of today is kept with the pages on which it is answered.
  async function keepRound() {
    const kept = await keptPage(new URL(root, self.location));
    if (kept && Date.now() - Number(kept.headers.get('Kept-At')) < 60e3) return;
    const answer = await fetch(root, { redirect: 'error' });
    await keep(new URL(root, self.location), answer.clone());
    await keepDoor();
    const asked = new Set([...(await answer.text()).matchAll(/href="(jars\/\d+\/(?:ph|taste))\?from=round"/g)].map(([, page]) => page));
    for (const page of [...asked].slice(0, 12)) {
      const url = new URL(root + page, self.location);
      await keep(url, await fetch(`${url.pathname}?from=round`, { redirect: 'error' }));
    }
  }

  async function keepDoor() {
    await keep(new URL(unsentPage, self.location), await fetch(unsentPage, { credentials: 'omit', cache: 'no-store' }));
  }

  self.addEventListener('install', event =>
    event.waitUntil(
      keepDoor()
        .catch(() => {})
        .then(() => self.skipWaiting()),
    ),
  );
  self.addEventListener('activate', event => event.waitUntil(self.clients.claim()));
  self.addEventListener('sync', event => {
    if (event.tag === 'unsent') event.waitUntil(send().then(done => (done ? null : Promise.reject(new Error('out of reach')))));
  });
  self.addEventListener('message', event => {
    if (event.data === 'round') event.waitUntil(keepRound().catch(() => {}));
    else if (event.data === 'send') event.waitUntil(send().then(tell));
  });

  self.addEventListener('fetch', event => {
    const { request } = event,
      url = new URL(request.url);
    if (url.origin !== self.location.origin || within(url.pathname) === null) return;
    if (request.mode === 'navigate' && request.method === 'GET') event.respondWith(shown(event, url));
    else if (
      request.mode === 'navigate' &&
      request.method === 'POST' &&
      request.headers.get('Content-Type')?.startsWith('application/x-www-form-urlencoded')
    )
      event.respondWith(taken(event, url));
    else if (request.method === 'GET' && url.searchParams.has('v')) event.respondWith(fileOf(request));
  });
})();
