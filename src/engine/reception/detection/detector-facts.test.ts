import { expect, it } from 'vitest';
import type { DetectorDescription } from '../../kinds/detectors/detector-schema.ts';
import { DETECTOR_KINDS } from '../../parts/detector/library.ts';
import { USUAL_DETECTORS } from '../../vary/compare.ts';
import { detectorFacts } from './detector-facts.ts';

it('gives every kind its usual figures within their ranges, and a source that says how sure it is', () => {
  for (const { typical, range, source } of DETECTOR_KINDS) {
    expect(typical.saturationCurrent).toBeGreaterThanOrEqual(range.saturationCurrent[0]);
    expect(typical.saturationCurrent).toBeLessThanOrEqual(range.saturationCurrent[1]);
    expect(typical.ideality).toBeGreaterThanOrEqual(range.ideality[0]);
    expect(typical.ideality).toBeLessThanOrEqual(range.ideality[1]);
    expect(source.length).toBeGreaterThan(20);
  }
  for (const d of USUAL_DETECTORS) {
    expect(detectorFacts(d).of).toBe(d.kind === 'valve' ? 'valve' : 'library');
  }
});

it('gives the resistance that makes silicon insensitive near 0 V, and only for silicon', () => {
  const silicon = { kind: 'silicon', temperature: 300, wiring: 'single' } as DetectorDescription;
  const facts = detectorFacts(silicon);
  expect(facts.of === 'library' && facts.insensitiveNearZero! / 1e6).toBeCloseTo(15, -1);
  const others = USUAL_DETECTORS.filter(({ kind }) => kind !== 'silicon').map(detectorFacts);
  for (const other of others) expect(other).not.toHaveProperty('insensitiveNearZero');
});
