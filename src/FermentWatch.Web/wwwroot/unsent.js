// Says on this phone what is not sent yet, and has it sent. On the round it also has the round kept for the cellar.
'use strict';

(() => {
  const box = document.getElementById('unsent');
  const able = window.isSecureContext && 'serviceWorker' in navigator && 'caches' in window;
  const isList = box.dataset.list === 'true';
  const again = 20000;

  if (!able) {
    if (isList)
      box.append(made('p', 'This browser keeps nothing for places without reception: that needs an address that begins with https.'));
    return;
  }

  function made(name, text, className) {
    const element = document.createElement(name);
    element.textContent = text ?? '';
    if (className) element.className = className;
    return element;
  }

  function button(text, act) {
    const element = made('button', text, 'quiet');
    element.type = 'button';
    element.addEventListener('click', act);
    return element;
  }

  const words = name => name.replace(/([a-z])([A-Z])/g, (_, before, capital) => `${before} ${capital.toLowerCase()}`).toLowerCase();
  const time = at =>
    new Date(at).toLocaleString('en-GB', { weekday: 'short', day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' });

  // What an entry says, for whoever typed it.
  function said(entry) {
    const fields = new URLSearchParams(entry.body);
    const jar = /jars\/(\d+)/.exec(entry.action)?.[1];
    const choice = fields.get('Input.Choice');
    if (entry.action.includes('round/answer')) {
      const except = fields.getAll('Input.Except');
      const seen = each => (fields.get(`Input.Seen[${each}]`) ? ` (${words(fields.get(`Input.Seen[${each}]`))})` : '');
      const but = except.length ? ` but ${except.map(each => each + seen(each)).join(', ')}` : '';
      return `Round, jars ${fields.get('Input.Jars').replaceAll(',', ', ')}: all well${but}`;
    }
    if (entry.action.includes('/ph')) return `pH of jar ${jar}: ${fields.get('Input.Ph')}`;
    if (entry.action.includes('put-up')) return `Put up: ${fields.get('Input.Another') || fields.get('Input.What')}, ${fields.get('Input.HowMuch')}`;
    return `Jar ${jar ?? ''}${choice ? `: ${words(choice)}` : ''}${fields.get('Input.Note') ? `, ${fields.get('Input.Note')}` : ''}`;
  }

  const states = {
    waiting: 'Kept on this phone, not sent yet.',
    perhaps: 'It may have been sent: the kitchen did not answer. Look at the jars first.',
    sent: 'Sent, and written down.',
  };

  // The form itself, so that the kitchen shows it filled in with what it asks.
  async function open(entry) {
    const ticket = await fetch(new URL('api/v1/form-ticket', document.baseURI), { cache: 'no-store' }).then(
      answer => (answer.ok ? answer.json() : null),
      () => null,
    );
    if (ticket === null) return;
    const form = document.createElement('form');
    [form.method, form.action] = ['post', entry.action];
    for (const [name, value] of [...new URLSearchParams(entry.body), [ticket.field, ticket.token]]) {
      const field = document.createElement('input');
      [field.type, field.name, field.value] = ['hidden', name, value];
      form.append(field);
    }
    await unsent.remove(entry.key);
    document.body.append(form);
    form.submit();
  }

  function row(entry, isMine) {
    const item = made('li');
    const text = made('div');
    text.append(
      made('p', isMine ? said(entry) : 'An entry of somebody else who was signed in on this phone', 'unsent-words'),
      made('p', `${time(entry.typedAt)}. ${entry.words ?? states[entry.state]}`, 'soft'),
    );
    item.append(text);
    const acts = made('div', '', 'row-buttons');
    if (entry.state === 'sent') {
      const link = made('a', 'What it came to', 'button quiet');
      link.href = entry.to;
      link.addEventListener('click', () => unsent.remove(entry.key));
      acts.append(link);
    } else if (isMine && (entry.state === 'asked' || entry.state === 'perhaps')) acts.append(button('Open it', () => open(entry)));
    if (isMine)
      acts.append(
        button(entry.state === 'sent' ? 'Seen' : 'Throw it away', async () => {
          await unsent.remove(entry.key);
          await show();
        }),
      );
    item.append(acts);
    return item;
  }

  async function owner() {
    return (await caches.match('https://unsent.invalid/person', { cacheName: 'facts' }))?.text();
  }

  async function show() {
    const [entries, me] = await Promise.all([unsent.all(), owner()]);
    const open = entries.filter(entry => entry.state !== 'sent');
    const count = `${open.length} ${open.length === 1 ? 'entry' : 'entries'} on this phone ${open.length === 1 ? 'is' : 'are'} not sent yet.`;
    box.hidden = !isList && entries.length === 0;
    if (isList) {
      const list = made('ul', '', 'entered');
      list.append(...entries.map(entry => row(entry, entry.person === me)));
      box.replaceChildren(
        made(
          'p',
          open.length === 0 ? 'Nothing waits on this phone.' : me ? count : `${count} Sign in as whoever typed them, and they are sent.`,
          'lead',
        ),
        list,
      );
      if (open.some(entry => entry.state === 'waiting' && entry.person === me)) box.append(button('Send now', () => tellWorker('send')));
      return entries;
    }
    const line = made('p', open.length > 0 ? `${count} ` : 'All that was kept on this phone is sent. ');
    const link = made('a', 'See what', '');
    link.href = 'unsent';
    line.append(link);
    box.className = 'now-box calm';
    box.replaceChildren(line);
    return entries;
  }

  async function tellWorker(what) {
    (await navigator.serviceWorker.ready).active?.postMessage(what);
  }

  async function look() {
    const entries = await show();
    if (entries.some(entry => entry.state === 'waiting') && document.visibilityState === 'visible') await tellWorker('send');
    setTimeout(look, again);
  }

  navigator.serviceWorker.addEventListener('message', event => {
    if (event.data === 'unsent') show();
  });
  window.addEventListener('online', () => tellWorker('send'));
  // Signing in is no reason to keep anything yet.
  if (document.querySelector('form.board') || isList)
    navigator.serviceWorker
      .register(new URL('kitchen-worker.js', document.baseURI))
      .then(() => document.querySelector('form.board') && tellWorker('round'));
  look();
})();
