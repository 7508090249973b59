import type { ImpedanceAt } from '../../../../engine/measure/sound-card/impedance-sweep.ts';
import type { CardFault } from '../../../../engine/measure/sound-card/tone-readings.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import { axisHertz } from '../../figures.ts';

/** The three recordings that settle an impedance. */
type CardState = 'open' | 'known' | 'device';

const shortOhms = (ohms: number): string =>
  ohms >= 1e6
    ? `${formatNumber(ohms / 1e6, 2)}M`
    : ohms >= 1000
      ? `${formatNumber(ohms / 1000, 2)}k`
      : formatNumber(ohms, 2);

/** The plot of an impedance measured over frequency. */
export const impedanceSweepWords = {
  title: 'Impedance over frequency',
  calculated: 'as calculated',
  differences: 'measured less calculated',
  frequency: axisHertz,
  ohms: shortOhms,
  at: ({ frequency, magnitude, phase }: ImpedanceAt): string =>
    `${formatQuantity(frequency, 'frequency', 4)}: ${formatQuantity(magnitude.value, 'resistance')}, ${formatNumber(phase.value, 3)}°`,
  text: (measured: readonly ImpedanceAt[], hasCalculated: boolean): string => {
    const [first, last] = [measured[0], measured[measured.length - 1]];
    const ends = [first, last].map(impedanceSweepWords.at).join('; ');
    const line = hasCalculated ? ' The line is the calculated impedance.' : '';
    return `Measured at ${measured.length} frequencies, the bars are 90 % ranges. ${ends}.${line}`;
  },
  /** A row for each frequency, with the ends of the 90 % ranges. */
  csv: (measured: readonly ImpedanceAt[]): string =>
    [
      'frequency [Hz],impedance [Ω],low [Ω],high [Ω],phase [°],low [°],high [°]',
      ...measured.map(({ frequency, magnitude, phase }) =>
        [frequency, magnitude.value, ...magnitude.range, phase.value, ...phase.range]
          .map((one) => Number(one.toPrecision(5)))
          .join(','),
      ),
      '',
    ].join('\n'),
} as const;

/** Measuring with the computer's own sound card. */
export const soundCardWords = {
  title: 'With this computer’s sound card',
  privacy: 'The browser asks for permission to record. Nothing leaves this computer.',
  aloud:
    'Tones are played for 12 seconds each time: take the phones off your ears, turn loudspeakers off, and begin with a low level.',
  lineInput:
    'Use a line input. Use the computer’s line or phones output; connect no amplifier’s loudspeaker output and no valve stage to the input. In the settings of the system turn off automatic gain, noise reduction and “enhancements”.',
  inputs: 'Inputs',
  inputChoice: {
    two: 'two: left (B) across what is measured, right (A) at the output',
    one: 'one: B, across what is measured',
  },
  level: 'Level of the tones',
  levelValue: (share: number): string => `${formatNumber(share * 100, 2)} % of full scale`,
  states: {
    open: 'Record with nothing connected',
    known: 'Record with the known resistor',
    device: 'Record with the phones or transformer',
  } satisfies Record<CardState, string>,
  recorded: {
    open: 'nothing connected: recorded',
    known: 'known resistor: recorded',
    device: 'phones or transformer: recorded',
  } satisfies Record<CardState, string>,
  openFirst:
    'Record with nothing connected first: with one input its delay and level serve for all three. Then leave the level of the tones and the gain of the input as they are; another level begins anew.',
  oneInputOnly:
    'Left and right came in the same: this input has one channel. “Inputs” is now at one: connect B across what is measured, and record with nothing connected again.',
  opening: 'Waiting for the sound input…',
  recording: (seconds: number): string => `Recording, ${Math.ceil(seconds)} seconds…`,
  working: 'Working it out…',
  stop: 'Stop',
  faults: {
    'no-signal': 'The tones did not come in: check the leads, the input that is chosen and its level.',
    'delay-moved':
      'The delay is not that of the recording with nothing connected: record all three again, or use two inputs.',
    clipped: 'The input clips: turn the level of the tones or of the input down, and record again.',
    distorted: 'The third harmonic is above −60 dB: turn the level down, or processing is on in the system.',
  } satisfies Record<CardFault, string>,
  resistorNeeded: 'Write the known resistor into the field below.',
  tooAlike: 'The three recordings differ too little for an impedance: check what was connected.',
  again: 'Work it out again with the fields below',
  done: (ohms: number): string =>
    `Impedance at 1 kHz: ${formatQuantity(ohms, 'resistance')}. The readings at 1 kHz are in the fields below.`,
  save: 'Save the impedance as CSV',
  fileName: 'impedance',
  ringing: 'Record a ringing',
  ringingTrap: 'Turn loudspeakers off and take phones off your ears: edges are clicks.',
  ringingHow: [
    'Connect a known film capacitor across the coil so that it rings below 20 kHz: 0.5 to 1 µF with 200 µH, 50 to 100 nF with 2 mH.',
    'Output through 1 kΩ to the top of the coil, the top to the left line input.',
    'Edges by hand: a 1.5 V cell through at least 1 kΩ and a switch, never the cell directly: the coil can then give a hundred volts as the switch opens.',
  ],
  edges: 'Play ten edges a second',
  ringingButton: 'Record two seconds',
  ringingSource: 'the sound card',
  ringingSilent: 'Nothing but silence came in: check the leads and the input that is chosen.',
  problems: {
    noAccess: 'The browser gives no sound input here: open the page from a server or with https, not from a disk.',
    refused: 'Recording was not permitted: allow the microphone or line input for this page in the browser.',
    noInput: 'There is no sound input on this computer.',
    busy: 'The sound input cannot be opened: close what else uses it, and record again.',
    unplugged: 'The sound input went away: plug it in, and record again.',
    interrupted: 'The recording was interrupted: close what else is busy, and record again.',
    other: (why: string): string => `It could not be recorded: ${why}`,
  },
} as const;
