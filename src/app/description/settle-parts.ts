import {
  COIL_KEYS,
  hasRoomForSwitch,
  isRecord,
  STARTERS,
  untakenName,
  valueAtPath,
  withValueAt,
} from '../../engine/index.ts';
import { kindName, settledWords } from '../../outputs/words/index.ts';
import { changeKind, coilNames } from './change-kind.ts';

export interface Settled {
  readonly written: unknown;
  /** What else had to change, in words. */
  readonly also: readonly string[];
}

/** Aerials that are their own tuning coil, so that only the arrangement of the same name goes with them. */
const OWN_COIL = new Set(['frame', 'ferrite rod']);

/**
 * After a part has changed kind, or a coil was shortened: bring along whatever depends on it, and say so.
 * @param leading the part the builder touched; the other one follows.
 */
export function settle(written: unknown, leading: 'aerial' | 'arrangement' | 'coils' | 'other' = 'other'): Settled {
  const also: string[] = [];
  let now = leading === 'aerial' || leading === 'arrangement' ? matchAerial(written, leading, also) : written;
  now = findCoils(now, also);
  now = keepTapsWithin(now, also);
  now = onePairOnly(now, also);
  now = switchOnlyWhereItFits(now, also);
  return { written: now, also };
}

const kindOf = (written: unknown, part: string): string => String(valueAtPath(written, [part, 'kind']) ?? '');

function matchAerial(written: unknown, leading: 'aerial' | 'arrangement', also: string[]): unknown {
  const aerial = kindOf(written, 'aerial');
  const arrangement = kindOf(written, 'arrangement');
  if (aerial === arrangement || arrangement === 'elements') return written;
  if (!OWN_COIL.has(aerial) && !OWN_COIL.has(arrangement)) return written;
  const follow = leading === 'aerial' ? 'arrangement' : 'aerial';
  const kind =
    leading === 'aerial'
      ? OWN_COIL.has(aerial)
        ? aerial
        : 'tapped'
      : OWN_COIL.has(arrangement)
        ? arrangement
        : 'inverted-L';
  const { written: changed, dropped } = changeKind(written, [follow], kind);
  also.push(
    follow === 'aerial'
      ? settledWords.aerialFollows(kindName('aerial', kind), dropped)
      : settledWords.arrangementFollows(kindName('arrangement', kind), dropped),
  );
  return changed;
}

/** Every coil an arrangement names must be there; coils it needs beside the tuning coil are wound anew if missing. */
function findCoils(written: unknown, also: string[]): unknown {
  let now = written;
  const arrangement = valueAtPath(now, ['arrangement']);
  if (!isRecord(arrangement)) return now;
  const taken = new Set<string>();
  for (const key of COIL_KEYS) {
    const name = arrangement[key];
    if (typeof name !== 'string') continue;
    const names = coilNames(now);
    if (names.includes(name) && !taken.has(name)) {
      taken.add(name);
      continue;
    }
    const free = names.find((n) => !taken.has(n));
    const chosen = free ?? newCoilName(key, names);
    if (free === undefined && key === 'aerialCoil' && arrangement.kind === 'two circuits') {
      now = copyCoil(now, String(valueAtPath(now, ['arrangement', 'coil'])), chosen, also);
    } else if (free === undefined) {
      const smaller = { turns: 25, formerDiameter: key === 'rotor' ? '50 mm' : '63 mm' };
      now = addCoil(now, chosen, key === 'coil' ? {} : smaller, also);
    }
    now = withValueAt(now, ['arrangement', key], chosen);
    taken.add(chosen);
  }
  for (const [i, element] of elementsOf(now).entries()) {
    if (!isRecord(element) || element.kind !== 'coil' || coilNames(now).includes(String(element.coil))) continue;
    if (coilNames(now).length === 0) now = addCoil(now, String(element.coil), {}, also);
    now = withValueAt(now, ['arrangement', 'elements', i, 'coil'], coilNames(now)[0]);
  }
  return now;
}

