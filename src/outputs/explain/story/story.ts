import { parseQuantity, type QuantityKind } from '../../../engine/units/parse.ts';
import { isPoint, type PointId } from '../model/points.ts';
import type { ProgrammeChoice, Settings } from '../model/settings.ts';
import { limited, type View } from '../model/view.ts';
import { isPicture, type PictureId } from '../pictures/index.ts';
import type { Show } from '../stage/wave-window.ts';

/** One row of a prepared view; `with` turns something for this row alone. */
export interface StoryRow {
  readonly point: PointId;
  readonly title?: string;
  readonly with?: Settings;
}

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
  /** Which point is heard, when sound is on. */
  readonly hear?: PointId;
}

/** How long a scene stays in a film when nothing in it takes time. */
export const USUAL_SECONDS = 8;

/** The story as it comes with the tool. */
export const STORY: readonly StoryScene[] = [
  {
    title: 'Too fast to see',
    caption: 'A carrier: {carrier}, one swing every {cycle}. From afar a solid bar.',
    note: 'Here is what {station} sends while nobody is speaking. It looks like a bar, as if somebody had drawn it with a broad brush. Now come closer. And closer. Only when the whole picture lasts a few millionths of a second does the bar come apart into waves. There are {cyclesPerTone} of them in a single vibration of a whistle of {tone}.',
    rows: [{ point: 'carrier' }],
    from: 0,
    span: 0.02,
    to: { from: 0.0042, span: 8e-6, seconds: 9 },
    settings: { neighbours: false },
  },
  {
    title: 'Too slow to send',
    caption:
      'A programme: {tone}, one swing every {toneCycle}. As a wave in the air it would want an aerial of {toneQuarter}.',
    note: 'This is what we want to hear; one steady tone stands for it. It is slow: what an ear can hear lies between about thirty and fifteen to eighteen thousand swings a second. To throw this one into the air a mast would have to be {toneQuarter} tall, a quarter of its wave. For the fast one, {quarter} will do.',
    rows: [{ point: 'programme' }, { point: 'carrier' }],
    from: 0,
    span: 0.004,
    settings: { neighbours: false },
    hear: 'programme',
  },
  {
    title: 'The slow laid on the fast',
    caption: 'The carrier stays as fast as ever; the programme makes it taller and shorter.',
    note: 'So the station lets the programme set how wide the carrier swings. When the programme goes up, the carrier swings wider; when it goes down, less wide. Look at the edge: that is the programme. Look at the bottom edge: the same again, upside down. Remember that bottom edge.',
    rows: [{ point: 'programme' }, { point: 'carrier' }, { point: 'modulated' }],
    from: 0,
    span: 0.003,
    to: { from: 0.00098, span: 4e-5, seconds: 9 },
    show: { envelope: true },
    settings: { neighbours: false },
  },
  {
    title: 'What it is made of',
    caption: 'The carrier and two sidebands, each {sideband} as strong, {tone} above and below.',
    note: 'The same wave can be taken apart into three steady ones: the carrier itself, and a weaker one on either side of it. The deeper the programme bites, the stronger they are: half of {depth} is {sideband}. Nothing in there is as slow as the programme. That is why a tuned circuit must not be too sharp: it would shave the sidebands off, and with them the high notes.',
    rows: [{ point: 'carrier' }, { point: 'modulated' }],
    from: 0,
    span: 0.003,
    show: { spectrum: true },
    settings: { neighbours: false },
  },
  {
    title: 'The aerial takes it in',
    caption: '{aerialSays} {station} pushes with {aerialVoltage}.',
    note: 'A wire out in the garden and the ground beneath it form a capacitor. The passing wave pushes charge up and down it, and to get to earth and back this charge has to go through the set. {loopSays}',
    rows: [],
    from: 0,
    span: 1e-5,
    picture: 'aerial',
  },
  {
    title: 'Many at once',
    caption: 'In the air at the same moment: {stations}. Without tuning they are one heap.',
    note: 'Every station in reach arrives at the same time. If we listened now we should hear all of them, or rather nothing that makes sense. Look closely and you see how they run in and out of step. It is drawn as a circuit that hardly tunes would have it: that leaves little of the volts, but something of everybody.',
    rows: [{ point: 'tuned', title: 'Everything at once', with: { loadedQ: 1.2 } }],
    from: 0,
    span: 0.002,
    to: { from: 0.0004, span: 3e-5, seconds: 8 },
  },
  {
    title: 'Choosing one',
    caption: '{tuner} slides a hill along the band. On {station} it is {broad} broad: its Q, how keen it is, is {q}.',
    note: 'Coil and capacitor together love one frequency. More of either, and it comes down; less, and it goes up. Stop on {station}, and everybody else is left standing at the foot of the hill. The pale bars are what arrives; the dark part is what still gets through.',
    rows: [],
    from: 0,
    span: 0.002,
    picture: 'vanes',
  },
  {
    title: 'Pushed in time',
    caption:
      'Energy swings between coil and capacitor. Pushed in time it grows to {lift} times what the aerial gives; two thirds of that take about {buildUp}.',
    note: 'Why does it love one frequency? Because energy swings to and fro between the two, like a child on a garden swing. Small pushes at the right moment, and it goes high. A pendulum of the same Q beside it does exactly the same, only slowly enough for us.',
    rows: [],
    from: 0,
    span: 1e-5,
    picture: 'swing',
  },
  {
    title: 'Chosen, and still silent',
    caption: 'Up as much as down: the average is nothing. Phones cannot follow {carrier}; they follow the average.',
    note: 'Here is {station}, alone: {tunedVoltage} while nobody speaks, up to {tunedPeak} at the loudest. Put the phones across it. Listen. Nothing. The membrane is far too heavy to swing so fast; it can only follow the average, the dark line, and for every push there is a pull just as strong. Top and bottom cancel, to the last bit.',
    rows: [{ point: 'tuned' }],
    from: 0,
    span: 0.003,
    to: { from: 0.00098, span: 2e-5, seconds: 9 },
    show: { average: true },
    settings: { neighbours: false },
    hear: 'tuned',
  },
  {
    title: 'Cover the lower half',
    caption: 'Cover one half, and the average swings like the programme.',
    note: 'Now I put my hand over the lower half. Look at the dark line: it has come alive. It is the programme. So all we need is something that does with the current what my hand does here.',
    rows: [{ point: 'tuned' }, { point: 'programme' }],
    from: 0,
    span: 0.003,
    show: { average: true, cover: true },
    settings: { neighbours: false },
  },
  {
    title: 'A one-way path',
    caption:
      '{detector}: forwards easily, backwards hardly. {detectorVoltage} of carrier swings it up and down its own curve.',
    note: 'A crystal with a wire on it, a germanium diode, a valve: each lets current through one way and hardly the other. The dot is the carrier, running up and down the curve of our own detector. To the right of the bend a lot flows, to the left almost nothing. {tapSays}',
    rows: [],
    from: 0,
    span: 1e-5,
    picture: 'curve',
  },
  {
    title: 'After the one-way path',
    caption: '{detectorVoltage} of carrier reaches it. One half gets through, and its average is the programme again.',
    note: 'This is what comes out behind it with nothing else connected. At the loudest {detectorPeak} arrive and {detectorOut} come through: the one-way path keeps the rest for itself. It is still made of separate gulps, one for each swing of the carrier, {cycle} apart. But now nearly all of it goes the same way, and their average, the dark line, goes up and down with the voice.',
    rows: [{ point: 'detector' }, { point: 'programme' }],
    from: 0,
    span: 0.003,
    to: { from: 0.00098, span: 2e-5, seconds: 9 },
    show: { average: true },
    settings: { neighbours: false },
    hear: 'detector',
  },
  {
    title: 'What is left drains away',
    caption: '{capacitor} takes up each gulp, {drains}. The average swings {audio} either way of {direct}.',
    note: 'A small capacitor behind the detector stores each gulp and hands it on until the next one comes. What was a row of gulps becomes a line that hardly falls between them, and so swings further than the average of bare gulps did. The carrier has done its work, what is left of it drains away to earth, and what we hear is {station}. {below}',
    rows: [{ point: 'detector' }, { point: 'phones' }],
    from: 0,
    span: 0.003,
    to: { from: 0.0009, span: 3e-5, seconds: 9 },
    show: { average: true },
    settings: { neighbours: false },
    hear: 'phones',
  },
  {
    title: 'Gulp by gulp',
    caption: 'A gulp at each crest, a steady drain between.',
    note: 'Here it is slowly enough to follow. Each time the carrier rises to what the capacitor already holds, a gulp goes in. All the rest of the time {drains}.',
    rows: [],
    from: 0,
    span: 1e-5,
    picture: 'charge',
    settings: { neighbours: false },
  },
  {
    title: 'Too small, just right, too large',
    caption:
      'A strong station, germanium, 10 kΩ. Too small: the carrier comes through. Too large: it cannot follow down.',
    note: 'Choose it well. If the capacitor is far too small it is empty again before the next gulp. If it is far too large it is still nearly full when the programme has long gone down: it cannot follow, and what is quick in the programme is lost.',
    rows: [
      { point: 'phones', title: 'Far too small: 30 pF', with: { capacitance: 3e-11 } },
      { point: 'phones', title: 'About right: 4.7 nF', with: { capacitance: 4.7e-9 } },
      { point: 'phones', title: 'Far too large: 300 nF', with: { capacitance: 3e-7 } },
    ],
    from: 0,
    span: 0.003,
    settings: { neighbours: false, depth: 0.8, detector: 'germanium', strength: 1, resistance: 10e3 },
  },
  {
    title: 'Detectors compared',
    caption: 'The same carrier, {detectorVoltage}, through four of them into 10 kΩ, drawn to one scale.',
    note: 'Not every one-way path opens for so little. Galena and germanium begin at once. A silicon diode wants half a volt before it does much: see what it gives for our station, at the bottom.',
    rows: [
      { point: 'detector', title: 'Galena, a good spot', with: { detector: 'galena-good' } },
      { point: 'detector', title: 'Germanium', with: { detector: 'germanium' } },
      { point: 'detector', title: 'Valve', with: { detector: 'valve' } },
      { point: 'detector', title: 'Silicon', with: { detector: 'silicon' } },
    ],
    from: 0,
    span: 0.003,
    show: { average: true, alike: true },
    settings: { neighbours: false, resistance: 10e3 },
  },
  {
    title: 'A valve does it too, and lingers',
    caption:
      'Electrons leave only the hot side. Switched on it takes its time to warm; switched off it goes on for a while and fades.',
    note: 'In a valve the path is one-way because only one side is hot enough to let electrons go. Switch the heater on: nothing at first, then it comes. Switch it off: it goes on working for a while and fades away, because what is hot does not turn cold at once. Hot through, it could give far more current than our small signal ever takes.',
    rows: [],
    from: 0,
    span: 1e-5,
    picture: 'heater',
  },
  {
    title: 'From long wave to medium wave',
    caption: 'Five times as fast: five times as many gulps, and for the same Q five times as broad.',
    note: 'What changes when the set is moved to another band? The programme is the same and so is the trick. Only the carrier swings faster: the gulps follow closer, a smaller capacitor will do, the coil needs fewer turns, and the same Q lets in more neighbours.',
    rows: [
      { point: 'detector', title: 'Long wave, 200 kHz', with: { carrier: 200e3 } },
      { point: 'detector', title: 'Medium wave, 1000 kHz', with: { carrier: 1000e3 } },
    ],
    from: 0,
    span: 0.002,
    to: { from: 0.00098, span: 3e-5, seconds: 9 },
    show: { average: true },
    settings: { neighbours: false },
  },
];

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

