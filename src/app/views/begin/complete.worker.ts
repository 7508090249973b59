import { completeDescription } from '../../../engine/index.ts';
import { beginWords } from '../../../outputs/words/index.ts';
import { type Bench, knownOf } from '../../description/bench.ts';
import { type Reading, readWithStandIns } from '../../description/stand-ins.ts';
import { answerMessages } from '../../workers/answer-messages.ts';

// What is left empty is completed, the turns by trying, and the whole is read.
answerMessages<Bench, Reading>((bench) => readWithStandIns(completeDescription(knownOf(bench), beginWords.names)));
