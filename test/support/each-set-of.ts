import { type TurnsGroup, turnsWith } from '../../src/engine/find/turns-space.ts';

/** All sets of groups, one by one. */
export function* eachOf(groups: Iterable<TurnsGroup>): Generator<ReturnType<typeof turnsWith>> {
  for (const group of groups) for (const tap of group.detectorTaps) yield turnsWith(group, tap);
}
