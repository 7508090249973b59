import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { inEachTheme, passed, settled, shown, withPage } from '../support/browser.ts';

/** The first answer is on screen. */
const answered = (page: Page) => page.locator('.station').first().waitFor();
/** Its figures are medians: they stay while nothing is changed. */
const hasMedians = (page: Page) => page.locator('.answer[aria-busy="false"]').waitFor();
const figureOf = async (page: Page, stage: string): Promise<string> =>
  (await page
    .getByRole('tab', { name: new RegExp(`^${stage}`) })
    .locator('.stage-figure')
    .textContent())!.trim();
const openStage = (page: Page, name: string) => page.getByRole('tab', { name: new RegExp(`^${name}`) }).click();

/** Type into a field as a person does and leave it. */
async function enter(page: Page, label: string, text: string): Promise<void> {
  const field = page.getByRole('textbox', { name: label, exact: true });
  await field.fill(text);
  await field.press('Enter');
}

async function drop(page: Page, name: string, text: string): Promise<void> {
  await page.locator('#open-file').setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
}

describe('the set on the page', () => {
  test('says within one look what would be heard on the demo set, and shows the whole path', async () => {
    await withPage(async (page) => {
      await answered(page);
      expect(await page.locator('.summary').textContent()).toMatch(/Saltmarsh Radio|Lantern|Corvale|Tollgate/);
      expect(await page.getByRole('tab').count()).toBe(7);
      expect(await figureOf(page, 'Field')).toMatch(/mV\/m/);
      expect(await figureOf(page, 'Ear')).toMatch(/dB SPL/);
    });
  });

  test('the power lost at each stage is a bar on one scale, full at 20 dB', async () => {
    await withPage(async (page) => {
      await hasMedians(page);
      const bars = await page.locator('.stage').evaluateAll((stages) =>
        stages.map((stage) => ({
          said: stage.querySelector('.stage-change')!.textContent!,
          drawn: stage.querySelector('.level-full')?.getAttribute('width'),
        })),
      );
      const losses = bars.map(({ said }) =>
        /no power loss/.test(said) ? 0 : /([\d.]+) dB power loss/.exec(said)?.[1],
      );
      expect(losses.filter((loss) => loss !== undefined).length).toBe(4);
      for (const [i, { drawn, said }] of bars.entries())
        if (losses[i] === undefined) {
          expect(drawn).toBeUndefined();
          expect(said).toMatch(/^90\s%: /);
        } else expect(Math.abs(Number(drawn) - 5 * Number(losses[i]))).toBeLessThan(2.6);
    });
  });

  test('a field changes the answer at once, and undo takes it back', async () => {
    await withPage(async (page) => {
      await hasMedians(page);
      await openStage(page, 'Aerial');
      // The first figures give way to medians, on a busy machine after a while.
      await page.getByText('First figures, of the set').waitFor({ state: 'detached' });
      const before = await figureOf(page, 'Aerial');
      await enter(page, 'Height', '16 m');
      await expect.poll(() => figureOf(page, 'Aerial')).not.toBe(before);
      await page.locator('.wordmark').click();
      await page.keyboard.press('Control+z');
      await expect.poll(() => figureOf(page, 'Aerial')).toBe(before);
      expect(await page.getByRole('textbox', { name: 'Height', exact: true }).inputValue()).toBe('8 m');
      await page.keyboard.press('Control+Shift+z');
      expect(await page.getByRole('textbox', { name: 'Height', exact: true }).inputValue()).toBe('16 m');
    });
  });

  test('a slider moves its figure in the unit as typed, and a whole drag is one step', async () => {
    await withPage(async (page) => {
      // Answers that come in move the slider under the mouse.
      await hasMedians(page);
      const slider = page.getByRole('slider', { name: 'Former diameter, slider' });
      await slider.evaluate((element) => element.scrollIntoView({ block: 'center' }));
      const box = (await slider.boundingBox())!;
      await page.mouse.move(box.x + box.width * 0.33, box.y + box.height / 2);
      await page.mouse.down();
      for (const at of [0.4, 0.5, 0.6, 0.7]) await page.mouse.move(box.x + box.width * at, box.y + box.height / 2);
      await page.mouse.up();
      const field = page.getByRole('textbox', { name: 'Former diameter', exact: true });
      expect(await field.inputValue()).toMatch(/^1\d\d(\.\d)? mm$/);
      await page.locator('.wordmark').click();
      await page.keyboard.press('Control+z');
      expect(await field.inputValue()).toBe('63 mm');
    });
  });

  test('what is wrong is said at the field, and the last good figures stay', async () => {
    await withPage(async (page) => {
      await hasMedians(page);
      const before = await figureOf(page, 'Ear');
      await enter(page, 'Meshed', '5 m');
      const field = page.getByRole('textbox', { name: 'Meshed', exact: true });
      expect(await field.getAttribute('aria-invalid')).toBe('true');
      // Nothing beside it moves.
      expect(await page.getByRole('slider', { name: 'Meshed, slider' }).isDisabled()).toBe(true);
      const ids = (await field.getAttribute('aria-describedby'))!.split(' ');
      const said = await Promise.all(ids.map((id) => page.locator(`[id="${id}"]`).textContent()));
      expect(said.join(' ')).toMatch(/Expected a capacitance.*"m" is the unit of a length/);
      expect(said.join(' ')).toContain('The figures use 500 pF, the last good value.');
      const used = page.getByText('The figures use the last good value where a field is refused.');
      await used.waitFor();
      expect(await figureOf(page, 'Ear')).toBe(before);
      // Everything else goes on.
      await openStage(page, 'Aerial');
      const aerial = await figureOf(page, 'Aerial');
      await enter(page, 'Height', '16 m');
      await expect.poll(() => figureOf(page, 'Aerial')).not.toBe(aerial);
      await openStage(page, 'Tuned circuit');
      expect(await field.inputValue()).toBe('5 m');
      expect(await field.getAttribute('aria-invalid')).toBe('true');
      await enter(page, 'Meshed', '365 pF');
      await used.waitFor({ state: 'detached' });
    });
  });

  test.each([
    [1440, 900],
    [1024, 768],
    [390, 844],
  ])(
    'the first edit of an example and the figures that follow leave the workbench where it is, at %i × %i',
    async (width, height) => {
      await withPage(
        async (page) => {
          await hasMedians(page);
          // At every frame from here on, from the headline, so that scrolling does not count.
          await page.evaluate(() => {
            const tops: number[] = [];
            Object.assign(window, { tops });
            const look = () => {
              const [bench, headline] = ['.workbench', '.summary'].map((one) => document.querySelector(one)!);
              tops.push(bench.getBoundingClientRect().top - headline.getBoundingClientRect().top);
              requestAnimationFrame(look);
            };
            look();
          });
          const field = page.getByRole('textbox', { name: 'Meshed', exact: true });
          await field.fill('400 pF');
          await field.press('Enter');
          await page.locator('.begin-own').waitFor({ state: 'detached' });
          await hasMedians(page);
          const tops = await page.evaluate(() => (window as unknown as { tops: number[] }).tops);
          expect(Math.max(...tops) - Math.min(...tops)).toBeLessThan(2);
        },
        { width, height },
      );
    },
  );

  test.each([
    [1440, 900],
    [1024, 768],
    [390, 844],
  ])('what is wrong is said without moving the field, and can be read whole, at %i × %i', async (width, height) => {
    await withPage(
      async (page) => {
        await hasMedians(page);
        const field = page.getByRole('textbox', { name: 'Meshed', exact: true });
        // No untouched example any more: what is offered with one goes.
        await field.fill('400 pF');
        await field.press('Enter');
        await page.getByText('This is an example.').waitFor({ state: 'detached' });
        // From the headline, so that scrolling does not count.
        const topOf = async (selector: string) => (await page.locator(selector).boundingBox())!.y;
        const down = async () => (await topOf('.workbench')) - (await topOf('.summary'));
        // First figures give way to medians, and the sentence with them: what counts is where it comes to rest.
        const rest = async () => {
          const seen: number[] = [];
          await expect
            .poll(
              async () => {
                await hasMedians(page);
                seen.push(await down());
                return new Set(seen.slice(-4)).size === 1 && seen.length >= 4;
              },
              { interval: 400 },
            )
            .toBe(true);
          return seen[seen.length - 1];
        };
        const before = await rest();
        const moved = async () => Math.abs((await rest()) - before);
        await field.fill('5 m');
        await field.press('Enter');
        const behind = page.locator('.behind');
        await behind.waitFor();
        expect(await moved()).toBeLessThan(2);
        await behind.getByRole('button', { name: 'What is wrong' }).press('Enter');
        const line = behind.locator('.behind-line');
        expect(await line.evaluate((p) => p.scrollWidth <= p.clientWidth)).toBe(true);
        expect(await line.textContent()).toMatch(/expected a capacitance.*the last good value\./);
        await behind.getByRole('button', { name: 'Less' }).press('Enter');
        await field.fill('500');
        await field.press('Enter');
        await behind.waitFor({ state: 'detached' });
        expect(await moved()).toBeLessThan(2);
      },
      { width, height },
    );
  });

  test('a stage that is pointed at keeps the colour of its figures', async () => {
    await withPage(async (page) => {
      await answered(page);
      const stage = page.getByRole('tab', { name: /^Detector/ });
      const colour = () => stage.locator('.stage-figure').evaluate((figure) => getComputedStyle(figure).color);
      const before = await colour();
      await stage.hover();
      expect(await colour()).toBe(before);
    });
  });

  test('another arrangement keeps what makes sense, says what it dropped, and can be undone', async () => {
    await withPage(async (page) => {
      await answered(page);
      await page.getByLabel('Arrangement', { exact: true }).selectOption('direct');
      await page.getByText('No longer used: Aerial tap 11.').waitFor();
      expect(await page.getByRole('textbox', { name: 'Detector tap', exact: true }).inputValue()).toBe('18');
      await page.locator('.notice').getByRole('button', { name: 'Undo' }).click();
      expect(await page.getByLabel('Arrangement', { exact: true }).inputValue()).toBe('tapped');
    });
  });

  test('an optional field stays while it is emptied and typed anew, and is left out on leaving it empty', async () => {
    await withPage(async (page) => {
      await answered(page);
      const tap = page.getByRole('textbox', { name: 'Detector tap', exact: true });
      await tap.focus();
      await page.keyboard.press('Control+a');
      await page.keyboard.press('Delete');
      // Longer than the pause after which what is typed is taken.
      await passed(page, 1000);
      await page.keyboard.type('15');
      expect(await tap.inputValue()).toBe('15');
      await page.keyboard.press('Control+a');
      await page.keyboard.press('Delete');
      await page.keyboard.press('Enter');
      await tap.waitFor({ state: 'detached' });
      const add = page.getByRole('button', { name: 'Detector tap', exact: true });
      await expect.poll(() => add.evaluate((button) => button === document.activeElement)).toBe(true);
    });
  });

  test('a notice offers to undo what it tells of, and goes when something else is changed', async () => {
    await withPage(async (page) => {
      await answered(page);
      await openStage(page, 'Aerial');
      await page.getByLabel('Kind of aerial').selectOption('vertical');
      const told = page.getByText(/^No longer used: /);
      await told.waitFor();
      await enter(page, 'Height', '12 m');
      await told.waitFor({ state: 'detached' });
      expect(await page.getByRole('textbox', { name: 'Height', exact: true }).inputValue()).toBe('12 m');
    });
  });

  test('the Q of a coil is at the frequency of the station in focus', async () => {
    await withPage(async (page) => {
      await answered(page);
      const coil = page.getByRole('region', { name: 'Coil', exact: true });
      for (const kHz of [909, 1251, 603]) {
        await page.locator('.station', { hasText: `${kHz} kHz` }).click();
        await coil.getByText(`Q at ${kHz} kHz`, { exact: false }).waitFor();
      }
    });
  });

  test('every arrangement and every kind of part gives an answer or says why not', async () => {
    await withPage(async (page) => {
      await answered(page);
      for (const [stage, label] of [
        ['Tuned circuit', 'Arrangement'],
        ['Tuned circuit', 'Shape'],
        ['Tuned circuit', 'Kind of capacitor'],
        ['Aerial', 'Kind of aerial'],
        ['Aerial', 'Kind of earth'],
        ['Detector', 'Kind of detector'],
        ['Phones', 'Kind of load'],
      ]) {
        await openStage(page, stage);
        const select = page.getByLabel(label, { exact: true }).first();
        const first = await select.inputValue();
        for (const kind of await select
          .locator('option')
          .evaluateAll((all) => all.map((o) => (o as HTMLOptionElement).value))) {
          await select.selectOption(kind);
          expect(await select.inputValue(), label).toBe(kind);
          await shown(page);
          expect(await page.locator('.behind').allTextContents(), `${label}: ${kind}`).toEqual([]);
        }
        await select.selectOption(first);
      }
      await answered(page);
    });
  });
});

