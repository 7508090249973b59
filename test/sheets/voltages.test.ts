import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { receive } from '../../src/engine/reception/path/receive.ts';
import { readText, readValue } from '../../src/engine/set/read.ts';
import { formatQuantity } from '../../src/engine/units/format.ts';
import { textBoxes } from '../../src/outputs/scene/boxes.ts';
import { sheetsFor } from '../../src/outputs/sheets/index.ts';
import { BASE, SETS } from '../support/every-arrangement.ts';

const examples = readdirSync(inRoot('examples'))
  .filter((f) => f.endsWith('.json'))
  .map((file): [string, unknown] => [file, JSON.parse(readFileSync(inRoot('examples', file), 'utf8'))]);
const made = Object.entries(SETS).map(([name, more]): [string, unknown] => [name, { ...BASE, ...more }]);
const valves = [2, 4, 5, 6.3].map((volts): [string, unknown] => [
  `valve diode with a heater of ${volts} V`,
  {
    ...BASE,
    ...SETS.direct,
    detector: { kind: 'valve', heaterVoltage: `${volts} V`, ratedHeaterVoltage: `${volts} V` },
  },
]);

/** What a builder reads off the sheets that tell of supplies. */
function wordsOn(written: unknown) {
  const read = readText(JSON.stringify(written));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { set } = readValue(written) as typeof read;
  const sheets = sheetsFor(written, set, receive(set), { only: ['glance', 'wiring', 'bring-up', 'cautions'] });
  const words = sheets
    .flatMap(({ pages }) => pages.flatMap(({ blocks }) => blocks.flatMap(({ items }) => textBoxes(items))))
    .map(({ text }) => text)
    .join(' ');
  return { set, words };
}

test.each([...examples, ...made, ...valves])('%s: cells are of 1.5 V, heaters have their own voltage', (_, written) => {
  const { set, words } = wordsOn(written);
  const cells = [...words.matchAll(/([\d.]+ [mk]?V) cell/g)].map(([, volts]) => volts);
  for (const volts of cells) expect(volts).toBe('1.5 V');
  if (set.load.kind !== 'amplifier') expect(cells.length).toBeGreaterThan(0);
  const heaters = [...words.matchAll(/(?:supply of|Heater only:) ([\d.]+ [mk]?V)/g)].map(([, volts]) => volts);
  if (set.detector.kind === 'valve') {
    expect(heaters.length).toBe(2);
    for (const volts of heaters) expect(volts).toBe(formatQuantity(set.detector.heaterVoltage, 'voltage'));
    expect(words).toMatch(/fuse/);
  } else expect(heaters).toEqual([]);
});
