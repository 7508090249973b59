import type { PartRole } from '../../../engine/built/identity.ts';
import type { SoundReadings } from '../../../engine/faults/sound-readings.ts';
import { coilNamesOf } from '../../../engine/kinds/arrangements/coil-names.ts';
import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import { isGivenAerial } from '../../../engine/kinds/given-aerials.ts';
import type { LoadDescription } from '../../../engine/kinds/loads/load-schema.ts';
import { isLoop } from '../../../engine/kinds/loops.ts';
import type { TuningDescription } from '../../../engine/kinds/tunings/tuning-schema.ts';
import type { Reception, StationReception } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { hasRanges, type RangedStation } from '../../../engine/uncertainty/ranged-reception.ts';
import type { Ohms, Volts } from '../../../engine/units/quantities.ts';
import { tapsOf } from '../../drawings/coil/coil.ts';
import type { Across, BringUpFact, Plates, WindingResistance } from '../../words/index.ts';
import { type BoardPart, boardParts } from '../board/parts.ts';
import { type AerialDial, aerialDial } from './aerial-dial.ts';
import { heardBest } from './best.ts';
import { detectorSteps } from './detector-steps.ts';
import { pointerOf } from './dial-marks.ts';
import { dialText } from './dial-text.ts';
import { metered } from './meter.ts';
import { resistanceOnMeter } from './resistance-on-meter.ts';
import type { SetOnBand, SetOnBands } from './set-on-band.ts';

const PLATES: ByKind<TuningDescription, Plates> = {
  variable: () => 'vanes',
  vanes: () => 'vanes',
  measured: () => 'vanes',
  fixed: () => 'vanes',
  foil: () => 'sheets',
  book: () => 'sheets',
  tubes: () => 'tubes',
};

/** What may touch where it should not, in a capacitor that is moved. */
export const platesOf = ({ tuning }: Pick<BoardPart, 'tuning'>): Plates => (tuning ? byKind(PLATES, tuning) : 'vanes');

/** Whether what stands without a station is worth telling from what a station adds. */
export const standsAlone = (standing: number, direct: number): boolean =>
  metered(standing) && Math.abs(standing) > 0.02 * Math.abs(direct);

/** From the wired board to the first station, in the order in which a builder does it. */
export function bringUpSteps(set: SetDescription, reception: Reception, readings: SoundReadings): BringUpFact[] {
  const { parts } = boardParts(set);
  return [
    { code: 'wiring-list' },
    ...windingSteps(set, reception, readings, parts),
    ...parts
      .filter((part) => part.kind === 'variable')
      .map((part) => ({
        code: 'capacitor-insulation' as const,
        tag: part.tag,
        name: part.words,
        plates: platesOf(part),
      })),
    ...detectorSteps(
      set,
      reception,
      parts.filter((p) => p.kind === 'detector').map((p) => p.tag),
      readings,
    ),
    byKind(
      LOADS,
      set.load,
      parts.some((p) => p.kind === 'outputs'),
      readings,
    ),
    ...biasSteps(set),
    ...aerialSteps(set, reception, parts),
    ...stationSteps(set, reception, readings, parts),
  ];
}

/**
 * The same with a band switch: windings and stations of each band after the switch is turned to it.
 * @param onBoard parts of all bands, for the names that they have on the board
 */
export function bringUpStepsOnBands(bands: SetOnBands, onBoard: readonly BoardPart[]): BringUpFact[] {
  const [standing, ...others] = bands;
  const steps = bringUpSteps(standing.set, standing.reception, standing.readings);
  if (standing.band === undefined || others.length === 0) return steps;
  const tag = onBoard.find(({ kind }) => kind === 'switch')?.tag;
  const turnTo = ({ band = '' }: SetOnBand): BringUpFact => ({ code: 'turn-switch', band, tag });
  const measured = new Set(coilsInCircuit(standing));
  const windings: BringUpFact[] = [];
  const stations: BringUpFact[] = [];
  for (const one of others) {
    const parts = boardParts(one.set).parts.map((part) => ({
      ...part,
      tag: onBoard.find(({ id }) => id === part.id)?.tag ?? part.tag,
    }));
    const inCircuit = coilsInCircuit(one).filter((coil) => !measured.has(coil));
    const ofBand = windingSteps(one.set, one.reception, one.readings, parts).filter(
      (step) => step.code === 'coil-resistance' && inCircuit.includes(step.coil),
    );
    for (const coil of inCircuit) measured.add(coil);
    if (ofBand.length > 0) windings.push(turnTo(one), ...ofBand);
    stations.push(turnTo(one), ...stationSteps(one.set, one.reception, one.readings, parts));
  }
  const isOfOther = (step: BringUpFact): boolean =>
    step.code === 'coil-resistance' && windings.some((one) => one.code === step.code && one.coil === step.coil);
  const [first, ...rest] = steps.filter((step) => !isOfOther(step));
  const last = rest.findLastIndex(({ code }) => code === 'coil-resistance');
  return [
    first,
    turnTo(standing),
    ...rest.slice(0, last + 1),
    ...windings,
    ...(windings.length > 0 ? [turnTo(standing)] : []),
    ...rest.slice(last + 1),
    ...stations,
  ];
}

