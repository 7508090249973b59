import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import demo from '../../examples/medium-wave-galena.json' with { type: 'json' };
import { writeWav } from '../../src/outputs/audio/wav.ts';
import { type PageOptions, withPage } from '../support/browser.ts';

const offered = (page: Page) => page.locator('.measure-offered button');
const result = (page: Page) => page.locator('.measure-result');

async function openMeasure(page: Page): Promise<void> {
  await page.locator('.station').first().waitFor();
  await page.getByRole('button', { name: 'Measure', exact: true }).press('Enter');
  await offered(page).first().waitFor();
}

async function openCard(page: Page, name: string): Promise<void> {
  await offered(page).filter({ hasText: name }).first().press('Enter');
  await page.getByRole('heading', { name, exact: true }).waitFor();
}

const measured = (use: (page: Page) => Promise<void>, options?: PageOptions) =>
  withPage(async (page) => {
    await openMeasure(page);
    await use(page);
  }, options);

/** Position on the dial of a set with these figures, F and H. */
const placeOf = (f: number, { L, stray, minimum, maximum }: Record<'L' | 'stray' | 'minimum' | 'maximum', number>) =>
  (1 / ((2 * Math.PI * f) ** 2 * L) - stray - minimum) / (maximum - minimum);

async function typeDial(page: Page, readings: readonly (readonly [position: number, kHz: number])[]): Promise<void> {
  for (const [i, [position, kHz]] of readings.entries()) {
    await page.getByLabel(`position (0 open, 1 meshed), reading ${i + 1}`).fill(String(position));
    await page.getByLabel(`frequency, reading ${i + 1}`).fill(String(kHz));
  }
}

test('by keyboard: an instrument allows more, a card opens, readings give figures that are used, undone and taken out', async () => {
  await measured(async (page) => {
    const before = await offered(page).count();
    await page.getByLabel('signal generator').press('Space');
    await page.getByLabel('multimeter').press('Space');
    await expect.poll(() => offered(page).count()).toBeGreaterThan(before + 3);
    await openCard(page, 'Dial readings');
    await expect.poll(() => page.getByLabel('fully meshed, pF').inputValue()).toBe('500 pF');
    const set = { L: 209e-6, stray: 20e-12, minimum: 15e-12, maximum: 500e-12 };
    await typeDial(
      page,
      [603, 693, 909, 1053, 1251, 1458].map((kHz) => [Number(placeOf(kHz * 1e3, set).toFixed(4)), kHz]),
    );
    await expect
      .poll(() => result(page).textContent())
      .toMatch(/Inductance of the coil20[89] µH .*% below the calculated value.*Strays/);
    await page.getByRole('button', { name: 'Use it' }).press('Enter');
    await expect.poll(() => page.locator('.measure-kept').textContent()).toMatch(/^Dial readings/);
    await expect.poll(() => result(page).textContent()).toMatch(/Calculated and measured.*Inductance of the coil/);
    await page.keyboard.press('Control+z');
    await expect.poll(() => page.locator('.measure-kept li').count()).toBe(0);
    await page.keyboard.press('Control+Shift+z');
    await page.getByRole('button', { name: /^Remove Dial readings/ }).press('Enter');
    await expect.poll(() => result(page).textContent()).toMatch(/Nothing of this set is measured yet/);
  });
});

/** Lets a file fall on the open card. */
const drop = (page: Page, name: string, text: string) =>
  page.locator('.bench-card').evaluate(
    (card, file) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([file.text], file.name));
      card.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
    },
    { name, text },
  );

/** With bare numbers, which are in SI units. */
const DIAL = {
  kind: 'dial',
  capacitor: { law: 'semicircular', minimum: 15e-12, maximum: 500e-12 },
  readings: [603, 693, 909, 1053, 1251, 1458].map((kHz) => ({
    position: Number(placeOf(kHz * 1e3, { L: 209e-6, stray: 20e-12, minimum: 15e-12, maximum: 500e-12 }).toFixed(4)),
    frequency: kHz * 1e3,
  })),
};

