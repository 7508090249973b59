import { useEffect, useRef, useState } from 'preact/hooks';
import type { Reception, SetDescription } from '../../../engine/index.ts';
import {
  FILM_SOUND_RATE,
  type PointId,
  type StoryScene,
  type View,
  type WaveProgramme,
} from '../../../outputs/explain/index.ts';
import type { Palette } from '../../../outputs/scene/index.ts';
import { explainTexts } from '../../../outputs/words/index.ts';
import type { When } from '../../description/when.ts';
import { downloadFile, fileStem } from '../../state/download.ts';
import { BACKGROUNDS, pagePalette, paletteFor, type SceneBackground } from './colours.ts';
import { type FilmFormat, type Filming, type FilmOrder, startFilm } from './film.ts';
import { type SoundCodec, soundCodec } from './film-sound.ts';
import { waveProblemText } from './scene-problem.ts';
import type { Taken, TakeOrder } from './take.ts';

interface Props {
  scene: StoryScene;
  /** Made beside the page. */
  take(order: TakeOrder): Promise<Taken>;
  scenes: readonly StoryScene[];
  set?: SetDescription;
  reception?: Reception;
  recording?: WaveProgramme;
  time?: When;
  background: SceneBackground;
  onBackground(background: SceneBackground): void;
  hear: PointId;
  moment(): { readonly view: View; readonly seconds: number };
}

const SIZES = { '1080p': [1920, 1080], '4K': [3840, 2160], '720p': [1280, 720], upright: [1080, 1920] } as const;
type Size = keyof typeof SIZES;
/** Of an animated picture, px and frames a second: for a page of text. */
const GIF_SIZES = [
  [640, 360],
  [480, 270],
  [800, 450],
  [360, 640],
] as const;
const GIF_RATE = 12.5;
const SOUND_SECONDS = 5;

/** Any view as a picture, a drawing, a film, a table or a sound. */
export function TakeAway(props: Props) {
  const { scene, scenes, background } = props;
  const [size, setSize] = useState<Size>('1080p');
  const [all, setAll] = useState(false);
  const [status, setStatus] = useState('');
  const [busy, setBusy] = useState(false);
  const place = useRef<HTMLDivElement>(null);
  const texts = explainTexts.exporting;
  const name = fileStem(scene.title, texts.viewFile);
  const page = (): Palette => pagePalette(place.current!);
  const takeAway = async (order: TakeOrder, ending: string, saved: (file: string) => string = texts.saved) => {
    setBusy(true);
    setStatus('');
    const file = `${name}.${ending}`;
    try {
      downloadFile(file, (await props.take(order)) as Blob);
      setStatus(saved(file));
    } catch (error) {
      setStatus(waveProblemText(error));
    } finally {
      setBusy(false);
    }
  };
  const drawn = (kind: 'picture' | 'drawing', width: number, height: number) =>
    ({
      kind,
      scene,
      ...props.moment(),
      palette: paletteFor(background, page()),
      paper: background !== 'transparent',
      width,
      height,
    }) as const;
  const takePng = () => {
    const [width, height] = SIZES[size];
    return takeAway(drawn('picture', width, height), 'png', (file) => texts.savedPicture(file, width, height));
  };
  const takeWav = () =>
    takeAway(
      { kind: 'sound', scene, point: props.hear, seconds: SOUND_SECONDS, rate: FILM_SOUND_RATE },
      'wav',
      (file) => texts.savedSound(file, SOUND_SECONDS),
    );
  const chosen = (): readonly StoryScene[] => (all ? scenes : [{ ...scene, hear: props.hear }]);
  return (
    <div class="explain-take" ref={place}>
      <label class="explain-field">
        <span>{texts.size}</span>
        <select value={size} onChange={(event) => setSize(event.currentTarget.value as Size)}>
          {(Object.keys(SIZES) as Size[]).map((id) => (
            <option key={id} value={id}>
              {texts.sizeChoice(texts.sizes[id], SIZES[id][0], SIZES[id][1])}
            </option>
          ))}
        </select>
      </label>
      <label class="explain-field">
        <span>{texts.background}</span>
        <select
          value={background}
          onChange={(event) => props.onBackground(event.currentTarget.value as SceneBackground)}
        >
          {BACKGROUNDS.map((b) => (
            <option key={b} value={b}>
              {texts.backgrounds[b]}
            </option>
          ))}
        </select>
      </label>
      <div class="explain-buttons">
        <button type="button" disabled={busy} onClick={() => void takePng()}>
          {texts.picture}
        </button>
        <button type="button" disabled={busy} onClick={() => void takeAway(drawn('drawing', 960, 540), 'svg')}>
          {texts.drawing}
        </button>
        <button
          type="button"
          disabled={busy || scene.rows.length === 0}
          onClick={() => void takeAway({ kind: 'numbers', scene, view: props.moment().view }, 'csv')}
        >
          {texts.numbers}
        </button>
        <button type="button" disabled={busy} onClick={() => void takeWav()}>
          {texts.sound}
        </button>
      </div>
      <h3>{texts.film}</h3>
      <FilmMaker
        {...props}
        all={all}
        onAll={setAll}
        busy={busy}
        order={(format) => {
          const [width, height] = SIZES[size];
          const { set, reception, recording, time } = props;
          const filmed = format === 'gif' ? [scene] : chosen();
          return { scenes: filmed, set, reception, recording, time, width, height, background, page: page() };
        }}
        nameOf={(format) => (all && format !== 'gif' ? texts.storyFile : name)}
        onCaptions={() => void takeAway({ kind: 'captions', scenes: chosen() }, 'vtt')}
        onStatus={setStatus}
      />
      <p class="quiet" role="status">
        {status}
      </p>
    </div>
  );
}

