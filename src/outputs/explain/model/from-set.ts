import { setCircuit } from '../../../engine/built/set-circuit.ts';
import { usualDescription } from '../../../engine/kinds/detectors/usual-of.ts';
import { detectorId, detectorModel } from '../../../engine/kinds/models.ts';
import { type FieldOptions, fieldsAtSite } from '../../../engine/reception/path/field.ts';
import { receiver, receiveStation, type TunedStation } from '../../../engine/reception/path/receive-station.ts';
import type { Reception, StationReception } from '../../../engine/reception/path/types.ts';
import { turnSwitch } from '../../../engine/set/band-switch.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import type { StationDescription } from '../../../engine/set/place.ts';
import { drawnSet } from '../../../engine/uncertainty/drawn-set.ts';
import { fieldDraws } from '../../../engine/uncertainty/field-draws.ts';
import type { FigureId } from '../../../engine/uncertainty/figures.ts';
import { hasRanges, rangedAbout } from '../../../engine/uncertainty/ranged-reception.ts';
import { fromDecibels, type Hertz } from '../../../engine/units/quantities.ts';
import { BANDS, nearestBand } from '../../../engine/vary/bands.ts';
import { type FrequencyRange, rewindFor } from '../../../engine/vary/move-band.ts';
import { figureTexts } from '../../words/index.ts';
import type { PictureFacts } from '../pictures/index.ts';
import { settledVoltage } from './one-way.ts';
import { heaterOf, loopOfSet, smoothingOfSet, tunerOf } from './scene-parts.ts';
import { PERFECT, resonance } from './settings.ts';
import { sidebandPassing, USUAL_TONE } from './wave-programme.ts';
import type { WaveNeighbour, WaveSpec, WaveWorkingPoint } from './wave-spec.ts';
import type { Waves } from './waves.ts';

/** Tones of the neighbours, each its own, so that they can be told apart. */
const NEIGHBOUR_TONES: readonly Hertz[] = [400, 600, 800, 1200, 1600, 2000];
/** More would crowd the picture and change nothing. */
const MOST_NEIGHBOURS = 8;
/** Below this share of the wanted carrier nothing shows. */
const FAINTEST = 2e-4;

/** An ordinary set on an ordinary station, for when there is none. */
export const ORDINARY: WaveSpec = {
  carrier: 909e3,
  depth: 0.6,
  programme: { kind: 'tones', tones: [{ frequency: USUAL_TONE, share: 1 }] },
  atAerial: 0.05,
  atTuned: 0.4,
  atDetector: 0.2,
  loadedQ: 45,
  neighbours: [
    { frequency: 936e3, share: 0.12, depth: 0.5, tone: 400 },
    { frequency: 855e3, share: 0.06, depth: 0.5, tone: 600 },
  ],
  detector: 'perfect',
  detectorId: PERFECT,
  load: { resistance: 10e3, capacitance: 1e-9 },
};

/** The station that is looked at: the one asked for, if it is there, else the one heard best. */
export const stationOf = (reception: Reception, index: number | undefined): StationReception | undefined =>
  reception.stations[index ?? -1] ?? reception.stations[reception.best[0] ?? 0];

/**
 * The waves of one station in a set, every level as worked out for it.
 * @param field the time of day and the coastline that the reception was worked out with; default by day, none.
 * @returns undefined where nothing is received.
 */
export function wavesOfSet(
  set: SetDescription,
  reception: Reception,
  index?: number,
  field?: FieldOptions,
): WaveSpec | undefined {
  const station = stationOf(reception, index);
  if (!station || !(station.detectorVoltage > 0)) return undefined;
  const described = set.place.stations[station.index];
  const depth = described?.modulation ?? 0.6;
  return {
    deepening: deepening(set, station, depth, field),
    carrier: station.frequency,
    depth,
    programme: { kind: 'tones', tones: [{ frequency: USUAL_TONE, share: 1 }] },
    atAerial: station.emf,
    atTuned: station.tunedCircuitVoltage,
    atDetector: station.detectorVoltage,
    loadedQ: Math.max(station.loadedQ, 1),
    neighbours: neighboursOf(set, reception, station),
    detector: detectorModel(set.detector),
    detectorId: detectorId(set.detector),
    bias: set.detector.wiring === 'single' ? set.detector.bias : undefined,
    bothHalves: set.detector.wiring === 'full-wave',
    load: smoothingOfSet(set),
  };
}

/** One station of a set in all sets drawn. */
const drawnOf = (set: SetDescription, index: number, field: FieldOptions = {}) =>
  drawnSet(setCircuit(set), fieldsAtSite(set.place, field), (station) =>
    fieldDraws(set, set.place.stations[station], field),
  )(index);

/** What of a set is otherwise than it was received with. */
export interface Retuned {
  /** Of the library; left out, or not in it: the set's own. */
  readonly detector?: string;
  /** Left out: the station's own. */
  readonly carrier?: Hertz;
  /** On another carrier: with coil and band switch as they are. */
  readonly keepsCoil?: boolean;
}

