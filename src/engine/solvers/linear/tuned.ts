import type { Assembly, TuningPort } from '../../kinds/arrangements/assembly.ts';
import type { Port } from '../../network/port.ts';
import { type Complex, divide, magnitude, multiply, subtract } from '../../numerics/complex.ts';
import type { Farads, Hertz, Ratio } from '../../units/quantities.ts';
import { type LinearSolver, linearSolver, type PortView } from './solve.ts';

/** What the detector sees of the set at one frequency and pointer position; peak volts. */
export interface CarrierView {
  /** Carrier at the detector's terminals with the detector taken out. */
  readonly open: Complex;
  /** Impedance there. */
  readonly z: Complex;
  /** Voltage across the tuned circuit with the detector out, and what a current into the detector's port adds there. */
  readonly tunedOpen: Complex;
  readonly tunedByDetector: Complex;
}

/** The set at one frequency, any pointer position: solved once, then closed form. */
export interface FrequencyView {
  readonly frequency: Hertz;
  at(position: Ratio, other?: Ratio): CarrierView;
  /** Voltage left at the detector when it loads the set with a conductance, of the circuit's own unit emf. */
  level(conductance: number, position: Ratio, other: Ratio): number;
  /** The same with the tuning capacitance given, for those who ask at many frequencies; undefined where it is no such set. */
  levelWith?(conductance: number, capacitance: Farads, lossTangent: number): number;
  /** Pointer position (and that of a separate aerial tuning) where the detector gets most, and whether it lies within the scale. */
  peak(detectorConductance: number): Peak;
}

export interface Peak {
  readonly position: Ratio;
  readonly other: Ratio;
  /** False when the peak lies beyond the end of the scale, at which `position` then is. */
  readonly within: boolean;
  /** What the tuning capacitance would have to be. */
  readonly wanted?: Farads;
}

export interface TunedNetwork {
  at(frequency: Hertz): FrequencyView;
}

/** A set's radio-frequency side for any frequency and position. One factorisation a frequency where capacitors tune. */
export function tunedNetwork(assembly: Assembly): TunedNetwork {
  const network = assembly.tuning.length > 0 ? capacitorTuned(assembly) : coilTuned(assembly);
  // The same few frequencies are asked for at every pointer position and beside every station.
  const seen = new Map<Hertz, FrequencyView>();
  return {
    at(frequency) {
      let view = seen.get(frequency);
      if (!view) seen.set(frequency, (view = network.at(frequency)));
      return view;
    },
  };
}

/** Join an admittance across port k: what the other ports then see. */
function terminate(view: PortView, k: number, y: Complex): PortView {
  const size = y.re * y.re + y.im * y.im;
  if (!(size > 0)) return view;
  const d = { re: view.z[k][k].re + y.re / size, im: view.z[k][k].im - y.im / size };
  const factor = divide({ re: 1, im: 0 }, d);
  const open = view.open.map((v, i) => subtract(v, multiply(multiply(view.z[i][k], view.open[k]), factor)));
  const z = view.z.map((row, i) =>
    row.map((value, j) => subtract(value, multiply(multiply(view.z[i][k], view.z[k][j]), factor))),
  );
  return { frequency: view.frequency, open, z };
}

