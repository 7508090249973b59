import { signal } from '@preact/signals';

export interface Notice {
  readonly key: string;
  readonly text: string;
  /** The open set it is about; undefined: the page. */
  readonly of?: string;
  readonly action?: { readonly label: string; readonly run: () => void };
  /** The action takes back the latest change: true only until something else is changed. */
  readonly untilNextChange?: boolean;
  /** The builder has dismissed it: it is not offered again. */
  readonly onDismissed?: () => void;
  /** Something is being worked on: it goes by itself, or by its action. */
  readonly isBusy?: boolean;
}

export const notices = signal<readonly Notice[]>([]);

/** Key of the notice of a change that is being tried: it stands in the answer, until it is kept or something else is changed. */
export const TRIED = 'tried';

/** The box of parts whose notices are shown beside those of the set; undefined while none is in view. */
export const boxInView = signal<string | undefined>(undefined);

const timers = new Map<string, ReturnType<typeof setTimeout>>();
/** Long enough to read twice; a notice with something to decide stays until it is decided. */
const STAYS_MS = 15_000;

type Mark = Pick<Notice, 'key' | 'of'>;
const timerKey = ({ key, of = '' }: Mark): string => `${of} ${key}`;
const isMarked =
  ({ key, of }: Mark) =>
  (notice: Notice): boolean =>
    notice.key === key && notice.of === of;

/** Tell the builder something; a notice of the same set with the same key takes the place of the one before. */
export function tell(
  text: string,
  options: { key?: string; stays?: boolean } & Pick<
    Notice,
    'of' | 'action' | 'untilNextChange' | 'onDismissed' | 'isBusy'
  > = {},
): void {
  const { key = text, of, action, untilNextChange, onDismissed, isBusy } = options;
  const isSame = isMarked({ key, of });
  notices.value = [
    ...notices.value.filter((notice) => !isSame(notice)),
    { key, text, of, action, untilNextChange, onDismissed, isBusy },
  ];
  const timer = timerKey({ key, of });
  clearTimeout(timers.get(timer));
  if (!options.stays)
    timers.set(
      timer,
      setTimeout(() => dismiss(key, of), STAYS_MS),
    );
}

/** @param of the open set it is about; undefined: the page. */
export function dismiss(key: string, of?: string): void {
  clearTimeout(timers.get(timerKey({ key, of })));
  const isSame = isMarked({ key, of });
  if (notices.value.some(isSame)) notices.value = notices.value.filter((notice) => !isSame(notice));
}

/** A notice stays until it is dismissed. @param of the open set it is about; undefined: the page. */
export function keepNotice(key: string, of?: string): void {
  clearTimeout(timers.get(timerKey({ key, of })));
}

/** A set was changed: what offers to take back its change before that would now take back another. */
export function dismissOnChange(of: string): void {
  for (const notice of notices.value) if (notice.of === of && notice.untilNextChange) dismiss(notice.key, of);
}

/** A set is no longer open: what was said about it goes too. */
export function dismissAllOf(of: string): void {
  for (const notice of notices.value) if (notice.of === of) dismiss(notice.key, of);
}
