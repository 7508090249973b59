import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { inRoot } from '../../../scripts/support/paths.mjs';
import { readValue, receiveRanged } from '../../engine/index.ts';
import { packagedCoastFor } from '../coast.ts';
import { receptionCalculation } from './reception.ts';
import { varyCalculation } from './vary.ts';

// biome-ignore lint/suspicious/noExplicitAny: descriptions and answers as written in JSON
type Json = any;
const example = (name: string): Json => JSON.parse(readFileSync(inRoot(`examples/${name}.json`), 'utf8'));

const answerOf = (calculation: typeof varyCalculation, input: unknown): Json => {
  const result = calculation.run(input);
  if (!result.ok) throw new Error(result.problems.map((p) => `${p.path}: ${p.message}`).join('\n'));
  return JSON.parse(JSON.stringify(result.answer));
};
const problemsOf = (input: unknown): string[] => {
  const result = varyCalculation.run(input);
  return result.ok ? [] : result.problems.map((p) => `${p.path}: ${p.message}`);
};

/** The figures of a reception, by its fields as they are written. */
const figuresIn = ({ stations }: Json, asked: Json[]): (number | null)[] =>
  asked.map(({ kind, station }) => {
    if (kind === 'most heard')
      return stations.filter((s: Json) => ['quiet', 'comfortable', 'loud'].includes(s.verdict)).length;
    const one = stations.find((s: Json) => s.name === station);
    if (!one.dial) return null;
    return kind === 'loudest' ? one.soundPressureLevel : Math.min(40, one.disturbance?.audioRatio ?? 40);
  });

/** What a changed description gives, received by itself. */
function received(set: Json): Json {
  const read = readValue(set);
  if (!read.ok) throw new Error('the changed description does not read');
  return receiveRanged(read.set, { coast: packagedCoastFor(read.set.place) });
}

const galena = example('medium-wave-galena');
const choices = [
  { path: '/arrangement/aerialTap', values: [6, 11, 20] },
  { path: '/arrangement/detectorTap', values: [10, 18, 56] },
];
const aims = [
  { kind: 'loudest', station: 'Northmoor Calling' },
  { kind: 'clearest', station: 'Northmoor Calling' },
  { kind: 'most heard' },
];

describe('calc vary', () => {
  it('gives the Pareto-best of all combinations, each as it is received by itself', () => {
    const all = choices[0].values.flatMap((aerialTap) =>
      choices[1].values.map((detectorTap) => {
        const set = { ...galena, arrangement: { ...galena.arrangement, aerialTap, detectorTap } };
        return {
          changes: { '/arrangement/aerialTap': aerialTap, '/arrangement/detectorTap': detectorTap },
          figures: figuresIn(received(set), aims) as number[],
        };
      }),
    );
    const best = all
      .filter(
        (one) =>
          !all.some(
            (other) =>
              other.figures.every((f, i) => f >= one.figures[i]) && other.figures.some((f, i) => f > one.figures[i]),
          ),
      )
      .sort((a, b) => b.figures[0] - a.figures[0]);
    const answer = answerOf(varyCalculation, { set: galena, choices, aims, keep: 100 });
    expect(answer.tried + answer.bounded).toBe(9);
    expect(answer.best).toEqual(best);
    expect(answerOf(varyCalculation, { set: galena, choices, aims, keep: 1 }).best).toEqual(best.slice(0, 1));
  });

  it('gives the figures of calc reception for the changed description, none for a station beyond the dial', () => {
    const { place } = galena;
    const set = { ...galena, place: { ...place, stations: place.stations.slice(3, 6) } };
    const { best, tried } = answerOf(varyCalculation, {
      set,
      choices: [{ path: '/tuning/maximum', values: ['60 pF', '450 pF'] }],
      aims,
    });
    expect(tried).toBe(2);
    expect(best[0].changes).toEqual({ '/tuning/maximum': '450 pF' });
    const changed = { ...set, tuning: { ...set.tuning, maximum: '450 pF' } };
    expect(best[0].figures).toEqual(figuresIn(answerOf(receptionCalculation, changed), aims));
    const only = answerOf(varyCalculation, { set, choices: [{ path: '/tuning/maximum', values: ['60 pF'] }], aims });
    expect(only.best[0].figures.slice(0, 2)).toEqual([null, null]);
  });

  it('leaves out combinations that cannot stand together, and counts them', () => {
    const answer = answerOf(varyCalculation, {
      set: galena,
      choices: [
        { path: '/coils/0/turns', values: [30, 56] },
        { path: '/arrangement/detectorTap', values: [18, 40] },
      ],
      aims: [{ kind: 'most heard' }],
    });
    expect([answer.tried, answer.refused]).toEqual([3, 1]);
    expect(answer.warnings).toEqual(['1 combination of values left out: these values cannot stand together.']);
  });

  it('names every problem at once, and which choice has it', () => {
    const found = problemsOf({
      set: galena,
      choices: [
        { path: '/arrangement/detectorTap', values: [18, 'soon', 60] },
        { path: '/tuning/maximum', values: ['500 pF', '75 mm'] },
      ],
      aims: [{ kind: 'loudest', station: 'Nowhere' }, { kind: 'quickest' }],
      keep: 0,
    });
    for (const start of [
      'choices.0.values.1',
      'choices.0.values.2',
      'choices.1.values.1',
      'aims.0.station',
      'aims.1.kind',
      'keep',
    ])
      expect(
        found.some((problem) => problem.startsWith(start)),
        `${start} in\n${found.join('\n')}`,
      ).toBe(true);
    for (const problem of found) expect(problem).toMatch(/: expected .*got /);
  });

  it('refuses places that the description does not have, one place twice, and too many combinations', () => {
    const aim = [{ kind: 'most heard' }];
    const at = (path: string) => ({ path, values: [1] });
    expect(problemsOf({ set: galena, choices: [at('/arrangement/tap'), at('coils')], aims: aim })).toEqual([
      expect.stringMatching(/^choices.0.path: expected a JSON pointer .*got "\/arrangement\/tap"/),
      expect.stringMatching(/^choices.1.path: expected a JSON pointer .*got "coils"/),
    ]);
    expect(problemsOf({ set: galena, choices: [at('/coils/0/turns'), at('/coils/0')], aims: aim })[0]).toMatch(
      /^choices.1.path: expected a place .*got "\/coils\/0"/,
    );
    const many = Array.from({ length: 400 }, (_, k) => k + 1);
    expect(
      problemsOf({
        set: galena,
        choices: [
          { path: '/arrangement/aerialTap', values: many },
          { path: '/arrangement/detectorTap', values: many },
        ],
        aims: aim,
      }),
    ).toEqual([expect.stringMatching(/^choices: expected .*100000 combinations.*got 160000/)]);
    expect(problemsOf({ set: { ...galena, coils: 7 }, choices: [at('/coils')], aims: aim })[0]).toMatch(/^set\.coils/);
  });
});