/**
 * The same set, tuned anew: with another detector of the library, on another carrier, or both.
 * @param sets for a carrier, from `setsByCarrier`. @returns undefined where nothing of that is known or received.
 */
export function workingPointOf(
  set: SetDescription,
  reception: Reception,
  index: number | undefined,
  { detector, carrier, keepsCoil }: Retuned,
  field?: FieldOptions,
  sets = setsByCarrier(set, field),
): WaveWorkingPoint | undefined {
  const description = detector === undefined ? undefined : usualDescription(detector);
  const station = stationOf(reception, index);
  const described = station && set.place.stations[station.index];
  if (!described || (description === undefined && carrier === undefined)) return undefined;
  const fitted = (one: SetDescription): SetDescription =>
    description === undefined ? one : { ...one, detector: description };
  const { modulation } = described;
  if (carrier !== undefined) {
    const moved = { ...described, frequency: carrier };
    const s = received(fitted(keepsCoil ? set : sets(moved)), moved, field);
    // The set's own levels are medians: moved by as much as without them.
    const point = scaledPoint(s, received(set, described, field), station, modulation, description?.bias);
    const { points } = reception.dial;
    return keepsCoil && point && points.length > 0
      ? { ...point, reach: { ...rangeOf(points), within: s.within } }
      : point;
  }
  const changed = fitted(set);
  const s = received(changed, described, field);
  if (!(s.steady.junctionVoltage > 0)) return undefined;
  // Medians where the set's own figures are medians.
  const drawn = hasRanges(station) ? drawnOf(changed, station.index, field) : undefined;
  const median = (now: number, id: FigureId): number => (drawn ? rangedAbout(now, drawn.figure(id)).median : now);
  return {
    atTuned: median(s.tunedVoltage, 'tunedCircuitVoltage'),
    atDetector: median(s.steady.junctionVoltage, 'detectorVoltage'),
    loadedQ: Math.max(median(s.loadedQ, 'loadedQ'), 1),
    deepening: deepeningOf(s, modulation),
    bias: description?.bias,
  };
}

/** Ends of the range that a set tunes. */
function rangeOf(dial: readonly { readonly frequency: Hertz }[]) {
  const frequencies = dial.map(({ frequency }) => frequency);
  return { lowest: Math.min(...frequencies), highest: Math.max(...frequencies) };
}

/**
 * The ordinary set with the coil it has: beyond its range it stands at the nearer end.
 * @returns undefined where its coil is changed: it then works as on its own carrier.
 */
export function ordinaryPoint(carrier: Hertz | undefined, keepsCoil = false): WaveWorkingPoint | undefined {
  if (carrier === undefined || !keepsCoil) return undefined;
  const { lowest, highest } = rangeOf(ordinaryDial(ORDINARY.loadedQ));
  const nearest = Math.min(highest, Math.max(lowest, carrier));
  const share = resonance(ORDINARY.loadedQ, nearest, carrier);
  return {
    atTuned: ORDINARY.atTuned * share,
    atDetector: ORDINARY.atDetector * share,
    loadedQ: Math.max(ORDINARY.loadedQ * share, 1),
    deepening: 1,
    reach: { lowest, highest, within: nearest === carrier },
  };
}

function scaledPoint(
  now: TunedStation,
  own: TunedStation,
  station: StationReception,
  modulation: number,
  bias: number | undefined,
): WaveWorkingPoint | undefined {
  if (!(now.steady.junctionVoltage > 0 && own.steady.junctionVoltage > 0)) return undefined;
  return {
    atAerial: (station.emf * now.emf) / own.emf,
    atTuned: (station.tunedCircuitVoltage * now.tunedVoltage) / own.tunedVoltage,
    atDetector: (station.detectorVoltage * now.steady.junctionVoltage) / own.steady.junctionVoltage,
    loadedQ: Math.max((station.loadedQ * now.loadedQ) / own.loadedQ, 1),
    deepening: deepeningOf(now, modulation),
    bias,
  };
}

/**
 * Which form of a set receives a carrier: as it stands, on another position of its band switch, or rewound for the carrier's
 * band on the same former. Each is worked out once.
 */
export function setsByCarrier(
  set: SetDescription,
  field?: FieldOptions,
): (station: StationDescription) => SetDescription {
  const switched = (set.bands ?? []).map((_, i) => turnSwitch(set, i)).filter((one) => one !== set);
  const rewound = new Map<Hertz, SetDescription>();
  return (station) => {
    const reaching = [set, ...switched].find((one) => received(one, station, field).within);
    if (reaching) return reaching;
    const band = rangeAround(station.frequency);
    let other = rewound.get(band.from);
    if (!other) rewound.set(band.from, (other = rewindFor(set, band).moved));
    return other;
  };
}

/** Ratio between neighbouring ranges outside of the broadcast bands, and from the middle of each to its ends. */
const APART = 1.2;
const TO_END = 1.4;

