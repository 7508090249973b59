import type { BuiltSet } from '../../../../engine/built/built-set.ts';
import type { FaultCode, PartFault } from '../../../../engine/faults/fault.ts';
import { capital } from '../../../../engine/units/format.ts';
import { partName } from '../parts.ts';

/** What a fault's sentence needs of the set. */
interface Named {
  /** "main", "tuning capacitor". */
  readonly part: string;
  /** "between turns 11 and 18"; empty where it is the whole. */
  readonly turns: string;
  readonly station: string;
}

const FAULTS: Readonly<Record<FaultCode, (named: Named) => string>> = {
  'winding-open': ({ part, turns }) => `${part}: wire broken or joint open ${turns}`,
  'winding-joint-dry': ({ part, turns }) => `${part}: high-resistance joint ${turns}`,
  'turn-shorted': ({ part }) => `${part}: two turns touch, a shorted turn`,
  'section-reversed': ({ part, turns }) => `${part}: wound or joined the wrong way round ${turns}`,
  'turns-few': ({ part }) => `${part}: too few turns`,
  'turns-many': ({ part }) => `${part}: too many turns`,
  'winding-damp': ({ part }) => `${part}: damp former or winding, high loss`,
  'taps-interchanged': ({ part }) => `${part}: aerial and detector taps interchanged`,
  'taps-from-wrong-end': ({ part }) => `${part}: taps counted from the wrong end`,
  'aerial-tap-open': () => 'lead from the aerial terminal to the coil open',
  'aerial-tap-dry': () => 'high-resistance joint in the lead from the aerial terminal to the coil',
  'slider-dirty': ({ part }) => `${part}: dirty slider contact`,
  'coils-far': () => 'coils too far apart',
  'rod-broken': () => 'ferrite rod broken',
  'tuning-lead-off': ({ part }) => `${part}: lead off`,
  'tuning-shorted': ({ part }) => `${part}: shorted at every setting`,
  'vanes-touch': ({ part }) => `${part}: plates touch over part of the travel`,
  'rotor-contact-dirty': ({ part }) => `${part}: dirty contact to the moving plates`,
  'tuning-leaky': ({ part }) => `${part}: leaky or damp insulation`,
  'tuning-half': ({ part }) => `${part}: much less capacitance than described`,
  'strays-large': () => 'large stray capacitance of leads or metal near the coil',
  'dielectric-wet': ({ part }) => `${part}: damp dielectric, high loss`,
  'capacitor-open': ({ part }) => `${part} open`,
  'capacitor-shorted': ({ part }) => `${part} shorted`,
  'resistor-open': ({ part }) => `${part} open`,
  'lead-in-broken': () => 'aerial lead-in broken near the set',
  'aerial-shorter': () => 'aerial broken further out, or shorter than described',
  'aerial-leaks': () => 'aerial leaks to earth: wet insulator, mast or tree',
  'aerial-earthed': () => 'aerial touches earthed metal',
  'aerial-switch-at-earth': () => 'aerial switch left in the earth position',
  'earth-lead-broken': () => 'earth lead broken',
  'earth-dry': () => 'earth of high resistance: dry soil or a poor clamp',
  'spot-dead': () => 'dead spot on the crystal',
  'spot-poor': () => 'poor spot on the crystal, or too little pressure',
  'spot-pressed-through': () => 'cat’s whisker pressed through: contact shorted',
  'device-open': ({ part }) => `${part} open`,
  'device-shorted': ({ part }) => `${part} shorted`,
  'device-leaky': ({ part }) => `${part} leaky, perhaps overheated when soldered`,
  'device-silicon': ({ part }) => `${part} is a silicon diode`,
  'device-lead-open': ({ part }) => `${part}: lead to the coil open`,
  'device-joint-dry': ({ part }) => `${part}: high-resistance joint to the coil`,
  'pair-half-open': () => 'one detector of the pair open',
  'heater-cold': () => 'heater of the valve cold',
  'heater-low': () => 'heater voltage low, or worn cathode',
  'bias-flat': () => 'bias cell flat',
  'bias-reversed': () => 'bias cell reversed',
  'phones-open': ({ part }) => `${part} or cord open`,
  'cord-intermittent': () => 'cord with an intermittent break',
  'phones-half': () => 'one earpiece shorted',
  'phones-shorted': ({ part }) => `${part} or cord shorted`,
  'magnetism-lost': ({ part }) => `${part}: weak magnets, little sound from a good signal`,
  'by-pass-shorted': ({ part }) => `${part} shorted`,
  'by-pass-leaky': ({ part }) => `${part} leaky`,
  'by-pass-large': ({ part }) => `${part} far too large`,
  'crystal-dead': ({ part }) => `${part}: crystal dead or damp`,
  'earpiece-resistor-missing': () => 'resistor across the earpiece missing or open',
  'earpiece-resistor-low': () => 'resistor across the earpiece much too small',
  'transformer-reversed': () => 'transformer connected the wrong way round',
  'primary-open': () => 'transformer winding on the detector’s side open',
  'secondary-open': () => 'transformer winding on the phones’ side open',
  'load-resistor-open': ({ part }) => `${part} open`,
  'amplifier-dead': () => 'amplifier without supply, switched off or faulty',
  'station-off-air': ({ station }) => `${station} is off the air`,
  'fading-at-night': () => 'night-time fading',
  'mains-hum': () => 'hum from mains wiring or a supply near by',
  'nothing-wrong': () => 'nothing wrong: reception as calculated',
};

/** A coil's stretch of turns in words; nothing for all of it. */
function turnsText(fault: PartFault, built: BuiltSet): string {
  const values = built.parts.get(fault.part)?.values;
  if (!fault.turns || values?.kind !== 'coil') return '';
  const [from, to] = fault.turns;
  const shown = (turn: number): string => `${Number(turn.toFixed(1))}`;
  return from === 0 && to >= values.turns ? '' : `between turns ${shown(from)} and ${shown(to)}`;
}

/** One fault of a set: "Main: high-resistance joint between turns 0 and 11". */
export function faultText(fault: PartFault, built: BuiltSet): string {
  const part = built.parts.get(fault.part);
  const index = Number(fault.id.split(':')[1]);
  const name = part ? partName(part) : 'aerial';
  const station = built.set.place.stations[index]?.name ?? 'station';
  return capital(FAULTS[fault.code]({ part: name, turns: turnsText(fault, built), station }).trim());
}
