import { formatQuantity } from '../../../../engine/units/format.ts';
import type { TrapEffect } from '../../../../engine/vary/wave-traps.ts';
import { printable } from '../../printable.ts';

const PLACES: Readonly<Record<TrapEffect['kind'], string>> = {
  parallel: 'in the aerial lead',
  series: 'across aerial and earth',
  absorption: 'beside the tuning coil',
};

/** A toll smaller than this nobody hears, dB. */
const HEARD = 0.5;

const below = (separation: number): string =>
  Number.isFinite(separation) ? `${Math.round(separation)} dB below` : 'not heard';

/**
 * What a wave trap is, what it takes off its station, and what it costs the wanted one.
 * @param effect as `trapEffects` has it
 * @returns one sentence each
 */
export function trapEffectWords({
  trap,
  kind,
  inductance,
  capacitance,
  frequency,
  stopped,
  wanted,
}: TrapEffect): string[] {
  const level = (dB: number): string => formatQuantity(Math.abs(dB), 'level', 2).replace('+', '');
  const parts = `Trap ${trap + 1}: ${formatQuantity(inductance, 'inductance', 3)} and ${formatQuantity(capacitance, 'capacitance', 3)} ${PLACES[kind]}, resonance ${formatQuantity(frequency, 'frequency', 4)}.`;
  const notch =
    stopped === undefined
      ? 'It stops no station of the list.'
      : `It takes ${level(stopped.by)} off ${printable(stopped.name)}.`;
  if (!wanted || wanted.station === stopped?.station) return [parts, notch];
  const name = printable(wanted.name);
  const other = stopped && printable(stopped.name);
  const cost =
    Math.abs(wanted.toll) < HEARD
      ? `It costs ${name} nothing that is heard.`
      : wanted.toll > 0
        ? `It costs ${name} ${level(wanted.toll)}.`
        : `${name} comes ${level(wanted.toll)} louder with it.`;
  const clear =
    other && wanted.clearance
      ? [
          `Behind ${name}, ${other} is then ${below(wanted.clearance[0])}; without the trap ${below(wanted.clearance[1])}.`,
        ]
      : [];
  const lost = wanted.isLost ? [`It is this trap that makes ${name} unheard: without it the station is heard.`] : [];
  return [parts, notch, ...clear, cost, ...lost];
}

/** Texts of the card and the command that make a trap. */
export const trapTexts = {
  title: 'Wave traps',
  about: 'A wave trap is a coil and a capacitor tuned to one station, which it keeps out of the set.',
  stop: 'Stop',
  choose: 'Choose a station',
  make: 'Add the trap',
  undoLabel: (name: string): string => `trap for ${printable(name)}`,
  trying: 'Working out coil and place of the trap …',
  notFound: (reason: string): string => `The trap could not be worked out: ${reason}`,
  none: 'This set takes no further trap, or none of the usual coils tunes to that station.',
};
