import { fitDecay } from '../../src/engine/measure/decay-fit.ts';
import { fitDetector } from '../../src/engine/measure/detector-fit.ts';
import { fitDial } from '../../src/engine/measure/dial-fit.ts';
import type { Fitted } from '../../src/engine/measure/fitted.ts';
import { fitResonance } from '../../src/engine/measure/resonance-fit.ts';
import { fitWidth } from '../../src/engine/measure/width-fit.ts';
import { gaussian, uniform } from '../../src/engine/numerics/random.ts';
import { exponentialDetector } from '../../src/engine/parts/detector/exponential.ts';
import { temperatureVoltage } from '../../src/engine/units/quantities.ts';

/** A bench measured once: each figure beside its truth. */
export type Outcome = readonly (readonly [name: string, fitted: Fitted, truth: number])[];

/** Readings of invented parts with normal errors, one bench a call. */
export function simulatedBenches(seed: number) {
  const random = uniform(seed);
  const normal = gaussian(random);
  const between = (a: number, b: number) => a + (b - a) * random();
  const decades = (a: number, b: number) => 10 ** between(Math.log10(a), Math.log10(b));
  const whole = (a: number, b: number) => Math.floor(between(a, b + 1));
  const several = <T>(n: number, item: (i: number) => T) => Array.from({ length: n }, (_, i) => item(i));

  /** Stations on a dial, to the whole kHz, one of them read far off if `misread`. */
  const dial = (misread: boolean, [fewest, most] = [4, 11]) => {
    const L = decades(120e-6, 2.5e-3);
    const strays = between(15e-12, 90e-12);
    const capacitor = { minimum: between(8e-12, 20e-12), maximum: between(330e-12, 560e-12) };
    const span = capacitor.maximum - capacitor.minimum;
    const sigma = between(0.002, 0.012);
    const n = whole(fewest, most);
    const readings = several(n, () => {
      const C = capacitor.minimum + span * between(0.03, 0.97) + strays;
      const frequency = Math.round(1 / (2 * Math.PI * Math.sqrt(L * C)) / 1e3) * 1e3;
      const exact = (1 / ((2 * Math.PI * frequency) ** 2 * L) - strays - capacitor.minimum) / span;
      return { position: exact + sigma * normal(), frequency };
    }).sort((a, b) => a.position - b.position);
    const bad = misread ? whole(1, n - 2) : -1;
    if (misread) readings[bad].position += (random() < 0.5 ? -1 : 1) * between(0.12, 0.25);
    const fit = fitDial(readings, capacitor);
    return { fit, bad, L, strays };
  };

  return {
    dial,
    measured: {
      resonance: (): Outcome => {
        const L = decades(80e-6, 3e-3);
        const C0 = between(3e-12, 30e-12);
        const sigma = decades(1e-4, 5e-3);
        const fit = fitResonance(
          several(whole(4, 8), () => {
            const capacitance = between(50e-12, 600e-12);
            const f = 1 / (2 * Math.PI * Math.sqrt(L * (capacitance + C0)));
            return { capacitance, frequency: f * Math.exp(sigma * normal()) };
          }),
        );
        return [
          ['inductance', fit.inductance, L],
          ['selfCapacitance', fit.selfCapacitance, C0],
        ];
      },
      dial: (): Outcome => {
        const { fit, L, strays } = dial(false);
        return [
          ['inductance', fit.inductance, L],
          ['strayCapacitance', fit.strayCapacitance, strays],
        ];
      },
      detector: (): Outcome => {
        const [Is, n, Rs] = [decades(1e-8, 5e-6), between(1.02, 1.9), decades(5, 200)];
        const temperature = between(288, 305);
        const device = exponentialDetector({ saturationCurrent: Is, ideality: n, seriesResistance: Rs, temperature });
        const sigma = between(0.003, 0.03);
        const top = n * 0.0257 * Math.log(2e-3 / Is) + 2e-3 * Rs;
        const count = whole(8, 15);
        const fit = fitDetector(
          several(count, (i) => {
            const voltage = 0.02 * (top / 0.02) ** (i / (count - 1));
            return { voltage, current: device.current(voltage) * Math.exp(sigma * normal()) };
          }),
          temperature,
        );
        return [
          ['saturationCurrent', fit.saturationCurrent, Is],
          ['ideality', fit.ideality, n],
          ['seriesResistance', fit.seriesResistance, Rs],
          ['zeroBiasResistance', fit.zeroBiasResistance, (n * temperatureVoltage(temperature)) / Is],
        ];
      },
      width: (): Outcome => {
        const [f0, Q, height] = [decades(1.6e5, 1.6e6), decades(10, 400), between(0.3, 3)];
        const sigma = between(0.003, 0.03);
        const count = whole(7, 21);
        const fit = fitWidth(
          several(count, (i) => {
            const frequency = f0 * (1 + ((4.4 * i) / (count - 1) - 2.2) / (2 * Q));
            const level = height / Math.sqrt(1 + Q ** 2 * (frequency / f0 - f0 / frequency) ** 2);
            return { frequency, level: level * Math.exp(sigma * normal()) };
          }),
        );
        return [
          ['resonance', fit.resonance, f0],
          ['q', fit.q, Q],
        ];
      },
      decay: (): Outcome => {
        const rate = 48e3;
        const [f0, Q] = [between(600, rate / 6), decades(6.3, 100)];
        const [amplitude, phase, offset] = [between(0.2, 0.9), between(-3, 3), 0.01 * normal()];
        const sigma = amplitude * decades(5e-4, 0.02);
        const count = Math.min(600, Math.floor(((6 * Q) / (Math.PI * f0)) * rate));
        const fit = fitDecay(
          several(count, (i) => {
            const t = i / rate;
            const wave = Math.exp((-Math.PI * f0 * t) / Q) * Math.cos(2 * Math.PI * f0 * t + phase);
            return amplitude * wave + offset + sigma * normal();
          }),
          rate,
        );
        return [
          ['frequency', fit.frequency, f0],
          ['q', fit.q, Q],
        ];
      },
    } satisfies Readonly<Record<string, () => Outcome>>,
  };
}

/** Share of so many benches whose 90 % range holds the truth, for each figure: of those benches that give it. */
export function coverageOf(measure: () => Outcome, benches: number): ReadonlyMap<string, number> {
  const counts = new Map<string, { held: number; given: number }>();
  for (let i = 0; i < benches; i++)
    for (const [name, { range }, truth] of measure()) {
      const { held, given } = counts.get(name) ?? { held: 0, given: 0 };
      counts.set(name, { held: held + (truth >= range[0] && truth <= range[1] ? 1 : 0), given: given + 1 });
    }
  return new Map([...counts].map(([name, { held, given }]) => [name, held / given]));
}
