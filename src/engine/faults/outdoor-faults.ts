import type { BuiltSet } from '../built/built-set.ts';
import { AERIAL } from '../kinds/arrangements/assembly.ts';
import { EARTH } from '../network/elements.ts';
import { PART } from '../network/part-ids.ts';
import { complex, scale } from '../numerics/complex.ts';
import type { Branch } from '../solvers/linear/equations.ts';
import { bySeverity, type PartFault } from './fault.ts';
import { eachBranch, editedElements, type Planted, withJoint, withLeak } from './planting.ts';

/** Where the field's source stands on the ground. */
const GROUND = 'ground';

const AERIAL_WORK = ['aerial-in-dry-calm-weather', 'never-in-thunder'] as const;

/** Aerial and earth, of a set that has them. */
export function outdoorFaults({ circuit }: BuiltSet): PartFault[] {
  if (!circuit.aerial) return [];
  return [...aerialFaults(), ...earthFaults()];
}

function aerialFaults(): PartFault[] {
  const part = PART.aerial;
  const isAerial = (e: Branch): boolean => e.owner.part === part && e.owner.role === 'aerial';
  const leak = (low: number, high: number) => (planted: Planted, u: number) => {
    const resistance = bySeverity(low, high, u);
    return {
      ...planted,
      leadsApart: resistance,
      circuit: withLeak(planted.circuit, part, [AERIAL, GROUND], resistance),
    };
  };
  return [
    {
      id: 'lead-in-broken',
      code: 'lead-in-broken',
      part,
      weight: 3,
      remedy: 'mend-lead-in',
      change: (planted, u) => ({
        ...planted,
        circuit: withJoint(planted.circuit, {
          part,
          node: AERIAL,
          moves: isAerial,
          capacitance: bySeverity(4e-12, 20e-12, u),
        }),
      }),
      signs: { 'louder-with-other-wire': 0.9, 'crackle-on-tapping': 0.1 },
      cautions: AERIAL_WORK,
    },
    {
      id: 'aerial-shorter',
      code: 'aerial-shorter',
      part,
      weight: 1,
      remedy: 'inspect-aerial',
      change: (planted, u) => {
        const share = 0.65 - 0.35 * u;
        return {
          ...planted,
          level: (station) => planted.level(station) + 20 * Math.log10(share),
          circuit: editedElements(
            planted.circuit,
            eachBranch((e) => {
              if (!isAerial(e)) return e;
              if (e.kind === 'capacitor') return { ...e, capacitance: share * e.capacitance };
              if (e.kind !== 'impedance') return e;
              return {
                ...e,
                impedance: (f) => {
                  const { re, im } = e.impedance(f);
                  return complex(re, im < 0 ? im / share : im * share);
                },
              };
            }),
          ),
        };
      },
      signs: { 'louder-with-other-wire': 0.4 },
      cautions: AERIAL_WORK,
    },
    {
      id: 'aerial-leaks',
      code: 'aerial-leaks',
      part,
      weight: 2.5,
      remedy: 'clear-aerial',
      change: leak(200, 2e4),
      signs: { 'weaker-when-wet': 0.8, 'louder-with-other-wire': 0.2 },
      cautions: AERIAL_WORK,
    },
    {
      id: 'aerial-earthed',
      code: 'aerial-earthed',
      part,
      weight: 1,
      remedy: 'clear-aerial',
      change: leak(1, 60),
      signs: { 'louder-with-other-wire': 0.9 },
      cautions: AERIAL_WORK,
    },
    {
      id: 'aerial-switch-at-earth',
      code: 'aerial-switch-at-earth',
      part,
      weight: 0.8,
      remedy: 'throw-switch',
      change: (planted) => ({ ...planted, circuit: withLeak(planted.circuit, part, [AERIAL, EARTH], 0.05) }),
      signs: { 'louder-with-other-wire': 0.1, 'switch-at-earth': 0.95 },
      cautions: AERIAL_WORK,
    },
  ];
}

function earthFaults(): PartFault[] {
  const part = PART.earth;
  const isEarth = (e: Branch): boolean => e.owner.part === part && e.owner.role === 'earth';
  return [
    {
      id: 'earth-lead-broken',
      code: 'earth-lead-broken',
      part,
      weight: 3,
      remedy: 'mend-earth-lead',
      change: (planted, u) => ({
        ...planted,
        earthLead: Number.POSITIVE_INFINITY,
        circuit: withJoint(planted.circuit, {
          part,
          node: EARTH,
          moves: isEarth,
          capacitance: bySeverity(10e-12, 100e-12, u),
        }),
      }),
      signs: {
        'louder-with-hand-on-earth': 0.7,
        'louder-with-other-earth': 0.85,
        hum: 0.5,
        'hand-near-moves-tuning': 0.5,
      },
      cautions: ['earth-is-no-mains-earth'],
    },
    {
      id: 'earth-dry',
      code: 'earth-dry',
      part,
      weight: 2.5,
      remedy: 'improve-earth',
      change: (planted, u) => {
        const factor = bySeverity(5, 30, u);
        return {
          ...planted,
          circuit: editedElements(
            planted.circuit,
            eachBranch((e) => {
              if (!isEarth(e)) return e;
              if (e.kind === 'impedance') return { ...e, impedance: (f) => scale(e.impedance(f), factor) };
              if (e.kind !== 'resistor' || typeof e.resistance !== 'number') return e;
              return { ...e, resistance: factor * e.resistance };
            }),
          ),
        };
      },
      signs: { 'louder-with-other-earth': 0.7, 'louder-with-hand-on-earth': 0.15 },
      cautions: ['earth-is-no-mains-earth'],
    },
  ];
}
