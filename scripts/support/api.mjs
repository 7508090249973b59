import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { buildCommandLine } from './build.mjs';
import { inRoot } from './paths.mjs';

/**
 * The reference of the public indexes: what the compiler wrote into dist/*.d.ts, which is every exported name with its
 * full type and its docstring.
 * @typedef {{ name: string, doc: string, code: string, file: string }} Entry
 * @typedef {{ title: string, entries: Entry[] }} Group
 * @typedef {{ text: string, params: ReadonlyMap<string, string>, returns?: string, throws?: string }} Doc
 */

/** Name of each face of the library, and its index in src. */
const FACES = { engine: 'engine/index.ts', outputs: 'outputs/index.ts' };

/** @param {string} file path in dist, ending in .d.ts */
const declarationsOf = (file) => readFileSync(inRoot('dist', file), 'utf8').replace(/^\/\/# .*$/gm, '');

/**
 * Statements of a file that the compiler wrote: each begins at the left edge, its comment before it.
 * @param {string} text
 * @returns {{ doc: string, code: string }[]}
 */
function statements(text) {
  /** @type {{ doc: string, code: string }[]} */
  const found = [];
  let doc = '';
  for (const [part] of text.matchAll(/^\/\*\*[\s\S]*?\*\/|^[^\s})*\]/][^\n]*(?:\n(?:[\s})\]|&][^\n]*)?)*/gm)) {
    if (part.startsWith('/**')) doc = part;
    else {
      found.push({ doc, code: part.trim() });
      doc = '';
    }
  }
  return found;
}

/**
 * The declaration of an exported name, followed through files that only hand it on.
 * @param {string} file in dist @param {string} name @returns {Entry}
 */
function entryOf(file, name) {
  const all = statements(declarationsOf(file));
  const own = all.filter(({ code }) =>
    new RegExp(
      `^(?:export )?(?:declare )?(?:abstract )?(?:function|const|class|interface|type) ${name.replace('$', '\\$')}\\b`,
    ).test(code),
  );
  if (own.length > 0)
    return { name, file, doc: own.find((one) => one.doc)?.doc ?? '', code: own.map((one) => one.code).join('\n') };
  for (const { code } of all) {
    const handed = /^(?:export|import) (?:type )?(\{[^}]*\}|\*) from '([^']+)'/.exec(code);
    if (!handed) continue;
    const next = posix.join(posix.dirname(file), handed[2].replace(/\.(?:ts|js)$/, '.d.ts'));
    if (handed[1] === '*' ? declares(next, name) : new RegExp(`\\b${name}\\b`).test(handed[1]))
      return entryOf(next, name);
  }
  throw new Error(`${name} is not found from dist/${file}`);
}

/** @param {string} file @param {string} name @returns {boolean} */
function declares(file, name) {
  try {
    return entryOf(file, name) !== undefined;
  } catch {
    return false;
  }
}

/**
 * The groups of an index: a comment on a line of its own begins each.
 * @param {string} index in src @returns {Group[]}
 */
function groupsOf(index) {
  /** @type {Group[]} */
  const groups = [];
  for (const match of readFileSync(inRoot('src', index), 'utf8').matchAll(
    /^\/\/ (.+)$|^export (?:type )?\{([^}]*)\} from '([^']+)';/gm,
  )) {
    const [, title, names, from] = match;
    if (title) groups.push({ title, entries: [] });
    else {
      const file = posix.join(posix.dirname(index), from.replace(/\.ts$/, '.d.ts'));
      for (const name of names.split(',').map((one) => one.trim().replace(/^type /, '')))
        if (name) groups.at(-1)?.entries.push(entryOf(file, name));
    }
  }
  return groups;
}

/** @param {string} comment @returns {Doc} */
function readDoc(comment) {
  const lines = comment
    .replace(/^\/\*\*|\*\/$/g, '')
    .split('\n')
    .map((line) => line.replace(/^\s*\* ?/, '').trimEnd());
  const [text, ...tags] = lines
    .join('\n')
    .split(/(?:^|\s)(?=@(?:param|returns|throws|example)\b)/)
    .map((part) => part.trim());
  const params = new Map();
  /** @type {Doc} */
  const doc = { text: text.replace(/\s*\n\s*/g, ' '), params };
  for (const tag of tags) {
    const [, kind, said] = /^@(\w+)\s*([\s\S]*)$/.exec(tag) ?? [];
    const words = said.replace(/\s*\n\s*/g, ' ');
    if (kind === 'param') params.set(words.split(' ')[0], words.slice(words.indexOf(' ') + 1));
    else if (kind === 'returns') doc.returns = words;
    else if (kind === 'throws') doc.throws = words;
  }
  return doc;
}

