import { type StationCurves, stationCurves } from '../../engine/index.ts';
import {
  bandResponse,
  bandText,
  detectorCurve,
  detectorCurveText,
  detectorPlot,
  type PlotSize,
  qAgainstFrequency,
  qPlots,
  qText,
  resonanceCurve,
  resonanceText,
} from '../../outputs/plots/index.ts';
import type { Scene } from '../../outputs/scene/index.ts';
import { clean, numbersCsv } from '../../outputs/tables/index.ts';
import {
  type CommandOptions,
  callProblems,
  curveColumns,
  curvesAnswer,
  jsonText,
  waveAnswer,
} from '../../outputs/words/index.ts';
import { fileAndOptions } from '../arguments.ts';
import { packagedCoastFor } from '../coast.ts';
import { type Command, InputError } from '../command.ts';
import { dataOut } from '../data-out.ts';
import { endingOf } from '../ending.ts';
import { choiceOf, sizeFrom } from '../option-values.ts';
import { readSet } from '../read-set.ts';
import { receiveOne } from '../receive-one.ts';
import { timeOfDay } from '../time-of-day.ts';
import { pngWidth, refuseWithoutPicture, writePicture } from '../write-picture.ts';

const OPTIONS = {
  curve: { type: 'string' },
  station: { type: 'string' },
  day: { type: 'boolean' },
  night: { type: 'boolean' },
  size: { type: 'string' },
  width: { type: 'string' },
  print: { type: 'boolean' },
  json: { type: 'boolean' },
  out: { type: 'string' },
  switch: { type: 'string' },
} as const satisfies CommandOptions<'curves'>;

/** One curve in every form it can be asked for. */
interface CurveForms {
  readonly data: unknown;
  readonly text: string;
  readonly csv: () => string;
  readonly picture: (size: PlotSize) => Scene;
}

type Set = Parameters<typeof detectorPlot>[1];
const FORMS = {
  resonance: ({ resonance }: StationCurves): CurveForms => ({
    data: resonance,
    text: resonanceText(resonance),
    csv: () =>
      numbersCsv(
        curveColumns.resonance,
        resonance.points.map(({ frequency, level }) => [frequency, level]),
      ),
    picture: (size) => resonanceCurve(resonance, size),
  }),
  band: ({ band }: StationCurves): CurveForms => ({
    data: band,
    text: bandText(band),
    csv: () =>
      numbersCsv(
        curveColumns.band,
        band.points.map(({ frequency, level }) => [frequency, level]),
      ),
    picture: (size) => bandResponse(band, size),
  }),
  q: (curves: StationCurves, _: Set, covered: readonly [number, number]): CurveForms => {
    const coils = curves.q;
    const plot = { covered, coils: qPlots(curves, covered).flatMap((one) => one.coils) };
    return {
      data: coils,
      text: qText(plot),
      csv: () =>
        numbersCsv(
          curveColumns.q(coils.map(({ name }) => name)),
          (coils[0]?.points ?? []).map(({ frequency }, i) => [
            frequency,
            ...coils.flatMap(({ points }) => [points[i].q, points[i].low, points[i].high]),
          ]),
        ),
      picture: (size) => qAgainstFrequency(plot, size),
    };
  },
  detector: (curves: StationCurves, set: Set): CurveForms => {
    const plot = detectorPlot(curves, set);
    return {
      data: curves.detector,
      text: detectorCurveText(plot),
      csv: () =>
        numbersCsv(
          curveColumns.detector,
          curves.detector.points.map(({ voltage, current }) => [voltage, current]),
        ),
      picture: (size) => detectorCurve(plot, size),
    };
  },
} as const;
const CURVES = Object.keys(FORMS) as (keyof typeof FORMS)[];

export const curves: Command = {
  name: 'curves',
  options: OPTIONS,
  examples: [
    'faintwave curves examples/medium-wave-galena.json --station Lantern',
    'faintwave curves examples/two-tuned-circuits.json --curve band --out band.svg',
    'faintwave curves examples/medium-wave-galena.json --curve q --out q.csv',
  ],
  async run(args, io) {
    const { values, file } = fileAndOptions(args, OPTIONS);
    const set = await readSet(file, io, values.switch);
    const curve = choiceOf(values.curve ?? 'resonance', '--curve', CURVES);
    const { out } = values;
    const ending = out === undefined || values.json ? undefined : endingOf(out, ['svg', 'png', 'csv']);
    refuseWithoutPicture(values, ending);
    if (out !== undefined && ending) await io.checkTarget(out, ending);
    const when = { time: timeOfDay(values, set.place), coast: packagedCoastFor(set.place) };
    const { reception, index } = receiveOne(set, values.station, when);
    if (index === undefined) throw new InputError(callProblems.noStations);
    const { dial, stations } = reception;
    const covered = [dial.lowest, dial.highest] as const;
    const all = stationCurves(set, index, covered, { ...when, figures: stations[index] });
    if (!all) throw new InputError(callProblems.noStations);
    const forms = FORMS[curve](all, set, covered);
    if (values.json) {
      await dataOut(io, out, `${jsonText(forms.data)}\n`);
      return 0;
    }
    const title = waveAnswer.title({ ...stations[index], name: clean(stations[index].name) }, clean(set.name));
    if (out === undefined) {
      io.out(`${title}\n\n${clean(forms.text)}\n\n${waveAnswer.toFiles}\n`);
      return 0;
    }
    if (ending === 'csv') await io.write(out, forms.csv());
    else {
      const size = sizeFrom(values.size, 3);
      const width = pngWidth(values.width, size, ending!);
      const picture = forms.picture({ width: size[0], height: size[1] });
      await writePicture(io, out, picture, { ending: ending!, print: values.print, width });
    }
    io.out(`${curvesAnswer.written(title, curvesAnswer.names[curve], out)}\n`);
    return 0;
  },
};
