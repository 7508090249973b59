import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { AxeBuilder } from '@axe-core/playwright';
import { ALL_FORMATS, BufferSource, Input } from 'mediabunny';
import type { Download, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { packagedCoastFor } from '../../src/cli/coast.ts';
import { drawnFilm, type FilmedSet } from '../../src/cli/film-drawing.ts';
import { rasteriser } from '../../src/cli/rasteriser.ts';
import { readText, receiveRanged } from '../../src/engine/index.ts';
import { scenesOf } from '../../src/outputs/explain/index.ts';
import { passed, withPage } from '../support/browser.ts';
import { readGif } from '../support/read-gif.ts';

/** Opens the stage, and waits until the first waves are on it. */
async function openExplain(page: Page): Promise<void> {
  await page.locator('.station').first().waitFor();
  await page
    .getByRole('button', { name: 'Explain', exact: true })
    .or(page.getByRole('link', { name: 'Explain', exact: true }))
    .click();
  await page.locator('.explain-stage canvas').waitFor();
  await drawn(page);
}

/** Something other than paper is on the canvas. */
const drawn = (page: Page) =>
  page.waitForFunction(() => {
    const canvas = document.querySelector<HTMLCanvasElement>('.explain-stage canvas');
    const pixels = canvas?.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data;
    if (!pixels) return false;
    const colours = new Set<number>();
    for (let i = 0; i < pixels.length; i += 4 * 997)
      colours.add((pixels[i] << 16) | (pixels[i + 1] << 8) | pixels[i + 2]);
    return colours.size > 3;
  });

const openAll = (page: Page) =>
  page.evaluate(() => {
    for (const part of document.querySelectorAll<HTMLDetailsElement>('.explain-side > details')) part.open = true;
  });
const pick = (page: Page, title: RegExp) =>
  page.locator('.explain-scenes').getByRole('button', { name: title }).click();
const shown = async (page: Page): Promise<string> => (await page.locator('.explain-zoom output').textContent())!;
const caption = (page: Page) => page.locator('.explain-caption').textContent();
const choice = (page: Page, label: RegExp) => page.locator('.explain-take label', { hasText: label }).locator('select');

async function taken(page: Page, button: string): Promise<Download> {
  const waiting = page.waitForEvent('download');
  await page.getByRole('button', { name: button, exact: true }).click();
  return waiting;
}
/** An example as the page has it by day. */
function readExample(name: string): FilmedSet {
  const read = readText(readFileSync(inRoot('examples', `${name}.json`), 'utf8'));
  if (!read.ok) throw new Error(`${name} does not read`);
  const field = { time: 'day', coast: packagedCoastFor(read.set.place) } as const;
  return { set: read.set, written: read.written, reception: receiveRanged(read.set, field), field };
}

/** Brightness of a pixel, 0 to 255 (ITU-R BT.709). */
const lumaAt = (bytes: ArrayLike<number>, at: number): number =>
  0.2126 * bytes[at] + 0.7152 * bytes[at + 1] + 0.0722 * bytes[at + 2];

/** How alike two pictures are, 1 for the same. */
function correlation(a: readonly number[], b: readonly number[]): number {
  const mean = (v: readonly number[]) => v.reduce((sum, x) => sum + x, 0) / v.length;
  const [meanA, meanB] = [mean(a), mean(b)];
  let [ab, aa, bb] = [0, 0, 0];
  for (let i = 0; i < a.length; i++) {
    ab += (a[i] - meanA) * (b[i] - meanB);
    aa += (a[i] - meanA) ** 2;
    bb += (b[i] - meanB) ** 2;
  }
  return ab / Math.sqrt(aa * bb);
}

/** Brightness of so many lines of frames of a film of 30 frames a second, decoded by the browser. */
const lumaOf = (page: Page, address: string, at: readonly number[], from: number, rows: number): Promise<number[][]> =>
  page.evaluate(
    async ({ address, at, from, rows }) => {
      const film = document.createElement('video');
      film.muted = true;
      film.src = address;
      await new Promise((done, wrong) => {
        film.oncanplaythrough = done;
        film.onerror = wrong;
      });
      const canvas = new OffscreenCanvas(film.videoWidth, rows);
      const ctx = canvas.getContext('2d')!;
      const frames: number[][] = [];
      for (const frame of at) {
        // On a busy machine the frame before may be shown once more: the one with the time sought is waited for.
        const there = new Promise<void>((done) => {
          const look = (_: number, { mediaTime }: VideoFrameCallbackMetadata) => {
            if (Math.abs(mediaTime - frame / 30) < 0.5 / 30) done();
            else film.requestVideoFrameCallback(look);
          };
          film.requestVideoFrameCallback(look);
        });
        film.currentTime = (frame + 0.5) / 30;
        await there;
        ctx.drawImage(film, 0, from, film.videoWidth, rows, 0, 0, film.videoWidth, rows);
        const { data } = ctx.getImageData(0, 0, film.videoWidth, rows);
        frames.push(
          Array.from(
            { length: film.videoWidth * rows },
            (_, i) => 0.2126 * data[4 * i] + 0.7152 * data[4 * i + 1] + 0.0722 * data[4 * i + 2],
          ),
        );
      }
      return frames;
    },
    { address, at, from, rows },
  );

const bytesOf = async (download: Download) => readFile((await download.path())!);

describe('explaining on the page', () => {
  test('the wave window zooms by wheel, keys and slider, from seconds to tens of nanoseconds', async () => {
    await withPage(async (page) => {
      await openExplain(page);
      await expect.poll(() => shown(page)).toBe('2 ms');
      await page.locator('.explain-stage').focus();
      await page.keyboard.press('ArrowDown');
      await expect.poll(() => shown(page)).toBe('3 ms');
      for (let k = 0; k < 40; k++) await page.keyboard.press('ArrowUp');
      await expect.poll(() => shown(page)).toBe('50 ns');
      await page.getByRole('button', { name: 'From the start' }).click();
      const box = (await page.locator('.explain-stage canvas').boundingBox())!;
      await page.mouse.move(box.x + box.width / 2, box.y + 60);
      await page.mouse.wheel(0, 5000);
      await expect.poll(() => shown(page)).toBe('60 s');
      await page.getByRole('slider', { name: 'How much time is shown' }).fill('1000');
      await expect.poll(() => shown(page)).toBe('50 ns');
    });
  });

  test('a carrier is a solid bar from afar and single cycles close by', async () => {
    await withPage(async (page) => {
      await openExplain(page);
      await pick(page, /too fast to see/);
      await drawn(page);
      // Share of a line of pixels a little above the middle that is copper.
      const covered = () =>
        page.evaluate(() => {
          const canvas = document.querySelector<HTMLCanvasElement>('.explain-stage canvas')!;
          const { data, width } = canvas
            .getContext('2d')!
            .getImageData(0, Math.round(canvas.height * 0.4), canvas.width, 1);
          let dark = 0;
          for (let i = 0; i < width; i++) if (data[4 * i + 2] < 120) dark++;
          return dark / width;
        });
      await expect.poll(covered).toBeGreaterThan(0.99);
      await page.getByRole('button', { name: 'Slow zoom' }).click();
      await expect.poll(() => shown(page)).toBe('8 µs');
      await expect.poll(covered).toBeLessThan(0.2);
    });
  });

  test('a slow zoom asked for while its scene is being made runs to its end', async () => {
    await withPage(async (page) => {
      await openExplain(page);
      await pick(page, /too fast to see/);
      await page.getByRole('button', { name: 'Slow zoom' }).click();
      await expect.poll(() => page.locator('.explain-head h2').textContent()).toMatch(/too fast to see/);
      await expect.poll(() => shown(page)).toBe('8 µs');
    });
  });

  test('scenes are edited, ordered and kept with the set', async () => {
    await withPage(async (page) => {
      await openExplain(page);
      await pick(page, /The detector conducts in one direction/);
      await expect.poll(() => caption(page)).toMatch(/Galena.*1[34]\d mV of carrier/);
      await page.getByRole('button', { name: 'Edit', exact: true }).click();
      await page.locator('.explain-edit textarea').first().fill('My own words, {carrier}.');
      await page.locator('.explain-edit textarea').first().press('Tab');
      await expect.poll(() => caption(page)).toBe('My own words, 603 kHz.');
      await page.getByRole('button', { name: 'Earlier' }).click();
      const titles = await page.locator('.explain-scenes li').allTextContents();
      expect(titles[9]).toContain('The detector conducts in one direction');
      await page.getByRole('button', { name: 'Add this view' }).click();
      expect(await page.locator('.explain-scenes li').count()).toBe(titles.length + 1);
      await page.reload();
      await openExplain(page);
      await pick(page, /The detector conducts in one direction/);
      await expect.poll(() => caption(page)).toBe('My own words, 603 kHz.');
      await page.getByRole('button', { name: 'Back to the original story' }).click();
      expect(await page.locator('.explain-scenes li').count()).toBe(titles.length);
    });
  });

  test('a scene is put together on the page: rows, detectors, zoom and sound', async () => {
    await withPage(async (page) => {
      await openExplain(page);
      await pick(page, /After the detector/);
      await page.getByRole('button', { name: 'Edit', exact: true }).click();
      await page.getByRole('button', { name: 'Add a row' }).click();
      await page.getByLabel('Point of row 3').selectOption('detector');
      await page.getByLabel('Detector of row 3').selectOption('silicon');
      await page.getByLabel('Title of row 3').fill('A silicon diode instead');
      await page.getByLabel('Title of row 3').press('Tab');
      await page.getByLabel('Seconds it takes').fill('4');
      await page.getByLabel('Seconds it takes').press('Tab');
      await page.locator('.explain-edit').getByLabel('Speed of the sound').selectOption('slowed');
      await page.reload();
      await openExplain(page);
      await pick(page, /After the detector/);
      await page.locator('.in-words summary').click();
      await expect.poll(() => page.locator('.in-words').textContent()).toContain('A silicon diode instead');
      await page.getByRole('button', { name: 'Edit', exact: true }).click();
      expect(await page.getByLabel('Detector of row 3').inputValue()).toBe('silicon');
      expect(await page.getByLabel('Seconds it takes').inputValue()).toBe('4');
    });
  });

  test('turning things changes the picture and says what it is now', async () => {
    await withPage(async (page) => {
      await openExplain(page);
      await openAll(page);
      await page.getByRole('slider', { name: 'Depth of modulation' }).fill('400');
      expect(await page.locator('.explain-slide', { hasText: 'Depth' }).locator('output').textContent()).toBe(
        '150 %: over-modulation',
      );
      await page.locator('.explain-main').getByText('Modulation above 100 %').waitFor();
      await page.getByRole('button', { name: 'All as in the set' }).click();
      expect(await page.locator('.explain-slide', { hasText: 'Depth' }).locator('output').textContent()).toBe('60 %');
      await page
        .locator('.explain-controls label', { hasText: /^Detector/ })
        .locator('select')
        .selectOption('silicon');
      await drawn(page);
    });
  });

  test.each([
    [1280, 800],
    [900, 700],
    [390, 844],
  ])('at %i × %i the picture stays in sight while things are turned or words edited', async (width, height) => {
    await withPage(
      async (page) => {
        await openExplain(page);
        await openAll(page);
        /** Whether all of it lies in the window and nothing over it. */
        const isSeen = (selector: string) =>
          page.evaluate((found) => {
            const element = document.querySelector(found)!;
            const { left, top, right, bottom } = element.getBoundingClientRect();
            const free = [top + 2, bottom - 2].every((y) => {
              const there = document.elementFromPoint((left + right) / 2, y);
              return there !== null && (element.contains(there) || there.contains(element));
            });
            return top >= -1 && bottom <= innerHeight + 1 && free;
          }, selector);
        for (const name of ['Depth of modulation', 'Load capacitor']) {
          const slider = page.getByRole('slider', { name });
          await slider.scrollIntoViewIfNeeded();
          await slider.focus();
          await slider.press('ArrowRight');
          await expect.poll(() => isSeen('.explain-stage canvas')).toBe(true);
          await expect.poll(() => isSeen('.explain-slide input:focus')).toBe(true);
        }
        const tall = (await page.locator('.explain-stage canvas').boundingBox())!.height;
        if (width < 992) expect(tall / height).toBeLessThanOrEqual(0.4);
        await pick(page, /The detector conducts in one direction/);
        await page.getByRole('button', { name: 'Edit', exact: true }).click();
        await expect.poll(() => isSeen('.explain-edit input')).toBe(true);
        await expect.poll(() => isSeen('.explain-edit textarea')).toBe(true);
        await expect.poll(() => isSeen('.explain-stage canvas')).toBe(true);
      },
      { width, height },
    );
  });

  test('a moving picture and a covered wave are told in words', async () => {
    await withPage(async (page) => {
      await openExplain(page);
      await page.locator('.in-words summary').click();
      const words = page.locator('.in-words');
      for (const [scene, said] of [
        [/The aerial/, /change places at 603 kHz/],
        [/Tuning to one station/, /resonance curve moves along the band/],
        [/Resonance/, /pendulum/],
        [/One half only/, /the average follows the programme, from/],
        [/The detector conducts in one direction/, /A dot moves along the detector’s curve/],
        [/Charging and discharging/, /vessel/],
        [/A valve as detector/, /electrons/],
      ] as const) {
        await pick(page, scene);
        await expect.poll(() => words.textContent()).toMatch(said);
      }
    });
  });

  test('a picture of tuning taken away shows the station its caption tells of', async () => {
    await withPage(
      async (page) => {
        await openExplain(page);
        await pick(page, /Tuning to one station/);
        await openAll(page);
        await passed(page, 1500);
        const svg = String(await bytesOf(await taken(page, 'Drawing (SVG)')));
        expect(svg).toMatch(/>60\d(\.\d)? kHz, /);
      },
      { reducedMotion: false },
    );
  });

  test('a sound file becomes the programme; a broken one is refused with a reason', async () => {
    await withPage(async (page) => {
      await openExplain(page);
      await openAll(page);
      const rate = 8000;
      const wav = Buffer.alloc(44 + 2 * rate);
      wav.write('RIFF', 0);
      wav.writeUInt32LE(36 + 2 * rate, 4);
      wav.write('WAVEfmt ', 8);
      wav.writeUInt32LE(16, 16);
      wav.writeUInt16LE(1, 20);
      wav.writeUInt16LE(1, 22);
      wav.writeUInt32LE(rate, 24);
      wav.writeUInt32LE(2 * rate, 28);
      wav.writeUInt16LE(2, 32);
      wav.writeUInt16LE(16, 34);
      wav.write('data', 36);
      wav.writeUInt32LE(2 * rate, 40);
      for (let i = 0; i < rate; i++)
        wav.writeInt16LE(Math.round(9000 * Math.sin((2 * Math.PI * 300 * i) / rate)), 44 + 2 * i);
      const picker = page.getByLabel('A sound file as programme');
      await picker.setInputFiles({ name: 'hum.wav', mimeType: 'audio/wav', buffer: wav });
      const programme = page.locator('.explain-controls select').nth(1);
      await expect.poll(() => programme.inputValue()).toBe('recording');
      await drawn(page);
      // Seen from end to end; from there one movement leads to single cycles, and a mark runs through what is heard.
      await expect.poll(() => shown(page)).toBe('1 s');
      await page.getByRole('button', { name: 'Hear this point' }).click();
      await page.getByText('The programme.', { exact: true }).waitFor();
      await page.getByRole('button', { name: 'Stop the sound' }).click();
      await page.getByRole('button', { name: 'Slow zoom' }).click();
      await expect.poll(() => shown(page)).toMatch(/µs$/);
      // Kept with the set.
      await page.reload();
      await openExplain(page);
      await openAll(page);
      expect(await programme.locator('option').allTextContents()).toContain('hum.wav');
      await picker.setInputFiles({ name: 'x.wav', mimeType: 'audio/wav', buffer: Buffer.from('no sound at all') });
      await page.getByText('The browser cannot read this file as sound').waitFor();
      await picker.setInputFiles({ name: 'x.wav', mimeType: 'audio/wav', buffer: Buffer.alloc(0) });
      await page.getByText('The file is empty').waitFor();
    });
  });

  test('presenting: keys and clicker go on and back, Escape ends, the pen draws', async () => {
    await withPage(async (page) => {
      await openExplain(page);
      await pick(page, /too fast to see/);
      await page.getByRole('button', { name: 'Present', exact: true }).click();
      const dialog = page.getByRole('dialog', { name: 'Presenting' });
      await dialog.waitFor();
      const place = dialog.locator('.explain-bar [aria-live]');
      await expect.poll(() => place.textContent()).toBe('1 of 19');
      for (const key of ['ArrowRight', 'PageDown', ' ']) await page.keyboard.press(key);
      await expect.poll(() => place.textContent()).toBe('4 of 19');
      await page.keyboard.press('PageUp');
      await expect.poll(() => place.textContent()).toBe('3 of 19');
      await page.keyboard.press('d');
      await page.mouse.move(300, 300);
      await page.mouse.down();
      await page.mouse.move(500, 400);
      await page.mouse.up();
      const marked = () =>
        page.evaluate(() => {
          const canvas = document.querySelector<HTMLCanvasElement>('.explain-ink')!;
          return canvas
            .getContext('2d')!
            .getImageData(0, 0, canvas.width, canvas.height)
            .data.some((v) => v > 0);
        });
      await expect.poll(marked).toBe(true);
      await page.keyboard.press('c');
      await expect.poll(marked).toBe(false);
      await page.keyboard.press('b');
      await dialog.locator('.explain-blank').waitFor();
      await page.keyboard.press('ArrowRight');
      await dialog.locator('.explain-blank').waitFor({ state: 'detached' });
      expect(await place.textContent()).toBe('3 of 19');
      await page.keyboard.press('n');
      await dialog.locator('.explain-say').waitFor();
      await page.keyboard.press('Escape');
      await dialog.waitFor({ state: 'detached' });
    });
  });

  test('pictures, numbers, sound and captions to take away', async () => {
    await withPage(async (page) => {
      await openExplain(page);
      await pick(page, /The capacitor removes the carrier/);
      await openAll(page);
      const png = await bytesOf(await taken(page, 'Picture (PNG)'));
      expect(png.subarray(1, 4).toString()).toBe('PNG');
      expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([1920, 1080]);
      await choice(page, /^Size/).selectOption('4K');
      const large = await bytesOf(await taken(page, 'Picture (PNG)'));
      expect([large.readUInt32BE(16), large.readUInt32BE(20)]).toEqual([3840, 2160]);
      const svg = String(await bytesOf(await taken(page, 'Drawing (SVG)')));
      expect(svg).toContain('After the capacitor');
      expect(svg).not.toMatch(/NaN|var\(--/);
      const csv = String(await bytesOf(await taken(page, 'Numbers (CSV)')));
      expect(csv.split('\n')[0]).toContain('time (s)');
      const wav = await bytesOf(await taken(page, 'Sound (WAV)'));
      expect(wav.length).toBe(44 + 2 * 5 * 48_000);
      const vtt = String(await bytesOf(await taken(page, 'Captions (WebVTT)')));
      expect(vtt).toMatch(/^WEBVTT\n\n1\n00:00:00\.000 --> 00:00:12\.000\n1 nF holds the voltage between pulses/);
      // The whole story's captions, read by the browser itself.
      await choice(page, /^Scenes/).selectOption('all');
      const all = String(await bytesOf(await taken(page, 'Captions (WebVTT)')));
      const cues = await page.evaluate(async (words) => {
        const track = document.createElement('track');
        const film = document.createElement('video');
        film.append(track);
        document.body.append(film);
        track.track.mode = 'hidden';
        const read = new Promise((done, wrong) => {
          track.onload = done;
          track.onerror = wrong;
        });
        track.src = URL.createObjectURL(new Blob([words], { type: 'text/vtt' }));
        await read;
        const found = [...track.track.cues!].map((c) => [c.startTime, c.endTime, (c as VTTCue).text] as const);
        film.remove();
        return found;
      }, all);
      expect(cues).toHaveLength(19);
      for (const [i, [start, end, words]] of cues.entries()) {
        expect(start).toBeCloseTo(i === 0 ? 0 : cues[i - 1][1], 3);
        expect(end - start).toBeGreaterThan(5);
        expect(words).not.toMatch(/[{}]/);
      }
    });
  });

  test.each([
    ['webm', 'vp9'],
    ['mp4', 'avc'],
  ])('a film as %s: every frame and the sound are in the file', async (kind, codec) => {
    await withPage(async (page) => {
      await openExplain(page);
      await pick(page, /too slow to transmit/);
      await openAll(page);
      await choice(page, /^Size/).selectOption('720p');
      await choice(page, /^Format/).selectOption(kind);
      const waiting = page.waitForEvent('download');
      // Noted by the page itself, however soon the film is made.
      const progress = page.evaluate(
        () =>
          new Promise<string | null>((resolve) => {
            new MutationObserver(() => {
              const bar = document.querySelector('progress, [role=progressbar]');
              if (bar) resolve(bar.getAttribute('aria-label'));
            }).observe(document.body, { subtree: true, childList: true });
          }),
      );
      await page.getByRole('button', { name: 'Make the film' }).click();
      expect(await progress).toBe('Progress of the film');
      const bytes = await bytesOf(await waiting);
      const input = new Input({ formats: ALL_FORMATS, source: new BufferSource(bytes) });
      const video = (await input.getPrimaryVideoTrack())!;
      const audio = (await input.getPrimaryAudioTrack())!;
      expect([video.codec, video.displayWidth, video.displayHeight]).toEqual([codec, 1280, 720]);
      // Eight seconds at 30 frames.
      expect((await video.computePacketStats()).packetCount).toBe(240);
      const aac = await page.evaluate(async () => {
        const config = { codec: 'mp4a.40.2', sampleRate: 48_000, numberOfChannels: 1, bitrate: 96_000 };
        return (await AudioEncoder.isConfigSupported(config)).supported === true;
      });
      const sound = kind === 'mp4' && aac ? 'AAC' : 'Opus';
      expect(audio.codec).toBe(sound.toLowerCase());
      await page.getByText(`${kind === 'mp4' ? 'H.264' : 'VP9'} with ${sound} sound: plays in`).waitFor();
      expect(Math.abs((await audio.computeDuration()) - 8)).toBeLessThan(0.05);
      // Decoded by the browser: the programme's tone of 1 kHz, all through.
      const heard = await page.evaluate(async (base64) => {
        const data = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
        const sound = await new OfflineAudioContext(1, 48_000, 48_000).decodeAudioData(data.buffer);
        const v = sound.getChannelData(0).subarray(48_000, 7 * 48_000);
        let crossings = 0;
        for (let i = 1; i < v.length; i++) if (v[i - 1] < 0 && v[i] >= 0) crossings++;
        return { crossings, peak: Math.max(...v.subarray(0, 48_000)) };
      }, bytes.toString('base64'));
      expect(Math.abs(heard.crossings - 6000)).toBeLessThan(10);
      expect(heard.peak).toBeGreaterThan(0.1);
    });
  });

  test('a film of a moving picture on nothing: every frame, see-through, and it moves', async () => {
    await withPage(async (page) => {
      await openExplain(page);
      await pick(page, /The detector conducts in one direction/);
      await openAll(page);
      await choice(page, /^Size/).selectOption('720p');
      await choice(page, /^Background/).selectOption('transparent');
      const bytes = await bytesOf(await taken(page, 'Make the film'));
      const input = new Input({ formats: ALL_FORMATS, source: new BufferSource(bytes) });
      const video = (await input.getPrimaryVideoTrack())!;
      const { packetCount } = await video.computePacketStats();
      expect(Math.abs(packetCount / 30 - (await input.computeDuration()))).toBeLessThan(0.05);
      expect(packetCount).toBeGreaterThanOrEqual(240);
      expect(await video.canBeTransparent()).toBe(true);
      // Read back by the browser itself: the corner is clear, and one moment looks other than the next.
      const address = `data:video/webm;base64,${bytes.toString('base64')}`;
      const seen = await page.evaluate(async (source) => {
        const film = document.createElement('video');
        film.muted = true;
        film.src = source;
        await new Promise((done, wrong) => {
          film.onloadeddata = done;
          film.onerror = wrong;
        });
        const canvas = new OffscreenCanvas(film.videoWidth, film.videoHeight);
        const ctx = canvas.getContext('2d')!;
        const seek = async (seconds: number) => {
          const there = new Promise((done) => {
            film.onseeked = done;
          });
          film.currentTime = seconds;
          await there;
        };
        const drawn = () => {
          ctx.clearRect(0, 0, canvas.width, canvas.height);
          ctx.drawImage(film, 0, 0);
          return ctx.getImageData(0, 0, canvas.width, canvas.height).data;
        };
        const apart = (a: Uint8ClampedArray, b: Uint8ClampedArray) => {
          let count = 0;
          for (let i = 3; i < a.length; i += 4) if (Math.abs(a[i] - b[i]) > 100) count++;
          return count;
        };
        // The frame sought may come some time after the browser says it is there.
        const unlike = async (other: Uint8ClampedArray) => {
          let now = drawn();
          for (let tries = 0; tries < 100 && apart(now, other) <= 300; tries++) {
            await new Promise((resolve) => setTimeout(resolve, 100));
            now = drawn();
          }
          return now;
        };
        await seek(1);
        const one = await unlike(new Uint8ClampedArray(4 * canvas.width * canvas.height));
        await seek(1.7);
        const two = await unlike(one);
        const other = apart(one, two);
        return { width: film.videoWidth, corner: one[3], other };
      }, address);
      expect(seen.width).toBe(1280);
      expect(seen.corner).toBeLessThan(20);
      expect(seen.other).toBeGreaterThan(300);
    });
  });

  test.each(['webm', 'mp4'])(
    'letters and grid of a film as %s stay sharp, and its frames are those of the plan',
    async (kind) => {
      const set = readExample('medium-wave-galena');
      await withPage(async (page) => {
        await openExplain(page);
        // A zoom over three decades: every pixel of the scale moves.
        await pick(page, /The carrier is too fast to see/);
        await openAll(page);
        await choice(page, /^Size/).selectOption('720p');
        await choice(page, /^Background/).selectOption('light');
        await choice(page, /^Format/).selectOption(kind);
        const film = await bytesOf(await taken(page, 'Make the film'));
        const [at, from, rows] = [[15, 120, 170, 345], 520, 80];
        const shown = await lumaOf(page, `data:video/${kind};base64,${film.toString('base64')}`, at, from, rows);
        const track = await new Input({ formats: ALL_FORMATS, source: new BufferSource(film) }).getPrimaryVideoTrack();
        // Limited range: what players take a film for that says nothing.
        expect((await track!.getColorSpace()).fullRange).toBe(false);
        const form = { width: 1280, height: 720, rate: 30, dark: false, sound: true };
        const plan = drawnFilm(set, scenesOf(set.written).scenes.slice(0, 1), form);
        expect(plan.frames).toBe(360);
        const raster = await rasteriser();
        for (const [i, frame] of at.entries()) {
          const { bytes } = raster.pixels(plan.svg(frame));
          const drawn = Array.from({ length: 1280 * rows }, (_, k) => lumaAt(bytes, 4 * (1280 * from + k)));
          const name = `frame ${frame}`;
          // A fifteenth of the bitrate gives 0.985 to 0.998.
          expect(correlation(shown[i], drawn), name).toBeGreaterThan(0.998);
          // Strokes of digits keep their darkness, and paper between them stays clear.
          const darkest = (values: readonly number[]) =>
            [...values].sort((a, b) => a - b)[Math.floor(values.length / 400)];
          expect(darkest(shown[i]), name).toBeLessThan(darkest(drawn) + 30);
          expect(shown[i].filter((v, k) => drawn[k] > 254 && v < 235).length / drawn.length, name).toBeLessThan(0.01);
        }
      });
    },
  );

  test('an animated picture: silent, its size stated, as long as the scene; it can be called off', async () => {
    await withPage(async (page) => {
      await openExplain(page);
      await pick(page, /too slow to transmit/);
      await openAll(page);
      await choice(page, /^Background/).selectOption('transparent');
      await choice(page, /^Format/).selectOption('gif');
      await page.getByText('An animated picture is not transparent').waitFor();
      await choice(page, /^Background/).selectOption('light');
      await page.getByText('An animated picture is not transparent').waitFor({ state: 'detached' });
      await page.getByText('640 × 360, 12.5 frames a second, of this view alone, without sound').waitFor();
      await choice(page, /^Picture size/).selectOption({ label: '480 × 270' });
      const gif = readGif(await bytesOf(await taken(page, 'Make the picture')));
      await page.getByText(/^Saved .*\.gif, 480 × 270, [\d.]+ MB, without sound\.$/).waitFor();
      expect([gif.width, gif.height]).toEqual([480, 270]);
      expect(gif.frames.reduce((sum, { seconds }) => sum + seconds, 0)).toBeCloseTo(8, 6);
      expect([...gif.frames[0].data.subarray(0, 3)]).toEqual([255, 255, 255]);
      await pick(page, /A valve as detector/);
      await page.getByRole('button', { name: 'Make the picture' }).click();
      await page.getByRole('button', { name: 'Cancel' }).click();
      await page.getByText('The film was cancelled.').waitFor();
    });
  });

  test('a browser without an encoder for sound is said to make silent films, before and after', async () => {
    await withPage(
      async (page, url) => {
        await page.addInitScript(() => {
          Object.defineProperty(window, 'AudioEncoder', { value: undefined });
        });
        // The film's worker starts anew: it too must have none.
        await page.route(/film\.worker/, async (route) => {
          const response = await route.fetch();
          await route.fulfill({
            response,
            body: `Object.defineProperty(self, 'AudioEncoder', { value: undefined });\n${await response.text()}`,
          });
        });
        await page.goto(url);
        await openExplain(page);
        await pick(page, /too slow to transmit/);
        await openAll(page);
        await choice(page, /^Size/).selectOption('720p');
        await page.getByText('it will be silent').waitFor();
        const bytes = await bytesOf(await taken(page, 'Make the film'));
        await page.getByText(/^Saved .* without sound/).waitFor();
        const input = new Input({ formats: ALL_FORMATS, source: new BufferSource(bytes) });
        expect(await input.getPrimaryAudioTrack()).toBeNull();
      },
      { open: false },
    );
  });

  test('a film can be called off', async () => {
    await withPage(async (page) => {
      await openExplain(page);
      await openAll(page);
      await choice(page, /^Scenes/).selectOption('all');
      await page.getByRole('button', { name: 'Make the film' }).click();
      await page.getByRole('button', { name: 'Cancel' }).click();
      await page.getByText('The film was cancelled.').waitFor();
      expect(await page.getByRole('button', { name: 'Make the film' }).isEnabled()).toBe(true);
    });
  });

  test('hearing a point says what is heard there', async () => {
    await withPage(async (page) => {
      await openExplain(page);
      await page.getByRole('button', { name: 'Hear this point' }).click();
      await page.getByText('The programme.', { exact: true }).waitFor();
      await page.getByLabel('The point that is heard').selectOption('tuned');
      await page.getByText('Silence: the average is zero.').waitFor();
      await page.getByRole('button', { name: 'Stop the sound' }).click();
    });
  });

  test.each(['light', 'dark'] as const)('nothing for axe to find, %s', async (colorScheme) => {
    await withPage(
      async (page) => {
        await openExplain(page);
        await pick(page, /The detector conducts in one direction/);
        await openAll(page);
        const found = await new AxeBuilder({ page }).include('.explain').analyze();
        expect(found.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.html.slice(0, 120)).join(' | ')}`)).toEqual(
          [],
        );
      },
      { colorScheme },
    );
  });

  test('on a small screen nothing is wider than the screen, and a finger zooms', async () => {
    await withPage(
      async (page) => {
        await openExplain(page);
        await openAll(page);
        const wide = await page.evaluate(() => document.documentElement.scrollWidth);
        expect(wide).toBeLessThanOrEqual(390);
        const box = (await page.locator('.explain-stage canvas').boundingBox())!;
        const client = await page.context().newCDPSession(page);
        const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', apart: number) =>
          client.send('Input.dispatchTouchEvent', {
            type,
            touchPoints:
              type === 'touchEnd'
                ? []
                : [-1, 1].map((side, id) => ({ x: box.x + box.width / 2 + (side * apart) / 2, y: box.y + 100, id })),
          });
        await touch('touchStart', 40);
        for (let apart = 60; apart <= 200; apart += 20) await touch('touchMove', apart);
        await touch('touchEnd', 0);
        await expect.poll(() => shown(page)).toMatch(/µs$/);
      },
      { width: 390, height: 844, touch: true },
    );
  });
});
