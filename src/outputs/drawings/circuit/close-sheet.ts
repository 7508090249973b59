import { EARTH } from '../../../engine/network/elements.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { drawDetectorSide } from './detector-side.ts';
import type { Diagram, DiagramSheet } from './diagram.ts';
import { drawEarthSymbol, type Levels } from './ends.ts';
import { drawLoadSide } from './load-side.ts';
import type { Tuned } from './tuned-circuit.ts';

/** Detector, load, rail and the size of the sheet: the same for all. */
export function finish(
  sheet: DiagramSheet,
  set: SetDescription,
  tuned: Tuned,
  levels: Levels,
  from: number,
  earthed = true,
): Diagram {
  const out = drawDetectorSide(sheet, set, tuned.x, levels, tuned.live, tuned.lower);
  const right = drawLoadSide(sheet, set, out, levels);
  return closeSheet(sheet, set, levels, from, right, earthed);
}

function closeSheet(
  sheet: DiagramSheet,
  set: SetDescription,
  levels: Levels,
  from: number,
  right: number,
  earthed: boolean,
): Diagram {
  if (earthed) drawEarthSymbol(sheet, set, levels);
  // The rail ends at the last thing that stands on it.
  const feet = sheet.wires.flatMap((w) => (w.node === EARTH ? w.points : [])).filter((p) => p[1] === levels.rail);
  const last = Math.max(from, ...feet.map((p) => p[0]));
  sheet.wire(EARTH, [Math.min(from, ...feet.map((p) => p[0])), levels.rail], [last, levels.rail]);
  return sheet.finished(Math.ceil(right + 16), levels.rail + (earthed ? 34 : 20));
}
