import { useEffect, useRef, useState } from 'preact/hooks';
import { loopSeconds, type PointId, type StoryScene, slowedTimes, type View } from '../../../outputs/explain/index.ts';
import { PointSound } from './hear.ts';
import type { Maker, Opening } from './maker.ts';
import { waveProblemText } from './scene-problem.ts';

/** Sound follows what is turned after so long a rest. */
const SOUND_PAUSE_MS = 120;
/** What is slowed takes so long from left to right, s. */
const SLOWED_SECONDS = 6;
/** A mark that crosses the picture faster than this cannot be followed, s. */
const FOLLOWED = 0.4;

/**
 * One point of the path as sound, from when it is asked for until it is stopped.
 * @param viewNow what is looked at.
 */
export function useSound(
  maker: Maker,
  opening: Opening,
  scene: StoryScene,
  onProblem: (problem: string) => void,
  viewNow: () => View,
) {
  const { set, reception, recording } = opening;
  const [point, setPoint] = useState<PointId>('phones');
  const [sounding, setSounding] = useState(false);
  /** The view that is heard slowed, while one is. */
  const [slowedView, setSlowedView] = useState<View | undefined>();
  const hearing = useRef<PointSound | undefined>(undefined);
  const { sound } = scene;
  const seconds =
    sound === 'slowed'
      ? SLOWED_SECONDS
      : loopSeconds(scene.settings?.programme?.kind === 'recording' ? recording : undefined);
  useEffect(() => {
    if (!sounding) return;
    if (sound === 'silent') {
      hearing.current?.stop();
      return;
    }
    hearing.current ??= new PointSound();
    const { rate } = hearing.current;
    let wanted = true;
    const ask = () => {
      const slowed = sound === 'slowed' ? viewNow() : undefined;
      setSlowedView(slowed);
      return maker
        .take({ kind: 'samples', scene, point, seconds, rate, loudest: 1, slowed })
        .then((samples) => wanted && hearing.current?.play(samples as Float32Array))
        .catch((error: unknown) => wanted && onProblem(waveProblemText(error)));
    };
    // The picture goes first while something is being turned.
    const pause = setTimeout(ask, SOUND_PAUSE_MS);
    return () => {
      wanted = false;
      clearTimeout(pause);
    };
  }, [sounding, point, maker, scene.settings, scene.rows, scene.show, sound, recording, set, reception]);
  useEffect(() => {
    if (!sounding) hearing.current?.stop();
  }, [sounding]);
  useEffect(() => () => hearing.current?.close(), []);
  const playhead = (): number | undefined => {
    const at = sounding ? hearing.current?.position() : undefined;
    if (at === undefined) return undefined;
    if (sound === 'slowed') return slowedView && slowedView.from + (at / SLOWED_SECONDS) * slowedView.span;
    return viewNow().span < FOLLOWED ? undefined : at;
  };
  const slowed = sound === 'slowed' && slowedView ? slowedTimes(slowedView, SLOWED_SECONDS) : undefined;
  return { point, setPoint, sounding, setSounding, slowed, playhead };
}