const SETTINGS_KEYS = [
  'station',
  'carrier',
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
const ROW_KEYS = ['point', 'title', 'with'];
const SCENE_KEYS = ['title', 'caption', 'note', 'rows', 'from', 'span', 'to', 'show', 'settings', 'picture', 'hear'];

/** Keys of somebody's own, to be kept. */
const others = (value: Record<string, unknown>, known: readonly string[]): object =>
  Object.fromEntries(Object.entries(value).filter(([key]) => !known.includes(key)));

/** Settings as kept in a description; what is not understood is left out. */
export function readSettings(value: unknown): Settings {
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
    depth: number(v.depth, 0, 2, 'ratio'),
    programme,
    detector: typeof v.detector === 'string' ? v.detector.slice(0, 60) : undefined,
    capacitance: number(v.capacitance, 0, 1e-4, 'capacitance'),
    resistance: number(v.resistance, 10, 1e8, 'resistance'),
    strength: number(v.strength, 1e-6, 100, 'voltage'),
    loadedQ: number(v.loadedQ, 0.5, 2000),
    neighbours: typeof v.neighbours === 'boolean' ? v.neighbours : undefined,
  };
  return {
    ...others(v, SETTINGS_KEYS),
    ...Object.fromEntries(Object.entries(settings).filter(([, x]) => x !== undefined)),
  };
}

