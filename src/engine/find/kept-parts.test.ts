import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { inRoot } from '../../../scripts/support/paths.mjs';
import { readValue } from '../set/read.ts';
import { frontEndsOf } from './choices.ts';
import { keepableParts, keepRefusal, withKept } from './kept-parts.ts';
import { readBox } from './read-box.ts';

const examples = readdirSync(inRoot('examples')).filter((file) => file.endsWith('.json'));
const textOf = (file: string): string => readFileSync(inRoot(`examples/${file}`), 'utf8');
const rich = JSON.parse(textOf('boxes/rich.json'));
/** One reel, little of it, and no plate, so that there is little to try. */
const box = readBox(
  JSON.stringify({
    ...rich,
    formers: rich.formers.filter((_: unknown, i: number) => i !== 2),
    wires: [{ ...rich.wires[0], length: '15 m' }],
    capacitors: rich.capacitors.slice(1, 3),
  }),
);
const PLACES = ['aerial', 'earth', 'coils', 'tuning', 'arrangement', 'detector', 'load', 'coils[0]', 'aerial.height'];

it.each(examples)('each part of %s is kept and leaves sets to be made, or is refused and changes nothing', (file) => {
  const read = readValue(JSON.parse(textOf(file)));
  if (!box.ok || !read.ok) throw new Error('an example does not read');
  const set = { read: read.set, written: read.written };
  for (const part of PLACES) {
    const kept = withKept(box, set, [part]);
    if (keepRefusal(read.set, part)) expect(kept, part).toEqual({ box: box.box, written: box.written });
    else {
      expect(kept.box, part).not.toEqual(box.box);
      expect(frontEndsOf(kept.box).length, part).toBeGreaterThan(0);
    }
  }
  expect(keepableParts(read.set)).toContain('load');
  expect(keepableParts(undefined)).toEqual([]);
});
