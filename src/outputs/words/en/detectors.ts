import type { DetectorDescription } from '../../../engine/kinds/detectors/detector-schema.ts';
import { detectorId } from '../../../engine/kinds/models.ts';
import { capital } from '../../../engine/units/format.ts';
import { optionName } from './fields/options.ts';

/** What a detector is called where its full name has no room, the longest first. */
export function detectorShortNames(detector: DetectorDescription): readonly string[] {
  switch (detector.kind) {
    case 'galena':
      return [`Galena, ${optionName('detector.spot', detector.spot)} spot`, 'Galena'];
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

/** Detectors by the id of the library, and the kinds that have no entry there. */
const NAMES: Readonly<Record<string, string>> = {
  perfect: 'Ideal detector',
  'galena-good': 'Galena and cat’s whisker, good spot',
  'galena-fair': 'Galena and cat’s whisker, fair spot',
  'galena-poor': 'Galena and cat’s whisker, poor spot',
  'iron-pyrites': 'Iron pyrites and cat’s whisker',
  'zincite-bornite': 'Zincite and bornite',
  carborundum: 'Carborundum',
  'silicon-crystal': 'Silicon crystal and cat’s whisker',
  germanium: 'Germanium diode (OA90, OA91, 1N34A kind)',
  'gold-bonded-germanium': 'Gold-bonded germanium diode (OA47, AAZ15 kind)',
  silicon: 'Silicon diode (1N4148 kind)',
  valve: 'Valve (thermionic diode)',
  exponential: 'Diode as described',
  measured: 'Measured detector',
};

/**
 * What a detector is called.
 * @param id of the library; `perfect`, `exponential` or `measured`. Schottky diodes go by their type.
 * @returns words for it
 */
export const detectorName = (id: string): string => (Object.hasOwn(NAMES, id) ? NAMES[id] : `Schottky diode ${id}`);

/**
 * What a described detector is called.
 * @param detector as a description has it
 * @returns the name of the device of the library that it means
 */
export const nameOfDetector = (detector: DetectorDescription): string => detectorName(detectorId(detector));
