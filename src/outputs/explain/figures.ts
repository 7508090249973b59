import type { Reception } from '../../engine/reception/types.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import { formatNumber, formatQuantity } from '../../engine/units/format.ts';
import { LIGHT_SPEED } from '../../engine/units/quantities.ts';
import { stationOf } from './from-set.ts';
import { tidyTime } from './view.ts';
import type { Waves } from './waves.ts';

/** What a caption may name in braces, and what stands there for this set. */
export type Figures = Readonly<Record<string, string>>;

/** Every name a caption may use, with what it means: for who writes their own. */
export const FIGURE_MEANINGS: Readonly<Record<string, string>> = {
  set: 'what the set is called',
  place: 'where it is',
  station: 'the station looked at',
  carrier: 'its frequency',
  cycle: 'how long one cycle of its carrier lasts',
  wavelength: 'its wavelength',
  quarter: 'a quarter of it',
  cyclesPerTone: 'cycles of the carrier in one of the tone',
  tone: 'the tone that stands for the programme',
  toneCycle: 'how long one cycle of the tone lasts',
  toneQuarter: 'a quarter of the tone’s own wavelength in the air',
  depth: 'depth of modulation',
  aerialVoltage: 'emf in the aerial, peak',
  tunedVoltage: 'carrier on the tuned circuit, peak',
  lift: 'how many times the tuned circuit lifts it',
  q: 'loaded Q',
  broad: 'how broad the tuned circuit is',
  buildUp: 'how long its swing takes to build up',
  detectorVoltage: 'carrier at the detector, peak',
  detector: 'the detector',
  direct: 'mean voltage after it',
  audio: 'programme after it, peak',
  capacitor: 'the load capacitor',
  drain: 'how fast the phones’ resistance empties it',
  stations: 'how many stations arrive',
  heard: 'how the station is heard',
};

/** The figures of the current set. */
export function figuresOf(waves: Waves, set?: SetDescription, reception?: Reception, index?: number): Figures {
  const { spec } = waves;
  const { carrier, depth, loadedQ, load } = spec;
  const tone = spec.programme.kind === 'tones' ? (spec.programme.tones[0]?.frequency ?? 1000) : 1000;
  const station = reception && stationOf(reception, index);
  const own = station && Math.abs(station.frequency - carrier) < 100 ? station : undefined;
  // Following the capacitor takes time: only where the set's own figures do not say it.
  const mean = (t: number) => waves.meanAt('phones', t);
  const volts = (v: number) => formatQuantity(v, 'voltage', 2);
  const metres = (m: number) => formatQuantity(m, 'length', 2).replace('.0 ', ' ');
  const wavelength = LIGHT_SPEED / carrier;
  return {
    set: set?.name ?? 'an ordinary set',
    place: set?.place.name ?? 'your house',
    station: own?.name ?? 'the station',
    carrier: formatQuantity(carrier, 'frequency', 4).replace(/\.0+ /, ' '),
    cycle: tidyTime(1 / carrier, 3),
    wavelength: metres(wavelength),
    quarter: metres(wavelength / 4),
    cyclesPerTone: formatNumber(carrier / tone, 3),
    tone: formatQuantity(tone, 'frequency', 3).replace(/\.0+ /, ' '),
    toneCycle: tidyTime(1 / tone, 2),
    toneQuarter: metres(LIGHT_SPEED / tone / 4),
    depth: formatQuantity(depth, 'ratio', 2),
    aerialVoltage: volts(spec.atAerial),
    tunedVoltage: volts(spec.atTuned),
    lift: formatNumber(spec.atTuned / spec.atAerial, 2),
    q: formatNumber(loadedQ, 2),
    broad: formatQuantity(carrier / loadedQ, 'frequency', 2),
    buildUp: tidyTime(loadedQ / Math.PI / carrier, 2),
    detectorVoltage: volts(spec.atDetector),
    detector: detectorWords(spec.detector === 'perfect' ? 'a perfect one-way path' : spec.detector.label),
    direct: volts(own?.directVoltage ?? (mean(0) + mean(0.5 / tone)) / 2),
    audio: volts(own?.audioVoltage ?? Math.abs(mean(0) - mean(0.5 / tone)) / 2),
    capacitor: formatQuantity(load.capacitance, 'capacitance', 2).replace('.0 ', ' '),
    drain: tidyTime(load.resistance * load.capacitance, 2),
    stations: String(reception?.stations.length ?? spec.neighbours.length + 1),
    heard: own?.heard ?? 'heard',
  };
}

const detectorWords = (label: string): string => label.charAt(0).toLowerCase() + label.slice(1);

/** A text with the figures put in, beginning with a capital; names that are not known stay as they are. */
export const filled = (text: string, figures: Figures): string => {
  const words = text.replace(/\{(\w+)\}/g, (whole, name: string) => figures[name] ?? whole);
  return words.charAt(0).toUpperCase() + words.slice(1);
};
