import { createHash } from 'node:crypto';
import { basename, extname } from 'node:path';
import { gzipSync } from 'node:zlib';
import { addressInFile, addressLengths, FILE_MARK, filesAskedBy, findInFile, NEEDS_MARK } from './in-file.mjs';

/** Longer ones Chrome does not open; other browsers take more. */
const LONGEST_ADDRESS = 2 * 1024 * 1024;

/** @type {Record<string, string>} */
const TYPES = {
  '.js': 'text/javascript',
  '.json': 'application/json',
  '.opus': 'audio/ogg',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.woff2': 'font/woff2',
};

/** @param {string} name */
const typeOf = (name) => TYPES[extname(name)] ?? 'application/octet-stream';

/** Text between the tags of a script cannot end it, nor begin a comment. @param {string} code */
const inScript = (code) => code.replace(/<\/(?=script)/gi, '<\\/').replaceAll('<!--', '\\x3c!--');

/** @param {string | Uint8Array} source */
const base64 = (source) => Buffer.from(source).toString('base64');

/** @param {string} text */
const hashOf = (text) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

/** What is in the file, and nothing from anywhere else. @param {readonly string[]} scripts @param {string} styles */
const policy = (scripts, styles) =>
  [
    "default-src 'none'",
    // A sound worklet counts as a script, and comes from a data address as workers do.
    `script-src ${scripts.map(hashOf).join(' ')} data:`,
    'worker-src data:',
    `style-src ${hashOf(styles)}`,
    'font-src data:',
    'img-src data: blob:',
    'media-src data: blob:',
    'connect-src data: blob:',
    "base-uri 'none'",
    "form-action 'none'",
    "require-trusted-types-for 'script'",
    'trusted-types default drawings',
  ].join('; ');

/** A file, kept as base64 in a block that no browser runs. @param {string} name @param {string | Uint8Array} source */
function block(name, source) {
  const needs = name.endsWith('.js') ? filesAskedBy(String(source)) : [];
  const mark = needs.length > 0 ? ` ${NEEDS_MARK}="${needs.join(' ')}"` : '';
  return `<script type="${typeOf(name)};charset=utf-8;base64" ${FILE_MARK}="${name}"${mark}>${base64(source)}</script>`;
}

/**
 * Puts the whole built page into one file, to be opened from a disk: styles with their fonts, scripts, workers, sounds
 * and the coast, each once. The page's own script must have been made in one piece, and so must each worker's.
 * @returns {import('vite').Plugin}
 */
export function oneFile() {
  return {
    name: 'faintwave-one-file',
    apply: 'build',
    config: () => ({
      experimental: {
        renderBuiltUrl: (name, { hostType }) =>
          hostType === 'js' ? { runtime: addressInFile(name) } : { relative: true },
      },
    }),
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        const files = [];
        let styles = '';
        let code = '';
        let html = '';
        for (const [name, output] of Object.entries(bundle)) {
          if (output.type === 'chunk') {
            if (!output.isEntry) throw new Error(`${name} should be part of the page's own script`);
            code += output.code;
          } else if (name.endsWith('.css')) styles += output.source;
          else if (name.endsWith('.html')) html = String(output.source);
          else files.push({ name, source: name.endsWith('.json') ? gzipSync(output.source) : output.source });
          delete bundle[name];
        }
        for (const [name, length] of addressLengths(files))
          if (length > LONGEST_ADDRESS) throw new Error(`The address of ${name} would be ${length} characters long.`);
        for (const { name, source } of files)
          styles = styles.replaceAll(
            `url(./${basename(name)})`,
            () => `url(data:${typeOf(name)};base64,${base64(source)})`,
          );
        const scripts = [findInFile, code].map(inScript);
        const head = `<meta http-equiv="Content-Security-Policy" content="${policy(scripts, styles)}">\n<style>${styles}</style>`;
        const body = [
          ...files.map(({ name, source }) => block(name, source)),
          `<script>${scripts[0]}</script>`,
          `<script type="module">${scripts[1]}</script>`,
        ].join('\n');
        const source = html
          .replace(/\s*<(?:script|link)\b[^>]*>(?:<\/script>)?/g, '')
          .replace(/<meta charset[^>]*>/, (charset) => `${charset}\n${head}`)
          .replace('</body>', () => `${body}\n</body>`);
        this.emitFile({ type: 'asset', fileName: 'faintwave.html', source });
      },
    },
  };
}
