import { expect, it } from 'vitest';
import type { CautionCode } from '../../../engine/facts/cautions.ts';
import { cautionTexts } from './cautions.ts';

/** Each hazard by the words without which its caution is none. */
const HAZARDS: Record<CautionCode, readonly RegExp[]> = {
  'aerial.power-lines': [/never/i, /power lines/, /\bnear\b/, /\bover\b/, /\bunder\b/],
  'aerial.thunder': [/thunder/, /disconnect the aerial/, /earth outside/, /arrester/, /electrical code/],
  'aerial.ladders-and-masts': [/ladder/, /mast/, /helper/, /firm ground/, /guy/],
  'earth.mains-and-gas': [/never/i, /mains neutral/, /gas pipe/, /mains earth/, /licensed/],
  'earth.buried-cables': [/before you dig/i, /rod/, /buried cables/, /pipes/],
  'detector.lead-sulphide': [/lead sulphide/, /wash your hands/, /do not eat/, /do not grind/],
  'detector.low-melting-metal': [/low-melting metal/i, /lead/, /cadmium/, /moving air/, /never used for food/],
  'detector.hot-valve': [/hot/, /cool before/, /heater off before/],
  'detector.heater-supply': [/short circuit/, /fuse/, /isolated/],
  'detector.accumulator': [/acid/, /explosive/, /flame/, /water/],
  'load.volume': [/volume down/, /ears only then/],
  'load.mains-amplifier': [/mains.*isolated.*isolating transformer/, /phones and the aerial/],
  'load.clicks-on-ears': [/off your ears before/, /cell/, /meter/, /earpiece/],
  'load.loud': [/damage hearing/, /detune/, /before you put the phones on/],
  'old-parts': [/asbestos/, /PCB/, /radium/, /selenium/, /unopened/],
  'bench.wire-ends': [/glasses/, /cut, stretched or cleaned/],
  'bench.solder': [/fumes/, /lead/, /moving air/, /wash your hands before you eat/, /iron/],
  'bench.no-mains': [/^Nothing here runs from the mains/, /battery-powered/, /isolating transformer that is tested/],
  'bench.licensed-person': [/connected to the mains/, /local electrical code/, /licensed person/],
  'bench.mains-isolated': [/without isolation/, /battery-powered/, /isolating transformer that is tested/],
};

it.each(Object.entries(cautionTexts))('%s names its own hazard and no other', (code, text) => {
  const named = Object.entries(HAZARDS).filter(([, words]) => words.every((w) => w.test(text)));
  expect(named.map(([hazard]) => hazard)).toEqual([code]);
});