test('a dropped file fills its card and opens no set, each content is fitted once, and used readings are not kept twice', async () => {
  await measured(async (page) => {
    await page.evaluate(() => {
      const asked: string[] = [];
      const post = Worker.prototype.postMessage;
      Worker.prototype.postMessage = function (...message: unknown[]) {
        asked.push((message[0] as { about: string }).about);
        return (post as (...all: unknown[]) => void).apply(this, message);
      };
      Object.assign(window, { asked });
    });
    const fits = () =>
      page.evaluate(() => (window as unknown as { asked: string[] }).asked.filter((about) => about === 'fit').length);
    const kept = page.locator('.measure-kept li');
    const frequency = page.getByLabel('frequency, reading 1');
    const fileName = await page.locator('.file-name').textContent();
    await openCard(page, 'Dial readings');
    await drop(page, 'dial.json', JSON.stringify(DIAL));
    await expect.poll(() => frequency.inputValue()).toBe('603 kHz');
    expect(await page.locator('.readings-file [role=status]').textContent()).toBe('Taken from dial.json.');
    const use = page.getByRole('button', { name: 'Use it' });
    await use.waitFor();
    const before = await offered(page).count();
    await page.getByLabel('network analyser').check();
    await expect.poll(() => offered(page).count()).toBeGreaterThan(before);
    expect(await fits()).toBe(1);
    expect(await page.locator('.file-name').textContent()).toBe(fileName);
    expect(await page.getByRole('dialog').count()).toBe(0);

    await use.evaluate((button: HTMLButtonElement) => {
      button.click();
      button.click();
    });
    await expect.poll(() => kept.count()).toBe(1);
    await use.waitFor({ state: 'detached' });
    expect(await frequency.inputValue()).toBe('');
    await frequency.fill('603');
    await page.keyboard.press('Control+z');
    expect(await kept.count()).toBe(1);

    await drop(
      page,
      'two.json',
      JSON.stringify({
        format: 'faintwave-readings/1',
        measurements: [DIAL, { kind: 'value', of: 'tuning.minimum', value: 15e-12 }],
      }),
    );
    await page.getByRole('button', { name: 'Use all 2' }).click();
    await expect.poll(() => kept.count()).toBe(3);
    await page.locator('.measure-kept').evaluate((list) => {
      for (const button of [...list.querySelectorAll('button')].slice(0, 2)) button.click();
    });
    await expect.poll(() => kept.allTextContents()).toEqual([expect.stringMatching(/^Instrument reading/)]);

    await openCard(page, 'Coil by network analyser');
    await drop(page, 'coil.s1p', '# HZ S RI R 50\n1000000 0.9 0.1\n');
    await expect
      .poll(() => page.locator('.readings-file [role=status]').textContent())
      .toBe('coil.s1p was read, but not all of it can be used: the result says why.');
    expect(await page.locator('.bench-card').textContent()).not.toContain('Taken from coil.s1p');
  });
});

test('a table of an oscilloscope goes into the card that a recording went into before', async () => {
  await measured(async (page) => {
    await page.getByLabel('oscilloscope').check();
    await openCard(page, 'Decay of an oscillation');
    const [f0, q, rate] = [600e3, 60, 6e6];
    const volts = Array.from({ length: 1500 }, (_, i) => {
      const t = (i - 200) / rate;
      return t < 0 ? 0 : 0.8 * Math.exp((-Math.PI * f0 * t) / q) * Math.cos(2 * Math.PI * f0 * t);
    });
    const wav = writeWav([Float32Array.from(volts)], { rate, bits: 24 });
    await page.locator('.bench-card').evaluate(
      (card, bytes) => {
        const dataTransfer = new DataTransfer();
        dataTransfer.items.add(new File([new Uint8Array(bytes)], 'ring.wav'));
        card.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
      },
      [...wav],
    );
    const status = page.locator('.readings-file [role=status]');
    await expect.poll(() => status.textContent()).toBe('Taken from ring.wav.');
    await drop(page, 'ring.csv', `s,V\n${volts.map((v, i) => `${i / rate},${v}`).join('\n')}\n`);
    await expect.poll(() => status.textContent()).toBe('Taken from ring.csv.');
    await expect.poll(() => result(page).textContent()).toMatch(/Q of the coil at 600 kHz60/);
    await drop(page, 'broken.csv', 's,V\n0,1\n');
    await expect.poll(() => status.textContent()).toMatch(/^broken\.csv cannot be used: 1 problem/);
  });
});

