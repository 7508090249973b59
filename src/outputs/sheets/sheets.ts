import { builtSet } from '../../engine/built/built-set.ts';
import { soundReadings } from '../../engine/faults/sound-readings.ts';
import { once } from '../../engine/numerics/lazily.ts';
import type { FieldOptions } from '../../engine/reception/path/field.ts';
import { receive } from '../../engine/reception/path/receive.ts';
import type { Reception } from '../../engine/reception/path/types.ts';
import { standingBand, turnSwitch } from '../../engine/set/band-switch.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import { hasRanges } from '../../engine/uncertainty/ranged-reception.ts';
import { receiveRanged } from '../../engine/uncertainty/receive-ranged.ts';
import { namedOnBand } from '../words/index.ts';
import { type BoardLayout, type Built, boardLayout } from './board/layout.ts';
import type { BoardParts } from './board/parts.ts';
import { switchedParts } from './board/switched-parts.ts';
import { boardSheet, wiringSheet } from './pages/board-sheet.ts';
import { bringUpSheet } from './pages/bring-up-sheet.ts';
import { capacitorSheets } from './pages/capacitor-sheet.ts';
import { cautionsSheet } from './pages/cautions-sheet.ts';
import { circuitSheet } from './pages/circuit-sheet.ts';
import { coilSheets } from './pages/coil-sheet.ts';
import { detectorSheet } from './pages/detector-sheet.ts';
import { dialSheet } from './pages/dial-sheet.ts';
import { faultSheet } from './pages/fault-sheet.ts';
import { glanceSheet } from './pages/glance-sheet.ts';
import { handoutSheet } from './pages/handout-sheet.ts';
import { writtenSections } from './pages/parts-list.ts';
import type { SetOnBands } from './pages/set-on-band.ts';
import { textSheet } from './pages/text-sheet.ts';
import type { PaperName, Sheet } from './paper/page.ts';
import { SHEET_IDS, type SheetId } from './paper/sheet-ids.ts';

/** Which sheets, on which paper and board. */
export interface SheetOptions {
  /** Default A4. */
  readonly paper?: PaperName;
  /** Which; default all that the set has. */
  readonly only?: readonly SheetId[];
  /** Size of the board, m; default what the parts need. */
  readonly board?: { readonly width?: number; readonly length?: number };
  /** The board, where it is laid out already; default laid out as `board` says. */
  readonly built?: Built;
  /** For the dials of other bands than the one that the set stands on, and for the faults. */
  readonly coast?: FieldOptions['coast'];
}

const otherBands = (standing: SetDescription) =>
  (standing.bands ?? []).flatMap(({ name }, index) => {
    const set = turnSwitch(standing, index);
    return set === standing ? [] : [{ name, index, set: namedOnBand(set) }];
  });

function laidOut(set: SetDescription, parts: BoardParts, board: SheetOptions['board']): BoardLayout {
  return boardLayout(set, parts, {
    width: board?.width === undefined ? undefined : board.width * 1e3,
    height: board?.length === undefined ? undefined : board.length * 1e3,
  });
}

/**
 * The parts of a set and its board, for `setView` and `sheetsFor`: where the parts stand and the wires run, mm.
 * @param set as read
 * @param board its size, m; default what the parts need
 */
export function builtBoard(set: SetDescription, board?: SheetOptions['board']): Built {
  const parts = switchedParts(set);
  return { parts, layout: laidOut(set, parts, board) };
}

/**
 * Sheets from which a set can be built, made to work and shown.
 * @param written the description as it was read, for the sheet that carries it.
 * @param standing as read; with a band switch, on the band that it stands on, and dial and checks of every band
 * @param reception of the same set
 * @param options which, on which paper, on a board of which size (m)
 * @returns sheets in the order of a bound book; pages in mm
 */
export function sheetsFor(
  written: unknown,
  standing: SetDescription,
  reception: Reception,
  options: SheetOptions = {},
): Sheet[] {
  const { paper = 'a4', only, board, coast } = options;
  const set = namedOnBand(standing);
  const wanted = (id: SheetId): boolean => only === undefined || only.includes(id);
  const built = once((): Built => options.built ?? builtBoard(set, board));
  const band = standingBand(standing);
  const standingName = band === undefined ? undefined : standing.bands![band].name;
  const field = { time: reception.time, coast };
  const isRanged = reception.stations.some(hasRanges);
  const others = once(() =>
    otherBands(standing).map(({ name, index, set }) => ({
      band: name,
      index,
      set,
      reception: isRanged ? receiveRanged(set, field) : receive(set, field),
    })),
  );
  const onBands = once(
    (): SetOnBands => [
      { band: standingName, set, reception, readings: soundReadings(builtSet(set), field) },
      ...others().map((one) => ({ ...one, readings: soundReadings(builtSet(one.set), field) })),
    ],
  );
  const make: Readonly<Record<SheetId, () => Sheet[]>> = {
    glance: () => [glanceSheet(set, reception, built(), writtenSections(written), paper)],
    circuit: () => [circuitSheet(onBands(), built(), paper)],
    coil: () => coilSheets(onBands(), paper),
    capacitor: () => capacitorSheets(set, paper),
    detector: () => [detectorSheet(onBands(), paper)],
    dial: () => [
      dialSheet(set, reception, paper),
      ...others().map(({ band: name, index, set, reception }) => dialSheet(set, reception, paper, { name, index })),
    ],
    board: () => [boardSheet(onBands(), built(), paper)],
    wiring: () => [wiringSheet(set, built(), paper)],
    'bring-up': () => [bringUpSheet(onBands(), built(), paper)],
    faults: () => [faultSheet(standing, field, paper)],
    cautions: () => [cautionsSheet(set, reception, paper)],
    handout: () => [handoutSheet(set, reception, paper)],
    text: () => [textSheet(written, standing.name, paper)],
  };
  return SHEET_IDS.filter(wanted).flatMap((id) => make[id]());
}
