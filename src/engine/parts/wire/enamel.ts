import { gaugeDiameter } from '../../units/gauge.ts';
import type { Metres } from '../../units/quantities.ts';

/**
 * Largest overall diameter of enamelled round wire, grade 1 and grade 2, mm by bare mm.
 * Source: IEC 60317-0-1, table of maximum overall diameters (from memory; two points looked up).
 */
const METRIC: readonly (readonly [number, number, number])[] = [
  [0.04, 0.049, 0.054],
  [0.05, 0.06, 0.066],
  [0.063, 0.076, 0.083],
  [0.071, 0.084, 0.091],
  [0.08, 0.094, 0.101],
  [0.09, 0.105, 0.113],
  [0.1, 0.117, 0.125],
  [0.112, 0.13, 0.139],
  [0.125, 0.144, 0.154],
  [0.14, 0.16, 0.171],
  [0.16, 0.182, 0.194],
  [0.18, 0.204, 0.217],
  [0.2, 0.226, 0.239],
  [0.224, 0.252, 0.266],
  [0.25, 0.281, 0.297],
  [0.28, 0.312, 0.329],
  [0.315, 0.349, 0.367],
  [0.355, 0.392, 0.411],
  [0.4, 0.439, 0.459],
  [0.45, 0.491, 0.513],
  [0.5, 0.544, 0.566],
  [0.56, 0.606, 0.63],
  [0.63, 0.679, 0.704],
  [0.71, 0.762, 0.789],
  [0.8, 0.855, 0.884],
  [0.9, 0.959, 0.989],
  [1.0, 1.062, 1.094],
];

/**
 * The same for gauge sizes: SWG number, grade 1, grade 2, mm.
 * Source: IS 13730-0-1 as reproduced in a wire maker's table (looked up; evident misprints left out).
 */
const GAUGE: readonly (readonly [number, number, number])[] = [
  [18, 1.285, 1.318],
  [19, 1.08, 1.113],
  [20, 0.976, 1.008],
  [21, 0.872, 0.902],
  [22, 0.766, 0.795],
  [23, 0.659, 0.684],
  [24, 0.605, 0.629],
  [25, 0.554, 0.578],
  [26, 0.501, 0.523],
  [27, 0.458, 0.48],
  [28, 0.417, 0.435],
  [29, 0.382, 0.401],
  [30, 0.349, 0.367],
  [31, 0.329, 0.347],
  [33, 0.286, 0.303],
  [34, 0.265, 0.281],
  [35, 0.241, 0.255],
  [36, 0.219, 0.232],
  [37, 0.197, 0.21],
  [38, 0.174, 0.186],
  [39, 0.152, 0.162],
  [40, 0.141, 0.151],
  [41, 0.13, 0.139],
  [42, 0.119, 0.128],
];

const gaugeRows = GAUGE.map(([n, one, two]) => [gaugeDiameter('SWG', n)! * 1e3, one, two] as const);

/**
 * Largest overall diameter the standard allows; between its sizes the thickness is interpolated.
 * @param diameter bare, m. @param grade 1 (ordinary) or 2 (thick). @returns m.
 */
export function enamelMaximum(diameter: Metres, grade: 1 | 2 = 1): Metres {
  const d = diameter * 1e3;
  // Gauge sizes carry a little more tolerance than metric ones; take their own row when the size is one.
  const own = gaugeRows.find((row) => Math.abs(row[0] - d) < 0.002 * row[0]);
  if (own) return (d + own[grade] - own[0]) * 1e-3;
  const first = METRIC[0];
  const last = METRIC[METRIC.length - 1];
  // Outside the table the thickness follows the usual power of the diameter, about d^0.4.
  if (d <= first[0]) return (d + (first[grade] - first[0]) * (d / first[0]) ** 0.4) * 1e-3;
  if (d >= last[0]) return (d + (last[grade] - last[0]) * (d / last[0]) ** 0.4) * 1e-3;
  const k = METRIC.findIndex((row) => row[0] >= d);
  const [low, high] = [METRIC[k - 1], METRIC[k]];
  const t = (d - low[0]) / (high[0] - low[0]);
  return (d + (1 - t) * (low[grade] - low[0]) + t * (high[grade] - high[0])) * 1e-3;
}

/**
 * What the wire measures on the bench: the standard's least and largest increase lie so that the middle is about 0.76 of
 * the largest (the looked-up table gives both; SWG 28: 0.021 to 0.041 mm).
 */
export const enamelUsual = (diameter: Metres, grade: 1 | 2 = 1): Metres =>
  diameter + 0.76 * (enamelMaximum(diameter, grade) - diameter);
