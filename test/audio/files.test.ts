import fc from 'fast-check';
import { BufferSource, Input, WAVE } from 'mediabunny';
import { describe, expect, it } from 'vitest';
import { bandAt, openBandRecording, readWav, writeWav } from '../../src/outputs/audio/index.ts';
import { centreFromName } from '../../src/outputs/audio/iq.ts';
import { Limiter } from '../../src/outputs/audio/limiter.ts';
import { BandNoise } from '../../src/outputs/audio/noise.ts';
import { resample } from '../../src/outputs/audio/resample.ts';
import { fromBytes, readWavHeader } from '../../src/outputs/audio/wav.ts';

const tone = (n: number, cycles: number, size = 0.5) =>
  Float32Array.from({ length: n }, (_, i) => size * Math.sin((2 * Math.PI * cycles * i) / n));

describe('WAV files', () => {
  const kinds = [
    [{ bits: 8 }, 1 / 128],
    [{ bits: 16 }, 1 / 32768],
    [{ bits: 24 }, 1 / 8388608],
    [{ bits: 32 }, 1e-7],
    [{ float: true }, 0],
  ] as const;
  it.each(kinds)('%o: what is written is read again within half a step', async (kind, step) => {
    const channels = [tone(999, 7), tone(999, 31, 0.99)];
    const read = await readWav(writeWav(channels, { rate: 11_127, ...kind }));
    expect(read.rate).toBe(11_127);
    expect(read.channels.length).toBe(2);
    for (let c = 0; c < 2; c++)
      for (let i = 0; i < 999; i++)
        expect(Math.abs(read.channels[c][i] - channels[c][i])).toBeLessThanOrEqual(0.5001 * step + 1e-9);
  });

  it('what is wrong with a file is said in words', async () => {
    const good = writeWav([tone(100, 3)], { rate: 8000 });
    const changed = (at: number, ...values: number[]) => {
      const bytes = good.slice();
      bytes.set(values, at);
      return bytes;
    };
    await expect(readWav(new Uint8Array(0))).rejects.toThrow('The file is empty');
    await expect(readWav(new Uint8Array(50))).rejects.toMatchObject({ problem: { code: 'not-wav' } });
    await expect(readWav(good.subarray(0, 30))).rejects.toMatchObject({
      problem: { code: expect.stringMatching(/no-format|format-short|no-samples/) },
    });
    await expect(readWav(good.subarray(0, 44))).rejects.toMatchObject({ problem: { code: 'no-samples' } });
    await expect(readWav(changed(20, 85))).rejects.toMatchObject({ problem: { code: 'encoding', encoding: 85 } });
    await expect(readWav(changed(34, 12))).rejects.toThrow('got 12 bits');
    await expect(readWav(changed(24, 1, 0, 0, 0))).rejects.toMatchObject({ problem: { code: 'rate', rate: 1 } });
    await expect(readWav(changed(22, 0))).rejects.toMatchObject({ problem: { code: 'channels', channels: 0 } });
  });

  it('no bytes whatever make it fail otherwise than in words', async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 80 }), fc.nat(43), async (noise, at) => {
        const bytes = writeWav([tone(40, 2)], { rate: 8000 });
        bytes.set(noise.subarray(0, bytes.length - at), at);
        await readWav(bytes).catch((error: Error) => expect(error.constructor.name).toBe('SoundFileError'));
      }),
    );
  });

  it('a file of two gigabytes of empty chunks is given up after a few', async () => {
    const head = writeWav([tone(10, 1)], { rate: 8000 }).subarray(0, 36);
    let reads = 0;
    const read = (start: number, length: number): Uint8Array => {
      reads++;
      // "JUNK", no bytes long, without end.
      return Uint8Array.from(
        { length },
        (_, i) => head[start + i] ?? [0x4a, 0x55, 0x4e, 0x4b, 0, 0, 0, 0][(start + i - 36) % 8],
      );
    };
    await expect(readWavHeader(read, 2 ** 31)).rejects.toMatchObject({ problem: { code: 'many-chunks', most: 200 } });
    expect(reads).toBeLessThan(300);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, 1e300, -1e38])('a sample of %s is named', async (bad) => {
    const samples = tone(500, 3);
    samples[321] = bad;
    const bytes = writeWav([tone(500, 5), samples], { rate: 96_000, float: true });
    const given = Number.isNaN(bad) ? 'NaN' : Math.fround(bad).toPrecision(3);
    const message = `Sample 322 of channel 2: expected a number, at full scale −1 to 1, got ${given}. Save the file as`;
    await expect(readWav(bytes)).rejects.toThrow(message);
    const band = await openBandRecording(fromBytes(bytes), bytes.length);
    await expect(band.read(300, 50)).rejects.toThrow(message);
    await expect(bandAt(band, 192_000, 600, 100)).rejects.toThrow(message);
    // What stands before it can be used.
    expect((await band.read(0, 300)).re[7]).toBe(tone(500, 5)[7]);
  });

  it('a general-purpose reader finds the same in them', async () => {
    for (const [kind] of [...kinds, [{ bits: 16 }, 0] as const])
      for (const rate of [8000, 48_000, 2_048_000]) {
        const bytes = writeWav([tone(960, 3), tone(960, 5)], { rate, ...kind });
        const own = await readWavHeader(fromBytes(bytes), bytes.length);
        const track = await new Input({ formats: [WAVE], source: new BufferSource(bytes) }).getPrimaryAudioTrack();
        expect([own.rate, own.channels]).toEqual([await track!.getSampleRate(), await track!.getNumberOfChannels()]);
        expect(own.frames / own.rate).toBeCloseTo(await track!.computeDuration(), 9);
        const codec = own.float ? 'pcm-f32' : own.bits === 8 ? 'pcm-u8' : `pcm-s${own.bits}`;
        expect(await track!.getCodec()).toBe(codec);
      }
  });

  it('a file cut short is used as far as it goes', async () => {
    const cut = writeWav([tone(1000, 5)], { rate: 8000 }).subarray(0, 44 + 500);
    const header = await readWavHeader(fromBytes(cut), cut.length);
    expect(header.frames).toBe(250);
    expect(header.warnings).toEqual(['cut-short']);
  });
});

