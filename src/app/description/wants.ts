import { isRecord, valueAtPath, type WrittenDescription, withValueAt } from '../../engine/index.ts';

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
export const wantsIn = (written: unknown): readonly Record<string, unknown>[] => {
  const wants = valueAtPath(written, ['wants']);
  return Array.isArray(wants) ? wants.filter(isRecord) : [];
};

/** What is kept as it stands in a description. */
export const keptIn = (written: unknown): readonly string[] => {
  const keep = valueAtPath(written, ['keep']);
  return Array.isArray(keep) ? keep.filter((one) => typeof one === 'string') : [];
};

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

/** The description with another list of wants; none leaves no key. */
export const writeWants = (written: unknown, wants: readonly unknown[]): unknown =>
  withValueAt(written, ['wants'], wants.length > 0 ? wants : undefined);

/** The description with something kept, or not any more. */
export function writeKept(written: unknown, text: string, isKept: boolean): unknown {
  const others = keptIn(written).filter((one) => one !== text);
  const keep = isKept ? [...others, text] : others;
  return withValueAt(written, ['keep'], keep.length > 0 ? keep : undefined);
}
