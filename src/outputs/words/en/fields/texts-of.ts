import type { FieldIdOf } from '../../../../engine/fields/field-ids.ts';

/** What a field is called, and one sentence or phrase on what it is. */
export interface FieldText {
  readonly label: string;
  readonly help?: string;
}

/** The texts of every field of one part, as "coil": a field without one does not compile. */
export type TextsOf<Part extends string> = { readonly [Id in FieldIdOf<Part>]: FieldText };
