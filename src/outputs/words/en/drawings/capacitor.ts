import { type ByKind, byKind } from '../../../../engine/kinds/by-kind.ts';
import type { TuningDescription } from '../../../../engine/kinds/tunings/tuning-schema.ts';
import type { DielectricName } from '../../../../engine/parts/capacitor/dielectrics.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import { mm } from '../../figures.ts';
import { optionName } from '../fields/options.ts';
import { dielectricNames } from '../materials.ts';

/** A capacitor with its moving part somewhere, F and degrees. */
export interface CapacitorAt {
  readonly min: number;
  readonly max: number;
  readonly capacitance: number;
  readonly angle: number;
  readonly swing: number;
  /** 0 open … 1 meshed. */
  readonly position: number;
}

const C = (capacitance: number): string => formatQuantity(capacitance, 'capacitance');

/** "23.5–508 pF", "12 pF–1.74 nF"; of a fixed one its capacitance. */
function ends({ min, max }: CapacitorAt): string {
  const [low, high] = [C(min), C(max)];
  if (low === high) return low;
  const [figure, unit] = low.split(/\s/);
  return high.split(/\s/)[1] === unit ? `${figure}–${high}` : `${low}–${high}`;
}

const range = (name: string, at: CapacitorAt): string => `${name}, ${ends(at)} with stray capacitance and trimmer.`;
const turned = (name: string, at: CapacitorAt): string =>
  `${range(name, at)} Here at ${formatNumber(at.angle, 3)}° of ${formatNumber(at.swing, 3)}°: ${C(at.capacitance)} with stray capacitance.`;
const pushed = (name: string, at: CapacitorAt): string =>
  `${range(name, at)} Here ${Math.round(100 * at.position)} % pushed in: ${C(at.capacitance)}.`;

const DESCRIPTIONS: ByKind<TuningDescription, string, [CapacitorAt]> = {
  variable: (_, at) => turned('Variable capacitor; vanes shaped to its law, their size assumed', at),
  vanes: (_, at) => turned('Variable capacitor of vanes', at),
  measured: (_, at) => turned('Variable capacitor known by measurement', at),
  foil: (_, at) => pushed('Capacitor of sliding foil sheets', at),
  tubes: (_, at) => pushed('Capacitor of one tube sliding in another', at),
  book: (_, at) => turned('Book capacitor of two hinged leaves', at),
  fixed: (_, at) => range('Fixed capacitor', at),
};

const between = (dielectric: DielectricName, thickness: number): string =>
  `${formatQuantity(thickness, 'length', 2)} of ${dielectricNames[dielectric].name} between`;

interface Insulated {
  readonly dielectric: DielectricName;
  /** m, of the dielectric. */
  readonly thickness: number;
}

export const capacitorDrawing = {
  title: 'Tuning capacitor',
  description: (tuning: TuningDescription, at: CapacitorAt): string => byKind(DESCRIPTIONS, tuning, at),
  fixedVanes: 'fixed vanes',
  movingVanes: 'moving vanes',
  fixedSheet: 'fixed sheet',
  movingSheet: 'moving sheet',
  outerTube: 'outer tube',
  innerTube: 'inner tube',
  foil: 'foil',
  overlapping: 'overlap',
  overlap: (length: number): string => `overlap ${mm(length)}`,
  radius: (radius: number): string => `radius ${mm(radius)}`,
  vanes: ({ vanes, gap }: { readonly vanes: number; readonly gap: number }): string =>
    `${vanes} vanes, ${formatQuantity(gap, 'length')} apart`,
  assumedVanes: (law: Extract<TuningDescription, { kind: 'variable' }>['law']): string =>
    `${optionName('tuning.law', law)} vanes, size assumed`,
  sheets: ({ sheets, dielectric, thickness }: Insulated & { readonly sheets: number }): string =>
    `${sheets} sheets, ${between(dielectric, thickness)}`,
  tubes: ({ diameter, dielectric, thickness }: Insulated & { readonly diameter: number }): string =>
    `inner tube ${mm(diameter)}, ${between(dielectric, thickness)}`,
  leaves: ({ width, dielectric, thickness }: Insulated & { readonly width: number }): string =>
    `leaves ${mm(width)} wide, ${between(dielectric, thickness)}`,
};
