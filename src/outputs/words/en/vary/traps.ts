import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import type { HeardNames } from '../../../../engine/vary/suggestion-order.ts';
import type { TrapEffect } from '../../../../engine/vary/wave-traps.ts';
import { printable } from '../../printable.ts';
import { heardAfterWords } from './stations-changed.ts';

const PLACES: Readonly<Record<TrapEffect['kind'], string>> = {
  parallel: 'in the aerial lead',
  series: 'across aerial and earth',
  absorption: 'beside the tuning coil',
};

/** A loss smaller than this nobody hears, dB. */
const HEARD = 0.5;

const below = (separation: number): string =>
  Number.isFinite(separation) ? `${Math.round(separation)} dB below` : 'not heard';

/** How far one station stays below another with the trap, and without. */
function behindWords(name: string, other: string, [now, without]: readonly [number, number]): string {
  const [is, was] = [below(now), below(without)];
  return is === was
    ? `Behind ${name}, ${other} is ${is}, with the trap or without.`
    : `Behind ${name}, ${other} is then ${is}; without the trap ${was}.`;
}

/**
 * What a wave trap is, what it takes off its station, and what it costs the station that is listened to.
 * @param effect as `trapEffects` has it
 * @param heard of one that is offered: the stations it takes away and adds
 * @returns one sentence each
 */
export function trapEffectWords(
  { trap, kind, inductance, capacitance, frequency, stopped, target }: TrapEffect,
  heard?: HeardNames,
): string[] {
  const level = (dB: number): string => formatQuantity(Math.abs(dB), 'level', 2).replace('+', '');
  const parts = `Trap ${trap + 1}: ${formatQuantity(inductance, 'inductance', 3)} and ${formatQuantity(capacitance, 'capacitance', 3)} ${PLACES[kind]}, resonance ${formatNumber(frequency / 1e3, 4)} kHz.`;
  const notch =
    stopped === undefined
      ? 'It stops no station of the list.'
      : `It takes ${level(stopped.by)} off ${printable(stopped.name)}.`;
  const others = heard ? heardAfterWords(heard) : [];
  if (!target || target.station === stopped?.station) return [parts, notch, ...others];
  const name = printable(target.name);
  const other = stopped && printable(stopped.name);
  const cost =
    Math.abs(target.loss) < HEARD
      ? `It costs ${name} nothing that is heard.`
      : target.loss > 0
        ? `It costs ${name} ${level(target.loss)}.`
        : `${name} comes ${level(target.loss)} louder with it.`;
  const clear = other && target.clearance ? [behindWords(name, other, target.clearance)] : [];
  const lost = target.isLost ? [`With this trap ${name} is no longer heard.`] : [];
  return [parts, notch, ...clear, cost, ...lost, ...others];
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
