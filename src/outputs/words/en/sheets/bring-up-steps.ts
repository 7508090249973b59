import type { DetectorDescription } from '../../../../engine/kinds/detectors/detector-schema.ts';
import type { EarthDescription } from '../../../../engine/kinds/earths/earth-schema.ts';
import type { LoadDescription } from '../../../../engine/kinds/loads/load-schema.ts';
import type { LoopDescription } from '../../../../engine/kinds/loops.ts';
import type { CrystalSpot } from '../../../../engine/reception/detection/crystal-survey.ts';
import type { StationReception } from '../../../../engine/reception/path/types.ts';
import { hasRanges } from '../../../../engine/uncertainty/ranged-reception.ts';
import { formatQuantity } from '../../../../engine/units/format.ts';
import { bandSpan, kHz, ohms, wholeDB } from '../../figures.ts';
import { printable } from '../../printable.ts';
import { levelSpan, ohmsBeside, spanText } from '../../ranges.ts';
import { crystalSpots } from '../crystal-spots.ts';
import { faultCautionTexts } from '../faults/remedies.ts';
import { optionName } from '../fields/options.ts';
import { listOf } from '../grammar.ts';
import { besideWords } from '../reception/interference.ts';
import { verdictWords } from '../reception/verdicts.ts';
import { outputNames } from './circuit.ts';

/** One step: what to do, what to expect, and what to suspect otherwise. */
export interface BringUpStep {
  readonly act: string;
  /** What helps to understand it, and is not to be looked for. */
  readonly about?: string;
  readonly expect: string;
  readonly suspect: string;
}

/** What may touch where it should not, in a capacitor that is moved. */
export type Plates = 'vanes' | 'sheets' | 'tubes';
/** What is set by hand on a crystal. */
export type Contact = 'whisker' | 'firm whisker' | 'pair of crystals';

/** Resistance of a winding as an ordinary meter shows it, Ω. */
export interface WindingResistance {
  readonly resistance: number;
  readonly range: readonly [number, number];
  /** So little that the meter's own leads matter: how to subtract them is said once. */
  readonly leads: 'no' | 'explained' | 'again';
}

type LoadKind = LoadDescription['kind'];
type None = Readonly<Record<never, never>>;

/** Every step, with the figures that its row needs (SI). */
export interface BringUpFacts {
  readonly 'wiring-list': None;
  readonly 'turn-switch': { readonly band: string; readonly tag?: string };
  readonly 'coil-resistance': WindingResistance & {
    readonly coil: string;
    readonly tag?: string;
    readonly tapped: boolean;
  };
  readonly 'loop-resistance': WindingResistance & { readonly aerial: LoopDescription['kind']; readonly tag?: string };
  readonly 'transformer-resistance': { readonly tag: string; readonly primary: number; readonly secondary: number };
  readonly 'capacitor-insulation': { readonly tag: string; readonly name: string; readonly plates: Plates };
  readonly crystal: {
    readonly tags: readonly string[];
    readonly contact: Contact;
    /** At zero bias. */
    readonly resistance: number;
    /** As a digital ohmmeter shows it, one way and the other; infinite: no reading. */
    readonly metered: readonly [number, number];
    readonly spot?: AssumedSpot;
    readonly worth?: { readonly spots: readonly CrystalSpot[]; readonly station: string };
  };
  readonly heater: { readonly voltage: number; readonly reduced: boolean };
  readonly diode: { readonly tags: readonly string[]; readonly kind: DetectorDescription['kind'] };
  readonly 'phones-click': {
    readonly resistance: number;
    readonly by: 'resistance' | 'impedance';
    readonly posts: boolean;
  };
  readonly 'earpiece-click': { readonly posts: boolean };
  readonly 'amplifier-hum': None;
  readonly bias: { readonly voltage: number; readonly load: LoadKind };
  readonly 'aerial-and-earth': {
    readonly earth: EarthDescription;
    readonly resistance: number;
    readonly range: readonly [number, number];
    readonly capacitance: number;
    /** The aerial's figures are measured ones. */
    readonly measuredAerial: boolean;
  };
  readonly 'nothing-heard': { readonly loop?: LoopDescription['kind'] };
  readonly 'tune-in': TuneIn;
  readonly 'tune-in-two-circuits': TuneIn & Pointers;
  readonly 'aerial-circuit-peak': Pointers & { readonly plates: Plates; readonly coil: string };
  readonly 'turn-loop': { readonly aerial: LoopDescription['kind'] };
  readonly 'direct-voltage': DirectVoltage & { readonly range?: readonly [number, number] };
  readonly 'direct-voltage-small': DirectVoltage;
  readonly 'standing-voltage': DirectVoltage & {
    readonly standing: number;
    readonly from: 'cathode' | 'bias';
    /** What the station changes, whether an ordinary meter shows it, and its 90 % range. */
    readonly change: number;
    readonly isMetered: boolean;
    readonly changeRange?: readonly [number, number];
  };
  readonly 'ends-of-dial': {
    readonly low: readonly [number, number];
    readonly high: readonly [number, number];
    readonly capacitor: boolean;
    readonly aerialWire: boolean;
  };
}

