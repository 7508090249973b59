import { isLoop } from '../../../engine/kinds/loops.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { type BoardPart, boardParts } from '../board/parts.ts';
import { OUT_WORDS } from './best.ts';
import { platesOf } from './bring-up-steps.ts';
import { contactOf, isCrystal } from './detector-steps.ts';

/** What may be wrong, and where to look for it in this set, likeliest first. */
export function faultRows(set: SetDescription): [string, string][] {
  const { parts } = boardParts(set);
  const rows: [string, readonly (string | false | undefined)[]][] = [
    ['Dead silence, no click when a wire is moved', silence(set, parts)],
    ['Clicks, but no station', noStation(set, parts)],
    ['One station everywhere on the dial', oneStation(set, parts)],
    ['Stations come at lower readings than they should', tooLow(set)],
    ['Stations come at higher readings', tooHigh(set, parts)],
    ['Broad and faint together', broad(set)],
    [
      'Hum under everything',
      [
        isLoop(set.aerial)
          ? 'mains wires or a lamp’s supply near by: turn the aerial'
          : 'mains wires beside the lead-in; earth on the wrong thing',
        set.load.kind === 'amplifier' && 'the amplifier’s supply',
        set.detector.kind === 'valve' && 'a heater fed with alternating current',
      ],
    ],
    [
      'It fades and comes back',
      [
        `by night that is the sky’s doing; by day a loose joint${isCrystal(set.detector) ? ` or the ${contactOf(set.detector)}` : ''}`,
      ],
    ],
  ];
  return rows.map(([what, causes]) => [what, `${causes.filter(Boolean).join('; ')}.`]);
}

const variables = (parts: readonly BoardPart[]) => parts.filter((p) => p.kind === 'variable');
/** Turns that one has wound oneself. */
const isWound = ({ coils, aerial }: SetDescription): boolean =>
  isLoop(aerial) || coils.some((c) => c.shape !== 'measured');

function silence({ load, detector }: SetDescription, parts: readonly BoardPart[]) {
  const bypass = load.bypass > 0 && parts.find((p) => p.role === 'by-pass');
  return [
    load.kind === 'amplifier' ? 'amplifier and its lead' : `${OUT_WORDS[load.kind]} and cord`,
    'P1 and P2 touching',
    bypass && `by-pass capacitor ${bypass.tag} short-circuited`,
    load.transformer && 'transformer open',
    detector.kind === 'valve' ? 'valve out of its holder, or an open heater' : 'detector open',
  ];
}

function noStation({ detector, aerial }: SetDescription, parts: readonly BoardPart[]) {
  return [
    isCrystal(detector)
      ? 'detector: find another spot, try a diode'
      : detector.kind === 'valve'
        ? 'heater cold, or another valve'
        : 'detector: try another',
    !isLoop(aerial) && 'aerial or earth off',
    parts.some((p) => p.kind === 'coil' || p.kind === 'loop') && 'coil open',
    parts.some((p) => p.ends.some((t) => t.is === 'tap')) && 'taps counted from the wrong end',
  ];
}

function oneStation({ arrangement: a, aerial }: SetDescription, parts: readonly BoardPart[]) {
  const trapped = a.kind !== 'elements' && (a.traps ?? []).length > 0;
  return [
    ...variables(parts).map((p) => `${p.tag} not joined, or its ${platesOf(p)} short-circuited`),
    a.kind === 'slider' && 'slider not touching: bare and clean its track',
    isLoop(aerial) && 'turn the aerial until that station is least',
    'aerialTap' in a && a.aerialTap !== undefined && 'aerial on too many turns: move it towards the start',
    (a.kind === 'coupled' || a.kind === 'two circuits') && 'coils too close: part them',
    'seriesCapacitor' in a && a.seriesCapacitor !== undefined && 'a smaller capacitor in the aerial lead',
    trapped ? 'the trap: tune it to that station' : !isLoop(aerial) && 'a trap for that station would keep it out',
  ];
}

/** A slider or turning coil takes what it needs: a coil too large only shifts its readings. */
const byCoil = ({ arrangement: { kind } }: SetDescription): boolean => kind === 'slider' || kind === 'variometer';

const tooLow = (set: SetDescription) => [
  byCoil(set)
    ? 'coil larger than reckoned: no harm while every station is within the travel'
    : isWound(set)
      ? 'coil too large: take off turns, one at a time'
      : 'coil too large',
  'strays larger than reckoned: move wires apart',
];

const tooHigh = (set: SetDescription, parts: readonly BoardPart[]) => [
  isWound(set) ? 'coil too small, or turns short-circuited' : 'coil too small',
  set.arrangement.kind === 'slider' && 'slider bridging two turns',
  variables(parts).length > 0 && 'capacitor smaller than marked or reckoned',
];

function broad(set: SetDescription) {
  const { arrangement: a } = set;
  return [
    isWound(set) && (set.aerial.kind === 'ferrite rod' ? 'damp paper under the coil' : 'damp former'),
    'bad joint',
    'detectorTap' in a && a.detectorTap !== undefined && 'detector too far up the coil: try a lower tap',
    (a.kind === 'coupled' || a.kind === 'two circuits') && 'coils too close: part them',
  ];
}
