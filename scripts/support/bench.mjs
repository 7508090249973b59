import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { bundled } from './bundled.mjs';

const HELP = `Measures how fast things are, as work per second and as ratios within this run.

  npm run bench                  everything in bench/
  npm run bench -- reception     only the files whose name contains this
  npm run bench -- --json        for programs
  npm run bench -- reception --against FOLDER
                                 the work of reception.ts here and in another checkout, in turn: how many times as fast
`;

/** Bundles bench/ so that the timed code is what a build makes of it, and runs it. @param {string[]} args */
export async function runBench(args) {
  if (args.includes('--help') || args.includes('-h')) {
    console.log(HELP);
    return;
  }
  const { bench, compare } = await bundled('bench/run.ts', 'bench');
  const at = args.indexOf('--against');
  const wanted = args.filter((arg, i) => !arg.startsWith('-') && (at < 0 || i !== at + 1));
  if (at < 0) {
    await bench(wanted, args.includes('--json'));
    return;
  }
  const folder = args[at + 1];
  if (folder === undefined || folder.startsWith('-'))
    throw new Error('--against: name the folder of another checkout.');
  if (wanted.length === 0) throw new Error('--against: name the files of bench/ to compare, such as "reception".');
  const other = resolve(folder);
  for (const name of wanted) {
    const file = `bench/${name}.ts`;
    if (!existsSync(resolve(other, file))) throw new Error(`There is no ${file} in ${other}.`);
    const { measurements } = await bundled(file, 'bench-other', other);
    await compare(`./${name}.ts`, measurements);
  }
}
