import {
  type FigureResult,
  type FitPlot,
  fitPlotOf,
  type Instrument,
  isReadingsText,
  type MeasurableFigure,
  type MeasuredFigure,
  type MeasurementKind,
  measurableFigures,
  measuredFigures,
  type OfferedMeasurement,
  offeredMeasurements,
  predictedForReadings,
  type RangedStation,
  type ReadingsProblem,
  type ReadingsResult,
  type Recording,
  readingsTable,
  readMeasurements,
  readReadings,
  readRecord,
  receiveRanged,
  resultsOf,
  ringingOf,
  type SetDescription,
  type StationReception,
  type SuspectPlace,
  suspectPlaces,
  type TimeOfDay,
  type Warning,
  type WithReadings,
  type WrittenDescription,
  wholeFileField,
  withReadings,
} from '../../../engine/index.ts';
import { readWav } from '../../../outputs/audio/index.ts';
import { textOfFile } from '../../state/text-of-file.ts';
import { answerMessages } from '../../workers/answer-messages.ts';
import { coastFor } from '../../workers/coast.ts';

/** What can be measured, and what of it is known. */
export interface OfferQuestion {
  readonly about: 'offer';
  readonly set: SetDescription;
  /** Whose answer is to be narrowed. */
  readonly station: StationReception | RangedStation | undefined;
  readonly has: readonly Instrument[];
}
export interface OfferAnswer {
  readonly offered: readonly OfferedMeasurement[];
  readonly figures: readonly MeasurableFigure[];
  /** Those whose measured value wins. */
  readonly measured: readonly MeasuredFigure[];
}

/** What one measurement says, alone and with the readings in the description. */
export interface FitQuestion {
  readonly about: 'fit';
  /** Of the card, given back with the answer. */
  readonly card: string;
  readonly set: SetDescription;
  readonly written: Readonly<Record<string, unknown>>;
  readonly kept: readonly unknown[];
  /** As predicted: readings of its field and loudness are set beside it. */
  readonly station: StationReception | RangedStation | undefined;
}
export type FitAnswer =
  | { readonly ok: false; readonly card: string; readonly problems: readonly ReadingsProblem[] }
  | {
      readonly ok: true;
      readonly card: string;
      readonly figures: readonly FigureResult[];
      readonly warnings: readonly Warning[];
      readonly suspects: readonly SuspectPlace[];
      readonly plot?: FitPlot;
      /** Whether the figures themselves are drawn beside the calculated ones. */
      readonly hasBeside: boolean;
      readonly joint: ReadingsResult['joint']['figures'];
    };

/** A description with these readings in it. */
export interface UseQuestion {
  readonly about: 'use';
  readonly set: SetDescription;
  readonly written: WrittenDescription;
  readonly readings: readonly unknown[];
  /** When its stations are received. */
  readonly time: TimeOfDay;
}
export type UseAnswer =
  | Pick<WithReadings, 'ok' | 'written' | 'used'>
  | { readonly ok: false; readonly problems: readonly ReadingsProblem[] };

/** A file of readings, of an instrument or as the command line takes it. */
export interface FileQuestion {
  readonly about: 'file';
  readonly name: string;
  readonly kind: MeasurementKind | 'value';
  readonly set: SetDescription;
  readonly bytes: Uint8Array<ArrayBuffer>;
}
export type FileAnswer =
  | {
      readonly ok: true;
      readonly measurements: readonly Readonly<Record<string, unknown>>[];
      /** Headings of columns that were left out. */
      readonly notRead?: readonly string[];
    }
  | { readonly ok: false; readonly problems: readonly ReadingsProblem[] };

export type MeasureQuestion = OfferQuestion | FitQuestion | UseQuestion | FileQuestion;

function offer({ set, station, has }: OfferQuestion): OfferAnswer {
  const figures = measurableFigures(set);
  return {
    offered: offeredMeasurements(set, station ?? { frequency: 1e6 }, has),
    figures,
    measured: measuredFigures(set, figures),
  };
}

