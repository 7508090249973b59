import {
  type FindQuestion,
  isRecord,
  keepRefusal,
  type Problem,
  readValue,
  type SetDescription,
  type WrittenDescription,
  withKept,
} from '../../../engine/index.ts';
import type { OpenBox } from '../../state/open-boxes.ts';

/** What is searched for: the box, with the place and the wants of the open set; or what is wrong with the wants. */
export type FindInput =
  | {
      readonly ok: true;
      readonly question: FindQuestion;
      /** Parts that the set keeps and that a search cannot keep. */
      readonly unkept: readonly string[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Without any want as many stations as possible. */
const NOTHING_WANTED: WrittenDescription['wants'] = [{ kind: 'most stations' }];

/**
 * @param box as understood
 * @param set as understood, with what it was read from
 */
export function askedOf(
  box: NonNullable<OpenBox['understood']['value']>,
  { set, written }: { readonly set: SetDescription; readonly written: unknown },
): FindInput {
  const at = written as WrittenDescription;
  const wants = [...(box.written.wants ?? []), ...(at.wants ?? [])];
  const wanted = wants.length > 0 ? wants : NOTHING_WANTED!;
  const read = readValue({ ...at, wants: wanted });
  if (!read.ok) return read;
  const keep = [...(box.written.keep ?? []), ...(isRecord(at) ? (at.keep ?? []) : [])];
  const both = withKept(box, { read: set, written: at }, keep);
  return {
    ok: true,
    question: {
      ...both,
      at: { place: at.place, ...(at.ear === undefined ? {} : { ear: at.ear }), wants: wanted },
      read: { place: read.set.place, ear: read.set.ear, wants: read.set.wants ?? [] },
    },
    unkept: keep.filter((part) => keepRefusal(set, part) !== undefined),
  };
}
