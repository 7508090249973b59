import { type AveragedCurrents, type AveragedDetector, averagedCurrents } from '../parts/detector/averaged.ts';
import type { Assembly } from './assembly.ts';

/**
 * Two equal devices as one, seen from the carrier's port and the output's.
 * Full-wave: each has half the carrier, both feed the load: mean 2·I0(V/2), and the whole winding sees I1(V/2).
 * Doubler: each has the whole carrier and half the direct voltage, in series for the load: mean I0(V, v0/2), and the
 * carrier feeds both: 2·I1. Power is the same either way: V·I1/2 is what both devices take.
 */
export function asOneDevice(single: AveragedDetector, wiring: Assembly['wiring']): AveragedDetector {
  if (wiring === 'single') return single;
  const inner = averagedCurrents();
  if (wiring === 'full-wave') {
    return {
      detector: {
        ...single.detector,
        currentScale: 2 * single.detector.currentScale,
        slopeVoltage: 2 * single.detector.slopeVoltage,
        law: undefined,
      },
      at(V, v0, out: AveragedCurrents) {
        single.at(V / 2, v0, inner);
        out.mean = 2 * inner.mean;
        out.fundamental = inner.fundamental;
        out.meanByAmplitude = inner.meanByAmplitude;
        out.meanByDirect = 2 * inner.meanByDirect;
        out.fundamentalByAmplitude = inner.fundamentalByAmplitude / 2;
        out.fundamentalByDirect = inner.fundamentalByDirect;
      },
    };
  }
  return {
    detector: { ...single.detector, currentScale: single.detector.currentScale, law: undefined },
    at(V, v0, out: AveragedCurrents) {
      single.at(V, v0 / 2, inner);
      out.mean = inner.mean;
      out.fundamental = 2 * inner.fundamental;
      out.meanByAmplitude = inner.meanByAmplitude;
      out.meanByDirect = inner.meanByDirect / 2;
      out.fundamentalByAmplitude = 2 * inner.fundamentalByAmplitude;
      out.fundamentalByDirect = inner.fundamentalByDirect;
    },
  };
}
