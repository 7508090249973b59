import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { inRoot } from '../../scripts/support/paths.mjs';
import { stationCurves } from '../../src/engine/reception/curves.ts';
import { readText } from '../../src/engine/set/read.ts';
import { receiveRanged } from '../../src/engine/uncertainty/receive-ranged.ts';
import { formatNumber } from '../../src/engine/units/format.ts';
import { wavesOfSet } from '../../src/outputs/explain/index.ts';
import { resonanceText } from '../../src/outputs/plots/index.ts';

const EXAMPLES = readdirSync(inRoot('examples')).filter((file) => file.endsWith('.json'));

it.each(EXAMPLES)('%s: plots and waves have the figures of the path', (file) => {
  const read = readText(readFileSync(inRoot('examples', file), 'utf8'));
  if (!read.ok) throw new Error('the example does not read');
  const { set } = read;
  const reception = receiveRanged(set);
  const { best, stations, dial } = reception;
  for (const index of best.slice(0, 3)) {
    const station = stations[index];
    if (!station.dial) continue;
    const curves = stationCurves(set, index, [dial.lowest, dial.highest], { figures: station })!;
    const { resonance, band, detector } = curves;
    expect(resonance.loadedQ).toBe(station.loadedQ);
    expect(resonance.bandwidth).toBe(station.bandwidth);
    expect(resonanceText(resonance)).toContain(`Loaded Q ${formatNumber(station.loadedQ, 2)}.`);
    // The curve drawn is as sharp as its figures say: broad ones are not symmetrical, and lie partly outside.
    const top = Math.max(...resonance.points.map(({ level }) => level));
    const within = resonance.points.filter(({ level }) => level >= top - 10 * Math.log10(2));
    const step = resonance.points[1].frequency - resonance.points[0].frequency;
    const width = within.length * step;
    if (station.loadedQ > 20)
      expect(Math.abs(width - station.bandwidth), station.name).toBeLessThan(1.5 * step + 0.05 * station.bandwidth);
    expect(band.stations[band.wanted].level).toBeCloseTo(20 * Math.log10(station.detectorVoltage * Math.SQRT1_2), 6);
    expect(detector.operating.amplitude).toBe(station.detectorVoltage);
    const waves = wavesOfSet(set, reception, index)!;
    expect(waves.loadedQ).toBe(Math.max(station.loadedQ, 1));
    expect(waves.atDetector).toBe(station.detectorVoltage);
    expect(waves.atTuned).toBe(station.tunedCircuitVoltage);
    expect(waves.atAerial).toBe(station.emf);
  }
});
