const KEY = 'faintwave.focus';

/** Of this tab; a new tab begins where the latest one was. */
export function keptFocus(): string | undefined {
  try {
    return sessionStorage.getItem(KEY) ?? localStorage.getItem(KEY) ?? undefined;
  } catch {
    return undefined;
  }
}

export function keepFocus(id: string): void {
  for (const storage of ['sessionStorage', 'localStorage'] as const)
    try {
      window[storage].setItem(KEY, id);
    } catch {
      // Without storage no set is found again either, and that is told.
    }
}
