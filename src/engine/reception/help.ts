import { setCircuit, type Whatif } from '../circuit/set-circuit.ts';
import type { SetDescription } from '../set/description.ts';
import { isLoop } from '../set/loops.ts';
import { formatNumber, formatQuantity } from '../units/format.ts';
import { type Receiver, receiver, receiveStation, type TunedStation } from './receive-station.ts';
import type { Help } from './types.ts';

/** A change a builder could make, as a set to be tried. */
interface Candidate extends Pick<Help, 'stage' | 'what' | 'field' | 'value'> {
  readonly set: SetDescription;
  readonly whatif?: Whatif;
}

/** Smaller gains are within what building to the same plan twice gives. */
const WORTH_SAYING = 0.5;
const MOST = 5;

/** Makes the what-if sets once; then any station can be asked about. */
export function helper(set: SetDescription, now: Receiver): (station: TunedStation) => Help[] {
  const made = candidates(set, now).flatMap((candidate) => {
    try {
      return [{ candidate, receiver: receiver(setCircuit(candidate.set, candidate.whatif), now.fieldOf) }];
    } catch (error) {
      // A what-if that cannot be built (a tap beyond the coil, a wire too thick for its former) is no advice.
      if (error instanceof RangeError) return [];
      throw error;
    }
  });
  return (station) => {
    const helps = made.map(({ candidate, receiver: changed }): Help => {
      const { set: _, whatif: __, ...said } = candidate;
      const then = receiveStation(changed, station.station);
      const gain = then.heard.spl - station.heard.spl;
      const cost = broader(station, then);
      return {
        ...said,
        gain,
        cost,
        sentence: `${said.what}: +${formatNumber(gain, 2)} dB${cost ? `, but ${cost}` : ''}`,
      };
    });
    const best = new Map<string, Help>();
    for (const help of helps.sort((a, b) => b.gain - a.gain)) {
      // One word on each thing to change: the best of its values.
      const key = help.what.replace(/\s*\(.*/, '').replace(/ [\d.,]+.*/, '');
      if (help.gain >= WORTH_SAYING && !best.has(key)) best.set(key, help);
    }
    return [...best.values()].slice(0, MOST);
  };
}

/** What louder costs: neighbours come in where the circuit grows broader by more than a fifth. */
function broader(now: TunedStation, then: TunedStation): string | undefined {
  if (!(then.loadedQ < now.loadedQ / 1.2)) return undefined;
  const width = (s: TunedStation): string => formatQuantity(s.station.frequency / s.loadedQ, 'frequency', 2);
  return `${width(then)} broad instead of ${width(now)}`;
}

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
    what: 'A better coil (half the loss: thicker or Litz wire, a dry open former)',
    field: `coils[${Math.max(
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
            what: `The detector ${to === turns ? 'at the top of the coil' : `tapped at ${to} turns`} (not ${Math.round(tap)})`,
            field: 'arrangement.detectorTap',
            value: { path: ['arrangement', 'detectorTap'], to },
            set: { ...set, arrangement: { ...arrangement, detectorTap: to } as typeof arrangement },
          });
      }
    }
  }
  if (arrangement.kind === 'tapped' && turns !== undefined) {
    for (const factor of [0.4, 0.6, 0.8, 1.25, 1.6, 2.2]) {
      const to = Math.max(1, Math.round(arrangement.aerialTap * factor));
      if (to < turns && to !== Math.round(arrangement.aerialTap))
        list.push({
          stage: 'tuned circuit',
          what: `The aerial tapped at ${to} turns (not ${Math.round(arrangement.aerialTap)})`,
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
    for (const factor of [0.4, 0.65, 1.5, 2.5]) {
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
  if (arrangement.kind === 'coupled' || arrangement.kind === 'two circuits') {
    for (const factor of [0.5, 2]) {
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
