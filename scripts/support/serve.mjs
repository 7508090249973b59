import { createReadStream, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, normalize, sep } from 'node:path';

/** @type {Record<string, string>} */
const TYPES = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.mp4': 'video/mp4',
  '.ogg': 'audio/ogg',
  '.opus': 'audio/ogg',
  '.otf': 'font/otf',
  '.pdf': 'application/pdf',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.wav': 'audio/wav',
  '.webm': 'video/webm',
  '.webmanifest': 'application/manifest+json',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
};

// Together these make the page "cross-origin isolated", without which there is no memory shared with the sound thread.
const ISOLATION = {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
  'Cross-Origin-Resource-Policy': 'same-origin',
};

/**
 * The file that an address means, or undefined when there is none inside the folder.
 * @param {string} folder
 * @param {string} address
 */
function fileFor(folder, address) {
  let path = '';
  try {
    path = decodeURIComponent(address.split(/[?#]/)[0]);
  } catch {
    return undefined;
  }
  if (path.includes('\0')) return undefined;
  const root = normalize(folder);
  const file = normalize(join(root, path.endsWith('/') ? `${path}index.html` : path));
  if (!file.startsWith(root + sep)) return undefined;
  const info = statSync(file, { throwIfNoEntry: false });
  return info?.isFile() ? { file, info } : undefined;
}

/**
 * Serves the files of a folder to this machine only.
 * @param {string} folder
 * @param {{ port?: number, tries?: number }} [options] port: the first to try, 0 for any; tries: how many from there on
 * @returns {Promise<{ url: string, port: number, close: () => Promise<void> }>}
 */
export async function serve(folder, { port = 0, tries = 1 } = {}) {
  const server = createServer((request, response) => {
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.writeHead(405, { Allow: 'GET, HEAD', ...ISOLATION }).end();
      return;
    }
    const found = fileFor(folder, request.url ?? '/');
    if (!found) {
      response.writeHead(404, { 'Content-Type': TYPES['.txt'], ...ISOLATION }).end('There is no such file here.\n');
      return;
    }
    response.writeHead(200, {
      'Content-Type': TYPES[extname(found.file).toLowerCase()] ?? 'application/octet-stream',
      'Content-Length': found.info.size,
      'Cache-Control': 'no-cache',
      ...ISOLATION,
    });
    if (request.method === 'HEAD') response.end();
    else
      createReadStream(found.file)
        .on('error', () => response.destroy())
        .pipe(response);
  });
  for (let left = tries; ; left--, port++) {
    try {
      await new Promise((resolve, reject) => {
        server.once('error', reject);
        server.listen(port, '127.0.0.1', () => {
          server.off('error', reject);
          resolve(undefined);
        });
      });
      break;
    } catch (error) {
      const { code } = /** @type {NodeJS.ErrnoException} */ (error);
      if (left > 1 && port < 65535 && (code === 'EADDRINUSE' || code === 'EACCES')) continue;
      if (code === 'EADDRINUSE') throw new Error(`Port ${port} is in use by another program.`);
      if (code === 'EACCES') throw new Error(`Port ${port} may not be used by an ordinary program.`);
      throw error;
    }
  }
  const taken = /** @type {import('node:net').AddressInfo} */ (server.address()).port;
  return {
    url: `http://127.0.0.1:${taken}/`,
    port: taken,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
