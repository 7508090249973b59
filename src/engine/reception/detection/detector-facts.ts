import type { DetectorDescription } from '../../kinds/detectors/detector-schema.ts';
import { detectorId } from '../../kinds/models.ts';
import { DETECTOR_KINDS, type DetectorKind } from '../../parts/detector/library.ts';
import { type Ohms, temperatureVoltage } from '../../units/quantities.ts';

/** What is known of a detector's kind. */
export type DetectorFacts =
  | { readonly of: 'valve' }
  /** By measured points. */
  | { readonly of: 'measured' }
  /** By its own constants, of no kind of the library. */
  | { readonly of: 'own' }
  | ({
      readonly of: 'library';
      /** Junction near 0 V, for a kind that conducts little there. */
      readonly insensitiveNearZero?: Ohms;
    } & Pick<DetectorKind, 'id' | 'typical' | 'spread' | 'knocks' | 'source' | 'provenance'>);

/** K. */
const ROOM = 300;

/** What is known of a detector's kind: typical values, how far samples differ, and the source. */
export function detectorFacts(detector: DetectorDescription): DetectorFacts {
  if (detector.kind === 'valve') return { of: 'valve' };
  if (detector.kind === 'measured') return { of: 'measured' };
  const kind = DETECTOR_KINDS.find((k) => k.id === detectorId(detector));
  if (!kind) return { of: 'own' };
  const { id, typical, spread, knocks, source, provenance } = kind;
  const facts = { of: 'library', id, typical, spread, knocks, source, provenance } as const;
  return kind.family === 'silicon'
    ? { ...facts, insensitiveNearZero: (typical.ideality * temperatureVoltage(ROOM)) / typical.saturationCurrent }
    : facts;
}
