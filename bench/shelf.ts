import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { HEARD, type LogCells, writeLog } from '../src/engine/index.ts';
import type { Measurement } from './bench.ts';
import { longestTaskSeen, onBuiltPage, watchLongTasks } from './support/built-page.ts';

const EXAMPLES = ['two-slider-coil', 'long-wave-foil', 'ferrite-rod'];
const SETS = 500;
const ENTRIES = 20_000;
const FEW = { sets: 5, entries: 20 };

/** What stands in the shelf and in the log of the first set. */
interface Kept {
  readonly sets: readonly string[];
  readonly log: string;
}

const example = JSON.parse(readFileSync('examples/medium-wave-galena.json', 'utf8')) as {
  name: string;
  place: { stations: { name: string }[] };
};

function keptOf(sets: number, entries: number): Kept {
  const { stations } = example.place;
  const cells = Array.from({ length: entries }, (_, n): LogCells => {
    // Spread over years, seasons and hours without being in step with anything.
    const at = new Date(Date.UTC(2015, 0, 1) + n * 17_389_000 + (n % 97) * 131_000);
    return {
      time: `${at.toISOString().slice(0, 16)}Z`,
      station: stations[n % stations.length].name,
      heard: HEARD[(n * 7) % HEARD.length],
      remark: `no. ${n}`,
    };
  });
  return {
    sets: Array.from({ length: sets }, (_, n) => {
      const written = { ...example, name: `Set ${n} ${EXAMPLES[n % EXAMPLES.length]}`, notes: `kept no. ${n * 31}` };
      return JSON.stringify({ revision: 1, written, fileName: `set-${n}.json`, isSaved: true, tab: 'bench' });
    }),
    log: writeLog(cells),
  };
}

/** Puts them where the page keeps them, and loads it anew. */
async function withKept(page: Page, url: string, kept: Kept): Promise<void> {
  await page.goto(url);
  await page.locator('.station').first().waitFor();
  await page.evaluate(async ({ sets, log }) => {
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const opening = indexedDB.open('faintwave');
      opening.onsuccess = () => resolve(opening.result);
      opening.onerror = () => reject(opening.error);
    });
    const transaction = database.transaction(['texts', 'entries', 'logs'], 'readwrite');
    for (const [n, text] of sets.entries()) {
      const { written, fileName } = JSON.parse(text);
      const entry = { id: `set-${n}`, name: written.name, notes: written.notes, fileName, changed: 1e12 + n };
      transaction.objectStore('texts').put(text, entry.id);
      transaction.objectStore('entries').put(entry, entry.id);
    }
    transaction.objectStore('logs').put(log, 'first');
    await new Promise((resolve, reject) => {
      transaction.oncomplete = resolve;
      transaction.onerror = reject;
    });
    database.close();
  }, kept);
  await page.reload();
  await page.locator('.answer[aria-busy=false]').waitFor();
}

const middle = (times: readonly number[]): number => [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)];

/** From a press on the shelf's button until its first cards are painted, ms; the middle one of five. */
async function opening(page: Page): Promise<number> {
  // The code of the view comes with the first time.
  const times: number[] = [];
  for (let k = 0; k < 6; k++) {
    times.push(
      await page.evaluate(async () => {
        const button = [...document.querySelectorAll('button')].find((one) => one.textContent === 'Shelf')!;
        const start = performance.now();
        button.click();
        while (!document.querySelector('.shelf-card')) await new Promise(requestAnimationFrame);
        await new Promise((painted) => requestAnimationFrame(() => setTimeout(painted)));
        return performance.now() - start;
      }),
    );
    await page.waitForTimeout(500);
    await page.getByRole('navigation').getByRole('button').first().click();
    await page.locator('.station').first().waitFor();
  }
  return middle(times.slice(1));
}