test('a misread reading is pointed out with the station that stands there, and everything refused is named', async () => {
  await measured(async (page) => {
    await openCard(page, 'Dial readings');
    const set = { L: 209e-6, stray: 20e-12, minimum: 15e-12, maximum: 500e-12 };
    const [first, ...rest] = [603, 693, 909, 1053, 1251, 1458].map(
      (kHz) => [Number(placeOf(kHz * 1e3, set).toFixed(4)), kHz] as const,
    );
    // Where 603 kHz was thought to be, 909 kHz is.
    await typeDial(page, [[rest[1][0] + 0.004, first[1]], ...rest]);
    await expect
      .poll(() => result(page).textContent())
      .toMatch(
        /Reading 1 does not fit the others and is left out: this fits 90\d(\.\d)? kHz, The Lantern Service, not /,
      );
    await page.getByLabel('frequency, reading 2').fill('somewhere');
    await page.getByLabel('fully open, pF').fill('wide');
    await expect.poll(() => page.locator('.measure-problems li').count()).toBe(2);
    expect(await page.locator('.measure-problems').textContent()).toMatch(/minimum.*"wide".*frequency.*"somewhere"/s);
    expect(await page.getByLabel('frequency, reading 2').getAttribute('aria-invalid')).toBe('true');
    expect(await page.getByLabel('frequency, reading 2').inputValue()).toBe('somewhere');
  });
});

test('a wrong file is refused by its lines and nothing is changed; a right one fills the card', async () => {
  await measured(async (page) => {
    await openCard(page, 'Dial readings');
    const file = (name: string, text: string) =>
      page.locator('#measure-file').setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });
    const head = '# kind: resonance\ncapacitance [pF],frequency [kHz]\n';
    await file('wrong.csv', `${head}100,1061.9\n220,fast\n330,610\n470,many\n`);
    const said = page.locator('.readings-file [role=status]');
    await expect.poll(() => said.textContent()).toMatch(/wrong.csv cannot be used: 2 problems.*line 4.*line 6/s);
    expect(await page.getByRole('heading', { name: 'Dial readings', exact: true }).count()).toBe(1);
    await page.getByLabel('signal generator').check();
    await page.getByLabel('multimeter').check();
    await expect.poll(() => offered(page).filter({ hasText: 'Resonance with' }).count()).toBe(1);
    await file('right.csv', readFileSync('examples/readings/main-coil-resonance.csv', 'utf8'));
    await page.getByRole('heading', { name: 'Resonance with known capacitors' }).waitFor();
    await expect.poll(() => result(page).textContent()).toMatch(/Inductance of the coil[\d.]+ µH/);
  });
});

