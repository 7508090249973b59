import * as v from 'valibot';
import {
  type Aim,
  type Choice,
  combinations,
  combinationsOf,
  givenValue,
  isRecord,
  type Problem,
  pathAt,
  type ReadResult,
  readValue,
  readWith,
  refuse,
  refuseWith,
  varyGrid,
  type WrittenDescription,
} from '../../engine/index.ts';
import { type CalcExpectation, calcNotes } from '../../outputs/words/index.ts';
import { packagedCoastFor } from '../coast.ts';
import { calculation } from './calculation.ts';
import { expected, oneOf } from './expect.ts';

const MOST_CHOICES = 20;
const MOST_COMBINATIONS = 100_000;
/** Combinations in which a value that the set as it is cannot take may still find others that it goes with. */
const MOST_TRIES = 1000;

const station = v.union([v.string(), v.pipe(v.number(), v.integer(), v.minValue(0))], expected('station-in-set'));
const shape = v.object({
  set: v.unknown(),
  choices: v.pipe(
    v.array(
      v.object(
        {
          path: v.string(expected('place-in-set')),
          values: v.pipe(
            v.array(v.unknown(), expected('choice-values')),
            v.minLength(1, refuse({ code: 'items.at-least', count: 1 })),
          ),
        },
        expected('choice'),
      ),
      expected('choices'),
    ),
    v.minLength(1, refuse({ code: 'items.at-least', count: 1 })),
    v.maxLength(MOST_CHOICES, refuse({ code: 'items.at-most', count: MOST_CHOICES })),
  ),
  aims: v.pipe(
    v.array(
      v.object({ kind: oneOf(['loudest', 'clearest', 'most heard']), station: v.optional(station) }, expected('aim')),
      expected('aims'),
    ),
    v.minLength(1, refuse({ code: 'items.at-least', count: 1 })),
    v.maxLength(MOST_CHOICES, refuse({ code: 'items.at-most', count: MOST_CHOICES })),
  ),
  keep: v.optional(
    v.pipe(
      v.number(refuse({ code: 'whole-number', min: 1, max: MOST_COMBINATIONS })),
      v.check(
        (n) => Number.isInteger(n) && n >= 1 && n <= MOST_COMBINATIONS,
        refuse({ code: 'whole-number', min: 1, max: MOST_COMBINATIONS }),
      ),
    ),
    10,
  ),
});
type Input = v.InferOutput<typeof shape>;

/** What is wrong at a place of the input. */
interface Refused extends Partial<Omit<Problem, 'path' | 'expected'>> {
  readonly at: readonly (string | number)[];
  readonly value: unknown;
  readonly expected: Problem['expected'] | { readonly code: CalcExpectation };
}

/** Problems of a reading, each at a place of the input. */
const problemsAt = (at: Refused['at'], value: unknown, read: ReadResult): Refused[] =>
  read.ok
    ? []
    : read.problems.map(({ path, expected: expectation, given, hint }) => ({
        at: path ? [...at, path] : at,
        value,
        expected: expectation,
        ...(given && { given }),
        ...(hint && { hint }),
      }));

/** Where a choice stands in the description; undefined where nothing does. */
const choiceAt = (set: WrittenDescription, { path, values }: Input['choices'][number]): Choice | undefined => {
  const at = pathAt(path, set);
  return at && { path: at, values };
};

/** What the description and its choices and aims do not agree on. */
function disagreements(input: Partial<Input>): Refused[] {
  const read = readValue(input.set);
  if (!read.ok) return problemsAt(['set'], input.set, read);
  const problems: Refused[] = [];
  const written = (Array.isArray(input.choices) ? input.choices : []).filter(
    (one) => isRecord(one) && typeof one.path === 'string' && Array.isArray(one.values),
  );
  const choices: Choice[] = [];
  for (const [i, one] of written.entries()) {
    const choice = choiceAt(read.written, one);
    const refuseIt = (code: CalcExpectation) =>
      problems.push({ at: ['choices', i, 'path'], value: one.path, expected: { code } });
    if (!choice) refuseIt('place-in-set');
    else if (written.slice(0, i).some(({ path }) => isWithin(path, one.path) || isWithin(one.path, path)))
      refuseIt('place-of-its-own');
    else choices.push(choice);
  }
  const isPlaced = problems.length === 0;
  if (isPlaced && combinationsOf(choices) > MOST_COMBINATIONS)
    problems.push({ at: ['choices'], value: combinationsOf(choices), expected: { code: 'combinations' } });
  else if (isPlaced) problems.push(...valuesRefused(read.written, choices));
  for (const [i, aim] of (Array.isArray(input.aims) ? input.aims : []).entries())
    if (isRecord(aim) && (aim.kind === 'loudest' || aim.kind === 'clearest') && stationAt(read, aim.station) < 0)
      problems.push({ at: ['aims', i, 'station'], value: aim.station, expected: { code: 'station-in-set' } });
  return problems;
}

