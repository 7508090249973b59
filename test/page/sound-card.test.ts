import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { withPage } from '../support/browser.ts';

/** Phones as a resistor and an inductor, the output's resistor, the input's resistance and the known resistor, Ω and H. */
const BENCH = { R: 1500, L: 0.6, lead: 10_000, input: 22_000, known: 4700 };
type Connected = 'open' | 'known' | 'device' | 'coil';

/**
 * A bench in place of the sound card: what the page plays goes through the network to the left input and as it is to
 * the right one. The network is in trapezoidal steps; at f its inductor is one of L·2·rate·tan(πf/rate)/2πf.
 */
function bench({ R, L, lead, input, known }: typeof BENCH): void {
  const connect = AudioNode.prototype.connect as (...all: unknown[]) => AudioNode;
  const gains: Partial<Record<Connected, GainNode>> = {};
  let stream: MediaStream | undefined;
  let plug: ((source: AudioNode) => void) | undefined;
  const build = (context: AudioContext): void => {
    const out = new ChannelMergerNode(context, { numberOfInputs: 2 });
    const into = new MediaStreamAudioDestinationNode(context, { channelCount: 2 });
    connect.call(out, into);
    const { sampleRate } = context;
    const divider = (across: number) => across / (across + lead);
    const parallel = 1 / (1 / input + 1 / known);
    const Rth = (input * lead) / (input + lead);
    const reach = 2 * L * sampleRate;
    const phones = new IIRFilterNode(context, {
      feedforward: [R + reach, R - reach].map((x) => divider(input) * x),
      feedback: [R + Rth + reach, R + Rth - reach],
    });
    // Rings at 4 kHz with a Q of 20: pole radius e^(−πf/(Q·rate)).
    const radius = Math.exp((-Math.PI * 4000) / (20 * sampleRate));
    const coil = new IIRFilterNode(context, {
      feedforward: [0.3, -0.3],
      feedback: [1, -2 * radius * Math.cos((2 * Math.PI * 4000) / sampleRate), radius * radius],
    });
    const through: Record<Connected, AudioNode> = {
      open: new GainNode(context, { gain: divider(input) }),
      known: new GainNode(context, { gain: divider(parallel) }),
      device: phones,
      coil,
    };
    for (const [name, node] of Object.entries(through)) {
      const gain = new GainNode(context, { gain: name === 'open' ? 1 : 0 });
      connect.call(connect.call(node, gain), out, 0, 0);
      gains[name as Connected] = gain;
    }
    plug = (source) => {
      for (const node of Object.values(through)) connect.call(source, node);
      connect.call(source, out, 0, 1);
    };
    stream = into.stream;
  };
  AudioContext.prototype.createMediaStreamSource = function (this: AudioContext) {
    build(this);
    return new MediaStreamAudioSourceNode(this, { mediaStream: stream! });
  };
  AudioNode.prototype.connect = function (this: AudioNode, ...all: unknown[]) {
    if (all[0] instanceof AudioDestinationNode) plug?.(this);
    return connect.apply(this, all);
  } as typeof AudioNode.prototype.connect;
  Object.assign(window, {
    putOn: (name: Connected) => {
      for (const [one, gain] of Object.entries(gains)) gain.gain.value = one === name ? 1 : 0;
    },
  });
}

const putOn = (page: Page, name: Connected) =>
  page.evaluate((one) => (window as unknown as { putOn: (name: string) => void }).putOn(one), name);

async function openCard(page: Page, name: string): Promise<void> {
  await page.locator('.station').first().waitFor();
  await page.getByRole('button', { name: 'Measure', exact: true }).press('Enter');
  await page.getByLabel('sound card', { exact: true }).check();
  await page.locator('.measure-offered button', { hasText: name }).first().press('Enter');
  await page.getByRole('heading', { name, exact: true }).waitFor();
}

