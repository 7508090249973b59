import { type Receiver, receiveStation } from '../reception/path/receive-station.ts';
import type { StationDescription } from '../set/place.ts';
import type { Decibels, Ohms, Volts } from '../units/quantities.ts';

/** Nepers of voltage and of resistance between two nodes: 4 dB and an octave. */
const VOLTS_STEP = Math.log(10 ** 0.2);
const OHMS_STEP = Math.LN2;
/** Fainter is nothing, stronger no receiver has, V. */
const [LEAST_VOLTS, MOST_VOLTS] = [3e-6, 50];
const [LEAST_OHMS, MOST_OHMS] = [1, 1e7];

/** Of a station that the detector's equations do not solve. */
const UNSOLVED: Level = { level: -200, margin: -200 };

interface Level {
  readonly level: Decibels;
  readonly margin: Decibels;
}

/** Level at the ear by what the detector's port shows, between nodes that are received in full when first asked for. */
export type LevelTable = (open: Volts, resistance: Ohms) => Level;

/**
 * A table of levels for one detector and load: the full reception of a set whose network shows the detector an open
 * voltage behind a resistance, with sidebands as strong as the carrier lets them be. A sharp circuit weakens them, so
 * what a set gives is at most this.
 * @param ready any set with that detector and load
 * @param station whose programme and depth count
 */
export function levelTable(ready: Receiver, station: StationDescription): LevelTable {
  const nodes = new Map<number, Level>();
  const node = (i: number, j: number): Level => {
    const key = i * 1000 + j;
    let known = nodes.get(key);
    if (!known) {
      known = behind(ready, station, Math.exp(i * VOLTS_STEP), Math.exp(j * OHMS_STEP));
      nodes.set(key, known);
    }
    return known;
  };
  return (open, resistance) => {
    const x = Math.log(Math.min(MOST_VOLTS, Math.max(LEAST_VOLTS, open))) / VOLTS_STEP;
    const y = Math.log(Math.min(MOST_OHMS, Math.max(LEAST_OHMS, resistance))) / OHMS_STEP;
    const [i, j] = [Math.floor(x), Math.floor(y)];
    const [t, u] = [x - i, y - j];
    const [a, b, c, d] = [node(i, j), node(i + 1, j), node(i, j + 1), node(i + 1, j + 1)];
    const [p, q, r, s] = [(1 - u) * (1 - t), (1 - u) * t, u * (1 - t), u * t];
    return {
      level: p * a.level + q * b.level + r * c.level + s * d.level,
      margin: p * a.margin + q * b.margin + r * c.margin + s * d.margin,
    };
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
  try {
    const { heard } = receiveStation(set, { ...station, bearing: undefined }, position);
    return { level: heard.spl, margin: heard.margin };
  } catch (refusal) {
    if (refusal instanceof RangeError) return UNSOLVED;
    throw refusal;
  }
}
