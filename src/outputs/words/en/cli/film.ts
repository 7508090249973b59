import { formatNumber } from '../../../../engine/units/format.ts';
import { counted } from '../grammar.ts';

interface ToldFile {
  readonly file: string;
  readonly seconds: number;
}
interface ToldFilm extends ToldFile {
  readonly scenes: number;
  readonly bytes: number;
  readonly isSilent: boolean;
  readonly isPicture: boolean;
  readonly width: number;
  readonly height: number;
  /** Frames a second. */
  readonly rate: number;
}
interface ToldFrames extends Omit<ToldFilm, 'file' | 'scenes' | 'bytes' | 'isSilent' | 'isPicture'> {
  readonly folder: string;
  readonly frames: number;
  readonly sound: boolean;
}

const long = (seconds: number): string => `${seconds.toFixed(1)} s`;
const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(1)} MB`;
const shape = ({ width, height, rate }: Pick<ToldFilm, 'width' | 'height' | 'rate'>): string =>
  `${width} × ${height}, ${formatNumber(rate, 3)} frames a second`;

/** `faintwave film`. */
export const filmAnswer = {
  scenes: (
    rows: readonly { readonly number: number; readonly title: string; readonly seconds: number }[],
  ): string[] => [
    ...rows.map(
      ({ number, title, seconds }) => `${String(number).padStart(3)}  ${long(seconds).padStart(7)}  ${title}`,
    ),
    `     ${long(rows.reduce((sum, row) => sum + row.seconds, 0)).padStart(7)}  in all`,
  ],
  toFilm:
    'Add --out FILE.mp4 or FILE.webm for a film, FILE.gif with --scene for an animated picture, FILE.wav for the sound, FILE.vtt for the captions.',
  written: (told: ToldFilm): string => {
    const sound = told.isSilent ? 'without sound' : 'with sound';
    const note = told.isPicture ? ' A GIF has no sound.' : '';
    return `${told.file}: ${counted(told.scenes, 'scene', 'scenes')}, ${long(told.seconds)}, ${shape(told)}, ${sound}, ${megabytes(told.bytes)}.${note}`;
  },
  sound: ({ file, seconds }: ToldFile): string => `${file}: the sound of the film, ${long(seconds)}.`,
  captions: ({ file, seconds }: ToldFile): string => `${file}: the captions of a film of ${long(seconds)}.`,
  frames: (told: ToldFrames): string =>
    `${told.folder}: ${counted(told.frames, 'frame', 'frames')}, ${long(told.seconds)}, ${shape(told)}; captions.vtt${told.sound ? ', sound.wav' : ''}.`,
} as const;
