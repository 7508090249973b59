import type { Bank } from './bank.ts';
import type { EnvelopeLaw } from './device-law.ts';
import { sortDistant, sumDistant } from './distant-solve.ts';
import { type Distant, type EnvelopeBlock, type EnvelopeState, EVERY } from './envelope-state.ts';
import { type Junction, joinJunction } from './junction.ts';
import { solveJunction } from './junction-solve.ts';
import { advanceAudio, advanceRadio, takeCurrents, writeAudio, writeRadio } from './network-step.ts';

/** Everything that is stepped: both sides of the network, and the detector between them. */
export interface Stepped {
  readonly radio: Bank;
  readonly audio: Bank;
  readonly junction: Junction;
  readonly distant: Distant;
  readonly block: EnvelopeBlock;
  readonly outputBias: Float64Array;
  readonly state: EnvelopeState;
}

/**
 * Step the network and its detector from step `from` to `to` of a block, solved together at every step (see
 * `solveJunction`). Distant stations are solved with the rest at every `EVERY`th step and stand still in between.
 * @param bias mean voltage across the junction with no signal, V.
 */
export function envelopeSteps(stepped: Stepped, law: EnvelopeLaw, bias: number, from: number, to: number): void {
  const { radio, audio, junction, distant, block, outputBias, state } = stepped;
  const { leakage = 0 } = law;
  const far = distant.count;
  joinJunction(junction, law, radio, audio);
  state.w = Math.exp(state.u);
  for (let n = from; n < to; n++) {
    // w follows u by factors; set right now and then.
    if ((n & 63) === 0) state.w = Math.exp(state.u);
    advanceRadio(radio, block, n, state);
    advanceAudio(audio, bias, state);
    const isDue = far > 0 && n % EVERY === 0;
    if (isDue) sortDistant(junction, distant, block.distantOpen, (n / EVERY) * far, state);
    solveJunction(junction, distant, isDue, state);
    if (isDue) sumDistant(junction, distant, state);
    takeCurrents(radio, audio, state);
    writeAudio(audio, outputBias, block.audio, n, state);
    if (block.radio !== undefined) writeRadio(radio, block, block.radio, n, state);
    if (block.current !== undefined) {
      block.current.re[n] = state.ir + leakage * state.vr;
      block.current.im[n] = state.ii + leakage * state.vi;
    }
    state.sr = block.sourceRe[n];
    state.si = block.sourceIm[n];
  }
  state.steps += to - from;
}
