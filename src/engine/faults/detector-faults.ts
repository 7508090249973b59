import type { BuiltSet } from '../built/built-set.ts';
import type { SetCircuit } from '../built/set-circuit.ts';
import { detectorModel } from '../kinds/models.ts';
import { EARTH } from '../network/elements.ts';
import { PART } from '../network/part-ids.ts';
import { averaged } from '../parts/detector/averaged.ts';
import type { Detector } from '../parts/detector/detector.ts';
import { exponentialDetector } from '../parts/detector/exponential.ts';
import type { Branch } from '../solvers/linear/equations.ts';
import { hasWhisker } from './checks.ts';
import { bySeverity, type FaultCode, type PartFault } from './fault.ts';
import { type Planted, withDevice, withJoint } from './planting.ts';

/** So little current that no carrier is rectified: an open device has no law, only a leak. */
const NO_JUNCTION = 1e-290;

interface Junction {
  readonly saturationCurrent: number;
  readonly ideality: number;
  /** Ω. */
  readonly leak: number;
}

function device(
  { junctionCapacitance, temperature }: Detector,
  { saturationCurrent, ideality, leak }: Junction,
): Detector {
  return exponentialDetector({
    saturationCurrent,
    ideality,
    leakage: 1 / leak,
    junctionCapacitance,
    temperature: Math.min(400, temperature),
  });
}

const becomes =
  (junction: (u: number) => Junction) =>
  (planted: Planted, u: number): Planted => ({
    ...planted,
    isCold: false,
    circuit: withDevice(planted.circuit, device(planted.circuit.detector, junction(u))),
  });

const linear = (leak: number): Junction => ({ saturationCurrent: NO_JUNCTION, ideality: 1, leak });

/** The detector, its joint, a pair's other half, heater and bias. */
export function detectorFaults(built: BuiltSet): PartFault[] {
  const { set, circuit } = built;
  const { kind } = set.detector;
  const own = hasWhisker(built)
    ? crystalFaults(kind === 'galena')
    : kind === 'valve'
      ? valveFaults()
      : diodeFaults(kind);
  const faults = [...own, ...joints(circuit)];
  if (circuit.assembly.wiring === 'full-wave') faults.push(halfOpen());
  if (circuit.bias !== 0) faults.push(...biasFaults());
  return faults;
}

const of = (
  code: FaultCode,
  fault: Omit<PartFault, 'id' | 'code' | 'part' | 'cautions'> & Partial<PartFault>,
): PartFault => ({
  id: code,
  code,
  part: PART.detector,
  cautions: [],
  ...fault,
});

function crystalFaults(isGalena: boolean): PartFault[] {
  const cautions = isGalena
    ? (['wash-hands-after-galena', 'no-high-ohm-range'] as const)
    : (['no-high-ohm-range'] as const);
  return [
    of('spot-dead', {
      weight: 8,
      remedy: 'find-spot',
      change: becomes((u) => ({ saturationCurrent: 1e-11, ideality: 2, leak: bySeverity(5e4, 5e6, u) })),
      signs: { 'louder-at-another-spot': 0.9, 'changes-on-knock': 0.3, 'louder-with-other-detector': 0.95 },
      cautions,
    }),
    of('spot-poor', {
      weight: 5,
      remedy: 'find-spot',
      change: becomes((u) => ({
        saturationCurrent: bySeverity(5e-6, 20e-6, u),
        ideality: 2.6,
        leak: bySeverity(12e3, 3e3, u),
      })),
      signs: { 'louder-at-another-spot': 0.85, 'changes-on-knock': 0.7, 'louder-with-other-detector': 0.9 },
      cautions,
    }),
    of('spot-pressed-through', {
      weight: 1.5,
      remedy: 'lift-whisker',
      change: becomes((u) => linear(bySeverity(300, 5, u))),
      signs: { 'louder-at-another-spot': 0.85, 'louder-with-other-detector': 0.95 },
      cautions,
    }),
  ];
}