/** What the sheets take the spot of a galena crystal to be. */
export interface AssumedSpot {
  /** By quality, or by figures of its own. */
  readonly quality: 'good' | 'fair' | 'poor' | 'own figures';
  /** Zero-bias resistance of the other qualities, Ω. */
  readonly others: readonly { readonly quality: 'good' | 'fair' | 'poor'; readonly resistance: number }[];
}

interface TuneIn {
  readonly station: StationReception;
  /** As the dial sheet prints it. */
  readonly reading: string;
  /** Spread of the reading as built, degrees; none on a straight scale. */
  readonly range?: readonly [number, number];
  readonly loop: boolean;
}
interface Pointers {
  readonly tag: string;
  readonly mainTag: string;
  /** Reading of the aerial circuit's dial. */
  readonly second: string;
}
/** V, between which terminals. */
interface DirectVoltage {
  readonly voltage: number;
  readonly across: Across;
}
export type Across =
  | { readonly at: 'primary' | 'load resistor'; readonly tag: string }
  | { readonly at: 'load'; readonly load: LoadKind };

export type BringUpCode = keyof BringUpFacts;
/** One step: its code and its figures. */
export type BringUpFact = { readonly [C in BringUpCode]: { readonly code: C } & BringUpFacts[C] }[BringUpCode];

const V = (voltage: number): string => formatQuantity(Math.abs(voltage), 'voltage', 2);
const joined = (...sentences: (string | false | undefined)[]): string => sentences.filter(Boolean).join(' ');

function windingText({ resistance, range, leads }: WindingResistance): string {
  const figure = `${ohms(resistance)} ${ohmsBeside(resistance, range)}`;
  if (leads === 'no') return `${figure}.`;
  return leads === 'again'
    ? `${figure}, with the leads’ reading subtracted.`
    : `${figure}. For so low a resistance touch the meter’s leads together first and subtract that reading.`;
}

const each = (tags: readonly string[]): string => {
  if (tags.length === 0) return 'the detector';
  return tags.length > 1 ? `${listOf(tags)}, one after the other` : tags[0];
};

const CONTACTS: Record<Contact, string> = {
  whisker: 'Set the whisker lightly on the crystal: its own weight and a little more.',
  'firm whisker': 'Set the whisker firmly on the crystal: this crystal needs the pressure.',
  'pair of crystals': 'Touch the two crystals together, lightly.',
};
const WIPE = 'The same both ways: pressed too hard, or a dead spot. Wipe the crystal with spirit, never with fingers';

