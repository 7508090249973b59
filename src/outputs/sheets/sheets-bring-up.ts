import { setCircuit } from '../../engine/circuit/set-circuit.ts';
import { spotsWords, spotsWorth } from '../../engine/reception/spots.ts';
import type { Reception } from '../../engine/reception/types.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import { isLoop } from '../../engine/set/loops.ts';
import { formatNumber, formatQuantity } from '../../engine/units/format.ts';
import { tapsOf } from '../drawings/coil/coil.ts';
import { boardParts } from './build/parts.ts';
import { dialText } from './dial-text.ts';
import { Flow } from './flow.ts';
import type { PaperName, Sheet } from './page.ts';
import { ohms, printable } from './words.ts';

interface Step {
  readonly act: string;
  readonly expect: string;
  readonly suspect: string;
}

const volts = (v: number, digits = 2): string => formatQuantity(Math.abs(v), 'voltage', digits);

/** Step by step from the wired board to the first station, with this set's own figures. */
export function bringUpSheet(set: SetDescription, reception: Reception, paper: PaperName): Sheet {
  const flow = new Flow({ id: 'bring-up', title: 'Bringing it up', set: set.name, paper });
  const outdoors = !isLoop(set.aerial);
  flow.para(
    `In this order, each step before the next.${outdoors ? ' Aerial and earth stay off until a step asks for them.' : ''} Figures are for this very set; the ranges are what honest parts and hands may give.`,
  );
  flow.table(
    [
      { title: '✓', share: 0.4 },
      { title: 'Do', share: 4 },
      { title: 'Expect', share: 4 },
      { title: 'If not, suspect', share: 3.6 },
    ],
    bringUpSteps(set, reception).map((s, i) => ['', `${i + 1}. ${s.act}`, s.expect, s.suspect]),
  );
  const list = reception.stations.filter((s) => s.dial && s.heard !== 'not heard').sort((a, b) => b.margin - a.margin);
  if (list.length > 1) {
    flow.heading('Then the others, strongest first');
    flow.table(
      [
        { title: 'Station', share: 4 },
        { title: 'kHz', share: 1.2, anchor: 'end' },
        { title: 'Dial', share: 1.2, anchor: 'end' },
        { title: 'Heard', share: 2 },
        { title: 'Direct voltage', share: 2, anchor: 'end' },
        { title: 'Mine: dial', share: 1.8 },
        { title: 'Mine: mV', share: 1.8 },
      ],
      list
        .slice(0, 20)
        .map((s) => [
          s.name,
          formatNumber(s.frequency / 1e3, 5),
          dialText(set, s),
          s.heard,
          volts(s.directVoltage),
          '………',
          '………',
        ]),
    );
  }
  flow.heading('When it is silent, or not as it should be');
  flow.table(
    [
      { title: 'What', share: 3 },
      { title: 'Look for, in this order', share: 8 },
    ],
    faults(set),
  );
  return flow.finish('Bringing the set up step by step, with expected values.');
}

/** A level that may be so many dB out, as a range of volts. */
const range = (v: number, spread: number): string => {
  const factor = 10 ** (Math.min(Math.abs(spread), 20) / 20);
  return `${volts(v / factor)} to ${volts(v * factor)}`;
};

