import { type Receiver, receiveStation } from '../reception/path/receive-station.ts';
import type { StationDescription } from '../set/place.ts';
import { attempt } from '../uncertainty/attempt.ts';
import type { Decibels, Ohms, Volts, Watts } from '../units/quantities.ts';

/** Nepers of voltage and of resistance between two nodes: 4 dB and an octave. */
const VOLTS_STEP = Math.log(10 ** 0.2);
const OHMS_STEP = Math.LN2;
/** Fainter is nothing, stronger no receiver has, V. */
const [LEAST_VOLTS, MOST_VOLTS] = [3e-6, 50];
const [LEAST_OHMS, MOST_OHMS] = [1, 1e7];
const FIRST_VOLTS = Math.floor(Math.log(LEAST_VOLTS) / VOLTS_STEP);
const FIRST_OHMS = Math.floor(Math.log(LEAST_OHMS) / OHMS_STEP);
const ROWS = Math.floor(Math.log(MOST_VOLTS) / VOLTS_STEP) - FIRST_VOLTS + 2;
const COLUMNS = Math.floor(Math.log(MOST_OHMS) / OHMS_STEP) - FIRST_OHMS + 2;

/** Of a station that the detector's equations do not solve. */
const UNSOLVED: Level = { level: -200, margin: -200 };

interface Level {
  readonly level: Decibels;
  readonly margin: Decibels;
}

/** By what the detector's port shows, between nodes that are received in full when first asked for. */
export interface LevelTable {
  /** At the ear. */
  readonly level: (open: Volts, resistance: Ohms) => Decibels;
  /** Over the hearing threshold. */
  readonly margin: (open: Volts, resistance: Ohms) => Decibels;
  /** The most that a source of so much available power gives, whatever its resistance. */
  readonly mostLevel: (available: Watts) => Decibels;
  readonly mostMargin: (available: Watts) => Decibels;
}

/**
 * A table of levels for one detector and load: the full reception of a set whose network shows the detector an open
 * voltage behind a resistance, with sidebands as strong as the carrier lets them be. A sharp circuit weakens them, so
 * what a set gives is at most this.
 * @param ready any set with that detector and load
 * @param station whose programme and depth count
 */
export function levelTable(ready: Receiver, station: StationDescription): LevelTable {
  const levels = new Float64Array(ROWS * COLUMNS).fill(Number.NaN);
  const margins = new Float64Array(ROWS * COLUMNS);
  const fill = (at: number): void => {
    if (!Number.isNaN(levels[at])) return;
    const volts = Math.exp((Math.floor(at / COLUMNS) + FIRST_VOLTS) * VOLTS_STEP);
    const { level, margin } = behind(ready, station, volts, Math.exp(((at % COLUMNS) + FIRST_OHMS) * OHMS_STEP));
    levels[at] = level;
    margins[at] = margin;
  };
  const between = (values: Float64Array, open: Volts, resistance: Ohms): number => {
    const x = Math.log(Math.min(MOST_VOLTS, Math.max(LEAST_VOLTS, open))) / VOLTS_STEP - FIRST_VOLTS;
    const y = Math.log(Math.min(MOST_OHMS, Math.max(LEAST_OHMS, resistance))) / OHMS_STEP - FIRST_OHMS;
    const [i, j] = [Math.floor(x), Math.floor(y)];
    const [t, u] = [x - i, y - j];
    const at = i * COLUMNS + j;
    fill(at);
    fill(at + 1);
    fill(at + COLUMNS);
    fill(at + COLUMNS + 1);
    return (
      (1 - u) * ((1 - t) * values[at] + t * values[at + COLUMNS]) +
      u * ((1 - t) * values[at + 1] + t * values[at + COLUMNS + 1])
    );
  };
  return {
    level: (open, resistance) => between(levels, open, resistance),
    margin: (open, resistance) => between(margins, open, resistance),
    mostLevel: mostOf((open, resistance) => between(levels, open, resistance)),
    mostMargin: mostOf((open, resistance) => between(margins, open, resistance)),
  };
}

/** Between two powers for which the best resistance is looked for, dB. */
const POWER_STEP = 0.5;
/** Where the search for it begins, Ω, and in which steps it climbs, octaves; so many steps down end it. */
const BEGIN_OHMS = 16_384;
const CLIMB = 0.5;
const DOWN = 6;

/** The most over all resistances at an available power, rounded up; each power once. */
function mostOf(of: (open: Volts, resistance: Ohms) => Decibels): (available: Watts) => Decibels {
  const known = new Map<number, Decibels>();
  return (available) => {
    const step = Math.ceil((10 * Math.log10(Math.max(available, 1e-20))) / POWER_STEP);
    let most = known.get(step);
    if (most === undefined) {
      const watts = 10 ** ((step * POWER_STEP) / 10);
      const at = (ohms: Ohms): Decibels => of(2 * Math.sqrt(watts * ohms), ohms);
      most = at(BEGIN_OHMS);
      for (const direction of [CLIMB, -CLIMB])
        for (let ohms = BEGIN_OHMS, down = 0; down < DOWN && ohms > LEAST_OHMS && ohms < MOST_OHMS; ) {
          ohms *= 2 ** direction;
          const level = at(ohms);
          down = level > most ? 0 : down + 1;
          most = Math.max(most, level);
        }
      known.set(step, most);
    }
    return most;
  };
}

const ZERO = { re: 0, im: 0 };

function behind(ready: Receiver, station: StationDescription, open: Volts, resistance: Ohms): Level {
  const view = { open: { re: open, im: 0 }, z: { re: resistance, im: 0 }, tunedOpen: ZERO, tunedByDetector: ZERO };
  const position = { position: 0.5, other: 0.5 };
  const network: Receiver['network'] = {
    at: (frequency) => ({
      frequency,
      at: () => view,
      level: () => open,
      levelsWith: () => false,
      peak: () => ({ ...position, within: true }),
    }),
  };
  // 1 V through the aerial, whatever it is, from straight ahead.
  const field = { fieldStrength: Math.SQRT1_2, bearing: undefined };
  const set: Receiver = {
    ...ready,
    network,
    heightAt: () => 1,
    fieldOf: (one) => ({ ...ready.fieldOf(one), ...field }),
  };
  const received = attempt(() => receiveStation(set, { ...station, bearing: undefined }, position));
  return received ? { level: received.heard.spl, margin: received.heard.margin } : UNSOLVED;
}