interface FilmProps extends Pick<Props, 'scenes' | 'background'> {
  /** Of all scenes, not of this view alone. */
  all: boolean;
  onAll(all: boolean): void;
  busy: boolean;
  order(format: FilmFormat): Omit<FilmOrder, 'rate' | 'format' | 'sound'>;
  /** Of the file, without its ending. */
  nameOf(format: FilmFormat): string;
  onCaptions(): void;
  onStatus(status: string): void;
}

/** The sound the browser can put into a film of this format; undefined until it is known. */
function useSoundCodec(format: 'webm' | 'mp4'): SoundCodec | 'silent' | undefined {
  const [known, setKnown] = useState<{ format: string; codec: SoundCodec | 'silent' } | undefined>();
  useEffect(() => {
    let isCurrent = true;
    void soundCodec(format).then((codec) => isCurrent && setKnown({ format, codec: codec ?? 'silent' }));
    return () => {
      isCurrent = false;
    };
  }, [format]);
  return known?.format === format ? known.codec : undefined;
}

/** The sentence on which players show a film. */
function playersOf(format: 'webm' | 'mp4', codec: SoundCodec | 'silent'): string {
  const { webm, mp4 } = explainTexts.exporting.playsIn;
  if (format === 'mp4') return mp4[codec];
  return codec === 'aac' ? webm.silent : webm[codec];
}

/** A film while it is made. */
function useFilming({ nameOf, onStatus }: Pick<FilmProps, 'nameOf' | 'onStatus'>) {
  const [progress, setProgress] = useState<{ share: number; left?: number } | undefined>();
  const filming = useRef<Filming | undefined>(undefined);
  useEffect(() => () => filming.current?.cancel(), []);
  const texts = explainTexts.exporting;
  const start = async (order: FilmOrder) => {
    onStatus('');
    setProgress({ share: 0 });
    filming.current = startFilm(order, (share, left) => setProgress({ share, left }));
    const { format, width, height } = order;
    const fileName = `${nameOf(format)}.${format}`;
    try {
      const made = await filming.current.done;
      if (made) {
        downloadFile(fileName, made.file);
        const megabytes = made.file.size / 1e6;
        const saved = made.silent ? texts.savedSilentFilm : texts.savedFilm;
        if (format === 'gif') onStatus(texts.savedAnimation(fileName, megabytes, width, height));
        else onStatus(saved(fileName, megabytes));
      } else onStatus(texts.cancelled);
    } catch (error) {
      onStatus(waveProblemText(error));
    } finally {
      filming.current = undefined;
      setProgress(undefined);
    }
  };
  return { progress, start, cancel: () => filming.current?.cancel() };
}

const canFilm = (): boolean => typeof VideoEncoder !== 'undefined' && typeof OffscreenCanvas !== 'undefined';

