import type { PartRole } from '../../../engine/built/identity.ts';
import { setCircuit } from '../../../engine/built/set-circuit.ts';
import { isLoop } from '../../../engine/kinds/loops.ts';
import { receiver } from '../../../engine/reception/path/receive-station.ts';
import type { Reception, StationReception } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { capital, formatNumber, formatQuantity } from '../../../engine/units/format.ts';
import { tapsOf } from '../../drawings/coil/coil.ts';
import { besideWords, verdictWords } from '../../words/index.ts';
import { type BoardPart, boardParts } from '../board/parts.ts';
import { type AerialDial, aerialDial } from './aerial-dial.ts';
import { heardBest, OUT_WORDS } from './best.ts';
import { detectorSteps } from './detector-steps.ts';
import { dialText } from './dial-text.ts';
import { leadsMatter, metered, meterVolts, voltRange, volts, windingOhms } from './meter-words.ts';
import type { Step } from './step.ts';
import { kHz, ohms, printable } from './words.ts';

/** What may touch where it should not, in a capacitor that is moved. */
export const platesOf = ({ tuning }: Pick<BoardPart, 'tuning'>): string =>
  tuning?.kind === 'foil' || tuning?.kind === 'book' ? 'sheets' : tuning?.kind === 'tubes' ? 'tubes' : 'vanes';

/** Direct voltage that stands with no station at all: a bias or a hot cathode sends it. */
export const standingVoltage = (set: SetDescription): number => receiver(setCircuit(set)).standing;

/** Whether what stands without a station is worth telling from what a station adds. */
export const standsAlone = (standing: number, direct: number): boolean =>
  metered(standing) && Math.abs(standing) > 0.02 * Math.abs(direct);

/** From the wired board to the first station, in the order in which a builder does it. */
export function bringUpSteps(set: SetDescription, reception: Reception): Step[] {
  const { parts } = boardParts(set);
  return [
    {
      act: 'Go through the wiring list once more with a pencil, tugging every joint.',
      expect: 'Every wire ticked; nothing moves; no wire touches one that it does not belong to.',
      suspect: 'Ends not bared: enamel looks like copper.',
    },
    ...windingSteps(set, reception, parts),
    ...variableSteps(parts),
    ...detectorSteps(
      set,
      reception,
      parts.filter((p) => p.kind === 'detector').map((p) => p.tag),
    ),
    ...loadSteps(set, parts),
    ...biasSteps(set),
    ...aerialSteps(set, reception, parts),
    ...stationSteps(set, reception, parts),
  ];
}

function windingSteps(set: SetDescription, reception: Reception, parts: readonly BoardPart[]): Step[] {
  const steps: Step[] = [];
  let told = false;
  const figure = (r: number): string => {
    const words = windingOhms(r, told);
    told ||= leadsMatter(r);
    return words;
  };
  set.coils.forEach((coil, i) => {
    const R = reception.parts.coils[i]?.dcResistance;
    if (R === undefined || !Number.isFinite(R) || !(R > 0)) return;
    const tag = parts.find((p) => p.coil === coil)?.tag;
    const taps = tapsOf(set, i).length > 0;
    steps.push({
      act: `Meter on ohms${tag ? `, across ${tag}` : ''}: coil “${printable(coil.name)}”, start to end.`,
      expect: `${figure(R)}${taps ? ' Each tap lies in between.' : ''}`,
      suspect: `Open: an end not scraped, or a broken wire.${taps ? ' Far too little: an end swapped with a tap.' : ''}`,
    });
  });
  const { loop } = setCircuit(set);
  if (loop && loop.dcResistance > 0)
    steps.push({
      act: `Meter on ohms across ${parts.find((p) => p.kind === 'loop')?.tag ?? 'it'}: the ${set.aerial.kind === 'frame' ? 'frame' : 'rod’s coil'}, start to end.`,
      expect: figure(loop.dcResistance),
      suspect: 'Open: an end not scraped, or a broken wire.',
    });
  const { transformer } = set.load;
  const tag = parts.find((p) => p.kind === 'transformer')?.tag;
  if (transformer && tag)
    steps.push({
      act: `Meter on ohms across each winding of ${tag}, and from one to the other.`,
      expect: `Primary about ${ohms(transformer.primaryResistance)}, secondary about ${ohms(transformer.secondaryResistance)}; between the two as the wiring list joins them, else nothing.`,
      suspect: 'Open: a broken winding. Primary and secondary swapped.',
    });
  return steps;
}

const variableSteps = (parts: readonly BoardPart[]): Step[] =>
  parts
    .filter((p) => p.kind === 'variable')
    .map((part) => ({
      act: `Take one wire off ${part.tag}, the ${part.words}. Ohms across it, through its whole travel.`,
      expect: 'Nothing at all, anywhere. Put the wire back.',
      suspect: `${capital(platesOf(part))} touching at some place: look along them against the light.`,
    }));

