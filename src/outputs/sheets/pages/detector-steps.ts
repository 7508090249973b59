import type { SoundReadings } from '../../../engine/faults/sound-readings.ts';
import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import type { DetectorDescription } from '../../../engine/kinds/detectors/detector-schema.ts';
import { slopeResistance } from '../../../engine/parts/detector/detector.ts';
import { detectorByKind } from '../../../engine/parts/detector/library.ts';
import { crystalSurvey } from '../../../engine/reception/detection/crystal-survey.ts';
import type { Reception } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import type { AssumedSpot, BringUpFact, Contact } from '../../words/index.ts';

type Mineral = Extract<DetectorDescription, { kind: 'mineral' }>['mineral'];

const MINERALS: Record<Mineral, Contact> = {
  'iron pyrites': 'whisker',
  'zincite-bornite': 'pair of crystals',
  carborundum: 'firm whisker',
  'silicon crystal': 'whisker',
};

const noContact = (): undefined => undefined;

const CONTACTS: ByKind<DetectorDescription, Contact | undefined> = {
  galena: () => 'whisker',
  mineral: ({ mineral }) => MINERALS[mineral],
  germanium: noContact,
  schottky: noContact,
  silicon: noContact,
  exponential: noContact,
  measured: noContact,
  valve: noContact,
};

/** What is set by hand on a crystal; none on other detectors. */
export const contactOf = (detector: DetectorDescription): Contact | undefined => byKind(CONTACTS, detector);

interface Context {
  readonly set: SetDescription;
  readonly reception: Reception;
  /** Names on the board. */
  readonly tags: readonly string[];
  readonly readings: SoundReadings;
}

const diode = ({ kind }: DetectorDescription, { tags }: Context): BringUpFact[] => [{ code: 'diode', tags, kind }];

const STEPS: ByKind<DetectorDescription, BringUpFact[], [Context]> = {
  galena: (detector, context) => [
    {
      code: 'crystal',
      tags: context.tags,
      contact: 'whisker',
      resistance: context.reception.parts.detector.zeroBiasResistance,
      metered: context.readings.detectorAlone(),
      spot: spotOf(detector),
      worth: worthOf(context),
    },
  ],
  mineral: ({ mineral }, { tags, reception, readings }) => [
    {
      code: 'crystal',
      tags,
      contact: MINERALS[mineral],
      resistance: reception.parts.detector.zeroBiasResistance,
      metered: readings.detectorAlone(),
    },
  ],
  valve: ({ heaterVoltage: voltage, ratedHeaterVoltage: rated }) =>
    voltage > 0 ? [{ code: 'heater', voltage, reduced: voltage < rated * 0.97 }] : [],
  germanium: diode,
  schottky: diode,
  silicon: diode,
  exponential: diode,
  measured: diode,
};

/** Trying the detector by itself, before anything is joined to it. @param tags its names on the board. */
export const detectorSteps = (
  set: SetDescription,
  reception: Reception,
  tags: readonly string[],
  readings: SoundReadings,
): BringUpFact[] => byKind(STEPS, set.detector, { set, reception, tags, readings });

/** Which spot the set is calculated with, and what others would be to very small voltages. */
function spotOf(detector: Extract<DetectorDescription, { kind: 'galena' }>): AssumedSpot {
  if (detector.saturationCurrent !== undefined || detector.ideality !== undefined)
    return { quality: 'own figures', others: [] };
  const others = (['poor', 'fair', 'good'] as const)
    .filter((quality) => quality !== detector.spot)
    .map((quality) => ({ quality, resistance: slopeResistance(detectorByKind(`galena-${quality}`)) }));
  return { quality: detector.spot, others };
}

/** What the spots of the crystal are worth on the station heard best. */
function worthOf({ set, reception }: Context) {
  const best = reception.stations[reception.best[0] ?? -1];
  return best && { spots: crystalSurvey(set, best.index), station: best.name };
}
