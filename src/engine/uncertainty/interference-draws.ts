import type { Arriving } from '../reception/interference/interference.ts';
import { audioRatiosAt, interferenceAmong } from '../reception/interference/interference.ts';
import { MASKED, overWhistle } from '../reception/interference/separation.ts';
import { carrierBalance } from '../reception/interference/two-carriers.ts';
import { bearingOf, emfOf, type Receiver, type TunedStation } from '../reception/path/receive-station.ts';
import type { Disturbance } from '../reception/path/types.ts';
import { type Decibels, decibels, fromDecibels } from '../units/quantities.ts';
import { addResponse, type FigureResponse, throughPoints } from './figure-response.ts';

/** A station tuned in on a set that it was tuned in on. */
export interface TunedOn {
  readonly set: Receiver;
  readonly tuned: TunedStation;
}

/** A station that may mask the wanted one in some of the sets drawn. */
interface Disturber {
  readonly arriving: Arriving;
  /** As it disturbs with every input in its middle. */
  readonly middle: Disturbance;
  /** dB that the ratio of the two carriers at the detector departs from that in a set turned. */
  readonly carriersIn: (turned: TunedOn) => Decibels;
  /** What the ratio of the programmes gains by a departure of the carriers', both dB. */
  readonly programmes: FigureResponse;
  /** Of the wanted programme over a whistle of the two carriers, dB. */
  readonly whistle: Decibels;
}

/** A station that disturbs less than this is drawn below `MASKED` too rarely to count, dB. */
const NEAR: Decibels = MASKED + 30;
/** So many at most: those least clear. */
const MOST = 4;
/** Departures of the ratio of two carriers that are evaluated, dB. */
const DEPARTURES: readonly Decibels[] = [-24, -12, 12, 24];

/** Interference at stations of a set with every input in its middle: ratios of their programmes, and who may mask them. */
export function disturbersAmong(set: Receiver, others: readonly Arriving[]) {
  const interferenceAt = interferenceAmong(set, others);
  const balance = carrierBalance();
  return (tuned: TunedStation): { audioRatios: readonly Decibels[]; disturbers: readonly Disturber[] } => {
    const { disturbances, audioRatios } = interferenceAt(tuned);
    const near = disturbances
      .filter(({ separation }) => separation < NEAR)
      .sort((a, b) => a.separation - b.separation)
      .slice(0, MOST);
    const disturbers = near.flatMap((middle) => {
      const arriving = others.find(({ station }) => set.indexOf(station) === middle.index);
      return arriving ? [disturber({ set, tuned }, arriving, middle, balance)] : [];
    });
    return { audioRatios, disturbers };
  };
}

function disturber(
  middle: TunedOn,
  arriving: Arriving,
  disturbance: Disturbance,
  balance: ReturnType<typeof carrierBalance>,
): Disturber {
  const { set, tuned } = middle;
  const { station, field } = arriving;
  const facing = bearingOf(tuned.station, tuned.field);
  const emfOn = (on: Receiver) => emfOf(on.circuit, station, field, facing, on.heightAt(station.frequency));
  const carriers = ({ set: on, tuned: at }: TunedOn): Decibels => {
    const level = on.network.at(station.frequency).level(1 / at.steady.inputResistance, at.position, at.other);
    return decibels(at.steady.junctionVoltage / (emfOn(on) * level));
  };
  const now = carriers(middle);
  const view = set.network.at(station.frequency);
  const ratioAt = (departure: Decibels): Decibels => {
    const emf = emfOn(set) * fromDecibels(-departure);
    return audioRatiosAt(set, tuned, () => ({ arriving, view, emf }), balance)(0) ?? Number.NaN;
  };
  const start = ratioAt(0);
  return {
    arriving,
    middle: disturbance,
    carriersIn: (turned) => carriers(turned) - now,
    // Where neither can be followed the programmes are taken to go as the carriers.
    programmes: Number.isFinite(start)
      ? throughPoints([[0, 0], ...DEPARTURES.map((x): [number, number] => [x, ratioAt(x) - start])])
      : (x) => x,
    whistle: overWhistle(
      Math.abs(station.frequency - tuned.station.frequency),
      Math.min(tuned.station.modulation, 1),
      fromDecibels(disturbance.carrierRatio),
    ),
  };
}

/** What two stations do in the sets drawn, dB about the middle: field, and mean depth of modulation. */
export interface StationDraws {
  readonly field: Float64Array;
  readonly depths: Float64Array;
}

/**
 * What the wanted programme stands over another, or over their whistle, in every set drawn, dB.
 * @param turned one input at the ends of its range, and its deviates; a set that could not be is left out.
 */
export function separationDraws(
  { middle, carriersIn, programmes, whistle }: Disturber,
  own: StationDraws,
  other: StationDraws,
  turned: readonly {
    readonly deviates: Float64Array;
    readonly low: TunedOn | undefined;
    readonly high: TunedOn | undefined;
  }[],
): Float64Array {
  const carriers = own.field.map((dB, k) => dB - other.field[k]);
  const departure = (set: TunedOn | undefined): Decibels => (set ? carriersIn(set) : Number.NaN);
  for (const { deviates, low, high } of turned) addResponse(carriers, deviates, departure(low), departure(high));
  return carriers.map((x, k) =>
    Math.min(middle.audioRatio + programmes(x) + own.depths[k] - other.depths[k], whistle + x + own.depths[k]),
  );
}