/** The broadcast band of a carrier; for one outside of both, a range around it. */
function rangeAround(carrier: Hertz): FrequencyRange {
  const band = BANDS[nearestBand(carrier)];
  if (carrier >= band.from && carrier <= band.to) return band;
  const middle = APART ** Math.round(Math.log(carrier) / Math.log(APART));
  return { from: middle / TO_END, to: middle * TO_END };
}

const received = (set: SetDescription, station: StationDescription, field?: FieldOptions): TunedStation =>
  receiveStation(receiver(setCircuit(set), fieldsAtSite(set.place, field)), station);

function deepening(set: SetDescription, station: StationReception, depth: number, field?: FieldOptions): number {
  const described = set.place.stations[station.index];
  return described && depth > 0 ? deepeningOf(received(set, described, field), depth) : 1;
}

/**
 * Depth of modulation on the tuned circuit against that of sidebands merely trimmed by its Q: the phones' low direct
 * resistance smothers the steady carrier more than the programme, so that what is left is modulated deeper than sent.
 */
function deepeningOf({ audio, loadedQ, station }: TunedStation, depth: number): number {
  const trimmed = sidebandPassing(Math.max(loadedQ, 1), station.frequency, USUAL_TONE).gain;
  const ratio = audio.depthLeft / (Math.min(depth, 1) * trimmed);
  return Number.isFinite(ratio) ? Math.min(3, Math.max(0.3, ratio)) : 1;
}

/** The other stations with the pointer on the wanted one, by their levels on the dial. */
function neighboursOf(set: SetDescription, reception: Reception, wanted: StationReception): WaveNeighbour[] {
  const { points, levels } = reception.dial;
  const position = wanted.dial?.position;
  const at =
    position === undefined
      ? -1
      : points.reduce(
          (best, p, i) => (Math.abs(p.position - position) < Math.abs(points[best].position - position) ? i : best),
          0,
        );
  const row = levels[at];
  return reception.stations
    .filter((s) => s.index !== wanted.index && Math.abs(s.frequency - wanted.frequency) > 500)
    .map((s): WaveNeighbour => {
      const stated = wanted.disturbances.find((d) => d.index === s.index)?.carrierRatio;
      // The dial's own column may stand a hair beside the peak: the wanted one's level there is the measure.
      const fromDial = row ? row[s.index] - row[wanted.index] : undefined;
      const level = stated === undefined ? (fromDial ?? -60) : -stated;
      const described = set.place.stations[s.index];
      return {
        name: s.name,
        frequency: s.frequency,
        share: fromDecibels(Math.min(level, 60)),
        depth: Math.min(described?.modulation ?? 0.5, 1),
        tone: NEIGHBOUR_TONES[s.index % NEIGHBOUR_TONES.length],
      };
    })
    .filter((n) => n.share > FAINTEST)
    .sort((a, b) => b.share - a.share)
    .slice(0, MOST_NEIGHBOURS);
}

/** An ordinary capacitor, semicircular vanes: 3 to 1 in frequency. */
const ordinaryDial = (loadedQ: number): PictureFacts['dial'] =>
  Array.from({ length: 40 }, (_, i) => {
    const position = i / 39;
    const capacitance = 40e-12 + 460e-12 * position;
    return { position, frequency: 1.6e6 * Math.sqrt(40e-12 / capacitance) + 1, capacitance, loadedQ };
  });

/** The stations of the picture without a set. */
const ordinaryStations = ({ carrier, neighbours }: WaveSpec): PictureFacts['stations'] =>
  [{ frequency: carrier, share: 1 }, ...neighbours].map(({ frequency, share }, i) => ({
    name: figureTexts.exampleStation(i),
    frequency,
    emf: share,
  }));

/** What the moving pictures are driven by; without a set, an ordinary one. */
export function pictureFacts(waves: Waves, set?: SetDescription, reception?: Reception, index?: number): PictureFacts {
  const station = reception && stationOf(reception, index);
  const { spec } = waves;
  const { detector, loadedQ } = spec;
  const isOwn = set !== undefined && detector !== 'perfect' && spec.detectorId === detectorId(set.detector);
  const loop = loopOfSet(set);
  const ownDial = reception && reception.dial.points.length > 1 ? reception.dial.points : undefined;
  return {
    waves,
    detector,
    directVoltage:
      isOwn && station
        ? station.directVoltage
        : settledVoltage({ ...spec, resistance: spec.load.resistance, amplitude: spec.atDetector }),
    dial: ownDial ?? ordinaryDial(loadedQ),
    tuner: tunerOf(set),
    loop,
    swing: reception?.dial.swing || 180,
    stations: reception
      ? reception.stations.map(({ name, frequency, emf }) => ({ name, frequency, emf }))
      : ordinaryStations(spec),
    aerial:
      reception && !loop
        ? {
            capacitance: reception.parts.aerial.capacitance,
            effectiveHeight: reception.parts.aerial.effectiveHeight,
          }
        : undefined,
    ...heaterOf(set),
  };
}
