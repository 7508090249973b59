import { ROW_HEIGHT, SCENE_SOUNDS } from '../../../engine/set/scenes.ts';
import { parseQuantity, type QuantityKind } from '../../../engine/units/parse.ts';
import { isPoint } from '../model/points.ts';
import type { ProgrammeChoice, Settings } from '../model/settings.ts';
import { limited, type View } from '../model/view.ts';
import { isPicture } from '../pictures/facts.ts';
import { type SoundSpeed, type StoryRow, type StoryScene, story } from './story.ts';

const record = (value: unknown): Record<string, unknown> | undefined =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Record<string, unknown>) : undefined;
const text = (value: unknown, most: number): string => (typeof value === 'string' ? value.slice(0, most) : '');
/** A plain number, or text with a unit where a kind is given. */
function number(value: unknown, low: number, high: number, kind?: QuantityKind): number | undefined {
  if (typeof value === 'string' && kind) {
    const parsed = parseQuantity(value, kind);
    return parsed.ok ? number(parsed.value, low, high) : undefined;
  }
  return typeof value === 'number' && value >= low && value <= high ? value : undefined;
}

const yes = (value: unknown): boolean | undefined => (typeof value === 'boolean' ? value : undefined);

const SETTINGS_KEYS = [
  'station',
  'carrier',
  'otherBand',
  'keepsCoil',
  'depth',
  'programme',
  'detector',
  'capacitance',
  'resistance',
  'strength',
  'loadedQ',
  'neighbours',
];
const SHOW_KEYS = ['average', 'cover', 'envelope', 'spectrum', 'alike'];
const ROW_KEYS = ['point', 'title', 'height', 'with'];
const SCENE_KEYS = [
  'title',
  'caption',
  'note',
  'rows',
  'from',
  'span',
  'to',
  'show',
  'settings',
  'picture',
  'hear',
  'sound',
];

/** Keys of somebody's own, to be kept. */
const others = (value: Record<string, unknown>, known: readonly string[]): object =>
  Object.fromEntries(Object.entries(value).filter(([key]) => !known.includes(key)));

/** Settings as kept in a description; what is not understood is left out. */
function readSettings(value: unknown): Settings {
  const v = record(value);
  if (!v) return {};
  const p = record(v.programme);
  const tone = (x: unknown) => number(x, 50, 20e3, 'frequency');
  const programme: ProgrammeChoice | undefined =
    p?.kind === 'tone' && tone(p.frequency) !== undefined
      ? { kind: 'tone', frequency: tone(p.frequency)! }
      : p?.kind === 'two tones' && tone(p.first) !== undefined && tone(p.second) !== undefined
        ? { kind: 'two tones', first: tone(p.first)!, second: tone(p.second)! }
        : p?.kind === 'recording'
          ? { kind: 'recording' }
          : undefined;
  const settings: Settings = {
    station: number(v.station, 0, 1e4),
    carrier: number(v.carrier, 50e3, 5e6, 'frequency'),
    otherBand: yes(v.otherBand),
    keepsCoil: yes(v.keepsCoil),
    depth: number(v.depth, 0, 2, 'ratio'),
    programme,
    detector: typeof v.detector === 'string' ? v.detector.slice(0, 60) : undefined,
    capacitance: number(v.capacitance, 0, 1e-4, 'capacitance'),
    resistance: number(v.resistance, 10, 1e8, 'resistance'),
    strength: number(v.strength, 1e-6, 100, 'voltage'),
    loadedQ: number(v.loadedQ, 0.5, 2000),
    neighbours: yes(v.neighbours),
  };
  return {
    ...others(v, SETTINGS_KEYS),
    ...Object.fromEntries(Object.entries(settings).filter(([, x]) => x !== undefined)),
  };
}

const isSound = (value: unknown): value is SoundSpeed => (SCENE_SOUNDS as readonly unknown[]).includes(value);

/** A scene as kept in a description. @returns undefined for what is no scene. */
export function readScene(value: unknown): StoryScene | undefined {
  const v = record(value);
  if (!v || typeof v.title !== 'string') return undefined;
  const rows = (Array.isArray(v.rows) ? v.rows : []).flatMap((row): StoryRow[] => {
    const r = record(row);
    if (!r || !isPoint(r.point)) return [];
    const own = readSettings(r.with);
    const height = number(r.height, ROW_HEIGHT.min, ROW_HEIGHT.max);
    return [
      {
        ...others(r, ROW_KEYS),
        point: r.point,
        ...(typeof r.title === 'string' ? { title: r.title.slice(0, 80) } : {}),
        ...(height === undefined || height === 1 ? {} : { height }),
        ...(Object.keys(own).length > 0 ? { with: own } : {}),
      },
    ];
  });
  const picture = isPicture(v.picture) ? v.picture : undefined;
  if (rows.length === 0 && !picture) return undefined;
  const view = (x: Record<string, unknown>): View =>
    limited({ from: number(x.from, -10, 60, 'time') ?? 0, span: number(x.span, 1e-9, 60, 'time') ?? 2e-3 });
  const to = record(v.to);
  const show = record(v.show);
  const settings = readSettings(v.settings);
  return {
    ...others(v, SCENE_KEYS),
    title: text(v.title, 120),
    caption: text(v.caption, 600),
    note: text(v.note, 5000),
    rows: rows.slice(0, 8),
    ...view(v),
    ...(to
      ? { to: { ...others(to, ['from', 'span', 'seconds']), ...view(to), seconds: number(to.seconds, 0.5, 120) ?? 8 } }
      : {}),
    ...(show
      ? {
          show: {
            ...others(show, SHOW_KEYS),
            average: show.average === true,
            cover: show.cover === true,
            envelope: show.envelope === true,
            spectrum: show.spectrum === true,
            alike: show.alike === true,
          },
        }
      : {}),
    ...(Object.keys(settings).length > 0 ? { settings } : {}),
    ...(picture ? { picture } : {}),
    ...(isPoint(v.hear) ? { hear: v.hear } : {}),
    ...(isSound(v.sound) ? { sound: v.sound } : {}),
  };
}

/** The scenes of a description, or the story that comes with the tool. */
export function scenesOf(written: unknown): { readonly scenes: readonly StoryScene[]; readonly own: boolean } {
  const kept = record(written)?.scenes;
  if (!Array.isArray(kept)) return { scenes: story(), own: false };
  const scenes = kept.flatMap((scene) => readScene(scene) ?? []);
  return scenes.length > 0 ? { scenes, own: true } : { scenes: story(), own: false };
}

/** The description with these scenes in it, and those that could not be read; undefined takes all out again. */
export function withScenes<T>(written: T, scenes: readonly StoryScene[] | undefined): T {
  const { scenes: before, ...rest } = (record(written) ?? {}) as Record<string, unknown>;
  if (scenes === undefined) return rest as T;
  const unread = Array.isArray(before) ? before.filter((scene) => !readScene(scene)) : [];
  return { ...rest, scenes: [...scenes, ...unread] } as T;
}