/** Names of a function's parameters, or undefined for what is no function. @param {string} code @returns {string[] | undefined} */
function parametersOf(code) {
  const start =
    /^export declare function \w+(?:<(?:[^<>]|<[^<>]*>)*>)?\(/.exec(code) ??
    /^export declare const \w+: (?:<(?:[^<>]|<[^<>]*>)*>)?\((?=\)|\w+\??:|\{|\.\.\.)/.exec(code);
  if (!start) return undefined;
  /** @type {string[]} */
  const names = [];
  let depth = 0;
  let piece = '';
  for (const sign of code.slice(start[0].length)) {
    if (depth === 0 && (sign === ',' || sign === ')')) {
      if (piece.trim()) names.push(piece.trim());
      piece = '';
      if (sign === ')') break;
      continue;
    }
    if ('([{<'.includes(sign)) depth++;
    // The arrow of a function type closes nothing.
    if (')]}'.includes(sign) || (sign === '>' && !piece.endsWith('='))) depth--;
    piece += sign;
  }
  return names.map((one) => (one.startsWith('{') ? 'options' : (/^(?:\.\.\.)?\[?(\w+)/.exec(one)?.[1] ?? one)));
}

/** A longer type says nothing to a reader: the schema of a description is half a megabyte. */
const LONGEST = 4000;

/** @param {Entry} entry */
function section({ name, doc, code, file }) {
  const { text, params, returns, throws } = readDoc(doc);
  const told = code.length > LONGEST ? `${code.slice(0, code.indexOf(':'))};` : code;
  const shown = told.replace(/^export (declare )?/gm, '').replace(/^ {4}/gm, '  ');
  const list = [
    ...[...params].map(([param, words]) => `- \`${param}\`: ${words}`),
    ...(returns ? [`- Returns ${returns}`] : []),
    ...(throws ? [`- Throws ${throws}`] : []),
  ];
  const source = `src/${file.replace(/\.d\.ts$/, '.ts')}`;
  return [`### ${name}`, text, `\`\`\`ts\n${shown}\n\`\`\``, list.join('\n'), `[${source}](../../${source})`]
    .filter(Boolean)
    .join('\n\n');
}

/** @param {string} face @param {string} title */
const fileOf = (face, title) => `${face}-${title.toLowerCase().replace(/[^a-z]+/g, '-')}.md`;

/** Everything that is exported, by face and group. */
async function publicNames() {
  await buildCommandLine({ quiet: true });
  return Object.entries(FACES).map(([face, index]) => ({ face, groups: groupsOf(index) }));
}

/**
 * What the docstrings of public names lack: a text each, and for a function every parameter and what it returns.
 * @returns {Promise<string[]>} a line for each: file, name, and what is lacking
 */
export async function undocumented() {
  const entries = (await publicNames()).flatMap(({ groups }) => groups.flatMap((group) => group.entries));
  return entries.flatMap(({ name, doc, code, file }) => {
    const { text, params, returns } = readDoc(doc);
    const parameters = parametersOf(code);
    const lacking = [
      ...(text || returns ? [] : ['what it is']),
      ...(parameters ?? []).filter((one) => !params.has(one)).map((one) => `@param ${one}`),
      ...(parameters && !returns ? ['@returns'] : []),
    ];
    return lacking.map((what) => `src/${file.replace(/\.d\.ts$/, '.ts')}, ${name}: ${what}`);
  });
}

/** The pages of the reference by file name. @returns {Promise<Map<string, string>>} */
export async function apiPages() {
  const faces = await publicNames();
  const pages = new Map();
  const lines = faces.flatMap(({ face, groups }) => [
    `\n## ${face === 'engine' ? 'faintwave' : 'faintwave/outputs'}\n`,
    ...groups.map(({ title, entries }) => {
      const names = entries.map(({ name }) => `\`${name}\``).join(', ');
      return `- [${title}](${fileOf(face, title)}): ${names}`;
    }),
  ]);
  pages.set(
    'README.md',
    `# Reference\n\nWritten by \`npm run api\` from the docstrings; how to begin is in [../library.md](../library.md). All\nquantities are in SI units; a type such as \`Hertz\` is a number and says the unit.\n${lines.join('\n')}\n`,
  );
  for (const { face, groups } of faces)
    for (const { title, entries } of groups) {
      pages.set(fileOf(face, title), `# ${title}\n\n${entries.map(section).join('\n\n')}\n`);
    }
  return pages;
}

const FOLDER = inRoot('docs/api');

/** @param {Map<string, string>} pages */
export function writePages(pages) {
  rmSync(FOLDER, { recursive: true, force: true });
  mkdirSync(FOLDER, { recursive: true });
  for (const [name, text] of pages) writeFileSync(join(FOLDER, name), text);
}
