import { setCircuit, type Whatif } from '../../built/set-circuit.ts';
import type { TrapDescription } from '../../kinds/arrangements/arrangement-schema.ts';
import { isLoop } from '../../kinds/loops.ts';
import type { SetDescription } from '../../set/description.ts';
import { formatNumber, formatQuantity } from '../../units/format.ts';
import type { Decibels, Farads, Hertz } from '../../units/quantities.ts';
import { besideStation } from '../interference/beside.ts';
import { bearingOf, type Receiver, receiver, receiveStation, type TunedStation } from './receive-station.ts';
import { verdictOf } from './summary.ts';
import type { Disturbance, Help } from './types.ts';

/** A change a builder could make, as a set to be tried. */
interface Candidate extends Pick<Help, 'stage' | 'what' | 'field' | 'value'> {
  readonly set: SetDescription;
  readonly whatif?: Whatif;
}

/** Smaller gains are within what building to the same plan twice gives. */
const WORTH_SAYING = 0.5;
/** Less of a margin over others would not show in whole decibels. */
const WORTH_FREEING = 1;
/** Of each decibel a station grows quieter, so much is taken off what it gains over others. Common practice, no source. */
const PRICE_OF_LOUDNESS = 0.25;
const MOST = 5;
/** Of the others only so many are looked at again with each change: the strongest beside the station now. */
const OTHERS_WATCHED = 8;
/** A station stands no further over others than this, dB: nobody hears what is weaker. */
const FREE_OF_OTHERS = 40;

/** A changed set ready to be tuned. */
interface Made {
  readonly candidate: Candidate;
  readonly receiver: Receiver;
}

/** What a change makes of a station. */
interface Tried {
  readonly then: TunedStation;
  readonly worst: Disturbance | undefined;
}

/** The ends of what the set covers. */
interface Covered {
  readonly lowest: Hertz;
  readonly highest: Hertz;
}

/** Makes the what-if sets once; then any station can be asked about. @param all stations at the place, as received now. */
export function helper(
  set: SetDescription,
  now: Receiver,
  all: readonly TunedStation[],
): (station: TunedStation, beside: readonly Disturbance[], covered: Covered) => Help[] {
  const make = (list: readonly Candidate[]): Made[] =>
    list.flatMap((candidate) => {
      try {
        return [{ candidate, receiver: receiver(setCircuit(candidate.set, candidate.whatif), now.fieldOf) }];
      } catch (error) {
        // A what-if that cannot be built (a tap beyond the coil, a wire too thick for its former) is no advice.
        if (error instanceof RangeError) return [];
        throw error;
      }
    });
  const usual = make(candidates(set, now));
  return (station, beside, covered) => {
    if (!station.within)
      return bestOf(broughtWithin(station, [...make(reachFurther(set, station, covered)), ...usual]));
    const drowned = verdictOf({ heard: station.heard.words, disturbance: beside[0] }) === 'drowned';
    const watched = beside.slice(0, OTHERS_WATCHED).map(({ by, frequency }) => all.find(isStation(by, frequency))!);
    const made = drowned ? [...usual, ...make(againstOther(set, station, watched[0]))] : usual;
    const tried = (changed: Receiver): Tried => {
      const then = receiveStation(changed, station.station);
      return { then, worst: besideStation(changed, then, watched)[0] };
    };
    return bestOf(
      made.flatMap(({ candidate, receiver: changed }) => {
        const outcome = tried(changed);
        if (!outcome.then.within) return [];
        return drowned ? freed(candidate, station, beside[0], outcome) : louder(candidate, station, outcome);
      }),
    );
  };
}

const isStation =
  (name: string, frequency: Hertz) =>
  ({ station }: TunedStation): boolean =>
    station.name === name && station.frequency === frequency;

/** Advice with what it is worth beside other advice, dB. */
interface Weighed {
  readonly help: Help;
  readonly worth: Decibels;
}

/** The best few, one word on each thing to change. */
function bestOf(weighed: readonly Weighed[]): Help[] {
  const best = new Map<string, Help>();
  for (const { help } of weighed.toSorted((a, b) => b.worth - a.worth))
    if (!best.has(help.field)) best.set(help.field, help);
  return [...best.values()].slice(0, MOST);
}

const said = ({ stage, what, field, value }: Candidate): Pick<Help, 'stage' | 'what' | 'field' | 'value'> => ({
  stage,
  what,
  field,
  value,
});

const butCosts = (cost: string | undefined): string => (cost ? `, but ${cost}` : '');

