import type { Reception } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { capital, formatNumber, formatQuantity } from '../../../engine/units/format.ts';
import { LIGHT_SPEED } from '../../../engine/units/quantities.ts';
import { loopOf, stationOf, tunerOf } from '../model/from-set.ts';
import { once } from '../model/once.ts';
import { tidyTime } from '../model/view.ts';
import type { Waves } from '../model/waves.ts';

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
  sideband: 'half of it: how strong each sideband is',
  aerialSays: 'what its aerial is',
  loopSays: 'how a frame or rod does without a wire; nothing where there is one',
  aerialVoltage: 'emf in the aerial, peak',
  tunedVoltage: 'carrier on the tuned circuit, peak',
  tunedPeak: 'the same where the programme is loudest',
  tuner: 'what one does to tune it',
  lift: 'how many times the tuned circuit lifts it',
  q: 'loaded Q',
  broad: 'how broad the tuned circuit is',
  buildUp: 'how long its swing takes to come to two thirds',
  detectorVoltage: 'carrier at the detector, peak',
  tapSays: 'why it is less than on the tuned circuit, where it is',
  detectorPeak: 'the same where the programme is loudest',
  detectorOut: 'what comes through the detector then, with nothing to smooth it',
  detector: 'the detector',
  direct: 'mean voltage after it',
  audio: 'programme after it, peak',
  capacitor: 'the load capacitor',
  drain: 'how fast the load’s resistance empties it',
  drains: 'what drains it',
  below: 'why the line dips below nothing, where it does',
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
  const loudest = waves.scale('tuned').high;
  const trough = once(() => mean(0.5 / tone));
  const swing = once(() => (mean(0) - trough()) / 2);
  // The drawing and the path are two ways to one figure; where they part a little it is no more than "about".
  const roughly = (drawn: number, said: number = drawn) =>
    `${Math.abs(drawn / said - 1) > 0.08 ? 'about ' : ''}${volts(said)}`;
  const arriving = reception ? reception.stations.filter((s) => s.emf > 0).length : spec.neighbours.length + 1;
  const loop = loopOf(set);
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
    sideband: formatQuantity(depth / 2, 'ratio', 2),
    aerialSays: loop
      ? `A wire and the ground are the plates of a capacitor; this set’s ${loop} catches the wave’s magnetic side instead.`
      : 'Wire and ground are the plates of a capacitor.',
    loopSays: loop
      ? `This set has no such wire: the wave’s magnetism, swinging through the turns of its ${loop}, does the pushing.`
      : '',
    aerialVoltage: volts(spec.atAerial),
    tunedVoltage: volts(spec.atTuned),
    tunedPeak: volts(loudest),
    tuner: tunerOf(set).words,
    lift: formatNumber(spec.atTuned / spec.atAerial, 2),
    q: formatNumber(loadedQ, 2),
    broad: formatQuantity(carrier / loadedQ, 'frequency', 2),
    buildUp: tidyTime(loadedQ / Math.PI / carrier, 2),
    detectorVoltage: volts(spec.atDetector),
    tapSays:
      spec.atDetector < 0.9 * spec.atTuned
        ? `Joined lower down the coil it gets less than the whole ${volts(spec.atTuned)}, and weighs on it less.`
        : '',
    detectorPeak: volts((loudest * spec.atDetector) / spec.atTuned),
    detectorOut: volts(waves.scale('detector').high),
    detector: detectorWords(spec.detector === 'perfect' ? 'a perfect one-way path' : spec.detector.label),
    direct: roughly(trough() + swing(), own?.directVoltage),
    audio: roughly(Math.abs(swing()), own?.audioVoltage),
    capacitor: formatQuantity(load.capacitance, 'capacitance', 2).replace('.0 ', ' '),
    drain: tidyTime(load.resistance * load.capacitance, 2),
    drains:
      set?.load.kind === 'crystal earpiece' && set.load.resistor === undefined
        ? 'hardly anything drains it'
        : DRAINS[set?.load.kind ?? 'phones'],
    below:
      load.inductance && trough() < 0
        ? 'Where the line dips below nothing, the windings of the phones keep the current going a little longer.'
        : '',
    stations: arriving === 1 ? 'one station' : `${arriving} stations`,
    heard: own?.heard ?? 'heard',
  };
}

const DRAINS: Readonly<Record<SetDescription['load']['kind'], string>> = {
  phones: 'the phones drain it',
  'moving-coil phones': 'the phones drain it',
  'crystal earpiece': 'the resistor beside the earpiece drains it',
  amplifier: 'the resistance before the amplifier drains it',
};

const detectorWords = (label: string): string => label.charAt(0).toLowerCase() + label.slice(1);

/** A text with the figures put in, beginning with a capital; names that are not known stay as they are. */
export const filled = (text: string, figures: Figures): string => {
  const words = text.replace(/\{(\w+)\}/g, (whole, name: string) => figures[name] ?? whole);
  return capital(words.replace(/ {2,}/g, ' ').trim());
};
