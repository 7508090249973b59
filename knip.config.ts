import type { KnipConfig } from 'knip';

/**
 * What may stand in the repository without being used. Without `--production` tests count as users and an export must
 * have one outside its own file; with it, whatever nothing but tests uses is dead.
 */
const production = process.argv.includes('--production');

const config: KnipConfig = {
  entry: [
    'src/cli/main.ts!',
    'src/cli/find-worker.ts!', // a thread of its own
    'src/outputs/words/en/index.ts!', // what another language must have as well
    'src/outputs/words/language.ts!',
    'scripts/*.mjs!',
    'scripts/page/*!',
    'scripts/support/outcome-reporter.mjs!',
    'bench/*.ts',
    'test/support/range-report.ts', // run by scripts/verify-ranges.mjs
    'test/support/fault-report.ts', // run by scripts/verify-faults.mjs
    'test/support/find-report.ts', // run by scripts/verify-find.mjs
    'test/support/keeping-report.ts', // run by scripts/verify-keeping.mjs
    'test/soak/soak.ts', // run by scripts/soak.mjs
    'test/support/board-report.ts', // run by scripts/score-boards.mjs
  ],
  project: ['src/**!', 'test/**', 'bench/**', 'scripts/**!'],
  ignoreExportsUsedInFile: production || { interface: true, type: true },
  // Installed by hand, for comparisons and for looking into PDF files.
  ignoreBinaries: ['ffmpeg', 'apt-get', 'cc', 'pdffonts', 'pdfinfo', 'pdftoppm', 'pdftotext'],
};

export default config;
