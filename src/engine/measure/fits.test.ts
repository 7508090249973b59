import { expect, test } from 'vitest';
import reference from '../../../reference/measure-fits.json' with { type: 'json' };
import { fitDecay } from './decay-fit.ts';
import { fitDetector } from './detector-fit.ts';
import { type DialReading, fitDial } from './dial-fit.ts';
import type { Fitted } from './fitted.ts';
import type { JunctionPoint } from './junction.ts';
import { fitResonance, type ResonancePoint } from './resonance-fit.ts';
import { fitWidth, type LevelReading } from './width-fit.ts';

interface Row {
  readonly kind: string;
  readonly points: unknown;
  readonly readings: readonly DialReading[];
  readonly capacitor: { readonly minimum: number; readonly maximum: number };
  readonly temperature: number;
  readonly samples: readonly number[];
  readonly sampleRate: number;
  readonly suspects: readonly number[];
  readonly fit: Readonly<Record<string, number>>;
  readonly standardError: Readonly<Record<string, number>>;
}
const rows = reference.rows as unknown as readonly Row[];

const fitOf = (row: Row): Readonly<Record<string, unknown>> => {
  switch (row.kind) {
    case 'resonance':
      return { ...fitResonance(row.points as ResonancePoint[]) };
    case 'dial':
      return { ...fitDial(row.readings, row.capacitor) };
    case 'detector':
      return { ...fitDetector(row.points as JunctionPoint[], row.temperature) };
    case 'width':
      return { ...fitWidth(row.points as LevelReading[]) };
    default:
      return { ...fitDecay(row.samples, row.sampleRate) };
  }
};

for (const kind of ['resonance', 'dial', 'detector', 'width', 'decay'])
  test(`${kind}: parameters within 0.0005 standard error of SciPy’s, standard errors within 0.5 %`, () => {
    const own = rows.filter((row) => row.kind === kind);
    expect(own.length).toBeGreaterThanOrEqual(8);
    for (const row of own) {
      const got = fitOf(row);
      if (kind === 'dial') expect((got.suspects as { index: number }[]).map((s) => s.index)).toEqual(row.suspects);
      for (const [name, value] of Object.entries(row.fit)) {
        const figure = got[name] as Fitted;
        const s = row.standardError[name];
        const report = `${kind} ${rows.indexOf(row)} ${name} => ${figure.value} ± ${figure.standardError} != ${value} ± ${s}`;
        expect(Math.abs(figure.value - value) / s, report).toBeLessThan(5e-4);
        expect(Math.abs(figure.standardError / s - 1), report).toBeLessThan(5e-3);
        expect(figure.range[0], report).toBeLessThan(figure.value);
        expect(figure.range[1], report).toBeGreaterThan(figure.value);
      }
    }
  });
