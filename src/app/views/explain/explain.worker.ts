import { type Preparer, packed, preparer } from '../../../outputs/explain/index.ts';
import { coastFor } from '../../workers/coast.ts';
import type { MakerAnswer, MakerQuestion, Opening, Order } from './maker.ts';
import { waveProblemText } from './scene-problem.ts';
import { take } from './take.ts';

let prepare: Preparer = preparer();

async function open({ set, reception, recording, time }: Opening): Promise<void> {
  const coast = set && (await coastFor(set.place));
  prepare = preparer(set, reception, recording, { time, coast });
}

async function answer(order: Order): Promise<[Record<string, unknown>, Transferable[]]> {
  if ('open' in order) {
    await open(order.open);
    return [{}, []];
  }
  if ('take' in order) {
    const taken = await take(prepare, order.take);
    prepare.forget();
    return [{ taken }, taken instanceof Float32Array ? [taken.buffer] : []];
  }
  const { sent, memory } = packed(prepare, order.make);
  return [{ sent }, memory];
}

// One after another, in the order they were asked: opening a set may have to wait for its coastline.
let line: Promise<void> = Promise.resolve();
addEventListener('message', ({ data }: MessageEvent<MakerQuestion>) => {
  line = line.then(async () => {
    try {
      const [result, transfer] = await answer(data);
      postMessage({ id: data.id, ...result } as MakerAnswer, { transfer });
    } catch (error) {
      postMessage({ id: data.id, error: waveProblemText(error) } satisfies MakerAnswer);
    }
  });
});
