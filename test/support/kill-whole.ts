import type { BrowserContext } from 'playwright-core';

/**
 * How to end a browser at once with all its processes, as a power cut would: one that outlives it would hold the storage
 * for the next.
 * @param context of a browser of its own
 * @returns ends it, and waits until it is gone
 */
export async function killerOf(context: BrowserContext): Promise<() => Promise<void>> {
  const session = await context.browser()!.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  const { id } = processInfo.find(({ type }) => type === 'browser')!;
  return async () => {
    const closed = new Promise((resolve) => context.once('close', resolve));
    killWhole(id);
    await closed;
  };
}

function killWhole(id: number): void {
  try {
    process.kill(-id, 'SIGKILL');
  } catch {
    process.kill(id, 'SIGKILL');
  }
}
