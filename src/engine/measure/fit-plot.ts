import { linearLeastSquares } from '../numerics/qr.ts';
import { temperatureVoltage } from '../units/quantities.ts';
import type { QuantityKind } from '../units/quantity-kind.ts';
import { reachOf } from './fitted.ts';
import { junctionCurrent, SUPPOSED_TEMPERATURE } from './junction.ts';
import type { Measured } from './measurement.ts';
import type { MeasurementKind } from './measurements.ts';
import { type AudibilityReadings, audibilityLevels, deviationOfTrial } from './phones-fit.ts';
import type { Network } from './reading-fields.ts';
import { type Recording, ringingOf } from './record.ts';
import { capacitanceOn, positionOn } from './scale-of-capacitor.ts';

/** What runs along an axis of a fit: a reading by the key of its field, or a figure that follows from readings. */
export interface FitAxis {
  readonly key: string;
  /** Left out for a number without a unit. */
  readonly quantity?: QuantityKind;
  /** Of readings numbered in their order. */
  readonly isCount?: true;
}

/** The readings of a measurement with what was fitted through them, SI. */
export interface FitPlot {
  readonly x: FitAxis;
  readonly y: FitAxis;
  /** With half of the 90 % range of y, where it is known of a single reading. */
  readonly points: readonly {
    readonly x: number;
    readonly y: number;
    readonly reach?: number;
    readonly isSuspect?: boolean;
  }[];
  /** Along rising or falling x; empty where nothing is fitted. */
  readonly curve: readonly { readonly x: number; readonly y: number }[];
  /** Reading less fit, by point, in the unit of y; empty without a curve, and where it runs through all points by itself. */
  readonly residuals: readonly number[];
  /** 90 % range of a curve that is one value everywhere, in the unit of y. */
  readonly band?: readonly [number, number];
  /** What is read off the curve, with half of its 90 % range along x. */
  /** One figure follows, which the plot has no prediction of. */
  readonly isOfOneFigure?: true;
  readonly readOff?: { readonly x: number; readonly y: number; readonly reach: number };
}

type Read = Readonly<Record<string, unknown>>;
type Plotted = (values: Read, fit: Measured) => FitPlot | undefined;

const CURVE_POINTS = 120;
/** Samples of a recording that are drawn: the oscillation is strongest there. */
const MOST_SAMPLES = 400;

const listOf = (values: Read, key: string) => values[key] as readonly Readonly<Record<string, number>>[];
const figureOf = ({ figures }: Measured, name: string): number => figures[name]?.value ?? Number.NaN;

/** Evenly from the lowest to the highest of some values, a little beyond both. */
function along(values: readonly number[], beyond = 0): number[] {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const more = beyond * (high - low);
  return Array.from({ length: CURVE_POINTS + 1 }, (_, i) => low - more + ((high - low + 2 * more) * i) / CURVE_POINTS);
}

function plotOf(
  [x, y]: readonly [FitAxis, FitAxis],
  points: FitPlot['points'],
  model?: (x: number) => number,
  beyond = 0,
): FitPlot {
  if (!model || !points.every((point) => Number.isFinite(model(point.x))))
    return { x, y, points, curve: [], residuals: [] };
  return {
    x,
    y,
    points,
    curve: along(
      points.map((point) => point.x),
      beyond,
    )
      .map((at) => ({ x: at, y: model(at) }))
      .filter((point) => Number.isFinite(point.y)),
    residuals: points.map((point) => point.y - model(point.x)),
  };
}

/** A shape with the height that follows the readings best. */
function scaled(points: FitPlot['points'], shape: (x: number) => number): (x: number) => number {
  const [over, under] = points.reduce(
    ([a, b], point) => [a + point.y * shape(point.x), b + shape(point.x) ** 2],
    [0, 0],
  );
  return (x) => (over / under) * shape(x);
}

const FREQUENCY = { key: 'frequency', quantity: 'frequency' } as const;
const CAPACITANCE = { key: 'capacitance', quantity: 'capacitance' } as const;
const VOLTAGE = { key: 'voltage', quantity: 'voltage' } as const;
const CURRENT = { key: 'current', quantity: 'current' } as const;
const LEVEL = { key: 'level', quantity: 'voltage' } as const;
const REACTANCE = { key: 'reactance', quantity: 'resistance' } as const;

const resonance: Plotted = (values, fit) => {
  const [L, Cs] = [figureOf(fit, 'inductance'), figureOf(fit, 'selfCapacitance')];
  return plotOf(
    [CAPACITANCE, FREQUENCY],
    listOf(values, 'points').map((p) => ({ x: p.capacitance, y: p.frequency })),
    (C) => 1 / (2 * Math.PI * Math.sqrt(L * (C + Cs))),
  );
};

const dial: Plotted = (values, fit) => {
  if (!fit.dial) return undefined;
  const { capacitor } = fit.dial;
  const [L, stray] = [figureOf(fit, 'inductance'), figureOf(fit, 'strayCapacitance')];
  const suspects = new Set(fit.suspects?.map(({ index }) => index));
  return plotOf(
    [FREQUENCY, { key: 'position' }],
    listOf(values, 'readings').map((p, i) => ({
      x: p.frequency,
      y: p.position,
      ...(suspects.has(i) && { isSuspect: true }),
    })),
    (f) => positionOn(f, { ...capacitor, L, stray }),
  );
};