describe('files and keeping', () => {
  test('an example opens, and what was there before comes back', async () => {
    await withPage(async (page) => {
      await answered(page);
      await page.getByRole('button', { name: 'Open', exact: true }).click();
      await page.getByRole('button', { name: 'Long-wave set with a foil capacitor' }).click();
      await page.locator('.station', { hasText: 'Harbour Light Long Wave' }).first().waitFor();
      expect(await page.getByLabel('Name of the set').inputValue()).toBe('Long-wave set with a foil capacitor');
      await page.getByRole('button', { name: 'Back to what I had' }).click();
      await page.locator('.station', { hasText: 'Tollgate Community' }).first().waitFor();
    });
  });

  test('work survives closing the page', async () => {
    await withPage(async (page) => {
      await answered(page);
      await enter(page, 'Turns', '60');
      await page.reload();
      await answered(page);
      expect(await page.getByRole('textbox', { name: 'Turns', exact: true }).inputValue()).toBe('60');
    });
  });

  test('what cannot be read from last time is put aside, not written over', async () => {
    await withPage(async (page) => {
      await answered(page);
      await page.evaluate(() => localStorage.setItem('faintwave.set', '{"written": {"format": "fain'));
      await page.reload();
      await answered(page);
      await page.getByText('It has been put aside, not deleted.').waitFor();
      await enter(page, 'Turns', '60');
      const kept = (key: string) => page.evaluate((name) => localStorage.getItem(name), key);
      await expect.poll(() => kept('faintwave.document.first')).toContain('60');
      expect(await kept('faintwave.document.first.aside')).toBe('{"written": {"format": "fain');
    });
  });

  test('a bad file shows every problem and leaves the work untouched', async () => {
    await withPage(async (page) => {
      await answered(page);
      await enter(page, 'Turns', '61');
      await drop(
        page,
        'bad.json',
        '{"format": "faintwave-set/1", "name": "", "coils": [{"shape": "solenoid", "turns": -3}]}',
      );
      const dialog = page.getByRole('dialog', { name: '“bad.json” cannot be opened as it is' });
      await dialog.waitFor();
      expect(await dialog.locator('tbody tr').count()).toBeGreaterThan(5);
      expect(await dialog.textContent()).toContain('coils[0].turns');
      expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
      await page.keyboard.press('Escape');
      await drop(page, 'cut.json', '{"format": "faintwave-set/1", "na');
      await page.getByRole('dialog').getByText('cut short').waitFor();
      await page.getByRole('button', { name: 'Close' }).click();
      await drop(page, 'junk.json', 'x'.repeat(10_000_000));
      await page.getByRole('dialog').getByText('at most 2 MB').waitFor();
      await page.keyboard.press('Escape');
      expect(await page.getByRole('textbox', { name: 'Turns', exact: true }).inputValue()).toBe('61');
    });
  });

  test('script in a name is inert text everywhere', async () => {
    await withPage(async (page) => {
      await answered(page);
      await openStage(page, 'Field');
      const evil = '<img src=x onerror="window.hit=1"><script>window.hit=1</script>';
      await enter(page, 'Name', evil).catch(() => undefined);
      await page.locator('[id="f-place.stations[0].name"]').fill(evil.slice(0, 78));
      await page.locator('[id="f-place.stations[0].name"]').press('Enter');
      await page.locator('.station', { hasText: '<img src=x' }).first().waitFor();
      await openStage(page, 'Tuned circuit');
      await page.locator('.plot svg').first().waitFor();
      await settled(page);
      expect(await page.evaluate(() => (window as { hit?: number }).hit)).toBeUndefined();
      expect(await page.locator('img, script:not([src])').count()).toBe(0);
    });
  });

  test('what was saved with a refused field opens again with it, marked', async () => {
    await withPage(async (page) => {
      await answered(page);
      await page.evaluate(() => Object.assign(window, { showSaveFilePicker: undefined }));
      await enter(page, 'Meshed', '5 m');
      const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Control+s')]);
      const saved = await (await import('node:fs/promises')).readFile((await download.path())!, 'utf8');
      await enter(page, 'Meshed', '365 pF');
      await drop(page, 'again.json', saved);
      const field = page.getByRole('textbox', { name: 'Meshed', exact: true });
      await expect.poll(() => field.inputValue()).toBe('5 m');
      expect(await field.getAttribute('aria-invalid')).toBe('true');
      await page.getByText('1 field could not be read and is marked.').waitFor();
      expect(await page.getByRole('dialog').count()).toBe(0);
    });
  });

  test('a field takes what people type: a bare number has the unit shown, a tap a share of its turns', async () => {
    await withPage(async (page) => {
      await answered(page);
      const shows = async (label: string, typed: string, stored: string) => {
        await enter(page, label, typed);
        const field = page.getByRole('textbox', { name: label, exact: true });
        await expect.poll(() => field.inputValue(), { message: typed }).toBe(stored);
        expect(await field.getAttribute('aria-invalid'), typed).toBeNull();
      };
      await shows('Former diameter', '75', '75 mm');
      await shows('Former diameter', '80 MM', '80 MM');
      await shows('Wire size', '0.4', '0.4 mm');
      await shows('Wire size', '#26', '#26');
      await shows('Meshed', '365', '365 pF');
      await shows('Meshed', '2x365 pF', '2 × 365 pF');
      const turns = Number(await page.getByRole('textbox', { name: 'Turns', exact: true }).inputValue());
      await shows('Detector tap', '50 %', String(turns / 2));
      await openStage(page, 'Field');
      for (const [id, typed] of [
        ['f-place.position.latitude', '51°12′N'],
        ['f-place.position.longitude', '4.5 W'],
      ]) {
        const field = page.locator(`[id="${id}"]`);
        await field.fill(typed);
        await field.press('Enter');
        await expect.poll(() => field.inputValue()).toBe(typed);
        expect(await field.getAttribute('aria-invalid'), typed).toBeNull();
      }
    });
  });

  test('the pointer goes to the end nearest to a station that the dial does not reach', async () => {
    await withPage(async (page) => {
      await answered(page);
      await page.evaluate(() => Object.assign(window, { showSaveFilePicker: undefined }));
      const set = JSON.parse(await demo(page));
      set.place.stations[0].frequency = '200 kHz';
      set.place.stations[1].frequency = '1990 kHz';
      await drop(page, 'beyond.json', JSON.stringify(set));
      const dial = page.getByRole('slider', { name: 'Pointer of the dial' });
      for (const [name, end] of [
        [set.place.stations[0].name, 'aria-valuemin'],
        [set.place.stations[1].name, 'aria-valuemax'],
      ]) {
        await page.locator('.station', { hasText: name }).first().click();
        await expect
          .poll(async () => Number(await dial.getAttribute('aria-valuenow')) - Number(await dial.getAttribute(end)))
          .toBe(0);
      }
    });
  });

  test('while the dial is turned, what it names and what the path is of are one station', async () => {
    await withPage(async (page) => {
      await hasMedians(page);
      await page.evaluate(() => Object.assign(window, { showSaveFilePicker: undefined }));
      const dial = page.getByRole('slider', { name: 'Pointer of the dial' });
      const path = page.getByRole('tablist');
      const names: string[] = JSON.parse(await demo(page)).place.stations.map(({ name }: { name: string }) => name);
      await dial.focus();
      for (let step = 0; step < 9; step++) {
        for (let i = 0; i < 7; i++) await page.keyboard.press('PageUp');
        const there = (await dial.getAttribute('aria-valuetext'))!;
        const named = names.filter((name) => there.includes(name));
        if (named.length === 0) continue;
        expect(await path.getAttribute('aria-label'), there).toContain(named[0]);
      }
    });
  });

  test('turns for a band stand where the coil is edited, and are used and taken back', async () => {
    await withPage(async (page) => {
      await answered(page);
      const turns = page.locator('[id="f-coils[0].turns"]');
      const before = await turns.inputValue();
      await page.getByText('Turns for a band, or for another band').click();
      await page.getByLabel('Band', { exact: true }).selectOption('Long wave');
      await page.getByText(/^From medium wave to long wave the coil needs .* turns instead of/).waitFor();
      await page.getByRole('textbox', { name: 'From' }).fill('150');
      await page.getByRole('textbox', { name: 'To', exact: true }).fill('280');
      const told = page.getByText(/^For 150–280\skHz the coil needs .* turns instead of/);
      await told.waitFor();
      const wanted = /: ([\d.]+) turns/.exec((await told.textContent())!)![1];
      await page.getByRole('button', { name: 'Use it', exact: true }).click();
      await expect.poll(() => turns.inputValue()).toBe(wanted);
      await page.getByText('Wound for 150–280\u00a0kHz.').waitFor();
      await page.locator('.trial').getByRole('button', { name: 'Undo' }).click();
      await expect.poll(() => turns.inputValue()).toBe(before);
    });
  });

  test('what is saved is what is on the page, unknown keys and all', async () => {
    await withPage(async (page) => {
      await answered(page);
      // Without the picker a browser downloads, which a test can look at.
      await page.evaluate(() => Object.assign(window, { showSaveFilePicker: undefined }));
      const text = JSON.stringify({ ...JSON.parse(await demo(page)), drawer: 3 });
      await drop(page, 'mine.json', text);
      await page.getByText('drawer is not known here').first().waitFor();
      const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Control+s')]);
      expect(download.suggestedFilename()).toBe('mine.json');
      const saved = JSON.parse(await (await import('node:fs/promises')).readFile((await download.path())!, 'utf8'));
      expect(saved).toEqual(JSON.parse(text));
    });
  });

  test('another tab’s change is followed', async () => {
    await withPage(async (page, url) => {
      await answered(page);
      const other = await page.context().newPage();
      await other.goto(url);
      await answered(other);
      await enter(other, 'Turns', '55');
      const turns = page.getByRole('textbox', { name: 'Turns', exact: true });
      await expect.poll(() => turns.inputValue()).toBe('55');
    });
  });
});

