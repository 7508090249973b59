import { useEffect, useMemo, useState } from 'preact/hooks';
import type { StoryScene } from '../../../outputs/explain/index.ts';
import { Maker, type Opening, type ReadyScene } from './maker.ts';

/**
 * The waves of a scene, made beside the page; what was made last stays until the new is there.
 * @param following the scene that will probably be asked for next.
 */
export function useWaves(opening: Opening, scene: StoryScene, following: StoryScene | undefined) {
  const { set, reception, recording, time } = opening;
  const [shown, setShown] = useState<ReadyScene | undefined>();
  const [problem, setProblem] = useState('');
  const maker = useMemo(() => new Maker(setShown, setProblem), []);
  useEffect(() => () => maker.close(), [maker]);
  useEffect(() => maker.open({ set, reception, recording, time }), [maker, set, reception, recording, time]);
  useEffect(() => {
    setProblem('');
    maker.want(scene, following);
  }, [maker, set, reception, recording, time, scene, following]);
  return { maker, shown, problem, setProblem };
}
