import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readValue } from '../../set/read.ts';
import { directionShare } from './direction.ts';
import { receive } from './receive.ts';

const written = JSON.parse(readFileSync(new URL('../../../../examples/frame-aerial.json', import.meta.url), 'utf8'));
const hear = (direction: string | undefined, bearings: [string, string]) => {
  const read = readValue({
    ...written,
    aerial: { ...written.aerial, direction },
    place: {
      ...written.place,
      stations: bearings.map((bearing, i) => ({
        name: `S${i}`,
        frequency: `${900 + 40 * i} kHz`,
        fieldStrength: '50 mV/m',
        bearing,
      })),
    },
  });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return receive(read.set).stations;
};

// The figure of eight of a loop: textbook. Its null is at a right angle to the plane of the frame.
describe('where a frame points', () => {
  it('hears by the cosine of the bearing, and keeps a little in its null', () => {
    const [along, across] = hear('30°', ['30°', '120°']);
    expect(across.emf / along.emf).toBeLessThan(0.035 * (940 / 900));
    const [, half] = hear('30°', ['30°', '90°']);
    expect(half.emf / (along.emf * (940 / 900))).toBeCloseTo(0.5, 3);
  });

  it('turned to the wanted station loses one at a right angle, from either side alike', () => {
    const ratio = (bearing: string) => hear(undefined, ['10°', bearing])[0].disturbances[0]?.carrierRatio ?? 99;
    expect(ratio('100°') - ratio('10°')).toBeGreaterThan(25);
    expect(ratio('190°')).toBeCloseTo(ratio('10°'), 6);
  });

  it('wires hear all round', () => {
    expect(directionShare({ kind: 'measured', capacitance: 1e-10, resistance: 1, effectiveHeight: 1 }, 0, 90)).toBe(1);
  });
});
