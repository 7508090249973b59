import type { CoilDescription } from '../coils/coil-schema.ts';
import type { DetectorDescription } from '../detectors/detector-schema.ts';
import type { EarthDescription } from '../earths/earth-schema.ts';
import type { LoadDescription } from '../loads/load-schema.ts';
import { coilModel, detectorId, earthModel, tuningModel } from '../models.ts';
import type { TuningDescription } from '../tunings/tuning-schema.ts';
import type { MeasuredValue } from './measured-schema.ts';
import { USUAL_FREQUENCY } from './usual-errors.ts';

/**
 * What was measured of a part before an edit says how far the calculation is off, and so much of the edited part too: a
 * measured figure follows the calculated one by its factor. Another detector, or other phones, have been measured by nobody.
 */

const times = (measured: MeasuredValue | undefined, factor: () => number): MeasuredValue | undefined => {
  if (!measured) return undefined;
  const by = factor();
  return by > 0 && Number.isFinite(by) ? { ...measured, value: measured.value * by } : undefined;
};

/** @param before the coil as it was measured. @param after the same coil with edits made. */
export function coilAfterEdit(before: CoilDescription, after: CoilDescription): CoilDescription {
  const { measured } = after;
  if (!measured) return after;
  const [was, is] = [before, after].map((coil) => coilModel({ ...coil, measured: undefined }));
  const f = measured.q?.at ?? USUAL_FREQUENCY;
  return {
    ...after,
    measured: {
      inductance: times(measured.inductance, () => is.inductance / was.inductance),
      q: times(measured.q, () => is.qAt(f) / was.qAt(f)),
      selfCapacitance: times(measured.selfCapacitance, () => is.selfCapacitance / was.selfCapacitance),
    },
  };
}

/** @param before the capacitor as it was measured. @param after the same with edits made. */
export function tuningAfterEdit(before: TuningDescription, after: TuningDescription): TuningDescription {
  const { measured } = after;
  if (!measured) return after;
  const [was, is] = [before, after].map((one) =>
    tuningModel({ ...one, measured: undefined, stray: 0, trimmer: 0, padder: undefined }),
  );
  return {
    ...after,
    measured: {
      minimum: times(measured.minimum, () => is.min / was.min),
      maximum: times(measured.maximum, () => is.max / was.max),
      stray: before.stray === after.stray ? measured.stray : undefined,
    },
  };
}

/** @param before the earth as it was measured. @param after the same with edits made. */
export function earthAfterEdit(before: EarthDescription, after: EarthDescription): EarthDescription {
  const { measured } = after;
  if (!measured?.resistance) return after;
  const [was, is] = [before, after].map((one) => earthModel({ ...one, measured: undefined }).resistance);
  return { ...after, measured: { resistance: times(measured.resistance, () => is / was) } };
}

/** @param before the detector as it was measured. @param after the same with edits made, or another. */
export const detectorAfterEdit = (before: DetectorDescription, after: DetectorDescription): DetectorDescription =>
  detectorId(before) === detectorId(after) ? after : { ...after, measured: undefined };

/** @param before the phones as they were measured. @param after the same with edits made, or others. */
export function loadAfterEdit(before: LoadDescription, after: LoadDescription): LoadDescription {
  const of = (load: LoadDescription): string =>
    JSON.stringify([
      load.kind,
      'make' in load && load.make,
      'resistance' in load && load.resistance,
      'impedance' in load && load.impedance,
    ]);
  return of(before) === of(after) ? after : { ...after, measured: undefined };
}
