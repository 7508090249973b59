import type { Reception } from '../../engine/reception/types.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import { type Figures, figuresOf } from './figures.ts';
import { ORDINARY, pictureFacts, wavesOfSet } from './from-set.ts';
import type { PictureFacts } from './pictures/index.ts';
import type { Programme } from './programme.ts';
import { type Settings, withSettings } from './settings.ts';
import type { StoryScene } from './story.ts';
import type { WaveRow } from './wave-window.ts';
import { createWaves, type WaveSpec, type Waves } from './waves.ts';

/** A scene with its waves made. */
export interface Prepared {
  /** Those of the scene itself; rows may have others. */
  readonly waves: Waves;
  readonly rows: readonly WaveRow[];
  readonly facts: PictureFacts;
  readonly figures: Figures;
}

/** Waves kept for as many different settings. */
const KEPT = 16;

/**
 * Makes scenes ready to be drawn, for one set, and remembers the waves of the last few settings.
 * @param recording stands for the programme where a scene asks for a recording.
 */
export function preparer(set?: SetDescription, reception?: Reception, recording?: Programme) {
  const bases = new Map<number | undefined, WaveSpec>();
  const kept = new Map<string, Waves>();
  const baseFor = (station: number | undefined): WaveSpec => {
    let base = bases.get(station);
    if (!base) {
      base = (set && reception && wavesOfSet(set, reception, station)) ?? ORDINARY;
      bases.set(station, base);
    }
    return base;
  };
  const wavesFor = (settings: Settings): Waves => {
    const key = JSON.stringify(settings, Object.keys(settings).sort().concat(['kind', 'frequency', 'first', 'second']));
    let waves = kept.get(key);
    if (waves) kept.delete(key);
    else waves = createWaves(withSettings(baseFor(settings.station), settings, recording));
    kept.set(key, waves);
    for (const oldest of kept.keys()) {
      if (kept.size <= KEPT) break;
      kept.delete(oldest);
    }
    return waves;
  };
  return (scene: Pick<StoryScene, 'rows' | 'settings'>): Prepared => {
    const settings = scene.settings ?? {};
    const waves = wavesFor(settings);
    let figures: Figures | undefined;
    return {
      waves,
      rows: scene.rows.map(({ point, title, with: own }) => ({
        point,
        title,
        waves: own ? wavesFor({ ...settings, ...own }) : waves,
      })),
      facts: pictureFacts(waves, set, reception, settings.station),
      // Only text needs them, and they may ask for the phones' wave: worked out when first read.
      get figures() {
        figures ??= figuresOf(waves, set, reception, settings.station);
        return figures;
      },
    };
  };
}