function diodeFaults(kind: string): PartFault[] {
  const signs = { 'louder-with-other-detector': 0.95 } as const;
  const cautions = ['unplug-first'] as const;
  const faults = [
    of('device-open', {
      weight: 1.5,
      remedy: 'replace-device',
      change: becomes(() => linear(1e10)),
      signs,
      cautions,
    }),
    of('device-shorted', {
      weight: 1,
      remedy: 'replace-device',
      change: becomes((u) => linear(bySeverity(100, 3, u))),
      signs,
      cautions,
    }),
  ];
  if (kind !== 'silicon')
    faults.push(
      of('device-leaky', {
        weight: 2,
        remedy: 'replace-device',
        change: (planted, u) => {
          const { law, temperature } = planted.circuit.detector;
          return becomes(() => ({
            saturationCurrent: Math.min(1e-3, 3 * (law?.saturationCurrent ?? 2e-6)),
            ideality: Math.max(1.3, (law?.slopeVoltage ?? 0) / (8.617e-5 * temperature)),
            leak: bySeverity(20e3, 1.5e3, u),
          }))(planted, u);
        },
        signs,
        cautions,
      }),
      of('device-silicon', {
        weight: 1.5,
        remedy: 'replace-device',
        change: becomes((u) => ({ saturationCurrent: bySeverity(5e-9, 0.2e-9, u), ideality: 1.85, leak: 1e9 })),
        signs: { 'louder-with-other-detector': 0.85 },
        cautions,
      }),
    );
  return faults;
}

function valveFaults(): PartFault[] {
  const cautions = ['unplug-first', 'hot-glass'] as const;
  return [
    of('heater-cold', {
      weight: 3,
      remedy: 'supply-heater',
      change: becomes(() => linear(1e10)),
      signs: { 'heater-glows': 0.03, 'louder-with-other-detector': 0.2 },
      cautions,
    }),
    of('heater-low', {
      weight: 1,
      remedy: 'supply-heater',
      change: (planted, u) => {
        const { detector } = planted.circuit.set;
        if (detector.kind !== 'valve') return planted;
        const heaterVoltage = detector.heaterVoltage * (0.6 - 0.15 * u);
        return { ...planted, circuit: withDevice(planted.circuit, detectorModel({ ...detector, heaterVoltage })) };
      },
      signs: { 'heater-glows': 0.6, 'louder-with-other-detector': 0.2 },
      cautions,
    }),
    of('device-open', {
      weight: 0.7,
      remedy: 'replace-device',
      change: becomes(() => linear(1e10)),
      signs: { 'heater-glows': 0.8, 'louder-with-other-detector': 0.95 },
      cautions,
    }),
  ];
}

/** The wire between the coil and the detector. */
function joints({ assembly }: SetCircuit): PartFault[] {
  const part = PART.detector;
  const node = assembly.carrierPort.from;
  if (node === EARTH || assembly.wiring !== 'single') return [];
  const moves = (e: Branch, end: 'from' | 'to'): boolean =>
    end === 'from' && e.owner.part === part && e.owner.role !== 'contact';
  const joint = (planted: Planted, resistance?: number) => ({
    ...planted,
    circuit: withJoint(planted.circuit, {
      part,
      node,
      moves,
      ports: ['carrier', 'output'],
      resistance,
      capacitance: resistance === undefined ? 0.4e-12 : 0,
    }),
  });
  return [
    of('device-lead-open', {
      weight: 2.5,
      remedy: 'rejoin-device',
      change: (planted) => joint(planted),
      signs: { 'crackle-on-tapping': 0.2, 'louder-with-other-detector': 0.5 },
      cautions: ['unplug-first'],
    }),
    of('device-joint-dry', {
      weight: 1.5,
      remedy: 'rejoin-device',
      change: (planted, u) => joint(planted, bySeverity(3e3, 1e5, u)),
      signs: { 'crackle-on-tapping': 0.75, 'louder-with-other-detector': 0.4 },
      cautions: ['unplug-first'],
    }),
  ];
}

/** Of a full-wave pair one works alone: half the coil, every other half cycle. */
const halfOpen = (): PartFault =>
  of('pair-half-open', {
    weight: 1.5,
    remedy: 'replace-device',
    change: (planted) => {
      const { circuit } = planted;
      const { assembly } = circuit;
      const port = assembly.outputPort;
      return {
        ...planted,
        isOneOpen: true,
        circuit: {
          ...circuit,
          averaged: averaged(circuit.detector),
          assembly: { ...assembly, wiring: 'single', carrierPort: port, outputPort: port },
        },
      };
    },
    signs: {},
    cautions: ['unplug-first'],
  });

function biasFaults(): PartFault[] {
  const biased = (by: (bias: number) => number) => (planted: Planted) => ({
    ...planted,
    circuit: { ...planted.circuit, bias: by(planted.circuit.bias) },
  });
  return [
    of('bias-flat', {
      part: PART.biasCell,
      weight: 2,
      remedy: 'renew-bias',
      change: (planted, u) => biased((bias) => bias * 0.3 * (1 - u))(planted),
      signs: { 'bias-as-described': 0.05 },
    }),
    of('bias-reversed', {
      part: PART.biasCell,
      weight: 1.5,
      remedy: 'renew-bias',
      change: biased((bias) => -bias),
      signs: { 'bias-as-described': 0.05 },
    }),
  ];
}
