import type { Reception } from '../../engine/reception/types.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import { isLoop } from '../../engine/set/loops.ts';
import { formatNumber, formatQuantity } from '../../engine/units/format.ts';
import { createWaves, type PointId, waveScene, wavesOfSet } from '../explain/index.ts';
import { bestOf, OUT_WORDS } from './best.ts';
import { Flow } from './flow.ts';
import type { PaperName, Sheet } from './page.ts';
import { printable } from './words.ts';

const kHz = (f: number): string => formatNumber(f / 1e3, 5);

/** Where the power comes from. */
const drivenWords = (set: SetDescription): string =>
  set.load.kind === 'amplifier'
    ? 'Up to the amplifier nothing drives it but what the aerial catches.'
    : set.detector.kind === 'valve'
      ? 'Nothing drives the sound but what the aerial catches; the heater only frees the electrons.'
      : 'Nothing drives the set but what the aerial catches.';

export function handoutSheet(set: SetDescription, reception: Reception, paper: PaperName): Sheet {
  const flow = new Flow({ id: 'handout', title: 'How this set works', set: set.name, paper, file: 'handout' });
  const best = bestOf(reception);
  if (!best) {
    flow.para('No station is listed for this place yet; add those you know of, and this page will have its figures.');
    return flow.finish();
  }
  flow.para(`${printable(best.name)} on ${kHz(best.frequency)} kHz, from the air to the ear. ${drivenWords(set)}`);
  flow.table(
    [
      { title: 'Where', share: 2.6 },
      { title: 'How much', share: 1.6, anchor: 'end' },
      { title: 'What happens there', share: 7.5 },
    ],
    best.path.map((s) => [s.title, s.text, s.sentence]),
    { size: 2.6 },
  );
  const spec = wavesOfSet(set, reception, best.index);
  if (spec) {
    const waves = createWaves(spec);
    const points: readonly PointId[] = ['programme', 'tuned', 'detector', 'phones'];
    const height = Math.max(70, Math.min(flow.room - 34, 130));
    const scale = 0.22;
    const scene = waveScene({
      width: flow.width / scale,
      height: height / scale,
      rows: points.map((point) => ({ waves, point })),
      view: { from: 0, span: 2e-3 },
      show: {},
      letters: 12,
      title: 'Waves of this set over two thousandths of a second',
    });
    flow.figure(scene, { scale });
  }
  flow.para(
    `Top to bottom: the programme, a tone standing for voice and music; the tuned circuit, where the carrier swings up and down hundreds of times within each wiggle of the tone, as much above as below, so that on average there is nothing to hear; after the detector, which lets one half through, the average follows the programme; in the ${OUT_WORDS[set.load.kind]} only that average is left.`,
    { small: true },
  );
  flow.heading('To try', 10);
  flow.list(
    [
      isLoop(set.aerial)
        ? `Turn the ${set.aerial.kind === 'frame' ? 'frame' : 'rod'} until ${printable(best.name)} is least. Which way does it lie?`
        : 'Take the earth off, then put it back. Which loses more: the earth, or half of the aerial?',
      `Tune past ${printable(best.name)} both ways. Over how much of the scale can it be heard? The set passes a band of about ${formatQuantity(best.bandwidth, 'frequency', 2)}.`,
      set.load.kind === 'amplifier'
        ? 'What does the amplifier add, and what was there before it?'
        : `Why does the ${OUT_WORDS[set.load.kind] === 'earpiece' ? 'earpiece' : 'pair of phones'} need no battery, and where does the power for the sound come from?`,
    ],
    'dot',
  );
  return flow.finish(`The path of ${printable(best.name)} through the set, with its waves and figures.`);
}
