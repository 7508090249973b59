import type { BuiltSet } from '../../../../engine/built/built-set.ts';
import {
  type Check,
  DIAL_AS,
  HEARD_AS,
  ohmCutsOf,
  type PossibleCheck,
  VOLT_CUTS,
  WIDTH_AS,
} from '../../../../engine/faults/checks.ts';
import { type Sign, type SignCode, signAt } from '../../../../engine/faults/fault.ts';
import {
  isReadAtMiddle,
  type NamedPlace,
  type OhmPlace,
  type PartPlace,
  partOfPlace,
} from '../../../../engine/faults/ohmmeter.ts';
import type { PartId } from '../../../../engine/network/ids.ts';
import { formatQuantity } from '../../../../engine/units/format.ts';
import { ohms } from '../../figures.ts';
import { printable } from '../../printable.ts';
import { partName } from '../parts.ts';

/** What one listens with. */
const listenedWith = ({ set: { load } }: BuiltSet): 'phones' | 'earpiece' | 'amplifier' =>
  load.kind === 'amplifier' ? 'amplifier' : load.kind === 'crystal earpiece' ? 'earpiece' : 'phones';

/**
 * Where the two leads of an ohmmeter go.
 * @param place of a reading
 * @param built the set: what one listens with, and whether a slider must stand in the middle
 * @returns as it follows "resistance"
 */
export const ohmPlaceText = (place: OhmPlace, built: BuiltSet): string => {
  if (isOfPart(place)) return partPlaceText(place, built);
  const isSlider = built.set.arrangement.kind === 'slider';
  const ofPair = built.circuit.assembly.wiring === 'single' ? undefined : PAIR_TEXTS[place];
  const between =
    isSlider && place === 'coil-to-earth' ? SLIDER_TO_EARTH : (ofPair ?? placeTexts[place](listenedWith(built)));
  return isReadAtMiddle(place, built) ? `${between}, with the slider in the middle` : between;
};

/** The tuned circuit of a slider set ends at the slider. */
const SLIDER_TO_EARTH = 'from the slider to the earth terminal';

/** Of two detectors each is measured by itself. */
const PAIR_TEXTS: Readonly<Partial<Record<NamedPlace, string>>> = {
  'detector-forward':
    'across each of the two detectors with one lead off, positive lead on its anode: the reading that is further from the expected one',
  'detector-back':
    'across each of the two detectors with one lead off, positive lead on its cathode: the reading that is further from the expected one',
};

const isOfPart = (place: OhmPlace): place is PartPlace => partOfPlace(place) !== undefined;

/** "across the trap 1 coil", "across main between turns 0 and 40", "across the by-pass capacitor, with one lead off". */
function partPlaceText(place: PartPlace, built: BuiltSet): string {
  const { part, turns, isAlone } = partOfPlace(place)!;
  const stretch = turns ? ` between turns ${turns[0]} and ${turns[1]}` : '';
  return `across ${partInSentence(part, built)}${stretch}${isAlone ? ', with one lead off' : ''}`;
}

/** A part by its name: its user’s own as it stands. */
function partInSentence(id: PartId, { parts }: BuiltSet): string {
  const part = parts.get(id);
  if (!part) return 'the part';
  if (part.role === 'equaliser-capacitor') return 'the capacitor of the equaliser';
  return part.displayName === undefined ? `the ${partName(part)}` : partName(part);
}

const placeTexts: Readonly<Record<NamedPlace, (load: string) => string>> = {
  'coil-to-earth': () => 'from the far end of the tuned coil to the earth terminal',
  'aerial-to-earth': () => 'from the aerial terminal to the earth terminal',
  'aerial-coil': () => 'from the far end of the aerial coil to the earth terminal',
  'detector-tap-to-earth': () => 'from the detector’s terminal on the coil side to the earth terminal',
  'detector-forward': () => 'across the detector, positive lead on the coil side',
  'detector-back': (load) => `across the detector, positive lead on the side of the ${load}`,
  'phones-posts': (load) =>
    `across the terminals for the ${load}, with the ${load} disconnected, positive lead on earth`,
  'phones-posts-back': (load) =>
    `across the terminals for the ${load}, with the ${load} disconnected, negative lead on earth`,
  'capacitor-to-coil': () => 'from the tuning capacitor’s live terminal to the far end of the coil',
  'capacitor-alone': () => 'across the tuning capacitor with one lead off, turned through its whole travel',
  'earth-lead': () => 'along the earth lead, from its plug to the clamp in the ground',
  'fixed-capacitor': () => 'across each fixed capacitor in the signal path, with one lead off: the lowest reading',
  phones: () => 'across the plugs of the phones by themselves',
  primary: () => 'across the transformer’s winding on the detector’s side, with one lead off',
  secondary: (load) => `across the transformer’s winding on the side of the ${load}, with one lead off`,
  'leads-apart': () => 'from the aerial lead to the earth lead, both off the set: the mean of both polarities',
};

