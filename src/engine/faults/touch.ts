import type { BuiltSet } from '../built/built-set.ts';
import type { PartId, TerminalId } from '../network/ids.ts';
import { PART } from '../network/part-ids.ts';
import type { Port } from '../network/port.ts';
import type { Check } from './checks.ts';
import { type Sign, signAt } from './fault.ts';
import {
  bridgedCapacitorsOf,
  type NamedPlace,
  type OhmPlace,
  partOfPlace,
  portOfPlace,
  seriesCapacitorsOf,
} from './ohmmeter.ts';
import { PHONES } from './planting.ts';

/** What of a set a check touches: where the meter's leads go, and which parts are tapped, turned, moved or replaced. */
export interface TouchPoints {
  /** The positive lead, then the negative one; none without a meter, nor where it touches no terminal of the set. */
  readonly leads: readonly { readonly part: PartId; readonly terminal: TerminalId }[];
  readonly parts: readonly PartId[];
}

const NOWHERE: TouchPoints = { leads: [], parts: [] };

/**
 * Parts measured at their own terminals, with a wire off. Phones, and the leads of aerial and earth, are measured off the set:
 * between the terminals that they leave behind the meter would read the set.
 */
const WHOLE: Readonly<Partial<Record<NamedPlace, { readonly part: PartId; readonly side?: 'primary' | 'secondary' }>>> =
  {
    'capacitor-alone': { part: PART.tuning },
    primary: { part: PART.transformer, side: 'primary' },
    secondary: { part: PART.transformer, side: 'secondary' },
  };

/**
 * Where a check is made.
 * @param check of a set
 * @param built the same set
 * @returns terminals for the meter's leads, and parts; nothing for what concerns the whole set
 */
export function touchOf(check: Check, built: BuiltSet): TouchPoints {
  switch (check.kind) {
    case 'volts':
      return { leads: leadsTo(built, PHONES, [PART.load, PART.load]), parts: [] };
    case 'ohms':
      return { leads: leadsOf(check.place, built), parts: othersOf(check.place, built) };
    case 'sign':
      return { leads: [], parts: [...partsOf(check.sign, built)].filter((id) => built.parts.has(id)) };
    default:
      return built.parts.has(PART.tuning) ? { leads: [], parts: [PART.tuning] } : NOWHERE;
  }
}

/** Parts that are measured after the one that the leads are shown on, one by one. */
function othersOf(place: OhmPlace, built: BuiltSet): readonly PartId[] {
  if (place === 'fixed-capacitor') return seriesCapacitorsOf(built).slice(1);
  return isOfPair(place, built) ? [PART.secondDetector] : [];
}

/** A reading across each of two detectors. */
const isOfPair = (place: OhmPlace, { circuit }: BuiltSet): boolean =>
  circuit.assembly.wiring !== 'single' && (place === 'detector-forward' || place === 'detector-back');

function leadsOf(place: OhmPlace, built: BuiltSet): TouchPoints['leads'] {
  const own = partOfPlace(place);
  if (own?.isAlone) return endsOfPart(own.part, built);
  const port = portOfPlace(place, built.circuit);
  if (own) return port ? leadsTo(built, port, [own.part, own.part]) : [];
  if (isOfPair(place, built)) {
    const ends = endsOfPart(PART.detector, built);
    return place === 'detector-forward' ? ends : [...ends].reverse();
  }
  const whole = place === 'fixed-capacitor' ? { part: seriesCapacitorsOf(built)[0] } : WHOLE[place as NamedPlace];
  if (whole) return endsOfPart(whole.part, built, 'side' in whole ? whole.side : undefined);
  return port ? leadsTo(built, port, PREFERRED[place]) : [];
}

/** Terminals of a part, the first for the positive lead. */
const endsOfPart = (part: PartId, { parts }: BuiltSet, side?: 'primary' | 'secondary'): TouchPoints['leads'] => {
  const terminals = parts.get(part)?.terminals ?? [];
  const own = side ? terminals.filter((terminal) => terminal.side === side) : terminals;
  return own.slice(0, 2).map(({ id }) => ({ part, terminal: id }));
};

/** At which part of a joint each lead is held, where several meet; else at a coil. */
const PREFERRED: Readonly<Partial<Record<OhmPlace, readonly [PartId | undefined, PartId | undefined]>>> = {
  'detector-tap-to-earth': [PART.detector, PART.earth],
  'detector-forward': [PART.detector, PART.detector],
  'detector-back': [PART.detector, PART.detector],
  'phones-posts': [PART.load, PART.load],
  'phones-posts-back': [PART.load, PART.load],
  'capacitor-to-coil': [PART.tuning, undefined],
  'aerial-to-earth': [PART.aerial, PART.earth],
};

function leadsTo(
  { parts, jointOf }: BuiltSet,
  { from, to }: Port,
  preferred: readonly (PartId | undefined)[] = [undefined, PART.earth],
): TouchPoints['leads'] {
  const ends = [...parts].flatMap(([part, { terminals, values }]) =>
    terminals.map(({ id, joint }) => ({ part, terminal: id, joint, kind: values.kind })),
  );
  return [from, to].flatMap((node, i) => {
    const rank = ({ part, kind }: (typeof ends)[number]): number =>
      part === preferred[i] ? 0 : kind === 'coil' ? 1 : 2;
    const [best] = ends.filter(({ joint }) => joint === jointOf(node)).sort((a, b) => rank(a) - rank(b));
    return best ? [{ part: best.part, terminal: best.terminal }] : [];
  });
}

/** What is tapped, turned, moved or replaced. */
function partsOf(sign: Sign, built: BuiltSet): readonly PartId[] {
  const { code, part } = signAt(sign);
  if (part !== undefined) return [part];
  const coils = [...built.parts].flatMap(([id, { values }]) => (values.kind === 'coil' ? [id] : []));
  switch (code) {
    case 'crackle-on-turning':
    case 'scrape-at-one-place':
      return [PART.tuning, PART.aerialTuning];
    case 'jumps-on-sliding':
    case 'hand-near-moves-tuning':
      return coils;
    case 'sound-with-cord-moved':
    case 'click-from-cell':
    case 'louder-with-other-phones':
    case 'hiss-at-full-volume':
    case 'buzz-from-input':
      return [PART.load];
    case 'changes-on-knock':
    case 'louder-at-another-spot':
    case 'louder-with-other-detector':
    case 'heater-glows':
      return [PART.detector];
    case 'bias-as-described':
      return [PART.biasCell];
    case 'louder-with-hand-on-earth':
    case 'louder-with-other-earth':
      return [PART.earth];
    case 'louder-with-capacitor-bridged':
      return bridgedCapacitorsOf(built);
    case 'louder-with-by-pass-off':
      return [PART.byPass];
    case 'switch-at-earth':
    case 'louder-with-other-wire':
      return [PART.aerial];
    case 'crackle-on-tapping':
    case 'hum':
    case 'weaker-when-wet':
    case 'swings-within-minutes':
    case 'other-receiver-hears-it':
      return [];
  }
}
