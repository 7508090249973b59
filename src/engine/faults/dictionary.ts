import type { BuiltSet } from '../built/built-set.ts';
import type { SetCircuit } from '../built/set-circuit.ts';
import { PART } from '../network/part-ids.ts';
import { pathToStation } from '../place/stations/path-to-station.ts';
import { pathNight } from '../place/sun.ts';
import type { TimeOfDay } from '../set/listening-time.ts';
import type { PlaceDescription } from '../set/place.ts';
import { capacitorFaults } from './capacitor-faults.ts';
import { coilFaults } from './coil-faults.ts';
import { detectorFaults } from './detector-faults.ts';
import type { PartFault } from './fault.ts';
import { loadFaults } from './load-faults.ts';
import { outdoorFaults } from './outdoor-faults.ts';

/** How common it is that nothing is wrong but the listener's expectation, beside the faults. */
const NOTHING = 3;

/**
 * Every way in which the parts, joints, taps and windings of a set may fail.
 * @param built the set as built
 * @param heard places in the description of the stations that are listened for
 * @param time when they are
 * @returns faults, each with an id of its own; common practice, no source
 */
export function faultsOfSet(built: BuiltSet, heard: readonly number[], time: TimeOfDay): readonly PartFault[] {
  return [
    ...coilFaults(built),
    ...capacitorFaults(built),
    ...outdoorFaults(built),
    ...detectorFaults(built),
    ...loadFaults(built),
    ...outsideTheSet(built.circuit, heard, time),
  ];
}

/** Whether a sky wave may come from one of the stations: at a moment, the sun on its path decides. */
function isNight(place: PlaceDescription, heard: readonly number[], time: TimeOfDay): boolean {
  if (!(time instanceof Date)) return time === 'night';
  const { position } = place;
  return heard.some((index) => {
    const transmitter = pathToStation(place, place.stations[index])?.transmitter;
    return position && transmitter && pathNight(time, transmitter, position).loss !== null;
  });
}

function outsideTheSet({ set }: SetCircuit, heard: readonly number[], time: TimeOfDay): PartFault[] {
  const faults: PartFault[] = heard.map((index) => ({
    id: `station-off-air:${index}`,
    code: 'station-off-air',
    part: PART.aerial,
    weight: 3 / heard.length,
    remedy: 'wait-for-station',
    change: (planted) => ({
      ...planted,
      level: (station) => planted.level(station) - (station === index ? 200 : 0),
    }),
    signs: { 'other-receiver-hears-it': 0.04 },
    cautions: [],
  }));
  if (isNight(set.place, heard, time))
    faults.push({
      id: 'fading-at-night',
      code: 'fading-at-night',
      part: PART.aerial,
      weight: 3,
      remedy: 'wait-for-day',
      change: (planted, u) => ({ ...planted, level: (station) => planted.level(station) - 25 * u }),
      signs: { 'swings-within-minutes': 0.9 },
      cautions: [],
    });
  faults.push(
    {
      id: 'mains-hum',
      code: 'mains-hum',
      part: PART.aerial,
      weight: 2,
      remedy: 'move-from-mains',
      signs: { hum: 0.95 },
      cautions: ['no-mains-work'],
    },
    {
      id: 'nothing-wrong',
      code: 'nothing-wrong',
      part: PART.aerial,
      weight: NOTHING,
      remedy: 'none',
      signs: {},
      cautions: [],
    },
  );
  return faults;
}
