import type { SetDescription } from '../set/description.ts';
import { formatNumber } from '../units/format.ts';
import { type BestOfSet, bestOf, checkStation, type FindOptions } from './best.ts';

/** Turns of a coil of the set, or of its frame or rod. */
function turnsOf(set: SetDescription, name?: string): number | undefined {
  if (name === undefined)
    return 'turns' in set.aerial && typeof set.aerial.turns === 'number' ? set.aerial.turns : undefined;
  const coil = set.coils.find((c) => c.name === name);
  if (!coil) return undefined;
  return coil.shape === 'multilayer' ? coil.turnsPerLayer * coil.layers : coil.turns;
}

const said = (turns: number): string => `tapped at ${formatNumber(turns, 3)} turn${turns === 1 ? '' : 's'}`;

/**
 * The detector's best tap for a station, the set tuned anew at each: high up it takes more volts but smothers the tuned
 * circuit; low down it leaves it sharp but gets little.
 * @param station index in the set's place. @returns undefined where the arrangement has no such tap.
 * @throws RangeError for a station the set does not have.
 */
export function bestDetectorTap(
  set: SetDescription,
  station: number,
  options: FindOptions = {},
): BestOfSet | undefined {
  checkStation(set, station);
  const { arrangement } = set;
  if (arrangement.kind === 'variometer' || arrangement.kind === 'elements' || set.detector.wiring === 'full-wave')
    return undefined;
  const turns = turnsOf(
    set,
    arrangement.kind === 'frame' || arrangement.kind === 'ferrite rod' ? undefined : arrangement.coil,
  );
  if (turns === undefined) return undefined;
  return bestOf(
    {
      low: 1,
      high: Math.max(1, Math.floor(turns)),
      whole: true,
      with: (detectorTap) => ({ ...set, arrangement: { ...arrangement, detectorTap } }),
      // A slider's detector is at the slider unless it has a tap of its own.
      now: arrangement.detectorTap ?? (arrangement.kind === 'slider' ? undefined : turns),
      say: said,
    },
    station,
    options,
  );
}

/**
 * The aerial's best tap for a station. It is the loudest, not the sharpest: lower down the set is more selective.
 * @returns undefined where the arrangement has no such tap. @throws RangeError for a station the set does not have.
 */
export function bestAerialTap(set: SetDescription, station: number, options: FindOptions = {}): BestOfSet | undefined {
  checkStation(set, station);
  const { arrangement } = set;
  if (arrangement.kind !== 'tapped' && arrangement.kind !== 'two circuits') return undefined;
  const turns = turnsOf(set, arrangement.kind === 'tapped' ? arrangement.coil : arrangement.aerialCoil);
  if (turns === undefined) return undefined;
  return bestOf(
    {
      low: 1,
      high: Math.max(1, Math.floor(turns)),
      whole: true,
      with: (aerialTap) => ({ ...set, arrangement: { ...arrangement, aerialTap } }),
      now: arrangement.aerialTap ?? turns,
      say: said,
    },
    station,
    options,
  );
}
