import * as v from 'valibot';
import {
  ENVIRONMENT_KINDS,
  noise as noiseAt,
  noisePartRange,
  noiseRange,
  quantity,
  rangeOfDecibels,
} from '../../engine/index.ts';
import { calculation, figure, figureIn } from './calculation.ts';
import { numberIn, oneOf } from './expect.ts';

const field = quantity('field strength', { above: 0, max: 100 });
const frequency = quantity('frequency', { min: 1e3, max: 1e9 });

/** `calc noise`: man-made noise by Rec. ITU-R P.372; with a time also the lightning, or noise as measured. */
export const noiseCalculation = calculation({
  name: 'noise',
  example: {
    frequency: '1 MHz',
    bandwidth: '9 kHz',
    environment: 'residential',
    time: { latitude: '52°', month: 1, localHour: 21 },
  },
  schema: v.object({
    frequency,
    bandwidth: quantity('frequency', { above: 0, max: 1e9 }),
    environment: oneOf(ENVIRONMENT_KINDS),
    time: v.optional(
      v.object({
        latitude: quantity('angle', { min: -90, max: 90 }),
        month: numberIn(1, 12),
        localHour: numberIn(0, 24),
      }),
    ),
    measured: v.optional(v.object({ fieldStrength: field, bandwidth: quantity('frequency', { above: 0, max: 1e9 }) })),
  }),
  answer(input) {
    const answer = noiseAt(input);
    const [below, above] = noiseRange(answer, input.environment);
    const parts = Object.fromEntries(
      (['manMade', 'atmospheric'] as const).flatMap((part) => {
        const value = answer[part];
        if (!value) return [];
        const [low, high] = noisePartRange(part, input.environment);
        return [[`${part}NoiseFigure`, figure(value.figure, 'level', [value.figure + low, value.figure + high])]];
      }),
    );
    return {
      externalNoiseFigure: figure(answer.externalNoiseFigure, 'level', [
        answer.externalNoiseFigure + below,
        answer.externalNoiseFigure + above,
      ]),
      fieldStrength: figure(
        answer.fieldStrength,
        'field strength',
        rangeOfDecibels(answer.fieldStrength, [below, above]),
      ),
      level: figureIn(answer.level, 'dB(µV/m)', [answer.level + below, answer.level + above]),
      ...parts,
      spread: figure(answer.spread, 'level'),
      warnings: answer.warnings,
    };
  },
});
