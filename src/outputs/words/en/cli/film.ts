import { formatNumber } from '../../../../engine/units/format.ts';
import { counted } from '../grammar.ts';

interface FilmFile {
  readonly file: string;
  readonly seconds: number;
}
interface FilmFigures extends FilmFile {
  readonly scenes: number;
  readonly bytes: number;
  readonly isSilent: boolean;
  readonly isPicture: boolean;
  readonly width: number;
  readonly height: number;
  /** Frames a second. */
  readonly rate: number;
}
interface FrameFigures extends Omit<FilmFigures, 'file' | 'scenes' | 'bytes' | 'isSilent' | 'isPicture'> {
  readonly folder: string;
  readonly frames: number;
  readonly sound: boolean;
}

const long = (seconds: number): string => `${seconds.toFixed(1)} s`;
const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(1)} MB`;
const shape = ({ width, height, rate }: Pick<FilmFigures, 'width' | 'height' | 'rate'>): string =>
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
  written: (film: FilmFigures): string => {
    const sound = film.isSilent ? 'without sound' : 'with sound';
    const note = film.isPicture ? ' A GIF has no sound.' : '';
    return `${film.file}: ${counted(film.scenes, 'scene', 'scenes')}, ${long(film.seconds)}, ${shape(film)}, ${sound}, ${megabytes(film.bytes)}.${note}`;
  },
  sound: ({ file, seconds }: FilmFile): string => `${file}: the sound of the film, ${long(seconds)}.`,
  captions: ({ file, seconds }: FilmFile): string => `${file}: the captions of a film of ${long(seconds)}.`,
  frames: (film: FrameFigures): string =>
    `${film.folder}: ${counted(film.frames, 'frame', 'frames')}, ${long(film.seconds)}, ${shape(film)}; captions.vtt${film.sound ? ', sound.wav' : ''}.`,
} as const;