test('a set described wrongly on purpose is put right within its errors', async () => {
  const wrong = {
    ...demo,
    coils: [{ ...demo.coils[0], formerDiameter: '59.85 mm' }],
    tuning: { ...demo.tuning, stray: '40 pF' },
  };
  await withPage(async (page) => {
    await page.locator('.station').first().waitFor();
    await page
      .locator('#open-file')
      .setInputFiles({ name: 'wrong.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(wrong)) });
    await expect.poll(() => page.locator('.file-name').textContent()).toMatch(/wrong.json/);
    await openMeasure(page);
    await openCard(page, 'Dial readings');
    const truth = { L: 219e-6, stray: 20e-12, minimum: 15e-12, maximum: 500e-12 };
    await typeDial(
      page,
      [603, 693, 909, 1053, 1251, 1458].map((kHz, i) => [
        Number((placeOf(kHz * 1e3, truth) + 0.004 * Math.sin(3 * i)).toFixed(4)),
        kHz,
      ]),
    );
    await expect.poll(() => result(page).textContent()).toMatch(/with all readings/);
    const text = (await result(page).textContent())!;
    const [, low, high] = /Inductance of the coil.*?with all readings [\d.]+ µH \(([\d.]+)–([\d.]+)\)/.exec(text)!;
    expect(Number(low)).toBeLessThan(219);
    expect(Number(high)).toBeGreaterThan(219);
    const strays = /Strays.*?with all readings [\d.]+ pF \(([\d.]+)–([\d.]+)\)/.exec(text)!;
    expect(Number(strays[1])).toBeLessThan(20);
    expect(Number(strays[2])).toBeGreaterThan(20);
  });
});

test.each([
  ['desktop', 'light', {}],
  ['phone', 'dark', { width: 390, height: 844, touch: true }],
] as const)('no barrier found by axe, and nothing wider than the screen: %s, %s', async (_, colorScheme, size) => {
  await measured(
    async (page) => {
      for (const name of ['network analyser', 'multimeter', 'signal generator']) await page.getByLabel(name).check();
      await expect.poll(() => offered(page).filter({ hasText: 'analyser' }).count()).toBeGreaterThan(2);
      await openCard(page, 'Dial readings');
      await typeDial(page, [
        [0.62, 603],
        [0.24, 909],
        [0.05, 1458],
      ]);
      await expect.poll(() => result(page).textContent()).toMatch(/Use it/);
      for (const card of ['Dial readings', 'Coil by network analyser', 'Earth with two auxiliary earths']) {
        await openCard(page, card);
        const { violations } = await new AxeBuilder({ page }).analyze();
        expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html).join(' ')}`)).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
      }
    },
    { colorScheme, ...size },
  );
});

test('a recording of the set’s audio stands beside the predicted one; its level only with a calibration', async () => {
  const [rate, seconds] = [16_000, 4];
  let noise = 1;
  const samples = Float32Array.from({ length: rate * seconds }, (_, i) => {
    noise = (noise * 16_807) % 2_147_483_647;
    return 0.05 * Math.sin(i / 7) + 0.1 * (noise / 2_147_483_647 - 0.5);
  });
  const file = { name: 'set.wav', mimeType: 'audio/wav', buffer: Buffer.from(writeWav([samples], { rate })) };
  await measured(async (page) => {
    await page.getByLabel('sound card').press('Space');
    const audio = page.getByRole('region', { name: 'Audio of the set beside the predicted one' });
    await audio.waitFor();
    const choice = (await page.locator('.measure-choice').boundingBox())!;
    expect((await audio.boundingBox())!.x).toBeGreaterThan(choice.x + choice.width);
    await audio.getByLabel('Or a WAV file of the same').evaluate((input: HTMLInputElement) => {
      const chosen = new DataTransfer();
      chosen.items.add(new File([new Uint8Array(101e6)], 'hours.wav'));
      input.files = chosen.files;
      input.dispatchEvent(new Event('change', { bubbles: true }));
    });
    await expect.poll(() => audio.getByRole('status').textContent()).toMatch(/hours\.wav is larger than 100 MB/);
    await audio.getByLabel('Or a WAV file of the same').setInputFiles(file);
    await expect.poll(() => audio.getByRole('status').textContent()).toMatch(/only their shapes are compared.*most at/);
    await audio.getByLabel('Voltage of a sine').fill('500 mV');
    await audio.getByLabel('Or a WAV file of the same').setInputFiles(file);
    await expect.poll(() => audio.getByRole('status').textContent()).toMatch(/Recorded [\d.]+ dB (below|above)/);
    await expect.poll(() => audio.locator('.plot svg').count()).toBe(1);
    const { violations } = await new AxeBuilder({ page }).include('.card-sound').analyze();
    expect(violations.map(({ id }) => id)).toEqual([]);
    await audio.getByLabel('Voltage of a sine').fill('much');
    await audio.getByLabel('Or a WAV file of the same').setInputFiles(file);
    await expect.poll(() => audio.getByRole('status').textContent()).toMatch(/as a number with its unit/);
  });
});
