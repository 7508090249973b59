import { comparedCurves, compareSets } from '../../../engine/index.ts';
import { readWithStandIns } from '../../description/stand-ins.ts';
import { answerMessages } from '../../workers/answer-messages.ts';
import { coastFor } from '../../workers/coast.ts';
import type { SetsAnswer, SetsQuestion } from './sets-question.ts';

answerMessages(async ({ first, others, station, time }: SetsQuestion): Promise<SetsAnswer> => {
  const read = others.map(({ id, name, written, lastValid }) => ({
    id,
    name,
    usable: readWithStandIns(written, lastValid).usable,
  }));
  const sets = read.flatMap(({ id, name, usable }) => (usable ? [{ id, name, ...usable }] : []));
  const unread = read.flatMap(({ name, usable }) => (usable ? [] : [name]));
  const withStandIns = sets.flatMap(({ name, standIns }) => (standIns.length > 0 ? [name] : []));
  const ids = sets.map(({ id }) => id);
  if (sets.length === 0) return { ids, curves: [], unread, withStandIns };
  const when = { time, coast: await coastFor(first.place) };
  const compared = compareSets([first, ...sets.map(({ set }) => set)], station, when);
  return { ids, compared, curves: comparedCurves(compared, when), unread, withStandIns };
});
