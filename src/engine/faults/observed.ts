import * as v from 'valibot';
import type { BuiltSet } from '../built/built-set.ts';
import { isRecord } from '../fields/introspect.ts';
import { type Problem, tooDeep } from '../fields/problem.ts';
import { refuse } from '../fields/refusal.ts';
import { issueProblems, LARGEST_FILE, tooLarge } from '../set/read.ts';
import { noSuchStation, stationNamed, stationText } from '../set/want-problems.ts';
import type { Bounds } from '../units/bounds.ts';
import { givenValue } from '../units/refusal.ts';
import { quantity } from '../units/schema.ts';
import type { Answered } from './answered.ts';
import { answerOfFigure, type Check, checkId, DIAL_AS, HEARD_AS, hasVolts, signsOf, WIDTH_AS } from './checks.ts';
import type { FaultModel } from './fault-model.ts';
import { ohmPlacesOf } from './ohmmeter.ts';

/** Of a file of observations. */
export const OBSERVED_FORMAT = 'faintwave-observed/1';
const MOST_OBSERVED = 200;

/** In place of an answer: the check cannot be done here. */
export const NOT_POSSIBLE = 'not possible';
/** In place of a resistance: the meter shows overload. */
const OVERLOADED = 'open';

/** What was observed: a check with a word or a figure (SI) for its answer. */
export interface ObservedAnswer {
  readonly check: Check;
  /** A word of the check's own, a figure, yes or no; nothing: it cannot be done. */
  readonly answer: string | number | boolean | undefined;
}

