import type { DetectorDescription } from '../../../engine/kinds/detectors/detector-schema.ts';
import { capital } from '../../../engine/units/format.ts';

/** What a detector is called where its full name has no room, the longest first. */
export function detectorShortNames(detector: DetectorDescription): readonly string[] {
  switch (detector.kind) {
    case 'galena':
      return [`Galena, ${detector.spot} spot`, 'Galena'];
    case 'mineral':
      return [capital(detector.mineral)];
    case 'germanium':
      return detector.make === 'gold-bonded' ? ['Gold-bonded germanium'] : ['Germanium diode', 'Germanium'];
    case 'schottky':
      return [`Schottky ${detector.type}`, detector.type];
    case 'silicon':
      return ['Silicon diode', 'Silicon'];
    case 'valve':
      return ['Diode valve', 'Valve'];
    case 'exponential':
      return ['By the exponential law'];
    case 'measured':
      return ['As measured'];
  }
}
