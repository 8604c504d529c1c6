// What was entered on this phone and has not reached the kitchen, or what the kitchen asks about. For the worker and for pages.
'use strict';

const unsent = (() => {
  const box = () => caches.open('unsent');
  const addressOf = key => `https://unsent.invalid/${encodeURIComponent(key)}`;

  return {
    // States: waiting, asked (the kitchen did not take it as it stands), refused, sent; perhaps, of put-up forms kept by earlier versions.
    async all() {
      const kept = await box();
      const entries = await Promise.all((await kept.keys()).map(async address => (await kept.match(address))?.json()));
      return entries.filter(Boolean).sort((one, other) => one.typedAt - other.typedAt);
    },
    async put(entry) {
      await (await box()).put(addressOf(entry.key), new Response(JSON.stringify(entry)));
    },
    async remove(key) {
      await (await box()).delete(addressOf(key));
    },
  };
})();
