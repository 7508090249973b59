import {
  type AdjustContext,
  type Adjustment,
  type AdjustmentsByKind,
  adjustmentsIn,
  type CoilSetting,
  type Path,
} from '../adjustment.ts';
import { turnsAdjustment } from '../turns-adjust.ts';
import type { CoilDescription } from './coil-schema.ts';
import { betterWires } from './wire-adjust.ts';
import type { Wire } from './wire-schema.ts';

const at = (path: Path, key: CoilSetting) => ({
  id: `coils[${Number(path[1])}].${key}` as const,
  part: `coil:${Number(path[1])}` as const,
  path: [...path, key],
});

const turns = (coil: { name: string; turns: number }, about: AdjustContext, path: Path): Adjustment =>
  turnsAdjustment(at(path, 'turns'), coil.turns, { coil: coil.name, most: 5000, about });

const wire = (coil: { wire: Wire }, path: Path): Adjustment => ({
  ...at(path, 'wire'),
  effort: 'rewind',
  domain: { is: 'choice', of: betterWires(coil.wire) },
  now: coil.wire,
  serves: ['loudness', 'clearance'],
});

const LOSSY = new Set(['card', 'damp card', 'wood', 'phenolic', 'PVC', 'plywood', 'hardboard']);

/** Off card and wood onto something that loses less. */
const former = (coil: { former: string }, path: Path): Adjustment[] =>
  LOSSY.has(coil.former)
    ? [
        {
          ...at(path, 'former'),
          effort: 'rewind',
          domain: { is: 'choice', of: ['styrene'] },
          now: coil.former,
          serves: ['loudness', 'clearance'],
        },
      ]
    : [];

const onFormer = (
  coil: { name: string; turns: number; wire: Wire; former: string },
  about: AdjustContext,
  path: Path,
): Adjustment[] => [turns(coil, about, path), wire(coil, path), ...former(coil, path)];

/** What each coil has to adjust: one entry for each shape. */
const COIL_ADJUSTMENTS: AdjustmentsByKind<CoilDescription> = {
  solenoid: onFormer,
  'bank-wound': onFormer,
  spiral: onFormer,
  spider: onFormer,
  basket: onFormer,
  core: (coil, about, path) => [turns(coil, about, path), wire(coil, path)],
  multilayer: (coil, about, path) => [
    turnsAdjustment(at(path, 'turnsPerLayer'), coil.turnsPerLayer, { coil: coil.name, most: 2000, about }),
    wire(coil, path),
    ...former(coil, path),
  ],
  // Its inductance goes as the turns squared.
  measured: (coil, about, path) => [
    turnsAdjustment(at(path, 'turns'), coil.turns, { coil: coil.name, most: 5000, about }, (by) => [
      {
        path: [...path, 'inductance'],
        to: `${Number((coil.inductance * by * by * 1e6).toPrecision(3))} µH`,
      },
    ]),
  ],
};

/** The adjustments of a coil of any shape. */
export const coilAdjustments = (coil: CoilDescription, about: AdjustContext, path: Path): readonly Adjustment[] =>
  adjustmentsIn(COIL_ADJUSTMENTS, coil, about, path);
