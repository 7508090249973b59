import fc from 'fast-check';
import { expect, it } from 'vitest';
import { baseOf, begin, endRun, type History, record, redo, undo } from './history.ts';

it('takes a whole drag back in one step, and starts each of its changes from where the drag began', () => {
  let history = record(begin('a'), 'b', 'first');
  for (const written of ['c', 'd', 'e']) {
    expect(baseOf(history, 'drag 1')).toBe('b');
    history = record(history, written, 'drag', 'drag 1');
  }
  history = endRun(history);
  expect(baseOf(history, 'drag 1')).toBe('e');
  expect(undo(history).present.written).toBe('b');
  expect(redo(undo(history)).present.written).toBe('e');
  expect(redo(record(undo(history), 'z', 'other')).present.written).toBe('z');
});

it('undoes to the beginning and redoes to the end, whatever was done', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.integer(), fc.option(fc.constantFrom('p', 'q'), { nil: undefined }))),
      (changes) => {
        let history: History = begin(-1.5);
        for (const [written, run] of changes) history = record(history, written, '', run);
        const end = history.present.written;
        const steps = history.past.length;
        for (let i = 0; i < steps; i++) history = undo(history);
        expect(history.present.written).toBe(-1.5);
        expect(undo(history).present.written).toBe(-1.5);
        for (let i = 0; i < steps; i++) history = redo(history);
        expect(history.present.written).toBe(end);
      },
    ),
  );
});
