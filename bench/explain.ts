import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { receive } from '../src/engine/reception/path/receive.ts';
import { readText } from '../src/engine/set/read.ts';
import { createWaves, POINTS, wavesOfSet } from '../src/outputs/explain/index.ts';
import type { Measurement } from './bench.ts';
import { longestTaskSeen, onBuiltPage, watchLongTasks } from './support/built-page.ts';

const read = readText(readFileSync('examples/medium-wave-galena.json', 'utf8'));
if (!read.ok) throw new Error('the example has problems');
const base = wavesOfSet(read.set, receive(read.set, {}))!;
const waves = createWaves(base);
const COLUMNS = 1280;
const min = new Float64Array(COLUMNS);
const max = new Float64Array(COLUMNS);
/** Spans from 5 s to 50 ns, evenly in the logarithm. */
const SPANS = Array.from({ length: 40 }, (_, k) => 5 * (50e-9 / 5) ** (k / 39));

/** The same columns by sampling: what a drawing without true extremes would do, eight values to a column. */
function sampled(): number {
  let sum = 0;
  for (const span of SPANS) {
    for (let i = 0; i < COLUMNS; i++) {
      let low = Number.POSITIVE_INFINITY;
      let high = Number.NEGATIVE_INFINITY;
      for (let k = 0; k < 8; k++) {
        const t = 0.2 + ((i + k / 8) * span) / COLUMNS;
        const v = (1 + 0.6 * Math.cos(2 * Math.PI * 1000 * t)) * Math.cos(2 * Math.PI * 603e3 * t);
        low = Math.min(low, v);
        high = Math.max(high, v);
      }
      sum += high - low;
    }
  }
  kept += sum;
  return SPANS.length;
}

let kept = 0;
/** So that the sums are of use to somebody. */
export const total = () => kept;

/** The page on its stage in a real browser. */
const onStage = <T>(use: (page: Page) => Promise<T>): Promise<T> =>
  onBuiltPage(async (page, url) => {
    await page.goto(url);
    await page.locator('.station').first().waitFor();
    await page.getByRole('button', { name: 'Explain', exact: true }).click();
    await page.locator('.explain-stage canvas').waitFor();
    await page.waitForTimeout(1500);
    return use(page);
  });

/** 95th percentile of the time from frame to frame, ms, while six traces with their averages zoom over eight decades. */
const frameTime = () =>
  onStage((page) =>
    page.evaluate(async () => {
      const canvas = document.querySelector('.explain-stage canvas')!;
      const box = canvas.getBoundingClientRect();
      const at = { clientX: box.x + box.width * 0.4, clientY: box.y + 200, bubbles: true, cancelable: true };
      const wheel = (deltaY: number) => canvas.dispatchEvent(new WheelEvent('wheel', { ...at, deltaY }));
      for (let k = 0; k < 40; k++) wheel(400);
      await new Promise((done) => setTimeout(done, 1500));
      const gaps: number[] = [];
      await new Promise<void>((done) => {
        let last = 0;
        const frame = (t: number) => {
          if (last > 0) gaps.push(t - last);
          last = t;
          if (gaps.length >= 300) return done();
          wheel(-29);
          requestAnimationFrame(frame);
        };
        requestAnimationFrame(frame);
      });
      gaps.sort((a, b) => a - b);
      return gaps[Math.floor(gaps.length * 0.95)];
    }),
  );

/**
 * The longest task on the page's own thread, ms, while a control is turned through its whole way, scenes are gone
 * through and the wheel zooms: the waves are made beside it. What the browser calls long begins at 50 ms; 0 is none.
 */
const longestTask = () =>
  onStage(async (page) => {
    await page.evaluate(() => {
      for (const part of document.querySelectorAll<HTMLDetailsElement>('.explain-side > details')) part.open = true;
    });
    await watchLongTasks(page);
    for (const label of ['Depth of modulation', 'Load capacitor', 'How sharply it is tuned']) {
      const slider = page.getByRole('slider', { name: label });
      await slider.focus();
      for (let k = 0; k < 25; k++) {
        await page.keyboard.press(k < 15 ? 'ArrowLeft' : 'PageUp');
        await page.waitForTimeout(30);
      }
    }
    await page.locator('.explain-controls select').nth(2).selectOption('silicon');
    await page.waitForTimeout(500);
    const box = (await page.locator('.explain-stage canvas').boundingBox())!;
    await page.mouse.move(box.x + box.width / 3, box.y + 100);
    for (let k = 0; k < 60; k++) {
      await page.mouse.wheel(0, -120);
      await page.waitForTimeout(16);
    }
    for (let k = 0; k < 18; k++) {
      await page.getByRole('button', { name: 'Next', exact: true }).click();
      await page.waitForTimeout(150);
    }
    await page.waitForTimeout(300);
    return longestTaskSeen(page);
  });

/** Seconds of film made in a second: 12 s of 1080p at 30 frames, as WebM. */
const filmRate = () =>
  onStage(async (page) => {
    await page
      .locator('.explain-scenes')
      .getByRole('button', { name: /Too fast to see/ })
      .click();
    await page.evaluate(() => {
      for (const part of document.querySelectorAll<HTMLDetailsElement>('.explain-side > details')) part.open = true;
    });
    const start = performance.now();
    const file = page.waitForEvent('download', { timeout: 300_000 });
    await page.getByRole('button', { name: 'Make the film' }).click();
    await (await file).path();
    return 12 / ((performance.now() - start) / 1000);
  });

export const measurements: Measurement[] = [
  {
    name: 'one trace, 1280 columns of true extremes, any span from 5 s to 50 ns',
    unit: 'trace',
    run() {
      for (const span of SPANS) {
        waves.extent('modulated', 0.2, 0.2 + span, COLUMNS, min, max);
        kept += max[7];
      }
      return SPANS.length;
    },
    against: 'the same by eight samples to a column, which misses crests',
    goal: { atMost_s: 2e-3, atLeastRatio: 1 },
  },
  { name: 'the same by eight samples to a column, which misses crests', unit: 'trace', run: sampled },
  {
    name: 'six points of the path, one frame of them',
    unit: 'frame',
    run() {
      for (const span of SPANS) {
        for (const point of POINTS) waves.extent(point, 0.2, 0.2 + span, COLUMNS, min, max);
        kept += max[7];
      }
      return SPANS.length;
    },
    goal: { atMost_s: 8e-3 },
  },
  {
    name: 'all waves of a set made anew, as when something is turned',
    unit: 'set of waves',
    run() {
      const fresh = createWaves(base);
      for (const point of POINTS) fresh.extent(point, 0, 1e-3, 100, min, max);
      kept += max[7];
      return 1;
    },
  },
  {
    name: 'time from frame to frame while zooming over eight decades, 95th percentile, in a browser',
    unit: 'ms',
    measure: frameTime,
    goal: { atMost: 17.5 },
  },
  {
    name: 'longest task on the page’s own thread while things are turned, scenes gone through and the wheel zooms',
    unit: 'ms',
    measure: longestTask,
    goal: { atMost: 50 },
  },
  {
    name: 'film, 1080p at 30 frames, in a browser',
    unit: 'times real time',
    measure: filmRate,
    goal: { atLeast: 0.3 },
  },
];