export function bringUpSteps(set: SetDescription, reception: Reception): Step[] {
  const steps: Step[] = [];
  const add = (act: string, expect: string, suspect: string): void => {
    steps.push({ act, expect, suspect });
  };
  const { parts } = boardParts(set);
  const figures = reception.parts;
  const { loop } = setCircuit(set);
  add(
    'Go through the wiring list once more with a pencil, tugging every joint.',
    'Every wire ticked; nothing moves; no wire touches one that it does not belong to.',
    'Ends not bared: enamel looks like copper.',
  );
  set.coils.forEach((coil, i) => {
    const R = figures.coils[i]?.dcResistance;
    const tag = parts.find((p) => p.coil === coil)?.tag;
    if (R !== undefined && Number.isFinite(R) && R > 0)
      add(
        `Meter on ohms${tag ? `, across ${tag}` : ''}: coil “${printable(coil.name)}”, start to end.`,
        `${ohms(R)} (${ohms(R * 0.85)} to ${ohms(R * 1.2)}), and the meter’s own leads${tapsOf(set, i).length > 0 ? '; each tap in between' : ''}.`,
        'Open: an end not scraped, or a broken wire. Far too little: start and end swapped with a tap.',
      );
  });
  if (loop && loop.dcResistance > 0)
    add(
      `Meter on ohms across L1: the ${set.aerial.kind === 'frame' ? 'frame' : 'rod’s coil'}, start to end.`,
      `${ohms(loop.dcResistance)} (${ohms(loop.dcResistance * 0.85)} to ${ohms(loop.dcResistance * 1.2)}), and the meter’s own leads.`,
      'Open: an end not scraped, or a broken wire.',
    );
  const variable = parts.find((p) => p.kind === 'variable');
  if (variable)
    add(
      `Take one wire off ${variable.tag}. Ohms across it, through its whole travel.`,
      'Nothing at all, anywhere. Put the wire back.',
      'Vanes or foils touching at some place: look along them against the light.',
    );
  const load = set.load;
  if (load.kind === 'phones' || load.kind === 'moving-coil phones') {
    add(
      'Touch the phones for an instant to a 1.5 V cell.',
      `A clear click at make and break. Ohms across them: ${ohms(figures.load.directResistance)}${load.transformer ? ' (through the transformer’s primary)' : ''}, ± 20 %.`,
      'No click: cord, plug, or a broken winding.',
    );
  } else if (load.kind === 'crystal earpiece')
    add(
      'Touch the earpiece to a 1.5 V cell.',
      'A faint click; ohms across it: none that a meter shows.',
      'No click: a dead crystal. Damp and heat kill them.',
    );
  else
    add(
      'Switch the amplifier on, its volume right down; then a little up, and touch P1.',
      'A hum or click that grows with the volume.',
      'Lead broken, or braid and live swapped (P2 is the braid).',
    );
  detectorSteps(set, figures, spotsHere(set, reception), add);
  if (parts.some((p) => p.kind === 'aerial terminal')) {
    const { earth } = figures;
    add(
      'Join the earth, then the aerial. Not in thunder, nor when it may come.',
      `Earth ${ohms(earth.resistance)} (${ohms(earth.range[0])} to ${ohms(earth.range[1])}); aerial ${formatQuantity(figures.aerial.capacitance, 'capacitance', 2)}. Touching the aerial terminal with aerial off and on changes the background.`,
      'Earth clamp painted or rusty; lead-in broken under its covering; aerial lying on a wall.',
    );
  }
  const best = reception.best.map((i) => reception.stations[i]).find((s) => s?.dial && s.heard !== 'not heard');
  if (best?.dial) {
    const byScale =
      set.arrangement.kind !== 'slider' &&
      set.arrangement.kind !== 'variometer' &&
      set.tuning.kind !== 'foil' &&
      set.tuning.kind !== 'tubes';
    const [low, high] = best.dial.range;
    add(
      `Set the pointer to ${dialText(set, best)} and turn slowly about there.`,
      `${printable(best.name)}, ${formatNumber(best.frequency / 1e3, 5)} kHz: ${best.heard}, about ${Math.round(best.soundPressureLevel)} dB ± ${Math.round(best.spread)} at the ear.${byScale && high > low ? ` As built anywhere from ${Math.round(low)}° to ${Math.round(high)}°.` : ''} ${best.disturbance ? `Behind it perhaps ${printable(best.disturbance.by)}.` : ''}`.trim(),
      `Silent: detector first, then ${loop ? 'another direction' : 'aerial and earth'}. Elsewhere on the dial: see below. Try again at dusk, when more comes in.`,
    );
    if (loop)
      add(
        set.aerial.kind === 'frame' ? 'Turn the frame about its upright.' : 'Turn the rod, lying level.',
        set.aerial.kind === 'frame'
          ? 'Loudest when its edge points to the transmitter; twice in a turn nearly nothing.'
          : 'Loudest when it lies across the way to the transmitter; twice in a turn nearly nothing.',
        'No null: wires of the house carry the signal; try another room.',
      );
    if (Math.abs(best.directVoltage) > 1e-6) {
      // A coupling capacitor keeps direct voltage from the terminals; it stands across the detector's own load.
      const across = parts.some((p) => p.key === 'phones coupling capacitor')
        ? parts.find((p) => p.key === 'phones load resistor')?.tag
        : undefined;
      add(
        `Meter on millivolts across ${across ?? `P1 and P2 (${load.kind === 'amplifier' ? 'amplifier' : load.kind === 'crystal earpiece' ? 'earpiece' : 'phones'} in place)`}, that station tuned to its loudest.`,
        `${volts(best.directVoltage)} direct (${range(best.directVoltage, best.spread)}); off the station, next to nothing.`,
        `Sound but no voltage: the meter’s own resistance (it should be 1 MΩ and up)${load.transformer ? ', or the transformer’s winding joins P1 and P2 for direct current' : ''}. Turn for the most volts: that is the true tuning point.`,
      );
    }
    add(
      'Turn from end to end and note where the first and last stations come in.',
      `Low end ${span(reception.dial.lowestRange)} kHz, high end ${span(reception.dial.highestRange)} kHz.`,
      `Low end too high: too few turns or too small a capacitor. High end too low: strays; move wires apart${loop ? '' : ', shorten the aerial’s part'}.`,
    );
  } else
    add(
      'Listen over the whole dial, by day and again after dark.',
      'Nothing that the list has would be heard; at night what the sky brings may be.',
      'See what would help most: a longer aerial or a better earth first.',
    );
  return steps;
}

