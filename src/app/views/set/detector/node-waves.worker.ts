import {
  type NodeWavesOptions,
  nodeWaves,
  type SetDescription,
  setCircuit,
  type WavePlace,
  wavePlaces,
} from '../../../../engine/index.ts';
import { type ShownWaves, shownWaves } from '../../../../outputs/explain/node-waves/index.ts';
import { errorText } from '../../../../outputs/words/index.ts';
import type { When } from '../../../description/when.ts';
import { coastFor } from '../../../workers/coast.ts';

export interface NodeWavesQuestion {
  readonly set: SetDescription;
  readonly time?: When;
  readonly options: Pick<NodeWavesOptions, 'station' | 'places' | 'neighbours' | 'begin' | 'duration'>;
}

export type NodeWavesReply =
  | { readonly places: readonly WavePlace[] }
  | { readonly done: number }
  | { readonly answer: ShownWaves }
  | { readonly error: string };

const say = (reply: NodeWavesReply, transfer: Transferable[] = []) => postMessage(reply, { transfer });

/** Milliseconds between two words of progress. */
const EVERY = 60;

// One run; whoever wants it stopped ends the worker.
addEventListener('message', async ({ data }: MessageEvent<NodeWavesQuestion>) => {
  try {
    const { set, time, options } = data;
    let reportedAt = 0;
    const places = wavePlaces(setCircuit(set));
    say({ places });
    const here = options.places?.filter((id) => places.some((p) => p.id === id)) ?? [];
    const run = nodeWaves(set, {
      ...options,
      places: here.length > 0 ? here : undefined,
      time,
      coast: await coastFor(set.place),
      progress: (done) => {
        const now = performance.now();
        if (now - reportedAt > EVERY) {
          reportedAt = now;
          say({ done });
        }
        return true;
      },
    });
    const answer = shownWaves(run);
    say(
      { answer },
      answer.waves.flatMap(({ kept }) => [kept.samples.buffer, kept.blocks.buffer, kept.wide.buffer] as ArrayBuffer[]),
    );
  } catch (error) {
    say({ error: errorText(error) });
  }
});
