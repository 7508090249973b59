import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCoordinate } from '../../units/coordinate.ts';
import { checkStations } from './check.ts';
import { readPosition } from './coordinates.ts';
import { stationsToTable } from './export.ts';
import { assignColumn, openStationTable, stationsFromTable } from './import.ts';
import type { Station } from './station.ts';
import { readTable } from './text-table.ts';

const load = (text: string) => {
  const { rows, columns, hasHeader } = openStationTable(text);
  return stationsFromTable(rows, columns, hasHeader);
};

// Every station and place here is invented.
describe('station tables', () => {
  it('reads a plain table with headings', () => {
    const { stations, problems } = load(
      'Station,Freq (kHz),Power kW,Latitude,Longitude,Kind\nMoor Radio,999,50,52.5,-1.25,speech\n"Harbour, Old",1053,"0.25",53°30\'N,2° 15\' W,music\n',
    );
    expect(problems).toEqual([]);
    expect(stations).toEqual([
      {
        name: 'Moor Radio',
        frequency: 999e3,
        power: 5e4,
        position: { latitude: 52.5, longitude: -1.25 },
        programme: 'speech',
      },
      {
        name: 'Harbour, Old',
        frequency: 1053e3,
        power: 250,
        position: { latitude: 53.5, longitude: -2.25 },
        programme: 'music',
      },
    ]);
  });

  it('reads semicolons with decimal commas, tabs, bars, units in cells', () => {
    expect(load('name;f;km;azimuth\nA;198;412,5;87\n').stations[0]).toEqual({
      name: 'A',
      frequency: 198e3,
      distance: 412500,
      bearing: 87,
    });
    expect(load('frequency\tpower\tposition\n0.198 MHz\t400 W\t52.1 N, 1.2 E\n').stations[0]).toMatchObject({
      name: '198 kHz',
      frequency: 198e3,
      power: 400,
      position: { latitude: 52.1, longitude: 1.2 },
    });
    const drawn = load('| Name | kHz | Mast |\n|---|---:|---|\n| Fen | 1000 | 1/4 λ |\n| Hill | 1200 | 90 m |');
    expect(drawn.stations.map((s) => s.mastHeight)).toEqual([299.792458 / 4, 90]);
  });

  it('reads points of the compass in a column of bearings', () => {
    const { stations, problems } = load(
      'name;kHz;bearing\nA;999;north-east\nB;1053;SSW\nC;1107;45°\nD;1161;W\nE;1197;87\n',
    );
    expect(problems).toEqual([]);
    expect(stations.map((s) => s.bearing)).toEqual([45, 202.5, 45, 270, 87]);
  });

  it('takes thousands in any form, and a point before three digits for what the other numbers show it to be', () => {
    const power = (...cells: string[]) =>
      load(`name\tkHz\tkW\n${cells.map((cell) => `A\t999\t${cell}`).join('\n')}`).stations.map((s) => s.power);
    expect(power('1 000', '1\u202f000', "1'000", '1.000,5')).toEqual([1e6, 1e6, 1e6, 1000.5e3]);
    expect(power('1,000', '2.5')).toEqual([undefined, 2500]);
    expect(power('1.000', '2.5')).toEqual([1000, 2500]);
    expect(power('1.000', '2,5')).toEqual([undefined, 2500]);
    expect(load(`name,kHz,kW\nA,999,${'0'.repeat(70)}5\n`).problems[0].fact).toMatchObject({
      code: 'not-a-quantity',
      hint: { code: 'too-long' },
    });
    const arabic = load(
      'name\tkHz\tkW\tlat\tlon\nA\t\u0669\u0669\u0669\t\u0665\u066b\u0665\t\u0663\u0660 N\t\uff13\uff11 E',
    );
    expect(arabic.stations[0]).toMatchObject({
      frequency: 999e3,
      power: 5500,
      position: { latitude: 30, longitude: 31 },
    });
  });

  it('guesses columns without headings', () => {
    const { stations } = load('Moor Radio;999;50 kW;52.5N;1.25W\nFen Radio;1053;1 kW;53.5N;0.5E\n');
    expect(stations[1]).toEqual({
      name: 'Fen Radio',
      frequency: 1053e3,
      power: 1000,
      position: { latitude: 53.5, longitude: 0.5 },
    });
  });

  it('lets a column be assigned by hand', () => {
    const { rows, columns, hasHeader } = openStationTable('what,where,x\nA,1053,5\nB,1089,7\n');
    const power = assignColumn(columns, 2, 'power');
    const { stations } = stationsFromTable(rows, assignColumn(power, 0, 'name'), hasHeader);
    expect(stations.map(({ name, power }) => [name, power])).toContainEqual(['B', 7000]);
    expect(assignColumn(power, 1, 'power').filter(({ field }) => field === 'power')).toHaveLength(1);
  });

  it('says what it could not read, row by row, and keeps the rest', () => {
    const { stations, rowOf, problems } = load(
      'name,khz,kW,lat,lon\nA,999,abc,52,0\nB,,5,52,0\nC,1053,"1,500",52,0\nD,1089,5,95,0\nE,1107,5,52,\nF,12 mH,5,52,0\n',
    );
    expect(stations.map(({ name }) => name)).toEqual(['A', 'C', 'D', 'E']);
    expect(rowOf).toEqual([2, 4, 5, 6]);
    expect(problems.map(({ row, column }) => `${row} ${column?.header ?? ''}`)).toEqual([
      '2 kW',
      '3 ',
      '4 kW',
      '5 lat',
      '6 lat',
      '7 khz',
    ]);
    expect(problems[2].fact).toMatchObject({ code: 'not-a-quantity', hint: { code: 'thousand-or-fraction' } });
  });

  it('survives what is no table', () => {
    for (const text of [
      '',
      '\n\n',
      '"',
      '"""',
      ',,,',
      '__proto__,constructor\n1,2',
      '\u0000',
      '<script>alert(1)</script>',
    ])
      expect(load(text).stations).toEqual([]);
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 300 }), (text) => Array.isArray(load(text).stations)),
    );
    expect(() => readTable('x'.repeat(5_000_001))).toThrow(/too-many-characters/);
    expect(() => readTable('a,b\n'.repeat(20_002))).toThrow(/too-many-rows/);
  });

  it('refuses cells longer than any number or position by their length, and shows their beginning', () => {
    const number = load(`name,khz\n${'9'.repeat(1e6)},${'9'.repeat(1e6)}\n`);
    expect(number.stations).toEqual([]);
    expect(number.problems.map((p) => p.fact)).toEqual([
      { code: 'not-a-quantity', given: '9'.repeat(40), kind: 'frequency', hint: { code: 'too-long' } },
    ]);
    const position = load(`name,khz,position\nA,999,${'1 '.repeat(1e5)}\n`);
    expect(position.stations).toEqual([{ name: 'A', frequency: 999e3 }]);
    expect(position.problems).toHaveLength(1);
    expect(position.problems[0].fact).toEqual({ code: 'not-a-position', given: '1 '.repeat(20) });
  });

  it('writes what it can read again', () => {
    const name = fc
      .string({ unit: 'grapheme', minLength: 1, maxLength: 40 })
      .map((text) => text.trim())
      .filter((text) => text !== '' && !text.includes('\uFEFF'));
    const optional = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });
    const station = fc.record({
      name,
      frequency: fc.integer({ min: 148500, max: 1710000 }),
      power: optional(fc.integer({ min: 1, max: 2e6 })),
      position: optional(
        fc.record({
          latitude: fc.double({ min: -90, max: 90, noNaN: true }).map((x) => Number(x.toFixed(5))),
          longitude: fc.double({ min: -180, max: 180, noNaN: true }).map((x) => Number(x.toFixed(5))),
        }),
      ),
      modulation: optional(fc.integer({ min: 1, max: 125 }).map((x) => x / 100)),
      hours: optional(fc.constantFrom('06:00-22:00', '24h')),
    });
    const close = (a: Station[], b: readonly Station[]) => {
      expect(b).toHaveLength(a.length);
      for (const [n, { power, frequency, modulation, ...rest }] of a.entries()) {
        expect(b[n]).toMatchObject(JSON.parse(JSON.stringify(rest)));
        expect(b[n].frequency).toBeCloseTo(frequency, 6);
        if (power === undefined) expect(b[n].power).toBeUndefined();
        else expect(b[n].power).toBeCloseTo(power, 6);
        if (modulation === undefined) expect(b[n].modulation).toBeUndefined();
        else expect(b[n].modulation).toBeCloseTo(modulation, 9);
      }
    };
    fc.assert(
      fc.property(fc.array(station, { minLength: 1, maxLength: 6 }), (stations) => {
        close(stations, load(stationsToTable(stations)).stations);
      }),
    );
  });

  it('writes nothing a spreadsheet would run', () => {
    const text = stationsToTable([
      { name: '=1+1', frequency: 999e3 },
      { name: '@sum', frequency: 1053e3, power: 5 },
    ]);
    expect(text).toBe("name,frequency (kHz),power (kW)\r\n'=1+1,999,\r\n'@sum,1053,0.005\r\n");
  });
});