/** A scene as kept in a description. @returns undefined for what is no scene. */
export function readScene(value: unknown): StoryScene | undefined {
  const v = record(value);
  if (!v || typeof v.title !== 'string') return undefined;
  const rows = (Array.isArray(v.rows) ? v.rows : []).flatMap((row): StoryRow[] => {
    const r = record(row);
    if (!r || !isPoint(r.point)) return [];
    const own = readSettings(r.with);
    return [
      {
        ...others(r, ROW_KEYS),
        point: r.point,
        ...(typeof r.title === 'string' ? { title: r.title.slice(0, 80) } : {}),
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
  };
}

/** The scenes of a description, or the story that comes with the tool. */
export function scenesOf(written: unknown): { readonly scenes: readonly StoryScene[]; readonly own: boolean } {
  const kept = record(written)?.scenes;
  if (!Array.isArray(kept)) return { scenes: STORY, own: false };
  const scenes = kept.flatMap((scene) => readScene(scene) ?? []);
  return scenes.length > 0 ? { scenes, own: true } : { scenes: STORY, own: false };
}

/** The description with these scenes in it, and those that could not be read; undefined takes all out again. */
export function withScenes<T>(written: T, scenes: readonly StoryScene[] | undefined): T {
  const { scenes: before, ...rest } = (record(written) ?? {}) as Record<string, unknown>;
  if (scenes === undefined) return rest as T;
  const unread = Array.isArray(before) ? before.filter((scene) => !readScene(scene)) : [];
  return { ...rest, scenes: [...scenes, ...unread] } as T;
}