/** From a change of a field until what follows from it is painted, two frames at least, ms; the middle one of those given. */
const changes = async (page: Page, field: string, values: readonly string[]): Promise<number> =>
  middle(
    await page.evaluate(
      async ({ field, values }) => {
        const element = document.querySelector<HTMLInputElement | HTMLSelectElement>(field)!;
        const times: number[] = [];
        for (const value of values) {
          await new Promise((rest) => setTimeout(rest, 500));
          await new Promise(requestAnimationFrame);
          const start = performance.now();
          element.value = value;
          element.dispatchEvent(
            new Event(element instanceof HTMLSelectElement ? 'change' : 'input', { bubbles: true }),
          );
          for (let frame = 0; frame < 2; frame++) await new Promise(requestAnimationFrame);
          await new Promise((painted) => setTimeout(painted));
          times.push(performance.now() - start);
        }
        return times;
      },
      { field, values },
    ),
  );

async function openLog(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Log', exact: true }).click();
  await page.locator('.log .map-station.is-heard').first().waitFor({ state: 'attached' });
  await page.locator('.log select[name=log-station]').scrollIntoViewIfNeeded();
  await page.locator('.log figure.plot svg').first().waitFor();
  await page.waitForTimeout(1000);
}

const WORDS = ['s', 'se', 'set 4', 'set 49', 'kept no. 15', 'zzz', ''];

const JOBS = {
  opening: async (page: Page) => opening(page),
  search: async (page: Page) => {
    await page.getByRole('button', { name: 'Shelf', exact: true }).click();
    await page.locator('.shelf-card').first().waitFor();
    return changes(page, '.shelf-search input', WORDS);
  },
  calendar: async (page: Page) => {
    await openLog(page);
    return changes(page, '.log select[name=log-station]', ['0', '1', '', '2', '']);
  },
  map: async (page: Page) => {
    await openLog(page);
    return changes(page, '.log select[name=log-light]', ['night', 'day', 'any', 'night', 'any']);
  },
  entry: async (page: Page) => {
    await openLog(page);
    await page.locator('.log-more summary').click();
    await page.waitForTimeout(1000);
    const times = await page.evaluate(async () => {
      const field = [...document.querySelectorAll<HTMLInputElement>('.log-more input')].at(-1)!;
      const times: number[] = [];
      for (const letter of 'every word') {
        const start = performance.now();
        field.value += letter;
        field.dispatchEvent(new Event('input', { bubbles: true }));
        await new Promise((painted) => requestAnimationFrame(() => setTimeout(painted)));
        times.push(performance.now() - start);
        await new Promise((rest) => setTimeout(rest, 100));
      }
      return times;
    });
    return middle(times);
  },
  task: async (page: Page) => {
    await watchLongTasks(page);
    await openLog(page);
    await page.locator('.log-stations button').first().click();
    await page.locator('.log-heard button').first().click();
    await page.locator('.log-write').click();
    await page.locator('.notice', { hasText: 'Written down' }).waitFor();
    await page.waitForTimeout(2000);
    return longestTaskSeen(page);
  },
} as const;

const onKept = (job: keyof typeof JOBS, sets: number, entries: number): Promise<number> =>
  onBuiltPage(async (page, url) => {
    await withKept(page, url, keptOf(sets, entries));
    return JOBS[job](page);
  });

const figure = (name: string, job: keyof typeof JOBS, atMost: number): Measurement[] => {
  let many: number | undefined;
  const measureMany = async () => {
    many ??= await onKept(job, SETS, ENTRIES);
    return many;
  };
  return [
    { name, unit: 'ms', measure: measureMany, goal: { atMost } },
    {
      name: `${name}, beside ${FEW.sets} sets and ${FEW.entries} entries`,
      unit: 'times as long',
      measure: async () => (await measureMany()) / (await onKept(job, FEW.sets, FEW.entries)),
    },
  ];
};

export const measurements: Measurement[] = [
  ...figure(`opening the shelf, ${SETS} sets`, 'opening', 300),
  ...figure(`a keystroke in the search, ${SETS} sets`, 'search', 50),
  ...figure(`another station in the calendar, ${ENTRIES} entries`, 'calendar', 50),
  ...figure(`day or night on the map, ${ENTRIES} entries`, 'map', 50),
  ...figure(`a keystroke in a new entry, ${ENTRIES} entries`, 'entry', 50),
  {
    name: `longest task while a log of ${ENTRIES} entries is opened and one written`,
    unit: 'ms',
    measure: () => onKept('task', SETS, ENTRIES),
    goal: { atMost: 50 },
  },
];