function spotText(resistance: number, metered: readonly [number, number], spot: AssumedSpot | undefined): string {
  const [low, high] = [...metered].sort((a, b) => a - b).map((R) => (R < 2e6 ? `about ${ohms(R)}` : 'no reading'));
  const meter = `a digital meter applies more and shows ${low} one way, ${high} the other; this depends on the meter, and others show from a quarter to five times as much.`;
  if (!spot) return `At very small voltages its resistance is about ${ohms(resistance)}; ${meter}`;
  if (spot.quality === 'own figures')
    return `The sheets are calculated with your own figures for it: about ${ohms(resistance)} at very small voltages; ${meter}`;
  const others = listOf(spot.others.map((other) => `a ${other.quality} one ${ohms(other.resistance)}`));
  return `The sheets are calculated with a ${spot.quality} spot: about ${ohms(resistance)} at very small voltages (${others}); ${meter}`;
}

/** What an ordinary meter's diode range shows forward, at about 1 mA. Common practice, no source. */
const FORWARD: Record<DetectorDescription['kind'], string> = {
  germanium: '0.2 to 0.4 V one way, no reading the other. Put the wire back.',
  silicon: '0.5 to 0.7 V one way, no reading the other. Put the wire back.',
  schottky: '0.1 to 0.4 V one way, no reading the other. Put the wire back.',
  galena: 'Some tenths of a volt or less one way, no reading the other. Put the wire back.',
  mineral: 'Some tenths of a volt or less one way, no reading the other. Put the wire back.',
  valve: 'Some tenths of a volt or less one way, no reading the other. Put the wire back.',
  exponential: 'Some tenths of a volt or less one way, no reading the other. Put the wire back.',
  measured: 'Some tenths of a volt or less one way, no reading the other. Put the wire back.',
};

const offTheEars = 'Phones off your ears.';

/** How the earth's resistance is known. */
function earthText({
  earth,
  resistance,
  range,
}: Pick<BringUpFacts['aerial-and-earth'], 'earth' | 'resistance' | 'range'>): string {
  if (earth.kind === 'measured')
    return 'pipe' in earth
      ? `earth by a water pipe, ${ohms(resistance)} as a typical value ${ohmsBeside(resistance, range)}`
      : `earth ${ohms(resistance)} as measured`;
  const figure = `earth ${ohms(resistance)} ${ohmsBeside(resistance, range)}, calculated`;
  if (earth.kind === 'counterpoise') return figure;
  if (earth.soil !== 'as its resistivity' && earth.soil !== 'as the place')
    return `${figure} for ${optionName('earth.soil', earth.soil)}`;
  return earth.soil === 'as its resistivity' && earth.soilResistivity !== undefined
    ? `${figure} for soil of ${formatQuantity(earth.soilResistivity, 'resistivity', 2)}`
    : `${figure} for the usual soil over the ground of the place`;
}

/** " (12–40 mV)": the 90 % range of a voltage, where it is known. */
const within = (range: readonly [number, number] | undefined): string =>
  range ? ` (${spanText([Math.abs(range[0]), Math.abs(range[1])], 'voltage')})` : '';

function heardText({ station }: TuneIn): string {
  const name = `${printable(station.name)}, ${kHz(station.frequency)} kHz`;
  const beside = besideWords(station);
  if (station.verdict === 'masked') return `${name}: masked ${beside}.`;
  const [low, high] = (hasRanges(station) && station.ranges.soundPressureLevel) || [];
  const range = low === undefined || high === undefined ? '' : ` (90 % range ${levelSpan([low, high])} dB)`;
  const level = `about ${wholeDB(station.soundPressureLevel ?? 0)} dB SPL${range} at the ear`;
  const heard = `${name}: ${verdictWords[station.verdict]}, ${level}`;
  return beside ? `${heard}; ${beside}.` : `${heard}.`;
}

const readingRange = (range: readonly [number, number] | undefined, tag?: string): string | undefined =>
  range &&
  (tag
    ? `${tag} as built: ${Math.round(range[0])}° to ${Math.round(range[1])}°.`
    : `As built: ${Math.round(range[0])}° to ${Math.round(range[1])}°.`);

