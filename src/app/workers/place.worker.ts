import { arrivalMemory, type TableReading } from '../../engine/index.ts';
import { answerMessages } from './answer-messages.ts';
import { coastFor, loadLand } from './coast.ts';
import { type PlaceFigures, type PlaceQuestion, placeFigures } from './figures.ts';
import { type Outline, type OutlineQuestion, outlineOf } from './outline.ts';
import { type Joined, type JoinQuestion, join, readTableSource, type TableSourceQuestion } from './tables.ts';

type Question = PlaceQuestion | OutlineQuestion | TableSourceQuestion | JoinQuestion;
type Answer = PlaceFigures | Outline | TableReading | Joined;

/** Above this many km a pixel the coarse coastline shows all there is to see. */
const COARSE_FROM = 12;
const memory = arrivalMemory();

async function answer(question: Question): Promise<Answer> {
  switch (question.about) {
    case 'place':
      return placeFigures(question, await coastFor(question.place), memory);
    case 'outline':
      return outlineOf(question, await loadLand(question.kmPerPixel > COARSE_FROM ? 'coarse' : 'fine'));
    case 'table':
      return readTableSource(question);
    case 'join':
      return join(question);
  }
}

answerMessages(answer);
