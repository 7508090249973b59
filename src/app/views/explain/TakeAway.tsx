import { useEffect, useRef, useState } from 'preact/hooks';
import type { Reception } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import type { PointId, Programme, StoryScene, View } from '../../../outputs/explain/index.ts';
import type { Palette } from '../../../outputs/scene/index.ts';
import type { When } from '../../description/when.ts';
import { fileStem, saveFile } from '../../state/download.ts';
import { BACKGROUNDS, type Background, pagePalette, paletteFor } from './colours.ts';
import { type Filming, film } from './film.ts';
import { SOUND_RATE, soundCodec } from './film-sound.ts';
import type { Taken, TakeOrder } from './take.ts';

interface Props {
  scene: StoryScene;
  /** Made beside the page. */
  take(order: TakeOrder): Promise<Taken>;
  scenes: readonly StoryScene[];
  set?: SetDescription;
  reception?: Reception;
  recording?: Programme;
  time?: When;
  background: Background;
  onBackground(background: Background): void;
  hear: PointId;
  moment(): { readonly view: View; readonly seconds: number };
}

const SIZES = { '1080p': [1920, 1080], '4K': [3840, 2160], '720p': [1280, 720], upright: [1080, 1920] } as const;
type Size = keyof typeof SIZES;

/** Any view as a picture, a drawing, a film, a table or a sound. */
export function TakeAway(props: Props) {
  const { scene, scenes, background } = props;
  const [size, setSize] = useState<Size>('1080p');
  const [format, setFormat] = useState<'webm' | 'mp4'>('webm');
  const [rate, setRate] = useState<30 | 60>(30);
  const [all, setAll] = useState(false);
  const [sound, setSound] = useState(true);
  const [progress, setProgress] = useState<{ share: number; left?: number } | undefined>();
  const [said, setSaid] = useState('');
  const [canSound, setCanSound] = useState(true);
  useEffect(() => {
    let wanted = true;
    void soundCodec(format).then((codec) => wanted && setCanSound(codec !== undefined));
    return () => {
      wanted = false;
    };
  }, [format]);
  const filming = useRef<Filming | undefined>(undefined);
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => () => filming.current?.cancel(), []);

  const colours = (): Palette => paletteFor(background, pagePalette(place.current!));
  const name = fileStem(scene.title, 'view');

  const [busy, setBusy] = useState(false);
  const takeAway = async (order: TakeOrder, ending: string, more = '') => {
    setBusy(true);
    setSaid('');
    try {
      saveFile(`${name}.${ending}`, (await props.take(order)) as Blob);
      setSaid(`${name}.${ending}${more}.`);
    } catch (error) {
      setSaid((error as Error).message);
    } finally {
      setBusy(false);
    }
  };
  const drawn = (kind: 'picture' | 'drawing', width: number, height: number) =>
    ({
      kind,
      scene,
      ...props.moment(),
      palette: colours(),
      paper: background !== 'transparent',
      width,
      height,
    }) as const;
  const takePng = () => {
    const [width, height] = SIZES[size];
    return takeAway(drawn('picture', width, height), 'png', `, ${width} × ${height}`);
  };
  const takeSvg = () => takeAway(drawn('drawing', 960, 540), 'svg');
  const takeCsv = () => takeAway({ kind: 'numbers', scene, view: props.moment().view }, 'csv');
  const takeWav = () =>
    takeAway({ kind: 'sound', scene, point: props.hear, seconds: 5, rate: SOUND_RATE }, 'wav', ', 5 seconds');
  const chosen = (): readonly StoryScene[] => (all ? scenes : [{ ...scene, hear: props.hear }]);
  const takeVtt = () => takeAway({ kind: 'captions', scenes: chosen() }, 'vtt');
  const takeFilm = async () => {
    const [width, height] = SIZES[size];
    setSaid('');
    setProgress({ share: 0 });
    const { set, reception, recording, time } = props;
    const order = {
      scenes: chosen(),
      set,
      reception,
      recording,
      time,
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
      const made = await filming.current.done;
      if (made) {
        const { file, silent } = made;
        saveFile(`${all ? 'story' : name}.${format}`, file);
        setSaid(
          `${all ? 'story' : name}.${format}, ${(file.size / 1e6).toFixed(1)} MB${silent ? ', without sound: this browser could not put any in' : ''}.`,
        );
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
        <button type="button" disabled={busy} onClick={() => void takePng()}>
          Picture (PNG)
        </button>
        <button type="button" disabled={busy} onClick={() => void takeSvg()}>
          Drawing (SVG)
        </button>
        <button type="button" disabled={busy || scene.rows.length === 0} onClick={() => void takeCsv()}>
          Numbers (CSV)
        </button>
        <button type="button" disabled={busy} onClick={() => void takeWav()}>
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
              <option value="mp4">MP4 (H.264, Opus or AAC)</option>
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
            <input
              type="checkbox"
              checked={sound && canSound}
              disabled={!canSound}
              onChange={(event) => setSound(event.currentTarget.checked)}
            />{' '}
            With sound
          </label>
          {!canSound && (
            <p class="quiet">
              This browser cannot put sound into a film of this kind: it will be silent. Take the sound as a WAV file
              and lay it beside.
            </p>
          )}
          {background === 'transparent' && format === 'mp4' && (
            <p class="quiet">MP4 cannot be transparent: the ground will be dark. WebM can.</p>
          )}
          <div class="explain-buttons">
            <button type="button" class="primary" disabled={progress !== undefined} onClick={() => void takeFilm()}>
              Make the film
            </button>
            <button type="button" disabled={busy} onClick={() => void takeVtt()}>
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
