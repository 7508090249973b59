import { type MeasuredFigure, measuredFigures, type SetDescription } from '../../../../engine/index.ts';
import { answerMessages } from '../../../workers/answer-messages.ts';

answerMessages<SetDescription, readonly MeasuredFigure[]>(measuredFigures);
