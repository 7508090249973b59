import { askOnce } from '../../../workers/ask-once.ts';
import type { CardAnswers, CardQuestion } from './sound-card.worker.ts';

/** What is recorded or to be played, worked out beside the page. @throws Error with what went wrong */
export const askCard = <K extends CardQuestion['about']>(
  question: Extract<CardQuestion, { readonly about: K }>,
): Promise<CardAnswers[K]> =>
  askOnce(
    new Worker(new URL('./sound-card.worker.ts', import.meta.url), { type: 'module', name: 'sound-card' }),
    question,
  );
