import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { inRoot } from '../scripts/support/paths.mjs';
import type { Adjustment, Domain } from '../src/engine/kinds/adjustment.ts';
import { readValue } from '../src/engine/set/read.ts';
import { adjustmentsOf } from '../src/engine/vary/adjustments.ts';
import { arbitrarySet } from './support/arbitrary-set.ts';
import { BASE, SETS } from './support/every-arrangement.ts';

const domainText = (domain: Domain): string => {
  switch (domain.is) {
    case 'choice':
      return domain.of.map(plainText).join(' | ');
    case 'whole':
      return `${domain.from} … ${domain.to}, whole, ${domain.scale}`;
    case 'series':
      return `${domain.from.toPrecision(6)} … ${domain.to.toPrecision(6)}, ${domain.series}`;
    case 'real':
      return `${domain.from.toPrecision(6)} … ${domain.to.toPrecision(6)}, ${domain.scale}, ${domain.digits} digits`;
  }
};
/** Values without the digits that rounding leaves. */
const plainText = (value: unknown): string =>
  JSON.stringify(value, (_, one) => (typeof one === 'number' ? Number(one.toPrecision(6)) : one));
/** Values that a builder would write, one at each end of what there is. */
function someOf(domain: Domain): readonly unknown[] {
  if (domain.is === 'choice') return [domain.of[0], domain.of[domain.of.length - 1]];
  return [domain.from, domain.to];
}
const editsText = ({ edits, domain }: Adjustment): string =>
  edits === undefined
    ? ''
    : ` · writes ${[...new Set(someOf(domain).map((value) => plainText(edits(value, value))))].join(' | ')}`;

const lineOf = (one: Adjustment): string =>
  `  ${one.id}: ${plainText(one.now)} → ${domainText(one.domain)} · ${one.effort}, for ${one.serves.join(', ')}${editsText(one)}`;

/** What may be adjusted on a set, as a list; in what another context adds or takes away too. */
function listed(name: string, written: unknown): string {
  const read = readValue(JSON.parse(JSON.stringify(written)));
  if (!read.ok) return '';
  const { set } = read;
  type Context = NonNullable<Parameters<typeof adjustmentsOf>[1]>;
  const of = (context?: Context): string[] => {
    const { all, together, forRange } = adjustmentsOf(set, context);
    return [
      ...all.map(lineOf),
      `  together: ${together.map((ids) => ids.join(' + ')).join(', ')}`,
      `  for range: ${forRange.map((ids) => ids.join(' + ')).join(', ')}`,
    ];
  };
  const plain = of();
  const other = (about: string, context: Context): string[] => {
    const lines = of(context);
    const changed = [
      ...plain.filter((line) => !lines.includes(line)).map((line) => ` -${line}`),
      ...lines.filter((line) => !plain.includes(line)).map((line) => ` +${line}`),
    ];
    return changed.length > 0 ? [` ${about}:`, ...changed] : [];
  };
  return [
    name,
    ...plain,
    ...other('station below the dial', { beyond: 'below' }),
    ...other('station above the dial', { beyond: 'above' }),
    ...other('another to the east', { against: { name: 'Radio Beech', frequency: 900e3, bearing: 90 } }),
    '',
  ].join('\n');
}

// What a builder may be told to change, by how much and for what trouble: kept whole, so that no limit moves unseen.
// Renewed by `npm test -- test/adjustments -u`.
test('what may be adjusted on the examples, on every arrangement and on sets of any kind', async () => {
  const examples = readdirSync(inRoot('examples'))
    .filter((file) => file.endsWith('.json'))
    .map((file) => listed(file, JSON.parse(readFileSync(inRoot(`examples/${file}`), 'utf8'))));
  const arrangements = Object.entries(SETS).map(([name, set]) => listed(name, { ...BASE, ...set }));
  const drawn = fc.sample(arbitrarySet(), { numRuns: 40, seed: 7 }).map((set, i) => listed(`drawn ${i + 1}`, set));
  await expect([...examples, ...arrangements, ...drawn].filter(Boolean).join('\n')).toMatchFileSnapshot(
    inRoot('test/output/adjustments.txt'),
  );
});
