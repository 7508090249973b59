import { setCircuit } from '../../built/set-circuit.ts';
import { distinctWarnings, type Warning, warning } from '../../facts/warning.ts';
import type { TrapAsMade } from '../../kinds/arrangements/traps.ts';
import { detectorId } from '../../kinds/models.ts';
import { magnitude } from '../../numerics/complex.ts';
import { slopeResistance } from '../../parts/detector/detector.ts';
import { cautionsFor } from '../../set/cautions.ts';
import type { SetDescription } from '../../set/description.ts';
import { listeningTime } from '../../set/listening-time.ts';
import { type Decibels, decibels } from '../../units/quantities.ts';
import { lawOfDetector } from '../detection/detection-law.ts';
import { detectorFacts } from '../detection/detector-facts.ts';
import { dialOf, dialPlace, receiveOnDial, tuningCurve } from '../dial/dial.ts';
import { intelligibilityAmong } from '../hearing/index.ts';
import { bandwidthOf, interferenceAmong } from '../interference/interference.ts';
import { verdictOf, worstOf } from '../verdict.ts';
import { type FieldOptions, fieldsAtSite } from './field.ts';
import { type Receiver, receiver, receiveStation, TEST_TONE, type TunedStation } from './receive-station.ts';
import { speechBands } from './speech-bands.ts';
import { stagesOf } from './stages.ts';
import type { Hearing, OutOfRange, PartFigures, Reception, Stage, StationReception } from './types.ts';

/**
 * What the set gives at its place: every station's path from field to ear, the dial, and what disturbs what.
 * @param set as read
 * @param options time and coastline; default the time the description says
 * @returns levels (V, A, W; dB SPL at the ear), verdicts, dial and cautions, with warnings
 * @throws RangeError for parts that cannot be built; `readValue` names those beforehand.
 */
export function receive(set: SetDescription, options: FieldOptions = {}): Reception {
  const ready = receiver(setCircuit(set), fieldsAtSite(set.place, options));
  const curve = tuningCurve(ready);
  const tuned = set.place.stations.map((station) => receiveOnDial(ready, station));
  const interference = tuned.map(interferenceAmong(ready, tuned));
  const law = lawOfDetector(ready.circuit.averaged, ready.dcResistance, ready.circuit.bias);
  const tollOf = trapToll(ready);
  const stations = tuned.map((s, index): StationReception => {
    const { disturbances, audioRatios, more } = interference[index];
    const worst = worstOf(disturbances.filter(({ effect }) => effect !== 'none'));
    const hearing = s.within ? hearingOf(ready, s, audioRatios) : undefined;
    const width = bandwidthOf(ready, s);
    const path = withTrapToll(stagesOf(ready, s, { law, width, hearing }), tollOf(s));
    return {
      name: s.station.name,
      frequency: s.station.frequency,
      index,
      path,
      dial: s.within ? dialPlace(ready, s.position) : undefined,
      outOfRange: outOfRange(s, curve),
      verdict: verdictOf(s.within, s.heard.loudness, disturbances),
      fieldStrength: s.field.fieldStrength,
      emf: s.emf,
      tunedCircuitVoltage: s.tunedVoltage,
      detectorVoltage: s.steady.junctionVoltage,
      directVoltage: s.steady.directVoltage,
      audioVoltage: s.audioVoltage,
      phonesPower: s.phonesPower,
      distortion: s.distortion,
      detectorInputResistance: s.steady.inputResistance,
      loadedQ: s.loadedQ,
      unloadedQ: s.unloadedQ(),
      bandwidth: width,
      soundPressureLevel: hearing?.level,
      margin: hearing?.margin,
      hearing,
      heard: hearing?.loudness ?? 'not heard',
      disturbance: worst,
      disturbances,
      moreDisturbances: more,
      warnings: distinctWarnings(path.flatMap((stage) => stage.warnings)),
    };
  });
  const worth = stations.map((s) => usefulness(s, tuned[s.index].heard.margin));
  const best = stations.map((s) => s.index).sort((a, b) => worth[b] - worth[a]);
  return {
    stations,
    best,
    dial: dialOf(
      ready,
      curve,
      tuned,
      stations.map((s) => s.verdict),
    ),
    time: options.time ?? listeningTime(set.place),
    parts: figuresOf(ready, stations[best[0]]?.frequency ?? 1e6),
    warnings: distinctWarnings([
      ...ready.circuit.assembly.warnings,
      ...ready.circuit.tuning.warnings,
      ...ready.circuit.coils.flatMap((c) => c.warnings),
    ]),
    cautions: cautionsFor(set),
  };
}

