import { expect, it } from 'vitest';
import { readStationTable } from '../../src/engine/set/station-table.ts';
import { rowProblem } from '../../src/outputs/words/index.ts';

it('takes the good rows of a table and leaves out, with the reason, those a description would refuse', () => {
  const { stations, problems } = readStationTable({
    about: 'table',
    text: 'Station,kHz,kW,lat,long\nHeron Radio,612,10,53.1 N,2.2 W\nOtter Sound,5000,5,52 N,1 W\nStoat Calling,810,2,51.3 N,0.4 E',
  });
  expect(stations.map(({ name }) => name)).toEqual(['Heron Radio', 'Stoat Calling']);
  expect(problems.filter(({ row }) => row === 3).map(rowProblem)).toEqual([
    'Row 3 is left out: Otter Sound: expected a frequency of at most 2 MHz, got "5000 kHz".',
  ]);
});

it('leaves the kept stations’ slips to be seen, with the rows they are in', () => {
  const { stations, problems } = readStationTable({
    about: 'table',
    text: 'Station,kHz,kW,lat,long\nHeron,612,10,53,2\nOtter,5000,5,52,1\nHeron,612,10,53,2\nStoat,soon,2,51,0',
  });
  expect(stations).toHaveLength(2);
  expect(problems.map(rowProblem)).toEqual([
    expect.stringMatching(/^Row 5, kHz, is left out: "soon" is not read as a frequency/),
    expect.stringMatching(/^Row 3 is left out: Otter: expected a frequency of at most 2 MHz/),
    expect.stringMatching(/^Row 4: Heron at 612 kHz seems to be in the list twice \(row 2 too\)/),
  ]);
});

it('keeps as many as a description holds, and names the first few of each kind of problem', () => {
  const rows = (row: string, count: number) => Array.from({ length: count }, (_, i) => row.replaceAll('#', String(i)));
  const head = 'Station,kHz,kW,lat,long';
  const full = readStationTable({ about: 'table', text: [head, ...rows('S#,612,10,53,0.#', 1100)].join('\n') });
  expect(full.stations).toHaveLength(1000);
  expect(full.leftOut).toBe(100);
  expect(full.problems.filter(({ about }) => about.of === 'too-many')).toHaveLength(20);
  expect(full.problems.map(rowProblem).join('\n')).toMatch(
    /^Row 1002 is left out: A description holds at most 1000 stations\.$/m,
  );
  expect(full.problems.map(rowProblem).join('\n')).toMatch(/And 80 more of the same kind\.$/m);
  for (const bad of ['A,x,y,z,w', 'A,5000,0,99,2', 'A,612,0,99,2', 'A,612,"1,000",53,2']) {
    const { problems } = readStationTable({ about: 'table', text: [head, ...rows(bad, 5000)].join('\n') });
    expect(problems.length).toBeLessThan(120);
    expect(problems.map(rowProblem).join('\n')).toMatch(/And \d+ more of the same kind/);
  }
});
