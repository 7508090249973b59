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
});
