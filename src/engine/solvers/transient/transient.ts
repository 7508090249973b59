import type { Warning } from '../../facts/warning.ts';
import type { Circuit } from '../../network/elements.ts';
import type { Hertz, Seconds } from '../../units/quantities.ts';
import { stateSpace } from '../modes/state-space.ts';
import { stepCoefficients } from './coefficients.ts';
import { type Device, lawOf } from './devices.ts';
import { makeCore } from './integrator.ts';
import { makeRecorder, type Probe } from './record.ts';
import type { StationWave } from './sources.ts';

export type { Probe };

export interface TransientOptions {
  /** One for each detector of the circuit, in its order. */
  readonly devices: readonly Device[];
  readonly stations: readonly StationWave[];
  /** Frequency the step is exact at. Default: the first station's. */
  readonly carrier?: Hertz;
  /** Default 32. */
  readonly stepsPerCycle?: number;
  readonly probes: readonly Probe[];
  /** Steps to one written value. Default 1. */
  readonly every?: number;
  /** Write the mean over those steps rather than the last. Default false. */
  readonly average?: boolean;
}

export interface Transient {
  readonly step: Seconds;
  readonly stepsTaken: number;
  readonly warnings: readonly Warning[];
  /** Time a written value stands for: of its step, or the middle of its mean. */
  frameTime(frame: number): Seconds;
  /**
   * Go on by so many steps, writing each probe into its own buffer from `offset` on.
   * Any way of cutting a run into calls gives the same numbers. @returns values written to each buffer.
   */
  run(steps: number, out?: readonly Float64Array[], offset?: number): number;
}

/**
 * The waveforms of a circuit, cycle by cycle: pre-warped trapezoid for the linear part, detectors solved with it in
 * every step. Starts from rest, or, where there are bias cells, from the state they hold.
 * @throws RangeError for a node, coil or device that cannot be, and for a circuit without a source of waves.
 */
export function createTransient(circuit: Circuit, options: TransientOptions): Transient {
  const { devices, stations, stepsPerCycle = 32, every = 1, average = false } = options;
  const carrier = options.carrier ?? stations[0]?.frequency;
  if (!(carrier > 0)) throw new RangeError('a transient needs a station or a carrier frequency above 0 Hz');
  if (!(Number.isInteger(stepsPerCycle) && stepsPerCycle >= 4 && stepsPerCycle <= 65536))
    throw new RangeError(`steps per cycle must be a whole number from 4 to 65536, not ${stepsPerCycle}`);
  if (!(Number.isInteger(every) && every >= 1))
    throw new RangeError(`every must be a whole number from 1, not ${every}`);
  const system = stateSpace(circuit, { frequency: carrier });
  if (devices.length !== system.detectors.length) {
    throw new RangeError(`the circuit has ${system.detectors.length} detectors, not ${devices.length}`);
  }
  for (const d of devices) lawOf(d);
  const h = 1 / carrier / stepsPerCycle;
  const k = stepCoefficients(system, 2 * Math.PI * carrier, h);
  const core = makeCore(
    k,
    system.emfs,
    devices,
    system.detectors.map((d) => k.row(d.row)),
    stations,
    h,
  );
  const recorder = makeRecorder(
    core,
    options.probes,
    (p) => {
      if (p.kind === 'coil current') return k.row(system.current(p.coil));
      if (p.kind === 'detector voltage') return k.row(system.detectors[p.detector ?? 0].row);
      if (p.kind === 'detector current') return undefined;
      return k.row(system.voltage(p.node, p.over));
    },
    average,
  );
  let count = 0;
  return {
    step: h,
    get stepsTaken() {
      return count;
    },
    warnings: system.warnings,
    frameTime: (frame) => (frame * every + (average ? (every + 1) / 2 : every)) * h,
    run(steps, out = [], offset = 0) {
      let frame = offset;
      for (let remainder = steps; remainder > 0; ) {
        const block = Math.min(remainder, every - (count % every));
        core.advance(count, block);
        count += block;
        remainder -= block;
        if (count % every === 0) recorder.write(out, frame++, average ? every : 0);
      }
      return frame - offset;
    },
  };
}