const span = (r: readonly [number, number]): string =>
  `${formatNumber(Math.round(Math.min(...r) / 1e3), 5)}–${formatNumber(Math.round(Math.max(...r) / 1e3), 5)}`;

/** What a good spot of the crystal is worth on the station heard best; nothing for other detectors. */
function spotsHere(set: SetDescription, reception: Reception): string {
  const best = reception.stations[reception.best[0] ?? -1];
  if (set.detector.kind !== 'galena' || !best) return '';
  return ` ${spotsWords(spotsWorth(set, best.index), printable(best.name))}`;
}

function detectorSteps(
  set: SetDescription,
  figures: Reception['parts'],
  spots: string,
  add: (a: string, b: string, c: string) => void,
): void {
  const zero = figures.detector.zeroBiasResistance;
  const { detector } = set;
  switch (detector.kind) {
    case 'galena':
    case 'mineral':
      add(
        'Set the whisker on the crystal, lightly: its own weight and a little. With a meter on ohms across it, try spots until the two directions differ.',
        `One way much less than the other. A good spot is about ${ohms(zero)} to very small voltages. Keep that spot.${spots}`,
        'The same both ways: pressed too hard, or a dead spot. Wipe the crystal with spirit, never with fingers; bend the whisker’s tip fresh.',
      );
      break;
    case 'valve':
      add(
        `Heater only: ${formatQuantity(detector.heaterVoltage, 'voltage')} from an isolated, fused supply. Wait half a minute.`,
        `A dull red glow; the glass warm; ${detector.heaterVoltage < detector.ratedHeaterVoltage * 0.97 ? 'less than its rating on purpose: dimmer than usual' : 'its rated brightness'}.`,
        'Dark: heater pins, socket, supply. Bright: too many volts, switch off.',
      );
      break;
    default:
      add(
        'Meter on its diode range across the detector, one wire off; then the other way round.',
        detector.kind === 'germanium'
          ? '0.2 to 0.4 V one way, nothing the other. Put the wire back.'
          : detector.kind === 'silicon'
            ? '0.5 to 0.7 V one way, nothing the other. Put the wire back.'
            : '0.1 to 0.4 V one way, nothing the other. Put the wire back.',
        'Both ways alike: a dead diode; heat from soldering kills germanium (hold its lead with pliers).',
      );
  }
  if (detector.bias !== undefined && detector.bias !== 0)
    add(
      'Set the bias, plus to the detector as the list has it.',
      `${formatQuantity(detector.bias, 'voltage')} across it; a soft rush in the phones.`,
      'Cell the wrong way round: silence.',
    );
}

function faults(set: SetDescription): string[][] {
  const tuned = set.arrangement.kind !== 'slider' && set.arrangement.kind !== 'variometer';
  return [
    [
      'Dead silence, no click when a wire is moved',
      'phones and cord; P1 and P2 joined; by-pass capacitor short-circuited; detector open.',
    ],
    [
      'Clicks, but no station',
      `detector (${set.detector.kind === 'galena' || set.detector.kind === 'mineral' ? 'find another spot, try a diode' : 'try another'}); ${isLoop(set.aerial) ? '' : 'aerial or earth off; '}coil open; taps counted from the wrong end.`,
    ],
    [
      'One station everywhere on the dial',
      `${tuned ? 'capacitor not joined, or its vanes short-circuited; ' : ''}${isLoop(set.aerial) ? 'turn the aerial until that station is least' : 'aerial on too many turns: move it towards the start; a trap for that station'}.`,
    ],
    [
      'Stations come at lower readings than they should',
      'coil too large: take off turns, one at a time; or strays larger than reckoned.',
    ],
    ['Stations come at higher readings', 'coil too small, or turns short-circuited; capacitor smaller than marked.'],
    ['Broad and faint together', 'damp former, bad joint, detector too far up the coil: try a lower tap.'],
    [
      'Hum under everything',
      `${isLoop(set.aerial) ? 'mains wires or a lamp’s supply near by: turn it' : 'mains wires beside the lead-in; earth on the wrong thing'}${set.load.kind === 'amplifier' ? '; the amplifier’s supply' : ''}.`,
    ],
    ['It fades and comes back', 'by night that is the sky’s doing; by day a loose joint or the whisker.'],
  ];
}
