import type { ComparedSets, ResonanceCurve } from '../../../engine/index.ts';
import { comparisonSheet, type PaperName, type Sheet } from '../../../outputs/sheets/index.ts';
import { answerMessages } from '../../workers/answer-messages.ts';

export interface SheetQuestion {
  readonly compared: ComparedSets;
  readonly curves: readonly (ResonanceCurve | undefined)[];
  readonly paper: PaperName;
}

answerMessages(({ compared, curves, paper }: SheetQuestion): Sheet => comparisonSheet(compared, curves, paper));