const outOfRange = (s: TunedStation, curve: { lowest: number; highest: number }): OutOfRange | undefined =>
  s.within
    ? undefined
    : s.station.frequency < curve.lowest
      ? { side: 'below', end: curve.lowest }
      : { side: 'above', end: curve.highest };

/** What a trap takes off a station less than this is not said, dB. */
const MUCH_TAKEN: Decibels = 6;

/** What the traps of a set take off a station: the set beside the same without them. */
function trapToll(ready: Receiver): (s: TunedStation) => Warning | undefined {
  const { circuit, fieldOf } = ready;
  const { traps, set } = circuit;
  if (traps.length === 0) return () => undefined;
  const without = { ...set, arrangement: { ...set.arrangement, traps: undefined } } as SetDescription;
  const bare = receiver(setCircuit(without, { like: circuit }), fieldOf);
  return (s) => {
    const toll = decibels(receiveStation(bare, s.station).tunedVoltage / s.tunedVoltage);
    if (!(toll >= MUCH_TAKEN)) return undefined;
    const apart = ({ frequency }: TrapAsMade): number => Math.abs(Math.log(frequency / s.station.frequency));
    const nearest = traps.reduce((a, b) => (apart(b) < apart(a) ? b : a));
    return warning('arrangement.trap-takes', { trap: traps.indexOf(nearest), frequency: nearest.frequency, toll });
  };
}

const withTrapToll = (path: readonly Stage[], toll: Warning | undefined): readonly Stage[] =>
  toll === undefined
    ? path
    : path.map((stage) => (stage.id === 'tuned circuit' ? { ...stage, warnings: [...stage.warnings, toll] } : stage));

/** A tuned station at the ear, with what the others leave there. */
const hearingOf = (set: Receiver, s: TunedStation, audioRatios: readonly Decibels[]): Hearing => ({
  loudness: s.heard.loudness,
  level: s.heard.spl,
  levelA: s.heard.splA,
  margin: s.heard.margin,
  marginInSilence: s.heard.marginInSilence,
  room: s.heard.room,
  intelligibility:
    s.heard.intelligibility === undefined ? undefined : intelligibilityAmong(speechBands(set, s), audioRatios),
});

/** What a station that others disturb is worth less, dB; 0 where it stands 30 dB above them. */
export const crowding = ({ disturbance }: Pick<StationReception, 'disturbance'>): Decibels =>
  Math.min(0, (disturbance?.separation ?? 40) - 30);

/** Heard well, alone and within reach. */
const usefulness = (s: StationReception, margin: Decibels): number =>
  Math.min(margin, 60) + crowding(s) - (s.dial ? 0 : 100);

function figuresOf({ circuit, dcResistance }: Receiver, qAt: number): PartFigures {
  const { aerial, loop, earth, tuning, detector, load } = circuit;
  return {
    aerial: {
      capacitance: aerial?.capacitance ?? 0,
      at: qAt,
      effectiveHeight: (aerial ?? loop!).effectiveHeightAt(qAt),
      radiationResistance: aerial?.radiationResistanceAt(qAt) ?? 0,
      warnings: (aerial ?? loop!).warningsAt(qAt),
    },
    earth: { resistance: earth.resistance, range: earth.range, warnings: earth.warnings },
    coils: circuit.coils.map(({ model }, i) => ({
      name: circuit.set.coils[i].name,
      inductance: model.inductance,
      inductanceRange: model.inductanceRange,
      selfCapacitance: model.selfCapacitance,
      selfCapacitanceRange: model.selfCapacitanceRange,
      selfResonance: model.selfResonance,
      wireLength: model.wireLength,
      dcResistance: model.dcResistance,
      q: model.qAt(qAt),
      qRange: model.qRangeAt(qAt),
      qAt,
      warnings: model.warnings,
    })),
    tuning: {
      minimum: tuning.min,
      minimumRange: tuning.minRange,
      maximum: tuning.max,
      maximumRange: tuning.maxRange,
      swing: tuning.swing,
      warnings: tuning.warnings,
    },
    detector: {
      id: detectorId(circuit.set.detector),
      zeroBiasResistance: slopeResistance(detector),
      facts: detectorFacts(circuit.set.detector),
      warnings: detector.warnings,
    },
    load: {
      directResistance: dcResistance,
      impedanceAt1kHz: magnitude(load.impedanceAt(TEST_TONE)),
      warnings: load.warnings,
    },
  };
}
