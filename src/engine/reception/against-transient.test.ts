import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { setCircuit } from '../built/set-circuit.ts';
import { readValue } from '../set/read.ts';
import { detectByTransient } from '../solvers/transient/waveform-figures.ts';
import { receiver, receiveStation, TEST_TONE } from './path/receive-station.ts';

/**
 * The whole set, aerial to phones, cycle by cycle (pre-warped trapezoid on the same circuit) against the steady way.
 * Two methods of this project, made apart; the transient by itself is held to independent waveforms elsewhere.
 * Sizes found in the literature for the steady way: 0.2 dB of audio, 0.25 points of second harmonic when strong.
 */
const cases: [example: string, station: number][] = [
  ['medium-wave-galena', 2],
  ['medium-wave-galena', 0],
  ['medium-wave-germanium-amplifier', 4],
  ['medium-wave-germanium-amplifier', 7],
  ['long-wave-foil', 0],
  ['long-wave-foil', 1],
];

describe('reception against the same set cycle by cycle', () => {
  it.each(cases)('%s, station %i', (example, index) => {
    const read = readValue(
      JSON.parse(readFileSync(new URL(`../../../examples/${example}.json`, import.meta.url), 'utf8')),
    );
    if (!read.ok) throw new Error('the example does not read');
    const ready = receiver(setCircuit(read.set));
    const s = receiveStation(ready, read.set.place.stations[index]);
    const { circuit } = ready;
    const truth = detectByTransient(circuit.assembly.circuitAt(s.position, s.other), {
      devices: [circuit.detector],
      stations: [
        {
          frequency: s.station.frequency,
          emf: s.emf,
          modulation: [{ frequency: TEST_TONE, depth: Math.min(s.station.modulation, 1) }],
        },
      ],
      output: { node: 'out' },
      input: { node: circuit.assembly.carrierPort.from },
      // A coupling capacitor of 0.1 µF charges through some 150 kΩ.
      settle: example.includes('amplifier') ? 0.09 : 8e-3,
      duration: 6e-3,
      tones: [TEST_TONE],
    });
    const dB = (a: number, b: number) => 20 * Math.log10(a / b);
    expect(Math.abs(dB(s.audioVoltage, truth.tones[0].amplitude))).toBeLessThan(0.3);
    expect(Math.abs(dB(s.audio.directVoltage, truth.directVoltage))).toBeLessThan(0.3);
    expect(Math.abs(s.audio.secondHarmonic - truth.secondHarmonic)).toBeLessThan(0.015);
  });
});