test('the sound card measures the impedance of phones through the page, and the readings can be used', async () => {
  await withPage(
    async (page, url) => {
      await page.addInitScript(bench, BENCH);
      await page.goto(url);
      await openCard(page, 'Phones by sound card');
      await page.getByLabel('Known resistor, Ω').fill(String(BENCH.known));
      const { violations } = await new AxeBuilder({ page }).include('.bench-card').analyze();
      expect(violations.map(({ id }) => id)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
      for (const [i, [state, button]] of (
        [
          ['open', 'Record with nothing connected'],
          ['known', 'Record with the known resistor'],
          ['device', 'Record with the phones or transformer'],
        ] as const
      ).entries()) {
        if (i > 0) await putOn(page, state);
        await page.getByRole('button', { name: button }).press('Enter');
        await expect.poll(() => page.locator('.card-states .measure-typed').count()).toBe(i + 1);
      }
      const rate = await page.evaluate(() => new AudioContext().sampleRate);
      const X = 2 * BENCH.L * rate * Math.tan((Math.PI * 1000) / rate);
      const said = page.locator('.card-status').first();
      await expect.poll(() => said.textContent()).toMatch(/Impedance at 1 kHz/);
      const ohms = /([\d.]+) kΩ/.exec((await said.textContent())!)!;
      expect(Number(ohms[1]) * 1000).toBeCloseTo(Math.hypot(BENCH.R, X), -1.5);
      await expect
        .poll(() => page.locator('.measure-result').textContent())
        .toMatch(/Impedance of the phones at 1 kHz4\.0\d kΩ.*Phase68\.\d/s);
      await page.locator('.card-sound .plot svg').waitFor();
      await page.getByRole('button', { name: 'Use it' }).press('Enter');
      await expect.poll(() => page.locator('.measure-kept').textContent()).toMatch(/^Phones by sound card/);
    },
    { open: false, width: 390, height: 844 },
  );
});

test('a ringing that the sound card records gives its frequency and Q, which is said not to be that at radio frequency', async () => {
  await withPage(
    async (page, url) => {
      await page.addInitScript(bench, BENCH);
      await page.goto(url);
      await openCard(page, 'Decay of an oscillation');
      const record = page.getByRole('button', { name: 'Record two seconds' });
      await record.press('Enter');
      await expect.poll(() => page.locator('#m-samples').inputValue()).not.toBe('');
      await putOn(page, 'coil');
      await record.press('Enter');
      await expect
        .poll(() => page.locator('.measure-result').textContent())
        .toMatch(
          /Frequency of the oscillation(4|3\.99|4\.00\d?) kHz.*Q at (4|3\.99|4\.00\d?) kHz(20|19\.9\d?|20\.\d).*At [34][.\d]* kHz Q is that of the copper/s,
        );
    },
    { open: false },
  );
});

test('without permission it is said what to do, and nothing is recorded', async () => {
  await withPage(
    async (page, url) => {
      await page.addInitScript(() => {
        navigator.mediaDevices.getUserMedia = async () => {
          throw new DOMException('no', 'NotAllowedError');
        };
      });
      await page.goto(url);
      await openCard(page, 'Decay of an oscillation');
      await page.getByRole('button', { name: 'Record two seconds' }).press('Enter');
      await expect
        .poll(() => page.locator('.card-status').first().textContent())
        .toMatch(/Recording was not permitted/);
      expect(await page.locator('#m-samples').inputValue()).toBe('');
    },
    { open: false },
  );
});

test('an input that is busy, or pulled out while it records, is said, and the next click records; what was typed stays', async () => {
  await withPage(
    async (page, url) => {
      await page.addInitScript(bench, BENCH);
      await page.addInitScript(() => {
        const open = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
        let isBusy = true;
        let stream: MediaStream | undefined;
        navigator.mediaDevices.getUserMedia = async (wanted) => {
          if (isBusy) {
            isBusy = false;
            throw new DOMException('in use', 'NotReadableError');
          }
          stream = await open(wanted);
          return stream;
        };
        const pullOut = () => stream?.getTracks()[0].dispatchEvent(new Event('ended'));
        Object.assign(window, { pullOut });
      });
      await page.goto(url);
      await openCard(page, 'Decay of an oscillation');
      await page.locator('#measure-note').fill('on the bench');
      const said = page.locator('.card-status').first();
      const record = page.getByRole('button', { name: 'Record two seconds' });
      await record.press('Enter');
      await expect.poll(() => said.textContent()).toMatch(/cannot be opened/);
      await record.press('Enter');
      await page.getByRole('button', { name: 'Stop', exact: true }).focus();
      await page.evaluate(() => (window as unknown as { pullOut: () => void }).pullOut());
      await expect.poll(() => said.textContent()).toMatch(/went away/);
      await expect.poll(() => said.evaluate((one) => one === document.activeElement)).toBe(true);
      await record.press('Enter');
      await expect.poll(() => page.locator('#m-samples').inputValue()).not.toBe('');
      expect(await page.locator('#measure-note').inputValue()).toBe('on the bench');
    },
    { open: false },
  );
});
