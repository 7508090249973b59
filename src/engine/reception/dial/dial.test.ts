import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { setCircuit } from '../../built/set-circuit.ts';
import { readValue } from '../../set/read.ts';
import { receiver } from '../path/receive-station.ts';
import { tuningCurve } from './dial.ts';

const example = (file: string) => JSON.parse(readFileSync(`examples/${file}`, 'utf8'));
function curveOf(written: unknown) {
  const read = readValue(written);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return tuningCurve(receiver(setCircuit(read.set)));
}

describe('the scale', () => {
  it.each(readdirSync('examples').filter((f) => f.endsWith('.json')))('%s goes one way', (file) => {
    const { points } = curveOf(example(file));
    for (const [i, { position }] of points.entries())
      if (i > 0) expect(position).toBeLessThanOrEqual(points[i - 1].position);
  });

  it('ends where an aerial near its own resonance would turn it back', () => {
    const set = example('medium-wave-galena.json');
    set.aerial = {
      kind: 'impedance',
      points: [
        { frequency: '600 kHz', resistance: '30 Ω', reactance: -1200 },
        { frequency: '1 MHz', resistance: '35 Ω', reactance: -640 },
        { frequency: '1.5 MHz', resistance: '45 Ω', reactance: -330 },
      ],
      effectiveHeight: '5 m',
    };
    set.arrangement.aerialTap = 20;
    const { points, highest, frequencyAt } = curveOf(set);
    for (const [i, { position }] of points.entries()) if (i > 0) expect(position).toBeLessThan(points[i - 1].position);
    expect(points[points.length - 1].position).toBeLessThan(0.01);
    expect(frequencyAt(0)).toBeGreaterThan(0.97 * highest);
  });

  it.each([
    ['series', 500],
    ['parallel', 693],
    ['absorption', 909],
    ['absorption', 1251],
  ])('with a trap (%s, %i kHz) goes one way, and says where the pointer does not', (kind, kHz) => {
    const set = example('medium-wave-galena.json');
    // With more loss the trap's dent at the top of the scale is no fold.
    set.earth = { kind: 'measured', resistance: '50 Ω' };
    set.arrangement.traps = [{ kind, stops: `${kHz} kHz`, inductance: '100 µH' }];
    set.place.stations[0].frequency = `${kHz} kHz`;
    const read = readValue(set);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const ready = receiver(setCircuit(read.set));
    const { points, folds, lowest, highest, frequencyAt } = tuningCurve(ready);
    expect(folds.length).toBeGreaterThan(0);
    for (const [i, { position }] of points.entries())
      if (i > 0) expect(position).toBeLessThanOrEqual(points[i - 1].position + 1e-9);
    const readings = Array.from({ length: 201 }, (_, i) => frequencyAt(i / 200));
    for (const [i, f] of readings.entries()) if (i > 0) expect(f).toBeLessThanOrEqual(readings[i - 1]);
    // Outside the folds the scale shows where each frequency is peaked, as the circuit itself has it.
    const isFolded = (f: number) => folds.some(([from, to]) => f > from && f < to);
    const places = Array.from({ length: 60 }, (_, i) => lowest * (highest / lowest) ** ((i + 0.5) / 60));
    const outside = places.filter((f) => !isFolded(f) && ready.network.at(f).peak(ready.smallConductance).within);
    expect(outside.length).toBeGreaterThan(20);
    for (const f of outside) {
      const { position } = ready.network.at(f).peak(ready.smallConductance);
      expect(Math.abs(frequencyAt(position) / f - 1), `${f / 1e3} kHz`).toBeLessThan(0.02);
    }
  });
});
