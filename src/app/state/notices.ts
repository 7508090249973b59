import { signal } from '@preact/signals';

export interface Notice {
  readonly key: string;
  readonly text: string;
  readonly action?: { readonly label: string; readonly run: () => void };
  /** The action takes back the latest change: true only until something else is changed. */
  readonly untilNextChange?: boolean;
  /** Something is being worked on: it goes by itself, or by its action. */
  readonly isBusy?: boolean;
}

export const notices = signal<readonly Notice[]>([]);

const timers = new Map<string, ReturnType<typeof setTimeout>>();
/** Long enough to read twice; a notice with something to decide stays until it is decided. */
const STAYS_MS = 15_000;

/** Tell the builder something; a notice with the same key takes the place of the one before. */
export function tell(
  text: string,
  options: { key?: string; stays?: boolean } & Pick<Notice, 'action' | 'untilNextChange' | 'isBusy'> = {},
): void {
  const { key = text, action, untilNextChange, isBusy } = options;
  notices.value = [
    ...notices.value.filter((notice) => notice.key !== key),
    { key, text, action, untilNextChange, isBusy },
  ];
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

/** Something was changed: what offers to take back the change before it would now take back another. */
export function dismissOnChange(): void {
  for (const { key, untilNextChange } of notices.value) if (untilNextChange) dismiss(key);
}
