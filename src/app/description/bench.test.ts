import { describe, expect, test } from 'vitest';
import { completeDescription, readValue } from '../../engine/index.ts';
import { beginWords } from '../../outputs/words/index.ts';
import { benchFieldAt, knownOf } from './bench.ts';

describe('what lies on the bench', () => {
  test('nothing is known of what is left empty', () => {
    expect(knownOf({})).toEqual({});
    expect(knownOf({ former: '  ', place: '' })).toEqual({});
  });

  test('each field goes to its place', () => {
    const known = knownOf({ former: '63 mm', wire: '26 SWG', turns: '56', capacitor: '2 × 365 pF', load: 'phones' });
    expect(known).toEqual({
      coils: [{ formerDiameter: '63 mm', turns: 56, wire: { size: '26 SWG' } }],
      tuning: { maximum: '2 × 365 pF' },
      load: { kind: 'phones' },
    });
  });

  test.each([
    ['52.6, 0.4', '52.6°', '0.4°'],
    ['52.6° N, 0.4° W', '52.6° N', '0.4° W'],
    ['-33.9 18.4', '-33.9°', '18.4°'],
  ])('%s are coordinates', (place, latitude, longitude) => {
    expect(knownOf({ place })).toEqual({ place: { position: { latitude, longitude } } });
  });

  test.each([
    ['former', '68', { coils: [{ formerDiameter: '68 mm' }] }],
    ['wire', '0.35', { coils: [{ wire: { size: '0.35 mm' } }] }],
    ['capacitor', '500', { tuning: { maximum: '500 pF' } }],
    ['capacitor', '2x365', { tuning: { maximum: '2 × 365 pF' } }],
    ['aerialLength', '20', { aerial: { length: '20 m' } }],
  ] as const)('of %s the number %s takes the usual unit', (field, typed, known) => {
    expect(knownOf({ [field]: typed })).toEqual(known);
  });

  test('a town is a name', () => {
    expect(knownOf({ place: 'Little Withy, North Bank' })).toEqual({ place: { name: 'Little Withy, North Bank' } });
  });

  test.each([
    [
      'North Bank, 909 kHz, 100 kW, 60 km',
      { name: 'North Bank', frequency: '909 kHz', power: '100 kW', distance: '60 km' },
    ],
    [
      'North Bank; 60 km; 909; 100 kW',
      { name: 'North Bank', frequency: '909 kHz', power: '100 kW', distance: '60 km' },
    ],
    ['North Bank 909 kHz 100 kW', { name: 'North Bank', frequency: '909 kHz', power: '100 kW' }],
    ['North Bank\t909\t3 mV/m', { name: 'North Bank', frequency: '909 kHz', fieldStrength: '3 mV/m' }],
    ['909', { frequency: '909 kHz' }],
    ['Copper Coast; 1215; 10; 20', { name: 'Copper Coast', frequency: '1215 kHz', power: '10 kW', distance: '20 km' }],
  ])('a station is read from "%s"', (stations, station) => {
    expect(knownOf({ stations })).toEqual({ place: { stations: [station] } });
  });

  test.each([
    ['former', '63 mV'],
    ['wire', 'thick'],
    ['turns', 'many'],
    ['capacitor', '63 mm'],
    ['aerialLength', '4 kHz'],
    ['aerialHeight', 'high'],
    ['stations', 'North Bank, loud'],
  ] as const)('what is refused of %s is said beside it', (field, text) => {
    const read = readValue(completeDescription(knownOf({ turns: '56', [field]: text }), beginWords.names));
    expect(read.ok ? [] : read.problems.map(({ path }) => benchFieldAt(path))).toEqual([field]);
  });
});
