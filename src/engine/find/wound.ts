import * as v from 'valibot';
import { type AerialDescription, aerial } from '../kinds/aerials/aerial-schema.ts';
import { type CoilDescription, coil } from '../kinds/coils/coil-schema.ts';
import { wireOf } from '../kinds/coils/wire-of.ts';
import { closePitch } from '../parts/wire/wire.ts';
import type { Metres } from '../units/quantities.ts';
import type { BoxDescription, WrittenBox } from './box-schema.ts';

/** Places of a former and of a reel in the box. */
interface Placed {
  readonly former: number;
  readonly reel: number;
}

/** Rounded so that it reads as it is shown. */
const millimetres = (metres: Metres, digits = 2): string => `${Number((1e3 * metres).toFixed(digits))} mm`;

const MAIN_COIL = 'coil';
const SECOND_COIL = 'aerial coil';

/** Names of the coils of a set that is found. */
export const COIL_NAMES = { main: MAIN_COIL, second: SECOND_COIL } as const;

/** A coil on a tube or a plate as a description has it. @param written where its sizes are to be as in the file. */
export function writtenCoil(
  box: BoxDescription,
  written: WrittenBox | BoxDescription,
  { former, reel }: Placed,
  turns: number,
  name: string = MAIN_COIL,
): v.InferInput<typeof coil> {
  const on = written.formers![former].former;
  const { wire } = written.wires![reel];
  const read = box.formers[former].former;
  if (on.kind === 'tube')
    return { shape: 'solenoid', name, formerDiameter: on.diameter, turns, wire, former: on.material };
  if (on.kind !== 'plate' || read.kind !== 'plate') throw new RangeError(`no coil is wound on a ${on.kind}`);
  const { material, slots, thickness, innerDiameter } = on;
  if (slots !== undefined)
    return { shape: 'spider', name, innerDiameter, slots, discThickness: thickness, turns, wire, former: material };
  // Of the first turn, wire centre to wire centre.
  const first = read.innerDiameter + closePitch(wireOf(box.wires[reel].wire));
  return { shape: 'spiral', name, innerDiameter: millimetres(first), turns, wire, former: material };
}

/** A frame or rod wound with so many turns. */
export function writtenLoop(
  box: BoxDescription,
  written: WrittenBox | BoxDescription,
  { former, reel }: Placed,
  turns: number,
): v.InferInput<typeof aerial> {
  const on = written.formers![former].former;
  const read = box.formers[former].former;
  const { wire } = written.wires![reel];
  const close = closePitch(wireOf(box.wires[reel].wire));
  if (on.kind === 'frame' && read.kind === 'frame') {
    const pitch = Math.max(close, Math.min(SPACED, read.depth / turns));
    return { kind: 'frame', outline: on.outline, side: on.side, turns, wire, pitch: millimetres(pitch) };
  }
  if (on.kind !== 'rod') throw new RangeError(`no loop aerial is wound on a ${on.kind}`);
  const { length, diameter, permeability } = on;
  return { kind: 'ferrite rod', length, diameter, permeability, turns, wire, winding: millimetres(close * turns) };
}
/** Turns of a frame no further apart than this. Common practice, no source. */
const SPACED: Metres = 0.005;

/** The turns of a coil along its former. */
export const coilOn = (box: BoxDescription, placed: Placed, turns: number, name?: string): CoilDescription =>
  v.parse(coil, writtenCoil(box, box, placed, turns, name));

/** A frame or rod as read. */
export const loopOn = (box: BoxDescription, placed: Placed, turns: number): AerialDescription =>
  v.parse(aerial, writtenLoop(box, box, placed, turns));

/** Whether a description of a set allows a winding: its turns, pitch and sizes lie within the limits of the schema. */
export function isWindable(box: BoxDescription, placed: Placed, turns: number): boolean {
  const { kind } = box.formers[placed.former].former;
  return kind === 'frame' || kind === 'rod'
    ? v.is(aerial, writtenLoop(box, box, placed, turns))
    : v.is(coil, writtenCoil(box, box, placed, turns));
}
