import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readText, receive } from '../../../../engine/index.ts';
import { dialScale } from './dial-scale.ts';
import { whatIsThere } from './there.ts';

const read = readText(readFileSync('examples/medium-wave-galena.json', 'utf8'));
if (!read.ok) throw new Error('the example does not read');
const reception = receive(read.set);
const scale = dialScale(reception.dial)!;
const at = (frequency: number): string => whatIsThere(reception, scale.positionOf(frequency), frequency);

describe('what the dial says where the pointer stands', () => {
  it('of a station tuned to, by its verdict', () => {
    const [first] = reception.best.map((i) => reception.stations[i]);
    expect(whatIsThere(reception, first.dial!.position, first.frequency, first)).toBe(
      `${first.name}, ${first.verdict}`,
    );
  });
  it('a little off a station: which, by how much, and what that costs', () => {
    expect(at(605e3)).toMatch(/^2 kHz above Saltmarsh Radio: /);
    expect(at(601e3)).toMatch(/^2 kHz below Saltmarsh Radio: /);
    expect(at(607e3)).toMatch(/\d dB below its maximum$/);
  });
  it('between stations: what comes through there', () => {
    expect(at(650e3)).toMatch(/^between stations; strongest: Saltmarsh Radio, \d+ dB below its maximum$/);
  });
  it('nothing comes through between stations that are not heard', () => {
    const silent = { ...reception, stations: reception.stations.map((s) => ({ ...s, heard: 'not heard' as const })) };
    expect(whatIsThere(silent, scale.positionOf(650e3), 650e3)).toBe('between stations, nothing heard here');
  });
});
