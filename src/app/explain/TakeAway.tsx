import { useEffect, useRef, useState } from 'preact/hooks';
import type { Reception } from '../../engine/reception/types.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import {
  audible,
  Columns,
  captionsOf,
  csvOf,
  filmPlan,
  type PointId,
  type Prepared,
  type Programme,
  paintStage,
  preparer,
  type StoryScene,
  scenePen,
  type View,
  wavOf,
} from '../../outputs/explain/index.ts';
import { type Palette, sceneToSvg } from '../../outputs/scene/index.ts';
import { canvasPen } from './canvas-pen.ts';
import { BACKGROUNDS, type Background, pagePalette, paletteFor } from './colours.ts';
import { drawingOf } from './drawing.ts';
import { type Filming, film } from './film.ts';

interface Props {
  scene: StoryScene;
  prepared: Prepared;
  scenes: readonly StoryScene[];
  set?: SetDescription;
  reception?: Reception;
  recording?: Programme;
  background: Background;
  onBackground(background: Background): void;
  hear: PointId;
  moment(): { readonly view: View; readonly seconds: number };
}

const SIZES = { '1080p': [1920, 1080], '4K': [3840, 2160], '720p': [1280, 720], upright: [1080, 1920] } as const;
type Size = keyof typeof SIZES;
const SOUND_RATE = 48_000;

function save(file: Blob, name: string): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 30_000);
}

const fileName = (title: string): string =>
  title
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 50) || 'view';