/** A sign as a question with the answer yes or no, at a part of its own where it is one of several. */
function signText(sign: Sign, built: BuiltSet): string {
  const { code, part } = signAt(sign);
  return part === undefined
    ? signTexts[code]
    : `Hold a good capacitor across ${partInSentence(part, built)}: is it much louder?`;
}

const signTexts: Readonly<Record<SignCode, string>> = {
  'crackle-on-tapping': 'Tap each joint with a dry wooden stick: does it crackle?',
  'crackle-on-turning': 'Turn the tuning capacitor: does it crackle?',
  'scrape-at-one-place': 'Turn the tuning capacitor: does it scrape and click at one place?',
  'jumps-on-sliding': 'Move the slider: does the sound jump or crackle?',
  'sound-with-cord-moved': 'Bend the cord of the phones: does the sound come and go?',
  'changes-on-knock': 'Knock on the board: does the loudness change?',
  'hand-near-moves-tuning': 'Bring a hand near the coil: does the tuning move?',
  hum: 'Is there a hum wherever the dial is?',
  'weaker-when-wet': 'Is it weaker in wet weather?',
  'louder-with-hand-on-earth': 'Touch the earth terminal: does it become louder?',
  'louder-with-other-wire': 'Replace the aerial by 10 m of wire: is it louder?',
  'louder-with-other-earth': 'Connect another earth: is it louder?',
  'louder-at-another-spot': 'Try another spot on the crystal: is it louder?',
  'click-from-cell': 'Hold the phones away from the ears and touch their plugs with a 1.5 V cell: do they click?',
  'louder-with-other-phones': 'Plug in other phones: is it much louder?',
  'louder-with-other-detector': 'Connect another detector in place of this one: is it much louder?',
  'louder-with-by-pass-off': 'Take one wire of the by-pass capacitor off: is it louder or brighter?',
  'louder-with-capacitor-bridged': 'Hold a good capacitor across each fixed one in turn: is it much louder?',
  'buzz-from-input': 'With the volume low, touch the amplifier’s input with a finger: does it buzz?',
  'switch-at-earth': 'Look at the lightning switch: does it stand at earth?',
  'hiss-at-full-volume': 'Turn the volume up: does the amplifier hiss?',
  'heater-glows': 'Does the heater glow?',
  'bias-as-described':
    'Measure the bias cell’s voltage at its terminals: does it have the voltage and the direction described?',
  'swings-within-minutes': 'Does the loudness rise and fall within minutes?',
  'other-receiver-hears-it': 'Does another receiver hear the missing station?',
};

const stationText = (station: number, { set }: BuiltSet): string => {
  const { name, frequency } = set.place.stations[station];
  return `${printable(name)} (${Number((frequency / 1e3).toFixed(1))} kHz)`;
};

/** What to do for a check, as one sentence. */
export function checkText(check: Check, built: BuiltSet): string {
  switch (check.kind) {
    case 'loudness':
      return `How loud is ${stationText(check.station, built)} where it is loudest?`;
    case 'dial':
      return `At what reading of the scale is ${stationText(check.station, built)} loudest?`;
    case 'width':
      return `How wide is ${stationText(check.station, built)} on the dial?`;
    case 'volts':
      return `Measure the direct voltage across the ${listenedWith(built)} on the strongest station, with a 10 MΩ meter.`;
    case 'ohms':
      return `Measure the resistance ${ohmPlaceText(check.place, built)}.`;
    case 'sign':
      return signText(check.sign, built);
  }
}

/** A check in a few words, before its answer: "resistance across the detector", "loudness of Quayside (1458 kHz)". */
export function checkName(check: Check, built: BuiltSet): string {
  switch (check.kind) {
    case 'loudness':
      return `loudness of ${stationText(check.station, built)}`;
    case 'dial':
      return `place of ${stationText(check.station, built)} on the dial`;
    case 'width':
      return `width of ${stationText(check.station, built)} on the dial`;
    case 'volts':
      return `direct voltage across the ${listenedWith(built)}`;
    case 'ohms':
      return `resistance ${ohmPlaceText(check.place, built)}`;
    case 'sign':
      return signText(check.sign, built).replace(/\?$/, '');
  }
}

/** The words, or kind of figure, that answer a check. */
export function answerHelp({ kind }: Check): string {
  switch (kind) {
    case 'loudness':
      return HEARD_AS.join(', ');
    case 'dial':
      return 'a reading such as 98°, off scale, silent';
    case 'width':
      return WIDTH_AS.join(', ');
    case 'volts':
      return 'a voltage such as 12 mV';
    case 'ohms':
      return 'a resistance such as 1.2 Ω, open';
    case 'sign':
      return 'yes, no';
  }
}

/** Where one answer about a resistance or voltage ends and the next begins. */
const edgeOf = (check: Metered, k: number): string =>
  check.kind === 'ohms' ? ohms(ohmCutsOf(check.place)[k]) : formatQuantity(VOLT_CUTS[k], 'voltage', 2);

