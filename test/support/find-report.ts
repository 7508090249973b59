import { writeFileSync } from 'node:fs';
import fc from 'fast-check';
import { inRoot } from '../../scripts/support/paths.mjs';
import { type Compared, compared, questionOf, someSearch } from './every-set.ts';

const REPORT = 'docs/find-search.md';
/** Boxes, and the most sets that one spans, unless said otherwise. */
const BOXES = 12;
const MOST_SETS = 5000;
const FEWEST_SETS = 60;
const SEED = 1;
/** A set better by less is found, dB. */
const CLOSE = 0.3;

/**
 * Search random boxes, try everything in them, and write what the search missed.
 * @param options how many boxes; the most sets of each
 */
export async function verifyFind([boxes = String(BOXES), most = String(MOST_SETS)]: readonly string[]): Promise<void> {
  const rows: string[] = [];
  const all: Compared[] = [];
  for (const search of fc.sample(someSearch, { numRuns: 100 * Number(boxes), seed: SEED })) {
    if (all.length >= Number(boxes)) break;
    const question = questionOf(search, [FEWEST_SETS, Number(most)]);
    if (!question) continue;
    const one = await compared(question);
    all.push(one);
    const { arrangements = [] } = question.box.limits ?? {};
    const wants = search.wants.map(({ kind }) => kind).join(', ');
    const { valued, ruledOut } = one.counts;
    const figures = [one.behind.toFixed(2), one.missing.toFixed(2)];
    rows.push(
      `| ${[arrangements.join(', '), wants, one.tried, valued, ruledOut, one.shown, ...figures].join(' | ')} |`,
    );
    console.log(rows[rows.length - 1], one.missing > CLOSE ? one.worst : '');
    write(rows, all, most);
  }
}

function write(rows: readonly string[], all: readonly Compared[], most: string): void {
  const total = all.reduce((sum, { tried }) => sum + tried, 0);
  const missed = all.filter(({ behind, missing }) => behind > CLOSE || missing > CLOSE).length;
  writeFileSync(
    inRoot(REPORT),
    `# What a search of a box misses

Written by \`npm run verify:find\`. Random boxes of at most ${most} sets at the place of medium-wave-galena are searched, and
then every set of them is written as a description, read, and received in full, without estimate or bound; of those that
may be best in anything the medians are taken. "Behind" is by how much the best set of a want beats the best found;
"missing" by how much some set beats every found one that takes no more effort, in what it beats it least in, dB.

${all.length} boxes, ${total} sets; in ${missed} of the boxes a set was missed that is better by more than ${CLOSE} dB.

| arrangements allowed | wants | sets | valued | ruled out | shown | behind | missing |
|---|---|---|---|---|---|---|---|
${rows.join('\n')}
`,
  );
}
