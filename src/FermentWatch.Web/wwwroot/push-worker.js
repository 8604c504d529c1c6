// Shows the notices of this kitchen on this phone and takes "All well" and "Later" from them.
// It keeps nothing and touches no page. A part of kitchen-worker.js.
'use strict';

// Where the kitchen's pages begin: with a slash, or with the sub-path under which a proxy serves them.
const root = new URL('./', self.location).pathname;

// What a message says, as a notification. The key is its tag: a repeat replaces what is shown.
function shown(message) {
  const answers = typeof message.answer === 'string' && message.answer.startsWith(`${root}answer/`);
  const open = { action: 'open', title: 'Open' };
  return [
    message.title,
    {
      body: message.text,
      tag: message.key,
      renotify: true,
      data: { key: message.key, answer: answers ? message.answer : null },
      actions: answers
        ? [
            { action: 'all-well', title: 'All well' },
            { action: 'later', title: 'Later' },
          ]
        : [open],
    },
  ];
}

// What became of an answer, as a notification in place of the one that asked.
function replaced(data, title, body, opens) {
  return [
    title,
    { body, tag: data.key, data: { key: data.key, answer: opens ? data.answer : null }, actions: [{ action: 'open', title: 'Open' }] },
  ];
}

// Answers once. Nobody needs to be signed in for it: the link carries who is asked, about which jars and until when.
async function answered(data, later) {
  try {
    const answer = await fetch(data.answer.replace(`${root}answer/`, `${root}api/v1/answers/`), {
      method: 'POST',
      credentials: 'omit',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ opened: false, later }),
    });
    if (answer.ok) {
      const taken = await answer.json();
      if (later)
        return replaced(
          data,
          taken.asked_again_at ? 'Later' : 'Not asked again',
          taken.asked_again_at ? 'Asked again in two hours.' : 'The day is nearly over, or every jar was answered for.',
          false,
        );
      return replaced(
        data,
        'Written down',
        taken.filed > 0 ? 'All well, by looking through the glass.' : 'Every jar was answered for already.',
        false,
      );
    }
    if (answer.status === 410) return replaced(data, 'Not written down', 'The day this asked about is over.', false);
    if (answer.status === 404) return replaced(data, 'Not written down', 'The kitchen does not know this notice any more.', false);
    return replaced(data, 'Not written down', `The kitchen answered ${answer.status}. Open it and try there.`, true);
  } catch {
    return replaced(data, 'Not written down', 'The kitchen could not be reached. Open it when you are back in its network.', true);
  }
}

// Where a tap leads: to the page of the answer where the phone shows no buttons on notifications or the answer failed, else to today.
function leadsTo(action, data, buttons) {
  return data.answer && action !== 'open' && !buttons ? data.answer : root;
}

async function open(path) {
  for (const page of await self.clients.matchAll({ type: 'window', includeUncontrolled: true })) {
    if (new URL(page.url).pathname === path) return page.focus();
  }
  return self.clients.openWindow(path);
}

self.addEventListener('push', event => {
  if (event.data) event.waitUntil(self.registration.showNotification(...shown(event.data.json())));
});

self.addEventListener('notificationclick', event => {
  const { data } = event.notification;
  event.notification.close();
  if (event.action === 'all-well' || event.action === 'later')
    event.waitUntil(answered(data, event.action === 'later').then(words => self.registration.showNotification(...words)));
  else event.waitUntil(open(leadsTo(event.action, data, self.Notification.maxActions > 0)));
});
