// At a desk the jars stand beside the one that is open: the list of their own page, fetched once there is room for it.
'use strict';

(() => {
  const aside = document.querySelector('.jars-beside');
  // As in the style sheet: below it the list is not shown.
  const wide = matchMedia('(min-width: 75rem) and (scripting: enabled)');

  async function fill() {
    if (!wide.matches || aside.childElementCount > 0) return;
    try {
      const answer = await fetch(new URL('jars', document.baseURI), { redirect: 'error' });
      if (!answer.ok) return;
      const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
      aside.replaceChildren(...page.querySelectorAll('.find, .jar-groups'));
    } catch {
      // Without the list the page is what it is on a phone.
      return;
    }
    const here = aside.querySelector(`a.row[href="${aside.dataset.here}"]`);
    here?.setAttribute('aria-current', 'page');
    // Not scrollIntoView: it may move the page as well.
    if (here) aside.scrollTop = here.getBoundingClientRect().top - aside.getBoundingClientRect().top - aside.clientHeight / 2;
  }

  wide.addEventListener('change', fill);
  fill();
})();
