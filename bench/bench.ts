/** A piece of work to be timed. A file in this folder exports some as `measurements`. */
export interface Work {
  /** What is done, in words: "a whole reception, 40 stations". */
  name: string;
  /** What one piece of it is called: "reception", "step", "set". */
  unit: string;
  /**
   * Does the work and says how many pieces that was (nothing: one). What must exist beforehand is made outside. Return
   * or keep something that depends on the result, lest the compiler leaves the work out.
   */
  run(): number | undefined | Promise<number | undefined>;
  /** The name of another work in the same file, timed in turn with this one: how many times as fast is this? */
  against?: string;
  goal?: {
    /** Seconds for one piece, at most. */
    atMost_s?: number;
    /** Pieces in a second, at least. */
    atLeastPerSecond?: number;
    /** Times as fast as `against`, at least. */
    atLeastRatio?: number;
  };
}

/** A figure that is not the time of a piece of work, for instance a size or how long something took in a browser. */
export interface Figure {
  name: string;
  /** The unit of the value: "kB", "ms", "times real time". */
  unit: string;
  measure(): number | Promise<number>;
  goal?: { atMost?: number; atLeast?: number };
}

export type Measurement = Work | Figure;

/** What was found: seconds per piece and ratio to the other work, or the figure. */
export interface Outcome {
  name: string;
  unit: string;
  seconds?: number;
  perSecond?: number;
  ratio?: number;
  against?: string;
  value?: number;
  /** Undefined when nothing was aimed at. */
  goalMet?: boolean;
}
