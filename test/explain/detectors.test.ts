import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { detectorId } from '../../src/engine/kinds/models.ts';
import { receive } from '../../src/engine/reception/path/receive.ts';
import { readText } from '../../src/engine/set/read.ts';
import { receiveRanged } from '../../src/engine/uncertainty/receive-ranged.ts';
import { formatQuantity } from '../../src/engine/units/format.ts';
import { compareDetectorsOn } from '../../src/engine/vary/compare.ts';
import { filled } from '../../src/outputs/explain/story/figures.ts';
import { preparer } from '../../src/outputs/explain/story/prepared.ts';
import { story } from '../../src/outputs/explain/story/story.ts';
import { nameOfDetector } from '../../src/outputs/words/index.ts';

// `compare` is the outside here: the same detectors in the same set, worked out without any wave.
const EXAMPLES = readdirSync(inRoot('examples')).filter((file) => file.endsWith('.json'));

test.each(EXAMPLES)('%s: every detector looked at works at its own point, where compare has it', (file) => {
  const read = readText(readFileSync(inRoot('examples', file), 'utf8'));
  if (!read.ok) return;
  const { set } = read;
  const { best } = receive(set, {});
  const station = best[0];
  if (station === undefined) return;
  const reception = receiveRanged(set, { stations: [station] });
  const compared = compareDetectorsOn(set, station, undefined, false).filter(({ isOwn }) => !isOwn);
  const prepare = preparer(set, reception);
  const drawn = compared.map(({ description, carrierVoltage, directVoltage, loadedQ, soundPressureLevel }) => {
    const label = nameOfDetector(description);
    const { spec } = prepare({ rows: [], settings: { detector: detectorId(description) } }).waves;
    expect(spec.atDetector / carrierVoltage, `${label}: carrier at the detector`).toBeCloseTo(1, 6);
    expect(spec.loadedQ / Math.max(loadedQ, 1), `${label}: loaded Q`).toBeCloseTo(1, 6);
    return { label, id: detectorId(description), directVoltage, soundPressureLevel };
  });
  // The waves of a few are followed through the load: silicon must not show nothing where it is heard. Modulated little,
  // for the bend of the curve adds to the mean at full depth, and compare's figure is of the carrier.
  for (const { label, id, directVoltage } of drawn.filter((d) => /^(galena-good|germanium|silicon)$/.test(d.id))) {
    const { waves } = prepare({ rows: [], settings: { detector: id, neighbours: false, depth: 0.05 } });
    const mean = (waves.meanAt('phones', 0) + waves.meanAt('phones', 0.5e-3)) / 2;
    expect(Math.abs(20 * Math.log10(mean / directVoltage)), `${label}: direct voltage, dB`).toBeLessThan(1.5);
  }
});

test('the caption of detectors compared states the carriers at its rows, which differ by what they load', () => {
  const read = readText(readFileSync(inRoot('examples/spider-coil-earpiece.json'), 'utf8'));
  if (!read.ok) throw new Error('does not read');
  const scene = story().find(({ rows }) => rows.some((row) => row.with?.detector === 'silicon'))!;
  const reception = receive(read.set, {});
  const { rows, figures } = preparer(read.set, reception)(scene);
  const carriers = rows.map(({ waves }) => waves.spec.atDetector);
  expect(Math.max(...carriers) / Math.min(...carriers)).toBeGreaterThan(1.05);
  const [least, greatest] = [Math.min(...carriers), Math.max(...carriers)].map((v) => formatQuantity(v, 'voltage', 2));
  expect(filled(scene.caption, figures)).toContain(`carriers of ${least} to ${greatest}, as each loads`);
  expect(filled(scene.caption, preparer()(scene).figures)).toMatch(/a carrier of [\d.]+ mV at each/);
});