function FilmMaker(props: FilmProps) {
  const formats: readonly FilmFormat[] = canFilm() ? ['webm', 'mp4', 'gif'] : ['gif'];
  const [format, setFormat] = useState<FilmFormat>(formats[0]);
  const filming = useFilming(props);
  const { progress, cancel } = filming;
  const texts = explainTexts.exporting;
  if (typeof OffscreenCanvas === 'undefined') return <p class="quiet">{texts.noPictures}</p>;
  return (
    <>
      {!canFilm() && <p class="quiet">{texts.noFilm}</p>}
      <label class="explain-field">
        <span>{texts.format}</span>
        <select value={format} onChange={(event) => setFormat(event.currentTarget.value as FilmFormat)}>
          {formats.map((id) => (
            <option key={id} value={id}>
              {texts.formats[id]}
            </option>
          ))}
        </select>
      </label>
      {format === 'gif' ? (
        <GifFields {...props} filming={filming} />
      ) : (
        <FilmFields {...props} format={format} filming={filming} />
      )}
      {progress && (
        <div class="explain-progress">
          <progress max={1} value={progress.share} aria-label={texts.progress} />
          <span>
            {progress.left === undefined
              ? texts.progressValue(progress.share)
              : texts.progressLeft(progress.share, progress.left)}
          </span>
          <button type="button" onClick={cancel}>
            {texts.cancel}
          </button>
        </div>
      )}
    </>
  );
}

interface FieldsProps extends FilmProps {
  filming: ReturnType<typeof useFilming>;
}

/** An animated picture of this view. */
function GifFields({ order, background, filming: { progress, start } }: FieldsProps) {
  const [at, setAt] = useState(0);
  const [width, height] = GIF_SIZES[at];
  const texts = explainTexts.exporting;
  const make = () => start({ ...order('gif'), width, height, rate: GIF_RATE, format: 'gif', sound: false });
  return (
    <>
      <label class="explain-field">
        <span>{texts.gifSize}</span>
        <select value={String(at)} onChange={(event) => setAt(Number(event.currentTarget.value))}>
          {GIF_SIZES.map(([wide, high], i) => (
            <option key={`${wide}`} value={String(i)}>
              {texts.gifSizeValue(wide, high)}
            </option>
          ))}
        </select>
      </label>
      <p class="quiet">{texts.gifAbout(width, height, GIF_RATE)}</p>
      {background === 'transparent' && <p class="quiet">{texts.noTransparency.gif}</p>}
      <div class="explain-buttons">
        <button type="button" class="primary" disabled={progress !== undefined} onClick={() => void make()}>
          {texts.makePicture}
        </button>
      </div>
    </>
  );
}

/** A film with its sound. */
function FilmFields(props: FieldsProps & { format: 'webm' | 'mp4' }) {
  const { format, scenes, background, all, onAll, busy, order, onCaptions, filming } = props;
  const { progress, start } = filming;
  const [rate, setRate] = useState<30 | 60>(30);
  const [sound, setSound] = useState(true);
  const codec = useSoundCodec(format);
  const canSound = codec !== 'silent';
  const texts = explainTexts.exporting;
  return (
    <>
      <label class="explain-field">
        <span>{texts.filmOf}</span>
        <select value={all ? 'all' : 'one'} onChange={(event) => onAll(event.currentTarget.value === 'all')}>
          <option value="one">{texts.oneScene}</option>
          <option value="all">{texts.allScenes(scenes.length)}</option>
        </select>
      </label>
      <label class="explain-field">
        <span>{texts.rate}</span>
        <select value={String(rate)} onChange={(event) => setRate(event.currentTarget.value === '60' ? 60 : 30)}>
          {[30, 60].map((value) => (
            <option key={value} value={String(value)}>
              {texts.rateValue(value)}
            </option>
          ))}
        </select>
      </label>
      <label class="explain-check">
        <input
          type="checkbox"
          checked={sound && canSound}
          disabled={!canSound}
          onChange={(event) => setSound(event.currentTarget.checked)}
        />{' '}
        {texts.withSound}
      </label>
      {!canSound && <p class="quiet">{texts.noSound}</p>}
      {codec && <p class="quiet">{playersOf(format, sound ? codec : 'silent')}</p>}
      {background === 'transparent' && format === 'mp4' && <p class="quiet">{texts.noTransparency.mp4}</p>}
      <div class="explain-buttons">
        <button
          type="button"
          class="primary"
          disabled={progress !== undefined}
          onClick={() => void start({ ...order(format), rate, format, sound })}
        >
          {texts.makeFilm}
        </button>
        <button type="button" disabled={busy} onClick={onCaptions}>
          {texts.captions}
        </button>
      </div>
    </>
  );
}
