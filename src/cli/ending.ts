import { wrongOption } from './wrong-option.ts';

type Ending = 'svg' | 'png' | 'csv' | 'wav' | 'pdf' | 'gif' | 'mp4' | 'webm' | 'vtt';

/** What is to be written, by the ending of its name. @throws InputError for another ending. */
export function endingOf<E extends Ending>(out: string, allowed: readonly E[], option = '--out'): E {
  const ending = allowed.find((one) => out.toLowerCase().endsWith(`.${one}`));
  if (!ending) throw wrongOption(option, { code: 'ending', endings: allowed }, out);
  return ending;
}