type Metered = Extract<Check, { readonly kind: 'ohms' | 'volts' }>;

const stretch = (check: Metered, k: number, most: number): string => {
  if (k === 0) return `under ${edgeOf(check, 0)}`;
  return k >= most ? `over ${edgeOf(check, k - 1)}` : `${edgeOf(check, k - 1)} to ${edgeOf(check, k)}`;
};

/** One answer of a check: "1.8 Ω to 5.6 Ω", "faint", "yes". */
export function answerText({ check, answers }: PossibleCheck, answer: number): string {
  switch (check.kind) {
    case 'loudness':
      return HEARD_TEXTS[HEARD_AS[answer]];
    case 'dial':
      return DIAL_TEXTS[DIAL_AS[answer]];
    case 'width':
      return WIDTH_TEXTS[WIDTH_AS[answer]];
    case 'volts':
      return stretch(check, answer, answers - 1);
    case 'ohms':
      return answer === answers - 1 ? 'open' : stretch(check, answer, answers);
    case 'sign':
      return answer === 1 ? 'yes' : 'no';
  }
}

const HEARD_TEXTS: Readonly<Record<(typeof HEARD_AS)[number], string>> = {
  'not heard': 'not heard',
  faint: 'faint',
  quiet: 'quiet',
  comfortable: 'comfortable',
  'fairly loud': 'fairly loud',
  loud: 'loud',
};

const WIDTH_TEXTS: Readonly<Record<(typeof WIDTH_AS)[number], string>> = {
  narrower: 'narrower than calculated',
  'as calculated': 'as wide as calculated',
  broader: '1.6 to 3 times as wide as calculated',
  'much broader': 'over 3 times as wide as calculated',
  silent: 'silent',
};

const DIAL_TEXTS: Readonly<Record<(typeof DIAL_AS)[number], string>> = {
  'far below': 'over 14° lower than calculated',
  below: '6° to 14° lower than calculated',
  'as calculated': 'as calculated, within 6°',
  above: '6° to 14° higher than calculated',
  'far above': 'over 14° higher than calculated',
  'off scale': 'beyond the end of the scale',
  silent: 'silent',
};

/** Readings between two of a check's answers: "under 5.6 Ω", "5.6 Ω to 1.8 kΩ", "over 18 kΩ or open". */
function readingsText(check: Metered, [first, last]: readonly [number, number], top: number): string {
  const edge = (k: number): string => edgeOf(check, k);
  const isOhms = check.kind === 'ohms';
  const isOpen = isOhms && last === top;
  if (first === top && isOpen) return 'open';
  const highest = isOhms ? top - 1 : top;
  const ends = Math.min(last, highest);
  if (first === 0 && ends === highest) return isOpen ? 'any reading, or open' : 'any reading, not open';
  const readings =
    first === 0
      ? `under ${edge(ends)}`
      : ends === highest
        ? `over ${edge(first - 1)}`
        : `${edge(first - 1)} to ${edge(ends)}`;
  return isOpen ? `${readings}, or open` : readings;
}

const SHIFTS = [-14, -6, 6, 14];
/** Answers about the dial that are no readings: beyond the end, silent. */
const OFF_DIAL = DIAL_AS.indexOf('off scale');

function dialTextAbout(reading: number, [first, last]: readonly [number, number]): string {
  const edge = (k: number): string => `${Math.round(reading + SHIFTS[k])}°`;
  const beyond = DIAL_AS.slice(Math.max(first, OFF_DIAL), last + 1).map((answer) => DIAL_TEXTS[answer]);
  const top = Math.min(last, OFF_DIAL - 1);
  if (first > top) return beyond.join(' or ');
  const readings =
    first === 0 && top === OFF_DIAL - 1
      ? 'any reading'
      : first === 0
        ? `under ${edge(top)}`
        : top === OFF_DIAL - 1
          ? `over ${edge(first - 1)}`
          : `${edge(first - 1)} to ${edge(top)}`;
  return [readings, ...beyond].join(' or ');
}

/**
 * Neighbouring answers of a check that lead to the same.
 * @param check of a set
 * @param answers the first and the last of them
 * @param reading of the scale where the station should be, degrees; of a check about the dial
 */
export function answersText(
  possible: PossibleCheck,
  answers: readonly [first: number, last: number],
  reading: number | undefined,
): string {
  const { check, answers: count } = possible;
  const [first, last] = answers;
  if (check.kind === 'volts' || check.kind === 'ohms') return readingsText(check, answers, count - 1);
  if (check.kind === 'dial' && reading !== undefined) return dialTextAbout(reading, answers);
  const each = Array.from({ length: last - first + 1 }, (_, k) => answerText(possible, first + k));
  return check.kind === 'loudness' && each.length > 2 ? `${each[0]} to ${each[each.length - 1]}` : each.join(' or ');
}
