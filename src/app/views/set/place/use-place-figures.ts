import { useEffect, useState } from 'preact/hooks';
import type { SetDescription } from '../../../../engine/index.ts';
import type { When } from '../../../description/when.ts';
import type { PlaceFigures, PlaceQuestion } from '../../../workers/figures.ts';
import { usePlaceWorker } from './use-place-worker.ts';

/** What the day is; only sunset and sunrise hang on it. */
export const TODAY = new Date();

/** From the worker; the last ones stay until the next are there. */
export function usePlaceFigures(
  { place }: Pick<SetDescription, 'place'>,
  when: When,
  chosen: number | undefined,
): PlaceFigures | undefined {
  const [figures, setFigures] = useState<PlaceFigures | undefined>();
  const ask = usePlaceWorker<PlaceQuestion, PlaceFigures>('place', (_question, reply) => {
    if ('answer' in reply) setFigures(reply.answer);
    else console.warn(reply.error);
  });
  // Every change of the set reads the place anew; only one that differs is worth asking about.
  const key = JSON.stringify(place);
  useEffect(() => ask({ about: 'place', place, when, date: TODAY, chosen }), [ask, key, when, chosen]);
  return figures;
}