function capacitorTuned(assembly: Assembly): TunedNetwork {
  const ports: Port[] = [assembly.carrierPort, assembly.tunedPort, ...assembly.tuning.map((t) => t.port)];
  const solver = linearSolver(assembly.baseAt(0), ports);
  const [main, second] = assembly.tuning;
  const positionOf = (tuning: TuningPort, capacitance: Farads): Ratio =>
    tuning.positionFor(capacitance) ?? (nearer(capacitance, tuning.capacitanceAt(0), tuning.capacitanceAt(1)) ? 0 : 1);

  return {
    at(frequency) {
      const w = 2 * Math.PI * frequency;
      const look = solver.look(frequency);
      const load = (tuning: TuningPort, position: Ratio): Complex => {
        const y = w * tuning.capacitanceAt(position);
        return { re: y * tuning.lossTangentAt(position), im: y };
      };
      const terminated = (position: Ratio, other: Ratio): PortView => {
        const view = terminate(look, 2, load(main, position));
        return second ? terminate(view, 3, load(second, other)) : view;
      };
      const at = (position: Ratio, other: Ratio = position): CarrierView =>
        second
          ? asCarrier(terminated(position, assembly.ganged ? position : other))
          : throughOne(look, load(main, position));
      const throughMain = levelThroughOne(look);
      const level = second
        ? (g: number, position: Ratio, other: Ratio): number => loaded(at(position, other), g)
        : (g: number, position: Ratio): number => {
            const C = main.capacitanceAt(position);
            return throughMain(g, w * C * main.lossTangentAt(position), w * C);
          };
      const levelWith = second
        ? undefined
        : (g: number, C: Farads, loss: number): number => throughMain(g, w * C * loss, w * C);
      /** Where a tuning port's own reactance cancels what it sees, refined to the greatest response. */
      const tune = (tuning: TuningPort, index: number, view: PortView, response: (position: Ratio) => number): Peak => {
        const x = view.z[index][index].im;
        const wanted = x > 0 ? 1 / (w * x) : Number.POSITIVE_INFINITY;
        const within = wanted >= tuning.min && wanted <= tuning.max;
        const low = positionOf(tuning, wanted * 0.9);
        const high = positionOf(tuning, wanted * 1.1);
        const position = climb(response, Math.min(low, high), Math.max(low, high));
        return { position, other: position, within: within || (position > 1e-6 && position < 1 - 1e-6), wanted };
      };
      return {
        frequency,
        at,
        level,
        levelWith,
        peak(g) {
          const withDetector = terminate(look, 0, { re: g, im: 0 });
          if (!second) return tune(main, 2, withDetector, (p) => level(g, p, p));
          if (assembly.ganged) {
            const view = terminate(withDetector, 3, load(second, 0.5));
            const alone = tune(main, 2, view, (p) => level(g, p, p));
            return { ...alone, other: alone.position };
          }
          // Each circuit alone first, with the other well off tune, then by turns: the hand's own way.
          let other = tune(second, 3, terminate(withDetector, 2, load(main, 0)), () => 0).position;
          let peak: Peak = { position: 0, other, within: true };
          for (let round = 0; round < 4; round++) {
            peak = tune(main, 2, terminate(withDetector, 3, load(second, other)), (p) => level(g, p, other));
            other = tune(second, 3, terminate(withDetector, 2, load(main, peak.position)), (o) =>
              level(g, peak.position, o),
            ).position;
          }
          return { ...peak, other };
        },
      };
    },
  };
}

/** `terminate` for the one tuning port of most sets, worked out only where it is looked at. */
function throughOne({ open, z }: PortView, y: Complex): CarrierView {
  const size = y.re * y.re + y.im * y.im;
  if (!(size > 0)) return { open: open[0], z: z[0][0], tunedOpen: open[1], tunedByDetector: z[1][0] };
  const factor = divide({ re: 1, im: 0 }, { re: z[2][2].re + y.re / size, im: z[2][2].im - y.im / size });
  const intoTuning = multiply(open[2], factor);
  const byDetector = multiply(z[2][0], factor);
  return {
    open: subtract(open[0], multiply(z[0][2], intoTuning)),
    z: subtract(z[0][0], multiply(z[0][2], byDetector)),
    tunedOpen: subtract(open[1], multiply(z[1][2], intoTuning)),
    tunedByDetector: subtract(z[1][0], multiply(z[1][2], byDetector)),
  };
}