/** How much louder a change makes a station; nothing where it would then be drowned. */
function louder(candidate: Candidate, now: TunedStation, { then, worst }: Tried): Weighed[] {
  const gain = then.heard.spl - now.heard.spl;
  if (gain < WORTH_SAYING || verdictOf({ heard: then.heard.words, disturbance: worst }) === 'drowned') return [];
  const cost = broader(now, then);
  const sentence = `${candidate.what}: +${formatNumber(gain, 2)} dB${butCosts(cost)}`;
  return [{ help: { ...said(candidate), gain, of: 'loudness', cost, sentence }, worth: gain }];
}

/** How far a change brings a station out from under the others. */
function freed(candidate: Candidate, now: TunedStation, drownedBy: Disturbance, { then, worst }: Tried): Weighed[] {
  const gain = over(worst) - over(drownedBy);
  const quieter = Math.max(0, now.heard.spl - then.heard.spl);
  const worth = gain - PRICE_OF_LOUDNESS * quieter;
  if (gain < WORTH_FREEING || worth <= 0 || then.heard.words === 'not heard') return [];
  const cost = quieter >= 1 ? `${formatNumber(Math.round(quieter))} dB quieter` : undefined;
  const what = `${candidate.what}: ${standingWords(drownedBy, worst)}`;
  const sentence = `${what}${butCosts(cost)}`;
  return [{ help: { ...said(candidate), what, gain, of: 'margin over others', cost, sentence }, worth }];
}

/** How far a station stands over another that is heard with it. */
const over = (other: Disturbance | undefined): Decibels =>
  Math.min(other?.audioRatio ?? FREE_OF_OTHERS, FREE_OF_OTHERS);

/** "Radio Corvale 2 dB below, not 1 dB above". */
function standingWords(now: Disturbance, then: Disturbance | undefined): string {
  if (then === undefined) return `${now.by} no longer heard`;
  const instead = then.by === now.by ? `not ${aboveOrBelow(over(now))}` : `not ${now.by} ${aboveOrBelow(over(now))}`;
  return `${then.by} ${aboveOrBelow(over(then))}, ${instead}`;
}

/** How a disturber stands to the wanted one: "2 dB below", "1 dB above". */
function aboveOrBelow(wantedOver: Decibels): string {
  const size = Math.round(wantedOver);
  return size === 0 ? 'as loud' : `${Math.abs(size)} dB ${size > 0 ? 'below' : 'above'}`;
}

/** Of changes, those that bring a station onto the scale. */
function broughtWithin(now: TunedStation, made: readonly Made[]): Weighed[] {
  return made.flatMap(({ candidate, receiver: changed }): Weighed[] => {
    const then = receiveStation(changed, now.station);
    if (!then.within) return [];
    const gain = then.heard.spl - now.heard.spl;
    const faint = then.heard.words === 'not heard' ? ', though still not to be heard' : '';
    const what = `${candidate.what}: it comes within reach of the dial${faint}`;
    return [{ help: { ...said(candidate), what, gain, of: 'loudness', sentence: what }, worth: gain }];
  });
}

/** What louder costs: neighbours come in where the circuit grows broader by more than a fifth. */
function broader(now: TunedStation, then: TunedStation): string | undefined {
  if (!(then.loadedQ < now.loadedQ / 1.2)) return undefined;
  const width = (s: TunedStation): string => formatQuantity(s.station.frequency / s.loadedQ, 'frequency', 2);
  return `${width(then)} broad instead of ${width(now)}`;
}

const turnsWords = (turns: number): string => `${formatNumber(turns)} ${turns === 1 ? 'turn' : 'turns'}`;

/** What halves the loss of what is wound, by what it is wound on. */
const BETTER_WINDING = {
  coil: 'A better coil (half the loss: thicker or Litz wire, a dry open former)',
  frame: 'A better frame (half the loss: thicker or Litz wire, turns further apart)',
  'ferrite rod': 'A rod of lower loss, or Litz wire on it (half the loss)',
} as const;

