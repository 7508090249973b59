import type { Hertz, Ratio, Volts } from '../../../engine/units/quantities.ts';
import type { OneWay } from './one-way.ts';
import type { SmoothingLoad } from './smoothing.ts';
import type { WaveProgramme } from './wave-programme.ts';

/** Another station that the tuned circuit lets through in part. */
export interface WaveNeighbour {
  readonly name?: string;
  readonly frequency: Hertz;
  /** Of its carrier to the wanted one's, on the tuned circuit. */
  readonly share: Ratio;
  readonly depth: Ratio;
  /** It sends one tone. */
  readonly tone: Hertz;
}

/** Where a set works with another detector or on another carrier: with its own loading of the tuned circuit. */
export interface WaveWorkingPoint {
  /** Default the set's own. */
  readonly atAerial?: Volts;
  readonly atTuned: Volts;
  readonly atDetector: Volts;
  readonly loadedQ: number;
  readonly deepening: number;
  readonly bias?: Volts;
  /** Of a set that keeps its coil on another carrier: the range it tunes, and whether the carrier is within. */
  readonly reach?: { readonly lowest: Hertz; readonly highest: Hertz; readonly within: boolean };
}

/** Everything the six waves are made from. */
export interface WaveSpec {
  readonly carrier: Hertz;
  /** Depth of modulation on peaks; above 1 the carrier is turned over. */
  readonly depth: Ratio;
  readonly programme: WaveProgramme;
  /** Peak volts of the unmodulated carrier: emf in the aerial, on the tuned circuit, at the detector. */
  readonly atAerial: Volts;
  readonly atTuned: Volts;
  readonly atDetector: Volts;
  readonly loadedQ: number;
  /** Depth on the tuned circuit over what its Q alone would leave; default 1. */
  readonly deepening?: number;
  readonly neighbours: readonly WaveNeighbour[];
  readonly detector: OneWay;
  /** Of the library, or `perfect`: what the detector is called. */
  readonly detectorId: string;
  readonly bias?: Volts;
  /** Two detectors, one for each half. */
  readonly bothHalves?: boolean;
  /** Of the same set with other detectors and on other carriers, by `workingPointKey`, as far as they were asked for. */
  readonly others?: Readonly<Record<string, WaveWorkingPoint>>;
  readonly load: SmoothingLoad;
}
