import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import type { DetectorDescription } from '../../../engine/kinds/detectors/detector-schema.ts';
import { isLoop } from '../../../engine/kinds/loops.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import type { Cause, Contact, Symptom } from '../../words/index.ts';
import { type BoardPart, boardParts } from '../board/parts.ts';
import { platesOf } from './bring-up-steps.ts';
import { contactOf } from './detector-steps.ts';

export interface Fault {
  readonly symptom: Symptom;
  readonly causes: readonly Cause[];
}

type Maybe = Cause | false | undefined;

/** What may be wrong, and where to look for it in this set, likeliest first. */
export function faultsOf(set: SetDescription): Fault[] {
  const { parts } = boardParts(set);
  const rows: [Symptom, readonly Maybe[]][] = [
    ['silence', silence(set, parts)],
    ['clicks only', noStation(set, parts)],
    ['one station everywhere', oneStation(set, parts)],
    ['low readings', tooLow(set)],
    ['high readings', tooHigh(set, parts)],
    ['broad and weak', broad(set)],
    ['hum', hum(set)],
    ['fading', [{ code: FADING[contactOf(set.detector) ?? 'none'] }]],
  ];
  return rows.map(([symptom, causes]) => ({ symptom, causes: causes.filter((cause) => !!cause) }));
}

const FADING: Readonly<Record<Contact | 'none', 'sky-wave' | 'sky-wave-or-whisker' | 'sky-wave-or-pair'>> = {
  none: 'sky-wave',
  whisker: 'sky-wave-or-whisker',
  'firm whisker': 'sky-wave-or-whisker',
  'pair of crystals': 'sky-wave-or-pair',
};

const variables = (parts: readonly BoardPart[]) => parts.filter((p) => p.kind === 'variable');
/** Turns that one has wound oneself. */
const isWound = ({ coils, aerial }: SetDescription): boolean =>
  isLoop(aerial) || coils.some((c) => c.shape !== 'measured');

function silence({ load, detector }: SetDescription, parts: readonly BoardPart[]): Maybe[] {
  const bypass = parts.find((p) => p.role === 'by-pass');
  return [
    load.kind === 'amplifier' ? { code: 'amplifier' } : { code: 'phones-and-cord', load: load.kind },
    { code: 'outputs-touch' },
    bypass && { code: 'by-pass-shorted', tag: bypass.tag },
    load.transformer && { code: 'transformer-open' },
    detector.kind === 'valve' ? { code: 'valve-open' } : { code: 'detector-open' },
  ];
}

const anotherDiode = (): Cause => ({ code: 'detector' });
const anotherSpot = (): Cause => ({ code: 'crystal-spot' });

const DETECTORS: ByKind<DetectorDescription, Cause> = {
  galena: anotherSpot,
  mineral: anotherSpot,
  valve: () => ({ code: 'heater-cold' }),
  germanium: anotherDiode,
  schottky: anotherDiode,
  silicon: anotherDiode,
  exponential: anotherDiode,
  measured: anotherDiode,
};

const noStation = ({ detector, aerial }: SetDescription, parts: readonly BoardPart[]): Maybe[] => [
  byKind(DETECTORS, detector),
  !isLoop(aerial) && { code: 'aerial-or-earth-off' },
  parts.some((p) => p.kind === 'coil' || p.kind === 'loop') && { code: 'coil-open' },
  parts.some((p) => p.ends.some((t) => t.is === 'tap')) && { code: 'taps-miscounted' },
];

function oneStation({ arrangement: a, aerial }: SetDescription, parts: readonly BoardPart[]): Maybe[] {
  const trapped = parts.some((p) => p.role === 'trap-coil');
  return [
    ...variables(parts).map((p): Cause => ({ code: 'tuning-off', tag: p.tag, plates: platesOf(p) })),
    a.kind === 'slider' && { code: 'slider-contact' },
    isLoop(aerial) && { code: 'turn-to-minimum' },
    'aerialTap' in a && a.aerialTap !== undefined && { code: 'aerial-tap-high' },
    (a.kind === 'coupled' || a.kind === 'two circuits') && { code: 'coils-close' },
    parts.some((p) => p.role === 'series-capacitor') && { code: 'series-capacitor-large' },
    trapped ? { code: 'trap-off' } : !isLoop(aerial) && { code: 'no-trap' },
  ];
}

/** A slider or turning coil takes what it needs: a coil too large only shifts its readings. */
const byCoil = ({ arrangement: { kind } }: SetDescription): boolean => kind === 'slider' || kind === 'variometer';

function tooLow(set: SetDescription): Maybe[] {
  const wound = isWound(set) ? 'coil-large-wound' : 'coil-large';
  return [{ code: byCoil(set) ? 'coil-large-slid' : wound }, { code: 'stray-capacitance' }];
}

const tooHigh = (set: SetDescription, parts: readonly BoardPart[]): Maybe[] => [
  { code: isWound(set) ? 'coil-small-wound' : 'coil-small' },
  set.arrangement.kind === 'slider' && { code: 'slider-bridges' },
  variables(parts).length > 0 && { code: 'capacitor-small' },
];

function broad(set: SetDescription): Maybe[] {
  const { arrangement: a } = set;
  return [
    isWound(set) && { code: set.aerial.kind === 'ferrite rod' ? 'damp-paper' : 'damp-former' },
    { code: 'bad-joint' },
    'detectorTap' in a && a.detectorTap !== undefined && { code: 'detector-tap-high' },
    (a.kind === 'coupled' || a.kind === 'two circuits') && { code: 'coils-close' },
  ];
}

const hum = ({ aerial, load, detector }: SetDescription): Maybe[] => [
  { code: isLoop(aerial) ? 'mains-near-loop' : 'mains-near-lead-in' },
  load.kind === 'amplifier' && { code: 'amplifier-supply' },
  detector.kind === 'valve' && { code: 'heater-alternating' },
];
