import { OVERLOAD } from '../../../engine/faults/ohmmeter.ts';
import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import { tuningModel } from '../../../engine/kinds/models.ts';
import { capacitorChecks as texts } from '../../words/index.ts';
import type { Flow } from '../paper/flow.ts';
import type { HomeMade } from './capacitor-making.ts';

/** How its moving part goes. */
type Movement = keyof typeof texts.most;

const MOVEMENTS: ByKind<HomeMade, Movement> = {
  vanes: () => 'vanes',
  foil: () => 'slide',
  tubes: () => 'slide',
  book: () => 'leaves',
};

/** What a meter shows across the capacitor by itself: without the set's wiring, trimmer and padder. */
const alone = (tuning: HomeMade) =>
  tuningModel({
    ...tuning,
    stray: 0,
    trimmer: 0,
    padder: undefined,
    measured: tuning.measured && { ...tuning.measured, stray: undefined },
  });

/** What a finished capacitor should measure, each with its tolerance, and what is wrong otherwise. */
export function putCapacitorChecks(flow: Flow, tuning: HomeMade): void {
  const { capacitanceAt, minRange, maxRange, travel } = alone(tuning);
  const movement = byKind(MOVEMENTS, tuning);
  const rows = [
    [texts.resistance.check, texts.resistance.expected(OVERLOAD), texts.resistance.otherwise],
    [texts.joints.check, texts.joints.expected, texts.joints.otherwise],
    ...(travel === undefined ? [] : [[texts.travelCheck, texts.travel({ travel }), texts.travelOtherwise]]),
    [
      texts.most[movement],
      texts.capacitance({ value: capacitanceAt(1), range: maxRange }),
      texts.mostOtherwise[movement],
    ],
    [texts.middle[movement], texts.about(capacitanceAt(0.5)), ''],
    [texts.least[movement], texts.capacitance({ value: capacitanceAt(0), range: minRange }), texts.leastOtherwise],
  ];
  flow.heading(texts.heading, 30);
  flow.table(
    [
      { title: '✓', share: 0.4 },
      { title: texts.columns.check, share: 4 },
      { title: texts.columns.expected, share: 3.4 },
      { title: texts.columns.otherwise, share: 4 },
    ],
    rows.map((row) => ['', ...row]),
  );
  flow.para(texts.noMeter, { small: true });
}