function candidates(set: SetDescription, now: Receiver): Candidate[] {
  const list: Candidate[] = [];
  const { aerial, arrangement, detector, load } = set;
  const R = now.circuit.earth.resistance;
  const outdoors = !isLoop(aerial);
  if (outdoors && R > 5) {
    list.push({
      stage: 'aerial',
      what: `A better earth (${formatQuantity(R / 2, 'resistance', 2)} instead of ${formatQuantity(R, 'resistance', 2)})`,
      field: 'earth.kind',
      value: { path: ['earth'], to: { kind: 'measured', resistance: formatQuantity(R / 2, 'resistance', 2) } },
      set: { ...set, earth: { kind: 'measured', resistance: R / 2 } },
    });
  }
  if (
    aerial.kind === 'inverted-L' ||
    aerial.kind === 'T' ||
    aerial.kind === 'vertical' ||
    aerial.kind === 'sloping' ||
    aerial.kind === 'horizontal'
  ) {
    const to = aerial.height * 1.5;
    list.push({
      stage: 'aerial',
      what: `A higher aerial (${formatQuantity(to, 'length', 2)} instead of ${formatQuantity(aerial.height, 'length', 2)})`,
      field: 'aerial.height',
      value: { path: ['aerial', 'height'], to: formatQuantity(to, 'length', 3) },
      set: { ...set, aerial: { ...aerial, height: to } },
    });
  }
  if (
    aerial.kind === 'inverted-L' ||
    aerial.kind === 'T' ||
    aerial.kind === 'sloping' ||
    aerial.kind === 'horizontal'
  ) {
    const to = aerial.length * 1.5;
    list.push({
      stage: 'aerial',
      what: `A longer aerial (${formatQuantity(to, 'length', 2)} instead of ${formatQuantity(aerial.length, 'length', 2)})`,
      field: 'aerial.length',
      value: { path: ['aerial', 'length'], to: formatQuantity(to, 'length', 3) },
      set: { ...set, aerial: { ...aerial, length: to } },
    });
  }
  if (aerial.kind === 'frame') {
    const to = aerial.side * 1.4;
    list.push({
      stage: 'aerial',
      what: `A larger frame (${formatQuantity(to, 'length', 2)} instead of ${formatQuantity(aerial.side, 'length', 2)}, fewer turns)`,
      field: 'aerial.side',
      set: { ...set, aerial: { ...aerial, side: to, turns: Math.max(1, Math.round(aerial.turns / 1.3)) } },
    });
  }
  list.push({
    stage: 'tuned circuit',
    what: BETTER_WINDING[isLoop(aerial) ? aerial.kind : 'coil'],
    field: isLoop(aerial)
      ? 'aerial.wire.size'
      : `coils[${Math.max(
          0,
          set.coils.findIndex((c) => 'coil' in arrangement && c.name === arrangement.coil),
        )}].wire.size`,
    set,
    whatif: { coilLoss: 0.5 },
  });

  const coil = 'coil' in arrangement ? set.coils.find((c) => c.name === arrangement.coil) : undefined;
  const turns = coil
    ? coil.shape === 'multilayer'
      ? coil.turnsPerLayer * coil.layers
      : coil.turns
    : isLoop(aerial)
      ? aerial.turns
      : undefined;
  if (
    turns !== undefined &&
    'detectorTap' in { detectorTap: undefined, ...arrangement } &&
    arrangement.kind !== 'variometer' &&
    arrangement.kind !== 'elements'
  ) {
    const tap = arrangement.kind === 'slider' ? undefined : (arrangement.detectorTap ?? turns);
    if (tap !== undefined) {
      for (const share of [0.15, 0.22, 0.32, 0.45, 0.6, 0.8, 1]) {
        const to = Math.max(1, Math.round(turns * share));
        if (Math.abs(to - tap) > 0.04 * turns)
          list.push({
            stage: 'detector',
            what: `The detector ${to === turns ? 'at the top of the coil' : `tapped at ${turnsWords(to)}`} (not ${Math.round(tap)})`,
            field: 'arrangement.detectorTap',
            value: { path: ['arrangement', 'detectorTap'], to },
            set: { ...set, arrangement: { ...arrangement, detectorTap: to } as typeof arrangement },
          });
      }
    }
  }
  if (arrangement.kind === 'tapped' && turns !== undefined) {
    for (const factor of [0.25, 0.4, 0.5, 0.6, 0.8, 1.25, 1.6, 2.2]) {
      const to = Math.max(1, Math.round(arrangement.aerialTap * factor));
      if (to < turns && to !== Math.round(arrangement.aerialTap))
        list.push({
          stage: 'tuned circuit',
          what: `The aerial tapped at ${turnsWords(to)} (not ${Math.round(arrangement.aerialTap)})`,
          field: 'arrangement.aerialTap',
          value: { path: ['arrangement', 'aerialTap'], to },
          set: { ...set, arrangement: { ...arrangement, aerialTap: to } },
        });
    }
  }
  const series =
    arrangement.kind === 'series capacitor' ||
    arrangement.kind === 'tapped' ||
    arrangement.kind === 'coupled' ||
    arrangement.kind === 'two circuits'
      ? arrangement.seriesCapacitor
      : undefined;
  if (series !== undefined) {
    for (const factor of [0.25, 0.4, 0.65, 1.5, 2.5]) {
      const to = series * factor;
      list.push({
        stage: 'tuned circuit',
        what: `A series capacitor of ${formatQuantity(to, 'capacitance', 2)} (not ${formatQuantity(series, 'capacitance', 2)})`,
        field: 'arrangement.seriesCapacitor',
        value: { path: ['arrangement', 'seriesCapacitor'], to: formatQuantity(to, 'capacitance', 2) },
        set: { ...set, arrangement: { ...arrangement, seriesCapacitor: to } as typeof arrangement },
      });
    }
  }
  if (
    series === undefined &&
    (arrangement.kind === 'tapped' || arrangement.kind === 'coupled' || arrangement.kind === 'two circuits')
  ) {
    for (const to of [5e-11, 1e-10, 2e-10])
      list.push({
        stage: 'tuned circuit',
        what: `A series capacitor of ${formatQuantity(to, 'capacitance', 2)} in the aerial lead`,
        field: 'arrangement.seriesCapacitor',
        value: { path: ['arrangement', 'seriesCapacitor'], to: formatQuantity(to, 'capacitance', 2) },
        set: { ...set, arrangement: { ...arrangement, seriesCapacitor: to } },
      });
  }
  if ((arrangement.kind === 'coupled' || arrangement.kind === 'two circuits') && arrangement.coupling !== undefined) {
    for (const factor of [0.3, 0.6, 1.6, 3]) {
      const to = Number((arrangement.coupling * factor).toPrecision(2));
      if (to < 0.999)
        list.push({
          stage: 'tuned circuit',
          what: `A coupling of ${formatQuantity(to, 'ratio', 2)} (not ${formatQuantity(arrangement.coupling, 'ratio', 2)})`,
          field: 'arrangement.coupling',
          value: { path: ['arrangement', 'coupling'], to: formatQuantity(to, 'ratio', 2) },
          set: { ...set, arrangement: { ...arrangement, coupling: to } },
        });
    }
  } else if (arrangement.kind === 'coupled' || arrangement.kind === 'two circuits') {
    for (const factor of [0.5, 1.4, 2, 3]) {
      const to = Math.max(arrangement.distance * factor, 0.01);
      list.push({
        stage: 'tuned circuit',
        what: `The coils ${formatQuantity(to, 'length', 2)} apart (not ${formatQuantity(arrangement.distance, 'length', 2)})`,
        field: 'arrangement.distance',
        value: { path: ['arrangement', 'distance'], to: formatQuantity(to, 'length', 2) },
        set: { ...set, arrangement: { ...arrangement, distance: to } },
      });
    }
  }
  if (detector.kind === 'galena' && detector.spot !== 'good')
    list.push({
      stage: 'detector',
      what: 'A good spot on the crystal',
      field: 'detector.spot',
      value: { path: ['detector', 'spot'], to: 'good' },
      set: { ...set, detector: { ...detector, spot: 'good' } },
    });
  if (detector.kind !== 'germanium' && detector.kind !== 'galena')
    list.push({
      stage: 'detector',
      what: 'A germanium diode',
      field: 'detector.kind',
      value: { path: ['detector'], to: { kind: 'germanium', make: 'point contact', wiring: detector.wiring } },
      set: {
        ...set,
        detector: { kind: 'germanium', make: 'point contact', temperature: 300.15, wiring: detector.wiring },
      },
    });
  if (detector.kind === 'silicon' && !detector.bias)
    list.push({
      stage: 'detector',
      what: 'A bias of 0.3 V from a cell',
      field: 'detector.bias',
      value: { path: ['detector', 'bias'], to: '0.3 V' },
      set: { ...set, detector: { ...detector, bias: 0.3 } },
    });
  if (load.kind === 'phones' && load.make === 'magnetic')
    list.push({
      stage: 'phones',
      what: 'Balanced-armature phones',
      field: 'load.make',
      value: { path: ['load', 'make'], to: 'balanced armature' },
      set: { ...set, load: { ...load, make: 'balanced armature' } },
    });
  if (load.kind === 'moving-coil phones' || load.kind === 'phones') {
    const impedance = Math.hypot(now.circuit.load.impedanceAt(1000).re, now.circuit.load.impedanceAt(1000).im);
    const ratios = load.transformer
      ? [load.transformer.ratio * 0.6, load.transformer.ratio * 1.6]
      : [3, 6, 12, 25].filter((n) => impedance * n * n < 2e6);
    for (const ratio of ratios) {
      const transformer = {
        primaryResistance: 500,
        secondaryResistance: Math.min(1, impedance / 50),
        primaryInductance: 30,
        leakage: 0.01,
        ...load.transformer,
        ratio,
      };
      list.push({
        stage: 'phones',
        what: `A transformer of ${formatNumber(ratio, 2)} to 1`,
        field: 'load.transformer.ratio',
        value: load.transformer
          ? { path: ['load', 'transformer', 'ratio'], to: Number(ratio.toPrecision(2)) }
          : {
              path: ['load', 'transformer'],
              to: {
                ratio: Number(ratio.toPrecision(2)),
                secondaryResistance: formatQuantity(transformer.secondaryResistance, 'resistance', 2),
              },
            },
        set: { ...set, load: { ...load, transformer } },
      });
    }
  }
  if (load.kind === 'crystal earpiece' && load.resistor === undefined)
    list.push({
      stage: 'phones',
      what: 'A resistor of 100 kΩ across the earpiece',
      field: 'load.resistor',
      value: { path: ['load', 'resistor'], to: '100 kΩ' },
      set: { ...set, load: { ...load, resistor: 1e5 } },
    });
  return list;
}

