import { expect, it } from 'vitest';
import { readTableText } from './table-text.ts';

it('takes the good rows of a table and leaves out, with the reason, those a description would refuse', () => {
  const { stations, problems } = readTableText({
    about: 'table',
    text: 'Station,kHz,kW,lat,long\nHeron Radio,612,10,53.1 N,2.2 W\nOtter Sound,5000,5,52 N,1 W\nStoat Calling,810,2,51.3 N,0.4 E',
  });
  expect(stations.map(({ name }) => name)).toEqual(['Heron Radio', 'Stoat Calling']);
  expect(problems.filter((problem) => problem.startsWith('Row 3'))).toEqual([
    'Row 3 is left out: Otter Sound: expected a frequency of at most 2 MHz, received "5000 kHz".',
  ]);
});