function fit({ card, set, written, kept, station: predicted }: FitQuestion): FitAnswer {
  const read = readMeasurements([written], set);
  if (!read.ok) return { ...read, card };
  const [{ kind, values, fit: measured }] = read.measurements;
  const before = readMeasurements(kept, set);
  const { results, joint } = resultsOf(
    set,
    [...read.measurements, ...(before.ok ? before.measurements : [])],
    predicted ? [predicted] : [],
  );
  const [{ figures, warnings }] = results;
  const plot = measured && kind !== 'value' ? fitPlotOf(kind, values, measured) : undefined;
  return {
    ok: true,
    card,
    figures,
    // Said with the station that stands there instead.
    warnings: warnings.filter(({ code }) => code !== 'measure.reading-misread'),
    suspects: suspectPlaces(read.measurements[0], set.place.stations),
    plot,
    // Of a curve with one figure that a prediction stands beside, and of readings with no curve.
    hasBeside: figures.some((one) => Number.isFinite(one.measured.value)) && (!plot || plot.isOfOneFigure === true),
    joint: joint.figures,
  };
}

async function use({ set, written, readings, time }: UseQuestion): Promise<UseAnswer> {
  const coast = await coastFor(set.place);
  const predicted = predictedForReadings(
    set,
    written,
    readings,
    (described, stations) => receiveRanged(described, { time, coast, stations }).stations,
  );
  const taken = withReadings(set, written, readings, predicted);
  return taken.ok ? { ok: true, written: taken.written, used: taken.used } : taken;
}

const isWav = (bytes: Uint8Array): boolean => new TextDecoder('latin1').decode(bytes.subarray(0, 4)) === 'RIFF';
/** Digits of a sample: as many as a good converter has. */
const DIGITS = 6;

/** The ringing of a recording, as a file of readings has it. */
const ringingMeasurement = ({ sampleRate, samples }: Recording) => ({
  kind: 'decay',
  sampleRate,
  samples: Array.from(ringingOf(samples), (x) => Number(x.toPrecision(DIGITS))),
});

async function file({ bytes, kind, set }: FileQuestion): Promise<FileAnswer> {
  if (isWav(bytes)) {
    const { rate, channels } = await readWav(bytes);
    return { ok: true, measurements: [ringingMeasurement({ sampleRate: rate, samples: channels[0] })] };
  }
  const found = await textOfFile(new Blob([bytes]));
  if (found.text === undefined) return { ok: false, problems: [found.problem] };
  const { text } = found;
  const whole = wholeFileField(kind);
  if (whole !== undefined && !isReadingsText(text)) return { ok: true, measurements: [{ kind, [whole]: text }] };
  // What an oscilloscope recorded serves on the card of a sound card's recording too.
  if (kind === 'decay' && !isReadingsText(text)) {
    const recorded = readRecord(text);
    if (!recorded.ok)
      return {
        ok: false,
        problems: [
          {
            path: '',
            expected: { code: 'record-file' },
            hint: { code: 'record-problems', problems: recorded.problems },
          },
        ],
      };
    return { ok: true, measurements: [ringingMeasurement(recorded)] };
  }
  const read = readReadings(text, kind, set);
  // What belongs to all of a table's readings can be typed beside them.
  if (!read.ok && !isReadingsText(text) && read.problems.every(({ line }) => line === undefined))
    return { ok: true, measurements: [readingsTable(text, kind).value] };
  if (!read.ok) return read;
  return {
    ok: true,
    notRead: read.notRead,
    measurements: read.measurements.map((one) => one.written as Readonly<Record<string, unknown>>),
  };
}

function answer(question: MeasureQuestion): OfferAnswer | FitAnswer | Promise<UseAnswer | FileAnswer> {
  switch (question.about) {
    case 'offer':
      return offer(question);
    case 'fit':
      return fit(question);
    case 'use':
      return use(question);
    case 'file':
      return file(question);
  }
}

answerMessages<MeasureQuestion, unknown>(answer);
