import { OUT } from '../../../engine/kinds/arrangements/assembly.ts';
import { PUMP_CAPACITANCE } from '../../../engine/kinds/arrangements/detector-wiring.ts';
import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import type { DetectorDescription } from '../../../engine/kinds/detectors/detector-schema.ts';
import { EARTH } from '../../../engine/network/elements.ts';
import { PART } from '../../../engine/network/part-ids.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { formatQuantity } from '../../../engine/units/format.ts';
import { about, detectorLabel, figureLabel, NO_LABEL } from './about.ts';
import { type DiagramSheet, seriesWidth } from './diagram.ts';
import type { Levels } from './ends.ts';

type Device = 'diode' | 'valve';
const diode = (): Device => 'diode';

/** The device's symbol, from its anode to its cathode. */
const DEVICES: ByKind<DetectorDescription, Device> = {
  galena: diode,
  mineral: diode,
  germanium: diode,
  schottky: diode,
  silicon: diode,
  exponential: diode,
  measured: diode,
  valve: () => 'valve',
};

/**
 * The detector, or two of them, from the line at x to the node "out".
 * @param lower of a full-wave pair: the other end of the coil, and its level.
 * @returns x where "out" begins, on the line.
 */
export function drawDetectorSide(
  sheet: DiagramSheet,
  set: SetDescription,
  x: number,
  levels: Levels,
  live: string,
  lower?: { readonly node: string; readonly level: number },
): number {
  const y = levels.line;
  const device = byKind(DEVICES, set.detector);
  const first = about(set, PART.detector, detectorLabel(set.detector));
  const second = about(set, PART.secondDetector, NO_LABEL);
  const { wiring } = set.detector;
  const bias = set.detector.bias ?? 0;
  if (wiring === 'doubler') {
    const pumped = sheet.series(
      'capacitor',
      about(set, PART.pumpCapacitor, figureLabel(formatQuantity(PUMP_CAPACITANCE, 'capacitance'))),
      [x, y],
      [live, 'pump'],
    );
    sheet.wire('pump', [pumped, y], [pumped + 14, y]);
    sheet.shunt(device, second, pumped + 14, [y, levels.rail], ['pump', EARTH], { up: true });
    sheet.wire('pump', [pumped + 14, y], [pumped + 28, y]);
    return sheet.series(device, first, [pumped + 28, y], ['pump', OUT]);
  }
  if (wiring === 'full-wave' && lower) {
    const width = seriesWidth(first);
    const end = sheet.series(device, first, [x, y], [live, OUT], { width });
    sheet.series(device, second, [x, lower.level], [lower.node, OUT], { width });
    sheet.wire(OUT, [end, lower.level], [end + 6, lower.level], [end + 6, y]);
    sheet.wire(OUT, [end, y], [end + 20, y]);
    return end + 20;
  }
  let at = x;
  let node = live;
  if (bias !== 0 && wiring === 'single') {
    at = sheet.series(
      'cell',
      about(set, PART.biasCell, figureLabel(formatQuantity(bias, 'voltage'))),
      [at, y],
      [node, 'biased'],
    );
    node = 'biased';
  }
  return sheet.series(device, first, [at, y], [node, OUT]);
}
