// Loaded before a program: ends its process, as a power cut would, at the KILL_AT-th call that changes the disk. A
// write that is cut has half its bytes on the disk. Without KILL_AT it prints the calls, in their order, at the end.

const fs = require('node:fs');
const { syncBuiltinESMExports } = require('node:module');

const at = Number(process.env.KILL_AT ?? 0);
const calls = [];
const die = () => process.kill(process.pid, 'SIGKILL');

function cut(name, half) {
  const real = fs[name];
  fs[name] = (...args) => {
    calls.push(name);
    if (calls.length === at) {
      half?.(...args);
      die();
    }
    return real(...args);
  };
}

const { openSync, writeSync, closeSync } = fs;
const bytes = (content) => Buffer.from(content);
cut('writeFileSync', (to, content) => {
  const half = bytes(content).subarray(0, bytes(content).length >> 1);
  const handle = typeof to === 'number' ? to : openSync(to, 'w');
  writeSync(handle, half);
  if (typeof to !== 'number') closeSync(handle);
});
for (const name of ['openSync', 'fchmodSync', 'fsyncSync', 'closeSync', 'renameSync', 'unlinkSync'])
  cut(name);
syncBuiltinESMExports();

if (at === 0) process.on('exit', () => process.stderr.write(`${calls.join(' ')}\n`));
