import { execFile } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { delimiter, join } from 'node:path';
import { promisify } from 'node:util';
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium } from 'playwright-core';
import { alone } from '../../scripts/support/fresh.mjs';
import { inRoot } from '../../scripts/support/paths.mjs';

/** How to launch the browser that the page tests run in. Plain data: it is handed from the set-up to the test files. */
export interface FoundBrowser {
  /** What it is and where it came from, for a person to read. */
  about: string;
  executablePath: string;
  env: Record<string, string>;
}

const ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--disable-dev-shm-usage',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--autoplay-policy=no-user-gesture-required',
  // A machine without a microphone has one that beeps.
  '--use-fake-device-for-media-stream',
  '--use-fake-ui-for-media-stream',
];

/** Starts the browser, headless. */
export function launch({ executablePath, env }: FoundBrowser): Promise<Browser> {
  return chromium.launch({ executablePath, env, args: ARGS, timeout: 180_000 });
}

/** Starts the browser, headless, with what it keeps in a folder. */
export function launchProfile(
  { executablePath, env }: FoundBrowser,
  folder: string,
  options: BrowserContextOptions,
): Promise<BrowserContext> {
  return chromium.launchPersistentContext(folder, { ...options, executablePath, env, args: ARGS, timeout: 180_000 });
}

/** The environment for the browser. A bare C locale makes `navigator.language` a name that Intl refuses. */
function environment(extra: Record<string, string> = {}): Record<string, string> {
  const own = Object.entries(process.env).filter((entry): entry is [string, string] => entry[1] !== undefined);
  return { ...Object.fromEntries(own), LANG: 'en_GB.UTF-8', LANGUAGE: 'en_GB', ...extra };
}

function installedPaths(): string[] {
  const { PROGRAMFILES, LOCALAPPDATA, PATH = '' } = process.env;
  if (process.platform === 'darwin') {
    const apps = ['Google Chrome', 'Chromium', 'Microsoft Edge'];
    return ['/Applications', join(homedir(), 'Applications')].flatMap((folder) =>
      apps.map((app) => join(folder, `${app}.app/Contents/MacOS/${app}`)),
    );
  }
  if (process.platform === 'win32') {
    const folders = [PROGRAMFILES, process.env['PROGRAMFILES(X86)'], LOCALAPPDATA];
    const programs = ['Google/Chrome/Application/chrome.exe', 'Chromium/Application/chrome.exe'];
    programs.push('Microsoft/Edge/Application/msedge.exe');
    return folders.flatMap((folder) => (folder ? programs.map((program) => join(folder, program)) : []));
  }
  const names = ['google-chrome', 'google-chrome-stable', 'chromium', 'chromium-browser', 'microsoft-edge'];
  const folders = [...new Set([...PATH.split(delimiter), '/usr/bin', '/usr/local/bin'])].filter(Boolean);
  return names.flatMap((name) => folders.map((folder) => join(folder, name)));
}

/**
 * The Chromium that the development packages bring for Linux on x64, unpacked once into a folder of its own version,
 * together with the four libraries and the fonts that a bare system lacks.
 */
async function fromPackage(): Promise<FoundBrowser> {
  const source = inRoot('node_modules/@sparticuz/chromium');
  const { version } = JSON.parse(readFileSync(join(source, 'package.json'), 'utf8'));
  const folder = inRoot('node_modules/.cache', `chromium-${version}`);
  if (!existsSync(join(folder, 'chromium'))) await alone('chromium', () => unpack(source, folder));
  const extra: Record<string, string> = {};
  if (!existsSync('/etc/fonts/fonts.conf')) extra.FONTCONFIG_PATH = join(folder, 'fonts');
  const system = ['/usr/lib/x86_64-linux-gnu', '/usr/lib64', '/usr/lib'];
  if (!system.some((place) => existsSync(join(place, 'libnss3.so')))) {
    extra.LD_LIBRARY_PATH = [join(folder, 'al2023/lib'), process.env.LD_LIBRARY_PATH].filter(Boolean).join(':');
  }
  return { about: '', executablePath: join(folder, 'chromium'), env: environment(extra) };
}

async function unpack(source: string, folder: string): Promise<void> {
  if (existsSync(join(folder, 'chromium'))) return; // another process has just done it
  const aside = `${folder}.new`;
  rmSync(aside, { recursive: true, force: true });
  mkdirSync(aside, { recursive: true });
  // The package unpacks into the temporary folder and takes whatever it finds there as good, so it gets an empty one.
  const before = process.env.TMPDIR;
  process.env.TMPDIR = aside;
  try {
    const { default: packed, inflate } = await import('@sparticuz/chromium');
    await packed.executablePath();
    await inflate(join(source, 'bin/al2023.tar.br'));
  } finally {
    if (before === undefined) delete process.env.TMPDIR;
    else process.env.TMPDIR = before;
  }
  // The fonts.conf inside names a fixed folder; without a right one there are no fonts and file inputs crash.
  const fonts = `<fontconfig><dir>${folder}/fonts</dir><cachedir>${folder}/font-cache</cachedir></fontconfig>`;
  const head = '<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd">';
  writeFileSync(join(aside, 'fonts/fonts.conf'), head + fonts);
  rmSync(folder, { recursive: true, force: true });
  renameSync(aside, folder);
}

async function fromDebian(): Promise<FoundBrowser> {
  console.log('No usable browser yet: installing Debian’s chromium for the page tests…');
  const apt = (...args: string[]) =>
    promisify(execFile)('apt-get', ['-o', 'DPkg::Lock::Timeout=300', ...args], {
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
      maxBuffer: 1 << 26,
    });
  await apt('update');
  await apt('install', '-y', 'chromium');
  return { about: '', executablePath: '/usr/bin/chromium', env: environment() };
}

const isDebian = () => existsSync('/etc/debian_version') && existsSync('/usr/bin/apt-get');

/**
 * Finds a browser and has it start once. In order: CHROME_PATH; an installed Chrome, Chromium or Edge; the packaged
 * Chromium (Linux, x64); as root on Debian, its chromium. Throws with everything that was tried when none starts.
 */
export async function findBrowser(): Promise<FoundBrowser> {
  const chosen = process.env.CHROME_PATH;
  const plain = (executablePath: string) => async () => ({ about: '', executablePath, env: environment() });
  const ways: [string, () => Promise<FoundBrowser>][] = [];
  if (chosen) ways.push([`CHROME_PATH=${chosen}`, plain(chosen)]);
  else {
    for (const path of installedPaths().filter((path) => existsSync(path))) ways.push([path, plain(path)]);
    if (process.platform === 'linux' && process.arch === 'x64') ways.push(['@sparticuz/chromium', fromPackage]);
    if (isDebian() && process.getuid?.() === 0) ways.push(['apt-get install chromium', fromDebian]);
  }
  const failures: string[] = [];
  for (const [name, way] of ways) {
    try {
      const found = await way();
      const browser = await launch(found);
      const version = browser.version();
      await browser.close();
      return { ...found, about: `Chromium ${version} (${name})` };
    } catch (error) {
      const [firstLine] = String(error instanceof Error ? error.message : error).split('\n');
      failures.push(`  ${name}: ${firstLine}`);
    }
  }
  throw new Error(
    [
      'The page tests need a browser and found none that starts.',
      ...failures,
      'Install Chrome, Chromium or Edge, or set CHROME_PATH to the program file of one.',
      'Everything else can be tested without: npm test -- --project unit',
    ].join('\n'),
  );
}