const notHeard = (loop: boolean): string =>
  loop
    ? 'Silent: detector first, then another direction. At another reading: see the faults below. Try again at dusk, when more stations come in.'
    : 'Silent: detector first, then aerial and earth. At another reading: see the faults below. Try again at dusk, when more stations come in.';

function acrossText(across: Across): string {
  switch (across.at) {
    case 'primary':
      return `${across.tag}’s primary`;
    case 'load resistor':
      return across.tag;
    case 'load':
      return `P1 and P2 (${outputNames[across.load]} connected)`;
  }
}
const meterRange = (voltage: number): string => (Math.abs(voltage) < 0.2 ? 'millivolts' : 'volts');
const onStation = ({ voltage, across }: DirectVoltage): string =>
  `Meter on ${meterRange(voltage)} across ${acrossText(across)}, that station tuned to its loudest.`;
const METER =
  'Sound but no voltage: the meter’s own resistance (it should be 1 MΩ or more). Tune for the highest voltage: that is the true tuning point.';
const SMALL = 'too small for an ordinary meter';

const edges = ([a, b]: readonly [number, number]): string => bandSpan(Math.min(a, b), Math.max(a, b));

const NO_END = 'No reading: an end not scraped, or a broken wire.';

/** The row of each step. */
const STEPS: { readonly [C in BringUpCode]: (figures: BringUpFacts[C]) => BringUpStep } = {
  'wiring-list': () => ({
    act: 'Go through the wiring list once more with a pencil, tugging every joint.',
    expect: 'Every wire ticked; nothing moves; no wire touches one that it does not belong to.',
    suspect: 'Ends not bared: enamel looks like copper.',
  }),
  'turn-switch': ({ band, tag }) => ({
    act: `Turn the band switch${tag ? `, ${tag},` : ''} to “${printable(band)}”.`,
    expect: `Its pointer is on “${printable(band)}”: what follows is for that band.`,
    suspect: 'Knob turned on its spindle, or ways counted from the wrong end.',
  }),
  'coil-resistance': ({ coil, tag, tapped, ...winding }) => ({
    act: tag
      ? `Meter on ohms, across ${tag}: coil “${printable(coil)}”, start to end.`
      : `Meter on ohms: coil “${printable(coil)}”, start to end.`,
    expect: joined(windingText(winding), tapped && 'Each tap lies in between.'),
    suspect: joined(NO_END, tapped && 'Far too low: an end swapped with a tap.'),
  }),
  'loop-resistance': ({ aerial, tag = 'it', ...winding }) => ({
    act:
      aerial === 'frame'
        ? `Meter on ohms across ${tag}: the frame, start to end.`
        : `Meter on ohms across ${tag}: the rod’s coil, start to end.`,
    expect: windingText(winding),
    suspect: NO_END,
  }),
  'transformer-resistance': ({ tag, primary, secondary }) => ({
    act: `Meter on ohms across each winding of ${tag}, and from one to the other.`,
    expect: `Primary about ${ohms(primary)}, secondary about ${ohms(secondary)}; between the two only what the wiring list connects.`,
    suspect: 'No reading: a broken winding. Primary and secondary swapped.',
  }),
  'capacitor-insulation': ({ tag, name, plates }) => ({
    act: `Take one wire off ${tag}, the ${name}. Meter on ohms across it, through its whole travel.`,
    expect: 'No reading anywhere. Put the wire back.',
    suspect: {
      vanes: 'Vanes that touch somewhere: look along them against the light.',
      sheets: 'Sheets that touch somewhere: look along them against the light.',
      tubes: 'Tubes that touch somewhere: look along them against the light.',
    }[plates],
  }),
  crystal: ({ tags, contact, resistance, metered, spot, worth }) => ({
    act: `Take one wire off ${each(tags)}. ${CONTACTS[contact]} Meter on ohms across it: try spots of the crystal until the two directions differ. ${faultCautionTexts['no-high-ohm-range']}`,
    expect: joined(
      'High one way, low the other. Keep that spot and put the wire back.',
      spotText(resistance, metered, spot),
    ),
    about: worth && crystalSpots(worth.spots, printable(worth.station)),
    suspect: contact === 'pair of crystals' ? `${WIPE}.` : `${WIPE}; bend the whisker’s tip fresh.`,
  }),
  heater: ({ voltage, reduced }) => ({
    act: `Heater only: ${formatQuantity(voltage, 'voltage')} from an isolated, fused supply. Wait half a minute.`,
    expect: reduced
      ? 'A dull red glow, dimmer than usual: the voltage is below the rating on purpose. The glass gets warm.'
      : 'A dull red glow at its rated brightness. The glass gets warm.',
    suspect: 'Dark: heater pins, socket, supply. Bright: too high a voltage, switch off.',
  }),
  diode: ({ tags, kind }) => ({
    act: `Take one wire off ${each(tags)}. Meter on its diode range across it; then the other way round.`,
    expect: FORWARD[kind],
    suspect:
      kind === 'germanium'
        ? 'The same both ways: a dead diode; heat from soldering destroys germanium (hold its lead with pliers).'
        : 'The same both ways: a dead diode.',
  }),
  'phones-click': ({ resistance, by, posts }) => ({
    act: joined(
      `${offTheEars} Touch their own plugs for an instant to a 1.5 V cell.`,
      posts ? 'Then connect them to P1 and P2.' : 'Then connect them to their terminals.',
    ),
    expect:
      by === 'resistance'
        ? `A clear click at make and break. Ohms across them, before they are connected: ${ohms(resistance)}, ± 20 %.`
        : `A clear click at make and break. Ohms across them, before they are connected: a little less than ${ohms(resistance)}.`,
    suspect: 'No click: cord, plug, or a broken winding.',
  }),
  'earpiece-click': ({ posts }) => ({
    act: joined(
      'Earpiece out of your ear. Touch its leads for an instant to a 1.5 V cell.',
      posts ? 'Then connect it to P1 and P2.' : 'Then connect it to its terminals.',
    ),
    expect: 'A faint click; ohms across it, before it is connected: no reading.',
    suspect: 'No click: a dead crystal. Damp and heat destroy them.',
  }),
  'amplifier-hum': () => ({
    act: 'Connect the amplifier’s lead to P1 and P2, the braid to P2. Switch it on with its volume right down; then a little up, and touch P1.',
    expect: 'A hum or click that grows with the volume.',
    suspect: 'Lead broken, or braid and inner wire swapped.',
  }),
  bias: ({ voltage, load }) => ({
    act: 'Set the bias, plus to the detector as in the wiring list.',
    expect: `${formatQuantity(voltage, 'voltage')} across it; a soft hiss in the ${outputNames[load]}.`,
    suspect: 'Cell the wrong way round: silence.',
  }),
  'aerial-and-earth': ({ capacitance, measuredAerial, ...facts }) => {
    const aerial = `aerial ${formatQuantity(capacitance, 'capacitance', 2)}`;
    const background =
      'Touching the aerial to its terminal changes the background noise. An ordinary meter shows neither figure:';
    return {
      act: 'Connect the earth, then the aerial. Not in a thunderstorm, nor when one may come.',
      expect: measuredAerial
        ? `${background} ${earthText(facts)}; ${aerial} as measured.`
        : `${background} ${earthText(facts)}; ${aerial}, calculated.`,
      suspect:
        facts.earth.kind === 'counterpoise'
          ? 'Counterpoise lying on the ground; lead-in broken under its covering; aerial lying on a wall.'
          : 'Earth clamp painted or rusty; lead-in broken under its covering; aerial lying on a wall.',
    };
  },
  'nothing-heard': ({ loop }) => ({
    act: 'Listen over the whole dial, by day and again after dark.',
    expect: 'None of the listed stations should be heard by day; at night others may come in by sky wave.',
    suspect:
      loop === undefined
        ? 'See what would help most: a longer aerial or a better earth first.'
        : loop === 'frame'
          ? 'See what would help most: a larger frame first.'
          : 'See what would help most: a larger rod first.',
  }),
  'tune-in': (facts) => ({
    act: `Set the pointer to ${facts.reading} and turn slowly about there.`,
    expect: joined(heardText(facts), readingRange(facts.range)),
    suspect: notHeard(facts.loop),
  }),
  'tune-in-two-circuits': ({ tag, mainTag, second, ...facts }) => ({
    act: `Set ${mainTag} to ${facts.reading} and ${tag} to ${second}. Turn ${mainTag}, the detector circuit’s, slowly about there; then ${tag}, the aerial circuit’s; then ${mainTag} again. Move the coils apart until neighbouring stations go, and tune both once more.`,
    expect: joined(heardText(facts), readingRange(facts.range, mainTag)),
    suspect: notHeard(facts.loop),
  }),
  'aerial-circuit-peak': ({ tag, mainTag, second, plates, coil }) => ({
    act: `Leave ${mainTag} there and move ${tag} through its whole travel.`,
    expect: `One place, near ${second}, where the station is loudest; weaker on either side.`,
    suspect: `The same everywhere: ${tag} not connected or its ${plates} short-circuited; coil “${printable(coil)}” open; coils so close that the two circuits act as one.`,
  }),
  'turn-loop': ({ aerial }) => ({
    act: aerial === 'frame' ? 'Turn the frame about its upright.' : 'Turn the rod, keeping it level.',
    expect:
      aerial === 'frame'
        ? 'Loudest when its edge points to the transmitter; nearly silent twice in a turn.'
        : 'Loudest when the rod lies at right angles to the direction of the transmitter; nearly silent twice in a turn.',
    suspect: 'No minimum: house wiring carries the signal; try another room.',
  }),
  'direct-voltage': ({ range, ...facts }) => ({
    act: onStation(facts),
    expect: `${V(facts.voltage)} direct${within(range)}; with no station tuned in, almost nothing.`,
    suspect: METER,
  }),
  'direct-voltage-small': (facts) => ({
    act: onStation(facts),
    expect: `${V(facts.voltage)}, ${SMALL}: skip this step.`,
    suspect: 'Go by ear.',
  }),
  'standing-voltage': ({ voltage, across, standing, from, change, isMetered, changeRange }) => {
    const direction = change * standing < 0 ? 'less' : 'more';
    const source = from === 'cathode' ? 'the hot cathode' : 'the bias';
    return {
      act: `Meter on ${meterRange(voltage)} across ${acrossText(across)}: first with the pointer off every station, then with that station tuned to its loudest.`,
      expect: isMetered
        ? `About ${V(standing)} with no station, from ${source}. With the station ${V(voltage)}, that is ${V(change)} ${direction}${within(changeRange)}.`
        : `About ${V(standing)} with no station, from ${source}. With the station ${V(voltage)}, a change of ${V(change)}, ${SMALL}.`,
      suspect:
        from === 'cathode'
          ? `${METER} Nothing at all, even without a station: a cold heater, or the meter.`
          : `${METER} Nothing at all, even without a station: a flat cell, or the meter.`,
    };
  },
  'ends-of-dial': ({ low, high, capacitor, aerialWire }) => ({
    act: 'Turn from end to end and note where the first and last stations come in.',
    expect: `Low end ${edges(low)}, high end ${edges(high)}.`,
    suspect: joined(
      capacitor ? 'Low end too high: too few turns or too small a capacitor.' : 'Low end too high: too few turns.',
      aerialWire
        ? 'High end too low: stray capacitance; move wires apart, reduce the aerial’s capacitance.'
        : 'High end too low: stray capacitance; move wires apart.',
    ),
  }),
};

/** The row of a step. */
export const bringUpStep = (fact: BringUpFact): BringUpStep =>
  // The compiler cannot follow that the entry under a fact's own code takes that fact.
  (STEPS as unknown as Record<string, (figures: BringUpFact) => BringUpStep>)[fact.code](fact);
