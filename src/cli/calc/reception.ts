import { drawnInputs, readValue, receiveRanged, setCircuit, trialsOf } from '../../engine/index.ts';
import { problemMessage, readNote, warningSentences, writtenReception } from '../../outputs/words/index.ts';
import { packagedCoastFor } from '../coast.ts';
import { suggestionsFor } from '../suggestions.ts';
import { type Calculation, refused } from './calculation.ts';

/** A whole description in, every level on every station's path out. */
export const receptionCalculation: Calculation = {
  name: 'reception',
  example: { format: 'faintwave-set/1', name: '…', place: { name: '…', stations: [] }, '…': 'see examples/' },
  run(input) {
    const read = readValue(input);
    if (!read.ok)
      return {
        ok: false,
        problems: read.problems.map((p) => ({
          path: p.path || '(top)',
          message: problemMessage(p),
        })),
      };
    try {
      const when = { coast: packagedCoastFor(read.set.place) };
      const reception = receiveRanged(read.set, when);
      const { dial, warnings, ...rest } = writtenReception(reception);
      const { levels: _, ...dialAnswer } = dial;
      return {
        ok: true,
        answer: {
          ...rest,
          suggestions: suggestionsFor(trialsOf(read.set, when), reception),
          dial: dialAnswer,
          inputs: drawnInputs(setCircuit(read.set), when),
          warnings: [...read.notes.map(readNote), ...warningSentences(warnings)],
        },
      };
    } catch (error) {
      return { ok: false, problems: [refused(input, error)] };
    }
  },
};
