import { setCircuit } from '../../built/set-circuit.ts';
import { distinctWarnings } from '../../facts/warning.ts';
import { magnitude } from '../../numerics/complex.ts';
import { slopeResistance } from '../../parts/detector/detector.ts';
import type { SetDescription } from '../../set/description.ts';
import { listeningTime } from '../../set/listening-time.ts';
import { formatNumber } from '../../units/format.ts';
import type { Hertz } from '../../units/quantities.ts';
import { lawOfDetector } from '../detection/detection-law.ts';
import { detectorFacts } from '../detection/detector-facts.ts';
import { dialOf, dialPlace, tuningCurve } from '../dial/dial.ts';
import { interferenceAmong, measuredWidth } from '../interference/beside.ts';
import { cautionsFor } from './cautions.ts';
import { type FieldOptions, fieldsAtSite } from './field.ts';
import { type Receiver, receiver, receiveStation, TEST_TONE, type TunedStation } from './receive-station.ts';
import { heardSpread, stagesOf } from './stages.ts';
import { summaryOf, verdictOf } from './summary.ts';
import type { Disturbance, PartFigures, Reception, StationReception } from './types.ts';

/**
 * What the set gives at its place: every station's path from field to ear, the dial, and what disturbs what.
 * @throws RangeError for parts that cannot be built; `readValue` names those beforehand.
 */
export function receive(set: SetDescription, options: FieldOptions = {}): Reception {
  const ready = receiver(setCircuit(set), fieldsAtSite(set.place, options));
  const tuned = set.place.stations.map((station) => receiveStation(ready, station));
  const curve = tuningCurve(ready);
  const beside = tuned.map(interferenceAmong(ready, tuned));
  const law = lawOfDetector(ready.circuit.averaged, ready.dcResistance, ready.circuit.bias);
  const stations = tuned.map((s, index): StationReception => {
    const worst = beside[index].find((d) => d.word !== 'clear');
    const width = widthOf(ready, s);
    const path = stagesOf(ready, s, law, width);
    return {
      name: s.station.name,
      frequency: s.station.frequency,
      index,
      path,
      dial: s.within ? dialPlace(ready, curve, s.position, s.station.frequency) : undefined,
      outOfReach: outOfReach(s, curve),
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
      unloadedQ: unloadedQ(ready, s),
      bandwidth: width,
      soundPressureLevel: s.heard.spl,
      margin: s.heard.margin,
      heard: s.heard.words,
      spread: heardSpread(ready, s),
      sentence: sentenceFor(s, worst),
      disturbance: worst,
      disturbances: beside[index],
      warnings: distinctWarnings(path.flatMap((stage) => stage.warnings)),
    };
  });
  const best = [...stations].sort((a, b) => usefulness(b) - usefulness(a)).map((s) => s.index);
  return {
    stations,
    best,
    dial: dialOf(
      ready,
      curve,
      tuned,
      stations.map((s) => s.heard),
    ),
    summary: summaryOf(stations, best, options.time ?? listeningTime(set.place)),
    parts: figuresOf(ready, stations[best[0]]?.frequency ?? 1e6),
    warnings: distinctWarnings([
      ...ready.circuit.assembly.warnings,
      ...ready.circuit.tuning.warnings,
      ...ready.circuit.coils.flatMap((c) => c.warnings),
    ]),
    cautions: cautionsFor(set, ready.circuit.load.cautions),
  };
}

/** Two tuned circuits, or one so broad that its sides are not alike, are not f/Q wide: then the width is measured. */
const BROAD = 20;
const widthOf = (set: Receiver, s: TunedStation): Hertz =>
  set.circuit.set.arrangement.kind === 'two circuits' || !(s.loadedQ >= BROAD)
    ? measuredWidth(set, s)
    : s.station.frequency / s.loadedQ;

const outOfReach = (s: TunedStation, curve: { lowest: number; highest: number }): string | undefined =>
  s.within
    ? undefined
    : s.station.frequency < curve.lowest
      ? `below the low end of the scale, ${formatNumber(Math.round(curve.lowest / 1e3), 5)} kHz: more turns or more capacitance are needed`
      : `above the high end of the scale, ${formatNumber(Math.round(curve.highest / 1e3), 5)} kHz: fewer turns or smaller strays are needed`;

/** Q of the coil itself at the station, with the capacitor's loss: what is left when nothing is joined to it. */
function unloadedQ({ circuit }: Receiver, s: TunedStation): number {
  const coil = circuit.tuningCoil;
  if (!coil) return Number.NaN;
  const f = s.station.frequency;
  const coilQ = (2 * Math.PI * f * coil.inductance) / coil.resistanceAt(f);
  return 1 / (1 / coilQ + circuit.tuning.lossTangentAt(s.position));
}

function sentenceFor(s: TunedStation, disturbance: Disturbance | undefined): string {
  const { words: heard } = s.heard;
  const sentence = s.within
    ? s.heard.sentence
    : `Beyond the scale; at its end: ${s.heard.sentence[0].toLowerCase()}${s.heard.sentence.slice(1)}`;
  if (!disturbance || heard === 'not heard' || !s.within) return sentence;
  if (verdictOf({ heard, disturbance }) !== 'drowned') return `${sentence} ${disturbance.sentence}`;
  return `Drowned: ${disturbance.sentence} Alone it would be ${heard}, at ${formatNumber(Math.round(s.heard.spl), 4)} dB SPL.`;
}

/** Heard well, alone and within reach. */
const usefulness = (s: StationReception): number =>
  Math.min(s.margin, 60) + Math.min(0, (s.disturbance?.audioRatio ?? 40) - 30) - (s.dial ? 0 : 100);

function figuresOf({ circuit, dcResistance }: Receiver, qAt: number): PartFigures {
  const { aerial, loop, earth, tuning, detector, load } = circuit;
  return {
    aerial: aerial
      ? {
          capacitance: aerial.capacitance,
          effectiveHeight: aerial.effectiveHeightAt(qAt),
          radiationResistance: aerial.radiationResistanceAt(qAt),
          warnings: aerial.warningsAt(qAt),
        }
      : {
          capacitance: 0,
          effectiveHeight: loop!.effectiveHeightAt(qAt),
          radiationResistance: 0,
          warnings: loop!.warningsAt(qAt),
        },
    earth: { resistance: earth.resistance, range: earth.range, warnings: earth.warnings },
    coils: circuit.coils.map(({ model }, i) => ({
      name: circuit.set.coils[i].name,
      inductance: model.inductance,
      selfCapacitance: model.selfCapacitance,
      selfResonance: model.selfResonance,
      wireLength: model.wireLength,
      dcResistance: model.dcResistance,
      q: model.qAt(qAt),
      qRange: model.qRangeAt(qAt),
      qAt,
      warnings: model.warnings,
    })),
    tuning: { minimum: tuning.min, maximum: tuning.max, swing: tuning.swing, warnings: tuning.warnings },
    detector: {
      label: detector.label,
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
