import type { PartRole } from '../../../engine/built/identity.ts';
import { setCircuit } from '../../../engine/built/set-circuit.ts';
import { receiver } from '../../../engine/reception/path/receive-station.ts';
import type { Reception, StationReception } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { dialSheetWords } from '../../words/index.ts';
import { boardParts } from '../board/parts.ts';
import { type DialMarks, type DialTicks, marksAlong, type Pointer, scaleOfTuning } from './dial-marks.ts';
import { readingText } from './dial-text.ts';

/** Two tuned circuits with a hand for each: what the aerial circuit's own capacitor has to be set to. */
export interface AerialDial extends Pointer {
  /** "C2", and "C1" for the detector circuit's. */
  readonly tag: string;
  readonly mainTag: string;
  readonly positionOf: (station: StationReception) => number;
  /** Its reading for a station. */
  readonly textOf: (station: StationReception) => string;
}

/** So near an end, the peak itself lies beyond it. */
const END = 1e-6;
const inside = (position: number): boolean => position > END && position < 1 - END;

/** The aerial circuit's own tuning, where the set has one that is turned by itself. */
export function aerialDial(set: SetDescription): AerialDial | undefined {
  const { arrangement } = set;
  if (arrangement.kind !== 'two circuits' || arrangement.ganged) return undefined;
  const tuning = arrangement.aerialTuning ?? set.tuning;
  const circuit = setCircuit(set);
  if (circuit.assembly.tuning.length < 2 || tuning.kind === 'fixed') return undefined;
  const { network } = receiver(circuit);
  const positionOf = ({ frequency, detectorInputResistance }: StationReception): number =>
    network.at(frequency).peak(1 / detectorInputResistance).other;
  const { parts } = boardParts(set);
  const tagOf = (role: PartRole): string => parts.find((p) => p.role === role)?.tag ?? '';
  const pointer = scaleOfTuning(tuning);
  return {
    ...pointer,
    tag: tagOf('aerial-tuning'),
    mainTag: tagOf('tuning'),
    positionOf,
    textOf: (station) => {
      const position = positionOf(station);
      const reading = readingText(pointer, position);
      return inside(position) ? reading : dialSheetWords.atEnd(reading);
    },
  };
}

/** The marks of the aerial circuit's dial, the other circuit being in tune as well. */
export function aerialDialMarks(ticks: DialTicks, reception: Reception, dial: AerialDial): DialMarks {
  const { scale, at, moves } = dial;
  return {
    scale,
    at,
    moves,
    tag: dial.tag,
    ...marksAlong(
      ticks,
      reception,
      ({ other }) => ({ position: other, within: inside(other) }),
      (station) => ({ position: dial.positionOf(station) }),
    ),
    // They are marked on the main dial, which runs back there.
    folds: [],
  };
}
