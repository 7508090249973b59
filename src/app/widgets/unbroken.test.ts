import { expect, test } from 'vitest';
import { unbroken } from './unbroken.ts';

test('a figure keeps its unit on its line, and nothing else is joined', () => {
  expect(unbroken('A higher aerial: 12 m (now 8 m), +5.5 dB and 69 strands of 0.07 mm')).toBe(
    'A higher aerial: 12\u00a0m (now 8\u00a0m), +5.5\u00a0dB and 69\u00a0strands of 0.07\u00a0mm',
  );
  expect(unbroken('loses 1 station; tap at 51 turns')).toBe('loses 1 station; tap at 51\u00a0turns');
});
