import type { Disturbance, Loudness, Verdict } from './path/types.ts';

/** Of several disturbances the one that the station stands least above. */
export const worstOf = (disturbances: readonly Disturbance[]): Disturbance | undefined =>
  disturbances.reduce<Disturbance | undefined>(
    (worst, one) => (worst === undefined || one.separation < worst.separation ? one : worst),
    undefined,
  );

/** How a station comes through: as loud as it is alone, unless the dial does not reach it or another masks it. */
export const verdictOf = (isWithin: boolean, loudness: Loudness, disturbances: readonly Disturbance[]): Verdict =>
  !isWithin
    ? 'out of range'
    : loudness !== 'not heard' && disturbances.some(({ effect }) => effect === 'masks')
      ? 'masked'
      : loudness;

/**
 * Whether a station is heard, and not only another instead of it.
 * @param verdict of a station
 * @returns true narrows it to a loudness
 */
export const isHeard = (verdict: Verdict): verdict is Exclude<Loudness, 'not heard'> =>
  verdict !== 'not heard' && verdict !== 'masked' && verdict !== 'out of range';
