import { mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { receive } from '../../engine/reception/path/receive.ts';
import { readText } from '../../engine/set/read.ts';
import { parseQuantity } from '../../engine/units/parse.ts';
import {
  PAPERS,
  type PaperName,
  pageSvg,
  SHEET_IDS,
  SHEET_WORDS,
  type SheetId,
  sheetsFor,
  sheetsPdf,
} from '../../outputs/sheets/index.ts';
import { clean } from '../../outputs/tables/table.ts';
import { fileAndOptions } from '../arguments.ts';
import { coastFor } from '../coast.ts';
import { type Command, InputError } from '../command.ts';
import { readSet } from '../read-set.ts';

export const sheets: Command = {
  name: 'sheets',
  about: 'Printable sheets to build the set from, at full size: PDF, and SVG.',
  usage: 'sheets SET --out FOLDER [--paper a4|letter] [--pdf] [--svg] [--only SHEET,…]',
  options: [
    ['--out FOLDER', 'where the files go; made if it is not there'],
    ['--paper a4|letter', 'default a4'],
    ['--pdf, --svg', 'one PDF of all, one SVG for every page; default the PDF'],
    ['--only SHEET,…', SHEET_IDS.map((id) => `${id} (${SHEET_WORDS[id]})`).join(', ')],
    ['--board WIDTHxLENGTH', 'size of the board, such as 200mmx300mm; default what the parts need'],
    ['--night', 'reckon with what the sky brings after dark'],
  ],
  examples: [
    'faintwave sheets examples/medium-wave-galena.json --out sheets',
    'faintwave sheets examples/long-wave-foil.json --out sheets --only coil,dial --svg',
  ],
  async run(args, io) {
    const { values, file } = fileAndOptions(args, {
      out: { type: 'string' },
      paper: { type: 'string' },
      pdf: { type: 'boolean' },
      svg: { type: 'boolean' },
      only: { type: 'string', multiple: true },
      board: { type: 'string' },
      night: { type: 'boolean' },
    });
    const { out } = values;
    if (!out) throw new InputError('name a folder for the sheets with --out');
    const paper = paperFrom(values.paper);
    const only = onlyFrom(values.only);
    const board = boardFrom(values.board);
    const set = await readSet(file, io);
    const written = await writtenIn(file, io);
    const reception = receive(set, { time: values.night ? 'night' : 'day', coast: coastFor(set.place) });
    const made = sheetsFor(written ?? set, set, reception, { paper, only, board });
    if (made.length === 0) throw new InputError(`--only: this set has no ${only?.join(', ')} sheet`);
    makeFolder(out);
    const files: string[] = [];
    const write = async (name: string, data: string | Uint8Array): Promise<void> => {
      const file = join(out, name);
      await io.write(file, data);
      files.push(file);
    };
    if (values.pdf || !values.svg) {
      const title = only ? `${set.name}: ${only.map((id) => SHEET_WORDS[id]).join(', ')}` : `${set.name}: sheets`;
      await write('sheets.pdf', await sheetsPdf(made, { title: clean(title), fonts: fonts() }));
    }
    if (values.svg) {
      for (const [i, sheet] of made.entries())
        for (const [k, page] of sheet.pages.entries()) {
          const number = String(i + 1).padStart(2, '0');
          await write(`${number}-${sheet.file}${sheet.pages.length > 1 ? `-${k + 1}` : ''}.svg`, pageSvg(page));
        }
    }
    const pages = made.reduce((sum, s) => sum + s.pages.length, 0);
    io.out(
      `${clean(set.name)}: ${made.map((s) => s.title).join('; ')}.\n${pages} pages, written to:\n${files.map((f) => `  ${f}`).join('\n')}\nPrint at 100 % (“actual size”), and check the ruler before you cut.\n`,
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

function fonts(): { regular: Uint8Array; bold: Uint8Array } {
  const at = createRequire(import.meta.url);
  const font = (name: string): Uint8Array => readFileSync(at.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`));
  return { regular: font('DejaVuSans'), bold: font('DejaVuSans-Bold') };
}

function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    throw new InputError(`--out: cannot make the folder "${folder}" (${(error as NodeJS.ErrnoException).code})`);
  }
}

function paperFrom(text = 'a4'): PaperName {
  const name = text.toLowerCase();
  if (!Object.hasOwn(PAPERS, name))
    throw new InputError(`--paper: expected a4 or letter, received "${text.slice(0, 40)}"`);
  return name as PaperName;
}

function onlyFrom(given: readonly string[] | undefined): SheetId[] | undefined {
  if (given === undefined) return undefined;
  const names = given
    .flatMap((t) => t.split(','))
    .map((t) => t.trim())
    .filter(Boolean);
  for (const name of names)
    if (!(SHEET_IDS as readonly string[]).includes(name))
      throw new InputError(`--only: there is no sheet "${name.slice(0, 40)}"; there are ${SHEET_IDS.join(', ')}`);
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
    throw new InputError(
      `--board: expected a width and a length such as 200mmx300mm, 20 mm to 2 m each, received "${text.slice(0, 40)}"`,
    );
  return { width: width.value, length: length.value };
}
