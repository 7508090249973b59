import { SCENE_SOUNDS } from '../../../engine/set/scenes.ts';
import { type StoryId, storyTexts } from '../../words/index.ts';
import { POINTS, type PointId } from '../model/points.ts';
import { BAND_CARRIERS, type Settings } from '../model/settings.ts';
import type { PictureId } from '../pictures/index.ts';
import type { Show } from '../stage/wave-window.ts';

/** One row of a prepared view; `with` turns something for this row alone. */
export interface StoryRow {
  readonly point: PointId;
  readonly title?: string;
  /** Against the other rows; left out: 1. */
  readonly height?: number;
  readonly with?: Settings;
}

export const SOUND_SPEEDS = SCENE_SOUNDS;
export type SoundSpeed = (typeof SCENE_SOUNDS)[number];

/** A prepared view: what is seen, a caption under it, and what one says meanwhile. Plain data, kept in a description. */
export interface StoryScene {
  readonly title: string;
  /** Short, legible on a small screen. Names in braces are filled in with the set's figures. */
  readonly caption: string;
  /** As one would say it. */
  readonly note: string;
  readonly rows: readonly StoryRow[];
  readonly from: number;
  readonly span: number;
  /** Where a slow zoom goes, and in how many seconds. */
  readonly to?: { readonly from: number; readonly span: number; readonly seconds: number };
  readonly show?: Show;
  readonly settings?: Settings;
  /** A moving picture in place of the rows, or above them when there are any. */
  readonly picture?: PictureId;
  /** Which point is heard; left out: the last of its rows that can be heard. */
  readonly hear?: PointId;
  /** Default real time. */
  readonly sound?: SoundSpeed;
}

/** How long a scene stays in a film when nothing in it takes time. */
export const USUAL_SECONDS = 8;

/** A scene without its words. */
type SceneView = Omit<StoryScene, 'title' | 'caption' | 'note' | 'rows'> & {
  readonly rows: readonly Omit<StoryRow, 'title'>[];
};

const ALONE: Settings = { neighbours: false };
/** A moving picture alone. */
const picture = (id: PictureId, settings?: Settings): SceneView => ({
  rows: [],
  from: 0,
  span: 1e-5,
  picture: id,
  ...(settings ? { settings } : {}),
});

/** What each scene of the story shows, in order. */
const VIEWS: Readonly<Record<StoryId, SceneView>> = {
  carrier: {
    rows: [{ point: 'carrier' }],
    from: 0,
    span: 0.02,
    to: { from: 0.0042, span: 8e-6, seconds: 9 },
    settings: ALONE,
  },
  programme: {
    rows: [{ point: 'programme' }, { point: 'carrier' }],
    from: 0,
    span: 0.004,
    settings: ALONE,
    hear: 'programme',
  },
  modulation: {
    rows: [{ point: 'programme' }, { point: 'carrier' }, { point: 'modulated' }],
    from: 0,
    span: 0.003,
    to: { from: 0.00098, span: 4e-5, seconds: 9 },
    show: { envelope: true },
    settings: ALONE,
  },
  sidebands: {
    rows: [{ point: 'carrier' }, { point: 'modulated' }],
    from: 0,
    span: 0.003,
    show: { spectrum: true },
    settings: ALONE,
  },
  aerial: picture('aerial'),
  'all stations': {
    rows: [{ point: 'tuned', with: { loadedQ: 1.2 } }],
    from: 0,
    span: 0.002,
    to: { from: 0.0004, span: 3e-5, seconds: 8 },
  },
  tuning: { ...picture('vanes'), span: 0.002 },
  resonance: picture('swing'),
  'before the detector': {
    rows: [{ point: 'tuned' }],
    from: 0,
    span: 0.003,
    to: { from: 0.00098, span: 2e-5, seconds: 9 },
    show: { average: true },
    settings: ALONE,
    hear: 'tuned',
  },
  'one half': {
    rows: [{ point: 'tuned' }, { point: 'programme' }],
    from: 0,
    span: 0.003,
    show: { average: true, cover: true },
    settings: ALONE,
  },
  'detector curve': picture('curve'),
  'after the detector': {
    rows: [{ point: 'detector' }, { point: 'programme' }],
    from: 0,
    span: 0.003,
    to: { from: 0.00098, span: 2e-5, seconds: 9 },
    show: { average: true },
    settings: ALONE,
    hear: 'detector',
  },
  smoothing: {
    rows: [{ point: 'detector' }, { point: 'phones' }],
    from: 0,
    span: 0.003,
    to: { from: 0.0009, span: 3e-5, seconds: 9 },
    show: { average: true },
    settings: ALONE,
    hear: 'phones',
  },
  charging: picture('charge', ALONE),
  'load capacitor': {
    rows: [
      { point: 'phones', with: { capacitance: 3e-11 } },
      { point: 'phones', with: { capacitance: 4.7e-9 } },
      { point: 'phones', with: { capacitance: 3e-7 } },
    ],
    from: 0,
    span: 0.003,
    settings: { neighbours: false, depth: 0.8, detector: 'germanium', strength: 1, resistance: 10e3 },
  },
  detectors: {
    rows: [
      { point: 'detector', with: { detector: 'galena-good' } },
      { point: 'detector', with: { detector: 'germanium' } },
      { point: 'detector', with: { detector: 'valve' } },
      { point: 'detector', with: { detector: 'silicon' } },
    ],
    from: 0,
    span: 0.003,
    show: { average: true, alike: true },
    settings: { neighbours: false, resistance: 10e3 },
  },
  valve: picture('heater'),
  bands: {
    rows: [
      { point: 'detector', with: { carrier: BAND_CARRIERS['long wave'] } },
      { point: 'detector', with: { carrier: BAND_CARRIERS['medium wave'] } },
    ],
    from: 0,
    span: 0.002,
    to: { from: 0.00098, span: 3e-5, seconds: 9 },
    show: { average: true },
    settings: ALONE,
  },
  'old coil': {
    rows: [{ point: 'detector', with: { keepsCoil: false } }, { point: 'detector' }],
    from: 0,
    span: 0.003,
    show: { average: true, alike: true },
    settings: { neighbours: false, otherBand: true, keepsCoil: true },
  },
};

function sceneOf(view: SceneView, { title, caption, note, rows: titles }: (typeof storyTexts)[StoryId]): StoryScene {
  const rows = view.rows.map((row, i): StoryRow => (titles[i] === undefined ? row : { ...row, title: titles[i] }));
  return { title, caption, note, ...view, rows };
}

/** The story as it comes with the tool. */
export const story = (): readonly StoryScene[] =>
  (Object.keys(VIEWS) as StoryId[]).map((id) => sceneOf(VIEWS[id], storyTexts[id]));

/** Every point of the path at once. */
export const wholePath = (): StoryScene =>
  sceneOf(
    {
      rows: POINTS.map((point) => ({ point })),
      from: 0,
      span: 2e-3,
      show: { average: true },
      to: { from: 0.00098, span: 1e-5, seconds: 10 },
      hear: 'phones',
    },
    storyTexts['whole path'],
  );
