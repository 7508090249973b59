import { setCircuit } from '../built/set-circuit.ts';
import { type Warning, warning } from '../facts/warning.ts';
import { magnitude } from '../numerics/complex.ts';
import { type FieldOptions, fieldsAtSite } from '../reception/path/field.ts';
import { bearingOf, emfOf, receiver, receiveStation, TEST_TONE } from '../reception/path/receive-station.ts';
import type { SetDescription } from '../set/description.ts';
import type { StationWave } from '../solvers/transient/sources.ts';
import { createTransient } from '../solvers/transient/transient.ts';
import { harmonics } from '../solvers/transient/waveform-figures.ts';
import { formatQuantity } from '../units/format.ts';
import type { Hertz, Ratio, Seconds } from '../units/quantities.ts';
import { usualPlaces, type WavePlace, wavePlaces } from './wave-places.ts';

/** Which station, which points, and for how long. */
export interface NodeWavesOptions extends FieldOptions {
  /** By its place in the set's list. */
  readonly station: number;
  /** Ids of `wavePlaces`; default the usual ones. */
  readonly places?: readonly string[];
  /** The other stations too, each with a tone of its own. Default true. */
  readonly neighbours?: boolean;
  /** Once everything has settled (default), or from the moment the stations come on. */
  readonly begin?: 'settled' | 'coming on';
  /** What is kept. Default 5 ms. */
  readonly duration?: Seconds;
  /** That stands for the programme. Default 1 kHz. */
  readonly tone?: Hertz;
  /** Of the wanted station; default its own. */
  readonly depth?: Ratio;
  /** Called now and then with the share done; returning false stops the run. */
  readonly progress?: (done: Ratio) => boolean;
}

/** What a meter, a peak reader and an ear would find in a wave; volts or amperes. */
export interface WaveReading {
  readonly least: number;
  readonly greatest: number;
  readonly mean: number;
  /** Peak of the wanted carrier's frequency in it, on average. */
  readonly carrier: number;
  /** Peak of the tone left when the carrier is averaged away; NaN where what was kept holds no whole period. */
  readonly audio: number;
  readonly secondHarmonic: Ratio;
  /** How deep the tone modulates that carrier; NaN like `audio`. */
  readonly depth: Ratio;
}

export interface NodeWave extends WavePlace {
  /** At `start`, and every `interval` after. */
  readonly samples: Float32Array;
  readonly reading: WaveReading;
}

/** Waves at points of a set, sample by sample. */
export interface NodeWaves {
  readonly station: string;
  readonly carrier: Hertz;
  readonly tone: Hertz;
  /** Since the stations came on. */
  readonly start: Seconds;
  readonly interval: Seconds;
  readonly duration: Seconds;
  readonly neighbours: readonly string[];
  readonly waves: readonly NodeWave[];
  readonly warnings: readonly Warning[];
}

/** Samples kept of one wave at most: 60 ms of medium wave. */
export const MOST_SAMPLES = 4_000_000;
const MOST_NEIGHBOURS = 8;
/** A neighbour fainter at the detector than this share of the carrier tuned to makes no visible difference. */
const FAINTEST = 2e-4;
const TONES: readonly Hertz[] = [400, 600, 800, 1200, 1600, 1800];
const STEPS = 32;
/** Steps in a cycle of the highest carrier at least, and of the wanted one at most. */
const STEPS_OF_HIGHEST = 16;
const MOST_STEPS = 192;
const SETTLE_PIECE: Seconds = 5e-3;
const LONGEST_SETTLE: Seconds = 0.3;
/** Settled when the mean changes by less of itself from piece to piece. */
const STILL = 1.5e-3;
/** Cycles between two words of progress. */
const CHUNK = 1024;

/**
 * True waves at any points of a set tuned to a station, from the whole circuit cycle by cycle.
 * @param set as read
 * @param options station, points, length (s), time and coastline
 * @returns samples (V or A) at even steps (s), with their warnings
 * @throws RangeError for a station or place there is not, or more than can be kept; Error "stopped" when `progress` returns false.
 */
