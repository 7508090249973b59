import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { receive } from '../src/engine/reception/path/receive.ts';
import { readValue } from '../src/engine/set/read.ts';

// Common practice, no source.
const galena = JSON.parse(readFileSync(new URL('../examples/medium-wave-galena.json', import.meta.url), 'utf8'));
const hear = (change: object) => {
  const read = readValue({ ...galena, ...change });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return receive(read.set);
};
const longWave = {
  ...galena.place,
  stations: [{ name: 'Two Hundred', frequency: '200 kHz', fieldStrength: '50 mV/m', modulation: '80 %' }],
};
const circuit = (...more: object[]) => ({
  place: longWave,
  arrangement: {
    kind: 'elements',
    elements: [
      { kind: 'inductor', name: 'L', from: 'top', to: 'earth', inductance: '2 mH', q: 80 },
      { kind: 'capacitor', name: 'Ca', from: 'aerial', to: 'top', capacitance: '100 pF' },
      { kind: 'tuning', name: 'C', from: 'top', to: 'earth' },
      ...more,
    ],
  },
});

describe('what the trade knows', () => {
  it('with a 200 kHz carrier and no detector nothing is heard; with one it is loud', () => {
    const [deaf] = hear(circuit()).stations;
    expect(deaf.tunedCircuitVoltage).toBeGreaterThan(0.1);
    expect(deaf.heard).toBe('not heard');
    expect(deaf.soundPressureLevel).toBeLessThan(-60);
    const [heard] = hear(circuit({ kind: 'detector', name: 'D', from: 'top', to: 'out' })).stations;
    expect(['loud', 'comfortable']).toContain(heard.heard);
  });

  it('phones straight across the tuned circuit hear nothing either: the carrier alone moves no diaphragm', () => {
    const [joined] = hear(circuit({ kind: 'resistor', name: 'R', from: 'top', to: 'out', resistance: '1 Ω' })).stations;
    expect(joined.heard).toBe('not heard');
  });

  it('more capacitance lowers the resonant frequency, and meshing vanes is more capacitance', () => {
    const { dial } = hear({});
    const [open, meshed] = [dial.points[0], dial.points[dial.points.length - 1]];
    expect(meshed.capacitance!).toBeGreaterThan(open.capacitance!);
    expect(meshed.frequency).toBeLessThan(open.frequency);
    const more = hear({ tuning: { ...galena.tuning, trimmer: '50 pF' } }).dial;
    expect(more.highest).toBeLessThan(dial.highest);
    expect(more.lowest).toBeLessThan(dial.lowest);
  });
});
