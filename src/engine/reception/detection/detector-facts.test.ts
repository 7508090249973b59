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
    const facts = detectorFacts(d).join(' ');
    expect(facts).toMatch(/Source: .*(looked up|memory)/);
    expect(facts).not.toMatch(/NaN|undefined/);
  }
});

it('says why silicon is deaf', () => {
  const silicon = { kind: 'silicon', temperature: 300, wiring: 'single' } as DetectorDescription;
  expect(detectorFacts(silicon).join(' ')).toMatch(/near 0 V its junction is 1[0-9] MΩ/);
});