const width: Plotted = (values, fit) => {
  const points = listOf(values, 'points').map((p) => ({ x: p.frequency, y: p.level }));
  const [f0, Q] = [figureOf(fit, 'resonance'), figureOf(fit, 'q')];
  return plotOf(
    [FREQUENCY, LEVEL],
    points,
    scaled(points, (f) => 1 / Math.hypot(1, Q * (f / f0 - f0 / f))),
    0.15,
  );
};

function ringing({ samples, sampleRate }: Recording, fit: Measured): FitPlot | undefined {
  const [f, Q] = [figureOf(fit, 'frequency'), figureOf(fit, 'q')];
  const points = Array.from({ length: Math.min(samples.length, MOST_SAMPLES) }, (_, i) => ({
    x: i / sampleRate,
    y: samples[i],
  }));
  const terms = (t: number): readonly number[] => {
    const left = Math.exp((-Math.PI * f * t) / Q);
    return [left * Math.cos(2 * Math.PI * f * t), left * Math.sin(2 * Math.PI * f * t), 1];
  };
  const { x } = linearLeastSquares(
    points.flatMap((p) => terms(p.x)),
    points.map((p) => p.y),
    3,
  );
  return plotOf([{ key: 'time', quantity: 'time' }, { key: 'sample' }], points, (t) =>
    terms(t).reduce((sum, term, i) => sum + x[i] * term, 0),
  );
}

const junction =
  (read: (values: Read) => FitPlot['points']): Plotted =>
  (values, fit) => {
    const Vt = temperatureVoltage((values.temperature as number | undefined) ?? SUPPOSED_TEMPERATURE.temperature);
    const [Is, n, Rs] = ['saturationCurrent', 'ideality', 'seriesResistance'].map((name) => figureOf(fit, name));
    const leakage = fit.figures.leakage?.value ?? Number.POSITIVE_INFINITY;
    return plotOf(
      [VOLTAGE, CURRENT],
      read(values),
      (V) => junctionCurrent(V, Math.log(Is), n, Math.log(Rs), Vt) + V / leakage,
    );
  };

const readAsIs = (values: Read) => listOf(values, 'points').map((p) => ({ x: p.voltage, y: p.current }));

/** Of a digital meter, Ω. */
const USUAL_METER = 1e7;

const readByVoltmeter = (values: Read) => {
  const [source, meter = USUAL_METER] = [values.source as number, values.meterResistance as number | undefined];
  return listOf(values, 'points').map(({ resistor, voltage }) => ({
    x: voltage,
    y: (source - voltage) / resistor - voltage / meter,
  }));
};

const readByBridge = (values: Read) =>
  listOf(values, 'points').map(({ source, upper, otherUpper, otherLower }) => {
    const voltage = (source * otherLower) / (otherUpper + otherLower);
    return { x: voltage, y: (source - voltage) / upper };
  });

/** The aerial's own capacitance: what stands in its place, with a series capacitor taken off. */
const aerial =
  (
    equivalents: (values: Read, fit: Measured) => readonly { frequency: number; C: number; series?: number }[],
  ): Plotted =>
  (values, fit) => {
    const [Ca, fn] = [figureOf(fit, 'capacitance'), figureOf(fit, 'naturalFrequency')];
    return plotOf(
      [FREQUENCY, CAPACITANCE],
      equivalents(values, fit).map(({ frequency, C, series }) => ({
        x: frequency,
        y: series === undefined ? C : (C * series) / (series - C),
      })),
      (f) => {
        const theta = (Math.PI * f) / (2 * fn);
        return (Ca * Math.tan(theta)) / theta;
      },
      0.1,
    );
  };

const substituted = aerial((values, { dial }) =>
  dial
    ? listOf(values, 'points').map((p) => ({
        frequency: p.frequency,
        C: capacitanceOn(p.without, dial.capacitor) - capacitanceOn(p.with, dial.capacitor),
        series: p.series,
      }))
    : [],
);

const replaced = aerial((values) =>
  listOf(values, 'points').map(({ frequency, capacitance, series }) => ({ frequency, C: capacitance, series })),
);

const addedResistance: Plotted = (values, fit) => {
  const points = listOf(values, 'points').map((p) => ({ x: p.added, y: p.level }));
  const R = figureOf(fit, 'circuitResistance');
  return plotOf(
    [{ key: 'added', quantity: 'resistance' }, LEVEL],
    points,
    scaled(points, (added) => 1 / (R + added)),
  );
};

