import { rmSync } from 'node:fs';

/** Temporary files and folders, each with what ends the work on it. */
const TEMPORARIES = new Map<string, (() => void) | undefined>();
const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/**
 * While there is a temporary file or folder, an interruption removes it; at all other times a signal ends the process
 * at once. @param end called before it is removed: what else must end or go.
 */
export function remember(temporary: string, end?: () => void): void {
  if (TEMPORARIES.size === 0) for (const signal of SIGNALS) process.on(signal, interrupted);
  TEMPORARIES.set(temporary, end);
}

export function forget(temporary: string): void {
  TEMPORARIES.delete(temporary);
  if (TEMPORARIES.size === 0) for (const signal of SIGNALS) process.off(signal, interrupted);
}

export const isRemembered = (temporary: string): boolean => TEMPORARIES.has(temporary);

let opening = 0;
let pending: NodeJS.Signals | undefined;

/** An interruption waits until the file is there or is not: one made after the removal would be left behind. */
export async function undisturbed<T>(open: () => Promise<T>): Promise<T> {
  opening++;
  try {
    return await open();
  } finally {
    opening--;
    if (pending && opening === 0) interrupted(pending);
  }
}

function interrupted(signal: NodeJS.Signals): void {
  if (opening > 0) {
    pending = signal;
    return;
  }
  for (const [temporary, end] of [...TEMPORARIES]) {
    try {
      end?.();
      rmSync(temporary, { recursive: true, force: true });
    } catch {}
    forget(temporary);
  }
  process.kill(process.pid, signal);
}
