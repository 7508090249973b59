import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { withPage } from '../support/browser.ts';

const COAST = readFileSync(new URL('../../examples/coast-by-night.json', import.meta.url));

/** The example on a coast, with its field's workbench open and the map drawn. */
async function openField(page: Page, text: Buffer | string = changed(() => {})): Promise<void> {
  await page.locator('.station').first().waitFor();
  await page
    .locator('#open-file')
    .setInputFiles({ name: 'coast.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await page.getByRole('tab', { name: 'Field' }).click();
  await page.locator('.place-table tbody td.number').first().waitFor();
}
const names = (page: Page) => page.locator('.place-table tbody th .link').allTextContents();
const row = (page: Page, name: string) =>
  page.locator('.place-table tbody tr').filter({ has: page.locator('th', { hasText: name }) });
/** The example by day, changed. */
const changed = (make: (set: ReturnType<typeof JSON.parse>) => void): string => {
  const set = JSON.parse(COAST.toString());
  delete set.place.listening;
  make(set);
  return JSON.stringify(set);
};

describe('the place on the page', () => {
  test('shows the map, the table and the path of a station', async () => {
    await withPage(async (page) => {
      await openField(page);
      await page.locator('.map-land').waitFor();
      await expect.poll(() => page.locator('.map-station').count()).toBe(12);
      const overSea = (await page.locator('.map-path.is-sea').first().getAttribute('d')) ?? '';
      expect(overSea.split('M').length - 1).toBeGreaterThan(8);
      expect(await row(page, 'Strait Wireless').textContent()).toMatch(/try this first.*140 km.*138° south-east/);
      await page.getByRole('heading', { name: 'Path from Strait Wireless' }).waitFor();
      await page.getByText('In words').last().click();
      await expect
        .poll(() => page.locator('.in-words[open] p').last().textContent())
        .toMatch(/mV\/m at Sildeholm, 140 km away, .*136 km of sea/);
    });
  });

  test('begins with the time the description says', async () => {
    await withPage(async (page) => {
      const summary = () => page.locator('.summary').textContent();
      const pressed = (name: string) => page.getByRole('button', { name, exact: true }).getAttribute('aria-pressed');
      await openField(page, COAST);
      await expect.poll(summary).toMatch(/^By night/);
      expect(await pressed('Night')).toBe('true');
      await page.getByRole('button', { name: 'Day', exact: true }).click();
      await expect.poll(summary).toMatch(/^\w+ of \w+ stations heard/);
      // Opened anew it begins again with its time; another begins with another.
      await openField(page, COAST);
      await expect.poll(summary).toMatch(/^By night/);
      await openField(
        page,
        changed((set) => {
          set.place.listening = { month: 12, hour: 21 };
        }),
      );
      await expect.poll(summary).toMatch(/^At 21:00 UTC/);
      await openField(page);
      await expect.poll(summary).toMatch(/^\w+ of \w+ stations heard/);
      expect(await pressed('Day')).toBe('true');
    });
  });

  test('the map marks as heard what the table says is heard, and nothing that another station masks', async () => {
    const masked = changed((set) => {
      const strongest = { ...set.place.stations[0], name: 'Echo of it' };
      set.place.stations.push(strongest);
    });
    await withPage(async (page) => {
      await openField(page, masked);
      for (const [time, summary] of [
        ['Night', /^By night/],
        ['Day', /^\w+ of \w+ stations heard/],
      ] as const) {
        await page.getByRole('button', { name: time, exact: true }).click();
        await expect.poll(() => page.locator('.summary').textContent()).toMatch(summary);
        const marks = () =>
          page.locator('.map-station').evaluateAll((all) =>
            Object.fromEntries(
              all.map((one) => {
                const [name, verdict] = one.querySelector('title')!.textContent!.split(': ');
                return [name, { isHeard: one.classList.contains('is-heard'), verdict }];
              }),
            ),
          );
        await expect.poll(async () => Object.keys(await marks()).length).toBe(13);
        const now = await marks();
        for (const [name, { isHeard, verdict }] of Object.entries(now))
          expect(isHeard, `${name}: ${verdict}`).toBe(/^(loud|comfortable|quiet|faint)$/.test(verdict));
        expect(now['Echo of it'].isHeard).toBe(false);
      }
    });
  });

  test('hears by night what is not there by day, and the dial says the same', async () => {
    await withPage(async (page) => {
      await openField(page);
      await expect.poll(() => row(page, 'Marshlight One').textContent()).toMatch(/not heard/);
      const anyTime = page.getByRole('slider', { name: 'Time of day, UTC' });
      expect(await anyTime.getAttribute('aria-valuetext')).toBe('any time by day');
      expect(Math.abs(Number(await anyTime.inputValue()) - 720)).toBeLessThan(120);
      await page.getByRole('button', { name: 'Night', exact: true }).click();
      await expect.poll(() => row(page, 'Marshlight One').textContent()).toMatch(/comfortable|quiet/);
      expect(await anyTime.getAttribute('aria-valuetext')).toBe('any time by night');
      await expect.poll(() => page.locator('.summary').textContent()).toMatch(/By night/);
      await page.getByRole('button', { name: 'Dusk' }).click();
      await expect.poll(() => page.locator('.time-of-day').textContent()).toMatch(/dusk where you are/);
      expect(await page.locator('.map-night').count()).toBe(1);
      const slider = page.getByRole('slider', { name: 'Time of day, UTC' });
      await slider.focus();
      await page.keyboard.press('Home');
      await expect.poll(() => slider.getAttribute('aria-valuetext')).toBe('00:00 UTC');
      await expect.poll(() => page.locator('.summary').textContent()).toMatch(/At 00:00 UTC/);
    });
  });

  test('the map moves and zooms from the keyboard, by wheel and by pointer, and stations on it can be chosen', async () => {
    await withPage(
      async (page) => {
        await openField(page);
        await page.locator('.map-land').waitFor();
        const map = page.getByRole('application');
        const ground = () => page.locator('.map-frame svg > g').first().getAttribute('transform');
        const start = await ground();
        await map.focus();
        await page.keyboard.press('ArrowLeft');
        const after = await ground();
        expect(after).not.toBe(start);
        await page.keyboard.press('+');
        expect(await ground()).not.toBe(after);
        const box = (await map.boundingBox())!;
        await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
        const beforeWheel = await ground();
        await page.mouse.wheel(0, 120);
        await expect.poll(ground).not.toBe(beforeWheel);
        const beforeDrag = await ground();
        await page.mouse.down();
        await page.mouse.move(box.x + box.width / 2 + 60, box.y + box.height / 2 + 30, { steps: 4 });
        await page.mouse.up();
        expect(await ground()).not.toBe(beforeDrag);
        await map.focus();
        await page.keyboard.press('0');
        await expect.poll(ground).toBe(start);
        // A mast is a dot without a size of its own to be clicked by name.
        const mast = page.locator('.map-station', { hasText: 'Meseta Nocturne' }).locator('.map-mast');
        const { x, y } = await mast.evaluate((dot) => dot.getBoundingClientRect());
        await page.mouse.click(x, y);
        await page.getByRole('heading', { name: 'Path from Meseta Nocturne' }).waitFor();
      },
      { height: 1400 },
    );
  });

  test('sorts by any heading', async () => {
    await withPage(async (page) => {
      await openField(page);
      const sort = (name: string) => page.locator('.place-table').getByRole('button', { name }).click();
      await sort('Distance');
      expect((await names(page))[0]).toBe('Kvernhus Local');
      await sort('Distance');
      expect((await names(page))[0]).toBe('Meseta Nocturne');
      expect(await page.getByRole('columnheader', { name: 'Distance' }).getAttribute('aria-sort')).toBe('descending');
      await sort('Frequency');
      expect((await names(page))[0]).toBe('Puszta Evening');
      await sort('Best for this set');
      expect((await names(page))[0]).toBe('Strait Wireless');
    });
  });

  test('takes stations from a pasted table after asking what its columns are, and gives them back as one', async () => {
    await withPage(async (page) => {
      await openField(page);
      await page.getByRole('button', { name: 'Paste or import a table…' }).click();
      const dialog = page.getByRole('dialog');
      await dialog
        .getByLabel('Table', { exact: true })
        .fill('Heron Radio;612;10;53.1 N;2.2 W\nOtter Sound;lots;5;52 N;1 W\nStoat Calling;810;2;51.3 N;0.4 E');
      await dialog.getByText('No station can be read from it yet.').waitFor();
      await dialog.getByLabel('What column 2 holds').selectOption('Frequency');
      await dialog.getByText(/^Row 1 is left out: Heron Radio: expected .*a power/).waitFor();
      const accessible = await new AxeBuilder({ page }).include('dialog').analyze();
      expect(accessible.violations.map((v) => `${v.id}: ${v.nodes[0].html}`)).toEqual([]);
      await dialog.getByLabel('What column 3 holds').selectOption('Power');
      await dialog.getByLabel('Unit of column 3').selectOption('kW');
      await dialog.getByText('2 stations read.').waitFor();
      expect(await dialog.locator('.sentences').textContent()).toMatch(
        /Row 2, column 2, is left out: "lots" is not read/,
      );
      await dialog.getByRole('button', { name: 'Add to the list' }).click();
      await expect.poll(() => names(page)).toHaveLength(14);
      await expect.poll(() => row(page, 'Heron Radio').textContent()).toMatch(/612 kHz/);
      const [saved] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name: 'Save as a table' }).click(),
      ]);
      expect(saved.suggestedFilename()).toBe('stations.csv');
      expect(readFileSync((await saved.path())!, 'utf8')).toMatch(/Stoat Calling,810,2,51\.3,0\.4/);
      await page.locator('.wordmark').click();
      await page.keyboard.press('Control+z');
      await expect.poll(() => names(page)).toHaveLength(12);
    });
  });

  test('a station being edited stays open when another comes to be heard best', async () => {
    await withPage(async (page) => {
      await openField(page);
      const legend = page.locator('#workbench fieldset.nested legend').first();
      const best = await legend.textContent();
      const power = page.getByRole('slider', { name: 'Power, slider' });
      const summary = await page.locator('.summary').textContent();
      await power.press('Home');
      await expect.poll(() => page.locator('.summary').textContent()).not.toBe(summary);
      expect(await legend.textContent()).toBe(best);
      expect(await power.inputValue()).toBe('0');
      await power.press('ArrowRight');
      expect(await power.inputValue()).toBe('1');
    });
  });

  test('adds, edits and removes; what is doubtful is said and leads to its station', async () => {
    await withPage(async (page) => {
      await openField(page);
      await page.getByRole('button', { name: 'Add a station' }).click();
      await expect.poll(() => names(page)).toHaveLength(13);
      expect(await page.evaluate(() => getSelection()?.toString())).toBe('New station');
      // How strong it is nobody has said: it is asked for, and the figures leave it out until then.
      await page
        .locator('.station', { hasText: 'New station' })
        .getByText(/left out: no field/)
        .waitFor();
      await page
        .locator('.behind')
        .getByText(/a field strength, or a power with a distance/)
        .waitFor();
      const name = page.locator('#workbench').getByRole('textbox', { name: 'Name', exact: true }).first();
      await name.fill('Stoat Calling');
      await name.press('Enter');
      await expect.poll(() => names(page)).toContain('Stoat Calling');
      const frequency = page.locator('#workbench').getByRole('textbox', { name: 'Frequency', exact: true });
      await frequency.fill('1000 kHz');
      await frequency.press('Enter');
      await page.getByRole('button', { name: /Stoat Calling: 1 MHz is off the 9 kHz raster/ }).waitFor();
      await page.getByRole('button', { name: 'Field strength', exact: true }).click();
      const strength = page.locator('[id="f-place.stations[12].fieldStrength"]');
      await strength.fill('5');
      await strength.press('Enter');
      await expect.poll(() => strength.inputValue()).toBe('5 mV/m');
      await page.locator('.behind').waitFor({ state: 'detached' });
      await expect.poll(() => page.getByText(/left out: no field/).count()).toBe(0);
      await page.getByRole('button', { name: 'Remove', exact: true }).click();
      await expect.poll(() => names(page)).toHaveLength(12);
    });
  });

  test('writes land and sea into a station and takes them from the map again', async () => {
    await withPage(async (page) => {
      await openField(page);
      await page.getByRole('button', { name: 'Write land and sea into the station, to edit' }).click();
      await page.getByRole('button', { name: 'Take land and sea from the map again' }).click();
      await page.getByRole('button', { name: 'Write land and sea into the station, to edit' }).waitFor();
    });
  });

  test('answers for odd places: at a pole, with the site at a transmitter, without a position, without stations', async () => {
    const odd = [
      changed((set) => {
        set.place.position = { latitude: '90°', longitude: '0°' };
      }),
      changed((set) => {
        set.place.position = set.place.stations[0].position;
      }),
      changed((set) => {
        set.place.position = { latitude: '-57.2°', longitude: '-170.4°' };
      }),
      changed((set) => {
        delete set.place.position;
        for (const s of set.place.stations) Object.assign(s, { distance: '100 km' });
      }),
    ];
    await withPage(async (page) => {
      for (const text of odd) {
        await openField(page, text);
        for (const time of ['Night', 'Day']) {
          await page.getByRole('button', { name: time, exact: true }).click();
          expect(await page.locator('#workbench').textContent()).not.toMatch(/NaN|undefined|Infinity/);
        }
      }
      await expect.poll(() => page.getByText('Enter a position of the place, below').count()).toBe(1);
    });
    await withPage(async (page) => {
      await page.locator('.station').first().waitFor();
      const none = changed((set) => {
        set.place.stations = [];
      });
      await page
        .locator('#open-file')
        .setInputFiles({ name: 'none.json', mimeType: 'application/json', buffer: Buffer.from(none) });
      await page.getByRole('tab', { name: 'Field' }).click();
      await page.getByText('No stations yet. Add stations').waitFor();
    });
  });

  test('200 stations far away do not hold the page up', async () => {
    const many = changed((set) => {
      set.place.stations = Array.from({ length: 200 }, (_, n) => ({
        name: `Station ${n + 1}`,
        frequency: `${531 + 9 * (n % 119)} kHz`,
        power: '100 kW',
        position: {
          latitude: `${58 + 8 * Math.cos((2 * Math.PI * n) / 200)}°`,
          longitude: `${8 + 16 * Math.sin((2 * Math.PI * n) / 200)}°`,
        },
      }));
    });
    await withPage(async (page) => {
      await openField(page, many);
      await page.locator('.map-land').waitFor();
      await expect.poll(() => page.locator('.map-station').count()).toBe(200);
      await page.getByRole('button', { name: 'Show all 200' }).click();
      expect(await names(page)).toHaveLength(200);
    });
  });

  test.each([
    { width: 1440, colorScheme: 'light' },
    { width: 390, colorScheme: 'dark' },
  ] as const)('can be used by everybody, $width px, $colorScheme', async (options) => {
    await withPage(async (page) => {
      await openField(page);
      await page.locator('.map-land').waitFor();
      await page.getByRole('button', { name: 'Dusk' }).click();
      await page.locator('.map-night').waitFor({ state: 'attached' });
      const { violations } = await new AxeBuilder({ page }).include('#workbench').analyze();
      expect(violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.html).join(' ')}`)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth > innerWidth)).toBe(false);
    }, options);
  });
});
