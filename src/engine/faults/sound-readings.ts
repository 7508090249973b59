import type { BuiltSet } from '../built/built-set.ts';
import { EARTH } from '../network/elements.ts';
import type { PartId, TerminalId } from '../network/ids.ts';
import { lazily, once } from '../numerics/lazily.ts';
import { type FieldOptions, fieldsAtSite } from '../reception/path/field.ts';
import { receiver, receiveStation } from '../reception/path/receive-station.ts';
import type { Ohms, Volts } from '../units/quantities.ts';
import { type OhmPlace, ohmPlacesOf, ohmReadings, ohmsAcross, ohmsOfDevice } from './ohmmeter.ts';
import { sound } from './planting.ts';
import { meteredVoltage } from './shown.ts';

/** A terminal of a part. */
export interface PartTerminal {
  readonly part: PartId;
  readonly terminal: TerminalId;
}

/** Detectors that do not conduct until they are heated, or their contact is set. */
const SET_BY_HAND: ReadonlySet<string> = new Set(['valve', 'galena', 'mineral']);

/** What a meter shows on a set with nothing wrong, each worked out when it is asked for. */
export interface SoundReadings {
  /** Ω at a place that the set has, everything unplugged; infinite where nothing flows. */
  readonly ohmsAt: (place: OhmPlace) => Ohms | undefined;
  /** Ω between two terminals of one part as it is wired, everything unplugged; nothing where the circuit lacks one. */
  readonly ohmsBetween: (part: PartId, from: TerminalId, to: TerminalId) => Ohms | undefined;
  /**
   * Ω between any two terminals of the set as wired, everything unplugged, heaters cold and crystals lifted off: positive
   * lead on the first; infinite where nothing flows, nothing where the circuit lacks one.
   */
  readonly ohmsFrom: (from: PartTerminal, to: PartTerminal) => Ohms | undefined;
  /** Ω of the detector with a wire off: positive lead on its anode, then on its cathode. */
  readonly detectorAlone: () => readonly [Ohms, Ohms];
  /** V across the detector’s output, with a 10 MΩ meter, on a station by its place in the description. */
  readonly directVoltage: (station: number) => Volts;
  /** The same with no station: what a bias or a hot cathode sends. */
  readonly standingVoltage: () => Volts;
}

/**
 * What a meter shows on a set with nothing wrong: the same as a fault’s readings are computed by, with no fault planted.
 * @param built the set
 * @param options when and where stations are heard, as of `receive`
 * @returns readings; a usual digital ohmmeter, a voltmeter of 10 MΩ
 * @throws RangeError for a station that the set does not receive
 */
export function soundReadings(built: BuiltSet, options: FieldOptions): SoundReadings {
  const { circuit, set, parts, jointOf } = built;
  const planted = sound(circuit);
  const places = ohmPlacesOf(built);
  const atPlaces = once(() => ohmReadings(planted, places, circuit));
  const nodes = once(() => [
    ...new Set([
      EARTH,
      ...circuit.assembly.baseAt(0.5).elements.flatMap((e) => (e.kind === 'mutual' ? [] : [e.from, e.to])),
    ]),
  ]);
  const nodeOf = (part: PartId, terminal: TerminalId): string | undefined => {
    const joint = parts.get(part)?.terminals.find(({ id }) => id === terminal)?.joint;
    return nodes().find((node) => jointOf(node) === joint);
  };
  const ready = once(() => receiver(circuit, fieldsAtSite(set.place, options)));
  return {
    ohmsAt: (place) => (places.includes(place) ? atPlaces()[places.indexOf(place)] : undefined),
    ohmsBetween: (part, first, second) => {
      const [from, to] = [nodeOf(part, first), nodeOf(part, second)];
      return from === undefined || to === undefined ? undefined : ohmsAcross(planted, [{ from, to }])[0];
    },
    ohmsFrom: (first, second) => {
      const [from, to] = [nodeOf(first.part, first.terminal), nodeOf(second.part, second.terminal)];
      const isCold = SET_BY_HAND.has(set.detector.kind);
      return from === undefined || to === undefined ? undefined : ohmsAcross({ ...planted, isCold }, [{ from, to }])[0];
    },
    detectorAlone: () => ohmsOfDevice(circuit.detector),
    directVoltage: lazily((station: number) => {
      const { steady, work } = receiveStation(ready(), set.place.stations[station]);
      return meteredVoltage(ready(), steady.directVoltage, work.outputResistance);
    }),
    standingVoltage: once(() => meteredVoltage(ready(), ready().standing, 1 / ready().smallConductance)),
  };
}
