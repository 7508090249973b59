import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { markCommandLineBuilt } from './build.mjs';
import { keepBusy } from './busy.mjs';
import { alone } from './fresh.mjs';
import { installIfNeeded } from './install.mjs';
import { inRoot } from './paths.mjs';
import { runTool } from './run.mjs';

const HELP = `Runs every check: types, style, unused code, then all tests, those of the page in a real browser included.

  npm test                          everything, including the first set-up
  npm test -- src/engine/parts      only the tests whose path contains this
  npm test -- --project unit        without the page tests ("page" for only those)
  npm test -- plots -u              takes changed pictures as right
  npm test -- --under-load          the page tests on a busy machine
Anything after -- goes to Vitest. The last line is the outcome: "N passed, N failed".
`;

/** Checks the types of everything, tests and scripts included; the output also serves the command line's own tests. */
async function typesFit() {
  console.log('Checking types…');
  return alone('command-line', async () => {
    const started = Date.now();
    const fit = (await runTool('tsc', ['-b'])) === 0;
    if (fit) markCommandLineBuilt(started);
    return fit;
  });
}

async function styleFits() {
  console.log('Checking style…');
  return (await runTool('biome', ['check', '--error-on-warnings'])) === 0;
}

/** Nothing stands there unused: neither at all, nor with tests alone for its users. */
async function everythingUsed() {
  console.log('Checking for unused code…');
  const options = ['--no-progress', '--treat-config-hints-as-errors'];
  const codes = [await runTool('knip', options), await runTool('knip', [...options, '--production'])];
  return codes.every((code) => code === 0);
}

/**
 * @param {string[]} args
 * @returns {Promise<import('./outcome-reporter.mjs').Outcome>}
 */
async function runVitest(args) {
  const folder = mkdtempSync(join(tmpdir(), 'faintwave-test-'));
  const file = join(folder, 'outcome.json');
  const reporters = ['--reporter=default', `--reporter=${inRoot('scripts/support/outcome-reporter.mjs')}`];
  try {
    const env = { ...process.env, FAINTWAVE_OUTCOME: file };
    const code = await runTool('vitest', ['run', ...reporters, ...args], { env });
    const outcome = JSON.parse(readFileSync(file, 'utf8'));
    if (code !== 0 && outcome.failures.length === 0)
      outcome.failures.push(`vitest ended with ${code}, though no test failed`);
    return outcome;
  } catch {
    return { passed: 0, skipped: 0, failures: ['vitest ended before it could count'] };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const UNDER_LOAD = '--under-load';
const BUSY_PROCESSES = 2;

/** The page tests beside processes that take the machine's time: none may depend on how fast it is. @param {string[]} args */
async function runPageUnderLoad(args) {
  console.log(`The page tests beside ${BUSY_PROCESSES} busy processes…`);
  const end = keepBusy(BUSY_PROCESSES);
  try {
    return await runVitest(['--project', 'page', ...args]);
  } finally {
    end();
  }
}

/** Whatever a path leaves out of one project is no failure there; a project that is asked for is the only one. @param {string[]} args */
async function runBothUnderLoad(args) {
  const at = args.indexOf('--project');
  const [project] = at < 0 ? [] : args.slice(at + 1);
  const rest = ['--passWithNoTests', ...args.filter((_, i) => at < 0 || (i !== at && i !== at + 1))];
  const runs = [];
  if (project !== 'page') runs.push(await runVitest(['--project', 'unit', ...rest]));
  if (project !== 'unit') runs.push(await runPageUnderLoad(rest));
  return runs;
}

/** @param {string[]} given */
export async function testEverything(given) {
  const args = given.filter((arg) => arg !== UNDER_LOAD);
  if (args.includes('--help') || args.includes('-h')) {
    console.log(HELP);
    return;
  }
  let passed = 0;
  const failures = [];
  try {
    await installIfNeeded();
    const checks = { types: await typesFit(), style: await styleFits(), 'unused code': await everythingUsed() };
    const runs = given.includes(UNDER_LOAD) ? await runBothUnderLoad(args) : [await runVitest(args)];
    let skipped = 0;
    for (const outcome of runs) {
      passed += outcome.passed;
      skipped += outcome.skipped;
      failures.push(...outcome.failures);
    }
    for (const [name, fits] of Object.entries(checks)) {
      if (!fits) failures.push(`the check of ${name} (see above)`);
    }
    if (skipped > 0) console.log(`${skipped} skipped`);
  } catch (error) {
    failures.push(error instanceof Error ? error.message : String(error));
  }
  for (const failure of failures) console.log(`FAILED ${failure}`);
  console.log(`${passed} passed, ${failures.length} failed`);
  if (failures.length > 0 || passed === 0) process.exitCode = 1;
}