/** Coils of the wave traps tried, H. */
const TRAP_COILS = [6e-5, 2e-4];

/** What would keep one other station out: a wave trap on it, or a frame turned edge-on away from it. */
function againstOther(set: SetDescription, wanted: TunedStation, other: TunedStation): Candidate[] {
  const { aerial, arrangement } = set;
  const list: Candidate[] = [];
  const { name, frequency } = other.station;
  if (arrangement.kind !== 'elements' && frequency !== wanted.station.frequency) {
    const traps = arrangement.traps ?? [];
    const kinds = isLoop(aerial) ? (['absorption'] as const) : (['parallel', 'series'] as const);
    for (const kind of kinds)
      for (const inductance of TRAP_COILS) {
        const exact = 1 / ((2 * Math.PI * frequency) ** 2 * inductance);
        const capacitance = Number(exact.toPrecision(4));
        const trap = { kind, inductance, capacitance, q: 100, coupling: 0.05 };
        const written = {
          kind,
          inductance: formatQuantity(inductance, 'inductance', 3),
          capacitance: formatQuantity(capacitance, 'capacitance', 4),
        };
        list.push({
          stage: 'tuned circuit',
          what: `A wave trap on ${name} (${written.inductance} and ${formatQuantity(capacitance, 'capacitance')}, ${TRAP_PLACES[kind]})`,
          field: `arrangement.traps[${traps.length}]`,
          value: { path: ['arrangement', 'traps'], to: [...writtenTraps(traps), written] },
          set: { ...set, arrangement: { ...arrangement, traps: [...traps, trap] } },
        });
      }
  }
  const bearing = bearingOf(other.station, other.field);
  if (isLoop(aerial) && bearing !== undefined) {
    const to = Math.round(bearing + 90) % 360;
    list.push({
      stage: 'aerial',
      what: `The ${aerial.kind === 'frame' ? 'frame' : 'rod'} turned to hear least of ${name} (pointing to ${to}°)`,
      field: 'aerial.direction',
      value: { path: ['aerial', 'direction'], to },
      set: { ...set, aerial: { ...aerial, direction: to } },
    });
  }
  return list;
}

