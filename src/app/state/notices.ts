import { signal } from '@preact/signals';

export interface Notice {
  readonly key: string;
  readonly text: string;
  readonly action?: { readonly label: string; readonly run: () => void };
}

export const notices = signal<readonly Notice[]>([]);

const timers = new Map<string, ReturnType<typeof setTimeout>>();
/** Long enough to read twice; a notice with something to decide stays until it is decided. */
const STAYS_MS = 15_000;

/** Tell the builder something; a notice with the same key takes the place of the one before. */
export function tell(text: string, options: { key?: string; action?: Notice['action']; stays?: boolean } = {}): void {
  const key = options.key ?? text;
  notices.value = [...notices.value.filter((notice) => notice.key !== key), { key, text, action: options.action }];
  clearTimeout(timers.get(key));
  if (!options.stays)
    timers.set(
      key,
      setTimeout(() => dismiss(key), STAYS_MS),
    );
}

export function dismiss(key: string): void {
  clearTimeout(timers.get(key));
  if (notices.value.some((notice) => notice.key === key)) notices.value = notices.value.filter((n) => n.key !== key);
}
