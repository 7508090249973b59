import * as v from 'valibot';
import { bestWire as choose, FORMERS, quantity } from '../../engine/index.ts';
import { calcNotes } from '../../outputs/words/index.ts';
import { calculation, figure } from './calculation.ts';
import { oneOf } from './expect.ts';

const size = quantity('length', { above: 0, max: 10 });

export const bestWireCalculation = calculation({
  name: 'best-wire',
  example: { inductance: '190 µH', frequency: '1 MHz', formerDiameter: '63 mm', longest: '100 mm', former: 'card' },
  schema: v.object({
    inductance: quantity('inductance', { above: 1e-8, max: 0.1 }),
    frequency: quantity('frequency', { min: 1e4, max: 3e7 }),
    formerDiameter: quantity('length', { min: 5e-3, max: 2 }),
    longest: size,
    former: v.optional(oneOf(FORMERS)),
  }),
  answer(input) {
    const choices = choose(input);
    return {
      wires: choices.map((c) => ({
        diameter: figure(c.wire.diameter, 'length'),
        turns: c.turns,
        pitch: figure(c.pitch, 'length'),
        length: figure(c.length, 'length'),
        wireLength: figure(c.wireLength, 'length'),
        q: c.q,
        qRange: c.qRange,
      })),
      warnings: choices.length === 0 ? [calcNotes.noWire] : [],
    };
  },
});
