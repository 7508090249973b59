import { useMemo } from 'preact/hooks';
import { isRecord, readValue, valueAtPath, withValueAt } from '../../../engine/index.ts';
import { shelfWords as texts } from '../../../outputs/words/index.ts';
import type { SharedPosition } from './write-up-question.ts';

const POSITION = ['place', 'position'];

/** A description without the position of its place. */
export const withoutPosition = (written: unknown): unknown => withValueAt(written, POSITION, undefined);

/** A long description is read once for all that share it. */
const readWithout = new WeakMap<object, boolean>();
function isReadWithout(written: unknown): boolean {
  if (!isRecord(written)) return false;
  const known = readWithout.get(written) ?? readValue(withoutPosition(written)).ok;
  readWithout.set(written, known);
  return known;
}

/** How far stations are, and in which direction, tells where the place is. */
function tellsDistances(written: unknown): boolean {
  const stations = valueAtPath(written, ['place', 'stations']);
  return (
    Array.isArray(stations) &&
    stations.some((one) => isRecord(one) && (one.distance !== undefined || one.bearing !== undefined))
  );
}

/** Where one's home is stays out of what is shared unless it is chosen, or the set cannot be read without it. */
export function useSharedPosition(written: unknown) {
  const canLeaveOut = useMemo(() => isReadWithout(written), [written]);
  const hasDistances = useMemo(() => tellsDistances(written), [written]);
  return { hasPosition: valueAtPath(written, POSITION) !== undefined, canLeaveOut, hasDistances };
}

interface Props extends ReturnType<typeof useSharedPosition> {
  /** Of the group of radio buttons. */
  readonly name: string;
  readonly position: SharedPosition;
  readonly onPosition: (position: SharedPosition) => void;
}

/** The choice where there is a position, and what tells of the place without it. */
export function SharedPositionChoice({ name, hasPosition, canLeaveOut, hasDistances, position, onPosition }: Props) {
  const choices = (['none', 'coarse', 'exact'] as const).filter((one) => one !== 'none' || canLeaveOut);
  return (
    <>
      {hasPosition && (
        <fieldset>
          <legend>{texts.position}</legend>
          {choices.map((one) => (
            <label key={one}>
              <input type="radio" name={name} checked={position === one} onChange={() => onPosition(one)} />{' '}
              {texts.positions[one]}
            </label>
          ))}
        </fieldset>
      )}
      {hasDistances && position !== 'exact' && <p class="quiet">{texts.distancesStay}</p>}
    </>
  );
}