function loadSteps(set: SetDescription, parts: readonly BoardPart[]): Step[] {
  const { load } = set;
  const join = (what: string): string =>
    ` Then join ${what} to ${parts.find((p) => p.kind === 'outputs') ? 'P1 and P2' : 'their terminals'}.`;
  switch (load.kind) {
    case 'phones':
    case 'moving-coil phones':
      return [
        {
          act: `Touch the phones’ own plugs for an instant to a 1.5 V cell.${join('them')}`,
          expect: `A clear click at make and break. Ohms across them, before they are joined: ${load.kind === 'phones' ? `${ohms(load.resistance)}, ± 20 %` : `a little less than ${ohms(load.impedance)}`}.`,
          suspect: 'No click: cord, plug, or a broken winding.',
        },
      ];
    case 'crystal earpiece':
      return [
        {
          act: `Touch the earpiece to a 1.5 V cell.${join('it')}`,
          expect: 'A faint click; ohms across it, before it is joined: none that a meter shows.',
          suspect: 'No click: a dead crystal. Damp and heat kill them.',
        },
      ];
    case 'amplifier':
      return [
        {
          act: 'Join the amplifier’s lead to P1 and P2, the braid to P2. Switch it on with its volume right down; then a little up, and touch P1.',
          expect: 'A hum or click that grows with the volume.',
          suspect: 'Lead broken, or braid and live swapped.',
        },
      ];
  }
}

/** A bias cell is part of a single detector only. */
const biasSteps = ({ detector, load }: SetDescription): Step[] =>
  detector.wiring === 'single' && detector.bias !== undefined && detector.bias !== 0
    ? [
        {
          act: 'Set the bias, plus to the detector as the list has it.',
          expect: `${formatQuantity(detector.bias, 'voltage')} across it; a soft rush in the ${OUT_WORDS[load.kind]}.`,
          suspect: 'Cell the wrong way round: silence.',
        },
      ]
    : [];

function aerialSteps(set: SetDescription, reception: Reception, parts: readonly BoardPart[]): Step[] {
  if (!parts.some((p) => p.kind === 'aerial terminal')) return [];
  const { earth, aerial } = reception.parts;
  const given = set.earth.kind === 'measured';
  const ground = soilWords(set.earth);
  const known = set.aerial.kind === 'measured' || set.aerial.kind === 'impedance';
  return [
    {
      act: 'Join the earth, then the aerial. Not in thunder, nor when it may come.',
      expect: `Touching the aerial to its terminal changes the background. Not for a meter, which shows neither: earth ${ohms(earth.resistance)}${given ? ' as given' : ` (${ohms(earth.range[0])} to ${ohms(earth.range[1])}) as reckoned${ground}`}; aerial ${formatQuantity(aerial.capacitance, 'capacitance', 2)} as ${known ? 'given' : 'reckoned'}.`,
      suspect: `${set.earth.kind === 'counterpoise' ? 'Counterpoise lying on the ground' : 'Earth clamp painted or rusty'}; lead-in broken under its covering; aerial lying on a wall.`,
    },
  ];
}

/** What the earth was reckoned in; nothing where it stands in no soil. */
function soilWords(earth: SetDescription['earth']): string {
  if (earth.kind === 'measured' || earth.kind === 'counterpoise') return '';
  return earth.soil === 'as its resistivity'
    ? ` in soil of ${formatQuantity(earth.soilResistivity, 'resistivity', 2)}`
    : ` in ${earth.soil}`;
}

function stationSteps(set: SetDescription, reception: Reception, parts: readonly BoardPart[]): Step[] {
  const best = heardBest(reception);
  if (!best)
    return [
      {
        act: 'Listen over the whole dial, by day and again after dark.',
        expect: 'Nothing that the list has would be heard; at night what the sky brings may be.',
        suspect: `See what would help most: ${isLoop(set.aerial) ? `a larger ${set.aerial.kind === 'frame' ? 'frame' : 'rod'} first` : 'a longer aerial or a better earth first'}.`,
      },
    ];
  const second = aerialDial(set);
  return [
    tuningStep(set, best, second),
    ...(second ? [secondStep(set, best, second, parts)] : []),
    ...turningSteps(set),
    ...voltageSteps(set, best, parts),
    {
      act: 'Turn from end to end and note where the first and last stations come in.',
      expect: `Low end ${span(reception.dial.lowestRange)} kHz, high end ${span(reception.dial.highestRange)} kHz.`,
      suspect: `Low end too high: too few turns${parts.some((p) => p.kind === 'variable') ? ' or too small a capacitor' : ''}. High end too low: strays; move wires apart${isLoop(set.aerial) ? '' : ', shorten the aerial’s part'}.`,
    },
  ];
}

