import * as v from 'valibot';
import type { Edit } from '../kinds/adjustment.ts';
import { aerial } from '../kinds/aerials/aerial-schema.ts';
import { arrangement } from '../kinds/arrangements/arrangement-schema.ts';
import { coil } from '../kinds/coils/coil-schema.ts';
import { detector } from '../kinds/detectors/detector-schema.ts';
import { earth } from '../kinds/earths/earth-schema.ts';
import { load } from '../kinds/loads/load-schema.ts';
import {
  coilAfterEdit,
  detectorAfterEdit,
  earthAfterEdit,
  loadAfterEdit,
  tuningAfterEdit,
} from '../kinds/measured/after-edit.ts';
import { tuning } from '../kinds/tunings/tuning-schema.ts';
import { crossChecks } from './cross-checks.ts';
import type { SetDescription } from './description.ts';
import { withValueAt } from './write.ts';

const SCHEMAS = { aerial, earth, tuning, arrangement, detector, load } as const;

/** A set with edits made, or why it cannot be read any more. */
export type EditedSet =
  | { readonly ok: true; readonly set: SetDescription }
  | {
      readonly ok: false;
      /** Codes of what is wrong, for a programmer. */
      readonly reason: string;
    };

/**
 * Make edits to a set as if they were written in its file and read again. Parts that no edit touches stay the same
 * objects, so that whatever is kept by part is found again.
 */
export function editedSet(set: SetDescription, edits: readonly Edit[]): EditedSet {
  let edited: SetDescription = set;
  for (const { path, to } of edits) edited = withValueAt(edited, path, to);
  for (const { schema, path } of touched(edits)) {
    const [key, index] = path;
    const written = index === undefined ? edited[key] : (edited[key] as readonly unknown[])[index];
    const read = v.safeParse(schema, written);
    if (!read.success) return { ok: false, reason: read.issues.map((issue) => issue.message).join('; ') };
    edited = withValueAt(edited, index === undefined ? [key] : [key, index], read.output);
  }
  edited = withMeasuredOf(set, edited);
  const problems = crossChecks(edited);
  return problems.length > 0
    ? { ok: false, reason: problems.map(({ path, expected }) => `${path}: ${expected.code}`).join('; ') }
    : { ok: true, set: edited };
}

/** Whatever was measured of the parts as they were, for the parts as they are now. */
function withMeasuredOf(before: SetDescription, after: SetDescription): SetDescription {
  let set = after;
  const follow = <K extends 'earth' | 'tuning' | 'detector' | 'load'>(
    key: K,
    by: (was: SetDescription[K], is: SetDescription[K]) => SetDescription[K],
  ): void => {
    // A figure that was edited itself is as the edit says.
    if (before[key] === after[key] || !before[key].measured) return;
    if (JSON.stringify(before[key].measured) !== JSON.stringify(after[key].measured)) return;
    set = { ...set, [key]: by(before[key], after[key]) };
  };
  follow('earth', earthAfterEdit);
  follow('tuning', tuningAfterEdit);
  follow('detector', detectorAfterEdit);
  follow('load', loadAfterEdit);
  const coils = after.coils.map((coil, i) => {
    const was = before.coils[i];
    const isAsWas = JSON.stringify(was?.measured) === JSON.stringify(coil.measured);
    return was && was !== coil && coil.measured && isAsWas ? coilAfterEdit(was, coil) : coil;
  });
  return coils.some((coil, i) => coil !== after.coils[i]) ? { ...set, coils } : set;
}

interface TouchedPart {
  readonly schema: v.GenericSchema;
  readonly path: readonly [keyof SetDescription, number?];
}

function touched(edits: readonly Edit[]): TouchedPart[] {
  const parts = new Map<string, TouchedPart>();
  for (const { path } of edits) {
    const [key, index] = path;
    if (key === 'coils' && typeof index === 'number') parts.set(`coils.${index}`, { schema: coil, path: [key, index] });
    else if (typeof key === 'string' && Object.hasOwn(SCHEMAS, key)) {
      const part = key as keyof typeof SCHEMAS;
      parts.set(part, { schema: SCHEMAS[part], path: [part] });
    } else throw new RangeError(`no part of a set is at "${path.join('.')}"`);
  }
  return [...parts.values()];
}