const coilsInCircuit = ({ set }: SetOnBand): string[] => [...coilNamesOf(set.arrangement)];

/** Of a winding from its start to its end, as it is wired; nothing where that is not known. */
function endToEnd({ ohmsBetween }: SoundReadings, part: BoardPart | undefined): Ohms | undefined {
  const [start, end] = (['start', 'end'] as const).map((is) => part?.ends.find((terminal) => terminal.is === is));
  const R = part && start && end && ohmsBetween(part.id, start.id, end.id);
  return R !== undefined && Number.isFinite(R) && R > 0 ? R : undefined;
}

function windingSteps(
  set: SetDescription,
  reception: Reception,
  readings: SoundReadings,
  parts: readonly BoardPart[],
): BringUpFact[] {
  const steps: BringUpFact[] = [];
  let isExplained = false;
  const winding = (resistance: number): WindingResistance => {
    const { low, high, leads: asRead } = resistanceOnMeter(resistance);
    const leads = asRead === 'within' ? 'no' : isExplained ? 'again' : 'explained';
    isExplained ||= asRead === 'subtracted';
    return { resistance, range: [low, high], leads };
  };
  set.coils.forEach((coil, i) => {
    const part = parts.find((p) => p.coil === coil);
    // Of one that was measured at radio frequency alone nothing is known at rest.
    const ofWire = reception.parts.coils[i]?.dcResistance;
    if (ofWire === undefined || !Number.isFinite(ofWire) || !(ofWire > 0)) return;
    // A coil of another band, or of no use yet, is not in the circuit: it reads as its wire.
    const R = endToEnd(readings, part) ?? ofWire;
    const tag = part?.tag;
    const tapped = tapsOf(set, i).length > 0;
    steps.push({ code: 'coil-resistance', coil: coil.name, tag, tapped, ...winding(R) });
  });
  const loop = parts.find((p) => p.kind === 'loop');
  const ofLoop = endToEnd(readings, loop);
  if (ofLoop !== undefined && isLoop(set.aerial))
    steps.push({ code: 'loop-resistance', aerial: set.aerial.kind, tag: loop?.tag, ...winding(ofLoop) });
  const { transformer } = set.load;
  const tag = parts.find((p) => p.kind === 'transformer')?.tag;
  const [primary, secondary] = (['primary', 'secondary'] as const).map(readings.ohmsAt);
  if (transformer && tag && primary !== undefined && secondary !== undefined)
    steps.push({ code: 'transformer-resistance', tag, primary, secondary });
  return steps;
}

const LOADS: ByKind<LoadDescription, BringUpFact, [posts: boolean, SoundReadings]> = {
  phones: ({ resistance }, posts, { ohmsAt }) => ({
    code: 'phones-click',
    resistance: ohmsAt('phones') ?? resistance,
    by: 'resistance',
    posts,
  }),
  'moving-coil phones': ({ impedance }, posts) => ({
    code: 'phones-click',
    resistance: impedance,
    by: 'impedance',
    posts,
  }),
  'crystal earpiece': (_, posts) => ({ code: 'earpiece-click', posts }),
  amplifier: () => ({ code: 'amplifier-hum' }),
};

/** A bias cell is part of a single detector only. */
const biasSteps = ({ detector, load }: SetDescription): BringUpFact[] =>
  detector.wiring === 'single' && detector.bias !== undefined && detector.bias !== 0
    ? [{ code: 'bias', voltage: detector.bias, load: load.kind }]
    : [];

function aerialSteps(set: SetDescription, reception: Reception, parts: readonly BoardPart[]): BringUpFact[] {
  if (!parts.some((p) => p.kind === 'aerial terminal')) return [];
  const { earth, aerial } = reception.parts;
  return [
    {
      code: 'aerial-and-earth',
      earth: set.earth,
      resistance: earth.resistance,
      range: earth.range,
      capacitance: aerial.capacitance,
      measuredAerial: isGivenAerial(set.aerial),
    },
  ];
}