/** Whether a pointer names the place of another or one inside it. */
const isWithin = (outer: string, inner: string): boolean => inner === outer || inner.startsWith(`${outer}/`);

/** Values with which the set cannot be read, whichever values the other choices have. */
function valuesRefused(written: WrittenDescription, choices: readonly Choice[]): Refused[] {
  const problems: Refused[] = [];
  for (const [i, choice] of choices.entries())
    for (const [j, value] of choice.values.entries()) {
      const read = readWith(written, [choice], [j]);
      if (read.ok || goesWithOthers(written, choices, i, j)) continue;
      problems.push(...problemsAt(['choices', i, 'values', j], value, read));
    }
  return problems;
}

function goesWithOthers(written: WrittenDescription, choices: readonly Choice[], i: number, j: number): boolean {
  const among = choices.map((one, k) => (k === i ? { ...one, values: [one.values[j]] } : one));
  let tries = 0;
  for (const indices of combinations(among)) {
    if (readWith(written, among, indices).ok) return true;
    if (++tries >= MOST_TRIES) return false;
  }
  return false;
}

/** The place of a station in the list by its name or its place; −1 for none. */
function stationAt(read: ReadResult & { ok: true }, station: unknown): number {
  const { stations } = read.set.place;
  if (typeof station === 'number')
    return Number.isInteger(station) && station >= 0 && station < stations.length ? station : -1;
  return stations.findIndex(({ name }) => name === station);
}

const schema = v.pipe(
  shape,
  v.rawCheck(({ dataset, addIssue }) => {
    if (!isRecord(dataset.value)) return;
    for (const { at, value, expected: expectation, given, hint } of disagreements(dataset.value as Partial<Input>))
      addIssue({
        input: value,
        message: refuseWith({ expected: expectation, given: given ?? givenValue(value), ...(hint && { hint }) }),
        path: at.map((key) => ({ type: 'unknown', origin: 'value', input: value, key, value })) as [v.IssuePathItem],
      });
  }),
);

const UNITS = { loudest: 'dB SPL', clearest: 'dB', 'most heard': 'stations' } as const;

/** `calc vary`: every combination of values in a description, and the best of them. */
export const varyCalculation = calculation({
  name: 'vary',
  example: {
    set: {
      format: 'faintwave-set/1',
      name: 'Trial set',
      place: {
        name: 'Little Withy',
        stations: [
          { name: 'Saltmarsh Radio', frequency: '603 kHz', fieldStrength: '20 mV/m' },
          { name: 'Radio Corvale', frequency: '693 kHz', fieldStrength: '5 mV/m' },
        ],
      },
      aerial: { kind: 'inverted-L', height: '8 m', length: '20 m', base: '1.5 m', wire: '1.6 mm' },
      earth: { kind: 'rod', length: '1.2 m', diameter: '12 mm', soilResistivity: '80 Ω·m' },
      coils: [
        {
          shape: 'solenoid',
          name: 'main',
          formerDiameter: '63 mm',
          turns: 56,
          wire: { size: '26 SWG', covering: 'enamel' },
          former: 'card',
        },
      ],
      tuning: { kind: 'variable', maximum: '500 pF', minimum: '15 pF', law: 'semicircular', stray: '20 pF' },
      arrangement: { kind: 'tapped', coil: 'main', aerialTap: 11, detectorTap: 18 },
      detector: { kind: 'germanium' },
      load: { kind: 'phones', resistance: '2 kΩ', bypass: '1 nF' },
    },
    choices: [{ path: '/arrangement/detectorTap', values: [12, 18, 28] }],
    aims: [{ kind: 'loudest', station: 'Radio Corvale' }, { kind: 'most heard' }],
    keep: 3,
  },
  schema,
  answer(input) {
    const read = readValue(input.set);
    if (!read.ok) throw new Error('the description was read before');
    const choices = input.choices.map((one) => choiceAt(read.written, one)!);
    const aims = input.aims.map(
      (aim): Aim =>
        aim.kind === 'most heard' ? { kind: aim.kind } : { kind: aim.kind, station: stationAt(read, aim.station) },
    );
    const { tried, bounded, refused, best } = varyGrid(read.written, choices, aims, ({ place }) => ({
      coast: packagedCoastFor(place),
    }));
    return {
      tried,
      bounded,
      refused,
      best: best.slice(0, input.keep).map(({ indices, figures }) => ({
        changes: Object.fromEntries(input.choices.map(({ path, values }, i) => [path, values[indices[i]]])),
        figures: figures.map((figure) => figure ?? null),
      })),
      units: aims.map(({ kind }) => UNITS[kind]),
      warnings: refused > 0 ? [calcNotes.combinationsRefused(refused)] : [],
    };
  },
});
