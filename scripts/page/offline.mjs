import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Nothing from anywhere else, nothing written into the page, no text run as code. */
const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "worker-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  "img-src 'self' data: blob:",
  "media-src 'self' data: blob:",
  "connect-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types default drawings offline',
].join('; ');

/** Runs before the page's own script, so it has a policy of its own for the one address it uses. */
const REGISTER = `if ('serviceWorker' in navigator) {
  const file = 'service-worker.js';
  const policy = globalThis.trustedTypes?.createPolicy('offline', { createScriptURL: () => file });
  navigator.serviceWorker.register(policy ? policy.createScriptURL(file) : file);
}
`;

const here = dirname(fileURLToPath(import.meta.url));

/** @param {string} folder @returns {string[]} */
function filesIn(folder) {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return files.map((entry) =>
    join(entry.parentPath, entry.name)
      .slice(folder.length + 1)
      .replaceAll('\\', '/'),
  );
}

/**
 * Makes the built page installable and usable without a network: a service worker that knows every built file, the
 * manifest and the icon. Nothing of this is in the page during development, where a cache would only show old work.
 * @returns {import('vite').Plugin}
 */
export function offline() {
  let publicFolder = '';
  return {
    name: 'faintwave-offline',
    apply: 'build',
    configResolved(config) {
      publicFolder = config.publicDir;
    },
    transformIndexHtml: () => [
      { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY }, injectTo: 'head-prepend' },
      { tag: 'link', attrs: { rel: 'icon', type: 'image/svg+xml', href: './icon.svg' }, injectTo: 'head' },
      { tag: 'link', attrs: { rel: 'manifest', href: './manifest.webmanifest' }, injectTo: 'head' },
      { tag: 'script', attrs: { src: './offline.js', async: true }, injectTo: 'head' },
    ],
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        this.emitFile({ type: 'asset', fileName: 'offline.js', source: REGISTER });

        const built = Object.keys(bundle);
        const files = [...new Set(['index.html', 'offline.js', ...built, ...filesIn(publicFolder)])].sort();
        const version = createHash('sha256').update(files.join('\n')).update(REGISTER);
        for (const name of files) {
          const output = bundle[name];
          if (output) version.update(output.type === 'chunk' ? output.code : output.source);
          else if (name !== 'index.html' && name !== 'offline.js')
            version.update(readFileSync(join(publicFolder, name)));
        }
        const worker = readFileSync(join(here, 'service-worker.js'), 'utf8')
          .replace('__VERSION__', version.digest('hex').slice(0, 12))
          .replace('__FILES__', JSON.stringify(files));
        this.emitFile({ type: 'asset', fileName: 'service-worker.js', source: worker });
      },
    },
  };
}
