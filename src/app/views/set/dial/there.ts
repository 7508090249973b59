import type { Reception, StationReception } from '../../../../engine/index.ts';
import { dialWords, verdictWords } from '../../../../outputs/words/index.ts';

const texts = dialWords.there;

/** As far as this from a station one is a little off tune, not between stations, Hz. */
const NEAR = 4500;
/** Below this a station is nothing at that place of the dial, dB. */
const FAINTEST = -60;

/** The station that is strongest where the pointer stands; undefined where none is heard there, nor close by. */
export function stationThere(reception: Reception, position: number, frequency: number): number | undefined {
  const strongest = strongestAt(reception, position)?.index;
  if (strongest === undefined) return undefined;
  const { frequency: own, heard } = reception.stations[strongest];
  return Math.abs(frequency - own) <= NEAR || heard !== 'not heard' ? strongest : undefined;
}

function strongestAt({ dial: { points, levels }, stations }: Reception, position: number) {
  if (levels.length !== points.length || stations.length === 0) return undefined;
  const at = points.reduce(
    (best, point, i) => (Math.abs(point.position - position) < Math.abs(points[best].position - position) ? i : best),
    0,
  );
  const index = levels[at].reduce((best, level, i) => (level > levels[at][best] ? i : best), 0);
  return levels[at][index] > FAINTEST ? { index, level: levels[at][index] } : undefined;
}

/** What the pointer stands on: "Radio Corvale, comfortable", or how far it stands off the station that comes through best. */
export function whatIsThere(
  reception: Reception,
  position: number,
  frequency: number,
  tunedTo?: StationReception,
): string {
  if (tunedTo?.dial) return texts.station(tunedTo.name, verdictWords[tunedTo.verdict]);
  const { dial, stations } = reception;
  if (dial.levels.length !== dial.points.length || stations.length === 0) return texts.between;
  const strongest = strongestAt(reception, position);
  if (!strongest) return texts.nothing;
  const { name, frequency: own, heard } = stations[strongest.index];
  const off = frequency - own;
  const best = dial.levels.reduce((most, row) => Math.max(most, row[strongest.index]), Number.NEGATIVE_INFINITY);
  const down = Math.round(best - strongest.level);
  if (Math.abs(off) < 50) return texts.on(name);
  if (Math.abs(off) <= NEAR) return texts.off(off, name, down);
  if (heard === 'not heard') return texts.nothingHeard;
  return texts.strongest(name, down);
}
