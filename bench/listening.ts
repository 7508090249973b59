import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { readValue } from '../src/engine/set/read.ts';
import { BLOCK, openListening, SOUND_RATE } from '../src/outputs/audio/index.ts';
import { findBrowser, launch } from '../test/support/find-browser.ts';
import type { Measurement } from './bench.ts';

/** The medium-wave example with 15 stations, some of them neighbours. */
function bandOf15() {
  const written = JSON.parse(readFileSync('examples/medium-wave-galena.json', 'utf8'));
  const base = written.place.stations;
  written.place.stations = Array.from({ length: 15 }, (_, i) => ({
    ...base[i % base.length],
    name: `Station ${i + 1}`,
    frequency: `${603 + 54 * i + 9 * (i % 3)} kHz`,
  }));
  const read = readValue(written);
  if (!read.ok) throw new Error('the example does not read');
  return read.set;
}

const set = bandOf15();
const still = openListening(set);
const turned = openListening(set);
const out = new Float32Array(BLOCK);
const BLOCKS = Math.round(SOUND_RATE / BLOCK);
let along = 0;

function oneSecond(listening: typeof still, turning: boolean): undefined {
  for (let b = 0; b < BLOCKS; b++) {
    if (turning) {
      along = (along + 0.0005) % 2;
      listening.tune(Math.abs(1 - along));
    }
    listening.process(out, BLOCK);
  }
}

/** A script of this project as it lies in its folder: once bundled, it would no longer know where it is. */
const script = (path: string) => import(/* @vite-ignore */ pathToFileURL(resolve('scripts/support', path)).href);

/** Needs an installed browser. Gaps in a minute of sound while the dial is swept to and fro. */
async function gapsInAMinute(): Promise<number> {
  const { buildPage, PAGE_FOLDER } = (await script('build.mjs')) as typeof import('../scripts/support/build.mjs');
  const { serve } = (await script('serve.mjs')) as typeof import('../scripts/support/serve.mjs');
  await buildPage();
  const [server, browser] = [await serve(PAGE_FOLDER), await launch(await findBrowser())];
  try {
    const page = await browser.newPage();
    await page.goto(server.url);
    await page.locator('.station').first().waitFor();
    await page.getByRole('button', { name: 'Listen', exact: true }).click();
    await page.getByRole('button', { name: 'Start listening' }).click();
    const panel = page.locator('.listen-panel');
    const seconds = async () => Number(await panel.getAttribute('data-seconds'));
    while (!((await seconds()) > 0)) await page.waitForTimeout(100);
    const box = (await page.getByRole('slider', { name: 'Pointer of the dial' }).boundingBox())!;
    const move = (t: number) =>
      page.mouse.move(box.x + 20 + (box.width - 40) * (0.5 - 0.5 * Math.cos(t)), box.y + box.height / 2);
    await move(0);
    await page.mouse.down();
    for (let k = 0; (await seconds()) < 60; k++) {
      await move(k / 60);
      await page.waitForTimeout(50);
    }
    await page.mouse.up();
    return Number(await panel.getAttribute('data-gaps'));
  } finally {
    await browser.close();
    await server.close();
  }
}

export const measurements: Measurement[] = [
  {
    name: 'listening, medium wave, 15 stations, 192 kHz: noise, programmes, phones and limiter with it',
    unit: 'second of sound',
    run: () => oneSecond(still, false),
    goal: { atMost_s: 1 / 8 },
  },
  {
    name: 'the same while the dial is turned',
    unit: 'second of sound',
    run: () => oneSecond(turned, true),
  },
  {
    name: 'a minute on the page while the dial is swept',
    unit: 'gaps',
    measure: gapsInAMinute,
    goal: { atMost: 0 },
  },
];
