require('node:worker_threads').parentPort.postMessage({ kind: 'searching' });
for (;;);
