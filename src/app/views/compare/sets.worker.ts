import { comparedCurves, compareSets } from '../../../engine/index.ts';
import { comparedOnBands } from '../../../outputs/words/index.ts';
import { readWithStandIns } from '../../description/stand-ins.ts';
import { answerMessages } from '../../workers/answer-messages.ts';
import { coastFor } from '../../workers/coast.ts';
import type { SetsAnswer, SetsQuestion } from './sets-question.ts';

answerMessages(async ({ first, others, station, time }: SetsQuestion): Promise<SetsAnswer> => {
  const read = others.map(({ name, written, lastValid }) => ({
    name,
    usable: readWithStandIns(written, lastValid).usable,
  }));
  const sets = read.flatMap(({ name, usable }) => (usable ? [{ name, ...usable }] : []));
  const unread = read.flatMap(({ name, usable }) => (usable ? [] : [name]));
  const withStandIns = sets.flatMap(({ name, standIns }) => (standIns.length > 0 ? [name] : []));
  if (sets.length === 0) return { curves: [], unread, withStandIns };
  const when = { time, coast: await coastFor(first.place) };
  const compared = comparedOnBands(compareSets([first, ...sets.map(({ set }) => set)], station, when));
  return { compared, curves: comparedCurves(compared, when), unread, withStandIns };
});
