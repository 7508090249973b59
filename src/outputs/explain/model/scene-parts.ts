import type { AerialDescription } from '../../../engine/kinds/aerials/aerial-schema.ts';
import type { ArrangementDescription } from '../../../engine/kinds/arrangements/arrangement-schema.ts';
import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import type { DetectorDescription } from '../../../engine/kinds/detectors/detector-schema.ts';
import type { LoadDescription } from '../../../engine/kinds/loads/load-schema.ts';
import { loadModel } from '../../../engine/kinds/models.ts';
import type { TuningDescription } from '../../../engine/kinds/tunings/tuning-schema.ts';
import { magnitude } from '../../../engine/numerics/complex.ts';
import { heaterFor, SMALL_VALVE_HEATER } from '../../../engine/parts/detector/thermionic/heater.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import type { Volts } from '../../../engine/units/quantities.ts';
import type { LoopId, TunerId } from '../../words/index.ts';
import type { SmoothingLoad } from './smoothing.ts';
import { USUAL_TONE } from './wave-programme.ts';

/** An open load: a crystal earpiece without a resistor. */
const OPEN = 50e6;

const byTuning = (): undefined => undefined;
/** What is moved in arrangements that are not tuned by their capacitor. */
const ARRANGEMENT_TUNERS: ByKind<ArrangementDescription, TunerId | undefined> = {
  direct: byTuning,
  'series capacitor': byTuning,
  tapped: byTuning,
  coupled: byTuning,
  'two circuits': byTuning,
  slider: () => 'slider',
  variometer: () => 'variometer',
  frame: byTuning,
  'ferrite rod': byTuning,
  elements: byTuning,
};
const CAPACITOR_TUNERS: ByKind<TuningDescription, TunerId> = {
  variable: () => 'vanes',
  vanes: () => 'vanes',
  measured: () => 'vanes',
  foil: () => 'foil',
  tubes: () => 'tubes',
  book: () => 'book',
  // Not turned at all: drawn as it would be with vanes.
  fixed: () => 'vanes',
};

/** What one moves to tune a set; vanes where there is no set. */
export const tunerOf = (set: SetDescription | undefined): TunerId =>
  set ? (byKind(ARRANGEMENT_TUNERS, set.arrangement) ?? byKind(CAPACITOR_TUNERS, set.tuning)) : 'vanes';

const wire = (): undefined => undefined;
const LOOPS: ByKind<AerialDescription, LoopId | undefined> = {
  'inverted-L': wire,
  T: wire,
  vertical: wire,
  horizontal: wire,
  sloping: wire,
  bent: wire,
  frame: () => 'frame',
  'ferrite rod': () => 'rod',
  measured: wire,
  impedance: wire,
};

/** What the set has in place of a wire aerial, if anything. */
export const loopOfSet = (set: SetDescription | undefined): LoopId | undefined => set && byKind(LOOPS, set.aerial);

const cold = (): undefined => undefined;
const HEATERS: ByKind<DetectorDescription, { readonly rated: Volts; readonly voltage: Volts } | undefined> = {
  galena: cold,
  mineral: cold,
  germanium: cold,
  schottky: cold,
  silicon: cold,
  exponential: cold,
  valve: ({ ratedHeaterVoltage, heaterVoltage }) => ({ rated: ratedHeaterVoltage, voltage: heaterVoltage }),
  measured: cold,
};

/** The heater of the set's valve, or of an ordinary one. */
export function heaterOf(set: SetDescription | undefined) {
  const { ratedVoltage } = SMALL_VALVE_HEATER;
  const { rated, voltage } = (set && byKind(HEATERS, set.detector)) ?? { rated: ratedVoltage, voltage: ratedVoltage };
  return { heater: heaterFor(rated), heaterVoltage: voltage };
}

function directResistance(load: LoadDescription): number {
  const direct = loadModel(load).directResistance;
  return direct > 0 && direct < OPEN ? direct : OPEN;
}

/** Phones: whatever inductance gives them their impedance at the usual tone. */
function phonesSmoothing(load: Extract<LoadDescription, { kind: 'phones' | 'moving-coil phones' }>): SmoothingLoad {
  const resistance = directResistance(load);
  const size = magnitude(loadModel(load).impedanceAt(USUAL_TONE));
  const reactance = Math.sqrt(Math.max(size * size - resistance * resistance, 0));
  return { capacitance: load.bypass, resistance, inductance: reactance / (2 * Math.PI * USUAL_TONE) };
}

const SMOOTHING: ByKind<LoadDescription, SmoothingLoad> = {
  phones: phonesSmoothing,
  'moving-coil phones': phonesSmoothing,
  'crystal earpiece': (load) => ({
    capacitance: load.bypass + load.capacitance,
    resistance: directResistance(load),
  }),
  amplifier: (load) => {
    const capacitance = load.bypass + load.inputCapacitance;
    return load.loadResistor !== undefined && load.couplingCapacitor !== undefined
      ? {
          capacitance,
          resistance: load.loadResistor,
          coupled: { capacitance: load.couplingCapacitor, resistance: load.inputResistance },
        }
      : { capacitance, resistance: directResistance(load) };
  },
};

/** What the detector's current meets, as the wave window follows it: by-pass capacitor, direct resistance, and more. */
export const smoothingOfSet = ({ load }: SetDescription): SmoothingLoad => byKind(SMOOTHING, load);

const DISCHARGED_BY: ByKind<LoadDescription, LoadDescription['kind'] | 'nothing'> = {
  phones: ({ kind }) => kind,
  'moving-coil phones': ({ kind }) => kind,
  'crystal earpiece': ({ kind, resistor }) => (resistor === undefined ? 'nothing' : kind),
  amplifier: ({ kind }) => kind,
};

/** What discharges the load capacitor. */
export const dischargedBy = (set: SetDescription | undefined): LoadDescription['kind'] | 'nothing' =>
  set ? byKind(DISCHARGED_BY, set.load) : 'phones';
