import { bundled } from './bundled.mjs';

const HELP = `Measures how fast things are, as work per second and as ratios within this run.

  npm run bench                  everything in bench/
  npm run bench -- reception     only the files whose name contains this
  npm run bench -- --json        for programs
`;

/** Bundles bench/ so that the timed code is what a build makes of it, and runs it. @param {string[]} args */
export async function runBench(args) {
  if (args.includes('--help') || args.includes('-h')) {
    console.log(HELP);
    return;
  }
  const { bench } = await bundled('bench/run.ts', 'bench');
  const wanted = args.filter((arg) => !arg.startsWith('-'));
  await bench(wanted, args.includes('--json'));
}
