import { parseQuantity, readText, receiveRanged } from '../../engine/index.ts';
import { pageSvg, SHEET_IDS, type SheetId, sheetsFor, sheetsPdf } from '../../outputs/sheets/index.ts';
import { clean } from '../../outputs/tables/index.ts';
import { type CommandOptions, callProblems, sheetNames, sheetsAnswer } from '../../outputs/words/index.ts';
import { fileAndOptions } from '../arguments.ts';
import { packagedCoastFor } from '../coast.ts';
import { type Command, InputError } from '../command.ts';
import { paperOption } from '../paper-option.ts';
import { pdfFonts } from '../pdf-fonts.ts';
import { readSet } from '../read-set.ts';
import { timeOfDay } from '../time-of-day.ts';
import { wrongOption } from '../wrong-option.ts';

const OPTIONS = {
  out: { type: 'string' },
  paper: { type: 'string' },
  pdf: { type: 'boolean' },
  svg: { type: 'boolean' },
  only: { type: 'string', multiple: true },
  board: { type: 'string' },
  day: { type: 'boolean' },
  night: { type: 'boolean' },
  switch: { type: 'string' },
} as const satisfies CommandOptions<'sheets'>;

export const sheets: Command = {
  name: 'sheets',
  options: OPTIONS,
  examples: [
    'faintwave sheets examples/medium-wave-galena.json --out sheets',
    'faintwave sheets examples/long-wave-foil.json --out sheets --only coil,dial --svg',
  ],
  async run(args, io) {
    const { values, file } = fileAndOptions(args, OPTIONS);
    const { out } = values;
    if (!out) throw wrongOption('--out', { code: 'folder' }, out);
    const paper = paperOption(values.paper);
    const only = onlyFrom(values.only);
    const board = boardFrom(values.board);
    const set = await readSet(file, io, values.switch);
    const written = await writtenIn(file, io);
    const coast = packagedCoastFor(set.place);
    const reception = receiveRanged(set, { time: timeOfDay(values, set.place), coast });
    const sheets = sheetsFor(written ?? set, set, reception, { paper, only, board, coast });
    if (sheets.length === 0) throw new InputError(callProblems.noSheets(only ?? SHEET_IDS));
    const pieces: { name: string; data: string | Uint8Array }[] = [];
    if (values.pdf || !values.svg) {
      const title = sheetsAnswer.title(
        set.name,
        only?.map((id) => sheetNames[id]),
      );
      pieces.push({ name: 'sheets.pdf', data: await sheetsPdf(sheets, { title: clean(title), fonts: pdfFonts() }) });
    }
    if (values.svg) {
      for (const [i, sheet] of sheets.entries())
        for (const [k, page] of sheet.pages.entries()) {
          const number = String(i + 1).padStart(2, '0');
          pieces.push({
            name: `${number}-${sheet.file}${sheet.pages.length > 1 ? `-${k + 1}` : ''}.svg`,
            data: pageSvg(page),
          });
        }
    }
    const files = await io.writeInto(out, pieces);
    const pages = sheets.reduce((sum, s) => sum + s.pages.length, 0);
    io.out(
      `${[
        sheetsAnswer.sheets(
          clean(set.name),
          sheets.map((sheet) => sheet.title),
        ),
        sheetsAnswer.written(pages),
        ...files.map((one) => `  ${one}`),
        sheetsAnswer.printing,
      ].join('\n')}\n`,
    );
    return 0;
  },
};

/** Standard input can be read once only: the set itself then stands for its text. */
async function writtenIn(file: string | undefined, io: { read(file: string): Promise<string> }): Promise<unknown> {
  if (file === undefined || file === '-') return undefined;
  const read = readText(await io.read(file));
  return read.ok ? read.written : undefined;
}

function onlyFrom(given: readonly string[] | undefined): SheetId[] | undefined {
  if (given === undefined) return undefined;
  const names = given
    .flatMap((t) => t.split(','))
    .map((t) => t.trim())
    .filter(Boolean);
  for (const name of names)
    if (!(SHEET_IDS as readonly string[]).includes(name))
      throw wrongOption('--only', { code: 'one of', choices: SHEET_IDS }, name);
  return names as SheetId[];
}

function boardFrom(text: string | undefined): { width: number; length: number } | undefined {
  if (text === undefined) return undefined;
  const parts = text.split(/\s*[x×]\s*/i);
  const sizes = parts.map((p) => parseQuantity(p, 'length'));
  const [width, length] = sizes;
  if (
    parts.length !== 2 ||
    !width.ok ||
    !length.ok ||
    !(width.value > 0.02 && width.value < 2) ||
    !(length.value > 0.02 && length.value < 2)
  )
    throw wrongOption('--board', { code: 'size of board' }, text);
  return { width: width.value, length: length.value };
}