function tuningStep(set: SetDescription, best: StationReception, second: AerialDial | undefined): Step {
  const [low, high] = best.dial!.range;
  const at = dialText(set, best);
  const inDegrees =
    set.arrangement.kind !== 'slider' &&
    set.arrangement.kind !== 'variometer' &&
    set.tuning.kind !== 'foil' &&
    set.tuning.kind !== 'tubes';
  const built = inDegrees && high > low ? ` As built anywhere from ${Math.round(low)}° to ${Math.round(high)}°.` : '';
  const { verdict } = best;
  const beside = besideWords(best);
  const level = `about ${Math.round(best.soundPressureLevel ?? 0)} dB ± ${Math.round(best.spread)} at the ear`;
  const heard =
    verdict === 'masked'
      ? `masked ${printable(beside)}.`
      : `${verdictWords[verdict]}, ${level}.${beside ? ` ${printable(capital(beside))}.` : ''}`;
  return {
    act: second
      ? `Set ${second.mainTag} to ${at} and ${second.tag} to ${second.textOf(best)}. Turn ${second.mainTag}, the detector’s, slowly about there; then ${second.tag}, the aerial’s; then ${second.mainTag} again. Part the coils until neighbours go, and tune both once more.`
      : `Set the pointer to ${at} and turn slowly about there.`,
    expect: `${printable(best.name)}, ${kHz(best.frequency)} kHz: ${heard}${built && second ? built.replace(' As built', ` ${second.mainTag} as built`) : built}`,
    suspect: `Silent: detector first, then ${isLoop(set.aerial) ? 'another direction' : 'aerial and earth'}. Elsewhere on the dial: see below. Try again at dusk, when more comes in.`,
  };
}

function secondStep(
  set: SetDescription,
  best: StationReception,
  { tag, mainTag, textOf }: AerialDial,
  parts: readonly BoardPart[],
): Step {
  const own = parts.find((p) => p.tag === tag);
  const coil = set.arrangement.kind === 'two circuits' ? printable(set.arrangement.aerialCoil) : 'aerial';
  return {
    act: `Leave ${mainTag} there and move ${tag} through its whole travel.`,
    expect: `One place, near ${textOf(best)}, where it is loudest; fainter on either side.`,
    suspect: `The same everywhere: ${tag} not joined or its ${own ? platesOf(own) : 'vanes'} short-circuited; coil “${coil}” open; coils so close that the two circuits are one.`,
  };
}

const turningSteps = ({ aerial }: SetDescription): Step[] =>
  isLoop(aerial)
    ? [
        {
          act: aerial.kind === 'frame' ? 'Turn the frame about its upright.' : 'Turn the rod, lying level.',
          expect:
            aerial.kind === 'frame'
              ? 'Loudest when its edge points to the transmitter; twice in a turn nearly nothing.'
              : 'Loudest when it lies across the way to the transmitter; twice in a turn nearly nothing.',
          suspect: 'No faint place: wires of the house carry the signal; try another room.',
        },
      ]
    : [];

function voltageSteps(set: SetDescription, best: StationReception, parts: readonly BoardPart[]): Step[] {
  const direct = best.directVoltage;
  if (!(Math.abs(direct) > 1e-6)) return [];
  const { load } = set;
  const tagOf = (role: PartRole): string | undefined => parts.find((p) => p.role === role)?.tag;
  const primary = tagOf('transformer');
  // A coupling capacitor keeps direct voltage from the terminals, and so does a transformer: it stands before them.
  const across =
    (primary && `${primary}’s primary`) ??
    (tagOf('coupling-capacitor') && tagOf('load-resistor')) ??
    `P1 and P2 (${OUT_WORDS[load.kind]} in place)`;
  const suspect =
    'Sound but no voltage: the meter’s own resistance (it should be 1 MΩ and up). Turn for the most volts: that is the true tuning point.';
  const range = Math.abs(direct) < 0.2 ? 'millivolts' : 'volts';
  const standing = standingVoltage(set);
  const rise = direct - standing;
  if (standsAlone(standing, direct))
    return [
      {
        act: `Meter on ${range} across ${across}: first with the pointer off every station, then with that station tuned to its loudest.`,
        expect: `About ${volts(standing)} with no station: ${set.detector.kind === 'valve' ? 'the hot cathode' : 'the bias'} sends that. With the station ${volts(direct)}, that is ${metered(rise) ? `${volts(rise)} ${rise * standing < 0 ? 'less' : 'more'} (${voltRange(rise, best.spread)})` : `a change of ${meterVolts(rise)}`}.`,
        suspect: `${suspect} Nothing at all, even without a station: ${set.detector.kind === 'valve' ? 'a cold heater' : 'a flat cell'}, or the meter.`,
      },
    ];
  return [
    {
      act: `Meter on ${range} across ${across}, that station tuned to its loudest.`,
      expect: metered(direct)
        ? `${volts(direct)} direct (${voltRange(direct, best.spread)}); off the station, next to nothing.`
        : `${capital(meterVolts(direct))}: pass this step over.`,
      suspect: metered(direct) ? suspect : 'Trust the ear.',
    },
  ];
}

const span = (r: readonly [number, number]): string =>
  `${formatNumber(Math.round(Math.min(...r) / 1e3), 5)}–${formatNumber(Math.round(Math.max(...r) / 1e3), 5)}`;
