import { useEffect, useRef, useState } from 'preact/hooks';
import { errorText, soundCardWords as texts } from '../../../../outputs/words/index.ts';
import { CardError, type CardSound, openCardSound } from './card-sound.ts';

/** What the card is doing: nothing, being opened, recording for so many seconds, or what was recorded is worked out. */
export type CardDoing = { readonly recording: number } | 'opening' | 'working' | undefined;

/** The sound card for as long as the component is there; it is opened by the first thing that is done with it. */
export function useCardSound() {
  const opened = useRef<Promise<CardSound> | undefined>(undefined);
  const stopping = useRef<AbortController | undefined>(undefined);
  const [doing, setDoing] = useState<CardDoing>();
  const [problem, setProblem] = useState('');
  const stop = () => stopping.current?.abort();
  useEffect(
    () => () => {
      stop();
      void opened.current?.then((card) => card.close()).catch(() => undefined);
    },
    [],
  );
  /** Does one thing with the card; what goes wrong is said, and a stop is not. */
  const use = async (work: (card: CardSound, signal: AbortSignal) => Promise<void>): Promise<void> => {
    stop();
    const stopped = new AbortController();
    stopping.current = stopped;
    setProblem('');
    // The browser may ask for permission: nothing else is begun meanwhile.
    setDoing('opening');
    try {
      opened.current ??= openCardSound();
      const card = await opened.current;
      stopped.signal.throwIfAborted();
      setDoing('working');
      await work(card, stopped.signal);
    } catch (error) {
      if (!stopped.signal.aborted) {
        // Whatever went wrong, the next click begins with a card opened anew.
        void opened.current?.then((card) => card.close()).catch(() => undefined);
        opened.current = undefined;
        setProblem(wordsOf(error));
      }
    } finally {
      if (stopping.current === stopped) setDoing(undefined);
    }
  };
  return { doing, setDoing, problem, setProblem, stop, use };
}

const wordsOf = (error: unknown): string =>
  error instanceof CardError ? texts.problems[error.problem] : texts.problems.other(errorText(error));
