/**
 * What a device lets through when a carrier and a mean voltage stand across it, in units of a slope voltage s and a
 * current Is: x = peak/s and U = ln(off + mean current/Is). For a bare junction the mean voltage over s is U − ln I0(x)
 * and the carrier's current 2·Is·eᵁ·I1/I0; another device, and a junction whose circuit keeps the carrier's harmonics,
 * differ from that by a table.
 */
export interface EnvelopeLaw {
  /** s, V. */
  readonly slope: number;
  /** Is, A. */
  readonly current: number;
  /** 1 for a junction, whose mean current falls to −Is; what a curve falls to otherwise. */
  readonly off: number;
  readonly table?: LawTable;
  /** Conductance across the junction that is part of the network, S: only to tell the detector's whole current. */
  readonly leakage?: number;
}

/**
 * Over ξ = y/(y + bend), y = √(1 + x²) − 1, and U, evenly spaced, ξ running slowest: cubic along U, straight along ξ.
 * y is used because everything is even in x: a faint carrier's square law must not become a straight one. Outside, the
 * value at the edge.
 */
export interface LawTable {
  readonly bend: number;
  readonly columns: number;
  readonly rows: number;
  /** ξ of the last column (the first is 0). */
  readonly last: number;
  readonly lowest: number;
  /** Rows to one unit of U. */
  readonly perUnit: number;
  /**
   * (mean voltage)/s − U + ln I0(x), and the carrier's current over 2·Is·eᵁ·I1/I0, real and imaginary part: each
   * followed by its slope from row to row, 6 a place.
   */
  readonly values: Float64Array;
}
