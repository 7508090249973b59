import { deflateSync, Inflate, strFromU8, strToU8 } from 'fflate';
import type { Problem } from '../fields/problem.ts';
import type { Degrees } from '../units/quantities.ts';
import { fromBase64Url, toBase64Url } from './base64-url.ts';
import type { SetDescription } from './description.ts';
import { LARGEST_FILE, tooLarge } from './read.ts';
import { valueAtPath, withValueAt } from './write.ts';

/** What a link's fragment begins with; the number rises when its form changes. */
const FORM = 'set1=';
const ANY_FORM = /^set\d+=/;
/** No browser takes longer addresses from everywhere; no set of the tool comes near. */
const LONGEST = 200_000;
/** Compressed bytes unpacked between two looks at how much has come out. */
const PIECE = 4096;
/** A coarse position is a multiple of this. */
const COARSE: Degrees = 0.1;
const POSITION = ['place', 'position'];

/** What a link holds of the place. */
export interface LinkOptions {
  /** The position as it is; otherwise it is rounded to 0.1°, about 10 km. */
  readonly exactPosition?: boolean;
}

/**
 * Whether the fragment of an address seems to hold a set.
 * @param fragment of an address, without "#"
 * @returns true for a link of this form, of a later one, whole or not
 */
export const isSetLink = (fragment: string): boolean => ANY_FORM.test(fragment);

/**
 * A whole set as the fragment of an address: JSON, compressed (RFC 1951) and in letters that an address may have (RFC 4648,
 * section 5).
 * @param set the set as read
 * @param written the same as written; unknown keys go along, a recording does not
 * @param options whether the position is exact
 * @returns the fragment without "#"
 */
export function linkOf(set: SetDescription, written: unknown, options: LinkOptions = {}): string {
  const shared = options.exactPosition ? written : withCoarsePosition(set, written);
  return FORM + toBase64Url(deflateSync(strToU8(JSON.stringify(withoutRecording(shared))), { level: 9 }));
}

/**
 * A description without the maker's recording: neither an address nor a sheet of paper has room for a minute of sound,
 * and a voice is not for everybody.
 * @param written as written
 * @returns a copy, or the same where it has none
 */
export function withoutRecording<T>(written: T): T | Omit<T, 'recording'> {
  if (typeof written !== 'object' || written === null || !('recording' in written)) return written;
  const { recording: _, ...rest } = written;
  return rest as Omit<T, 'recording'>;
}

/**
 * A set as it may be shared with others: its position is rounded to 0.1°, which is 11 km of latitude. What was not given
 * is not added.
 * @param set the set as read
 * @param written the same as written
 * @returns a copy of what is written, or the same where it has no position
 */
export function withCoarsePosition<T>(set: SetDescription, written: T): T {
  const { position } = set.place;
  if (!position || valueAtPath(written, POSITION) === undefined) return written;
  const coarse = (angle: Degrees): string => `${Number((Math.round(angle / COARSE) * COARSE).toFixed(1))}°`;
  const latitude = withValueAt(written, [...POSITION, 'latitude'], coarse(position.latitude));
  return withValueAt(latitude, [...POSITION, 'longitude'], coarse(position.longitude));
}

/**
 * The text of the description in a link, not yet read as one.
 * @param fragment of an address, without "#"
 * @returns JSON text, or what is wrong with the link; never more than a description may have, whatever the link unpacks to
 */
export function textOfLink(fragment: string): { readonly text: string } | { readonly problem: Problem } {
  const refuse = (hint: 'copy-whole-link' | 'link-of-newer-form'): { problem: Problem } => ({
    problem: { path: '', expected: { code: 'set-link' }, hint: { code: hint } },
  });
  if (fragment.length > LONGEST) return { problem: tooLarge(fragment.length) };
  if (!fragment.startsWith(FORM)) return refuse(isSetLink(fragment) ? 'link-of-newer-form' : 'copy-whole-link');
  const packed = fromBase64Url(fragment.slice(FORM.length));
  const bytes = packed && unpacked(packed);
  if (!bytes) return refuse('copy-whole-link');
  if (bytes === 'too large') return { problem: tooLarge(LARGEST_FILE + 1) };
  return { text: strFromU8(bytes) };
}

/** Unpacks piece by piece and ends as soon as more comes out than any description has. */
function unpacked(packed: Uint8Array): Uint8Array | 'too large' | undefined {
  const pieces: Uint8Array[] = [];
  let size = 0;
  let isWhole = false;
  const inflate = new Inflate((piece, final) => {
    pieces.push(piece);
    size += piece.length;
    isWhole = final;
  });
  try {
    for (let from = 0; from < packed.length; from += PIECE) {
      inflate.push(packed.subarray(from, from + PIECE), from + PIECE >= packed.length);
      if (size > LARGEST_FILE) return 'too large';
    }
  } catch {
    return undefined;
  }
  if (!isWhole) return undefined;
  const bytes = new Uint8Array(size);
  let at = 0;
  for (const piece of pieces) {
    bytes.set(piece, at);
    at += piece.length;
  }
  return bytes;
}
