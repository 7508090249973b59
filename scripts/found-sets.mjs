// Searches the example boxes and writes the sets that are found into docs/found-sets.md; with names, those boxes only.
import { execFile } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { promisify } from 'node:util';
import { inRoot } from './support/paths.mjs';

/** Each box with the set whose place counts, and what is wanted there. */
const SEARCHES = [
  { box: 'beginner', at: 'medium-wave-galena', wants: ['loudest Saltmarsh Radio'] },
  { box: 'long-wave', at: 'long-wave-foil', wants: ['most stations'] },
  {
    box: 'rich',
    at: 'medium-wave-galena',
    wants: ['loudest Saltmarsh Radio', 'loudest The Lantern Service'],
  },
];

const FILE = inRoot('docs/found-sets.md');
const HEAD = `# Sets found in the example boxes

Written by \`npm run found-sets\`, which searches each box as the command above its table does. Levels are medians of sets
built like the one named, in dB SPL at the ear; effort is parts, plus 4 for each coil to wind, plus 1 for each tap.
`;

/** The part of the file that is about a box, with its marks. @param {string} box @param {string} text */
const marked = (box, text) => `<!-- ${box} -->\n\n${text.trimEnd()}\n\n<!-- end -->`;
/** @param {string} box */
const markedPart = (box) => new RegExp(`<!-- ${box} -->[\\s\\S]*?<!-- end -->`);

/** @param {(typeof SEARCHES)[number]} search */
async function found({ box, at, wants }) {
  const files = [`examples/boxes/${box}.json`, '--at', `examples/${at}.json`];
  const args = ['find', ...files, ...wants.flatMap((want) => ['--want', want])];
  const { stdout } = await promisify(execFile)(process.execPath, [inRoot('bin/faintwave.mjs'), ...args, '--json'], {
    cwd: inRoot('.'),
    maxBuffer: 1 << 26,
  });
  return { call: args, answer: JSON.parse(stdout) };
}

/** @param {number} n */
const grouped = (n) => n.toLocaleString('en-GB').replaceAll(',', ' ');
/** @param {unknown[]} cells */
const row = (cells) => `| ${cells.join(' | ')} |`;
/** @param {{ figure?: number }} want */
const figureOf = ({ figure }) => (figure === undefined ? 'out of range' : String(Math.round(figure)));

/** @param {string[]} call @param {any} answer */
function textOf(call, { sets, leftOut, counts }) {
  const quoted = call.map((word) => (word.includes(' ') ? `"${word}"` : word)).join(' ');
  const heads = [
    '',
    'set',
    ...sets[0].wants.map((/** @type {any} */ want) => want.text),
    'parts',
    'effort',
    'why it is there',
  ];
  return [
    `    npx faintwave ${quoted}`,
    '',
    `${grouped(counts.spanned)} sets: ${grouped(counts.valued)} estimated, ${grouped(counts.ruledOut)} ruled out, ${grouped(counts.untried)} not tried; ${counts.received} calculated in full, ${counts.judged} with tolerances.`,
    '',
    row(heads),
    row(heads.map(() => '---')),
    ...sets.map((/** @type {any} */ set, /** @type {number} */ i) =>
      row([i + 1, set.name, ...set.wants.map(figureOf), set.parts, set.effort, set.why]),
    ),
    '',
    ...leftOut.map((/** @type {any} */ one) => `- ${one.text}`),
  ].join('\n');
}

const chosen = process.argv.slice(2);
let text = readFileSync(FILE, { encoding: 'utf8', flag: 'a+' });
if (text === '')
  text = `${HEAD}${SEARCHES.map(({ box }) => `\n## ${box}\n\n${marked(box, 'Not searched yet.')}\n`).join('')}`;
for (const search of SEARCHES) {
  if (chosen.length > 0 && !chosen.includes(search.box)) continue;
  console.log(`Searching the box ${search.box}…`);
  const { call, answer } = await found(search);
  text = text.replace(markedPart(search.box), () => marked(search.box, textOf(call, answer)));
  writeFileSync(FILE, text);
}
