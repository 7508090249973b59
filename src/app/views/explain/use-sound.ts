import { useEffect, useRef, useState } from 'preact/hooks';
import type { PointId, StoryScene } from '../../../outputs/explain/index.ts';
import { loopSeconds, PointSound } from './hear.ts';
import type { Maker, Opening } from './maker.ts';
import { waveProblemText } from './scene-problem.ts';

/** Sound follows what is turned after so long a rest. */
const SOUND_PAUSE_MS = 120;

/** One point of the path as sound, from when it is asked for until it is stopped. */
export function useSound(maker: Maker, opening: Opening, scene: StoryScene, onProblem: (problem: string) => void) {
  const { set, reception, recording } = opening;
  const [point, setPoint] = useState<PointId>('phones');
  const [sounding, setSounding] = useState(false);
  const hearing = useRef<PointSound | undefined>(undefined);
  useEffect(() => {
    if (!sounding) return;
    hearing.current ??= new PointSound();
    const { rate } = hearing.current;
    let wanted = true;
    const seconds = loopSeconds(scene.settings?.programme?.kind === 'recording' ? recording : undefined);
    const ask = () =>
      maker
        .take({ kind: 'samples', scene, point, seconds, rate, loudest: 1 })
        .then((samples) => wanted && hearing.current?.play(samples as Float32Array))
        .catch((error: unknown) => onProblem(waveProblemText(error)));
    // The picture goes first while something is being turned.
    const pause = setTimeout(ask, SOUND_PAUSE_MS);
    return () => {
      wanted = false;
      clearTimeout(pause);
    };
  }, [sounding, point, maker, scene.settings, recording, set, reception]);
  useEffect(() => {
    if (!sounding) hearing.current?.stop();
  }, [sounding]);
  useEffect(() => () => hearing.current?.close(), []);
  return { point, setPoint, sounding, setSounding };
}
