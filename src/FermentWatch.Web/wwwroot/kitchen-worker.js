// Stands between this phone and the kitchen: notices while no page is open, the round where there is no reception.
'use strict';

importScripts('push-worker.js', 'unsent-store.js', 'offline-worker.js');
