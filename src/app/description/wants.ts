import { isRecord, type WrittenDescription, withValueAt } from '../../engine/index.ts';
import { listAt } from './lists.ts';

type Written = NonNullable<WrittenDescription['wants']>[number];
/** What may be wanted, in the order of the choice. */
export const WANT_KINDS = [
  'loudest',
  'clear',
  'band',
  'most stations',
  'speech',
  'fewest parts',
] as const satisfies readonly Written['kind'][];
export type WantKind = (typeof WANT_KINDS)[number];

/** The wants as they stand in a description, whatever stands there. */
export const wantsIn = (written: unknown): readonly Record<string, unknown>[] =>
  listAt(written, ['wants']).filter(isRecord);

/** What is kept as it stands in a description. */
export const keptIn = (written: unknown): readonly string[] =>
  listAt(written, ['keep']).filter((one) => typeof one === 'string');

/** The fields of a want that name stations. */
export const stationKeys = (want: Readonly<Record<string, unknown>>): readonly ('station' | 'from')[] =>
  (['station', 'from'] as const).filter((key) => (key === 'station' ? 'station' in want : want.kind === 'clear'));

/** A want of a kind to begin with. @param stations by name, the one in question first. */
export function startOfWant(kind: WantKind, stations: readonly string[]): Written {
  const [station = '', from = station] = stations;
  switch (kind) {
    case 'clear':
      return { kind, station, from };
    case 'loudest':
    case 'speech':
      return { kind, station };
    case 'band':
      // Carriers of medium wave, ITU Region 1.
      return { kind, from: '531 kHz', to: '1602 kHz' };
    case 'most stations':
    case 'fewest parts':
      return { kind };
  }
}

/** The description with another list; an empty one leaves no key. */
export const writeList = (written: unknown, key: 'wants' | 'keep', list: readonly unknown[]): unknown =>
  withValueAt(written, [key], list.length > 0 ? list : undefined);

/** The description with something kept, or not any more. */
export function writeKept(written: unknown, text: string, isKept: boolean): unknown {
  const others = keptIn(written).filter((one) => one !== text);
  return writeList(written, 'keep', isKept ? [...others, text] : others);
}
