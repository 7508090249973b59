import { gaussian, uniform } from '../../engine/numerics/random.ts';
import { PEAKS, type Programme } from '../../engine/reception/hearing/index.ts';
import { Fir } from './fir.ts';
import { resample } from './resample.ts';
import { SoundFileError } from './wav.ts';

/** Samples a second of a programme as kept; half the sound's rate. */
export const PROGRAMME_RATE = 24_000;
/** Highest audio frequency sent. */
const BANDWIDTH = 4500;
const LOOP_SECONDS = 24;

/** What a station says: samples of its modulation at `PROGRAMME_RATE`, −1 to 1, repeated for ever. */
export type ProgrammeLoop = Float32Array;

/** A made-up programme for a station, the same for the same seed: no two stations sound alike. */
export function madeProgramme(kind: Programme, seed: number): ProgrammeLoop {
  const n = LOOP_SECONDS * PROGRAMME_RATE;
  const loop = new Float32Array(n);
  if (kind === 'tone') {
    for (let i = 0; i < n; i++) loop[i] = Math.sin((2 * Math.PI * 1000 * i) / PROGRAMME_RATE);
    return loop;
  }
  if (kind === 'speech') speak(loop, 0, n, seed);
  else if (kind === 'music') play(loop, 0, n, seed);
  else {
    const turn = Math.round(n * (0.35 + 0.2 * uniform(seed)()));
    speak(loop, 0, turn, seed);
    play(loop, turn, n, seed);
  }
  return asSent(loop, kind);
}

/**
 * A recording as a programme: one channel, at the transmitter's bandwidth and usual depth.
 * @param channels samples, −1 to 1
 * @param rate samples a second, Hz
 * @param kind speech or music
 * @returns a programme that goes round
 */
export const recordedProgramme = (channels: readonly Float32Array[], rate: number, kind: Programme): ProgrammeLoop => {
  const mono = new Float32Array(channels[0]?.length ?? 0);
  for (const c of channels) for (let i = 0; i < mono.length; i++) mono[i] += c[i] / channels.length;
  const loop = resample(mono, rate, PROGRAMME_RATE);
  if (loop.length < 64) throw new SoundFileError({ code: 'short' });
  return asSent(loop === mono ? mono.slice() : loop, kind);
};

/** Low-pass as a transmitter does, then brought to the mean depth that this kind of programme has; peaks rounded off at 1. */
function asSent(loop: Float32Array, kind: Programme): Float32Array {
  const n = loop.length;
  const taps = 128;
  const filter = new Fir(PROGRAMME_RATE, (f) => (f < BANDWIDTH - 300 && f > 80 ? 1 : 0), n + taps, taps);
  const whole = new Float32Array(n + taps);
  whole.set(loop);
  whole.set(loop.subarray(0, Math.min(taps, n)), n); // the end runs on into the beginning
  filter.run(whole, whole, n + taps);
  loop.set(whole.subarray(taps, n + taps));
  const wanted = Math.SQRT1_2 * 10 ** (-PEAKS[kind] / 20);
  for (let turn = 0; turn < 2; turn++) {
    let power = 0;
    for (let i = 0; i < n; i++) power += loop[i] * loop[i];
    const gain = wanted / Math.max(Math.sqrt(power / n), 1e-9);
    for (let i = 0; i < n; i++) loop[i] = rounded(gain * loop[i]);
  }
  return loop;
}

/** Straight to ±0.7, then bending so that 1 is never passed. */
function rounded(x: number): number {
  const a = Math.abs(x);
  return a <= 0.7 ? x : Math.sign(x) * (0.7 + 0.3 * Math.tanh((a - 0.7) / 0.3));
}

/** First three formants of some vowels, Hz; round figures of textbooks on phonetics. */
const VOWELS = [
  [730, 1090, 2440],
  [270, 2290, 3010],
  [300, 870, 2240],
  [530, 1840, 2480],
  [570, 840, 2410],
  [440, 1020, 2240],
  [660, 1720, 2410],
];

/** Syllables of no language: a pulse train through three formants, and a hiss before some. */
function speak(out: Float32Array, from: number, to: number, seed: number): void {
  const random = uniform(seed ^ 0x51ab);
  const noise = gaussian(uniform(seed ^ 0x7733));
  const voice = 85 + 130 * random();
  const size = voice > 150 ? 1.14 : 1;
  const pace = 0.13 + 0.11 * random();
  const y = new Float64Array(6);
  const cs = new Float64Array(3);
  const rs = Float64Array.from({ length: 3 }, (_, k) => Math.exp((-Math.PI * (60 + 40 * k)) / PROGRAMME_RATE));
  const rate = PROGRAMME_RATE;
  for (let at = from; at < to; ) {
    const syllables = 5 + Math.floor(9 * random());
    for (let s = 0; s < syllables && at < to; s++) {
      const vowel = VOWELS[Math.floor(VOWELS.length * random())];
      const next = VOWELS[Math.floor(VOWELS.length * random())];
      const length = Math.round(rate * pace * (0.7 + 0.8 * random()));
      const stress = 0.5 + 0.6 * random();
      const hiss = random() < 0.5 ? Math.round(rate * (0.03 + 0.05 * random())) : 0;
      const hissPitch = 0.2 + 0.7 * random();
      let low = 0;
      for (let i = 0; i < hiss && at < to; i++, at++) {
        const w = noise();
        low += hissPitch * (w - low);
        out[at] += 0.12 * (w - low) * Math.sin((Math.PI * i) / hiss);
      }
      const pitch = voice * (1.12 - (0.25 * s) / syllables + 0.1 * (random() - 0.5));
      let phase = 0;
      for (let i = 0; i < length && at < to; i++, at++) {
        const t = i / length;
        phase += (pitch * (1 + 0.06 * Math.sin(3 * t))) / rate;
        let pulse = 0;
        if (phase >= 1) {
          phase -= 1;
          pulse = 1;
        }
        const shape = Math.min(1, 5 * t, 4 * (1 - t)) * stress;
        let x = 6 * pulse + 0.02 * noise();
        if (i % 24 === 0) {
          for (let k = 0; k < 3; k++) {
            const f = size * (vowel[k] + (next[k] - vowel[k]) * Math.max(0, t - 0.5));
            cs[k] = 2 * rs[k] * Math.cos((2 * Math.PI * f) / rate);
          }
        }
        for (let k = 0; k < 3; k++) {
          const r = rs[k];
          const c = cs[k];
          const v = (1 - c + r * r) * x + c * y[2 * k] - r * r * y[2 * k + 1];
          y[2 * k + 1] = y[2 * k];
          y[2 * k] = v;
          x = v;
        }
        out[at] += x * shape;
      }
    }
    at += Math.round(rate * (0.25 + 0.45 * random()));
  }
}

