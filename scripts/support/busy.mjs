import { spawn } from 'node:child_process';

/**
 * Keeps processors busy with nothing, for tests that must not depend on how fast the machine is.
 * @param {number} count of processes
 * @returns {() => void} ends exactly those; each also ends by itself with the process that began it.
 */
export function keepBusy(count) {
  const work = `const began = process.ppid; while (process.ppid === began);`;
  const processes = Array.from({ length: count }, () => spawn(process.execPath, ['-e', work], { stdio: 'ignore' }));
  const end = () => {
    for (const one of processes) one.kill('SIGKILL');
  };
  process.once('exit', end);
  return end;
}
