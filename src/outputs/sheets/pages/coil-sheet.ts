import type { CoilDescription } from '../../../engine/kinds/coils/coil-schema.ts';
import { isLoop } from '../../../engine/kinds/loops.ts';
import { coilModel } from '../../../engine/kinds/models.ts';
import type { CoilModel } from '../../../engine/parts/coil/model.ts';
import { closePitch } from '../../../engine/parts/wire/wire.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { formatQuantity } from '../../../engine/units/format.ts';
import { CHEEK_THICKNESS, cheekDiameter } from '../../drawings/coil/cheek.ts';
import { drawCoil, tapsOf } from '../../drawings/coil/coil.ts';
import { SPARE, type Tap, type WoundDescription } from '../../drawings/coil/drawn.ts';
import {
  coilFigures,
  coilSheetWords,
  enamelledInstead,
  measuredCoilWords,
  sliderSteps,
  tapNames,
  turnsText,
  wireToCutText,
  wireWithNotes,
} from '../../words/index.ts';
import { fewestPages } from '../paper/fewest-pages.ts';
import { Flow } from '../paper/flow.ts';
import type { PaperName, Sheet } from '../paper/page.ts';
import { checks, rangeRows, tunes } from './coil-checks.ts';
import { formerOf, pitchOf, tapPlaceOf, tubeLength, turnsLieText } from './coil-kinds.ts';
import { stepsFor } from './coil-steps.ts';
import { putTemplate } from './coil-template-kinds.ts';
import { loopSheet } from './loop-sheet.ts';
import { bandsOfCoil, type SetOnBands } from './set-on-band.ts';
import { TAIL, tally, tapWire, wireToCut } from './winding.ts';
import { printable } from './words.ts';

/** One sheet for each coil, and one for a frame or rod that is a coil itself. */
export function coilSheets(bands: SetOnBands, paper: PaperName): Sheet[] {
  const [{ set, reception }] = bands;
  const fileFor = fileNames();
  const sheets = set.coils.map((coil, i) => {
    const file = fileFor(coil.name);
    return coil.shape === 'measured'
      ? measuredSheet(set, coil, i, bandsOfCoil(bands, i, tunes), paper, file)
      : woundSheet(set, coil, i, bandsOfCoil(bands, i, tunes), paper, file);
  });
  if (isLoop(set.aerial)) sheets.push(loopSheet(set, reception, paper));
  return sheets;
}

/** Names of files from the names of coils, each used once. */
function fileNames(): (name: string) => string {
  const files = new Set<string>();
  return (name) => {
    const letters = printable(name)
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '')
      .slice(0, 40);
    const base = `coil-${letters || 'x'}`;
    let file = base;
    for (let k = 2; files.has(file); k++) file = `${base}-${k}`;
    files.add(file);
    return file;
  };
}

function woundSheet(
  set: SetDescription,
  coil: WoundDescription,
  index: number,
  bands: SetOnBands,
  paper: PaperName,
  file: string,
): Sheet {
  const model = coilModel(coil);
  const taps = tapsOf(set, index).filter((t) => t.turn > 0 && t.turn < model.turns);
  const title = coilSheetWords.title(coil.name);
  const { columns, headings } = coilSheetWords;
  // A pile's layers, cheeks and ends need more room than one layer does.
  const height = coil.shape === 'multilayer' ? 100 : 78;
  const slides = set.arrangement.kind === 'slider' && set.arrangement.coil === coil.name;
  const steps = [...stepsFor(coil, model, taps), ...(slides ? [{ lines: sliderSteps }] : [])];
  return fewestPages((layout) => {
    const flow = new Flow({ id: 'coil', title, file, set: set.name, paper, layout });
    flow.table(
      [
        { title: columns.what, share: 1.1 },
        { title: columns.coil, share: 6 },
      ],
      rowsOf(coil, model, taps),
    );
    const high = height * layout.tight;
    flow.figure(drawCoil(coil, { taps, width: Math.min(flow.width, 150), height: high }), { height: high + 2 });
    if (taps.length > 0) tapTable(flow, coil, model, taps);
    flow.heading(headings.winding, flow.firstStepHeight(steps));
    flow.steps(steps);
    tally(flow, model.turns, taps);
    checks(flow, bands, coil, index, model, taps);
    putTemplate(flow, coil, model, taps);
    return flow.finish(coilSheetWords.description({ name: coil.name, turns: model.turns }));
  });
}

