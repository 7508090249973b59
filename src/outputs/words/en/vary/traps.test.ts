import { expect, it } from 'vitest';
import { trapEffectWords } from './traps.ts';

const trap = {
  trap: 0,
  kind: 'parallel',
  inductance: 296e-6,
  capacitance: 81.3e-12,
  frequency: 1026e3,
  stopped: { station: 1, name: 'Stopped', by: 47 },
} as const;
const target = { station: 0, name: 'Heard', loss: 0, isLost: false };
const linesWith = (clearance: readonly [number, number]) =>
  trapEffectWords({ ...trap, target: { ...target, clearance } });

it('the resonance is in kilohertz, as on the dial', () => {
  expect(linesWith([40, 12])[0]).toMatch(/resonance 1026 kHz\.$/);
});

it('what the trap changes between two stations is told beside what was', () => {
  expect(linesWith([40, 12])).toContain('Behind Heard, Stopped is then 40 dB below; without the trap 12 dB below.');
});

it('what is the same with the trap and without is told once', () => {
  const never = Number.POSITIVE_INFINITY;
  expect(linesWith([never, never])).toContain('Behind Heard, Stopped is not heard, with the trap or without.');
  expect(linesWith([30.2, 29.9])).toContain('Behind Heard, Stopped is 30 dB below, with the trap or without.');
});
