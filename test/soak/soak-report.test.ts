import { expect, it } from 'vitest';
import { reportOf } from './soak-report.ts';

const RUN = { minutes: 10, seed: 1, threads: 2, listened: 60 };

it('a report keeps the notes of the one before, and has a place for them', () => {
  const first = reportOf([], RUN, '');
  expect(first).toContain('tries about 6 times as many cases');
  const noted = `${first}\nThe machine did much other work.\n`;
  expect(reportOf([], { ...RUN, seed: 2 }, noted)).toBe(noted.replace('from seed 1 on', 'from seed 2 on'));
});