describe('coordinates', () => {
  it.each([
    ['52.5', 'latitude', 52.5],
    ['−1,25', 'longitude', -1.25],
    ['52°30′15″N', 'latitude', 52.50416666],
    ["1° 15' W", 'longitude', -1.25],
    ['S33 30', 'latitude', -33.5],
    ['95', 'latitude', undefined],
    ['1 W', 'latitude', undefined],
    ['52 70 N', 'latitude', undefined],
    ['-5 S', 'latitude', undefined],
    ['12 O', 'longitude', undefined],
    ['abc', 'latitude', undefined],
  ] as const)('%s', (text, axis, expected) => {
    const read = readCoordinate(text, axis);
    if (expected === undefined) expect(read).toBeUndefined();
    else expect(read).toBeCloseTo(expected, 6);
  });

  it.each([
    '52.5, -1.25',
    '52.5N 1.25W',
    '52.5;-1.25',
    '52°30′N, 1°15′W',
    '52.5N/1.25W',
    '52.5,-1.25',
    '52,5 N 1,25 W',
  ])('position %s', (text) => {
    const position = readPosition(text);
    expect(position?.latitude).toBeCloseTo(52.5, 9);
    expect(position?.longitude).toBeCloseTo(-1.25, 9);
  });
});

describe('checks of a list', () => {
  it('finds slips and leaves ordinary lists alone', () => {
    const good: Station[] = [
      { name: 'Moor', frequency: 999e3, power: 5e4, position: { latitude: 52, longitude: 0 }, hours: '06:00-22:00' },
      { name: 'Moor', frequency: 999e3, power: 1e3, position: { latitude: 55, longitude: 0 } },
      { name: 'Fen', frequency: 198e3, fieldStrength: 0.01 },
    ];
    expect(checkStations(good)).toEqual([]);
    const kinds = (station: Partial<Station>) =>
      checkStations([...good, { ...good[0], name: 'X', frequency: 1053e3, ...station }]).map(({ kind }) => kind);
    expect(kinds({ frequency: 1000e3 })).toEqual(['raster']);
    expect(kinds({ frequency: 400e3 })).toEqual(['band']);
    expect(kinds({ power: 5e7 })).toEqual(['power']);
    expect(kinds({ power: 0.05 })).toEqual(['power']);
    expect(kinds({ power: 0 })).toEqual(['power']);
    expect(kinds({ name: 'moor ', frequency: 999e3 })).toEqual(['duplicate']);
    expect(kinds({ modulation: 30 })).toEqual(['modulation']);
    expect(kinds({ position: undefined })).toEqual(['place']);
    expect(kinds({ hours: 'evenings' })).toEqual(['hours']);
    expect(kinds({ position: { latitude: 95, longitude: 0 } })).toEqual(['place']);
    expect(
      checkStations([{ ...good[0], distance: 5e5 }], { site: { latitude: 53, longitude: 0 } }).map(({ kind }) => kind),
    ).toEqual(['place']);
  });
});
