import { isLoop } from '../../../engine/kinds/loops.ts';
import type { Reception, StationReception } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { formatQuantity } from '../../../engine/units/format.ts';
import { createWaves, type PointId, waveScene, wavesOfSet } from '../../explain/index.ts';
import { stageLevel, stageSentence, stageTitle } from '../../words/index.ts';
import { Flow } from '../paper/flow.ts';
import { BODY, HEADING, type PaperName, type Sheet, SMALL } from '../paper/page.ts';
import { bestOf, OUT_WORDS } from './best.ts';
import { drivenWords, outTitle, twoCircuitsWords, wavesWords } from './handout-words.ts';
import { fold, kHz, printable } from './words.ts';

/** Height of a line of words over the letters' size, and what stands round the picture, mm. */
const LINE = 1.36;
const AROUND = 16;
const SPAN = 2e-3;

export function handoutSheet(set: SetDescription, reception: Reception, paper: PaperName): Sheet {
  const flow = new Flow({ id: 'handout', title: 'How this set works', set: set.name, paper, file: 'handout' });
  const best = bestOf(reception);
  if (!best) {
    flow.para('No station is listed for this place yet; add those you know of, and this page will have its figures.');
    return flow.finish();
  }
  flow.para(`${printable(best.name)} on ${kHz(best.frequency)} kHz, from the air to the ear. ${drivenWords(set)}`);
  const circuits = twoCircuitsWords(set);
  if (circuits) flow.para(circuits);
  flow.table(
    [
      { title: 'Where', share: 2.6 },
      { title: 'How much', share: 1.6, anchor: 'end' },
      { title: 'What happens there', share: 7.5 },
    ],
    best.path.map((s) => [stageTitle(s), stageLevel(s), stageSentence(s)]),
    { size: 2.6 },
  );
  const trials = trialsOf(set, best);
  const spec = wavesOfSet(set, reception, best.index);
  if (spec) {
    const words = wavesWords(set, reception, best, spec);
    const waves = createWaves(spec);
    const points: readonly PointId[] = ['programme', 'tuned', 'detector', 'phones'];
    const below =
      fold(words, SMALL, flow.width).length * SMALL * LINE +
      trials.reduce((sum, t) => sum + fold(t, BODY, flow.width - 4).length * BODY * LINE + 1.1, HEADING * 2);
    const height = Math.max(70, Math.min(flow.room - below - AROUND, 130));
    const scale = 0.22;
    const width = flow.width / scale;
    const scene = waveScene({
      width,
      height: height / scale,
      rows: points.map((point) => ({ waves, point, title: point === 'phones' ? outTitle(set) : undefined })),
      view: { from: 0, span: SPAN },
      show: {},
      letters: 12,
      title: 'Waves of this set over two thousandths of a second',
    });
    flow.figure(scene, { scale });
    flow.para(words, { small: true });
  }
  flow.heading('To try', 10);
  flow.list(trials, 'dot');
  return flow.finish(`The path of ${printable(best.name)} through the set, with its waves and figures.`);
}

function trialsOf(set: SetDescription, best: StationReception): string[] {
  const name = printable(best.name);
  return [
    isLoop(set.aerial)
      ? `Turn the ${set.aerial.kind === 'frame' ? 'frame' : 'rod'} until ${name} is least. Which way does it lie?`
      : 'Take the earth off, then put it back. Which loses more: the earth, or half of the aerial?',
    ...(set.arrangement.kind === 'two circuits'
      ? [`Part the two coils by a hand’s breadth and tune again. What does ${name} lose, and what do its neighbours?`]
      : []),
    `Tune past ${name} both ways. Over how much of the scale can it be heard? The set passes a band of about ${formatQuantity(best.bandwidth, 'frequency', 2)}.`,
    set.load.kind === 'amplifier'
      ? 'What does the amplifier add, and what was there before it?'
      : `Why does the ${OUT_WORDS[set.load.kind] === 'earpiece' ? 'earpiece' : 'pair of phones'} need no battery, and where does the power for the sound come from?`,
  ];
}
