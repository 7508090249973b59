/** Of the tabs in which one set is open, the one that writes it to the disk. */
export interface WriterLock {
  /** Takes the part of the writer from whichever tab has it. */
  readonly take: () => Promise<void>;
  readonly isHeld: () => boolean;
  readonly release: () => void;
}

/** Opens the lock of a set. @param inUse another tab has it, or has just taken it */
export type OpenWriterLock = (id: string, inUse: () => void) => WriterLock;

/** By Web Locks; where a browser has none, every tab may write and the latest change counts. */
export const openWriterLock: OpenWriterLock = (id, inUse) => {
  const { locks } = navigator as Partial<Navigator>;
  if (!locks) return { take: async () => undefined, isHeld: () => true, release: () => undefined };
  let letGo: (() => void) | undefined;
  let isWanted = true;
  const ask = (options: LockOptions): Promise<void> =>
    new Promise((answered) => {
      let done: (() => void) | undefined;
      const held = (lock: Lock | null): Promise<void> | undefined => {
        answered();
        if (!lock) inUse();
        if (!lock || !isWanted) return undefined;
        return new Promise((resolve) => {
          done = resolve;
          letGo = resolve;
        });
      };
      locks.request(`faintwave.document.${id}`, options, held).catch(() => {
        // Another tab took it, or the page may have no locks.
        if (done && letGo === done) {
          letGo = undefined;
          inUse();
        }
        answered();
      });
    });
  let asked = ask({ ifAvailable: true });
  return {
    async take() {
      await asked;
      if (letGo || !isWanted) return;
      asked = ask({ steal: true });
      await asked;
    },
    isHeld: () => letGo !== undefined,
    release() {
      isWanted = false;
      letGo?.();
      letGo = undefined;
    },
  };
};
