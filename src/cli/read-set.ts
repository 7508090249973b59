import {
  bandNamed,
  isSetLink,
  type ReadResult,
  readText,
  type SetDescription,
  safeText,
  standingBand,
  textOfLink,
  turnSwitch,
  type WrittenDescription,
} from '../engine/index.ts';
import { callProblems, cliNotes, problemSentence, readNote } from '../outputs/words/index.ts';
import { InputError, type Io } from './command.ts';
import { problemsOfFile } from './problems-of-file.ts';
import { wrongOption } from './wrong-option.ts';

interface OnBands {
  /** Answers are of every band, so nothing is said of the one that the switch stands on where none is asked for. */
  readonly isOnAnyBand?: boolean;
}

/** Read a description file. @param band that its switch is turned to. @throws InputError with every problem, a line each. */
export const readSet = async (
  file: string | undefined,
  io: Io,
  band?: string,
  options?: OnBands,
): Promise<SetDescription> => (await readWrittenSet(file, io, band, options)).set;

/** A link is longer than anybody reads. */
export const shownSource = (file: string): string =>
  isSetLink(fragmentOf(file))
    ? `${file.slice(0, file.length - fragmentOf(file).length)}${fragmentOf(file).slice(0, 8)}…`
    : file;

const fragmentOf = (file: string): string => file.slice(file.indexOf('#') + 1);

/** The text of a file, or of a link, which is recognised by what follows its "#". @throws InputError for a file that cannot be read. */
export async function sourceText(file: string, io: Io): Promise<ReturnType<typeof textOfLink>> {
  const fragment = fragmentOf(file);
  return isSetLink(fragment) ? textOfLink(fragment) : { text: await io.read(file) };
}

/** The set of a text from `sourceText`, or all that is wrong with it. */
export const readSource = (source: ReturnType<typeof textOfLink>): ReadResult =>
  'problem' in source ? { ok: false, problems: [source.problem] } : readText(source.text);

/** The same with the description as written, for commands that change it. */
export async function readWrittenSet(
  file: string | undefined,
  io: Io,
  band?: string,
  { isOnAnyBand = false }: OnBands = {},
): Promise<{ set: SetDescription; written: WrittenDescription }> {
  if (file === undefined) throw new InputError(callProblems.nameSet);
  const result = readSource(await sourceText(file, io));
  if (!result.ok) throw new InputError(problemsOfFile(shownSource(file), result.problems.map(problemSentence)));
  for (const note of result.notes) io.err(`${cliNotes.note(readNote(note))}\n`);
  return onBand(result, band, band === undefined && isOnAnyBand ? undefined : io);
}

/** The set with its switch on the band that was asked for, and a note of the others. @throws InputError for a band that it has not. */
function onBand(
  { set, written }: { readonly set: SetDescription; readonly written: WrittenDescription },
  band: string | undefined,
  io: Io | undefined,
): { set: SetDescription; written: WrittenDescription } {
  const { bands } = set;
  if (!bands) {
    if (band !== undefined) throw new InputError(callProblems.noBandSwitch);
    return { set, written };
  }
  const names = bands.map(({ name }) => name);
  const index = band === undefined ? standingBand(set) : bandNamed(set, band);
  if (index === undefined) throw wrongOption('--switch', { code: 'one of', choices: names.map(safeText) }, band);
  const others = names.filter((_, i) => i !== index);
  io?.err(`${cliNotes.note(cliNotes.onBand(safeText(names[index]), others.map(safeText)))}\n`);
  return { set: turnSwitch(set, index), written: turnSwitch(written, index) };
}
