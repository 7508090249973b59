import type { Reception, StationReception } from '../../../../engine/index.ts';
import { verdictWords } from '../../../../outputs/words/index.ts';

/** As far as this from a station one is a little off tune, not between stations, Hz. */
const NEAR = 4500;

/** What the pointer stands on: "Radio Corvale, comfortable", or how far it stands off the station that comes through best. */
export function whatIsThere(
  { dial, stations }: Reception,
  position: number,
  frequency: number,
  tunedTo?: StationReception,
): string {
  if (tunedTo?.dial) return `${tunedTo.name}, ${verdictWords[tunedTo.verdict]}`;
  const { points, levels } = dial;
  if (levels.length !== points.length || stations.length === 0) return 'between stations';
  const at = points.reduce(
    (best, point, i) => (Math.abs(point.position - position) < Math.abs(points[best].position - position) ? i : best),
    0,
  );
  const strongest = levels[at].reduce((best, level, i) => (level > levels[at][best] ? i : best), 0);
  if (!(levels[at][strongest] > -60)) return 'between stations, nothing here';
  const { name, frequency: own, heard } = stations[strongest];
  const off = frequency - own;
  const best = levels.reduce((most, row) => Math.max(most, row[strongest]), Number.NEGATIVE_INFINITY);
  const down = Math.round(best - levels[at][strongest]);
  const under = down > 0 ? `${down} dB under its best` : 'hardly weaker than at its best';
  if (Math.abs(off) < 50) return `on ${name}`;
  if (Math.abs(off) <= NEAR) return `${kHz(off)} ${off > 0 ? 'above' : 'below'} ${name}: ${under}`;
  if (heard === 'not heard') return 'between stations, nothing to be heard here';
  return `between stations; ${name} comes through, ${under}`;
}

const kHz = (off: number): string => `${Number((Math.abs(off) / 1e3).toFixed(1))} kHz`;
