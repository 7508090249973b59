import * as v from 'valibot';
import { quantity, refuse, skyFieldRange, skyWave } from '../../engine/index.ts';
import { calculation, figure, figureIn, levelRange } from './calculation.ts';
import { numberIn, oneOf } from './expect.ts';

const latitude = quantity('angle', { min: -90, max: 90 });
const decibels = v.optional(quantity('level', { min: -200, max: 200 }), 0);

/** `calc skywave`: night sky wave by Rec. ITU-R P.1147. */
export const skywaveCalculation = calculation({
  name: 'skywave',
  example: {
    frequency: '1 MHz',
    distance: '1000 km',
    transmitterGeomagneticLatitude: '50°',
    receiverGeomagneticLatitude: '52°',
    power: '100 kW',
    sunspots: 80,
  },
  schema: v.object({
    frequency: quantity('frequency', { min: 1e4, max: 3e7 }),
    distance: quantity('length', { min: 0, max: 4.1e7 }),
    transmitterGeomagneticLatitude: latitude,
    receiverGeomagneticLatitude: latitude,
    power: v.optional(quantity('power', { min: 0, max: 1e9 }), 1000),
    sunspots: v.optional(numberIn(0, 500), 0),
    region: v.optional(oneOf(['Europe', 'Australia', 'North America', 'elsewhere'])),
    southOfRegion3: v.optional(v.boolean(refuse({ code: 'true-or-false' }))),
    seaGain: decibels,
    polarizationLoss: decibels,
    hourlyLoss: decibels,
  }),
  answer(input) {
    const field = skyWave(input);
    const range = skyFieldRange(field.fieldStrength);
    return {
      fieldStrength: figure(field.fieldStrength, 'field strength', range),
      level: figureIn(field.level, 'dB(µV/m)', levelRange(field.level, field.fieldStrength, range)),
      decile: figure(field.decile, 'level'),
      reflectionHeight: figure(field.reflectionHeight, 'length'),
      slantDistance: figure(field.slantDistance, 'length'),
      warnings: field.warnings,
    };
  },
});
