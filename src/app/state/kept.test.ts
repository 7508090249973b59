import fc from 'fast-check';
import { expect, it } from 'vitest';
import * as History from './history.ts';
import { continueHistory, keptHistory, keptText, readKept } from './kept.ts';

const written = fc.dictionary(fc.string(), fc.jsonValue());

it('reads what it keeps', () => {
  fc.assert(
    fc.property(
      fc.record(
        {
          revision: fc.nat(),
          written,
          fileName: fc.string({ minLength: 1 }),
          isSaved: fc.boolean(),
          lastValid: written,
          station: fc.nat(),
          tab: fc.string(),
        },
        { requiredKeys: ['revision', 'written', 'fileName', 'isSaved', 'tab'] },
      ),
      (kept) => {
        expect(readKept(keptText(kept))).toEqual(JSON.parse(JSON.stringify(kept)));
      },
    ),
  );
});

it('reads what the first versions kept, and nothing out of what is no document', () => {
  expect(readKept('{"written": {"name": "A"}, "fileName": "a.json", "understood": {"name": "B"}, "tab": "x"}')).toEqual(
    {
      revision: 0,
      written: { name: 'A' },
      fileName: 'a.json',
      isSaved: false,
      lastValid: { name: 'B' },
      tab: 'x',
    },
  );
  for (const text of ['', '{', 'null', '[]', '{"written": 3}', '{"written": [1]}', '{"written": {"format": "fain'])
    expect(readKept(text)).toBeUndefined();
});

const some = (n: number) => ({ n });
const steps = (...numbers: number[]) =>
  numbers.slice(1).reduce((now, n) => History.record(now, some(n), `${n}`), History.begin(some(numbers[0])));
const undoAll = (history: History.History): unknown[] =>
  history.past.length === 0 ? [history.present.written] : [history.present.written, ...undoAll(History.undo(history))];

it('continues the steps from before the page was closed', () => {
  const before = keptHistory(History.undo(steps(1, 2, 3)), undefined);
  const same = continueHistory(before, History.begin(some(2)))!;
  expect(undoAll(same.history)).toEqual([some(2), some(1)]);
  expect(History.redo(same.history).present.written).toEqual(some(3));

  const later = continueHistory(before, History.begin(some(7)))!;
  expect(undoAll(later.history)).toEqual([some(7), some(2), some(1)]);

  const changed = continueHistory(before, steps(2, 8))!;
  expect(undoAll(changed.history)).toEqual([some(8), some(2), some(1)]);
});

it('knows which step the file holds, and takes nothing from what is no history', () => {
  const history = steps(1, 2, 3);
  const saved = history.past[1].written;
  const before = structuredClone(keptHistory(history, saved));
  expect(continueHistory(before, History.begin(some(3)))!.saved).toBe(before.past[1].written);
  expect(continueHistory(keptHistory(history, undefined), History.begin(some(3)))!.saved).toBeUndefined();
  for (const bad of [undefined, null, 3, {}, { past: [], present: {}, future: [] }, { past: [1], present: 2 }])
    expect(continueHistory(bad, History.begin(some(3)))).toBeUndefined();
});