/** Any view as a picture, a drawing, a film, a table or a sound. */
export function TakeAway(props: Props) {
  const { scene, prepared, scenes, background } = props;
  const [size, setSize] = useState<Size>('1080p');
  const [format, setFormat] = useState<'webm' | 'mp4'>('webm');
  const [rate, setRate] = useState<30 | 60>(30);
  const [all, setAll] = useState(false);
  const [sound, setSound] = useState(true);
  const [progress, setProgress] = useState<{ share: number; left?: number } | undefined>();
  const [said, setSaid] = useState('');
  const filming = useRef<Filming | undefined>(undefined);
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => () => filming.current?.cancel(), []);

  const colours = (): Palette => paletteFor(background, pagePalette(place.current!));
  const name = fileName(scene.title);

  const takePng = async () => {
    const [width, height] = SIZES[size];
    const canvas = document.createElement('canvas');
    canvas.width = width;
    canvas.height = height;
    const ctx = canvas.getContext('2d')!;
    const palette = colours();
    if (background !== 'transparent') {
      ctx.fillStyle = palette.paper;
      ctx.fillRect(0, 0, width, height);
    }
    const { view, seconds } = props.moment();
    const drawing = drawingOf({ scene, prepared, presented: true }, view, seconds, width, height, 1);
    paintStage(
      canvasPen(ctx, () => palette),
      drawing,
      new Columns(),
    );
    const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
    if (!blob) {
      setSaid('The browser has no room for a picture of this size.');
      return;
    }
    save(blob, `${name}.png`);
    setSaid(`${name}.png, ${width} × ${height}.`);
  };
  const takeSvg = () => {
    const { view, seconds } = props.moment();
    const [width, height] = [960, 540];
    const { pen, items } = scenePen();
    paintStage(pen, drawingOf({ scene, prepared, presented: true }, view, seconds, width, height, 1), new Columns());
    const svg = sceneToSvg(
      { unit: 'px', width, height, title: scene.title, description: scene.caption, items: items() },
      { colours: colours(), size: 'true', paper: background !== 'transparent' },
    );
    save(new Blob([svg], { type: 'image/svg+xml' }), `${name}.svg`);
    setSaid(`${name}.svg`);
  };
  const takeCsv = () => {
    save(new Blob([csvOf(prepared.rows, props.moment().view)], { type: 'text/csv' }), `${name}.csv`);
    setSaid(`${name}.csv`);
  };
  const takeWav = () => {
    const samples = audible(prepared.waves, props.hear, 5, SOUND_RATE);
    save(new Blob([wavOf(samples, SOUND_RATE) as BlobPart], { type: 'audio/wav' }), `${name}.wav`);
    setSaid(`${name}.wav, 5 seconds.`);
  };
  const chosen = (): readonly StoryScene[] => (all ? scenes : [{ ...scene, hear: props.hear }]);
  const takeVtt = () => {
    const prepare = preparer(props.set, props.reception, props.recording);
    const parts = filmPlan(chosen(), (s) => prepare(s).facts);
    save(new Blob([captionsOf(parts, (s) => prepare(s).figures)], { type: 'text/vtt' }), `${name}.vtt`);
    setSaid(`${name}.vtt`);
  };
  const takeFilm = async () => {
    const [width, height] = SIZES[size];
    setSaid('');
    setProgress({ share: 0 });
    const { set, reception, recording } = props;
    const order = {
      scenes: chosen(),
      set,
      reception,
      recording,
      width,
      height,
      rate,
      format,
      sound,
      background,
      page: pagePalette(place.current!),
    };
    filming.current = film(order, (share, left) => setProgress({ share, left }));
    try {
      const file = await filming.current.done;
      if (file) {
        save(file, `${all ? 'story' : name}.${format}`);
        setSaid(`${all ? 'story' : name}.${format}, ${(file.size / 1e6).toFixed(1)} MB.`);
      } else setSaid('Called off.');
    } catch (error) {
      setSaid((error as Error).message);
    } finally {
      filming.current = undefined;
      setProgress(undefined);
    }
  };
  const canFilm = typeof VideoEncoder !== 'undefined' && typeof OffscreenCanvas !== 'undefined';
  return (
    <div class="explain-take" ref={place}>
      <label class="explain-field">
        <span>Size</span>
        <select value={size} onChange={(event) => setSize(event.currentTarget.value as Size)}>
          {Object.entries(SIZES).map(([id, [w, h]]) => (
            <option key={id} value={id}>
              {id}, {w} × {h}
            </option>
          ))}
        </select>
      </label>
      <label class="explain-field">
        <span>Background</span>
        <select value={background} onChange={(event) => props.onBackground(event.currentTarget.value as Background)}>
          {BACKGROUNDS.map((b) => (
            <option key={b} value={b}>
              {b === 'plain' ? 'as the page' : b}
            </option>
          ))}
        </select>
      </label>
      <div class="explain-buttons">
        <button type="button" onClick={() => void takePng()}>
          Picture (PNG)
        </button>
        <button type="button" onClick={takeSvg}>
          Drawing (SVG)
        </button>
        <button type="button" disabled={prepared.rows.length === 0} onClick={takeCsv}>
          Numbers (CSV)
        </button>
        <button type="button" onClick={takeWav}>
          Sound (WAV)
        </button>
      </div>
      <h3>Film</h3>
      {canFilm ? (
        <>
          <label class="explain-field">
            <span>Of</span>
            <select value={all ? 'all' : 'one'} onChange={(event) => setAll(event.currentTarget.value === 'all')}>
              <option value="one">this view</option>
              <option value="all">all {scenes.length} scenes</option>
            </select>
          </label>
          <label class="explain-field">
            <span>Kind</span>
            <select value={format} onChange={(event) => setFormat(event.currentTarget.value as 'webm' | 'mp4')}>
              <option value="webm">WebM (VP9, Opus)</option>
              <option value="mp4">MP4 (H.264, Opus)</option>
            </select>
          </label>
          <label class="explain-field">
            <span>Frames a second</span>
            <select value={String(rate)} onChange={(event) => setRate(event.currentTarget.value === '60' ? 60 : 30)}>
              <option value="30">30</option>
              <option value="60">60</option>
            </select>
          </label>
          <label class="explain-check">
            <input type="checkbox" checked={sound} onChange={(event) => setSound(event.currentTarget.checked)} /> With
            sound
          </label>
          <div class="explain-buttons">
            <button type="button" class="primary" disabled={progress !== undefined} onClick={() => void takeFilm()}>
              Make the film
            </button>
            <button type="button" onClick={takeVtt}>
              Captions (WebVTT)
            </button>
          </div>
          {progress && (
            <div class="explain-progress">
              <progress max={1} value={progress.share} aria-label="The film" />
              <span>
                {Math.round(progress.share * 100)} %
                {progress.left !== undefined && `, ${Math.ceil(progress.left)} s to go`}
              </span>
              <button type="button" onClick={() => filming.current?.cancel()}>
                Call off
              </button>
            </div>
          )}
        </>
      ) : (
        <p class="quiet">This browser cannot make films.</p>
      )}
      <p class="quiet" role="status">
        {said}
      </p>
    </div>
  );
}
