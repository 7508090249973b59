import { strToU8, zipSync } from 'fflate';
import {
  type LogAgainstPrediction,
  logAgainstPrediction,
  readLog,
  receiveOnBestBands,
  receiveRanged,
} from '../../../engine/index.ts';
import {
  bestSound,
  type WriteUpPhoto,
  writeUp,
  writeUpHtml,
  writeUpMarkdown,
} from '../../../outputs/write-up/index.ts';
import { answerMessages } from '../../workers/answer-messages.ts';
import { coastFor } from '../../workers/coast.ts';
import { sharedPhoto } from './shared-photo.ts';
import type { WriteUpAnswer, WriteUpQuestion } from './write-up-question.ts';

answerMessages(async (question: WriteUpQuestion): Promise<WriteUpAnswer> => {
  const { set, written, position, format, stem } = question;
  const photos: WriteUpPhoto[] = [];
  const unread: string[] = [];
  for (const { file, caption } of question.photos) {
    const photo = await sharedPhoto(file);
    if (photo) photos.push({ ...photo, caption });
    else unread.push(file.name);
  }
  if (unread.length > 0) return { unread };
  const coast = await coastFor(set.place);
  const when = { time: question.time, coast };
  const reception = receiveRanged(set, when);
  // The figures are those of the place, also where its position is kept to oneself.
  const shown = position === 'none' ? { ...set, place: { ...set.place, position: undefined } } : set;
  const about = writeUp(shown, written, reception, {
    photos,
    log: logOf(question, coast),
    sound: bestSound(set, reception, when),
    exactPosition: position === 'exact',
  });
  if (format === 'html') return { file: new Blob([writeUpHtml(about)], { type: 'text/html' }), name: `${stem}.html` };
  const { text, files } = writeUpMarkdown(about, stem);
  const all = [{ name: `${stem}.md`, data: text }, ...files];
  const bytes = all.map(({ name, data }) => [name, typeof data === 'string' ? strToU8(data) : data] as const);
  const archive = zipSync(Object.fromEntries(bytes));
  return { file: new Blob([archive as BlobPart], { type: 'application/zip' }), name: `${stem}-markdown.zip` };
});

function logOf(
  { set, log }: WriteUpQuestion,
  coast: Awaited<ReturnType<typeof coastFor>>,
): LogAgainstPrediction | undefined {
  if (log === undefined) return undefined;
  const at = (light: 'day' | 'night') => receiveOnBestBands(set, { time: light, coast });
  return logAgainstPrediction({ day: at('day'), night: at('night') }, set.place.position, readLog(log).entries);
}
