// A form that takes longer than a moment says that it is at work; an impatient second tap sends nothing.
'use strict';

const MOMENT = 400;
const atWork = new Map();

document.addEventListener('submit', event => {
  const form = event.target;
  if (atWork.has(form)) {
    event.preventDefault();
    return;
  }
  const button = event.submitter ?? form.querySelector('[type="submit"]');
  // Another script may take the form after this one has looked.
  setTimeout(
    () =>
      event.defaultPrevented ||
      atWork.set(
        form,
        setTimeout(() => {
          button?.setAttribute('aria-busy', 'true');
          document.querySelector('#at-work').textContent = 'Working on it';
        }, MOMENT),
      ),
  );
});

// A page that comes back from the browser's memory is at work no more; a file that was asked for leaves its page where it is.
for (const back of ['pageshow', 'focus'])
  addEventListener(back, () => {
    for (const [form, waiting] of atWork) {
      clearTimeout(waiting);
      form.querySelectorAll('[aria-busy]').forEach(each => each.removeAttribute('aria-busy'));
    }
    atWork.clear();
    document.querySelector('#at-work').textContent = '';
  });
