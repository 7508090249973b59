import { useMemo } from 'preact/hooks';
import { isRecord, type OfferedMeasurement, type SetDescription } from '../../../engine/index.ts';
import { isEmptyDraft } from '../../state/measuring.ts';
import { useOpenSet } from '../../state/set-context.ts';
import { useAnswer } from '../../workers/use-worker.ts';
import type { FitAnswer, FitQuestion } from './measure.worker.ts';
import { draftKey, isOfStation, type WrittenReadings, writtenReadings } from './written-readings.ts';

/** Fits beside the page, so that none holds it up. */
export const newMeasureWorker = (): Worker =>
  new Worker(new URL('./measure.worker.ts', import.meta.url), { type: 'module', name: 'measure' });

// Always the same nothing, or every drawing would ask about new readings.
const NONE: readonly never[] = [];

/** The readings that a description keeps. */
export function keptReadings(written: unknown): readonly unknown[] {
  const kept = isRecord(written) ? written.readings : undefined;
  return Array.isArray(kept) ? kept : NONE;
}

/** What was typed into the open card, as written, and what follows from it. */
export interface CardFit {
  readonly readings?: WrittenReadings;
  readonly answer?: FitAnswer;
  readonly error: string;
}

/** The name of what a card measures, as its readings keep it. */
function aboutOf(set: SetDescription, card: OfferedMeasurement, station: string | undefined) {
  const { part, coil } = card;
  return {
    coil: part === 'coil' && coil !== undefined ? set.coils[coil]?.name : undefined,
    station: isOfStation(card) ? station : undefined,
  };
}

/** The fit of what stands in the open card. */
export function useFit(
  set: SetDescription,
  card: OfferedMeasurement | undefined,
  predicted: FitQuestion['station'],
): CardFit {
  const { drafts, written, chosen } = useOpenSet();
  const station = chosen.value?.name;
  const key = card && draftKey(card, station);
  const draft = key === undefined ? undefined : drafts.value[key];
  const kept = keptReadings(written.value);
  const readings = useMemo(() => {
    if (!card || !draft || isEmptyDraft(draft)) return undefined;
    const { date, note } = draft.fields;
    return writtenReadings(card, draft, { ...aboutOf(set, card, station), date, note });
  }, [set, card, draft, station]);
  // By content: an offer that is answered again, or another edit, gives new objects that say the same.
  const content = useMemo(() => readings && JSON.stringify([readings.written, kept]), [readings, kept]);
  // Readings of other cards are not asked about again when the reception is.
  const beside = card && isOfStation(card) ? predicted : undefined;
  const question = useMemo((): FitQuestion | undefined => {
    if (key === undefined || content === undefined) return undefined;
    const [written, kept] = JSON.parse(content);
    return { about: 'fit', card: key, set, written, kept, station: beside };
  }, [set, key, content, beside]);
  const { answer, error } = useAnswer<FitQuestion, FitAnswer>(newMeasureWorker, question);
  // The answer before may be of another card.
  return question ? { readings, answer: answer?.card === question.card ? answer : undefined, error } : { error: '' };
}
