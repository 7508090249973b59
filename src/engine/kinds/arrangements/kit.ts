import type { Warning } from '../../facts/warning.ts';
import type { Circuit, Element } from '../../network/elements.ts';
import { owned, type PartId } from '../../network/ids.ts';
import type { Port } from '../../network/port.ts';
import type { VariableCapacitor } from '../../parts/capacitor/model.ts';
import type { Henries } from '../../units/quantities.ts';
import type { ArrangementDescription } from './arrangement-schema.ts';
import type { Assembly, TuningPort } from './assembly.ts';
import { type CoilInCircuit, type SectionedCoil, type Stretch, withNodeJoined } from './coil-sections.ts';
import { type Wiring, wireDetector } from './detector-wiring.ts';
import type { TrapAsMade } from './traps.ts';

/** The parts an arrangement draws from, as made; nothing here knows how they were described. */
export interface Kit {
  /** From earth to the node "aerial". */
  readonly aerial: readonly Element[];
  /** From the node "out" to earth. */
  readonly load: readonly Element[];
  /** @throws RangeError for a name the set does not have. */
  readonly coil: (name: string) => SectionedCoil;
  /** Mutual inductance between stretches of two coils as placed. */
  readonly mutual: (
    first: string,
    second: string,
    placing: {
      distance: number;
      tilt: number;
      coupling?: number;
      measured?: { readonly coupling?: { readonly value: number } };
    },
  ) => (a: Stretch, b: Stretch) => Henries;
  /** The frame or rod when it is its own tuning coil, with the field's emf in series; from "top" to earth. */
  readonly loop?: SectionedCoil & {
    /** The field's emf between two counts of its turns. */
    readonly source: (from: string, to: string, turns: Stretch) => Element;
  };
  readonly tuning: VariableCapacitor;
  readonly aerialTuning?: VariableCapacitor;
  readonly traps: readonly TrapAsMade[];
  readonly wiring: Wiring;
  readonly bias: number;
  readonly junctionCapacitance: number;
}

export type ArrangementOf<K extends ArrangementDescription['kind']> = Extract<ArrangementDescription, { kind: K }>;

export const tuningPort = (part: PartId, capacitor: VariableCapacitor, port: Port): TuningPort => ({
  ...owned(part, 'part'),
  port,
  capacitanceAt: capacitor.capacitanceAt,
  lossTangentAt: capacitor.lossTangentAt,
  min: capacitor.min,
  max: capacitor.max,
  positionFor: capacitor.positionFor,
});

/** What differs between arrangements; the rest is the same for all. */
export interface Layout {
  readonly elementsAt: (position: number) => readonly Element[];
  readonly tuning: readonly TuningPort[];
  readonly ganged?: boolean;
  /** Where the detector is joined. */
  readonly live: string;
  /** Where a single detector's other end goes; default the load. */
  readonly cathode?: string;
  /** The far end of the tuned circuit. */
  readonly other: string;
  readonly tunedPort: Port;
  readonly warnings?: readonly Warning[];
}

/** Join a layout with aerial, detector and load. */
export function assembled(kit: Kit, layout: Layout): Assembly {
  const detector = wireDetector(
    kit.wiring,
    layout.live,
    layout.other,
    kit.bias,
    kit.junctionCapacitance,
    layout.cathode,
  );
  const common = [...kit.aerial, ...detector.elements, ...kit.load];
  const baseAt = (position: number): Circuit => ({ elements: [...common, ...layout.elementsAt(position)] });
  const circuitAt = (position: number, other = position): Circuit => ({
    elements: [
      ...baseAt(position).elements,
      ...layout.tuning.map((t, i): Element => {
        const p = i === 0 ? position : other;
        return {
          kind: 'capacitor',
          id: t.id,
          owner: t.owner,
          from: t.port.from,
          to: t.port.to,
          capacitance: t.capacitanceAt(p),
          lossTangent: t.lossTangentAt(p),
        };
      }),
    ],
  });
  return {
    circuitAt,
    baseAt,
    tuning: layout.tuning,
    ganged: layout.ganged ?? false,
    carrierPort: detector.carrierPort,
    outputPort: detector.outputPort,
    wiring: kit.wiring,
    tunedPort: layout.tunedPort,
    warnings: layout.warnings ?? [],
  };
}

/** Nodes at the ends of the turns in use: their middle is earthed for a full-wave pair, the first end otherwise. */
export const coilEnds = (kit: Kit, turns: number): { first: string; middle?: number } =>
  kit.wiring === 'full-wave' ? { first: 'bottom', middle: turns / 2 } : { first: 'earth' };

/** A coil whose middle is earthed keeps its node names, but for that one. */
export const earthMiddle = (coil: CoilInCircuit, middle: number | undefined): CoilInCircuit =>
  middle === undefined ? coil : withNodeJoined(coil, coil.nodeAt(middle), 'earth');