export function nodeWaves(set: SetDescription, options: NodeWavesOptions): NodeWaves {
  const { begin = 'settled', duration = 5e-3, tone = TEST_TONE, neighbours = true, progress = () => true } = options;
  const target = set.place.stations[options.station];
  if (!target) throw new RangeError(`there is no station ${options.station}`);
  const circuit = setCircuit(set);
  const all = wavePlaces(circuit);
  const places = (options.places ?? usualPlaces(all)).map((id) => {
    const place = all.find((p) => p.id === id);
    if (!place) throw new RangeError(`there is no "${id}"; there are ${all.map((p) => p.id).join(', ')}`);
    return place;
  });
  const ready = receiver(circuit, fieldsAtSite(set.place, options));
  const tuned = receiveStation(ready, target);
  const f = target.frequency;
  const warnings: Warning[] = [];
  const others = neighbours ? neighboursOf() : [];
  const highest = Math.max(f, ...others.map((o) => o.station.frequency));
  const perCycle = Math.min(MOST_STEPS, Math.max(STEPS, 2 * Math.ceil((STEPS_OF_HIGHEST * highest) / f / 2)));
  const cycles = Math.max(2, Math.round(duration * f));
  if (!(cycles * perCycle <= MOST_SAMPLES))
    throw new RangeError(
      `at ${formatQuantity(f, 'frequency', 4)} at most ${formatQuantity(MOST_SAMPLES / perCycle / f, 'time', 2)} can be kept, not ${formatQuantity(duration, 'time', 2)}`,
    );
  const depth = options.depth ?? Math.min(target.modulation, 1);
  const stations: StationWave[] = [
    { frequency: f, emf: tuned.emf, modulation: [{ frequency: tone, depth }] },
    ...others.map(({ station }) => station),
  ];
  const out = circuit.assembly.outputPort;
  const run = createTransient(circuit.assembly.circuitAt(tuned.position, tuned.other), {
    devices: Array.from({ length: circuit.assembly.wiring === 'single' ? 1 : 2 }, () => circuit.detector),
    stations,
    stepsPerCycle: perCycle,
    probes: [...places.map((p) => p.probe), { kind: 'voltage', node: out.to, over: out.from }],
  });
  warnings.push(...run.warnings);
  const say = (share: number): void => {
    if (!progress(Math.min(1, share))) throw new Error('stopped');
  };
  if (begin === 'settled') settle();
  const start = (run.stepsTaken + 1) * run.step;
  const settled = run.stepsTaken / (run.stepsTaken + cycles * perCycle);
  const chunk = places.map(() => new Float64Array(CHUNK * perCycle));
  const samples = places.map(() => new Float32Array(cycles * perCycle));
  for (let done = 0; done < cycles; ) {
    const n = Math.min(CHUNK, cycles - done);
    run.run(n * perCycle, chunk);
    for (const [k, s] of samples.entries()) s.set(chunk[k].subarray(0, n * perCycle), done * perCycle);
    done += n;
    say(settled + (1 - settled) * (done / cycles));
  }
  return {
    station: target.name,
    carrier: f,
    tone,
    start,
    interval: run.step,
    duration: cycles / f,
    neighbours: others.map((o) => o.name),
    waves: places.map((place, k) => ({
      ...place,
      samples: samples[k],
      reading: readingOf(samples[k], { perCycle, carrier: f, tone, start, whole: begin === 'settled' }),
    })),
    warnings,
  };

  function neighboursOf(): { name: string; station: StationWave; share: number }[] {
    const level = (frequency: Hertz, emf: number) =>
      emf * magnitude(ready.network.at(frequency).at(tuned.position, tuned.other).open);
    const own = level(f, tuned.emf);
    const bearing = bearingOf(target, tuned.field);
    return set.place.stations
      .flatMap((s, index) => {
        if (index === options.station) return [];
        const emf = emfOf(circuit, s, ready.fieldOf(s), bearing);
        const share = level(s.frequency, emf) / own;
        if (!(share > FAINTEST)) return [];
        const modulation = [{ frequency: TONES[index % TONES.length], depth: Math.min(s.modulation, 1) }];
        // Carriers come as they will: spread evenly by the golden angle.
        return [
          { name: s.name, share, station: { frequency: s.frequency, emf, phase: 2.4 * (index + 1), modulation } },
        ];
      })
      .sort((a, b) => b.share - a.share)
      .slice(0, MOST_NEIGHBOURS);
  }

  /** Go on until the mean at the output keeps still, or for as long as one may wait. */
  function settle(): void {
    const piece = Math.max(2, Math.round(SETTLE_PIECE * f));
    const spare: Float64Array[] = [];
    spare[places.length] = new Float64Array(CHUNK * perCycle);
    let before = Number.NaN;
    const most = Math.ceil(LONGEST_SETTLE / SETTLE_PIECE);
    for (let k = 0; k < most; k++) {
      let sum = 0;
      for (let done = 0; done < piece; ) {
        const n = Math.min(CHUNK, piece - done);
        run.run(n * perCycle, spare);
        for (let i = 0; i < n * perCycle; i++) sum += spare[places.length][i];
        done += n;
        // How long it will take is not known; most sets need two to four pieces.
        say(0.9 * (1 - 1 / (1 + 0.3 * (k + done / piece))));
      }
      const mean = sum / (piece * perCycle);
      if (Math.abs(mean - before) <= STILL * Math.abs(mean) + 1e-12) return;
      before = mean;
    }
    warnings.push(warning('waves.not-settled', { time: LONGEST_SETTLE }));
  }
}