const TRAP_PLACES = {
  parallel: 'in the aerial lead',
  series: 'across aerial and earth',
  absorption: 'loosely coupled to the coil',
} as const;

/** Traps there are already, as one would write them. */
const writtenTraps = (traps: readonly TrapDescription[]) =>
  traps.map(({ inductance, capacitance, coupling, ...rest }) => ({
    ...rest,
    inductance: formatQuantity(inductance, 'inductance', 4),
    capacitance: formatQuantity(capacitance, 'capacitance', 4),
    coupling: formatQuantity(coupling, 'ratio', 3),
  }));

/** How far past the end of the scale the station is put, as a factor on the frequency of that end. */
const PAST_THE_END = [1.03, 1.1, 1.2, 1.35];

/**
 * What would bring a station beyond the scale onto it: L goes as the turns squared and so f as 1/turns; f goes as
 * 1/√C. The aerial, which does not change along, is why more than one value is tried.
 */
function reachFurther(set: SetDescription, { station }: TunedStation, { lowest, highest }: Covered): Candidate[] {
  const isBelow = station.frequency < lowest;
  const end = isBelow ? lowest : highest;
  return PAST_THE_END.flatMap((past) => {
    const factor = (end / station.frequency) * (isBelow ? past : 1 / past);
    return [...windings(set, factor), ...capacitances(set, factor * factor)];
  });
}

