import { arrivalMemory } from '../../engine/place/stations/arrival.ts';
import { readStationTable, type TableQuestion, type TableReading } from '../../engine/set/station-table.ts';
import { coastFor, loadLand } from './coast.ts';
import { type PlaceFigures, type PlaceQuestion, placeFigures } from './figures.ts';
import type { Reply } from './latest.ts';
import { type Outline, type OutlineQuestion, outlineOf } from './outline.ts';

type Question = PlaceQuestion | OutlineQuestion | TableQuestion;
type Answer = PlaceFigures | Outline | TableReading;

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
      return readStationTable(question);
  }
}

// A thin shell: the engine answers, this hands the answer back.
addEventListener('message', async ({ data }: MessageEvent<Question>) => {
  let reply: Reply<Answer>;
  try {
    reply = { answer: await answer(data) };
  } catch (error) {
    reply = { error: (error as Error).message };
  }
  postMessage(reply);
});
