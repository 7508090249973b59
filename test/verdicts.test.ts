import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inRoot } from '../scripts/support/paths.mjs';
import { receive } from '../src/engine/reception/path/receive.ts';
import type { Disturbance, Loudness, Reception, StationReception } from '../src/engine/reception/path/types.ts';
import { isHeard, verdictOf } from '../src/engine/reception/verdict.ts';
import { readText } from '../src/engine/set/read.ts';
import { resonanceText } from '../src/outputs/plots/resonance.ts';
import { heardBest } from '../src/outputs/sheets/pages/best.ts';
import { stationsTable } from '../src/outputs/tables/path-table.ts';
import { receptionSummary, stationSentence } from '../src/outputs/words/index.ts';
import { someSet } from './support/random-sets.ts';

const HEARD: readonly Loudness[] = ['loud', 'comfortable', 'quiet', 'faint', 'not heard'];
const BESIDE: readonly Disturbance['effect'][] = ['none', 'behind', 'interferes', 'masks'];

/** Everything in which the outputs for a set's stations say two things at once, in words. */
function contradictions(reception: Reception): string[] {
  const wrong: string[] = [];
  const { stations, best } = reception;
  const lines = stationsTable(stations, 400).split('\n');
  for (const s of stations) {
    const { verdict } = s;
    const row = lines.find((line) => line.startsWith(s.name)) ?? '';
    if (!row.includes(verdict)) wrong.push(`${s.name}: the table does not say ${verdict}`);
    if (!isHeard(verdict) && row.includes('clear')) wrong.push(`${s.name}: ${verdict}, and clear`);
    if (!stationSentence(s).toLowerCase().startsWith(verdict))
      wrong.push(`${s.name}: ${verdict}, but ${stationSentence(s)}`);
    if ((verdict === 'out of range') !== (s.soundPressureLevel === undefined))
      wrong.push(`${s.name}: ${verdict} at ${s.soundPressureLevel} dB SPL`);
  }
  const audible = best.map((i) => stations[i]).filter((s) => isHeard(s.verdict));
  const first = heardBest(reception);
  if (first && !isHeard(first.verdict)) wrong.push(`the sheets begin with ${first.name}: ${first.verdict}`);
  if (!first && audible.some((s) => s.dial)) wrong.push('the sheets begin with none, though one is heard');
  const summary = receptionSummary(reception);
  if (stations.length > 0 && /othing would be heard/.test(summary) !== (audible.length === 0))
    wrong.push(`${audible.length} heard: ${summary}`);
  return wrong;
}

const read = (file: string) => {
  const answer = readText(readFileSync(inRoot('examples', file), 'utf8'));
  if (!answer.ok) throw new Error('does not read');
  return answer.set;
};
const examples = readdirSync(inRoot('examples')).filter((f) => f.endsWith('.json'));

describe('one verdict for a station, whoever asks', () => {
  test.each(examples)('example %s', (file) => {
    for (const time of ['day', 'night'] as const) expect(contradictions(receive(read(file), { time }))).toEqual([]);
  });

  test('whatever is heard, disturbed or out of reach', () => {
    const reception = receive(read('medium-wave-galena.json'));
    const one = reception.stations[0];
    const dressed = fc.record({
      heard: fc.constantFrom(...HEARD),
      effect: fc.option(fc.constantFrom(...BESIDE.slice(1)), { nil: undefined }),
      isWithin: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(dressed, { minLength: 1, maxLength: 5 }), (list) => {
        const stations = list.map(({ heard, effect, isWithin }, i): StationReception => {
          const disturbance = effect && ({ ...one.disturbance, by: 'Another', effect } as Disturbance);
          return {
            ...one,
            name: `Number${i}`,
            heard: isWithin ? heard : 'not heard',
            verdict: verdictOf(isWithin, heard, disturbance ? [disturbance] : []),
            hearing: isWithin ? { ...one.hearing!, loudness: heard } : undefined,
            soundPressureLevel: isWithin ? one.soundPressureLevel : undefined,
            outOfRange: isWithin ? undefined : { side: 'below', end: 540e3 },
            dial: isWithin ? one.dial : undefined,
            disturbance,
          };
        });
        expect(contradictions({ ...reception, stations, best: stations.map((_, i) => i) })).toEqual([]);
      }),
      { numRuns: 300, seed: 8 },
    );
  });

  test('sets by chance', () => {
    const { place } = read('medium-wave-galena.json');
    const sets = fc.sample(someSet, { numRuns: 40, seed: 21 }).filter((set) => set !== undefined);
    expect(sets.length).toBeGreaterThan(20);
    for (const set of sets.slice(0, 20)) expect(contradictions(receive({ ...set, place }))).toEqual([]);
  });
});

test('a neighbour that the circuit does not attenuate is not held down by 0 dB', () => {
  const level = fc.double({ min: -60, max: 0, noNaN: true });
  fc.assert(
    fc.property(fc.array(level, { minLength: 9, maxLength: 9 }), (levels) => {
      const points = levels.map((level, i) => ({
        frequency: 1e6 + 9e3 * (i - 4),
        level: i === 4 ? 1 : level / (i + 1),
      }));
      const words = resonanceText({
        station: { name: 'Saltmarsh Radio', frequency: 1e6 },
        points,
        neighbours: points.map(({ frequency }, i) => ({ name: `Number${i}`, frequency: frequency + 100 })),
      });
      expect(words).not.toMatch(/by (−?0|−\d+) dB/);
      // The last lies beyond what is drawn.
      for (let i = 0; i < 8; i++) expect(words).toContain(`Number${i} (`);
    }),
    { numRuns: 100, seed: 3 },
  );
});
