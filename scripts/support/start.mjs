import { parseArgs } from 'node:util';
import { buildCommandLine, buildPage, PAGE_FOLDER } from './build.mjs';
import { installIfNeeded } from './install.mjs';
import { openInBrowser } from './open.mjs';
import { serve } from './serve.mjs';

const HELP = `Starts Faintwave on this machine and opens it in the browser.

  npm start                    everything, including the first set-up
  npm start -- --port 8080     at this port (else 4173 or the next that is free)
  npm start -- --no-open       without opening the browser
  npm start -- --help          this
`;

/** @param {string[]} args */
function readOptions(args) {
  const { values } = parseArgs({
    args,
    options: { port: { type: 'string' }, 'no-open': { type: 'boolean' }, help: { type: 'boolean', short: 'h' } },
  });
  const port = values.port === undefined ? undefined : Number(values.port);
  if (port !== undefined && !(Number.isInteger(port) && port >= 0 && port <= 65535)) {
    throw new Error(`--port must be a whole number from 0 to 65535, not "${values.port}".`);
  }
  return { port, open: !values['no-open'], help: values.help ?? false };
}

/** @param {string[]} args */
async function prepareAndServe(args) {
  const { port, open, help } = readOptions(args);
  if (help) {
    console.log(HELP);
    return;
  }
  await installIfNeeded();
  await buildCommandLine();
  await buildPage();
  const server = await serve(PAGE_FOLDER, port === undefined ? { port: 4173, tries: 100 } : { port });
  console.log(`Faintwave is at ${server.url} (Ctrl-C ends it)`);
  if (open) openInBrowser(server.url);
  const stop = () => {
    server.close().then(() => process.exit(0));
  };
  process.once('SIGINT', stop);
  process.once('SIGTERM', stop);
}

/** @param {string[]} args */
export async function start(args) {
  try {
    await prepareAndServe(args);
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exitCode = 1;
  }
}