const SCALES = [
  [0, 2, 4, 5, 7, 9, 11],
  [0, 2, 3, 5, 7, 8, 10],
  [0, 2, 4, 7, 9],
  [0, 2, 3, 5, 7, 9, 10],
];

/** A tune of its own over a bass, on an instrument of its own. */
function play(out: Float32Array, from: number, to: number, seed: number): void {
  const random = uniform(seed ^ 0x2c91);
  const scale = SCALES[Math.floor(SCALES.length * random())];
  const root = 48 + Math.floor(12 * random());
  const beat = 0.28 + 0.35 * random();
  const plucked = random() < 0.5;
  const wave = new Float32Array(1025);
  const bright = 0.25 + 0.55 * random();
  for (let h = 1; h <= 7; h++) {
    const a = bright ** (h - 1) * (0.5 + random());
    for (let i = 0; i <= 1024; i++) wave[i] += a * Math.sin((2 * Math.PI * h * i) / 1024);
  }
  const note = (start: number, seconds: number, pitch: number, level: number) => {
    const step = (440 * 2 ** ((pitch - 69) / 12) * 1024) / PROGRAMME_RATE;
    const n = Math.min(Math.round(seconds * PROGRAMME_RATE), to - start);
    let phase = 0;
    for (let i = 0; i < n; i++) {
      const t = i / (seconds * PROGRAMME_RATE);
      const shape = Math.min(1, 60 * t) * (plucked ? Math.exp(-4 * t) * (1 - t) : Math.min(1, 6 * (1 - t)) * 0.7);
      out[start + i] += level * shape * wave[phase | 0];
      phase += step;
      if (phase >= 1024) phase -= 1024;
    }
  };
  let degree = scale.length;
  const pitchOf = (d: number) =>
    root + 12 * Math.floor(d / scale.length) + scale[((d % scale.length) + scale.length) % scale.length];
  const eighth = Math.round((beat / 2) * PROGRAMME_RATE);
  let bass = 0;
  for (let at = from, k = 0; at < to; at += eighth, k++) {
    if (k % 8 === 0) {
      bass = [0, 3, 4, 0][Math.floor(4 * random())];
      for (const third of [0, 2, 4]) note(at, beat * 4, pitchOf(bass + third), 0.16);
    }
    if (k % 4 === 0) note(at, beat * 1.8, pitchOf(bass) - 12, 0.35);
    if (random() < (k % 2 === 0 ? 0.85 : 0.45)) {
      degree += Math.round((random() - 0.5) * 5);
      degree = Math.max(2, Math.min(2.4 * scale.length, degree)) | 0;
      note(at, beat * (random() < 0.2 ? 2 : 0.95), pitchOf(degree), 0.5);
    }
  }
}

/** Halfway between samples: windowed sinc, eight taps. */
const HALFWAY = [0.5, 1.5, 2.5, 3.5].map(
  (x) => (Math.sin(Math.PI * x) / (Math.PI * x)) * Math.cos((Math.PI * x) / 8) ** 2,
);
const HALFWAY_SUM = 2 * HALFWAY.reduce((a, b) => a + b, 0);
const [H0, H1, H2, H3] = HALFWAY.map((h) => h / HALFWAY_SUM);

/** A programme at twice its rate from sample `from`, times `gain`, added to `out`. Allocates nothing. */
export function addProgramme(
  loop: ProgrammeLoop,
  from: number,
  frames: number,
  gain: number,
  gainStep: number,
  out: Float32Array,
) {
  const n = loop.length;
  let at = Math.floor(from / 2) % n;
  if (at < 0) at += n;
  let odd = ((from % 2) + 2) % 2 === 1;
  let g = gain;
  for (let i = 0; i < frames; i++) {
    g += gainStep;
    if (!odd) {
      out[i] += g * loop[at];
      odd = true;
      continue;
    }
    odd = false;
    const next = at + 1 === n ? 0 : at + 1;
    if (at >= 3 && at < n - 4) {
      out[i] +=
        g *
        (H0 * (loop[at] + loop[at + 1]) +
          H1 * (loop[at - 1] + loop[at + 2]) +
          H2 * (loop[at - 2] + loop[at + 3]) +
          H3 * (loop[at - 3] + loop[at + 4]));
    } else out[i] += g * 0.5 * (loop[at] + loop[next]);
    at = next;
  }
}