/** The text of the demo, as the page writes it. */
async function demo(page: Page): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save' }).click(),
  ]);
  return (await import('node:fs/promises')).readFile((await download.path())!, 'utf8');
}

describe('the dial', () => {
  test('is turned from the keyboard, with words for where it stands', async () => {
    await withPage(async (page) => {
      await hasMedians(page);
      const dial = page.getByRole('slider', { name: 'Pointer of the dial' });
      await dial.focus();
      const words = () => dial.getAttribute('aria-valuetext');
      await page.keyboard.press('Home');
      await page.keyboard.press('n');
      const first = await words();
      expect(first).toMatch(/^\d+ kHz, .+, (loud|comfortable|quiet|faint|not heard|masked|out of range)$/);
      await page.keyboard.press('n');
      expect(await words()).not.toBe(first);
      await page.keyboard.press('p');
      expect(await words()).toBe(first);
      const kHz = Number(await dial.getAttribute('aria-valuenow'));
      await page.keyboard.press('ArrowRight');
      expect(await words()).toMatch(new RegExp(`^${kHz + 1} kHz, 1 kHz above `));
      await page.keyboard.press('ArrowLeft');
      expect(await words()).toBe(first);
      await page.keyboard.press('PageUp');
      expect(Number(await dial.getAttribute('aria-valuenow'))).toBe((Math.floor(kHz / 9) + 1) * 9);
    });
  });

  test('drags, and catches on a station', async () => {
    await withPage(async (page) => {
      await answered(page);
      const dial = page.getByRole('slider', { name: 'Pointer of the dial' });
      const box = (await dial.boundingBox())!;
      await page.mouse.move(box.x + 30, box.y + 40);
      await page.mouse.down();
      await page.mouse.move(box.x + 40, box.y + 40);
      expect(await dial.getAttribute('aria-valuetext')).toMatch(/between stations|above|below/);
      let caught = false;
      for (let x = 40; x < box.width - 30 && !caught; x += 6) {
        await page.mouse.move(box.x + x, box.y + 40);
        caught = !/between|above|below/.test((await dial.getAttribute('aria-valuetext'))!);
      }
      await page.mouse.up();
      expect(caught).toBe(true);
    });
  });

  test('night is another answer than day', async () => {
    await withPage(async (page) => {
      await hasMedians(page);
      await page.getByRole('radio', { name: 'Night' }).check({ force: true });
      await page.getByText(/^By night \w+ of \w+ stations heard; best /).waitFor();
    });
  });
});

describe('for everybody', () => {
  for (const [name, options] of [
    ['wide', { width: 1440, height: 900 }],
    ['narrow', { width: 360, height: 740, touch: true }],
  ] as const) {
    test(`axe finds nothing on any workbench, ${name}, light and dark`, async () => {
      await withPage(async (page) => {
        await answered(page);
        for (const tab of await page.getByRole('tab').all()) {
          await tab.click();
          await settled(page);
          await inEachTheme(page, async (theme) => {
            const { violations } = await new AxeBuilder({ page }).analyze();
            expect(
              violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html).join(' | ')}`),
              theme,
            ).toEqual([]);
            const overflow = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
            expect(overflow, 'nothing sticks out at the side').toBeLessThanOrEqual(0);
          });
        }
      }, options);
    });
  }
});
