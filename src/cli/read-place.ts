import {
  type FindQuestion,
  isRecord,
  keepableParts,
  keepRefusal,
  type Problem,
  readValue,
  type SetDescription,
  type WrittenBox,
  type WrittenDescription,
} from '../engine/index.ts';
import { cliNotes, keepRefusalText, optionProblem, problemSentence } from '../outputs/words/index.ts';
import { InputError, type Io } from './command.ts';
import { problemsOfFile } from './problems-of-file.ts';
import { readSource, shownSource, sourceText } from './read-set.ts';
import { writtenWants } from './wants.ts';

/** Where sets are to stand, what is wanted there, and the set that stands there now, where there is one. */
export interface PlaceRead {
  readonly written: FindQuestion['at'];
  readonly read: FindQuestion['read'];
  readonly set?: { readonly read: SetDescription; readonly written: WrittenDescription };
  readonly keep: readonly string[];
}

/** What a place that is given by itself is read with. */
const AROUND_PLACE = {
  format: 'faintwave-set/1',
  name: 'place',
  aerial: { kind: 'inverted-L', height: '8 m', length: '20 m' },
  earth: { kind: 'rod', length: '1 m' },
  coils: [],
  tuning: { kind: 'variable', maximum: '500 pF' },
  arrangement: {
    kind: 'elements',
    elements: [
      { kind: 'inductor', name: 'L', from: 'aerial', to: 'earth', inductance: '200 µH' },
      { kind: 'tuning', name: 'C', from: 'aerial', to: 'earth' },
      { kind: 'detector', name: 'D', from: 'aerial', to: 'out' },
    ],
  },
  detector: { kind: 'germanium' },
  load: { kind: 'phones' },
} as const;

/** What is asked for besides the file of the place: by the call, and by the box. */
interface PlaceCall {
  readonly want?: readonly string[];
  readonly keep?: readonly string[];
  readonly box: WrittenBox;
  /** Name of the file of the box. */
  readonly boxFile: string;
}

/**
 * Read a place by itself, or that of a set, with all that is wanted: by the box, by the set, by the call; without any
 * want, as many stations as possible. Parts that the set itself keeps and that cannot be kept here are noted.
 * @throws InputError with every problem, a line each, under the file that has it.
 */
export async function readPlace(file: string, io: Io, call: PlaceCall): Promise<PlaceRead> {
  const source = await sourceText(file, io);
  const parsed = 'text' in source ? jsonOf(source.text) : undefined;
  const isPlace = isRecord(parsed) && 'stations' in parsed && !('format' in parsed);
  const first = isPlace ? readValue({ ...AROUND_PLACE, place: parsed }) : readSource(source);
  if (!first.ok) throw refusal([inFile(file, first.problems.map(problemSentence))]);
  const { written, set } = first;
  const ofBox = call.box.wants ?? [];
  const ofSet = written.wants ?? [];
  const wants = [...ofBox, ...ofSet, ...writtenWants(call.want ?? [], set.place.stations)];
  const allWants = wants.length > 0 ? wants : [{ kind: 'most stations' as const }];
  const again = readValue({ ...written, wants: allWants });
  const keeper = isPlace ? undefined : set;
  const unkept = (at: (i: number) => string, keep: readonly string[] = []): string[] =>
    keep.flatMap((part, i) => keepProblem(keeper, at(i), part) ?? []);
  const inBox = unkept((i) => `keep[${i}]`, call.box.keep);
  const inCall = unkept(() => '--keep', call.keep);
  const inPlace: string[] = [];
  for (const problem of again.ok ? [] : again.problems) {
    const index = Number(/^wants\[(\d+)\]/.exec(problem.path)?.[1] ?? Number.NaN);
    if (index < ofBox.length) inBox.push(problemSentence(problem));
    else if (index >= ofBox.length + ofSet.length) inCall.push(problemSentence({ ...problem, path: '--want' }));
    else inPlace.push(problemSentence(shifted(problem, index, ofBox.length)));
  }
  const refused = [inFile(call.boxFile, inBox), inFile(file, inPlace), ...inCall].filter((one) => one !== '');
  if (!again.ok || refused.length > 0) throw refusal(refused);
  for (const one of unkept((i) => `keep[${i}]`, written.keep)) io.err(`${cliNotes.note(one)}\n`);
  return {
    written: { place: written.place, ...(written.ear === undefined ? {} : { ear: written.ear }), wants: allWants },
    read: { place: again.set.place, ear: again.set.ear, wants: again.set.wants ?? [] },
    keep: [...(call.box.keep ?? []), ...(written.keep ?? []), ...(call.keep ?? [])],
    ...(isPlace ? {} : { set: { read: again.set, written } }),
  };
}

/** Why a part cannot be kept, where it cannot: with what can. */
function keepProblem(set: SetDescription | undefined, at: string, part: string): string | undefined {
  const why = keepRefusal(set, part);
  if (why === undefined) return undefined;
  const choices = keepableParts(set);
  return optionProblem(
    at,
    choices.length > 0 ? { code: 'one of', choices } : { code: 'no value' },
    part,
    keepRefusalText(why),
  );
}

/** A problem of a want by its place in its own file. */
const shifted = (problem: Problem, index: number, before: number): Problem =>
  Number.isNaN(index) ? problem : { ...problem, path: problem.path.replace(/\d+/, String(index - before)) };

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** Problems under the name of their file; "" for none. */
const inFile = (file: string, problems: readonly string[]): string =>
  problems.length === 0 ? '' : problemsOfFile(shownSource(file), problems);

const refusal = (problems: readonly string[]): InputError => new InputError(problems.join('\n'));