function addCoil(written: unknown, name: string, own: Record<string, unknown>, also: string[]): unknown {
  also.push(settledWords.coilAdded(name));
  return withValueAt(written, ['coils', coilNames(written).length], {
    shape: 'solenoid',
    name,
    ...STARTERS['coil/solenoid'],
    ...own,
    wire: STARTERS.wire,
  });
}

/** The aerial's circuit covers what the other does with a coil like it; what was measured of one is not known of two. */
function copyCoil(written: unknown, of: string, name: string, also: string[]): unknown {
  const coil = valueAtPath(written, ['coils', coilNames(written).indexOf(of)]);
  if (!isRecord(coil)) return addCoil(written, name, {}, also);
  const { measured: _, ...copy } = coil;
  also.push(settledWords.coilCopied(name, of));
  return withValueAt(written, ['coils', coilNames(written).length], { ...copy, name });
}

/** Arrangements without a coil whose middle can be earthed. */
const NO_MIDDLE = new Set(['slider', 'variometer', 'elements']);

function onePairOnly(written: unknown, also: string[]): unknown {
  const wiring = valueAtPath(written, ['detector', 'wiring']);
  if (wiring !== 'full-wave' || !NO_MIDDLE.has(kindOf(written, 'arrangement'))) return written;
  also.push(settledWords.singleDetector);
  return withValueAt(written, ['detector', 'wiring'], 'single');
}

function switchOnlyWhereItFits(written: unknown, also: string[]): unknown {
  if (valueAtPath(written, ['bands']) === undefined || hasRoomForSwitch(kindOf(written, 'arrangement'))) return written;
  also.push(settledWords.bandsRemoved);
  return withValueAt(written, ['bands'], undefined);
}

const elementsOf = (written: unknown): unknown[] => {
  const elements = valueAtPath(written, ['arrangement', 'elements']);
  return Array.isArray(elements) ? elements : [];
};

function newCoilName(key: string, names: readonly string[]): string {
  const wanted = { coil: 'main', aerialCoil: 'aerial', rotor: 'rotor' }[key] ?? key;
  return untakenName(wanted, (name) => names.includes(name));
}

/** Turns of a coil as written, or undefined. */
export function writtenTurns(written: unknown, name: unknown): number | undefined {
  const i = coilNames(written).indexOf(String(name));
  const coil = i < 0 ? undefined : valueAtPath(written, ['coils', i]);
  if (!isRecord(coil)) return undefined;
  // A measured coil may leave its turns out; the reader then takes them as 100.
  const turns =
    coil.shape === 'multilayer' ? Number(coil.turnsPerLayer) * Number(coil.layers) : Number(coil.turns ?? 100);
  return turns > 0 ? turns : undefined;
}

export const TAPS = ['aerialTap', 'detectorTap', 'usedTurns', 'fewest'] as const;

/** Of a coil's turns those that a tap can be on: of a coil in use in part, that part. */
export function turnsToTap(arrangement: Record<string, unknown>, key: string, turns: number): number {
  const { usedTurns } = arrangement;
  const isOnPart = key === 'aerialTap' || key === 'detectorTap';
  return isOnPart && typeof usedTurns === 'number' && usedTurns > 0 ? Math.min(turns, usedTurns) : turns;
}

function keepTapsWithin(written: unknown, also: string[]): unknown {
  let now = written;
  const arrangement = valueAtPath(now, ['arrangement']);
  if (!isRecord(arrangement)) return now;
  for (const key of TAPS) {
    const tap = arrangement[key];
    const coil =
      key === 'aerialTap' && arrangement.aerialCoil !== undefined ? arrangement.aerialCoil : arrangement.coil;
    const turns = writtenTurns(now, coil);
    if (typeof tap !== 'number' || turns === undefined) continue;
    const top = turnsToTap(arrangement, key, turns);
    if (tap <= top) continue;
    now = withValueAt(now, ['arrangement', key], top);
    also.push(settledWords.tapMoved[key](top, top < turns));
  }
  return now;
}