interface ReadingOptions {
  readonly perCycle: number;
  readonly carrier: Hertz;
  readonly tone: Hertz;
  readonly start: Seconds;
  /** Look at all of it, or at the second half only. */
  readonly whole: boolean;
}

export function readingOf(samples: Float32Array, o: ReadingOptions): WaveReading {
  const { perCycle, carrier, tone } = o;
  const cycles = Math.floor(samples.length / perCycle);
  const most = o.whole ? cycles : Math.ceil(cycles / 2);
  const periods = Math.floor((most * tone) / carrier + 1e-6);
  const used = periods > 0 ? Math.min(most, Math.round((periods * carrier) / tone)) : most;
  const first = cycles - used;
  const means = new Float64Array(used);
  const cos = Float64Array.from({ length: perCycle }, (_, i) => Math.cos((2 * Math.PI * i) / perCycle));
  const sin = Float64Array.from({ length: perCycle }, (_, i) => Math.sin((2 * Math.PI * i) / perCycle));
  let least = Number.POSITIVE_INFINITY;
  let greatest = Number.NEGATIVE_INFINITY;
  let fundamental = 0;
  const carriers = new Float64Array(used);
  for (let c = 0; c < used; c++) {
    let sum = 0;
    let re = 0;
    let im = 0;
    const at = (first + c) * perCycle;
    for (let i = 0; i < perCycle; i++) {
      const v = samples[at + i];
      sum += v;
      re += v * cos[i];
      im += v * sin[i];
      if (v < least) least = v;
      if (v > greatest) greatest = v;
    }
    means[c] = sum / perCycle;
    carriers[c] = (2 * Math.hypot(re, im)) / perCycle;
    fundamental += carriers[c];
  }
  let mean = 0;
  for (const m of means) mean += m / used;
  const reading = { least, greatest, mean, carrier: fundamental / used };
  if (periods < 1 || used < 8) return { ...reading, audio: Number.NaN, secondHarmonic: Number.NaN, depth: Number.NaN };
  const window = { start: 0, mean: 1 / carrier };
  const heard = harmonics(means, 1 / carrier, [tone], window);
  const envelope = harmonics(carriers, 1 / carrier, [tone], window);
  return {
    ...reading,
    audio: heard.tones[0].amplitude,
    secondHarmonic: heard.secondHarmonic,
    depth: envelope.tones[0].amplitude / reading.carrier,
  };
}