/** What a coil is made of, and how much of it. */
function rowsOf(coil: WoundDescription, model: CoilModel, taps: readonly Tap[]): string[][] {
  const { rows } = coilSheetWords;
  return [
    [rows.former, formerOf(coil)],
    ...formerSizes(coil, model),
    [rows.wire, wireWithNotes(coil.wire)],
    ...otherWire(coil),
    [rows.turns, coilSheetWords.turns(model.turns)],
    [rows.winding, turnsLieText(coil, model)],
    [
      rows.wireToCut,
      wireToCutText({
        cut: wireToCut(model, taps.length),
        wound: model.wireLength,
        tail: TAIL,
        tap: taps.length > 0 ? tapWire(model) : undefined,
      }),
    ],
  ];
}

function formerSizes(coil: WoundDescription, model: CoilModel): string[][] {
  const { rows } = coilSheetWords;
  switch (coil.shape) {
    case 'solenoid':
    case 'bank-wound':
    case 'multilayer': {
      const tube = coilSheetWords.tube({ tube: tubeLength(model), winding: model.windingLength, spare: SPARE / 1e3 });
      if (coil.shape !== 'multilayer') return [[rows.tube, tube]];
      const [thickness, across] = [CHEEK_THICKNESS / 1e3, cheekDiameter(coil) / 1e3];
      return [
        [rows.tube, tube],
        [rows.cheeks, coilSheetWords.cheeks({ thickness, across, hole: coil.formerDiameter })],
      ];
    }
    case 'spiral':
    case 'spider':
    case 'basket':
    case 'core':
      return [];
  }
}

/** A thread thinner than this, m, is not needed. */
const NO_THREAD = 2e-5;

/** How enamelled wire of the same size serves where a thread-covered one cannot be had. */
function otherWire(coil: WoundDescription): string[][] {
  const { wire } = coil;
  if (coil.shape === 'core' || wire.covering === 'bare' || wire.covering === 'enamel') return [];
  const { size, metal, strands } = wire;
  const thread = pitchOf(coil) / 1e3 - closePitch({ diameter: size, covering: 'enamel', metal, strands });
  const isLayered = coil.shape === 'multilayer';
  const { sameSpacing, sameSpacingInLayers, withThread, withThreadInLayers } = enamelledInstead;
  const words =
    thread < NO_THREAD
      ? (isLayered ? sameSpacingInLayers : sameSpacing)({ size })
      : (isLayered ? withThreadInLayers : withThread)({ size, thread });
  return [[coilSheetWords.rows.otherWire, words]];
}

function tapTable(flow: Flow, coil: WoundDescription, model: CoilModel, taps: readonly Tap[]): void {
  const { columns, headings } = coilSheetWords;
  const place = tapPlaceOf(coil);
  flow.heading(headings.taps);
  flow.table(
    [
      { title: columns.tap, share: 2 },
      { title: columns.afterTurn, share: 1.3, anchor: 'end' },
      { title: place.title, share: 2.6, anchor: 'end' },
      { title: columns.wireFromStart, share: 2.2, anchor: 'end' },
      { title: '✓', share: 0.5 },
    ],
    taps.map((t) => [
      tapNames[t.name].title,
      turnsText(t.turn),
      place.at(t.turn),
      formatQuantity(model.wireLengthTo(t.turn), 'length', 3),
      '',
    ]),
  );
}

function measuredSheet(
  set: SetDescription,
  coil: Extract<CoilDescription, { shape: 'measured' }>,
  index: number,
  bands: SetOnBands,
  paper: PaperName,
  file: string,
): Sheet {
  const { columns, rows } = coilSheetWords;
  const flow = new Flow({ id: 'coil', title: coilSheetWords.title(coil.name), file, set: set.name, paper });
  flow.para(measuredCoilWords.nothingToWind);
  const taps = tapsOf(set, index);
  flow.table(
    [
      { title: columns.figure, share: 2 },
      { title: columns.measured, share: 5 },
    ],
    [
      [rows.inductance, formatQuantity(coil.inductance, 'inductance')],
      [rows.q, coilFigures.measuredQ(coil)],
      [rows.selfCapacitance, formatQuantity(coil.selfCapacitance, 'capacitance', 2)],
      ...taps.map((tap, i) => [i === 0 ? rows.taps : '', coilFigures.measuredTap({ ...tap, turns: coil.turns })]),
      ...rangeRows(bands),
    ],
  );
  flow.list([measuredCoilWords.ohms, measuredCoilWords.earthedEnd], 'box');
  return flow.finish();
}