/** Observations as read, or every problem there is. */
export type ObservedRead =
  | { readonly ok: true; readonly observations: readonly ObservedAnswer[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const oneOf = (options: readonly string[]) => v.picklist(options, refuse({ code: 'one-of', options }));
/** A figure with its unit, within bounds, or one of a few words. */
const figureOr = (kind: 'angle' | 'resistance' | 'voltage', words: readonly string[], bounds: Bounds) => {
  const [word, figure] = [v.picklist(words), quantity(kind, bounds)];
  return v.lazy((given) => (v.is(word, given) ? word : figure));
};

/** Of a scale: no tuning has a longer one. */
const SCALE: Bounds = { min: 0, max: 360 };
/** No carrier gives more. */
const MOST_VOLTS = 1000;

/** Kinds of checks that a set allows. */
const kindsOf = (built: BuiltSet): readonly Check['kind'][] => [
  'loudness',
  'dial',
  'width',
  'ohms',
  ...(hasVolts(built) ? (['volts'] as const) : []),
  'sign',
];

function entrySchema(built: BuiltSet) {
  const station = v.string(refuse({ code: 'a-name' }));
  const entry = <K extends string, O extends v.GenericSchema, A extends v.GenericSchema>(check: K, of: O, answer: A) =>
    v.object({ check: v.literal(check), of, answer });
  const none = v.optional(v.string());
  return v.variant(
    'check',
    [
      entry('loudness', station, oneOf([...HEARD_AS, NOT_POSSIBLE])),
      entry('dial', station, figureOr('angle', ['off scale', 'silent', NOT_POSSIBLE], SCALE)),
      entry('width', station, oneOf([...WIDTH_AS, NOT_POSSIBLE])),
      entry('ohms', oneOf(ohmPlacesOf(built)), figureOr('resistance', [OVERLOADED, NOT_POSSIBLE], { min: 0 })),
      entry('volts', none, figureOr('voltage', [NOT_POSSIBLE], { min: -MOST_VOLTS, max: MOST_VOLTS })),
      entry('sign', oneOf(signsOf(built)), oneOf(['yes', 'no', NOT_POSSIBLE])),
    ],
    refuse({ code: 'kind', key: 'check', options: kindsOf(built) }),
  );
}

const single = (problem: Problem): ObservedRead => ({ ok: false, problems: [problem] });

/**
 * Read a file of observations. Never throws.
 * @param text JSON, up to 2 MB
 * @param built the set that was observed: its stations, places and signs are those that may be named
 * @returns what was observed, SI, or every problem with its path
 */
export function readObserved(text: string, built: BuiltSet): ObservedRead {
  if (text.length > LARGEST_FILE) return single(tooLarge(text.length));
  const whole = { code: 'object-of', keys: ['format', 'observed'] } as const;
  let value: unknown;
  try {
    value = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return single({ path: '', expected: { code: 'json' }, given: givenValue(text), hint: { code: 'not-json' } });
  }
  if (tooDeep(value)) return single({ path: '', expected: whole, given: { code: 'nested-too-deep' } });
  if (!isRecord(value)) return single({ path: '', expected: whole, given: givenValue(value) });
  const { format, observed } = value;
  const problems: Problem[] = [];
  if (format !== OBSERVED_FORMAT)
    problems.push({
      path: 'format',
      expected: { code: 'literal', value: OBSERVED_FORMAT },
      given: givenValue(format),
    });
  if (!Array.isArray(observed)) {
    problems.push({ path: 'observed', expected: { code: 'any-list' }, given: givenValue(observed) });
    return { ok: false, problems };
  }
  if (observed.length > MOST_OBSERVED)
    return single({
      path: 'observed',
      expected: { code: 'items.at-most', count: MOST_OBSERVED },
      given: givenValue(observed.length),
    });
  const schema = entrySchema(built);
  const observations: ObservedAnswer[] = [];
  observed.forEach((one: unknown, i) => {
    const at = `observed[${i}]`;
    const read = v.safeParse(schema, one);
    if (read.success) {
      const entry = read.output as Entry;
      const problem = entryProblem(entry, built, at);
      if (problem) problems.push(problem);
      else observations.push(observationOf(entry, built));
    } else
      for (const problem of issueProblems(read.issues))
        problems.push({ ...problem, path: problem.path === '' ? at : `${at}.${problem.path}` });
  });
  return problems.length > 0 ? { ok: false, problems } : { ok: true, observations };
}

interface Entry {
  readonly check: Check['kind'];
  readonly of?: string;
  readonly answer: string | number;
}

/** A station that is not there, a check that this set does not allow. */
function entryProblem({ check, of = '' }: Entry, built: BuiltSet, at: string): Problem | undefined {
  const { stations } = built.set.place;
  if (check === 'volts' && !hasVolts(built))
    return {
      path: `${at}.check`,
      expected: { code: 'one-of', options: kindsOf(built) },
      given: givenValue(check),
      hint: { code: 'not-on-mains' },
    };
  if (check !== 'loudness' && check !== 'dial' && check !== 'width') return undefined;
  return stationNamed(stations, of) === undefined ? noSuchStation(`${at}.of`, stations, of) : undefined;
}

function observationOf({ check: kind, of = '', answer: written }: Entry, { set }: BuiltSet): ObservedAnswer {
  const station = stationNamed(set.place.stations, of);
  const check = (
    kind === 'volts'
      ? { kind }
      : kind === 'ohms'
        ? { kind, place: of }
        : kind === 'sign'
          ? { kind, sign: of }
          : { kind, station }
  ) as Check;
  if (written === NOT_POSSIBLE) return { check, answer: undefined };
  if (kind === 'sign') return { check, answer: written === 'yes' };
  if (kind === 'ohms' && written === OVERLOADED) return { check, answer: Number.POSITIVE_INFINITY };
  return { check, answer: written };
}

/**
 * A check as a file of observations has it, without its answer.
 * @param check of a model
 * @param built the set, whose stations have names
 * @returns which check, and of what; a station by its frequency where names repeat
 */
export function writtenCheck(check: Check, built: BuiltSet): { readonly check: Check['kind']; readonly of?: string } {
  switch (check.kind) {
    case 'volts':
      return { check: check.kind };
    case 'ohms':
      return { check: check.kind, of: check.place };
    case 'sign':
      return { check: check.kind, of: check.sign };
    default:
      return { check: check.kind, of: stationText(built.set.place.stations, check.station) };
  }
}

/**
 * One answer to one check, as a person writes it.
 * @param check asked
 * @param text the answer: a word of the check's own, a figure with its unit, or "not possible"
 * @param built the set
 * @returns what was observed, or what is wrong with the text
 */
export function readAnswer(check: Check, text: string, built: BuiltSet): ObservedRead {
  const entry = { ...writtenCheck(check, built), answer: text };
  const read = readObserved(JSON.stringify({ format: OBSERVED_FORMAT, observed: [entry] }), built);
  // Written and read again, one of two stations with the same name and frequency would be the other.
  return read.ok ? { ok: true, observations: read.observations.map(({ answer }) => ({ check, answer })) } : read;
}

/**
 * Stations that observations name.
 * @param observations as read
 * @returns their places in the description
 */
export const stationsObserved = (observations: readonly ObservedAnswer[]): readonly number[] => [
  ...new Set(observations.flatMap(({ check }) => ('station' in check ? [check.station] : []))),
];

/**
 * Observations as answers to a model's checks.
 * @param model of the set, its stations those observed among others
 * @param observations as read
 * @returns answers, and ids of the checks that cannot be done
 */
export function answersTo(
  model: FaultModel,
  observations: readonly ObservedAnswer[],
): { readonly answered: readonly Answered[]; readonly impossible: ReadonlySet<string> } {
  const known = new Set(model.checks.map(({ id }) => id));
  const answered: Answered[] = [];
  const impossible = new Set<string>();
  for (const { check, answer } of observations) {
    const id = checkId(check);
    if (!known.has(id)) continue;
    if (answer === undefined) impossible.add(id);
    else answered.push({ check: id, answer: answerOf(model, check, answer) });
  }
  return { answered, impossible };
}

function answerOf({ sound, bench }: FaultModel, check: Check, answer: string | number | boolean): number {
  if (typeof answer === 'boolean') return Number(answer);
  if (typeof answer === 'string') {
    const words: readonly string[] = check.kind === 'loudness' ? HEARD_AS : check.kind === 'dial' ? DIAL_AS : WIDTH_AS;
    return words.indexOf(answer);
  }
  if (check.kind === 'ohms') return answerOfFigure.ohms(answer, check.place);
  if (check.kind === 'volts') return answerOfFigure.volts(answer);
  const i = 'station' in check ? bench.stations.indexOf(check.station) : 0;
  return answerOfFigure.dial(answer - sound.scale[i]);
}