describe('recorded bands', () => {
  const n = 20_000;
  const rate = 96_000;
  const turn = (f: number) => [
    Float32Array.from({ length: n }, (_, i) => 0.5 * Math.cos((2 * Math.PI * f * i) / rate)),
    Float32Array.from({ length: n }, (_, i) => 0.5 * Math.sin((2 * Math.PI * f * i) / rate)),
  ];

  it('only two channels will do, and the middle frequency comes from the name', async () => {
    const mono = writeWav([tone(100, 3)], { rate });
    await expect(openBandRecording(fromBytes(mono), mono.length)).rejects.toThrow(
      'got one: this file is ordinary sound',
    );
    const stereo = writeWav(turn(1000), { rate });
    const band = await openBandRecording(fromBytes(stereo), stereo.length, 'evening_909kHz.wav');
    expect(band.centre).toBe(909e3);
    expect(centreFromName('band 0.909 MHz.wav')).toBeCloseTo(909e3, 3);
    expect(centreFromName('band_1089000Hz_IQ.wav')).toBe(1089e3);
    expect(centreFromName('tape 3.wav')).toBeUndefined();
  });

  it('of a wide recording the part about the pointer is taken, and beyond it there is silence', async () => {
    const wide = 768_000;
    const f = 200_000;
    const bytes = writeWav(
      [0, -Math.PI / 2].map((p) =>
        Float32Array.from({ length: n }, (_, i) => Math.cos((2 * Math.PI * f * i) / wide + p)),
      ),
      { rate: wide, float: true },
    );
    const band = await openBandRecording(fromBytes(bytes), bytes.length);
    const size = async (near: number) => {
      const { re, im, frequency } = await bandAt(band, 192_000, 1024, 512, 1e6, near);
      expect(frequency).toBe(near);
      return Math.sqrt(re.reduce((s, x, i) => s + x * x + im[i] * im[i], 0) / 512);
    };
    expect(await size(1e6 + f)).toBeCloseTo(1, 2);
    expect(await size(1e6 + f - 30_000)).toBeCloseTo(1, 2);
    expect(await size(1e6 - f)).toBeLessThan(1e-3);
    expect(await size(2e6)).toBe(0);
  });

  it('is read in pieces, at another rate without a seam, and never whole', async () => {
    const bytes = writeWav(turn(7000), { rate, float: true });
    let most = 0;
    const band = await openBandRecording((start, length) => {
      most = Math.max(most, length);
      return bytes.subarray(start, start + length);
    }, bytes.length);
    for (let from = 1024; from < 6000; from += 1024) {
      const { re, im } = await bandAt(band, 192_000, from, 1024);
      for (let i = 0; i < 1024; i++) {
        const a = (2 * Math.PI * 7000 * (from + i)) / 192_000;
        expect(Math.abs(re[i] - 0.5 * Math.cos(a))).toBeLessThan(2e-3);
        expect(Math.abs(im[i] - 0.5 * Math.sin(a))).toBeLessThan(2e-3);
      }
    }
    expect(most).toBeLessThan(10_000);
  });
});

