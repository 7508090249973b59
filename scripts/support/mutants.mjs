import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { inRoot } from './paths.mjs';
import { runTool } from './run.mjs';

/** Files that are changed, and the tests that should notice it. */
export const GROUPS = {
  verdicts: {
    files: ['src/engine/reception/verdict.ts', 'src/engine/reception/hearing/heard.ts'],
    tests: ['src/engine/reception/verdict.test.ts', 'src/engine/reception/hearing/*.test.ts'],
  },
  cautions: {
    files: ['src/engine/set/cautions.ts'],
    tests: ['src/engine/set/cautions.test.ts'],
  },
  advice: {
    files: ['src/engine/kinds/**/*-adjust.ts'],
    tests: ['src/engine/vary/adjustments.test.ts', 'src/engine/vary/suggest.test.ts'],
  },
  words: {
    files: ['src/outputs/words/**/*.ts', '!src/outputs/words/**/*.test.ts'],
    tests: ['src/outputs/words/**/*.test.ts'],
  },
  sheets: {
    files: ['src/outputs/sheets/**/*.ts', '!src/outputs/sheets/**/*.test.ts'],
    tests: ['test/sheets/*.test.ts', 'src/outputs/sheets/**/*.test.ts'],
  },
  limits: {
    files: ['src/outputs/audio/limiter.ts'],
    tests: ['src/outputs/audio/limiter.test.ts'],
  },
};

const USAGE = `usage: npm run mutants -- GROUP…\ngroups: ${Object.keys(GROUPS).join(', ')}\n`;

/**
 * Puts small faults into the files of each group in turn and runs its tests on each; writes what no test noticed to
 * reports/mutants-GROUP.txt.
 * @param {readonly string[]} names
 * @returns {Promise<number>} the exit code
 */
export async function runMutants(names) {
  const unknown = names.filter((name) => !Object.hasOwn(GROUPS, name));
  if (names.length === 0 || unknown.length > 0) {
    process.stderr.write(`${unknown.map((name) => `expected a group, got "${name}"\n`).join('')}${USAGE}`);
    return 2;
  }
  let code = 0;
  mkdirSync(inRoot('reports'), { recursive: true });
  for (const name of names) {
    const { files, tests } = GROUPS[/** @type {keyof typeof GROUPS} */ (name)];
    const env = { ...process.env, MUTANTS_FILES: files.join(), MUTANTS_TESTS: tests.join() };
    const answer = await runTool('stryker', ['run'], { env });
    if (answer !== 0) {
      code = answer;
      continue;
    }
    const list = survivors(JSON.parse(readFileSync(inRoot('reports/mutants.json'), 'utf8')));
    const out = `reports/mutants-${name}.txt`;
    writeFileSync(inRoot(out), list.map((line) => `${line}\n`).join(''));
    process.stdout.write(`${name}: ${list.length} that no test noticed, in ${out}\n`);
  }
  return code;
}

/**
 * One line for every mutant that lived, as docs/mutants.md describes it.
 * @param {{ files: Record<string, { source: string, mutants: { status: string, mutatorName: string, replacement?: string,
 *   location: { start: { line: number, column: number }, end: { line: number, column: number } } }[] }> }} report
 */
function survivors(report) {
  const short = (/** @type {string} */ text) => {
    const one = text.replace(/\s+/g, ' ').trim();
    return one.length > 60 ? `${one.slice(0, 59)}…` : one;
  };
  return Object.entries(report.files).flatMap(([file, { source, mutants }]) => {
    const lines = source.split('\n');
    return mutants
      .filter(({ status }) => status === 'Survived' || status === 'NoCoverage')
      .sort(
        (a, b) => a.location.start.line - b.location.start.line || a.location.start.column - b.location.start.column,
      )
      .map(({ status, mutatorName, replacement = '', location: { start, end } }) => {
        const kept = lines.slice(start.line - 1, end.line);
        kept[kept.length - 1] = kept[kept.length - 1].slice(0, end.column - 1);
        kept[0] = kept[0].slice(start.column - 1);
        const seen = status === 'Survived' ? 'survived' : 'untested';
        return `${file}:${start.line}:${start.column} ${seen} ${mutatorName}: ${short(kept.join(' '))} → ${short(replacement)}`;
      });
  });
}
