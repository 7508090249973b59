import { identitiesOf } from '../../../engine/built/identity.ts';
import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import type { TuningDescription } from '../../../engine/kinds/tunings/tuning-schema.ts';
import { coilPart } from '../../../engine/network/part-ids.ts';
import type { CoilModel } from '../../../engine/parts/coil/model.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import type { Tap, WoundDescription } from '../../drawings/coil/drawn.ts';
import { coilChecks, coilFigures, coilSheetWords, type OpenSide } from '../../words/index.ts';
import type { Flow } from '../paper/flow.ts';
import { dialText } from './dial-text.ts';
import { resistanceOnMeter } from './resistance-on-meter.ts';
import type { SetOnBand, SetOnBands } from './set-on-band.ts';

/** Of a winding by hand: its inductance comes out within this share. Common practice, no source. */
const BY_HAND = 0.03;
/** A winding of the right wire is as long and as deep as calculated within this share. Common practice, no source. */
const SIZE = 0.1;
/** Where a coil has no figures of the set's own, its Q is given at this frequency, Hz. */
const USUAL = 1e6;

/** What a coil should measure, and how that is checked. */
export function checks(
  flow: Flow,
  bands: SetOnBands,
  coil: WoundDescription,
  index: number,
  model: CoilModel,
  taps: readonly Tap[],
): void {
  const isTuned = tunes(bands[0].set, index);
  flow.heading(coilSheetWords.headings.checks);
  flow.table(
    [
      { title: coilSheetWords.columns.figure, share: 2 },
      { title: coilSheetWords.columns.expected, share: 6 },
    ],
    expected(model, bands, index, isTuned),
  );
  const list = [
    coilChecks.count,
    ...(coil.shape === 'core' ? [] : sizeChecks(coil, model)),
    taps.length > 0 ? coilChecks.ohmsTapped : coilChecks.ohms,
  ];
  const inSet = isTuned ? bands.flatMap((one) => checkInSet(one, model)) : [];
  flow.list([...list, ...(inSet.length > 0 ? inSet : [comparison(model)])], 'box');
}

/** Where the station that is heard best should come in on a band; nothing where none can be tuned in. */
function checkInSet({ set, reception, band }: SetOnBand, model: CoilModel): string[] {
  const best = reception.best.map((i) => reception.stations[i]).find((s) => s?.dial);
  if (!best) return [];
  const station = {
    station: best.name,
    frequency: best.frequency,
    reading: dialText(set, best),
    perTurn: (0.85 * best.frequency) / model.turns,
  };
  const check =
    set.arrangement.kind === 'slider'
      ? coilChecks.inSetBySlider(station)
      : coilChecks.inSet(byKind(OPEN_SIDE, set.tuning), station);
  return [band === undefined ? check : coilChecks.onBand(band, check)];
}

const within = (value: number) => ({ value, low: value * (1 - SIZE), high: value * (1 + SIZE) });

/** A pile is measured both ways: its depth shows whether the layers lie as they should. */
function sizeChecks(coil: WoundDescription, model: CoilModel): string[] {
  const checks: string[] = [];
  if (!ACROSS.has(coil.shape)) checks.push(coilChecks.along(within(model.windingLength)));
  if (ACROSS.has(coil.shape) || coil.shape === 'multilayer')
    checks.push(coilChecks.across(within(model.outerDiameter)));
  return checks;
}

/** Is a coil the one that the set is tuned with. */
export const tunes = (set: SetDescription, index: number): boolean =>
  identitiesOf(set).get(coilPart(index))?.role === 'tuning-coil';

/** Flat coils are measured across, all others along. */
const ACROSS: ReadonlySet<WoundDescription['shape']> = new Set(['spider', 'spiral']);

/** The range of the dial on each band that a coil tunes. */
export const rangeRows = (bands: SetOnBands): string[][] =>
  bands.map(({ reception: { dial }, band }) => [
    band === undefined ? coilSheetWords.rows.range : coilSheetWords.rows.rangeOnBand(band),
    coilFigures.range(dial.lowest, dial.highest),
  ]);

function expected(model: CoilModel, bands: SetOnBands, index: number, isTuned: boolean): string[][] {
  const { rows } = coilSheetWords;
  const out = [
    [
      rows.inductance,
      coilFigures.inductance({
        value: model.inductance,
        low: model.inductance * (1 - BY_HAND),
        high: model.inductance * (1 + BY_HAND),
      }),
    ],
  ];
  for (const { reception } of bands) {
    const figures = reception.parts.coils[index];
    const [low, high] = figures?.qRange ?? model.qRangeAt(USUAL);
    if (figures) out.push([rows.qAt(figures.qAt), coilFigures.q({ value: figures.q, low, high })]);
  }
  if (Number.isFinite(model.selfCapacitance))
    out.push([rows.selfCapacitance, coilFigures.selfCapacitance(model.selfCapacitance)]);
  if (Number.isFinite(model.dcResistance) && model.dcResistance > 0)
    out.push([rows.resistance, coilFigures.resistance(resistanceOnMeter(model.dcResistance))]);
  if (isTuned) out.push(...rangeRows(bands));
  return out;
}

/** In figures, how a coil is compared with a known one by what the two tune to. */
function comparison(model: CoilModel): string {
  const across = 200e-12;
  const own = Number.isFinite(model.selfCapacitance) ? model.selfCapacitance : 0;
  const tunesTo = (inductance: number): number => 1 / (2 * Math.PI * Math.sqrt(inductance * (across + own)));
  return coilChecks.compare({
    across,
    tunesTo: tunesTo(model.inductance),
    tooLarge: tunesTo(model.inductance * 1.1),
    tooSmall: tunesTo(model.inductance * 0.9),
  });
}

/** What of the tuning is drawn out at a low reading. */
const OPEN_SIDE: ByKind<TuningDescription, OpenSide> = {
  variable: () => 'vanes',
  vanes: () => 'vanes',
  measured: () => 'vanes',
  foil: () => 'sheet',
  tubes: () => 'tube',
  book: () => 'leaves',
  // Nothing moves: the coil alone decides.
  fixed: () => 'vanes',
};