describe('another rate', () => {
  it('keeps a tone within 0.05 dB and lets nothing fold back', () => {
    const level = (x: Float32Array) => {
      const mid = x.subarray(x.length >> 2, (3 * x.length) >> 2);
      return 20 * Math.log10(Math.SQRT2 * Math.sqrt(mid.reduce((s, v) => s + v * v, 0) / mid.length));
    };
    expect(Math.abs(level(resample(tone(44_100, 1000, 1), 44_100, 24_000)))).toBeLessThan(0.05);
    expect(level(resample(tone(44_100, 15_000, 1), 44_100, 24_000))).toBeLessThan(-60);
  });
});

describe('the limiter', () => {
  it('is never exceeded, whatever comes in', () => {
    const wild = fc.oneof(fc.float(), fc.constantFrom(Number.NaN, Infinity, -Infinity, 1e30, -1e30, 0));
    fc.assert(
      fc.property(
        fc.array(wild, { minLength: 1, maxLength: 400 }),
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        (x, ceiling) => {
          const limiter = new Limiter({ rate: 48_000, ceiling, fadeIn: 0 });
          const sound = Float32Array.from([...x, ...x, ...x]);
          limiter.run(sound);
          for (const y of sound) expect(Math.abs(y) <= Math.fround(ceiling) + 1e-7).toBe(true);
        },
      ),
    );
  });
  it('leaves what is quiet alone, late by 3 ms, and starts from silence', () => {
    const limiter = new Limiter({ rate: 48_000, fadeIn: 1 });
    const sound = new Float32Array(96_000).fill(0.1);
    limiter.run(sound);
    expect(sound[200]).toBeLessThan(1e-4);
    expect(sound[24_000 + 144]).toBeCloseTo(0.05, 2);
    expect(sound[95_000]).toBeCloseTo(0.1, 6);
  });
});

describe('noise', () => {
  it('has the power asked for in 9 kHz, within 1 dB over ten seconds, and comes in strokes', () => {
    const rate = 192_000;
    const noise = new BandNoise(rate, 3);
    const re = new Float32Array(1024);
    const im = new Float32Array(1024);
    let [power, most, count] = [0, 0, 0];
    for (let b = 0; b < 1875; b++) {
      noise.fill(1e-6, 1024, re, im);
      for (let i = 0; i < 1024; i++) {
        const p = (re[i] * re[i] + im[i] * im[i]) / 2;
        power += p;
        most = Math.max(most, p);
        count++;
      }
    }
    const inNine = ((power / count) * 9000) / rate;
    expect(Math.abs(10 * Math.log10(inNine / 1e-12))).toBeLessThan(1);
    expect(most).toBeGreaterThan((100 * power) / count);
  });
});
