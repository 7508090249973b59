import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import type { ComparedSets } from '../../../engine/index.ts';
import { SOUND_RATE } from '../../../outputs/audio/index.ts';
import type { When } from '../../description/when.ts';
import { useWorker } from '../../workers/use-worker.ts';
import { spokenProgramme } from '../set/listen/spoken.ts';
import type { SoundQuestion } from './sound.worker.ts';
import { SoundsInStep } from './sounds-in-step.ts';

const newSoundWorker = (): Worker =>
  new Worker(new URL('./sound.worker.ts', import.meta.url), { type: 'module', name: 'compared-sound' });

/** Which sets can be heard: those that tune to the station. */
export const audibleSets = ({ sets }: ComparedSets): readonly number[] =>
  sets.flatMap(({ station }, i) => (station.dial ? [i] : []));

/** One set after another as sound, all with the same amplification, from when one is asked for until it is stopped. */
export function useComparedSound(compared: ComparedSets, time: When) {
  const [heard, setHeard] = useState<number | undefined>();
  const [ready, setReady] = useState<ReadonlySet<number>>(new Set());
  const [problem, setProblem] = useState('');
  const sounds = useRef(new SoundsInStep());
  const spoken = useRef<Promise<Float32Array | undefined> | undefined>(undefined);
  /** Of what is heard now, so that nothing of the sets before comes in. */
  const now = useRef({ compared, time });
  now.current = { compared, time };
  const ask = useWorker<SoundQuestion, Float32Array>(newSoundWorker, (asked, reply) => {
    if (asked.set !== now.current.compared.sets[asked.index]?.set || asked.time !== now.current.time) return;
    if ('error' in reply) {
      setProblem(reply.error);
      stop();
      return;
    }
    if (sounds.current.add(asked.index, reply.answer)) setReady((before) => new Set([...before, asked.index]));
  });
  const stop = useCallback(() => {
    sounds.current.stop();
    spoken.current = undefined;
    setHeard(undefined);
    setReady(new Set());
  }, []);
  useEffect(() => stop, [compared, time, stop]);
  // The wanted one is rendered first, then the others, one at a time.
  useEffect(() => {
    if (heard === undefined) return;
    const missing = [heard, ...audibleSets(compared)].find((i) => !ready.has(i));
    if (missing === undefined) return;
    const { set, station } = compared.sets[missing];
    const levels = compared.sets.flatMap((one) => one.station.soundPressureLevel ?? []);
    spoken.current ??= spokenProgramme(compared.sets[0].set, station.index);
    let isHere = true;
    void spoken.current.then((samples) => {
      if (!isHere) return;
      ask({
        index: missing,
        set,
        station: station.index,
        level: station.soundPressureLevel,
        amplifiedFrom: levels.length > 0 ? Math.max(...levels) : undefined,
        time,
        spoken: samples,
      });
    });
    return () => {
      isHere = false;
    };
  }, [heard, ready, compared, time, ask]);
  const hear = (index: number) => {
    setProblem('');
    sounds.current.start(SOUND_RATE);
    sounds.current.hear(index);
    setHeard(index);
  };
  return { heard, isReady: heard !== undefined && ready.has(heard), problem, hear, stop };
}