function stationSteps(
  set: SetDescription,
  reception: Reception,
  readings: SoundReadings,
  parts: readonly BoardPart[],
): BringUpFact[] {
  const best = heardBest(reception);
  const loop = isLoop(set.aerial) ? set.aerial.kind : undefined;
  if (!best) return [{ code: 'nothing-heard', loop }];
  const second = aerialDial(set);
  return [
    tuningStep(set, best, second),
    ...(second ? [secondStep(set, best, second, parts)] : []),
    ...(loop ? [{ code: 'turn-loop', aerial: loop } as const] : []),
    ...voltageSteps(set, best, readings, parts),
    {
      code: 'ends-of-dial',
      low: reception.dial.lowestRange ?? [reception.dial.lowest, reception.dial.lowest],
      high: reception.dial.highestRange ?? [reception.dial.highest, reception.dial.highest],
      capacitor: parts.some((p) => p.kind === 'variable'),
      aerialWire: loop === undefined,
    },
  ];
}

function tuningStep(set: SetDescription, best: StationReception, second: AerialDial | undefined): BringUpFact {
  const { scale, range = [scale, scale] } = best.dial!;
  const [low, high] = range;
  // The range is in degrees of a capacitor's scale.
  const isTurned = pointerOf(set).scale.kind === 'round' && set.arrangement.kind !== 'variometer';
  const facts = {
    station: best,
    reading: dialText(set, best),
    range: isTurned && high > low ? ([low, high] as const) : undefined,
    loop: isLoop(set.aerial),
  };
  return second
    ? { code: 'tune-in-two-circuits', ...facts, tag: second.tag, mainTag: second.mainTag, second: second.textOf(best) }
    : { code: 'tune-in', ...facts };
}

function secondStep(
  { arrangement }: SetDescription,
  best: StationReception,
  { tag, mainTag, textOf }: AerialDial,
  parts: readonly BoardPart[],
): BringUpFact {
  const own = parts.find((p) => p.tag === tag);
  return {
    code: 'aerial-circuit-peak',
    tag,
    mainTag,
    second: textOf(best),
    plates: own ? platesOf(own) : 'vanes',
    coil: arrangement.kind === 'two circuits' ? arrangement.aerialCoil : '',
  };
}

/** Where a meter finds the detector's direct voltage: a coupling capacitor or a transformer keeps it from the terminals. */
function acrossOf({ load }: SetDescription, parts: readonly BoardPart[]): Across {
  const tagOf = (role: PartRole): string | undefined => parts.find((p) => p.role === role)?.tag;
  const primary = tagOf('transformer');
  if (primary) return { at: 'primary', tag: primary };
  const resistor = tagOf('coupling-capacitor') && tagOf('load-resistor');
  return resistor ? { at: 'load resistor', tag: resistor } : { at: 'load', load: load.kind };
}

const rangesOf = (station: StationReception): RangedStation['ranges'] | undefined =>
  hasRanges(station) ? station.ranges : undefined;

/** A range of what the detector gives, as a meter that loads it shows it. */
function asMetered(station: StationReception, voltage: Volts): readonly [number, number] | undefined {
  const range = rangesOf(station)?.directVoltage;
  if (!range || station.directVoltage === 0) return undefined;
  const share = voltage / station.directVoltage;
  return [range[0] * share, range[1] * share];
}

/** What a station adds to a voltage that stands by itself is spread as the audio is, which it comes with. */
function asAudio(station: StationReception, change: number): readonly [number, number] | undefined {
  const audio = rangesOf(station)?.audioVoltage;
  if (!audio || !(station.audioVoltage > 0)) return undefined;
  const [low, high] = audio.map((end) => (change * end) / station.audioVoltage).sort((a, b) => a - b);
  return [low, high];
}

function voltageSteps(
  set: SetDescription,
  best: StationReception,
  readings: SoundReadings,
  parts: readonly BoardPart[],
): BringUpFact[] {
  const voltage = readings.directVoltage(best.index);
  if (!(Math.abs(voltage) > 1e-6)) return [];
  const across = acrossOf(set, parts);
  const standing = readings.standingVoltage();
  const change = voltage - standing;
  if (standsAlone(standing, voltage))
    return [
      {
        code: 'standing-voltage',
        voltage,
        across,
        standing,
        from: set.detector.kind === 'valve' ? 'cathode' : 'bias',
        change,
        isMetered: metered(change),
        changeRange: asAudio(best, change),
      },
    ];
  return [
    metered(voltage)
      ? { code: 'direct-voltage', voltage, across, range: asMetered(best, voltage) }
      : { code: 'direct-voltage-small', voltage, across },
  ];
}
