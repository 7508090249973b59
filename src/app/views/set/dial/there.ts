import type { Reception, StationReception } from '../../../../engine/index.ts';
import { dialWords, verdictWords } from '../../../../outputs/words/index.ts';

const texts = dialWords.there;

/** As far as this from a station one is a little off tune, not between stations, Hz. */
const NEAR = 4500;

/** What the pointer stands on: "Radio Corvale, comfortable", or how far it stands off the station that comes through best. */
export function whatIsThere(
  { dial, stations }: Reception,
  position: number,
  frequency: number,
  tunedTo?: StationReception,
): string {
  if (tunedTo?.dial) return texts.station(tunedTo.name, verdictWords[tunedTo.verdict]);
  const { points, levels } = dial;
  if (levels.length !== points.length || stations.length === 0) return texts.between;
  const at = points.reduce(
    (best, point, i) => (Math.abs(point.position - position) < Math.abs(points[best].position - position) ? i : best),
    0,
  );
  const strongest = levels[at].reduce((best, level, i) => (level > levels[at][best] ? i : best), 0);
  if (!(levels[at][strongest] > -60)) return texts.nothing;
  const { name, frequency: own, heard } = stations[strongest];
  const off = frequency - own;
  const best = levels.reduce((most, row) => Math.max(most, row[strongest]), Number.NEGATIVE_INFINITY);
  const down = Math.round(best - levels[at][strongest]);
  if (Math.abs(off) < 50) return texts.on(name);
  if (Math.abs(off) <= NEAR) return texts.off(off, name, down);
  if (heard === 'not heard') return texts.nothingHeard;
  return texts.strongest(name, down);
}
