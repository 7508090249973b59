/** The browser with all its processes, as a power cut would: one that outlives it would hold the storage for the next. */
export function killWhole(id: number): void {
  try {
    process.kill(-id, 'SIGKILL');
  } catch {
    process.kill(id, 'SIGKILL');
  }
}
