// Offers the time zone of this browser where the kitchen is set up; without script that of the machine stands there.
'use strict';

(() => {
  const field = document.getElementById('f-time-zone');
  const here = Intl.DateTimeFormat().resolvedOptions().timeZone;
  if (!field || !here) return;
  // A browser may use a name of old.
  if (![...field.options].some(option => option.value === here)) field.add(new Option(here.replaceAll('_', ' '), here));
  field.value = here;
  document.getElementById('f-time-zone-hint').textContent = 'As this browser has it; change it if the kitchen is elsewhere.';
})();
