import {
  type FindQuestion,
  isRecord,
  readText,
  readValue,
  type SetDescription,
  type WrittenBox,
  type WrittenDescription,
} from '../engine/index.ts';
import { callProblems, problemSentence } from '../outputs/words/index.ts';
import { InputError, type Io } from './command.ts';
import { readSetText } from './read-set.ts';
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

/**
 * Read a place by itself, or that of a set, with all that is wanted: by the box, by the set, by the call; without any
 * want, as many stations as possible.
 * @throws InputError with every problem, a line each.
 */
export async function readPlace(
  file: string,
  io: Io,
  asked: { readonly want?: readonly string[]; readonly keep?: readonly string[]; readonly box: WrittenBox },
): Promise<PlaceRead> {
  // A link is told by what follows its "#".
  const isLink = file.includes('#');
  const text = isLink ? '' : await io.read(file);
  const parsed = jsonOf(text);
  const isPlace = isRecord(parsed) && 'stations' in parsed && !('format' in parsed);
  const first = isPlace
    ? readValue({ ...AROUND_PLACE, place: parsed })
    : isLink
      ? await readSetText(file, io)
      : readText(text);
  if (!first.ok) throw refusal(file, first.problems);
  const { written, set } = first;
  const wants = [
    ...(asked.box.wants ?? []),
    ...(written.wants ?? []),
    ...writtenWants(asked.want ?? [], set.place.stations),
  ];
  const keep = [...(asked.box.keep ?? []), ...(written.keep ?? []), ...(asked.keep ?? [])];
  const wanted = wants.length > 0 ? wants : [{ kind: 'most stations' as const }];
  const again = readValue({ ...written, wants: wanted, keep });
  if (!again.ok) throw refusal(file, again.problems);
  return {
    written: { place: written.place, ...(written.ear === undefined ? {} : { ear: written.ear }), wants: wanted },
    read: { place: again.set.place, ear: again.set.ear, wants: again.set.wants ?? [] },
    keep,
    ...(isPlace ? {} : { set: { read: again.set, written } }),
  };
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

const refusal = (file: string, problems: readonly Parameters<typeof problemSentence>[0][]): InputError =>
  new InputError(
    `${callProblems.inFile(file, problems.length)}\n${problems.map((p) => `  ${problemSentence(p)}`).join('\n')}`,
  );
