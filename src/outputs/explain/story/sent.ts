import { detectorModel } from '../../../engine/kinds/models.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { ORDINARY } from '../model/from-set.ts';
import { buffersOf, type WaveParts } from '../model/parts.ts';
import type { PointId } from '../model/points.ts';
import { type Settings, withSettings } from '../model/settings.ts';
import type { WaveProgramme } from '../model/wave-programme.ts';
import type { WaveSpec } from '../model/wave-spec.ts';
import { createWaves, type Waves } from '../model/waves.ts';
import type { PictureFacts } from '../pictures/index.ts';
import type { CaptionFigures } from './figures.ts';
import { type Prepared, type Preparer, rowsOf, settingsKey } from './prepared.ts';
import type { StoryScene } from './story.ts';

/** A scene's waves, worked out, as plain data that goes from one thread to another. */
export interface SentScene {
  /** The detector is a function of the set: it is made again over there. */
  readonly base: Omit<WaveSpec, 'detector'>;
  readonly ownDetector: boolean;
  /** By settings. */
  readonly parts: Readonly<Record<string, WaveParts>>;
  readonly facts: Omit<PictureFacts, 'waves' | 'detector'>;
  readonly figures: CaptionFigures;
}

export type SceneDrawn = Pick<StoryScene, 'rows' | 'settings' | 'show' | 'picture'>;

/** Points that something on the stage is drawn from, besides the rows. */
const pointsOfPicture = ({ picture }: SceneDrawn): readonly PointId[] =>
  picture === 'charge' ? ['tuned', 'phones'] : [];

/** The same for scenes that need the same waves. */
export const sceneKey = ({ rows, settings = {}, show, picture }: SceneDrawn): string =>
  JSON.stringify([
    rows.map((r) => [r.point, settingsKey({ ...settings, ...r.with })]),
    settingsKey(settings),
    show?.spectrum === true,
    picture,
  ]);

/** Work a scene out and pack it. @returns it, and the memory to hand over; the preparer forgets its waves. */
export function packed(prepare: Preparer, scene: SceneDrawn): { sent: SentScene; memory: ArrayBuffer[] } {
  const prepared = prepare(scene);
  const { base, waves } = prepared;
  const lines = scene.show?.spectrum === true;
  const parts: Record<string, WaveParts> = {};
  const keep = (settings: Settings, from: Waves) => {
    parts[settingsKey(settings)] = plain(from.parts);
  };
  scene.rows.forEach((row, i) => {
    prepared.rows[i].waves.make([row.point], lines);
  });
  waves.make(pointsOfPicture(scene), false);
  const { figures } = prepared;
  scene.rows.forEach((row, i) => {
    keep({ ...scene.settings, ...row.with }, prepared.rows[i].waves);
  });
  keep(scene.settings ?? {}, waves);
  const { waves: _waves, detector: _detector, ...facts } = prepared.facts;
  const { detector, ...rest } = base;
  prepare.forget();
  return {
    sent: { base: rest, ownDetector: detector !== 'perfect', parts, facts, figures },
    memory: [...new Set(Object.values(parts).flatMap(buffersOf))],
  };
}

/** The same scene put together again where it is drawn. */
export function unpacked(
  sent: SentScene,
  scene: SceneDrawn,
  set?: SetDescription,
  recording?: WaveProgramme,
): Prepared {
  const detector = sent.ownDetector && set ? detectorModel(set.detector) : ORDINARY.detector;
  const base: WaveSpec = { ...sent.base, detector };
  const made = new Map<string, Waves>();
  const wavesFor = (settings: Settings): Waves => {
    const key = settingsKey(settings);
    let waves = made.get(key);
    if (!waves) made.set(key, (waves = createWaves(withSettings(base, settings, recording), sent.parts[key])));
    return waves;
  };
  const waves = wavesFor(scene.settings ?? {});
  return {
    base,
    waves,
    rows: rowsOf(scene, wavesFor),
    facts: { ...sent.facts, waves, detector: waves.spec.detector },
    figures: sent.figures,
  };
}

/** Without the methods, which cannot be sent. */
const plain = ({ sampled, ...rest }: WaveParts): WaveParts => ({
  ...rest,
  sampled: Object.fromEntries(
    Object.entries(sampled).map(([part, { samples, period, lows, highs, rest }]) => [
      part,
      { samples, period, lows, highs, rest },
    ]),
  ),
});
