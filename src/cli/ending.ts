import type { ContentKind } from './content-kind.ts';
import { wrongOption } from './wrong-option.ts';

const KINDS = { svg: 'an SVG picture', csv: 'a CSV table', wav: 'a WAV sound' } as const;

/** What is to be written, by the ending of its name. @throws InputError for another ending. */
export function endingOf<E extends keyof typeof KINDS>(
  out: string,
  allowed: readonly E[],
): { ending: E; kind: ContentKind } {
  const ending = allowed.find((one) => out.toLowerCase().endsWith(`.${one}`));
  if (!ending) throw wrongOption('--out', `a name ending in ${allowed.map((one) => `.${one}`).join(' or ')}`, out);
  return { ending, kind: KINDS[ending] };
}
