import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
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
    tests: ['src/engine/vary/adjustments.test.ts', 'test/adjustments.test.ts'],
  },
  words: {
    files: ['src/outputs/words/**/*.ts', '!src/outputs/words/**/*.test.ts'],
    tests: ['src/outputs/words/**/*.test.ts', 'test/words/texts.test.ts'],
  },
  sheets: {
    files: ['src/outputs/sheets/**/*.ts', '!src/outputs/sheets/**/*.test.ts'],
    tests: ['test/sheets/*.test.ts', 'src/outputs/sheets/**/*.test.ts', 'test/words/texts.test.ts'],
  },
  limits: {
    files: ['src/outputs/audio/limiter.ts'],
    tests: ['src/outputs/audio/limiter.test.ts'],
  },
};

const USAGE = `usage: npm run mutants -- GROUP… [--lines COUNT] [--seed NUMBER]\ngroups: ${Object.keys(GROUPS).join(', ')}\n`;

/**
 * Lines of files drawn at random, each by its length in code, as StrykerJS names them: only faults within them are made.
 * @param {readonly string[]} files
 * @param {number} count
 * @param {number} seed
 * @returns {string[]}
 */
function drawnLines(files, count, seed) {
  const named = files
    .filter((file) => !file.startsWith('!'))
    .flatMap((file) => {
      const [folder, end] = file.split('**/*');
      if (end === undefined) return [file];
      const within = readdirSync(inRoot(folder), { recursive: true, encoding: 'utf8' });
      return within.filter((name) => name.endsWith(end) && !name.endsWith('.test.ts')).map((name) => folder + name);
    });
  const lines = named.sort().flatMap((file) =>
    readFileSync(inRoot(file), 'utf8')
      .split('\n')
      .flatMap((text, i) => (/^\s*(\/?\*|\/\/|import|export type|$)/.test(text) ? [] : [`${file}:${i + 1}-${i + 1}`])),
  );
  // The minimal standard generator of Park and Miller.
  let state = seed;
  const below = (/** @type {number} */ most) => {
    state = (state * 48271) % 2147483647;
    return state % most;
  };
  const drawn = new Set();
  while (drawn.size < Math.min(count, lines.length)) drawn.add(lines[below(lines.length)]);
  return [...drawn].sort();
}

/**
 * Puts small faults into the files of each group in turn and runs its tests on each; writes what no test noticed to
 * reports/mutants-GROUP.txt.
 * @param {readonly string[]} args groups, and how many lines are drawn from each (default all)
 * @returns {Promise<number>} the exit code
 */
export async function runMutants(args) {
  const options = { lines: { type: /** @type {const} */ ('string') }, seed: { type: /** @type {const} */ ('string') } };
  const { values, positionals: names } = parseArgs({ args: [...args], options, allowPositionals: true });
  const unknown = names.filter((name) => !Object.hasOwn(GROUPS, name));
  if (names.length === 0 || unknown.length > 0) {
    process.stderr.write(`${unknown.map((name) => `expected a group, got "${name}"\n`).join('')}${USAGE}`);
    return 2;
  }
  let code = 0;
  mkdirSync(inRoot('reports'), { recursive: true });
  for (const name of names) {
    const { files, tests } = GROUPS[/** @type {keyof typeof GROUPS} */ (name)];
    const mutated = values.lines ? drawnLines(files, Number(values.lines), Number(values.seed ?? 1)) : files;
    const env = { ...process.env, MUTANTS_FILES: mutated.join(), MUTANTS_TESTS: tests.join() };
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