/**
 * |open/(1 + g·z)| of the same as a quotient of two straight lines in Y, the tuning's admittance:
 * |a + b·Y| / |c + d·Y|, where b = a·z_tt − z_0t·open_t and d = c·z_tt − g·z_0t². A dial asks for it thousands of times.
 */
function levelThroughOne({ open, z }: PortView): (g: number, yr: number, yi: number) => number {
  const [a, z0, zt, z0t] = [open[0], z[0][0], z[2][2], z[0][2]];
  const b = subtract(multiply(a, zt), multiply(z0t, open[2]));
  const q = multiply(z0t, z0t);
  return (g, yr, yi) => {
    const vr = a.re + b.re * yr - b.im * yi;
    const vi = a.im + b.re * yi + b.im * yr;
    const cr = 1 + g * z0.re;
    const ci = g * z0.im;
    const dr = cr * zt.re - ci * zt.im - g * q.re;
    const di = cr * zt.im + ci * zt.re - g * q.im;
    const wr = cr + dr * yr - di * yi;
    const wi = ci + dr * yi + di * yr;
    return Math.sqrt((vr * vr + vi * vi) / (wr * wr + wi * wi));
  };
}

/** Places a slider or turning coil is told apart in; each needs a solver of its own. */
const FINEST = 4096;

function coilTuned(assembly: Assembly): TunedNetwork {
  const ports: Port[] = [assembly.carrierPort, assembly.tunedPort];
  const made = new Map<number, LinearSolver>();
  const solverAt = (position: Ratio): LinearSolver => {
    const key = Math.round(position * FINEST) / FINEST;
    let solver = made.get(key);
    if (!solver) made.set(key, (solver = linearSolver(assembly.baseAt(key), ports)));
    return solver;
  };
  return {
    at(frequency) {
      const at = (position: Ratio): CarrierView => asCarrier(solverAt(position).look(frequency));
      return {
        frequency,
        at,
        level: (g, position) => loaded(at(position), g),
        peak(g) {
          const steps = 32;
          let best = 0;
          let largest = -1;
          for (let i = 0; i <= steps; i++) {
            const size = loaded(at(i / steps), g);
            if (size > largest) [largest, best] = [size, i];
          }
          const position = climb(
            (p) => loaded(at(p), g),
            Math.max(0, best - 1) / steps,
            Math.min(steps, best + 1) / steps,
            0.2 / FINEST,
          );
          return { position, other: position, within: position > 1e-3 && position < 1 - 1e-3 };
        },
      };
    },
  };
}

const asCarrier = (view: PortView): CarrierView => ({
  open: view.open[0],
  z: view.z[0][0],
  tunedOpen: view.open[1],
  tunedByDetector: view.z[1][0],
});

/** Voltage left at the detector when it loads the set with a conductance. */
export const loaded = ({ open, z }: CarrierView, conductance: number): number =>
  magnitude(open) / Math.hypot(1 + conductance * z.re, conductance * z.im);

const nearer = (x: number, a: number, b: number): boolean => Math.abs(x - a) <= Math.abs(x - b);

/** Golden-section search for the top of a single hill. */
function climb(height: (x: number) => number, low: number, high: number, near = 1e-6): number {
  const g = (Math.sqrt(5) - 1) / 2;
  let a = low;
  let b = high;
  let c = b - g * (b - a);
  let d = a + g * (b - a);
  let fc = height(c);
  let fd = height(d);
  for (let i = 0; i < 40 && b - a > near; i++) {
    if (fc >= fd) {
      b = d;
      d = c;
      fd = fc;
      c = b - g * (b - a);
      fc = height(c);
    } else {
      a = c;
      c = d;
      fc = fd;
      d = a + g * (b - a);
      fd = height(d);
    }
  }
  // An end of the scale is a top too when the hill lies beyond it.
  const middle = (a + b) / 2;
  const candidates = [low, middle, high];
  return candidates.reduce((best, x) => (height(x) > height(best) ? x : best), middle);
}
