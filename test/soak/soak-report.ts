import { cpus } from 'node:os';
import type { Figures } from './soak-figures.ts';

/** Where the figures are kept. */
export const REPORT = 'docs/reliability.md';

interface Run {
  readonly minutes: number;
  readonly seed: number;
  readonly threads: number;
  /** s of sound in each stretch of listening. */
  readonly listened: number;
}

const GROUPS = { readers: 'Readers', laws: 'Laws', storage: 'Storage of the page', listening: 'Listening' } as const;
/** What the whole run is meant to last, minutes. */
const WHOLE = 60;

/** What follows is written by hand, and stays as it is when the figures are written anew. */
const NOTES = '## Notes written by hand';

/** The notes of a report as it was; none in it: an empty section for them. */
const notesOf = (before: string): string => {
  const at = before.indexOf(NOTES);
  return at < 0 ? `${NOTES}\n` : before.slice(at);
};

const thousands = (count: number): string => count.toLocaleString('en-GB').replaceAll(',', '\u202f');
const seconds = (s: number): string => (s < 0.1 ? `${(1000 * s).toPrecision(2)} ms` : `${s.toPrecision(2)} s`);
const megabytes = (bytes: number): string => `${Math.round(bytes / 1e6)} MB`;

const row = ({ trial, cases, slowest, memory, findings }: Figures): string =>
  `| ${[trial.name, trial.says, thousands(cases), seconds(slowest), megabytes(memory), findings.length].join(' | ')} |`;

const section = (group: keyof typeof GROUPS, figures: readonly Figures[], { listened }: Run): string[] => {
  const own = figures.filter(({ trial }) => trial.group === group);
  if (own.length === 0) return [];
  const cases = own.reduce((sum, one) => sum + one.cases, 0);
  const minutes = Math.round((cases * listened) / 60);
  return [
    `## ${GROUPS[group]}`,
    '',
    group === 'listening'
      ? `${thousands(minutes)} ${minutes === 1 ? 'minute' : 'minutes'} of sound (24 hours are the aim) in stretches of ${listened} s, each with an example set, a seed and a dial that is by
turns swept, stepped and left alone. A gap: more than 5 ms of silence to the last digit. A click: from one block of 256
samples to the next the sound bends more than 4 times as sharply as anywhere within the two. Passing the limiter: any
sample above half of full scale. Memory: over 2 MB more at the end of a stretch than at its middle, and still so two stretches later, when the dial has been everywhere.`
      : `${thousands(cases)} cases.`,
    '',
    '| trial | what must hold | cases | slowest | memory | findings |',
    '|---|---|---|---|---|---|',
    ...own.map(row),
    '',
  ];
};

/**
 * The figures of a run, as they stand in the documents.
 * @param before the report that they take the place of, whose notes are kept
 */
export function reportOf(figures: readonly Figures[], run: Run, before: string): string {
  const { minutes, seed, threads } = run;
  const all = figures.reduce((sum, one) => sum + one.cases, 0);
  const found = figures.flatMap(({ findings }) => findings);
  const date = new Date().toISOString().slice(0, 10);
  return `# How reliable it is

Written by \`npm run soak -- --write\` on ${date}: ${minutes} minutes, ${threads} at a time, on ${cpus()[0]?.model ?? 'a processor without a name'} with Node
${process.version}, from seed ${seed} on. ${minutes < WHOLE ? `A whole run lasts ${WHOLE} minutes and tries about ${Number((WHOLE / minutes).toPrecision(2))} times as many cases. ` : ''}The notes
at the end are written by hand.

${thousands(all)} cases, ${found.length === 0 ? 'in all of which everything held' : `${found.length} of which did not hold`}. Cases are drawn at random, the same ones for the same seed; what does not
hold is made as small as it can be, printed with seed and path, and kept in \`test/soak/cases/\`, which the tests try
again every time. A case that takes over 20 s twice (storage 30 s, a stretch of sound 20 times its length) counts as one
that hangs; a thread that holds over 700 MB is ended, and counts too. Times are on a machine with other work; memory is what a thread held, with
what is not yet collected. In \`npm test\` a short run of the same trials has a fixed number of cases.

${(Object.keys(GROUPS) as (keyof typeof GROUPS)[]).flatMap((group) => section(group, figures, run)).join('\n')}
${notesOf(before)}`;
}
