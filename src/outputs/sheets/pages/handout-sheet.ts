import { isLoop } from '../../../engine/kinds/loops.ts';
import type { Reception, StationReception } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { createWaves, type PointId, waveScene, wavesOfSet } from '../../explain/index.ts';
import { USUAL_TONE } from '../../explain/model/wave-programme.ts';
import { stageLevel, stageSentence, stageTitle, handoutSheetWords as texts } from '../../words/index.ts';
import { Flow } from '../paper/flow.ts';
import { HEADING, PAGE_BODY, PAGE_SMALL, type PaperName, type Sheet } from '../paper/page.ts';
import { bestOf } from './best.ts';
import { circuitTags, depthOf, neighboursShown, powerOf, smoothingOf } from './handout-facts.ts';
import { fold } from './words.ts';

/** Height of a line of words over the letters' size, and what stands round the picture, mm. */
const LINE = 1.36;
const AROUND = 16;
const SPAN = 2e-3;

export function handoutSheet(set: SetDescription, reception: Reception, paper: PaperName): Sheet {
  const flow = new Flow({ id: 'handout', title: texts.title, set: set.name, paper, file: 'handout' });
  const best = bestOf(reception);
  if (!best) {
    flow.para(texts.noStation);
    return flow.finish();
  }
  flow.para(texts.intro({ station: best.name, frequency: best.frequency, power: powerOf(set) }));
  const circuits = circuitTags(set);
  if (circuits) flow.para(texts.twoCircuits(circuits));
  flow.table(
    [
      { title: texts.stages.where, share: 2.6 },
      { title: texts.stages.level, share: 1.6, anchor: 'end' },
      { title: texts.stages.happens, share: 7.5 },
    ],
    best.path.map((s) => [stageTitle(s), stageLevel(s), stageSentence(s)]),
    { size: 2.6 },
  );
  const trials = trialsOf(set, best);
  const spec = wavesOfSet(set, reception, best.index);
  if (spec) {
    const words = texts.picture({
      load: set.load.kind,
      wiring: set.detector.wiring,
      cycles: spec.carrier / USUAL_TONE,
      depth: depthOf(set, reception, best, spec),
      neighbours: neighboursShown(spec),
    });
    const waves = createWaves(spec);
    const points: readonly PointId[] = ['programme', 'tuned', 'detector', 'phones'];
    const below =
      fold(words, PAGE_SMALL, flow.width).length * PAGE_SMALL * LINE +
      trials.reduce((sum, t) => sum + fold(t, PAGE_BODY, flow.width - 4).length * PAGE_BODY * LINE + 1.1, HEADING * 2);
    const height = Math.max(70, Math.min(flow.room - below - AROUND, 130));
    const scale = 0.22;
    const width = flow.width / scale;
    const scene = waveScene({
      width,
      height: height / scale,
      rows: points.map((point) => ({
        waves,
        point,
        title: point === 'phones' ? texts.lastTrace(smoothingOf(set), set.load.kind) : undefined,
      })),
      view: { from: 0, span: SPAN },
      show: {},
      letters: 12,
      title: texts.waves,
    });
    flow.figure(scene, { scale });
    flow.para(words, { small: true });
  }
  flow.heading(texts.toTry, 10);
  flow.list(trials, 'dot');
  return flow.finish(texts.description(best.name));
}

function trialsOf({ aerial, arrangement, load }: SetDescription, best: StationReception): string[] {
  const { trials } = texts;
  const station = best.name;
  return [
    isLoop(aerial) ? trials.turn(aerial.kind, station) : trials.earth,
    ...(arrangement.kind === 'two circuits' ? [trials.coils(station)] : []),
    trials.tune({ station, bandwidth: best.bandwidth }),
    trials.battery(load.kind),
  ];
}
