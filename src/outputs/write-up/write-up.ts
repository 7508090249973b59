import type { LogAgainstPrediction } from '../../engine/log/against-prediction.ts';
import type { Reception } from '../../engine/reception/path/types.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import { withCoarsePosition, withoutRecording } from '../../engine/set/link.ts';
import { drawAerial, drawCircuit, drawCoil, tapsOf } from '../drawings/index.ts';
import type { Scene } from '../scene/index.ts';
import { partsInWords } from '../tables/sets-table.ts';
import { kHz } from '../words/figures.ts';
import {
  cautionTexts,
  logAnswer,
  receptionSummary,
  stageLevel,
  stageSentence,
  stageTitle,
  writeUpText as texts,
  verdictWords,
} from '../words/index.ts';
import type { Photo } from './photo.ts';
import { type CarriedWave, carriedWave } from './wave.ts';

/** A photo with what is seen in it. */
export interface WriteUpPhoto extends Photo {
  readonly caption: string;
}

/** What goes into a write-up besides the set. */
export interface WriteUpOptions {
  readonly photos?: readonly WriteUpPhoto[];
  /** What was heard, beside what was predicted. */
  readonly log?: LogAgainstPrediction;
  /** A sound file (WAV) of the station heard best. */
  readonly sound?: Uint8Array;
  /** The position of the place as it is; otherwise it is rounded to 0.1°. */
  readonly exactPosition?: boolean;
}

/** A table with a title, a head and rows. */
export interface WriteUpTable {
  readonly title: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** A set to be shown to others: what stands in it, in order, before it is HTML or Markdown. */
export interface WriteUp {
  readonly name: string;
  readonly summary: string;
  readonly notes: readonly string[];
  readonly photos: readonly WriteUpPhoto[];
  readonly drawings: readonly { readonly file: string; readonly title: string; readonly scene: Scene }[];
  readonly tables: readonly WriteUpTable[];
  readonly wave?: CarriedWave;
  readonly sound?: { readonly about: string; readonly wav: Uint8Array };
  readonly cautions: readonly string[];
  /** JSON of the description. */
  readonly description: string;
  readonly position: 'exact' | 'coarse' | 'none';
}

/**
 * What a write-up of a set holds: drawings, parts, figures, what was heard, a wave and a sound.
 * @param set as read
 * @param written the same as written, which goes along; unknown keys too, a recording not
 * @param reception what it gives
 * @param options photos, log, sound; the position is rounded to 0.1° unless `exactPosition`
 * @returns what stands in it, for `writeUpHtml` and `writeUpMarkdown`
 */
export function writeUp(
  set: SetDescription,
  written: unknown,
  reception: Reception,
  options: WriteUpOptions = {},
): WriteUp {
  const best = reception.stations[reception.best[0]];
  const shared = withoutRecording(options.exactPosition ? written : withCoarsePosition(set, written));
  const { position } = set.place;
  return {
    name: set.name,
    summary: receptionSummary(reception),
    notes: (set.notes ?? '').split(/\n+/).filter((line) => line.trim() !== ''),
    photos: options.photos ?? [],
    drawings: drawingsOf(set),
    tables: [
      partsTable(set),
      ...(best ? [pathTable(best, options)] : []),
      stationsTable(reception),
      ...heardTable(options.log),
    ],
    wave: best && carriedWave(set, reception, best.index),
    sound: options.sound && best && { about: texts.soundAbout(best.name), wav: options.sound },
    cautions: [...new Set(reception.cautions.map(({ code }) => cautionTexts[code]))],
    description: `${JSON.stringify(shared, null, 2)}\n`,
    position: position === undefined ? 'none' : options.exactPosition ? 'exact' : 'coarse',
  };
}

function drawingsOf(set: SetDescription): WriteUp['drawings'] {
  const coils = set.coils.flatMap((coil, i) => {
    const scene = coil.shape === 'measured' ? undefined : drawCoil(coil, { taps: tapsOf(set, i) });
    return scene ? [{ file: `coil-${i + 1}`, title: texts.coil(coil.name), scene }] : [];
  });
  const aerial = drawAerial(set.aerial, set.earth);
  return [
    { file: 'circuit', title: texts.circuit, scene: drawCircuit(set) },
    ...coils,
    { file: 'aerial', title: aerial.title, scene: aerial },
  ];
}

const partsTable = (set: SetDescription): WriteUpTable => ({
  title: texts.parts,
  head: Object.values(texts.partColumns),
  rows: partsInWords(set),
});

/** How far a station is would tell where the set stands. */
const pathTable = (
  station: Reception['stations'][number],
  { exactPosition = false }: WriteUpOptions,
): WriteUpTable => ({
  title: texts.path(station),
  head: Object.values(texts.pathColumns),
  rows: station.path.map((stage) => [
    stageTitle(stage),
    stageLevel(stage),
    stage.id === 'field' && !exactPosition ? '' : stageSentence(stage),
  ]),
});

const stationsTable = ({ stations }: Reception): WriteUpTable => ({
  title: texts.stations,
  head: Object.values(texts.stationColumns),
  rows: stations.map((s) => [
    s.name,
    kHz(s.frequency),
    s.dial ? `${Math.round(s.dial.scale)}°` : '—',
    verdictWords[s.verdict],
    s.soundPressureLevel === undefined ? '—' : `${Math.round(s.soundPressureLevel)} dB SPL`,
  ]),
});

function heardTable(log: LogAgainstPrediction | undefined): WriteUpTable[] {
  if (!log) return [];
  const { columns } = logAnswer;
  const rows = log.stations.flatMap(({ name, frequency, lights }) =>
    (['day', 'night'] as const).map((light) => [
      name,
      kHz(frequency),
      logAnswer.light(light),
      logAnswer.predicted(lights[light]),
      logAnswer.heard(lights[light]),
    ]),
  );
  const head = [columns.station, columns.frequency, columns.light, columns.predicted, columns.heard];
  return [{ title: texts.heard, head, rows }];
}
