import { readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { marked } from 'marked';
import { shippedPackages } from '../support/licences.mjs';
import { inRoot } from '../support/paths.mjs';
import { CHAPTERS } from './handbook-chapters.mjs';

/** @typedef {import('../../src/app/views/handbook/handbook-text.ts').TextBlock} Block */
/** @typedef {import('../../src/app/views/handbook/handbook-text.ts').Inline} Inline */
/** @typedef {import('../../src/app/views/handbook/handbook-text.ts').Chapter} Chapter */
/** @typedef {import('marked').Token} Token */

const MODULE = 'virtual:handbook';
const RESOLVED = `\0${MODULE}`;

/** The id of a heading, as links within the documents write it. @param {string} text */
const idOf = (text) =>
  text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}\s-]/gu, '')
    .trim()
    .replaceAll(' ', '-');

const fileOf = new Map(CHAPTERS.map(({ id, file }) => [file, id]));

/**
 * A document as blocks of text, without any mark-up of its own: the page builds its elements from them.
 * @param {string} file from the root
 * @param {(path: string) => string} picture gives the mark of a picture, by its path from the root
 * @returns {{ title: string, blocks: Block[] }}
 */
function readDocument(file, picture) {
  const from = posix.dirname(file);

  /** @param {string} href @returns {{ chapter: string, heading?: string } | { address: string } | undefined} */
  const targetOf = (href) => {
    if (/^https?:/.test(href)) return { address: href };
    const [path, heading] = href.split('#');
    const chapter = fileOf.get(path === '' ? file : posix.join(from, path));
    return chapter === undefined ? undefined : { chapter, ...(heading !== undefined && { heading }) };
  };

  /** Marks of the parts that are made are not shown; other mark-up has no place. @param {Token} token @returns {never[]} */
  const comment = ({ raw }) => {
    if (!raw.trim().startsWith('<!--')) throw new Error(`${file}: no place in the handbook for ${raw}`);
    return [];
  };

  /** @param {Token[] | undefined} tokens @returns {Inline[]} */
  const inlines = (tokens = []) =>
    tokens.flatMap((/** @type {any} */ token) => {
      switch (token.type) {
        case 'text':
          return token.tokens ? inlines(token.tokens) : [plain(token.text)];
        case 'escape':
          return [plain(token.text)];
        case 'codespan':
          return [{ code: plain(token.text) }];
        case 'strong':
          return [{ strong: inlines(token.tokens) }];
        case 'em':
          return [{ em: inlines(token.tokens) }];
        case 'br':
          return [' '];
        case 'image':
          return [{ picture: picture(posix.join(from, token.href)), alt: plain(token.text) }];
        case 'link': {
          const to = targetOf(token.href);
          return to ? [{ to, text: inlines(token.tokens) }] : inlines(token.tokens);
        }
        case 'html':
          return comment(token);
        default:
          throw new Error(`${file}: no place in the handbook for ${token.type}: ${token.raw}`);
      }
    });

  /** @param {Token[]} tokens @returns {Block[]} */
  const blocks = (tokens) =>
    tokens.flatMap((/** @type {any} */ token) => {
      switch (token.type) {
        case 'heading':
          return [{ heading: inlines(token.tokens), level: token.depth, id: idOf(plain(token.text)) }];
        case 'paragraph':
        case 'text':
          return [{ paragraph: inlines(token.tokens ?? [token]) }];
        case 'code':
          return [{ listing: token.text }];
        case 'list':
          return [
            {
              items: token.items.map((/** @type {any} */ item) => blocks(item.tokens)),
              ...(token.ordered && { from: token.start || 1 }),
            },
          ];
        case 'table':
          return [
            {
              head: token.header.map((/** @type {any} */ cell) => inlines(cell.tokens)),
              rows: token.rows.map((/** @type {any[]} */ row) => row.map((cell) => inlines(cell.tokens))),
            },
          ];
        case 'blockquote':
          return [{ quote: blocks(token.tokens) }];
        case 'hr':
        case 'html':
          return comment(token);
        case 'space':
        case 'def':
          return [];
        default:
          throw new Error(`${file}: no place in the handbook for ${token.type}: ${token.raw}`);
      }
    });

  const [first, ...rest] = blocks(marked.lexer(readFileSync(inRoot(file), 'utf8')));
  if (!('heading' in first)) throw new Error(`${file}: should begin with its title`);
  return { title: textOf(first.heading), blocks: rest };
}

/** @param {string} text with the few entities that the reader of Markdown leaves */
const plain = (text) =>
  text
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&');

/** @param {readonly Inline[]} inlines @returns {string} */
const textOf = (inlines) =>
  inlines
    .map((/** @type {any} */ one) =>
      typeof one === 'string' ? one : (one.code ?? textOf(one.strong ?? one.em ?? one.text ?? [])),
    )
    .join('');

/**
 * The documents as one module of the page, pictures and licences included.
 * @returns {import('vite').Plugin}
 */
export function handbook() {
  return {
    name: 'faintwave-handbook',
    resolveId: (id) => (id === MODULE ? RESOLVED : undefined),
    load(id) {
      if (id !== RESOLVED) return undefined;
      /** @type {string[]} */
      const pictures = [];
      /** @param {string} path */
      const picture = (path) => {
        if (!pictures.includes(path)) pictures.push(path);
        return path;
      };
      const chapters = CHAPTERS.map(({ id: chapter, part, file }) => {
        this.addWatchFile(inRoot(file));
        return { id: chapter, part, ...readDocument(file, picture) };
      });
      const imports = pictures.map(
        (path, i) => `import p${i} from ${JSON.stringify(`${inRoot(path)}?url&no-inline`)};`,
      );
      return [
        ...imports,
        `export const pictures = { ${pictures.map((path, i) => `${JSON.stringify(path)}: p${i}`).join(', ')} };`,
        `export const chapters = JSON.parse(${JSON.stringify(JSON.stringify(chapters))});`,
        `export const packages = JSON.parse(${JSON.stringify(JSON.stringify(shippedPackages()))});`,
      ].join('\n');
    },
  };
}
