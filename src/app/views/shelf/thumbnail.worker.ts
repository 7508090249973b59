import { drawCircuit } from '../../../outputs/drawings/index.ts';
import { type Item, sceneToSvg } from '../../../outputs/scene/index.ts';
import { errorText } from '../../../outputs/words/index.ts';
import { readWithStandIns } from '../../description/stand-ins.ts';
import type { Reply } from '../../workers/latest.ts';

export interface ThumbnailQuestion {
  readonly written: unknown;
}

/** At this size letters are not read. */
const withoutTexts = (items: readonly Item[]): readonly Item[] =>
  items.flatMap((item): readonly Item[] =>
    item.kind === 'text' ? [] : item.kind === 'group' ? [{ ...item, items: withoutTexts(item.items) }] : [item],
  );

addEventListener('message', ({ data }: MessageEvent<ThumbnailQuestion>) => {
  let reply: Reply<string>;
  try {
    const { usable } = readWithStandIns(data.written);
    if (usable) {
      const scene = drawCircuit(usable.set);
      reply = { answer: sceneToSvg({ ...scene, items: withoutTexts(scene.items) }) };
    } else reply = { answer: '' };
  } catch (error) {
    reply = { error: errorText(error) };
  }
  postMessage(reply);
});
