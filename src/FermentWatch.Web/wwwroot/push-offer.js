// Offers notices on this phone where its browser can take them; elsewhere, and without script, the page shows no button for it.
'use strict';

(() => {
  const offered = document.getElementById('phone');
  const able = window.isSecureContext && 'serviceWorker' in navigator && 'PushManager' in window && 'Notification' in window;
  if (!offered || !able) return;
  const button = offered.querySelector('button');
  const said = offered.querySelector('[role=status]');
  const refusedWords =
    'This browser does not let this kitchen show notices. Allow them for this page in its settings, and load the page again.';

  function bytes(base64url) {
    const text = atob(base64url.replaceAll('-', '+').replaceAll('_', '/'));
    return Uint8Array.from(text, letter => letter.charCodeAt(0));
  }

  function base64url(buffer) {
    return btoa(String.fromCharCode(...new Uint8Array(buffer)))
      .replaceAll('+', '-')
      .replaceAll('/', '_')
      .replaceAll('=', '');
  }

  // A subscription to another kitchen's key, from before it was set up anew, is given up: only one may be there.
  async function subscribe(worker) {
    const key = offered.dataset.key;
    const before = await worker.pushManager.getSubscription();
    if (before && base64url(before.options.applicationServerKey ?? new ArrayBuffer(0)) === key) return before;
    await before?.unsubscribe();
    return worker.pushManager.subscribe({ userVisibleOnly: true, applicationServerKey: bytes(key) });
  }

  // What went wrong, or null.
  async function tell(subscription) {
    const answer = await fetch(new URL('api/v1/notice-routes/web-push', document.baseURI), {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', 'X-FermentWatch': 'page' },
      body: JSON.stringify({
        endpoint: subscription.endpoint,
        p256dh: base64url(subscription.getKey('p256dh')),
        auth: base64url(subscription.getKey('auth')),
      }),
    });
    if (answer.ok) return null;
    const problem = await answer.json().catch(() => ({}));
    const wrong = (problem.refusals ?? []).map(refusal => refusal.enter).join(' ');
    return wrong || problem.title || `The kitchen answered ${answer.status}.`;
  }

  async function subscribeAndTell() {
    button.disabled = true;
    said.textContent = 'One moment.';
    try {
      if ((await Notification.requestPermission()) !== 'granted') {
        said.textContent = refusedWords;
        return;
      }
      await navigator.serviceWorker.register(new URL('kitchen-worker.js', document.baseURI));
      const trouble = await tell(await subscribe(await navigator.serviceWorker.ready));
      if (trouble === null) location.assign(new URL('notices?done=phone', document.baseURI));
      else said.textContent = trouble;
    } catch (error) {
      said.textContent = `It did not work. The browser says: ${error.message}`;
    } finally {
      button.disabled = false;
    }
  }

  if (Notification.permission === 'denied') {
    button.hidden = true;
    said.textContent = refusedWords;
  }
  button.addEventListener('click', subscribeAndTell);
  offered.hidden = false;
})();