/** One winding of the set with so many times its turns. */
function windings(set: SetDescription, by: number): Candidate[] {
  const { aerial, arrangement } = set;
  const more = by > 1 ? 'More' : 'Fewer';
  if (aerial.kind === 'frame' || aerial.kind === 'ferrite rod') {
    const to = Math.max(1, Math.round(aerial.turns * by));
    return [
      {
        stage: 'aerial',
        what: `${more} turns on the ${aerial.kind === 'frame' ? 'frame' : 'rod'} (${formatNumber(to)} instead of ${formatNumber(aerial.turns)})`,
        field: 'aerial.turns',
        value: { path: ['aerial', 'turns'], to },
        set: { ...set, aerial: { ...aerial, turns: to } },
      },
    ];
  }
  const i = set.coils.findIndex((c) => 'coil' in arrangement && c.name === arrangement.coil);
  const coil = set.coils[i];
  if (!coil || coil.shape === 'measured') return [];
  const key = coil.shape === 'multilayer' ? 'turnsPerLayer' : 'turns';
  const turns = coil.shape === 'multilayer' ? coil.turnsPerLayer : coil.turns;
  const to = Math.max(1, Math.round(turns * by));
  const where = coil.shape === 'multilayer' ? `in each layer of “${coil.name}”` : `on “${coil.name}”`;
  return [
    {
      stage: 'tuned circuit',
      what: `${more} turns ${where} (${formatNumber(to)} instead of ${formatNumber(turns)})`,
      field: `coils[${i}].${key}`,
      value: { path: ['coils', i, key], to },
      set: { ...set, coils: set.coils.map((c, k) => (k === i ? ({ ...coil, [key]: to } as typeof coil) : c)) },
    },
  ];
}

/** The tuning, or what stands in parallel with a coil that does it, with so many times its capacitance. */
function capacitances(set: SetDescription, by: number): Candidate[] {
  const { arrangement, tuning } = set;
  const rounded = (capacitance: Farads): Farads => Number(capacitance.toPrecision(2));
  const instead = (to: Farads, from: Farads): string =>
    `(${formatQuantity(to, 'capacitance', 2)} instead of ${from > 0 ? formatQuantity(from, 'capacitance', 2) : 'none'})`;
  if (arrangement.kind === 'slider' || arrangement.kind === 'variometer') {
    const from = arrangement.parallelCapacitor;
    const to = rounded(from > 0 ? from * by : (by - 1) * USUAL_OF_AERIAL);
    if (!(to > 0)) return [];
    return [
      {
        stage: 'tuned circuit',
        what: `A ${by > 1 ? 'larger' : 'smaller'} capacitor across the coil ${instead(to, from)}`,
        field: 'arrangement.parallelCapacitor',
        value: { path: ['arrangement', 'parallelCapacitor'], to: formatQuantity(to, 'capacitance', 2) },
        set: { ...set, arrangement: { ...arrangement, parallelCapacitor: to } },
      },
    ];
  }
  if (tuning.kind !== 'variable' || by <= 1) return [];
  const to = rounded(tuning.maximum * by);
  if (to > LARGEST_VARIABLE) return [];
  return [
    {
      stage: 'tuned circuit',
      what: `A larger tuning capacitor ${instead(to, tuning.maximum)}`,
      field: 'tuning.maximum',
      value: { path: ['tuning', 'maximum'], to: formatQuantity(to, 'capacitance', 2) },
      set: { ...set, tuning: { ...tuning, maximum: to } },
    },
  ];
}

/** What a wire aerial adds to a coil without a capacitor of its own, F. Common practice, no source. */
const USUAL_OF_AERIAL: Farads = 2e-10;
/** The largest variable capacitor to be had, sections joined, F. Common practice, no source. */
const LARGEST_VARIABLE: Farads = 1e-9;