/** The calibration as it is read off: straight between its points in logarithms; and the station on it. */
const calibration: Plotted = (values, fit) => {
  const points = listOf(values, 'calibration')
    .map((p) => ({ x: p.emf, y: p.current }))
    .sort((a, b) => a.x - b.x);
  const current = (emf: number): number => {
    const at = Math.max(
      1,
      points.findIndex(({ x }) => x >= emf),
    );
    const [a, b] = [points[at - 1], points[at]];
    return a.y * (emf / a.x) ** (Math.log(b.y / a.y) / Math.log(b.x / a.x));
  };
  const { value, range } = fit.figures.emf;
  return {
    x: { key: 'emf', quantity: 'voltage' },
    y: CURRENT,
    points,
    curve: along(points.map(({ x }) => x)).map((x) => ({ x, y: current(x) })),
    residuals: [],
    isOfOneFigure: true,
    readOff: { x: value, y: values.current as number, reach: (range[1] - range[0]) / 2 },
  };
};

/** Each trial with the error of one, and their mean with its range. */
const trials: Plotted = (values, fit) => {
  const levels = audibilityLevels({
    ...(values as Omit<AudibilityReadings, 'shunts'>),
    shunts: listOf(values, 'trials').map(({ shunt }) => shunt),
  });
  const { value, range } = fit.figures.levelAboveThreshold;
  const reach = reachOf() * deviationOfTrial(levels);
  return {
    x: { key: 'trial', isCount: true },
    y: { key: 'levelAboveThreshold', quantity: 'level' },
    points: levels.map((y, i) => ({ x: i + 1, y, reach })),
    curve: [0.5, levels.length + 0.5].map((x) => ({ x, y: value })),
    residuals: levels.map((y) => y - value),
    band: range,
    isOfOneFigure: true,
  };
};

/** Reactance over frequency: of a coil L with its self-capacitance, of all others L and C in series. */
const reactance =
  (isCoil: boolean): Plotted =>
  (_values, fit) => {
    if (!fit.sweep) return undefined;
    const w = (f: number) => 2 * Math.PI * f;
    const L = (fit.figures.inductance ?? fit.figures.primaryInductance)?.value ?? 0;
    const Cs = fit.figures.selfCapacitance?.value ?? 0;
    const C = figureOf(fit, 'capacitance');
    const hasModel = isCoil ? L > 0 : C > 0 && fit.figures.inductance !== undefined;
    return plotOf(
      [FREQUENCY, REACTANCE],
      fit.sweep.map((p) => ({ x: p.frequency, y: p.reactance })),
      hasModel ? (f) => (isCoil ? (w(f) * L) / (1 - w(f) ** 2 * L * Cs) : w(f) * L - 1 / (w(f) * C)) : undefined,
    );
  };

/** Widths to each side of a peak that are drawn. */
const WIDTHS = 4;

const transmission: Plotted = (values, fit) => {
  const [f0, Q] = [figureOf(fit, 'resonance'), figureOf(fit, 'loadedQ')];
  const points = (values.file as Network).points
    .map(({ frequency, s }) => ({
      x: frequency,
      y: Math.hypot((s[1].re + s[2].re) / 2, (s[1].im + s[2].im) / 2),
    }))
    .filter((p) => Math.abs(p.x - f0) <= (WIDTHS * f0) / Q);
  return plotOf(
    [FREQUENCY, { key: 'transmission' }],
    points,
    scaled(points, (f) => 1 / Math.hypot(1, Q * (f / f0 - f0 / f))),
  );
};

/** Of a single reading there is nothing to fit: its figures stand beside the calculated ones. */
const none: Plotted = () => undefined;

const PLOTS: Readonly<Record<MeasurementKind, Plotted>> = {
  resonance,
  dial,
  detector: junction(readAsIs),
  width,
  decay: (values, fit) =>
    ringing({ samples: values.samples as readonly number[], sampleRate: values.sampleRate as number }, fit),
  'decay-record': (values, fit) => {
    const { samples, sampleRate } = values.record as Recording;
    return ringing({ samples: ringingOf(samples), sampleRate }, fit);
  },
  'equal-levels': none,
  'capacitance-width': none,
  'detector-leakage': junction(readAsIs),
  'detector-voltmeter': junction(readByVoltmeter),
  'detector-bridge': junction(readByBridge),
  'mutual-inductance': none,
  'double-hump': none,
  'aerial-substitution': substituted,
  'aerial-replacement': replaced,
  'aerial-resistance': addedResistance,
  'earth-electrodes': none,
  'earth-comparison': none,
  'phones-resistance': none,
  'phones-impedance': none,
  'phones-sound-card': none,
  audibility: trials,
  'field-strength': calibration,
  'analyser-coil': reactance(true),
  'analyser-capacitor': reactance(false),
  'analyser-aerial': reactance(false),
  'analyser-earpiece': reactance(false),
  'analyser-transformer': reactance(true),
  'analyser-peak': transmission,
};

/**
 * What a measurement is drawn by: its readings, what was fitted through them, and what is left.
 * @param kind one of `MEASUREMENTS`
 * @param values as its fields are read, SI
 * @param fit what follows from them
 * @returns points, curve and residuals; undefined for a kind of single readings
 */
export const fitPlotOf = (kind: MeasurementKind, values: Read, fit: Measured): FitPlot | undefined =>
  PLOTS[kind](values, fit);
