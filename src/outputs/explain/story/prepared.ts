import type { FieldOptions } from '../../../engine/reception/path/field.ts';
import type { Reception } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { ORDINARY, ordinaryPoint, pictureFacts, setsByCarrier, wavesOfSet, workingPointOf } from '../model/from-set.ts';
import { carrierOf, type Settings, withSettings, workingPointKey, workingPointWith } from '../model/settings.ts';
import type { WaveProgramme } from '../model/wave-programme.ts';
import type { WaveSpec } from '../model/wave-spec.ts';
import { createWaves, type Waves } from '../model/waves.ts';
import type { PictureFacts } from '../pictures/index.ts';
import type { WaveRow } from '../stage/wave-row.ts';
import { type CaptionFigures, figuresOf } from './figures.ts';
import type { StoryScene } from './story.ts';

/** What of a scene its waves depend on. */
export type SceneWaves = Pick<StoryScene, 'rows' | 'settings'>;

/** A scene with its waves made. */
export interface Prepared {
  /** The set's own waves, before anything was turned. */
  readonly base: WaveSpec;
  /** Those of the scene itself; rows may have others. */
  readonly waves: Waves;
  readonly rows: readonly WaveRow[];
  readonly facts: PictureFacts;
  readonly figures: CaptionFigures;
}

export interface Preparer {
  (scene: SceneWaves): Prepared;
  /** Let go of all waves made so far. */
  forget(): void;
}

/** Waves kept for as many different settings. */
const KEPT = 8;

/** A carrier that is turned goes through many. */
const KEPT_POINTS = 40;
const newest = (points: WaveSpec['others'] = {}): WaveSpec['others'] =>
  Object.fromEntries(Object.entries(points).slice(1 - KEPT_POINTS));

/** The same for settings that say the same. */
export const settingsKey = (settings: Settings): string =>
  JSON.stringify(settings, Object.keys(settings).sort().concat(['kind', 'frequency', 'first', 'second']));

/** The set on another carrier with its own coil and with the carrier's, where a scene has both. */
function coilsAt(own: WaveSpec, settings: Settings) {
  const { atTuned, atDetector, loadedQ } = own;
  const carrier = carrierOf(settings, own.carrier);
  const pointWith = (keepsCoil: boolean) => workingPointWith(own, { ...settings, keepsCoil });
  const kept = pointWith(true);
  // The ordinary set is no other with another coil.
  const changed = pointWith(false) ?? { atTuned, atDetector, loadedQ };
  return carrier !== undefined && kept?.reach ? { carrier, kept, changed, reach: kept.reach } : undefined;
}

/** Rows of a scene with the waves that are made for their settings. */
export const rowsOf = ({ rows, settings = {} }: SceneWaves, wavesFor: (settings: Settings) => Waves): WaveRow[] =>
  rows.map(({ point, title, height, with: own }) => ({
    point,
    title,
    height,
    waves: wavesFor(own ? { ...settings, ...own } : settings),
  }));

/**
 * Makes scenes ready to be drawn, for one set, and remembers the waves of the last few settings.
 * @param recording stands for the programme where a scene asks for a recording.
 * @param field time of day and coastline the reception was worked out with.
 */
export function preparer(
  set?: SetDescription,
  reception?: Reception,
  recording?: WaveProgramme,
  field?: FieldOptions,
): Preparer {
  const bases = new Map<number | undefined, WaveSpec>();
  const kept = new Map<string, Waves>();
  /** Stations for which the ordinary set stands in. */
  const ordinary = new Set<number | undefined>();
  const sets = set && setsByCarrier(set, field);
  const baseFor = (settings: Settings): WaveSpec => {
    const { station, detector, keepsCoil } = settings;
    const known = bases.get(station);
    const own = known ? undefined : set && reception && wavesOfSet(set, reception, station, field);
    if (!known && !own) ordinary.add(station);
    let base = known ?? own ?? ORDINARY;
    const key = workingPointKey(settings, base.carrier);
    if (key !== undefined && !Object.hasOwn(base.others ?? {}, key)) {
      const carrier = key === detector ? undefined : carrierOf(settings, base.carrier);
      const point = ordinary.has(station)
        ? ordinaryPoint(carrier, keepsCoil)
        : set && reception && workingPointOf(set, reception, station, { detector, carrier, keepsCoil }, field, sets);
      if (point) base = { ...base, others: { ...newest(base.others), [key]: point } };
    }
    if (base !== known) bases.set(station, base);
    return base;
  };
  const wavesFor = (settings: Settings): Waves => {
    const key = settingsKey(settings);
    let waves = kept.get(key);
    if (waves) kept.delete(key);
    else waves = createWaves(withSettings(baseFor(settings), settings, recording));
    kept.set(key, waves);
    for (const oldest of kept.keys()) {
      if (kept.size <= KEPT) break;
      kept.delete(oldest);
    }
    return waves;
  };
  const prepare = (scene: SceneWaves): Prepared => {
    const settings = scene.settings ?? {};
    const waves = wavesFor(settings);
    let figures: CaptionFigures | undefined;
    // Rows first: what their detectors need is then in the base.
    const rows = rowsOf(scene, wavesFor);
    return {
      base: baseFor(settings),
      waves,
      rows,
      facts: pictureFacts(waves, set, reception, settings.station),
      // Only text needs them, and they may ask for the phones' wave: worked out when first read.
      get figures() {
        figures ??= figuresOf(waves, set, reception, settings.station, {
          coils: coilsAt(baseFor(settings), settings),
          rowVoltages: rows.length > 0 ? rows.map((row) => row.waves.spec.atDetector) : undefined,
        });
        return figures;
      },
    };
  };
  return Object.assign(prepare, { forget: () => kept.clear() });
}
